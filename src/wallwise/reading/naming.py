"""Naming: the walls, counts, facings and orders that a stretch of a remark names."""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise
from typing import NamedTuple

from wallwise.dance.model import Span
from wallwise.reading.cuts import shortens
from wallwise.reading.marks import NUMBER_WORDS
from wallwise.reading.outline import Remark
from wallwise.reading.stepwords import known_share
from wallwise.reading.stops import CUT, UNIT, Stop, stops_in
from wallwise.reading.tokens import TURN, WALLS
from wallwise.reading.wording import AFTER_TIMES, NTH, ORDINAL_WORDS, RESTART, number_of

_TEN = list(NUMBER_WORDS)[:10]
_TIME = r"time\s+(?:through|round|around|(?:you|we)\s+(?:dance|do))"
ROUND = rf"(?:repetitions?|rotations?|rounds?|{_TIME}|sequence|go)"
"""What a wall is called as well, behind which one it is."""

_NUMBER = rf"(?:\d{{1,2}}(?:st|nd|rd|th)?|{'|'.join(ORDINAL_WORDS)}|{'|'.join(_TEN)})"
_ONE_NUMBER = re.compile(_NUMBER, re.IGNORECASE)
# between two walls: "walls 2 and 5", "the 2nd and again on the 4th wall", "wall 3 and also wall 6"
_NEXT = r"\s*(?:,\s*(?:and|then)|,|and|&|\+|plus|as\s+well\s+as)\s*(?:(?:also|again|then|once\s+more)\s+)?"
_BEFORE_NTH = r"(?:(?:in|on|of|during|after|at|end|the)\s+)*"
_WALLS = re.compile(
    rf"""
    \b(?<!every\ )(?<!each\ )(?:walls?|wls?|rotations?|repetitions?|rounds?|w/?(?!eight))
    \s*(?:no\.?|numbers?|\#)?\s*
    (?P<listed>
        {_NUMBER}(?!:\d|\s*o'?\s?c)
        (?:
            (?:\s*\([^()]{{0,60}}\))?
            \s*(?:,\s*and|,|and|&|\+|/(?!\s*{CUT}))\s*(?:the\s+(?!one\b)|on\s+(?!(?:12|3|6|9)\b)|walls?\s+)?
            (?!(?:one|1)\s+(?:re-?start|tag|bridge)|one\s*$)
            {_NUMBER}(?!\s*(?:counts?|cts?|beats?|o'?\s?c|:\d|-\s*\d|8s?\b|half\b|{UNIT}s?\b))
        )*
    )\b(?!\s*(?:counts?|cts?|beats?)\b)
    | \bevery\s+{NTH}\s+wall\s*[(,:-]\s*(?:that\s+is\s+|so\s+)?(?:walls?\s*)?
        (?P<every>{_NUMBER}(?:{_NEXT}{_NUMBER})+)\b
    | \b(?<!every\ )(?P<nth>
        {NTH}(?:{_NEXT}{_BEFORE_NTH}{NTH})*
    )\s+(?:walls?|{ROUND})\b
    | \b(?:after|in|on|during|here|restarts?|tags?)\s*[:-]?\s*(?:on\s+)?(?:the\s+)?
        (?P<bare>{NTH}(?:{_NEXT}{_BEFORE_NTH}{NTH})*)(?=\s*(?:time\s*)?(?:[.,;()>]|$))
    | \bw(?P<short>\d{{1,2}})\b
    | {AFTER_TIMES}
    """,
    re.IGNORECASE | re.VERBOSE,
)
_KIND = re.compile(
    rf"""
    \b(?P<restart>
        {RESTART}
      | start(?:ing)?[ ](?:it[ ])?(?:over|again|anew|afresh|the[ ]dance[ ](?:again|from)|from)
      | (?:starts|begins)[ ](?:it[ ])?(?:over|again)
      | begin[ ](?:again|anew|afresh|new)\b(?![ ]wall) | begin[ ]the[ ]dance[ ]again
      | go[ ]again | start[ ]again
      | (?:(?:(?:go|straight|right)[ ])*back|go)[ ]to[ ](?:the[ ])?
        (?:start|beginning|count|top|(?:section[ ]|s)?(?:1|one)\b)
      | from[ ]the[ ]top
    )\b
    | \b(?P<tag>tags?|bridges?|add)\b
    """,
    re.IGNORECASE | re.VERBOSE,
)
_ANNOUNCED = re.compile(
    rf"(?<!wall )(?<!walls )\b(?P<many>[1-9]|{'|'.join(_TEN)})\s+(?:easy\s+|short\s+)?"
    rf"(?:(?P<restart>{RESTART})|tags?|bridges?)\b(?!\s*\d)",
    re.IGNORECASE,
)
_EXTRA = r"(?:re-?starts?|tags?|bridges?)"
NEGATED = re.compile(
    rf"""
    \b(?:no|without|neither)\s+{_EXTRA}(?:\s*(?:,|/|&|\+|\bor\b|\band\b|\bnor\b)\s*(?:no\s+)?{_EXTRA})*\b
    | \b{_EXTRA}-free\b
    | \b{_EXTRA}\s*[:=-]?\s*(?:none|nil|no\b(?!\s+{_EXTRA})|0\b)
    """,
    re.IGNORECASE | re.VERBOSE,
)
"""Restarts and tags that there are none of: "no tags, no restarts"."""

