"""What the ear hears begin: onsets in six bands, the harmony, and the colour of the sound.

Time runs in *frames* of 10 ms (`FRAMES_PER_SEC` of them a second); frame 0 is the first sample.
The spectral flux with a maximum over neighbouring bins is that of S. Böck and G. Widmer, "Maximum
filter vibrato suppression for onset detection", Proc. DAFx 2013; the bands are ours.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import TYPE_CHECKING

from wallwise.song.sound import HEARING_RATE_HZ, Sound

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]
    Singles = NDArray[np.float32]

HOP = 220  # samples
FRAMES_PER_SEC = HEARING_RATE_HZ / HOP
BANDS_HZ = ((25, 110), (110, 300), (300, 800), (800, 2400), (2400, 6000), (6000, 11000))
COLOURS_HZ = (27.5, 11000.0)  # the range told in half-tones

_SHORT, _LONG = 1024, 4096  # samples: for strokes, and for tones
_LONG_EVERY = 2  # frames: harmony is slow
_LAG = 2  # frames between which a rise is looked for
_LEVEL_SEC = 8.0  # over which loudness is evened out
_LATE_FRAMES = 0.5  # how late the flux peaks after a stroke; measured on the drums of the tests
_CHUNK = 2048  # frames worked on at once, which bounds the memory


@dataclass(frozen=True, slots=True)
class Heard:
    """What is known of a sound before any beat is looked for; n frames.

    `bands` [shape=(6, n)]: onsets in each band of `BANDS_HZ`, loudness evened out, 0 and up.
    `accents` [shape=(n,)]: all of them together, louder strokes counting more.
    `colours` [shape=(n, c)]: log loudness in steps of a half-tone or so.
    `chords`, `basses` [shape=(n, 12)]: loudness by pitch class from C, of the middle and the low.
    `loud` [shape=(n,)]: root mean square of the samples.
    """

    bands: Floats
    accents: Floats
    colours: Singles
    chords: Singles
    basses: Singles
    loud: Floats

    @property
    def frames(self) -> int:
        """How many frames there are."""
        return len(self.accents)


def hear(sound: Sound) -> Heard:
    """What is heard of a mono `sound` at HEARING_RATE_HZ; ValueError at another rate.

    A sound shorter than a window is heard as if silence followed.
    """
    import numpy as np

    if sound.rate_hz != HEARING_RATE_HZ or sound.samples.ndim != 1:
        raise ValueError(f"hear takes one channel at {HEARING_RATE_HZ} samples a second")
    frames = max(1, -(-len(sound.samples) // HOP))
    colours, rises = _strokes(sound, frames)
    bands, accents = _evened(rises)
    chords, basses = _tones(sound, frames)
    return Heard(
        bands=bands,
        accents=accents,
        colours=colours,
        chords=chords,
        basses=basses,
        loud=np.sqrt(_mean_square(sound, frames)),
    )


def _spectra(sound: Sound, frames: int, *, window: int, every: int) -> Iterator[Singles]:
    """Magnitudes [shape=(some, window // 2 + 1)], a chunk of frames at a time."""
    import numpy as np
    from scipy.fft import rfft

    half = window // 2
    padded = np.pad(sound.samples, (half, half + frames * HOP - len(sound.samples)))
    views = np.lib.stride_tricks.sliding_window_view(padded, window)[: frames * HOP : HOP * every]
    taper = np.hanning(window).astype(np.float32)
    for start in range(0, len(views), _CHUNK):
        yield np.abs(rfft(views[start : start + _CHUNK] * taper, axis=1))


def _strokes(sound: Sound, frames: int) -> tuple[Singles, list[Floats]]:
    """The colours, and the rise in each band of their logarithm and of their loudness."""
    import numpy as np
    from scipy.ndimage import maximum_filter1d

    filters, centres_hz = _half_tones()
    loudness = np.concatenate([chunk @ filters for chunk in _spectra(sound, frames, window=_SHORT, every=1)])
    # A quiet record and a loud one are to be heard alike: the logarithm has to know what is loud.
    loudness *= 30.0 / (np.percentile(loudness.max(axis=1), 95) + 1e-9)
    colours = np.asarray(np.log10(1 + loudness), dtype=np.float32)
    rises: list[Floats] = []
    for values, together in ((colours, np.mean), (loudness, np.sum)):
        before = maximum_filter1d(values[:-_LAG], 3, axis=1)
        rise = np.zeros_like(values)
        rise[_LAG:] = np.maximum(0, values[_LAG:] - before)
        bands = [together(rise[:, _in_band(centres_hz, band)], axis=1) for band in BANDS_HZ]
        rises.append(np.array(bands, dtype=np.float64))
    return colours, rises


def _half_tones() -> tuple[Singles, Floats]:
    """Triangular filters [shape=(bins, c)] at half-tones as far as the bins allow; their centres."""
    import numpy as np

    bins_hz = np.fft.rfftfreq(_SHORT, 1 / HEARING_RATE_HZ).astype(np.float64)
    low, high = COLOURS_HZ
    steps_hz = low * 2 ** (np.arange(int(np.log2(high / low) * 12) + 1) / 12)
    edges = np.unique(np.searchsorted(bins_hz, steps_hz))
    edges = edges[(edges > 0) & (edges < len(bins_hz) - 1)]
    filters = np.zeros((len(bins_hz), len(edges) - 2), np.float32)
    for column, (left, middle, right) in enumerate(zip(edges, edges[1:], edges[2:], strict=False)):
        filters[left : middle + 1, column] = np.linspace(0, 1, middle - left + 1)
        filters[middle : right + 1, column] = np.linspace(1, 0, right - middle + 1)
    return filters, bins_hz[edges[1:-1]]


def _in_band(centres_hz: Floats, band: tuple[int, int]) -> NDArray[np.bool_]:
    import numpy as np

    inside = (centres_hz >= band[0]) & (centres_hz < band[1])
    if not inside.any():
        inside[np.argmin(np.abs(centres_hz - sum(band) / 2))] = True
    return inside


def _evened(rises: list[Floats]) -> tuple[Floats, Floats]:
    """The bands and the accents: each band about as strong as every other, and verse as chorus."""
    import numpy as np
    from scipy.ndimage import uniform_filter1d

    evened = []
    for rise in rises:
        square = rise**2
        whole = square.mean(axis=1, keepdims=True)
        level = np.sqrt(
            uniform_filter1d(square, int(_LEVEL_SEC * FRAMES_PER_SEC), axis=1) + whole / 16 + 1e-9
        )
        evened.append(np.minimum(_earlier(rise / level), 7.0))
    logs, louds = evened
    accents = 0.5 * logs.mean(axis=0) + 0.2 * logs[0] + 0.6 * louds.mean(axis=0)
    return 0.5 * (logs + louds), accents


def _earlier(values: Floats) -> Floats:
    """The values moved to where the strokes were."""
    import numpy as np

    at = np.arange(values.shape[1])
    return np.array([np.interp(at + _LATE_FRAMES, at, row) for row in values])


def _tones(sound: Sound, frames: int) -> tuple[Singles, Singles]:
    import numpy as np

    bins_hz = np.fft.rfftfreq(_LONG, 1 / HEARING_RATE_HZ).astype(np.float64)
    middle, low = _pitch_classes(bins_hz, 110, 2000), _pitch_classes(bins_hz, 32, 180)
    found = []
    for chunk in _spectra(sound, frames, window=_LONG, every=_LONG_EVERY):
        logs = np.log1p(chunk)
        found.append(np.concatenate([logs @ middle, logs @ low], axis=1))
    both = np.repeat(np.concatenate(found), _LONG_EVERY, axis=0)[:frames].astype(np.float32)
    return both[:, :12], both[:, 12:]


def _pitch_classes(bins_hz: Floats, low_hz: float, high_hz: float) -> Singles:
    """Which bins [shape=(bins, 12)] sound which pitch class, those between two of them less."""
    import numpy as np

    weights = np.zeros((len(bins_hz), 12), np.float32)
    inside = np.flatnonzero((bins_hz > low_hz) & (bins_hz < high_hz))
    pitches = 69 + 12 * np.log2(bins_hz[inside] / 440)
    nearest = np.round(pitches)
    weights[inside, nearest.astype(int) % 12] = np.exp(-0.5 * ((pitches - nearest) / 0.25) ** 2)
    return weights


def _mean_square(sound: Sound, frames: int) -> Floats:
    import numpy as np

    square = np.zeros(frames * HOP)
    square[: len(sound.samples)] = np.square(sound.samples, dtype=np.float64)
    means: Floats = square.reshape(frames, HOP).mean(axis=1)
    return means
