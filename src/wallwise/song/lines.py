"""The grid through the beats that were heard: straight where the band kept to a click.

Most dance songs are recorded to a click: one line of time is then truer than any beat in it.
Some change tempo once; live ones drift.  Three shapes are laid through the heard beats, each
robustly (a wild beat pulls no more than a near one), and the simplest that explains them is
kept: a straight line, a line with one bend, or a line that bends a little every few beats.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]
    Fitted = tuple[Floats, Floats]  # the second of each beat, and of each knot

_KNOT_BEATS = 4
_SMOOTH = 0.5  # against a bend, in squares of the usual residual
_LEAST_SEC = 0.004  # no player is nearer than this
_WILD = 3.0  # residuals are counted up to so many times the usual one
_LEAST_BEND = 0.006  # as a share of the tempo; less is a band that breathes
_BEND_EVERY = 8  # beats between the places at which one bend is tried
_ROUNDS = 8


@dataclass(frozen=True, slots=True)
class Line:
    """Anchors (beat, second) of the grid; the spread of the heard beats; whether it is one line."""

    anchors: tuple[tuple[float, float], ...]
    residual_sec: float
    steady: bool


def numbered(beats_sec: Floats) -> Floats:
    """The number of each heard beat, from 0 [shape=(n,)]; where one is missing its number is too."""
    import numpy as np
    from scipy.ndimage import median_filter

    gaps = np.diff(beats_sec)
    usual = median_filter(gaps, 9, mode="nearest")
    steps = np.maximum(1, np.round(gaps / usual))
    numbers: Floats = np.concatenate([[0.0], np.cumsum(steps)])
    return numbers


def fit(numbers: Floats, beats_sec: Floats, weights: Floats) -> Line:
    """The simplest line that explains beats `numbers` heard at `beats_sec` [shape=(n,), n > 1]."""
    import numpy as np

    knots = _knots(numbers)
    drifting = _solve(_hats(numbers, knots), beats_sec, weights, smooth=True)
    usual = max(_LEAST_SEC, _spread(beats_sec - drifting[0], weights))
    straight = _solve(_basis(numbers), beats_sec, weights)
    shapes = [
        (_misfit(beats_sec - straight[0], weights, usual), 2.0, numbers[[0, -1]], straight),
        (_misfit(beats_sec - drifting[0], weights, usual), len(knots) / 2, knots, drifting),
        *_bent(numbers, beats_sec, weights, usual),
    ]
    _, _, marks, (fitted, at) = min(shapes, key=lambda shape: shape[0] + shape[1] * np.log(len(numbers)))
    anchors = tuple((float(beat), float(sec)) for beat, sec in zip(marks, at, strict=True))
    return Line(_forward(anchors), _spread(beats_sec - fitted, weights), len(marks) == 2)


def _bent(
    numbers: Floats, beats_sec: Floats, weights: Floats, usual: float
) -> list[tuple[float, float, Floats, Fitted]]:
    """The best line with one bend, if the song is long enough for one."""
    import numpy as np

    bends = np.arange(numbers[0] + 16, numbers[-1] - 16, _BEND_EVERY)
    tried = []
    for bend in bends:
        marks = np.array([numbers[0], bend, numbers[-1]])
        fitted = _solve(_hats(numbers, marks), beats_sec, weights, rounds=3)
        slopes = np.diff(fitted[1]) / np.diff(marks)
        if abs(slopes[1] / slopes[0] - 1) < _LEAST_BEND:
            continue
        tried.append((_misfit(beats_sec - fitted[0], weights, usual), 4.0, marks, fitted))
    return [min(tried, key=lambda shape: shape[0])] if tried else []


def _knots(numbers: Floats) -> Floats:
    import numpy as np

    count = max(2, round((numbers[-1] - numbers[0]) / _KNOT_BEATS) + 1)
    knots: Floats = np.linspace(numbers[0], numbers[-1], count)
    return knots


def _basis(numbers: Floats) -> Floats:
    return _hats(numbers, numbers[[0, -1]])


def _hats(numbers: Floats, knots: Floats) -> Floats:
    """Each beat as a share of the two knots about it [shape=(beats, knots)]."""
    import numpy as np

    right = np.clip(np.searchsorted(knots, numbers, side="right"), 1, len(knots) - 1)
    share = (numbers - knots[right - 1]) / (knots[right] - knots[right - 1])
    hats = np.zeros((len(numbers), len(knots)))
    rows = np.arange(len(numbers))
    hats[rows, right - 1], hats[rows, right] = 1 - share, share
    return hats


def _solve(
    basis: Floats,
    beats_sec: Floats,
    weights: Floats,
    *,
    smooth: bool = False,
    rounds: int = _ROUNDS,
) -> Fitted:
    """Least squares, reweighted against the wild."""
    import numpy as np

    size = basis.shape[1]
    stiff = np.zeros((size, size))
    if smooth and size > 2:
        bends = np.diff(np.eye(size), 2, axis=0)
        stiff = _SMOOTH * float(np.median(weights)) * _KNOT_BEATS * bends.T @ bends
    trust = weights
    solution: Floats = np.zeros(size)
    for _ in range(rounds):
        weighed = basis * trust[:, None]
        normal = weighed.T @ basis + stiff + 1e-9 * np.eye(size)
        solution = np.linalg.solve(normal, weighed.T @ beats_sec).astype(np.float64)
        residuals = beats_sec - basis @ solution
        scale = max(_LEAST_SEC, 1.5 * _spread(residuals, weights))
        trust = weights / (1 + (residuals / scale) ** 2)
    fitted: Floats = basis @ solution
    return fitted, solution


def _spread(residuals: Floats, weights: Floats) -> float:
    """A robust standard deviation: 1.48 times the weighted median of the absolute residuals."""
    import numpy as np

    sizes = np.abs(residuals)
    order = np.argsort(sizes)
    total = np.cumsum(weights[order])
    return float(1.48 * sizes[order][np.searchsorted(total, total[-1] / 2)])


def _misfit(residuals: Floats, weights: Floats, usual: float) -> float:
    import numpy as np

    share = np.minimum(weights / (weights.mean() + 1e-9), 1.5)
    return float((share * np.minimum(np.abs(residuals) / usual, _WILD) ** 2).sum())


def _forward(anchors: tuple[tuple[float, float], ...]) -> tuple[tuple[float, float], ...]:
    """Without anchors that run backwards, as a stretch without a beat may make them."""
    kept = [anchors[0]]
    for anchor in anchors[1:]:
        if anchor[0] > kept[-1][0] and anchor[1] > kept[-1][1]:
            kept.append(anchor)
    if len(kept) < 2:
        raise ValueError("the beats do not move forward")
    return tuple(kept)
