"""The grid reads the same in both directions."""

from __future__ import annotations

import re
from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from wallwise.song.grid import BeatGrid, Phrase

STEADY = BeatGrid.steady_at(120, length_sec=60, first_sec=0.5)
BENT = replace(STEADY, anchors=((0.0, 0.5), (10.0, 5.5), (20.0, 11.5)), steady=False)

_steps = st.lists(
    st.tuples(st.integers(1, 64), st.floats(0.25, 1.5)),
    min_size=1,
    max_size=12,
)


@st.composite
def grids(draw: st.DrawFn) -> BeatGrid:
    beat, sec = draw(st.integers(-8, 8)), draw(st.floats(0, 5))
    anchors = [(float(beat), sec)]
    for beats, period in draw(_steps):
        beat, sec = beat + beats, sec + beats * period
        anchors.append((float(beat), sec))
    return replace(
        STEADY,
        anchors=tuple(anchors),
        first_beat=draw(st.integers(0, 40)),
        last_beat=beat,
        counts_per_beat=draw(st.sampled_from([Fraction(1, 2), Fraction(1), Fraction(2)])),
    )


@given(grids(), st.floats(-50, 1000))
def test_seconds_and_beats_undo_each_other(grid: BeatGrid, value: float) -> None:
    """Each direction undoes the other, between, on and beyond the anchors."""
    assert value == pytest.approx(grid.sec_to_beat(grid.beat_to_sec(value)), abs=1e-7)
    assert value == pytest.approx(grid.beat_to_sec(grid.sec_to_beat(value)), abs=1e-7)
    assert value == pytest.approx(grid.sec_to_count(grid.count_to_sec(value)), abs=1e-7)


@given(grids())
def test_later_beats_are_later(grid: BeatGrid) -> None:
    """The line of time never turns back."""
    seconds = [grid.beat_to_sec(beat / 3) for beat in range(-30, 300)]
    assert seconds == sorted(set(seconds))


@given(grids())
def test_anchors_are_met_exactly(grid: BeatGrid) -> None:
    """An anchor is on the line."""
    for beat, sec in grid.anchors:
        assert sec == pytest.approx(grid.beat_to_sec(beat), abs=1e-9)


def test_the_ends_run_on_with_the_neighbouring_slope() -> None:
    """Before the first anchor 0.5 s a beat as in the first stretch, after the last 0.6 s."""
    assert pytest.approx(-0.5) == BENT.beat_to_sec(-2)
    assert pytest.approx(5.5 + 0.6) == BENT.beat_to_sec(11)
    assert pytest.approx(11.5 + 0.6) == BENT.beat_to_sec(21)


def test_counts_begin_with_one_on_the_first_beat() -> None:
    """Count 1 falls on the first beat, whatever the level of counting."""
    for counts_per_beat, second_count_sec in ((1, 8.5 + 0.5), (Fraction(1, 2), 8.5 + 1.0), (2, 8.5 + 0.25)):
        grid = replace(STEADY, first_beat=16, counts_per_beat=Fraction(counts_per_beat))
        assert pytest.approx(8.5) == grid.count_to_sec(1)
        assert pytest.approx(second_count_sec) == grid.count_to_sec(2)
        assert pytest.approx(120 * counts_per_beat) == grid.counts_per_minute


def test_the_tempo_is_the_median_of_the_beats() -> None:
    """Ten beats at 0.5 s and many at 0.6 s are 100 beats a minute."""
    assert pytest.approx(120) == STEADY.bpm
    assert pytest.approx(100) == BENT.bpm


def test_eights_begin_anew_with_each_phrase() -> None:
    """A break of two counts moves the eights after it; in waltzes they are sixes."""
    phrases = (Phrase(0, 16, 1.0), Phrase(16, 2, 1.0), Phrase(18, 16, 1.0))
    grid = replace(STEADY, phrases=phrases, last_beat=30)
    assert [0, 8, 16, 18, 26] == list(grid.eights())
    assert [0, 6, 12] == list(replace(STEADY, beats_per_bar=3, last_beat=14).eights())
    half = replace(STEADY, counts_per_beat=Fraction(1, 2), last_beat=40)
    assert [0, 16, 32] == list(half.eights())


def test_the_intro_is_counted_to_count_one() -> None:
    """From the first sound and from the first plain beat."""
    grid = replace(STEADY, first_beat=16, first_sound_sec=0.55, clear_beat=8)
    assert 16 == grid.intro_counts
    assert 8 == grid.clear_intro_counts


@pytest.mark.parametrize(
    ("change", "says"),
    [
        ({"anchors": ((0.0, 0.0),)}, "two anchors"),
        ({"anchors": ((0.0, 0.0), (1.0, 0.0))}, "backwards at beat 1"),
        ({"anchors": ((2.0, 0.0), (1.0, 1.0))}, "backwards at beat 1"),
        ({"anchors": ((0.0, 0.0), (1.0, float("nan")))}, "not a number"),
        ({"beats_per_bar": 0}, "bar of 0"),
        ({"counts_per_beat": Fraction(3)}, "1/2, 1 or 2"),
        ({"phrases": (Phrase(8, 8, 1.0), Phrase(8, 8, 1.0))}, "phrases run backwards"),
    ],
)
def test_contradictions_are_refused(change: dict[str, object], says: str) -> None:
    """A grid that cannot be is not made."""
    with pytest.raises(ValueError, match=re.escape(says)):
        replace(STEADY, **change)  # type: ignore[arg-type]


@pytest.mark.parametrize("bpm", [0, -1, float("nan"), float("inf"), 0.5])
def test_a_steady_grid_needs_a_tempo_and_a_length(bpm: float) -> None:
    """No tempo, no grid."""
    with pytest.raises(ValueError, match=r"tempo|second beat"):
        BeatGrid.steady_at(bpm, length_sec=60)
