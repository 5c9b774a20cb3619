"""Restarts: on which wall, after how many counts, facing where, and with which step change."""

import re
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise
from typing import NamedTuple

from wallwise.dance.model import Span
from wallwise.reading.changes import change_at, changed_to, says_it_changes, steps_behind_colon
from wallwise.reading.cuts import left_out
from wallwise.reading.naming import Named
from wallwise.reading.outline import PartText, Remark, SectionText
from wallwise.reading.stops import Stop, section_at, stops_in
from wallwise.reading.wording import RESTART

_HERE = re.compile(r"\bhere\b|\bat this point\b|\brestart point\b", re.IGNORECASE)
_ONLY_SAID = re.compile(rf"\W*{RESTART}\W*$", re.IGNORECASE)  # behind the steps: "... (12:00) *Restart"
_OF_TAG = re.compile(r"\W*(?:count\s+)?(?:tag|bridge)", re.IGNORECASE)
_IN = re.compile(r"\s+in\s*(?:[,;.|/)]|$)", re.IGNORECASE)  # "16 counts in, …": before the dance begins
_IN_OTHER_WORDS = re.compile(
    r"[\s,(=-]*(?:(?:that\s+is|i\.?e\.?|or|after|at|the|end\s+of)\s+)*", re.IGNORECASE
)

_AFTER = re.compile(r"\b(?:after|end\s+of|following)\s+(?:the\s+)?$", re.IGNORECASE)
_EIGHT = 8  # past it a count is one of the whole dance

NOWHERE = Span(0, 0)
"""The place of an order that no words of the sheet tell."""


class Claimed(NamedTuple):
    """A facing that is told of a restart or a tag, in 1/48 of a turn, and its place in the sheet."""

    facing: int
    span: Span


_Counts = tuple[Fraction, Stop]


@dataclass(slots=True)
class RestartOrder:
    """A restart as told: the wall, the counts before it (None: not told), the facings told (1/48 turn).

    Of two facings told one can be where the wall starts.  `change` is the remark that tells its step change.
    """

    wall: int
    after: Fraction | None
    claims: tuple[Claimed, ...] = ()
    span: Span = NOWHERE
    after_span: Span | None = None
    change: Remark | None = None
    changing: tuple[int, ...] = ()  # walls, this among them, on one or more of which steps are said to change
    otherwise: Fraction | None = None  # counts that the same words tell as well


