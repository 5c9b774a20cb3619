"""One thing told left out, or told throughout for the other foot."""

from collections.abc import Iterator, Sequence

from wallwise.checks.edits.edit import Edit
from wallwise.checks.edits.spelling import feet_swapped, swapped
from wallwise.dance.model import Span
from wallwise.reading.clauses import Act
from wallwise.reading.outline import Group
from wallwise.reading.record import Passage

_A_WORD_OR_SO = 6  # characters: "and R", "hold"


def told_acts(passage: Passage) -> list[Act]:
    """The acts that have words of their own."""
    return [act for act in passage.acts if act.start >= 0 and act.verb != "and"]


def act_edits(text: str, passage: Passage) -> Iterator[Edit]:
    """Acts with left and right exchanged, one or all at once; then each act left out."""
    acts = told_acts(passage)
    for act in acts:
        yield from _exchanged(text, passage.group, (act.start, act.end), 1.25)
    if len(acts) > 1:
        yield from _exchanged(text, passage.group, (acts[0].start, acts[-1].end), 1.7)
        for i in range(len(acts)):
            yield _left_out(text, passage.group, acts, i)


def _exchanged(text: str, group: Group, where: tuple[int, int], surprise: float) -> Iterator[Edit]:
    """More than one word exchanged: of a single one the words have an edit already."""
    span = _place(group, *where)
    shown = text[span.start : span.end]
    for told in dict.fromkeys((swapped(shown), feet_swapped(shown))):
        if sum(a != b for a, b in zip(shown.split(), told.split(), strict=False)) > 1:
            yield Edit.instead(span, told, shown=shown, surprise=surprise)


def _left_out(text: str, group: Group, acts: Sequence[Act], i: int) -> Edit:
    """Without an act and what joins it to the next, or for the last, to the one before."""
    if i + 1 < len(acts):
        after = acts[i + 1].start
        span = Span(_place(group, acts[i].start, after).start, _place(group, after, after + 1).start)
    else:
        span = _place(group, acts[i - 1].end, acts[i].end)
    words = text[span.start : span.end].strip(" ,;-\n")
    likely = len(words) <= _A_WORD_OR_SO or (i > 0 and _repeats(group.text, acts[i - 1], acts[i]))
    return Edit.of(span, "", says=f"without “{words}”", surprise=1.4 if likely else 2.4)


def _repeats(text: str, before: Act, act: Act) -> bool:
    """Whether the act is the last word of the one before over again: "step left, left"."""
    said = text[before.start : before.end].lower().split()
    return [text[act.start : act.end].strip().lower()] == said[-1:]


def _place(group: Group, start: int, end: int) -> Span:
    return group.line.span(group.start + start, group.start + end)
