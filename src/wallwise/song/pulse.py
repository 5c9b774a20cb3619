"""Where the beats fall: the pulse that runs through the onsets.

First the pulse of D. P. W. Ellis, "Beat tracking by dynamic programming", J. New Music Research
36 (2007): beats sit on onsets and keep the local tempo.  Where a band plays off the beat it may
slip onto the off-beats.  So the song is then compared with itself: what is played within a beat
comes back beat after beat, and stretches that would fit better shifted are shifted, until all
of the song is told by one pattern.  Which part of the pattern is the beat itself is settled
last, for the whole song at once: loud strokes and new chords fall on beats.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from wallwise.song.onsets import FRAMES_PER_SEC, Heard

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]

PARTS = 12  # of a beat: halves, thirds and quarters are whole parts

_TIGHT = 300.0  # against a beat that leaves the local tempo
_WINDOW = 8  # beats told by a pattern of their own
_ROUNDS = 3
_SHIFT_GAIN = 0.12  # a stretch is shifted if its likeness to the song grows by this
_SHIFTS = (0, 3, 4, 6, 8, 9)  # parts: where a pulse may have slipped to
# What tells the beat within the pattern: loud strokes, and new chords and basses (the greatest
# quarter and eighth of either).  Fitted on the rendered songs of the bench that are tuned on.
_WITHIN = (1.0, 2.4, 2.0, 0.4, 0.5)


@dataclass(frozen=True, slots=True)
class Pulse:
    """Beats as heard: `frames` [shape=(n,)] where, between frames too, and `weights` how plainly."""

    frames: Floats
    weights: Floats


def find_pulse(heard: Heard, periods: Floats) -> Pulse:
    """The pulse of a song whose beats last about `periods` [shape=(frames,)], in frames."""
    beats = _chain(_smooth(heard.accents), periods)
    for _ in range(_ROUNDS):
        likeness = _likeness(heard, _pattern(heard, beats), periods)
        beats = _chain(likeness, periods)
    return _on_strokes(heard, beats)


def _smooth(values: Floats) -> Floats:
    from scipy.ndimage import gaussian_filter1d

    smoothed: Floats = gaussian_filter1d(values, 1.2)
    evened: Floats = smoothed / (smoothed.std() + 1e-9)
    return evened


def _chain(worth: Floats, periods: Floats) -> Floats:
    """The frames of the best chain of beats: each worth much, each about a period from the last."""
    import numpy as np

    length = len(worth)
    low, high = max(1, int(0.6 * periods.min())), int(1.7 * periods.max()) + 1
    gaps = np.arange(high, low - 1, -1)  # so that the slice before a frame runs forward
    logs, tempi = np.log(gaps), np.log(periods)
    total = np.concatenate([np.zeros(high), worth])  # led by frames in which no beat is
    came = np.full(length, -1)
    for frame in range(length):
        ways = total[frame : frame + len(gaps)] - _TIGHT * (logs - tempi[frame]) ** 2
        best = int(ways.argmax())
        total[high + frame] += ways[best]
        came[frame] = frame - gaps[best]
    last = length - 1 - int(total[: high - 1 : -1][: int(periods[-1])].argmax())
    beats = [last]
    while came[beats[-1]] >= 0:
        beats.append(int(came[beats[-1]]))
    return np.array(beats[::-1], dtype=float)


def folded(heard: Heard, beats: Floats) -> Floats:
    """What is heard in each part of each beat [shape=(beats - 1, bands, PARTS)]."""
    import numpy as np
    from scipy.ndimage import gaussian_filter1d

    rows = gaussian_filter1d(heard.bands, 1.2, axis=1)
    parts = np.arange(PARTS) / PARTS
    places = beats[:-1, None] + parts * np.diff(beats)[:, None]
    at = np.arange(heard.frames)
    return np.stack([np.interp(places, at, row) for row in rows], axis=1)


def _pattern(heard: Heard, beats: Floats) -> Floats:
    """What most of the song plays within a beat [shape=(bands, PARTS)], stretches shifted to agree."""
    import numpy as np

    inside = folded(heard, beats)
    count = max(1, len(inside) // _WINDOW)
    windows = np.array([part.mean(axis=0) for part in np.array_split(inside, count)])
    windows -= windows.mean(axis=2, keepdims=True)
    # likeness[i, j, s]: of window i to window j shifted by s parts
    shifted = np.stack([np.roll(windows, -shift, axis=2) for shift in _SHIFTS])
    flat, moved = windows.reshape(count, -1), shifted.reshape(len(_SHIFTS), count, -1)
    norms = np.linalg.norm(flat, axis=1) + 1e-9
    likeness = np.einsum("if,sjf->ijs", flat, moved) / (norms[:, None] * norms[None, :])[:, :, None]
    likeness[:, :, 1:] -= _SHIFT_GAIN
    leader = int(likeness.max(axis=2).sum(axis=1).argmax())
    shifts = likeness[leader].argmax(axis=1)
    agreed = shifted[shifts, np.arange(count)]
    pattern: Floats = agreed.mean(axis=0)
    return pattern


def _likeness(heard: Heard, pattern: Floats, periods: Floats) -> Floats:
    """How well the pattern fits with its beat on each frame [shape=(n,)]."""
    import numpy as np
    from scipy.ndimage import gaussian_filter1d

    rows = gaussian_filter1d(heard.bands, 1.2, axis=1)
    rows = rows - rows.mean(axis=1, keepdims=True)
    at = np.arange(heard.frames, dtype=float)
    fits = np.zeros(heard.frames)
    for part in range(-PARTS, PARTS):
        near = 1 - abs(part) / (PARTS + 1)
        places = np.clip(np.round(at + part / PARTS * periods).astype(int), 0, heard.frames - 1)
        fits += near * (pattern[:, part % PARTS] @ rows[:, places])
    evened: Floats = fits / (fits.std() + 1e-9)
    return evened


def _on_strokes(heard: Heard, beats: Floats) -> Pulse:
    """The beats moved onto the stroke nearest by, to a fraction of a frame."""
    import numpy as np
    from scipy.ndimage import gaussian_filter1d

    accents = gaussian_filter1d(heard.accents, 0.8)
    reach = 4
    frames, weights = [], []
    for beat in np.round(beats).astype(int):
        start = max(1, beat - reach)
        near = accents[start : min(len(accents) - 1, beat + reach + 1)]
        if not len(near):
            continue
        top = start + int(near.argmax())
        before, peak, after = accents[top - 1 : top + 2]
        bend = before - 2 * peak + after
        frames.append(top + (0.5 * (before - after) / bend if bend < -1e-9 else 0.0))
        weights.append(peak)
    kept = np.array(frames)
    usual = np.median(weights) + 1e-9
    first = np.diff(kept, prepend=-np.inf) > 0.3 * np.median(np.diff(kept))
    return Pulse(kept[first], np.clip(np.array(weights) / usual, 0.1, 2.0)[first])


def beat_within(heard: Heard, beats: Floats) -> float:
    """Where in the pattern the beat itself is, as a share of a beat (0: where `beats` are).

    `beats` [shape=(n,)] in frames.
    """
    import numpy as np

    gaps = np.diff(beats)
    strokes, chords = [], []
    for shift in _SHIFTS:
        places = beats[:-1] + shift / PARTS * gaps
        strokes.append(loudest_near(heard.accents, places).mean())
        chords.append([_most(change) for change in new_chords(heard, places, 2 * gaps)])
    told = np.concatenate([np.array(strokes)[:, None], np.array(chords).reshape(len(_SHIFTS), -1)], axis=1)
    worth = (told / (told.max(axis=0) + 1e-9)) @ _WITHIN
    return _SHIFTS[int(worth.argmax())] / PARTS


def _most(changes: Floats) -> tuple[float, float]:
    """The mean of the greatest quarter, and of the greatest eighth: few beats bring a new chord."""
    import numpy as np

    ordered = np.sort(changes)[::-1]
    return float(ordered[: len(ordered) // 4 + 1].mean()), float(ordered[: len(ordered) // 8 + 1].mean())


def loudest_near(values: Floats, places: Floats, reach: int = 2) -> Floats:
    """The greatest value within `reach` frames of each place [shape=(n,)]."""
    from scipy.ndimage import maximum_filter1d

    return sampled(maximum_filter1d(values, 2 * reach + 1), places)


def sampled(values: Floats, places: Floats) -> Floats:
    """The values at the frames nearest to `places`; beyond the ends those at the ends."""
    import numpy as np

    found: Floats = values[np.clip(np.round(places).astype(int), 0, len(values) - 1)]
    return found


def new_chords(heard: Heard, places: Floats, spans: Floats) -> tuple[Floats, Floats]:
    """How much the chords and the bass differ before and after each place [shape=(n,), 0 to 1 each].

    `spans` [shape=(n,)] frames are compared on either side.
    """
    return _change(heard.chords, places, spans), _change(heard.basses, places, spans)


def _change(tones: NDArray[np.float32], places: Floats, spans: Floats) -> Floats:
    import numpy as np

    unit = tones / (np.linalg.norm(tones, axis=1, keepdims=True) + 1e-6)
    sums = np.concatenate([np.zeros((1, 12)), np.cumsum(unit, axis=0, dtype=np.float64)])
    here, before, after = (sampled(sums, places + side * spans) for side in (0, -1, 1))
    old, new = here - before, after - here
    norms = np.linalg.norm(old, axis=1) * np.linalg.norm(new, axis=1)
    found: Floats = 1 - (old * new).sum(axis=1) / (norms + 1e-9)
    return found


def seconds(frames: Floats) -> Floats:
    """Frames as seconds."""
    return frames / FRAMES_PER_SEC
