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


def test_a_vine_that_is_told_of_the_foot_that_stands_is_not_bent_to_fit() -> None:
    """Two vines right, each with a touch, cannot be danced: no vine is cut short to let the second begin."""
    found = check(read("TIN LANTERN\n8 counts\nS1: R GRAPEVINE TOUCH, R GRAPEVINE TOUCH\n"))
    assert "foot-not-free" in {finding.rule for finding in found}