_LABEL = re.compile(rf"\W*{_EXTRA}\s*(?:/|&|\+|\band\b)\s*{_EXTRA}\s*[:=-]", re.IGNORECASE)  # "Tag/Restart:"
_CLOCK = re.compile(
    r"""
    \b(?P<hour>1[0-2]|0?[1-9])(?:[:.](?P<minute>[0-5]\d)\b|\s?o'?\s?(?:clock|cl|c)\b|\s?h\b)
    | \b(?:facing|face|to|at|towards?)\s+(?:the\s+)?(?P<faced>front|back|home)\b(?:\s+wall)?
    | (?:\b(?:facing|face)|\byou(?:[ ]are|'re|[ ]will[ ]be|'ll[ ]be)[ ]on|\(on|\bon(?=\s+\d+\s*\)))\s+
        (?P<bare>12|3|6|9)\b(?![:.]\d|\s*(?:counts?|cts?|beats?))
    | \b(?P<spelt>twelve|three|six|nine)\s+o'?\s?clock
    | \b(?P<wall>front|back|home|rear|starting|original|opening)\s+wall\b(?!\s*\d)
    | \b(?P<hand>right|left)(?:[\s-]hand)?(?:\s+side)?\s+wall
    """,
    re.IGNORECASE | re.VERBOSE,
)
_STARTS_FACING = re.compile(
    r"\b(?:starts?|begins?|starting|beginning|started|began|which is)\b"
    r"(?!\s+(?:(?:(?:the|this)\s+)?(?:whole\s+)?dance\s+|it\s+(?:all\s+)?)?(?:again|over|from|anew))[^.;,]*$",
    re.IGNORECASE,
)
_BEGUN = re.compile(  # "… and begin wall 4", "then carry on with wall 3"
    r"\b(?:begin|start|it's|(?<!counts )(?<!cts )(?<!beats )into|"
    r"(?:carry|go|move)\s+on\s+(?:with|to)|continue(?:\s+with)?|ready\s+for|resume\s+with)"
    r"\s+(?:the\s+)?$",
    re.IGNORECASE,
)
_BEFORE_BEGUN = re.compile(r"\bbefore\s+(?:(?:you|we)\s+)?\w+\s+(?:the\s+)?$", re.IGNORECASE)
_CLAUSE = 120  # characters before a facing in which its clause begins
_NEAR = 40  # characters before a wall in which a word can be told of it
_ON_WALL = re.compile(
    r"\s*(?:wall\s*)?(?:on|in|for|during|at)\s+(?:the\s+)?(?=\S)", re.IGNORECASE
)  # behind a facing
_BRACKETS = re.compile(r"\([^()]*\)")
_BETWEEN = re.compile(r"\bbetween\s+(?:the\s+)?$", re.IGNORECASE)  # "… walls 2 and 3": after the first
_JOINED = re.compile(r"(?:\band|&|\+)\s*(?:the\s+|walls?\s+|on\s+)*$", re.IGNORECASE)
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
    line.
    """

    remark: Remark
    kind: str
    walls: list[tuple[int, int]]
    counts: list[Stop]
    clocks: list[Clock]

    @property
    def text(self) -> str:
        """The words of the stretch."""
        return self.remark.text

    @property
    def span(self) -> Span:
        """Its place in the sheet."""
        return self.remark.line.span(self.remark.start, self.remark.end)

    def faced_on(self, i: int) -> list[tuple[int, Span]]:
        """The facings claimed for the i-th wall, and their places: the clocks named behind the wall.

        What says "starts at" is no claim of it.
        """
        line = self.remark.line
        return [(clock.facing, line.span(clock.start, clock.end)) for clock in self._clocks_of(i)]

    def starts(self) -> Iterator[tuple[int, int, Span]]:
        """Each wall that is said to start with a facing, the facing and its place."""
        text, line = self.remark.line.text, self.remark.line
        for clock in self.clocks:
            begin = max(self.remark.start, clock.start - _CLAUSE)
            told = _starts_at(text[begin : clock.start])
            if told is not None:
                before = [wall for wall, at in self.walls if at <= begin + told]
                next_wall = _WALLS.search(text, begin + told, clock.start)  # "then start wall 3 facing 6:00"
                if next_wall is not None:
                    before = [wall for wall, _ in _numbers_of(next_wall)]
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
    counts = [stop for stop in stops_in(text, start, end) if stop.at not in places]
    numbered = [
        (number, place if n and "(" in wall.group() else wall.start())
        for wall, numbers in listed
        if not _is_begun(text[max(start, wall.start() - _NEAR) : wall.start()])
        for n, (number, place) in enumerate(numbers)
    ]
    if not numbered and shortens(text[start:end]):
        # "stop after 16 counts and begin wall 4": that is told of wall 3
        numbered = [(number - 1, place) for _, numbers in listed for number, place in numbers[:1]]
    return Named(remark, _kind(text, start, end), numbered, counts, clocks_in(text, start, end))


def _is_begun(before: str) -> bool:
    """Whether the words before a wall only say that it comes next; "before you start wall 3" places a tag."""
    return _BEGUN.search(before) is not None and _BEFORE_BEGUN.search(before) is None


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
    groups = ("listed", "every", "nth", "bare", "short", "times", "rounds")
    group = next(name for name in groups if wall[name])
    start = wall.start(group)
    if group in ("times", "rounds"):
        number = number_of(wall[group])
        return [(number, start)] if number is not None else []
    plain = _BRACKETS.sub(lambda told: " " * len(told.group()), wall[group])
    numbers: list[tuple[int, int]] = []
    for found in _ONE_NUMBER.finditer(plain):
        number = number_of(found.group())
        behind = _COUNTED.match(wall.string, start + found.end())
        joined = _JOINED.search(plain, 0, found.start()) is not None  # "walls 1 and 3 - clap, clap"
        counted = numbers and behind and known_share(behind["words"] or behind["many"]) == 1
        if number is None or (counted and not joined):
            break
        numbers.append((number, start + found.start()))
    before = wall.string[max(0, wall.start() - _NEAR) : wall.start()]
    return numbers[:1] if _BETWEEN.search(before) else numbers


def _kind(text: str, start: int, end: int) -> str:
    label = _LABEL.match(text, start, end)
    denied = [found.span() for found in NEGATED.finditer(text, start, end)]
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
