"""Items laid on beats: which move falls on which count of a count mark.

Two ways of counting compete.  On *slots*, each beat that a mark writes out takes one
move.  On *time*, every item lasts as long as it does of itself (a shuffle two counts) and
the whole must fill the span.  Both are small searches that keep the few cheapest results.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from fractions import Fraction
from heapq import nsmallest

from wallwise.dance.model import Foot, Kind, Place
from wallwise.reading.clauses import Act, Turn
from wallwise.reading.moves import PERHAPS, Item, Move, Option, ticks

KEEP = 8
_ONE = Fraction(1)
_ZERO = Fraction(0)

Placed = tuple[Fraction, Move]


@dataclass(frozen=True, slots=True)
class Layout:
    """Moves on beats, with what it costs to believe it; `left` beats at the end had nothing."""

    cost: float
    moves: tuple[Placed, ...]
    left: Fraction = _ZERO
    over: Fraction = _ZERO


def on_slots(items: list[Item], slots: tuple[Fraction, ...]) -> list[Layout]:
    """The cheapest ways to lay the items on the beats a mark writes out, one move a beat."""
    found: list[Layout] = []
    for cost, row in _variants(items):
        found += [replace_cost(lay, cost) for lay in _slots(row, slots)]
    return nsmallest(KEEP, found, key=lambda lay: lay.cost)


def on_time(items: list[Item], start: Fraction, counts: Fraction) -> list[Layout]:
    """The cheapest ways to lay the items one after the other from `start` so that they fill `counts`."""
    found: list[Layout] = []
    for cost, row in _variants(items):
        found += [replace_cost(lay, cost) for lay in _time(row, start, counts)]
    return nsmallest(KEEP, found, key=lambda lay: lay.cost)


def replace_cost(layout: Layout, extra: float) -> Layout:
    """The layout, `extra` dearer."""
    return replace(layout, cost=layout.cost + extra) if extra else layout


# -- what an item may be: left out, merged, one of its options -------------------------------


def _variants(items: list[Item]) -> list[tuple[float, list[Item]]]:
    """The items with each plain turn either its own event or part of the item beside it."""
    rows: list[tuple[float, list[Item]]] = [(0.0, [])]
    pending: list[tuple[float, list[Item], Turn | None]] = [(0.0, [], None)]
    for n, item in enumerate(items):
        turn = item.act.turn
        plain = item.act.verb == "turn" and turn is not None and turn.own in ("", "turn") and not item.act.feet
        grown: list[tuple[float, list[Item], Turn | None]] = []
        for cost, row, carried in pending:
            here = item
            if carried is not None:
                here = _turned(item, carried)
            grown.append((cost, [*row, here], None))
            if plain and carried is None and turn is not None:
                rest = items[n + 1 :]
                if rest and _can_turn(rest[0]):
                    grown.append((cost + 0.25, row, turn))
                if row and _can_turn(row[-1]) and turn.eighths is not None:
                    last = _turned(row[-1], turn, at_end=True, claims=item.act)
                    grown.append((cost + (0.35 if not rest else 0.9), [*row[:-1], last], None))
        pending = nsmallest(9, grown, key=lambda p: p[0])
    rows = [(cost, row) for cost, row, carried in pending if carried is None]
    return rows


def _can_turn(item: Item) -> bool:
    return bool(item.options) and item.act.turn is None and item.act.verb not in ("hold", "turn", "and") and not item.act.label


def _turned(item: Item, turn: Turn, *, at_end: bool = False, claims: Act | None = None) -> Item:
    """The item with a turn told beside it taken into it."""
    from wallwise.reading.moves import items_of  # an act with its turn is read like any other

    act = replace(item.act, turn=turn)
    if claims is not None and claims.faces is not None and act.faces is None:
        act = replace(act, faces=claims.faces, faces_at=claims.faces_at)
    if item.act.figures or item.act.feet:
        fresh = items_of([act])[0]
        return Item(item.act, fresh.options)
    options = []
    for option in item.options:
        moves = list(option.moves)
        index = next((i for i in (range(len(moves) - 1, -1, -1) if at_end else range(len(moves)))), None)
        if index is None:
            continue
        at, move = moves[index]
        move = replace(move, turns=ticks(turn), way_told=turn.way is not None)
        if act.faces is not None and at_end:
            move = replace(move, faces=act.faces, faces_at=act.faces_at)
        moves[index] = (at, move)
        options.append(replace(option, moves=tuple(moves)))
    return Item(item.act, options)


def _silent_cost(item: Item, *, slots: bool) -> float | None:
    """What it costs to let the item have no count of its own; None: it must have one."""
    act = item.act
    if not item.options:
        return 0.4 if act.unknown else 0.05
    if act.verb == "and":
        return 0.0 if slots else None
    if act.verb == "recover" and act.also:
        return 0.1
    if act.label:
        return 0.15
    if act.closed:
        return 0.6
    if act.ing and act.verb in ("sweep", "drag", "hitch", "flick", "kick", "hook", "brush", "roll", "bump", "swivel", "bounce", "lock", "pop", "touch", "point"):
        return 0.2
    if act.aside:
        return 0.3
    if act.verb == "hold":
        return 0.3 if act.joined else 0.8
    if act.verb in ("sweep", "drag"):
        return 0.9
    if act.verb in ("hitch", "flick", "bump", "roll", "swivel", "pop", "bounce", "hook", "kick", "sway", "lock", "brush"):
        return 0.9 if act.joined else 1.4
    if act.figures:
        return 1.2  # often the name of what is told step by step beside it
    return 2.5 if act.unknown else 3.0


def _note(moves: tuple[Placed, ...], item: Item) -> tuple[Placed, ...]:
    """What an item without a count of its own leaves on the move before it."""
    act = item.act
    if not moves:
        return moves
    at, last = moves[-1]
    words = act.also if act.verb == "hold" else []
    if act.verb in ("sweep", "drag", "hitch", "flick", "bump", "roll"):
        words = [act.verb + (f" {act.foot.value}" if act.foot else "")]
    changed = last
    if words:
        changed = replace(changed, also=(*changed.also, *words))
    if act.faces is not None and last.faces is None:
        changed = replace(changed, faces=act.faces, faces_at=act.faces_at)
    if act.verb == "recover" and act.also and act.foot is not None and last.weight is None:
        changed = replace(changed, weight=act.foot, weight_at=act.foot_at)
    if isinstance(act.weight, Foot) and last.weight is None:
        changed = replace(changed, weight=act.weight, weight_at=act.weight_at)
    return moves if changed is last else (*moves[:-1], (at, changed))


# -- on slots ----------------------------------------------------------------------------------


_Row = tuple[float, tuple[Placed, ...], bool, bool]


def _slots(items: list[Item], slots: tuple[Fraction, ...]) -> list[Layout]:
    n = len(slots)
    # best[s]: the cheapest (cost, moves, may last longer, something was given no count) with the first s slots taken
    best: dict[int, list[_Row]] = {0: [(0.0, (), False, False)]}
    for i, item in enumerate(items):
        after: dict[int, list[_Row]] = {}
        silent = _silent_cost(item, slots=True)
        passed = bool(item.options) and not (item.act.label or item.act.aside or item.act.figures or item.act.verb in ("and", "hold"))
        for s, rows in best.items():
            for row in rows:
                if silent is not None:
                    cost, moves, elastic, hushed = row
                    after.setdefault(s, []).append((cost + silent, _note(moves, item), elastic, hushed or passed))
                for option in item.options:
                    _lay_option(after, row, s, option, slots, items, i)
        best = {s: rows if len(rows) <= KEEP else nsmallest(KEEP, rows, key=_price) for s, rows in after.items()}
    found = [_closed(row, n - s) for s, rows in best.items() for row in rows]
    return nsmallest(KEEP, found, key=lambda lay: lay.cost)


def _closed(row: _Row, left: int) -> Layout:
    """A finished row as a layout: what it costs that the last `left` slots have nothing."""
    cost, moves, elastic, hushed = row
    if left:
        cost += (0.15 if elastic else 0.9) + 0.6 * (left - 1) if moves else 6.0
        if hushed and not elastic:
            cost += 2.0  # something told was given no count, and a count has nothing
    return Layout(cost, moves, Fraction(left) if not elastic else _ZERO)


def _certain(move: Move) -> Move:
    """The move as one that has a count of its own, written for it."""
    return replace(move, kinds=((Kind.STEP, 0.0),)) if move.from_figure == PERHAPS else move


def _lay_option(
    after: dict[int, list[_Row]], row: _Row, s: int, option: Option, slots: tuple[Fraction, ...], items: list[Item], i: int
) -> None:
    cost, moves, _, hushed = row
    k = len(option.moves)
    for drop_last in (False, True):
        count = k - drop_last
        if not drop_last and _tells_twice(items, i, option):
            continue
        if drop_last and (k < 2 or not _absorbs(items, i, option)):
            break
        if count == 0 or s + count > len(slots):
            continue
        beats = slots[s : s + count]
        laid = tuple((beat, _certain(move)) for beat, (_, move) in zip(beats, option.moves, strict=False))
        price = cost + option.cost + (0.1 if drop_last else 0.0)
        if k > 1 and not drop_last:
            price += _rhythm_cost(option, beats)
        after.setdefault(s + count, []).append((price, moves + laid, option.elastic, hushed))
        if option.elastic:
            for more in range(1, min(4, len(slots) - s - count) + 1):
                after.setdefault(s + count + more, []).append((price + 0.25 * more, moves + laid, option.elastic, hushed))


def _absorbs(items: list[Item], i: int, option: Option) -> bool:
    """Whether the act after a figure may stand for the figure's last step.

    "Side rock, recover" tells the recover twice over; "vine with a scuff" tells another ending.
    """
    here = items[i].act
    nxt = next((it for it in items[i + 1 :] if it.act.verb != "and"), None)
    if not here.figures or nxt is None or not nxt.options:
        return False
    first = nxt.options[0].moves[0][1]
    last = option.moves[-1][1]
    if first.kinds[0][0] is last.kinds[0][0] and (nxt.act.fresh or last.kinds[0][0] is Kind.RECOVER) and (first.place is last.place or first.place is Place.UNSAID):
        return True
    return len(option.moves) > 2 and not nxt.act.fresh and nxt.act.start - here.end <= 12


def _tells_twice(items: list[Item], i: int, option: Option) -> bool:
    """Whether the act after a figure says its recover over again, so that the figure cannot hold it too."""
    nxt = next((it for it in items[i + 1 :] if it.act.verb != "and"), None)
    return (
        len(option.moves) > 1
        and option.moves[-1][1].kinds[0][0] is Kind.RECOVER
        and nxt is not None
        and nxt.act.verb == "recover"
        and not nxt.act.also
        and bool(items[i].act.figures)
    )


def _rhythm_cost(option: Option, beats: tuple[Fraction, ...]) -> float:
    """How far a figure's own rhythm is from the beats written."""
    own = [at for at, _ in option.moves]
    off = sum(1 for a, b in zip(own, beats, strict=True) if a - own[0] != b - beats[0])
    return 0.12 * off


