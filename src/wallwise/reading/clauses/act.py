"""One thing told: a verb with its foot, place and turn, a figure's name, a turn, a hold, a "same again".

What is left unsaid stays None or empty; the body and the rest of the sheet decide it later.
Every field that ends in ``_at`` is a place in the line: first character and the one after the last.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from fractions import Fraction

from wallwise.dance.model import Foot
from wallwise.glossary.entry import Figure
from wallwise.reading.tokens import Token


@dataclass(slots=True)
class Turn:
    """A turn as told: eighths (None: "turn left" alone), way +1 right, -1 left, None unsaid.

    `own` names the word that makes it an event of its own (pivot, unwind, spin), "turn" for the
    plain word, and is empty for a bare fraction.  `ahead` says that it is told apart, before the
    figure it is danced with: "turn 1/4 right into a shuffle".
    """

    eighths: Fraction | None
    way: int | None
    own: str
    start: int
    end: int
    ahead: bool = False


@dataclass(slots=True)
class Act:
    """One thing told; its place in the line is `start` to `end`, -1 while nothing belongs to it."""

    verb: str = ""
    start: int = -1
    end: int = -1
    foot: Foot | None = None
    foot_at: tuple[int, int] | None = None
    in_column: Foot | None = None  # another foot than its own, in a column of feet beside it
    sure: bool = False  # the foot was called a foot, or stands where only a foot can
    part: str = ""  # heel, toe, ball, knee
    place: str = ""
    diagonal: bool = False
    said_place: bool = False  # the place was told, not only the verb's usual one
    against: Foot | None = None  # the other foot named: "beside L", "over R"
    against_at: tuple[int, int] | None = None
    along: Foot | None = None  # the foot of a gesture danced with a step: "sweeping L"
    along_at: tuple[int, int] | None = None
    toward: Foot | None = None  # a side as a direction: "to right side"
    toward_at: tuple[int, int] | None = None
    both: bool = False
    long: bool = False
    turn: Turn | None = None
    weight: Foot | str | None = None  # L, R, both; "take", "none"
    weight_at: tuple[int, int] | None = None
    faces: int | None = None  # in 1/48 of a turn from the first wall
    faces_at: tuple[int, int] | None = None
    figures: tuple[Figure, ...] = ()
    feet: tuple[Foot, ...] = ()
    feet_at: tuple[int, int] | None = None
    times: int = 1
    number: int | None = None
    also: list[str] = field(default_factory=list)
    label: bool = False  # stands before a colon: a name for what follows
    aside: bool = False  # stands in brackets
    parted: bool = False  # the place stood right before the verb: "side touch" may be a step and a touch
    fresh: bool = False  # a comma or another stop stands before it
    closed: bool = False  # a figure's name that is a sentence of its own: perhaps a name for what follows
    joined: bool = False  # came in by "and" or "&", not by a stop
    ing: bool = False
    filled: bool = False  # feet alone were told, and what they do was taken from the act before
    unknown: list[Token] = field(default_factory=list)
    put: bool = False  # its foot is put somewhere: part of it may only touch
    spread: bool = False  # the place was told by "out" or "in"
    lasts: bool = False  # said to last some counts: "over two counts"
    same: str = ""
    counts: tuple[int, int] | None = None  # of what comes again; below zero they are counted back from here
    of_section: bool = False  # `counts` are numbers of sections
    of_part: str = ""  # the letter of their part, where a repeat calls them "B1"

    @property
    def empty(self) -> bool:
        """Whether nothing was told that moves or holds a foot."""
        return not (
            self.verb or self.foot or self.part or self.place or self.diagonal or self.turn or self.figures
            or self.feet or self.both or self.toward or self.same
        )  # fmt: skip

    @property
    def bare(self) -> bool:
        """Whether feet were told and nothing else."""
        return bool(self.feet or self.foot) and not (
            self.verb or self.figures or self.part or self.place or self.both or self.turn or self.unknown
            or self.weight or self.label
        )  # fmt: skip

    @property
    def idle(self) -> bool:
        """Whether nothing at all was told, not even something that qualifies the act before."""
        return self.empty and not (
            self.unknown or self.faces is not None or self.weight is not None or self.times > 1
        )
