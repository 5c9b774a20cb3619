"""Which edits are worth trying, and in which order.

What an edit would cost is made up of two surprises: that of the slip itself, and that of the
reading the sheet would then have, as far as the search for a reading can foretell it.
"""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Iterator, Sequence
from itertools import islice
from time import thread_time
from typing import NamedTuple

from wallwise.checks.edits import Edit, edits_of
from wallwise.dance.finding import Finding
from wallwise.dance.model import Span
from wallwise.reading import Reading
from wallwise.reading.forecast import Forecast
from wallwise.reading.record import PartReading, Passage
from wallwise.reading.tidy import tidy

MOST_EDITS = 4_000  # a sheet of 100 counts allows some 700
_MOST_MOVES = 2_000  # in all layouts of a sheet; teachers' sheets have some 60, long ones 400
_MUCH_WORSE = 5.0  # what reads so much dearer than before cannot be the mend
_OF_READING = 0.25  # how much the surprise of the reading weighs beside that of the slip
_PLAIN = 2.0  # a whole sheet that reads no dearer reads well

# The slip behind these may be in any section.
FLOATING = frozenset(
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
# These no other word in a line settles: a line is lost, too many, or under the wrong mark.
_OF_LINES = frozenset({"count-missing", "count-doubled", "section-length"})
_NO_WORD = 0.6


class Candidate(NamedTuple):
    """An edit with the surprise of the slip, what the sheet would then cost (None: not foretold),
    and what it costs where it reads plainly.
    """

    edit: Edit
    surprise: float
    cost: float | None
    plain: float

    @property
    def foretold(self) -> float:
        """The price as far as it can be foretold: never more than it will be, where it cannot."""
        return self.surprise if self.cost is None else self.price(self.cost)

    def price(self, cost: float) -> float:
        """The surprise of the slip and of the reading that it leaves, in one; less is likelier."""
        return self.surprise + _OF_READING * max(cost - self.plain, 0.0)


def candidates(reading: Reading, loud: Sequence[Finding], *, until_sec: float) -> list[Candidate]:
    """The edits that may help, the likeliest first; after that processor time nothing more is foretold."""
    weighed = sorted(_weighed(reading, loud), key=lambda row: row[1])
    forecasts = _Forecasts(reading) if _moves_in(reading) <= _MOST_MOVES else None
    before = cost_of(reading)
    rows = []
    for edit, surprise in weighed:
        cost = forecasts.cost(edit) if forecasts is not None and thread_time() < until_sec else None
        if cost is None or cost <= before + _MUCH_WORSE:
            rows.append((edit, surprise, cost))
    # A sheet may read dearly for other reasons, before its slip and after.
    least = min((cost for _, _, cost in rows if cost is not None), default=0.0)
    plain = min(before, max(least, _PLAIN))
    return sorted((Candidate(*row, plain) for row in rows), key=lambda candidate: candidate.foretold)


def cost_of(reading: Reading) -> float:
    """What the reading of all parts costs."""
    return sum(part.solution.cost for part in reading.parts.values())


def _moves_in(reading: Reading) -> int:
    passages = [passage for part in reading.parts.values() for passage in part.passages]
    return sum(len(layout.moves) for passage in passages for layout in passage.layouts)


# -- the reading foretold ---------------------------------------------------------------------


class _Forecasts:
    """What the sheet would cost with an edit made, where the edit stays inside one passage."""

    def __init__(self, reading: Reading) -> None:
        self.before = cost_of(reading)
        self._parts = {name: Forecast(part) for name, part in reading.parts.items()}
        self._places = {
            id(passage): n for part in reading.parts.values() for n, passage in enumerate(part.passages)
        }
        self._as_is: dict[int, float] = {}

    def cost(self, edit: Edit) -> float | None:
        """What all parts would cost together; None where it cannot be foretold."""
        passage = edit.passage
        words = _words_after(passage, edit) if passage is not None else None
        if passage is None or words is None:
            return None
        forecast, place = self._parts[edit.part], self._places[id(passage)]
        cost = forecast.cost(place, words)
        if cost is None:
            return None
        if id(passage) not in self._as_is:
            self._as_is[id(passage)] = forecast.cost(place, passage.group.text) or 0.0
        return self.before + cost - self._as_is[id(passage)]


def _words_after(passage: Passage, edit: Edit) -> str | None:
    """The words of the passage with the edit made; None where that reaches beyond them."""
    group, span = passage.group, edit.mend.span
    starts = group.line.starts
    first, last = bisect_left(starts, span.start), bisect_left(starts, span.end)
    if not group.start <= first <= last <= group.end or first == last:
        return None
    told = " ".join(line.text for line in tidy(edit.mend.replace))
    return group.line.text[group.start : first] + told + group.line.text[last : group.end]


# -- where the findings point -----------------------------------------------------------------


def _weighed(reading: Reading, loud: Sequence[Finding]) -> Iterator[tuple[Edit, float]]:
    """The edits with their surprise; what is far from any finding is seldom to blame."""
    order = {id(p): n for part in reading.parts.values() for n, p in enumerate(part.passages)}
    places = {name: _places(part, loud) for name, part in reading.parts.items()}
    told_only = all(f.rule in _TOLD for f in loud)
    of_lines = any(f.rule in _OF_LINES for f in loud)
    floating = any(f.section is None or f.rule in FLOATING for f in loud)
    for edit in islice(edits_of(reading), MOST_EDITS):
        surprise = edit.surprise
        touched = any(_begins_in(edit.mend.span, f.span) for f in loud)
        if edit.passage is None:
            # Where every finding has its place in the steps, what is told of them is seldom to blame.
            surprise += -0.7 if touched else 0.0 if floating else 0.8
        else:
            if of_lines and _in_words(edit.passage, edit.mend.span):
                surprise += _NO_WORD
            near = places[edit.part]
            if near:
                surprise += 0.06 * min(12, *(abs(order[id(edit.passage)] - place) for place in near))
            elif not floating:
                surprise += 1.5
            if touched:
                surprise -= 0.15
            elif told_only:
                surprise += 0.5
        yield edit, surprise


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


def _in_words(passage: Passage, span: Span) -> bool:
    """Whether the span lies inside the passage's words, its mark left out."""
    whole = passage.group.line.span(passage.group.start, passage.group.end)
    return whole.start <= span.start and span.end <= whole.end


def _begins_in(span: Span, whole: Span) -> bool:
    return whole.start <= span.start < max(whole.end, whole.start + 1)
