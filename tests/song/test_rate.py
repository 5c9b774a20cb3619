"""Another rate: the same sound, as long."""

from __future__ import annotations

import numpy as np
import pytest

from wallwise.song.sound import Sound, at_rate


def test_a_tone_keeps_its_pitch_and_its_length() -> None:
    at = np.arange(22_050) / 22_050
    sound = at_rate(Sound(np.sin(2 * np.pi * 440 * at).astype(np.float32), 22_050), 44_100)
    assert sound.length_sec == pytest.approx(1.0, abs=1 / 44_100)
    heard_hz = np.argmax(np.abs(np.fft.rfft(sound.samples))) / sound.length_sec
    assert heard_hz == pytest.approx(440, abs=1)


def test_at_its_own_rate_and_without_samples_nothing_changes() -> None:
    silence = np.zeros(0, np.float32)
    assert at_rate(Sound(silence, 22_050), 44_100).samples is silence
    tone = np.ones(8, np.float32)
    assert at_rate(Sound(tone, 44_100), 44_100).samples is tone
