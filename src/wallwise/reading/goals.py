"""What the search may begin with and should end in: for the dance, a tag, an ending, a few steps inside."""

from __future__ import annotations

from fractions import Fraction
from math import gcd

from wallwise.dance.model import Foot
from wallwise.reading.moves import CONFLICT
from wallwise.reading.record import PartReading, Reading
from wallwise.reading.solve import Goal
from wallwise.reading.tokens import TURN

# Most dances begin with the right foot; waltzes nearly as often with the left.
_STARTS_LEFT = 0.4
_WALTZ_STARTS_LEFT = 0.1


def dance_goal(reading: Reading, *, phrased: bool) -> Goal:
    """What the sheet says of the start and the end, as costs; a phrased dance need not come round."""
    left_first = _WALTZ_STARTS_LEFT if reading.declared.waltz else _STARTS_LEFT
    starts = {Foot.LEFT: 0.0, Foot.RIGHT: left_first}  # by the foot that bears the weight
    bears = reading.declared.bears
    if bears is not None:
        starts = {bears: 0.0, bears.other: CONFLICT}
    if phrased:
        starts = {Foot.LEFT: starts[Foot.LEFT], Foot.RIGHT: min(starts[Foot.RIGHT], 1.0)}
        return Goal(starts, loops=1.0)
    return Goal(starts, _ends(reading))


def _ends(reading: Reading) -> dict[int, float] | None:
    """The cost of each facing at the end of a wall; None where the sheet says nothing of it."""
    walls, claim = reading.declared.walls, reading.end_claim
    if walls is None and claim is None:
        return None
    return {
        facing: CONFLICT * (walls is not None and _walls(facing) != walls.value)
        + CONFLICT * (claim is not None and facing != claim[0])
        for facing in range(TURN)
    }


def _walls(facing: int) -> int:
    """How many walls a dance has that ends facing there, in 1/48 of a turn."""
    return TURN // gcd(facing, TURN)


def tag_goal(begun: Foot, frees: Foot) -> Goal:
    """A tag begins with the weight on `begun` and gives it to `frees`, as the dance goes on from there."""
    return Goal(_standing(begun), loops=1.5, end_weight=frees)


def ending_goal() -> Goal:
    """An ending is danced from somewhere inside a wall: which foot is free then is not known."""
    return Goal({Foot.LEFT: 0.0, Foot.RIGHT: 0.1}, loops=0.0)


def inside_goal(
    part: PartReading, at: Fraction, *, end_weight: Foot, loops: float, ends: dict[int, float] | None = None
) -> Goal:
    """Other steps for those of a part from beat `at`: they begin as those began, and end as told."""
    weight, facing = part.stance_before(at)
    return Goal(_standing(weight), ends, loops, facing, end_weight)


def _standing(weight: Foot) -> dict[Foot, float]:
    """Weight on that foot; on either, where it is on both."""
    return {Foot.LEFT: 0.0, Foot.RIGHT: 0.0} if weight is Foot.BOTH else {weight: 0.0}
