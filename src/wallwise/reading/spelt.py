"""Figures whose steps are told behind their name: one telling, and danced once.

"Vine right: step R to side, L behind, R to side, touch L" is a vine, whose name says nothing that its
steps do not.  "Sailor 1/2 turn right stepping R behind L, L to side, R forward" is one sailor step: the
name tells how it turns, the steps where the feet go.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction
from operator import itemgetter

from wallwise.dance.model import Foot, Kind, Place
from wallwise.reading.clauses import Act
from wallwise.reading.moves import STILL, Item, Move, Option
from wallwise.reading.ways import items_of

Placed = tuple[tuple[Fraction, Move], ...]

_TOLD = 0.1  # the name only says what the steps after it are
_SPELT = 0.15  # steps that a figure's name tells already
_ENDS_ELSEWHERE = 0.1  # the figure's last step goes where it does not as a rule
_FEWEST = 2  # steps that spell a figure are more than these
_ONE_FOOT = (Foot.LEFT, Foot.RIGHT)


def spelt(items: list[Item]) -> Iterator[tuple[float, list[Item]]]:
    """The items as they stand, then with a name and the steps that spell it taken for one, with costs."""
    told, set_apart = _without_names(items)
    if told is None or not set_apart:
        yield (
            0.0,
            items,
        )  # but nobody dances steps in brackets, or behind a colon, beside the figure they spell
    if told is not None:
        yield _TOLD, told
    for i, item in enumerate(items):
        act = item.act
        yield from ((_SPELT, [*items[:i], one, *rest]) for one, rest in _turned_by_name(items[i:]))
        if not act.figures or act.label or act.aside or not act.place or len(items) == i + 1:
            continue
        behind = [other for other in items[i + 1 :] if other.act.verb != "and"]
        yield from ((_SPELT, [*items[:i], one, *rest]) for one, rest in _led_by_name(items[i:], behind))


def _without_names(items: list[Item]) -> tuple[list[Item] | None, bool]:
    """The items without the names of figures whose steps are told behind them; None where there are none.

    The second is whether brackets or a colon set all these steps apart from the names.
    """
    mended, found, i = list(items), False, 0
    set_apart = True
    while i < len(mended):
        behind = _steps_behind(mended, i)
        if behind is None:
            i += 1
            continue
        first, last = behind
        lead = _lead(mended[i])
        apart = mended[i].act.label or all(item.act.aside for item in mended[first:last])
        set_apart = set_apart and apart
        steps = [_plain(item) for item in mended[first:last]]
        told = [_in_the_open(item, lead if n == 0 else None) for n, item in enumerate(steps)]
        mended, found = [*mended[:i], *told, *mended[last:]], True
        i += len(told)
    return (mended if found else None), set_apart


def told_otherwise(items: list[Item], i: int) -> bool:
    """Whether the steps behind the figure's name at `i` begin on the foot that it cannot begin on."""
    name, behind = items[i], next((item for item in items[i + 1 :] if item.options), None)
    if behind is None or behind.act.figures or behind.act.foot not in _ONE_FOOT:
        return False
    return bool(name.act.figures) and _lead(name) is behind.act.foot.other


def _steps_behind(items: list[Item], i: int) -> tuple[int, int] | None:
    """From where to where the steps of the figure at `i` are told behind it; None where they are not."""
    if not items[i].act.figures or items[i].act.times > 1:
        return None
    first = i + 1
    while first < len(items) and _belongs_to_name(items[first].act):
        first += 1
    told = [_told_for(option, items[first:]) for option in items[i].options if len(option.moves) > _FEWEST]
    longest = max((n for n, _ in told), default=0)
    if not longest or not _turns_alike([item.act for item in items[i:first]], items[first : first + longest]):
        return None
    return first, first + longest


def _belongs_to_name(act: Act) -> bool:
    """Whether it only says where the figure goes, or that it turns: "to the left, with a quarter turn:"."""
    goes = act.toward is not None and not (act.foot or act.place or act.part or act.both or act.feet)
    return (goes and not act.verb and not act.figures) or (act.verb == "turn" and act.label)


def _told_for(option: Option, items: list[Item], *, turned: bool = False) -> tuple[int, list[Move]]:
    """How many items tell the moves of the figure one by one, and as which moves; 0 where they tell others.

    `turned` lets any of them go elsewhere than the figure's step: a turn makes a side step one forward.
    """
    wanted, found = [move for _, move in option.moves], list[Move]()
    turns = False  # a turn told before the step
    for n, item in enumerate(map(_plain, items)):
        if not wanted:
            return n, found
        if item.act.verb == "and" or _is_turn_of_next(item.act):
            turns = turns or item.act.verb == "turn"
            continue
        freely, turns = turned or turns or item.act.spread, False
        told = next((way for way in item.options if _tells(way, wanted, freely=freely)), None)
        if told is None or item.act.figures or item.act.label:
            return 0, []
        found += [move for _, move in told.moves]
        wanted = wanted[len(told.moves) :]
    return (0, []) if wanted else (len(items), found)


