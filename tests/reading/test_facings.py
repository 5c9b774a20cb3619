"""Facings told beside steps, after them and at the end: each is read, for a false one is flagged.

The ways to write a facing are those of many sheets seen: common practice, no source.
"""

from __future__ import annotations

import pytest

from wallwise.checks.catalogue import findings_of
from wallwise.reading import read

SHEET = """Tin
8 counts

1-2 Step R forward, turn 1/4 left onto L{beside}
3-4 Turn 1/4 left stepping R to side, step L in place
5&6 Shuffle back R, L, R
7-8 Step L back, touch R beside L
{end}
"""
BESIDE = (
    " - you are now facing {}:00", ". Now facing {} o'clock.", " {}:00", " => {}:00", " ({})", " [{}]",
    "   [{}]", " = {}", "\t{}", " ({} o/c)", " (wall {}:00)", " (now {})", " (facing side wall {}:00)",
    " [now on {}]",
    " ({} wall)", " {}.00", " (face {})", " {}h",
)  # fmt: skip
AT_END = (
    "You are now facing {} o'clock. Start again.", "= {} o'clock wall", "Ends facing {}:00",
    "Repeat from the top, you're on {} o'clock", "You will have turned to {} o'clock. Enjoy!",
)  # fmt: skip
IN_PROSE = (
    "Tin\n8 counts\nFirst eight: Step R forward (1), turn 1/4 left onto L (2){told} Turn 1/4 left stepping "
    "R to side (3), step L in place (4). Shuffle back R, L, R (5&6). Step L back (7), touch R beside L (8).\n"
)
BEHIND_MARK = (
    ", now facing {} o'clock.", ". Now facing {} o'clock.", ", which gives you {} o'clock.",
    ". That's {} o'clock.", ". ({}:00)", ", looking at {} o'clock.",
    ", now at the side, {}:00.", "; that puts you on the side wall, {}:00.", ", back at {} o'clock;",
    ", home again, {}:00,", " - which leaves you looking at {}:00.", " {}:00.",
)  # fmt: skip


def flagged(sheet: str) -> set[str]:
    return {finding.rule for finding in findings_of(read(sheet)) if finding.loud}


@pytest.mark.parametrize("told", BESIDE)
def test_a_facing_beside_its_step_is_held_against_it(told: str) -> None:
    assert flagged(SHEET.format(beside=told.format(9), end="")) == set()
    assert "facing-differs" in flagged(SHEET.format(beside=told.format(3), end=""))


@pytest.mark.parametrize("told", AT_END)
def test_a_facing_at_the_end_is_held_against_the_dance(told: str) -> None:
    assert flagged(SHEET.format(beside="", end=told.format(6))) == set()
    assert "facing-differs" in flagged(SHEET.format(beside="", end=told.format(3)))


@pytest.mark.parametrize("told", ["After two times through you are back at the front.", "Two rounds: 12:00"])
def test_a_facing_after_several_rounds_is_none_of_the_dance(told: str) -> None:
    assert flagged(SHEET.format(beside="", end=told)) == set()


@pytest.mark.parametrize("told", BEHIND_MARK)
def test_a_facing_behind_a_count_mark_is_that_of_the_step_before(told: str) -> None:
    assert flagged(IN_PROSE.format(told=told.format(9))) == set()
    assert "facing-differs" in flagged(IN_PROSE.format(told=told.format(6)))


TAG = """TIN LANTERN
8 counts, 2 walls

1-2 Step R forward, pivot 1/2 left (6:00)
3-4 Walk R, L
5-8 Rocking chair R

TAG: at the end of wall 1, facing 6:00
1-2 Step R forward, pivot 1/2 left ({first})
3-4 Step R forward, pivot 1/2 left ({last})
"""


@pytest.mark.parametrize(("first", "last"), [("12:00", "6:00"), ("6:00", "12:00")])
def test_a_tag_faces_as_the_room_does_or_as_from_the_front(first: str, last: str) -> None:
    """Both conventions are met on sheets; a facing of neither is flagged."""
    assert flagged(TAG.format(first=first, last=last)) == set()
    assert "facing-differs" in flagged(TAG.format(first="3:00", last=last))


QUARTER = """TIN LANTERN
8 counts, 4 walls

1-2 Step R forward, pivot 1/4 {side}
3-4 Walk R, L
5-8 Rocking chair R

{told}
"""
EACH_WALL = (
    "Every new wall is a quarter turn to your left: 12, 9, 6, 3 o'clock.",
    "Each wall begins a quarter turn to the left of the one before.",
    "The walls follow each other as 12, 9, 6, 3 o'clock.",
)


@pytest.mark.parametrize("told", EACH_WALL)
def test_facings_of_wall_after_wall_are_none_of_the_last_step(told: str) -> None:
    assert flagged(QUARTER.format(side="left", told=told)) == set()


@pytest.mark.parametrize("told", EACH_WALL[:2])
def test_a_turn_to_the_next_wall_is_compared(told: str) -> None:
    assert "facing-differs" in flagged(QUARTER.format(side="right", told=told))
