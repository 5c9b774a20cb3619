"""Where a dance would have to be cut so that its walls begin with the phrases of a song.

Conventions: a *place* is a number of counts danced before, from 0; a *start* is the count of the
song on which a wall begins, from 1.  Counts are whole or halves, which floats hold exactly.

Objective.  A *plan* dances wall after wall until the song is over.  A wall may be cut by a
restart after one of the counts allowed, and may be followed by one tag; each of the two is a
*cut*, a wall begins after it, and there are at most `max_cuts`.  The plan of least cost is
sought:

    cost = 1 000 000 * off + 10 000 * cuts + 100 * rough + misfit

`off` is how many walls begin further than `tolerance` from where a wall may begin, `rough` how
many restarts cut a figure.  `misfit` is the sum of counts, over all walls, from the start to the
nearest place where a wall may begin, and, over all phrases that begin inside a wall or a tag,
from there to the nearest of its eights where that is beyond `tolerance`: no phrase is to begin
in the middle of an eight.  The weights make it an order: as many walls as can be begin with a
phrase, then as few cuts as will do, then none inside a figure, then the least misfit.  Of equal
costs the plan with fewer tags is taken: a restart leaves the dancers nothing new to learn.

Of the song's last counts, fewer than an eight, nothing is asked: they die away.

A wall may begin with a phrase, and after each whole wall inside it: a phrase of 32 counts holds
a dance of 16 twice.  What is left of the phrase then holds a wall, a cut one, if it is no
shorter than an eight.  A phrase shorter than an eight is a break: no wall begins with it, but
for the first.
"""

from __future__ import annotations

import heapq
from bisect import bisect_left, bisect_right
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from enum import StrEnum
from functools import cache
from itertools import accumulate, pairwise
from typing import NamedTuple, Self

OFF, CUT, ROUGH = 1_000_000, 10_000, 100

MAX_CUTS = 3
TAGS = (2, 4, 8)


class CutKind(StrEnum):
    """How a wall is kept from ending where it would."""

    RESTART = "restart"
    TAG = "tag"


@dataclass(frozen=True, slots=True)
class Cut:
    """A restart of wall `wall` after `counts` counts, or a tag of `counts` counts after it."""

    kind: CutKind
    wall: int
    counts: float
    rough: bool = False


@dataclass(frozen=True, slots=True)
class Phrasing:
    """The phrases of a song as the dance meets them.

    `places` are where they begin, strictly increasing, the first at 0; the song is over after
    `length` counts.  ValueError where they are not so.
    """

    places: tuple[float, ...]
    length: float

    def __post_init__(self) -> None:
        if not self.places or self.places[0] != 0:
            raise ValueError("the first phrase begins where the dance does")
        if any(later <= place for place, later in pairwise((*self.places, self.length))):
            raise ValueError("every phrase has to last some counts")

    @classmethod
    def of(cls, counts: Iterable[float]) -> Self:
        """Phrases of so many counts one after the other; ValueError for none, or for one of no counts.

        >>> Phrasing.of([32, 32, 16])
        Phrasing(places=(0, 32, 64), length=80)
        """
        *places, length = accumulate(counts, initial=0)
        return cls(tuple(places), length)

    def marks(self, counts: float, *, eight: int = 8) -> tuple[float, ...]:
        """Every place where a wall of a dance of `counts` counts may begin, in order.

        >>> Phrasing.of([32, 40]).marks(16)
        (0, 16, 32, 48, 64)
        """
        if counts <= 0:
            raise ValueError("a dance lasts some counts")
        return tuple(
            mark
            for place, end in pairwise((*self.places, self.length))
            for mark in _inside(place, end, counts, eight)
        )


def _inside(place: float, end: float, counts: float, eight: int) -> Iterator[float]:
    if place == 0:
        yield place
        place += counts
    while end - place >= min(eight, counts):
        yield place
        place += counts


@dataclass(frozen=True, slots=True)
class Choices:
    """What may be done to a dance of `counts` counts, and how its fit is judged.

    `restarts` are the counts after which it may begin again, `rough` those of them inside a
    figure, `tags` the lengths a tag may have, `tolerance` how many counts beside a phrase still
    count as with it, `eight` the counts of an eight.
    """

    counts: float
    restarts: tuple[float, ...] = ()
    rough: frozenset[float] = frozenset()
    tags: tuple[float, ...] = TAGS
    max_cuts: int = MAX_CUTS
    tolerance: float = 0
    eight: int = 8


@dataclass(frozen=True, slots=True)
class Plan:
    """A dance laid over phrases: the count on which each wall starts, its cuts, how well it fits."""

    starts: tuple[float, ...]
    cuts: tuple[Cut, ...]
    off: int
    misfit: float

    @property
    def cost(self) -> float:
        """The cost that `fit` makes least."""
        return OFF * self.off + CUT * len(self.cuts) + ROUGH * sum(c.rough for c in self.cuts) + self.misfit


