"""Hips that only style a step, and hips that bring the weight across.

What the words mean is common practice, no source.
"""

from __future__ import annotations

import pytest

from wallwise.dance.model import Foot, Kind
from wallwise.reading import read

HEAD = "Hip Test\n4 counts 1 wall, weight on left\n"
REST = "3-4 Step R in place, step L in place"


def last(line: str, rest: str = REST) -> tuple[Foot, Kind]:
    """The foot and the kind of the last event of a line that starts with the right foot free."""
    event = read(f"{HEAD}{line}\n{rest}\n").main.solution.events
    return next((e.foot, e.kind) for e in event if e.at == 2)


@pytest.mark.parametrize(
    "words",
    [
        "pivot 1/4 left rolling hips",
        "pivot 1/4 left with a hip roll",
        "turn 1/4 left rolling hips",
        "paddle 1/4 left with hip bumps",
        "pivot 1/2 left bouncing heels",
    ],
)
def test_hips_that_style_a_pivot_leave_its_weight_change(words: str) -> None:
    """The pivot moves the weight to the foot in front; what the hips do is no count of its own."""
    assert last(f"1-2 Step R forward, {words}") == (Foot.LEFT, Kind.TURN)


@pytest.mark.parametrize(
    "words",
    [
        "bump hips L taking weight on L",
        "roll the body down and finish with weight on L",
        "body roll ending with weight on L",
        "hip roll to left, taking weight on left",
    ],
)
def test_hips_that_end_on_the_other_foot_move_the_weight(words: str) -> None:
    """The weight that is told to arrive on the other foot makes a sway of it."""
    assert last(f"1-2 Step R to right side, {words}") == (Foot.LEFT, Kind.SWAY)


def test_hips_that_end_on_the_standing_foot_move_none() -> None:
    """Where the weight is there already, both feet stay where they are."""
    assert (
        last("1-2 Step R to right side, bump hips R (weight on R)", "3-4 Step L in place, touch R")[0]
        is Foot.BOTH
    )


@pytest.mark.parametrize(
    ("line", "foot", "kind"),
    [
        ("1-2 Step R forward ending with a touch", Foot.LEFT, Kind.TOUCH),
        ("1-2 Walk R, L on the balls of the feet", Foot.LEFT, Kind.STEP),
        ("1-2 Step R to side pushing hips to the right, step L beside R", Foot.LEFT, Kind.STEP),
    ],
)
def test_how_a_step_is_done_is_no_order_and_no_step(line: str, foot: Foot, kind: Kind) -> None:
    """An ending told of a figure is danced; the part of the foot and the hips leave the steps as they are."""
    assert last(line, "3-4 Step L in place, touch R" if kind is Kind.TOUCH else REST) == (foot, kind)
