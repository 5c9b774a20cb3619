"""Items laid on beats: which move falls on which count of a count mark.

Two ways of counting compete.  On *slots*, each beat that a mark writes out takes one
move.  On *time*, every item lasts as long as it does of itself (a shuffle two counts) and
the whole must fill the span.  Both are small searches, item by item, that keep the few
cheapest results for each place they can have reached.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass, replace
from fractions import Fraction
from heapq import nsmallest
from operator import attrgetter, itemgetter
from typing import Any, NamedTuple, TypeAlias, TypeVar

from wallwise.dance.model import Foot, Kind, Place
from wallwise.reading.moves import PERHAPS, STILL, Item, Move, Option, turns_besides
from wallwise.reading.silent import Placed, must_count, note, silent_cost
from wallwise.reading.spelt import told_otherwise
from wallwise.reading.variants import variants

KEEP = 8
_BOTH_FEET = {Foot.LEFT, Foot.RIGHT}
_LIKELY = 3 * KEEP  # looked at more closely
_SAID_AGAIN = {Kind.RECOVER: "recover", Kind.HOLD: "hold"}
_ZERO = Fraction(0)
_ABSORBED = 0.1  # the next act stands for a figure's last step
_OFF_RHYTHM = 0.12  # a step of a figure on another beat than its own
_NEAR = 12  # characters between a figure and what may tell its ending
_EARLY = 0.6  # a quick step before the first count told
_TURN_LOST, _TURN_ELSEWHERE = 2.0, 0.5
_TOLD_OTHERWISE = 2.0
_FULL = 8  # eighths: a whole turn changes no facing
_LONGER, _EACH_LONGER = 0.8, 0.2  # a hold or a drag that lasts more than its count
_DANCED_TWICE = 0.4  # what brackets behind a figure tell, besides the figure
_BOTH_SHOWN = 1.0  # one foot touches after the other, with no step between: the weight cannot be on both
_UNEVEN = 0.3  # a figure that is danced in another rhythm the second time
_NOTHING = 6.0  # a mark without a move
# Time runs in whole ticks inside the search: adding fractions is what it would spend its time on.
_TICKS = 24


@dataclass(frozen=True, slots=True)
class Layout:
    """Moves on beats, with what it costs to believe it.

    `left` beats at the end had nothing; `over` beats the moves last too long.
    """

    cost: float
    moves: tuple[Placed, ...]
    left: Fraction = _ZERO
    over: Fraction = _ZERO


def on_slots(items: list[Item], slots: tuple[Fraction, ...]) -> list[Layout]:
    """The cheapest ways to lay the items on the beats a mark writes out, one move a beat."""
    return _cheapest([_dearer(lay, cost) for cost, row in variants(items) for lay in _slots(row, slots)])


def on_time(items: list[Item], start: Fraction, counts: Fraction) -> list[Layout]:
    """The cheapest ways to lay the items one after the other from `start` so that they fill `counts`."""
    whole = int(counts * _TICKS)
    ends = [
        (extra + cost, tick, chain)
        for extra, row in variants(items)
        for cost, tick, chain in _time(row, whole)
    ]
    likely = nsmallest(_LIKELY, ends, key=itemgetter(0))
    ends = [(cost + _oddness(chain), tick, chain) for cost, tick, chain in likely]
    return [
        Layout(
            cost,
            _laid(chain, start),
            left=Fraction(max(whole - tick, 0), _TICKS),
            over=Fraction(max(tick - whole, 0), _TICKS),
        )
        for cost, tick, chain in nsmallest(KEEP, ends, key=itemgetter(0))
    ]


def _dearer(layout: Layout, extra: float) -> Layout:
    return replace(layout, cost=layout.cost + extra) if extra else layout


def _cheapest(layouts: list[Layout]) -> list[Layout]:
    return nsmallest(KEEP, layouts, key=attrgetter("cost"))


_Row = TypeVar("_Row", bound=tuple[Any, ...])  # its cost comes first


def _pruned(reached: dict[int, list[_Row]]) -> dict[int, list[_Row]]:
    """The cheapest rows that reached each place."""
    return {
        place: rows if len(rows) <= KEEP else nsmallest(KEEP, rows, key=itemgetter(0))
        for place, rows in reached.items()
    }


# -- the ways of an item ----------------------------------------------------------------------


class _Way(NamedTuple):
    """One way to dance an item: all moves of an option, or all but the last."""

    option: Option
    moves: tuple[Placed, ...]
    cost: float

    @property
    def whole(self) -> bool:
        return len(self.moves) == len(self.option.moves)


def _ways(items: list[Item], i: int) -> Iterator[_Way]:
    following = next((item for item in items[i + 1 :] if item.act.verb != "and"), None)
    explains = _DANCED_TWICE if _explains(items, i) else 0.0
    for option in items[i].options:
        if option.moves and not _tells_twice(items[i], option, following):
            yield _Way(option, option.moves, option.cost + explains)
        if len(option.moves) > 1 and _absorbs(items[i], option, following):
            yield _Way(option, _without_last(option.moves), option.cost + _ABSORBED)


def _explains(items: list[Item], i: int) -> bool:
    """Whether it stands in the brackets behind a figure, which as a rule say how that goes."""
    if not items[i].act.aside:
        return False
    before = next((item.act for item in reversed(items[:i]) if not item.act.aside), None)
    return before is not None and bool(before.figures)


def _without_last(moves: tuple[Placed, ...]) -> tuple[Placed, ...]:
    """The moves but the last; a turn told for that one is danced by the one before it."""
    *others, (at, move), (_, last) = moves
    if last.turns != STILL and move.turns == STILL:
        move = replace(move, turns=last.turns, way_told=last.way_told)
    return (*others, (at, move))


def _silent(items: list[Item], i: int, *, slots: bool) -> float | None:
    """What it costs to let the item have no count; more where a turn that only its name tells is lost."""
    if turns_besides(items[i]):
        return None  # a turn told beside it is danced with it
    cost, turn = silent_cost(items[i], slots=slots), items[i].act.turn
    if cost is not None and items[i].act.label and told_otherwise(items, i):
        return cost + _TOLD_OTHERWISE
    if cost is None or turn is None or not items[i].act.label or turn.eighths in (None, _FULL):
        return cost
    told = any(other.act.turn is not None for other in items[i + 1 :])
    if items[i].act.verb == "turn" and turn.way is None:
        return cost if told else cost + _TURN_ELSEWHERE  # "A slow half turn: step forward (1, 2), turn …"
    return cost if told or len(items) == i + 1 else cost + _TURN_LOST


def _absorbs(item: Item, option: Option, following: Item | None) -> bool:
    """Whether the act after a figure may stand for the figure's last step.

    "Side rock, recover" tells the recover twice over; "vine with a scuff" tells another ending.
    """
    if not item.act.figures or following is None or not following.options:
        return False
    act = following.act
    if act.aside:
        return False
    first, last = following.options[0].moves[0][1], option.moves[-1][1]
    last_kind = last.kinds[0][0]
    if first.kinds[0][0] is Kind.HOLD and last.kinds[0][0].takes_weight:
        return False  # "shuffle forward & clap" is a whole shuffle
    if {first.foot, last.foot} == {Foot.LEFT, Foot.RIGHT}:
        return False  # "R coaster, step L": another step than the coaster's last
    same_kind = first.kinds[0][0] is last_kind and (act.fresh or last_kind is Kind.RECOVER)
    if same_kind and first.place in (last.place, Place.UNSAID):
        return True
    if act.fresh or act.start - item.act.end > _NEAR:
        return False
    # "vine, touch" is three steps and a touch: where the figure has a longer way, none is cut short
    return len(option.moves) > 2 and len(option.moves) == max(len(o.moves) for o in item.options)


def _tells_twice(item: Item, option: Option, following: Item | None) -> bool:
    """Whether the act after a figure says its recover or its hold over, so that it cannot have both."""
    if following is None or not item.act.figures or len(option.moves) < 2:
        return False
    again = _SAID_AGAIN.get(option.moves[-1][1].kinds[0][0])
    return again == following.act.verb and set(following.act.also) <= {again}


# -- on slots ---------------------------------------------------------------------------------


class _Filled(NamedTuple):
    """The first slots taken: what it costs, and by which moves."""

    cost: float
    moves: tuple[Placed, ...]
    elastic: bool = False  # the last option may last longer
    hushed: bool = False  # something told was given no count


def _slots(items: list[Item], slots: tuple[Fraction, ...]) -> list[Layout]:
    best = {0: [_Filled(0.0, ())]}  # by the number of slots taken
    for i, item in enumerate(items):
        after: dict[int, list[_Filled]] = defaultdict(list)
        silent = _silent(items, i, slots=True)
        hushes = bool(item.options) and must_count(item.act)
        ways = [] if _only_joins(items, i) else list(_ways(items, i))
        for taken, rows in best.items():
            laid = [lay for way in ways for lay in _on_slots_from(way, slots, taken)]
            for cost, moves, elastic, hushed in rows:
                if silent is not None:
                    row = _Filled(cost + silent, note(moves, item), elastic, hushed or hushes)
                    after[taken].append(row)
                for end, more, added, stretches in laid:
                    after[end].append(_Filled(cost + more, moves + added, stretches, hushed))
        best = _pruned(after)
    return _cheapest([_closed(row, len(slots) - taken) for taken, rows in best.items() for row in rows])


def _only_joins(items: list[Item], i: int) -> bool:
    """Whether the item is an "&" that only joins what is no step: "& clap"."""
    following = items[i + 1].act.verb if i + 1 < len(items) else ""
    return items[i].act.verb == "and" and following == "hold"


def _on_slots_from(
    way: _Way, slots: tuple[Fraction, ...], taken: int
) -> Iterator[tuple[int, float, tuple[Placed, ...], bool]]:
    """The way laid on the next slots: slots taken then, cost, moves, whether it may last longer."""
    end = taken + len(way.moves)
    if end > len(slots):
        return
    beats = slots[taken:end]
    if beats[0].denominator == 1 and way.option.moves[0][1].from_figure == PERHAPS:
        return  # "&" alone is danced between the counts
    moves = tuple((beat, _certain(move)) for beat, (_, move) in zip(beats, way.moves, strict=True))
    cost = way.cost + (_rhythm_cost(way.option, beats) if way.whole else 0.0)
    elastic = way.option.elastic
    yield end, cost, moves, elastic
    if elastic:
        for more in range(1, min(4, len(slots) - end) + 1):
            yield end + more, cost + 0.25 * more, moves, elastic


def _certain(move: Move) -> Move:
    """The move as one that has a count of its own, written for it."""
    return replace(move, kinds=((Kind.STEP, 0.0),)) if move.from_figure == PERHAPS else move


def _rhythm_cost(option: Option, beats: tuple[Fraction, ...]) -> float:
    """How far a figure's own rhythm is from the beats written."""
    first = option.moves[0][0]
    told = [(at - first, beat - beats[0]) for (at, _), beat in zip(option.moves, beats, strict=True)]
    off = sum(own != written for own, written in told)
    slowly = off and all(2 * own == written for own, written in told)  # a scissor step on 1-3
    return 0.0 if slowly else _OFF_RHYTHM * off


