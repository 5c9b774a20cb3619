"""Count marks: ``1-2``, ``3&4``, ``&5-6``, ``1a2``, ``7e&8``, ``2-3-4&1``, ``one, two``.

A mark says which beats a piece of the sheet is danced on.  Beats are as written (a section
may count 1-8 again and again or run on to 33-40); whoever places the sections makes them
absolute.
"""

import re
from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache
from itertools import pairwise

from wallwise.dance.counts import SHARES

NUMBER_WORDS = {
    "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8,
    "nine": 9, "ten": 10, "eleven": 11, "twelve": 12, "thirteen": 13, "fourteen": 14,
    "fifteen": 15, "sixteen": 16,
}  # fmt: skip
_WORDS = "|".join(NUMBER_WORDS)
_NO_COUNT_AFTER = r"(?![\d/]|\s?/\s?\d|:\d|\.\d|\s?(?:st|nd|rd|th)\b|\s?o'?\s?c)"  # 1/4, 12:00, 1st
_TOKEN = re.compile(
    rf"\s*(?:(?P<number>(?:0(?=[1-9]\b))?(?!0)\d{{1,3}}{_NO_COUNT_AFTER}|(?:{_WORDS})\b)"
    rf"|(?P<share>&|\+|\band\b(?=\s*(?:\d|[)\]:.]|(?:{_WORDS})\b))"
    r"|'n'(?=\s?\d)|\b(?:n|an)\b'?(?=\s?\d)|(?<=\d)and(?=\d)"
    r"|[ae](?=\s?[\d&])(?!\s?\d\s?/\d)|(?<=[\d&])[ae](?=\s?[\d&])|(?<=\d)[ae]\b|(?<=\d\s)a(?=\s{2}|\t)|(?<=[e\d]&)a\b)"
    r"|(?P<join>-|,|\bto\b|\bthru\b|\bthrough\b|(?<=\d)to(?=\d)))",
    re.IGNORECASE,
)
_LEAD = re.compile(r"\s*[\[(]?\s*(?:on\s+)?(?:(?:counts?|cts?|beats?|timing)\.?:?\s*)?", re.IGNORECASE)
_COUNTS_OF = re.compile(r"(?:counts|cts|beats)\b", re.IGNORECASE)  # of several: "beats 9 and 10" are two
_AND = re.compile(r"\band\b", re.IGNORECASE)
_NOT_COUNTS = re.compile(
    r"(?:of|x(?=\s\S)|in(?=\s*(?:[,;.]|$|wt|weight|on\b))|re-?starts?|tags?|bridges?|counts?|cts?|beats?|walls?|times|bars?"
    r"|seconds?|secs?|degrees?|more|count)\b",
    re.IGNORECASE,
)
_TURN_AND_A_HALF = re.compile(r"\s*[12]\s*(?:&|and)\s*\d/\d")
_ALONE = re.compile(
    r"\s*(?:(?P<share>[&+ea]|and(?=\t))(?:\t|\s+-\s|\s{2,}|\s*[:|]|\s*$)|[\[(]\s*(?P<inner>[&ea]|and)\s*[\])])\s*"
)
_OPENING = re.compile(
    r"(?P<share>&)(?P<inner>)\s(?=[A-Za-z])\s*"
)  # before a whole row's steps one blank is enough
_RUN = re.compile(r"\s*(?P<run>\d{3,8}|\d(?:\.\d){1,7})(?=\s|[:.)])")  # "123", "1.2.3"
_TAIL = re.compile(r"\s*(?:[\])]\s*[.:)\-]?|[.):=]|-(?=\s)|\|)?\s*")
_GAP = re.compile(r"\t|\s{2}")
_MOST_SHARES = 3  # of one beat: e, & and a
_MOST_BEATS = 64  # no mark counts more,
_WIDEST_RANGE = 32  # ranges no further,
_WIDEST_GAP = 8  # nor leaves out more without a dash
_RANGES = ("-", "to", "thru", "through")


@dataclass(frozen=True, slots=True)
class Mark:
    """The beats of one count mark, as written, ascending; `span` is its place in the line.

    `ranged` is whether some beats were not written out (``1-4``).  Beats that a mark wraps
    into the next bar (``8&1``) go on counting (8, 8 1/2, 9).  A `floating` mark is a share alone
    (``&``), whose beat is the one before it.  `listed` is whether what tells its halves may
    only join the counts of a list ("on 3 and 4", "counts 3 & 4").
    """

    beats: tuple[Fraction, ...]
    start: int
    end: int
    ranged: bool = False
    floating: bool = False
    listed: bool = False

    @property
    def first(self) -> Fraction:
        """The first beat."""
        return self.beats[0]

    @property
    def last(self) -> Fraction:
        """The last beat."""
        return self.beats[-1]


