"""A voice for tests: every word is a tone, as long as a calm speaker takes for its syllables."""

from __future__ import annotations

from functools import cache

import numpy as np

from wallwise.give.syllables import MOST_PER_SEC, syllables
from wallwise.give.voice import RATE_HZ
from wallwise.song.sound import Sound

CALM_PER_SEC = 4.0


class Tones:
    """Says anything at four syllables a second, at five where it has to; remembers what it was asked."""

    def __init__(self) -> None:
        self.asked: list[str] = []

    def say(self, words: str, *, within_sec: float) -> Sound | None:
        self.asked.append(words)
        count = syllables(words)
        if count / MOST_PER_SEC > within_sec:
            return None
        return tone(min(count / CALM_PER_SEC, within_sec))


@cache
def tone(length_sec: float) -> Sound:
    """A steady tone of 300 Hz."""
    at = np.arange(int(length_sec * RATE_HZ)) / RATE_HZ
    return Sound((0.17 * np.sin(2 * np.pi * 300 * at)).astype(np.float32), RATE_HZ)
