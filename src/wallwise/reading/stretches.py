"""Stretches: what of a remark is told in one breath, which is mostly a sentence."""

import re
from collections.abc import Iterator
from dataclasses import replace

from wallwise.glossary.load import words
from wallwise.reading.naming import by_kind, names_in
from wallwise.reading.outline import Remark
from wallwise.reading.wording import any_of

_CLOSING = rf"{any_of(words()['order']['closing'])}\b"
_SENTENCE_END = re.compile(
    rf"(?<=[.;!?])\s+(?=\S)|;\s*|\n|[\s,|/+-]+(?={_CLOSING}\s+(?:on|after|in)\b)", re.IGNORECASE
)
_SHORTENED = re.compile(r"\b(?:no|approx|secs?|st)\.$")
_CLOSE = re.compile(rf"\W*{_CLOSING}\s*[:(-]", re.IGNORECASE)
_CLOSE_ON_WALL = re.compile(rf"\W*{_CLOSING}\s+(?:on|after|during|in)\b", re.IGNORECASE)
_RESTART_OR_TAG = re.compile(r"restart|tag", re.IGNORECASE)


def stretches_in(remark: Remark) -> Iterator[Remark]:
    """The sentences of a remark, cut once more between a tag and a restart; without the song's close.

    What is told behind that goes with it, up to a restart or tag.
    """
    closing = False
    for start, end in _together(remark):
        for a, b in by_kind(remark.line.text, remark.start + start, remark.start + end):
            text = remark.line.text
            closes = _CLOSE.match(text, a, b) or _CLOSE_ON_WALL.match(text, a, b)
            closing = bool(closes) or (closing and not _RESTART_OR_TAG.search(text, a, b))
            if not closing:
                yield replace(remark, start=a, end=b)


def _together(remark: Remark) -> Iterator[tuple[int, int]]:
    """The sentences; one that tells of a wall goes with those behind it, up to what says that it restarts."""
    begin = end = 0
    opened = False
    for start, stop in sentences(remark.text):
        named = names_in(replace(remark, start=remark.start + start, end=remark.start + stop))
        if opened and (named.walls or named.kind == "tag"):
            yield begin, end
            opened = False
        begin, end = (begin if opened else start), stop
        opened = not named.kind and (opened or bool(named.walls))
        if not opened:
            yield begin, end
    if opened:
        yield begin, end


def sentences(text: str) -> Iterator[tuple[int, int]]:
    """Where the sentences of a text begin and end."""
    at = 0
    for stop in _SENTENCE_END.finditer(text):
        if _SHORTENED.search(text[at : stop.start()]):
            continue
        if text[at : stop.start()].strip():
            yield at, stop.start()
        at = stop.end()
    if text[at:].strip():
        yield at, len(text)


def tells_close(text: str) -> bool:
    """Whether a text tells how the song closes, and orders no restart or tag."""
    return _CLOSE.match(text) is not None and not _RESTART_OR_TAG.search(text)


def names_order(text: str) -> bool:
    """Whether a text speaks of a restart or a tag by its name."""
    return _RESTART_OR_TAG.search(text) is not None
