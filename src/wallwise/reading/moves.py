"""Acts to items: every way an act can be danced, with what each way costs in belief.

A cost is a degree of surprise: 0 is the plain reading, about 1 a reading that people do
mean now and then, `CONFLICT` and more contradicts something that the sheet says.
"""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from fractions import Fraction
from functools import lru_cache

from wallwise.dance.model import Foot, Kind, Place
from wallwise.glossary.entry import Figure, Way
from wallwise.reading.clauses import Act, Turn
from wallwise.reading.tokens import TURN

CONFLICT = 10.0
PERHAPS = "perhaps"  # a move that may be no event at all: the body decides
_ZERO = Fraction(0)
_HALF = Fraction(1, 2)
STILL: tuple[tuple[int, float], ...] = ((0, 0.0),)


@dataclass(slots=True)
class Move:
    """One event as far as the words go.

    `kinds` and `turns` are (value, cost) alternatives, turns in 1/48 of a full turn; `foot`
    is None where unsaid; `toward` the side it goes to, where said.  `faces` and `weight` are
    what the sheet claims afterwards.  `where` is the place in the line.
    """

    kinds: tuple[tuple[Kind, float], ...]
    foot: Foot | None = None
    place: Place = Place.UNSAID
    turns: tuple[tuple[int, float], ...] = STILL
    toward: Foot | None = None
    faces: int | None = None
    faces_at: tuple[int, int] | None = None
    weight: Foot | None = None
    weight_at: tuple[int, int] | None = None
    where: tuple[int, int] = (0, 0)
    foot_at: tuple[int, int] | None = None
    long: bool = False
    also: tuple[str, ...] = ()
    from_figure: str = ""
    against: Foot | None = None  # the foot it is placed beside, over or behind
    against_at: tuple[int, int] | None = None
    loose: bool = False  # inside a figure that turns as a whole: where in it the turn falls is not told
    way_told: bool = True  # False: a turn whose direction the sheet leaves open


@dataclass(slots=True)
class Option:
    """One way to dance an item: its moves, each with its beat from the item's start, and how long it lasts."""

    moves: tuple[tuple[Fraction, Move], ...]
    counts: Fraction
    cost: float = 0.0
    elastic: bool = False  # may last longer than it says
    into_next: Turn | None = None


@dataclass(slots=True)
class Item:
    """An act with its options; `act` is kept for messages and for "the same on the other foot"."""

    act: Act
    options: list[Option] = field(default_factory=list)


_KINDS: dict[str, tuple[tuple[Kind, float], ...]] = {
    "step": ((Kind.STEP, 0.0),),
    "rock": ((Kind.ROCK, 0.0),),
    "recover": ((Kind.RECOVER, 0.0),),
    "cross": ((Kind.STEP, 0.0),),
    "close": ((Kind.STEP, 0.0),),
    "lock": ((Kind.STEP, 0.0),),
    "ball": ((Kind.BALL, 0.0),),
    "stomp": ((Kind.STOMP, 0.0), (Kind.STOMP_UP, 1.2)),
    "stomp_up": ((Kind.STOMP_UP, 0.0),),
    "sway": ((Kind.SWAY, 0.0),),
    "drop": ((Kind.DROP, 0.0),),
    "touch": ((Kind.TOUCH, 0.0),),
    "point": ((Kind.POINT, 0.0),),
    "dig": ((Kind.HEEL, 0.0),),
    "kick": ((Kind.KICK, 0.0),),
    "flick": ((Kind.FLICK, 0.0),),
    "hook": ((Kind.HOOK, 0.0),),
    "hitch": ((Kind.HITCH, 0.0),),
    "brush": ((Kind.BRUSH, 0.0),),
    "scuff": ((Kind.SCUFF, 0.0),),
    "sweep": ((Kind.SWEEP, 0.0),),
    "drag": ((Kind.DRAG, 0.0), (Kind.STEP, 0.6)),
    "hop": ((Kind.HOP, 0.0), (Kind.STEP, 1.0)),
    "jump": ((Kind.JUMP, 0.0),),
    "bump": ((Kind.BUMP, 0.0),),
    "swivel": ((Kind.SWIVEL, 0.0),),
    "split": ((Kind.SPLIT, 0.0),),
    "bounce": ((Kind.BOUNCE, 0.0),),
    "roll": ((Kind.ROLL, 0.0),),
    "fan": ((Kind.FAN, 0.0),),
    "pop": ((Kind.BOUNCE, 0.0),),
}
_TWO_FOOTED = frozenset({"bump", "swivel", "split", "bounce", "roll", "pop"})
_ELASTIC = frozenset({"drag", "sweep", "roll", "sway", "bump", "hold", "jump", "hitch"})
_GESTURES = frozenset(
    {
        "touch",
        "point",
        "dig",
        "kick",
        "flick",
        "hook",
        "hitch",
        "brush",
        "scuff",
        "sweep",
        "drag",
        "stomp_up",
        "fan",
    }
)
_PLACES = {p.value: p for p in Place}


