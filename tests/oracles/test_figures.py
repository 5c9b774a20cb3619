"""Foot figures against what published glossaries say of them.

The steps are those of the source named in each row, written in the line notation.  Weight
changes and the foot left free were counted by hand from the published steps.
"""

from typing import NamedTuple

import pytest

from wallwise.dance.clock import turn_name
from wallwise.dance.counts import parse_label
from wallwise.dance.model import Foot
from wallwise.floor.apply import start
from wallwise.floor.trace import trace_steps
from wallwise.glossary.notation import parse_steps


class Figure(NamedTuple):
    name: str
    source: str
    changes: int
    turn: str
    free: str
    steps: str
    starts: str = "R"


FIGURES = [
    Figure("vine with touch", "Wikipedia, Grapevine (dance move)", 3, "no turn", "L",
           "1 step R side; 2 step L behind; 3 step R side; 4 touch L beside"),
    Figure("endless grapevine", "Kinney, 1914", 4, "no turn", "R",
           "1 step R side; 2 step L behind; 3 step R side; 4 step L across"),
    Figure("weave", "common practice, no source", 4, "no turn", "L",
           "1 step L across; 2 step R side; 3 step L behind; 4 step R side", "L"),
    Figure("three-step turn", "glossaria.net, 3-step turn", 3, "full turn right", "L",
           "1 step R forward right 1/4; 2 step L back right 1/2; 3 step R side right 1/4; 4 touch L beside"),
    Figure("chassé", "Wikipedia, Chassé", 3, "no turn", "L",
           "1 step R side; & step L beside; 2 step R side"),
    Figure("shuffle forward", "common practice, no source", 3, "no turn", "L",
           "1 step R forward; & step L beside; 2 step R forward"),
    Figure("triple step", "Descriptionary, 4th ed.", 3, "no turn", "L",
           "1 step R place; & step L place; 2 step R place"),
    Figure("ball change", "Wikipedia, Ball change", 2, "no turn", "R",
           "& ball R beside; 1 step L place"),
    Figure("kick ball change", "Wikipedia, Ball change", 2, "no turn", "R",
           "1 kick R forward; & ball R beside; 2 step L place"),
    Figure("heel ball change", "Wikipedia, Ball change", 2, "no turn", "R",
           "1 heel R forward; & ball R beside; 2 step L place"),
    Figure("coaster step", "Wikipedia, Coaster step", 3, "no turn", "L",
           "1 step R back; & step L beside; 2 step R forward"),
    Figure("forward coaster", "Wikipedia, Coaster step", 3, "no turn", "L",
           "1 step R forward; & step L beside; 2 step R back"),
    Figure("sailor step", "glossaria.net, Sailor step", 3, "no turn", "L",
           "1 step R behind; & step L side; 2 step R side"),
    Figure("behind-side-cross", "common practice, no source", 3, "no turn", "L",
           "1 step R behind; & step L side; 2 step R across"),
    Figure("jazz box", "Leander ISD vocabulary", 4, "no turn", "R",
           "1 step R across; 2 step L back; 3 step R side; 4 step L beside"),
    Figure("pivot 1/2", "common practice, no source", 2, "1/2 left", "R",
           "1 step R forward; 2 turn L left 1/2"),
    Figure("four paddles of 1/4", "common practice, no source", 0, "full turn left", "R",
           "1 touch R side left 1/4; 2 touch R side left 1/4;"
           "3 touch R side left 1/4; 4 touch R side left 1/4"),
    Figure("Monterey 1/2", "common practice, no source (two glossaries agree)", 2, "1/2 right", "R",
           "1 point R side; 2 step R beside right 1/2; 3 point L side; 4 step L beside"),
    Figure("mambo forward", "common practice, no source", 3, "no turn", "L",
           "1 rock R forward; & recover L; 2 step R beside"),
    Figure("rock step", "common practice, no source", 2, "no turn", "R",
           "1 rock R forward; 2 recover L"),
    Figure("Charleston, touching first", "common practice, no source", 2, "no turn", "R",
           "1 touch R forward; 2 step R back; 3 touch L back; 4 step L forward"),
    Figure("Charleston, stepping first", "common practice, no source", 2, "no turn", "R",
           "1 step R forward; 2 kick L forward; 3 step L back; 4 touch R back"),
    Figure("cha cha basic", "common practice, no source", 10, "no turn", "L",
           "1 rock L forward; 2 recover R; 3 step L place; & step R place; 4 step L place;"
           "5 rock R back; 6 recover L; 7 step R place; & step L place; 8 step R place", "L"),
    Figure("lock step forward", "Wikipedia, Lock step", 3, "no turn", "L",
           "1 step R forward; & step L lock behind; 2 step R forward"),
    Figure("toe fan", "common practice, no source", 0, "no turn", "R",
           "1 fan R side; 2 fan R place"),
    Figure("waltz box", "Wikipedia, Glossary of dance moves", 6, "no turn", "L",
           "1 step L forward; 2 step R side; 3 step L beside;"
           "4 step R back; 5 step L side; 6 step R beside", "L"),
    Figure("waltz balance", "T. Eum, round-dance article", 3, "no turn", "L",
           "1 step R side; 2 step L behind; 3 recover R"),
    Figure("hesitation", "common practice, no source", 1, "no turn", "L",
           "1 step R forward; 2 touch L beside; 3 hold"),
    Figure("nightclub basic, half", "Wikipedia, Nightclub two step", 3, "no turn", "L",
           "1 step R side; 2 rock L behind; & recover R"),
    Figure("nightclub basic", "Wikipedia, Nightclub two step", 6, "no turn", "R",
           "1 step R side; 2 rock L behind; & recover R; 3 step L side; 4 rock R behind; & recover L"),
    Figure("box step of eight", "common practice, no source", 6, "no turn", "R",
           "1 step R forward; 2 step L beside; 3 step R side; 4 touch L beside;"
           "5 step L back; 6 step R beside; 7 step L side; 8 touch R beside"),
    Figure("country two-step timing", "common practice, no source", 4, "no turn", "R",
           "1 step R forward; 2 step L forward; 3 step R forward; 5 step L forward"),
]  # fmt: skip


