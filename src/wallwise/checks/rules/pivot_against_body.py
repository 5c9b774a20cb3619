"""A pivot turns towards the foot in front: the legs cannot follow."""

from collections.abc import Iterator
from itertools import pairwise

from wallwise.checks.rule import Rule
from wallwise.checks.sight import FOOT_NAMES, Sight, sights
from wallwise.dance.finding import Finding, Severity
from wallwise.dance.model import Foot, Kind, Place
from wallwise.reading import Reading
from wallwise.reading.tokens import TURN


def _find(reading: Reading) -> Iterator[Finding]:
    for step, pivot in pairwise(s for s in sights(reading) if s.event.kind is not Kind.HOLD):
        front = step.event.foot
        if _is_pivot(step, pivot) and 0 < _towards(front, pivot.event.turn) <= TURN // 2:
            way = "right" if pivot.event.turn > 0 else "left"
            yield RULE.at(
                pivot,
                f"In {pivot.where} the pivot turns {way} with {FOOT_NAMES[front]} in front; "
                "from there a pivot turns the other way.",
            )


def _is_pivot(step: Sight, turn: Sight) -> bool:
    """Whether the two are a step forward and a turn onto the foot behind."""
    return (
        turn.part is step.part
        and turn.event.kind is Kind.TURN
        and step.event.kind is Kind.STEP
        and step.event.move.place is Place.FORWARD
        and step.event.foot is turn.event.foot.other
    )


def _towards(front: Foot, turn: int) -> int:
    """How far the pivot turns to the side of the foot in front, in 1/48; negative to the other."""
    return turn if front is Foot.RIGHT else -turn


RULE = Rule("pivot-against-body", Severity.WARNING, "A pivot turns towards the foot in front.", _find)
