"""Naming: the walls, counts, facings and orders that a stretch of a remark names."""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise
from typing import NamedTuple

from wallwise.dance.model import Span
from wallwise.reading.marks import NUMBER_WORDS
from wallwise.reading.outline import PartText, Remark
from wallwise.reading.stepwords import known_share
from wallwise.reading.tokens import TURN, WALLS
from wallwise.reading.wording import ORDINAL_WORDS, RESTART, number_of

_TEN = list(NUMBER_WORDS)[:10]
NTH = rf"(?:\d{{1,2}}(?:st|nd|rd|th)|{'|'.join(ORDINAL_WORDS)})"
_NUMBER = rf"(?:\d{{1,2}}(?:st|nd|rd|th)?|{'|'.join(ORDINAL_WORDS)}|{'|'.join(_TEN)})"
_CUT = r"(?:1[2-9]|[2-9]\d)\b"  # counts, where no dance has so many walls: "w3/16"
_ONE_NUMBER = re.compile(_NUMBER, re.IGNORECASE)
_WALLS = re.compile(
    rf"""
    \b(?:walls?|wls?|rotations?|repetitions?|rounds?|w/?(?!eight))\s*(?:no\.?|numbers?|\#)?\s*
    (?P<listed>
        {_NUMBER}
        (?:
            (?:\s*\([^()]{{0,60}}\))?
            \s*(?:,\s*and|,|and|&|\+|/(?!\s*{_CUT}))\s*(?:the\s+(?!one\b)|on\s+(?!(?:12|3|6|9)\b)|walls?\s+)?
            {_NUMBER}(?!\s*(?:counts?|cts?|beats?|o'?\s?c|:\d|-\s*\d))
        )*
    )\b(?!\s*(?:counts?|cts?|beats?)\b)
    | \b(?P<nth>
        {NTH}(?:\s*(?:,\s*and|,|and|&|\+)\s*(?:(?:in|on|during)\s+)?(?:the\s+)?{NTH})*
    )\s+(?:walls?|repetitions?|rotations?|rounds?|time\s+(?:through|round|around)|sequence|go)\b
    | \bw(?P<short>\d{{1,2}})\b
    """,
    re.IGNORECASE | re.VERBOSE,
)
_KIND = re.compile(
    rf"""
    \b(?P<restart>
        {RESTART}
      | start(?:ing)?[ ](?:it[ ])?(?:over|again|the[ ]dance[ ](?:again|from)|from)
      | begin[ ]again | begin[ ]the[ ]dance[ ]again | go[ ]again | start[ ]again
      | go[ ](?:straight[ ])?back[ ]to[ ](?:the[ ])?(?:start|beginning|count)
    )\b
    | \b(?P<tag>tags?|bridges?|add)\b
    """,
    re.IGNORECASE | re.VERBOSE,
)
_ANNOUNCED = re.compile(
    rf"\b(?P<many>[1-9]|{'|'.join(_TEN)})\s+(?:easy\s+|short\s+)?(?:(?P<restart>{RESTART})|tags?|bridges?)\b(?!\s*\d)",
    re.IGNORECASE,
)
_EXTRA = r"(?:re-?starts?|tags?|bridges?)"
_NEGATED = re.compile(
    rf"""
    \b(?:no|without|neither)\s+{_EXTRA}(?:\s*(?:,|/|&|\+|\bor\b|\band\b|\bnor\b)\s*(?:no\s+)?{_EXTRA})*\b
    | \b{_EXTRA}-free\b
    | \b{_EXTRA}\s*[:=-]?\s*(?:none|nil|no\b(?!\s+{_EXTRA})|0\b)
    """,
    re.IGNORECASE | re.VERBOSE,
)
_LABEL = re.compile(rf"\W*{_EXTRA}\s*(?:/|&|\+|\band\b)\s*{_EXTRA}\s*[:=-]", re.IGNORECASE)  # "Tag/Restart:"
_NTH_SECTION = rf"(?:{NTH})\s+(?:eight|8|section|set|six|6|block|sequence[ ]of)\b"
_A_SECTION = rf"(?:(?:section|sec|s|set)\s*\d\b|{_NTH_SECTION})"
# between a number and its section: "4& of", "16 counts into the"
_OF = r"[&ae]?(?:st|nd|rd|th)?\s*(?:counts?|cts?|beats?)?\s+(?:of|in|into)\s+(?:the\s+)?"
_COUNTS = re.compile(
    rf"""
    \b(?:counts?\s*|beats?\s*)?(?P<within>\d{{1,2}}){_OF}(?P<of>{_A_SECTION})
    | \b(?:section|sec|s|set)\s*(?P<inside>\d)\b[\s,(-]*(?:after\s+)?
        (?:counts?|cts?|beats?)\s*(?P<at>\d{{1,2}})\b(?!\s*-)
    | (?:
        \b(?:after|up[ ]to(?:[ ]and[ ]including)?|to[ ]the[ ]end[ ]of|until|till|through|dance|do|only|for)
      | @
    )\s+
        (?:the\s+|only\s+|just\s+|doing\s+|dancing\s+|up[ ]to\s+|to\s+)*(?:first\s+)?(?:counts?\s*|beats?\s*)?
        (?:1\s*(?:-|to|thru|through|until)\s*)?
        (?P<danced>\d{{1,3}})\b(?!{_OF}{_A_SECTION})
        (?!\s*(?:st|nd|rd|th|walls?|o'?\s?c|:|times|secs?)\b)
    | \b(?:counts?|cts?|beats?|steps?)\s*1\s*(?:-|to|thru|through|until)\s*(?P<upto>\d{{1,3}})\b
    | \bw(?:alls?|ls?)?\s?\d{{1,2}}(?:\s*(?:,|&|and)\s*\d{{1,2}})*
        (?:\s*[:=]\s*\(?|\s*/\s*(?={_CUT})|\s+-\s+|\s*\((?!(?:12|3|6|9)\b)|\s(?=\d{{1,3}}\s*(?:[,(+]|$|re-?start|rs\b|then\b)))
        (?:1\s*-\s*)?
        (?P<listed>\d{{1,3}})\b(?!\s*(?:[-&]\s*\d|[:.]\d|o'?\s?c|st\b|nd\b|rd\b|th\b))
    | \b(?P<counts>\d{{1,3}})\s*(?:counts?|cts?|beats?|c)\b
    | \bcounts?\s*(?P<count>\d{{1,3}})\b
    | \b(?:section|sec|s|line|row|part|set|eight)\s*(?P<section>\d{{1,2}}|(?:{"|".join(_TEN[:8])})\b)(?!\w)
    | \b(?P<nth>{_NTH_SECTION})
    | \b(?P<eights>{"|".join(_TEN[:8])}|\d)
        \s+(?:x\s+8|sets\s+of\s+(?:eight|8)|eights|8s|8's|sections|sixes|sets)\b
    | \bafter\s+(?P<letter>[A-H])\b(?!['\w])
    | \b8\s*x\s*(?P<times>[2-8])\b
    | (?:\[\d{{1,2}}\s*-\s*\d{{1,2}}\]\s*(?:,|and|&|\+)?\s*)*\[\d{{1,2}}\s*-\s*(?P<range>\d{{1,2}})\]
    | \b(?P<half>halfway|half[ ]way|first[ ]half)\b
    | \b(?P<spelt>{"|".join(NUMBER_WORDS)})\s+(?:counts?|cts?|beats?)\b
    """,
    re.IGNORECASE | re.VERBOSE,
)
# groups whose number is the counts themselves
_NUMBERED = ("danced", "upto", "listed", "range", "counts", "count")
_CLOCK = re.compile(
    r"""
    \b(?P<hour>1[0-2]|0?[1-9])(?:[:.](?P<minute>[0-5]\d)\b|\s?o'?\s?(?:clock|cl|c)\b|\s?h\b)
    | \b(?:facing|face|to|at|towards?)\s+(?:the\s+)?(?P<faced>front|back|home)\b(?:\s+wall)?
    | (?:\b(?:facing|face)|\byou(?:[ ]are|'re|[ ]will[ ]be|'ll[ ]be)[ ]on|\(on|\bon(?=\s+\d+\s*\)))\s+
        (?P<bare>12|3|6|9)\b(?![:.]\d|\s*(?:counts?|cts?|beats?))
    | \b(?P<spelt>twelve|three|six|nine)\s+o'?\s?clock
    | \b(?P<wall>front|back|home|rear|starting|original|opening)\s+wall
    | \b(?P<hand>right|left)(?:[\s-]hand)?(?:\s+side)?\s+wall
    """,
    re.IGNORECASE | re.VERBOSE,
)
_STARTS_FACING = re.compile(
    r"\b(?:starts?|begins?|starting|beginning|started|began|which is)\b(?!\s+(?:again|over))[^.;,]*$",
    re.IGNORECASE,
)
_BEGUN = re.compile(r"\b(?:begin|start|it's|into)\s+(?:the\s+)?$", re.IGNORECASE)  # "… and begin wall 4"
_CLAUSE = 120  # characters before a facing in which its clause begins
_NEAR = 40  # characters before a wall in which a word can be told of it
_ON_WALL = re.compile(
    r"\s*(?:wall\s*)?(?:on|in|for|during|at)\s+(?:the\s+)?(?=\S)", re.IGNORECASE
)  # behind a facing
_BRACKETS = re.compile(r"\([^()]*\)")
_BETWEEN = re.compile(r"\bbetween\s+(?:the\s+)?$", re.IGNORECASE)  # "… walls 2 and 3": after the first
_COUNTED = re.compile(
    r"\s*-\s*(?P<words>[a-z]+(?:\s+[a-z]+)?)|\s+(?P<many>(?:[a-z]+\s+)?[a-z]+s)\b", re.IGNORECASE
)


