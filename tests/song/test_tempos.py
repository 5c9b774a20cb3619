"""The tempo windows hold what the lists they come from say, and the words of sheets find them."""

from __future__ import annotations

from fractions import Fraction

import pytest

from wallwise.song.tempos import ANY, RHYTHMS, level_that_fits, rhythm_in, within

# Tempos in counts a minute as the lists named give them (measures are turned into beats).
PUBLISHED = [
    ("waltz", 84, 100, "UCWDC, an undated secondary page"),
    ("waltz", 84, 90, "NDCA, 28-30 measures of three"),
    ("waltz", 162, 180, "NDCA Viennese waltz, 54-60 measures of three"),
    ("waltz", 76, 98, "Rich Gross, 2012"),
    ("waltz", 90, 110, "USA Dance, chapter 2030"),
    ("cha cha", 100, 116, "UCWDC, an undated secondary page"),
    ("cha cha", 112, 128, "NDCA, 28-32 measures of four"),
    ("cha cha", 96, 118, "Rich Gross, 2012"),
    ("cha cha", 104, 132, "USA Dance, chapter 2030"),
    ("two-step", 182, 198, "UCWDC, an undated secondary page"),
    ("two-step", 168, 200, "Rich Gross, 2012"),
    ("west coast swing", 112, 128, "UCWDC, an undated secondary page, and NDCA"),
    ("west coast swing", 112, 144, "USA Dance, chapter 2030"),
    ("east coast swing", 142, 158, "UCWDC, an undated secondary page"),
    ("east coast swing", 136, 144, "NDCA, 34-36 measures of four"),
    ("east coast swing", 140, 184, "USA Dance, chapter 2030"),
    ("polka", 114, 130, "UCWDC, an undated secondary page"),
    ("polka", 105, 140, "L. Garron, garron.net/dance/tempos, the extended range"),
    ("nightclub", 60, 90, "V. Eijkhout, eijkhout.net"),
    ("samba", 96, 104, "NDCA, 48-52 measures of two"),
    ("rumba", 104, 108, "NDCA, 26-27 measures of four"),
    ("rumba", 112, 136, "USA Dance, chapter 2030"),
    ("hustle", 112, 120, "NDCA, 28-30 measures of four"),
    ("lindy hop", 135, 180, "L. Garron, garron.net/dance/tempos, the extended range"),
]


@pytest.mark.parametrize(("name", "slowest", "fastest", "source"), PUBLISHED)
def test_a_published_tempo_is_likely(name: str, slowest: int, fastest: int, source: str) -> None:
    """Both ends of each published range lie in the rhythm's window, and in that of any rhythm."""
    rhythm = next(r for r in RHYTHMS if r.name == name)
    for tempo in (slowest, fastest):
        assert within(tempo, rhythm.windows, tolerance=0), source
        assert within(tempo, ANY.windows, tolerance=0), source


@pytest.mark.parametrize(
    ("name", "bpm", "level"),
    [
        ("nightclub", 128, Fraction(1, 2)),
        ("polka", 60, Fraction(2)),
        ("cha cha", 56, Fraction(2)),
        ("cha cha", 160, None),
        ("two-step", 95, Fraction(2)),
    ],
)
def test_half_and_double_are_tried(name: str, bpm: int, level: Fraction | None) -> None:
    """A song outside of a window may be counted at half or at twice its beats."""
    rhythm = next(r for r in RHYTHMS if r.name == name)
    assert not within(bpm, rhythm.windows)
    assert level == level_that_fits(bpm, rhythm.windows)


@pytest.mark.parametrize(
    ("words", "name"),
    [
        ("Level: Intermediate nightclub", "nightclub"),
        ("Intermediate NC2S", "nightclub"),
        ("Improver Night Club Two-Step", "nightclub"),
        ("Type: 32 counts, 4 walls, cha cha", "cha cha"),
        ("Country two-step", "two-step"),
        ("High Beginner WCS", "west coast swing"),
        ("East Coast Swing, 32 counts", "east coast swing"),
        ("Rhumba", "rumba"),
        ("48 counts, Waltz", "waltz"),
    ],
)
def test_a_rhythm_is_known_by_its_words(words: str, name: str) -> None:
    """As sheets write it: common practice, no source."""
    rhythm = rhythm_in(words)
    assert rhythm is not None
    assert name == rhythm.name


@pytest.mark.parametrize("words", ["", "32 counts, 4 walls", "charming", "triple two step", "wcsomething"])
def test_other_words_are_no_rhythm(words: str) -> None:
    """No rhythm, part of another word, or one that has no published window."""
    assert rhythm_in(words) is None


def test_measures_taken_for_beats_are_unlikely() -> None:
    """28 to 32 "beats" of a cha cha are its measures (a studio's page mistakes them so)."""
    assert not within(30, next(r for r in RHYTHMS if r.name == "cha cha").windows)
    assert not within(30, ANY.windows)
