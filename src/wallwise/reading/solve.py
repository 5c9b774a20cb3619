"""The body decides: of all readings, the one in which the feet and the sheet agree best.

Each group of moves comes with several layouts.  The search runs over all of them at once,
move by move; its state is which foot bears the weight and which way the body faces (and
which foot bore it at the start).  What contradicts the sheet costs `CONFLICT`; both ways
out of a contradiction are kept open, and the rest of the sheet chooses.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from typing import NamedTuple, TypeAlias

from wallwise.dance.model import Foot, Kind, Place
from wallwise.dance.weight import move as weight_law
from wallwise.reading.layout import Layout
from wallwise.reading.moves import CONFLICT, Move, only
from wallwise.reading.tokens import TURN

MARGIN = 0.45  # two readings that cost this alike are a doubt
_L, _R, _BOTH, _NONE = Foot.LEFT, Foot.RIGHT, Foot.BOTH, Foot.NONE
_WEIGHTED = {kind: kind.takes_weight for kind in Kind}
_FOLLOWS = 0.2  # a claim that contradicts is followed a little less readily than overruled,
_AWRY = 0.2  # less than MARGIN: where a facing depends on it, it is told
_SWAPPED = 0.5  # the other foot less readily than the one told
_HIPS = (Kind.BUMP, Kind.ROLL)
_SWAYS = only(Kind.SWAY)
_OFF_SIDE = 4.0  # a foot nobody told goes where only the other would go


class Solved(NamedTuple):
    """One event as decided.

    `turn` and `facing` are in 1/48 of a turn; `facing` and `weight` are after the event; `group` and
    `layout` are where its move came from; `clash` names the contradictions with the sheet.
    """

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


_Chain: TypeAlias = "tuple[_Chain, Solved] | None"  # the events so far, the last one outside


class _Path(NamedTuple):
    cost: float
    sign: int  # hash of feet and facings so far: paths that differ in nothing else are one reading
    chain: _Chain


State = tuple[Foot, Foot, int]  # who bore the weight at the start, who bears it now, the facing
_Clash = tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Goal:
    """What is known of the end and the start, as costs.

    `starts` maps the foot that bears the weight before count 1 to a cost; `ends` maps
    facings at the end to a cost (others cost `CONFLICT`), None where nothing is known;
    `loops` is what it costs when the end does not free the foot the dance starts with, or where
    `end_weight` is given, when another foot bears the weight.  `facing` is where the dance starts.
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
    states: dict[State, list[_Path]] = {
        (weight, weight, goal.facing): [_Path(cost, 0, None)] for weight, cost in goal.starts.items()
    }
    for number, layouts in enumerate(groups):
        merged: dict[State, list[_Path]] = {}
        for index, layout in enumerate(layouts):
            for state, paths in _dance(states, layout, group=number, index=index).items():
                _merge(merged, state, paths)
        if merged:
            states = _prune(merged)
    return _choose(states, goal)


def _prune(states: dict[State, list[_Path]]) -> dict[State, list[_Path]]:
    """The states that may still win: not worse than the best by more than three contradictions."""
    best = min(paths[0].cost for paths in states.values())
    return {s: p for s, p in states.items() if p[0].cost <= best + 3.2 * CONFLICT}


def _merge(into: dict[State, list[_Path]], state: State, paths: list[_Path]) -> None:
    held = into.get(state)
    if held is None:
        into[state] = paths
        return
    rows = sorted([*held, *paths], key=lambda p: p.cost)
    best = rows[0]
    second = next((p for p in rows[1:] if p.sign != best.sign and p.cost <= best.cost + MARGIN), None)
    into[state] = [best] if second is None else [best, second]


def _dance(
    states: dict[State, list[_Path]], layout: Layout, *, group: int, index: int
) -> dict[State, list[_Path]]:
    """The states after the moves of a layout."""
    here = {
        state: [_Path(p.cost + layout.cost, p.sign, p.chain) for p in paths]
        for state, paths in states.items()
    }
    for at, move in layout.moves:
        after: dict[State, list[_Path]] = {}
        for (start, weight, facing), paths in here.items():
            for cost, foot, kind, turn, bears, clash in outcomes(weight, move):
                for extra, now, said in faced(move, (facing + turn) % TURN):
                    solved = Solved(at, foot, kind, turn, now, bears, move, group, index, clash + said)
                    _merge(after, (start, bears, now), _grown(paths, cost + extra, solved))
        here = after
    return here


def _grown(paths: list[_Path], cost: float, solved: Solved) -> list[_Path]:
    """The paths, one event longer; only steps tell readings apart."""
    if not _is_step(solved):
        return [_Path(p.cost + cost, p.sign, (p.chain, solved)) for p in paths]
    mark = hash((solved.at, solved.foot, None if solved.move.loose else solved.facing))
    return [_Path(p.cost + cost, hash((p.sign, mark)), (p.chain, solved)) for p in paths]


def _is_step(solved: Solved) -> bool:
    return _WEIGHTED[solved.kind] and solved.foot in (_L, _R)


def faced(move: Move, facing: int) -> tuple[tuple[float, int, _Clash], ...]:
    """The facing after the event beside the one claimed: agree, overrule the claim, or follow it."""
    if move.faces is None or move.faces == facing:
        return ((0.0, facing, ()),)
    return (
        (CONFLICT, facing, ("facing",)),
        (CONFLICT + _FOLLOWS, move.faces, ("facing", "follows")),
    )


