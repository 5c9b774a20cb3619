"""The ways to dance a figure by its name: which foot leads, where a told turn falls, the feet told."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from typing import NamedTuple

from wallwise.dance.model import Foot, Kind, Place
from wallwise.glossary.entry import Figure, Way
from wallwise.reading.clauses import Act, Turn
from wallwise.reading.moves import Move, Option, claiming, mirrored, only
from wallwise.reading.tokens import TURN
from wallwise.reading.ways.kinds import moves_both, place_named

_QUARTER = TURN // 4
_ONE_FOOT = (Foot.LEFT, Foot.RIGHT)
_ANOTHER_WAY = 0.45  # a way of the figure that is not its first,
_EACH_LATER = 0.05  # and more for each after that
_MOST_LEADS = 4  # "heel struts R, L, R, L"
_FEWEST_FEET = 3  # of a triple: a foot told more than once there has its own place
_EACH_FOOT = 0.1  # feet told that each lead the figure,
_FEET_OF_STEPS = 0.6  # though they are as many as its steps
_ANOTHER_FIGURE = 0.3  # a figure that shares the name with a likelier one


def figure_options(act: Act) -> list[Option]:
    """The ways to dance the figure that the act names, or each of those that share the name."""
    act = _led_once(act)
    each_foot = list(_for_each_foot(act))
    if act.times == len(act.feet) and each_foot:
        return [claiming(option, act) for option in each_foot]
    options = [
        option
        for order, figure in enumerate(act.figures)
        for option in _of_figure(_naming(act, figure), order=order)
    ]
    if act.feet:
        options = [_on_feet(_cut_to(option, len(act.feet)), act) for option in options]
        options += each_foot
    options = _unique(options)
    if moves_both(act):
        kind = act.figures[0].ways[0].steps[0].kind
        both = Move(only(kind), Foot.BOTH, toward=act.foot, where=(act.start, act.end))
        options.append(Option(((Fraction(0), both),), Fraction(1), 0.3))
    if act.times > 1:
        options = [again for option in options for again in _again(option, act.times)]
    return [claiming(option, act) for option in options]


def _led_once(act: Act) -> Act:
    """The act without a lead that is told before all its feet: "chassé to the right, right left right"."""
    steps = {_single_steps(way) for figure in act.figures for way in figure.ways}
    told = len(act.feet)
    if told > _FEWEST_FEET and act.feet[0] is act.feet[1] and told - 1 in steps and told not in steps:
        return replace(act, feet=act.feet[1:])
    return act


def _for_each_foot(act: Act) -> Iterator[Option]:
    """The figure once for each foot told: "sailor steps R & L"; dearer where they may be its steps' feet."""
    if not 1 < len(act.feet) <= _MOST_LEADS:
        return
    for order, figure in enumerate(act.figures):
        steps_told = any(_single_steps(way) == len(act.feet) for way in figure.ways)
        each = [
            _of_figure(_naming(replace(act, feet=(), foot=foot), figure), order=order) for foot in act.feet
        ]
        for options in zip(*each, strict=False):
            yield _one_after_another(options, cost=_FEET_OF_STEPS if steps_told else _EACH_FOOT)


def _one_after_another(options: Sequence[Option], *, cost: float) -> Option:
    moves: list[tuple[Fraction, Move]] = []
    counts = Fraction(0)
    for option in options:
        moves += [(counts + beat, move) for beat, move in option.moves]
        counts += option.counts
    return Option(tuple(moves), counts, options[0].cost + cost)


def _unique(options: list[Option]) -> list[Option]:
    """No two that look alike, the cheaper kept in the place of the first."""
    found: dict[tuple[object, ...], Option] = {}
    for option in options:
        key = (tuple((at, m.foot, m.kinds, m.turns) for at, m in option.moves), option.counts)
        if key not in found or option.cost < found[key].cost:
            found[key] = option
    return list(found.values())


def _again(option: Option, times: int) -> Iterator[Option]:
    """A figure said to be done `times` times: on the same foot again, or on the other."""
    other = tuple((beat, mirrored(move)) for beat, move in option.moves)
    for second, cost in ((option.moves, 0.0), (other, 0.1)):
        moves = tuple(
            (option.counts * n + beat, move)
            for n in range(times)
            for beat, move in (second if n % 2 else option.moves)
        )
        yield Option(moves, option.counts * times, option.cost + cost)


# -- a figure as named -------------------------------------------------------------------------


def turn_named(act: Act) -> Turn | None:
    """The turn of a figure of turning, its own size where none is told: "a spiral turn right"."""
    figure = act.figures[0]
    turn = _naming(act, figure).turn if figure.side == "turn" else None
    if turn is None or turn.eighths is not None:
        return turn
    return replace(turn, eighths=abs(figure.ways[0].turn) * 8)


@dataclass(frozen=True, slots=True)
class _Naming:
    """A figure as an act names it: the foot that leads, the side and the turn told, None where unsaid."""

    act: Act
    figure: Figure
    lead: Foot | None
    side: Foot | None
    turn: Turn | None


