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
            |your|is|are|you|this|an|AND|TO|THE|OF|ONTO|BESIDE|NEXT|WITH|THEN|STEPPING|TURNING)
    )$
    | [(\[][^)\]]*$
    """,
    re.VERBOSE,
)
_SENTENCE = re.compile(r"[^\W\d][^\W\d]\.(?:\s|$)")
_SIGN = re.compile(r"->|[*\u2022(]")
_MARK_BEHIND = re.compile(r"[\[(](?:counts?\s+)?[\da-z&,\s-]{1,40}[\])]\s*[.,;]", re.IGNORECASE)
_ENDS = (".", ":", "!", "?")
_BYLINE = re.compile(r"by\s+[A-Z][a-z]")
_OF_A_WALL = re.compile(r"walls?\s+\d", re.IGNORECASE)
_DIGITS = tuple("0123456789")
_WORDS_OF_PROSE = re.compile(r"[a-z]{2,}")
_LONGEST = 2_000  # characters: no paragraph of a sheet goes on after so many
_TAIL = 200  # characters at the end of a line that tell whether it breaks off
_STEPS = 0.3  # the share of step language of a line of steps; no title has as much
_MANY_WORDS, _SOME_WORDS = 8, 5  # in small letters: a line of prose
_OUTLIERS = 4  # lines that no margin broke,
_RAGGED = 10  # characters between the longest of the others and the third longest
_NARROWEST = 36  # characters to a line
_FEW_LETTERS = 6
_CAPITALS = 0.85  # the share of capitals in a line that is set in them
_SHORT = 18  # a line shorter than this was not broken off by its margin,
_FULL = 60  # one as long as this may have been


def joined(rows: list[Row]) -> list[Row]:
    """The rows, each with those that go on with it."""
    whole: list[Row] = []
    margin = _margin(rows)
    for before, row in zip([None, *rows], rows, strict=False):
        heads = len(whole) == 1 and _is_title(whole[0], row)
        broken = before is not None and _is_full(before.line.text, row.line.text, margin)
        long = bool(whole) and len(whole[-1].line.text) > _LONGEST
        if whole and not (heads or long) and _continues(whole[-1], row, broken=broken):
            whole[-1] = replace(whole[-1], line=whole[-1].line.join(row.line), paragraph=row.paragraph)
        else:
            whole.append(row)
    return whole


def _margin(rows: list[Row]) -> int:
    """The length at which lines are broken, as several come near it; 0 where none is to be seen."""
    lengths = sorted((len(row.line.text) for row in rows), reverse=True)
    for longest, third in zip(lengths[:_OUTLIERS], lengths[2:], strict=False):
        if longest - third <= _RAGGED:
            return longest if longest >= _NARROWEST else 0
    return 0


def _is_full(before: str, text: str, margin: int) -> bool:
    """Whether the line before had no room for the first word of the next."""
    return len(before) + 1 + len(text.split(maxsplit=1)[0]) > margin > 0


def _is_title(first: Row, second: Row) -> bool:
    """Whether the first row of a sheet names the dance and the second goes on in small letters about it."""
    title, about = first.line.text, second.line.text
    told = known_share(title) >= _STEPS or leading_mark(title) is not None
    return title[:1].isupper() and about[:1].islower() and not told and len(title) < _FULL


def _continues(last: Row, row: Row, *, broken: bool) -> bool:
    """Whether `row` goes on with the logical line before it; `broken` where that had no room for more."""
    before, text = last.line.text, row.line.text
    mark, mark_before = leading_mark(text), leading_mark(before)
    opens = starts_block(text)
    if mark_before is not None and _is_bare(before, mark_before) and mark is None and not opens:
        return True
    unclosed = before.count("(") > before.count(")")
    # A number in an open bracket is no count mark ("turn left (9" / "o'clock)").
    breaks_off = _BREAKS_OFF.search(before.rstrip()[-_TAIL:]) is not None
    counted = mark is not None and not (mark.floating and breaks_off)
    behind = _MARK_BEHIND.match(text) is not None and not _ends_counted(before)
    other_letters = _is_capitals(before) is not _is_capitals(text) and text[:1].isalpha()
    if row.bullet or opens or other_letters or (counted and not (unclosed or behind)):
        return False
    if breaks_off:
        return True
    if row.paragraph != last.paragraph or _KEY.match(text) or _ends_counted(before):
        return False
    if unclosed or behind or before.count("[") > before.count("]"):
        return True
    if any(begins.match(text) for begins in (_BYLINE, ORDER_WORDS, _OF_A_WALL, _SIGN)):
        return False
    return _goes_on(last, text, counted=mark_before is not None, broken=broken)


def _goes_on(last: Row, text: str, *, counted: bool, broken: bool) -> bool:
    """Whether a row that begins nothing of its own goes on with the one before, `counted` or not."""
    before = last.line.text
    if len(before) > _SHORT and (text[:1].islower() or (counted and _GOES_ON.match(text))):
        return True
    if counted or last.opens:
        tells = known_share(text) > _STEPS and ORDER_WORDS.search(text) is None
        return broken and tells and not before.rstrip().endswith(_ENDS)
    return _runs_on(before, text, broken=broken)


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


def _runs_on(before: str, text: str, *, broken: bool) -> bool:
    """Whether both lines are running prose, which goes on until the paragraph ends."""
    if starts_block(before) and text[:1].isupper() and not _SENTENCE.search(before):
        return False  # a heading
    words = len(_WORDS_OF_PROSE.findall(before))
    return (
        ((words >= _MANY_WORDS and len(before) >= _FULL) or (broken and words >= _SOME_WORDS))
        and not before.rstrip().endswith(":")
        and not before.isupper()
        and known_share(text) > _STEPS
    )
