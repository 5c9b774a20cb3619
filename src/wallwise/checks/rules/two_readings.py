"""Two readings fit equally well and differ in feet or facing."""

from collections.abc import Iterator

from wallwise.checks.rule import Rule
from wallwise.checks.sight import FOOT_NAMES, Sight, clock, danced_through
from wallwise.dance.finding import Finding, Severity
from wallwise.reading import Reading
from wallwise.reading.solve import Solved


def doubts(reading: Reading) -> Iterator[tuple[Sight, Solved]]:
    """Each part's first doubt: the event as read, and the event of the rival reading."""
    for part in danced_through(reading):
        own, rival = part.solution.rival_own, part.solution.rival
        if own is not None and rival is not None:
            yield Sight(part, own), rival


def _find(reading: Reading) -> Iterator[Finding]:
    for sight, rival in doubts(reading):
        if rival.move.way_told and sight.event.move.way_told:
            yield RULE.at(
                sight,
                f"Two readings fit from {sight.where}: {_told(sight.event)}, or {_told(rival)}. "
                "Say the foot, the count or the facing to settle it.",
            )


def _told(event: Solved) -> str:
    return f"{FOOT_NAMES[event.foot]} on beat {float(event.at):g} facing {clock(event.facing)}"


RULE = Rule(
    "two-readings", Severity.WARNING, "Two readings fit equally well and differ in feet or facing.", _find
)
