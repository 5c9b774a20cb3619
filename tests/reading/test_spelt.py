"""A figure whose steps are told behind its name is danced once: turned by the one, stepped by the others.

That sheets name a figure and spell it in one sentence is common practice, no source.
"""

from __future__ import annotations

import pytest

from wallwise.checks.catalogue import findings_of
from wallwise.reading import read


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
