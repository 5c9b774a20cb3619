"""A sheet's text to a `Reading`: the dance, and everything it was read from.

    tidy -> blocks -> outline -> passages -> parts -> options -> Dance

Text never makes this raise, but for `NotASheet`: a text without a single step.
"""

from __future__ import annotations

import re

from wallwise.dance.model import Dance
from wallwise.reading.assemble import dance_of
from wallwise.reading.blocks import Block, blocks_of
from wallwise.reading.builder import outline
from wallwise.reading.footnotes import place_footnotes
from wallwise.reading.header import Claim, Declared, read_header
from wallwise.reading.options import options_of
from wallwise.reading.orders import Orders
from wallwise.reading.outline import Outline, Remark
from wallwise.reading.parts import read_parts
from wallwise.reading.record import Reading
from wallwise.reading.sequence import read_sequence
from wallwise.reading.tidy import Line, tidy

# The longest sheet seen has some 4,000 characters in a hundred lines; several times that is a book of them.
LONGEST = 20_000
MOST_LINES = 200
_HEADER_BLOCKS = 14  # no header is longer; what says "waltz" after that is no longer one
_COUNTS = re.compile(r"\b(\d{1,3})\s*(?:counts?|cts?|c|beats?)\b", re.IGNORECASE)
# A tag's heading also counts what is danced before it.
_OWN_COUNTS = re.compile(
    r"^\W*(?:tag|bridge)?\W*(\d{1,2})\s*-?\s*(?:counts?|cts?)\b\W*(?:$|[):])", re.IGNORECASE
)
_PHRASED = re.compile(r"\bphrased\b", re.IGNORECASE)
_NO_STEPS = (
    "There are no steps in this text: a step sheet has lines such as “1-2 Step R forward, touch L beside R”."
)


class NotASheet(ValueError):
    """The text has no steps in it; the message is one sentence for the teacher."""


def read(text: str) -> Reading:
    """The dance a sheet tells, and what it was read from; NotASheet where no step stands in it."""
    blocks = blocks_of(_lines(text))
    rough = [Remark(block.line, 0, len(block.line.text)) for block in blocks]
    lettered = read_sequence(rough) is not None or _PHRASED.search(text) is not None
    out = outline(blocks, lettered=lettered, bar=_bar(blocks))
    place_footnotes(out, text)
    declared = read_header(out.header)
    _declare_part_counts(declared, out)
    if all(part.extra for part in out.parts):
        raise NotASheet(_NO_STEPS)
    reading = Reading(text, Dance("", ()), declared, out, Orders())
    read_parts(reading)
    reading.options = options_of(reading)
    reading.dance = dance_of(reading)
    if not any(step.weight for part in reading.dance.parts for step in part.steps):
        raise NotASheet(_NO_STEPS)
    return reading


def _lines(text: str) -> list[Line]:
    lines = tidy(text[: LONGEST + 1])
    plain = sum(len(line.text) for line in lines)  # one sign can stand for three characters
    if max(len(text), plain) > LONGEST or len(lines) > MOST_LINES:
        raise NotASheet(
            f"This text is {len(text):,} characters long, in {len(lines):,} lines or more, "
            "far longer than a step sheet: give one dance at a time."
        )
    return lines


def _bar(blocks: list[Block]) -> int:
    """Beats of a bar: three for a waltz, said or counted, else four."""
    head = [block.line for block in blocks[:_HEADER_BLOCKS] if block.kind != "steps"]
    return 3 if read_header(head).waltz or _counts_in_threes(blocks) else 4


def _counts_in_threes(blocks: list[Block]) -> bool:
    """Whether most count marks are three long and begin a three: a waltz that does not say so."""
    marks = [mark for b in blocks if b.kind == "steps" and b.pieces and (mark := b.pieces[0].mark)]
    threes = sum(
        len(m.beats) % 3 == 0 and m.first % 3 == 1 and m.beats[-1] - m.beats[0] == len(m.beats) - 1
        for m in marks
    )
    return len(marks) >= 3 and threes > 0.6 * len(marks)


def _declare_part_counts(declared: Declared, out: Outline) -> None:
    """Add how long the headings of parts say they are: "Part A (32 counts)", "Tag (4 counts)"."""
    for part in out.parts:
        if part.line is None:
            continue
        told = (_OWN_COUNTS if part.extra else _COUNTS).search(part.line.text[part.line_at :])
        if told is None:
            continue
        span = part.line.span(part.line_at + told.start(1), part.line_at + told.end(1))
        claim = Claim(int(told[1]), span)
        if declared.part_counts.setdefault(part.name.lower(), claim) != claim:
            declared.headed_counts[part.name.lower()] = claim
