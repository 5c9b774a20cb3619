"""Endings: wherever the song leaves the room, a few simple steps bring it to the front."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.song.walking import dance, part, walk
from tests.strategies import danceable

from wallwise.checks.endings import LONGEST, MOST, Ending, endings, own_ending, stance_before
from wallwise.dance.model import Dance, Foot, Kind, Step
from wallwise.dance.walls import WallKind
from wallwise.song.danced import Danced, lay
from wallwise.song.grid import BeatGrid


def on(counts: int, danced: Dance) -> Danced:
    """The dance on a song of so many counts."""
    return lay(danced, BeatGrid.steady_at(120, length_sec=counts / 2))


def feet_free(weight: Foot, steps: tuple[Step, ...]) -> bool:
    """Whether every step is made by the foot that does not stand, told without the law of weight."""
    for step in steps:
        if step.foot is weight:
            return False
        if step.kind is not Kind.TOUCH:
            weight = step.foot
    return True


@pytest.mark.parametrize("eighths", range(1, 8))
@pytest.mark.parametrize("counts", [19, 20])
def test_from_every_facing_and_foot_there_is_a_way_to_the_front(eighths: int, counts: int) -> None:
    """The turn of count 1 is still to be undone at the end, the weight on either foot."""
    danced = on(counts, dance(eighths, *[0] * 31))
    found = endings(danced)
    assert 1 <= len(found) <= MOST
    for ending in found:
        assert 1 <= ending.counts <= LONGEST
        assert counts - ending.counts + 1 == ending.starts_count == ending.at
        turned = sum((step.turn for step in ending.steps), Fraction(eighths, 8))
        assert 0 == turned % 1
        assert 0 == ending.facing
        assert feet_free(Foot.RIGHT if ending.at % 2 == 0 else Foot.LEFT, ending.steps)
        assert ending.steps[-1].at <= ending.counts
        assert [step.at for step in ending.steps] == sorted(step.at for step in ending.steps)


@settings(deadline=None, max_examples=25)
@given(danceable(counts=8), st.integers(5, 40))
def test_the_floor_dances_every_ending(danced: Dance, counts: int) -> None:
    """From where all the steps before it leave the dancer, without a refusal, to the front."""
    laid = on(counts, danced)
    for ending in endings(laid):
        assert stance_before(laid, ending.starts_count) == ending.trace.start
        assert not [row.refused for row in ending.trace.rows if row.refused]
        assert 0 == ending.facing


def test_the_easiest_comes_first() -> None:
    """A quarter is turned on one step; a half takes a step and a pivot; lengths differ."""
    quarter, half = (endings(on(20, dance(turn, *[0] * 31))) for turn in (2, 4))
    assert (1, 2) == (quarter[0].counts, half[0].counts)
    assert [(Kind.STEP, 0), (Kind.TURN, Fraction(-1, 2))] == [(s.kind, s.turn) for s in half[0].steps]
    assert len({ending.counts for ending in half}) == len(half)


def test_at_the_front_there_is_nothing_to_find() -> None:
    """A dance that does not turn, one that is over before the song, and nothing danced."""
    assert not endings(on(20, dance(*[0] * 16)))
    over = replace(Dance("", (part("A", 4, 0),)), sequence=("A",))
    assert not endings(on(20, over))
    assert not endings(on(20, Dance("", ())))


def test_the_counts_replaced_may_hold_the_turn() -> None:
    """Where the last counts turned away, they are left out: the room was at the front before."""
    found = endings(on(20, dance(*[0] * 18, 2, 0)))
    assert any(not any(step.turn for step in ending.steps) for ending in found)


def test_an_ending_may_begin_in_the_wall_before() -> None:
    """The song's last count is the second of a wall: three counts begin on the last of the wall before."""
    danced = on(18, dance(2, *[0] * 15))
    begun: list[Ending] = [e for e in endings(danced) if e.counts == 3]
    assert [(0, Fraction(16))] == [(e.stretch, e.at) for e in begun]
    assert 1 == danced.stretches[begun[0].stretch].wall.number


def test_the_sheets_own_ending_is_danced_at_the_end_of_the_song() -> None:
    """Its last count is the song's: it turns a half from where the walk stands before it."""
    danced = replace(dance(4, *[0] * 15), ending=part("ending", 4, 0))
    own = own_ending(on(24, danced))
    assert own is not None
    (*_, last) = walk(danced, 22)
    assert (last.ends * Fraction(1, 8) + Fraction(1, 2)) % 1 == own.facing
    assert (23, 2) == (int(own.starts_count), own.counts)
    assert own_ending(on(24, dance(4, 0))) is None
    assert own_ending(on(3, replace(danced, ending=part("ending", 4, 0, 0, 0)))) is None


def test_an_ending_in_a_tag_says_so() -> None:
    """The song ends inside the tag after wall 1."""
    danced = on(18, dance(4, *[0] * 15, tags={1: part("tag", 0, 0, 0, 0)}))
    one = next(e for e in endings(danced) if e.counts == 2)
    assert danced.stretches[one.stretch].wall.kind is WallKind.TAG
