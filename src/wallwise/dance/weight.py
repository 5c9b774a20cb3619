"""The law of weight: nobody steps with the foot that bears the weight.

This is all the body knows without metres; the reader searches with it and the
floor simulates with it.
"""

from wallwise.dance.model import Foot, Kind, Step


def weight_after(weight: Foot, step: Step) -> Foot | None:
    """Which foot bears the weight after `step`, or None where the body refuses it.

    `weight` is L, R, or both (after a swivel or a jump onto two feet either may move).

    >>> from fractions import Fraction
    >>> walk = Step(Fraction(1), Foot.RIGHT, Kind.STEP)
    >>> weight_after(Foot.LEFT, walk), weight_after(Foot.RIGHT, walk)
    (<Foot.RIGHT: 'R'>, None)
    """
    return move(weight, step.foot, step.kind, step.ends_on)


def weight_told(weight: Foot, step: Step) -> Foot:
    """Which foot bears the weight if the dance is taken at its word, refused or not.

    >>> from fractions import Fraction
    >>> weight_told(Foot.RIGHT, Step(Fraction(1), Foot.RIGHT, Kind.TOUCH))
    <Foot.LEFT: 'L'>
    """
    stands = step.weight or step.kind.on_standing_foot
    return weight_after(weight, step) or (step.foot if stands else step.foot.other)


def move(weight: Foot, foot: Foot, kind: Kind, ends_on: Foot | None = None) -> Foot | None:
    """`weight_after` for the bare facts of a step."""
    if foot is Foot.NONE:
        return weight
    if foot is Foot.BOTH:
        return ends_on or Foot.BOTH
    if kind.on_standing_foot:
        return foot if weight in (foot, Foot.BOTH) else None
    if weight is foot:
        return None
    return foot if kind.takes_weight else foot.other
