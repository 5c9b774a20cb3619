"""What the glossary holds: figures with their ways, and terms.  Frozen, ignorant of files."""

from dataclasses import dataclass
from fractions import Fraction
from functools import cached_property

from wallwise.dance.model import Foot, Place, Step


@dataclass(frozen=True)
class Way:
    """One accepted meaning of a figure's name, led by the right foot.

    `turn_on` lists where a turn that the sheet states may be taken, the likeliest first;
    each is a tuple of beats that share it equally.  A stated turn replaces the way's own:
    the difference is taken there.  `counts` is how long the way lasts.
    """

    steps: tuple[Step, ...]
    counts: Fraction
    turn_on: tuple[tuple[Fraction, ...], ...] = ()
    says: str = ""

    @cached_property
    def turn(self) -> Fraction:
        """The turn the way makes of itself, right positive."""
        return sum((s.turn for s in self.steps), Fraction(0))

    @cached_property
    def travels(self) -> Foot | None:
        """The side the way travels to, as that side's foot; None where it comes back or goes straight."""
        drift = sum(_sideways(s) for s in self.steps if s.weight)
        return (Foot.RIGHT if drift > 0 else Foot.LEFT) if drift else None


def _sideways(step: Step) -> int:
    """Which way a step moves the body: +1 right, -1 left; a cross goes to the other foot's side."""
    if step.place is Place.SIDE:
        side = step.toward or step.foot
    elif step.place in (Place.ACROSS, Place.BEHIND):
        side = step.foot.other
    else:
        return 0
    return {Foot.RIGHT: 1, Foot.LEFT: -1}.get(side, 0)


@dataclass(frozen=True)
class Example:
    """A line of a sheet and the steps it must be read as, with the foot free that moves first.

    Beats count from 1 whatever the line's own counts; a step before the first count has beat 1/2.
    """

    line: str
    reads: tuple[Step, ...]


@dataclass(frozen=True)
class Figure:
    """A named figure.

    `side` says what a bare R or L beside the name means: the foot that leads (``lead``),
    the way it turns (``turn``) or the way it travels, whichever foot leads (``travel``: a
    weave to the right may begin with the left foot across; see `Way.travels`).
    """

    name: str
    also: tuple[str, ...]
    ways: tuple[Way, ...]
    call: str
    source: str
    family: str
    side: str = "lead"
    says: str = ""
    examples: tuple[Example, ...] = ()

    @property
    def names(self) -> tuple[str, ...]:
        """Every name and abbreviation, the chief one first."""
        return (self.name, *self.also)


@dataclass(frozen=True)
class Term:
    """A word of the trade explained."""

    name: str
    says: str
    source: str
    also: tuple[str, ...] = ()
