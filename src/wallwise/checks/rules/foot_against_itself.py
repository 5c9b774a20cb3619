"""A foot is placed beside, over or behind itself."""

from collections.abc import Iterator

from wallwise.checks.rule import Rule
from wallwise.checks.sight import FOOT_NAMES, sights
from wallwise.dance.finding import Finding, Severity
from wallwise.reading import Reading


def _find(reading: Reading) -> Iterator[Finding]:
    for sight in sights(reading):
        event, move = sight.event, sight.event.move
        if move.against is not None and move.against is event.foot and "foot" not in event.clash:
            name = FOOT_NAMES[event.foot]
            yield RULE.at(
                sight,
                f"In {sight.where}, {name} is placed against {name} itself: one of the two words is wrong.",
                span=sight.passage.span_at(move.against_at),
            )


RULE = Rule("foot-against-itself", Severity.WARNING, "A foot is placed beside, over or behind itself.", _find)
