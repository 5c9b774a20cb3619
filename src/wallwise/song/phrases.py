"""Bars, eights and phrases: where the music begins something new.

One search settles them together, since each tells of the others: a phrase begins on the first
beat of an eight, an eight on the first of a bar.  The song is cut into phrases so that the
sum is greatest of what speaks for a cut (the sound changes, a cymbal crashes), what speaks for
the bars inside (bass and new chords on the first beat, the snare on the second and fourth), and
how usual the length is.  The optimal cut is found by dynamic programming over beats.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from wallwise.song.beatwise import Beatwise

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]

LONGEST_EIGHTS = 16  # a phrase of 128 counts; longer ones are cut
# What tells that something begins: a colour unlike that of the last two eights, a pattern unlike
# that of the last four or the last, a fill before, a crash; each also as it stands above its
# neighbours.  Fitted, none below zero, on the rendered songs of the bench that are tuned on.
_TELLING = (0.72, 1.27, 0.64, 1.17, 0.87, 0.38, 1.48)
_NEVER = -3.7
_SHADOW = 1.0  # for a beat on which a change is not heard most
_SHORT = 5.0  # against pieces of less than an eight
_BAR = 0.55  # what a bar tells against a cut
_ODD_BEATS, _HALF_EIGHT, _HALF_BAR = 16.0, 9.0, 5.5  # against lengths that are no eights
_CERTAIN = 1e4  # what the teacher said


@dataclass(frozen=True, slots=True)
class Known:
    """What the teacher said: beats that begin a phrase, beats that begin an eight, and beats at
    which nothing begins.
    """

    cuts: frozenset[int] = frozenset()
    ones: frozenset[int] = frozenset()
    no_cuts: frozenset[int] = frozenset()


NOTHING_KNOWN = Known()


@dataclass(frozen=True, slots=True)
class Cut:
    """The beat (from 0) at which a phrase begins, and how sure that is, 0 to 1."""

    beat: int
    confidence: float


def cut(song: Beatwise, *, bar: int, eight: int, known: Known = NOTHING_KNOWN) -> tuple[Cut, ...]:
    """The phrases of a song: the beats at which they begin, the first of them too.

    `bar` and `eight` are lengths in beats, `bar` a part of `eight`.  A song shorter than an eight
    has one phrase.
    """
    import numpy as np

    if song.beats <= eight:
        return (Cut(0, 0.0),)
    news = newness(song, eight)
    worth = _worth(news, known)
    inside = _inside(song, bar=bar, eight=eight)
    lengths = _lengths(bar, eight)
    best, came = _search(worth, inside, lengths, known)
    starts = _path(best, came)
    sure = 1 / (1 + np.exp(-news))
    # Before the first phrase there is nothing to differ from: it is as sure as the others are.
    sure[starts[0]] = np.mean(sure[starts[1:]]) if len(starts) > 1 else 0.0
    return tuple(Cut(start, 1.0 if start in known.cuts else round(float(sure[start]), 3)) for start in starts)


def newness(song: Beatwise, eight: int) -> Floats:
    """How surely something new begins on each beat, if it begins an eight: log odds [shape=(n,)]."""
    import numpy as np
    from scipy.ndimage import maximum_filter1d

    colour = _scaled(_unlike(song.colour, 2 * eight))
    pattern = _scaled(_unlike(song.pattern, 4 * eight))
    struck = _scaled(_change(song.pattern, eight))
    fill = _fills(song.pattern, eight // 2)
    crash = np.clip(song.high, -2, 3)
    told = (colour, _above(colour, eight), pattern, _above(struck, eight), fill, _above(fill, eight))
    odds: Floats = _NEVER + np.array([*told, _above(crash, eight)]).T @ _TELLING
    # One change is heard on several beats; the one on which it is greatest tells it.
    return np.where(odds < maximum_filter1d(odds, eight - 1), odds - _SHADOW, odds)


def _scaled(values: Floats) -> Floats:
    values = values / (values.std() + 1e-9)
    found: Floats = values - values.mean()
    return found


def _above(values: Floats, eight: int) -> Floats:
    """How far each beat stands above those an eight before and after."""
    import numpy as np

    found: Floats = values - 0.5 * (np.roll(values, eight) + np.roll(values, -eight))
    return found


def _unlike(rows: Floats, reach: int) -> Floats:
    """How unlike the `reach` beats from each on are to those before it, beat by beat [shape=(n,)].

    A verse that goes on repeats itself; a chorus after a verse does not.
    """
    import numpy as np

    count = len(rows)
    if count <= reach:
        return np.zeros(count)
    far = np.sqrt(((rows[reach:] - rows[:-reach]) ** 2).sum(axis=1))
    sums = np.concatenate([[0.0], np.cumsum(far)])
    at = np.arange(count)
    first, last = np.maximum(0, at - reach), np.minimum(count - reach, at)
    pairs = np.maximum(0, last - first)
    total = np.where(pairs > 0, sums[np.maximum(first, last)] - sums[first], 0.0)
    found: Floats = total / np.sqrt(np.maximum(1, pairs) * reach)
    return found


def _change(rows: Floats, reach: int) -> Floats:
    """The distance between the means of `reach` beats before and after, in usual spreads."""
    import numpy as np

    at = np.arange(len(rows))
    before, after = np.maximum(0, at - reach), np.minimum(len(rows), at + reach)
    sums = np.concatenate([np.zeros((1, rows.shape[1])), np.cumsum(rows, axis=0)])
    squares = np.concatenate([[0.0], np.cumsum((rows**2).sum(axis=1))])
    old = (sums[at] - sums[before]) / np.maximum(1, at - before)[:, None]
    new = (sums[after] - sums[at]) / np.maximum(1, after - at)[:, None]
    spread = (squares[after] - squares[before]) / np.maximum(1, after - before)
    spread = spread - ((old**2).sum(axis=1) + (new**2).sum(axis=1)) / 2
    far = np.sqrt(((old - new) ** 2).sum(axis=1))
    fewest = np.minimum(at - before, after - at) / reach
    found: Floats = far * np.sqrt(fewest) / np.sqrt(0.3 + np.maximum(0, spread))
    return found


def _fills(pattern: Floats, half: int) -> Floats:
    """How unlike the half eight before each beat is to the one before that: drummers fill there."""
    import numpy as np

    count = len(pattern)
    fills = np.zeros(count)
    if count > 2 * half:
        far = np.sqrt(((pattern[half:] - pattern[:-half]) ** 2).sum(axis=1))
        sums = np.concatenate([[0.0], np.cumsum(far)])
        fills[2 * half :] = (sums[half:-1] - sums[: -half - 1])[: count - 2 * half] / half
    found: Floats = fills / (fills.std() + 1e-9)
    return found


def _worth(news: Floats, known: Known) -> Floats:
    worth = news.copy()
    for beats, told in ((known.cuts, _CERTAIN), (known.no_cuts, -_CERTAIN)):
        for beat in beats:
            if 0 <= beat < len(worth):
                worth[beat] = told
    return worth


def _inside(song: Beatwise, *, bar: int, eight: int) -> Floats:
    """What speaks for each beat being the r-th of an eight [shape=(eight, n)]."""
    import numpy as np

    first = np.clip(0.5 * song.low + 1.3 * song.chord + 0.4 * song.high - 0.5 * song.snare, -3, 4)
    back = np.clip(0.4 * song.snare - 0.3 * song.low, -2, 2)
    places = {0: first}
    if bar == 4:
        places |= {1: back, 2: 0.35 * first, 3: back}
    rows = np.array([places.get(place % bar, np.zeros(song.beats)) for place in range(eight)])
    rows = rows - rows.mean(axis=0)
    rows[0] += 0.25 * np.clip(song.chord, -2, 3)
    found: Floats = _BAR * (rows - rows.mean(axis=0))
    return found


def _lengths(bar: int, eight: int) -> Floats:
    """What each length in beats costs [shape=(LONGEST_EIGHTS * eight + 1,)]."""
    import numpy as np

    usual = {4: 0.0, 8: 0.0, 2: 0.3, 6: 1.0, 3: 1.5, 5: 1.8, 1: 1.2, 12: 1.0, 16: 1.0}
    costs = np.full(LONGEST_EIGHTS * eight + 1, _ODD_BEATS)
    for beats in range(1, len(costs)):
        if beats % eight == 0:
            costs[beats] = usual.get(beats // eight, 2.0)
        elif beats % (eight // 2) == 0:
            costs[beats] = _HALF_EIGHT
        elif 2 * beats % bar == 0:
            costs[beats] = _HALF_BAR
        if beats < eight:  # one change is heard on several beats, and is no two of them
            costs[beats] += _SHORT
    return costs


def _search(worth: Floats, inside: Floats, lengths: Floats, known: Known) -> tuple[Floats, NDArray[np.intp]]:
    """For each beat the best way to have a phrase begin on it, and where the last one began."""
    import numpy as np

    eight, count = inside.shape
    # sums[r, k]: what speaks for the beats before k where eights begin on beats r, r + eight ...
    at = np.arange(count)
    told = inside.copy()
    for beat in known.ones:
        if 0 <= beat < count:
            told[1:, beat] -= _CERTAIN
    rows = np.array([told[(at - r) % eight, at] for r in range(eight)])
    sums = np.concatenate([np.zeros((eight, 1)), np.cumsum(rows, axis=1)], axis=1)
    best = np.full(count + 1, -np.inf)
    came = np.full(count + 1, -1)
    best[:eight] = -0.2 * np.arange(eight) + np.array([sums[k % eight, k] for k in range(eight)])
    for beat in range(1, count + 1):
        starts = np.arange(max(0, beat - len(lengths) + 1), beat)
        gains = best[starts] + sums[starts % eight, beat] - sums[starts % eight, starts]
        # The last phrase may be cut off by the end of the song.
        gains -= lengths[beat - starts] if beat < count else np.minimum(lengths[beat - starts], 1.0)
        choice = int(gains.argmax())
        value = gains[choice] + (worth[beat] if beat < count else 0.0)
        if value > best[beat]:
            best[beat], came[beat] = value, starts[choice]
    return best, came


def _path(best: Floats, came: NDArray[np.intp]) -> Sequence[int]:
    beat = len(best) - 1
    starts: list[int] = []
    while came[beat] >= 0:
        beat = int(came[beat])
        starts.append(beat)
    return starts[::-1]
