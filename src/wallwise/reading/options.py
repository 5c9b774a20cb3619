"""Easier ways told beside the steps, read for the counts they stand for."""

from __future__ import annotations

import re
from bisect import bisect_left
from collections.abc import Iterator
from dataclasses import dataclass, replace
from fractions import Fraction
from operator import attrgetter

from wallwise.dance.counts import full_label
from wallwise.dance.model import Option, Span, Step
from wallwise.glossary.load import words
from wallwise.reading.goals import inside_goal
from wallwise.reading.layout import Layout
from wallwise.reading.marked import split_marks
from wallwise.reading.marks import leading_mark
from wallwise.reading.outline import Remark, SectionText
from wallwise.reading.pieces import few, in_time, items_in, on_beats
from wallwise.reading.record import OptionReading, PartReading, Reading
from wallwise.reading.solve import solve
from wallwise.reading.steps import step_of
from wallwise.reading.stepwords import actions_in
from wallwise.reading.wording import OPTION_LEAD, ORDINAL_WORDS, any_of, number_of

_WORDS = words()["option"]
_OPTION = re.compile(
    rf"""
    \b(?:
        (?:an?\s+)?{any_of(sorted(_WORDS["called"], key=len, reverse=True))}\b\s*{any_of(_WORDS["noun"])}?s?
      | options?
      | if\s(?:(?!just\b|simply\b)[^:,;.()\[\]]){{0,50}}[:,]
      | {OPTION_LEAD}
      | or
      | ^(?!\W*(?:repeat|mirror|same|start|begin)\b)[^:.;()]{{3,40}}:(?=[^:.;()]*\binstead\s+of\b)
    )(?!\w)\s*(?P<rest>[^\])]*)
    """,
    re.IGNORECASE | re.VERBOSE,
)
_BARE_OR = re.compile(r"or\b", re.IGNORECASE)  # between any two things
_NO_OPTION = re.compile(r"\brestart|^\W*(?:tag|bridge)\b", re.IGNORECASE)
_FOR_COUNTS = re.compile(
    r"\b(?:(?:for|on|of|in place of|instead of|to|replac\w+)\s+(?:the\s+)?(?:counts?\s*)?|\bcounts?\s*"
    r"|(?-i:\b[A-H]\s+)(?=\d{1,2}\s?[-&]))"
    r"(?:\([^)]*\)\s*)?(\d{1,3}(?:(?:\s*[-&,]\s*|\s)\d{1,3})*&?)(?!\s*(?:walls?|turns?|/))",
    re.IGNORECASE,
)
_OF_PART = re.compile(r"(?i:\bpart\s+)(?P<part>[A-Ha-h])\b|\b(?P<letter>[A-H])\s+(?=\d{1,2}\s?[-&])")
_OF_SECTION = re.compile(
    rf"\b(?:{any_of(words()['heading']['numbered'])})\s*#?(?P<number>\d{{1,2}})\b"
    rf"|\b(?P<nth>\d(?:st|nd|rd|th)|{any_of(ORDINAL_WORDS)})\s+{any_of(words()['heading']['counted'])}\b",
    re.IGNORECASE,
)
_BARE_COUNTS = re.compile(r"\s*,?\s*(\d{1,2}(?:\s*[-&]\s*\d{1,2})*&?)(?!\w)")  # "S1 7-8"
_COUNT_AT_END = re.compile(r"\(\d{1,2}$")
_HEAD = 60  # characters of an option in which it says what it stands for
_LEAD_IN = re.compile(
    r"^\W*(?:[^,;:.()]{1,40}?\b(?=just\b|simply\b))?"
    r"(?:is|are|to|-|=|:|replace\s+(?:[^,;:()]{1,40}?\s)?(?:with|by)\b|just|simply)?\s*",
    re.IGNORECASE,
)
_LEAVES_OUT = re.compile(  # "leave out the roll and walk L, R"
    rf"^\W*{any_of(sorted(words()['order']['leaves_out'], key=len, reverse=True))}\b[^,;:.()]{{1,40}}?"
    r"(?:\s*[,;:]\s*(?:(?:and|just|simply)\s+)*|\s+(?:and|but|just)\s+(?:just\s+|simply\s+)?)",
    re.IGNORECASE,
)
_SEVERAL = re.compile(r"\s*[a-z]+s\b", re.IGNORECASE)  # "2 walks" counts them
_NO_TURN = re.compile(r"[,;(]?\s*\b(?:with\s+)?(?:no|without(?: the)?)\s+turn(?:s|ing)?\b\)?", re.IGNORECASE)
_AS_WRITTEN = re.compile(  # "…, then touch on 8 as usual": no more of the option
    r"[,;]?\s*\b(?:then|and|but)\b[^,;.]*\bas\s+(?:usual|before|normal|written|above)\b", re.IGNORECASE
)
_READS_WELL = 1.9  # dearer, and the words do not fit the counts they stand for
_SURE_LENGTH = 1.0  # dearer, and no length fits them
_LONGEST = 16  # counts


