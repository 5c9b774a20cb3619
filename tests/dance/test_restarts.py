"""Where a dance may begin again: where its first foot is free, between whole counts."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from hypothesis import given
from tests.strategies import danceable

from wallwise.dance.model import Dance, Foot, Kind, Part, Restart, Section, Step
from wallwise.dance.restarts import restart_counts
from wallwise.dance.walls import unroll


@given(danceable(counts=16))
def test_a_restart_there_frees_the_foot(dance: Dance) -> None:
    """Cut there, the next wall finds the weight off the foot that begins; cut elsewhere, on it."""
    free = set(restart_counts(dance))
    for after in range(8, 16):
        cut = replace(dance, restarts=(Restart(1, Fraction(after)),))
        weight = unroll(cut, walls=1)[0].ends_weight
        assert (Fraction(after) in free) == (weight is not dance.starts_on)
    assert {int(counts) for counts in free} <= set(range(8, 16))


def test_an_and_belongs_to_the_count_before_it() -> None:
    """8& is danced before the restart after 8: two steps more change the foot twice."""
    feet = [Foot.RIGHT, Foot.LEFT] * 4
    steps = [Step(Fraction(at), foot, Kind.STEP) for at, foot in enumerate(feet, 1)]
    steps.append(Step(Fraction(17, 2), Foot.RIGHT, Kind.STEP))
    dance = Dance("And", (Part("main", (Section(1, Fraction(1), Fraction(10), tuple(steps)),)),))
    assert () == restart_counts(dance)


def test_a_waltz_restarts_from_six_counts_on() -> None:
    """Two bars at the least, as of any dance."""
    feet = [Foot.LEFT, Foot.RIGHT] * 6
    steps = tuple(Step(Fraction(at), foot, Kind.STEP) for at, foot in enumerate(feet, 1))
    part = Part("main", (Section(1, Fraction(1), Fraction(12), steps),))
    waltz = Dance("Six", (part,), starts_on=Foot.LEFT, beats_per_bar=3)
    assert [6, 8, 10] == list(restart_counts(waltz))


def test_a_phrased_dance_has_its_own_order() -> None:
    """No place is offered in a sequence, and none in a dance without parts."""
    assert () == restart_counts(Dance("Phrased", (Part("A", ()),), sequence=("A", "A")))
    assert () == restart_counts(Dance("", ()))
