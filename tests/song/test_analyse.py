"""Songs whose beats are known are heard as they were played, and corrections are kept.

The truth is that of the generator; mir_eval measures, with the usual window of 70 ms (M. E. P.
Davies, N. Degara and M. D. Plumbley, "Evaluation methods for musical audio beat tracking
algorithms", 2009).
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from fractions import Fraction
from functools import cache
from typing import Any

import mir_eval
import numpy as np
import pytest
from numpy.typing import NDArray
from tests.song.tunes import Tune, compose

from wallwise.song.analyse import NoBeat, analyse, lay
from wallwise.song.corrections import Corrections
from wallwise.song.grid import BeatGrid
from wallwise.song.onsets import Heard, hear
from wallwise.song.sound import Sound

SONGS = (("rock", 11, ""), ("waltz", 12, "waves"), ("cha cha", 13, ""), ("west coast", 14, "wanders"))


@cache
def tune(name: str, seed: int, moves: str) -> Tune:
    return compose(name, seed=seed, moves=moves, about_sec=55)


@cache
def heard(name: str, seed: int, moves: str) -> Heard:
    song = tune(name, seed, moves)
    return hear(Sound(song.samples, song.rate_hz))


def grid_of(name: str, seed: int, moves: str, told: Corrections) -> BeatGrid:
    song = tune(name, seed, moves)
    return lay(heard(name, seed, moves), told, length_sec=len(song.samples) / song.rate_hz).grid


def f_measure(song: Tune, grid: BeatGrid) -> float:
    beats = np.array([grid.beat_to_sec(beat) for beat in range(grid.last_beat + 1)])
    beats = beats[beats < song.beats_sec[-1] + 0.3]
    return float(mir_eval.beat.f_measure(song.beats_sec, beats))


def as_told(song: Tune) -> Corrections:
    """The tempo wrong by 4 %, and the metre."""
    return Corrections(bpm=song.bpm * 1.04, beats_per_bar=song.beats_per_bar)


@pytest.mark.parametrize("song", SONGS, ids=lambda song: song[0])
def test_beats_and_eights_are_found(song: tuple[str, int, str]) -> None:
    """Nearly every beat within 70 ms, 5 ms in the median, and the eights where the band has them."""
    truth = tune(*song)
    grid = grid_of(*song, as_told(truth))
    assert f_measure(truth, grid) > 0.97
    late = [grid.beat_to_sec(round(grid.sec_to_beat(sec))) - sec for sec in truth.beats_sec]
    assert pytest.approx(0, abs=0.005) == np.median(late)
    assert truth.steady == grid.steady
    found = [grid.beat_to_sec(beat) for beat in grid.eights()]
    eights = truth.beats_sec[list(truth.eights)]
    assert len(mir_eval.util.match_events(eights, np.array(found), 0.07)) >= 0.85 * len(eights)


def test_nothing_told_finds_tempo_and_metre() -> None:
    """A rock song and a waltz are known by their sound alone, and the other levels are shown."""
    for song, metre in ((SONGS[0], 4), (SONGS[1], 3)):
        truth = tune(*song)
        found = lay(heard(*song), length_sec=60)
        assert pytest.approx(truth.bpm, rel=0.02) == found.grid.bpm
        assert metre == found.grid.beats_per_bar
        assert pytest.approx(1, abs=0.01) == sum(level.likely for level in found.levels)
        assert found.levels[0].likely == max(level.likely for level in found.levels)


def test_the_tempo_told_chooses_the_level() -> None:
    """Told half the tempo, the song is counted at half; the reason is said."""
    song = SONGS[0]
    truth = tune(*song)
    found = lay(heard(*song), Corrections(bpm=truth.bpm / 2), length_sec=60)
    assert pytest.approx(truth.bpm / 2, rel=0.02) == found.grid.bpm
    assert "was told" in found.because


def test_a_dance_told_chooses_the_level_and_the_metre() -> None:
    """A waltz is counted in threes and within its tempi."""
    found = lay(heard(*SONGS[1]), Corrections(dance="waltz"), length_sec=60)
    assert 3 == found.grid.beats_per_bar
    assert pytest.approx(tune(*SONGS[1]).bpm, rel=0.02) == found.grid.bpm
    assert "waltz" in found.because


def test_taps_tell_tempo_and_beat() -> None:
    """Twelve taps of an unsteady hand between the beats move the beats there."""
    song = SONGS[0]
    truth = tune(*song)
    hand = np.random.default_rng(5)
    beat_sec = 60 / truth.bpm
    taps = truth.beats_sec[20:32] + hand.normal(0.02, 0.02, 12)
    on = grid_of(*song, Corrections(taps_sec=tuple(taps)))
    assert f_measure(truth, on) > 0.97
    off = grid_of(*song, Corrections(taps_sec=tuple(taps + beat_sec / 2)))
    places = np.array([off.sec_to_beat(sec) for sec in truth.beats_sec])
    assert pytest.approx(0.5, abs=0.06) == np.median(places % 1)


def test_one_tap_puts_the_eights_there() -> None:
    """A late tap on any beat makes an eight begin on that beat."""
    song = SONGS[0]
    truth = tune(*song)
    for beat in (21, 35):
        told = replace(as_told(truth), ones_sec=(truth.beats_sec[beat] + 0.04,))
        grid = grid_of(*song, told)
        assert min(abs(grid.beat_to_sec(e) - truth.beats_sec[beat]) for e in grid.eights()) < 0.05


def test_a_tap_between_the_beats_moves_the_beats() -> None:
    """Where the ear takes the off-beat for the beat, a tap on a "1" puts that right too."""
    song = SONGS[0]
    truth = tune(*song)
    for share in (1 / 4, 1 / 2, 2 / 3):
        between = truth.beats_sec[20] + share * 60 / truth.bpm
        grid = grid_of(*song, replace(as_told(truth), ones_sec=(between + 0.04,)))
        assert min(abs(grid.beat_to_sec(eight) - between) for eight in grid.eights()) < 0.04


def test_every_count_can_be_moved() -> None:
    """One later is one beat later at one count a beat, two at half a count; and -1 undoes it."""
    song = SONGS[0]
    told = as_told(tune(*song))
    plain = grid_of(*song, told)
    for counts_per_beat, beats in ((Fraction(1), 1), (Fraction(1, 2), 2)):
        level = replace(told, counts_per_beat=counts_per_beat)
        before, after = grid_of(*song, level), grid_of(*song, replace(level, later_counts=1))
        assert before.first_beat + beats == after.first_beat
        moved = [p.starts_beat + beats for p in before.phrases]
        assert [beat for beat in moved if beat <= after.last_beat] == [p.starts_beat for p in after.phrases]
    undone = told.with_later(Corrections(later_counts=1)).with_later(Corrections(later_counts=-1))
    assert plain == grid_of(*song, undone)


@pytest.mark.parametrize(
    "told",
    [
        {"later_counts": 999},
        {"later_counts": -999},
        {"ones_sec": (1e6,)},
        {"moves": ((1e6, 0.0),)},
        {"breaks": ((1e6, 2.0),)},
    ],
)
def test_what_lies_outside_the_song_breaks_nothing(told: dict[str, Any]) -> None:
    """A grid comes all the same."""
    song = SONGS[0]
    grid = grid_of(*song, Corrections(**told))
    assert pytest.approx(tune(*song).bpm, rel=0.02) == grid.bpm


def test_a_break_is_a_short_phrase_where_it_is_told() -> None:
    """Two counts of break; the eights begin anew after them, also where all is moved."""
    song = SONGS[0]
    truth = tune(*song)
    at = truth.beats_sec[40]
    for later in (0, 1):
        told = replace(as_told(truth), breaks=((at, 2.0),), later_counts=later)
        grid = grid_of(*song, told)
        phrase = next(p for p in grid.phrases if abs(grid.beat_to_sec(p.starts_beat) - at) < 0.05)
        assert 2 == phrase.counts
        assert phrase.starts_beat + 2 in list(grid.eights())


def test_a_phrase_can_be_moved() -> None:
    """It begins where it was moved to, and not where it was."""
    song = SONGS[0]
    told = as_told(tune(*song))
    plain = grid_of(*song, told)
    old = plain.phrases[2].starts_beat
    move = (plain.beat_to_sec(old) + 0.1, plain.beat_to_sec(old + 8))
    starts = [p.starts_beat for p in grid_of(*song, replace(told, moves=(move,))).phrases]
    assert old + 8 in starts
    assert old not in starts


def test_count_one_is_where_it_is_told() -> None:
    """Told, it is there; not told, after an intro."""
    song = SONGS[0]
    truth = tune(*song)
    told = replace(as_told(truth), first_count_sec=truth.beats_sec[24])
    assert pytest.approx(truth.beats_sec[24], abs=0.03) == grid_of(*song, told).count_to_sec(1)
    assert grid_of(*song, as_told(truth)).intro_counts >= 8


@pytest.mark.parametrize(
    ("samples", "says"),
    [
        (lambda: np.zeros(0, np.float32), "lasts only 0.0"),
        (lambda: np.ones(22050, np.float32), "lasts only 1.0"),
        (lambda: np.zeros(22050 * 8, np.float32), "silent"),
    ],
)
def test_no_song_is_told(samples: Callable[[], NDArray[np.float32]], says: str) -> None:
    """Too short and silent sounds are refused in words."""
    with pytest.raises(NoBeat, match=says):
        analyse(Sound(samples(), 22050))


@pytest.mark.parametrize("kind", ["hum", "noise", "one stroke", "all one"])
def test_sounds_without_a_beat_break_nothing(kind: str) -> None:
    """They get some grid or a refusal in words, never a fault."""
    length = 22050 * 8
    samples = {
        "hum": np.sin(np.arange(length) * 0.05),
        "noise": np.random.default_rng(1).normal(0, 0.1, length),
        "one stroke": np.exp(-np.abs(np.arange(length) - 50_000) / 200),
        "all one": np.ones(length),
    }[kind].astype(np.float32)
    try:
        grid = analyse(Sound(samples, 22050)).grid
    except NoBeat:
        return
    assert grid.bpm > 0