def judge(starts: Sequence[float], cuts: Sequence[Cut], phrasing: Phrasing, *, choices: Choices) -> Plan:
    """The plan that starts its walls on these counts (from 1) and has these cuts, with how well it fits.

    >>> judge([1, 33], [], Phrasing.of([32, 16]), choices=Choices(32)).cost
    0
    """
    marks = phrasing.marks(choices.counts, eight=choices.eight)
    misfits = [_misfit(start - 1, marks) for start in starts if start - 1 <= phrasing.length - choices.eight]
    off = sum(misfit > choices.tolerance for misfit in misfits)
    misfit = sum(misfits)
    for wall, (start, following) in enumerate(pairwise((*starts, phrasing.length + 1)), 1):
        tag = sum(cut.counts for cut in cuts if cut.kind is CutKind.TAG and cut.wall == wall)
        over = following - 1 - tag
        misfit += _crossed(start - 1, over, phrasing, choices)
        misfit += _crossed(over, following - 1, phrasing, choices)
    return Plan(tuple(starts), tuple(cuts), off, misfit)


def fit(phrasing: Phrasing, choices: Choices) -> Plan:
    """The plan of least cost; see the objective above.

    Dynamic programming forward over (place, cuts made): what a plan costs from a place on does
    not depend on how it came there.

    >>> plan = fit(Phrasing.of([32, 32, 16, 32]), Choices(32, restarts=(8, 16, 24)))
    >>> plan.starts, [(cut.kind.value, cut.wall, cut.counts) for cut in plan.cuts]
    ((1, 33, 65, 81), [('restart', 3, 16)])
    """
    marks = phrasing.marks(choices.counts, eight=choices.eight)
    moves = tuple(_moves(choices))

    @cache
    def start_cost(place: float) -> float:
        if place > phrasing.length - choices.eight:
            return 0
        misfit = _misfit(place, marks)
        return misfit + OFF * (misfit > choices.tolerance)

    @cache
    def crossed(place: float, over: float) -> float:
        return _crossed(place, over, phrasing, choices)

    found: dict[_At, _Step] = {_At(0, 0): _Step((0, 0), None, None)}
    ends: list[tuple[tuple[float, int], _At]] = []
    waiting = [_At(0, 0)]
    while waiting:
        at = heapq.heappop(waiting)  # places only grow: whatever leads here has been looked at
        cost, tags = found[at].cost
        if at.place + choices.counts >= phrasing.length:
            ends.append(((cost + crossed(at.place, phrasing.length), tags), at))
        for move in moves:
            if at.cuts + move.cuts > choices.max_cuts or at.place + move.counts >= phrasing.length:
                continue
            to = _At(at.place + move.counts, at.cuts + move.cuts)
            over = at.place + move.wall
            inside = crossed(at.place, over) + (crossed(over, to.place) if move.tag else 0)
            so_far = (cost + move.cost + inside + start_cost(to.place), tags + (move.tag is not None))
            if to not in found:
                heapq.heappush(waiting, to)
            elif found[to].cost <= so_far:
                continue
            found[to] = _Step(so_far, at, move)
    return _told(min(ends)[1], found, phrasing=phrasing, choices=choices)


class _At(NamedTuple):
    """A wall begins here, so many cuts being made."""

    place: float
    cuts: int


class _Move(NamedTuple):
    """A wall of `wall` counts, cut after `restart` of them or whole, and the tag after it."""

    counts: float
    wall: float
    restart: float | None
    tag: float | None
    cuts: int
    cost: float


class _Step(NamedTuple):
    """The cheapest way to a place: (cost, tags) so far, from where, by which move."""

    cost: tuple[float, int]
    came_from: _At | None
    move: _Move | None


def _moves(choices: Choices) -> Iterator[_Move]:
    for restart in (None, *choices.restarts):
        for tag in (None, *choices.tags):
            cuts = (restart is not None) + (tag is not None)
            wall = choices.counts if restart is None else restart
            cost = CUT * cuts + ROUGH * (restart in choices.rough)
            yield _Move(wall + (tag or 0), wall, restart, tag, cuts, cost)


def _misfit(place: float, marks: Sequence[float]) -> float:
    """Counts from the place to the nearest mark."""
    index = bisect_left(marks, place)
    return min(abs(place - mark) for mark in marks[max(index - 1, 0) : index + 1])


def _crossed(place: float, over: float, phrasing: Phrasing, choices: Choices) -> float:
    """How far the phrases that begin between two places are from the eights counted from the first."""
    places, eight = phrasing.places, choices.eight
    inside = places[bisect_right(places, place) : bisect_left(places, over)]
    inside = tuple(phrase for phrase in inside if phrase <= phrasing.length - eight)
    apart = (min((phrase - place) % eight, (place - phrase) % eight) for phrase in inside)
    return sum(counts for counts in apart if counts > choices.tolerance)


def _told(end: _At, found: dict[_At, _Step], *, phrasing: Phrasing, choices: Choices) -> Plan:
    """The plan that ends with the wall begun at `end`."""
    starts, moves = [end.place], []
    at = end
    while (step := found[at]).came_from is not None and step.move is not None:
        at = step.came_from
        starts.append(at.place)
        moves.append(step.move)
    cuts: list[Cut] = []
    for wall, move in enumerate(reversed(moves), 1):
        if move.restart is not None:
            cuts.append(Cut(CutKind.RESTART, wall, move.restart, move.restart in choices.rough))
        if move.tag is not None:
            cuts.append(Cut(CutKind.TAG, wall, move.tag))
    return judge([place + 1 for place in reversed(starts)], cuts, phrasing, choices=choices)
