"""A line of a sheet and its carets fit any screen."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st
from rich.cells import cell_len

from wallwise.cli.screen import excerpt, printable


def test_carets_stand_under_the_words() -> None:
    """The carets are as long as the words and stand under them."""
    assert excerpt("1-2  Step R, step R", 13, 19, width=80) == ("1-2  Step R, step R", " " * 13 + "^^^^^^")


def test_a_long_line_is_cut_around_the_words() -> None:
    """Both sides are cut where the screen is narrow, and the words stay."""
    line = "1-2 " + "step right forward, " * 10 + "HERE" + ", step left back" * 10
    start = line.index("HERE")
    shown, carets = excerpt(line, start, start + 4, width=40)
    assert cell_len(shown) <= 40
    assert (shown[0], shown[-1]) == ("…", "…")
    assert shown[carets.index("^") : len(carets)] == "HERE"


@given(
    st.text(st.sampled_from("ab½ \t日’\x1b"), max_size=60),
    st.integers(0, 60),
    st.integers(0, 60),
    st.integers(20, 50),
)
def test_nothing_is_wider_than_the_screen(line: str, start: int, end: int, width: int) -> None:
    """Whatever the line and the place, both rows fit and there is a caret."""
    start, end = min(start, len(line)), min(end, len(line))
    shown, carets = excerpt(line, start, max(start, end), width=width)
    assert cell_len(shown) <= width
    assert 1 <= len(carets) <= width
    assert "^" in carets
    assert shown == printable(shown)


def test_control_characters_never_reach_the_screen() -> None:
    """Escape sequences in a sheet cannot move the cursor or colour the screen."""
    assert printable("\ufeffa\x1b[31mb\tc\x9b") == "a [31mb c "