def items_of(acts: list[Act]) -> list[Item]:
    """The items of a piece of the sheet, acts that only say "and on R" filled from the one before."""
    items: list[Item] = []
    before: Act | None = None
    for act in acts:
        told = _fill(act, before)
        items.append(Item(told, _options(told, before)))
        if not told.aside and told.verb != "and" and (told.verb or told.figures or told.part):
            before = told
    for item, after in zip(items, items[1:], strict=False):
        if item.act.verb == "rock" and after.act.verb == "recover":
            item.options = [o for o in item.options if not any(m.from_figure == "rock" for _, m in o.moves)]
    return items


def _fill(act: Act, before: Act | None) -> Act:
    """A bare "L" or "R, L" takes its verb and place from the act before it."""
    if (
        before is not None
        and _all_both(before)
        and act.place == "beside"
        and not (act.verb or act.figures or act.part or act.foot or act.turn)
    ):
        return replace(
            act, verb="swivel", both=True, place="", said_place=False
        )  # "swivel right, centre, left, centre"
    bare = not (act.verb or act.figures or act.part or act.place or act.both or act.diagonal or act.same)
    if not bare or (act.foot is None and not act.feet and act.toward is None):
        return act
    if before is not None and before.figures and _all_both(before):
        return replace(act, verb="swivel", both=True)
    if before is None or before.verb in ("turn", "hold", "same", "recover") or act.unknown:
        return replace(act, verb="step", turn=act.turn) if act.foot is not None or act.feet else act
    return replace(
        act, verb=before.verb, figures=before.figures, part=before.part, place=before.place, both=before.both,
        said_place=before.said_place, diagonal=before.diagonal,
    )  # fmt: skip


def _all_both(act: Act) -> bool:
    """Whether an act moves both feet at once and nothing else."""
    if act.figures:
        return all(s.foot is Foot.BOTH for s in act.figures[0].ways[0].steps)
    return act.verb in _TWO_FOOTED or act.both


# -- options ---------------------------------------------------------------------------


def _options(act: Act, before: Act | None) -> list[Option]:
    if act.figures:
        options = _figure_options(act)
    elif act.verb == "hold":
        options = [
            Option(
                (
                    (
                        _ZERO,
                        Move(
                            ((Kind.HOLD, 0.0),), Foot.NONE, where=(act.start, act.end), also=tuple(act.also)
                        ),
                    ),
                ),
                Fraction(1),
                0.0,
                True,
            )
        ]
        if act.times > 1:
            options = [_repeat(options[0], act.times)]
        options = [_finish(act, option) for option in options]
    elif act.verb == "turn" and act.turn is None:
        options = []  # the word alone, its turn taken by what follows
    elif act.verb == "turn":
        options = _turn_options(act)
    elif act.verb == "and":
        # "heel & heel &": a quick step of the free foot between the beats
        maybe = Move(
            ((Kind.HOLD, 0.0), (Kind.STEP, 0.4)),
            None,
            Place.BESIDE,
            where=(act.start, act.end),
            from_figure=PERHAPS,
        )
        options = [Option(((-_HALF, maybe),), _ZERO)]
    elif act.verb == "same":
        options = []
    elif act.empty or (
        act.toward is not None and not (act.verb or act.foot or act.place or act.part or act.both or act.feet)
    ):
        options = []  # "to the left" alone only says where the rest goes
    else:
        options = _verb_options(act, before)
    return options


