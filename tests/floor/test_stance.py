"""Points and frames against two references: complex arithmetic and scipy's rotations."""

import cmath
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.spatial.transform import Rotation
from tests.strategies import EIGHTHS

from wallwise.dance.model import Foot
from wallwise.floor.apply import start
from wallwise.floor.stance import ORIGIN, Footprint, Frame, Point, Stance
from wallwise.floor.stride import UNIT

METRES = st.floats(-20, 20)
POINTS = st.builds(Point, METRES, METRES)
TURNS = EIGHTHS | st.fractions(-3, 3, max_denominator=360)


def _near(point: Point) -> object:
    return pytest.approx((point.x_m, point.y_m), abs=1e-9)


@pytest.mark.parametrize(
    ("turn", "place"), [("1/4", (1.0, 0.0)), ("1/2", (0.0, -1.0)), ("-1/4", (-1.0, 0.0)), ("1", (0.0, 1.0))]
)
def test_ahead_of_each_wall(turn: str, place: tuple[float, float]) -> None:
    """One metre ahead, a quarter to the right lies one metre to the right, exactly."""
    assert Point(*place) == Point(0.0, 1.0).turned(Fraction(turn))


@given(POINTS, TURNS)
def test_turned_as_scipy_turns(point: Point, turn: Fraction) -> None:
    """A turn is a rotation about the upward axis, clockwise from above (scipy's is the other way)."""
    degrees = -360 * float(turn)
    x_m, y_m, _ = Rotation.from_euler("z", degrees, degrees=True).apply([point.x_m, point.y_m, 0.0])

    assert (x_m, y_m) == _near(point.turned(turn))


@given(POINTS, POINTS, TURNS)
def test_turned_about_as_complex_numbers_turn(point: Point, centre: Point, turn: Fraction) -> None:
    """Carried round a centre as the complex plane carries it."""
    z, c = complex(point.x_m, point.y_m), complex(centre.x_m, centre.y_m)
    turned = (z - c) * cmath.exp(-2j * cmath.pi * float(turn)) + c

    assert (turned.real, turned.imag) == _near(point.turned(turn, about=centre))


@given(POINTS, POINTS, TURNS)
def test_frames_are_undone(point: Point, origin: Point, facing: Fraction) -> None:
    """What a frame sees is put back where it was."""
    frame = Frame(origin, facing)

    assert (point.x_m, point.y_m) == _near(point.seen_from(frame).out_of(frame))


def test_dancer_sees_the_front_wall_behind_from_the_back_wall() -> None:
    """Facing 6:00, what lies ahead and right in the room is behind and left."""
    assert Point(-1.0, -2.0) == Point(2.0, 5.0).seen_from(Frame(Point(1.0, 3.0), Fraction(1, 2)))


def test_body_is_over_the_foot_that_stands() -> None:
    """Midway between the feet where both stand."""
    feet = (Footprint(Point(-1.0, 0.0)), Footprint(Point(3.0, 4.0)))

    assert Point(-1.0, 0.0) == Stance(*feet, Foot.LEFT).over
    assert Point(3.0, 4.0) == Stance(*feet, Foot.RIGHT).over
    assert Point(1.0, 2.0) == Stance(*feet, Foot.BOTH).over
    assert Foot.BOTH is Stance(*feet, Foot.BOTH).free
    assert pytest.approx(32**0.5) == Stance(*feet, Foot.LEFT).apart_m


def test_start_is_the_origin() -> None:
    """A dance starts with both feet about the origin, facing 12:00."""
    stance = start(Foot.LEFT, body=UNIT)

    assert Frame(ORIGIN, Fraction(0)) == stance.frame
    assert Foot.LEFT is stance.free
