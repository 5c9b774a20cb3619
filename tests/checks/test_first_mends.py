"""Which mend comes first, kind of slip by kind of slip."""

from __future__ import annotations

import re

import pytest

from wallwise.checks import check
from wallwise.checks.likely import candidates
from wallwise.dance.finding import Finding
from wallwise.reading import read
from wallwise.reading.forecast import Forecast

SOUND = """HARBOUR TRAM
32 counts, 4 walls

S1: WALK, WALK, SHUFFLE, ROCK, RECOVER, COASTER STEP
1-2  Walk forward R, walk forward L
3&4  Shuffle forward right, left, right
5-6  Rock L forward, recover onto R
7&8  Step L back, step R beside L, step L forward

S2: SIDE STEPS, VINE LEFT
1-4  Step R to right side, step L behind R, step R to right side, touch L beside R
5-8  Step L to left side, step R behind L, turn 1/4 left stepping L forward (9:00), brush R forward

S3: JAZZ BOX, ROCK FORWARD, ROCK BACK
1-4  Cross R over L, step L back, step R to right side, step L forward
5-6  Rock R forward, recover onto L
7-8  Rock R back, recover onto L

S4: OUT, OUT, IN, IN, SIDE ROCK, STEP
1-4  Step R forward and out, step L forward and out, step R back to centre, step L beside R
5-6  Rock R to right side, recover onto L
7-8  Step R beside L, step L in place
"""

SLIPS = {
    "the feet of a whole line": (
        "5-6  Rock R to right side, recover onto L",
        "5-6  Rock L to right side, recover onto R",
    ),
    "one foot of several in a row": ("right, left, right", "right, right, right"),
    "a rare amount of turn": ("turn 1/4 left", "turn 3/4 left"),
    "a touch for a step": ("7-8  Step R beside L, step L", "7-8  Step R beside L, touch L"),
    "a facing": ("(9:00)", "(6:00)"),
    "the counts declared": ("32 counts", "40 counts"),
    "the walls declared": ("4 walls", "2 walls"),
    "a line written twice": (
        "5-6  Rock R forward",
        "5-6  Rock R forward, recover onto L\n5-6  Rock R forward",
    ),
}


def loud(text: str) -> list[Finding]:
    return [finding for finding in check(read(text)) if finding.loud]


def first_mended(text: str) -> str:
    """The sheet after the first mend of the first finding that has one."""
    return next(mend for finding in loud(text) for mend in finding.mends).apply(text)


def test_the_sheet_of_these_tests_is_sound() -> None:
    """Nothing has to be settled in it."""
    assert loud(SOUND) == []


@pytest.mark.parametrize("slip", SLIPS)
def test_the_first_mend_undoes_the_slip(slip: str) -> None:
    """What stands there then is what stood there before."""
    right, wrong = SLIPS[slip]
    assert SOUND.count(right) == 1
    assert first_mended(SOUND.replace(right, wrong)) == SOUND


def test_the_first_line_of_a_section_is_added_in_the_words_of_its_heading() -> None:
    """Figures that no line dances are the likeliest ones of those the heading names there."""
    text = SOUND.replace("1-2  Walk forward R, walk forward L\n", "")
    assert "1-2  WALK, WALK\n3&4" in first_mended(text)


def test_a_paragraph_written_twice_is_left_out_once() -> None:
    """Steps without count marks are as easily copied twice as those with them."""
    lines = ["MILL LANE", "32 counts, 4 walls", ""]
    lines += [
        "1) R rocking chair, step R 1/2 pivot L, stomp R, stomp L",
        "2) vine R with touch, vine L with touch",
    ]
    lines += [
        "3) shuffle fwd RLR, rock L fwd rec, L coaster, walk R L",
        "4) jazz box 1/4 R, R heel, close, L heel, close",
    ]
    text = "\n".join(lines) + "\n"
    assert loud(text) == []
    twice = text.replace(lines[4], f"{lines[4]}\n{lines[4]}")
    assert first_mended(twice) == text


def test_a_hold_is_made_a_step_where_the_weight_is_missing() -> None:
    """The dance then frees the foot it begins with, as it does with a touch for the step before."""
    text = SOUND.replace("step L in place", "hold")
    mended = {mend.apply(text) for finding in loud(text) for mend in finding.mends}
    assert SOUND.replace("step L in place", "step L beside R") in mended
    assert SOUND.replace("Step R beside L, step L in place", "Touch R beside L, hold") in mended


