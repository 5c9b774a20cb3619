"""The practice track: the song slowed, the counts or the calls spoken over it, a count-in before it.

The track has seconds of its own: second t of the song is heard at t / tempo, later by as much as
the count-in needs.  `Track.grid` reads the beats in those seconds.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from enum import StrEnum
from fractions import Fraction
from typing import TYPE_CHECKING

from wallwise.dance.call import Call
from wallwise.dance.model import Dance
from wallwise.dance.walls import LONGEST, Wall, WallKind, unroll
from wallwise.give import clicks
from wallwise.give.cues import Cue, Wanted, lay_calls, lay_numbers
from wallwise.give.mixing import MUSIC_LUFS, Placed, mixed
from wallwise.give.voice import NUMBERS, RATE_HZ, Voice
from wallwise.song.grid import BeatGrid
from wallwise.song.loudness import gain_to, loudness_lufs
from wallwise.song.sound import Sound
from wallwise.song.stretch import stretched

if TYPE_CHECKING:
    from wallwise.song.sound import Samples

_BEFORE_SEC = 0.5  # of silence before the first click
_AFTER_SEC = 2.0  # after the last count, where there is no song
_COUNTED = {3: 3, 4: 4}  # the numbers spoken of the last eight before count 1: a bar of them
_CLICK_GAIN, _FIRST_GAIN, _HALF_GAIN, _BELL_GAIN = 0.32, 0.42, 0.2, 0.45


class Lead(StrEnum):
    """What leads the dancers over the song."""

    WORDS = "words"
    COUNTS = "counts"
    CLICK = "click"
    NONE = "none"


@dataclass(frozen=True)
class Track:
    """A practice track: stereo sound, the beats in its seconds, the words in it and those left out.

    `speech` holds the words alone, as loud as they are in `sound`; it is as long.
    """

    sound: Sound
    speech: Sound
    grid: BeatGrid
    cues: tuple[Cue, ...]
    left_out: tuple[Wanted, ...]


@dataclass(frozen=True)
class Music:
    """A song to dance to: its samples in stereo at `voice.RATE_HZ`, and its beats."""

    sound: Sound
    grid: BeatGrid


def silent_grid(dance: Dance, counts_per_minute: float) -> BeatGrid:
    """The beats for a dance without a song: as many as bring the room back to the front.

    That is after the last restart or tag, or the whole sequence of a phrased dance.
    """
    counts = sum((wall.counts for wall in unroll(dance, ending=True)), Fraction(0))
    length_sec = float(max(counts, Fraction(2))) * 60 / counts_per_minute
    return BeatGrid.steady_at(counts_per_minute, length_sec=length_sec, beats_per_bar=dance.beats_per_bar)


def slowed(grid: BeatGrid, tempo: float, *, delay_sec: float = 0.0) -> BeatGrid:
    """The grid of the song at `tempo` times its speed, begun `delay_sec` late.

    >>> slow = slowed(BeatGrid.steady_at(120, length_sec=60), 0.75, delay_sec=4)
    >>> slow.bpm, slow.beat_to_sec(0)
    (90.0, 4.0)
    """
    return replace(
        grid,
        anchors=tuple((beat, sec / tempo + delay_sec) for beat, sec in grid.anchors),
        residual_sec=grid.residual_sec / tempo,
        length_sec=grid.length_sec / tempo + delay_sec,
        first_sound_sec=grid.first_sound_sec / tempo + delay_sec,
    )


def practice_track(
    dance: Dance,
    *,
    music: Music | None,
    grid: BeatGrid,
    tempo: float,
    lead: Lead,
    voice: Voice | None,
    calls_of: Callable[[Wall], Sequence[Call]],
) -> Track:
    """The track of a dance over `music`, or over clicks alone where there is none.

    `grid` is at the song's own speed, `tempo` the share of it at which the track plays.  Without a
    `voice` clicks lead instead of words and counts.  `calls_of` gives the calls of a wall.
    """
    delay_sec = _delay(slowed(grid, tempo))
    heard = slowed(grid, tempo, delay_sec=delay_sec)
    walls = _walls_within(dance, heard)
    cues, left_out = _spoken(heard, walls, lead, voice, calls_of)
    clicking = music is None or lead is Lead.CLICK or (voice is None and lead is not Lead.NONE)
    marks = list(_marks(heard, walls, clicking=clicking))
    song = _song(music, tempo, delay_sec) if music is not None else None
    length_sec = max(
        heard.length_sec + (_AFTER_SEC if music is None else 0), *(c.ends_sec for c in cues), 0.0
    )
    sound, speech = mixed(
        song,
        marks,
        [Placed(cue.starts_sec, cue.sound) for cue in cues],
        length_sec=length_sec,
    )
    return Track(sound, speech, heard, cues, left_out)


def _song(music: Music, tempo: float, delay_sec: float) -> Placed:
    # Stretching leaves the loudness as it was, and the song as it came is the shorter one to measure.
    level = gain_to(MUSIC_LUFS, loudness_lufs(music.sound))
    return Placed(delay_sec, stretched(music.sound, tempo), level)


def _delay(grid: BeatGrid) -> float:
    """How much later the song has to begin, so that a whole eight can be counted before count 1."""
    return max(0.0, _BEFORE_SEC - grid.count_to_sec(1 - grid.eights_are))


def _walls_within(dance: Dance, grid: BeatGrid) -> tuple[Wall, ...]:
    """The walls that begin before the song is over."""
    last = grid.beat_to_count(grid.last_beat)
    danced = unroll(dance, walls=LONGEST if dance.sequence is None else None)
    return tuple(wall for wall in danced if float(wall.begins_after) < last)


def _spoken(
    grid: BeatGrid,
    walls: Sequence[Wall],
    lead: Lead,
    voice: Voice | None,
    calls_of: Callable[[Wall], Sequence[Call]],
) -> tuple[tuple[Cue, ...], tuple[Wanted, ...]]:
    if voice is None or lead not in (Lead.WORDS, Lead.COUNTS):
        return (), ()
    if lead is Lead.COUNTS:
        return lay_numbers(list(_numbers(grid, walls)), voice)
    calls, left_out = lay_calls(_calls(grid, walls, calls_of), voice)
    counted, _ = lay_numbers(list(_count_in(grid)), voice, among=calls)
    return tuple(sorted((*counted, *calls), key=lambda cue: cue.starts_sec)), left_out


def _calls(
    grid: BeatGrid, walls: Sequence[Wall], calls_of: Callable[[Wall], Sequence[Call]]
) -> Iterator[Wanted]:
    """The calls of every wall; what is out of the ordinary is said before its first call."""
    last_sec = grid.beat_to_sec(grid.last_beat)
    before: Wall | None = None
    for wall in walls:
        news = _news(wall, before)
        before = wall
        for call in calls_of(wall):
            beat_sec = _sec_of(grid, wall, call.at)
            if beat_sec > last_sec:
                return
            words = call.words
            if news:
                words = (*(f"{news}, {said}" for said in words), news, *words)
                news = ""
            yield Wanted(beat_sec, words)


def _news(wall: Wall, before: Wall | None) -> str:
    if wall.kind is WallKind.TAG:
        return "tag"
    return "restart" if before is not None and before.cut_by == "restart" else ""


def _sec_of(grid: BeatGrid, wall: Wall, at: Fraction) -> float:
    return grid.count_to_sec(wall.begins_after - wall.skipped + at)


def _numbers(grid: BeatGrid, walls: Sequence[Wall]) -> Iterator[Wanted]:
    """Every count from the count-in on, by eights that begin anew with each wall."""
    for count in range(1 - grid.eights_are, 1):
        yield _number(grid, grid.count_to_sec(count), count)
    last = grid.beat_to_count(grid.last_beat)
    for wall in walls:
        for count in range(int(wall.counts)):
            whole = wall.begins_after + 1 + count
            if whole <= last:
                yield _number(grid, grid.count_to_sec(whole), int(wall.skipped) + 1 + count)


def _number(grid: BeatGrid, sec: float, count: int) -> Wanted:
    return Wanted(sec, (NUMBERS[(count - 1) % grid.eights_are],))


def _count_in(grid: BeatGrid) -> Iterator[Wanted]:
    """The last bar before count 1: "five, six, seven, eight"."""
    for count in range(1 - _COUNTED.get(grid.beats_per_bar, grid.beats_per_bar), 1):
        yield _number(grid, grid.count_to_sec(count), count)


def _marks(grid: BeatGrid, walls: Sequence[Wall], *, clicking: bool) -> Iterator[Placed]:
    """The clicks: the count-in always, and where nothing else leads, all counts, halves and walls."""
    eights = grid.eights_are
    for count in range(1 - eights, 1):
        yield _click(grid.count_to_sec(count), first=count == 1 - eights)
    if not clicking:
        return
    last_sec = grid.beat_to_sec(grid.last_beat)
    for wall in walls:
        for count in range(int(wall.counts)):
            sec = grid.count_to_sec(wall.begins_after + 1 + count)
            if sec > last_sec:
                return
            if count == 0:
                yield _placed(sec, clicks.wall_bell(), _BELL_GAIN)
            else:
                yield _click(sec, first=(int(wall.skipped) + count) % eights == 0)
        for step in wall.steps:
            sec = _sec_of(grid, wall, step.at)
            if step.at.denominator > 1 and sec <= last_sec:
                yield _placed(sec, clicks.half_click(), _HALF_GAIN)


def _click(sec: float, *, first: bool) -> Placed:
    if first:
        return _placed(sec, clicks.first_click(), _FIRST_GAIN)
    return _placed(sec, clicks.count_click(), _CLICK_GAIN)


def _placed(sec: float, samples: Samples, gain: float) -> Placed:
    return Placed(sec, Sound(samples, RATE_HZ), gain)
