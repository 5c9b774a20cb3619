"""A dance walked through: mirrored traces, frames, extents and poses."""

from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import given, settings
from tests.strategies import danceable, dances, part_of

from wallwise.dance.clock import FRONT
from wallwise.dance.mirror import mirror
from wallwise.dance.model import Dance, Foot, Restart
from wallwise.dance.walls import unroll
from wallwise.floor.apply import start
from wallwise.floor.pose import between, pose
from wallwise.floor.stance import Footprint, Point, Stance
from wallwise.floor.stride import AVERAGE, UNIT
from wallwise.floor.trace import Extents, extents, simulate, trace_part, trace_steps
from wallwise.glossary.notation import parse_steps

SQUARE = part_of(
    parse_steps(["1 step R forward", "2 step L beside", "3 step R side right 1/4", "4 step L beside"]),
    counts=4,
)


def _glass(stance: Stance) -> Stance:
    def foot(print_: Footprint) -> Footprint:
        return Footprint(Point(-print_.at.x_m, print_.at.y_m), -print_.toes % 1)

    return Stance(foot(stance.right), foot(stance.left), stance.weight.other, -stance.facing % 1)


def _numbers(stance: Stance) -> list[float]:
    return [n for foot in (stance.left, stance.right) for n in (foot.at.x_m, foot.at.y_m, float(foot.toes))]


@given(danceable())
def test_mirrored_dance_gives_the_mirrored_trace(dance: Dance) -> None:
    """In a looking glass every stance is the mirrored stance, event by event."""
    for body in (AVERAGE, UNIT):
        trace, glass = simulate(dance, walls=2, body=body), simulate(mirror(dance), walls=2, body=body)

        assert len(trace.rows) == len(glass.rows)
        for row, other in zip(trace.rows, glass.rows, strict=True):
            assert (other.weight, other.facing) == (row.weight.other, -row.facing % 1)
            assert pytest.approx(_numbers(_glass(row.after)), abs=1e-9) == _numbers(other.after)


@given(danceable())
def test_trace_agrees_with_the_unrolled_dance(dance: Dance) -> None:
    """Facing and weight at the end of the trace are those of the last wall."""
    trace, walls = simulate(dance, walls=None), unroll(dance)

    assert walls[-1].ends_facing == trace.end.facing == FRONT
    assert walls[-1].ends_weight is trace.end.weight
    assert [row.index for row in trace.rows] == list(range(len(trace.rows)))
    assert () == simulate(dance).refused


@settings(max_examples=20)
@given(dances)
def test_no_dance_raises(dance: Dance) -> None:
    """A bad dance gives a trace with refusals, and its floor can be measured."""
    trace = simulate(dance, walls=3)

    assert extents(trace).width_m > 0
    assert set(trace.refused) <= set(trace.rows)


def test_empty_dance_gives_an_empty_trace() -> None:
    """No steps, no rows: the dancer stands where the dance starts."""
    trace = simulate(Dance("Empty", ()))

    assert () == trace.rows
    assert start() == trace.end == pose(trace, Fraction(3))


def test_row_by_row() -> None:
    """A quarter box: forward, close, a quarter right to the side, close."""
    trace = trace_part(SQUARE, body=UNIT)

    assert [(0, 1), (0, 1), (0, 0), (0, 0)] == [(r.after.over.x_m, r.after.over.y_m) for r in trace.rows]
    assert [Foot.RIGHT, Foot.LEFT] * 2 == [row.weight for row in trace.rows]
    assert [Foot.LEFT, Foot.RIGHT] * 2 == [row.free for row in trace.rows]
    assert [1, 1, 1, 1] == [row.moved_m for row in trace.rows]
    assert Fraction(1, 4) == trace.net_turn
    assert Point(0, 0) == trace.travel


def test_counts_run_through_the_walls() -> None:
    """The second wall's first event has the count after the first wall's last."""
    dance = Dance("Square", (SQUARE,), restarts=(Restart(1, Fraction(2)),))
    trace = simulate(dance, walls=2)

    assert [1, 2, 3, 4, 5, 6] == [row.count for row in trace.rows]
    assert [1, 1, 2, 2, 2, 2] == [row.wall.number for row in trace.rows if row.wall]


def test_every_wall_looks_alike_in_its_own_frame() -> None:
    """Seen from where its wall begins, each repetition puts the feet where the first did."""
    trace = simulate(Dance("Square", (SQUARE,)), walls=4, body=UNIT)
    seen = [row.after.over.seen_from(trace.wall_frame(row)) for row in trace.rows]

    for wall in range(1, 4):
        for first, again in zip(seen[:4], seen[4 * wall : 4 * wall + 4], strict=True):
            assert pytest.approx(0, abs=1e-9) == first.distance_m(again)


def test_extents_reach_round_the_feet() -> None:
    """From the start to the farthest foot, half a foot around."""
    body = replace(UNIT, foot_m=0.5)
    steps = parse_steps(["1 step R side", "2 step L beside", "3 step R forward", "4 step L forward"])
    floor = extents(trace_steps(steps, start=start(body=body), body=body))

    assert Extents(left_m=-0.25, right_m=1.25, back_m=-0.25, ahead_m=2.25) == floor
    assert (1.5, 2.5) == (floor.width_m, floor.depth_m)


def test_pose_between_two_counts() -> None:
    """Half way to a quarter turn the body faces an eighth and the foot is half way."""
    trace = trace_part(SQUARE, body=UNIT)

    assert trace.start == pose(trace, Fraction(1, 2))
    assert trace.rows[0].after == pose(trace, Fraction(1))
    half = pose(trace, Fraction(5, 2))
    assert Fraction(1, 8) == half.facing
    assert Point(0, 0.5) == half.right.at
    assert Foot.LEFT is half.weight
    assert trace.end == pose(trace, Fraction(9))


@given(danceable(counts=4))
def test_pose_meets_the_stances_at_both_ends(dance: Dance) -> None:
    """At share 0 the pose is the stance before, at share 1 the stance after."""
    for row in simulate(dance).rows:
        assert row.before == between(row, Fraction(0)) == between(row, Fraction(-1))
        assert row.after == between(row, Fraction(1)) == between(row, Fraction(2))