def test_both_ways_of_a_turn_are_offered_where_none_is_told() -> None:
    """Right and left come before every other mend."""
    text = SOUND.replace("turn 1/4 left stepping L forward (9:00)", "turn 1/4 stepping L forward")
    text = text.replace(", VINE LEFT", "").replace(", 4 walls", "")
    found = loud(text)
    assert [finding.rule for finding in found] == ["turn-direction-missing"]
    assert {mend.replace for mend in found[0].mends[:2]} == {" right", " left"}


def test_counts_are_offered_for_a_restart_that_tells_none() -> None:
    """Every one of them leaves nothing to settle."""
    text = f"{SOUND}\nRestart on wall 3, facing 3:00\n"
    (found,) = loud(text)
    assert found.rule == "restart-unclear"
    assert "16 counts" in {mend.replace.removeprefix(" after ") for mend in found.mends}
    assert all(loud(mend.apply(text)) == [] for mend in found.mends)


def test_of_two_counts_told_of_a_restart_one_is_made_the_other() -> None:
    """The header and the line the restart stands behind then agree."""
    text = SOUND.replace("4 walls", "4 walls\nRestart on wall 3 after 20 counts")
    text = text.replace("7-8  Rock R back", "(restart here on wall 3)\n7-8  Rock R back")
    assert "after 22 counts" in first_mended(text)


def test_the_facing_a_wall_is_said_to_start_with_is_mended() -> None:
    """It becomes the one that the room faces then."""
    text = f"{SOUND}\nRestart on wall 3, which starts facing 9:00, after 16 counts.\n"
    assert "starts facing 6:00" in first_mended(text)


PHRASED = """PEBBLE TELEGRAM
Phrased. Part A 8 counts, Part B 8 counts
Sequence: A, B, Tag, A, B

PART A (8 counts)
1-4  Step R to right side, touch L beside R, step L to left side, touch R beside L
5-8  Step R forward, touch L beside R, step L back, touch R beside L

PART B (8 counts)
1-4  Step R to right side, step L behind R, step R to right side, touch L beside R
5-8  Step L to left side, step R behind L, step L to left side, touch R beside L

TAG (4 counts): SIDE TOUCHES
1-2  Step R to right side, touch L beside R
3-4  Step L to left side, touch R beside L
"""


@pytest.mark.parametrize("heading", ["PART A (8 counts)", "TAG (4 counts)"])
def test_the_counts_a_heading_gives_its_part_are_mended(heading: str) -> None:
    """What a heading says of its part is a claim of its own beside the header's."""
    assert loud(PHRASED) == []
    text = PHRASED.replace(heading, re.sub(r"\d", "6", heading))
    assert ["total-counts"] == [finding.rule for finding in loud(text)]
    assert first_mended(text) == PHRASED


def test_a_line_that_a_tag_has_lost_is_missed() -> None:
    """Its heading counts more than its lines dance."""
    text = PHRASED.replace("3-4  Step L to left side, touch R beside L\n", "")
    assert "total-counts" in {finding.rule for finding in loud(text)}


def test_a_forecast_is_what_the_reading_costs() -> None:
    """For other words in one passage, as if the sheet had been read with them."""
    part = read(SOUND).main
    changed = read(SOUND.replace("Rock L forward, recover onto R", "Rock R forward, recover onto R")).main
    words = changed.passages[2].group.text
    assert Forecast(part).cost(2, words) == pytest.approx(changed.solution.cost)
    assert Forecast(part).cost(2, part.passages[2].group.text) == pytest.approx(part.solution.cost)


def test_the_likeliest_edits_are_tried_first() -> None:
    """What is foretold to leave the contradiction comes after what is not."""
    reading = read(SOUND.replace("right, left, right", "right, right, right"))
    found = candidates(reading, loud(reading.text), until_sec=float("inf"))
    assert [c.foretold for c in found] == sorted(c.foretold for c in found)
    best = next(c for c in found if c.cost is not None)
    assert best.edit.mend.apply(reading.text) == SOUND
