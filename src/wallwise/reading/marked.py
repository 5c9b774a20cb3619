"""Pieces: a line cut at its count marks, whether these stand before their steps or after them."""

import re
from dataclasses import dataclass, replace
from fractions import Fraction
from itertools import pairwise
from math import ceil
from typing import NamedTuple

from wallwise.reading.chains import FACING, ONLY_FACING, chain, ends_told
from wallwise.reading.marks import NUMBER_WORDS, Mark, leading_mark
from wallwise.reading.stepwords import known_share
from wallwise.reading.wording import any_of

_EIGHT = list(NUMBER_WORDS)[:8]
_TWELVE = list(NUMBER_WORDS)[:12]
_COUNT = rf"(?:\d{{1,2}}|&|{'|'.join(_TWELVE)})"
_BRACKETED = re.compile(
    rf"""
    [\[(]\s*(?:(?:on|for)\s+)?
    (?:(?:counts?|cts?|beats?)\.?\s*:?\s*)?
    (?=\d|&|[ea]\s*[\])]|{any_of(_EIGHT)}\b)
    """,
    re.IGNORECASE | re.VERBOSE,
)
_MIDWAY = re.compile(
    r"""
    (?<=[,;.|\t])\s*(?=(?:\d|&)\s?)
    | \s{2,}(?=(?:\d|&))
    | (?<=\s-)\s(?=\d)
    | \s/\s*(?=\d)
    | (?<=[A-Za-z)])\s(?=\d{1,2}(?:\s?[-&+]\s?\d{1,2})+\s*(?:[.;]\s|[.;]?$))  # "walk R, L 1-2."
    """,
    re.VERBOSE,
)
_AT_END = re.compile(
    rf"""
    (?: (?<!\d)[:,.] | (?<=\d), | \s[-=] | \s{{2,}} | \t | \.{{2,}} | on | for | counts? )\s*
    (?:(?:on\s+)?(?:the\s+)?counts?\s*)?
    (?=
        {_COUNT}(?>(?:(?:\s*(?:-|&|,|\+|to|and|[ae])\s*|\s+){_COUNT}){{0,16}})(?:\s?&)?
        [.)]?\s*(?:[.;]|$|{FACING}\s*$|->)
    )
    """,
    re.IGNORECASE | re.VERBOSE,
)
_SPOKEN = re.compile(
    rf"""
    \bon\s+(?:the\s+)?(?:(?:counts?|cts?|beats?)\s+)?
    (?=
        {_COUNT}(?:\s*(?:-|&|,|\+|to|and|[ae])\s*{_COUNT})*
        \s*(?:[,;.:)]|$|(?:and|then|with|while)\b)
    )
    """,
    re.IGNORECASE | re.VERBOSE,
)
_OF_COUNTS = re.compile(
    r"\b(?:repeat|rpt|mirror|same|again|reverse|(?:replace|change|replacing|changing)\s+(?:counts?|cts?))\b[^,;.]*$"
    r"|\b(?:of|as|on)\b(?:(?!\s\s)[^,;.:\t])*$"
    r"|\bfor\s+(?:the\s+)?counts?\s*$",
    re.IGNORECASE,
)

_COUNT_BEHIND = re.compile(
    r"\s(?:(?:on\s+|count\s+)?(?=\d{1,2}\.?$)|(?=[\[(]\d{1,2}[\])]\.?$))", re.IGNORECASE
)
_BEHIND_NAME = re.compile(r"(?<=[A-Za-z)])\s(?=\d[\d&a-]*\s*(?:[(,;]|$)|\d[&a][\d&a-]*\s*:)")
_CLAUSE_START = re.compile(r"(?:[,;.]|\)(?=\s))\s*(?=[^,;.)]*$)")
_WORD = re.compile(r"[A-Za-z]{2}|\b[LR]\b")
_HOURS = (3, 6, 9, 12)
_CLAUSE = 80  # characters before a mark in which its clause begins
_STEPS = 0.75  # the share of step language of a line of steps
_NEAR_BEATS, _NEAR_BEAT = 4, 2  # counts from one mark in brackets to the next
_EIGHT_LINE = 6  # counts: a line that counts as many is a section


@dataclass(frozen=True, slots=True)
class Piece:
    """A stretch of a block's line with the count mark that governs it (None: none does)."""

    mark: Mark | None
    start: int
    end: int


class Counted(NamedTuple):
    """The count that ends a line, and where the steps before it end."""

    mark: Mark
    end: int


