"""Which of the pulses within a song is the beat: the octaves of a tempo, weighed and told.

Every song pulses at several levels at once.  Laid along a pulse that was found, the song is
compared with itself at whole parts of a beat, so that no drift blurs it: the beat is the level
that strokes stand out on and that comes back after four beats, or in threes after six.  What
each is worth was fitted on the rendered songs of the bench, not on those it reports on.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from wallwise.song.onsets import FRAMES_PER_SEC, Heard
from wallwise.song.pulse import PARTS
from wallwise.song.tempo import Prior

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]

_LEVELS = (4, 6, 8, 9, 12, 16, 18, 24, 36)  # parts of the found beat that may be the beat
_RANGE_BPM = (48.0, 215.0)
_USUAL_BPM, _FASTER, _FARTHER = 112.0, 4.1, -3.1  # by octaves, and by their square
_STROKES = 2.3  # of the part struck most, in means of the accents
_RETURNS = {2: -6.6, 4: 11.2, 6: 13.2}  # of the likeness after so many beats


@dataclass(frozen=True, slots=True)
class Level:
    """A tempo at which the song may be counted, and how likely it is among the others (0 to 1)."""

    bpm: float
    likely: float


@dataclass(frozen=True, slots=True)
class Laid:
    """A song laid along its pulse, PARTS a beat: `accents` [shape=(n,)], and `rows` [shape=(7, n)] of
    all its onsets, each with mean 0 and deviation 1.
    """

    rows: Floats
    accents: Floats
    bpm: float

    def likeness(self, parts: int) -> float:
        """How alike the song is to itself so many parts later; 0 where it is too short to say."""
        import numpy as np

        count = self.rows.shape[1]
        if parts >= 0.8 * count:
            return 0.0
        return float(np.mean(self.rows[:, : count - parts] * self.rows[:, parts:]))


def laid_along(heard: Heard, beats: Floats) -> Laid:
    """The song along `beats` [shape=(n,)], in frames."""
    import numpy as np
    from scipy.ndimage import gaussian_filter1d

    places = np.interp(np.arange((len(beats) - 1) * PARTS) / PARTS, np.arange(len(beats)), beats)
    at = np.arange(heard.frames)
    heard_rows = np.concatenate([heard.bands, heard.accents[None]])
    rows = np.stack([np.interp(places, at, gaussian_filter1d(row, 1.2)) for row in heard_rows])
    accents = rows[-1]
    rows = (rows - rows.mean(axis=1, keepdims=True)) / (rows.std(axis=1, keepdims=True) + 1e-9)
    return Laid(rows, accents, float(60 * FRAMES_PER_SEC / np.median(np.diff(beats))))


def levels(heard: Heard, beats: Floats, prior: Prior | None) -> tuple[Level, ...]:
    """The levels at which a song with a pulse at `beats` may be counted, the likeliest first.

    Without a `prior` common tempi are likelier; with one, those near it.
    """
    import numpy as np

    laid = laid_along(heard, beats)
    known = _usual if prior is None else prior.log_weight
    bpms = [laid.bpm * PARTS / parts for parts in _LEVELS]
    worth = [
        _plainness(laid, parts) + known(bpm) if _RANGE_BPM[0] <= bpm <= _RANGE_BPM[1] else -np.inf
        for parts, bpm in zip(_LEVELS, bpms, strict=True)
    ]
    if not np.isfinite(worth).any():
        return (Level(laid.bpm, 1.0),)
    shares = np.exp(np.array(worth) - max(worth))
    shares /= shares.sum()
    ordered = sorted(zip(shares, bpms, strict=True), reverse=True)
    return tuple(Level(bpm, float(share)) for share, bpm in ordered if share > 0.001)


def _usual(bpm: float) -> float:
    import numpy as np

    octaves = float(np.log2(bpm / _USUAL_BPM))
    return _FASTER * octaves + _FARTHER * octaves**2


def _plainness(laid: Laid, parts: int) -> float:
    whole = len(laid.accents) // parts * parts
    folded = laid.accents[:whole].reshape(-1, parts).mean(axis=0)
    stroke = float(folded.max() / (laid.accents.mean() + 1e-9))
    back = sum(weight * laid.likeness(beats * parts) for beats, weight in _RETURNS.items())
    return _STROKES * stroke + back


def beats_per_bar(heard: Heard, beats: Floats) -> int:
    """3 if what is played comes back after three beats rather than four, else 4."""
    likeness = laid_along(heard, beats).likeness

    def returns(bar: int) -> float:
        return likeness(bar * PARTS) + likeness(2 * bar * PARTS)

    return 3 if returns(3) > returns(4) else 4
