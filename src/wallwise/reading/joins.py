"""Joins: the logical lines of a sheet, of which hard line breaks have made several rows."""

import re
from dataclasses import dataclass, replace
from itertools import pairwise

from wallwise.reading.headings import starts_block
from wallwise.reading.marked import behind_names, split_marks
from wallwise.reading.marks import Mark, leading_mark
from wallwise.reading.rows import Row
from wallwise.reading.stepwords import known_share
from wallwise.reading.wording import ORDER_WORDS

_ENDS_MARKED = re.compile(r"(?:\s{2,}|\t|[\[(])(?:counts?\s*)?[\d&][\d\s&,+-]*[)\]]?\.?$")
_KEY = re.compile(r"^[A-Za-z ]{2,20}:\s")
_GOES_ON = re.compile(r"[LR]\b(?!\s?[:.])|\d/\d\b|-\s")
# The last word of a row and the first of the next, where the next was begun for another step.
_FEET = re.compile(r"\b(?:[LR]|(?i:fwd|forward|bk|back|side|tog|together)) [LR]\s[a-z]")
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
_STEPS_BEGUN = re.compile(r":\s+\d+[&-]\d*\s")  # "CHASSE RIGHT, ROCK BACK: 1&2 step"
_SENTENCE = re.compile(r"[^\W\d][^\W\d]\.(?:\s|$)")
_COUNTED = re.compile(r"[(\[ ]*(?:counts?\s|beats?\s)?[\d&]", re.IGNORECASE)
_WORD = re.compile(r"[^\W\d_]{2,}")
_SIGN = re.compile(r"->|[*\u2022(]")
_APART = re.compile(r"->|[*\u2022]|(?:[A-Ha-h]|[ivxIVX]{1,4})[.)]\s")  # never left over by a margin
_MARK_ALONE = re.compile(r"\((?:counts?\s+)?[\d\s&,+-]{1,40}\)$", re.IGNORECASE)
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
    under_mark = False  # whether the line began with a row that is nothing but its count mark
    for before, row in zip([None, *rows], rows, strict=False):
        heads = len(whole) == 1 and _is_title(whole[0], row)
        broken = before is not None and _is_full(before, row, page.margin)
        long = bool(whole) and len(whole[-1].line.text) > _LONGEST
        gap = _Break(whole[-1], row, page, broken, under_mark) if whole and not (heads or long) else None
        if gap is not None and gap.is_none:
            line = whole[-1].line.join(row.line, ", " if gap.parts_steps else " ")
            under_mark = under_mark or gap.is_bare
            whole[-1] = replace(whole[-1], line=line, paragraph=row.paragraph, width=row.width)
        else:
            whole.append(row)
            under_mark = False
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
    if row.bullet or row.paragraph != before.paragraph:
        return False
    goes_on = _BREAKS_OFF.search(before.line.text[-_TAIL:]) is not None or (
        text[:1].islower() and leading_mark(text) is None
    )
    return goes_on and not starts_block(text)


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


class _Break:
    """The place between a logical line and the row below it, which may go on with it.

    `broken` is whether the row above the break had no room for the first word of the one below,
    `under_mark` whether the line above began with a row of its own for its count mark.
    """

    def __init__(self, last: Row, row: Row, page: _Page, broken: bool, under_mark: bool) -> None:
        self.last, self.row, self.page, self.broken = last, row, page, broken
        self.under_mark = under_mark
        self.before, self.text = last.line.text, row.line.text
        self.same_paragraph = row.paragraph == last.paragraph
        self.wrapped = broken and page.wraps and self.same_paragraph
        self.mark, self.mark_before = leading_mark(self.text), leading_mark(self.before)
        self.is_bare = self.mark_before is not None and _is_bare(self.before, self.mark_before)
        self.breaks_off = _BREAKS_OFF.search(self.before.rstrip()[-_TAIL:]) is not None
        self.goes_on = self.breaks_off and self.text[:1].islower()
        self.unclosed = self.before.count("(") > self.before.count(")")
        stands_behind = _MARK_BEHIND.match(self.text) or (broken and _MARK_ALONE.match(self.text))
        self.behind = bool(stands_behind) and not _ends_counted(self.before)
        sure = self.goes_on or (broken and self.behind)
        self.opens = starts_block(self.text) and not sure

    @property
    def is_none(self) -> bool:
        """Whether the row below goes on with the line above."""
        if self._is_waited_for():
            return True
        if self.row.bullet or self.opens or self._begins_steps():
            return False
        if _changes_letters(self.before, self.text):
            return False
        tells = self.under_mark and known_share(self.text) > _STEPS and not ORDER_WORDS.search(self.text)
        return self.breaks_off or (self.same_paragraph and (tells or self._runs_over()))

    @property
    def parts_steps(self) -> bool:
        """Whether the row was begun for another step, there being room and nothing left open above it."""
        if self.under_mark and not self.breaks_off:
            return self.before[-1:].isalnum()
        return not self.broken and _FEET.search(f"{self.before.split()[-1]} {self.text[:9]}") is not None

    def _is_waited_for(self) -> bool:
        """Whether the line above cannot end there."""
        if self.broken and self.same_paragraph and _wants(self.before, self.text):
            return True
        return self.is_bare and self.mark is None and not (self.opens or _is_counted(self.text))

    def _begins_steps(self) -> bool:
        """Whether the row below begins with the count mark of other steps."""
        if self.mark is None:
            return bool(behind_names(self.text))
        # A number in an open bracket is no count mark ("turn left (9" / "o'clock)").
        inside = self.unclosed or self.behind or (self.wrapped and not self.page.leads)
        shares = self.mark.floating and ((self.wrapped and self.mark_before is not None) or self.breaks_off)
        return not (inside or shares or self.goes_on)

    def _runs_over(self) -> bool:
        """Whether a row of the same paragraph that begins nothing for sure goes on with the one above."""
        before, text = self.before, self.text
        if _KEY.match(text) and not (self.broken and text[:1].islower()):
            return False
        ends = _APART.match(text) or before.endswith(_ENDS) or _is_headed(before, text)
        if self.wrapped and not ends:
            return True
        if _ends_counted(before):
            return False
        if self.unclosed or self.behind or before.count("[") > before.count("]"):
            return True
        if any(begins.match(text) for begins in (_BYLINE, ORDER_WORDS, _OF_A_WALL, _SIGN)):
            return False
        return self._heading_goes_on() or self._goes_on()

    def _heading_goes_on(self) -> bool:
        """Whether both rows are one heading in capitals, too long for a row."""
        heads = self.broken and self.page.leads and starts_block(self.before)
        return heads and _ends_in_capitals(self.before) and self.text.isupper()

    def _goes_on(self) -> bool:
        """Whether a row that begins nothing of its own goes on with the one before."""
        before, text, counted = self.before, self.text, self.mark_before is not None
        if len(before) > _SHORT and (text[:1].islower() or (counted and _GOES_ON.match(text))):
            return True
        if counted or self.last.opens:
            tells = known_share(text) > _STEPS and ORDER_WORDS.search(text) is None
            return self.broken and tells and not before.rstrip().endswith(_ENDS)
        return _runs_on(before, text, broken=self.broken)


