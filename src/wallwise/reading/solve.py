"""The body decides: of all readings, the one in which the feet and the sheet agree best.

Each group of moves comes with several layouts.  The search runs over all of them at once,
move by move; its state is which foot bears the weight and which way the body faces (and
which foot bore it at the start).  What contradicts the sheet costs `CONFLICT`; both ways
out of a contradiction are kept open, and the rest of the sheet chooses.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import NamedTuple

from wallwise.dance.model import Foot, Kind, Place
from wallwise.dance.weight import move as weight_law
from wallwise.reading.layout import Layout
from wallwise.reading.moves import CONFLICT, Move
from wallwise.reading.tokens import TURN

MARGIN = 0.45  # two readings that cost this alike are a doubt
_L, _R, _BOTH, _NONE = Foot.LEFT, Foot.RIGHT, Foot.BOTH, Foot.NONE
_WEIGHTED = {kind: kind.takes_weight for kind in Kind}


class Solved(NamedTuple):
    """One event as decided.  `facing` (1/48 of a turn) and `weight` are after it; `clash` names contradictions."""

    at: Fraction
    foot: Foot
    kind: Kind
    turn: int
    facing: int
    weight: Foot
    move: Move
    group: int
    layout: int
    clash: tuple[str, ...]


class _Path(NamedTuple):
    cost: float
    sign: int  # hash of feet and facings so far: paths that differ in nothing else are one reading
    chain: tuple | None  # type: ignore[type-arg]  # (chain before, Solved)


_State = tuple[Foot, Foot, int]


@dataclass(frozen=True, slots=True)
class Goal:
    """What is known of the end and the start, as costs.

    `starts` maps the foot that bears the weight before count 1 to a cost; `ends` maps
    facings at the end to a cost (others cost `CONFLICT`), None where nothing is known;
    `loops` is what it costs when the end does not free the foot the dance starts with.
    """

    starts: dict[Foot, float]
    ends: dict[int, float] | None = None
    loops: float = CONFLICT
    facing: int = 0
    end_weight: Foot | None = None


@dataclass(frozen=True, slots=True)
class Solution:
    """The best reading, and the first event where an equally good one differs (None: there is none)."""

    events: tuple[Solved, ...]
    cost: float
    started: Foot  # the foot that bore the weight before count 1
    ended: Foot
    facing: int
    rival: Solved | None = None
    rival_own: Solved | None = None


def solve(groups: Sequence[Sequence[Layout]], goal: Goal) -> Solution:
    """The reading of least cost; no groups give an empty one."""
    states: dict[_State, list[_Path]] = {
        (weight, weight, goal.facing): [_Path(cost, 0, None)] for weight, cost in goal.starts.items()
    }
    for number, layouts in enumerate(groups):
        merged: dict[_State, list[_Path]] = {}
        for index, layout in enumerate(layouts):
            for state, paths in _dance(states, layout, number, index).items():
                _merge(merged, state, paths)
        if merged:
            states = _prune(merged)
    return _choose(states, goal)


def _prune(states: dict[_State, list[_Path]]) -> dict[_State, list[_Path]]:
    """States too dear ever to win are dropped: two contradictions worse than the best."""
    best = min(paths[0].cost for paths in states.values())
    return {s: p for s, p in states.items() if p[0].cost <= best + 3.2 * CONFLICT}


def _merge(into: dict[_State, list[_Path]], state: _State, paths: list[_Path]) -> None:
    held = into.get(state)
    if held is None:
        into[state] = paths
        return
    rows = sorted([*held, *paths], key=lambda p: p.cost)
    best = rows[0]
    second = next((p for p in rows[1:] if p.sign != best.sign and p.cost <= best.cost + MARGIN), None)
    into[state] = [best] if second is None else [best, second]


def _dance(states: dict[_State, list[_Path]], layout: Layout, number: int, index: int) -> dict[_State, list[_Path]]:
    here = {
        state: [_Path(p.cost + layout.cost, p.sign, p.chain) for p in paths] for state, paths in states.items()
    }
    for at, move in layout.moves:
        after: dict[_State, list[_Path]] = {}
        for (start, weight, facing), paths in here.items():
            for cost, foot, kind, turn, bears, clash in _outcomes(weight, move):
                faced = (facing + turn) % TURN
                for extra, now, said in _faced(move, faced):
                    solved = Solved(at, foot, kind, turn, now, bears, move, number, index, clash + said)
                    mark = hash((at, foot, None if move.loose else now)) if _WEIGHTED[kind] and foot in (_L, _R) else 0
                    grown = [
                        _Path(p.cost + cost + extra, hash((p.sign, mark)) if mark else p.sign, (p.chain, solved))
                        for p in paths
                    ]
                    _merge(after, (start, bears, now), grown)
        here = after
    return here


def _faced(move: Move, facing: int) -> tuple[tuple[float, int, tuple[str, ...]], ...]:
    """The facing after the event beside the one claimed: agree, overrule the claim, or follow it."""
    if move.faces is None or move.faces == facing:
        return ((0.0, facing, ()),)
    return (
        (CONFLICT, facing, ("facing",)),
        (CONFLICT + 0.2, move.faces, ("facing", "follows")),
    )


def _outcomes(weight: Foot, move: Move) -> list[tuple[float, Foot, Kind, int, Foot, tuple[str, ...]]]:
    """Every way the body can do the move from here: cost, foot, kind, turn, who bears the weight, clashes."""
    found = []
    for kind, kind_cost in move.kinds:
        for foot, bears, foot_cost, clash in _feet(weight, move, kind):
            for claim_cost, bears_now, claim in _claimed(move, bears, foot):
                for turn, turn_cost in move.turns:
                    found.append((kind_cost + foot_cost + claim_cost + turn_cost, foot, kind, turn, bears_now, clash + claim))
    return found


def _feet(weight: Foot, move: Move, kind: Kind) -> list[tuple[Foot, Foot, float, tuple[str, ...]]]:
    """Which foot does it: (foot, who bears the weight after, cost, clash)."""
    told = move.foot
    if kind is Kind.HOLD or told is _NONE:
        return [(_NONE, weight, 0.0, ())]
    if told is _BOTH:
        return [(_BOTH, _BOTH, 0.0, ())]
    if told is not None:
        after = weight_law(weight, told, kind)
        if after is not None:
            return [(told, after, 0.0, ())]
        forced = told if _WEIGHTED[kind] or kind.on_standing_foot else told.other
        swapped = weight_law(weight, told.other, kind)
        rows = [(told, forced, CONFLICT, ("foot",))]
        if swapped is not None:
            rows.append((told.other, swapped, CONFLICT + 0.5, ("foot", "swapped")))
        return rows
    feet = (_L, _R) if weight is _BOTH else ((weight,) if kind.on_standing_foot else (weight.other,))
    rows = []
    for foot in feet:
        after = weight_law(weight, foot, kind)
        assert after is not None
        cost, clash = 0.0, ()
        if move.toward in (_L, _R) and move.place is Place.SIDE and foot is not move.toward:
            cost, clash = 4.0, ("toward",)
        if move.against is foot:
            cost, clash = cost + 4.0, (*clash, "against")
        rows.append((foot, after, cost, clash))
    return rows


def _claimed(move: Move, bears: Foot, foot: Foot) -> tuple[tuple[float, Foot, tuple[str, ...]], ...]:
    """The weight after the event beside the one claimed."""
    told = move.weight
    if told is None or told is bears:
        return ((0.0, bears, ()),)
    if told is _BOTH or bears is _BOTH:
        return ((0.0, told, ()),)
    return ((CONFLICT, bears, ("weight",)), (CONFLICT + 0.2, told, ("weight", "follows")))


def _choose(states: dict[_State, list[_Path]], goal: Goal) -> Solution:
    rows: list[tuple[float, _State, _Path]] = []
    for state, paths in states.items():
        start, weight, facing = state
        extra = 0.0
        if goal.ends is not None:
            extra += goal.ends.get(facing, CONFLICT)
        if weight is not _BOTH and weight is not (goal.end_weight or start):
            extra += goal.loops
        rows += [(p.cost + extra, state, p) for p in paths]
    rows.sort(key=lambda r: r[0])
    cost, (start, weight, facing), best = rows[0]
    events = _unwind(best)
    rival = next((p for c, _, p in rows[1:] if c <= cost + MARGIN and p.sign != best.sign), None)
    own, other = _first_difference(events, _unwind(rival)) if rival is not None else (None, None)
    return Solution(events, cost, start, weight, facing, other, own)


def _unwind(path: _Path) -> tuple[Solved, ...]:
    events = []
    chain = path.chain
    while chain is not None:
        chain, solved = chain
        events.append(solved)
    return tuple(reversed(events))


def _first_difference(mine: tuple[Solved, ...], other: tuple[Solved, ...]) -> tuple[Solved | None, Solved | None]:
    """The first weight change in which two readings differ, in each."""
    def steps(events: tuple[Solved, ...]) -> list[Solved]:
        return [e for e in events if _WEIGHTED[e.kind] and e.foot in (_L, _R)]

    a, b = steps(mine), steps(other)
    for x, y in zip(a, b, strict=False):
        if (x.at, x.foot) != (y.at, y.foot) or x.facing != y.facing and not (x.move.loose and y.move.loose):
            return x, y
    if len(a) != len(b):
        return (a[len(b)] if len(a) > len(b) else a[-1] if a else None), (b[len(a)] if len(b) > len(a) else b[-1] if b else None)
    return None, None
