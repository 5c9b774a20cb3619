"""The song a command is given: a file, or only its tempo and its length."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass, replace
from fractions import Fraction
from itertools import accumulate
from pathlib import Path

from wallwise.dance.model import Dance
from wallwise.desk.errors import DeskError, Unreadable
from wallwise.desk.song import corrected, read_beats
from wallwise.song.analyse import NoBeat
from wallwise.song.beatfile import SUFFIX
from wallwise.song.for_dance import grid_heard_for
from wallwise.song.grid import BeatGrid, Phrase
from wallwise.song.intro import begun_for
from wallwise.song.minutes import parse_time
from wallwise.song.sound import Unhearable, read_mono

GridFor = Callable[[Dance], BeatGrid]
"""What gives the beats of the song that a dance is danced to."""

_LONGEST_SEC = 30 * 60
_COMMON = 120  # where only counts are asked for and the tempo does not matter
_SLOWEST, _FASTEST = 20, 400  # beats a minute; beyond these a number is no tempo


@dataclass(frozen=True, slots=True)
class SongAsked:
    """What is said of the song, each None where it is not: a file, or a tempo and a length.

    `length` is as typed, ``3:05``; `phrases` are counts as typed, ``32 32 16``; `level` is how
    many counts are danced to a beat.
    """

    file: Path | None = None
    bpm: float | None = None
    length: str | None = None
    phrases: str | None = None
    level: Fraction | None = None

    @property
    def told(self) -> bool:
        """Whether anything is said of a song at all."""
        return any(value is not None for value in (self.file, self.bpm, self.length, self.phrases))


def grid_for(asked: SongAsked, dance: Dance, *, any_tempo: bool = False) -> BeatGrid:
    """The beats of the song that is asked for; DeskError where what is said makes none.

    Without a file, count 1 falls where the sheet's intro ends.  Without a length, the song lasts
    as long as its phrases; without a tempo, the sheet's holds, and with `any_tempo` a common one
    where it gives none.
    """
    if asked.file is not None:
        return _of_file(asked.file, asked, dance)
    bpm = asked.bpm if asked.bpm is not None else dance.bpm or (_COMMON if any_tempo else None)
    if bpm is None:
        raise DeskError("The sheet gives no tempo: say the song's with --bpm.")
    refuse_no_tempo(float(bpm))
    level = asked.level or Fraction(1)
    intro = round((dance.intro_counts or 0) / level)
    phrases = phrase_counts(asked.phrases) if asked.phrases is not None else ()
    beats = intro + sum(phrases) / level
    length_sec = _length_sec(asked.length) if asked.length is not None else float(beats * 60 / Fraction(bpm))
    if length_sec <= 0:
        raise DeskError("The song's length is needed too: --length, as in 3:05.")
    try:
        grid = BeatGrid.steady_at(
            float(bpm), length_sec=length_sec, beats_per_bar=dance.beats_per_bar, counts_per_beat=level
        )
    except ValueError as problem:
        raise DeskError(f"This makes no song: {problem}.") from None
    return replace(grid, first_beat=intro, phrases=_told(phrases, intro, level))


def refuse_no_tempo(bpm: float) -> None:
    """DeskError where nothing is danced at so many beats a minute."""
    if not _SLOWEST <= bpm <= _FASTEST:
        raise DeskError(f"{bpm:g} is no tempo: beats a minute are wanted, {_SLOWEST} to {_FASTEST}.")


def _of_file(file: Path, asked: SongAsked, dance: Dance) -> BeatGrid:
    """The song of a file, heard for the dance, or the beats that were found of it before."""
    if file.name.endswith(SUFFIX):
        return _found_before(file, asked, dance)
    told = corrected(bpm=asked.bpm, counts_per_beat=asked.level)
    try:
        return grid_heard_for(dance, read_mono(file), told)
    except NoBeat as refusal:
        raise Unreadable(f"{file}: no beat can be counted here: {refusal}.") from None
    except Unhearable as refusal:
        raise Unreadable(str(refusal)) from None


def _found_before(file: Path, asked: SongAsked, dance: Dance) -> BeatGrid:
    """The grid of a file of beats; its own count 1 stands if somebody told it."""
    if asked.bpm is not None or asked.level is not None:
        raise DeskError(f"{file}: this file has the tempo and the level; correct them with `wallwise song`.")
    found = read_beats(file)
    return begun_for(dance, found.grid, found.corrections)


def phrase_counts(text: str) -> tuple[int, ...]:
    """The lengths of phrases in counts, as typed, blanks or commas between; DeskError for others."""
    words = re.split(r"[\s,;]+", text.strip())
    if not all(re.fullmatch(r"[1-9]\d{0,3}", word) for word in words):
        raise DeskError(f"{text!r} tells no phrases: their counts are wanted, as in “32 32 16 32”.")
    counts = tuple(int(word) for word in words)
    if sum(counts) > _LONGEST_SEC * _FASTEST // 60:
        raise DeskError("These phrases are longer than any song.")
    return counts


def _length_sec(text: str) -> float:
    try:
        length_sec = parse_time(text)
    except ValueError:
        raise DeskError(f"{text!r} is no length: minutes and seconds are wanted, as in 3:05.") from None
    if length_sec > _LONGEST_SEC:
        raise DeskError(f"A song of {text} is longer than the {_LONGEST_SEC // 60} minutes that are read.")
    return length_sec


def _told(phrases: tuple[int, ...], first_beat: int, level: Fraction) -> tuple[Phrase, ...]:
    """The phrases from count 1 on; what is told is sure."""
    starts = accumulate(phrases[:-1], initial=0) if phrases else ()
    return tuple(
        Phrase(first_beat + int(start / level), counts, 1.0)
        for start, counts in zip(starts, phrases, strict=True)
    )
