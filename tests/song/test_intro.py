"""The sheet's intro moves count 1 by whole eights of the music, and not otherwise."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest

from wallwise.song.grid import BeatGrid, Phrase
from wallwise.song.intro import with_intro

SONG = replace(BeatGrid.steady_at(120, length_sec=120), first_beat=16)


@pytest.mark.parametrize(("counts", "beat"), [(8, 8), (16, 16), (32, 32), (30, 16), (33, 16), (1000, 16)])
def test_count_1_is_moved_by_eights(counts: int, beat: int) -> None:
    """To any eight of the song; an intro that ends within one, or after the song, moves nothing."""
    assert beat == with_intro(SONG, counts).first_beat


def test_an_intro_may_run_from_the_first_clear_beat_or_the_first_sound() -> None:
    """Four beats of noise before the first clear one: 32 from there, or 36 from the first sound."""
    song = replace(SONG, clear_beat=4, first_beat=20)
    assert (36, 36) == (with_intro(song, 32).first_beat, with_intro(song, 36).first_beat)


def test_the_eights_begin_anew_with_each_phrase() -> None:
    """After a break of four counts the eights are four later: 36 begins one then, 32 does not."""
    song = replace(SONG, phrases=(Phrase(0, 16, 1.0), Phrase(16, 12, 1.0), Phrase(28, 32, 1.0)), first_beat=0)
    assert (36, 0) == (with_intro(song, 36).first_beat, with_intro(song, 32).first_beat)


def test_half_time_waits_twice_the_beats() -> None:
    """16 counts at half time are 32 beats, or 16 where the sheet counts beats: the nearer is taken."""
    song = replace(SONG, counts_per_beat=Fraction(1, 2), first_beat=32)
    assert 32 == with_intro(song, 16).first_beat
    assert 16 == with_intro(replace(song, first_beat=0), 16).first_beat


def test_the_place_nearest_to_what_was_heard_is_taken() -> None:
    """A quiet phrase of 32, then the beat: 32 counts of intro are those, not the 32 after them."""
    song = replace(SONG, clear_beat=32, first_beat=32)
    assert 32 == with_intro(song, 32).first_beat
    assert 64 == with_intro(replace(song, first_beat=64), 32).first_beat


def test_a_waltz_goes_by_sixes() -> None:
    """24 counts are four sixes, 32 are none."""
    song = replace(SONG, beats_per_bar=3, first_beat=0)
    assert (24, 0) == (with_intro(song, 24).first_beat, with_intro(song, 32).first_beat)
