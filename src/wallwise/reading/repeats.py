"""What was danced before, once more on later beats: "the same on the other foot"."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import replace
from fractions import Fraction
from itertools import product

from wallwise.dance.model import Foot
from wallwise.reading.clauses import Act
from wallwise.reading.layout import Layout
from wallwise.reading.moves import mirrored
from wallwise.reading.outline import SectionText
from wallwise.reading.record import Passage
from wallwise.reading.silent import Placed
from wallwise.reading.tokens import TURN
from wallwise.reading.ways import ticks

_HALF = Fraction(1, 2)
_EACH = 3  # layouts tried of each passage repeated
_ENOUGH = 12  # layouts of a repeat
_FACED_FIRST = 0.3  # the facing told is the one that the repeat begins with
_WRONG_FOOT = 3.0  # a repeat on another foot than the sheet tells
_ONE_FOOT = (Foot.LEFT, Foot.RIGHT)


def same_of(acts: Sequence[Act]) -> Act | None:
    """The "same again" among the acts, with the turn, the count and the facing told beside it."""
    same = next((a for a in acts if a.verb == "same"), None)
    if same is None or any(_is_step(a) for a in acts[: acts.index(same)]):
        return None  # "step R, touch L, repeat": what it repeats stands beside it
    for act in acts:
        if _only_points(act) and not (same.foot or same.toward):
            same = replace(same, toward=act.toward)  # "then to the left in the same way"
        if act.verb == "turn" and act.turn is not None and same.turn is None:
            same = replace(
                same,
                turn=act.turn,
                faces=same.faces or act.faces,
                faces_at=same.faces_at or act.faces_at,
                number=act.number,
            )
    return same


def counts_again(same: Act, before: list[Passage], section: SectionText) -> Fraction | None:
    """How many counts a repeat lasts: as what it names, else as the section before; None where none is."""
    if same.counts is None:
        return before[-1].section.counts if before else None
    first, last = same.counts
    if not same.of_section:
        return Fraction(last - first + 1)
    sections = {id(p.section): p.section for p in _of_sections(before, same, section=section)}
    return sum((s.counts for s in sections.values()), Fraction(0)) or None


def _is_step(act: Act) -> bool:
    said = act.empty or act.label or act.aside or act.verb in ("turn", "hold", "and")
    return not said and not _only_points(act)


def _only_points(act: Act) -> bool:
    """Whether it says no more than where the rest goes: "to the left"."""
    told = act.verb or act.figures or act.foot or act.feet or act.part or act.place or act.both or act.turn
    return act.toward is not None and not told


def repeated(
    same: Act, first: Fraction, counts: Fraction, *, before: list[Passage], section: SectionText
) -> list[Layout]:
    """What was danced before, once more from beat `first` for `counts`, on the same foot or the other.

    Empty where the passages in `before` hold nothing that could be meant.
    """
    return _from(_sources(same, first, counts, before=before, section=section), same, first, section)


def named_again(
    acts: Sequence[Act], first: Fraction, counts: Fraction, *, before: list[Passage], section: SectionText
) -> list[Layout]:
    """A figure that is named alone, once more as the sheet itself told its steps before; else empty.

    "Now a Charleston: step R forward, kick L … And the Charleston once more": its steps are those.
    """
    told = [act for act in acts if not act.empty and act.verb != "same"]
    if len(told) != 1 or not told[0].figures or told[0].turn is not None:
        return []
    named = told[0]
    starts = [i for i, p in enumerate(before) if p.group.beats and _spells(p, named.figures[0].name)]
    if not starts:
        return []
    begin = before[starts[-1]].group.beats[0]
    sources = [p for p in before[starts[-1] :] if p.group.beats and p.group.beats[-1] < begin + counts]
    if not sources or first < begin + counts or not all(p.layouts and p.layouts[0].moves for p in sources):
        return []
    if sources[-1].group.beats[-1] + 1 < begin + counts:
        return []
    same = Act(verb="same", same="same", foot=named.foot, toward=named.toward, feet=named.feet)
    return _from(sources, same, first, section)


def _spells(passage: Passage, name: str) -> bool:
    """Whether a passage names the figure, and dances the steps told behind the name instead."""
    named = any(act.figures and act.figures[0].name == name for act in passage.acts)
    moves = passage.layouts[0].moves if passage.layouts else ()
    return named and bool(moves) and all(move.from_figure != name for _, move in moves)


def _from(sources: list[Passage], same: Act, first: Fraction, section: SectionText) -> list[Layout]:
    """The passages danced again from beat `first`, as the repeat says; empty for none."""
    if not sources:
        return []
    shift = _shift(sources, first)
    found: list[Layout] = []
    for choice in product(*[passage.layouts[:_EACH] for passage in sources]):
        cost = sum(layout.cost for layout in choice)
        plain = tuple(
            (at + shift, replace(move, faces=None, weight=None))
            for layout in choice
            for at, move in layout.moves
        )
        mirror = tuple((at, mirrored(move)) for at, move in plain)
        for moves, flipped in ((plain, False), (mirror, True)):
            price = cost + _foot_cost(same, moves, flipped)
            found += [
                Layout(price + extra + more, claimed)
                for turned, extra in _with_turn(moves, same, section)
                for claimed, more in _claiming(turned, same)
            ]
        if len(found) > _ENOUGH:
            break
    return found


def _shift(sources: list[Passage], first: Fraction) -> Fraction:
    """How far the sources move to begin at `first`; a step before their first count keeps its place."""
    start = Fraction(sources[0].layouts[0].moves[0][0] // 1)
    begin = min((p.group.beats[0] for p in sources if p.group.beats), default=start)
    if begin.denominator != 1 and first.denominator == 1:
        begin = Fraction(begin // 1 + 1)
    return first - begin


def _claiming(moves: tuple[Placed, ...], same: Act) -> Iterator[tuple[tuple[Placed, ...], float]]:
    """The repeated moves with the facing told beside them: where the repeat ends or, dearer, begins."""
    if same.faces is None or not moves:
        yield moves, 0.0
        return
    at, last = moves[-1]
    yield (*moves[:-1], (at, replace(last, faces=same.faces, faces_at=same.faces_at))), 0.0
    at, first = moves[0]
    for turned, cost in first.turns:
        faces = (same.faces + turned) % TURN
        begun = replace(first, turns=((turned, cost),), faces=faces, faces_at=same.faces_at)
        yield ((at, begun), *moves[1:]), _FACED_FIRST


def _with_turn(
    moves: tuple[Placed, ...], same: Act, section: SectionText
) -> Iterator[tuple[tuple[Placed, ...], float]]:
    """The repeated moves with the turn that the repeat adds, on the count it names or on any."""
    if same.turn is None:
        yield moves, 0.0
        return
    added = ticks(same.turn)
    for i, (at, move) in enumerate(moves):
        on = at - section.base + 1
        if (same.number is not None and on != same.number) or move.foot is Foot.NONE:
            continue
        turns = tuple((size + own, cost + price) for size, cost in added for own, price in move.turns)
        yield (*moves[:i], (at, replace(move, turns=turns)), *moves[i + 1 :]), 0.1 if same.number else 0.4


def _foot_cost(same: Act, moves: tuple[Placed, ...], flipped: bool) -> float:
    """What it costs to believe that the repeat is on this foot."""
    lead = same.foot or same.toward or (same.feet[0] if same.feet else None)
    if lead in _ONE_FOOT:
        foot = next((move.foot for _, move in moves if move.foot in _ONE_FOOT), None)
        if foot is None:
            return 0.1 if flipped else 0.2
        return 0.1 if foot is lead else _WRONG_FOOT
    if same.same in ("other", "reverse"):
        return 0.1 if flipped else _WRONG_FOOT
    return 0.3 if flipped else 0.1


# -- what is repeated --------------------------------------------------------------------------


def _sources(
    same: Act, first: Fraction, counts: Fraction, *, before: list[Passage], section: SectionText
) -> list[Passage]:
    """The passages a repeat means: those of the counts it names, else those just before it."""
    placed = [p for p in before if p.layouts and p.layouts[0].moves]
    if same.counts is not None:
        a, b = same.counts
        if same.of_section:
            return _of_sections(placed, same, section=section)
        if a < 0:
            return placed[_index_from(placed, first + a - _HALF) :]
        found = _counted(placed, same.counts, section=section, first=first)
        if not found and a == b:  # "repeat section 2"
            found = [p for p in placed if p.section.number == a]
        if found:
            return found
    return placed[_index_from(placed, first - counts - _HALF) :]


def _of_sections(placed: list[Passage], same: Act, *, section: SectionText) -> list[Passage]:
    """The passages of sections by their numbers; those below zero are counted back from `section`.

    None where the sections are those of another part than the one danced.
    """
    if same.counts is None or not _is_part_of(section, same.of_part):
        return []
    first, last = (n if n > 0 else section.number + n for n in same.counts)
    return [p for p in placed if first <= p.section.number <= last]


def _is_part_of(section: SectionText, letter: str) -> bool:
    """Whether the section's part has that letter in its headings ("B1", "B2"), where one is told."""
    heading = section.heading.text if section.heading is not None else ""
    return not letter or re.match(rf"\W*{letter}\s?-?\d", heading, re.IGNORECASE) is not None


def _begins(passage: Passage) -> Fraction:
    return passage.layouts[0].moves[0][0]


def _counted(
    placed: list[Passage], counts: tuple[int, int], *, section: SectionText, first: Fraction
) -> list[Passage]:
    """The passages on those counts, counted in this section, through the part, or in the section before."""
    for shift in (section.base - 1, Fraction(0), section.base - 9):
        low, high = counts[0] + shift - _HALF, counts[1] + shift + 1
        found = [p for p in placed if low <= _begins(p) < high]
        if found and _begins(found[0]) < first:
            return found
    return []


def _index_from(placed: list[Passage], earliest: Fraction) -> int:
    """Where the passages at the end begin of which none starts before `earliest`."""
    index = len(placed)
    while index and _begins(placed[index - 1]) >= earliest:
        index -= 1
    return index
