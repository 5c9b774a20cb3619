"""A figure that is named and then told step by step is one telling; a name that contradicts is doubted."""

from __future__ import annotations

import pytest
from tests.reading.scoring import found_in, says

from wallwise.checks.rules.not_understood import DOUBTFUL
from wallwise.dance.model import Foot, Kind
from wallwise.reading import Reading, read

# "Walk L R L R" keeps the dance going round on the foot that it began with.
_SHEET = "Two Spoons\n8 counts, 1 wall\nStart with weight on left\n\n{steps}\n{fill}\n"


def _read(steps: str, fill: str = "5-8 Walk R, L, R, L") -> Reading:
    return read(_SHEET.format(steps=steps, fill=fill))


def _feet(steps: str) -> str:
    """The weight changes of the first four counts."""
    part = next(iter(_read(steps).parts.values()))
    steps_on = [e for e in part.solution.events if e.at < 5 and e.kind.takes_weight]
    return "".join(e.foot.value for e in steps_on if e.foot is not Foot.NONE)


def _cost(steps: str) -> float:
    part = next(iter(_read(steps).parts.values()))
    return part.passages[0].layouts[0].cost


@pytest.mark.parametrize(
    ("steps", "feet"),
    [
        ("1-4 Vine right - step R to side, cross L behind, step R to side, touch L beside R", "RLR"),
        ("1-4 Vine right: step R to side, cross L behind, step R to side, touch L beside R", "RLR"),
        ("1-4 Do a grapevine right. Step R to side, L behind, R to side, touch L", "RLR"),
        ("1-4 Jazz box 1/4 R - cross R over L, L back, 1/4 R with R to side, L fwd", "RLRL"),
        ("1-4 Jazz box (R over, L back, R side, L fwd)", "RLRL"),
        ("1-4 V step: right out, left out, right back in, left back in beside right", "RLRL"),
    ],
)
def test_a_figure_named_and_told_is_danced_once(steps: str, feet: str) -> None:
    assert _feet(steps) == feet
    assert _cost(steps) < DOUBTFUL


def test_steps_that_contradict_the_name_are_doubted() -> None:
    sheet = "1-4 Vine right: step L to side, cross R behind, step L to side, touch R beside L"
    assert _cost(sheet) >= DOUBTFUL


@pytest.mark.parametrize(
    "steps",
    [
        "1-4 Side rock R, recover L, stomp right, stomp left, weight on both stomps",
        "1-4 Walk R forward slightly across L, walk L forward slightly across R, walk R, L",
        "1-4 R side rock recover right kick ball change",
        "1-4 Two toe struts forward, right foot first",
    ],
)
def test_notes_on_feet_and_weight_cost_nothing(steps: str) -> None:
    assert says(found_in(_SHEET.format(steps=steps, fill="5-8 Walk R, L, R, L"))) == []


def test_a_kick_and_a_step_of_the_same_foot_are_two_events() -> None:
    part = next(iter(_read("1-2 R kick & step R\n3-4 L kick & step L").parts.values()))
    told = [(e.kind, e.foot) for e in part.solution.events if e.at < 5]
    left, right = Foot.LEFT, Foot.RIGHT
    assert told == [(Kind.KICK, right), (Kind.STEP, right), (Kind.KICK, left), (Kind.STEP, left)]
