"""A turn whose direction is not told, and nothing else settles it."""

from collections.abc import Iterator

from wallwise.checks.rule import Rule
from wallwise.checks.rules.two_readings import doubts
from wallwise.dance.finding import Finding, Severity
from wallwise.reading import Reading


def _find(reading: Reading) -> Iterator[Finding]:
    for sight, rival in doubts(reading):
        if not (rival.move.way_told and sight.event.move.way_told):
            yield RULE.at(
                sight,
                f"The turn in {sight.where} could go left or right: "
                "the sheet does not say, and no facing settles it.",
            )


RULE = Rule(
    "turn-direction-missing",
    Severity.WARNING,
    "A turn's direction is not told and nothing settles it.",
    _find,
)