def options_of(reading: Reading) -> list[OptionReading]:
    """The options told, one at most for each remark that stands beside steps or in their heading."""
    found = []
    for remark in reading.outline.remarks:
        if not _NO_OPTION.search(remark.text):
            option = next(_options_in(reading, remark), None)
            if option is not None:
                found.append(option)
    return found


def unread_options(reading: Reading) -> Iterator[Span]:
    """Where an easier way is told in words that name steps, and no option was read from them."""
    read = [option.span for option in reading.options]
    for remark in reading.outline.remarks:
        for found in _OPTION.finditer(remark.line.text, remark.start, remark.end):
            span = remark.line.span(found.start(), found.end())
            apart = all(span.end <= other.start or other.end <= span.start for other in read)
            told = not _BARE_OR.match(found.group()) and not _NO_OPTION.search(found.group())
            if apart and told and actions_in(found["rest"]):
                yield span


def _options_in(reading: Reading, remark: Remark) -> Iterator[OptionReading]:
    for found in _OPTION.finditer(remark.line.text, remark.start, remark.end):
        told = _told(reading, remark, found)
        option = _read(told) if told is not None else None
        if option is not None:
            yield option


# -- as told -----------------------------------------------------------------------------------


@dataclass(frozen=True, slots=True)
class _Told:
    """An option as told: its words, and the beats of the part that it stands for."""

    part: PartReading
    words: str
    beats: tuple[Fraction, ...]
    span: Span

    @property
    def counts(self) -> Fraction:
        """How many counts it stands for."""
        return Fraction(self.beats[-1] // 1 - self.beats[0] // 1 + 1)

    def option(self, steps: tuple[Step, ...]) -> Option:
        """The option, danced by these steps."""
        first, last = self.beats[0], self.beats[-1]
        sections = self.part.text.sections
        section = next((s for s in reversed(sections) if s.base <= first), sections[0])
        begin, end = first - section.base + 1, last - section.base + 1
        label = full_label(begin) + (f"-{end // 1}" if end // 1 > begin // 1 else "")
        label = label if end // 1 > begin // 1 or end == begin else full_label(begin) + full_label(end)[-1]
        return Option(section.number, label, first, last, steps, self.part.text.name, self.span)


def _told(reading: Reading, remark: Remark, found: re.Match[str]) -> _Told | None:
    """What an option's words are, and for which beats; None where they tell no steps."""
    line, end = remark.line.text, found.end("rest")
    start = end - len(found["rest"].lstrip(" \t:=-"))
    if not line[remark.start : found.start()].strip() and _COUNT_AT_END.search(line, start, end):
        end = remark.end  # "Easier: walk R (1), walk L (2)": what ends there is a count
    head = line[start : min(start + _HEAD, end)]
    colon = head.find(":")
    if colon >= 0 and not actions_in(head[:colon]):
        head = head[:colon]
    meant = _meant(reading, remark, head)
    if meant is None:
        return None
    if actions_in(head[: meant.begin]):
        end = start + meant.begin  # "walk L, R on counts 7-8"
    elif len(head) == colon:
        start += colon + 1
    else:
        start += meant.end
    mark = leading_mark(line, start + len(line[start:end]) - len(line[start:end].lstrip(" -:")))
    several = mark is not None and len(mark.beats) == 1 and _SEVERAL.match(line, mark.end)
    if mark is not None and not mark.floating and not several and mark.end < end:
        meant, start = meant.on(mark.beats), mark.end
    words_told = _LEAD_IN.sub("", _LEAVES_OUT.sub("", _LEAD_IN.sub("", line[start:end])))
    words_told = _NO_TURN.sub("", _AS_WRITTEN.sub("", words_told))
    marks = [p.mark for p in split_marks(words_told, None) if p.mark is not None and not p.mark.floating]
    if len(marks) > 1:
        meant = meant.on(tuple(beat for mark in marks for beat in mark.beats))  # "walk R (2), walk L (3)"
    items, acts = items_in(words_told)
    if not meant.beats or not any(i.options for i in items) or not any(a.verb or a.figures for a in acts):
        return None
    return _Told(meant.part, words_told, meant.beats, remark.line.span(found.start(), end))


@dataclass(frozen=True, slots=True)
class _Meant:
    """What an option stands for: beats of a part, told from `begin` to `end` of its head."""

    part: PartReading
    section: SectionText | None
    beats: tuple[Fraction, ...]
    begin: int
    end: int

    def on(self, beats: tuple[Fraction, ...]) -> _Meant:
        """The counts it names as beats of the part: of the section it stands in, or running."""
        section = self.section
        running = section is None or beats[0] > section.counts
        shift = Fraction(0) if running or section is None else section.base - 1
        return replace(self, beats=tuple(beat + shift for beat in beats))


def _meant(reading: Reading, remark: Remark, head: str) -> _Meant | None:
    """What an option stands for by its head ("for counts 9-12 of part A"), else by where it stands."""
    in_part, in_section, counts = _OF_PART.search(head), _OF_SECTION.search(head), _FOR_COUNTS.search(head)
    if counts is None and in_section is not None:
        counts = _BARE_COUNTS.match(head, in_section.end())
    named = [told.span() for told in (in_part, in_section, counts) if told is not None]
    mark = leading_mark(counts[1]) if counts is not None else None
    part = reading.parts.get((in_part["part"] or in_part["letter"]).upper() if in_part else remark.part)
    if part is not None and part.text.extra and mark is not None and mark.last > part.text.counts:
        part = reading.main  # told below a tag that has no such counts
    headed = part is not None and any(s.heading is remark.line for s in part.text.sections)
    if part is None or (remark.group is None and not headed):
        return None
    section, beats = _stands_at(part, remark)
    number = number_of(in_section["number"] or in_section["nth"]) if in_section else None
    if number is not None:
        section = next((s for s in part.text.sections if s.number == number), None)
        if section is None:
            return None
        beats = _beats_of(section)
    elif in_part is not None:
        section = None  # its counts run through the part
    begin, end = min(named, default=(0, 0))[0], max((end for _, end in named), default=0)
    meant = _Meant(part, section, beats, begin, end)
    return meant.on(mark.beats) if mark is not None else meant


def _stands_at(part: PartReading, remark: Remark) -> tuple[SectionText | None, tuple[Fraction, ...]]:
    """The section in whose heading or behind whose steps a remark stands, and the beats it stands for."""
    sections, group = part.text.sections, remark.group
    headed = next((section for section in sections if section.heading is remark.line), None)
    if headed is not None and not headed.from_heading:
        return headed, _beats_of(headed)
    behind = next((section for section in sections if any(g is group for g in section.groups)), None)
    return behind, group.beats if behind is not None and group is not None else ()


def _beats_of(section: SectionText) -> tuple[Fraction, ...]:
    return tuple(section.base + i for i in range(int(section.counts)))


# -- as read -----------------------------------------------------------------------------------


def _read(told: _Told) -> OptionReading | None:
    for layouts in (on_beats(told.words, told.beats), in_time(told.words, told.beats[0], told.counts)):
        if layouts and layouts[0].moves and layouts[0].cost <= _READS_WELL:
            return _danced(told, layouts)
    counts = natural_counts(told.words)
    if counts is None or counts == told.counts:
        return None
    return OptionReading(told.option(()), told.span, None, counts, told.counts)


def _danced(told: _Told, layouts: tuple[Layout, ...]) -> OptionReading | None:
    """The option begun as the steps it stands for begin, and meant to end as they end."""
    first, last = told.beats[0], told.beats[-1]
    events = told.part.solution.events
    after = bisect_left(events, last // 1 + 1, key=attrgetter("at"))
    if not after or events[after - 1].at < first:
        return None
    end = events[after - 1]
    goal = inside_goal(told.part, first, end_weight=end.weight, loops=2.0, ends={end.facing: 0.0})
    solution = solve([few(layouts)], goal)
    option = told.option(tuple(step_of(event) for event in solution.events))
    counts = layouts[0].moves[-1][0] // 1 - first // 1 + 1 + layouts[0].over
    return OptionReading(option, told.span, solution, counts, told.counts)


def natural_counts(text: str) -> Fraction | None:
    """How many counts a piece of text lasts of itself; None where it reads well at no length."""
    lengths = [Fraction(n) for n in range(1, _LONGEST + 1)]
    found = [(rows[0].cost, counts) for counts in lengths if (rows := in_time(text, Fraction(1), counts))]
    cost, counts = min(found, default=(_SURE_LENGTH, Fraction(0)))
    return counts if cost < _SURE_LENGTH else None
