"""One word that cannot be: a foot against itself, another side than its own, a turn the legs refuse."""

from __future__ import annotations

import pytest

from wallwise.checks import check
from wallwise.reading import read

WRONG = {
    "7&8 Chassé to the left, R-L-R": "side-differs",
    "7&8 Side shuffle L (R, L, R)": "side-differs",
    "7-8 Dig the left heel forward, step the left foot back beside the left": "foot-against-itself",
    "7-8 Cross the right foot over the right, step left to left side": "foot-against-itself",
    "7-8 Step R, pivot 1/4 right": "pivot-against-body",
    "7-8 Cross R over L, unwind 1/2 right taking weight on L": "pivot-against-body",
    "7-8 Touch R toe behind L, unwind 1/2 left taking weight on R": "pivot-against-body",
    "7-8 Turn 1/2 right stepping R forward, turn 1/2 left stepping L back": "turn-undone",
}
RIGHT = (
    "7&8 Chassé to the right, R-L-R",
    "7&8 Chassé R-L-R turning 1/4 left",
    "7-8 Dig the right heel forward, step the right foot back beside the left",
    "7-8 Cross the right foot over the left, step left to left side",
    "7-8 Step R, pivot 1/4 left",
    "7-8 Cross R over L, unwind full turn left taking weight on L",
    "7-8 Touch R toe behind L, unwind 1/2 right taking weight on R",
    "7-8 Step L back, turn 1/4 right stepping R to side",
    "7-8 Turn 1/2 right stepping R forward, turn 1/4 left stepping L to side",
)
OF_WORDS = set(WRONG.values())


def rules_of(line: str) -> set[str]:
    sheet = f"TIN LANTERN\n8 counts\n1-2 Walk R, L\n3-4 Walk R, L\n5-6 Walk R, L\n{line}\n"
    return {finding.rule for finding in check(read(sheet))} & OF_WORDS


@pytest.mark.parametrize(("line", "rule"), WRONG.items())
def test_a_word_that_cannot_be_is_flagged(line: str, rule: str) -> None:
    """The rule that knows says so."""
    assert rule in rules_of(line)


@pytest.mark.parametrize("line", RIGHT)
def test_what_can_be_danced_is_not_flagged(line: str) -> None:
    """None of these rules says anything."""
    assert rules_of(line) == set()


TABLE = "TIN LANTERN\n4 counts\nCount | Foot | Step\n{}\n"
IN_COLUMNS = {
    "1 | R | step to side\n2 | L | step behind R\n3 | R | step to side\n4 | L | step beside R": False,
    "1 | R | cross L over R\n2 | R | step R to side\n3 | R | cross L over R\n4 | R | step R to side": False,
    "1 | L | step R forward\n2 | L | step L forward\n3 | R | step R forward\n4 | L | step L beside R": True,
    "1 | R | step R forward\n2 | L | step L forward\n3 | L | step R forward\n4 | L | step L beside R": True,
}


@pytest.mark.parametrize(("rows", "wrong"), IN_COLUMNS.items())
def test_a_column_of_feet_that_contradicts_its_step_is_flagged(rows: str, wrong: bool) -> None:
    """A column that tells the side that is gone to (the second table) is no contradiction."""
    assert ("not-understood" in {f.rule for f in check(read(TABLE.format(rows)))}) == wrong


@pytest.mark.parametrize(("count", "wrong"), [(7, False), (6, True), (8, True)])
def test_a_turn_told_of_a_count_is_danced_there_or_doubted(count: int, wrong: bool) -> None:
    line = f"5-8 Step R side, L behind, R side turning 1/4 right on count {count}, step L beside R"
    rules = {f.rule for f in check(read(f"TIN LANTERN\n8 counts\n1-4 Walk R, L, R, L\n{line}\n"))}
    assert ("not-understood" in rules) == wrong


def test_a_vine_that_is_told_of_the_foot_that_stands_is_not_bent_to_fit() -> None:
    """Two vines right, each with a touch, cannot be danced: no vine is cut short to let the second begin."""
    found = check(read("TIN LANTERN\n8 counts\nS1: R GRAPEVINE TOUCH, R GRAPEVINE TOUCH\n"))
    assert "foot-not-free" in {finding.rule for finding in found}
