"""Lines to blocks: which are headings, steps, orders, header, and which are chatter.

A `Block` is one logical line (what hard line breaks tore apart is joined again).  Nothing
is read here but the shape: count marks, headings, and how much of a line the lexicon knows.
"""

from __future__ import annotations

import re
from collections import Counter
from dataclasses import dataclass, field
from functools import lru_cache

from wallwise.glossary.lexicon import Word, lexicon
from wallwise.reading.marks import NUMBER_WORDS, Mark, leading_mark
from wallwise.reading.tidy import Line
from wallwise.reading.tokens import Token, tokenize

_QUOTE = re.compile(r"^\s*(?:>\s?)+")
_BULLET = re.compile(
    r"^\s*(?:[\u2022*+o]|->|-(?=\s)|\d{1,2}[.)](?=\s+(?:\(?\d+\s?[-&,]|&)))\s+(?=\S)|^\s*\u2022\s*"
)
_RULE = re.compile(r"^[\s|:=_*~.#+-]*$")
_PAGE = re.compile(
    r"\b(?:page|sheet|p\.)\s*\d+\s*(?:of|/)\s*\d+|^\s*-?\s*\d{1,3}\s*-?\s*$|^\s*page\s+\d+\s*$", re.IGNORECASE
)
_ORDINALS = dict(
    zip(
        ["first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth", "tenth"],
        range(1, 11),
        strict=True,
    )
)
_ROMAN = {"i": 1, "ii": 2, "iii": 3, "iv": 4, "v": 5, "vi": 6, "vii": 7, "viii": 8}
_NUMBER = "|".join([r"\d{1,2}", *NUMBER_WORDS, *_ORDINALS])
_SECTION = re.compile(
    rf"^\W*(?:(?:section|sect|sec|set|block|verse|phrase|eight|part|pattern|figure|fig|s)\b\.?\s*(?:#|no\.?)?\s*(?P<a>{_NUMBER}|[ivx]+)\b"
    rf"|(?:s|sec|sect)(?P<b>\d{{1,2}})\b"
    rf"|(?:the\s+)?(?P<c>\d(?:st|nd|rd|th)|{'|'.join(_ORDINALS)})\s+(?:section|eight|8|set|part|six|6|block|sequence of 8)(?:\s+(?:counts?|beats?))?\b)"
    r"(?:\s*\(?\s*(?:counts?\s*)?\(?(?P<from>\d{1,3})\s*(?:-|to)\s*(?P<to>\d{1,3})\)?(?:\s*counts?)?\s*\)?)?"
    r"(?P<rest>\W.*|)$",
    re.IGNORECASE,
)
_RANGE = re.compile(
    r"^\W*?(?P<open>[\[(])?\s*(?:(?:counts?|beats?|steps?|section)\s*:?\s*)?(?P<from>\d{1,3})\s*(?:-+|to|thru)\s*(?P<to>\d{1,3})\s*(?:counts?\s*)?(?P<close>[\])])?"
    r"\s*[:.=-]*(?P<rest>\s.*|)$",
    re.IGNORECASE,
)
_BARS = re.compile(r"^\W*bars?\s*\d+(?:\s*(?:-|to|&|and)\s*\d+)?\W*(?P<rest>.*)$", re.IGNORECASE)
_PART = re.compile(r"^\W*(?:part|pt)\.?\s*[-:]?\s*(?P<letter>[A-Ha-h])\b(?P<rest>.*)$", re.IGNORECASE)
_PART_SECTION = re.compile(
    r"^\W*(?P<letter>[A-H])\s?-?(?P<number>\d)\s*[:.)\-]\s*(?P<rest>.*)$|^\W*(?P<letter2>[A-H])(?P<number2>\d)\s+(?P<rest2>[\[(A-Z].*)$"
)
_LETTER = re.compile(r"^\W{0,3}(?P<letter>[A-H])\s*[:.)\]-]\s+(?P<rest>\S.*)$")
_EXTRA = re.compile(
    r"^\W*(?P<name>(?:(?P<nth>1st|2nd|3rd|first|second|big|little|short|long)\s+)?(?:tag|bridge|ending|finish|finale|outro|end)(?:\s*(?P<n>[1-9A-C])\b(?!\s*(?:counts?|beats?|restarts?|-count)))?)\b(?P<rest>.*)$",
    re.IGNORECASE,
)
_TOLD_BESIDE = re.compile(
    r"\W*(?:(?:an?\s+)?(?:easy|easier|harder|options?|optional|alternative|alternate|non[- ]turning|no[- ]turn|re-?starts?|notes?|nb|teacher|styling|hint|tip)\b)",
    re.IGNORECASE,
)
_COLUMNS = re.compile(r"(?<=\S)[ ]{3,}(?=\S)")
_ENDS_MARKED = re.compile(r"(?:\s{2,}|\t|[\[(])(?:counts?\s*)?[\d&][\d\s&,+-]*[)\]]?\.?$")
_HASH = re.compile(r"^\s*#{1,6}\s*")