@lru_cache(maxsize=4096)  # lines are looked at again and again
def leading_mark(text: str, start: int = 0) -> Mark | None:
    """The count mark that `text` begins with at `start`, or None.

    >>> [str(b) for b in leading_mark("7e&8 Cross").beats]
    ['7', '29/4', '15/2', '8']
    >>> leading_mark("Step R forward") is None
    True
    """
    lead = _LEAD.match(text, start)
    assert lead is not None
    scanned = _scan(text, lead.end())
    if scanned is None:
        return _share_alone(text, start)
    beats, end, ranged = scanned
    tail = _TAIL.match(text, end)
    assert tail is not None
    opened = any(c in "[(" for c in lead.group())
    if opened and not any(c in "])" for c in tail.group()):
        return None
    spoken = text[lead.end() : end].strip()
    set_off = opened or tail.group().strip() or _GAP.search(tail.group()) or tail.end() == len(text)
    if spoken.isalpha() and not set_off:
        return None  # "One restart", "two walls"
    after = text[tail.end() : tail.end() + 1]
    if end < len(text) and tail.end() == end and after.isalnum():
        return None  # "2x", "1st"
    if _NOT_COUNTS.match(text, tail.end()) or (start and _TURN_AND_A_HALF.match(text, start)):
        return None
    listed = _AND.search(text, lead.end(), end) is not None
    several = _COUNTS_OF.search(lead.group()) is not None
    if listed and several:
        beats = whole_of(beats)
    return Mark(beats, start, tail.end(), ranged, listed=listed or several)


def whole_of(beats: tuple[Fraction, ...]) -> tuple[Fraction, ...]:
    """The beats that are no half nor another share."""
    return tuple(beat for beat in beats if beat.denominator == 1)


def _share_alone(text: str, start: int) -> Mark | None:
    """The mark of a share that belongs to the beat before it: "& Step R", "(e)"."""
    found = _ALONE.match(text, start) or (_OPENING.match(text) if start == 0 else None)
    if found is None:
        return None
    letter = (found["share"] or found["inner"]).lower()
    return Mark((SHARES.get(letter, SHARES["&"]),), start, found.end(), floating=True)


def _scan(text: str, at: int) -> tuple[tuple[Fraction, ...], int, bool] | None:
    """Beats, where they end, and whether a range was opened; None if there is no number."""
    run = _RUN.match(text, at)
    counts = [int(digit) for digit in run["run"] if digit != "."] if run else []
    if run and all(b == a + 1 for a, b in pairwise(counts)):
        return tuple(Fraction(count) for count in counts), run.end(), False
    counting = _Counting(at)
    while len(counting.beats) < _MOST_BEATS and (found := _TOKEN.match(text, at)) and counting.take(found):
        at = found.end()
    return (tuple(counting.beats), counting.end, counting.ranged) if counting.beats else None


class _Counting:
    """A count mark as far as it has been read; `end` is where its last beat ends."""

    def __init__(self, start: int) -> None:
        self.beats: list[Fraction] = []
        self.end = start
        self.ranged = False
        self._shares: list[Fraction] = []  # written before a number: they belong to the beat before it
        self._join = ""

    def take(self, found: re.Match[str]) -> bool:
        """Whether the number, share or join goes on with the mark."""
        if found["number"]:
            return self._number(found)
        if found["share"]:
            return self._share(found["share"].lower(), found.end())
        if self._join or not self.beats:
            return False
        self._join = found["join"].lower()
        return True

    def _number(self, found: re.Match[str]) -> bool:
        value = _value(found["number"])
        if self.beats and not self._join and not self._shares:
            spaced = found.string[found.start()].isspace()
            wraps = value == 1 and self.beats[-1] % 1 > 0
            if spaced and value != self.beats[-1] // 1 + 1 and not wraps:
                return False  # "1 2 3" and "8 & 1" count on; "4 32" does not
        held = len(self.beats)
        if not self._reach(value):
            return False
        self.ranged = self.ranged or (self._join in _RANGES and len(self.beats) - held > 1)
        self._shares, self._join, self.end = [], "", found.end()
        return True

    def _reach(self, value: int) -> bool:
        """Add beat `value` with the shares and the range before it; False where it cannot follow."""
        if self.beats:
            last = self.beats[-1]
            if value <= last:
                if not (value <= 2 and (last % 1 or self._shares)):
                    return False  # only "8&1", "4&1" wrap into the next bar
                value = last // 1 + 1
            ranges = self._join in _RANGES and not self._shares
            if value - last > (_WIDEST_RANGE if ranges else _WIDEST_GAP):
                return False
            if ranges:
                self.beats += [Fraction(beat) for beat in range(int(last) + 1, value)]
        shares = [value - 1 + share for share in self._shares]
        order = [*self.beats[-1:], *shares]
        if order != sorted(set(order)):
            return False  # "1&-e2" goes back
        self.beats += shares
        self.beats.append(Fraction(value))
        return True

    def _share(self, letter: str, end: int) -> bool:
        share = SHARES.get(letter, SHARES["&"])
        if not self.beats or self._join not in ("", ","):
            if (letter == "and" and not self.beats) or len(self._shares) == _MOST_SHARES:
                return False
            self._shares.append(share)
        else:
            beat = self.beats[-1] // 1 + share
            if beat <= self.beats[-1]:
                return False
            self.beats.append(beat)
            self.end = end
        self._join = ""
        return True


def _value(word: str) -> int:
    return int(word) if word.isdigit() else NUMBER_WORDS[word.lower()]
