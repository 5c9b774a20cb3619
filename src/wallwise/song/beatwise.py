"""What each beat of a song sounds like, in numbers that can be compared.

All rows run over n beats; the beat k lasts from its own place to that of beat k + 1.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from wallwise.song.onsets import Heard
from wallwise.song.pulse import folded, new_chords, sampled

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]

_COLOURS = 10  # principal directions of the colour that are kept


@dataclass(frozen=True, slots=True)
class Beatwise:
    """Features of n beats.

    `low`, `snare`, `high` [shape=(n,)]: the stroke on the beat in the low, middle and high bands;
    `chord` [shape=(n,)]: how new the harmony is on it; all about 0 with deviation 1.
    `colour` [shape=(n, 10)], `pattern` [shape=(n, 24)]: what it sounds like, and what is struck in its
    quarters; the mean distance from the middle of each is 1.
    """

    low: Floats
    snare: Floats
    high: Floats
    chord: Floats
    colour: Floats
    pattern: Floats

    @property
    def beats(self) -> int:
        """How many beats there are."""
        return len(self.low)


def beatwise(heard: Heard, places: Floats) -> Beatwise:
    """The features of the beats between `places` [shape=(n + 1,)], in frames, increasing."""
    import numpy as np
    from scipy.ndimage import maximum_filter1d

    starts, gaps = places[:-1], np.diff(places)
    near = maximum_filter1d(heard.bands, 7, axis=1)
    strokes = np.array([sampled(row, starts) for row in near])
    chords, basses = new_chords(heard, starts, 2 * gaps)
    bass_now = new_chords(heard, starts, gaps)[1]
    return Beatwise(
        low=_scaled(strokes[0] + strokes[1]),
        snare=_scaled(strokes[3] + strokes[4]),
        high=_scaled(strokes[5]),
        chord=_scaled(chords + 0.4 * basses + 0.4 * bass_now),
        colour=_even(_colour(heard, places)),
        pattern=_even(folded(heard, places)[:, :, ::3].reshape(len(starts), -1)),
    )


def _scaled(values: Floats) -> Floats:
    import numpy as np

    found: Floats = (values - np.median(values)) / (values.std() + 1e-9)
    return found


def _colour(heard: Heard, places: Floats) -> Floats:
    import numpy as np

    colour = _means(heard.colours, places)
    colour -= colour.mean(axis=0)
    _, directions = np.linalg.eigh(colour.T @ colour)  # the principal ones come last
    found: Floats = colour @ directions[:, -_COLOURS:]
    return found


def _even(values: Floats) -> Floats:
    """The group of columns with a mean distance of 1 from its middle."""
    import numpy as np

    centred = values - values.mean(axis=0)
    found: Floats = centred / (np.sqrt((centred**2).sum(axis=1).mean()) + 1e-9)
    return found


def _means(rows: NDArray[np.float32], places: Floats) -> Floats:
    """The mean of the rows [shape=(frames, d)] within each beat [shape=(n, d)]."""
    import numpy as np

    sums = np.concatenate([np.zeros((1, rows.shape[1])), np.cumsum(rows, axis=0, dtype=np.float64)])
    ends = np.clip(np.round(places).astype(int), 0, len(rows))
    ends[1:] = np.maximum(ends[1:], ends[:-1])
    long = np.maximum(1, np.diff(ends))
    found: Floats = (sums[ends[1:]] - sums[ends[:-1]]) / long[:, None]
    return found
