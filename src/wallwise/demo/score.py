"""How a song of the demo is written down.

A tune is text, bar by bar between ``|``: a degree of the major scale (1 the key note, ``'``
an octave up, ``,`` an octave down), a colon and how many beats it lasts; ``-`` rests.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import NamedTuple

_SCALE = (0, 2, 4, 5, 7, 9, 11)
_MAJOR, _MINOR = (0, 4, 7), (0, 3, 7)


class Note(NamedTuple):
    """A note of the tune: its MIDI pitch, the beat on which it begins (from 0), how long it lasts."""

    pitch: int
    starts_beat: float
    beats: float


@dataclass(frozen=True, slots=True)
class Section:
    """A stretch of the song: one chord a bar, a tune as long, and how full the band plays (0 to 3).

    Fullness 0 is bass and chords alone, 1 adds the kit, 2 the backing, 3 everything.
    """

    name: str
    chords: str
    tune: str
    fullness: int = 2


@dataclass(frozen=True, slots=True)
class Score:
    """A whole song.  `order` names sections; `intro` is how many of them come before count 1.

    `key` is the MIDI pitch of the key note; `swing` is where in the beat its second half falls.
    """

    title: str
    by: str
    sheet: str
    style: str
    bpm: float
    beats_per_bar: int
    key: int
    sections: tuple[Section, ...]
    order: tuple[str, ...]
    intro: int = 1
    swing: float = 0.5

    def played(self) -> Iterator[tuple[Section, int]]:
        """Every section in the order played, with the beat (from 0) on which it begins."""
        known = {section.name: section for section in self.sections}
        beat = 0
        for name in self.order:
            yield known[name], beat
            beat += len(known[name].chords.split()) * self.beats_per_bar


def tune_of(section: Section, *, key: int, beats_per_bar: int) -> Iterator[Note]:
    """The notes of the section's tune; ValueError where a bar is longer or shorter than a bar.

    >>> list(tune_of(Section("a", "1", "1:2 5':1 -:1"), key=60, beats_per_bar=4))
    [Note(pitch=60, starts_beat=0.0, beats=2.0), Note(pitch=79, starts_beat=2.0, beats=1.0)]
    """
    for number, bar in enumerate(section.tune.split("|")):
        beat = float(number * beats_per_bar)
        for token in bar.split():
            degree, _, beats = token.partition(":")
            if degree != "-":
                yield Note(_pitch(degree, key), beat, float(beats))
            beat += float(beats)
        if abs(beat - (number + 1) * beats_per_bar) > 1e-9:
            raise ValueError(f"{section.name}, bar {number + 1}: this bar has {beat % beats_per_bar} beats")


def _pitch(degree: str, key: int) -> int:
    octaves = degree.count("'") - degree.count(",")
    return key + _SCALE[int(degree.strip("',")) - 1] + 12 * octaves


def chord_of(name: str, *, key: int) -> tuple[int, int, int]:
    """The three pitches of a chord on a degree, ``m`` for minor; the root comes first.

    >>> chord_of("6m", key=60)
    (69, 72, 76)
    """
    root = key + _SCALE[int(name.rstrip("m")) - 1]
    third, fifth = (_MINOR if name.endswith("m") else _MAJOR)[1:]
    return root, root + third, root + fifth
