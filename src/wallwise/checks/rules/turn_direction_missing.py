"""A turn whose direction is not told, and nothing else settles it."""

from collections.abc import Iterator

from wallwise.checks.rule import Rule
from wallwise.checks.rules.two_readings import doubts
from wallwise.checks.sight import Sight, at, where
from wallwise.dance.finding import Finding, Severity
from wallwise.reading import Reading


def _find(reading: Reading) -> Iterator[Finding]:
    for part, own, rival in doubts(reading):
        if rival.move.way_told and own.move.way_told:
            continue
        sight = Sight(part, part.passages[own.group], own)
        yield at(
            sight, RULE.name, RULE.severity,
            f"The turn in {where(sight)} could go left or right: the sheet does not say, and no facing settles it.",
        )  # fmt: skip


RULE = Rule(
    "turn-direction-missing",
    Severity.WARNING,
    "A turn's direction is not told and nothing settles it.",
    _find,
)