def _claims(move: Move, act: Act) -> Move:
    """What the act claims for after its last move."""
    weight = act.weight if isinstance(act.weight, Foot) else None
    if act.faces is None and weight is None:
        return move
    return replace(move, faces=act.faces, faces_at=act.faces_at, weight=weight, weight_at=act.weight_at)


def _finish(act: Act, option: Option) -> Option:
    if not option.moves or (act.faces is None and not isinstance(act.weight, Foot)):
        return option
    at, last = option.moves[-1]
    return replace(option, moves=(*option.moves[:-1], (at, _claims(last, act))))


def ticks(turn: Turn | None) -> tuple[tuple[int, float], ...]:
    """A told turn as alternatives in 1/48: both ways where the way is unsaid, common sizes where the size is."""
    if turn is None:
        return STILL
    ways = (turn.way,) if turn.way is not None else (1, -1)
    if turn.eighths is None:
        sizes: tuple[tuple[Fraction, float], ...] = (
            (Fraction(4), 0.6),
            (Fraction(2), 0.8),
            (Fraction(6), 2.0),
            (Fraction(8), 2.0),
            (Fraction(1), 2.0),
        )
    else:
        sizes = ((turn.eighths, 0.0),)
    unsaid = 0.0 if turn.way is not None else 0.5
    return tuple((int(way * size * TURN / 8), cost + unsaid) for size, cost in sizes for way in ways)


def _verb_options(act: Act, before: Act | None) -> list[Option]:
    base = _move_of(act, before)
    feet: tuple[Foot | None, ...] = act.feet or (base.foot,)
    if act.feet and act.foot is not None and act.foot is not act.feet[0] and act.foot_at is not None:
        feet = (act.foot, *act.feet)
    n = act.number if act.number and act.verb == "step" and not act.feet else 1
    if act.feet and act.number and act.number > len(act.feet):
        feet = tuple(act.feet[i % len(act.feet)] for i in range(act.number))
    if n > 1:
        feet = (base.foot, *([None] * (n - 1)))
    if act.times > 1 and len(feet) == 1 and not act.feet:
        same = act.verb in _GESTURES or act.verb in _TWO_FOOTED or act.part in ("heel", "toe", "knee")
        feet = (feet[0], *([feet[0] if same else None] * (act.times - 1)))
    elif act.times > 1 and len(feet) > 1:
        feet = feet * act.times
    moves = []
    for i, foot in enumerate(feet):
        move = replace(
            base,
            foot=_foot_for(act, foot),
            toward=foot if base.foot is Foot.BOTH and act.feet else base.toward,
        )
        if i:
            move = replace(move, turns=STILL)
        moves.append((Fraction(i), move))
    elastic = act.verb in _ELASTIC or act.long
    guessed = (
        2.0 if act.unknown and not (act.verb or act.part or act.place or act.both) else 0.0
    )  # a foot, and a word unknown
    if act.verb == "ball" or (act.part == "ball" and act.verb in ("", "ball")):
        return [
            _finish(
                act, Option(((-_HALF, moves[0][1]), *((at, m) for at, m in moves[1:])), _ZERO, 0.0, False)
            )
        ]
    options = [_finish(act, Option(tuple(moves), Fraction(len(moves)), guessed, elastic))]
    if act.parted and len(moves) == 1 and act.verb not in ("rock", "step", "ball", "recover"):
        step = replace(base, kinds=((Kind.STEP, 0.0),), place=_PLACES.get(act.place, Place.UNSAID))
        then = replace(base, foot=None, place=Place.UNSAID, turns=STILL, toward=None)
        options.append(_finish(act, Option(((_ZERO, step), (Fraction(1), then)), Fraction(2), 0.5)))
    if act.verb == "rock" and len(moves) == 1:
        recover = Move(((Kind.RECOVER, 0.0),), None, where=base.where, from_figure="rock")
        first = replace(moves[0][1])
        options.append(_finish(act, Option(((_ZERO, first), (Fraction(1), recover)), Fraction(2), 0.9)))
    if act.verb == "jump" and len(moves) == 2:
        options = [
            _finish(
                act,
                Option(
                    (
                        (-_HALF, replace(moves[0][1], kinds=((Kind.STEP, 0.0),))),
                        (_ZERO, replace(moves[1][1], kinds=((Kind.STEP, 0.0),))),
                    ),
                    Fraction(1),
                    0.0,
                ),
            )
        ]
        options.append(
            _finish(
                act,
                Option(
                    tuple((at, replace(m, kinds=((Kind.STEP, 0.0),))) for at, m in moves), Fraction(2), 0.2
                ),
            )
        )
    if act.verb == "jump" and len(moves) == 1 and act.foot is None:
        pair = (
            replace(base, kinds=((Kind.STEP, 0.0),), foot=None),
            replace(base, kinds=((Kind.STEP, 0.0),), foot=None, turns=STILL),
        )
        options.append(_finish(act, Option(((-_HALF, pair[0]), (_ZERO, pair[1])), Fraction(1), 0.8)))
    return options


