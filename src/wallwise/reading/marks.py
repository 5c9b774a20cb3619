"""Count marks: ``1-2``, ``3&4``, ``&5-6``, ``1a2``, ``7e&8``, ``2-3-4&1``, ``one, two``.

A mark says which beats a piece of the sheet is danced on.  Beats are as written (a section
may count 1-8 again and again or run on to 33-40); whoever places the sections makes them
absolute.
"""

import re
from dataclasses import dataclass
from fractions import Fraction

from wallwise.dance.counts import SHARES

NUMBER_WORDS = {
    word: n
    for n, word in enumerate(
        "one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen".split(), 1
    )
}
_WORDS = "|".join(NUMBER_WORDS)
_TOKEN = re.compile(
    rf"\s*(?:(?P<number>(?!0)\d{{1,3}}(?![\d/]|\s?/\s?\d|:\d|\.\d|\s?(?:st|nd|rd|th)\b|\s?o'?\s?c)|(?:{_WORDS})\b)"
    rf"|(?P<share>&|\+|\band\b(?=\s*(?:\d|[)\]:.]|(?:{_WORDS})\b))|[ae](?=\s?[\d&])(?!\s?\d\s?/\d)|(?<=[\d&])[ae](?=\s?[\d&])|(?<=\d)[ae]\b)"
    r"|(?P<join>-|,|\bto\b|\bthru\b|\bthrough\b))",
    re.IGNORECASE,
)
_LEAD = re.compile(r"\s*[\[(]?\s*(?:on\s+)?(?:(?:counts?|cts?|beats?)\.?:?\s*)?", re.IGNORECASE)
_NOT_COUNTS = re.compile(r"(?:of|in(?=\s*(?:[,;.]|$|wt|weight|on\b))|re-?starts?|tags?|bridges?|counts?|beats?|walls?|times|bars?|seconds?|secs?|degrees?|more|count)\b", re.IGNORECASE)
_MOST_BEATS = 64  # no mark counts more
_RANGES = ("-", "to", "thru", "through")
_ALONE = re.compile(r"\s*(?P<share>[&ea])(?:\t|\s+-\s|\s{2,}|\s*[:|]|\s*$)\s*")
_RUN = re.compile(r"\s*(?P<run>\d{3,8})(?=\s|[:.)])")
_TAIL = re.compile(r"\s*(?:[\])]\s*[.:)\-]?|[.):=]|-(?=\s)|\|)?\s*")


@dataclass(frozen=True, slots=True)
class Mark:
    """The beats of one count mark, as written, ascending; `span` is its place in the line.

    `ranged` is whether some beats were not written out (``1-4``).  Beats that a mark wraps
    into the next bar (``8&1``) go on counting (8, 8 1/2, 9).
    """

    beats: tuple[Fraction, ...]
    start: int
    end: int
    ranged: bool = False
    floating: bool = False

    @property
    def first(self) -> Fraction:
        """The first beat."""
        return self.beats[0]

    @property
    def last(self) -> Fraction:
        """The last beat."""
        return self.beats[-1]


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
        alone = _ALONE.match(text, start)
        return Mark((SHARES[alone["share"].lower()],), start, alone.end(), floating=True) if alone else None
    beats, end, ranged = scanned
    tail = _TAIL.match(text, end)
    assert tail is not None
    opened = any(c in "[(" for c in lead.group())
    if opened and not any(c in "])" for c in tail.group()):
        return None
    spoken = text[lead.end() : end].strip()
    if spoken.isalpha() and not (opened or tail.group().strip() or tail.end() == len(text)):
        return None  # "One restart", "two walls"
    after = text[tail.end() : tail.end() + 1]
    if end < len(text) and tail.end() == end and after.isalnum():
        return None  # "2x", "1st"
    if _NOT_COUNTS.match(text, tail.end()):
        return None
    return Mark(beats, start, tail.end(), ranged)


def _scan(text: str, at: int) -> tuple[tuple[Fraction, ...], int, bool] | None:
    """Beats, where they end, and whether a range was opened; None if there is no number."""
    run = _RUN.match(text, at)
    if run and all(int(b) == int(a) + 1 for a, b in zip(run["run"], run["run"][1:], strict=False)):
        return tuple(Fraction(int(d)) for d in run["run"]), run.end(), False  # "123", "5678"
    beats: list[Fraction] = []
    shares: list[Fraction] = []  # written before any number: they belong to the one before it
    end, ranged, joined, spaced = at, False, "", False
    while len(beats) < _MOST_BEATS and (found := _TOKEN.match(text, at)):
        if found["number"]:
            if beats and spaced and not joined and not shares and _value(found["number"]) != beats[-1] // 1 + 1:
                break
            before = len(beats)
            if not _take_number(beats, shares, joined, value := Fraction(_value(found["number"]))):
                break
            ranged = ranged or (joined in _RANGES and len(beats) - before > 1)
            shares, joined, end = [], "", found.end()
        elif found["share"]:
            share = SHARES.get(found["share"].lower(), SHARES["&"])
            if found["share"].lower() == "and" and not beats:
                break
            if beats and not joined:
                base = beats[-1] // 1
                if base + share <= beats[-1]:
                    break
                beats.append(base + share)
                end = found.end()
            else:
                shares.append(share)
            joined = ""
        else:
            if joined or not beats:
                break
            joined = found["join"].lower()
        at = found.end()
        spaced = text[at : at + 1].isspace()
    return (tuple(beats), end, ranged) if beats else None


def _take_number(beats: list[Fraction], shares: list[Fraction], joined: str, value: Fraction) -> bool:
    """Add beat `value` with the shares and the range before it; False where it cannot follow."""
    if beats:
        last = beats[-1]
        if value <= last:
            if not (value <= 2 and (last % 1 or shares)):  # only "8&1", "4&1" wrap into the next bar
                return False
            value = last // 1 + 1
        if joined in _RANGES and not shares:
            if value - last > 32:
                return False
            beats.extend(Fraction(n) for n in range(int(last) + 1, int(value)))
        elif value - last > 8:
            return False
    for share in shares:
        beats.append(value - 1 + share)
    beats.append(value)
    return True


def _value(word: str) -> int:
    return int(word) if word.isdigit() else NUMBER_WORDS[word.lower()]