class Clock(NamedTuple):
    """A facing that a line names, in 48ths of a turn clockwise from the front, and its place in the line."""

    facing: int
    start: int
    end: int


@dataclass(slots=True)
class Named:
    """What a stretch of a remark names.

    `kind`: ``restart``, ``tag``, ``both`` or nothing.  `walls` are wall numbers with their places in the
    line, `counts` what `counts_meant` can read.
    """

    remark: Remark
    kind: str
    walls: list[tuple[int, int]]
    counts: list[re.Match[str]]
    clocks: list[Clock]

    @property
    def text(self) -> str:
        """The words of the stretch."""
        return self.remark.text

    @property
    def span(self) -> Span:
        """Its place in the sheet."""
        return self.remark.line.span(self.remark.start, self.remark.end)

    def faced_on(self, i: int) -> tuple[int, Span] | None:
        """The facing claimed for the i-th wall, and its place: the clock named nearest after the wall.

        What says "starts at" is no claim of it.
        """
        near = self._clocks_of(i)
        return (near[-1].facing, self.remark.line.span(near[-1].start, near[-1].end)) if near else None

    def faced_twice(self, i: int) -> bool:
        """Whether two facings are told of the i-th wall, so that one of them may be where it starts."""
        return len({clock.facing for clock in self._clocks_of(i)}) > 1

    def starts(self) -> Iterator[tuple[int, int, Span]]:
        """Each wall that is said to start with a facing, the facing and its place."""
        text, line = self.remark.line.text, self.remark.line
        for clock in self.clocks:
            begin = max(self.remark.start, clock.start - _CLAUSE)
            told = _starts_at(text[begin : clock.start])
            if told is not None:
                before = [wall for wall, at in self.walls if at <= begin + told]
                if before:
                    yield before[-1], clock.facing, line.span(clock.start, clock.end)

    def _clocks_of(self, i: int) -> list[Clock]:
        bound = [(clock, self._wall_behind(clock)) for clock in self.clocks]
        if mine := [clock for clock, wall in bound if wall == self.walls[i][0]]:
            return mine
        free = [clock for clock, wall in bound if wall is None]
        if len(free) == len(self.walls) > 1:
            return [free[i]]
        return [clock for clock in free if self._is_told_of(i, clock)]

    def _wall_behind(self, clock: Clock) -> int | None:
        """The wall that a facing is told of by the words behind it: "12:00 on wall 4"; None for no wall."""
        text = self.remark.line.text
        behind = _ON_WALL.match(text, clock.end, self.remark.end)
        told = _WALLS.match(text, behind.end(), self.remark.end) if behind is not None else None
        numbers = _numbers_of(told) if told is not None else []
        return numbers[0][0] if len(numbers) == 1 else None

    def _is_told_of(self, i: int, clock: Clock) -> bool:
        begin, end = self.remark.start, self.remark.end
        at = self.walls[i][1]
        until = next((place for _, place in self.walls[i + 1 :] if place > at), end)
        if not (at <= clock.start < until or len(self.walls) == 1 or not begin <= at < end):
            return False
        told = self.remark.line.text[max(begin, clock.start - _CLAUSE) : clock.start]
        return _starts_at(told) is None


