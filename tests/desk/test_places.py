"""Lines and columns, against what Python says of the same text."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from wallwise.desk.places import Lines

TEXT = st.text(st.sampled_from("ab½ \t\n\r\ufeff"), max_size=40)


@given(TEXT)
def test_every_character_is_in_its_line(text: str) -> None:
    """The line and column of each character find that character again."""
    lines = Lines(text)
    for offset, character in enumerate(text):
        line, column = lines.place(offset)
        if character not in "\r\n":
            assert lines.line(line)[column - 1] == character


@given(TEXT)
def test_lines_end_where_universal_newlines_end(text: str) -> None:
    """The lines are those of Python's universal newlines."""
    lines = Lines(text)
    expected = text.replace("\r\n", "\n").replace("\r", "\n").split("\n")
    assert expected == [lines.line(n) for n in range(1, len(lines) + 1)]


def test_places_past_the_end_stand_at_the_end() -> None:
    """An offset beyond the text is its end, and so is that of an empty text."""
    assert Lines("ab").place(99) == (1, 3)
    assert Lines("").place(0) == (1, 1)