@pytest.mark.parametrize("figure", FIGURES, ids=lambda figure: figure.name)
def test_figure_dances_as_published(figure: Figure) -> None:
    """A figure is refused nowhere and has the weight changes, turn and free foot its source gives."""
    steps = parse_steps(figure.steps.split(";"))
    trace = trace_steps(steps, start=start(Foot(figure.starts)))

    assert () == trace.refused
    assert figure.changes == sum(step.weight for step in steps)
    assert figure.turn == turn_name(trace.net_turn)
    assert Foot(figure.free) is trace.end.free


def _free_after(name: str) -> Foot:
    figure = next(f for f in FIGURES if f.name == name)
    return trace_steps(parse_steps(figure.steps.split(";")), start=start()).end.free


def test_parity_law() -> None:
    """After a kick ball change the kicking foot is free again, after a shuffle the other.

    The parity law of a partner-dance lesson page: common practice, no source.
    """
    assert Foot.RIGHT is _free_after("kick ball change")
    assert Foot.LEFT is _free_after("shuffle forward")


def test_as_counted_in_one_a_two() -> None:
    """In "1a2" the middle step stands three quarters of a beat after the first.

    Common Glossary of Round Dance Terms, Roundalab & URDC, 2001: 3/4, 1/4, 1 beats.
    """
    kick, ball, step = parse_steps(["1 kick R", "a ball R beside", "2 step L place"])

    assert ["3/4", "1/4"] == [str(ball.at - kick.at), str(step.at - ball.at)]
    assert ball.at == parse_label("1a")