def _closed(row: _Filled, left: int) -> Layout:
    """A finished row as a layout: what it costs that the last `left` slots have nothing."""
    cost = row.cost
    if left and row.moves:
        cost += (0.15 if row.elastic else 0.9) + 0.6 * (left - 1)
    elif left:
        cost += _NOTHING
    if left and row.hushed and not row.elastic:
        cost += 2.0  # something told was given no count, and a count has nothing
    return Layout(cost, row.moves, _ZERO if row.elastic else Fraction(left))


# -- on time ----------------------------------------------------------------------------------


# An item danced from a tick on, after those before it; without moves it has no count of its own.
# A plain tuple: the search makes hundreds of them for each that it keeps.
_Link: TypeAlias = "tuple[_Link | None, int, tuple[Placed, ...], Item]"


def _time(items: list[Item], whole: int) -> Iterator[tuple[float, int, _Link | None]]:
    """The cheapest rows of moves about `whole` ticks long: cost, ticks, the last move's link."""
    limit = whole + 4 * _TICKS
    best: dict[int, list[tuple[float, _Link | None]]] = {0: [(0.0, None)]}  # by the tick reached
    for i, item in enumerate(items):
        after: dict[int, list[tuple[float, _Link | None]]] = defaultdict(list)
        silent = _silent(items, i, slots=False)
        ways = [timed for way in _ways(items, i) for timed in _timed(way)]
        for tick, rows in best.items():
            for cost, chain in rows:
                if silent is not None:
                    after[tick].append((cost + silent, (chain, tick, (), item)))
                for lasts, more, moves in ways:
                    if tick + lasts <= limit:
                        early = _EARLY if tick == 0 and moves and moves[0][0] < 0 else 0.0
                        after[tick + lasts].append((cost + more + early, (chain, tick, moves, item)))
        best = _pruned(after)
    for tick, rows in best.items():
        for cost, chain in rows:
            yield cost + 0.1 + 3.0 * abs(whole - tick) / _TICKS, tick, chain


