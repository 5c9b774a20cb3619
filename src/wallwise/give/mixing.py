"""Song, clicks and words made one: the song gives way to the words, and nothing is clipped."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from wallwise.give.voice import RATE_HZ
from wallwise.song.loudness import gain_to, limited, loudness_lufs, true_peak
from wallwise.song.sound import Sound

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    from wallwise.song.sound import Samples

# The measure is that of EBU R 128; the level that of music for phones and hall systems (its own
# -23 LUFS is for broadcasting, and a teacher whose other songs are mastered at -9 would be deafened
# by the next one).  -16 is from memory of AES TD1004.
TARGET_LUFS = -16.0
PEAK_DBTP = -1.0  # EBU R 128: the highest permitted true peak
MUSIC_LUFS = -18.0  # of the song before the words come to it
_SPEECH_GAIN = 1.35  # brings words, which are all equally strong, to about the loudness of the song
DUCK_DB = 14.0  # at least 12 under a word
_DUCK_BEFORE_SEC, _DUCK_AFTER_SEC = 0.08, 0.2
_ENCODING_MARGIN_DB = 0.8  # lossy coding moves peaks


@dataclass(frozen=True, slots=True)
class Placed:
    """A sound that begins at `sec` of the track, heard at `gain` times its strength."""

    sec: float
    sound: Sound
    gain: float = 1.0


def mixed(
    song: Placed | None, marks: Sequence[Placed], words: Sequence[Placed], *, length_sec: float
) -> tuple[Sound, Sound]:
    """The track and its words alone, stereo [shape=(n, 2)] and mono, at `TARGET_LUFS` or the peak's limit.

    The song's gain is to bring it to `MUSIC_LUFS`.
    """
    import numpy as np

    frames = round(length_sec * RATE_HZ)
    speech = np.zeros(frames, np.float32)
    for word in words:
        _add(speech, replace(word, gain=word.gain * _SPEECH_GAIN))
    centre = speech.copy()
    for mark in marks:
        _add(centre, mark)
    track = np.repeat(centre[:, np.newaxis], 2, axis=1)
    if song is not None:
        first = round(song.sec * RATE_HZ)
        part = song.sound.samples[: frames - first]
        under = song_gain(words, frames)[first : first + len(part), np.newaxis] * np.float32(song.gain)
        track[first : first + len(part)] += part * under
    return _levelled(track, speech)


def song_gain(words: Sequence[Placed], frames: int) -> NDArray[np.float32]:
    """The factor by which the song is heard at every sample: 1, and `DUCK_DB` less under words.

    It has gone down when a word begins, and comes up again after it has ended; between words in
    quick succession it stays down.
    """
    import numpy as np

    points: list[tuple[float, float]] = [(0.0, 0.0)]
    for word in sorted(words, key=lambda word: word.sec):
        down, up = word.sec - _DUCK_BEFORE_SEC, word.sec + word.sound.length_sec + _DUCK_AFTER_SEC
        if points[-1][0] > down:
            points.pop()  # it has not come up again yet
        else:
            points.append((down, 0.0))
        points += [(word.sec, -DUCK_DB), (up - _DUCK_AFTER_SEC, -DUCK_DB), (up, 0.0)]
    at = np.arange(frames, dtype=np.float64) / RATE_HZ
    decibels = np.interp(at, [sec for sec, _ in points], [level for _, level in points])
    return np.asarray(10 ** (decibels / 20), np.float32)


def _add(track: Samples, placed: Placed) -> None:
    first = round(placed.sec * RATE_HZ)
    part = placed.sound.samples[: max(0, len(track) - first)]
    track[first : first + len(part)] += part * placed.gain


def _levelled(track: Samples, speech: Samples) -> tuple[Sound, Sound]:
    """Track and speech by the same factor; only the track is limited."""
    import numpy as np

    factor = np.float32(gain_to(TARGET_LUFS, loudness_lufs(Sound(track, RATE_HZ))))
    ceiling = 10 ** ((PEAK_DBTP - _ENCODING_MARGIN_DB) / 20)
    held = limited(Sound(track * factor, RATE_HZ), ceiling)
    over = true_peak(held.samples) / 10 ** (PEAK_DBTP / 20)
    if over > 1:  # between the samples
        factor /= np.float32(over)
        held = Sound(held.samples / np.float32(over), RATE_HZ)
    return held, Sound(speech * factor, RATE_HZ)
