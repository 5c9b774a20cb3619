"""A band of numpy alone, for songs whose beats are known.

Every sound starts exactly on the sample it is put on, its attack is its own: strings and voices
swell, drums do not.  Nothing here is meant to be beautiful, only as hard to hear as music is:
sounds overlap, ring, swell and are squeezed as on a record.
"""

from __future__ import annotations

import zlib
from dataclasses import dataclass
from functools import lru_cache
from typing import Any

import numpy as np
from numpy.typing import NDArray
from scipy.signal import butter, fftconvolve, sosfilt

Wave = NDArray[np.float64]

RATE_HZ = 22050


@dataclass(frozen=True)
class Voice:
    """How an instrument sounds: harmonics fall as 1/k**fall; times in seconds."""

    fall: float
    attack: float
    ring: float  # time constant of the decay; large for what is blown or bowed
    vibrato: float = 0.0  # in semitones
    dull: float = 0.0  # how much faster high harmonics die
    harmonics: int = 10
    release: float = 0.04


VOICES = {
    "piano": Voice(1.4, 0.003, 0.9, dull=0.25),
    "guitar": Voice(1.1, 0.002, 0.6, dull=0.4),
    "dirty guitar": Voice(0.6, 0.004, 3.0, harmonics=16),
    "organ": Voice(0.9, 0.01, 30.0, harmonics=6),
    "strings": Voice(1.0, 0.14, 30.0, vibrato=0.1, release=0.2),
    "voice": Voice(1.3, 0.05, 30.0, vibrato=0.35, release=0.08),
    "fiddle": Voice(0.8, 0.045, 30.0, vibrato=0.2, release=0.06),
    "horn": Voice(0.9, 0.03, 30.0, harmonics=12),
    "flute": Voice(2.2, 0.05, 30.0, vibrato=0.15, harmonics=4),
    "accordion": Voice(0.7, 0.03, 30.0, harmonics=12),
    "bell": Voice(1.0, 0.001, 1.2, harmonics=5),
    "bass": Voice(1.6, 0.006, 0.7, dull=0.3, harmonics=8),
    "upright": Voice(2.0, 0.012, 0.4, dull=0.4, harmonics=6),
    "synth bass": Voice(1.0, 0.004, 5.0, harmonics=12),
    "saw": Voice(1.0, 0.008, 8.0, harmonics=18),
}


@lru_cache(maxsize=4096)
def note(name: str, pitch: int, hundredths: int) -> Wave:
    """A note [shape=(n,)] of MIDI `pitch` held for `hundredths` of a second; peak about 1."""
    voice = VOICES[name]
    held = hundredths / 100
    time = np.arange(int((held + voice.release) * RATE_HZ)) / RATE_HZ
    frequency = 440 * 2 ** ((pitch - 69) / 12)
    wobble = voice.vibrato * np.minimum(time / 0.3, 1) * np.sin(2 * np.pi * 5.3 * time)
    phase = 2 * np.pi * np.cumsum(frequency * 2 ** (wobble / 12)) / RATE_HZ
    wave = np.zeros_like(time)
    for k in range(1, voice.harmonics + 1):
        if k * frequency > 0.45 * RATE_HZ:
            break
        fade = np.exp(-time * (1 + voice.dull * (k - 1)) / voice.ring)
        wave += np.sin(k * phase + k * k) * fade / k**voice.fall
    wave *= np.minimum(time / voice.attack, 1) * np.clip((held + voice.release - time) / voice.release, 0, 1)
    evened: Wave = wave / (float(np.abs(wave).max()) + 1e-9)
    return evened


def _noise(name: str, length_sec: float, low_hz: float, high_hz: float) -> Wave:
    source = np.random.default_rng(zlib.crc32(name.encode()))
    noise = source.normal(0, 1, int(length_sec * RATE_HZ))
    band = butter(2, [low_hz, min(high_hz, 0.49 * RATE_HZ)], "bandpass", fs=RATE_HZ, output="sos")
    filtered: Wave = sosfilt(band, noise)
    evened: Wave = filtered / float(np.abs(filtered).max())
    return evened


def _struck(length_sec: float, low_hz: float, high_hz: float, ring: float) -> Wave:
    """A skin: its pitch falls from high to low as it dies away."""
    time = np.arange(int(length_sec * RATE_HZ)) / RATE_HZ
    frequency = low_hz + (high_hz - low_hz) * np.exp(-time / 0.02)
    swing = np.sin(2 * np.pi * np.cumsum(frequency) / RATE_HZ) * np.exp(-time / ring)
    wave: Wave = swing * np.minimum(time / 0.001, 1)
    return wave