def ends_in(text: str, mark: Mark, signs: str) -> bool:
    """Whether one of the signs closes a mark of the text ("2." or "2)")."""
    return text[mark.start : mark.end].strip()[-1:] in signs


def split_marks(text: str, lead: Mark | None) -> list[Piece]:
    """The pieces of a line that begins with the mark `lead`; at least one."""
    return (behind_names(text) if lead is None else []) or _split_at(_marks_in(text, lead), text, lead)


def _split_at(marks: list[Mark], text: str, lead: Mark | None) -> list[Piece]:
    """The pieces of a line by the marks found in it, or by those it counts on with."""
    linked = chain(text, lead)
    if len(linked) > len(marks):
        tail = linked[-1].end
        if not ends_told(text, tail):
            return _with_words_before(_after_marks(linked, text), text)
        return [*_before_marks(linked), *_tail(text, tail)]
    if not marks:
        return [Piece(None, 0, len(text))]
    if _only_numbers(text, marks):
        return _before_marks(marks[1:], begin=marks[0].end)
    if lead is not None and (told := _shared_out(text, lead) or _counted_again(lead, text)):
        return told
    words_before = text[: marks[0].start].strip(" \t.,;:-([")
    if words_before and (known_share(words_before) > 0.2 or _OF_COUNTS.search(words_before)):
        tail = marks[-1].end
        if not text[tail:].strip(" .,;:)*"):
            return _before_marks(marks)
        leads_in = ends_in(text, marks[0], ":")
        if (
            lead is None
            and not leads_in
            and (_is_set_off(text, marks[0]) or ONLY_FACING.fullmatch(text, tail))
        ):
            return [*_before_marks(marks), Piece(None, tail, len(text))]
    return _with_words_before(_after_marks(marks, text), text)


def behind_names(text: str) -> list[Piece]:
    """The pieces of a line whose marks stand behind the names of figures, each with its steps behind that.

    "R whisk 1a2 (R side, …), L whisk 3a4 (…)", "Voltas left 1a2a3: R over, …".  Empty for any other line.
    """
    marks: list[Mark] = []
    for found in _BEHIND_NAME.finditer(text):
        if text.count("(", 0, found.start()) > text.count(")", 0, found.start()):
            continue
        mark = leading_mark(text, found.start())
        if mark is None or len(mark.beats) == 1 or (marks and not 0 < mark.first - marks[-1].last <= 1):
            return []
        marks.append(mark)
    if not any(ends_in(text, mark, ":") or text[mark.end : mark.end + 1] == "(" for mark in marks):
        return []  # nothing is told behind them
    starts = [0, *(_clause_of(text, mark) for mark in marks[1:])]
    ends = [*starts[1:], len(text)]
    return [Piece(mark, start, end) for mark, start, end in zip(marks, starts, ends, strict=True)]


def _clause_of(text: str, mark: Mark) -> int:
    """Where the clause begins that a mark stands in."""
    found = _CLAUSE_START.search(text[: mark.start])
    return found.end() if found is not None else 0


def _with_words_before(pieces: list[Piece], text: str) -> list[Piece]:
    """The pieces of a line whose marks stand before their steps, with the words before the first of them."""
    mark = pieces[0].mark
    if mark is None or _WORD.search(text, 0, mark.start) is None:
        return pieces
    return [Piece(None, 0, mark.start), *pieces]


def count_behind(text: str) -> Counted | None:
    """The one count that ends a line of steps ("Touch L beside R (2)"); None where none does."""
    found = _COUNT_BEHIND.search(text)
    mark = leading_mark(text, found.end()) if found is not None else None
    if found is None or mark is None or _counts_of(text, mark):
        return None
    return Counted(mark, found.start()) if known_share(text[: found.start()]) >= _STEPS else None


def _marks_in(text: str, lead: Mark | None) -> list[Mark]:
    marks = [lead] if lead is not None else []
    for start in _mark_places(text, lead.end if lead is not None else 0):
        if marks and start < marks[-1].end:
            continue
        mark = leading_mark(text, start)
        if mark is not None and mark.floating and lead is not None and _shares(lead):
            continue  # "1-2&3-4 R side, L behind, R side (&), …": the line's own mark has the half already
        counted = next((before for before in reversed(marks) if not before.floating), None)
        if mark is not None and _follows(counted, mark, text):
            marks.append(mark)
    if lead is not None and len(marks) > 1 and _tells_facing(text, marks[-1]):
        marks.pop()
    return marks


