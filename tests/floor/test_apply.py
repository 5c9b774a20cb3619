"""One event of a foot, in unit steps that can be checked on squared paper."""

import cmath
from fractions import Fraction

import pytest
from hypothesis import given
from tests.strategies import any_step, danceable_steps

from wallwise.dance.model import Foot, Kind, Place, Step
from wallwise.dance.weight import weight_after
from wallwise.floor.apply import Refusal, apply, refusal, start
from wallwise.floor.stance import Point, Stance
from wallwise.floor.stride import UNIT
from wallwise.glossary.notation import parse_steps


def _after(*lines: str, first: Foot = Foot.RIGHT) -> Stance:
    stance = start(first, body=UNIT)
    for step in parse_steps(lines):
        assert refusal(stance, step) is None
        stance = apply(stance, step, body=UNIT)
    return stance


@pytest.mark.parametrize(
    ("place", "x", "y"),
    [("forward", 0, 1), ("back", 0, -1), ("side", 1, 0), ("beside", 0, 0), ("place", 0, 0),
     ("across", -1, 1), ("behind", -1, -1), ("lock behind", -0.5, -1), ("lock front", -0.5, 1)],
)  # fmt: skip
def test_where_a_step_lands(place: str, x: float, y: float) -> None:
    """The right foot lands where its place says, seen from the left; the left keeps its spot."""
    stance = _after(f"1 step R {place}")

    assert Point(x, y) == stance.right.at
    assert Point(0, 0) == stance.left.at
    assert Foot.LEFT is stance.free


def test_turn_comes_before_the_step_lands() -> None:
    """Turning a quarter left stepping forward goes towards 9:00."""
    stance = _after("1 step R forward left 1/4")

    assert Point(-1, 0) == stance.right.at
    assert Fraction(3, 4) == stance.facing == stance.right.toes == stance.left.toes


def test_pivot_turns_on_the_spot_and_gives_the_weight_over() -> None:
    """After step, half pivot the feet are where they were, the left now ahead with the weight."""
    stance = _after("1 step R forward", "2 turn L left 1/2")

    assert (Point(0, 1), Point(0, 0)) == (stance.right.at, stance.left.at)
    assert Point(0, -1) == stance.right.at.seen_from(stance.frame)
    assert (Foot.LEFT, Fraction(1, 2)) == (stance.weight, stance.facing)


def test_unwind_uncrosses_the_feet() -> None:
    """Crossed to the left of the left foot, the right is on its right again after a half turn left."""
    stance = _after("1 touch R across", "2 turn R left 1/2")

    assert stance.right.at.seen_from(stance.frame).x_m == 0
    assert stance.left.at.seen_from(stance.frame).x_m < 0


def test_recover_finds_the_foot_where_it_was() -> None:
    """A rock to the side and its recover leave the left foot at home and the right out."""
    stance = _after("1 step L forward", "2 rock R side", "3 recover L", first=Foot.LEFT)

    assert Point(0, 1) == stance.over == stance.left.at
    assert Point(0.75, 1) == stance.right.at


def test_vine_travels_its_own_way() -> None:
    """Side, behind, side: the left foot lands beyond the right, and each step gains ground."""
    xs = [_after(*lines).over.x_m for lines in (
        ["1 step R side"],
        ["1 step R side", "2 step L behind"],
        ["1 step R side", "2 step L behind", "3 step R side"],
    )]  # fmt: skip

    assert [1, 2, 3] == xs


def test_free_foot_is_carried_round() -> None:
    """A spin on the left takes the right along, half way round."""
    stance = _after("1 touch R side", "2 spin L right 1/2")

    assert Point(-0.75, 0) == stance.right.at
    assert Point(0, 0) == stance.left.at
    assert Foot.LEFT is stance.weight


def test_hop_takes_both_feet_along() -> None:
    """A hop back on the left moves the standing foot; the right keeps its place beside it."""
    stance = _after("1 hop L back")

    assert Point(0, -0.5) == stance.left.at == stance.right.at


