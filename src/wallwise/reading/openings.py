"""Openings: what an open section takes of the lines that follow, by its marks and the counts they leave."""

from __future__ import annotations

from wallwise.reading.blocks import Block
from wallwise.reading.clauses import Act
from wallwise.reading.marks import Mark
from wallwise.reading.outline import SectionText
from wallwise.reading.stepwords import actions_in

EIGHT = 8  # counts of a section as a rule
_NEARLY = 6  # counts after which a section can be over
_WIDEST_GAP = 4  # counts that a section's marks leave out
_STEPS = 0.6  # the share of step language of a line of steps,
_FIRST_STEPS = 0.5  # and of the first under a heading

Counts = tuple[int, int]


def resets(section: SectionText, mark: Mark) -> bool:
    """Whether a mark starts a new section: it counts from 1 again after a full one."""
    if mark.floating or (section.range is not None and section.range[1] - section.range[0] >= EIGHT):
        return False
    counted = (g.written for g in reversed(section.groups) if g.written is not None)
    last = next((written for written in counted if not written.floating), None)
    return last is not None and mark.first <= 1 and last.last >= _NEARLY


def counts_on(section: SectionText | None, block: Block, below: Block | None) -> bool:
    """Whether a block's mark counts on in the section or with the mark `below`, whatever its words are."""
    mark = block.mark
    if section is None or mark is None:
        return False
    if mark.floating or block.again is not None:
        return True
    last = _last_mark(section)
    if last is None:
        return mark.first <= 1
    if mark.first <= 1:
        return len(mark.beats) > 1
    gap = mark.first - last.last
    goes_on = below is not None and below.mark is not None and 0 < below.mark.first - mark.last <= 1
    return 0 < gap <= 1 or (0 < gap <= _WIDEST_GAP and (len(mark.beats) > 1 or goes_on))


def takes_unmarked(section: SectionText, block: Block, below: Block | None) -> bool:
    """Whether a line without a count mark is steps of the section; `below` is the block after it."""
    if section.groups:
        unmarked = section.groups[-1].written is None and section.heading is not None
        return block.stands >= _STEPS and (unmarked or _leaves_open(section, below))
    if below is not None and below.begins:
        return False
    tells = block.stands >= _FIRST_STEPS and actions_in(block.text) > 0
    return tells or _is_all_there_is(section, below)


def _leaves_open(section: SectionText, below: Block | None) -> bool:
    """Whether the marks before and after a line leave counts for it."""
    last = section.groups[-1].written
    if last is None or below is None or below.kind != "steps" or below.mark is None:
        return False
    return 1 < below.mark.first - last.last <= _WIDEST_GAP + 1


def _is_all_there_is(section: SectionText, below: Block | None) -> bool:
    """Whether a line is all that stands under a heading which only numbers: it must be its steps."""
    last = below is None or below.kind in ("heading", "part", "extra")
    return last and section.heading is not None and not section.heading_text


def repeats(section: SectionText | None, again: Act) -> bool:
    """Whether a repeat is one of steps: it names them or a foot, or is all of a section.

    A bare "repeat" behind the last steps means the dance.
    """
    if section is None:
        return False
    told = again.counts is not None and (again.of_section or again.counts[1] > again.counts[0])
    lead = again.foot or again.toward or again.feet
    return told or bool(lead) or again.same != "same" or not section.groups


def has_room(section: SectionText, lasts: int | None) -> bool:
    """Whether so many counts more end a section of eight that has count marks."""
    counted = _last_mark(section)
    return counted is not None and lasts is not None and counted.last + lasts == EIGHT


def halves(section: SectionText) -> tuple[Counts | None, Counts | None]:
    """The range of a section, cut for its steps and for the repeat of them where they have no count marks."""
    if section.range is None or any(group.written is not None for group in section.groups):
        return section.range, None
    first, last = section.range
    half = (last - first + 1) // 2
    return (first, first + half - 1), (first + half, last)


def _last_mark(section: SectionText) -> Mark | None:
    return next((g.written for g in reversed(section.groups) if g.written is not None), None)
