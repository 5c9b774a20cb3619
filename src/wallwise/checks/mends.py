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

from wallwise.checks.edits import Edit
from wallwise.checks.likely import FLOATING, Candidate, candidates, cost_of
from wallwise.dance.finding import Finding
from wallwise.reading import NotASheet, Reading, read

MOST_TRIES = 260
BUDGET_SEC = 2.5  # processor time
# What the longest sheets seen hardly reach, in characters and lines: a longer text gets less time.
USUAL, USUAL_LINES = 8_000, 120
MOST_LOUD = 100  # what is at odds with itself so often, no one small change sets right
MOST_MENDS = 5
_MUCH_WORSE = 5.0  # what reads so much dearer than before cannot be the mend: this saves looking closer
_FAR_LESS_LIKELY = 0.8  # in price, than a mend found already: nothing that follows is worth trying

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
    if slip is not None and finding.section is None and finding.rule in FLOATING:
        # The contradiction is the whole sheet's; the place to look is where the likeliest slip is.
        return replace(mended, section=slip.section.number, part=edits[0].part)
    return mended


def _search(reading: Reading, loud: Sequence[Finding], find: Finder) -> list[_Try]:
    """The edits after which less is loud, those after which nothing is first."""
    tries: list[_Try] = []
    best = math.inf
    start = thread_time()
    usual = len(reading.text) <= USUAL and reading.text.count("\n") <= USUAL_LINES
    budget_sec = BUDGET_SEC if usual else BUDGET_SEC / 4
    stop = start + budget_sec
    foretold = candidates(reading, loud, until_sec=start + budget_sec / 2)
    for candidate in foretold[:MOST_TRIES]:
        if thread_time() > stop or candidate.foretold > best + _FAR_LESS_LIKELY:
            break
        tried = _tried(reading, candidate, loud=loud, find=find)
        if tried is not None:
            tries.append(tried)
            best = best if tried.left else min(best, tried.price)
    return sorted(tries, key=lambda t: (t.left, t.price))


def _tried(reading: Reading, candidate: Candidate, *, loud: Sequence[Finding], find: Finder) -> _Try | None:
    """The edit made and the sheet read again; None where that helps nothing."""
    edit = candidate.edit
    try:
        after = read(edit.mend.apply(reading.text))
    except NotASheet:
        return None
    cost = cost_of(after)
    if cost > cost_of(reading) + _MUCH_WORSE:
        return None
    left = list(islice((f for f in find(after) if f.loud), len(loud)))
    if len(left) >= len(loud):
        return None
    return _Try(
        edit, candidate.price(cost), len(left), frozenset(map(_key, loud)) - frozenset(map(_key, left))
    )


def _key(finding: Finding) -> str:
    place = finding.message if finding.section is None else f"{finding.section} {finding.count}"
    return f"{finding.rule} {finding.part} {place}"
