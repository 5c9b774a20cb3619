"""Where a dancer stands: places in metres, frames to see them in, both feet, the weight.

Every place is kept in the room frame: x to the right and y ahead of a dancer who faces
12:00, origin where the dance starts.  A frame only names another way to see a place.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache
from math import cos, hypot, pi, sin, sqrt

from wallwise.dance.clock import FRONT
from wallwise.dance.model import Foot

_DIAGONAL = sqrt(0.5)
# The eighths of a turn are written out so that a box of quarter turns closes exactly.
_SINES = (0.0, _DIAGONAL, 1.0, _DIAGONAL, 0.0, -_DIAGONAL, -1.0, -_DIAGONAL)


@dataclass(frozen=True, slots=True)
class Point:
    """A place on the floor, in metres.

    >>> Point(0.0, 1.0).turned(Fraction(1, 4)) == Point(1.0, 0.0)
    True
    """

    x_m: float
    y_m: float

    def __add__(self, other: Point) -> Point:
        return Point(self.x_m + other.x_m, self.y_m + other.y_m)

    def __sub__(self, other: Point) -> Point:
        return Point(self.x_m - other.x_m, self.y_m - other.y_m)

    def scaled(self, factor: float) -> Point:
        """The point `factor` times as far from the origin."""
        return Point(self.x_m * factor, self.y_m * factor)

    def turned(self, turn: Fraction, *, about: Point | None = None) -> Point:
        """The point carried round `about` (the origin) by `turn` of a full turn, right positive."""
        if about is not None:
            return (self - about).turned(turn) + about
        sine, cosine = _sine_and_cosine(turn % 1)
        return Point(self.x_m * cosine + self.y_m * sine, self.y_m * cosine - self.x_m * sine)

    def toward(self, other: Point, share: float) -> Point:
        """The point that `share` of the way to `other` reaches."""
        return self + (other - self).scaled(share)

    def seen_from(self, frame: Frame) -> Point:
        """The place of the room as seen in `frame`."""
        return (self - frame.origin).turned(-frame.facing)

    def out_of(self, frame: Frame) -> Point:
        """The place of the room that `frame` sees here; undoes `seen_from`."""
        return self.turned(frame.facing) + frame.origin

    def distance_m(self, other: Point) -> float:
        """How far it is to `other`."""
        return hypot(self.x_m - other.x_m, self.y_m - other.y_m)


ORIGIN = Point(0.0, 0.0)


@dataclass(frozen=True, slots=True)
class Frame:
    """A way to see the floor: from `origin`, x to the right and y ahead of who faces `facing`."""

    origin: Point = ORIGIN
    facing: Fraction = FRONT


@dataclass(frozen=True, slots=True)
class Footprint:
    """A foot on the floor: the middle of the sole, and the facing its toes point to."""

    at: Point
    toes: Fraction = FRONT

    def turned(self, turn: Fraction, *, about: Point) -> Footprint:
        """The foot carried round `about`, its toes with it."""
        if not turn:
            return self
        return Footprint(self.at.turned(turn, about=about), (self.toes + turn) % 1)

    def pivoted(self, turn: Fraction) -> Footprint:
        """The foot turned on its spot."""
        if not turn:
            return self
        return Footprint(self.at, (self.toes + turn) % 1)


@dataclass(frozen=True, slots=True)
class Stance:
    """A dancer between two events.

    `weight` is the foot that stands, or both; the foot of a gesture has its place too,
    on the floor or above it.
    """

    left: Footprint
    right: Footprint
    weight: Foot
    facing: Fraction = FRONT

    def foot(self, foot: Foot) -> Footprint:
        """Where the left or the right foot is; KeyError for both or none."""
        return {Foot.LEFT: self.left, Foot.RIGHT: self.right}[foot]

    @property
    def free(self) -> Foot:
        """The foot that may step next: both where both stand."""
        return self.weight.other

    @property
    def over(self) -> Point:
        """Where the body is: over the foot that stands, midway where both do."""
        if self.weight in (Foot.LEFT, Foot.RIGHT):
            return self.foot(self.weight).at
        return self.left.at.toward(self.right.at, 0.5)

    @property
    def apart_m(self) -> float:
        """From the middle of one foot to the middle of the other."""
        return self.left.at.distance_m(self.right.at)

    @property
    def frame(self) -> Frame:
        """The floor as this dancer sees it."""
        return Frame(self.over, self.facing)


@lru_cache(maxsize=256)
def _sine_and_cosine(turn: Fraction) -> tuple[float, float]:
    eighths = turn * 8
    if eighths.denominator == 1:
        return _SINES[int(eighths)], _SINES[int(eighths + 2) % 8]
    angle = 2 * pi * float(turn)
    return sin(angle), cos(angle)