def _shares(mark: Mark) -> bool:
    """Whether a mark counts a share of a beat between whole ones."""
    return len(mark.beats) > 1 and any(beat.denominator > 1 for beat in mark.beats)


def _tells_facing(text: str, mark: Mark) -> bool:
    """Whether a number that ends a line with a count mark before its steps is the clock's: "… (9)"."""
    alone = len(mark.beats) == 1 and not text[mark.end :].strip(" .*")
    return (
        alone
        and mark.first in _HOURS
        and (
            text[mark.start : mark.end].strip()[:1] in ("[", "(")
            or text[: mark.start].rstrip(" ").endswith(("\t", "="))
        )
    )


def _mark_places(text: str, at: int) -> list[int]:
    """Where from `at` on a mark can stand inside a line."""
    places = {found.start() for found in _BRACKETED.finditer(text, at)}
    places |= {found.end() for found in _MIDWAY.finditer(text, at)}
    places |= {found.end() for found in _AT_END.finditer(text, at)}
    spoken = list(_SPOKEN.finditer(text, at))
    places -= {found.end() for found in spoken}
    places |= {found.start() for found in spoken}
    return sorted(places)


def _before_marks(marks: list[Mark], *, begin: int = 0) -> list[Piece]:
    """Pieces each of which its mark follows."""
    starts = [begin, *(mark.end for mark in marks)]
    return [Piece(mark, start, mark.start) for mark, start in zip(marks, starts, strict=False)]


def _tail(text: str, at: int) -> list[Piece]:
    """What stands behind the last mark of a line: the facing, as a piece of its own."""
    return [Piece(None, at, len(text))] if text[at:].strip(" .") else []


def _after_marks(marks: list[Mark], text: str) -> list[Piece]:
    """Pieces each of which follows its mark, the last up to the end of the line."""
    pieces = [Piece(mark, mark.end, _end_before(text, mark.end, after)) for mark, after in pairwise(marks)]
    return [*pieces, Piece(marks[-1], marks[-1].end, len(text))]


def _end_before(text: str, at: int, after: Mark) -> int:
    """Where the steps from `at` on end before the next mark, which a sentence may lead into.

    "… touch left. Vine left on 5-6-7-8: side left, …"
    """
    stop = text.rfind(". ", at, after.start) if ends_in(text, after, ":") else -1
    return after.start if stop < 0 else stop + 1


def _shared_out(text: str, lead: Mark) -> list[Piece]:
    """The pieces of a line that gives each beat of its mark once more: "3e&a: R heel (3), beside (e) ...".

    Empty where the marks in brackets are others than the mark's own beats.
    """
    places = [found.start() for found in _BRACKETED.finditer(text, lead.end)]
    inner = [mark for place in places if (mark := leading_mark(text, place)) is not None]
    if len(inner) < 2 or sum(len(mark.beats) for mark in inner) != len(lead.beats):
        return []
    marks, left = [], list(lead.beats)
    for mark in inner:
        beats, left = tuple(left[: len(mark.beats)]), left[len(mark.beats) :]
        if mark.beats != (tuple(beat % 1 for beat in beats) if mark.floating else beats):
            return []
        marks.append(Mark(beats, mark.start, mark.end))
    if text[lead.end : marks[0].start].strip():
        return [*_before_marks(marks, begin=lead.end), *_tail(text, marks[-1].end)]
    ends = [*(mark.start for mark in marks[1:]), len(text)]
    return [Piece(mark, mark.end, end) for mark, end in zip(marks, ends, strict=True)]


def _counted_again(lead: Mark, text: str) -> list[Piece]:
    """The pieces of a line that counts its own counts again ("17-24 R shuffle (1&2) …", "1-8: 1 R side …").

    Counts that no mark tells belong to the steps told up to the next one; none where the brackets say
    something else.
    """
    if not lead.ranged or len(lead.beats) < _EIGHT_LINE:
        return []
    inner = _ascending([m for m in _bracketed_marks(text, lead) if not m.floating])
    inner = inner or chain(text, leading_mark(text, lead.end))
    if not inner:
        return []
    shift = lead.first - 1 if inner[0].first < lead.first else 0
    marks = [replace(mark, beats=tuple(beat + shift for beat in mark.beats)) for mark in inner]
    if marks[-1].last > lead.last:
        return []
    if not text[lead.end : marks[0].start].strip():
        follow = [*(mark.first for mark in marks[1:]), lead.last + 1]
        marks = [
            replace(m, beats=(*m.beats, *_between(m.last, up_to)))
            for m, up_to in zip(marks, follow, strict=True)
        ]
        return _after_marks(marks, text)
    before = [lead.first - 1, *(mark.last for mark in marks)]
    filled = [
        replace(m, beats=(*_between(last, m.first), *m.beats)) for last, m in zip(before, marks, strict=False)
    ]
    pieces = _before_marks(filled, begin=lead.end)
    left, tail = _between(marks[-1].last, lead.last + 1), marks[-1].end
    return [*pieces, Piece(Mark(left, tail, tail), tail, len(text))] if left else pieces


