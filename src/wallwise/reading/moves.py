"""What an act may be danced as: moves, the options they make up, and what each costs in belief.

A cost is a degree of surprise: 0 is the plain reading, about 1 a reading that people do
mean now and then, `CONFLICT` and more contradicts something that the sheet says.
"""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from fractions import Fraction

from wallwise.dance.model import Foot, Kind, Place
from wallwise.reading.clauses import Act

CONFLICT = 10.0
PERHAPS = "perhaps"  # a move that may be no event at all: the body decides

Kinds = tuple[tuple[Kind, float], ...]  # alternatives, each with its cost
Turns = tuple[tuple[int, float], ...]  # the same for turns in 1/48 of a full turn, right positive
STILL: Turns = ((0, 0.0),)


@dataclass(slots=True)
class Move:
    """One event as far as the words go.

    `kinds` and `turns` are alternatives; `foot` is None where unsaid; `toward` the side it
    goes to, where said.  `faces` and `weight` are what the sheet claims afterwards.  `where`
    is the place in the line.
    """

    kinds: Kinds
    foot: Foot | None = None
    place: Place = Place.UNSAID
    turns: Turns = STILL
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
    along: Foot | None = None  # the foot of a gesture danced with it: "sweeping L"
    along_at: tuple[int, int] | None = None
    loose: bool = False  # inside a figure that turns as a whole: where in it the turn falls is not told
    way_told: bool = True  # False: a turn whose direction the sheet leaves open


@dataclass(slots=True)
class Option:
    """One way to dance an item: moves with their beats from the item's start, and how long it lasts."""

    moves: tuple[tuple[Fraction, Move], ...]
    counts: Fraction
    cost: float = 0.0
    elastic: bool = False  # may last longer than it says


@dataclass(slots=True)
class Item:
    """An act with its options; `act` is kept for messages and for "the same on the other foot"."""

    act: Act
    options: list[Option] = field(default_factory=list)


def turns_besides(item: Item) -> bool:
    """Whether the item turns, though its own words tell no turn: it took in one told beside it."""
    if item.act.turn is not None or item.act.figures or item.act.verb == "same":
        return False
    return any(move.turns != STILL for option in item.options for _, move in option.moves)


def only(kind: Kind) -> Kinds:
    """The kind as the one alternative, at no cost."""
    return ((kind, 0.0),)


def claiming(option: Option, act: Act) -> Option:
    """The option with the facing and the weight that the act claims, claimed by its last move."""
    weight = act.weight if isinstance(act.weight, Foot) else None
    if not option.moves or (act.faces is None and weight is None):
        return option
    at, last = option.moves[-1]
    last = replace(last, faces=act.faces, faces_at=act.faces_at, weight=weight, weight_at=act.weight_at)
    return replace(option, moves=(*option.moves[:-1], (at, last)))


def mirrored(move: Move) -> Move:
    """The move on the other foot, turning the other way; what it claimed to face is dropped."""
    return replace(
        move,
        foot=move.foot.other if move.foot else None,
        turns=tuple((-turn, cost) for turn, cost in move.turns),
        toward=move.toward.other if move.toward else None,
        against=move.against.other if move.against else None,
        along=move.along.other if move.along else None,
        weight=move.weight.other if move.weight else None,
        faces=None,
    )