ORDER_WORDS = re.compile(
    r"\b(?:re-?starts?|tags?|bridges?|start(?:ing)? (?:it )?(?:over|again|the dance)|begin again|begin the dance|ending|options?|easy|easier|finish the dance|finale|alternative|alternate|non-turning|no turn|instead)\b",
    re.IGNORECASE,
)


@dataclass(frozen=True, slots=True)
class Piece:
    """A stretch of a block's line with the count mark that governs it (None: none does)."""

    mark: Mark | None
    start: int
    end: int


@dataclass(slots=True)
class Block:
    """One logical line.

    `kind`: ``heading`` (with `number`, `range`, `rest` = where its words begin), ``part``, ``extra`` (tag,
    bridge, ending), ``steps`` (with `pieces`), ``text``.  `stands` is how much of it is step language, 0 to 1.
    """

    line: Line
    kind: str = "text"
    number: int | None = None
    range: tuple[int, int] | None = None
    rest: int = 0
    name: str = ""
    pieces: list[Piece] = field(default_factory=list)
    stands: float = 0.0
    paragraph: int = 0
    row: int = 0

    @property
    def text(self) -> str:
        """The line's text."""
        return self.line.text


def blocks_of(lines: list[Line]) -> list[Block]:
    """The logical lines of a sheet, each with its kind; empty for a sheet of blank lines."""
    rows = _clean(lines)
    rows = _without_page_marks(rows)
    blocks = [b for b in _joined(rows)]
    for block in blocks:
        _classify(block)
    _settle_ranges(blocks)
    return blocks


# -- cleaning ------------------------------------------------------------------------------


def _clean(lines: list[Line]) -> list[tuple[Line, int, bool, int]]:
    """Lines without quoting, bullets and table bars: (line, paragraph, had a bullet, row)."""
    rows: list[tuple[Line, int, bool, int]] = []
    paragraph = 0
    for row, line in enumerate(lines):
        text = line.text
        if found := _QUOTE.match(text):
            line = line.slice(found.end())
            text = line.text
        if _RULE.match(text):
            if not text.strip(" |"):
                paragraph += 1
            continue
        if "|" in text:
            line = _unbarred(line)
            text = line.text
        if found := _HASH.match(text):
            line = line.slice(found.end())
            paragraph += 1
            text = line.text
        if _COLUMNS.search(text):
            line = Line(_COLUMNS.sub(lambda m: "\t" + m.group()[1:], line.text), line.starts, line.ends)
            text = line.text
        bullet = _BULLET.match(text)
        if bullet:
            line = line.slice(bullet.end())
        else:
            line = line.slice(0)
        if line.text and line.text[0] in "\"'(" and len(line.text) > 2 and line.text[-1] in "\"'":
            line = line.slice(1, len(line.text) - 1)
        if line.text:
            rows.append((line, paragraph, bullet is not None, row))
        else:
            paragraph += 1
    return rows


def _unbarred(line: Line) -> Line:
    """A table row with its bars as blanks, so that offsets stay."""
    return Line(line.text.replace("|", "\t"), line.starts, line.ends).slice(0)


