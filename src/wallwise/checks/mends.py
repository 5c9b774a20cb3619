"""The search for mends: the one small change after which everything agrees.

Every edit is tried on the sheet's text, which is then read and checked anew; what leaves
nothing to settle is a mend.  The likeliest comes first: a small slip, near the finding,
whose result is the plainest reading.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import islice
from time import thread_time

from wallwise.checks.edits import Edit, edits_of
from wallwise.dance.finding import Finding
from wallwise.dance.model import Span
from wallwise.reading import NotASheet, Reading, read
from wallwise.reading.record import PartReading

MOST_TRIES = 260
BUDGET_SEC = 2.5  # processor time; only a sheet out of all proportion meets it before the tries are up
MOST_LOUD = 100  # what is at odds with itself so often, no one small change sets right
MOST_EDITS = 4_000  # a sheet of 100 counts allows some 700
MOST_MENDS = 5
_MUCH_WORSE = 5.0  # what reads so much dearer than before cannot be the mend: this saves looking closer
_FAR_LESS_LIKELY = 1.2  # in surprise, than a mend found already: nothing that follows is worth trying

# The slip behind these may be in any section.
_FLOATING = frozenset(
    {"walls-differ", "ends-on-wrong-foot", "facing-differs", "total-counts", "restart-facing", "restart-foot"}
)
# These are about what is told of the steps; the steps may well agree among themselves.
_TOLD = frozenset(
    {
        "unknown-part",
        "restart-facing",
        "restart-foot",
        "restart-unclear",
        "restart-inside-figure",
        "total-counts",
        "option-ends-elsewhere",
        "option-counts",
        "heading-differs",
    }
)

Finder = Callable[[Reading], Iterator[Finding]]


@dataclass(frozen=True, slots=True)
class _Try:
    """An edit tried: how dear it is (less is likelier), how many findings it left, and which are gone."""

    edit: Edit
    price: float
    left: int
    gone: frozenset[str]


def with_mends(reading: Reading, findings: tuple[Finding, ...], find: Finder) -> tuple[Finding, ...]:
    """The findings, each loud one with the mends that help it; as they are where too many are loud."""
    loud = [f for f in findings if f.loud]
    if not 0 < len(loud) <= MOST_LOUD:
        return findings
    tries = _search(reading, loud, find)
    return tuple(_mended(f, tries) if f.loud else f for f in findings)


def _mended(finding: Finding, tries: Sequence[_Try]) -> Finding:
    """The finding with the edits that leave nothing, or where there are none, with those that settle it."""
    whole = [t.edit for t in tries if not t.left]
    partial = [t.edit for t in [t for t in tries if t.left][: 4 * MOST_MENDS] if _key(finding) in t.gone]
    edits = (whole or partial)[:MOST_MENDS]
    if not edits:
        return finding
    mended = replace(finding, mends=tuple(edit.mend for edit in edits))
    slip = edits[0].passage
    if slip is not None and finding.section is None and finding.rule in _FLOATING:
        # The contradiction is the whole sheet's; the place to look is where the likeliest slip is.
        return replace(mended, section=slip.section.number, part=edits[0].part)
    return mended


# -- trying -----------------------------------------------------------------------------------


def _search(reading: Reading, loud: Sequence[Finding], find: Finder) -> list[_Try]:
    """The edits after which less is loud, those after which nothing is first."""
    tries: list[_Try] = []
    best = math.inf
    stop = thread_time() + BUDGET_SEC
    for surprise, edit in _ordered(reading, loud)[:MOST_TRIES]:
        if thread_time() > stop or surprise > best + _FAR_LESS_LIKELY:
            break
        tried = _tried(reading, edit, surprise, loud=loud, find=find)
        if tried is not None:
            tries.append(tried)
            best = best if tried.left else min(best, tried.price)
    return sorted(tries, key=lambda t: (t.left, t.price))


def _tried(
    reading: Reading, edit: Edit, surprise: float, *, loud: Sequence[Finding], find: Finder
) -> _Try | None:
    """The edit made and the sheet read again; None where that helps nothing."""
    try:
        after = read(edit.mend.apply(reading.text))
    except NotASheet:
        return None
    before, cost = _cost(reading), _cost(after)
    if cost > before + _MUCH_WORSE:
        return None
    left = list(islice((f for f in find(after) if f.loud), len(loud)))
    if len(left) >= len(loud):
        return None
    price = surprise + 0.25 * max(cost - min(before, 2.0), 0.0)
    return _Try(edit, price, len(left), frozenset(map(_key, loud)) - frozenset(map(_key, left)))


def _cost(reading: Reading) -> float:
    return sum(part.solution.cost for part in reading.parts.values())


def _key(finding: Finding) -> str:
    return f"{finding.rule} {finding.part} {finding.section} {finding.count}"


# -- the order of trying ----------------------------------------------------------------------


def _ordered(reading: Reading, loud: Sequence[Finding]) -> list[tuple[float, Edit]]:
    """The edits by surprise, those far from any finding later: what is far off is seldom to blame."""
    order = {id(p): n for part in reading.parts.values() for n, p in enumerate(part.passages)}
    places = {name: _places(part, loud) for name, part in reading.parts.items()}
    told_only = all(f.rule in _TOLD for f in loud)
    floating = any(f.section is None or f.rule in _FLOATING for f in loud)
    rows = []
    for edit in islice(edits_of(reading), MOST_EDITS):
        surprise = edit.surprise
        touched = any(_begins_in(edit.mend.span, f.span) for f in loud)
        if edit.passage is None:
            surprise -= 0.7 if touched else 0.0
        else:
            near = places[edit.part]
            if near:
                surprise += 0.06 * min(12, *(abs(order[id(edit.passage)] - place) for place in near))
            elif not floating:
                surprise += 1.5
            if touched:
                surprise -= 0.15
            elif told_only:
                surprise += 0.5
        rows.append((surprise, edit))
    return sorted(rows, key=lambda row: row[0])


def _places(part: PartReading, loud: Sequence[Finding]) -> list[int]:
    """The passages of the part that findings stand in."""
    mine = [f for f in loud if f.part == part.text.name and f.section is not None]
    return [place for f in mine if (place := _place(part, f)) is not None]


def _place(part: PartReading, finding: Finding) -> int | None:
    """The passage that a finding stands in, or the first of its section."""
    for n, passage in enumerate(part.passages):
        line = passage.group.line
        if _begins_in(finding.span, line.span(0, len(line.text))):
            return n
    return next((n for n, p in enumerate(part.passages) if p.section.number == finding.section), None)


def _begins_in(span: Span, whole: Span) -> bool:
    return whole.start <= span.start < max(whole.end, whole.start + 1)
