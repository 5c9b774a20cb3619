"""Joins: the logical lines of a sheet, of which hard line breaks have made several rows."""

import re
from dataclasses import dataclass, replace
from itertools import pairwise

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
      | \b(?:a|an|AN)
      | (?i:\b(?:and|to|the|of|on|onto|over|beside|next|with|then|by|stepping|turning|closing|in|for|at|from
                |your|is|are|you|this|be|into|while|until))
    )$
    | [(\[][^)\]]*$
    """,
    re.VERBOSE,
)
_WANTS_NUMBER = re.compile(
    r"\b(?:facing|faces?|towards|walls?|after|section|(?:counts?|walls?)\s[\d\s,&-]*(?:to|and|&))$",
    re.IGNORECASE,
)
_FACING = re.compile(r"[\[(]\s*\d{1,2}(?:[:.]\d\d|\s*o'?clock)?\s*[)\]]$", re.IGNORECASE)
_KEY_ALONE = re.compile(r"(?:^|\s)[A-Z][a-z]+:$")
_SENTENCE = re.compile(r"[^\W\d][^\W\d]\.(?:\s|$)")
_SIGN = re.compile(r"->|[*\u2022(]")
_APART = re.compile(r"->|[*\u2022]|(?:[A-Ha-h]|[ivxIVX]{1,4})[.)]\s")  # what no break at a margin leaves at the beginning of a row
_MARK_ALONE = re.compile(r"[\[(](?:counts?\s+)?[\d\s&,+-]{1,40}[\])]$", re.IGNORECASE)
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
_SOME_BREAKS, _MOST = 2, 0.75  # rows that surely go on, and the share of them that a margin broke
_FEW_LETTERS = 6
_CAPITALS = 0.85  # the share of capitals in a line that is set in them
_SHORT = 18  # a line shorter than this was not broken off by its margin,
_FULL = 60  # one as long as this may have been


@dataclass(frozen=True, slots=True)
class _Page:
    """How the rows of a sheet are broken.

    `margin` is the length that rows were broken at, 0 where none is to be seen; `wraps` is whether that
    is how the rows that surely go on came about; `leads` whether count marks stand where steps begin.
    """

    margin: int
    wraps: bool
    leads: bool


def joined(rows: list[Row]) -> list[Row]:
    """The rows, each with those that go on with it."""
    whole: list[Row] = []
    page = _page(rows)
    for before, row in zip([None, *rows], rows, strict=False):
        heads = len(whole) == 1 and _is_title(whole[0], row)
        broken = before is not None and _is_full(before, row, page.margin)
        long = bool(whole) and len(whole[-1].line.text) > _LONGEST
        if whole and not (heads or long) and _continues(whole[-1], row, page, broken=broken):
            whole[-1] = replace(whole[-1], line=whole[-1].line.join(row.line), paragraph=row.paragraph, width=row.width)
        else:
            whole.append(row)
    return whole


def _page(rows: list[Row]) -> _Page:
    """How the rows of a sheet are broken."""
    margin = _margin(rows)
    pairs = [(before, row, _is_full(before, row, margin)) for before, row in pairwise(rows)]
    surely = [full for before, row, full in pairs if _surely_goes_on(before, row)]
    wraps = sum(surely) >= _SOME_BREAKS and sum(surely) >= _MOST * len(surely)
    opening = [row for before, row, full in pairs if not full or row.paragraph != before.paragraph]
    leads = any(leading_mark(row.line.text) is not None for row in opening if not row.opens)
    return _Page(margin, wraps, leads)


def _surely_goes_on(before: Row, row: Row) -> bool:
    """Whether the words alone tell that a row goes on with the one before."""
    text = row.line.text
    if row.bullet or row.paragraph != before.paragraph or starts_block(text):
        return False
    return _BREAKS_OFF.search(before.line.text[-_TAIL:]) is not None or (
        text[:1].islower() and leading_mark(text) is None
    )


def _margin(rows: list[Row]) -> int:
    """The length at which lines are broken, as several come near it; 0 where none is to be seen."""
    lengths = sorted((row.width for row in rows), reverse=True)
    for longest, third in zip(lengths[:_OUTLIERS], lengths[2:], strict=False):
        if longest - third <= _RAGGED:
            return longest if longest >= _NARROWEST else 0
    return 0


def _is_full(before: Row, row: Row, margin: int) -> bool:
    """Whether the row before had no room for the first word of the next."""
    return before.width + 1 + len(row.line.text.split(maxsplit=1)[0]) > margin > 0


def _is_title(first: Row, second: Row) -> bool:
    """Whether the first row of a sheet names the dance and the second goes on in small letters about it."""
    title, about = first.line.text, second.line.text
    told = known_share(title) >= _STEPS or leading_mark(title) is not None
    return title[:1].isupper() and about[:1].islower() and not told and len(title) < _FULL


def _continues(last: Row, row: Row, page: _Page, *, broken: bool) -> bool:
    """Whether `row` goes on with the logical line before it; `broken` where that had no room for more."""
    before, text = last.line.text, row.line.text
    if broken and row.paragraph == last.paragraph and _wants(before, text):
        return True
    mark, mark_before = leading_mark(text), leading_mark(before)
    breaks_off = _BREAKS_OFF.search(before.rstrip()[-_TAIL:]) is not None
    stands_behind = _MARK_BEHIND.match(text) or (broken and _MARK_ALONE.match(text))
    behind = bool(stands_behind) and not _ends_counted(before)
    goes_on = breaks_off and text[:1].islower()
    opens = starts_block(text) and not (goes_on or (broken and behind))
    if mark_before is not None and _is_bare(before, mark_before) and mark is None and not opens:
        return True
    unclosed = before.count("(") > before.count(")")
    # A number in an open bracket is no count mark ("turn left (9" / "o'clock)").
    counted = mark is not None and not (breaks_off and (goes_on or mark.floating))
    wrapped = broken and page.wraps and row.paragraph == last.paragraph
    shares = wrapped and mark is not None and mark.floating and mark_before is not None
    inside = unclosed or behind or shares or (wrapped and not page.leads)
    if row.bullet or opens or _changes_letters(before, text) or (counted and not inside):
        return False
    if breaks_off:
        return True
    if row.paragraph != last.paragraph or (_KEY.match(text) and not (broken and text[:1].islower())):
        return False
    if wrapped and not (_APART.match(text) or before.endswith(_ENDS) or _is_headed(before, text)):
        return True
    if _ends_counted(before):
        return False
    if unclosed or behind or before.count("[") > before.count("]"):
        return True
    if any(begins.match(text) for begins in (_BYLINE, ORDER_WORDS, _OF_A_WALL, _SIGN)):
        return False
    if broken and page.leads and starts_block(before) and _ends_in_capitals(before) and text.isupper():
        return True
    return _goes_on(last, text, counted=mark_before is not None, broken=broken)


def _wants(before: str, text: str) -> bool:
    """Whether a line waits for what the next begins with: a number, a facing, what is behind a key."""
    if _FACING.match(text):
        return not _FACING.search(before) and leading_mark(before) is not None
    if text[:1] in _DIGITS and _WANTS_NUMBER.search(before[-_TAIL:]):
        return True
    return _KEY.match(before) is not None and _KEY_ALONE.search(before) is not None


def _is_headed(before: str, text: str) -> bool:
    """Whether a line is a heading, below which something else begins."""
    return starts_block(before) and text[:1].isupper() and not _SENTENCE.search(before)


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


def _ends_in_capitals(text: str) -> bool:
    """Whether the last words of a line are in capitals, as what its heading tells."""
    return _is_capitals(text) or all(word.isupper() for word in text.split()[-2:])


def _changes_letters(before: str, text: str) -> bool:
    """Whether of two lines one is set in capitals and the other is not."""
    if not text[:1].isalpha() or _is_capitals(before) is _is_capitals(text):
        return False
    return not (text.isupper() and _ends_in_capitals(before))


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
    if _is_headed(before, text):
        return False
    words = len(_WORDS_OF_PROSE.findall(before))
    return (
        ((words >= _MANY_WORDS and len(before) >= _FULL) or (broken and words >= _SOME_WORDS))
        and not before.rstrip().endswith(":")
        and not before.isupper()
        and known_share(text) > _STEPS
    )
