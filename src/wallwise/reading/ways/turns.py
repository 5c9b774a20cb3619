"""A turn told: its sizes and ways where they are unsaid, and what the feet do where it is told alone."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from wallwise.dance.model import Foot, Kind, Place
from wallwise.reading.clauses import Act, Turn
from wallwise.reading.moves import STILL, Move, Option, Turns, claiming, only
from wallwise.reading.tokens import TURN

# A turn of no told size, in eighths: a half as a rule, then a quarter.
_USUAL_SIZES = ((4, 0.6), (2, 0.8), (6, 2.0), (8, 2.0), (1, 2.0))
_WAY_UNSAID = 0.5
_STEP_UNSAID = 0.6
_THREE_QUARTERS = 6  # eighths: from here on people walk a turn round too
_ZERO = Fraction(0)
_ONE = Fraction(1)
_QUARTER, _HALF = Fraction(1, 4), Fraction(1, 2)


def ticks(turn: Turn | None) -> Turns:
    """A told turn as alternatives in 1/48: both ways where none is told, common sizes where no size is."""
    if turn is None:
        return STILL
    ways = (turn.way,) if turn.way is not None else (1, -1)
    unsaid = 0.0 if turn.way is not None else _WAY_UNSAID
    sizes = _USUAL_SIZES if turn.eighths is None else ((turn.eighths, 0.0),)
    return tuple((int(way * size * TURN / 8), cost + unsaid) for size, cost in sizes for way in ways)


def turn_options(act: Act, turn: Turn) -> list[Option]:
    """A turn told alone: a pivot, a spin on the foot that stands, or part of a step beside it."""
    base = Move(
        only(Kind.TURN), act.foot, turns=ticks(turn), where=(act.start, act.end), foot_at=act.foot_at,
        way_told=turn.way is not None, also=tuple(act.also),
    )  # fmt: skip
    found = [_stepped(act, base)] if act.feet else _on_the_spot(turn, base, both=act.both)
    if act.times > 1:
        found = [_times(option, act.times) for option in found]
    return [claiming(option, act) for option in found]


def _on_the_spot(turn: Turn, base: Move, *, both: bool) -> list[Option]:
    """Both feet turning or one, the likelier first by the word; a large plain turn may be walked as well."""
    pivot = ((_ZERO, base),)
    spin = ((_ZERO, replace(base, kinds=only(Kind.SPIN))),)
    if turn.own == "pivot":
        return [Option(pivot, _ONE, 0.0), Option(spin, _ONE, 2.0)]
    if turn.own == "unwind":
        return [Option(pivot, _ONE, 0.2, elastic=True), Option(spin, _ONE, 0.4, elastic=True)]
    if turn.own == "spin":
        return [Option(spin, _ONE, 0.0, elastic=True), Option(pivot, _ONE, 2.0, elastic=True)]
    # rolling hips go with both feet on the floor
    found = [Option(pivot, _ONE, 0.3), Option(spin, _ONE, 1.5 if base.also or both else 0.7)]
    if turn.eighths is not None and turn.eighths >= _THREE_QUARTERS:
        found.append(_walked(base, (_HALF, _HALF), 0.2))
        found.append(_walked(base, (_QUARTER, _HALF, _QUARTER), 0.5))
    return found


def stepped_into(pivots: Option, foot: Foot | None = None) -> Option:
    """Pivots that no step is told before, each with the step forward it takes: "5-6 Pivot 1/2 L".

    `foot` is the one that steps, None where it is unsaid.
    """
    step = Move(only(Kind.STEP), foot, Place.FORWARD, where=pivots.moves[0][1].where)
    pairs = [pair for _, pivot in pivots.moves for pair in (step, pivot)]
    moves = tuple((Fraction(i), move) for i, move in enumerate(pairs))
    return Option(moves, Fraction(len(pairs)), pivots.cost + _STEP_UNSAID)


def shared(turns: Turns, steps: int) -> list[Turns]:
    """A turn shared equally by so many steps, the last taking what is over: the turns of each."""
    return [
        tuple((size // steps + (size % steps if i == steps - 1 else 0), cost) for size, cost in turns)
        for i in range(steps)
    ]


def _stepped(act: Act, base: Move) -> Option:
    """A turn told with its feet: "full turn right L, R"."""
    last = len(act.feet) - 1
    moves = tuple(
        (Fraction(i), replace(base, kinds=only(Kind.STEP), foot=foot, turns=share, loose=i < last))
        for i, (foot, share) in enumerate(zip(act.feet, shared(base.turns, last + 1), strict=True))
    )
    return Option(moves, Fraction(last + 1))


def _times(option: Option, times: int) -> Option:
    """The turn so many times in a row."""
    moves = tuple((option.counts * n + at, move) for n in range(times) for at, move in option.moves)
    return replace(option, moves=moves, counts=option.counts * times)


def _walked(base: Move, shares: tuple[Fraction, ...], cost: float) -> Option:
    """A turn in as many steps as there are shares of it."""
    steps = [
        replace(
            base, kinds=only(Kind.STEP), foot=None, turns=tuple((int(t * share), c) for t, c in base.turns)
        )
        for share in shares
    ]
    return Option(tuple((Fraction(i), step) for i, step in enumerate(steps)), Fraction(len(steps)), cost)
