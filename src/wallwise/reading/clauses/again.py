"""What comes again: the counts or sections that a repeat names ("the first section", "the last 8 counts")."""

from __future__ import annotations

from wallwise.glossary.lexicon import Word
from wallwise.glossary.load import words
from wallwise.reading.clauses.telling import Telling
from wallwise.reading.wording import ORDINAL_WORDS, number_of

_REPEAT = words()["repeat"]
SECTION_WORDS = frozenset(_REPEAT["section"])
_BACK = frozenset(_REPEAT["back"])
_COUNTS = frozenset(_REPEAT["counts"])
_BETWEEN = frozenset(_REPEAT["between"])
_LETTERS = frozenset("abcdefghs")  # of parts, and of "section"
_EIGHT = frozenset(("eight", "8"))  # a section, or its counts


def take_told_again(t: Telling, i: int) -> int:
    """Give the open repeat the counts or the sections that the tokens from `i` on name; where they end.

    A number by itself ("repeat 1-4") is left for whoever takes numbers.
    """
    first = i
    while t.word(first) is Word.RELATION or t.at(first).text in _BETWEEN:
        first += 1
    told = t.at(first).text
    if told in SECTION_WORDS:
        return _sections(t, first, i)
    if told in _LETTERS and t.word(first + 1) == "number" and t.at(first).end == t.at(first + 1).start:
        t.act.of_part = told.upper().strip("S")
        return _sections(t, first, i)  # "repeat B1", "repeat S2"
    ordinal = told in ORDINAL_WORDS or told in _BACK
    if not ordinal and not (t.word(first) == "number" and t.at(first + 1).text in ("st", "nd", "rd", "th")):
        return i
    after = first + (1 if ordinal else 2)
    number = -1 if told in _BACK else number_of(told)
    return i if number is None else _nth(t, after, number)


def _sections(t: Telling, at: int, begin: int) -> int:
    """Sections by number, one or from one to another ("section one", "sections 1 and 2")."""
    first = number_of(t.at(at + 1).text)
    if first is None:
        return begin
    joined = t.word(at + 2) in ("-", ",", Word.AND, Word.RELATION)
    behind = at + (4 if t.at(at + 3).text in _LETTERS else 3)  # "B1 and B2"
    last = number_of(t.at(behind).text) if joined else None
    t.act.counts, t.act.of_section = (first, last or first), True
    end = at + 1 if last is None else behind
    t.touch(t.at(end))
    return end + 1


def _nth(t: Telling, at: int, number: int) -> int:
    """The n-th section or, of counts, so many from the beginning or back from here."""
    size = number_of(t.at(at).text)
    if size is not None and t.at(at + 1).text in _COUNTS:
        t.act.counts = (1, size) if number > 0 else (-size, -1)
        return at + 2
    if t.at(at).text in SECTION_WORDS | _EIGHT:
        t.act.counts, t.act.of_section = (number, number), True
        return at + 1
    return at