def restarts_told(named: Named, main: PartText | None, *, more: bool) -> list[RestartOrder]:
    """The restarts that a stretch orders, one for each wall it names.

    `more`: it only goes on with what the stretch before it told of these walls.
    """
    counts = _counts_told(named, main)
    here = _here(named, main, counted=more or bool(counts))
    cut = left_out(named.text, main)
    changed = changed_to(named.text)
    change = named.remark if changed.words else None
    if (
        here is None
        and not (counts or more)
        and changed.counts is not None
        and changed.counts.last // 1 > _EIGHT
    ):
        here = Fraction(changed.counts.last // 1)  # "replace counts 15-16 with …"
    changing = _changing(named)
    orders = []
    for i, (wall, at) in enumerate(named.walls):
        if _only_leads_in(named, wall, at):
            continue
        order = RestartOrder(wall, here, span=named.span, change=change)
        order.changing = changing if wall in changing else ()
        if here is None and counts:
            order.after, told = _nearest(counts, i, walls=len(named.walls), at=at)
            order.after_span = named.remark.line.span(told.start, told.end)
        order.otherwise = _otherwise(named, main, order.after)
        if cut is not None:
            place = named.remark.start
            danced = [value for value, told in counts if told.is_danced]
            order.otherwise = next((value for value in danced if value != cut.after), None)
            order.after = cut.after
            order.after_span = named.remark.line.span(place + cut.start, place + cut.end)
        order.claims = tuple(Claimed(*told) for told in named.faced_on(i))
        orders.append(order)
    return orders


def _only_leads_in(named: Named, wall: int, at: int) -> bool:
    """Whether a wall only tells which comes next: "after wall 2, on the next wall (wall 3)"."""
    behind = _AFTER.search(named.remark.line.text, 0, at)
    return behind is not None and any(other == wall + 1 for other, _ in named.walls)


def _otherwise(named: Named, main: PartText | None, after: Fraction | None) -> Fraction | None:
    """Counts other than `after` that a stretch tells of the same restart, or stands behind; else None."""
    told = _told_alike(named, main, after)
    if after is None or main is None or not told:
        return None
    here = beat_here(named.remark, main)
    section = section_at(main, here) if here is not None and here < main.counts else None
    if section is None:
        return next((value for value, _ in told if value != after), None)
    start = section.base - 1  # from there "count 8" can be counted
    others = [value for value, stop in told if after not in (value, start + value if stop.is_nth else value)]
    return next(iter(others), None if _tells_of_section(named, main, section) else here)


def _tells_of_section(named: Named, main: PartText, section: SectionText) -> bool:
    """Whether the line of a stretch tells an end of a wall that is in a section."""
    text, start = named.remark.line.text, section.base - 1
    told = [(stop, stop.counts(main)) for stop in stops_in(text, 0, len(text))]
    return any(
        value is not None
        and (start < value <= start + section.counts or (stop.is_nth and value <= section.counts))
        for stop, value in told
    )


def _told_alike(named: Named, main: PartText | None, after: Fraction | None) -> list[_Counts]:
    """All that a stretch tells as the end of one and the same wall.

    What explains it is told of it too: "after section 2 (24 counts)"; what is told elsewhere in the
    stretch, only where it is of one wall.
    """
    counts = _ends_told(named, main)
    exact = [told for told in counts if told[1].is_exact] or counts
    one = exact if len(named.walls) == 1 else []
    pairs = [pair for pair in pairwise(counts) if _explains(named, *pair)]
    return [*one, *(told for pair in pairs if any(value == after for value, _ in pair) for told in pair)]


def _explains(named: Named, told: _Counts, other: _Counts) -> bool:
    """Whether counts told behind others only say these in other words."""
    between = _IN_OTHER_WORDS.fullmatch(named.remark.line.text, told[1].end, other[1].start)
    return between is not None and not other[1].is_of_wall


def _changing(named: Named) -> tuple[int, ...]:
    """The walls of which a step change is told: those named last before it, else all that are named."""
    told = says_it_changes(named.text)
    if told is None and named.kind == "restart":
        told = steps_behind_colon(named.text)
    if told is None:
        return ()
    before = [at for _, at in named.walls if at <= named.remark.start + told]
    return tuple(wall for wall, at in named.walls if not before or at == before[-1])


def beat_here(remark: Remark, main: PartText | None) -> Fraction | None:
    """The count of the main part that a remark stands behind; None where it stands behind none.

    What runs over the end of its section ("8&1") is cut at the end: its last step is the dance's own first.
    """
    group = remark.group
    section = next((s for s in main.sections if any(g is group for g in s.groups)), None) if main else None
    if group is None or section is None:
        return None
    end = section.base + section.counts - 1
    if not group.beats:
        return end if group is section.groups[-1] else None
    return min(Fraction(group.beats[-1] // 1), end)


def place_told(named: Named, main: PartText | None) -> Fraction | None:
    """The counts after which a stretch that names no wall restarts; None where it tells none, or several."""
    counts = _counts_told(named, main)
    is_here = _HERE.search(named.text) or _ONLY_SAID.match(named.text)
    here = _here(named, main, counted=bool(counts)) if is_here else None
    return here if here is not None or len(counts) != 1 else counts[0][0]


def _counts_told(named: Named, main: PartText | None) -> list[_Counts]:
    """The counts at which the restarts can be meant, with their places."""
    counts = _ends_told(named, main)
    exact = [(value, told) for value, told in counts if told.is_exact]
    if change_at(named.text) is not None:
        return exact
    several = named.kind == "restart" and len(counts) == len(named.walls) > len(
        exact
    )  # "after 16 counts on wall 2, 24 counts on wall 5"
    return counts if several else exact or counts


def _ends_told(named: Named, main: PartText | None) -> list[_Counts]:
    """All counts told that can be where a wall ends, with their places."""
    fewest = 4 if main is not None and main.counts > 16 else 1
    text = named.remark.line.text
    first = named.remark.end - len(named.text.lstrip(" (*-"))
    words = changed_to(named.text).words
    begin = named.remark.start + max(0, named.text.find(words))
    counts = [
        (value, told)
        for told in named.counts
        if (value := _value(named.remark, told, main)) is not None
        and value >= fewest
        and (told.is_exact or main is None or value != main.counts)
        and not (named.kind == "both" and _OF_TAG.match(text, told.end))
        and not (told.start <= first and _IN.match(text, told.end))
        and not (words and told.at == begin)  # "do 7 touch R, 8 …"
    ]
    change = change_at(named.text)
    if change is None:
        # "counts 13-16 are: walk R, L, R, L": these are danced
        return [told for told in counts if told[1].is_exact] if words else counts
    # "dance 24 counts but change counts 7-8 to": what is changed is no place to restart at
    exact = [(value, told) for value, told in counts if told.is_exact]
    change_begins = named.remark.start + change
    before = [(value, told) for value, told in exact if told.start < change_begins or told.is_danced]
    # Where no other place is told it is that of the last step that is changed: "change 8 of section 2".
    return before or [(value, told) for value, told in exact if told.is_in_section]


def _value(remark: Remark, told: Stop, main: PartText | None) -> Fraction | None:
    """The counts that are meant; a place told in the middle of the dance is one of the section there.

    "Dance up to 8& and restart", told behind the second eight, restarts after 16 counts.
    """
    value = told.counts(main)
    here = beat_here(remark, main)
    section = section_at(main, here) if main is not None and here is not None and here < main.counts else None
    if value is None or section is None or not told.is_place or not 1 < value <= section.counts:
        return value  # count 1 is where the dance begins again
    counts_anew = section.groups[0].written is None or section.groups[0].written.first < section.base
    return section.base - 1 + value if counts_anew else value


def _here(named: Named, main: PartText | None, *, counted: bool) -> Fraction | None:
    """The beat the stretch stands behind, where it says "here" or counts nothing."""
    if counted and not _HERE.search(named.text):
        return None
    here = beat_here(named.remark, main)
    past_end = here is not None and main is not None and here >= main.counts
    return None if past_end and not counted else here


def _nearest(counts: list[_Counts], i: int, *, walls: int, at: int) -> _Counts:
    """The counts told of the i-th wall, which is named at `at`."""
    if len(counts) == walls:
        return counts[i]
    return min(counts, key=lambda told: abs(told[1].start - at))
