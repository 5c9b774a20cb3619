"""Strokes are heard when they sound, and tempo and level are those that were played."""

from __future__ import annotations

import numpy as np
import pytest
from numpy.typing import NDArray
from tests.song.band import RATE_HZ, drum

from wallwise.song.levels import levels
from wallwise.song.onsets import FRAMES_PER_SEC, Heard, hear
from wallwise.song.pulse import find_pulse, seconds
from wallwise.song.sound import Sound
from wallwise.song.tempo import candidates, hinted, local_periods


def played(times_sec: NDArray[np.floating], *names: str) -> Heard:
    """The drums, one after the other in turn, at these times."""
    samples = np.zeros(int((times_sec[-1] + 1) * RATE_HZ), np.float32)
    for number, sec in enumerate(times_sec):
        wave = 0.5 * drum(names[number % len(names)])
        start = round(sec * RATE_HZ)
        piece = wave[: len(samples) - start]
        samples[start : start + len(piece)] += piece
    return hear(Sound(samples, RATE_HZ))


@pytest.mark.parametrize("name", ["kick", "snare", "rim", "hat", "low tom"])
def test_strokes_are_heard_within_8_ms(name: str) -> None:
    """The pulse through strokes lies on them, whatever drum they are."""
    times = 0.7 + 0.5 * np.arange(32)
    heard = played(times, name)
    found = seconds(find_pulse(heard, local_periods(heard, 120.0)).frames)
    late = np.array([found[np.abs(found - sec).argmin()] - sec for sec in times])
    assert np.abs(np.median(late)) < 0.008


@pytest.mark.parametrize("bpm", [72.0, 96.3, 121.0, 188.0])
def test_the_tempo_is_that_of_the_strokes(bpm: float) -> None:
    """With a hint 6 % off: the first guess within two per cent, the pulse within three per mille."""
    heard = played(0.5 + 60 / bpm * np.arange(int(bpm / 4)), "kick", "snare")
    for wrong in (0.94, 1.06):
        guess = candidates(heard, hinted(bpm * wrong))[0].bpm
        assert pytest.approx(bpm, rel=0.02) == guess
        gaps = np.diff(seconds(find_pulse(heard, local_periods(heard, guess)).frames))
        assert pytest.approx(bpm, rel=0.003) == 60 / np.median(gaps)


def test_the_local_tempo_follows_a_band() -> None:
    """Four per cent faster in the second half: both halves are told within one per cent."""
    gaps = np.repeat([0.51, 0.49], 40)
    heard = played(0.5 + np.cumsum(gaps), "kick", "snare")
    periods = local_periods(heard, 120.0) / FRAMES_PER_SEC
    assert pytest.approx(0.51, rel=0.01) == periods[len(periods) // 4]
    assert pytest.approx(0.49, rel=0.01) == periods[3 * len(periods) // 4]


def test_levels_are_parts_and_multiples_of_the_pulse() -> None:
    """They are told with shares that add up to one, halves and doubles of one another among them."""
    heard = played(0.5 + 0.5 * np.arange(48), "kick", "hat", "snare", "hat")
    found = levels(heard, find_pulse(heard, local_periods(heard, 120.0)).frames, None)
    assert pytest.approx(1, abs=0.01) == sum(level.likely for level in found)
    assert any(level.bpm == pytest.approx(60, rel=0.01) for level in found)
    only = levels(heard, find_pulse(heard, local_periods(heard, 120.0)).frames, hinted(118))
    assert [pytest.approx(120, rel=0.01)] == [level.bpm for level in only]


def test_another_rate_is_misuse() -> None:
    """What is heard is at one rate and in one channel."""
    with pytest.raises(ValueError, match="22050"):
        hear(Sound(np.zeros(1000, np.float32), 44100))
    with pytest.raises(ValueError, match="one channel"):
        hear(Sound(np.zeros((1000, 2), np.float32), 22050))