def _timed(way: _Way) -> Iterator[tuple[int, float, tuple[Placed, ...]]]:
    """The way at its own length and, where it may last longer, at more: ticks, cost, moves."""
    lasts = int((way.option.counts if way.whole else way.option.moves[-1][0]) * _TICKS)
    yield lasts, way.cost, way.moves
    if way.option.elastic:
        for more in (1, 2, 3):
            yield lasts + more * _TICKS, way.cost + _LONGER + _EACH_LONGER * more, way.moves


def _oddness(chain: _Link | None) -> float:
    """What it costs that a figure changes its rhythm, and that one foot after the other is only shown."""
    rhythms: dict[str, tuple[Fraction, ...]] = {}
    after: Foot | None = None  # the foot that the next move only shows, as the chain goes back in time
    cost = 0.0
    while chain is not None:
        chain, _, moves, item = chain
        if moves and item.act.figures:
            rhythm = tuple(at for at, _ in moves)
            cost += _UNEVEN * (rhythms.setdefault(item.act.figures[0].name, rhythm) != rhythm)
        for _, move in reversed(moves):
            shown = None if move.kinds[0][0].takes_weight else move.foot
            cost += _BOTH_SHOWN * ({shown, after} == _BOTH_FEET)
            after = shown
    return cost


def _laid(chain: _Link | None, start: Fraction) -> tuple[Placed, ...]:
    links = []
    while chain is not None:
        links.append(chain)
        chain = chain[0]
    placed: tuple[Placed, ...] = ()
    for _, tick, moves, item in reversed(links):
        if moves:
            at = start + Fraction(tick, _TICKS)
            placed += tuple((at + offset, move) for offset, move in moves)
        else:
            placed = note(placed, item)
    return placed
