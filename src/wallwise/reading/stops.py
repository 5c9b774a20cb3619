"""Stops: the counts of a dance that a text names, as a place to stop at or just as a number.

Each way to name them ("after 16", "section 2", "the first two eights") is a pattern of its own with what
it means; at each place of a text the first of them that fits is believed.
"""

import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from fractions import Fraction
from typing import NamedTuple

from wallwise.glossary.load import words
from wallwise.reading.marks import NUMBER_WORDS
from wallwise.reading.outline import PartText, SectionText
from wallwise.reading.wording import NTH, any_of, number_of

_FLAGS = re.IGNORECASE | re.VERBOSE
_ORDER = words()["order"]
_SPELT = any_of(sorted(NUMBER_WORDS, key=len, reverse=True))
_EIGHT_WORDS = any_of(list(NUMBER_WORDS)[:8])
_COUNT = r"(?:counts?|cts?|beats?)"
CUT = r"(?:1[2-9]|[2-9]\d)\b"  # counts, where no dance has so many walls: "w3/16"
UNIT = any_of(sorted(_ORDER["unit"], key=len, reverse=True))
_UNITS = any_of(f"{unit}s" for unit in sorted(_ORDER["unit"], key=len, reverse=True))
_NUMBER = rf"(?:\d{{1,2}}|{_EIGHT_WORDS}|(?-i:VIII|VII|VI|IV|V|III|II|I))"
_ROMAN = r"(?-i:VIII|VII|VI|IV|III|II)"
_NTH_SECTION = rf"{NTH}\s+(?:{any_of(_ORDER['nth_unit'])}|sequence[ ]of)\b"
A_SECTION = rf"(?:{UNIT}\.?\s*(?:{_NUMBER})\b|{_NTH_SECTION}|{_ROMAN}\b)"
_NTH_COUNT = re.compile(rf"\b{_COUNT}\s*\d", re.IGNORECASE)
_LAST = re.compile(r"\b(?:last|final)\s+$", re.IGNORECASE)
_TO_PLACE = re.compile(r"\b(?:to|until|till|through|as\s+far\s+as|the)\s+\d{1,2}$", re.IGNORECASE)
_HALF_BEHIND = re.compile(r"\s?&(?=\W|$)")
_ARE_COUNTED = re.compile(rf"\s*-?\s*(?:{_COUNT}|c)\b", re.IGNORECASE)
# between a number and its section: "4& of", "16 counts into the"
_OF = rf"[&ae]?(?:st|nd|rd|th)?\s*{_COUNT}?\s+(?:of|in|into)\s+(?:the\s+)?"
_AND = r"\s*(?:,\s*and|,|and|&|\+|-|to|through|thru)\s*"
_LEADS_IN = r"\s*-?\s*(?:intro|lead)"  # behind the counts of an intro
_UPTO = r"\s*(?:-|to|thru|through|until)\s*"

_Meant = Callable[[re.Match[str], PartText | None], Fraction | None]


class _Way(NamedTuple):
    """One way to name counts, called by an example; `exact` where it tells a place rather than a number."""

    name: str
    pattern: re.Pattern[str]
    meant: _Meant
    exact: bool


@dataclass(frozen=True, slots=True)
class Stop:
    """Counts as a line names them, and their place in it."""

    way: _Way
    found: re.Match[str]

    @property
    def start(self) -> int:
        """Where its words begin in the line."""
        return self.found.start()

    @property
    def end(self) -> int:
        """Where its words end."""
        return self.found.end()

    @property
    def at(self) -> int:
        """Where its number stands."""
        return self.found.start("n") if "n" in self.found.re.groupindex else self.found.start()

    @property
    def is_exact(self) -> bool:
        """Whether it is told as a place to stop at ("after 16", "section 2") rather than just named."""
        return self.way.exact

    @property
    def is_danced(self) -> bool:
        """Whether it tells how far the wall is danced ("dance 24", "counts 1-24")."""
        return self.way.name in ("dance 16", "counts 1-16")

    @property
    def is_in_section(self) -> bool:
        """Whether it is a count of a section that is named with it."""
        return "of" in self.found.re.groupindex

    @property
    def is_nth(self) -> bool:
        """Whether it names a count by its number ("count 8"), perhaps from the start of its section."""
        return self.way.name != "counts 1-16" and _NTH_COUNT.search(self.found.group()) is not None

    @property
    def is_place(self) -> bool:
        """Whether it names the count that is danced last ("up to 8", "8&"), not how many there are."""
        if self.is_in_section or _ARE_COUNTED.match(self.found.string, self.end):
            return False
        half = _HALF_BEHIND.match(self.found.string, self.end) is not None
        return self.is_nth or half or _TO_PLACE.search(self.found.group()) is not None

    @property
    def is_of_wall(self) -> bool:
        """Whether the wall it is told of stands in its own words ("wall 3: 16")."""
        return self.way.name == "wall 3: 16"

    def counts(self, main: PartText | None) -> Fraction | None:
        """The counts of the main part that it means; None for a section that there is not."""
        return self.way.meant(self.found, main)


