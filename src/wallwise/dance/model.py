"""What a dance is: frozen values, no text, no files.

Places are said from the dancer's own body and always for the foot that moves:
`Place.SIDE` is the moving foot's own side unless `Step.toward` names the other.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from enum import StrEnum
from fractions import Fraction
from typing import NamedTuple


class Span(NamedTuple):
    """Characters `start` to `end` of the sheet as given: 0-based, end exclusive."""

    start: int
    end: int


class Foot(StrEnum):
    """A foot, or both; NONE for a hold, in which no foot moves."""

    LEFT = "L"
    RIGHT = "R"
    BOTH = "both"
    NONE = "none"

    @property
    def other(self) -> Foot:
        """The opposite foot; both and none are their own opposite."""
        return _OTHER[self]


_OTHER = {
    Foot.LEFT: Foot.RIGHT,
    Foot.RIGHT: Foot.LEFT,
    Foot.BOTH: Foot.BOTH,
    Foot.NONE: Foot.NONE,
}


class Kind(StrEnum):
    """What a foot does.  `takes_weight` tells steps from gestures."""

    STEP = "step"
    ROCK = "rock"
    RECOVER = "recover"
    BALL = "ball"
    STOMP = "stomp"
    SWAY = "sway"
    DROP = "drop"  # of a toe or heel strut: the weight comes with it
    TURN = "turn"  # of a pivot or unwind: gives the weight to `foot`
    JUMP = "jump"
    SWIVEL = "swivel"
    SPLIT = "split"
    BOUNCE = "bounce"
    BUMP = "bump"
    ROLL = "roll"
    TOUCH = "touch"
    POINT = "point"
    HEEL = "heel"
    TOE = "toe"
    KICK = "kick"
    FLICK = "flick"
    HOOK = "hook"
    HITCH = "hitch"
    BRUSH = "brush"
    SCUFF = "scuff"
    STOMP_UP = "stomp up"
    SWEEP = "sweep"
    DRAG = "drag"
    FAN = "fan"
    SPIN = "spin"  # on the foot that stands
    HOP = "hop"  # on the foot that stands
    HOLD = "hold"

    @property
    def takes_weight(self) -> bool:
        """Whether the foot named has the weight afterwards because of this."""
        return self in _WEIGHT

    @property
    def on_standing_foot(self) -> bool:
        """Whether the foot named is the one that already stands."""
        return self in (Kind.SPIN, Kind.HOP)


_WEIGHT = frozenset(
    {
        Kind.STEP, Kind.ROCK, Kind.RECOVER, Kind.BALL, Kind.STOMP, Kind.SWAY, Kind.DROP, Kind.TURN,
        Kind.JUMP, Kind.SWIVEL, Kind.SPLIT, Kind.BOUNCE, Kind.BUMP, Kind.ROLL,
    }
)  # fmt: skip


class Place(StrEnum):
    """Where the moving foot goes, seen from the foot that stands."""

    IN_PLACE = "place"
    FORWARD = "forward"
    BACK = "back"
    SIDE = "side"
    BESIDE = "beside"
    ACROSS = "across"
    BEHIND = "behind"
    LOCK_BEHIND = "lock behind"
    LOCK_FRONT = "lock front"
    FORWARD_DIAGONAL = "forward diagonal"
    BACK_DIAGONAL = "back diagonal"
    UNSAID = "unsaid"


@dataclass(frozen=True, slots=True)
class Step:
    """One event of a foot.

    `at` is the beat within the part, from 1.  `turn` is a fraction of a full turn,
    right positive, done with the event.  `toward` is the side a hip, a swivel or a
    step goes to where it is not the foot's own.  `ends_on` says which foot bears the
    weight after an action of both feet, where that is known.  `also` holds what goes
    with the event without a count of its own ("sweep L", "clap").  Where it stands in
    the sheet and what had to be inferred are no part of equality.
    """

    at: Fraction
    foot: Foot
    kind: Kind
    place: Place = Place.UNSAID
    turn: Fraction = Fraction(0)
    toward: Foot | None = None
    ends_on: Foot | None = None
    long: bool = False
    also: tuple[str, ...] = ()
    span: Span | None = field(default=None, compare=False, repr=False)
    inferred: tuple[str, ...] = field(default=(), compare=False, repr=False)

    @property
    def weight(self) -> bool:
        """Whether this is a weight change."""
        return self.kind.takes_weight


@dataclass(frozen=True, slots=True)
class Section:
    """A run of counts under one heading; `starts_at` is its first beat in the part."""

    number: int
    starts_at: Fraction
    counts: Fraction
    steps: tuple[Step, ...]
    heading: str = ""
    span: Span | None = field(default=None, compare=False, repr=False)


@dataclass(frozen=True, slots=True)
class Part:
    """A list of sections danced as one: the whole dance, a lettered part, a tag."""

    name: str
    sections: tuple[Section, ...]

    @property
    def counts(self) -> Fraction:
        """Beats from first to last."""
        return sum((s.counts for s in self.sections), Fraction(0))

    @property
    def steps(self) -> tuple[Step, ...]:
        """Every event in order."""
        return tuple(step for section in self.sections for step in section.steps)

    @property
    def net_turn(self) -> Fraction:
        """All turns added, right positive, not reduced to one turn."""
        return sum((step.turn for step in self.steps), Fraction(0))


@dataclass(frozen=True, slots=True)
class Restart:
    """Wall `wall` is cut after `after_counts` counts; `change` replaces steps from `change_from` on."""

    wall: int
    after_counts: Fraction
    change: tuple[Step, ...] = ()
    change_from: Fraction | None = None
    span: Span | None = field(default=None, compare=False, repr=False)


@dataclass(frozen=True, slots=True)
class Tag:
    """Counts added after wall `after_wall`, or inside it after `after_counts` counts."""

    after_wall: int
    part: Part
    after_counts: Fraction | None = None
    span: Span | None = field(default=None, compare=False, repr=False)


@dataclass(frozen=True, slots=True)
class Option:
    """Another way to dance beats `first` to `last` (inclusive) of section `section` of `part`."""

    section: int
    counts: str
    first: Fraction
    last: Fraction
    steps: tuple[Step, ...]
    part: str = "main"
    span: Span | None = field(default=None, compare=False, repr=False)


@dataclass(frozen=True, slots=True)
class Dance:
    """A dance as danced.

    `parts` holds the one part ``main``, or the lettered parts in order; tags hold their
    own.  `sequence` names parts (and tags, by their part's name) for a phrased dance and is
    None otherwise.  `starts_on` is the foot that moves first.  `bpm` is None where not said.
    """

    title: str
    parts: tuple[Part, ...]
    starts_on: Foot = Foot.RIGHT
    beats_per_bar: int = 4
    level: str = ""
    choreographer: str = ""
    music: str = ""
    intro_counts: int | None = None
    bpm: Fraction | None = None
    restarts: tuple[Restart, ...] = ()
    tags: tuple[Tag, ...] = ()
    sequence: tuple[str, ...] | None = None
    ending: Part | None = None
    options: tuple[Option, ...] = ()

    @property
    def counts(self) -> Fraction:
        """Counts of one repetition: all parts added, tags left out."""
        return sum((p.counts for p in self.parts), Fraction(0))
