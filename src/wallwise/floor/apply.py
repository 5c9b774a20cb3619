"""One event of a foot: the stance before it to the stance after it.

The body turns about the foot that stands and the free foot is carried with it; then the
moving foot lands, its place seen from the standing foot and relative to the new facing
("turn 1/4 left stepping forward").  The turn of a pivot or an unwind, a recover and the
drop of a strut leave both feet on their spots.
"""

from dataclasses import dataclass, replace
from fractions import Fraction

from wallwise.dance.model import Foot, Kind, Place, Step
from wallwise.dance.weight import weight_after, weight_told
from wallwise.floor.stance import ORIGIN, Footprint, Frame, Point, Stance
from wallwise.floor.stride import AVERAGE, Body, share_of

_STAYS = frozenset({Kind.RECOVER, Kind.DROP, Kind.TURN, Kind.FAN})
_STAYS_UNLESS_SAID = frozenset({Kind.SWAY, Kind.BUMP, Kind.ROLL, Kind.SWIVEL, Kind.BOUNCE, Kind.SPLIT})
_TRAVELS_ON_BOTH = frozenset({Kind.JUMP, Kind.HOP, Kind.STEP, Kind.STOMP})
_SIDEWAYS = frozenset({Place.SIDE, Place.FORWARD_DIAGONAL, Place.BACK_DIAGONAL})
# Where a gesture goes that does not say: common practice, no source.
_USUAL = {
    Kind.POINT: Place.SIDE,
    Kind.HEEL: Place.FORWARD,
    Kind.TOE: Place.BACK,
    Kind.KICK: Place.FORWARD,
    Kind.FLICK: Place.BACK,
    Kind.HOOK: Place.ACROSS,
    Kind.BRUSH: Place.FORWARD,
    Kind.SCUFF: Place.FORWARD,
    Kind.SWEEP: Place.FORWARD,
}
# How far a fan takes the toes out: a rule of thumb.
_FANNED = Fraction(1, 8)


@dataclass(frozen=True, slots=True)
class Refusal:
    """A step no body can make: `foot` bears the weight (or, to spin or hop, does not)."""

    foot: Foot
    kind: Kind

    @property
    def says(self) -> str:
        """The refusal in a teacher's words."""
        name = {Foot.LEFT: "left", Foot.RIGHT: "right"}.get(self.foot, self.foot.value)
        if self.kind.on_standing_foot:
            return f"the {name} foot does not bear the weight: it cannot {self.kind}"
        return f"the {name} foot bears the weight: it is not free to {self.kind}"


def start(first: Foot = Foot.RIGHT, *, body: Body = AVERAGE) -> Stance:
    """A dancer at the origin who faces 12:00, feet closed, with `first` free to move first."""
    half = body.closed_m / 2
    return Stance(Footprint(Point(-half, 0.0)), Footprint(Point(half, 0.0)), first.other)


def refusal(stance: Stance, step: Step) -> Refusal | None:
    """Why the body refuses `step` here; None where it does not."""
    return Refusal(step.foot, step.kind) if weight_after(stance.weight, step) is None else None


def apply(stance: Stance, step: Step, *, body: Body = AVERAGE) -> Stance:
    """The stance after `step`, metres in the room frame.

    A step that the body refuses is danced as though the weight had been on the foot it
    needs, so that what follows can still be seen; `refusal` tells.

    >>> from fractions import Fraction
    >>> walk = Step(Fraction(1), Foot.RIGHT, Kind.STEP, Place.FORWARD, turn=Fraction(1, 4))
    >>> apply(start(), walk).facing
    Fraction(1, 4)
    """
    if refusal(stance, step):
        weight = step.foot if step.kind.on_standing_foot else step.foot.other
        stance = replace(stance, weight=weight)
    moved = _moved(stance, step, body)
    return replace(moved, weight=weight_told(stance.weight, step), facing=_facing_after(stance, step))


def _moved(stance: Stance, step: Step, body: Body) -> Stance:
    """Both feet after the step; weight and facing are still those before."""
    if _keeps_both_spots(step):
        return _fanned(_pivoted(stance, step.turn), step)
    if step.foot in (Foot.BOTH, Foot.NONE):
        return _both_landed(_carried(stance, step.turn), step, body)
    if step.kind.on_standing_foot:
        return _shifted(_carried(stance, step.turn), _hop(step, body), _facing_after(stance, step))
    return _landed(stance, step, body)


