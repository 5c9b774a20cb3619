"""How fast the song is: the tempo that onsets repeat at, weighed by what is known beforehand.

Onsets alone seldom tell a tempo from its half or double (its *octaves*): knowing the dance, or a
rough tempo from the sheet, does.  A `Prior` says what is known; without one, common tempi of
popular music are likelier.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

from wallwise.song.onsets import FRAMES_PER_SEC, Heard

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]

SLOWEST_BPM, FASTEST_BPM = 40.0, 240.0

_COMB = ((1, 1.0), (2, 0.8), (3, 0.4), (4, 0.8))  # multiples of the period, and what each tells
_AGAINST = ((1.5, 0.35),)  # a song that repeats at one and a half is counted at another level
_WINDOW_SEC, _STEP_SEC = 10.0, 1.0  # of the local tempo
_REACH = 0.09  # how far the local tempo may lie from the song's
_STEPS = 73  # within the reach
_STIFF = 2.5e4  # against a change of the local tempo from one second to the next


@dataclass(frozen=True, slots=True)
class Prior:
    """A likely tempo in beats a minute, and how far off it may be (a share, one deviation).

    Beyond three deviations nothing is looked for.

    >>> [round(bpm) for bpm in Prior(120.0, 0.04).range_bpm]
    [107, 135]
    """

    bpm: float = 112.0
    spread: float = 0.55

    @property
    def range_bpm(self) -> tuple[float, float]:
        """The slowest and the fastest tempo that is looked for."""
        reach = (1 + self.spread) ** 3
        return max(SLOWEST_BPM, self.bpm / reach), min(FASTEST_BPM, self.bpm * reach)

    def log_weight(self, bpm: float) -> float:
        """The logarithm of how likely `bpm` is, 0 at the middle."""
        low, high = self.range_bpm
        if not low <= bpm <= high:
            return -math.inf
        return -0.5 * (math.log(bpm / self.bpm) / math.log1p(self.spread)) ** 2


def hinted(bpm: float) -> Prior:
    """The prior of a tempo that somebody told, right within some six hundredths."""
    return Prior(bpm, 0.04)


@dataclass(frozen=True, slots=True)
class Candidate:
    """A tempo that the song may have; `score` says how well its onsets and the prior agree, 0 to 1."""

    bpm: float
    score: float


def candidates(heard: Heard, prior: Prior) -> tuple[Candidate, ...]:
    """The tempi that fit, the likeliest first; at least one, at most five."""
    import numpy as np
    from scipy.signal import find_peaks

    low, high = prior.range_bpm
    bpms = np.exp(np.linspace(np.log(low), np.log(high), 1500))
    scores = _scores(_repeats(_onsets(heard)), 60 * FRAMES_PER_SEC / bpms)
    weights = np.exp([prior.log_weight(bpm) for bpm in bpms])
    weighed = np.maximum(scores - scores.min(), 0) * weights + 1e-9
    peaks = find_peaks(np.concatenate([[0], weighed, [0]]))[0] - 1
    best = sorted(peaks, key=lambda peak: -weighed[peak])[:5]
    top = weighed[best[0]]
    return tuple(Candidate(float(bpms[peak]), float(weighed[peak] / top)) for peak in best)


def local_periods(heard: Heard, bpm: float) -> Floats:
    """The length of a beat about each frame [shape=(n,)], in frames, never far from `bpm`."""
    import numpy as np

    onsets = _onsets(heard)
    middle = 60 * FRAMES_PER_SEC / bpm
    periods = middle * np.exp(np.linspace(-_REACH, _REACH, _STEPS))
    window, step = int(_WINDOW_SEC * FRAMES_PER_SEC), int(_STEP_SEC * FRAMES_PER_SEC)
    taper = np.hanning(window)
    padded = np.pad(onsets, ((0, 0), (window // 2, window // 2)))
    starts = range(0, heard.frames, step)
    rows = [_scores(_repeats(padded[:, start : start + window] * taper), periods) for start in starts]
    path = _smoothest(np.array(rows))
    centres = np.array(starts, dtype=float)
    found: Floats = np.interp(np.arange(heard.frames), centres, periods[path])
    return found


def _onsets(heard: Heard) -> Floats:
    """What is compared with itself [shape=(8, n)]: the bands and, twice, the accents."""
    import numpy as np
    from scipy.ndimage import gaussian_filter1d, uniform_filter1d

    rows = np.concatenate([heard.bands / len(heard.bands), np.stack([heard.accents, heard.accents])])
    rows = np.maximum(0, rows - uniform_filter1d(rows, int(FRAMES_PER_SEC), axis=1))
    rows = gaussian_filter1d(rows, 1.0, axis=1)
    centred: Floats = rows - rows.mean(axis=1, keepdims=True)
    return centred


def _repeats(rows: Floats) -> Floats:
    """How alike the onsets are to themselves at each lag [shape=(n,)]; 1 at lag 0."""
    import numpy as np
    from scipy.fft import irfft, next_fast_len, rfft

    length = rows.shape[1]
    size = next_fast_len(2 * length)
    power = (np.abs(rfft(rows, size, axis=1)) ** 2).sum(axis=0)
    alike = irfft(power, size)[:length]
    shrunk = np.maximum(length - np.arange(length), length / 3)
    found: Floats = alike / (alike[0] + 1e-9) * length / shrunk
    return found


def _scores(repeats: Floats, periods: Floats) -> Floats:
    import numpy as np

    lags = np.arange(len(repeats))

    def at(multiple: float) -> Floats:
        found: Floats = np.interp(periods * multiple, lags, repeats)
        return found

    found: Floats = sum((w * np.maximum(at(k), -0.05) for k, w in _COMB), np.zeros(len(periods)))
    for multiple, weight in _AGAINST:
        found = found - weight * np.maximum(0, at(multiple))
    return found


def _smoothest(rows: Floats) -> NDArray[np.intp]:
    """The best path through the scores [shape=(times, tempi)] that does not jump (Viterbi)."""
    import numpy as np

    rows = rows / (rows.std() + 1e-9)
    steps = np.linspace(-_REACH, _REACH, _STEPS)
    against = _STIFF * (steps[:, None] - steps[None, :]) ** 2
    best, came = rows[0] - 30 * steps**2, []
    for row in rows[1:]:
        ways = best[None, :] - against
        came.append(ways.argmax(axis=1))
        best = ways.max(axis=1) + row
    path = [int(best.argmax())]
    for back in reversed(came):
        path.append(int(back[path[-1]]))
    return np.array(path[::-1])