def _is_turn_of_next(act: Act) -> bool:
    """Whether it is a plain turn, which the step behind it takes: "turn 1/4 left and step L behind"."""
    return act.verb == "turn" and act.turn is not None and act.turn.own in ("", "turn") and not act.feet


def _plain(item: Item) -> Item:
    """A foot alone behind a figure's name as a step: "vine left, left, right behind, left"."""
    if not (item.act.filled and item.act.figures):
        return item
    return items_of([replace(item.act, figures=(), verb="step", filled=False)])[0]


def _tells(way: Option, wanted: list[Move], *, freely: bool) -> bool:
    """Whether the moves of an item are the next ones of the figure; `freely`: they may go elsewhere."""
    moves = [move for _, move in way.moves]
    pairs = zip(moves, wanted, strict=False)
    return 0 < len(moves) <= len(wanted) and all(_alike(told, own, freely=freely) for told, own in pairs)


def _alike(told: Move, own: Move, *, freely: bool) -> bool:
    """Whether a step told may be that step of the figure: by weight, foot and place."""
    same_weight = told.kinds[0][0].takes_weight is own.kinds[0][0].takes_weight
    same_foot = told.foot is own.foot or None in (told.foot, own.foot)
    turned = told.turns != STILL or own.turns != STILL  # a turn makes a step to the side one forward
    gesture = not own.kinds[0][0].takes_weight
    return same_weight and same_foot and (turned or gesture or freely or _same_place(told, own))


def _same_place(told: Move, own: Move) -> bool:
    places = {_line(told.place), _line(own.place)}
    return len(places) == 1 or Place.UNSAID.value in places


def _line(place: Place) -> str:
    """The line a foot goes along: a step told "back" may be the figure's back diagonal."""
    return place.value.removesuffix(" diagonal")


def _turns_alike(name: list[Act], told: list[Item]) -> bool:
    """Whether a turn that the name tells is told of one of the steps too."""
    named = next((act.turn for act in name if act.turn is not None), None)
    turns = [item.act.turn for item in told if item.act.turn is not None]
    if named is None:
        return True
    size = sum(turn.eighths or 0 for turn in turns)
    ways = {turn.way for turn in (named, *turns)} - {None}
    return bool(turns) and len(ways) <= 1 and (named.eighths is None or size == named.eighths)


def _lead(name: Item) -> Foot | None:
    """The foot that the figure named begins on; None where it may be either."""
    leads = {option.moves[0][1].foot for option in name.options if option.moves}
    return leads.pop() if len(leads) == 1 else None


def _in_the_open(item: Item, lead: Foot | None) -> Item:
    """The item as one that is danced, though it stands in brackets; on the `lead` where it says no foot."""
    if lead is None:
        return Item(replace(item.act, aside=False), item.options)
    options = []
    for option in item.options:
        if option.moves:
            (at, move), *rest = option.moves
            options.append(replace(option, moves=((at, replace(move, foot=move.foot or lead)), *rest)))
    return Item(replace(item.act, aside=False), options)


# -- the turn told with the name ----------------------------------------------------------------


def _turned_by_name(items: list[Item]) -> Iterator[tuple[Item, list[Item]]]:
    """The figure that turns as its name says and steps as the items behind it spell, and what is left then.

    "Sailor with 1/4 turn right: R behind L, L to side, R forward": no step tells the turn.
    """
    act = items[0].act
    if not act.figures or act.turn is None or act.times > 1:
        return
    found = [
        (len(_elsewhere(option, told)), size, option, told)
        for option in items[0].options
        for size, told in (_told_for(option, items[1:], turned=True),)
        if len(option.moves) > _FEWEST and size
    ]
    if not found:
        return
    _, size, option, told = min(found, key=itemgetter(0))
    if all(item.act.turn is None for item in items[1 : size + 1]):
        yield Item(replace(act, label=False), [_turning_with(option, told)]), items[size + 1 :]


def _elsewhere(option: Option, told: list[Move]) -> list[int]:
    """The indices of the figure's steps that are told to go elsewhere than they go of themselves."""
    pairs = zip(option.moves, told, strict=False)
    return [i for i, ((_, own), step) in enumerate(pairs) if not _same_place(step, own)]


def _turning_with(option: Option, told: list[Move]) -> Option:
    """The figure as told, its turn taken by the first step that goes elsewhere, if any does."""
    moves = [move for _, move in option.moves]
    turning = [move for move in moves if move.turns != STILL]
    moved = _elsewhere(option, told)
    if moved and len(turning) == 1:
        turn = turning[0]
        moves = [replace(move, turns=STILL) for move in moves]
        moves[moved[0]] = replace(moves[moved[0]], turns=turn.turns, way_told=turn.way_told)
    beats = [at for at, _ in option.moves]
    as_told = [_as_told(move, step) for move, step in zip(moves, told, strict=True)]
    return replace(option, moves=tuple(zip(beats, as_told, strict=True)))


# -- the first step told with the name --------------------------------------------------------


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
