"""Loudness and true peak against the published test signals, and what the limiter promises."""

from __future__ import annotations

import math

import numpy as np
import pytest

from wallwise.song.loudness import gain_to, limited, loudness_lufs, true_peak
from wallwise.song.sound import Sound

_RATE = 48_000


def _tones(*parts: tuple[float, float], rate_hz: int = _RATE, hz: float = 1000.0) -> Sound:
    """Stereo sines one after another, each (peak level in dBFS, seconds), in phase in both channels."""
    pieces = [
        10 ** (level / 20) * np.sin(2 * np.pi * hz * np.arange(round(sec * rate_hz)) / rate_hz)
        for level, sec in parts
    ]
    mono = np.concatenate(pieces).astype(np.float32)
    return Sound(np.column_stack([mono, mono]), rate_hz)


# EBU Tech 3341 (2016), table 1, "Minimum requirements test signals": stereo sines of 1000 Hz and
# the integrated loudness that a meter has to read, within 0.1 LU (the numbers are from memory of
# the table; cases 1 and 2 are confirmed by BS.1770: a 0 dBFS 1 kHz sine in both channels reads 0).
@pytest.mark.parametrize(
    ("rate_hz", "reads_lufs", "parts"),
    [
        (48_000, -23.0, ((-23.0, 20.0),)),  # case 1
        (44_100, -23.0, ((-23.0, 20.0),)),  # and at the rate of a track
        (48_000, -33.0, ((-33.0, 20.0),)),  # case 2
        (44_100, -23.0, ((-36.0, 10.0), (-23.0, 60.0), (-36.0, 10.0))),  # case 3: the relative gate
        # The absolute gate is what case 4 is about.
        (48_000, -23.0, ((-72.0, 10.0), (-36.0, 10.0), (-23.0, 60.0), (-36.0, 10.0), (-72.0, 10.0))),
        (48_000, -23.0, ((-26.0, 20.0), (-20.0, 20.1), (-26.0, 20.0))),  # case 5
    ],
)
def test_the_sines_of_tech_3341_read_what_the_table_says(
    rate_hz: int, reads_lufs: float, parts: tuple[tuple[float, float], ...]
) -> None:
    assert loudness_lufs(_tones(*parts, rate_hz=rate_hz)) == pytest.approx(reads_lufs, abs=0.1)


def test_a_sine_of_997_hz_at_full_scale_in_one_channel_reads_minus_3_01() -> None:
    """ITU-R BS.1770-4, annex 1: 0 dB FS, 997 Hz, one channel of left, right or centre: -3.01 LKFS."""
    sine = np.sin(2 * np.pi * 997 * np.arange(10 * _RATE) / _RATE).astype(np.float32)
    assert loudness_lufs(Sound(sine, _RATE)) == pytest.approx(-3.01, abs=0.05)


# EBU Tech 3341, table 1, true-peak cases 15 to 19: a sine of a quarter of the rate at 45 and 0
# degrees hides its peak between the samples; tolerance +0.2 / -0.4 dB (from memory of the table).
@pytest.mark.parametrize(("share", "degrees"), [(4, 0), (4, 45), (6, 60), (8, 67.5)])
def test_the_true_peak_finds_what_hides_between_the_samples(share: int, degrees: float) -> None:
    at = np.arange(_RATE)
    sine = 0.5 * np.sin(2 * np.pi * at / share + math.radians(degrees))
    fade = np.minimum(1, np.minimum(at, at[::-1]) / 4800)
    measured = 20 * math.log10(true_peak((sine * fade).astype(np.float32)))
    assert -6.02 - 0.4 <= measured <= -6.02 + 0.2


def test_silence_has_no_loudness_and_is_left_as_it_is() -> None:
    silence = Sound(np.zeros((_RATE, 2), np.float32), _RATE)
    assert loudness_lufs(silence) == -math.inf
    assert loudness_lufs(Sound(silence.samples[:100], _RATE)) == -math.inf
    assert gain_to(-16, -math.inf) == 1
    assert true_peak(np.zeros(0, np.float32)) == 0


def test_the_gain_brings_a_sound_to_the_target() -> None:
    sound = _tones((-31.0, 5.0))
    levelled = Sound(sound.samples * np.float32(gain_to(-16.0, loudness_lufs(sound))), _RATE)
    assert loudness_lufs(levelled) == pytest.approx(-16.0, abs=0.05)


def test_the_limiter_keeps_every_sample_under_the_ceiling_and_the_rest_as_it_was() -> None:
    rng = np.random.default_rng(5)
    samples = (0.1 * rng.standard_normal((_RATE, 2))).astype(np.float32)
    samples[20_000:20_050] *= 30
    kept = limited(Sound(samples, _RATE), 0.8).samples
    assert np.max(np.abs(kept)) <= np.float32(0.8)
    assert np.array_equal(samples[:19_000], kept[:19_000])
    assert np.array_equal(samples[21_000:], kept[21_000:])


def test_what_is_under_the_ceiling_is_left_alone() -> None:
    sound = _tones((-20.0, 1.0))
    assert limited(sound, 0.5) is sound
