"""Facings told beside the steps: in a sentence between them, before the next step, or after the last."""

from __future__ import annotations

import re
from dataclasses import replace

from wallwise.dance.model import Span
from wallwise.reading.layout import Layout
from wallwise.reading.naming import clocks_in
from wallwise.reading.outline import Outline, Remark
from wallwise.reading.record import Passage, Reading
from wallwise.reading.tokens import TURN
from wallwise.reading.wording import AFTER_TIMES, OPTION_LEAD

_ROUNDS = r"(?:two|three|four|eight|[248])\s+(?:times|rounds|goes|repetitions)"
# A remark with one of these tells where a wall, a tag or another way of dancing faces, not this step.
_NO_CLAIM = re.compile(
    r"\b(?:re-?start|tag|bridge|options?|easier|easy|ending|finish|walls?\s+\d|w\d|\d(?:st|nd|rd|th)\s+wall"
    r"|start|begin|begins|starts|song|music|track|wall one|ends\s+at|(?:last|final)\s+[A-H]"
    r"|(?:first|second|third|fourth|fifth|sixth|seventh|eighth|next|new|one|two|last|final)\s+wall"
    rf"|{_ROUNDS})\b|{AFTER_TIMES}",
    re.IGNORECASE,
)
_NO_END_CLAIM = re.compile(
    r"\b(?:restart|tag|bridge|song|music|track|wall\s*\d|walls|option|ending\s*:|finish\s*:|w\d"
    r"|\d(?:st|nd|rd|th) wall"
    rf"|(?:first|second|third|fourth|fifth|sixth|last|final) wall|{_ROUNDS})\b"
    r"|\A\W*(?:finish|ending|finale)\b\s*[:(-]",
    re.IGNORECASE,
)
_ENDS_FACING = re.compile(r"\b(?:ends?|ending|finish(?:es|ing)?)\b[^()\[\]]*[)\]]?\W*$", re.IGNORECASE)
# "Every new wall is a quarter turn to your left"
_NEXT_WALL = re.compile(
    r"\b(?:every|each|next|new)\b[^.:;]*\bwalls?\b[^.:;]*\b(?:quarter|1/4)\b[^.:;]*?\b(?P<side>left|right)\b",
    re.IGNORECASE,
)
_HOURS = re.compile(
    r"\b(?:12|3|6|9)\s*(?:,|-|then)\s*(?:12|3|6|9)\b(?!\s*counts?)"
)  # of one wall after the other
_OPTION = re.compile(rf"\b{OPTION_LEAD}", re.IGNORECASE)  # what it tells is another way of dancing
_FEW_WORDS = 4  # unknown words beside a facing; with more it is a sentence about something else


def claim_before(passages: list[Passage]) -> None:
    """Give a facing told before the last passage's first step to the one before: "…, to face 9 o'clock"."""
    if len(passages) < 2 or not passages[-1].acts:
        return
    told = passages[-1].acts[0]
    if told.empty and told.faces is not None and len(told.unknown) <= _FEW_WORDS:
        last = passages[-2]
        last.layouts = [claimed(layout, told.faces, None) for layout in last.layouts]


def claim_beside(reading: Reading, passages: dict[str, list[Passage]]) -> None:
    """Make facings told in sentences between the steps claims of the step before.

    "You are looking at 6 o'clock" is one; what `Reading.end_claim` was read from is not another.
    """
    by_group = {id(p.group): p for row in passages.values() for p in row}
    for remark in reading.outline.remarks:
        passage = by_group.get(id(remark.group))
        clock = _one_clock(remark)
        if passage is None or clock is None or _NO_CLAIM.search(remark.text):
            continue
        faces, start, end = clock
        if reading.end_claim is not None and reading.end_claim[1] == remark.line.span(start, end):
            continue
        where = None
        if remark.line is passage.group.line:
            where = start - passage.group.start, end - passage.group.start
        passage.layouts = [claimed(layout, faces, where) for layout in passage.layouts]


def claim_headed(passages: list[Passage]) -> None:
    """Give the facing that a heading says its section ends with ("(ends 6:00)") to the last of its steps."""
    last = {id(passage.section): passage for passage in passages}
    for passage in last.values():
        heading = passage.section.heading
        told = _ENDS_FACING.search(heading.text) if heading is not None else None
        clocks = clocks_in(heading.text, told.start(), len(heading.text)) if heading and told else []
        if len(clocks) == 1:
            passage.layouts = [claimed(layout, clocks[0][0], None) for layout in passage.layouts]


def end_claim(out: Outline) -> tuple[int, Span] | None:
    """A facing told after the last steps, in 1/48 of a turn: "you should now face 3 o'clock"."""
    real = [part for part in out.parts if not part.extra]
    last = next((g for s in reversed(real[-1].sections) for g in reversed(s.groups)), None) if real else None
    if last is None:
        return None
    for remark in out.remarks:
        if remark.group is not last or remark.part != real[-1].name or _NO_END_CLAIM.search(remark.text):
            continue
        if (told := _NEXT_WALL.search(remark.line.text, remark.start, remark.end)) is not None:
            faces = TURN // 4 if told["side"].lower() == "right" else 3 * TURN // 4
            return faces, remark.line.span(*told.span())
        clock = _one_clock(remark)
        if clock is not None:
            faces, start, end = clock
            return faces, remark.line.span(start, end)
    return None


def without_claims(layout: Layout) -> Layout:
    """The layout with no facing claimed in it."""
    return replace(layout, moves=tuple((at, replace(move, faces=None)) for at, move in layout.moves))


def seen_from(layout: Layout, facing: int) -> Layout:
    """The layout with the facings claimed in it as if what faces `facing` (1/48 of a turn) were the front."""
    return replace(
        layout,
        moves=tuple(
            (at, move if move.faces is None else replace(move, faces=(move.faces - facing) % TURN))
            for at, move in layout.moves
        ),
    )


def _one_clock(remark: Remark) -> tuple[int, int, int] | None:
    """The one facing that a remark tells, with its place in the line; None where it tells none or several."""
    option = _OPTION.search(remark.line.text, remark.start, remark.end)
    clocks = clocks_in(remark.line.text, remark.start, option.start() if option else remark.end)
    return clocks[0] if len(clocks) == 1 and _HOURS.search(remark.text) is None else None


def claimed(layout: Layout, faces: int, where: tuple[int, int] | None) -> Layout:
    """The layout with the facing claimed by its last move, unless that claims one already."""
    if not layout.moves or layout.moves[-1][1].faces is not None:
        return layout
    at, move = layout.moves[-1]
    return replace(layout, moves=(*layout.moves[:-1], (at, replace(move, faces=faces, faces_at=where))))
