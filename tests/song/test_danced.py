"""The walls on the song: where they fall agrees with counting them out, one count after the other."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.song.walking import dance, part, walk

from wallwise.dance.model import Dance
from wallwise.dance.walls import WallKind
from wallwise.song.danced import lay, phrasing_of, song_counts, tolerance_of
from wallwise.song.grid import BeatGrid, Phrase

SONG = BeatGrid.steady_at(120, length_sec=60)


def whole(*values: Fraction | int) -> tuple[int, ...]:
    """The values as whole numbers; fails where one is none."""
    assert all(value == int(value) for value in values)
    return tuple(int(value) for value in values)


@st.composite
def songs(draw: st.DrawFn) -> BeatGrid:
    """A song whose tempo changes a few times, counted at any level, with an intro."""
    beat, sec = 0, draw(st.floats(0, 3))
    anchors = [(0.0, sec)]
    for beats, period in draw(
        st.lists(st.tuples(st.integers(8, 80), st.floats(0.3, 1.0)), min_size=1, max_size=4)
    ):
        beat, sec = beat + beats, sec + beats * period
        anchors.append((float(beat), sec))
    return replace(
        SONG,
        anchors=tuple(anchors),
        first_beat=draw(st.integers(0, 8)),
        last_beat=beat,
        counts_per_beat=draw(st.sampled_from([Fraction(1, 2), Fraction(1), Fraction(2)])),
    )


@st.composite
def dances(draw: st.DrawFn) -> Dance:
    """A dance of 4 to 12 counts with a few restarts and tags."""
    turns = st.lists(st.sampled_from([0, 0, 0, 2, -2, 4, 1]), min_size=4, max_size=12)
    eighths = draw(turns)
    restarts = st.dictionaries(st.integers(1, 8), st.integers(1, len(eighths) - 1), max_size=3)
    tags = st.dictionaries(st.integers(1, 8), st.builds(lambda t: part("tag", *t[:4]), turns), max_size=2)
    return dance(*eighths, restarts=draw(restarts), tags=draw(tags))


@settings(deadline=None, max_examples=80)
@given(dances(), songs())
def test_walls_fall_where_counting_puts_them(danced: Dance, grid: BeatGrid) -> None:
    """First and last count, facing before and after, and seconds as numpy interpolates the beats."""
    laid = lay(danced, grid)
    length = (grid.last_beat - grid.first_beat) * grid.counts_per_beat // 1 + 1
    walked = walk(danced, int(length))
    assert [(w.wall, w.tag, w.first, w.last, w.starts, w.ends) for w in walked] == [
        (
            s.wall.number,
            s.wall.kind is WallKind.TAG,
            *whole(
                s.starts_count,
                s.starts_count + s.counts - 1,
                s.wall.starts_facing * 8,
                s.ends_facing * 8,
            ),
        )
        for s in laid.stretches
    ]
    beats, seconds = zip(*grid.anchors, strict=True)
    firsts = [grid.first_beat + (w.first - 1) / grid.counts_per_beat for w in walked]
    assert np.interp([float(b) for b in firsts], beats, seconds) == pytest.approx(
        [s.starts_sec for s in laid.stretches], abs=1e-6
    )
    assert (walked[-1].wall, walked[-1].ends) == whole(laid.end.wall, laid.end.facing * 8)


@settings(deadline=None, max_examples=25)
@given(dances(), songs())
def test_each_stretch_begins_when_the_one_before_is_over(danced: Dance, grid: BeatGrid) -> None:
    """No second is danced twice or not at all."""
    laid = lay(danced, grid)
    for before, after in zip(laid.stretches, laid.stretches[1:], strict=False):
        assert before.ends_sec == pytest.approx(after.starts_sec, abs=1e-9)
        assert before.starts_count + before.counts == after.starts_count


def test_the_end_is_told_by_wall_and_count() -> None:
    """60 s at 120 are 120 counts: seven walls of 16 and eight counts, a half turn each wall."""
    laid = lay(dance(4, *[0] * 15), SONG)
    assert (8, 8, 0, 0) == whole(
        laid.end.wall,
        laid.end.count,
        laid.end.facing,
        laid.end.counts_left,
    )
    assert laid.stretches[-1].cut_by == "end"
    assert pytest.approx(59.5) == laid.end.sec


def test_a_song_that_ends_with_a_wall_cuts_nothing() -> None:
    """120 counts and a dance of 40: three whole walls."""
    laid = lay(dance(*[0] * 40), SONG)
    assert [None] * 3 == [stretch.cut_by for stretch in laid.stretches]
    assert (3, 40) == whole(laid.end.wall, laid.end.count)


def test_half_time_makes_half_the_counts() -> None:
    """120 beats, a count on every second: 60 counts, and a second each."""
    laid = lay(dance(*[0] * 16), replace(SONG, counts_per_beat=Fraction(1, 2)))
    assert 60 == song_counts(laid.grid)
    assert [0.0, 16.0, 32.0, 48.0] == [stretch.starts_sec for stretch in laid.stretches]


def phrased(*counts: int, first_beat: int = 0, confidence: float = 1.0) -> BeatGrid:
    """The song with phrases of so many counts from its first beat on."""
    starts = [sum(counts[:n]) for n in range(len(counts))]
    phrases = tuple(Phrase(s, c, confidence) for s, c in zip(starts, counts, strict=True))
    return replace(SONG, phrases=phrases, first_beat=first_beat)


def test_a_wall_meets_the_phrase_it_begins_in() -> None:
    """Walls of 16 in phrases of 32, 24 and 64: the fourth ends eight counts into the third."""
    laid = lay(dance(*[0] * 16), phrased(32, 24, 64))
    met = [s.meeting for s in laid.stretches]
    assert [(1, 1), (1, 17), (2, 1), (2, 17), (3, 9), (3, 25), (3, 41), (3, 57)] == [
        whole(m.phrase, m.count) for m in met if m
    ]
    assert [0, -16, 0, -8, 8, 24, 40, 56] == [m.offset for m in met if m]
    assert [0, 0, 0, 0, -8, -8, -8, 8] == [m.beside for m in met if m]
    assert [False] * 4 + [True] * 4 == [laid.off_phrase(s) for s in laid.stretches]


def test_phrases_are_counted_from_count_1() -> None:
    """The phrase that count 1 falls into is the first, wherever it began."""
    laid = lay(dance(*[0] * 16), phrased(16, 32, 72, first_beat=8))
    assert [1, 2, 2, 3, 3, 3, 3] == [s.meeting.phrase for s in laid.stretches if s.meeting]
    assert (0, 8, 40) == laid.phrasing.places if laid.phrasing else None


def test_no_phrase_is_no_fault() -> None:
    """Where no phrases are known, and after the last of those told, nothing is off."""
    laid = lay(dance(*[0] * 16), SONG)
    assert [None] * 8 == [s.meeting for s in laid.stretches]
    assert not any(laid.off_phrase(s) for s in laid.stretches)
    told = lay(dance(*[0] * 16), phrased(32, 24))
    assert [True] * 4 + [False] * 4 == [s.meeting is not None for s in told.stretches]


def test_what_is_heard_is_right_to_a_beat() -> None:
    """A start one count beside a phrase that is heard is with it; beside one that is told it is not."""
    assert (0, 1) == whole(tolerance_of(phrased(32)), tolerance_of(phrased(32, confidence=0.7)))
    heard, told = (lay(dance(*[0] * 16), phrased(31, 89, confidence=sure)).off_phrase for sure in (0.7, 1.0))
    third = lay(dance(*[0] * 16), phrased(31, 89)).stretches[2]
    assert (False, True) == (heard(third), told(third))


def test_a_sequence_that_outlasts_the_song_leaves_parts_over() -> None:
    """A of 32 and B of 16 in 120 counts: the last B is never reached, the A before it is cut."""
    sheet = replace(
        Dance("Parts", (part("A", *[0] * 32), part("B", *[0] * 16))), sequence=("A", "B", "A", "B", "A", "B")
    )
    laid = lay(sheet, SONG)
    assert ["A", "B", "A", "B", "A"] == [s.wall.part for s in laid.stretches]
    assert ("A", "end") == (laid.end.part, laid.stretches[-1].cut_by)
    assert laid.end.count == 24
    assert ["B"] == [wall.part for wall in laid.unreached]


def test_a_sequence_that_is_over_leaves_counts() -> None:
    """A of 32 once and an ending of 4 in 120 counts: 84 more sound."""
    sheet = replace(
        Dance("Short", (part("A", *[0] * 32),)), sequence=("A",), ending=part("ending", 0, 0, 0, 0)
    )
    laid = lay(sheet, SONG)
    assert laid.end.kind is WallKind.ENDING
    assert (84, 4) == whole(laid.end.counts_left, laid.end.count)


def test_nothing_danced_ends_at_the_front() -> None:
    """A dance without steps, and a song that is over before count 1."""
    for sheet, grid in ((Dance("", ()), SONG), (dance(0, 0), replace(SONG, first_beat=500))):
        laid = lay(sheet, grid)
        assert (0, 0, 0) == whole(len(laid.stretches), laid.end.wall, laid.end.facing)
    assert phrasing_of(replace(SONG, first_beat=500)) is None
