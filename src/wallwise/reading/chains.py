"""Chains: count marks that stand among the steps with nothing but blanks around them.

"1 step R 2 touch L & step L 3 …" counts before the steps, "step R 1 touch L 2" behind them.
"""

import re
from fractions import Fraction

from wallwise.glossary.lexicon import Word
from wallwise.reading.marks import Mark, leading_mark
from wallwise.reading.stepwords import known_share, tokens_of

FACING = r"[\[(][^()\[\]\d]{0,25}(?:1[0-2]|0?[369])(?:[:.]\d\d|\s?o'?\s?c\w*)?[^()\[\]\d]{0,25}[\])]"
"""A facing in brackets: "(now at 3:00)", "(12:00, home)"."""
_POINTED = r"(?:->|>>|=>)\s*(?:1[0-2]|0?[369])(?:[:.]\d\d|\s?o'?\s?c\w*)?"  # "-> 3 o'clock"
ONLY_FACING = re.compile(rf"\s*(?:{FACING}|{_POINTED})[\s.]*", re.IGNORECASE)
_PLACE = re.compile(
    r"(?:(?<=\s)|^)(?=(?:\(?\d|&[\s,;]))|(?<=\s)(?=(?:counts?|cts?|beats?)\s\d)", re.IGNORECASE
)
_HALF = re.compile(r"&(?:\s+(?=[A-Za-z])|(?=[,;]))")
_OPENS_STEPS = frozenset(
    {Word.VERB, Word.FIGURE, Word.FOOT, Word.SIDE, Word.TURN, Word.AMOUNT, Word.PLACE, Word.HOLD, Word.BOTH}
    | {Word.PART, Word.SAME}
)
_STEPS = 0.5  # of the words between two marks, at the least
_LONGEST = 200  # characters of the steps of one mark,
_BEGINNING = 40  # and those that tell whether they are steps
_HALF_BEAT = Fraction(1, 2)


def chain(text: str, lead: Mark | None) -> list[Mark]:
    """The marks of a line that counts on from mark to mark without stops; empty for any other line.

    `lead` is the mark the line begins with.  Every stretch between two marks tells steps.
    """
    first = lead or leading_mark(text)
    marks = [first] if first is not None and not first.floating else []
    for found in _PLACE.finditer(text, marks[0].end if marks else 1):
        at = found.start()
        if marks and at < marks[-1].end:
            continue
        mark = _half(text, at) if text[at] == "&" else leading_mark(text, at)
        since = marks[-1].end if marks else 0
        if mark is None or not _goes_on(marks, mark) or at - since > _LONGEST:
            continue
        if known_share(text[since:at]) >= _STEPS:
            marks.append(mark)
    counted = [mark for mark in marks if not mark.floating]
    return marks if len(counted) > 1 and _counts(text, marks) else []


def ends_told(text: str, at: int) -> bool:
    """Whether nothing more is told of the steps from `at` on, unless which way they face."""
    return not text[at:].strip(" .") or ONLY_FACING.fullmatch(text, at) is not None


def _half(text: str, at: int) -> Mark | None:
    found = _HALF.match(text, at)
    return Mark((_HALF_BEAT,), at, found.end(), floating=True) if found is not None else None


def _goes_on(marks: list[Mark], mark: Mark) -> bool:
    """Whether a mark counts on from the one before it: the very next beat, or the half between."""
    last = marks[-1] if marks else None
    if mark.floating:
        return last is not None and not last.floating and last.last.denominator == 1
    counted = next((m for m in reversed(marks) if not m.floating), None)
    if counted is None:
        return True
    return 0 < mark.first - counted.last <= 1


def _counts(text: str, marks: list[Mark]) -> bool:
    """Whether these are counts rather than numbers of other things that happen to run on."""
    if ends_told(text, marks[-1].end):
        return bool(text[: marks[0].start].strip())  # behind their steps
    return all(_opens_steps(text[mark.end : mark.end + _BEGINNING]) for mark in marks)


def _opens_steps(text: str) -> bool:
    first = next((t for t in tokens_of(text) if t.word not in (Word.IGNORE, Word.AND, Word.THEN)), None)
    return first is not None and first.word in _OPENS_STEPS
