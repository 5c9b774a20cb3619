"""Two readings fit equally well and differ in feet or facing."""

from collections.abc import Iterator

from wallwise.checks.rule import Rule
from wallwise.checks.sight import FOOT_NAMES, Sight, at, clock, where
from wallwise.dance.finding import Finding, Severity
from wallwise.reading import Reading
from wallwise.reading.read import PartReading, is_ending
from wallwise.reading.solve import Solved


def doubts(reading: Reading) -> Iterator[tuple[PartReading, Solved, Solved]]:
    """Each part's first doubt: the part, the event as read, and the event of the rival reading."""
    for part in reading.parts.values():
        if is_ending(part.text.name):
            continue
        if part.solution.rival is not None and part.solution.rival_own is not None:
            yield part, part.solution.rival_own, part.solution.rival


def _find(reading: Reading) -> Iterator[Finding]:
    for part, own, rival in doubts(reading):
        if not rival.move.way_told or not own.move.way_told:
            continue
        sight = Sight(part, part.passages[own.group], own)
        yield at(
            sight, RULE.name, RULE.severity,
            f"Two readings fit from {where(sight)}: {_told(own)}, or {_told(rival)}. Say the foot, the count or the facing to settle it.",
        )  # fmt: skip


def _told(event: Solved) -> str:
    return f"{FOOT_NAMES[event.foot]} on beat {float(event.at):g} facing {clock(event.facing)}"


RULE = Rule(
    "two-readings", Severity.WARNING, "Two readings fit equally well and differ in feet or facing.", _find
)
