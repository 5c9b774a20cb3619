"""The cut into phrases is the best there is, and obeys what was told."""

from __future__ import annotations

from collections.abc import Callable
from itertools import combinations

import numpy as np
import pytest

from wallwise.song import phrases
from wallwise.song.beatwise import Beatwise
from wallwise.song.phrases import Known, cut


def song(seed: int, beats: int) -> Beatwise:
    dice = np.random.default_rng(seed)
    return Beatwise(
        low=dice.normal(size=beats),
        snare=dice.normal(size=beats),
        high=dice.normal(size=beats),
        chord=dice.normal(size=beats),
        colour=dice.normal(size=(beats, 3)),
        pattern=dice.normal(size=(beats, 4)),
    )


def sections(*lengths: int) -> Beatwise:
    """Sections that sound each unlike the last, with a plain 4/4 beat."""
    beats = sum(lengths)
    dice = np.random.default_rng(1)
    place = np.concatenate([np.arange(length) for length in lengths])
    part = np.repeat(np.arange(len(lengths)), lengths)
    faces = dice.normal(size=(len(lengths), 10))
    first = np.where(place % 4 == 0, 2.0, -0.5)
    return Beatwise(
        low=first,
        snare=np.where(place % 2 == 1, 1.5, -0.5),
        high=np.where(place == 0, 3.0, 0.0),
        chord=first,
        colour=faces[part] + dice.normal(0, 0.1, (beats, 10)),
        pattern=faces[part][:, :8] + dice.normal(0, 0.1, (beats, 8)),
    )


def objective(music: Beatwise, *, bar: int, eight: int) -> Callable[[tuple[int, ...]], float]:
    """What a cut is worth, counted beat by beat."""
    news = phrases.newness(music, eight).tolist()
    inside = phrases._inside(music, bar=bar, eight=eight).tolist()
    costs = phrases._lengths(bar, eight).tolist()

    def worth(starts: tuple[int, ...]) -> float:
        total = -0.2 * starts[0] + sum(inside[(k - starts[0]) % eight][k] for k in range(starts[0]))
        for start, end in zip(starts, [*starts[1:], music.beats], strict=True):
            total += sum(inside[(k - start) % eight][k] for k in range(start, end))
            last = end == music.beats
            total += -min(costs[end - start], 1.0) if last else news[end] - costs[end - start]
        return float(total)

    return worth


@pytest.mark.parametrize("seed", range(6))
def test_no_other_cut_is_better(seed: int) -> None:
    """Against every cut of eleven beats into phrases (eights of four, bars of two)."""
    music = song(seed, 11)
    worth = objective(music, bar=2, eight=4)
    every = (s for count in range(1, 11) for s in combinations(range(11), count) if s[0] < 4)
    found = tuple(c.beat for c in cut(music, bar=2, eight=4))
    assert pytest.approx(max(map(worth, every))) == worth(found)


def test_sections_are_found() -> None:
    """Thirty-two, sixteen, thirty-two and thirty-two counts."""
    found = cut(sections(32, 16, 32, 32), bar=4, eight=8)
    assert [0, 32, 48, 80] == [c.beat for c in found]
    assert all(0.5 < c.confidence <= 1 for c in found)


def test_a_break_of_two_counts_moves_the_eights() -> None:
    """After thirty-four beats, not thirty-two, the next section and its bars begin."""
    found = [c.beat for c in cut(sections(32, 2, 32, 32), bar=4, eight=8)]
    assert 34 in found
    assert 66 in found


def test_what_was_told_is_kept() -> None:
    """A cut, a beat without one, and a one hold against the music."""
    music = sections(32, 32, 32)
    told = [c.beat for c in cut(music, bar=4, eight=8, known=Known(cuts=frozenset({21})))]
    assert 21 in told
    told = [c.beat for c in cut(music, bar=4, eight=8, known=Known(no_cuts=frozenset({32})))]
    assert 32 not in told
    told = [c.beat for c in cut(music, bar=4, eight=8, known=Known(ones=frozenset({19})))]
    start = max(beat for beat in told if beat <= 19)
    assert 0 == (19 - start) % 8


def test_a_scrap_of_song_is_one_phrase() -> None:
    """Shorter than an eight."""
    assert [0] == [c.beat for c in cut(song(1, 5), bar=4, eight=8)]
