"""Repeats, “the same on the other foot”, “x2”: what was told once is danced again.

Common practice, no source: a mirror image has the other foot, the other side and the other way to turn.
"""

from __future__ import annotations

from fractions import Fraction

import pytest

from wallwise.dance.model import Step
from wallwise.desk.report import check_text
from wallwise.reading import read


def steps_of(body: str) -> tuple[Step, ...]:
    return read(f"Tin Lantern\n\n{body}\n").dance.parts[0].steps


def told(steps: tuple[Step, ...]) -> list[str]:
    """Beat, foot, kind and turn of every step."""
    return [f"{s.at} {s.foot.value} {s.kind.value} {s.turn}" for s in steps]


VINES = "1-4 Vine R, touch L\n5-8 Vine L, touch R"
MIRRORED = {
    "same to the left": "1-4 Vine R, touch L\n5-8 Same to the left",
    "same on the other foot": "1-4 Vine R, touch L\n5-8 Same on the other foot",
    "repeat on the other foot": "1-4 Vine R, touch L\n5-8 Repeat 1-4 on the other foot",
    "leading left": "1-4 Vine R, touch L\n5-8 Repeat 1-4 leading with left",
    "mirror": "1-4 Vine R, touch L\n5-8 Mirror 1-4",
    "reverse": "1-4 Vine R, touch L\n5-8 Reverse",
    "repeat to left": "1-4 Vine R, touch L\n5-8 Repeat to left side",
}


@pytest.mark.parametrize("case", MIRRORED)
def test_the_other_foot_dances_the_mirror_image(case: str) -> None:
    """Two vines, of which the second is only said to be like the first."""
    assert told(steps_of(VINES)) == told(steps_of(MIRRORED[case]))


PADDLES = "1-2 Step R forward, pivot 1/4 left\n3-4 Step R forward, pivot 1/4 left"
TWICE = {
    "repeat counts": "1-2 Step R forward, pivot 1/4 left\n3-4 Repeat 1-2",
    "repeat the counts": "1-2 Step R forward, pivot 1/4 left\n3-4 Repeat counts 1-2",
    "repeat alone": "1-2 Step R forward, pivot 1/4 left\n3-4 Repeat",
    "same again": "1-2 Step R forward, pivot 1/4 left\n3-4 Same again",
    "x2 behind brackets": "1-4 (Step R forward, pivot 1/4 left) x2",
    "twice behind brackets": "1-4 (Step R forward, pivot 1/4 left) twice",
    "x2": "1-4 Step R forward, pivot 1/4 left x2",
    "twice": "1-4 Step R forward, pivot 1/4 left, twice",
    "and again": "1-4 Step R forward, pivot 1/4 left, and again",
    "once more": "1-4 Step R forward, pivot 1/4 left, once more",
    "repeat behind them": "1-4 Step R forward, pivot 1/4 left, repeat",
}


@pytest.mark.parametrize("case", TWICE)
def test_the_same_feet_dance_it_again(case: str) -> None:
    """Two paddle turns, of which the second is only said to be like the first."""
    assert told(steps_of(PADDLES)) == told(steps_of(TWICE[case]))


TOUCHES = "1-2 Step R to side, touch L beside\n3-4 Step L to side, touch R beside"


@pytest.mark.parametrize(
    "words", ["repeat on the other foot", "repeat to left", "and the same on the left", "repeat"]
)
def test_several_acts_come_again_on_the_foot_that_is_free(words: str) -> None:
    """What stands in the same line before "repeat" is danced again, on the other foot where that is free."""
    assert told(steps_of(TOUCHES)) == told(steps_of(f"1-4 Step R to side, touch L beside, {words}"))


def test_the_last_act_alone_comes_again_where_the_counts_say_so() -> None:
    """Three counts hold a heel and two hooks, four hold heel and hook twice."""
    assert ["heel", "hook", "hook"] == [
        s.kind for s in steps_of("1-3 R heel forward, hook R x2\n4 Step R")[:3]
    ]
    assert ["heel", "hook", "heel", "hook"] == [
        s.kind for s in steps_of("1-4 R heel forward, hook R x2\n5 Step R")[:4]
    ]


