"""The waltz's left and right turning boxes, in unit steps.

Sources: C.C.C.A. workshop sheet "Turning Boxes" (a box turns a quarter in each measure and
faces each wall once; the path of the left box runs clockwise, of the right box
counter-clockwise) and Wilkinson, *Dancing Without an Instructor* (four bars, twelve beats
to a whole turn).  The sheet lists the right box's facings in the left box's order; a
quarter to the right of the front is 3:00, as here.  Places were worked out by hand from a
whole step forward or back, then a whole step to the side.  Ballroom technique puts the turn
between the first step and the second, so the second carries it here.
"""

from fractions import Fraction

import pytest

from wallwise.dance.clock import facing_name
from wallwise.dance.mirror import mirror_step
from wallwise.dance.model import Foot, Step
from wallwise.floor.apply import start
from wallwise.floor.stance import Point
from wallwise.floor.stride import UNIT
from wallwise.floor.trace import Trace, trace_steps
from wallwise.glossary.notation import parse_steps

LEFT_BOX = """
1 step L forward
2 step R side left 1/4
3 step L beside
4 step R back
5 step L side left 1/4
6 step R beside
7 step L forward
8 step R side left 1/4
9 step L beside
10 step R back
11 step L side left 1/4
12 step R beside
"""

RIGHT_BOX = """
1 step L back
2 step R side right 1/4
3 step L beside
4 step R forward
5 step L side right 1/4
6 step R beside
7 step L back
8 step R side right 1/4
9 step L beside
10 step R forward
11 step L side right 1/4
12 step R beside
"""


def _danced(box: str) -> Trace:
    return trace_steps(parse_steps(box.strip().splitlines()), start=start(Foot.LEFT, body=UNIT), body=UNIT)


@pytest.mark.parametrize(
    ("box", "places", "facings"),
    [
        (LEFT_BOX, [(0, 2), (2, 2), (2, 0), (0, 0)], ["9:00", "6:00", "3:00", "12:00"]),
        (RIGHT_BOX, [(0, -2), (2, -2), (2, 0), (0, 0)], ["3:00", "6:00", "9:00", "12:00"]),
    ],
    ids=["left", "right"],
)
def test_turning_box(box: str, places: list[tuple[int, int]], facings: list[str]) -> None:
    """A turning box goes round a square of two steps and closes exactly, a wall a measure."""
    measures = _danced(box).rows[2::3]

    assert [Point(*map(float, place)) for place in places] == [row.after.over for row in measures]
    assert facings == [facing_name(row.facing) for row in measures]


@pytest.mark.parametrize(("box", "turn"), [(LEFT_BOX, -1), (RIGHT_BOX, 1)], ids=["left", "right"])
def test_turning_box_is_danced_through(box: str, turn: int) -> None:
    """Twelve weight changes make one whole turn and leave the foot free that began."""
    trace = _danced(box)

    assert () == trace.refused
    assert 12 == sum(row.step.weight for row in trace.rows)
    assert Fraction(turn) == trace.net_turn
    assert Foot.LEFT is trace.end.free


@pytest.mark.parametrize(("box", "clockwise"), [(LEFT_BOX, True), (RIGHT_BOX, False)], ids=["left", "right"])
def test_path_runs_against_the_body(box: str, clockwise: bool) -> None:
    """The left box travels clockwise while the body turns left, and the right box the other way."""
    corners = [row.after.over for row in _danced(box).rows[2::3]]
    # The shoelace formula: the area is positive counter-clockwise.
    twice_area = sum(
        a.x_m * b.y_m - b.x_m * a.y_m for a, b in zip(corners, corners[1:] + corners[:1], strict=True)
    )

    assert clockwise is (twice_area < 0)
    assert 8.0 == abs(twice_area)


def test_four_whole_eight_half_turns() -> None:
    """Two boxes fill 24 counts and bring the dancer back to place and facing."""
    once = _danced(LEFT_BOX)
    twice = trace_steps([row.step for row in once.rows], start=once.end, body=UNIT)

    assert once.end.over == twice.end.over == Point(0.0, 0.0)
    assert Fraction(0) == twice.end.facing


def test_mirrored_left_box_leads_with_the_right() -> None:
    """The left box in a looking glass is a right box led by the right foot."""
    steps: list[Step] = [mirror_step(row.step) for row in _danced(LEFT_BOX).rows]
    trace = trace_steps(steps, start=start(Foot.RIGHT, body=UNIT), body=UNIT)

    assert ["3:00", "6:00", "9:00", "12:00"] == [facing_name(row.facing) for row in trace.rows[2::3]]
    assert Point(-2.0, 2.0) == trace.rows[5].after.over
