"""Restarts with the steps that they change before the cut."""

from __future__ import annotations

import re
from fractions import Fraction

from wallwise.dance.model import Restart, Step
from wallwise.reading.changes import Change, changed_to
from wallwise.reading.goals import inside_goal
from wallwise.reading.layout import Layout
from wallwise.reading.marked import split_marks
from wallwise.reading.marks import leading_mark
from wallwise.reading.options import natural_counts
from wallwise.reading.pieces import few, in_time, on_beats
from wallwise.reading.record import Reading
from wallwise.reading.restart_orders import RestartOrder
from wallwise.reading.solve import solve
from wallwise.reading.steps import step_of

# "touch R forward and on 16 …": what leads on to the next count
_LINK = re.compile(
    r"^(?:(?:and|then)\s+)+|[\s,]+(?:and|then|on|for|count)+(?:\s+(?:on|for|then|count))*$", re.IGNORECASE
)
_Placed = list[tuple[str, tuple[Fraction, ...]]]  # words, each with their beats in the part


def restarts_of(reading: Reading) -> tuple[Restart, ...]:
    """The restarts ordered, but for those of which no count is told."""
    found = []
    for order in reading.orders.restarts:
        if order.after is not None:
            change, beats = _change(reading, order, order.after)
            after, start = order.after, beats[0] if beats else None
            if beats and beats[0] > after:  # "dance 15 counts, then touch L on count 16"
                after = Fraction(beats[-1] // 1)
            found.append(Restart(order.wall, after, change, start, order.span))
    changed = {(restart.wall, restart.after_counts) for restart in found if restart.change}
    return tuple(r for r in found if r.change or (r.wall, r.after_counts) not in changed)


def _change(
    reading: Reading, order: RestartOrder, after: Fraction
) -> tuple[tuple[Step, ...], tuple[Fraction, ...]]:
    """The steps that replace the last ones before a restart, and all their beats; none where none are."""
    if order.change is None:
        return (), ()
    groups = _on_part_beats(reading, after, changed_to(order.change.text))
    layouts = [few([*on_beats(text, beats), *_filling(text, beats)]) for text, beats in groups]
    if not layouts or not all(rows and rows[0].moves for rows in layouts):
        return (), ()
    beats = tuple(beat for _, beats in groups for beat in beats)
    goal = inside_goal(reading.main, beats[0], end_weight=reading.main.solution.started, loops=1.0)
    return tuple(step_of(event) for event in solve(layouts, goal).events), beats


def _filling(text: str, beats: tuple[Fraction, ...]) -> tuple[Layout, ...]:
    """The ways to fill the counts of these beats with the steps, for a figure told for them all."""
    counts = beats[-1] // 1 - beats[0] // 1 + 1
    return in_time(text, Fraction(beats[0] // 1), Fraction(counts)) if len(beats) > 1 else ()


def _on_part_beats(reading: Reading, after: Fraction, change: Change) -> _Placed:
    """The words of a change on beats: by count marks, the counts it names, else just before the cut."""
    base = _base_before(reading, after)
    marked = _by_marks(change.words, base=base, after=after)
    if marked:
        return marked
    if change.words and change.counts is not None:
        return _of_part([(change.words, change.counts.beats)], base=base, after=after)
    counts = natural_counts(change.words) if change.words else None
    if counts is None:
        return []
    return [(change.words, tuple(after - counts + 1 + i for i in range(int(counts))))]


def _of_part(placed: _Placed, *, base: Fraction, after: Fraction) -> _Placed:
    """On beats of the part what is counted in the section of the cut or, past it, through the part."""
    first, last = placed[0][1][0], placed[-1][1][-1]
    in_section = base + last <= after + 1 or base + first == after + 1
    shift = base if in_section else Fraction(0)
    return [(words, tuple(beat + shift for beat in beats)) for words, beats in placed]


def _base_before(reading: Reading, after: Fraction) -> Fraction:
    """How many counts of the part lie before the section of the cut."""
    bases = [section.base - 1 for section in reading.main.text.sections if section.base <= after]
    return bases[-1] if bases else Fraction(0)


def _by_marks(words: str, *, base: Fraction, after: Fraction) -> _Placed:
    """The words under their own marks, counted in the section of the cut or, past it, through the part."""
    groups = []
    last = Fraction(0)
    for piece in split_marks(words, leading_mark(words)):
        mark = piece.mark
        if mark is None:
            continue
        beats = (last // 1 + mark.first,) if mark.floating else mark.beats
        last = beats[-1]
        groups.append((_LINK.sub("", words[piece.start : piece.end].strip(" -,.")), beats))
    return _of_part(groups, base=base, after=after) if groups else []
