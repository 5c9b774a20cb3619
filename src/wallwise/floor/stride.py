"""How long a dancer's steps are.

Conventions: metres; a step is measured from the middle of the standing foot to the
middle of the foot that lands; offsets are for the right foot, x to the right and y ahead
of the dancer, and mirrored for the left.

Sources.  Walking step: 0.41-0.45 of stature, the range commonly given in gait tables;
its lower end is used.  Foot length 0.152, foot breadth 0.055 and shoulder width 0.259 of
stature: R. Drillis, R. Contini, *Body Segment Parameters*, 1966, as printed in D. A.
Winter, *Biomechanics and Motor Control of Human Movement*, fig. 4.1 (the three from
memory).  Average stature: midway between the median man's 1.759 m and the median woman's
1.618 m (R. L. Huston, *Principles of Biomechanics*, 2009, as tabulated in a
course sheet of the University of Rhode Island, BME 207, 2016).  The shares of a step in this
module are rules of thumb of ours, no measurement.
"""

from dataclasses import dataclass
from typing import Self

from wallwise.dance.model import Kind, Place
from wallwise.floor.stance import Point

WALKING_STEP = 0.41
FOOT_LENGTH = 0.152
FOOT_BREADTH = 0.055
SHOULDER_WIDTH = 0.259
AVERAGE_STATURE_M = (1.759 + 1.618) / 2

# Rules of thumb: a step that is danced is shorter than one that is walked, one backward
# shorter still; a rock, a ball change or a reach of the free foot does not go the whole way.
DANCED = 0.7
BACKWARD = 0.85
LONG = 1.5
_SHARES = {
    Kind.ROCK: 0.75,
    Kind.BALL: 0.5,
    Kind.HOOK: 0.5,
    Kind.HITCH: 0.5,
    Kind.HOP: 0.5,
}
GESTURE = 0.75


@dataclass(frozen=True, slots=True)
class Body:
    """The lengths, in metres, that a dancer's steps have.

    `closed_m` is between the feet when they stand side by side; `across_m` how far a foot
    passes the standing one to its far side, `clear_m` how far before or behind it lands.
    """

    forward_m: float
    back_m: float
    side_m: float
    closed_m: float
    across_m: float
    clear_m: float
    foot_m: float

    @classmethod
    def of_stature(cls, stature_m: float) -> Self:
        """A dancer this tall; every length grows with stature.  ValueError unless positive.

        >>> round(Body.of_stature(1.7).forward_m, 2)
        0.49
        """
        if not stature_m > 0:
            raise ValueError(f"a stature is a positive number of metres, not {stature_m}")
        step_m = WALKING_STEP * DANCED * stature_m
        return cls(
            forward_m=step_m,
            back_m=step_m * BACKWARD,
            side_m=SHOULDER_WIDTH * stature_m,
            closed_m=FOOT_BREADTH * stature_m,
            across_m=FOOT_BREADTH * stature_m,
            clear_m=FOOT_LENGTH * stature_m,
            foot_m=FOOT_LENGTH * stature_m,
        )

    def beside(self) -> Point:
        """Where the right foot closes, seen from the left."""
        return Point(self.closed_m, 0.0)

    def offset(self, place: Place, *, share: float = 1.0) -> Point:
        """Where the right foot lands, seen from the left foot that stands.

        `share` is how much of the way out from beside the foot goes.  In place is beside, and
        so is a place that is not said.
        """
        return self.beside().toward(self._whole_way(place), share)

    def _whole_way(self, place: Place) -> Point:
        closed, diagonal = self.closed_m, self.forward_m * 0.5**0.5
        back_diagonal = self.back_m * 0.5**0.5
        return {
            Place.FORWARD: Point(closed, self.forward_m),
            Place.BACK: Point(closed, -self.back_m),
            Place.SIDE: Point(self.side_m, 0.0),
            Place.ACROSS: Point(-self.across_m, self.clear_m),
            Place.BEHIND: Point(-self.across_m, -self.clear_m),
            Place.LOCK_FRONT: Point(-self.across_m / 2, self.clear_m),
            Place.LOCK_BEHIND: Point(-self.across_m / 2, -self.clear_m),
            Place.FORWARD_DIAGONAL: Point(closed + diagonal, diagonal),
            Place.BACK_DIAGONAL: Point(closed + back_diagonal, -back_diagonal),
        }.get(place, self.beside())


AVERAGE = Body.of_stature(AVERAGE_STATURE_M)

# Feet without breadth, every step one long: for drawings on squared paper and for proofs.
UNIT = Body(forward_m=1.0, back_m=1.0, side_m=1.0, closed_m=0.0, across_m=1.0, clear_m=1.0, foot_m=0.0)


def share_of(kind: Kind, *, long: bool) -> float:
    """How much of a whole step an action of this kind goes."""
    usual = 1.0 if kind.takes_weight else GESTURE
    return _SHARES.get(kind, usual) * (LONG if long else 1.0)
