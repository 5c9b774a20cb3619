"""The beats of a song as a line that can be read both ways, and its phrases.

Conventions: a *beat* is a beat of the song, from 0, and may lie between two beats or outside
the anchors; seconds run from the first decoded sample; a *count* is a count of the dance, from
1, and count 1 falls on `first_beat`.  Dance counts are not always the song's beats: a nightclub
is often danced at half its drummer's beats, some polkas at twice.  `counts_per_beat` says which.
"""

from __future__ import annotations

import math
from bisect import bisect_right
from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise
from statistics import median

COUNTS_PER_BEAT = (Fraction(1, 2), Fraction(1), Fraction(2))

Anchors = tuple[tuple[float, float], ...]


@dataclass(frozen=True, slots=True)
class Phrase:
    """A phrase of the music: its first beat, its length in counts, how sure we are (0 to 1).

    A break is a phrase too, a short one: the eights begin anew after it.
    """

    starts_beat: int
    counts: float
    confidence: float


@dataclass(frozen=True, slots=True)
class BeatGrid:
    """Where every beat of a song is.

    `anchors` are (beat, second), both strictly increasing, at least two; between two of them
    time is linear, beyond the ends it runs on with the neighbouring slope.  `last_beat` is the
    last beat that sounds, `residual_sec` the spread of the heard beats about the grid,
    `first_sound_sec` where the silence ends, and `clear_beat` the first beat that is heard
    plainly.  ValueError where these contradict each other.

    >>> grid = BeatGrid.steady_at(120, length_sec=60, first_sec=0.5)
    >>> grid.beat_to_sec(3), grid.sec_to_beat(2.0), grid.count_to_sec(9), grid.last_beat
    (2.0, 3.0, 4.5, 118)
    """

    anchors: Anchors
    beats_per_bar: int
    first_beat: int
    last_beat: int
    counts_per_beat: Fraction
    phrases: tuple[Phrase, ...]
    residual_sec: float
    steady: bool
    length_sec: float
    first_sound_sec: float = 0.0
    clear_beat: int = 0

    def __post_init__(self) -> None:
        if len(self.anchors) < 2:
            raise ValueError("a grid needs two anchors, each a beat and its second")
        if not all(math.isfinite(value) for anchor in self.anchors for value in anchor):
            raise ValueError("an anchor is not a number")
        for (beat, sec), (later_beat, later_sec) in pairwise(self.anchors):
            if later_beat <= beat or later_sec <= sec:
                raise ValueError(f"the anchors run backwards at beat {later_beat}")
        if self.beats_per_bar < 1:
            raise ValueError(f"a bar of {self.beats_per_bar} beats")
        if self.counts_per_beat not in COUNTS_PER_BEAT:
            raise ValueError(f"{self.counts_per_beat} counts for a beat; it can be 1/2, 1 or 2")
        starts = [phrase.starts_beat for phrase in self.phrases]
        if any(later <= start for start, later in pairwise(starts)):
            raise ValueError("the phrases run backwards")

    @classmethod
    def steady_at(
        cls,
        bpm: float,
        *,
        length_sec: float,
        first_sec: float = 0.0,
        beats_per_bar: int = 4,
        counts_per_beat: Fraction | int = 1,
    ) -> BeatGrid:
        """The grid of a song that is not heard: `bpm` beats a minute, count 1 at `first_sec`.

        It has no phrases, and `last_beat` is the last one before `length_sec`.  ValueError where
        the tempo or the length is not above zero, or the song ends before its second beat.
        """
        if not (bpm > 0 and math.isfinite(bpm)):
            raise ValueError(f"a tempo of {bpm} beats a minute")
        last = math.ceil((length_sec - first_sec) * bpm / 60 - 1e-9) - 1
        if last < 1:
            raise ValueError(f"no second beat in {length_sec} seconds")
        return cls(
            anchors=((0.0, first_sec), (float(last), first_sec + last * 60 / bpm)),
            beats_per_bar=beats_per_bar,
            first_beat=0,
            last_beat=last,
            counts_per_beat=Fraction(counts_per_beat),
            phrases=(),
            residual_sec=0.0,
            steady=True,
            length_sec=length_sec,
            first_sound_sec=first_sec,
        )

    def beat_to_sec(self, beat: float) -> float:
        """The second at which `beat` (from 0, may be between two) falls; undoes `sec_to_beat`."""
        index = self._line([anchor[0] for anchor in self.anchors], beat)
        (beat_0, sec_0), (beat_1, sec_1) = self.anchors[index : index + 2]
        return sec_0 + (float(beat) - beat_0) * (sec_1 - sec_0) / (beat_1 - beat_0)

    def sec_to_beat(self, sec: float) -> float:
        """The beat that sounds at `sec`, between two of them as a fraction; undoes `beat_to_sec`."""
        index = self._line([anchor[1] for anchor in self.anchors], sec)
        (beat_0, sec_0), (beat_1, sec_1) = self.anchors[index : index + 2]
        return beat_0 + (sec - sec_0) * (beat_1 - beat_0) / (sec_1 - sec_0)

    def count_to_sec(self, count: float | Fraction) -> float:
        """The second at which `count` of the dance (from 1) falls; undoes `sec_to_count`."""
        return self.beat_to_sec(self.count_to_beat(count))

    def sec_to_count(self, sec: float) -> float:
        """The count of the dance (from 1; before it below 1) at `sec`; undoes `count_to_sec`."""
        return self.beat_to_count(self.sec_to_beat(sec))

    def count_to_beat(self, count: float | Fraction) -> float:
        """The beat on which `count` of the dance falls."""
        return self.first_beat + (float(count) - 1) / float(self.counts_per_beat)

    def beat_to_count(self, beat: float) -> float:
        """The count of the dance that falls on `beat`."""
        return 1 + (beat - self.first_beat) * float(self.counts_per_beat)

    @property
    def bpm(self) -> float:
        """The median tempo of the beats from the first anchor to the last beat, in beats a minute."""
        first = math.floor(min(self.anchors[0][0], self.last_beat - 1))
        seconds = [self.beat_to_sec(beat) for beat in range(first, self.last_beat + 1)]
        return 60 / median(later - sec for sec, later in pairwise(seconds))

    @property
    def counts_per_minute(self) -> float:
        """The median tempo of the dance's counts, in counts a minute."""
        return self.bpm * float(self.counts_per_beat)

    @property
    def eights_are(self) -> int:
        """Counts in an eight: 6 where the bar has three beats, else 8 (common practice, no source)."""
        return 6 if self.beats_per_bar == 3 else 8

    def eights(self) -> Iterator[float]:
        """The beat on which each eight begins, up to the last beat; every phrase begins anew."""
        step = self.eights_are / float(self.counts_per_beat)
        starts = [phrase.starts_beat for phrase in self.phrases] or [self.first_beat]
        for start, end in zip(starts, [*starts[1:], self.last_beat + 1], strict=True):
            beat = float(start)
            while beat < end:
                yield beat
                beat += step

    @property
    def intro_counts(self) -> float:
        """Counts from the first sound to count 1, to the nearest half."""
        return round(2 * (1 - self.sec_to_count(self.first_sound_sec))) / 2

    @property
    def clear_intro_counts(self) -> float:
        """Counts from the first beat that is heard plainly to count 1."""
        return 1 - self.beat_to_count(self.clear_beat)

    @staticmethod
    def _line(marks: list[float], value: float) -> int:
        """The stretch between two anchors that `value` belongs to; the ends run on."""
        return min(max(bisect_right(marks, value) - 1, 0), len(marks) - 2)