def _starts_at(before: str) -> int | None:
    """Where the words before a clock begin to say that a wall starts with it; None where they do not."""
    found = _STARTS_FACING.search(before)
    return None if found is None or _CLOCK.search(found.group()) else found.start()


def names_in(remark: Remark) -> Named:
    """What a remark names."""
    text, start, end = remark.line.text, remark.start, remark.end
    walls = list(_WALLS.finditer(text, start, end))
    listed = [(wall, _numbers_of(wall)) for wall in walls]
    places = {place for _, numbers in listed for _, place in numbers}
    counts = [
        found
        for found in _COUNTS.finditer(text, start, end)
        if found.start(found.lastgroup or 0) not in places
    ]
    numbered = [
        (number, place if n and "(" in wall.group() else wall.start())
        for wall, numbers in listed
        if not _BEGUN.search(text[max(start, wall.start() - _NEAR) : wall.start()])
        for n, (number, place) in enumerate(numbers)
    ]
    return Named(remark, _kind(text, start, end), numbered, counts, clocks_in(text, start, end))


def announced_in(remark: Remark) -> Iterator[tuple[str, int, Span]]:
    """How many restarts or tags a remark says there are ("2 restarts", "one tag"), and where."""
    for found in _ANNOUNCED.finditer(remark.line.text, remark.start, remark.end):
        many = number_of(found["many"])
        if many is not None and (many == 1 or found.group().endswith("s")):  # not "wall 3 restart here"
            kind = "restart" if found["restart"] else "tag"
            yield kind, many, remark.line.span(found.start(), found.end())