def _bracketed_marks(text: str, lead: Mark) -> list[Mark]:
    """The marks in brackets behind the mark of a line; an hour that ends the line is none."""
    places = (found.start() for found in _BRACKETED.finditer(text, lead.end))
    marks = [mark for place in places if (mark := leading_mark(text, place)) is not None]
    if marks and _tells_facing(text, marks[-1]):
        marks.pop()
    return marks


def _ascending(marks: list[Mark]) -> list[Mark]:
    """The marks if each begins after the one before; else those of several beats, as the others are hours."""
    for some in (marks, [mark for mark in marks if len(mark.beats) > 1]):
        if all(a.last < b.first for a, b in pairwise(some)):
            return some
    return []


def _between(last: Fraction, first: Fraction) -> tuple[Fraction, ...]:
    """The whole beats after one beat and before another."""
    return tuple(Fraction(beat) for beat in range(int(last // 1) + 1, ceil(first)))


def _is_set_off(text: str, mark: Mark) -> bool:
    """Whether brackets, a colon, dashes or "on" set a mark off from the words before it."""
    if _SPOKEN.match(text, mark.start):
        return True
    if text[mark.start : mark.start + 2].strip().startswith(("(", "[")):
        return True
    before, own = text[: mark.start].rstrip(), text[mark.start : mark.end].strip()
    return before.endswith(":") or own.startswith(":") or (before.endswith(" -") and own.endswith("-"))


def _only_numbers(text: str, marks: list[Mark]) -> bool:
    """Whether the first mark only numbers the line of a list: "2. Cross R over L (3 & 4)"."""
    if len(marks) < 2 or marks[0].start > 0 or len(marks[0].beats) > 1 or marks[0].first.denominator > 1:
        return False
    return (
        ends_in(text, marks[0], ".)")
        and text[marks[1].start] in "[("
        and len(marks[1].beats) > 1
        and known_share(text[marks[0].end : marks[1].start]) > 0.2
    )


def _follows(last: Mark | None, mark: Mark, text: str) -> bool:
    """Whether a mark met inside a line can be one: it goes on where the last one stopped."""
    if mark.floating:
        return last is not None
    bracketed = text[mark.start : mark.start + 1] in "[("
    if not bracketed and not _SPOKEN.match(text, mark.start) and _counts_of(text, mark):
        return False
    if last is None:
        return _can_be_first(mark, text, bracketed=bracketed)
    gap = mark.first - last.last
    if bracketed:
        numbered = len(last.beats) == 1 and last.start == 0 and ends_in(text, last, ".)")
        near = _NEAR_BEATS if len(mark.beats) > 1 else _NEAR_BEAT  # the steps between have the counts between
        return (numbered and len(mark.beats) > 1) or 0 < gap <= near or mark.first <= 1
    return 0 < gap <= 1 or (mark.first <= 1 and len(mark.beats) > 1 and last.last >= 4)


def _counts_of(text: str, mark: Mark) -> bool:
    """Whether the words before a mark make it the counts of something ("repeat counts 1-4")."""
    before = text[max(0, mark.start - _CLAUSE) : mark.start]
    # Numbers in words behind a colon are always a count: "on each stomp: five, six, seven, eight".
    called = before.rstrip().endswith(":") and text[mark.start :].lstrip()[:1].isalpha()
    return not called and _OF_COUNTS.search(before) is not None


def _can_be_first(mark: Mark, text: str, *, bracketed: bool) -> bool:
    """Whether the first mark of a line can stand behind words."""
    if len(mark.beats) > 1:
        return True
    if _SPOKEN.match(text, mark.start):
        return mark.first == 1
    if bracketed:
        counts_on = f"({mark.first + 1})" in text[mark.end :]
        return (
            mark.first == 1 or counts_on or text[mark.start + 1 : mark.start + 6].lower().startswith("count")
        )
    ends_line = mark.end >= len(text.rstrip(" ."))
    return (
        ends_line and known_share(text[: mark.start]) > 0.5 and "," not in text[mark.start - 2 : mark.start]
    )
