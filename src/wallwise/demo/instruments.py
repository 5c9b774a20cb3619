"""One sound at a time, with numpy alone: strings, winds and a drum kit.

Every sound is mono, float32, at `RATE` samples a second, peaks near 1 and begins on its
first sample, so that a note placed at a beat is heard at that beat.  The formulas are
textbook ones (additive strings as in J. O. Smith, Physical Audio Signal Processing:
harmonic k of a string plucked at the share p of its length has the weight sin(k pi p) / k²,
here softened to / k).
"""

from __future__ import annotations

from functools import cache

import numpy as np
import numpy.typing as npt

RATE = 44_100
Sound = npt.NDArray[np.float32]

_TOP_HZ = 9_000.0  # harmonics above this only hiss
_FADE_SEC = 0.03


def _times(sec: float) -> npt.NDArray[np.float64]:
    return np.arange(round(sec * RATE)) / RATE


def _finish(sound: npt.NDArray[np.float64], *, attack_sec: float = 0.002) -> Sound:
    """The sound with its edges smoothed and its peak at 1."""
    rise = min(max(1, round(attack_sec * RATE)), len(sound))
    fall = min(round(_FADE_SEC * RATE), len(sound))
    sound[:rise] *= np.linspace(0, 1, rise)
    sound[-fall:] *= np.linspace(1, 0, fall)
    return np.asarray(sound / np.max(np.abs(sound)), np.float32)


def _noise(sec: float, *, seed: int) -> npt.NDArray[np.float64]:
    return np.random.default_rng(seed).standard_normal(round(sec * RATE))


def _hiss(sec: float, *, seed: int) -> npt.NDArray[np.float64]:
    """Noise without its low half: each difference takes off another 6 dB an octave."""
    return np.diff(_noise(sec, seed=seed), n=2, append=[0.0, 0.0])


@cache
def string(hz: float, sec: float, *, pluck_at: float = 0.22, damping: float = 1.6) -> Sound:
    """A plucked string; higher harmonics die sooner, as they do on wood."""
    at = _times(sec)
    sound = np.zeros_like(at)
    for k in range(1, max(2, min(24, int(_TOP_HZ / hz)))):
        weight = np.sin(k * np.pi * pluck_at) / k
        sound += weight * np.exp(-at * damping * (1 + 0.3 * k)) * np.sin(2 * np.pi * hz * k * at)
    return _finish(sound)


@cache
def bass(hz: float, sec: float) -> Sound:
    """A bass string: few harmonics, a firm beginning."""
    at = _times(sec)
    sound = sum(
        weight * np.exp(-at * decay) * np.sin(2 * np.pi * hz * k * at)
        for k, weight, decay in ((1, 1.0, 1.8), (2, 0.55, 3.0), (3, 0.3, 5.0), (4, 0.12, 8.0))
    )
    return _finish(np.asarray(sound), attack_sec=0.004)


@cache
def whistle(hz: float, sec: float) -> Sound:
    """A reedy pipe that carries the tune: it swells a little and trembles once it is held."""
    at = _times(sec)
    tremble = 0.006 * np.clip((at - 0.18) / 0.2, 0, 1) * np.sin(2 * np.pi * 5.3 * at)
    phase = 2 * np.pi * np.cumsum(hz * (1 + tremble)) / RATE
    sound = sum(w * np.sin(k * phase) for k, w in ((1, 1.0), (2, 0.42), (3, 0.2), (4, 0.07), (5, 0.04)))
    return _finish(np.asarray(sound) * np.exp(-0.7 * at), attack_sec=0.018)


@cache
def keys(hz: float, sec: float) -> Sound:
    """A soft electric piano: a tone, and a bell that fades first."""
    at = _times(sec)
    bell = 0.9 * np.exp(-at * 7) * np.sin(2 * np.pi * hz * 2 * at)
    return _finish(np.exp(-at * 2.2) * np.sin(2 * np.pi * hz * at + bell), attack_sec=0.005)


@cache
def organ(hz: float, sec: float) -> Sound:
    """A held chord tone that fills the chorus."""
    at = _times(sec)
    sound = sum(w * np.sin(2 * np.pi * hz * k * at) for k, w in ((1, 1.0), (2, 0.5), (3, 0.25), (4, 0.12)))
    return _finish(np.asarray(sound) * (1 + 0.08 * np.sin(2 * np.pi * 6.1 * at)), attack_sec=0.05)


def _drop(sec: float, *, from_hz: float, to_hz: float, speed: float) -> npt.NDArray[np.float64]:
    """A tone that falls from one pitch to another: the skin of a drum."""
    at = _times(sec)
    return np.sin(2 * np.pi * np.cumsum(to_hz + (from_hz - to_hz) * np.exp(-at * speed)) / RATE)


@cache
def kick() -> Sound:
    """The bass drum."""
    at = _times(0.32)
    click = np.zeros_like(at)
    click[:120] = _noise(120 / RATE, seed=11) * np.linspace(0.4, 0, 120)
    return _finish(_drop(0.32, from_hz=165, to_hz=48, speed=32) * np.exp(-at * 11) + click, attack_sec=0.0005)


@cache
def snare() -> Sound:
    """The snare drum: skin and wires."""
    at = _times(0.24)
    wires = _hiss(0.24, seed=12) * 0.34 * np.exp(-at * 22)
    return _finish(
        wires + 0.8 * np.exp(-at * 26) * _drop(0.24, from_hz=260, to_hz=185, speed=40), attack_sec=0.0005
    )


@cache
def brush() -> Sound:
    """A brush on the snare."""
    at = _times(0.2)
    return _finish(_hiss(0.2, seed=13) * np.exp(-at * 20), attack_sec=0.004)


@cache
def hat(sec: float = 0.07) -> Sound:
    """The hi-hat: shut where short, open where long."""
    at = _times(sec)
    return _finish(np.diff(_hiss(sec, seed=14), append=0.0) * np.exp(-at * 3.5 / sec), attack_sec=0.0005)


@cache
def crash() -> Sound:
    """A cymbal that opens a phrase."""
    at = _times(1.8)
    return _finish(_hiss(1.8, seed=15) * np.exp(-at * 2.6), attack_sec=0.001)


@cache
def tom(hz: float) -> Sound:
    """A tom-tom, for fills."""
    at = _times(0.3)
    return _finish(_drop(0.3, from_hz=hz * 1.5, to_hz=hz, speed=24) * np.exp(-at * 9), attack_sec=0.001)


@cache
def block() -> Sound:
    """A wood block, or the bell of the cha cha."""
    at = _times(0.12)
    sound = np.sin(2 * np.pi * 830 * at) + 0.6 * np.sin(2 * np.pi * 1250 * at)
    return _finish(sound * np.exp(-at * 38), attack_sec=0.0005)


@cache
def scraper(sec: float) -> Sound:
    """A gourd scraped with a stick: noise in teeth."""
    at = _times(sec)
    teeth = 0.5 + 0.5 * np.sign(np.sin(2 * np.pi * 62 * at))
    return _finish(_hiss(sec, seed=16) * teeth * np.linspace(0.5, 1, len(at)), attack_sec=0.002)