def stops_in(text: str, start: int, end: int) -> Iterator[Stop]:
    """All counts that ``text[start:end]`` names, in their order."""
    while start < end:
        nearest: Stop | None = None
        for way in _WAYS:
            found = way.pattern.search(text, start, end)
            if found is not None and (nearest is None or found.start() < nearest.start):
                nearest = Stop(way, found)
        if nearest is None:
            return
        yield nearest
        start = nearest.end


def section_end(main: PartText | None, number: int) -> Fraction | None:
    """The last count of a section of the main part; None where there is no such section."""
    if main is None or not 0 < number <= len(main.sections):
        return None
    section = main.sections[number - 1]
    return section.base + section.counts - 1


def section_at(main: PartText, beat: Fraction) -> SectionText | None:
    """The section of the main part that a beat is in; None for a beat outside of it."""
    return next((s for s in main.sections if s.base <= beat < s.base + s.counts), None)


# -- what each way means ---------------------------------------------------------------------------


def _number(found: re.Match[str], _: PartText | None) -> Fraction | None:
    number = number_of(found["n"])
    return None if number is None else Fraction(number)


def _before(found: re.Match[str], main: PartText | None) -> Fraction | None:
    number = _number(found, main)
    return None if number is None else number - 1


def _half(_: re.Match[str], main: PartText | None) -> Fraction | None:
    return main.counts / 2 if main is not None else None


def section_number(told: str) -> int | None:
    """The number of the section that "2", "section two", "IV" or "2nd eight" means; None for none."""
    digits = re.search(r"\d+", told)
    if digits:
        return int(digits[0])
    return next((number for word in told.split() if (number := number_of(word)) is not None), None)


def _end_of_section(found: re.Match[str], main: PartText | None) -> Fraction | None:
    number = section_number(found["n"])
    return section_end(main, number) if number is not None else None


def _before_section(found: re.Match[str], main: PartText | None) -> Fraction | None:
    number = section_number(found["n"])
    return section_end(main, number - 1) if number is not None else None


def _end_of_letter(found: re.Match[str], main: PartText | None) -> Fraction | None:
    return section_end(main, ord(found["n"].upper()) - ord("A") + 1)


def _inside_section(found: re.Match[str], main: PartText | None) -> Fraction | None:
    """The count of a section, by its number in the section or, past its end, through the dance."""
    number, within = section_number(found["of"]), Fraction(number_of(found["n"]) or 0)
    if main is None or number is None or not 0 < number <= len(main.sections):
        return None
    section = main.sections[number - 1]
    if _LAST.search(found.string, 0, found.start("n")):  # "the last two counts of section 2"
        return section.base - 1 + section.counts
    return section.base - 1 + within if within <= section.counts else within


# -- the ways: of two that fit at the same place the first is believed -----------------------------

_DANCED = rf"""
    (?:
        \b(?:after|up[ ]to(?:[ ]and[ ]including)?|to[ ]the[ ]end[ ]of|as[ ]far[ ]as|until|till|through
            |danced?|do|done|only|for(?![ ](?:counts?[ ])?\d{{1,2}}[ ]?(?:and|,|&)[ ]?\d))
    )\s+
    (?:(?:the|only|just|doing|dancing|up[ ]to|as[ ]far[ ]as|to|these|those|all)\s+)*
    (?:first\s+)?{_COUNT}?\s*(?:1{_UPTO})?
    (?P<n>\d{{1,3}})\b(?!{_OF}{A_SECTION})(?!\s*(?:st|nd|rd|th|walls?|o'?\s?c|:|times|secs?|x|eights|{_UNITS})\b)
    (?!\s*[-&]\s*\d)
"""
_LISTED = rf"""
    \bw(?:alls?|ls?)?\s?\d{{1,2}}(?:\s*(?:,|&|and)\s*\d{{1,2}})*
    (?:
        \s*[:=]\s*\(?
      | \s*/\s*(?={CUT})
      | \s+at\s+(?!12\b)(?={CUT})
      | \s+-\s+
      | -(?={CUT})
      | \s*\((?!(?:12|3|6|9)\b)
      | \s(?=\d{{1,3}}\s*(?:[,(+]|$|re-?start|rs\b|then\b))
    )
    (?:1\s*-\s*)?(?P<n>\d{{1,3}})\b(?!\s*(?:[-&]\s*\d|[:.]\d|o'?\s?c|st\b|nd\b|rd\b|th\b))
"""
_INSIDE = rf"\b{UNIT}\s*(?P<of>{_NUMBER})\b[\s,(-]*(?:after\s+)?{_COUNT}\s*(?P<n>\d{{1,2}})\b(?!\s*-)"
# Only where they run from the first is the last of them meant: "sections 1 and 2".
_SECTIONS = rf"""
    \b(?:{_UNITS}|{UNIT})\s*(?:1|one|(?-i:I))\b(?:{_AND}{UNIT}?\s*{_NUMBER}\b)*?
    {_AND}{UNIT}?\s*(?P<n>{_NUMBER})\b(?!{_AND}{_NUMBER}\b)
"""
_NTH_SECTIONS = rf"""
    \b(?:1st|first)(?:{_AND}(?:the\s+)?{NTH})*?
    {_AND}(?:the\s+)?(?P<n>{NTH})\s+(?:{_UNITS}|{UNIT})\b
"""
_EIGHTS = rf"\b(?P<n>{_EIGHT_WORDS}|\d)\s+(?:x\s+8|sets\s+of\s+(?:eight|8)|8s|8's|sixes|{_UNITS})\b"
_NTH_OF_DANCE = (  # "count 16", "counts 7-8"
    rf"\bcounts?\s*(?:\d{{1,2}}{_UPTO}(?=\d{{1,2}}\b(?!{_OF}{A_SECTION})))?(?P<n>\d{{1,3}}|{_SPELT})\b"
)
_RANGE = r"(?:\[\d{1,2}\s*-\s*\d{1,2}\]\s*(?:,|and|&|\+)?\s*)*\[\d{1,2}\s*-\s*(?P<n>\d{1,2})\]"


