"""Lines to blocks: which are headings, steps, orders, header, and which are chatter.

A `Block` is one logical line (what hard line breaks tore apart is joined again).  Nothing
is read here but the shape: count marks, headings, and how much of a line the lexicon knows.
"""

import re
from dataclasses import dataclass, field, replace
from itertools import zip_longest

from wallwise.glossary.lexicon import Word
from wallwise.glossary.load import words
from wallwise.reading.asides import repeat_told
from wallwise.reading.clauses import Act
from wallwise.reading.headings import head_of, leading_range
from wallwise.reading.joins import joined
from wallwise.reading.labels import unlabelled
from wallwise.reading.marked import Piece, count_behind, ends_in, split_marks
from wallwise.reading.marks import Mark, leading_mark
from wallwise.reading.recounted import recounted
from wallwise.reading.rows import Row, rows_of
from wallwise.reading.stepwords import known_share, tokens_of
from wallwise.reading.tidy import Line
from wallwise.reading.wording import any_of

_TOLD_BESIDE = re.compile(rf"\W*(?:an?\s+)?{any_of(words()['heading']['beside'])}\b", re.IGNORECASE)
_RHYTHM = re.compile(
    r"\W*(?:timing|rhythm|counted|counting|counts?)\s*[:=][\d\s,;.&+ae()/-]*", re.IGNORECASE
)  # of every eight
_COUNTS = re.compile(r"[\d&a-z-]")
_RANGES = ("range", "range?")
_COUNTED = ("steps", *_RANGES)
_STEPS = 0.75  # the share of step language of a line of steps
_WHOLE_SECTIONS = (6, 8, 12, 16)  # counts


@dataclass(slots=True)
class Block:
    """One logical line.

    `kind`: ``heading`` (with `number`, `range`, `rest` = where its words begin), ``part``, ``extra`` (tag,
    bridge, ending), ``steps`` (with `pieces`), ``text``; while what follows has still to decide it,
    ``range`` ("[1-8] …") and ``range?`` ("1-8 …").  `stands` is how much of it is step language, 0 to 1;
    `again` what it says is danced again, where it says nothing else.
    """

    line: Line
    kind: str = "text"
    number: int | None = None
    range: tuple[int, int] | None = None
    rest: int = 0
    name: str = ""
    pieces: list[Piece] = field(default_factory=list)
    stands: float = 0.0
    again: Act | None = None
    opens: bool = False  # a line of a numbered list, which is a section of its own

    @property
    def text(self) -> str:
        """The line's text."""
        return self.line.text

    @property
    def mark(self) -> Mark | None:
        """The mark of its first piece that has one."""
        return next((piece.mark for piece in self.pieces if piece.mark is not None), None)

    @property
    def begins(self) -> bool:
        """Whether these are steps that count from the beginning."""
        return self.kind == "steps" and self.mark is not None and self.mark.first <= 1


def blocks_of(lines: list[Line]) -> list[Block]:
    """The logical lines of a sheet, each with its kind; empty for a sheet of blank lines."""
    blocks = [_block(row) for row in _whole(recounted(rows_of(lines)))]
    blocks = [one for block, below in zip_longest(blocks, blocks[1:]) for one in _parted(block, below)]
    _settle(blocks)
    return blocks


def _whole(rows: list[Row]) -> list[Row]:
    """The logical lines without the labels of a list, which may show only when broken rows are joined."""
    listed = unlabelled(rows)
    if listed is not rows:
        return joined(listed)
    whole = joined(rows)
    listed = unlabelled(whole)
    return whole if listed is whole else joined(listed)


def _block(row: Row) -> Block:
    """The block of a row, as far as its line itself tells."""
    line = row.line
    block = Block(line, stands=known_share(line.text), opens=row.opens)
    head = head_of(line.text)
    if head is not None:
        block.kind, block.rest, block.number = head.kind, head.rest, head.number
        block.name, block.range = head.name, head.range
    elif not (_TOLD_BESIDE.match(line.text) or _RHYTHM.fullmatch(line.text)):
        _take_marks(block)
        if len(block.pieces) == 1:
            (piece,) = block.pieces
            block.again = repeat_told(line.text[piece.start : piece.end])
    return block


def _parted(block: Block, below: Block | None) -> list[Block]:
    """A heading and the first of its steps apart, where the line below counts on ("1st six 1-3 …")."""
    head = head_of(block.text) if block.kind == "heading" else None
    if head is None or head.range is None or below is None or below.kind not in _COUNTED:
        return [block]
    if below.mark is None or below.mark.first != head.range[1] + 1:
        return [block]
    steps = Block(block.line.slice(head.range_at), stands=block.stands)
    _take_marks(steps)
    return [replace(block, line=block.line.slice(0, head.range_at), range=None, rest=head.range_at), steps]


def _take_marks(block: Block) -> None:
    mark = leading_mark(block.text)
    counts = leading_range(block.text)
    block.pieces = split_marks(block.text, mark)
    block.line = _without_inner_marks(block.line, block.pieces)
    if counts is not None and mark is not None:
        block.kind = "range" if counts.bracketed else "range?"
        block.range, block.rest = (counts.first, counts.last), counts.rest
    elif block.mark is not None and (block.stands >= 0.3 or mark is None or len(mark.beats) > 1):
        block.kind = "steps"


def _without_inner_marks(line: Line, pieces: list[Piece]) -> Line:
    """The line with blanks for the marks that stand among the steps of their own pieces."""
    text = line.text
    for piece in pieces:
        mark = piece.mark
        if mark is not None and piece.start < mark.start and mark.end < piece.end:
            text = text[: mark.start] + _COUNTS.sub(" ", text[mark.start : mark.end]) + text[mark.end :]
    return line if text is line.text else Line(text, line.starts, line.ends)


