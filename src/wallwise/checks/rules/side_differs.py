"""A foot is told to step to the other foot's side without crossing."""

from collections.abc import Iterator

from wallwise.checks.rule import Rule
from wallwise.checks.sight import FOOT_NAMES, at, sights, where
from wallwise.dance.finding import Finding, Severity
from wallwise.dance.model import Foot, Kind, Place
from wallwise.reading import Reading

_KINDS = (Kind.STEP, Kind.ROCK, Kind.POINT, Kind.TOUCH, Kind.STOMP, Kind.BALL)


def _find(reading: Reading) -> Iterator[Finding]:
    for sight in sights(reading):
        event, move = sight.event, sight.event.move
        if (
            move.place is not Place.SIDE
            or move.toward not in (Foot.LEFT, Foot.RIGHT)
            or event.kind not in _KINDS
            or move.from_figure
        ):
            continue
        if event.foot is move.toward.other:
            side = "right" if move.toward is Foot.RIGHT else "left"
            yield at(
                sight, RULE.name, RULE.severity,
                f"In {where(sight)}, {FOOT_NAMES[event.foot]} is sent to the {side} side, where the other foot stands: one of the two words is wrong.",
            )  # fmt: skip


RULE = Rule(
    "side-differs", Severity.WARNING, "A foot is sent to the other foot's side without crossing.", _find
)