def _without_page_marks(rows: list[tuple[Line, int, bool, int]]) -> list[tuple[Line, int, bool, int]]:
    """Page headers and footers out: lines that only number a page, and those that stand twice and number one."""
    masked = [re.sub(r"\d+", "#", row[0].text.lower()) for row in rows]
    seen = Counter(masked)
    kept = []
    for row, mask in zip(rows, masked, strict=True):
        text = row[0].text
        if _PAGE.search(text) and leading_mark(text) is None:
            continue
        if (
            seen[mask] > 1
            and leading_mark(text) is None
            and known_share(text) < 0.5
            and not _starts_block(text)
            and not ORDER_WORDS.search(text)
        ):
            if kept and any(re.sub(r"\d+", "#", k[0].text.lower()) == mask for k in kept):
                continue
        kept.append(row)
    return kept


# -- joining what line breaks tore apart ------------------------------------------------------


def _joined(rows: list[tuple[Line, int, bool, int]]) -> list[Block]:
    blocks: list[Block] = []
    for line, paragraph, bullet, row in rows:
        last = blocks[-1] if blocks else None
        if last is not None and _continues(last, line, paragraph, bullet):
            last.line = last.line.join(line)
            last.paragraph = paragraph
            continue
        blocks.append(Block(line, paragraph=paragraph, row=row))
    return blocks


def _continues(last: Block, line: Line, paragraph: int, bullet: bool) -> bool:
    """Whether `line` goes on with the logical line before it."""
    text, before = line.text, last.text
    mark_before = leading_mark(before)
    if (
        mark_before is not None
        and mark_before.end >= len(before.rstrip())
        and before.lstrip("([ ")[:1] in "0123456789&"
        and leading_mark(text) is None
        and not _starts_block(text)
    ):
        return True  # a count mark in a row of its own, its words in the next
    if _ENDS_MARKED.search(before) and not _open_ended(before):
        return False
    if bullet or (paragraph != last.paragraph and not _open_ended(before)):
        return False
    if _starts_block(text) or (leading_mark(text) is not None and not _mid_sentence(before, text)):
        return False
    if re.match(r"^[A-Za-z ]{2,20}:\s", text) and not _open_ended(before):
        return False
    if before.count("(") > before.count(")") or before.count("[") > before.count("]"):
        return True
    if _open_ended(before):
        return True
    if ORDER_WORDS.match(text) or text.startswith(("->", "*", "\u2022", "(")):
        return False
    if (text[:1].islower() or (re.match(r"[LR]\b(?!\s?[:.])", text) and mark_before is not None)) and len(
        before
    ) > 18:
        return True
    if paragraph != last.paragraph:
        return False
    # In running prose a line goes on until the paragraph ends.
    return (
        len(before) >= 60
        and not before.rstrip().endswith((":",))
        and mark_before is None
        and not before.isupper()
        and known_share(text) > 0.3
        and _prose(before)
    )


def _prose(text: str) -> bool:
    return len(re.findall(r"[a-z]{2,}", text)) >= 8


_BREAKS_OFF = re.compile(
    r"(?:,|[^\d\s]\s-|&|\b(?:and|to|the|of|on|onto|over|beside|next|a|with|then|by|stepping|turning|closing|in|for|at|from|your|is|are|you|this|an))$"
    r"|[(\[][^)\]]*$"
)


def _open_ended(text: str) -> bool:
    """Whether a line breaks off: a comma, a joining word or an open bracket at its end."""
    return bool(_BREAKS_OFF.search(text.rstrip()))


def _mid_sentence(before: str, text: str) -> bool:
    """Whether a number that opens a line only goes on with the line before ("turn left (9" / "o'clock)")."""
    return before.count("(") > before.count(")")


def _starts_block(text: str) -> bool:
    return bool(
        _SECTION.match(text)
        or _EXTRA.match(text)
        or _PART.match(text)
        or _PART_SECTION.match(text)
        or ((m := _RANGE.match(text)) and m["open"])
    )


# -- what a line is -------------------------------------------------------------------------------

_STEP_WORDS = frozenset(
    {
        Word.VERB,
        Word.FOOT,
        Word.SIDE,
        Word.BOTH,
        Word.PLACE,
        Word.TURN,
        Word.AMOUNT,
        Word.PART,
        Word.HOLD,
        Word.FIGURE,
        "feet",
    }
)


