"""Tags that dance again what the dance has: "Tag: section 4 once more", "the last 8 counts again"."""

import re
from collections.abc import Callable
from dataclasses import replace
from fractions import Fraction
from typing import NamedTuple

from wallwise.dance.model import Part, Section
from wallwise.glossary.load import words
from wallwise.reading.marks import NUMBER_WORDS
from wallwise.reading.outline import PartText
from wallwise.reading.stepwords import actions_in
from wallwise.reading.stops import A_SECTION, section_end, section_number
from wallwise.reading.wording import AFTER_TIMES, any_of, number_of

_AGAIN = re.compile(rf"\b{any_of(sorted(words()['order']['again'], key=len, reverse=True))}\b", re.IGNORECASE)
_TAG_IS = re.compile(
    rf"\b(?:tag|bridge)\s*(?:is|=|consists\s+of)\s*(?:(?:just|simply|only|the)\s+)*(?:{A_SECTION}|first|last|counts?\b)",
    re.IGNORECASE,
)
_NUMBER = rf"(?:\d{{1,2}}|{any_of(sorted(NUMBER_WORDS, key=len, reverse=True))})"
_COUNTS = r"(?:counts?|cts?|beats?)\s*(?P<from>\d{1,2})\s*(?:-|to)\s*(?P<to>\d{1,2})\b"
_AND = r"\s*(?:,|and|&|\+|-|to)\s*(?:the\s+)?"
_STEPS_OF_DANCE = (
    rf"\bthe\s+(?:last\s+)?(?P<n>{_NUMBER})\s+(?:\w+\s+)?(?P<steps>(?!count|beat)\w{{2,}}?)e?s\b"
)
_THOSE_STEPS = re.compile(_STEPS_OF_DANCE, re.IGNORECASE)
_EIGHT = 8
_TWICE = r"(?:twice|two\s+times|2\s+times|x\s?2|2\s?x)\b"
# "Section 4 twice, i.e. one extra time": once as written, once as the tag.
_IN_ALL = r"(?!\s*[,(–-].{0,20}\b(?:extra|more|i\.?e)\b)"
_TWICE_BEHIND = re.compile(rf"[\s,)]*{_TWICE}{_IN_ALL}", re.IGNORECASE)
# of the tag itself, not of its steps: "wall 5 (twice)", "danced once", "do the tag twice"
_TIMES = re.compile(
    rf"\b(?:danced|done|(?:do|dance)\s+it|tag|wall\s+\w+)\s*[,(:-]?\s*(?:(?P<two>{_TWICE})|once\b(?!\s+more))",
    re.IGNORECASE,
)
_OF_TAG = re.compile(
    r"\s+(?:of|from|in)\s+(?:(?:the|this|that|same|above)\s+)*(?:tag|bridge)\b", re.IGNORECASE
)
_OF_DANCE = re.compile(AFTER_TIMES, re.IGNORECASE)  # "when you have danced it twice"


class Again(NamedTuple):
    """Counts `first` to `last` of the main part, danced once more so many `times`."""

    first: Fraction
    last: Fraction
    times: int = 1

    @property
    def counts(self) -> Fraction:
        """How long that takes."""
        return (self.last - self.first + 1) * self.times


_Span = tuple[Fraction, Fraction] | None
_Meant = Callable[[re.Match[str], PartText], _Span]


def tells_again(text: str) -> bool:
    """Whether a text says that something is danced once more."""
    return _AGAIN.search(text) is not None


def tells_those_again(text: str) -> bool:
    """Whether a text says that so many steps of the dance come again: "the 4 sways once more"."""
    return tells_again(text) and _THOSE_STEPS.search(text) is not None


def danced_again(text: str, main: PartText | None) -> Again | None:
    """What of the main part the words of a tag say to dance again; None where they say nothing of it."""
    if main is None or not (tells_again(text) or _TAG_IS.search(text)):
        return None
    for pattern, meant in _WAYS:
        found = pattern.search(text)
        if found is not None and _OF_TAG.match(text, found.end()):
            continue
        span = meant(found, main) if found is not None else None
        if found is not None and span is not None and 0 < span[0] <= span[1] <= main.counts:
            twice = _TWICE_BEHIND.match(text, found.end())
            return Again(*span, times=2 if twice else 1)
    return None


def times_told(text: str) -> list[int]:
    """How often something is danced, each time that this is told: "once … and twice …"."""
    return [2 if found["two"] else 1 for found in _TIMES.finditer(_OF_DANCE.sub(" ", text))]


