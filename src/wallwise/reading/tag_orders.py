"""Tags: after which wall, how long, inside the wall or at its end, and which steps they dance."""

import re
from dataclasses import dataclass
from fractions import Fraction

from wallwise.dance.model import Span
from wallwise.reading.headings import is_ending
from wallwise.reading.marks import NUMBER_WORDS
from wallwise.reading.naming import ROUND, Named
from wallwise.reading.outline import PartText
from wallwise.reading.restart_orders import NOWHERE, beat_here
from wallwise.reading.stops import section_end
from wallwise.reading.tag_cuts import TagCut, tag_cut
from wallwise.reading.tag_repeats import Again, danced_again, times_told
from wallwise.reading.wording import AFTER_TIMES, HERE, NTH, any_of, number_of

_SIZE = re.compile(
    rf"\b(\d{{1,2}}|{any_of(NUMBER_WORDS)})\s*[- ]?"
    r"(?:(?:extra|additional|more)\s+)?(?:counts?|cts?|beats?|c)\b",
    re.IGNORECASE,
)
_SIZE_IN_BRACKETS = re.compile(r"\bw(?:alls?\s+)?\d{1,2}\s*\(([124578])\)", re.IGNORECASE)  # no facing
_NUMBER = rf"(?:\d{{1,2}}|{any_of(NUMBER_WORDS)})"
_SIZE_OF_TAG = re.compile(
    rf"""
    \b(?P<before>{_NUMBER})[\s-]*(?:count|ct|beat|c)[\s-]+(?:\w+\s+)?(?:tag|bridge)\b
  | \b(?:tag|bridge)\s*[,:(-]?\s*(?:of\s+)?(?P<behind>{_NUMBER})[\s-]*(?:counts?|cts?|beats?)\b
    """,
    re.IGNORECASE | re.VERBOSE,
)
_WITHIN = re.compile(
    r"""
    \b(?:during|after|on)\s+(?:the\s+)?(?:first\s+)?(?:counts?\s*)?(?P<counts>\d{1,2})\s*(?:counts?|cts?|beats?)\b
    | \bafter\s+count\s+(?P<count>\d{1,2})
    | \bafter\s+(?:section|s)\s*(?P<section>\d)
    """,
    re.IGNORECASE | re.VERBOSE,
)
_AFTER_WALL = re.compile(
    rf"\b(?:end|after|finish(?:ed|ing)?|complet(?:e|ed|ing|ion)|have\s+danced|following|between|before)\s+(?:of\s+)?"
    rf"(?:(?:the|your|dancing|finishing|completing|starting|beginning)\s+)*"
    rf"(?:walls?\b|w\d|{NTH}(?:\s+(?:and|&)\s+(?:the\s+)?{NTH})?\s+(?:walls?|{ROUND})\b)"
    rf"|\b(?:when|once)\s+(?:the\s+)?(?:wall\s+\w+|{NTH}\s+wall)\s+(?:is|has|ends|finishes)\b"
    rf"|\b(?:wall\s+\d{{1,2}}|{NTH}\s+wall)\W+(?:at\s+)?(?:the\s+)?end\b"
    rf"|{AFTER_TIMES}",
    re.IGNORECASE,
)
_BEFORE = re.compile(
    r"\b(?:before|at\s+the\s+(?:start|beginning)\s+of)\s+(?:(?:starting|beginning|dancing|(?:you|we)\s+(?:start|begin|dance))\s+)?(?:the\s+)?$",
    re.IGNORECASE,
)
_THEN_TAG = re.compile(r"\bthen\b[^,;.]*\b(?:tag|bridge)\b", re.IGNORECASE)
_NEAR = 60  # characters before a wall in which that is looked for


@dataclass(slots=True)
class TagOrder:
    """A tag as told: after which wall, how many counts (None: its steps say), inside it after how many."""

    after_wall: int
    counts: int | None = None
    inside: Fraction | None = None
    faces: int | None = None
    faces_span: Span | None = None
    span: Span = NOWHERE
    part: str = ""
    again: Again | None = None  # counts of the dance that it dances once more
    cut: TagCut | None = None  # the counts of its steps that are danced, where these are not all
    times: int = 1
    loose: bool = False  # of several walls with a tag behind them, perhaps not one of those that have it


