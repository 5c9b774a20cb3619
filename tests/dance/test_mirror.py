"""The same dance on the other foot."""

from fractions import Fraction

from hypothesis import given, settings
from tests.strategies import any_step, danceable, dances

from wallwise.dance.clock import walls_of
from wallwise.dance.mirror import mirror, mirror_part, mirror_step
from wallwise.dance.model import Dance, Foot, Kind, Place, Step
from wallwise.dance.weight import weight_after


@settings(max_examples=40)
@given(dances)
def test_mirrored_twice_is_the_dance_itself(dance: Dance) -> None:
    """A looking glass in a looking glass shows the dance."""
    assert dance == mirror(mirror(dance))


def test_mirrored_step() -> None:
    """Foot, turn, side and what goes along change sides; place and count do not."""
    step = Step(
        Fraction(3), Foot.RIGHT, Kind.STEP, Place.ACROSS, Fraction(1, 4), Foot.LEFT, also=("sweep L", "clap")
    )
    glass = Step(
        Fraction(3), Foot.LEFT, Kind.STEP, Place.ACROSS, Fraction(-1, 4), Foot.RIGHT, also=("sweep R", "clap")
    )

    assert glass == mirror_step(step)


@given(any_step())
def test_body_refuses_a_mirrored_step_alike(step: Step) -> None:
    """What the body makes of a step it makes of the mirrored step on the other foot."""
    for weight in (Foot.LEFT, Foot.RIGHT, Foot.BOTH):
        after = weight_after(weight, step)
        assert (after and after.other) == weight_after(weight.other, mirror_step(step))


@given(danceable())
def test_mirrored_dance_has_as_many_walls(dance: Dance) -> None:
    """Turning the other way takes as many repetitions to come back."""
    for part in dance.parts:
        assert walls_of(part.net_turn) == walls_of(mirror_part(part).net_turn)
        assert part.net_turn == -mirror_part(part).net_turn
