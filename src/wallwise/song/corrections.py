"""What the teacher knows better than the ear, in seconds of the song, so that it survives a new hearing.

bpm, dance         how fast it is, or what is danced to it
beats_per_bar      the metre
counts_per_beat    dance counts for a beat of the song: 1/2, 1 or 2
taps_sec           beats that she tapped
ones_sec           taps on the "1" of an eight
first_count_sec    where count 1 of the dance is
later_counts       every count so many later (below zero: earlier)
breaks             (second, counts): here the music stops its eights for so many counts
moves              (from, to): the phrase that begins about `from` begins at `to`
"""

from __future__ import annotations

import math
from dataclasses import dataclass, fields, replace
from fractions import Fraction

from wallwise.song.dances import WINDOWS
from wallwise.song.grid import COUNTS_PER_BEAT
from wallwise.song.tempo import FASTEST_BPM, SLOWEST_BPM

METRES = (2, 3, 4)


@dataclass(frozen=True, slots=True)
class Corrections:
    """What is told of a song; what is not told is None or empty.  ValueError for what cannot be,
    in one sentence.
    """

    bpm: float | None = None
    dance: str | None = None
    beats_per_bar: int | None = None
    counts_per_beat: Fraction | None = None
    taps_sec: tuple[float, ...] = ()
    ones_sec: tuple[float, ...] = ()
    first_count_sec: float | None = None
    later_counts: int = 0
    breaks: tuple[tuple[float, float], ...] = ()
    moves: tuple[tuple[float, float], ...] = ()

    def __post_init__(self) -> None:
        if self.bpm is not None and not SLOWEST_BPM <= self.bpm <= FASTEST_BPM:
            raise ValueError(
                f"{self.bpm:g} beats a minute are those of no dance; "
                f"it can be {SLOWEST_BPM:g} to {FASTEST_BPM:g}."
            )
        if self.dance is not None and self.dance not in WINDOWS:
            raise ValueError(f"No tempo of “{self.dance}” is known; known are {', '.join(WINDOWS)}.")
        if self.beats_per_bar is not None and self.beats_per_bar not in METRES:
            raise ValueError(f"A bar of {self.beats_per_bar} beats is not counted here; it can be 2, 3 or 4.")
        if self.counts_per_beat is not None and self.counts_per_beat not in COUNTS_PER_BEAT:
            raise ValueError(f"{self.counts_per_beat} counts for a beat; it can be 1/2, 1 or 2.")
        if not all(math.isfinite(sec) and sec >= 0 for sec in self._seconds()):
            raise ValueError("A place in the song is told in seconds from its start, none below zero.")
        if any(counts <= 0 or counts % 0.5 for _, counts in self.breaks):
            raise ValueError("A break lasts whole or half counts, more than none.")
        if 0 < len(self.taps_sec) < 4:
            raise ValueError("Fewer than four taps tell no tempo.")

    def _seconds(self) -> tuple[float, ...]:
        pairs = [sec for pair in self.moves for sec in pair] + [sec for sec, _ in self.breaks]
        first = () if self.first_count_sec is None else (self.first_count_sec,)
        return (*self.taps_sec, *self.ones_sec, *first, *pairs)

    def with_later(self, later: Corrections) -> Corrections:
        """These and what was told later: later words replace, breaks, moves and shifts add up."""
        told = {
            field.name: value
            for field in fields(later)
            if (value := getattr(later, field.name)) != field.default
        }
        for name in ("ones_sec", "breaks", "moves"):
            if name in told:
                told[name] = tuple(dict.fromkeys((*getattr(self, name), *told[name])))
        if "later_counts" in told:
            told["later_counts"] += self.later_counts
        return replace(self, **told)


NONE = Corrections()