def _facing_after(stance: Stance, step: Step) -> Fraction:
    return (stance.facing + step.turn) % 1 if step.turn else stance.facing


def _keeps_both_spots(step: Step) -> bool:
    if step.kind in _STAYS:
        return True
    if step.foot is Foot.BOTH:
        return step.kind not in _TRAVELS_ON_BOTH
    return step.place is Place.UNSAID and step.kind in _STAYS_UNLESS_SAID


def _landed(stance: Stance, step: Step, body: Body) -> Stance:
    """The foot of the step where it lands, the other turned on its spot."""
    facing = _facing_after(stance, step)
    stands = stance.foot(step.foot.other).pivoted(step.turn)
    offset = _offset(step, body)
    lands = Footprint(offset.out_of(Frame(stands.at, facing)), facing)
    left, right = (lands, stands) if step.foot is Foot.LEFT else (stands, lands)
    return replace(stance, left=left, right=right)


def _offset(step: Step, body: Body) -> Point:
    """Where the foot lands in the frame of the foot that stands."""
    usual = _USUAL.get(step.kind, Place.IN_PLACE)
    place = usual if step.place is Place.UNSAID else step.place
    offset = body.offset(place, share=share_of(step.kind, long=step.long))
    return _to_side(offset, _side(step, place))


def _side(step: Step, place: Place) -> Foot:
    """The side that the step goes out to: its own foot's unless it is said."""
    return step.toward if step.toward and place in _SIDEWAYS else step.foot


def _to_side(offset: Point, side: Foot) -> Point:
    return Point(-offset.x_m, offset.y_m) if side is Foot.LEFT else offset


def _hop(step: Step, body: Body) -> Point:
    """How far a hop carries the body, in its own frame."""
    if step.kind is Kind.SPIN or step.place is Place.UNSAID:
        return ORIGIN
    offset = body.offset(step.place, share=share_of(step.kind, long=step.long))
    return _to_side(offset - body.beside(), _side(step, step.place))


def _both_landed(stance: Stance, step: Step, body: Body) -> Stance:
    """Both feet after a jump: where they were, apart, or closed after going that way."""
    if step.place is Place.UNSAID:
        return stance
    facing = _facing_after(stance, step)
    centre = stance.left.at.toward(stance.right.at, 0.5)
    apart_m = body.closed_m
    if step.place in _SIDEWAYS and not step.toward:
        apart_m = body.side_m
    offset = body.offset(step.place, share=share_of(step.kind, long=step.long)) - body.beside()
    ahead = Point(offset.x_m if step.toward else 0.0, offset.y_m)
    centre = _to_side(ahead, step.toward or Foot.RIGHT).out_of(Frame(centre, facing))
    frame = Frame(centre, facing)
    left, right = (Footprint(Point(x_m, 0.0).out_of(frame), facing) for x_m in (-apart_m / 2, apart_m / 2))
    return replace(stance, left=left, right=right)


def _pivoted(stance: Stance, turn: Fraction) -> Stance:
    return replace(stance, left=stance.left.pivoted(turn), right=stance.right.pivoted(turn))


def _carried(stance: Stance, turn: Fraction) -> Stance:
    about = stance.over
    return replace(
        stance,
        left=stance.left.turned(turn, about=about),
        right=stance.right.turned(turn, about=about),
    )


def _shifted(stance: Stance, by: Point, facing: Fraction) -> Stance:
    by = by.turned(facing)
    return replace(
        stance,
        left=Footprint(stance.left.at + by, stance.left.toes),
        right=Footprint(stance.right.at + by, stance.right.toes),
    )


def _fanned(stance: Stance, step: Step) -> Stance:
    """The toes of a fan out, or straight again where it comes back to its place."""
    if step.kind is not Kind.FAN:
        return stance
    facing = _facing_after(stance, step)
    out = 0 if step.place in (Place.IN_PLACE, Place.BESIDE) else _FANNED
    left, right = stance.left, stance.right
    if step.foot in (Foot.LEFT, Foot.BOTH):
        left = Footprint(left.at, (facing + _outward(step, Foot.LEFT) * out) % 1)
    if step.foot in (Foot.RIGHT, Foot.BOTH):
        right = Footprint(right.at, (facing + _outward(step, Foot.RIGHT) * out) % 1)
    return replace(stance, left=left, right=right)


def _outward(step: Step, foot: Foot) -> int:
    return -1 if (step.toward or foot) is Foot.LEFT else 1