# -- numbers that head or count: what follows decides ---------------------------------------------


def _settle(blocks: list[Block]) -> None:
    """Decide for "3. WEAVE" and "1-8 …" whether they head a section, and for "… (2)" whether it counts."""
    _count_lines(blocks)
    numbered = 0
    for i, block in enumerate(blocks):
        if _numbers_heading(blocks, i, numbered=numbered):
            assert block.mark is not None
            numbered += 1
            block.kind, block.rest, block.number = "heading", block.pieces[0].start, int(block.mark.first)
        elif block.kind in _RANGES:
            following = next((b for b in blocks[i + 1 :] if b.kind != "text"), None)
            below = blocks[i + 1] if i + 1 < len(blocks) else None
            heads = _heads(block, following) if block.again is None else _names_repeat(below)
            if heads and not _goes_on(block, blocks[:i]):
                block.kind = "heading"
            else:
                block.kind, block.range = "steps", None
        elif _ranges_behind(block, blocks[i + 1] if i + 1 < len(blocks) else None):
            assert block.mark is not None
            block.kind, block.range = "heading", (int(block.mark.first), int(block.mark.last))
            block.line = block.line.slice(0, block.mark.start)


def _count_lines(blocks: list[Block]) -> None:
    """Make steps of lines that end in one number each, which count one after the other."""
    before: Mark | None = None
    for block, below in zip_longest(blocks, blocks[1:]):
        behind = count_behind(block.text) if block.kind == "text" else None
        if behind is not None:
            count, after = behind.mark.first, count_behind(below.text) if below is not None else None
            opens = count == 1 and after is not None and after.mark.first == 2
            if opens or (before is not None and before.last // 1 + 1 == count):
                block.kind, block.pieces = "steps", [Piece(behind.mark, 0, behind.end)]
        before = block.pieces[-1].mark if block.kind == "steps" else None


def _numbers_heading(blocks: list[Block], i: int, *, numbered: int) -> bool:
    """Whether "3. WEAVE, DRAG" numbers a section: the steps under it count from 1 again.

    `numbered` is how many headings before it are numbered so.
    """
    block = blocks[i]
    following = blocks[i + 1] if i + 1 < len(blocks) else None
    if block.kind != "steps" or len(block.pieces) != 1:
        return False
    if following is None or following.kind not in _COUNTED:
        return False
    mark, below = block.mark, following.mark
    if mark is None or len(mark.beats) > 1 or mark.first.denominator > 1 or mark.floating:
        return False
    if below is None or below.first > 1 or below.floating:
        return False
    return (ends_in(block.text, mark, ".):") and len(below.beats) > 1) or not _counts_on(
        mark, blocks[:i], numbered
    )


def _counts_on(mark: Mark, before: list[Block], numbered: int) -> bool:
    """Whether a single number is a count rather than the next heading's: it follows the count before it."""
    if mark.first != numbered + 1:
        return True
    last = next((p.mark for b in reversed(before) for p in reversed(b.pieces) if p.mark is not None), None)
    return last is not None and last.last + 1 == mark.first and last.last < 8 and numbered == 0


def _ranges_behind(block: Block, following: Block | None) -> bool:
    """Whether steps with all their counts behind them head those below: "Vine, rock, shuffle (1-8)"."""
    if block.kind != "steps" or len(block.pieces) != 1:
        return False
    if following is None or following.kind not in _COUNTED:
        return False
    mark, below = block.mark, following.mark
    if mark is None or below is None or mark.start < block.pieces[0].end or following.again is not None:
        return False
    counts = mark.last - mark.first + 1
    whole = counts in _WHOLE_SECTIONS and len(mark.beats) == counts and mark.first % 2 == 1
    return whole and below.first in (1, mark.first) and below.last - below.first + 1 < counts


def _names_repeat(below: Block | None) -> bool:
    """Whether a range that only says that something is repeated heads the line that tells what."""
    if below is None or below.mark is None:
        return below is not None and below.kind == "text" and below.again is not None
    told = tokens_of(below.text[below.mark.end :].strip())
    return below.mark.first == 1 and bool(told) and told[0].word is Word.SAME


def _heads(block: Block, following: Block | None) -> bool:
    """Whether a range heads a section: it is bracketed and whole, or the steps under it lie inside it."""
    assert block.range is not None
    if len(block.pieces) > 1:
        return False
    first, last = block.range
    bracketed = block.kind == "range"
    whole = last - first + 1 in _WHOLE_SECTIONS and first % 2 == 1
    return (bracketed and whole) or ((bracketed or last - first >= 5) and _holds(block, following))


def _goes_on(block: Block, before: list[Block]) -> bool:
    """Whether a few counts with steps go on inside the eight that the steps before them began."""
    last = next((b.mark for b in reversed(before) if b.kind != "text"), None)
    assert block.range is not None
    first, end = block.range
    few = end - first + 1 < min(_WHOLE_SECTIONS) and block.stands >= _STEPS
    return few and last is not None and last.last // 1 + 1 == first


def _holds(block: Block, following: Block | None) -> bool:
    """Whether the mark of the block that follows counts a piece of the range, or of its length from 1."""
    if following is None or following.kind not in _COUNTED or following.mark is None:
        return False
    assert block.range is not None
    first, last = block.range
    mark = following.mark
    length = mark.last - mark.first
    shorter = length < last - first or (following.kind == "steps" and length <= last - first)
    counts_again = mark.first <= 2 and (first % 2 == 1 or block.kind == "range")
    starts_inside = counts_again or first - 1 < mark.first <= first + 1
    return shorter and starts_inside and (block.mark is None or mark.beats != block.mark.beats)