@lru_cache(maxsize=4096)
def _tokens_of(text: str) -> tuple[Token, ...]:
    return tuple(tokenize(text, lexicon()))


def known_share(text: str) -> float:
    """The share of a text's words that are step language, 0 to 1; 0 for no words."""
    step = other = 0
    for token in _tokens_of(text):
        words = max(1, token.text.count(" ") + 1)
        if token.word in _STEP_WORDS:
            step += words
        elif token.word in ("unknown",):
            other += 1
        elif token.word is Word.IGNORE:
            other += 0
    return step / (step + other) if step + other else 0.0


def _number_of(word: str) -> int | None:
    word = word.lower()
    if word.isdigit():
        return int(word)
    digits = re.match(r"\d+", word)
    if digits:
        return int(digits.group())
    return NUMBER_WORDS.get(word) or _ORDINALS.get(word) or _ROMAN.get(word)


def _classify(block: Block) -> None:
    text = block.text
    block.stands = known_share(text)
    if found := _PART_SECTION.match(text):
        block.kind = "part"
        block.name = (found["letter"] or found["letter2"]).upper()
        block.number = int(found["number"] or found["number2"])
        block.rest = found.start("rest" if found["letter"] else "rest2")
        _range_in_heading(block)
        return
    if (
        (found := _PART.match(text))
        and not re.search(r"[A-H]\s*[-=:,]?\s*\d+.*\b[A-H]\b", text[found.start("rest") :])
        and not re.match(r"\s*(?:and|,|&)", found["rest"])
        and not re.search(r"\bparts?\s+[A-H]\b", found["rest"], re.IGNORECASE)
    ):
        block.kind, block.name, block.rest = "part", found["letter"].upper(), found.start("rest")
        return
    if (found := _SECTION.match(text)) and not re.match(
        r"\s*(?:restarts?|walls?)\b", found["rest"], re.IGNORECASE
    ):
        number = _number_of(found["a"] or found["b"] or found["c"])
        if number is not None:
            block.kind, block.number, block.rest = "heading", number, found.start("rest")
            if found["from"]:
                block.range = (int(found["from"]), int(found["to"]))
            _range_in_heading(block)
            return
    if found := _BARS.match(text):
        block.kind, block.rest = "heading", found.start("rest")
        return
    if found := _EXTRA.match(text):
        block.kind, block.name, block.rest = "extra", found["name"].strip(), found.start("rest")
        return
    mark = leading_mark(text)
    if mark is not None and len(mark.beats) == 1 and text[mark.start : mark.end].strip()[-1:] in ".)":
        inner = leading_mark(text, mark.end)
        if inner is not None and inner.first <= 2:
            mark = inner  # "1) 1 R side, 2-3 rock": the first number only numbers the line
    if (found := _RANGE.match(text)) and mark is not None:
        first, last = int(found["from"]), int(found["to"])
        if last > first:
            block.range = (first, last)
            block.rest = found.start("rest")
            block.kind = "range?" if not (found["open"] and found["close"]) else "range"
    if _TOLD_BESIDE.match(text):
        block.kind, block.range = "text", None
        return
    block.pieces = split_marks(text, mark)
    if (
        block.kind == "text"
        and block.pieces
        and block.pieces[0].mark is not None
        and (block.stands >= 0.3 or mark is None or len(mark.beats) > 1)
    ):
        block.kind = "steps"


def _numbers_heading(block: Block, following: Block | None, *, counting: bool) -> bool:
    """Whether "3. WEAVE, DRAG" numbers a section: the steps under it count from 1 again.

    `counting` says that its number goes on with the counts before it, as a step's would.
    """
    if (
        block.kind != "steps"
        or len(block.pieces) != 1
        or following is None
        or following.kind not in ("steps", "range", "range?")
    ):
        return False
    mark, below = block.pieces[0].mark, following.pieces[0].mark if following.pieces else None
    if mark is None or below is None or len(mark.beats) > 1 or mark.first.denominator > 1:
        return False
    if below.first > 1 or below.floating or mark.floating:
        return False
    dotted = block.text[mark.start : mark.end].strip()[-1:] in ".):"
    return (dotted and len(below.beats) > 1) or not counting


