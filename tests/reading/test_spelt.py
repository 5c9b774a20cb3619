"""A figure whose steps are told behind its name is danced once: turned by the one, stepped by the others.

That sheets name a figure and spell it in one sentence is common practice, no source.
"""

from __future__ import annotations

import pytest
from tests.reading.scoring import found_in, says

from wallwise.checks.catalogue import findings_of
from wallwise.checks.rules.not_understood import DOUBTFUL
from wallwise.dance.model import Foot, Kind
from wallwise.reading import Reading, read


def told(body: str) -> str:
    """The moves of a sheet's only part as "beat foot", gestures in brackets, and the rules it breaks."""
    reading = read(f"Tin Lantern\n\n{body}\n")
    steps = [f"{float(s.at):g}{s.foot.value}" for s in reading.dance.parts[0].steps]
    return " ".join([*steps, *(finding.rule for finding in findings_of(reading) if finding.loud)])


SPELT = {
    "3&4 sailor 1/2 turn right stepping R behind L, L to left side, R forward [6:00]": "3R 3.5L 4R",
    "sailor 1/2 turn right stepping R behind L (3), L to left side (&), R forward (4) [6:00]": "3R 3.5L 4R",
    "3 sailor 1/2 turn right stepping R behind L, & L to left side, 4 R forward": "3R 3.5L 4R",
    "3 chassé right stepping R side\n& L together\n4 R side": "3R 3.5L 4R",
    "shuffle forward stepping R forward (3), L beside R (&), R forward (4)": "3R 3.5L 4R",
    "3\tshuffle forward R\n&\tL\n4\tR": "3R 3.5L 4R",
}


@pytest.mark.parametrize("line", SPELT)
def test_a_figure_may_be_spelt_under_one_count_mark_or_several(line: str) -> None:
    """The first step stands with the name, the others behind it under the same mark or under their own."""
    body = f"1-2 Walk R, L\n{line}\n5-6 Rock L fwd, recover R\n7&8 L coaster"
    assert told(body) == f"1R 2L {SPELT[line]} 5L 6R 7L 7.5R 8L"


BOXES = [
    "1 jazz box cross R over L, 2 step back L, 3 step R side, 4 step L fwd",
    "Jazz box: cross R over L (1), step L back (2), step R side (3), step L fwd (4)",
    "1\tjazz box, cross R over L\n2\tstep L back\n3\tstep R to side\n4\tstep L forward",
]


TURNED_BEHIND = [
    "Jazz box (cross R over L, step back L, step R to side, step L forward) with 1/4 turn R",
    "Jazz box 1/4 turn R (cross R over L, step back L, step R to side, step L forward)",
    "Jazz box (cross R over L, step back L, step R to side, step L forward) turning 1/4 right",
]


@pytest.mark.parametrize("body", TURNED_BEHIND)
def test_a_turn_behind_the_bracket_is_the_figures(body: str) -> None:
    """It is danced where the figure has it, as when it is told with the name."""
    steps = read(f"Tin Lantern\n\n1-4 {body}\n").dance.parts[0].steps
    assert [float(s.at) for s in steps if s.turn] == [3]


@pytest.mark.parametrize("body", BOXES)
def test_a_name_before_its_first_step_is_not_danced_itself(body: str) -> None:
    """The steps told are those of the name, count by count."""
    assert told(body) == "1R 2L 3R 4L"


def test_the_turn_of_the_name_is_danced_by_the_steps_that_spell_it() -> None:
    """A sailor told step by step turns as its name says; a monterey turns where its steps say."""
    sailor = read(
        "Tin Lantern\n\n1 sailor 1/2 turn right stepping R behind L, & L side, 2 R fwd\n3-4 walk L R\n"
    )
    assert 4 * sailor.dance.parts[0].net_turn == 2
    body = "5 monterey 1/2 right: point R side, 6 turn 1/2 right closing R, 7 point L side, 8 close L"
    assert told(f"1-4 Rocking chair R\n{body}") == "1R 2L 3R 4L 5R 6R 7L 8L"


def test_steps_of_another_foot_are_not_those_of_the_name() -> None:
    """What does not spell the figure is told, and not bent to it."""
    assert "not-understood" in told(
        "1 shuffle forward stepping R forward, & R beside L, 2 R back\n3-4 walk L R"
    )


