"""The dancer between two events, for drawings."""

from dataclasses import replace
from fractions import Fraction

from wallwise.floor.stance import Footprint, Stance
from wallwise.floor.trace import Row, Trace


def pose(trace: Trace, count: Fraction) -> Stance:
    """The stance at any count, metres in the room frame.

    A step arrives on its count and is under way since the one before; feet go straight
    and the body turns evenly, the way the step says.  Before the first event it is the
    start, after the last the end.
    """
    since: Fraction | None = None
    for row in trace.rows:
        if count < row.count:
            return row.before if since is None else between(row, (count - since) / (row.count - since))
        since = row.count
    return trace.end


def between(row: Row, share: Fraction) -> Stance:
    """The stance when `share` of the event's way is done, 0 to 1; the weight goes over at the end.

    A share below 0 or above 1 is taken as 0 or 1.
    """
    if share <= 0:
        return row.before
    if share >= 1:
        return row.after
    turn = row.step.turn * share
    return replace(
        row.before,
        left=_foot_between(row.before.left, row.after.left, share=share, turn=turn),
        right=_foot_between(row.before.right, row.after.right, share=share, turn=turn),
        facing=(row.before.facing + turn) % 1,
    )


def _foot_between(before: Footprint, after: Footprint, *, share: Fraction, turn: Fraction) -> Footprint:
    return Footprint(before.at.toward(after.at, float(share)), (before.toes + turn) % 1)