def _exact(name: str, pattern: str, meant: _Meant) -> _Way:
    return _Way(name, re.compile(pattern, _FLAGS), meant, exact=True)


def _named(name: str, pattern: str, meant: _Meant) -> _Way:
    return _Way(name, re.compile(pattern, _FLAGS), meant, exact=False)


_WAYS = (
    _exact(
        "4 of section 2",
        rf"\b{_COUNT}?\s*(?P<n>\d{{1,2}}|{_SPELT}){_OF}(?P<of>{A_SECTION}|(?:no\.?|number|\#)\s*\d\b)",
        _inside_section,
    ),
    _exact("section 2, count 4", _INSIDE, _inside_section),
    _exact("before count 17", rf"\bbefore\s+(?:the\s+)?{_COUNT}\s*(?P<n>\d{{1,3}})\b", _before),
    _exact(
        "before section 3",
        rf"\bbefore\s+(?:the\s+)?(?P<n>{UNIT}\s*{_NUMBER}\b|{_NTH_SECTION})",
        _before_section,
    ),
    _exact("dance 16", _DANCED, _number),
    _exact("@16", r"@\s*(?:counts?\s*)?(?P<n>\d{1,3})\b(?!\s*(?:o'?\s?c|:))", _number),
    _exact("counts 1-16", rf"\b(?:{_COUNT}|steps?)\s*1{_UPTO}(?P<n>\d{{1,3}})\b", _number),
    _exact("after the 16th count", r"\b(?P<n>\d{1,3})(?:st|nd|rd|th)\s+(?:count|beat)\b", _number),
    _named("wall 3: 16", _LISTED, _number),
    _named("16 counts", rf"\b(?P<n>\d{{1,3}})\s*-?\s*(?:{_COUNT}|c)\b(?!{_LEADS_IN})", _number),
    _named("count 16", _NTH_OF_DANCE, _number),
    _exact("sections 1 and 2", _SECTIONS, _end_of_section),
    _exact("first and second eight", _NTH_SECTIONS, _end_of_section),
    _exact(
        "section 2",
        rf"(?<!')(?<!\bback\ to\ )(?<!\bfrom\ )\b{UNIT}\.?\s*(?P<n>{_NUMBER})\b(?!\w)",
        _end_of_section,
    ),
    _exact(
        "after #2",
        r"\b(?:after|end[ ]of|through|to|until|till|do|dance|only)\s+"
        rf"(?:(?-i:I)(?:{_AND}{_ROMAN})*?{_AND})?(?P<n>\#\s?\d|{_ROMAN}|(?-i:[IV])(?=\s*(?:[(]|$)))(?!\w)(?!{_AND}{_ROMAN})",
        _end_of_section,
    ),
    _exact("second eight", rf"\b(?P<n>{_NTH_SECTION})", _end_of_section),
    _named("two eights", _EIGHTS, _end_of_section),
    _exact("after B", r"\bafter\s+(?P<n>[A-H])\b(?!['\w])", _end_of_letter),
    _exact("8 x 2", r"\b8\s*x\s*(?P<n>[2-8])\b", _end_of_section),
    _exact("[9-16]", _RANGE, _number),
    _named(
        "half",
        r"\b(?:halfway|half[ ]way|first[ ]half|half[ ](?:of[ ])?the[ ]dance|half[ ](?:a[ ])?wall)\b",
        _half,
    ),
    _named("sixteen counts", rf"\b(?P<n>{_SPELT})\s+{_COUNT}\b", _number),
)
