"""The call words of danced steps: which figures they are, and the word for a step that is none.

The steps no longer know which words of the sheet they came from, and a sheet in plain steps
names no figure at all.  So the steps are held against every figure of the glossary, on either
foot, and the fewest calls that cover them win.  Of figures danced alike (a shuffle to the side
and a chasse), the one that the sheet names is called, else the one that is said most exactly.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from typing import NamedTuple

from wallwise.dance.call import Call
from wallwise.dance.mirror import mirror_step
from wallwise.dance.model import Foot, Kind, Place, Step
from wallwise.glossary.entry import Figure, Way
from wallwise.glossary.load import figures, words
from wallwise.glossary.lookup import fold

# What a call costs: a figure of two steps is cheaper than two words.
_FIGURE = Fraction(10)
_WORD = Fraction(7)
_UNNAMED = Fraction(1, 2)
_VAGUE = Fraction(1, 4)  # each place that a way leaves open
_OTHER_WAY = Fraction(1, 10)  # each meaning its name has besides
_RARER_WAY = Fraction(1, 100)

# Any other figure is called only where the sheet names it, or dancers would hear "bachata" for steps
# to the side.
_EVERYDAY = frozenset(words()["call"]["everyday"])

_STEP_LIKE = frozenset({Kind.STEP, Kind.BALL})
_SIDE = {Foot.LEFT: "left", Foot.RIGHT: "right"}
_AMOUNT = {
    Fraction(1, 8): "eighth", Fraction(1, 4): "quarter", Fraction(3, 8): "three eighths",
    Fraction(1, 2): "half", Fraction(5, 8): "five eighths", Fraction(3, 4): "three quarter",
    Fraction(1): "full turn",
}  # fmt: skip
_TURN_WORDS = frozenset({"quarter", "half", "turn"})

# The words of single steps: common practice, no source.
_PLACE = {
    Place.SIDE: "side", Place.FORWARD: "forward", Place.BACK: "back", Place.BESIDE: "together",
    Place.ACROSS: "cross", Place.BEHIND: "behind", Place.LOCK_BEHIND: "lock", Place.LOCK_FRONT: "lock",
    Place.FORWARD_DIAGONAL: "forward", Place.BACK_DIAGONAL: "back", Place.IN_PLACE: "step",
    Place.UNSAID: "step",
}  # fmt: skip
_KIND = {
    Kind.RECOVER: ("recover", "back"), Kind.TURN: ("turn",), Kind.DROP: ("drop",), Kind.SWIVEL: ("swivel",),
    Kind.STOMP_UP: ("stomp",), Kind.STOMP: ("stomp",),
}  # fmt: skip


@dataclass(frozen=True, slots=True)
class _Shape:
    """One way of a figure on one foot, ready to be held against steps."""

    figure: Figure
    way: Way
    steps: tuple[Step, ...]
    cost: Fraction

    @property
    def turns(self) -> bool:
        return any(step.turn for step in self.steps)

    @property
    def everyday(self) -> bool:
        """Whether it is called though nobody names it; half a figure has to be named."""
        return self.figure.name in _EVERYDAY and len(self.steps) >= len(self.figure.ways[0].steps)


def calls_of(steps: Sequence[Step], said: Callable[[Step], str] = lambda _: "") -> tuple[Call, ...]:
    """The calls of these steps in order, on the beats on which what they call begins.

    `steps` are those of a part, or of a wall as it is danced.  `said` gives the words of the sheet
    around a step, which may name its figure; without them the steps alone decide.  A hold is not
    called.  No steps give no calls.

    >>> side = Step(Fraction(1), Foot.RIGHT, Kind.STEP, Place.SIDE)
    >>> behind = Step(Fraction(2), Foot.LEFT, Kind.STEP, Place.BEHIND)
    >>> again = Step(Fraction(3), Foot.RIGHT, Kind.STEP, Place.SIDE)
    >>> calls_of([side, behind, again])
    (Call(at=Fraction(1, 1), words=('vine right', 'vine')),)
    """
    best = [_Choice(Fraction(0), 0, ())] * (len(steps) + 1)  # how the steps from each on are called best
    for first in range(len(steps) - 1, -1, -1):
        ways = (
            choice._replace(cost=choice.cost + best[first + choice.size].cost)
            for choice in _choices(steps, first, f" {fold(said(steps[first]))} ")
        )
        best[first] = min(ways, key=lambda choice: (choice.cost, -choice.size))
    return tuple(_chosen(steps, best))


class _Choice(NamedTuple):
    """One way to call the steps from somewhere on: what it costs, how many steps it calls, the words."""

    cost: Fraction
    size: int
    words: tuple[str, ...]


def _choices(steps: Sequence[Step], first: int, worded: str) -> Iterator[_Choice]:
    step = steps[first]
    yield _Choice(Fraction(0), 1, ()) if step.kind is Kind.HOLD else _Choice(_WORD, 1, _step_words(step))
    for shape in _fitting(steps, first):
        size = len(shape.steps)
        named = any(name in worded for name in _folded(shape.figure))
        if named or shape.everyday:
            words = _figure_words(shape, steps[first : first + size])
            yield _Choice(shape.cost + (0 if named else _UNNAMED), size, words)


def _chosen(steps: Sequence[Step], best: Sequence[_Choice]) -> Iterator[Call]:
    first = 0
    while first < len(steps):
        if best[first].words:
            yield Call(steps[first].at, best[first].words)
        first += best[first].size


@cache
def _folded(figure: Figure) -> tuple[str, ...]:
    return tuple(f" {fold(name)} " for name in figure.names)


@cache
def _shapes() -> dict[tuple[Foot, Kind], tuple[_Shape, ...]]:
    """Every way of every figure on either foot, by the foot and kind it begins with."""
    found: dict[tuple[Foot, Kind], list[_Shape]] = {}
    for figure in figures():
        for number, way in enumerate(figure.ways):
            if len(way.steps) < 2:
                continue
            vague = sum(step.place is Place.UNSAID for step in way.steps)
            cost = _FIGURE + _VAGUE * vague + _OTHER_WAY * len(figure.ways) + _RARER_WAY * number
            for steps in (way.steps, tuple(mirror_step(step) for step in way.steps)):
                key = (steps[0].foot, _kind(steps[0]))
                found.setdefault(key, []).append(_Shape(figure, way, steps, cost))
    return {key: tuple(shapes) for key, shapes in found.items()}


def _fitting(steps: Sequence[Step], first: int) -> Iterator[_Shape]:
    """The shapes that the steps from `first` on have."""
    for shape in _shapes().get((steps[first].foot, _kind(steps[first])), ()):
        danced = steps[first : first + len(shape.steps)]
        if len(danced) == len(shape.steps) and _fits(shape, danced):
            yield shape


def _fits(shape: _Shape, danced: Sequence[Step]) -> bool:
    late = danced[0].at - shape.steps[0].at
    if not all(_alike(ours, step, late) for ours, step in zip(shape.steps, danced, strict=True)):
        return False
    turn = sum((step.turn for step in danced), Fraction(0))
    if abs(shape.way.turn) == 1:
        return abs(turn) == 1
    # A pivot without its turn is none; and a figure turns only where the glossary lets it.
    turned = any(step.turn for step in danced)
    return turned if shape.turns else not turned or bool(shape.way.turn_on)


def _alike(ours: Step, danced: Step, late: Fraction) -> bool:
    return (
        danced.at - ours.at == late
        and danced.foot is ours.foot
        and _kind(danced) is _kind(ours)
        and (danced.place is ours.place or Place.UNSAID in (danced.place, ours.place))
        and (danced.toward is ours.toward or None in (danced.toward, ours.toward))
    )


def _kind(step: Step) -> Kind:
    return Kind.STEP if step.kind in _STEP_LIKE else step.kind


def _figure_words(shape: _Shape, danced: Sequence[Step]) -> tuple[str, ...]:
    """The figure's call with its turn or its side, then without."""
    call = shape.figure.call
    turn = sum((step.turn for step in danced), Fraction(0))
    if turn and abs(turn) < 1:
        return _turning_words(call, turn)
    if turn:
        return _distinct(f"{call} {_way_round(turn)}", call)
    travels = shape.way.travels
    if travels in _SIDE and shape.steps is not shape.way.steps:
        travels = travels.other
    lead = danced[0].foot
    if travels in _SIDE and (shape.figure.side == "travel" or travels is lead):
        return _distinct(f"{call} {_SIDE[travels]}", call)
    return _distinct(f"{_SIDE[lead]} {call}" if lead in _SIDE else call, call)


