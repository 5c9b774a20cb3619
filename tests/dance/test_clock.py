"""Facings, turns and the wall law."""

from fractions import Fraction
from math import gcd

import pytest
from hypothesis import given
from hypothesis import strategies as st

from wallwise.dance.clock import facing_name, parse_facing, turn_name, walls_of


def test_quarters_to_the_right_run_round_the_clock() -> None:
    """Four quarters to the right of the front are 3:00, 6:00, 9:00 and the front again."""
    assert ["3:00", "6:00", "9:00", "12:00"] == [facing_name(Fraction(n, 4)) for n in range(1, 5)]


def test_eighths_are_the_half_hours() -> None:
    """The corners of the room are 1:30, 4:30, 7:30 and 10:30."""
    assert ["1:30", "4:30", "7:30", "10:30"] == [facing_name(Fraction(n, 8)) for n in (1, 3, 5, 7)]


@given(st.integers(0, 719))
def test_facing_and_its_name_are_inverse(minute: int) -> None:
    """Every minute of the clock is read back from its name."""
    facing = Fraction(minute, 720)

    assert facing == parse_facing(facing_name(facing))


@pytest.mark.parametrize(
    "text", ["", "12", "0:30", "13:00", "3:60", "3:", ":30", "-3:00", "3:00 ", "noon", "²:00"]
)
def test_other_text_is_no_clock_time(text: str) -> None:
    """What is no clock time is refused."""
    with pytest.raises(ValueError, match=r"clock time|invalid literal"):
        parse_facing(text)


@pytest.mark.parametrize(
    ("turn", "name"),
    [("1/4", "1/4 right"), ("-3/8", "3/8 left"), ("1", "full turn right"), ("-2", "2 full turns left"),
     ("5/4", "1 1/4 right"), ("0", "no turn")],
)  # fmt: skip
def test_turn_names(turn: str, name: str) -> None:
    """A turn is named by its size and side."""
    assert name == turn_name(Fraction(turn))


@given(st.integers(-2880, 2880))
def test_wall_law_in_degrees(degrees: int) -> None:
    """The walls are 360 / gcd(360, net turn), whatever whole turns it holds."""
    assert 360 // gcd(360, degrees % 360) == walls_of(Fraction(degrees, 360))