def outcomes(weight: Foot, move: Move) -> list[tuple[float, Foot, Kind, int, Foot, _Clash]]:
    """Every way the body can do the move from here: cost, foot, kind, turn, who bears the weight, clashes."""
    if (
        move.foot is _BOTH
        and weight is not _BOTH
        and move.weight is weight.other
        and move.kinds[0][0] in _HIPS
    ):
        # "bump hips L, taking weight on L": hips that bring the weight across are a sway
        move = replace(move, foot=move.weight, kinds=_SWAYS)
    return [
        (
            kind_cost + foot_cost + claim_cost + turn_cost + _awry(move, kind, foot=foot, turn=turn),
            foot,
            kind,
            turn,
            bears_now,
            clash + claim,
        )
        for kind, kind_cost in move.kinds
        for foot, bears, foot_cost, clash in _free_beside(move, kind, _feet(weight, move, kind))
        for claim_cost, bears_now, claim in _claimed(move, bears)
        for turn, turn_cost in move.turns
    ]


def _awry(move: Move, kind: Kind, *, foot: Foot, turn: int) -> float:
    """What it costs that a turn of no told way goes away from the foot it ends on: the legs go towards it."""
    if move.way_told or kind is not Kind.TURN or not turn or foot not in (_L, _R):
        return 0.0
    return 0.0 if (turn > 0) is (foot is _R) else _AWRY


_Doing = tuple[Foot, Foot, float, _Clash]  # the foot, who bears the weight after, cost, clashes


def _feet(weight: Foot, move: Move, kind: Kind) -> list[_Doing]:
    """Which foot can do it."""
    if kind is Kind.HOLD or move.foot is _NONE:
        return [(_NONE, weight, 0.0, ())]
    if move.foot is _BOTH:
        return [(_BOTH, _BOTH, 0.0, ())]
    if move.foot is not None:
        return _told_foot(weight, move.foot, kind)
    if weight is _BOTH:
        return [_untold_foot(weight, move, kind, foot=foot) for foot in (_L, _R)]
    return [_untold_foot(weight, move, kind, foot=weight if kind.on_standing_foot else weight.other)]


def _free_beside(move: Move, kind: Kind, doings: list[_Doing]) -> list[_Doing]:
    """The doings, dear where the foot of the gesture danced with the step is the one that steps."""
    if move.along is None or not _WEIGHTED[kind]:
        return doings
    return [
        (foot, bears, cost + CONFLICT, (*clash, "along"))
        if foot is move.along
        else (foot, bears, cost, clash)
        for foot, bears, cost, clash in doings
    ]


def _told_foot(weight: Foot, told: Foot, kind: Kind) -> list[_Doing]:
    """The foot told, or where that bears the weight, against the body or the other foot instead."""
    after = weight_law(weight, told, kind)
    if after is not None:
        return [(told, after, 0.0, ())]
    forced = told if _WEIGHTED[kind] or kind.on_standing_foot else told.other
    rows: list[_Doing] = [(told, forced, CONFLICT, ("foot",))]
    swapped = weight_law(weight, told.other, kind)
    if swapped is not None:
        rows.append((told.other, swapped, CONFLICT + _SWAPPED, ("foot", "swapped")))
    return rows


def _untold_foot(weight: Foot, move: Move, kind: Kind, *, foot: Foot) -> _Doing:
    """The free foot, at a price where what was told of the place fits the other only."""
    after = weight_law(weight, foot, kind)
    assert after is not None
    clash: _Clash = ()
    if move.toward in (_L, _R) and move.place is Place.SIDE and foot is not move.toward:
        clash += ("toward",)
    if move.against is foot:
        clash += ("against",)
    return foot, after, _OFF_SIDE * len(clash), clash


def _claimed(move: Move, bears: Foot) -> tuple[tuple[float, Foot, _Clash], ...]:
    """The weight after the event beside the one claimed."""
    told = move.weight
    if told is None or told is bears:
        return ((0.0, bears, ()),)
    if told is _BOTH or bears is _BOTH:
        return ((0.0, told, ()),)
    return ((CONFLICT, bears, ("weight",)), (CONFLICT + _FOLLOWS, told, ("weight", "follows")))


def end_cost(state: State, goal: Goal) -> float:
    """What it costs to end in that state."""
    start, weight, facing = state
    cost = 0.0 if goal.ends is None else goal.ends.get(facing, CONFLICT)
    if weight is not _BOTH and weight is not (goal.end_weight or start):
        cost += goal.loops
    return cost


def _choose(states: dict[State, list[_Path]], goal: Goal) -> Solution:
    rows: list[tuple[float, State, _Path]] = []
    for state, paths in states.items():
        extra = end_cost(state, goal)
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


def _first_difference(
    mine: tuple[Solved, ...], other: tuple[Solved, ...]
) -> tuple[Solved | None, Solved | None]:
    """The first step in which two readings differ, in each."""
    a, b = [e for e in mine if _is_step(e)], [e for e in other if _is_step(e)]
    for x, y in zip(a, b, strict=False):
        told_facing = not (x.move.loose and y.move.loose)
        if (x.at, x.foot) != (y.at, y.foot) or (told_facing and x.facing != y.facing):
            return x, y
    if len(a) == len(b):
        return None, None
    at = min(len(a), len(b))
    return _at_or_last(a, at), _at_or_last(b, at)


def _at_or_last(steps: list[Solved], at: int) -> Solved | None:
    return steps[min(at, len(steps) - 1)] if steps else None
