"""Counts that are added where a wall ends: some of the dance once more, a pause, or just so many."""

import re

from wallwise.glossary.load import words
from wallwise.reading.cuts import shortens
from wallwise.reading.marks import NUMBER_WORDS
from wallwise.reading.naming import Named
from wallwise.reading.outline import PartText
from wallwise.reading.tag_repeats import danced_again
from wallwise.reading.wording import RESTART, any_of

_HOLDS = re.compile(
    r"\b(?:hold|wait|pause)\s+(?:for\s+)?(?:another\s+|an\s+extra\s+)?\d{1,2}\s*(?:counts?|beats?)\b"
    r"|\b\d{1,2}[\s-](?:counts?|beats?)\s+(?:hold|wait|pause|break)\b",
    re.IGNORECASE,
)
_MORE_COUNTS = re.compile(
    rf"\b(?:\d{{1,2}}|{any_of(NUMBER_WORDS)})\s+(?:extra|additional|more)\s+(?:counts?|cts?|beats?)\b",
    re.IGNORECASE,
)
_WAITS = re.compile(rf"\b{any_of(sorted(words()['order']['waits'], key=len, reverse=True))}\b", re.IGNORECASE)
_LASTS = re.compile(rf"\b(?:\d{{1,2}}|{any_of(NUMBER_WORDS)})[\s-]*(?:counts?|cts?|beats?)\b", re.IGNORECASE)
_DANCES_ON = re.compile(rf"\b{any_of(words()['order']['dances_on'])}\b", re.IGNORECASE)
_RESTART = re.compile(rf"\b{RESTART}\b", re.IGNORECASE)
_FOR = re.compile(r"for\s", re.IGNORECASE)


def adds_counts(named: Named, main: PartText | None) -> bool:
    """Whether a stretch tells counts of the dance that are danced again, more counts, or a pause."""
    text = named.text
    more = _HOLDS.search(text) or _MORE_COUNTS.search(text)
    return bool(more) or danced_again(text, main) is not None or _waits(named, main)


def _waits(named: Named, main: PartText | None) -> bool:
    """Whether a stretch tells of a pause and how many counts it lasts, and of no place in the dance.

    "After wall 6 … 8 counts …, then begin again" tells of one as well, whatever is done in it.
    """
    begins = named.kind == "restart" and not (_RESTART.search(named.text) or shortens(named.text))
    waits = begins or _WAITS.search(named.text) is not None
    if not waits or _LASTS.search(named.text) is None or _DANCES_ON.search(named.text):
        return False
    places = [stop for stop in named.counts if stop.is_exact and not _FOR.match(stop.found.group())]
    whole = main is not None and any(stop.counts(main) == main.counts for stop in named.counts)
    return not (places or whole)
