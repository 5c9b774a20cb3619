"""Cuts: a wall that is told to be shorter, which is a restart in other words.

"Leave out the last eight", "drop counts 25-32", "only dance the first 16 counts", "… and begin wall 4".
"""

import re
from fractions import Fraction
from typing import NamedTuple

from wallwise.glossary.load import words
from wallwise.reading.marks import NUMBER_WORDS
from wallwise.reading.outline import PartText
from wallwise.reading.stops import UNIT, section_end
from wallwise.reading.wording import any_of, number_of

_ORDER = words()["order"]
_NUMBER = rf"(?:\d{{1,3}}|{any_of(sorted(NUMBER_WORDS, key=len, reverse=True))})"
_LEFT_OUT = re.compile(
    rf"""
    \b{any_of(sorted(_ORDER["leaves_out"], key=len, reverse=True))}
    \s+(?:out\s+)?(?:(?:the|its|your)\s+)?(?:[^.;:()]{{0,40}}\()?
    (?P<told>
        (?:counts?\s*|beats?\s*)?(?P<from>\d{{1,3}})\s*(?:-|to|and|&)\s*(?P<to>\d{{1,3}})\b
      | (?:last|final)\s+(?:(?P<many>{_NUMBER})\s+)?
        (?P<unit>eights?|8s?|8's|sections?|sets?|counts?|cts?|beats?)\b
      | (?:last|final)\s+(?P<counts>{_NUMBER})\b(?!\s?/)
      | (?:sections?|sets?)\s*(?P<first>{_NUMBER})(?:\s*(?:,|and|&|-|to)\s*(?P<last>{_NUMBER}))?\b
      | (?<=\bby\s)(?P<by>{_NUMBER})\s+(?:counts?|cts?|beats?)\b
      | (?P<half>(?:last|second)\s+half)\b
    )
    """,
    re.IGNORECASE | re.VERBOSE,
)
_SHORTER = re.compile(
    rf"""
    \bonly\s+(?:dance|do|has|have|the\s+first|{_NUMBER}\s+(?:counts?|cts?|beats?))\b
  | \b(?:dance|do|has|have)\s+only\b
  | \b(?:counts?|cts?|beats?|half|{UNIT}s?|{_NUMBER})\s+(?:only|long)\b
  | \bonly\s+(?:the\s+)?{UNIT}s?\s | \bhalf\s+(?:a\s+)?wall\b
  | \bis\s+(?:a\s+)?short\b | \bshort\s+walls?\b | \b(?:ends?|stops?)\s+early\b
  | \bcut\b | \bstop\s+(?:after|at)\b
  | \b(?:begin|start)\s+(?:the\s+next\s+wall|wall\s+\w+|the\s+\w+\s+wall)\b
    """,
    re.IGNORECASE | re.VERBOSE,
)
_CLOSES = re.compile(rf"\b{any_of(_ORDER['closes'])}\b(?!\s+early)", re.IGNORECASE)
_EIGHT = 8


class Cut(NamedTuple):
    """The counts danced before those that are left out, and where that is told in the text.

    None counts: what is left out is not the end of the wall.
    """

    after: Fraction | None
    start: int
    end: int


def shortens(text: str) -> bool:
    """Whether a text says of a wall that it is shorter, and not that the song is over."""
    return bool(_SHORTER.search(text) or leaves_out(text)) and _CLOSES.search(text) is None


def tells_of_music(text: str) -> bool:
    """Whether a text tells what the song does, or how the dance closes with it."""
    return _CLOSES.search(text) is not None


def leaves_out(text: str) -> bool:
    """Whether a text says which counts of a wall are left out."""
    return _LEFT_OUT.search(text) is not None


def left_out(text: str, main: PartText | None) -> Cut | None:
    """What a text says is left out of a wall; None where it leaves nothing out."""
    found = _LEFT_OUT.search(text)
    if found is None or main is None:
        return None
    after = _before_what_is_left_out(found, main)
    inside = after is not None and 0 < after < main.counts
    return Cut(after if inside else None, found.start("told"), found.end("told"))


def _before_what_is_left_out(found: re.Match[str], main: PartText) -> Fraction | None:
    """The counts that are danced before; None where more is danced after."""
    if found["half"]:
        return main.counts / 2
    if found["to"]:
        return Fraction(int(found["from"]) - 1) if int(found["to"]) == main.counts else None
    if found["first"]:
        first, last = number_of(found["first"]), number_of(found["last"] or found["first"])
        if first is None or last != len(main.sections):
            return None
        return section_end(main, first - 1) if first > 1 else None
    if found["by"]:
        size = number_of(found["by"])
        return None if size is None else main.counts - size
    many = number_of(found["many"] or "1") or 1
    if found["unit"] and found["unit"].lower().startswith("se"):
        return section_end(main, len(main.sections) - many)
    size = number_of(found["counts"]) if found["counts"] else many
    if found["unit"] and not found["unit"].lower().startswith(("c", "beat")):
        size = many * _EIGHT
    return None if size is None else main.counts - size