FIRST = (
    "Section 1\n1-2 Rock R forward, recover L\n3&4 R coaster step\n"
    "5-6 Step L forward, pivot 1/2 right\n7&8 Shuffle forward L, R, L\n"
)
SECOND = [
    "Section 2: Repeat section 1",
    "Section 2: Repeat counts 1-8",
    "Section 2\n1-8 Repeat section 1",
    "Section 2\nRepeat section 1",
    "Section 2\nRepeat counts 1-8",
    "1-8 Repeat the first section",
    "1-8 Repeat section one",
    "Repeat 1-8 (facing 6:00)",
    "Repeat 1-8 (to end facing 12:00)",
    "Repeat the first 8 counts",
    "Repeat the above 8 counts",
    "Repeat all of section 1",
    "[9-16]\nRepeat",
    "9-16 Repeat 1-8",
    "Section 2 (9-16)\nSame as section 1",
]


@pytest.mark.parametrize("words", SECOND)
def test_a_whole_section_is_danced_again(words: str) -> None:
    """The second section is the first once more, eight beats later."""
    steps = steps_of(f"{FIRST}\n{words}")
    half = len(steps) // 2
    assert [(s.at + 8, s.foot, s.kind, s.turn) for s in steps[:half]] == [
        (s.at, s.foot, s.kind, s.turn) for s in steps[half:]
    ]
    assert len(steps) == 2 * len(steps_of(FIRST))


def test_a_mirrored_turn_turns_the_other_way() -> None:
    """A quarter to the right is a quarter to the left on the other foot."""
    first, again = (
        "1-2 Step R to right side turning 1/4 right, touch L beside R",
        "3-4 Same on the other foot",
    )
    steps = steps_of(f"{first}\n{again}\n5-8 Rocking chair R")
    assert [Fraction(1, 4), 0, Fraction(-1, 4), 0] == [s.turn for s in steps[:4]]


LEFT_OPEN = {
    "a repeat alone after the first half": "1-4 Vine R, touch L\nRepeat 1-4 on the other foot",
    "a repeat of lines without counts": "Section 1\nVine R, touch L\nRepeat to the left",
    "a repeat under a range": "[1-8]\nVine R, touch L\nRepeat to the left",
    "steps before their counts go on": "Section 1\nVine R, touch L\n5-8 Vine L, touch R",
    "steps between the counts": "1-2 Step R side, cross L behind\nStep R side, touch L\n5-8 Vine L, touch R",
}


@pytest.mark.parametrize("case", LEFT_OPEN)
def test_a_line_without_a_count_takes_the_counts_left_open(case: str) -> None:
    """What stands before, between or after counted lines is danced where they leave room for it."""
    assert told(steps_of(VINES)) == told(steps_of(LEFT_OPEN[case]))


WHOLE_DANCE = [
    "Repeat",
    "REPEAT",
    "Repeat the dance and have fun",
    "Repeat to the end of the song",
    "Repeat!",
]


@pytest.mark.parametrize("words", WHOLE_DANCE)
def test_a_repeat_of_the_whole_dance_adds_nothing(words: str) -> None:
    """Common practice, no source: the last line of a sheet may say that the dance begins again."""
    assert told(steps_of(VINES)) == told(steps_of(f"{VINES}\n{words}"))


@pytest.mark.parametrize("words", ["The line that began in front ends behind, and the other way about."])
def test_a_sentence_about_something_else_repeats_nothing(words: str) -> None:
    """Words of a repeat far inside a sentence of other words bring no steps back."""
    assert told(steps_of(VINES)) == told(steps_of(f"{VINES}\n{words}"))


UNREADABLE = {
    "under a heading of its own": "Section 2\nAs before but with feeling",
    "after a gap in the counts": "Section 2\n1-4 Rocking chair R\n7-8 Flumbify the sprocket",
    "before the counts go on": "Section 2\n1-2 Rock R forward, recover L\n5-6 Flumbify\n7-8 Walk R, L",
    "at the head of an eight": "1-2 Flumbify the sprocket\n3-4 Walk R, L\n5-8 Rocking chair R",
}


@pytest.mark.parametrize("case", UNREADABLE)
def test_a_line_that_cannot_be_read_is_told(case: str) -> None:
    """No line that stands where steps stand is dropped in silence."""
    found = check_text(f"Tin Lantern\n\n{FIRST}\n{UNREADABLE[case]}\n", name="x").as_json()["findings"]
    assert "not-understood" in {finding["rule"] for finding in found}


