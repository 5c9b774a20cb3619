"""The ways to take the acts of a line together: what is an event of its own, and what part of another.

A plain turn beside a step may be danced by it, a sway may only say how the step before it is danced,
and "x2" may bring back one act or several.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction
from heapq import nsmallest
from itertools import pairwise, zip_longest
from operator import itemgetter

from wallwise.reading.clauses import Act, Turn
from wallwise.reading.moves import Item, Move, Option, turns_besides
from wallwise.reading.spelt import spelt
from wallwise.reading.twice import told_again
from wallwise.reading.ways import GESTURES, items_of, ticks, turn_named

_KEEP = 9
_PLAIN = ("", "turn")
_STYLED = 0.1  # a sway that is the step before it,
_STYLED_BEHIND = 0.5  # though a comma parts them
_EARLY = 0.1  # a step behind "&" is danced between the beats
_HALF_BEAT, _NO_TIME = Fraction(1, 2), Fraction(0)
_INTO_NEXT = 0.25  # "1/4 turn left, step R": what it costs to believe that it is one event
_INTO_LAST = 0.35  # "step R, 1/4 turn left", where nothing follows
_OF_FIGURE = 0.1  # "vine left, 1/4 turn left, scuff": what it costs that the vine turns,
_NOT_OF_FIGURE = 0.7  # and that the scuff does
_INTO_MIDDLE = 0.9  # the same, where another step follows that could take it


def variants(items: list[Item]) -> list[tuple[float, list[Item]]]:
    """The ways to take the items, with costs; as they stand first."""
    return [
        (cost + named + extra + once + early, row)
        for named, open_items in spelt(items)
        for extra, told in told_again(open_items)
        for once, joined in _as_one(told)
        for early, quick in ((0.0, joined), *_with_quick_steps(joined))
        for cost, row in _with_turns(quick)
    ]


def _as_one(items: list[Item]) -> Iterator[tuple[float, list[Item]]]:
    """The items as they stand, and with a sway that only says how the step before it is danced.

    "Step R to the side and sway R, sway L" is a step that sways, and one more sway.
    """
    yield 0.0, items
    for i, (step, sway) in enumerate(pairwise([item.act for item in items])):
        if not (sway.verb == "sway" and _is_side_step(step)):
            continue
        side = sway.feet[0] if sway.feet else sway.foot or sway.toward
        if side is step.foot:
            acts = [item.act for item in items]
            told = replace(sway, foot=None if sway.feet else side, start=step.start)
            cost = _STYLED if sway.joined else _STYLED_BEHIND
            yield cost, items_of([*acts[:i], told, *acts[i + 2 :]])
            return


def between_beats(items: list[Item]) -> list[Item]:
    """The items, with steps behind "&" danced before their beat: "hold, & close L, step R"."""
    quick: list[Item] = []
    for item in items:
        if quick and quick[-1].act.verb == "and" and _is_one_step(item):
            quick[-1] = Item(item.act, [_sooner(option) for option in item.options])
        else:
            quick.append(item)
    return quick


def _with_quick_steps(items: list[Item]) -> Iterator[tuple[float, list[Item]]]:
    quick = between_beats(items)
    if len(quick) < len(items):
        yield _EARLY, quick


def _is_one_step(item: Item) -> bool:
    """Whether it is one step of a foot that is told, as every way to dance it has it."""
    moves = [move for option in item.options for _, move in option.moves]
    steps = all(move.kinds[0][0].takes_weight and move.foot is not None for move in moves)
    return bool(moves) and steps and all(len(option.moves) == 1 for option in item.options)


def _sooner(option: Option) -> Option:
    """The step half a beat before the next, which takes nothing of its time."""
    return replace(option, moves=tuple((at - _HALF_BEAT, move) for at, move in option.moves), counts=_NO_TIME)


def _is_side_step(act: Act) -> bool:
    return act.verb in ("", "step") and act.place == "side" and act.foot is not None and act.turn is None


def _with_turns(items: list[Item]) -> list[tuple[float, list[Item]]]:
    pending: list[tuple[float, list[Item], Turn | None]] = [(0.0, [], None)]  # the turn is for the next item
    for item, following in zip_longest(items, items[1:]):
        plain = _plain_turn(item.act)
        turn = plain or _spun_on(item.act)
        grown: list[tuple[float, list[Item], Turn | None]] = []
        for cost, row, carried in pending:
            grown.append((cost, [*row, item if carried is None else _turned(item, carried)], None))
            if carried is not None or turn is None:
                continue
            behind = bool(row) and _turns_figure(row[-1].act, item.act, following)
            if following is not None and _can_turn(following) and plain:
                grown.append((cost + (_NOT_OF_FIGURE if behind else _INTO_NEXT), row, turn))
            if row and _can_turn(row[-1]) and not turns_besides(row[-1]) and turn.eighths is not None:
                last = _turned(row[-1], turn, claims=item.act)
                dearer = _INTO_LAST if following is None or not plain else _INTO_MIDDLE
                grown.append((cost + (_OF_FIGURE if behind else dearer), [*row[:-1], last], None))
        pending = nsmallest(_KEEP, grown, key=itemgetter(0))
    return [(cost, row) for cost, row, carried in pending if carried is None]


def _turns_figure(figure: Act, turn: Act, following: Item | None) -> bool:
    """Whether a turn told behind a figure is the figure's: "vine left, 1/4 turn left, scuff R"."""
    if not figure.figures or figure.turn is not None or figure.label or following is None:
        return False
    gesture = following.act.verb in GESTURES
    return gesture and (turn.ing or all(named.family == "vines" for named in figure.figures))


def _plain_turn(act: Act) -> Turn | None:
    """The turn of an act that is nothing but a turn, and no pivot, unwind or spin."""
    turn = act.turn
    plain = act.verb == "turn" and turn is not None and turn.own in _PLAIN and not act.feet
    return turn if plain else None


def _spun_on(act: Act) -> Turn | None:
    """The spin of an act that no stop parts from the one before: "step R with a full spiral turn"."""
    if act.fresh or act.feet or act.label:
        return None
    turn = turn_named(act) if act.figures else act.turn if act.verb == "turn" else None
    spun = turn is not None and (bool(act.figures) or turn.own == "spin")
    return turn if spun else None


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
        act.turn = replace(turn, ahead=claims is None)
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
