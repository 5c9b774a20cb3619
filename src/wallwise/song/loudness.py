"""How loud sound is to the ear, and how to keep it there without clipping.

Loudness is that of ITU-R BS.1770 (K-weighting, two gates), which EBU R 128 asks for, in LUFS;
pyloudnorm measures it and nothing else here knows that library.  The true peak is the largest
value between the samples too: BS.1770, annex 2, measures it at four times the rate, in dBTP.
"""

from __future__ import annotations

import math
import warnings
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from numpy.typing import NDArray

    from wallwise.song.sound import Samples, Sound

SHORTEST_SEC = 0.4  # one gating block (BS.1770, annex 1)
_OVERSAMPLED = 4
_LOOK_AHEAD_SEC = 0.005
_BLOCK = 1 << 18


def loudness_lufs(sound: Sound) -> float:
    """The integrated loudness; minus infinity for silence, and for what is shorter than 0.4 s."""
    if sound.length_sec < SHORTEST_SEC:
        return -math.inf
    from pyloudnorm import Meter

    with warnings.catch_warnings(action="ignore"):  # of silence, it takes the mean of nothing
        return float(Meter(sound.rate_hz).integrated_loudness(sound.samples))


def true_peak(samples: Samples) -> float:
    """The largest value at four times the rate, 1 being full scale; 0 for no samples."""
    import numpy as np
    from scipy.signal import resample_poly

    overlap = 64  # wider than the filter, so that blocks join without a seam
    peak = 0.0
    for first in range(0, len(samples), _BLOCK):
        block = samples[max(0, first - overlap) : first + _BLOCK + overlap]
        # Between quiet samples nothing is loud: only a block that may hold the peak is looked at closely.
        if np.max(np.abs(block)) * 2 > peak:
            peak = max(peak, float(np.max(np.abs(resample_poly(block, _OVERSAMPLED, 1, axis=0)))))
    return peak


def gain_to(target_lufs: float, loudness: float) -> float:
    """The factor that brings a loudness to the target; 1 for silence.

    >>> round(gain_to(-23, -29), 3), gain_to(-23, -math.inf)
    (1.995, 1.0)
    """
    return 10 ** ((target_lufs - loudness) / 20) if math.isfinite(loudness) else 1.0


def limited(sound: Sound, ceiling: float) -> Sound:
    """The sound with no sample above `ceiling` (1 is full scale), quieter only around what would be.

    It looks 5 ms ahead, so the gain slides to where it has to be instead of cutting tops off.
    """
    import numpy as np
    from scipy.ndimage import minimum_filter1d, uniform_filter1d

    from wallwise.song.sound import Sound

    samples = sound.samples
    peaks = np.abs(samples) if samples.ndim == 1 else np.max(np.abs(samples), axis=1)
    if not len(peaks) or np.max(peaks) <= ceiling:
        return sound
    gain: NDArray[np.float64] = ceiling / np.maximum(peaks.astype(np.float64), ceiling)
    width = 2 * round(_LOOK_AHEAD_SEC * sound.rate_hz) + 1
    # The mean over a window of what is already the least over that window never exceeds the least.
    gain = uniform_filter1d(minimum_filter1d(gain, width, mode="nearest"), width, mode="nearest")
    shaped = gain if samples.ndim == 1 else gain[:, np.newaxis]
    kept = np.clip(samples * shaped, -ceiling, ceiling)  # rounding alone can be past it
    return Sound(kept.astype(np.float32), sound.rate_hz)
