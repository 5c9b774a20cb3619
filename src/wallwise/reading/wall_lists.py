"""Lists of walls: what is danced of each of several walls, told in one breath.

"Walls 1 and 2: 32, wall 3: 16 then restart, wall 4: 32 + tag": a wall that is danced whole is ordered
nothing; a shorter one restarts.
"""

import re
from collections.abc import Iterable
from itertools import pairwise

from wallwise.glossary.load import words
from wallwise.reading.cuts import tells_of_music
from wallwise.reading.naming import Named
from wallwise.reading.outline import PartText
from wallwise.reading.tag_repeats import tells_again
from wallwise.reading.wording import number_of

_OTHERS = re.compile(
    r"\b(?:all|every|the)\s+(?:the\s+)?(?:other|others|rest|remaining)\b|\bthen\s+(?:on|full)\b",
    re.IGNORECASE,
)
_DANCED = re.compile(
    r"""
    \bw(?:alls?|ls?)?\s?\d{1,2}(?:\s*(?:-|to|,|&|\+|and)\s*(?:walls?\s*|w)?\d{1,2}\b)*
    \s*(?:[:=-]\s*|\bis\s+|\bare\s+|\bhas\s+|\bhave\s+)?
    \(?(?:(?:all|full|only|just|the|whole|complete|dance|first|of|counts?|cts?|beats?)\s+)*
    (?:\d{1,3}\b(?![:.]\d|\s*o'?c)|full\b|all\b|whole\b|complete\b|restart\b)
    """,
    re.IGNORECASE | re.VERBOSE,
)
_ALL_OF_WALL = re.compile(
    r"\W*w(?:alls?|ls?)?\s?\d{1,2}(?:\s*(?:-|to|,|&|\+|and)\s*(?:walls?\s*|w)?\d{1,2})*\W*"
    r"(?:(?:is|are|dance|danced|the|as)\s+)*(?:all|full|whole|complete|normal|in\s+full|usual|written)\b"
    r"[^\w]*(?:of\s+it|dance|counts?)?\W*",
    re.IGNORECASE,
)
_WHOLE = re.compile(r"\b(?:full|all|whole|complete)\b", re.IGNORECASE)
_WORD = re.compile(r"[a-z]{2,}", re.IGNORECASE)
_SAME = re.compile(r"\b(?:ditto|same|likewise|too)\b", re.IGNORECASE)
_OF_ITEMS = frozenset(words()["order"]["item"])
_FEWEST = 2  # walls; one alone is no list, unless the others are told as well


def by_wall(text: str, start: int, end: int) -> list[tuple[int, int]]:
    """The items of a stretch that lists what is danced of several walls; empty where it is no list."""
    items = [found.start() for found in _DANCED.finditer(text, start, end)]
    if len(items) < (1 if items and _OTHERS.search(text, items[-1]) else _FEWEST):
        return []
    others = _OTHERS.search(text, items[-1], end)
    return list(pairwise([*items, others.start() if others else end]))


def lists_walls(text: str, sentences: Iterable[tuple[int, int]]) -> bool:
    """Whether each sentence of a text is such an item: "Walls 1-2: full. Wall 3: 16. Wall 4: full."."""
    begun = [
        _DANCED.match(text, start + len(text[start:end]) - len(text[start:end].lstrip()))
        for start, end in sentences
    ]
    return len(begun) >= _FEWEST and all(begun)


def is_item(named: Named) -> bool:
    """Whether a line only tells counts of a wall, so that it goes on with the list above it."""
    if named.kind or not named.walls or not (named.counts or _SAME.search(named.text)):
        return False
    told = (word.lower() for word in _WORD.findall(named.text))
    return all(word in _OF_ITEMS or number_of(word) is not None for word in told)


def listed_kind(named: Named, main: PartText | None) -> str:
    """What an item of a list orders: what it says, or a restart where less than the whole is danced."""
    counts = [told.counts(main) for told in named.counts]
    danced = next((count for count in counts if count is not None), None)
    if main is None or tells_of_music(named.text):
        return ""
    whole = danced is None and _WHOLE.search(named.text) is not None
    if named.kind == "tag" or not (whole or (danced is not None and danced >= main.counts)):
        return named.kind or ("restart" if danced is not None else "")
    return "tag" if named.kind == "both" else ""


def is_whole(named: Named, main: PartText | None) -> bool:
    """Whether a wall is told to be danced whole: "walls 4 and 5: all", "wall 2: 32"."""
    counts = [told.counts(main) for told in named.counts]
    if not counts and _ALL_OF_WALL.fullmatch(named.text):
        return True
    if tells_again(named.text):
        return False
    return main is not None and bool(counts) and all(count == main.counts for count in counts)
