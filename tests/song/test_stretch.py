"""Slower without another pitch: clicks land where the arithmetic says, and 100 % changes nothing."""

from __future__ import annotations

import numpy as np
import pytest

from wallwise.song.sound import Sound
from wallwise.song.stretch import stretched

_RATE = 44_100


def _clicks(at_sec: list[float], length_sec: float) -> Sound:
    samples = np.zeros((round(length_sec * _RATE), 2), np.float32)
    click = np.exp(-np.arange(200) / 30) * np.sin(2 * np.pi * 3000 * np.arange(200) / _RATE)
    for second in at_sec:
        first = round(second * _RATE)
        samples[first : first + 200] += click[:, np.newaxis].astype(np.float32)
    return Sound(samples, _RATE)


@pytest.mark.parametrize("tempo", [0.6, 0.75, 0.9, 1.2])
def test_a_click_at_t_is_heard_at_t_over_tempo_within_two_milliseconds(tempo: float) -> None:
    times = [0.5 + 0.5 * n for n in range(8)]
    slow = stretched(_clicks(times, 5.0), tempo)
    assert slow.length_sec == pytest.approx(5.0 / tempo, abs=0.001)
    power = np.abs(slow.samples[:, 0])
    for second in times:
        around = round((second / tempo - 0.05) * _RATE)
        loudest = around + int(np.argmax(power[around : around + round(0.1 * _RATE)]))
        assert loudest / _RATE == pytest.approx(second / tempo, abs=0.002)


def test_the_pitch_stays_where_it_was() -> None:
    at = np.arange(3 * _RATE) / _RATE
    slow = stretched(Sound(np.sin(2 * np.pi * 440 * at).astype(np.float32), _RATE), 0.75)
    assert slow.samples.ndim == 1
    middle = slow.samples[_RATE : 3 * _RATE]
    heard_hz = np.argmax(np.abs(np.fft.rfft(middle))) * _RATE / len(middle)
    assert heard_hz == pytest.approx(440, abs=1)


def test_at_full_tempo_the_very_samples_come_back() -> None:
    sound = _clicks([0.2], 0.5)
    assert stretched(sound, 1.0) is sound


@pytest.mark.parametrize("tempo", [0.0, 0.2, -1.0, 3.0, float("nan")])
def test_a_tempo_beyond_what_can_be_danced_is_refused(tempo: float) -> None:
    with pytest.raises(ValueError, match="it can be 40% to 160%"):
        stretched(_clicks([], 0.1), tempo)
