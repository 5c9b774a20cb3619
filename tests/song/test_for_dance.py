"""What a sheet says of its music helps the ear only where the teacher says nothing."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest

from wallwise.dance.model import Dance
from wallwise.song.corrections import NONE, Corrections
from wallwise.song.for_dance import with_hints
from wallwise.song.grid import BeatGrid
from wallwise.song.intro import begun_for

SHEET = Dance("Ferry Cha", (), level="Improver", bpm=Fraction(116), intro_counts=32)


def test_the_sheet_tells_tempo_rhythm_and_metre() -> None:
    """116 beats a minute, a cha cha, in fours."""
    assert Corrections(bpm=116.0, dance="cha cha", beats_per_bar=4) == with_hints(SHEET, NONE)


def test_what_the_teacher_tells_stands() -> None:
    """Her tempo, her dance, her metre; and taps tell a tempo too."""
    told = Corrections(bpm=100, dance="rumba", beats_per_bar=2)
    assert told == with_hints(SHEET, told)
    assert with_hints(SHEET, Corrections(taps_sec=(0.5, 1.0, 1.5, 2.0))).bpm is None


def test_a_tempo_that_no_song_has_is_no_hint() -> None:
    """A sheet that gives measures for beats, or none, leaves the tempo open."""
    for bpm in (Fraction(29), Fraction(400), None):
        assert with_hints(replace(SHEET, bpm=bpm), NONE).bpm is None


def test_threes_are_a_waltz() -> None:
    """Whatever its title says."""
    hinted = with_hints(Dance("Quay", (), beats_per_bar=3), NONE)
    assert ("waltz", 3) == (hinted.dance, hinted.beats_per_bar)


@pytest.mark.parametrize(
    ("told", "beat"),
    [(NONE, 32), (Corrections(first_count_sec=8.0), 16), (Corrections(later_counts=2), 16)],
)
def test_a_first_count_that_was_told_stays(told: Corrections, beat: int) -> None:
    """The sheet's intro moves count 1 only where nobody has put it anywhere."""
    grid = replace(BeatGrid.steady_at(120, length_sec=60), first_beat=16)
    assert beat == begun_for(SHEET, grid, told).first_beat
    assert 16 == begun_for(replace(SHEET, intro_counts=None), grid, NONE).first_beat
