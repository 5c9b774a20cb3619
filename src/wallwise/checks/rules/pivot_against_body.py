"""A pivot or an unwind turns the way that leaves the legs uncrossed.

With the right foot in front of the left, or across it, the body can only turn left; with the right
toe touched behind, only right.  The left foot is the mirror of that.  Common practice, no source.
"""

from collections.abc import Iterator
from itertools import pairwise
from typing import NamedTuple

from wallwise.checks.rule import Rule
from wallwise.checks.sight import FOOT_NAMES, Sight, sights
from wallwise.dance.finding import Finding, Severity
from wallwise.dance.model import Foot, Kind, Place
from wallwise.reading import Reading
from wallwise.reading.tokens import TURN


class _Stand(NamedTuple):
    """How the legs stand before a turn: what it is called, where the foot is, which way they allow."""

    turn: str
    foot_is: str
    to_own_side: bool  # whether they allow a turn to the side of the foot that was placed


_IN_FRONT = _Stand("pivot", "in front", to_own_side=False)
_CROSSED = _Stand("unwind", "crossed in front", to_own_side=False)
_BEHIND = _Stand("unwind", "behind", to_own_side=True)
_STANDS = {
    (Kind.STEP, Place.FORWARD): _IN_FRONT,
    (Kind.STEP, Place.UNSAID): _IN_FRONT,  # "step R, pivot 1/2 L" steps forward
    (Kind.STEP, Place.ACROSS): _CROSSED,
    (Kind.TOUCH, Place.ACROSS): _CROSSED,
    (Kind.TOUCH, Place.BACK): _BEHIND,
    (Kind.TOUCH, Place.BEHIND): _BEHIND,
}


def _find(reading: Reading) -> Iterator[Finding]:
    for step, turn in pairwise(s for s in sights(reading) if s.event.kind is not Kind.HOLD):
        stand = _stand(step, turn)
        if stand is not None and _against(stand, step.event.foot, turn.event.turn):
            way = "right" if turn.event.turn > 0 else "left"
            yield RULE.at(
                turn,
                f"In {turn.where} the {stand.turn} turns {way} with {FOOT_NAMES[step.event.foot]} "
                f"{stand.foot_is}; from there it goes the other way.",
            )


def _stand(step: Sight, turn: Sight) -> _Stand | None:
    """How the legs stand before a turn of both feet on the floor; None where it is no such turn."""
    if turn.part is not step.part or turn.event.kind is not Kind.TURN:
        return None
    stand = _STANDS.get((step.event.kind, step.event.move.place))
    if stand is not None and not stand.to_own_side and turn.event.foot is not step.event.foot.other:
        return None
    return stand


def _against(stand: _Stand, foot: Foot, turn: int) -> bool:
    """Whether the legs do not allow the turn, in 1/48, right positive."""
    to_side = turn if foot is Foot.RIGHT else -turn
    most = TURN // 2 if stand is _IN_FRONT else TURN  # of a pivot over a half none can tell the way
    return 0 < (-to_side if stand.to_own_side else to_side) <= most


RULE = Rule(
    "pivot-against-body", Severity.WARNING, "A pivot or an unwind turns the way the legs allow.", _find
)
