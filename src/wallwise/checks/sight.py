"""What the rules look at: events with their place in the sheet and their section."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from typing import NamedTuple

from wallwise.dance.clock import facing_name
from wallwise.dance.counts import full_label
from wallwise.dance.finding import Finding, Severity
from wallwise.dance.model import Foot, Span
from wallwise.reading.outline import SectionText
from wallwise.reading.read import PartReading, Passage, Reading, is_ending
from wallwise.reading.solve import Solved
from wallwise.reading.tokens import TURN

FOOT_NAMES = {
    Foot.LEFT: "the left foot",
    Foot.RIGHT: "the right foot",
    Foot.BOTH: "both feet",
    Foot.NONE: "no foot",
}


class Sight(NamedTuple):
    """One event as read, with the passage and section it stands in."""

    part: PartReading
    passage: Passage
    event: Solved

    @property
    def section(self) -> SectionText:
        """The section whose words told it."""
        return self.passage.section

    @property
    def span(self) -> Span:
        """The words that told it."""
        return self.passage.span_of(self.event.move)

    @property
    def count(self) -> str:
        """Its count, within its section, as counted aloud."""
        return count_in(self.section, self.event.at)


def sights(reading: Reading) -> Iterator[Sight]:
    """Every event of every part, in order."""
    for part in reading.parts.values():
        if is_ending(part.text.name):
            continue  # where in a wall it begins is not known here
        for event in part.solution.events:
            yield Sight(part, part.passages[event.group], event)


def count_in(section: SectionText, at: Fraction) -> str:
    """A beat of the part as a count of its section.

    A section whose marks run on from the one before (33-40) is counted as it is written.
    """
    written = next((g.written for g in section.groups if g.written is not None), None)
    running = written is not None and section.base > 1 and written.first >= section.base - 1
    beat = at if running else at - section.base + 1
    return full_label(beat) if beat > 0 else str(beat)


def clock(ticks: int) -> str:
    """The clock time of a facing in the reader's unit."""
    return facing_name(Fraction(ticks % TURN, TURN))


def at(sight: Sight, rule: str, severity: Severity, message: str, *, span: Span | None = None) -> Finding:
    """A finding at an event."""
    return Finding(
        rule,
        severity,
        span or sight.span,
        message,
        sight.section.number,
        sight.count,
        part=sight.part.text.name,
    )


def whole_sheet(
    rule: str,
    severity: Severity,
    span: Span | None,
    message: str,
    *,
    section: int | None = None,
    part: str = "main",
    count: str = "",
) -> Finding:
    """A finding about the sheet as a whole, placed where it was declared (at its start where it was not)."""
    return Finding(rule, severity, span or Span(0, 0), message, section, count, part=part)


def where(sight: Sight) -> str:
    """ "section 3, count 7": where to look, in words."""
    name = sight.part.text.name
    prefix = "" if name == "main" else f"part {name}, " if len(name) == 1 else f"{name}, "
    several = len(sight.part.text.sections) > 1
    return (
        f"{prefix}section {sight.section.number}, count {sight.count}"
        if several
        else f"{prefix}count {sight.count}"
    )
