"""A song that is told by its tempo, its length and its phrases."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest

from wallwise.dance.model import Dance
from wallwise.desk.errors import DeskError
from wallwise.desk.song_asked import SongAsked, grid_for, phrase_counts
from wallwise.song.danced import song_counts

DANCE = Dance("Told", ())


def test_a_tempo_and_a_length_make_a_song() -> None:
    """Three minutes at 120: 360 beats, half a second each."""
    grid = grid_for(SongAsked(bpm=120, length="3:00"), DANCE)
    assert 360 == song_counts(grid)
    assert pytest.approx(120) == grid.bpm
    assert (0, 180) == (grid.count_to_sec(1), grid.length_sec)


def test_count_1_falls_where_the_sheets_intro_ends() -> None:
    """16 counts at 120 are eight seconds, at half time sixteen; nothing differs from the sheet then."""
    sheet = replace(DANCE, intro_counts=16)
    assert 8.0 == grid_for(SongAsked(bpm=120, length="3:00"), sheet).count_to_sec(1)
    half = grid_for(SongAsked(bpm=120, length="3:00", level=Fraction(1, 2)), sheet)
    assert (16.0, 16) == (half.count_to_sec(1), half.clear_intro_counts)


def test_the_sheets_tempo_holds_where_none_is_told() -> None:
    """And a tempo told holds against it."""
    sheet = replace(DANCE, bpm=Fraction(100))
    assert pytest.approx(100) == grid_for(SongAsked(length="2:00"), sheet).bpm
    assert pytest.approx(90) == grid_for(SongAsked(bpm=90, length="2:00"), sheet).bpm


def test_phrases_are_told_from_count_1_and_make_a_length() -> None:
    """80 counts after an intro of 16; a length told holds against theirs."""
    sheet = replace(DANCE, intro_counts=16)
    grid = grid_for(SongAsked(bpm=120, phrases="32, 32 16"), sheet)
    assert [(16, 32), (48, 32), (80, 16)] == [(p.starts_beat, p.counts) for p in grid.phrases]
    assert 80 == song_counts(grid)
    assert 104 == song_counts(grid_for(SongAsked(bpm=120, phrases="32 32 16", length="1:00"), sheet))


def test_phrases_count_as_the_dance_does() -> None:
    """At half time a phrase of 32 counts lasts 64 beats."""
    grid = grid_for(SongAsked(bpm=120, phrases="32 32", level=Fraction(1, 2)), DANCE)
    assert [0, 64] == [p.starts_beat for p in grid.phrases]
    assert 64 == song_counts(grid)


@pytest.mark.parametrize(
    ("asked", "says"),
    [
        (SongAsked(length="3:00"), "no tempo"),
        (SongAsked(bpm=120), "length is needed"),
        (SongAsked(bpm=120, length="3 minutes"), "minutes and seconds"),
        (SongAsked(bpm=120, length="45:00"), "longer than"),
        (SongAsked(bpm=0, length="3:00"), "no tempo"),
        (SongAsked(bpm=float("nan"), length="3:00"), "no tempo"),
        (SongAsked(bpm=-120, length="3:00"), "no tempo"),
        (SongAsked(bpm=4000, length="3:00"), "no tempo"),
        (SongAsked(bpm=120, length="0:00"), "length is needed"),
        (SongAsked(bpm=120, length="0:00.4"), "no second beat"),
        (SongAsked(bpm=120, phrases="32 thirty"), "tells no phrases"),
        (SongAsked(bpm=120, phrases=""), "tells no phrases"),
        (SongAsked(bpm=120, phrases="32 0"), "tells no phrases"),
        (SongAsked(bpm=120, phrases="9999 9999"), "longer than any song"),
    ],
)
def test_what_makes_no_song_is_refused_in_a_sentence(asked: SongAsked, says: str) -> None:
    """One sentence that ends in a full stop."""
    with pytest.raises(DeskError, match=says) as refusal:
        grid_for(asked, DANCE)
    assert str(refusal.value).endswith(".")
    assert "\n" not in str(refusal.value)


def test_a_common_tempo_is_taken_where_only_counts_matter() -> None:
    """For the fit: phrases alone are enough."""
    assert 64 == song_counts(grid_for(SongAsked(phrases="32 32"), DANCE, any_tempo=True))


def test_phrases_are_typed_with_blanks_or_commas() -> None:
    """However they are set apart."""
    assert (32, 32, 16) == phrase_counts(" 32,32 ; 16 ")