def _foot_for(act: Act, foot: Foot | None) -> Foot | None:
    return Foot.BOTH if act.both or (act.verb in _TWO_FOOTED and not act.part) else foot


def _move_of(act: Act, before: Act | None) -> Move:
    kinds = _kinds_of(act, before)
    foot = act.foot
    toward = act.toward
    if act.verb in _TWO_FOOTED and (
        act.foot is None or act.verb in ("bump", "roll") or act.both or not act.part
    ):
        toward = toward or act.foot
        foot = Foot.BOTH
    elif (act.verb == "jump" and act.foot is None and not act.feet) or (act.verb == "fan" and act.both):
        foot = Foot.BOTH
    return Move(
        kinds, foot, _place_of(act), ticks(act.turn), toward, where=(act.start, act.end), foot_at=act.foot_at,
        against=act.against, against_at=act.against_at,
        long=act.long, also=tuple(act.also), way_told=act.turn is None or act.turn.way is not None,
    )  # fmt: skip


def _place_of(act: Act) -> Place:
    if act.diagonal and act.place in ("forward", "", "side", "forward diagonal"):
        return Place.FORWARD_DIAGONAL
    if act.diagonal and act.place == "back":
        return Place.BACK_DIAGONAL
    return _PLACES.get(act.place, Place.UNSAID)


def _kinds_of(act: Act, before: Act | None) -> tuple[tuple[Kind, float], ...]:
    verb, part = act.verb, act.part
    if (
        verb in ("touch", "point", "dig", "close", "drag", "hook", "step", "cross", "stomp", "brush", "sweep")
        or not verb
    ):
        if act.weight == "take" and verb != "step":
            return ((Kind.STEP if verb != "stomp" else Kind.STOMP, 0.0),)
        if act.weight == "none" and verb not in ("touch", "point", "dig", "hook"):
            return ((Kind.STOMP_UP if verb == "stomp" else Kind.TOUCH, 0.0),)
    if verb in ("touch", "kick") and part == "heel" and verb == "touch":
        return ((Kind.HEEL, 0.0),)
    if verb == "touch" and part == "toe":
        return ((Kind.TOUCH, 0.0),)
    if verb in ("step", "cross") and part in ("heel", "toe"):
        return ((Kind.STEP, 0.0), (Kind.HEEL if part == "heel" else Kind.TOE, 0.5))
    if verb == "step" and part == "ball":
        return ((Kind.BALL, 0.0),)
    if verb in ("swivel", "fan", "pop", "roll") and part and not act.both:
        return ((Kind.FAN, 0.0),)
    if verb:
        return _KINDS[verb]
    if part == "heel":
        return ((Kind.HEEL, 0.0),)
    if part == "toe":
        return ((Kind.TOE, 0.0),)
    if part == "knee":
        return ((Kind.HITCH, 0.0),)
    if part == "ball":
        return ((Kind.BALL, 0.0),)
    if act.both:
        return ((Kind.BOUNCE, 0.5),)
    if before is not None and (
        before.verb in _GESTURES or (before.part in ("heel", "toe") and not before.verb)
    ):
        # "point R side, beside": a close as a rule, now and then another touch of the same foot
        return ((Kind.STEP, 0.0), (Kind.TOUCH, 0.8))
    return ((Kind.STEP, 0.0),)


