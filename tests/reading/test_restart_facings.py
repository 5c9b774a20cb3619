"""Facings told beside several walls go each to its own."""

from __future__ import annotations

import pytest

from wallwise.reading.naming import names_in
from wallwise.reading.outline import Remark
from wallwise.reading.tidy import tidy

NOON, THREE, SIX, NINE = 0, 12, 24, 36  # in 1/48 of a turn
TOLD = {
    "wall 4 & wall 7 - you look at 12 o'c on w4 and 3 o'c on w7": {4: NOON, 7: THREE},
    "Restarts on walls 3 and 6 (facing 6:00 on wall 3, 12:00 on wall 6)": {3: SIX, 6: NOON},
    "Restart on walls 2 & 5: 9 o'clock for the 2nd wall, front wall on wall 5": {2: NINE, 5: NOON},
    "Restart after 16 on wall 3 at 6:00 and on wall 6 at 12:00": {3: SIX, 6: NOON},
    "Restart on walls 2 and 5 facing 3:00 and 6:00": {2: THREE, 5: SIX},
}


@pytest.mark.parametrize("told", TOLD)
def test_a_facing_is_that_of_the_wall_it_is_told_with(told: str) -> None:
    """Before its wall or behind it, or in the order of the walls."""
    (line,) = tidy(told)
    named = names_in(Remark(line, 0, len(told)))
    faced = {wall: named.faced_on(i) for i, (wall, _) in enumerate(named.walls)}
    assert TOLD[told] == {wall: claims[-1][0] if claims else None for wall, claims in faced.items()}


def test_a_facing_keeps_its_minutes() -> None:
    """A diagonal is not cut down to its hour."""
    (line,) = tidy("Restart on wall 4 facing 3:45")
    (clock,) = names_in(Remark(line, 0, len(line.text))).clocks
    assert "3:45" == line.text[clock.start : clock.end]


def test_where_the_dance_begins_again_is_the_facing_of_the_restart() -> None:
    """Only a wall that starts facing somewhere says nothing of the restart."""
    (line,) = tidy("Restart on wall 4: dance 16 counts and begin again facing 6:00")
    (claim,) = names_in(Remark(line, 0, len(line.text))).faced_on(0)
    assert SIX == claim[0]
    (line,) = tidy("Restart on wall 4, which starts facing 6:00")
    assert [] == names_in(Remark(line, 0, len(line.text))).faced_on(0)
