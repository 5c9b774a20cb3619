"""A foot is told to step to the other foot's side without crossing."""

from collections.abc import Iterator

from wallwise.checks.rule import Rule
from wallwise.checks.sight import FOOT_NAMES, sights
from wallwise.dance.finding import Finding, Severity
from wallwise.dance.model import Foot, Kind, Place
from wallwise.reading import Reading
from wallwise.reading.solve import Solved

_KINDS = (Kind.STEP, Kind.ROCK, Kind.POINT, Kind.TOUCH, Kind.STOMP, Kind.BALL, Kind.SWAY)
_SIDES = {Foot.LEFT: "left", Foot.RIGHT: "right"}


def _find(reading: Reading) -> Iterator[Finding]:
    for sight in sights(reading):
        side = _other_side(sight.event)
        if side:
            yield RULE.at(
                sight,
                f"In {sight.where}, {FOOT_NAMES[sight.event.foot]} is sent to the {side} side, "
                "where the other foot stands: one of the two words is wrong.",
            )


def _other_side(event: Solved) -> str:
    """The side that the sheet itself sends the foot to, where it is the other foot's; else empty."""
    move = event.move
    if move.place is not Place.SIDE or event.kind not in _KINDS or move.toward is None:
        return ""
    if event.foot is not move.toward.other:
        return ""
    return _SIDES.get(move.toward, "")


RULE = Rule(
    "side-differs", Severity.WARNING, "A foot is sent to the other foot's side without crossing.", _find
)
