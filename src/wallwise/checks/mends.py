"""The search for mends: the one small change after which everything agrees.

Every edit is tried on the sheet's text, which is then read and checked anew; what leaves
nothing to settle is a mend.  The likeliest comes first: a small slip, near the finding,
whose result is the plainest reading.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import replace
from itertools import islice
from time import perf_counter

from wallwise.checks.edits import Edit, edits_of
from wallwise.dance.finding import Finding, Mend
from wallwise.reading import NotASheet, Reading, read

MOST_TRIES = 260
BUDGET_SEC = 2.5  # only a sheet out of all proportion meets it before the tries are up
MOST_MENDS = 5
_FLOATING = frozenset(
    {"walls-differ", "ends-on-wrong-foot", "facing-differs", "total-counts", "restart-facing", "restart-foot"}
)

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


def with_mends(reading: Reading, findings: tuple[Finding, ...], find: Finder) -> tuple[Finding, ...]:
    """The findings, each loud one with the mends that help it; the same findings where there is nothing loud."""
    loud = [f for f in findings if f.loud]
    if not loud:
        return findings
    whole, partial = _search(reading, loud, find)
    return tuple(_mended(f, whole, partial, reading) if f.loud else f for f in findings)


def _search(
    reading: Reading, loud: list[Finding], find: Finder
) -> tuple[list[Edit], list[tuple[Edit, frozenset[str]]]]:
    """Edits after which nothing is loud, best first; and those after which some findings are gone."""
    whole: list[tuple[float, Edit]] = []
    partial: list[tuple[int, float, Edit, frozenset[str]]] = []
    base = min(_cost(reading), 2.0)
    stop = perf_counter() + BUDGET_SEC
    for surprise, edit in _ordered(reading, loud)[:MOST_TRIES]:
        if perf_counter() > stop or (whole and surprise > min(s for s, _ in whole) + 1.2):
            break
        try:
            after = read(edit.mend.apply(reading.text))
        except NotASheet:
            continue
        # What clashes worse than before cannot be the mend: this saves looking closer.
        if _cost(after) > _cost(reading) + 5.0:
            continue
        left = list(islice((f for f in find(after) if f.loud), len(loud)))
        worth = surprise + 0.25 * max(_cost(after) - base, 0.0)
        if not left:
            whole.append((worth, edit))
        elif len(left) < len(loud):
            gone = frozenset(_key(f) for f in loud) - {_key(f) for f in left}
            partial.append((len(left), worth, edit, gone))
    whole.sort(key=lambda row: row[0])
    partial.sort(key=lambda row: row[:2])
    return [e for _, e in whole[:MOST_MENDS]], [(e, gone) for _, _, e, gone in partial[: 4 * MOST_MENDS]]


def _cost(reading: Reading) -> float:
    return sum(p.solution.cost for p in reading.parts.values())


def _key(finding: Finding) -> str:
    return f"{finding.rule} {finding.part} {finding.section} {finding.count}"


def _ordered(reading: Reading, loud: list[Finding]) -> list[tuple[float, Edit]]:
    """The edits by surprise, those far from any finding later: what is far off is seldom to blame."""
    order = {id(p): n for part in reading.parts.values() for n, p in enumerate(part.passages)}
    places = {
        name: [_index(part, f) for f in loud if f.part == name and f.section is not None]
        for name, part in reading.parts.items()
    }
    told_only = all(f.rule in _TOLD for f in loud)
    floating = any(f.section is None or f.rule in _FLOATING for f in loud)
    rows = []
    for edit in edits_of(reading):
        surprise = edit.surprise
        if edit.passage is not None:
            near = [p for p in places.get(edit.part, []) if p is not None]
            if near:
                surprise += 0.06 * min(min(abs(order[id(edit.passage)] - p) for p in near), 12)
            elif not floating:
                surprise += 1.5
        if any(f.span.start <= edit.mend.span.start < max(f.span.end, f.span.start + 1) for f in loud):
            surprise -= 0.15 if edit.passage is not None else 0.7
        elif told_only and edit.passage is not None:
            surprise += 0.5  # the steps agree among themselves
        rows.append((surprise, edit))
    rows.sort(key=lambda row: row[0])
    return rows


def _index(part, finding: Finding) -> int | None:  # type: ignore[no-untyped-def]
    """The passage a finding stands in."""
    for n, passage in enumerate(part.passages):
        whole = passage.group.line.span(0, len(passage.group.line.text))
        if whole.start <= finding.span.start < max(whole.end, whole.start + 1):
            return n
    return next((n for n, p in enumerate(part.passages) if p.section.number == finding.section), None)


def _mended(
    finding: Finding, whole: list[Edit], partial: list[tuple[Edit, frozenset[str]]], reading: Reading
) -> Finding:
    edits = whole or [e for e, gone in partial if _key(finding) in gone][:MOST_MENDS]
    if not edits:
        return finding
    mends: tuple[Mend, ...] = tuple(e.mend for e in edits)
    first = edits[0]
    if finding.section is None and first.passage is not None and finding.rule in _FLOATING:
        # The contradiction is the whole sheet's; the place to look is where the likeliest slip is.
        return replace(finding, mends=mends, section=first.passage.section.number, part=first.part)
    return replace(finding, mends=mends)
