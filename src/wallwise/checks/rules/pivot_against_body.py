"""A pivot turns towards the foot in front: the legs cannot follow."""

from collections.abc import Iterator
from itertools import pairwise

from wallwise.checks.rule import Rule
from wallwise.checks.sight import FOOT_NAMES, at, sights, where
from wallwise.dance.finding import Finding, Severity
from wallwise.dance.model import Foot, Kind, Place
from wallwise.reading import Reading
from wallwise.reading.tokens import TURN


def _find(reading: Reading) -> Iterator[Finding]:
    for step, pivot in pairwise(s for s in sights(reading) if s.event.kind is not Kind.HOLD):
        if (
            pivot.part is step.part
            and pivot.event.kind is Kind.TURN
            and step.event.move.place is Place.FORWARD
            and step.event.kind is Kind.STEP
            and step.event.foot is pivot.event.foot.other
            and 0 < _towards(step.event.foot, pivot.event.turn) <= TURN // 2
        ):
            way = "right" if pivot.event.turn > 0 else "left"
            yield at(
                pivot, RULE.name, RULE.severity,
                f"In {where(pivot)} the pivot turns {way} with {FOOT_NAMES[step.event.foot]} in front; from there a pivot turns the other way.",
            )  # fmt: skip


def _towards(front: Foot, turn: int) -> int:
    """How far the pivot turns to the side of the foot in front, in 1/48; negative to the other."""
    return turn if front is Foot.RIGHT else -turn


RULE = Rule("pivot-against-body", Severity.WARNING, "A pivot turns towards the foot in front.", _find)