def _turn_options(act: Act) -> list[Option]:
    """A turn told alone: a pivot, a spin on the foot that stands, or part of a step beside it."""
    assert act.turn is not None
    own = act.turn.own
    foot = act.foot
    base = Move(
        ((Kind.TURN, 0.0),), foot, turns=ticks(act.turn), where=(act.start, act.end), foot_at=act.foot_at,
        way_told=act.turn.way is not None, also=tuple(act.also),
    )  # fmt: skip
    spin = replace(base, kinds=((Kind.SPIN, 0.0),))
    one = Fraction(1)
    if act.feet:
        steps = _spread(act, base)
        return [_finish(act, steps)]
    if own == "pivot":
        found = [Option(((_ZERO, base),), one, 0.0), Option(((_ZERO, spin),), one, 2.0)]
    elif own == "unwind":
        found = [Option(((_ZERO, base),), one, 0.2, True), Option(((_ZERO, spin),), one, 0.4, True)]
    elif own == "spin":
        found = [Option(((_ZERO, spin),), one, 0.0, True), Option(((_ZERO, base),), one, 2.0, True)]
    else:
        found = [Option(((_ZERO, base),), one, 0.3), Option(((_ZERO, spin),), one, 0.7)]
        if act.turn.eighths is not None and act.turn.eighths >= 6:
            found.append(_walked_turn(act, base, 2, 0.2))
            found.append(_walked_turn(act, base, 3, 0.5))
    return [_finish(act, option) for option in found]