def _numbers_of(wall: re.Match[str]) -> list[tuple[int, int]]:
    """The walls that a phrase lists, with their places; what stands in brackets is told of a wall.

    A number with steps behind it ("… 7, 8 - sway L", "…, four sways") counts these.
    """
    group = next(name for name in ("listed", "nth", "short") if wall[name])
    start = wall.start(group)
    plain = _BRACKETS.sub(lambda told: " " * len(told.group()), wall[group])
    numbers: list[tuple[int, int]] = []
    for found in _ONE_NUMBER.finditer(plain):
        number = number_of(found.group())
        behind = _COUNTED.match(wall.string, start + found.end())
        if number is None or (numbers and behind and known_share(behind["words"] or behind["many"]) == 1):
            break
        numbers.append((number, start + found.start()))
    before = wall.string[max(0, wall.start() - _NEAR) : wall.start()]
    return numbers[:1] if _BETWEEN.search(before) else numbers


def _kind(text: str, start: int, end: int) -> str:
    label = _LABEL.match(text, start, end)
    denied = [found.span() for found in _NEGATED.finditer(text, start, end)]
    denied += [label.span()] if label is not None and label.end() < end else []
    kinds = [
        found.lastgroup
        for found in _KIND.finditer(text, start, end)
        if not any(a <= found.start() < b for a, b in denied)
    ]
    if "tag" in kinds and "restart" in kinds:
        return "both"
    return (kinds[0] or "") if kinds else ""


def clocks_in(text: str, start: int, end: int) -> list[Clock]:
    """The facings that ``text[start:end]`` names, by the clock or by the front and back of the hall."""
    return [Clock(_facing(found), found.start(), found.end()) for found in _CLOCK.finditer(text, start, end)]


def _facing(found: re.Match[str]) -> int:
    wall = found["faced"] or found["wall"] or found["hand"]
    if wall:
        return WALLS[wall.lower()]
    hour = found["hour"] or found["bare"]
    hours = int(hour) if hour else NUMBER_WORDS[found["spelt"].lower()]
    return (hours % 12 * 60 + int(found["minute"] or 0)) * TURN // 720


def by_kind(text: str, start: int, end: int) -> list[tuple[int, int]]:
    """A sentence that orders a tag and a restart, each on its own walls, cut between them; else whole."""
    kinds = list(_KIND.finditer(text, start, end))
    cuts = [
        after.start()
        for before, after in pairwise(kinds)
        if before.lastgroup != after.lastgroup
        and _WALLS.search(text, before.end(), after.start())
        and _WALLS.search(text, after.end(), end)
    ]
    return list(zip([start, *cuts], [*cuts, end], strict=True))


def is_exact(counts: re.Match[str]) -> bool:
    """Whether counts are told as a place to stop at ("after 16", "section 2") rather than just named."""
    told = ("danced", "upto", "section", "nth", "within", "inside", "letter", "times", "range")
    return any(counts[name] for name in told)


def counts_meant(counts: re.Match[str], main: PartText | None) -> Fraction | None:
    """The counts of the main part that a phrase means ("24 counts", "section 2"); None for too many."""
    told = next((counts[name] for name in _NUMBERED if counts[name]), None)
    if told:
        return Fraction(int(told))
    if counts["spelt"]:
        return Fraction(NUMBER_WORDS[counts["spelt"].lower()])
    if main is None:
        return None
    if counts["half"]:
        return main.counts / 2
    number = _section_named(counts)
    end = section_end(main, number) if number is not None else None
    within = counts["within"] or counts["at"]
    if end is None or number is None or not within:
        return end
    section = main.sections[number - 1]
    return section.base - 1 + int(within) if int(within) <= section.counts else Fraction(int(within))


def _section_named(counts: re.Match[str]) -> int | None:
    """The number of the section that a phrase about counts names."""
    if counts["letter"]:
        return ord(counts["letter"].upper()) - ord("A") + 1
    told = next(
        counts[name] for name in ("section", "inside", "eights", "times", "nth", "of") if counts[name]
    )
    digits = re.search(r"\d+", told)  # "2", "s2", "2nd eight"
    return int(digits[0]) if digits else number_of(told.split()[0])


def section_end(main: PartText | None, number: int) -> Fraction | None:
    """The last count of a section of the main part; None where there is no such section."""
    if main is None or not 0 < number <= len(main.sections):
        return None
    section = main.sections[number - 1]
    return section.base + section.counts - 1
