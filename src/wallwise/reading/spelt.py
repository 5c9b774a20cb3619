"""Figures whose steps are told behind their name.

"Sailor 1/2 turn right stepping R behind L, L to side, R forward" is one sailor step: the name tells how
it turns, the steps where the feet go.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction

from wallwise.dance.model import Kind, Place
from wallwise.reading.moves import Item, Move

Placed = tuple[tuple[Fraction, Move], ...]


_ENDS_ELSEWHERE = 0.1  # the figure's last step goes where it does not as a rule
_SPELT = 0.15  # steps that a figure's name tells already
_NAMED = 0.15  # a name before the steps that it means


def spelt(items: list[Item]) -> Iterator[tuple[float, list[Item]]]:
    """The items with a figure and the steps that spell it taken for one, each figure so told, with costs."""
    for i, item in enumerate(items):
        act = item.act
        if not act.figures or act.label or act.aside or len(items) == i + 1:
            continue
        told = [other for other in items[i + 1 :] if other.act.verb != "and"]
        if act.place:
            yield from ((_SPELT, [*items[:i], one, *rest]) for one, rest in _led_by_name(items[i:], told))
        if act.turn is None and any(_spelt_by(option.moves, told) for option in item.options):
            yield _NAMED, [*items[:i], *items[i + 1 :]]


def _led_by_name(items: list[Item], told: list[Item]) -> Iterator[tuple[Item, list[Item]]]:
    """The figure whose first step is told with its name, and the items behind the steps that spell it."""
    item = items[0]
    for size in {len(option.moves) for option in item.options} - {1}:
        options = [
            replace(option, moves=(option.moves[0], *rest), cost=option.cost + cost)
            for option in item.options
            if len(option.moves) == size
            for rest, cost in _spelt_by(option.moves[1:], told)
        ]
        if options:
            yield Item(item.act, options), items[items.index(told[size - 2]) + 1 :]


def _spelt_by(moves: Placed, told: list[Item]) -> list[tuple[Placed, float]]:
    """The moves as the items tell them, with what it costs; none where they are told otherwise."""
    if len(told) < len(moves):
        return []
    found, cost = [], 0.0
    for (at, move), item in zip(moves, told, strict=False):
        step = next((o.moves[0][1] for o in item.options if len(o.moves) == 1), None)
        if step is None or item.act.foot is None or not _is_same(move, step):
            return []
        if not _goes_there(move, step):
            if at != moves[-1][0]:
                return []
            cost = _ENDS_ELSEWHERE
        found.append((at, _as_told(move, step)))
    return [(tuple(found), cost)]


def _is_same(move: Move, step: Move) -> bool:
    """Whether a step can be the figure's: of the same kind, or plainly a step, and on the same foot."""
    foot = move.foot is None or step.foot is None or move.foot is step.foot
    told, kind = step.kinds[0][0], move.kinds[0][0]
    return foot and (told is kind or (told is Kind.STEP and kind.takes_weight))


def _goes_there(move: Move, step: Move) -> bool:
    return move.place is Place.UNSAID or step.place in (move.place, Place.UNSAID)


def _as_told(move: Move, step: Move) -> Move:
    """The figure's step with what was told of it."""
    return replace(
        move,
        foot=move.foot or step.foot,
        place=move.place if step.place is Place.UNSAID else step.place,
        where=step.where,
        foot_at=step.foot_at,
        faces=step.faces if step.faces is not None else move.faces,
        faces_at=step.faces_at if step.faces is not None else move.faces_at,
    )