UNCOUNTED = "Step R side, step L beside R, step R side, touch L"


@pytest.mark.parametrize("between", ["Enjoy the music\n", "Enjoy the music\nSection 1\n"])
def test_steps_before_the_first_count_are_told(between: str) -> None:
    """A line of steps above the counted ones is no header, and nobody knows when to dance it."""
    sheet = f"Tin Lantern\n\n{UNCOUNTED}\n{between}1-2 Step R side, touch L\n3-4 Step L side, touch R\n"
    found = check_text(sheet, name="x").as_json()["findings"]
    assert ["not-understood"] == [finding["rule"] for finding in found if finding["line"] == 3]


KICKED = "step R forward, kick L forward, step L back, touch R back"
KICKED_IN_PROSE = (
    "Now a Charleston. Step R forward (one), kick L forward (two), step L back (three) and touch R back "
    "(four). And do the Charleston once more (five, six, seven, eight)."
)
NAMED_AGAIN = [
    f"1-4 Charleston: {KICKED}\n5-8 Charleston again",
    f"1-4 Charleston ({KICKED})\n5-8 another Charleston",
    f"1-4 Charleston - {KICKED}\n5-8 Repeat Charleston",
    f"1-4 Charleston: {KICKED}\n5-8 Charleston",
    KICKED_IN_PROSE,
]


@pytest.mark.parametrize("body", NAMED_AGAIN)
def test_a_figure_named_again_is_danced_as_the_sheet_told_it(body: str) -> None:
    """Its name means the steps that this sheet gave it, whatever others mean by it."""
    assert told(steps_of(f"1-4 {KICKED}\n5-8 {KICKED}")) == told(steps_of(body))


def test_a_figure_told_under_more_counts_than_it_has_is_no_model_of_the_next() -> None:
    """Its name alone is read as the glossary has it, whatever the first one's counts."""
    read(f"Tin\n\n1-4& Charleston: {KICKED}\n5-6 Charleston\n")
    read(f"Tin\n\n1-8 Charleston: {KICKED}\n1-2 Charleston\n")


@pytest.mark.parametrize("words", ["Then to the left in the same way", "The same way to the left"])
def test_the_same_way_to_a_side_is_a_repeat(words: str) -> None:
    """It comes again on the other foot."""
    vine = "1-4 step R side, L behind, R side, touch L"
    assert told(steps_of(f"{vine}\n5-8 step L side, R behind, L side, touch R")) == told(
        steps_of(f"{vine}\n5-8 {words}")
    )


PARTS = """Tin Lantern
Phrased
Sequence: A B A B

PART A
A1: Vine
1-4 Vine R, touch L
PART B
B1: Rocks
1-4 Rock R forward, recover L, rock R back, recover L
B2: Walks
1-4 Walk R, L, R, L
B3: Rocks again
1-4 Repeat B1
"""


def test_a_section_may_be_called_by_its_part_and_number() -> None:
    """It is that section of the part, and one of another part is not taken for it."""
    first, again = (read(PARTS).dance.parts[1].sections[n].steps for n in (0, 2))
    assert [(s.foot, s.kind, s.place) for s in first] == [(s.foot, s.kind, s.place) for s in again]
    assert not check_text(PARTS.replace("Repeat B1", "Repeat A1"), name="sheet").sound


def test_a_name_that_begins_with_a_letter_is_not_a_section_of_that_part() -> None:
    """A section headed by “Back again” is none of part B, though it begins with the letter."""
    other = PARTS.replace("PART B", "Back again\n1-4 Repeat B1\nPART B", 1)
    assert not check_text(other, name="sheet").sound


def test_a_thing_named_once_more_is_what_stood_before() -> None:
    """A name that is no figure's is that of the counts before it."""
    body = "1-2 Step R out, step L out\n3-4 Step R in, step L in\n5-8 Do the V once more"
    assert ["1 R", "2 L", "3 R", "4 L", "5 R", "6 L", "7 R", "8 L"] == [
        f"{s.at} {s.foot}" for s in steps_of(body)
    ]