def _hiss(name: str, length_sec: float, low_hz: float, high_hz: float, ring: float) -> Wave:
    noise = _noise(name, length_sec, low_hz, high_hz)
    return noise * np.exp(-np.arange(len(noise)) / RATE_HZ / ring)


@lru_cache(maxsize=64)
def drum(name: str) -> Wave:
    """One stroke [shape=(n,)] of a drum or cymbal."""
    stroke: Wave = _DRUMS[name]()
    return stroke


def _snare() -> Wave:
    wave = 0.8 * _hiss("snare", 0.25, 900, 8000, 0.07)
    tone = _struck(0.2, 180, 260, 0.05)
    wave[: len(tone)] += 0.6 * tone
    return wave


def _clap() -> Wave:
    wave = np.zeros(int(0.22 * RATE_HZ))
    for late, loud in ((0.0, 0.6), (0.011, 0.7), (0.021, 1.0)):
        burst = loud * _hiss(f"clap{late}", 0.18, 800, 4000, 0.012 if late < 0.02 else 0.06)
        start = int(late * RATE_HZ)
        wave[start : start + len(burst)] += burst[: len(wave) - start]
    return wave


def _guiro(length_sec: float) -> Wave:
    time = np.arange(int(length_sec * RATE_HZ)) / RATE_HZ
    return _noise("guiro", length_sec, 2500, 7000) * (0.5 + 0.5 * np.sign(np.sin(2 * np.pi * 55 * time)))


_DRUMS: dict[str, Any] = {
    "kick": lambda: _struck(0.28, 48, 160, 0.09),
    "boom": lambda: _struck(0.8, 40, 110, 0.35),
    "snare": _snare,
    "rim": lambda: _hiss("rim", 0.06, 1200, 5000, 0.012),
    "clap": _clap,
    "brush": lambda: 0.8 * _hiss("brush", 0.16, 1500, 7000, 0.05),
    "hat": lambda: 0.7 * _hiss("hat", 0.08, 6000, 10800, 0.022),
    "open": lambda: 0.7 * _hiss("open", 0.5, 5500, 10800, 0.16),
    "ride": lambda: 0.5 * _hiss("ride", 0.7, 4000, 10000, 0.22),
    "crash": lambda: _hiss("crash", 1.8, 2500, 10800, 0.55),
    "high tom": lambda: _struck(0.3, 170, 240, 0.1),
    "low tom": lambda: _struck(0.4, 95, 140, 0.14),
    "shaker": lambda: 0.5 * _noise("shaker", 0.07, 5000, 10000) * np.hanning(int(0.07 * RATE_HZ)),
    "high conga": lambda: _struck(0.2, 320, 360, 0.06),
    "low conga": lambda: _struck(0.25, 210, 240, 0.09),
    "slap": lambda: _hiss("slap", 0.08, 700, 5000, 0.02),
    "cowbell": lambda: 0.5 * (_struck(0.2, 560, 562, 0.06) + _struck(0.2, 845, 847, 0.06)),
    "clave": lambda: _struck(0.08, 2500, 2500, 0.015),
    "guiro": lambda: 0.7 * _guiro(0.16),
    "short guiro": lambda: 0.7 * _guiro(0.06),
    "tambourine": lambda: 0.6 * _hiss("tambourine", 0.15, 5000, 10800, 0.045),
}


class Mix:
    """A recording being made; `finish` masters it."""

    def __init__(self, length_sec: float) -> None:
        self.samples: Wave = np.zeros(int(length_sec * RATE_HZ))

    def add(self, wave: Wave, at_sec: float, loud: float) -> None:
        """Put `wave` at `at_sec`; what hangs over an end is cut."""
        start = max(0, round(at_sec * RATE_HZ))
        wave = wave[: max(0, len(self.samples) - start)]
        self.samples[start : start + len(wave)] += loud * wave

    def finish(self, *, room: float, drive: float, hiss: float) -> NDArray[np.float32]:
        """The record: reverberation at the level `room`, squeezed by `drive`, with tape `hiss`."""
        source = np.random.default_rng(7)
        time = np.arange(int(0.9 * RATE_HZ)) / RATE_HZ
        echo = source.normal(0, 1, len(time)) * np.exp(-time / 0.22) * (time > 0.012)
        echo *= room / np.sqrt((echo**2).sum())
        wet = self.samples + fftconvolve(self.samples, echo)[: len(self.samples)]
        wet /= np.percentile(np.abs(wet), 99.9) + 1e-9
        out = np.tanh(drive * wet) / np.tanh(drive) * 0.9 + source.normal(0, hiss, len(wet))
        samples: NDArray[np.float32] = np.clip(out, -0.99, 0.99).astype(np.float32)
        return samples