def _spread(act: Act, base: Move) -> Option:
    """A turn told with its feet: "full turn right L, R": the turn shared by the steps."""
    n = len(act.feet)
    size = base.turns[0][0]
    shares = [size // n] * n
    shares[-1] += size - sum(shares)
    moves = tuple(
        (Fraction(i), replace(base, kinds=((Kind.STEP, 0.0),), foot=foot, turns=((share, 0.0),)))
        for i, (foot, share) in enumerate(zip(act.feet, shares, strict=True))
    )
    return Option(moves, Fraction(n))


def _walked_turn(act: Act, base: Move, n: int, cost: float) -> Option:
    """A full turn in `n` steps, half a turn each for two."""
    shares = {2: (Fraction(1, 2), Fraction(1, 2)), 3: (Fraction(1, 4), Fraction(1, 2), Fraction(1, 4))}[n]
    return Option(
        tuple(
            (
                Fraction(i),
                replace(
                    base,
                    kinds=((Kind.STEP, 0.0),),
                    foot=None,
                    turns=tuple((int(t * share), c) for t, c in base.turns),
                ),
            )
            for i, share in enumerate(shares)
        ),
        Fraction(n),
        cost,
    )


def _repeat(option: Option, times: int) -> Option:
    moves = tuple((at + option.counts * i, m) for i in range(times) for at, m in option.moves)
    return replace(option, moves=moves, counts=option.counts * times)


# -- figures ---------------------------------------------------------------------------


def _figure_options(act: Act) -> list[Option]:
    lead = act.feet[0] if act.feet else (act.foot if act.foot in (Foot.LEFT, Foot.RIGHT) else None)
    options: list[Option] = []
    for order, figure in enumerate(act.figures):
        turn, lead_here = act.turn, lead
        beside = act.foot if act.foot in (Foot.LEFT, Foot.RIGHT) else act.toward
        if figure.side == "turn" and beside in (Foot.LEFT, Foot.RIGHT):
            way = 1 if beside is Foot.RIGHT else -1
            if turn is None:
                turn = Turn(None, way, "", act.start, act.end)
            elif turn.way is None:
                turn = replace(turn, way=way)
            if not act.feet and (not act.sure or turn.way == way):
                lead_here = None
        if figure.side == "travel" and not act.feet and not act.sure:
            lead_here = None
        if lead_here is None and act.toward in (Foot.LEFT, Foot.RIGHT) and figure.side == "lead":
            lead_here = act.toward
        ways = _ways_for(figure, act)
        for i, way_ in enumerate(ways):
            cost = (0.45 + 0.05 * i if i else 0.0) + 0.3 * order
            if (
                lead_here is None
                and figure.side == "lead"
                and _body_leads(way_)
                and (turn is None or turn.way is not None)
            ):
                # Whichever foot is free begins, and the feet alternate: no need to try both.
                for option in _way_options(
                    act, figure, way_, lead=Foot.RIGHT, turn=turn, cost=cost, told=False
                ):
                    options.append(
                        replace(
                            option,
                            moves=tuple((at, replace(m, foot=None, toward=None)) for at, m in option.moves),
                        )
                    )
                continue
            for foot in (lead_here,) if lead_here is not None else (Foot.RIGHT, Foot.LEFT):
                if figure.side == "travel" and not act.sure and beside is not None:
                    # a way is told led by the right foot; led by the left it travels the other way
                    if way_.travels is not (beside if foot is Foot.RIGHT else beside.other):
                        continue
                options += _way_options(
                    act, figure, way_, lead=foot, turn=turn, cost=cost, told=lead_here is not None
                )
    if act.feet:
        options = [_on_feet(_cut_to(option, len(act.feet)), act) for option in options]
    unique: dict[tuple[object, ...], Option] = {}
    for option in options:
        key = (tuple((at, m.foot, m.kinds, m.turns) for at, m in option.moves), option.counts)
        if key not in unique or option.cost < unique[key].cost:
            unique[key] = option
    options = list(unique.values())
    if _all_both(act):
        both = Move(((Kind.SWIVEL, 0.0),), Foot.BOTH, toward=act.foot, where=(act.start, act.end))
        options.append(Option(((_ZERO, both),), Fraction(1), 0.3))
    if act.times > 1:
        options = _again(act, options)
    return [_finish(act, option) for option in options]


@lru_cache(maxsize=4096)
def _body_leads(way: Way) -> bool:
    """Whether the way, led by the foot that is free, leaves no choice of foot and no turn of its own."""
    weight = Foot.LEFT
    for step in way.steps:
        if step.turn or step.foot is not weight.other or step.kind.on_standing_foot or step.ends_on:
            return False
        weight = step.foot if step.weight else weight
    return True


def _on_feet(option: Option, act: Act) -> Option:
    """The option on the feet that are told for it, right or wrong: the body will say."""
    moves, told = [], list(act.feet)
    for at, move in option.moves:
        if told and move.kinds[0][0].takes_weight and move.foot is not Foot.BOTH:
            move = replace(move, foot=told.pop(0), foot_at=act.feet_at)
        moves.append((at, move))
    return replace(option, moves=tuple(moves))


def _cut_to(option: Option, feet: int) -> Option:
    """A figure of which fewer feet are told than it has: as far as they go ("8& shuffle R L")."""
    steps = 0
    for i, (at, move) in enumerate(option.moves):
        steps += move.kinds[0][0].takes_weight
        if steps == feet and i + 1 < len(option.moves):
            return replace(
                option, moves=option.moves[: i + 1], counts=option.moves[i + 1][0], cost=option.cost + 0.4
            )
    return option


def _ways_for(figure: Figure, act: Act) -> list[Way]:
    ways = list(figure.ways)
    if act.place:
        wanted = _PLACES.get(act.place)
        fit = [w for w in ways if _goes(w, wanted)]
        ways = fit or ways
    if act.feet:
        fit = [
            w
            for w in ways
            if sum(s.weight for s in w.steps if s.foot in (Foot.LEFT, Foot.RIGHT)) == len(act.feet)
        ]
        ways = fit or ways
    return ways


def _goes(way: Way, place: Place | None) -> bool:
    first = next((s for s in way.steps if s.place not in (Place.UNSAID,)), None)
    return first is not None and first.place is place


def _way_options(
    act: Act, figure: Figure, way: Way, *, lead: Foot, turn: Turn | None, cost: float, told: bool
) -> list[Option]:
    steps = _led(way, lead)
    own = sum(t for _, _, _, _, t, *_ in steps)
    found = []
    for shares, extra in _shares(way, own, turn):
        moves = []
        for i, (at, foot, kind, place, t, toward, ends_on) in enumerate(steps):
            moves.append(
                (
                    at,
                    Move(
                        ((kind, 0.0),), foot, place, ((t + shares.get(i, 0), 0.0),), toward,
                        weight=ends_on, where=(act.start, act.end), foot_at=act.foot_at if told and i == 0 else None,
                        against=act.against if i == 0 else None, against_at=act.against_at if i == 0 else None,
                        from_figure=figure.name, loose=bool(shares) and i < len(steps) - 1, way_told=turn is None or turn.way is not None or bool(own),
                    ),
                )
            )  # fmt: skip
        found.append(Option(tuple(moves), way.counts, cost + extra))
    return found


@lru_cache(maxsize=4096)
def _led_cached(way_id: int, lead: Foot) -> tuple[tuple, ...]:  # type: ignore[type-arg]
    way = _WAYS[way_id]
    flip = lead is Foot.LEFT
    rows = []
    for s in way.steps:
        foot = s.foot.other if flip else s.foot
        toward = (s.toward.other if flip else s.toward) if s.toward else None
        ends = (s.ends_on.other if flip else s.ends_on) if s.ends_on else None
        size = int(s.turn * TURN) * (-1 if flip else 1)
        rows.append((s.at - 1, foot, s.kind, s.place, size, toward, ends))
    return tuple(rows)


_WAYS: dict[int, Way] = {}


def _led(way: Way, lead: Foot) -> tuple[tuple, ...]:  # type: ignore[type-arg]
    """The way's steps led by `lead`, the foot that moves first, with beats from 0 and turns in 1/48."""
    _WAYS[id(way)] = way
    return _led_cached(id(way), lead)


def _shares(way: Way, own: int, turn: Turn | None) -> list[tuple[dict[int, int], float]]:
    """Where a told turn is taken: extra turn by index of the step, with a cost for the less likely places."""
    if turn is None:
        return [({}, 0.0)]
    if turn.eighths is None:
        if turn.way is None or not own or (own > 0) == (turn.way > 0):
            return [({}, 0.0)]
        sizes = [(-own, 0.2)]
    else:
        size = int(turn.eighths * TURN / 8)
        if turn.way is not None:
            sizes = [(turn.way * size, 0.0)]
        elif own:
            sizes = [((1 if own > 0 else -1) * size, 0.0)]
        else:
            sizes = [(size, 0.5), (-size, 0.5)]
    index = {s.at: i for i, s in enumerate(way.steps)}
    places = [tuple(index[b] for b in on if b in index) for on in way.turn_on]
    places = [p for p in places if p] or _default_places(way)
    found = []
    for stated, cost in sizes:
        rest = stated - own
        if not rest:
            found.append(({}, cost))
            continue
        for rank, place in enumerate(places):
            share = rest // len(place)
            extra = dict.fromkeys(place, share)
            extra[place[-1]] += rest - share * len(place)
            found.append((extra, cost + 0.04 * rank))
    return found


def _default_places(way: Way) -> list[tuple[int, ...]]:
    turning = [i for i, s in enumerate(way.steps) if s.turn]
    if turning:
        return [(turning[-1],)]
    weighted = [i for i, s in enumerate(way.steps) if s.weight]
    return [(weighted[-1],)] if weighted else [(len(way.steps) - 1,)]


def _again(act: Act, options: list[Option]) -> list[Option]:
    """A figure said to be done `times` times: on the same foot again, or on the other."""
    found = []
    for first in options:
        for flip in (False, True):
            moves, at = list(first.moves), first.counts
            for n in range(1, act.times):
                copy = [(at + b, _mirrored(m) if flip and n % 2 else m) for b, m in first.moves]
                moves += copy
                at += first.counts
            found.append(Option(tuple(moves), at, first.cost + (0.1 if flip else 0.0)))
    return found


def mirrored(option: Option) -> Option:
    """The option on the other foot, turning the other way."""
    return replace(option, moves=tuple((at, _mirrored(m)) for at, m in option.moves))


def _mirrored(move: Move) -> Move:
    return replace(
        move,
        foot=move.foot.other if move.foot else None,
        turns=tuple((-t, c) for t, c in move.turns),
        toward=move.toward.other if move.toward else None,
        against=move.against.other if move.against else None,
        weight=move.weight.other if move.weight else None,
        faces=None,
    )
