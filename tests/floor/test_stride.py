"""The lengths of steps against the published proportions they come from."""

import pytest

from wallwise.dance.model import Kind, Place
from wallwise.floor.stride import AVERAGE, UNIT, WALKING_STEP, Body, share_of


def test_walking_step_is_in_the_published_range() -> None:
    """A walking step is commonly given as 0.41 to 0.45 of stature."""
    assert 0.41 <= WALKING_STEP <= 0.45


@pytest.mark.parametrize(
    ("stature_m", "foot_m", "source"),
    [
        (1.6997, 0.2500, "jcmad, men of a tribal district, n=100"),
        (1.5420, 0.2271, "jcmad, women of the same district"),
        (1.7644, 0.2729, "ejfs 2018, men, Nigeria, n=200"),
    ],
)
def test_foot_length_against_measured_feet(stature_m: float, foot_m: float, source: str) -> None:
    """The foot of a body this tall is within five in a hundred of the measured mean."""
    assert pytest.approx(foot_m, rel=0.05) == Body.of_stature(stature_m).foot_m, source


def test_lengths_grow_with_stature() -> None:
    """Twice as tall steps twice as far, in every direction."""
    small, tall = Body.of_stature(0.9), Body.of_stature(1.8)

    for place in Place:
        assert pytest.approx(2 * small.offset(place).x_m) == tall.offset(place).x_m
        assert pytest.approx(2 * small.offset(place).y_m) == tall.offset(place).y_m


@pytest.mark.parametrize("stature_m", [0.0, -1.7, float("nan")])
def test_no_stature_no_body(stature_m: float) -> None:
    """A stature that is not positive is refused."""
    with pytest.raises(ValueError, match="positive"):
        Body.of_stature(stature_m)


def test_places_lie_where_their_names_say() -> None:
    """For the right foot: ahead, behind, to the right, and past the left foot when it crosses."""
    forward, back, side, across, behind = (
        AVERAGE.offset(place) for place in (Place.FORWARD, Place.BACK, Place.SIDE, Place.ACROSS, Place.BEHIND)
    )

    assert forward.y_m > 0 > back.y_m
    assert side.x_m > AVERAGE.closed_m > 0
    assert across.x_m < 0 < across.y_m
    assert behind.x_m < 0
    assert behind.y_m < 0
    assert abs(AVERAGE.offset(Place.LOCK_BEHIND).x_m) < abs(behind.x_m)


def test_steps_and_gestures_share_the_way() -> None:
    """A long step goes farther than a step, a ball change and a touch less far."""
    step = share_of(Kind.STEP, long=False)

    assert 1.0 == step < share_of(Kind.STEP, long=True)
    assert share_of(Kind.BALL, long=False) < step
    assert share_of(Kind.TOUCH, long=False) < step


def test_unit_body_steps_one() -> None:
    """Forward, back and side are one long from feet without breadth."""
    places = [UNIT.offset(place) for place in (Place.FORWARD, Place.BACK, Place.SIDE, Place.BESIDE)]

    assert [(0, 1), (0, -1), (1, 0), (0, 0)] == [(place.x_m, place.y_m) for place in places]
