"""The search's events as steps of a dance."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from textwrap import shorten

from wallwise.dance.model import Foot, Kind, Part, Section, Step
from wallwise.reading.moves import PERHAPS
from wallwise.reading.outline import PartText, SectionText
from wallwise.reading.record import Passage
from wallwise.reading.solve import Solution, Solved
from wallwise.reading.tokens import TURN

_ONE_FOOT = (Foot.LEFT, Foot.RIGHT)
_LONGEST_TITLE = 80  # characters


def part_of(text: PartText, passages: list[Passage], solution: Solution) -> Part:
    """A part with its steps in its sections, each with its place in the sheet."""
    steps = [
        replace(step_of(event), span=passages[event.group].span_of(event.move))
        for event in solution.events
        if event.kind is not Kind.HOLD or event.move.from_figure != PERHAPS
    ]
    sections = []
    for n, section in enumerate(text.sections):
        begin, end = section.base, section.base + section.counts
        # a step before the first count or after the last stays with the section next to it
        first, last = n == 0, n == len(text.sections) - 1
        mine = tuple(s for s in steps if (s.at >= begin or first) and (s.at < end or last))
        sections.append(Section(section.number, begin, section.counts, mine, _title(section)))
    return Part(text.name, tuple(sections))


def step_of(event: Solved) -> Step:
    """The event as a step, with what the sheet left open and the search had to infer."""
    move = event.move
    open_questions = {
        "foot": move.foot is None and event.foot in _ONE_FOOT,
        "turn": len(move.turns) > 1,
        "weight": len(move.kinds) > 1,
    }
    return Step(
        at=event.at, foot=event.foot, kind=event.kind, place=move.place, turn=Fraction(event.turn, TURN),
        toward=move.toward if move.toward in _ONE_FOOT else None,
        ends_on=move.weight if event.foot is Foot.BOTH and move.weight in _ONE_FOOT else None,
        long=move.long, also=move.also, inferred=tuple(what for what, was in open_questions.items() if was),
    )  # fmt: skip


def _title(section: SectionText) -> str:
    """The words of a section's heading; of a paragraph that tells its steps as well, the beginning."""
    return shorten(section.heading_text, _LONGEST_TITLE, placeholder=" …")