# "Walk L R L R" keeps the dance going round on the foot that it began with.
NAMED = "Two Spoons\n8 counts, 1 wall\nStart with weight on left\n\n{steps}\n{fill}\n"


def reading_of(steps: str, fill: str = "5-8 Walk R, L, R, L") -> Reading:
    return read(NAMED.format(steps=steps, fill=fill))


def feet_of(steps: str) -> str:
    """The weight changes of the first four counts."""
    part = next(iter(reading_of(steps).parts.values()))
    steps_on = [e for e in part.solution.events if e.at < 5 and e.kind.takes_weight]
    return "".join(e.foot.value for e in steps_on if e.foot is not Foot.NONE)


def cost_of(steps: str) -> float:
    part = next(iter(reading_of(steps).parts.values()))
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
    assert feet_of(steps) == feet
    assert cost_of(steps) < DOUBTFUL


def test_steps_that_contradict_the_name_are_doubted() -> None:
    sheet = "1-4 Vine right: step L to side, cross R behind, step L to side, touch R beside L"
    assert cost_of(sheet) >= DOUBTFUL


@pytest.mark.parametrize(
    "steps",
    [
        "1-4 Side rock R, recover L, stomp right, stomp left, weight on both stomps",
        "1-4 Walk R forward slightly across L, walk L forward slightly across R, walk R, L",
        "1-4 R side rock recover right kick ball change",
        "1-4 Two toe struts forward, right foot first",
    ],
)
def test_notes_onfeet_of_and_weightcost_of_nothing(steps: str) -> None:
    assert says(found_in(NAMED.format(steps=steps, fill="5-8 Walk R, L, R, L"))) == []


def test_a_kick_and_a_step_of_the_same_foot_are_two_events() -> None:
    part = next(iter(reading_of("1-2 R kick & step R\n3-4 L kick & step L").parts.values()))
    told = [(e.kind, e.foot) for e in part.solution.events if e.at < 5]
    left, right = Foot.LEFT, Foot.RIGHT
    assert told == [(Kind.KICK, right), (Kind.STEP, right), (Kind.KICK, left), (Kind.STEP, left)]


def test_the_side_of_a_name_is_the_lead_of_steps_that_say_no_foot() -> None:
    """“Side, behind, side, touch” of a grapevine right begins on the right foot."""
    vines = "1-4 Grapevine right (side, behind, side, touch)\n5-8 Grapevine left (side, behind, side, touch)"
    part = next(iter(read(f"Two Spoons\n\n{vines}\n").parts.values()))
    assert "RLRLRL" == "".join(e.foot.value for e in part.solution.events if e.kind.takes_weight)


TURNED = {
    "3&4 sailor step with 1/4 turn right: right behind left, left to left side, right forward": [0, 0, 1],
    "3&4 sailor 1/4 R (R behind L, L side, R fwd)": [0, 0, 1],
    "3&4 R sailor turning 1/4 right - R behind, L side, R side": [1, 0, 0],
    "3&4 chasse 1/4 R: R side, L tog, R fwd": [0, 0, 1],
    "3&4 shuffle 1/2 R: R side, L together, R forward": [1, 0, 1],
    "3&4 coaster step with 1/4 turn R: R back, L together, R forward": [1, 0, 0],
    "3&4 sailor 1/4 R: turn 1/4 right and step R behind L, step L side, step R fwd": [1, 0, 0],
    "3-6 vine R 1/4 turn R: R side, L behind, R fwd, scuff L": [0, 0, 1, 0],
    "3-6 jazz box 1/4 R: R over, L back, R side, L fwd": [0, 0, 1, 0],
    "3-6 monterey 1/2 R: point R, close R, point L, close L": [0, 2, 0, 0],
}


@pytest.mark.parametrize("line", TURNED)
def test_a_turn_told_with_the_name_alone_falls_where_the_steps_show_it(line: str) -> None:
    """On the step told elsewhere than the figure goes of itself, else where the figure turns."""
    reading = read(f"Tin Lantern\n\n1-2 Walk R, L\n{line}\n")
    steps = reading.dance.parts[0].steps[2:]
    assert [4 * step.turn for step in steps] == TURNED[line]
    assert not [f for f in findings_of(reading) if f.rule in ("not-understood", "two-readings")]