def _naming(act: Act, figure: Figure) -> _Naming:
    """What a foot, a side and a turn beside the name mean for this figure (see `Figure.side`)."""
    foot = act.foot if act.foot in _ONE_FOOT else None
    lead = act.feet[0] if act.feet else foot
    side, turn = foot or act.toward, act.turn
    if act.feet and _says_way(act) and foot is not None and figure.ways[0].turn:
        turn = _turn_to(_way_to(foot), act)
    elif figure.side == "turn" and side in _ONE_FOOT:
        way = _way_to(side)
        turn = _turn_to(way, act)
        if not act.feet and (not act.sure or turn.way == way):
            lead = None
    elif figure.side == "travel" and not act.feet and not act.sure:
        lead = None
    elif figure.side == "lead" and lead is None and act.toward in _ONE_FOOT:
        lead = act.toward
    elif figure.side == "lead" and turn is not None and turn.way is None and act.toward in _ONE_FOOT:
        turn = replace(turn, way=_way_to(act.toward))  # "1/2 turn shuffle to the right, R-L-R"
    return _Naming(act, figure, lead, side, turn)


def _says_way(act: Act) -> bool:
    """Whether the foot stands behind a figure's name whose feet are told: "shuffle 1/2 turn L, R-L-R"."""
    return act.foot_at is not None and act.foot_at[0] > act.start


def _way_to(side: Foot) -> int:
    return 1 if side is Foot.RIGHT else -1


def _turn_to(way: int, act: Act) -> Turn:
    """The act's turn, `way` being told beside the figure's name."""
    if act.turn is None:
        return Turn(None, way, "", act.start, act.end)
    return replace(act.turn, way=way) if act.turn.way is None else act.turn


def _of_figure(told: _Naming, *, order: int) -> Iterator[Option]:
    for rank, way in enumerate(_fitting(told.figure, told.act)):
        cost = (_ANOTHER_WAY + _EACH_LATER * rank if rank else 0.0) + _ANOTHER_FIGURE * order
        if _alternates(told, way):
            # Whichever foot is free begins, and the feet alternate: no need to try both.
            for option in _led(told, way, lead=Foot.RIGHT, cost=cost):
                moves = tuple((at, replace(move, foot=None, toward=None)) for at, move in option.moves)
                yield replace(option, moves=moves)
        else:
            for lead in (told.lead,) if told.lead is not None else (Foot.RIGHT, Foot.LEFT):
                if _goes_to_side(told, way, lead):
                    yield from _led(told, way, lead=lead, cost=cost)


def _fitting(figure: Figure, act: Act) -> list[Way]:
    """The figure's ways that fit the direction and the number of feet told; all where none does."""
    ways = list(figure.ways)
    if act.place:
        place = place_named(act.place)
        ways = [way for way in ways if _goes(way, place)] or ways
    if act.feet:
        ways = [way for way in ways if _single_steps(way) == len(act.feet)] or ways
    return ways


def _goes(way: Way, place: Place | None) -> bool:
    """Whether the first place the way names is this one."""
    first = next((s.place for s in way.steps if s.place is not Place.UNSAID), None)
    return first is not None and first is place


def _single_steps(way: Way) -> int:
    return sum(s.weight for s in way.steps if s.foot in _ONE_FOOT)


def _alternates(told: _Naming, way: Way) -> bool:
    """Whether the foot that leads is unsaid and makes no difference but for left and right."""
    turn = told.turn
    if told.lead is not None or told.figure.side != "lead" or (turn is not None and turn.way is None):
        return False
    return _body_leads(way)


def _body_leads(way: Way) -> bool:
    """Whether the way, led by the foot that is free, leaves no choice of foot and no turn of its own."""
    weight = Foot.LEFT
    for step in way.steps:
        if step.turn or step.foot is not weight.other or step.kind.on_standing_foot or step.ends_on:
            return False
        weight = step.foot if step.weight else weight
    return True


def _goes_to_side(told: _Naming, way: Way, lead: Foot) -> bool:
    """Whether the way, led by that foot, travels to the side told, where one is told for travelling."""
    if told.figure.side != "travel" or told.act.sure or told.side is None:
        return True
    # a way is told led by the right foot; led by the left it travels the other way
    return way.travels is (told.side if lead is Foot.RIGHT else told.side.other)


# -- a way on a lead foot ----------------------------------------------------------------------


class _LedStep(NamedTuple):
    """A step of a way with its beat from 0 and its turn in 1/48."""

    at: Fraction
    foot: Foot
    kind: Kind
    place: Place
    turn: int
    toward: Foot | None
    ends_on: Foot | None


def _steps_led(way: Way, lead: Foot) -> list[_LedStep]:
    """The way's steps led by `lead`, the foot that moves first."""
    flip = lead is Foot.LEFT

    def side(foot: Foot) -> Foot:
        return foot.other if flip else foot

    return [
        _LedStep(
            s.at - 1, side(s.foot), s.kind, s.place, int(s.turn * TURN) * (-1 if flip else 1),
            side(s.toward) if s.toward else None, side(s.ends_on) if s.ends_on else None,
        )
        for s in way.steps
    ]  # fmt: skip