def tags_told(
    named: Named, main: PartText | None, *, extra: PartText | None, extras: list[PartText]
) -> list[TagOrder]:
    """The tags that a stretch orders, one for each wall it names.

    `extra` is the tag whose heading the stretch stands in, `extras` are all tags, bridges and endings.
    """
    counts, inside = _size(named, main)
    again = danced_again(named.text, main)
    if again is not None and counts in (None, again.counts, again.last - again.first + 1):
        counts = int(again.counts)
    else:
        again = None
    times, sizes = times_told(named.text), _sizes(named.text, main)
    part = extra.name if extra is not None else _part_of_tag(named.text, extras)
    orders = []
    for i, (wall, at) in enumerate(named.walls):
        if _BEFORE.search(named.remark.line.text[max(0, at - _NEAR) : at]):
            wall -= 1
        order = TagOrder(wall, counts, inside, span=named.span, part=part, again=again)
        order.loose = _is_followed(named)
        if again is None and len(named.walls) > 1 and len(set(sizes)) > 1:
            order.counts = sizes[i] if len(sizes) == len(named.walls) else None
        if part:
            order.cut = tag_cut(_told_of(named, i))
        if len(times) == len(named.walls):
            order.times = times[i]
        if faced := named.faced_on(i):
            order.faces, order.faces_span = faced[-1]
        orders.append(order)
    return orders


def _told_of(named: Named, i: int) -> str:
    """What a stretch tells of its i-th wall: all of it, or what stands between that wall and the next."""
    if len(named.walls) == 1:
        return named.text
    ends = [at for _, at in named.walls[i + 1 :]]
    return named.remark.line.text[named.walls[i][1] : ends[0] if ends else named.remark.end]


def _is_followed(named: Named) -> bool:
    """Whether walls one after the other are told with a tag behind: "walls 3, 4 - all, then tag"."""
    walls = [wall for wall, _ in named.walls]
    in_row = len(walls) > 1 and walls == list(range(walls[0], walls[-1] + 1))
    return in_row and _THEN_TAG.search(named.text) is not None


def size_of_tag(text: str) -> int | None:
    """How long the tag is that a text calls so: "a 4-count tag", "Tag of 2 counts"; None for several."""
    sizes = {number_of(found["before"] or found["behind"]) for found in _SIZE_OF_TAG.finditer(text)}
    return sizes.pop() if len(sizes) == 1 else None


def is_after_wall(text: str) -> bool:
    """Whether a text tells of the end of a wall, or of the time between two."""
    return _AFTER_WALL.search(text) is not None


def _size(named: Named, main: PartText | None) -> tuple[int | None, Fraction | None]:
    """A tag's counts, and the counts of the wall it is danced after where it stands inside one."""
    text = named.text
    within = _WITHIN.search(text)
    if within and not is_after_wall(text):
        count = within["counts"] or within["count"]
        inside = Fraction(int(count)) if count else section_end(main, int(within["section"]))
        sizes = [size for told in _SIZE.findall(text) if (size := number_of(told)) != inside]
        return (sizes[0] if sizes else None), inside
    counts = next(iter(_sizes(text, main)), None)
    here = beat_here(named.remark, main)
    if HERE.search(text) and here is not None and main is not None and here < main.counts:
        return counts, here
    return counts, None


def _sizes(text: str, main: PartText | None) -> list[int]:
    """The numbers of counts that a text tells, but for those of the whole dance."""
    told = [number_of(sized[1]) for sized in (*_SIZE.finditer(text), *_SIZE_IN_BRACKETS.finditer(text))]
    return [size for size in told if size is not None and (main is None or size != main.counts)]


def _part_of_tag(text: str, extras: list[PartText]) -> str:
    """The name of the tag that a text means: by its number, or because there is one only; else empty."""
    for part in extras:
        named = re.search(rf"\b{re.escape(part.name)}\b", text, re.IGNORECASE)
        if named and (part.name[-1].isdigit() or len(extras) == 1):
            return part.name
    tags = [part for part in extras if not is_ending(part.name)]
    return tags[0].name if len(tags) == 1 else ""
