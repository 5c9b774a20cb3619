"""Minutes and seconds are read as they are written."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from wallwise.song.minutes import parse_time, time_name


@given(st.integers(0, 59 * 60))
def test_what_is_written_is_read(sec: int) -> None:
    """Whole seconds come back."""
    assert sec == parse_time(time_name(sec))


@pytest.mark.parametrize(
    ("text", "sec"),
    [("3:05", 185), (" 0:07 ", 7), ("3:05.5", 185.5), ("1:02:03", 3723), ("200", 200), ("12.25", 12.25)],
)
def test_a_length_may_be_typed_in_several_ways(text: str, sec: float) -> None:
    """Minutes and seconds, hours before them, or seconds alone."""
    assert sec == parse_time(text)


@pytest.mark.parametrize("text", ["", "3:5", "3:65", "three", "-1:00", "3:05:1", "1e3", "3:05 pm"])
def test_anything_else_is_refused(text: str) -> None:
    """The refusal shows how a time is written."""
    with pytest.raises(ValueError, match="3:05"):
        parse_time(text)
