"""What the ear gets: the song down under words, the loudness asked for, nothing clipped."""

from __future__ import annotations

import math

import numpy as np
import pytest
from tests.give.voices import tone

from wallwise.give.mixing import PEAK_DBTP, TARGET_LUFS, Placed, mixed, song_gain
from wallwise.give.voice import RATE_HZ
from wallwise.song.loudness import loudness_lufs, true_peak
from wallwise.song.sound import Sound

_WORDS = [Placed(2.0, tone(0.5)), Placed(2.6, tone(0.4)), Placed(6.0, tone(0.7))]


def _song(length_sec: float = 9.0, hz: float = 1000.0) -> Sound:
    at = np.arange(round(length_sec * RATE_HZ)) / RATE_HZ
    wave = (0.5 * np.sin(2 * np.pi * hz * at)).astype(np.float32)
    return Sound(np.column_stack([wave, wave]), RATE_HZ)


def _level_db(sound: Sound, first_sec: float, last_sec: float, hz: float = 1000.0) -> float:
    """How loud the song's tone is from one second to another, with the word's own left out."""
    part = sound.samples[round(first_sec * RATE_HZ) : round(last_sec * RATE_HZ), 0]
    at = np.arange(len(part)) / RATE_HZ
    window = np.hanning(len(part))
    return 20 * math.log10(abs(np.sum(part * window * np.exp(-2j * np.pi * hz * at))) / np.sum(window))


def test_the_song_is_at_least_twelve_decibels_down_under_every_word() -> None:
    track, _ = mixed(Placed(0.0, _song()), [], _WORDS, length_sec=9.0)
    aloud = _level_db(track, 4.0, 5.5)
    for word in _WORDS:
        ends = word.sec + word.sound.length_sec
        under = _level_db(track, word.sec + 0.01, ends - 0.01)
        assert aloud - under >= 12


def test_the_song_stays_down_between_words_in_quick_succession_and_comes_up_after() -> None:
    gain = song_gain(_WORDS, 9 * RATE_HZ)
    assert gain[: round(1.9 * RATE_HZ)].min() == 1
    assert 20 * math.log10(gain[2 * RATE_HZ : 3 * RATE_HZ].max()) <= -12
    assert gain[round(3.3 * RATE_HZ)] == 1
    assert song_gain([], 10).tolist() == [1.0] * 10


def test_the_track_is_as_loud_as_asked_and_its_true_peak_is_kept() -> None:
    rng = np.random.default_rng(2)
    noise = (0.3 * rng.standard_normal((9 * RATE_HZ, 2))).astype(np.float32)
    track, _ = mixed(Placed(0.0, Sound(noise, RATE_HZ)), [], _WORDS, length_sec=9.0)
    assert loudness_lufs(track) == pytest.approx(TARGET_LUFS, abs=1.0)
    assert 20 * math.log10(true_peak(track.samples)) <= PEAK_DBTP + 0.01


def test_however_loud_the_parts_nothing_is_clipped() -> None:
    marks = [Placed(0.25 * n, Sound(np.full(400, 4.0, np.float32), RATE_HZ)) for n in range(30)]
    track, _ = mixed(Placed(0.0, _song()), marks, _WORDS, length_sec=9.0)
    assert np.max(np.abs(track.samples)) < 1


def test_words_alone_are_given_as_loud_as_in_the_track() -> None:
    track, speech = mixed(None, [], _WORDS, length_sec=9.0)
    assert len(track.samples) == len(speech.samples) == 9 * RATE_HZ
    assert np.allclose(track.samples[:, 0], speech.samples, atol=0.02)


def test_a_song_longer_than_the_track_is_cut_and_one_that_begins_late_begins_late() -> None:
    track, _ = mixed(Placed(2.0, _song()), [], [], length_sec=5.0)
    assert len(track.samples) == 5 * RATE_HZ
    assert not track.samples[: 2 * RATE_HZ].any()
    assert _level_db(track, 2.1, 4.9) > -30