def _counts_on(blocks: list[Block], i: int, numbered: int) -> bool:
    """Whether a single number is a count rather than the next heading's: it follows the count before it."""
    mark = blocks[i].pieces[0].mark if blocks[i].pieces else None
    before = next(
        (p.mark for b in reversed(blocks[:i]) for p in reversed(b.pieces) if p.mark is not None), None
    )
    if mark is None or mark.first != numbered + 1:
        return True
    return before is not None and before.last + 1 == mark.first and before.last < 8 and numbered == 0


def _range_in_heading(block: Block) -> None:
    """ "Section 2 [9-16]: ..." : the range may stand after the number."""
    if found := re.match(
        r"[\s:.,-]*[\[(]?\s*(?:counts?\s*)?(\d{1,3})\s*-\s*(\d{1,3})\s*(?:counts?)?\s*[\])]?\s*[:.-]?(?=\s|$)",
        block.text[block.rest :],
    ):
        first, last = int(found[1]), int(found[2])
        if last - first >= 2:
            block.range = (first, last)
            block.rest += found.end()


def _settle_ranges(blocks: list[Block]) -> None:
    """Whether ``1-8 ...`` heads a section or marks its steps: what follows it decides."""
    numbered = 0
    for i, block in enumerate(blocks):
        if _numbers_heading(
            block, blocks[i + 1] if i + 1 < len(blocks) else None, counting=_counts_on(blocks, i, numbered)
        ):
            numbered += 1
            block.kind, block.rest = "heading", block.pieces[0].start
            block.number = int(block.pieces[0].mark.first)  # type: ignore[union-attr]
            continue
        if block.kind not in ("range", "range?"):
            continue
        assert block.range is not None
        first, last = block.range
        following = next((b for b in blocks[i + 1 :] if b.kind != "text"), None)
        mark = following.pieces[0].mark if following is not None and following.pieces else None
        inside = (
            mark is not None
            and following is not None
            and following.kind in ("steps", "range", "range?")
            and (
                mark.last - mark.first < last - first
                or (following.kind == "steps" and mark.last - mark.first <= last - first)
            )
            and ((mark.first <= 2 and first % 2 == 1) or first - 1 < mark.first <= first + 1)
            and not (mark.first > first + 1)
            and (mark.beats != block.pieces[0].mark.beats if block.pieces and block.pieces[0].mark else True)
        )
        whole = (last - first + 1) in (6, 8, 12, 16) and (first - 1) % 2 == 0
        if (inside and (block.kind == "range" or whole or last - first >= 5) and len(block.pieces) <= 1) or (
            block.kind == "range"
            and whole
            and len(block.pieces) <= 1
            and not (mark is not None and mark.first == last + 1 and last - first < 5)
        ):
            block.kind = "heading"
        else:
            block.kind, block.range = "steps", None


# -- pieces: several count marks in one line ---------------------------------------------------------

_BRACKETED = re.compile(
    r"[\[(]\s*(?:(?:on|for)\s+)?(?:(?:counts?|cts?|beats?)\.?\s*:?\s*)?(?=\d|&|one\b|two\b|three\b|four\b|five\b|six\b|seven\b|eight\b)",
    re.IGNORECASE,
)
_MIDWAY = re.compile(r"(?<=[,;.|\t])\s*(?=(?:\d|&)\s?)|\s{2,}(?=(?:\d|&))|(?<=\s-)\s(?=\d)|\s/\s*(?=\d)")
_AT_END = re.compile(
    r"(?:(?<!\d)[:,.]|(?<=\d),|\s-|\s{2,}|\t|\.{2,}|on|for|counts?)\s*(?:(?:on\s+)?(?:the\s+)?counts?\s*)?(?=(?:\d{1,2}|&|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve)(?:\s*(?:-|&|,|\+|to|and|[ae]|\s)\s*(?:\d{1,2}|&|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve))*[.)]?\s*(?:[.;]|$))",
    re.IGNORECASE,
)


