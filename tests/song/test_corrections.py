"""What is told of a song is checked where it is told, and adds up."""

from __future__ import annotations

import re
from typing import Any

import pytest

from wallwise.song.corrections import NONE, Corrections
from wallwise.song.dances import WINDOWS, prior_of
from wallwise.song.tempo import hinted


@pytest.mark.parametrize(
    ("told", "says"),
    [
        ({"bpm": 12.0}, "no dance"),
        ({"dance": "frog hop"}, "“frog hop”"),
        ({"beats_per_bar": 7}, "2, 3 or 4"),
        ({"counts_per_beat": 3}, "1/2, 1 or 2"),
        ({"ones_sec": (-1.0,)}, "none below zero"),
        ({"first_count_sec": float("nan")}, "none below zero"),
        ({"breaks": ((3.0, 0.0),)}, "more than none"),
        ({"breaks": ((3.0, 0.3),)}, "half counts"),
        ({"taps_sec": (1.0, 2.0)}, "four taps"),
    ],
)
def test_what_cannot_be_is_refused_in_a_sentence(told: dict[str, Any], says: str) -> None:
    """At once, and before any sound is heard."""
    with pytest.raises(ValueError, match=re.escape(says)) as refusal:
        Corrections(**told)
    assert str(refusal.value).endswith(".")


def test_later_words_replace_and_breaks_add_up() -> None:
    """A tempo told again is the one that holds; breaks, moves, taps on 1 and shifts gather."""
    first = Corrections(bpm=120, later_counts=1, breaks=((10.0, 2.0),), ones_sec=(1.0,))
    later = Corrections(bpm=100, later_counts=2, breaks=((20.0, 4.0),), moves=((30.0, 34.0),))
    both = first.with_later(later)
    assert (100, 3, (1.0,)) == (both.bpm, both.later_counts, both.ones_sec)
    assert ((10.0, 2.0), (20.0, 4.0)) == both.breaks
    assert first == first.with_later(NONE)
    assert later == NONE.with_later(later)
    assert both == both.with_later(Corrections(breaks=((20.0, 4.0),)))


def test_a_tempo_told_six_percent_wrong_is_still_looked_for() -> None:
    """What a teacher types may be 6 % off; its half and double are out of reach."""
    low, high = hinted(120).range_bpm
    assert low < 120 * 0.94 < 120 * 1.06 < high
    assert 60 < low < high < 180


@pytest.mark.parametrize("dance", WINDOWS)
def test_a_dance_reaches_its_whole_window(dance: str) -> None:
    """Both ends of the published window are looked for, its double is not."""
    window, (low, high) = WINDOWS[dance], prior_of(dance).range_bpm
    assert low <= window.slowest_bpm < window.fastest_bpm <= high
    assert high < 2 * window.fastest_bpm


def test_published_tempi_lie_in_the_windows() -> None:
    """UCWDC competition tempos, as a social-dance page prints them (undated), in beats a minute."""
    published = {"two-step": (182, 198), "waltz": (84, 100), "cha cha": (100, 116), "polka": (114, 130)}
    for dance, (slowest, fastest) in published.items():
        window = WINDOWS[dance]
        assert window.slowest_bpm <= slowest < fastest <= window.fastest_bpm