# -- on time --------------------------------------------------------------------------------------


# Time runs in whole ticks inside the search: adding fractions is what it would spend its time on.
_TICKS = 24


def _time(items: list[Item], start: Fraction, counts: Fraction) -> list[Layout]:
    # best[t]: the cheapest (cost, chain of laid options) that end at tick t
    best: dict[int, list[tuple[float, _Chain]]] = {0: [(0.0, None)]}
    limit = int(counts * _TICKS) + 4 * _TICKS
    for i, item in enumerate(items):
        after: dict[int, list[tuple[float, _Chain]]] = {}
        silent = _silent_cost(item, slots=False)
        ways = list(_timed_ways(items, i))
        for t, rows in best.items():
            for cost, chain in rows:
                if silent is not None:
                    after.setdefault(t, []).append((cost + silent, (chain, t, (), item)))
                for lasts, price, moves, elastic in ways:
                    end = t + lasts
                    if end > limit:
                        continue
                    link = (chain, t, moves, item)
                    after.setdefault(end, []).append((cost + price, link))
                    if elastic:
                        for more in (1, 2, 3):
                            if end + more * _TICKS <= limit:
                                after.setdefault(end + more * _TICKS, []).append((cost + price + 0.35 * more, link))
        best = {t: rows if len(rows) <= KEEP else nsmallest(KEEP, rows, key=_price) for t, rows in after.items()}
    whole = int(counts * _TICKS)
    found = sorted(
        ((cost + 0.1 + 3.0 * abs(whole - t) / _TICKS, t, chain) for t, rows in best.items() for cost, chain in rows),
        key=_price,
    )
    return [
        Layout(cost, _laid(chain, start), Fraction(max(whole - t, 0), _TICKS), Fraction(max(t - whole, 0), _TICKS))
        for cost, t, chain in found[:KEEP]
    ]


_Chain = tuple | None  # type: ignore[type-arg]  # (chain before, tick, moves, item)


def _price(row: tuple) -> float:  # type: ignore[type-arg]
    cost: float = row[0]
    return cost


def _timed_ways(items: list[Item], i: int) -> Iterator[tuple[int, float, tuple[Placed, ...], bool]]:
    """Each way an item can be danced of itself: ticks it lasts, cost, moves, whether it may last longer."""
    for option in items[i].options:
        if option.moves and not _tells_twice(items, i, option):
            yield int(option.counts * _TICKS), option.cost, option.moves, option.elastic
        if len(option.moves) > 1 and _absorbs(items, i, option):
            yield int(option.moves[-1][0] * _TICKS), option.cost + 0.1, option.moves[:-1], option.elastic


def _laid(chain: _Chain, start: Fraction) -> tuple[Placed, ...]:
    links = []
    while chain is not None:
        chain, t, moves, item = chain
        links.append((t, moves, item))
    placed: tuple[Placed, ...] = ()
    for t, moves, item in reversed(links):
        if moves:
            at = start + Fraction(t, _TICKS)
            placed += tuple((at + offset, move) for offset, move in moves)
        else:
            placed = _note(placed, item)
    return placed