def _led(told: _Naming, way: Way, *, lead: Foot, cost: float) -> Iterator[Option]:
    """The way led by that foot, once for each place where the turn told may be taken."""
    steps = _steps_led(way, lead)
    own = sum(step.turn for step in steps)
    way_told = told.turn is None or told.turn.way is not None or bool(own)
    for shares, extra in _shares(way, own, told.turn, start=told.act.start):
        moves = []
        for i, step in enumerate(steps):
            move = Move(
                only(step.kind), step.foot, step.place, ((step.turn + shares.get(i, 0), 0.0),), step.toward,
                weight=step.ends_on, where=(told.act.start, told.act.end), from_figure=told.figure.name,
                loose=bool(shares) and i < len(steps) - 1, way_told=way_told,
            )  # fmt: skip
            if i == 0:
                move.foot_at = told.act.foot_at if told.lead is not None else None
                move.against, move.against_at = told.act.against, told.act.against_at
                if told.act.feet and told.figure.side == "lead" and step.place is Place.SIDE:
                    move.toward = told.side  # "chassé to the right, R-L-R"
            moves.append((step.at, move))
        yield Option(tuple(moves), way.counts, cost + extra)


def _shares(way: Way, own: int, turn: Turn | None, *, start: int) -> Iterator[tuple[dict[int, int], float]]:
    """Where a told turn is taken: extra turn by index of the step, with a cost for the less likely places.

    `start` is where the act begins: a quarter told first ("1/4 R shuffle") is turned first.
    """
    for in_all, cost in _in_all(own, turn):
        rest = in_all - own
        if not rest:
            yield {}, cost
            continue
        places = _turning_places(way)
        if turn is not None and not own:
            first = (_first_step(way),)
            if turn.ahead or (turn.start == start and abs(rest) <= _QUARTER and first in places):
                places = [first]
        for rank, place in enumerate(places):
            extra = dict.fromkeys(place, rest // len(place))
            extra[place[-1]] += rest % len(place)
            yield extra, cost + 0.04 * rank


def _first_step(way: Way) -> int:
    """The index of the first step that takes weight, which a turn told before the figure falls on."""
    return next((i for i, s in enumerate(way.steps) if s.weight), 0)


def _in_all(own: int, turn: Turn | None) -> list[tuple[int, float]]:
    """What the figure turns in all, as alternatives in 1/48; its own where nothing else is told."""
    if turn is None:
        return [(own, 0.0)]
    if turn.eighths is None:
        against = turn.way is not None and own * turn.way < 0
        return [(-own, 0.2)] if against else [(own, 0.0)]
    size = int(turn.eighths * TURN / 8)
    if turn.way is not None:
        return [(turn.way * size, 0.0)]
    if own:
        return [(size if own > 0 else -size, 0.0)]
    return [(size, 0.5), (-size, 0.5)]


def _turning_places(way: Way) -> list[tuple[int, ...]]:
    """The steps, by index, that a told turn may fall on, the likeliest first."""
    index = {s.at: i for i, s in enumerate(way.steps)}
    places = [tuple(index[beat] for beat in beats if beat in index) for beats in way.turn_on]
    places = [place for place in places if place]
    if places:
        return places
    turning = [i for i, s in enumerate(way.steps) if s.turn]
    weighted = [i for i, s in enumerate(way.steps) if s.weight]
    return [((turning or weighted or [len(way.steps) - 1])[-1],)]


# -- the feet told beside it -------------------------------------------------------------------


def _cut_to(option: Option, feet: int) -> Option:
    """A figure of which fewer feet are told than it has: as far as they go ("8& shuffle R L")."""
    steps = 0
    for i, (_, move) in enumerate(option.moves):
        steps += move.kinds[0][0].takes_weight
        if steps == feet and i + 1 < len(option.moves):
            return replace(
                option, moves=option.moves[: i + 1], counts=option.moves[i + 1][0], cost=option.cost + 0.4
            )
    return option


def _on_feet(option: Option, act: Act) -> Option:
    """The option on the feet that are told for it, right or wrong: the body will say.

    They are the feet of its steps, or of its gestures as well where it has as many: "kick ball change R-R-L".
    """
    moves, told = [], list(act.feet)
    gestures_too = sum(_moves_one(move) for _, move in option.moves) == len(told)
    for at, move in option.moves:
        if told and _moves_one(move) and (gestures_too or move.kinds[0][0].takes_weight):
            move = replace(move, foot=told.pop(0), foot_at=act.feet_at)
        moves.append((at, move))
    return replace(option, moves=tuple(moves))


def _moves_one(move: Move) -> bool:
    """Whether it moves one foot."""
    return move.foot is not Foot.BOTH and move.kinds[0][0] is not Kind.HOLD
