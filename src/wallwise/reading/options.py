"""Easier ways told beside the steps, read for the counts they stand for."""

from __future__ import annotations

import re
from bisect import bisect_right
from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from operator import attrgetter

from wallwise.dance.model import Option, Span, Step
from wallwise.reading.goals import inside_goal
from wallwise.reading.layout import Layout
from wallwise.reading.marks import leading_mark
from wallwise.reading.outline import Group, Remark
from wallwise.reading.pieces import few, in_time, items_in, on_beats
from wallwise.reading.record import OptionReading, PartReading, Reading
from wallwise.reading.solve import solve
from wallwise.reading.steps import step_of

_OPTION = re.compile(
    r"\b(?:(?:an?\s+)?(?:easy|easier|non[- ]turning|no[- ]turn|simple|simpler|alternative|alternate|beginner)"
    r"\s*(?:option|version|way|alternative|variation|step)?s?|options?|or)\b\s*(?P<rest>[^\])]*)",
    re.IGNORECASE,
)
_NO_OPTION = re.compile(r"\brestart|^\W*(?:tag|bridge)\b", re.IGNORECASE)
_FOR_COUNTS = re.compile(
    r"(?:(?:for|on|of|in place of|instead of|to|replac\w+)\s*(?:the\s+)?(?:counts?\s*)?|\bcounts?\s*)"
    r"(?:\([^)]*\)\s*)?(\d{1,3}(?:\s*[-&,]\s*\d{1,3})*)(?!\s*(?:walls?|turns?|/))",
    re.IGNORECASE,
)
_LEAD_IN = re.compile(r"^\W*(?:is|are|to|-|=|:|replace (?:with|by)|just|simply)?\s*")
_NO_TURN = re.compile(r"[,;(]?\s*\b(?:with\s+)?(?:no|without(?: the)?)\s+turn(?:s|ing)?\b\)?", re.IGNORECASE)
_READS_WELL = 1.9  # dearer, and the words do not fit the counts they stand for
_SURE_LENGTH = 1.0  # dearer, and no length fits them
_LONGEST = 16  # counts


def options_of(reading: Reading) -> list[OptionReading]:
    """The options told, one at most for each remark that stands beside steps."""
    found = []
    for remark in reading.outline.remarks:
        if remark.group is not None and not _NO_OPTION.search(remark.text):
            option = next(_options_in(reading, remark, remark.group), None)
            if option is not None:
                found.append(option)
    return found


def _options_in(reading: Reading, remark: Remark, group: Group) -> Iterator[OptionReading]:
    part = reading.parts.get(remark.part)
    if part is None:
        return
    for found in _OPTION.finditer(remark.line.text, remark.start, remark.end):
        told = _told(part, remark, group, found=found)
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
        label = f"{begin}-{end // 1}" if len(self.beats) > 1 else str(begin)
        return Option(section.number, label, first, last, steps, self.part.text.name, self.span)


def _told(part: PartReading, remark: Remark, group: Group, *, found: re.Match[str]) -> _Told | None:
    """What an option's words are, and for which beats; None where they tell no steps."""
    line, start, beats = remark.line.text, found.start("rest"), group.beats
    named = _FOR_COUNTS.search(found["rest"])
    mark = leading_mark(named[1]) if named is not None else None
    if named is not None and mark is not None:
        beats = _beats_named(part, group, mark.beats)
        start += named.end()
    colon = line.find(":", found.start(), found.end())
    if colon >= start - 1:
        start = colon + 1
    words = _NO_TURN.sub("", _LEAD_IN.sub("", line[start : found.end("rest")]))
    items, acts = items_in(words)
    if not beats or not any(item.options for item in items) or not any(a.verb or a.figures for a in acts):
        return None
    return _Told(part, words, beats, remark.line.span(found.start(), found.end("rest")))


def _beats_named(part: PartReading, group: Group, beats: tuple[Fraction, ...]) -> tuple[Fraction, ...]:
    """The counts an option names, as beats of the part: of the section it stands in, or running."""
    section = next((s for s in part.text.sections if group in s.groups), None)
    running = section is None or beats[0] > section.counts
    shift = Fraction(0) if running or section is None else section.base - 1
    return tuple(beat + shift for beat in beats)


# -- as read -----------------------------------------------------------------------------------


def _read(told: _Told) -> OptionReading | None:
    layouts = on_beats(told.words, told.beats)
    if layouts and layouts[0].moves and layouts[0].cost <= _READS_WELL:
        return _danced(told, layouts)
    counts = _natural_counts(told.words)
    if counts is None or counts == told.counts:
        return None
    return OptionReading(told.option(()), told.span, None, counts, told.counts)


def _danced(told: _Told, layouts: tuple[Layout, ...]) -> OptionReading | None:
    """The option begun as the steps it stands for begin, and meant to end as they end."""
    first, last = told.beats[0], told.beats[-1]
    events = told.part.solution.events
    after = bisect_right(events, last + Fraction(3, 4), key=attrgetter("at"))
    if not after or events[after - 1].at < first:
        return None
    end = events[after - 1]
    goal = inside_goal(told.part, first, end_weight=end.weight, loops=2.0, ends={end.facing: 0.0})
    solution = solve([few(layouts)], goal)
    option = told.option(tuple(step_of(event) for event in solution.events))
    counts = layouts[0].moves[-1][0] // 1 - first // 1 + 1 + layouts[0].over
    return OptionReading(option, told.span, solution, counts, told.counts)


def _natural_counts(text: str) -> Fraction | None:
    """How many counts a piece of text lasts of itself; None where it reads well at no length."""
    lengths = [Fraction(n) for n in range(1, _LONGEST + 1)]
    found = [(rows[0].cost, counts) for counts in lengths if (rows := in_time(text, Fraction(1), counts))]
    cost, counts = min(found, default=(_SURE_LENGTH, Fraction(0)))
    return counts if cost < _SURE_LENGTH else None
