"""Joins: the logical lines of a sheet, of which hard line breaks have made several rows."""

import re
from dataclasses import replace

from wallwise.reading.headings import starts_block
from wallwise.reading.marked import split_marks
from wallwise.reading.marks import Mark, leading_mark
from wallwise.reading.rows import Row
from wallwise.reading.stepwords import known_share
from wallwise.reading.wording import ORDER_WORDS

_ENDS_MARKED = re.compile(r"(?:\s{2,}|\t|[\[(])(?:counts?\s*)?[\d&][\d\s&,+-]*[)\]]?\.?$")
_KEY = re.compile(r"^[A-Za-z ]{2,20}:\s")
_GOES_ON = re.compile(r"[LR]\b(?!\s?[:.])|\d/\d\b|-\s")
_BREAKS_OFF = re.compile(
    r"""
    (?:
        , | [^\d\s]\s- | (?<!\d)&
      | \b(?:and|to|the|of|on|onto|over|beside|next|a|with|then|by|stepping|turning|closing|in|for|at|from
            |your|is|are|you|this|an)
    )$
    | [(\[][^)\]]*$
    """,
    re.VERBOSE,
)
_SENTENCE = re.compile(r"[^\W\d][^\W\d]\.(?:\s|$)")
_SIGN = re.compile(r"->|[*\u2022(]")
_BYLINE = re.compile(r"by\s+[A-Z][a-z]")
_OF_A_WALL = re.compile(r"walls?\s+\d", re.IGNORECASE)
_DIGITS = tuple("0123456789")
_WORDS_OF_PROSE = re.compile(r"[a-z]{2,}")
_LONGEST = 2_000  # characters: no paragraph of a sheet goes on after so many
_TAIL = 200  # characters at the end of a line that tell whether it breaks off
_STEPS = 0.3  # the share of step language that no title has
_FEW_LETTERS = 6
_CAPITALS = 0.85  # the share of capitals in a line that is set in them
_SHORT = 18  # a line shorter than this was not broken off by its margin,
_FULL = 60  # one as long as this may have been


def joined(rows: list[Row]) -> list[Row]:
    """The rows, each with those that go on with it."""
    whole: list[Row] = []
    for row in rows:
        heads = len(whole) == 1 and _is_title(whole[0], row)
        if whole and not heads and len(whole[-1].line.text) <= _LONGEST and _continues(whole[-1], row):
            whole[-1] = replace(whole[-1], line=whole[-1].line.join(row.line), paragraph=row.paragraph)
        else:
            whole.append(row)
    return whole


def _is_title(first: Row, second: Row) -> bool:
    """Whether the first row of a sheet names the dance and the second goes on in small letters about it."""
    title, about = first.line.text, second.line.text
    told = known_share(title) >= _STEPS or leading_mark(title) is not None
    return title[:1].isupper() and about[:1].islower() and not told and len(title) < _FULL


def _continues(last: Row, row: Row) -> bool:
    """Whether `row` goes on with the logical line before it."""
    before, text = last.line.text, row.line.text
    mark, mark_before = leading_mark(text), leading_mark(before)
    opens = starts_block(text)
    if mark_before is not None and _is_bare(before, mark_before) and mark is None and not opens:
        return True
    unclosed = before.count("(") > before.count(")")
    # A number in an open bracket is no count mark ("turn left (9" / "o'clock)").
    breaks_off = _BREAKS_OFF.search(before.rstrip()[-_TAIL:]) is not None
    counted = mark is not None and not (mark.floating and breaks_off)
    other_letters = _is_capitals(before) and not _is_capitals(text) and not text[:1].isdigit()
    if row.bullet or opens or other_letters or (counted and not unclosed):
        return False
    if breaks_off:
        return True
    if row.paragraph != last.paragraph or _KEY.match(text) or _ends_counted(before):
        return False
    if unclosed or before.count("[") > before.count("]"):
        return True
    if (
        _BYLINE.match(text)
        or ORDER_WORDS.match(text)
        or _OF_A_WALL.match(text)
        or text.startswith(("->", "*", "\u2022", "("))
    ):
        return False
    if len(before) > _SHORT and (text[:1].islower() or (mark_before is not None and _GOES_ON.match(text))):
        return True
    return mark_before is None and _runs_on(before, text)


def _is_capitals(text: str) -> bool:
    """Whether nearly all of a line's letters are capitals, as in a heading."""
    letters = [sign for sign in text if sign.isalpha()]
    return len(letters) >= _FEW_LETTERS and sum(map(str.isupper, letters)) >= _CAPITALS * len(letters)


def _ends_counted(text: str) -> bool:
    """Whether a count ends a line: set off from its steps, or the last of several: "R on 1, L on 2"."""
    if _ENDS_MARKED.search(text[-_TAIL:]):
        return True
    if text.rstrip(" .)")[-1:] not in _DIGITS:
        return False
    marks = [piece.mark for piece in split_marks(text, leading_mark(text)) if piece.mark is not None]
    return len(marks) > 1 and not text[marks[-1].end :].strip(" .")


def _is_bare(text: str, mark: Mark) -> bool:
    """Whether a count mark stands in a row of its own, so that its words follow in the next."""
    return mark.end >= len(text.rstrip()) and text.lstrip("([ ")[:1] in "0123456789&"


def _runs_on(before: str, text: str) -> bool:
    """Whether both lines are running prose, which goes on until the paragraph ends."""
    if starts_block(before) and text[:1].isupper() and not _SENTENCE.search(before):
        return False  # a heading
    return (
        len(before) >= _FULL
        and not before.rstrip().endswith(":")
        and not before.isupper()
        and known_share(text) > 0.3
        and len(_WORDS_OF_PROSE.findall(before)) >= 8
    )