def _wants(before: str, text: str) -> bool:
    """Whether a line waits for what the next begins with: a number, a facing, what is behind a key."""
    if _FACING.match(text):
        return not _FACING.search(before) and leading_mark(before) is not None
    if text[:1] in _DIGITS and _WANTS_NUMBER.search(before[-_TAIL:]):
        return True
    return _KEY.match(before) is not None and _KEY_ALONE.search(before) is not None


def _is_headed(before: str, text: str) -> bool:
    """Whether a line is a heading, below which something else begins."""
    opens = text[:1].isupper() or text[:1] in _DIGITS
    return starts_block(before) and opens and not (_SENTENCE.search(before) or _STEPS_BEGUN.search(before))


def _is_capitals(text: str) -> bool:
    """Whether nearly all of a line's letters are capitals, as in a heading."""
    letters = [sign for sign in text if sign.isalpha()]
    return len(letters) >= _FEW_LETTERS and sum(map(str.isupper, letters)) >= _CAPITALS * len(letters)


def _ends_in_capitals(text: str) -> bool:
    """Whether the last words of a line are in capitals, as what its heading tells."""
    return _is_capitals(text) or all(word.isupper() for word in text.split()[-2:])


def _changes_letters(before: str, text: str) -> bool:
    """Whether of two lines one is set in capitals and the other is not, where they meet."""
    if not text[:1].isalpha() or _is_capitals(before) is _is_capitals(text):
        return False
    last, first = _WORD.findall(before)[-1:], _WORD.findall(text)[:1]
    return not (last and first) or last[0].isupper() is not first[0].isupper()


def _ends_counted(text: str) -> bool:
    """Whether a count ends a line: set off from its steps, or the last of several: "R on 1, L on 2"."""
    if _ENDS_MARKED.search(text[-_TAIL:]):
        return True
    if text.rstrip(" .)")[-1:] not in _DIGITS:
        return False
    marks = [piece.mark for piece in split_marks(text, leading_mark(text)) if piece.mark is not None]
    return len(marks) > 1 and not text[marks[-1].end :].strip(" .")


def _is_counted(text: str) -> bool:
    """Whether a line has count marks of its own."""
    return any(piece.mark is not None for piece in split_marks(text, leading_mark(text)))


def _is_bare(text: str, mark: Mark) -> bool:
    """Whether a count mark stands in a row of its own, so that its words follow in the next."""
    return mark.end >= len(text.rstrip()) and _COUNTED.match(text) is not None


def _runs_on(before: str, text: str, *, broken: bool) -> bool:
    """Whether both lines are running prose, which goes on until the paragraph ends."""
    if _is_headed(before, text):
        return False
    if before.rstrip().endswith(_ENDS) and not broken:
        return False
    words = len(_WORDS_OF_PROSE.findall(before))
    return (
        ((words >= _MANY_WORDS and len(before) >= _FULL) or (broken and words >= _SOME_WORDS))
        and not before.rstrip().endswith(":")
        and not before.isupper()
        and known_share(text) > _STEPS
    )