@pytest.mark.parametrize(
    ("line", "left", "right"),
    [
        ("1 jump both side", (-0.5, 0), (0.5, 0)),
        ("1 jump both forward", (0, 1), (0, 1)),
        ("1 jump both side toward L", (-1, 0), (-1, 0)),
        ("1 jump both", (0, 0), (0, 0)),
        ("1 bounce both forward", (0, 0), (0, 0)),
        ("1 jump both back right 1/4", (-1, 0), (-1, 0)),
    ],
)
def test_both_feet(line: str, left: tuple[float, float], right: tuple[float, float]) -> None:
    """A jump lands apart, on its way, or where it was; a bounce stays."""
    stance = _after(line)

    assert (Point(*left), Point(*right)) == (stance.left.at, stance.right.at)
    assert Foot.BOTH is stance.weight


def test_step_out_to_the_other_side() -> None:
    """A side step told to go the other way lands there."""
    assert Point(-1, 0) == _after("1 step R side toward L").right.at


def test_fan_takes_the_toes_out_and_back() -> None:
    """A fan moves no foot; its toes go outward an eighth and come straight again."""
    out, back = _after("1 fan R side"), _after("1 fan R side", "2 fan R place")

    assert (Fraction(1, 8), Fraction(0)) == (out.right.toes, out.left.toes)
    assert Fraction(0) == back.right.toes
    assert out.right.at == back.right.at == Point(0, 0)
    assert Fraction(7, 8) == _after("1 fan both side").left.toes


def test_hold_moves_nothing() -> None:
    """Nothing changes on a hold."""
    assert start(body=UNIT) == _after("1 hold")


def test_foot_that_bears_the_weight_is_refused() -> None:
    """The refusal names the foot in words, and the step is danced as though it were free."""
    stance = start(Foot.LEFT, body=UNIT)
    (step,) = parse_steps(["1 step R forward"])
    refused = refusal(stance, step)

    assert Refusal(Foot.RIGHT, Kind.STEP) == refused
    assert "the right foot bears the weight: it is not free to step" == refused.says
    assert Point(0, 1) == apply(stance, step, body=UNIT).over


def test_spin_wants_the_foot_that_stands() -> None:
    """Nobody spins on the foot in the air."""
    (spin,) = parse_steps(["1 spin R right 1"])
    refused = refusal(start(), spin)

    assert refused is not None
    assert "the right foot does not bear the weight: it cannot spin" == refused.says
    assert Foot.RIGHT is apply(start(), spin).weight


@given(any_step())
def test_body_and_law_of_weight_agree(step: Step) -> None:
    """The floor refuses what the law of weight refuses, and never raises."""
    for first in (Foot.LEFT, Foot.RIGHT, Foot.BOTH):
        stance = start(first)
        after = apply(stance, step)
        assert (weight_after(stance.weight, step) is None) is (refusal(stance, step) is not None)
        assert weight_after(stance.weight, step) in (None, after.weight)
        assert (stance.facing + step.turn) % 1 == after.facing


# Where a foot lands in unit steps, on the complex plane: x + iy for the right foot.
_UNITS = {Place.FORWARD: 1j, Place.BACK: -1j, Place.SIDE: 1, Place.ACROSS: -1 + 1j, Place.BEHIND: -1 - 1j}


@given(danceable_steps())
def test_steps_add_up_as_complex_numbers(steps: tuple[Step, ...]) -> None:
    """Walked on the complex plane, plain steps end at the same places.

    An independent reckoning: the standing foot plus the unit step, turned by e^(-2 pi i f).
    """
    plain = [s for s in steps if s.kind is Kind.STEP and s.place in _UNITS and not s.long and not s.toward]
    stance, stands, facing = start(Foot.RIGHT, body=UNIT), 0j, 0.0
    foot = Foot.RIGHT
    for told in plain:
        stance = apply(stance, Step(told.at, foot, Kind.STEP, told.place, told.turn), body=UNIT)
        facing += float(told.turn)
        unit = complex(_UNITS[told.place])
        unit = unit if foot is Foot.RIGHT else -unit.conjugate()
        stands += unit * cmath.exp(-2j * cmath.pi * facing)
        foot = foot.other

    assert pytest.approx((stands.real, stands.imag), abs=1e-9) == (stance.over.x_m, stance.over.y_m)
