"""Clicks and tones that mark counts where nobody speaks: plain sines, so that they carry in a hall.

Mono at `voice.RATE_HZ`, peaks at 1, each loudest within 2 ms of its first sample.
"""

from __future__ import annotations

from functools import cache
from typing import TYPE_CHECKING

from wallwise.give.voice import RATE_HZ

if TYPE_CHECKING:
    from wallwise.song.sound import Samples


def count_click() -> Samples:
    """Any count."""
    return _sine(1175.0, 0.045)


def first_click() -> Samples:
    """The first count of an eight: higher."""
    return _sine(1760.0, 0.06)


def half_click() -> Samples:
    """A step between counts: low and short."""
    return _sine(784.0, 0.025)


@cache
def wall_bell() -> Samples:
    """The first count of a wall: a click and two tones that ring."""
    import numpy as np

    bell = np.zeros(round(0.5 * RATE_HZ), np.float32)
    for tone in (_sine(1760.0, 0.06), 0.5 * _sine(880.0, 0.5), 0.35 * _sine(1318.5, 0.5)):
        bell[: len(tone)] += tone
    return np.asarray(bell / np.max(np.abs(bell)), np.float32)


@cache
def _sine(hz: float, sec: float) -> Samples:
    import numpy as np

    at = np.arange(round(sec * RATE_HZ)) / RATE_HZ
    tone = np.sin(2 * np.pi * hz * at) * np.exp(-at * 5 / sec)
    fade = min(len(tone), 200)
    tone[-fade:] *= np.linspace(1, 0, fade)
    return np.asarray(tone / np.max(np.abs(tone)), np.float32)
