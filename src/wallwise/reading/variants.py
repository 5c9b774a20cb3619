"""A plain turn told beside a step: an event of its own, or part of the step before or after."""

from __future__ import annotations

from dataclasses import replace
from heapq import nsmallest
from itertools import zip_longest
from operator import itemgetter

from wallwise.reading.clauses import Act, Turn
from wallwise.reading.moves import Item, Move
from wallwise.reading.ways import items_of, ticks

_KEEP = 9
_MOST_TIMES = 4
_ALL_AGAIN = 0.15  # "step R, pivot 1/4 left x2": what it costs to believe that both are done twice
_INTO_NEXT = 0.25  # "1/4 turn left, step R": what it costs to believe that it is one event
_INTO_LAST = 0.35  # "step R, 1/4 turn left", where nothing follows
_INTO_MIDDLE = 0.9  # the same, where another step follows that could take it


def variants(items: list[Item]) -> list[tuple[float, list[Item]]]:
    """The items with each plain turn either its own event or part of the item beside it, with costs.

    "… x2" behind the last item may mean all of them.
    """
    rows = _with_turns(items)
    if (whole := _all_again(items)) is not None:
        rows += [(cost + _ALL_AGAIN, row) for cost, row in _with_turns(whole)]
    return rows


def _all_again(items: list[Item]) -> list[Item] | None:
    """All items as often as the last is said to be done; None where it is done once, or stands alone."""
    told = [item for item in items if item.options]
    times = told[-1].act.times if len(told) > 1 else 1
    if not 1 < times <= _MOST_TIMES or any(item.act.times > 1 for item in told[:-1]):
        return None
    last = replace(told[-1].act, times=1)
    once = [*told[:-1], *items_of([last])]
    return once * times


def _with_turns(items: list[Item]) -> list[tuple[float, list[Item]]]:
    pending: list[tuple[float, list[Item], Turn | None]] = [(0.0, [], None)]  # the turn is for the next item
    for item, following in zip_longest(items, items[1:]):
        turn = _plain_turn(item.act)
        grown: list[tuple[float, list[Item], Turn | None]] = []
        for cost, row, carried in pending:
            grown.append((cost, [*row, item if carried is None else _turned(item, carried)], None))
            if carried is not None or turn is None:
                continue
            if following is not None and _can_turn(following):
                grown.append((cost + _INTO_NEXT, row, turn))
            if row and _can_turn(row[-1]) and turn.eighths is not None:
                last = _turned(row[-1], turn, claims=item.act)
                dearer = _INTO_LAST if following is None else _INTO_MIDDLE
                grown.append((cost + dearer, [*row[:-1], last], None))
        pending = nsmallest(_KEEP, grown, key=itemgetter(0))
    return [(cost, row) for cost, row, carried in pending if carried is None]


def _plain_turn(act: Act) -> Turn | None:
    """The turn of an act that is nothing but a turn, and no pivot, unwind or spin."""
    turn = act.turn
    plain = act.verb == "turn" and turn is not None and turn.own in ("", "turn") and not act.feet
    return turn if plain else None


def _can_turn(item: Item) -> bool:
    act = item.act
    return (
        bool(item.options) and act.turn is None and act.verb not in ("hold", "turn", "and") and not act.label
    )


def _turned(item: Item, turn: Turn, *, claims: Act | None = None) -> Item:
    """The item with a turn told beside it taken in.

    It turns at its start, or at its end where the act that told the turn is given as `claims`.
    """
    act = replace(item.act, turn=turn)
    if claims is not None and claims.faces is not None and act.faces is None:
        act = replace(act, faces=claims.faces, faces_at=claims.faces_at)
    if item.act.figures or item.act.feet:
        return Item(item.act, items_of([act])[0].options)

    def turning(move: Move) -> Move:
        turned = replace(move, turns=ticks(turn), way_told=turn.way is not None)
        if claims is not None and act.faces is not None:
            turned.faces, turned.faces_at = act.faces, act.faces_at
        return turned

    options = []
    for option in item.options:
        moves = list(option.moves)
        if moves:
            index = 0 if claims is None else -1
            at, move = moves[index]
            moves[index] = (at, turning(move))
            options.append(replace(option, moves=tuple(moves)))
    return Item(item.act, options)
