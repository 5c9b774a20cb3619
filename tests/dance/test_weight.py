"""The law of weight."""

from fractions import Fraction

import pytest
from hypothesis import given
from tests.strategies import any_step

from wallwise.dance.model import Foot, Kind, Step
from wallwise.dance.weight import weight_after, weight_told

L, R, BOTH, NONE = Foot.LEFT, Foot.RIGHT, Foot.BOTH, Foot.NONE


@pytest.mark.parametrize(
    ("weight", "foot", "kind", "after"),
    [
        (L, R, Kind.STEP, R),
        (R, R, Kind.STEP, None),
        (L, R, Kind.TOUCH, L),
        (R, R, Kind.TOUCH, None),
        (R, L, Kind.TURN, L),
        (R, R, Kind.TURN, None),
        (L, L, Kind.SPIN, L),
        (L, R, Kind.SPIN, None),
        (R, R, Kind.HOP, R),
        (L, BOTH, Kind.SWIVEL, BOTH),
        (BOTH, R, Kind.STEP, R),
        (BOTH, R, Kind.KICK, L),
        (BOTH, R, Kind.SPIN, R),
        (L, NONE, Kind.HOLD, L),
    ],
)
def test_weight_after_one_event(weight: Foot, foot: Foot, kind: Kind, after: Foot | None) -> None:
    """Steps take weight, gestures leave it, and nobody steps with the foot that bears it."""
    assert after is weight_after(weight, Step(Fraction(1), foot, kind))


def test_action_of_both_feet_ends_where_it_says() -> None:
    """A swivel that ends on the left leaves the right free."""
    assert L is weight_after(R, Step(Fraction(1), BOTH, Kind.SWIVEL, ends_on=L))


@given(any_step())
def test_told_weight_is_the_weight_wherever_the_body_agrees(step: Step) -> None:
    """Taking the dance at its word differs from the body only where the body refuses."""
    for weight in (L, R, BOTH):
        after = weight_after(weight, step)
        assert (after or weight_told(weight, step)) is weight_told(weight, step)


@given(any_step())
def test_told_weight_of_a_refused_step_is_what_the_step_claims(step: Step) -> None:
    """A refused step leaves its own foot bearing the weight, a refused gesture the other."""
    for weight in (L, R):
        if weight_after(weight, step) is None:
            claims = step.foot if step.weight or step.kind.on_standing_foot else step.foot.other
            assert claims is weight_told(weight, step)
