"""What the rules look at: events with their place in the sheet and their section."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from wallwise.dance.clock import facing_name
from wallwise.dance.counts import full_label
from wallwise.dance.model import Foot, Span
from wallwise.reading.headings import is_ending
from wallwise.reading.outline import PartText, SectionText
from wallwise.reading.record import PartReading, Passage, Reading
from wallwise.reading.solve import Solved
from wallwise.reading.tokens import TURN

FOOT_NAMES = {
    Foot.LEFT: "the left foot",
    Foot.RIGHT: "the right foot",
    Foot.BOTH: "both feet",
    Foot.NONE: "no foot",
}


@dataclass(frozen=True, slots=True)
class Sight:
    """One event as read, in its part."""

    part: PartReading
    event: Solved

    @property
    def passage(self) -> Passage:
        """The passage that told it."""
        return self.part.passages[self.event.group]

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

    @property
    def where(self) -> str:
        """Where to look, in words: "section 3, count 7"."""
        places = [f"count {self.count}"]
        if len(self.part.text.sections) > 1:
            places.insert(0, f"section {self.section.number}")
        if self.part.text.name != "main":
            places.insert(0, _called(self.part.text))
        return ", ".join(places)


def _called(part: PartText) -> str:
    """A part as one speaks of it: "part A", "the chorus", "the tag", "tag 2", "the bridge"."""
    if len(part.name) == 1:
        return f"part {part.name}"
    name = part.name.lower().removeprefix("tag (").removesuffix(")")
    return name if name[-1].isdigit() else f"the {name}"


def sights(reading: Reading) -> Iterator[Sight]:
    """Every event of every part, in order, but for an ending: where in a wall that begins is not known."""
    for part in danced_through(reading):
        for event in part.solution.events:
            yield Sight(part, event)


def danced_through(reading: Reading) -> Iterator[PartReading]:
    """The parts, in order, but for an ending."""
    return (part for part in reading.parts.values() if not is_ending(part.text.name))


def main_part(reading: Reading) -> PartReading | None:
    """The dance itself, or a phrased dance's first part; None where a sheet tells tags only."""
    return next((part for part in reading.parts.values() if not part.text.extra), None)


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
