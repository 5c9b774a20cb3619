"""Tags of which only some counts are danced after a wall: "after wall 5 the first 4 counts of the tag"."""

import re
from dataclasses import replace
from fractions import Fraction
from typing import NamedTuple

from wallwise.dance.model import Part
from wallwise.glossary.load import words
from wallwise.reading.marks import NUMBER_WORDS
from wallwise.reading.tag_repeats import Again, part_again
from wallwise.reading.wording import any_of, number_of

_NUMBER = rf"(?:\d{{1,2}}|{any_of(sorted(NUMBER_WORDS, key=len, reverse=True))})"
_COUNTS = r"(?:counts?|cts?|beats?)"
_WHICH = r"(?:the|this|that|our|its|same|above|short|long|\d-count)"
_OF_TAG = rf"\s*,?\s+(?:of|from|in)\s+(?:{_WHICH}\s+)*(?:tag|bridge)\b"
_ONLY = r"\b(?:only|just)\b"
_SOME = re.compile(
    rf"""
    \b(?:
        (?P<end>first|last|final)\s+(?:(?P<half>half)|(?P<n>{_NUMBER})\s*{_COUNTS})\b
      | {_COUNTS}\s*(?P<from>\d{{1,2}})\s*(?:-|to)\s*(?P<to>\d{{1,2}})\b
      | (?:only|just)\s+(?P<few>{_NUMBER})\s*{_COUNTS}(?={_OF_TAG})
      | (?P<half_of>half)(?=\s+(?:of\s+)?(?:the|this|that|a)\s+(?:tag|bridge)\b)
    )
    """,
    re.IGNORECASE | re.VERBOSE,
)
_LEAVE = any_of(sorted(words()["order"]["leaves_out"], key=len, reverse=True))
_LEFT_OUT = re.compile(rf"\b{_LEAVE}\s+(?:out\s+)?(?:the\s+)?$", re.IGNORECASE)
_WITHOUT = re.compile(
    rf"\b{_LEAVE}\s+(?:out\s+)?(?:{_COUNTS}\s*)?(?P<n>\d{{1,2}})\s*(?:-|to)\s*\d{{1,2}}\b", re.IGNORECASE
)
_STOPPED = re.compile(
    rf"\b(?:stop|end|finish|leave)\s+(?:the|this)\s+(?:tag|bridge)\s+(?:after|at|on)\s+(?:{_COUNTS}\s*)?(?P<n>\d{{1,2}})\b",
    re.IGNORECASE,
)
_MEANWHILE = re.compile(r"\b(?:on|during|in|over|for|with)\s+(?:the\s+)?$", re.IGNORECASE)
_UP_TO = re.compile(
    rf"\b(?:tag|bridge)\b[^.;:]{{0,20}}?\b(?:up\s+to|as\s+far\s+as|until|till|to)\s+(?:the\s+)?{_COUNTS}\s*(?P<n>\d{{1,2}})\b",
    re.IGNORECASE,
)
_BEHIND = re.compile(_OF_TAG, re.IGNORECASE)
_OF_ELSE = re.compile(r"\s+(?:of|from|in)\s", re.IGNORECASE)
_ONLY_BEFORE = re.compile(rf"{_ONLY}\W*(?:(?:dance|do|the|with)\s+)*$", re.IGNORECASE)
_ONLY_BEHIND = re.compile(rf"\W*{_ONLY}", re.IGNORECASE)


class TagCut(NamedTuple):
    """The counts of a tag that are danced: `first` to `last` (None: half of it), or as many `at_end`.

    Where `last` is 0 or less it is so many counts before the tag's end.
    """

    first: int
    last: int | None
    at_end: bool = False

    def counts_in(self, whole: Fraction) -> tuple[Fraction, Fraction] | None:
        """The first and the last of the counts, in a tag of so many; None where it has no such counts."""
        last = Fraction(self.last) if self.last is not None else whole / 2
        last = whole + last if last <= 0 else last
        first = Fraction(self.first)
        if self.at_end:
            first, last = whole - last + 1, whole
        return (first, last) if 0 < first <= last <= whole else None


def tag_cut(text: str) -> TagCut | None:
    """Which counts of a tag a text says are danced alone; None where it means the whole tag."""
    found = next((some for some in _SOME.finditer(text) if _is_of_tag(text, some)), None)
    if found is None:
        up_to, without = _UP_TO.search(text) or _STOPPED.search(text), _WITHOUT.search(text)
        if without is not None:
            return TagCut(1, int(without["n"]) - 1)
        return TagCut(1, int(up_to["n"])) if up_to is not None else None
    if _LEFT_OUT.search(text, 0, found.start()):
        return _without(found)
    if found["to"]:
        return TagCut(int(found["from"]), int(found["to"]))
    at_end = found["end"] is not None and found["end"].lower() != "first"
    many = found["n"] or found["few"]
    return TagCut(1, number_of(many) if many else None, at_end)


def _without(found: re.Match[str]) -> TagCut | None:
    """What is danced where those counts are left out; None where that is not one stretch of the tag."""
    if found["to"]:
        return TagCut(1, int(found["from"]) - 1)
    many = number_of(found["n"] or found["few"] or "")
    if many is None:
        return TagCut(1, None) if found["end"] and found["end"].lower() != "first" else None
    return TagCut(many + 1, 0) if found["end"].lower() == "first" else TagCut(1, -many)


def cut_part(part: Part, cut: TagCut) -> Part:
    """Those counts of a tag, as a tag of its own; the whole of it where it has no such counts."""
    counts = cut.counts_in(part.counts)
    if counts is None or counts[1] - counts[0] + 1 == part.counts:
        return part
    first, last = counts
    return replace(part_again(part, Again(first, last)), name=f"{part.name}, counts {first}-{last}")


def _is_of_tag(text: str, some: re.Match[str]) -> bool:
    """Whether counts that a text names are said to be the tag's, or the only ones that are danced."""
    if _MEANWHILE.search(text, 0, some.start()):
        return False  # "smile on the first 4 counts of the tag"
    if _OF_ELSE.match(text, some.end()) and not _BEHIND.match(text, some.end()):
        return False
    if _LEFT_OUT.search(text, 0, some.start()):
        return True
    if some["half_of"] or _BEHIND.match(text, some.end()):
        return True
    before = _ONLY_BEFORE.search(text, 0, some.start())
    return before is not None or _ONLY_BEHIND.match(text, some.end()) is not None