def split_marks(text: str, lead: Mark | None) -> list[Piece]:
    """The line cut at its count marks, whether they stand before their steps or after them."""
    marks = [lead] if lead is not None else []
    at = lead.end if lead is not None else 0
    for start in _mark_places(text, at):
        if marks and start < marks[-1].end:
            continue
        mark = leading_mark(text, start)
        if mark is None or not _follows(marks[-1] if marks else None, mark, text, start):
            continue
        marks.append(mark)
    if not marks:
        return [Piece(None, 0, len(text))]
    if _only_numbers(text, marks):
        lead, *marks = marks
        return _trailing(marks, begin=lead.end)
    before = text[: marks[0].start].strip(" \t.,;:-([")
    if before and known_share(before) > 0.2 and not text[marks[-1].end :].strip(" .,;:)*"):
        return _trailing(marks)
    if (
        before
        and known_share(before) > 0.2
        and len(marks) >= 1
        and lead is None
        and _is_trailing(text, marks)
    ):
        return _trailing(marks, tail=len(text))
    pieces = [Piece(m, m.end, n.start) for m, n in zip(marks, marks[1:], strict=False)]
    return [*pieces, Piece(marks[-1], marks[-1].end, len(text))]


def _is_trailing(text: str, marks: list[Mark]) -> bool:
    return text[marks[0].start : marks[0].start + 2].strip().startswith(("(", "[")) or text[
        max(0, marks[0].start - 1) : marks[0].start + 1
    ].strip().startswith(":")


def _only_numbers(text: str, marks: list[Mark]) -> bool:
    """Whether the first mark only numbers the line of a list: "2. Cross R over L (3 & 4)"."""
    if len(marks) < 2 or marks[0].start > 0 or len(marks[0].beats) > 1 or marks[0].first.denominator > 1:
        return False
    return (
        text[marks[0].start : marks[0].end].strip()[-1:] in ".)"
        and text[marks[1].start] in "[("
        and len(marks[1].beats) > 1
        and known_share(text[marks[0].end : marks[1].start]) > 0.2
    )


def _trailing(marks: list[Mark], tail: int | None = None, begin: int = 0) -> list[Piece]:
    pieces = []
    at = begin
    for mark in marks:
        pieces.append(Piece(mark, at, mark.start))
        at = mark.end
    if tail is not None and tail > at:
        pieces.append(Piece(None, at, tail))
    return pieces


def _mark_places(text: str, at: int) -> list[int]:
    places = {m.start() for m in _BRACKETED.finditer(text, at)}
    places |= {m.end() for m in _MIDWAY.finditer(text, at)}
    places |= {m.end() for m in _AT_END.finditer(text, at)}
    return sorted(places)


_OF_COUNTS = re.compile(
    r"\b(?:repeat|rpt|mirror|same|again|reverse|of|as|on)\b[^,;.]*$|\bfor\s+(?:the\s+)?counts?\s*$",
    re.IGNORECASE,
)


def _follows(last: Mark | None, mark: Mark, text: str, start: int) -> bool:
    """Whether a mark met inside a line can be one: it goes on where the last one stopped."""
    if mark.floating:
        return last is not None
    bracketed = text[start : start + 1] in "[("
    if not bracketed and _OF_COUNTS.search(text[:start]):
        return False
    if (
        last is not None
        and bracketed
        and len(last.beats) == 1
        and last.start == 0
        and len(mark.beats) > 1
        and text[last.start : last.end].strip()[-1:] in ".)"
    ):
        return True
    if last is None:
        if bracketed:
            return (
                len(mark.beats) > 1
                or mark.first == 1
                or text[start + 1 : start + 6].lower().startswith("count")
            )
        return len(mark.beats) > 1 or (
            known_share(text[:start]) > 0.5
            and mark.end >= len(text.rstrip(" ."))
            and "," not in text[start - 2 : start]
        )
    gap = mark.first - last.last
    if bracketed:
        return 0 < gap <= 2 or mark.first <= 1
    return 0 < gap <= 1 or (mark.first <= 1 and len(mark.beats) > 1 and last.last >= 4)
