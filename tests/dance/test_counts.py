"""Counts and the words they are counted in."""

from fractions import Fraction

import pytest

from wallwise.dance.counts import full_label, label, parse_label


def test_words_of_one_beat() -> None:
    """A beat in quarters is counted "1 e & a"."""
    assert ["1", "e", "&", "a"] == [label(Fraction(quarter, 4)) for quarter in range(4, 8)]


def test_swung_a_is_counted_a() -> None:
    """Two thirds after the beat are counted "a" too, as rolling rhythm has it."""
    assert "a" == label(Fraction(8, 3))


def test_share_without_a_letter_keeps_its_fraction() -> None:
    """A third of a beat has no word of its own."""
    assert "7/3" == label(Fraction(7, 3))
    assert "2+1/3" == full_label(Fraction(7, 3))


@pytest.mark.parametrize("quarters", range(4, 70))
def test_full_label_is_read_back(quarters: int) -> None:
    """Every quarter of a beat is read back from its full label."""
    assert Fraction(quarters, 4) == parse_label(full_label(Fraction(quarters, 4)))


@pytest.mark.parametrize("text", ["", "&", "3&a", "three", "3.5", "&3"])
def test_other_text_is_no_count(text: str) -> None:
    """What is no count is refused."""
    with pytest.raises(ValueError, match="not a count"):
        parse_label(text)
