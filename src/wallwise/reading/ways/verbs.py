"""The ways to dance a verb: on which feet, in one event or in two, and how long."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction

from wallwise.dance.model import Foot, Kind, Place
from wallwise.reading.clauses import Act
from wallwise.reading.moves import STILL, Move, Option, claiming, only
from wallwise.reading.ways.kinds import GESTURES, TWO_FOOTED, kinds_of, place_named, place_of
from wallwise.reading.ways.turns import shared, ticks

_ZERO, _ONE, _TWO = Fraction(0), Fraction(1), Fraction(2)
_QUICK = Fraction(-1, 2)  # half a beat before the count
_ELASTIC = frozenset({"drag", "sweep", "roll", "sway", "bump", "hold", "jump", "hitch"})
_HALF, _LARGE = 4, 6  # eighths of a turn
_PIVOT_UNSAID = 0.5  # a pivot told in one breath with its step
_ON_THE_OTHER = 0.3  # "turn 1/2 left hitching R" where R bears the weight: a pivot onto L
_NOT_TAKEN = 0.5  # "bump L, weight on L" where L bears it already: no weight is taken
_ONE_FOOT = (Foot.LEFT, Foot.RIGHT)
_GUESSED = 2.0  # a foot and nothing else but a word unknown: taken for a step


def verb_options(act: Act, before: Act | None) -> list[Option]:
    """The ways to dance an act that is no figure, hold or turn; `before` is the act told before it."""
    base = _move_of(act, before)
    moves = _on_feet(act, base)
    if act.verb == "ball" or (act.part == "ball" and not act.verb):
        found = [_ball(moves)]
    elif act.verb == "jump" and len(moves) == 2:
        found = _jump_on_two(moves)
    else:
        elastic = act.verb in _ELASTIC or act.long or act.lasts
        placed = tuple((Fraction(i), move) for i, move in enumerate(moves))
        found = [Option(placed, Fraction(len(moves)), _surprise(act, moves), elastic)]
        if len(moves) == 1:
            found += _in_two(act, base, moves[0])
    return [claiming(option, act) for option in found]


def _surprise(act: Act, moves: list[Move]) -> float:
    """What it costs to believe that the act is its moves and no more."""
    if act.unknown and not (act.verb or act.part or act.place or act.both):
        return _GUESSED
    return _NOT_TAKEN if len(moves) == 1 and _taken_onto(act) is not None else 0.0


# -- one move --------------------------------------------------------------------------------


def _move_of(act: Act, before: Act | None) -> Move:
    """The act as one move, with what it tells of foot, side, place and turn."""
    foot, toward = act.foot, act.toward
    if act.verb == "drop" and foot is None and before is not None:
        foot = before.foot  # the heel that is up
    if _takes_both(act):
        # "bump R": the foot named is the side the hips go to
        foot, toward = Foot.BOTH, toward or foot
    elif (act.verb == "jump" and foot is None and not act.feet) or (act.verb == "fan" and act.both):
        foot = Foot.BOTH
    return Move(
        kinds_of(act, before), foot, place_of(act), ticks(act.turn), toward, where=(act.start, act.end),
        foot_at=act.foot_at, against=act.against, against_at=act.against_at, along=act.along,
        along_at=act.along_at, long=act.long,
        also=tuple(act.also), way_told=act.turn is None or act.turn.way is not None,
    )  # fmt: skip


def _takes_both(act: Act) -> bool:
    """Whether the verb is one of both feet here: "swivel R heel" is one of the right foot alone."""
    return act.verb in TWO_FOOTED and (
        act.foot is None or act.verb in ("bump", "roll") or act.both or not act.part
    )


# -- its feet --------------------------------------------------------------------------------


def _on_feet(act: Act, base: Move) -> list[Move]:
    """The move once for each foot told; a turn told with them is taken by the first, a large one by all."""
    together = act.both or (act.verb in TWO_FOOTED and not act.part)
    swaying = base.foot is Foot.BOTH and bool(act.feet)  # "bump hips R, L": the feet told are the sides
    feet = _feet(act, base)
    last = len(feet) - 1
    shares = _is_stepped_round(act) and last > 0
    turns = shared(base.turns, len(feet)) if shares else [base.turns, *[STILL] * last]
    return [
        replace(
            base,
            foot=Foot.BOTH if together else foot,
            toward=foot if swaying else base.toward,
            turns=turn,
            loose=shares and i < last,
        )
        for i, (foot, turn) in enumerate(zip(feet, turns, strict=True))
    ]


def _is_stepped_round(act: Act) -> bool:
    """Whether the moves told share the turn: "full turn stepping R, L", but not "1/2 turn, walk R, L"."""
    size = act.turn.eighths if act.turn is not None else None
    if act.verb == "bounce":
        return size is not None
    if act.verb != "step" or act.turn is None or size is None:
        return False
    before = act.place and act.turn.start <= act.start
    return size >= (_LARGE if before else _HALF)


def _feet(act: Act, base: Move) -> tuple[Foot | None, ...]:
    """The feet that dance the act one after the other, None for one unsaid."""
    feet = _told_feet(act, base)
    if act.times > 1 and len(feet) > 1:
        return feet * act.times
    if act.times > 1 and not act.feet:
        same = act.verb in (*GESTURES, *TWO_FOOTED, "stomp") or act.part in ("heel", "toe", "knee")
        return (feet[0], *([feet[0] if same else None] * (act.times - 1)))
    return feet


def _told_feet(act: Act, base: Move) -> tuple[Foot | None, ...]:
    """The feet told for doing the act once."""
    if not act.feet:
        steps = act.number if act.number and act.verb == "step" else 1
        return (base.foot, *([None] * (steps - 1)))
    if act.number and act.number > len(act.feet):
        return tuple(act.feet[i % len(act.feet)] for i in range(act.number))
    if act.foot is not None and act.foot is not act.feet[0] and act.foot_at is not None:
        return (act.foot, *act.feet)
    return act.feet


# -- otherwise than one move a count ---------------------------------------------------------


def _ball(moves: list[Move]) -> Option:
    """A ball step: quick, before the count of what follows."""
    return Option(((_QUICK, moves[0]), *((Fraction(i), m) for i, m in enumerate(moves[1:], 1))), _ZERO)


def _jump_on_two(moves: list[Move]) -> list[Option]:
    """A jump told with both its feet: out, out in one count or in two."""
    first, second = (replace(move, kinds=only(Kind.STEP)) for move in moves)
    return [
        Option(((_QUICK, first), (_ZERO, second)), _ONE),
        Option(((_ZERO, first), (_ONE, second)), _TWO, 0.2),
    ]


def _taken_onto(act: Act) -> Foot | None:
    """The foot that a bump is said to take the weight onto: "bump hips L taking weight on L"."""
    if act.verb not in ("bump", "roll"):
        return None
    bears = (act.toward or act.foot) if act.weight == "take" else act.weight
    return bears if isinstance(bears, Foot) and bears in _ONE_FOOT and act.weight_at is not None else None


def _may_pivot(act: Act) -> bool:
    """Whether a turn told behind a step forward may be a pivot with its own count: "step R 1/2 turn L"."""
    turn = act.turn
    if act.verb != "step" or act.feet or act.ing or act.times > 1 or turn is None or turn.eighths is None:
        return False
    return act.place in ("", "forward") and turn.start > act.start and turn.eighths <= _HALF


def _in_two(act: Act, base: Move, first: Move) -> Iterator[Option]:
    """The ways in which one thing told is two events, or another than its word."""
    if act.parted and act.verb not in ("rock", "step", "ball", "recover"):
        # "side touch": a step to the side, then the touch
        step = replace(base, kinds=only(Kind.STEP), place=place_named(act.place) or Place.UNSAID)
        then = replace(base, foot=None, place=Place.UNSAID, turns=STILL, toward=None)
        yield Option(((_ZERO, step), (_ONE, then)), _TWO, 0.4)
    if act.verb == "rock":
        recover = Move(only(Kind.RECOVER), where=base.where, from_figure="rock")
        yield Option(((_ZERO, first), (_ONE, recover)), _TWO, 0.9)
    if _may_pivot(act):
        step = replace(base, turns=STILL, way_told=True)
        pivot = Move(only(Kind.TURN), turns=base.turns, where=base.where, way_told=base.way_told)
        yield Option(((_ZERO, step), (_ONE, pivot)), _TWO, _PIVOT_UNSAID)
    onto = _taken_onto(act)
    if onto is not None:
        yield Option(((_ZERO, replace(base, kinds=only(Kind.SWAY), foot=onto)),), _ONE)
    if act.ing and act.turn is not None and act.foot is not None and act.verb in GESTURES:
        pivot = replace(
            base, kinds=only(Kind.TURN), foot=act.foot.other, place=Place.UNSAID, toward=None, foot_at=None,
            also=(*base.also, f"{act.verb} {act.foot.value}"),
        )  # fmt: skip
        yield Option(((_ZERO, pivot),), _ONE, _ON_THE_OTHER)
    if act.verb == "jump" and act.foot is None:
        step = replace(base, kinds=only(Kind.STEP), foot=None)
        yield Option(((_QUICK, step), (_ZERO, replace(step, turns=STILL))), _ONE, 0.8)
