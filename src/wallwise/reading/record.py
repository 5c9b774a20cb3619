"""What a sheet was read as, and from what: the reading, its parts, their passages, its options."""

from __future__ import annotations

from dataclasses import dataclass, field
from fractions import Fraction

from wallwise.dance.model import Dance, Foot, Option, Part, Span
from wallwise.reading.clauses import Act
from wallwise.reading.header import Declared
from wallwise.reading.layout import Layout
from wallwise.reading.moves import Move
from wallwise.reading.orders import Orders
from wallwise.reading.outline import Group, Outline, PartText, SectionText
from wallwise.reading.solve import Goal, Solution


@dataclass(slots=True)
class Passage:
    """What one search group was read from: its section, its stretch of text, and its layouts.

    `led` are the words before it, where it leaves its verb to these.
    """

    section: SectionText
    group: Group
    layouts: list[Layout]
    acts: list[Act]
    led: str = ""

    def span_of(self, move: Move) -> Span:
        """The place in the sheet of the words that told the move."""
        return self.span_at(move.where)

    def span_at(self, where: tuple[int, int] | None) -> Span:
        """The place in the sheet of characters of this passage's text; of the whole passage for None."""
        group = self.group
        start, end = where if where is not None and where[1] > where[0] else (0, group.end - group.start)
        return group.line.span(group.start + start, group.start + end)


@dataclass(slots=True)
class PartReading:
    """One part as read: its text, its passages, what is known of its start and end, the search's result."""

    text: PartText
    passages: list[Passage]
    goal: Goal
    solution: Solution
    part: Part

    def stance_before(self, at: Fraction) -> tuple[Foot, int]:
        """The foot that bears the weight just before beat `at`, and the facing in 1/48 of a turn."""
        before = [event for event in self.solution.events if event.at < at]
        return (before[-1].weight, before[-1].facing) if before else (self.solution.started, 0)


@dataclass(slots=True)
class OptionReading:
    """An easier way told beside the steps, as read: its steps, whether it agrees, and what it misses."""

    option: Option
    span: Span
    solution: Solution | None
    counts_told: Fraction
    counts_meant: Fraction


@dataclass(slots=True)
class Reading:
    """A sheet as read.  `dance` is what the body does; the rest says what it came from."""

    text: str
    dance: Dance
    declared: Declared
    outline: Outline
    orders: Orders
    parts: dict[str, PartReading] = field(default_factory=dict)
    end_claim: tuple[int, Span] | None = None
    options: list[OptionReading] = field(default_factory=list)

    @property
    def main(self) -> PartReading:
        """The part the dance begins with: its only one, or the first of the lettered ones."""
        return next(iter(self.parts.values()))
