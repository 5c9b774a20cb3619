"""Walls told one after the other by their counts: "Sequence: 32, 32, 16 (restart), 32, tag, 32"."""

import re
from fractions import Fraction

from wallwise.reading.outline import PartText, Remark
from wallwise.reading.restart_orders import RestartOrder
from wallwise.reading.sequence import KEY
from wallwise.reading.tag_orders import TagOrder

_ITEM = re.compile(
    r"""
    \b(?P<tag>tags?|bridge)\b(?:\s*\(?(?P<size>\d{1,2})(?:\s*-?\s*(?:counts?|cts?|c)\b)?\)?(?!\d))?
    | \b(?P<counts>\d{1,3})\b(?:\s*(?:counts?|cts?|c)\b)?
    """,
    re.IGNORECASE | re.VERBOSE,
)
_ELSE = re.compile(
    r"[^\w]*(?:(?:re-?start|r|rs|and|then|full|walls?|to\s+the\s+end|etc|ending)\b[^\w]*)*", re.IGNORECASE
)
_FEWEST = 3  # walls; fewer are no sequence


def counted_walls(remark: Remark, main: PartText | None) -> tuple[list[RestartOrder], list[TagOrder]] | None:
    """The restarts and tags of a sequence of counts; None for a text that is none, or has other words."""
    items = _items(remark, main)
    return _orders(remark, items, int(main.counts)) if main and items and _says_only(remark, items) else None


def is_counted(remark: Remark, main: PartText | None) -> bool:
    """Whether a text is such a sequence, perhaps with other words."""
    return bool(_items(remark, main))


def _items(remark: Remark, main: PartText | None) -> list[re.Match[str]]:
    """What a sequence of counts lists; empty for a text that is none."""
    found = KEY.search(remark.text)
    if main is None or found is None:
        return []
    items = list(_ITEM.finditer(remark.line.text, remark.start + found.start("rest"), remark.end))
    walls = [int(item["counts"]) for item in items if item["counts"]]
    counted = len(walls) >= _FEWEST and max(walls) == main.counts and min(walls) > 1
    return items if counted else []


def _says_only(remark: Remark, items: list[re.Match[str]]) -> bool:
    """Whether nothing but such items, and words that go with them, stands from the first on."""
    ends = [item.end() for item in items]
    begins = [*(item.start() for item in items[1:]), remark.end]
    return all(_ELSE.fullmatch(remark.line.text, a, b) for a, b in zip(ends, begins, strict=True))


def _orders(
    remark: Remark, items: list[re.Match[str]], whole: int
) -> tuple[list[RestartOrder], list[TagOrder]]:
    restarts: list[RestartOrder] = []
    tags: list[TagOrder] = []
    wall = 0
    for item in items:
        span = remark.line.span(*item.span())
        if item["tag"]:
            tags.append(TagOrder(wall, int(item["size"]) if item["size"] else None, span=span))
            continue
        wall += 1
        if int(item["counts"]) < whole:
            restarts.append(RestartOrder(wall, Fraction(int(item["counts"])), span=span, after_span=span))
    return restarts, tags