def _turning_words(call: str, turn: Fraction) -> tuple[str, ...]:
    """The call with the turn that is danced in place of the one in its name.

    >>> _turning_words("shuffle half", Fraction(-1, 4))
    ('shuffle quarter left', 'shuffle quarter', 'shuffle')
    """
    words = call.split()
    while words and words[-1].strip(",") in _TURN_WORDS:
        words.pop()
    core = " ".join(words).rstrip(",")
    told = f"{core} {_AMOUNT.get(abs(turn), 'turn')}".strip()
    return _distinct(f"{told} {_way_round(turn)}", told, core or told)


def _step_words(step: Step) -> tuple[str, ...]:
    """The word for a single step, with its turn where it turns."""
    words = _KIND.get(step.kind) or (step.kind.value,)
    if step.kind in _STEP_LIKE:
        words = (_PLACE[step.place],)
    elif step.kind is Kind.ROCK and step.place is not Place.UNSAID:
        words = (f"rock {_PLACE[step.place]}", "rock")
    if not step.turn:
        return words
    amount = _AMOUNT.get(abs(step.turn), "turn")
    if step.kind in (Kind.STEP, Kind.BALL, Kind.TURN, Kind.SPIN):
        return _distinct(f"{amount} {_way_round(step.turn)}", amount)
    return _distinct(f"{words[-1]} {amount} {_way_round(step.turn)}", f"{words[-1]} {amount}", words[-1])


def _way_round(turn: Fraction) -> str:
    return "right" if turn > 0 else "left"


def _distinct(*words: str) -> tuple[str, ...]:
    return tuple(dict.fromkeys(words))