def part_again(main: Part, again: Again) -> Part:
    """The counts of the dance that a tag dances again, as the tag's own."""
    length = again.last - again.first + 1
    steps = [step for step in main.steps if again.first <= step.at < again.last + 1]
    danced = [
        replace(step, at=step.at - again.first + 1 + i * length) for i in range(again.times) for step in steps
    ]
    return Part("Tag", (Section(1, Fraction(1), again.counts, tuple(danced)),))


def part_times(part: Part, times: int) -> Part:
    """A tag danced so many times, one after the other."""
    sections = []
    for i in range(times):
        shift = part.counts * i
        for section in part.sections:
            steps = tuple(replace(step, at=step.at + shift) for step in section.steps)
            number = section.number + len(part.sections) * i
            sections.append(replace(section, number=number, starts_at=section.starts_at + shift, steps=steps))
    return Part(part.name, tuple(sections))


# -- what is danced again --------------------------------------------------------------------------


def _counts_of_section(found: re.Match[str], main: PartText) -> _Span:
    number = section_number(found["of"])
    if number is None or not 0 < number <= len(main.sections):
        return None
    before = main.sections[number - 1].base - 1
    return before + int(found["from"]), before + int(found["to"])


def _counts(found: re.Match[str], _: PartText) -> _Span:
    return Fraction(int(found["from"])), Fraction(int(found["to"]))


def _sections(found: re.Match[str], main: PartText) -> _Span:
    first = section_number(found["from"])
    last = section_number(found["to"]) if found["to"] else first
    return _from_to(main, first, last)


def _counts_at_end(found: re.Match[str], main: PartText) -> _Span:
    counts = number_of(found["n"])
    return None if counts is None else _at_end(found, main, Fraction(counts))


def _eights_at_end(found: re.Match[str], main: PartText) -> _Span:
    return _at_end(found, main, Fraction((number_of(found["n"] or "1") or 1) * _EIGHT))


def _sections_at_end(found: re.Match[str], main: PartText) -> _Span:
    many, whole = number_of(found["n"] or "1") or 1, len(main.sections)
    return _from_to(main, 1, many) if found["first"] else _from_to(main, whole - many + 1, whole)


def _steps_at_end(found: re.Match[str], main: PartText) -> _Span:
    """The last counts of the dance, one for each step, where it ends with steps of that name."""
    many = number_of(found["n"])
    texts = [group.text for section in main.sections[-1:] for group in section.groups]
    _, step, behind = " ".join(texts).lower().rpartition(found["steps"].lower())
    if many is None or not step or actions_in(behind):
        return None
    return main.counts - many + 1, main.counts


def _at_end(found: re.Match[str], main: PartText, counts: Fraction) -> _Span:
    return (Fraction(1), counts) if found["first"] else (main.counts - counts + 1, main.counts)


def _from_to(main: PartText, first: int | None, last: int | None) -> _Span:
    end = section_end(main, last) if last is not None else None
    if first is None or end is None or not 0 < first <= len(main.sections):
        return None
    return main.sections[first - 1].base, end


def _way(pattern: str, meant: _Meant) -> tuple[re.Pattern[str], _Meant]:
    return re.compile(pattern, re.IGNORECASE | re.VERBOSE), meant


_END = r"\b(?:(?P<first>first)|last|final)\s+"
_WAYS = (
    _way(rf"(?P<of>{A_SECTION})[\s,:(]*{_COUNTS}", _counts_of_section),  # "section 7 (counts 1-4)"
    _way(rf"\b{_COUNTS}\s+(?:of|from|in)\s+(?:the\s+)?(?P<of>{A_SECTION})", _counts_of_section),
    _way(rf"\b{_COUNTS}", _counts),
    _way(rf"{_END}(?P<n>{_NUMBER})\s+(?:counts?|cts?|beats?)\b", _counts_at_end),
    _way(rf"{_END}(?:(?P<n>{_NUMBER})\s+)?(?:sections?|sets?|lines?|blocks?)\b", _sections_at_end),
    _way(rf"{_END}(?:(?P<n>{_NUMBER})\s+)?(?:eights?|8s?)\b", _eights_at_end),
    _way(_STEPS_OF_DANCE, _steps_at_end),
    _way(
        rf"\b(?:sections|parts|lines|eights|blocks)\s*(?P<from>{_NUMBER}){_AND}(?P<to>{_NUMBER})\b", _sections
    ),
    _way(rf"\b(?P<from>{A_SECTION})(?:{_AND}(?P<to>{A_SECTION}))?", _sections),
)
