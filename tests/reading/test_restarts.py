"""Restarts by their short word, with changed steps, in lists of walls, and beside the count they are at.

What the steps are is worked out by hand from the words: common practice, no source.
"""

from __future__ import annotations

import pytest
from tests.reading.test_orders import BODY, THIRD, Marks, orders

from wallwise.desk.report import Report, check_text


def checked(words: str, *, body: str = BODY) -> Report:
    """The dance of the orders' tests with `words` below its steps."""
    return check_text(f"Tin Lantern\n32 counts 4 walls\n\n{body}\n{words}\n", name="x")


def restarts(report: Report) -> Marks:
    """Wall, counts and facing of each restart."""
    return [(row["wall"], row["after_counts"], row["facing"]) for row in report.as_json()["restarts"]]


def told(report: Report) -> list[str]:
    """The rules with something to settle."""
    return [finding.rule for finding in report.findings if finding.loud]


SHORT = [
    "RS w3 after 16",
    "RST wall 3 after count 16",
    "w3: RS after 16",
    "1 RS: w3, 16 counts",
    "Rstrt on 3rd wall after 16 cts",
    "RS on wall 3 after 16, you're on 12",
]


@pytest.mark.parametrize("words", SHORT)
def test_a_restart_has_a_short_word(words: str) -> None:
    """Choreographers write RS, RST or rstrt."""
    assert (THIRD, []) == orders(words)


HERE = [
    "RS w3 here",
    "** RST wall 3 here, you're on 12",
    "RS here w3 (on 12)",
    "w3: RS here",
    "Rst here on 3rd wall, facing 12",
    "*RS here during wall 3*",
    "<- RS w3",
]


@pytest.mark.parametrize("words", HERE)
def test_a_short_restart_is_where_it_stands(words: str) -> None:
    """On a line of its own, and behind the steps of a line."""
    below = checked("", body=BODY.replace("[17-24]", f"{words}\n[17-24]"))
    beside = checked("", body=BODY.replace("\n\n[17-24]", f" {words}\n\n[17-24]"))
    assert (THIRD, THIRD) == (restarts(below), restarts(beside))
    assert below.sound
    assert beside.sound


def test_here_is_the_end_of_a_section_without_counts() -> None:
    """Lines of a list that count nothing are eights all the same."""
    lines = "1) Walk R, L, shuffle forward RLR, rock L fwd, recover R, L coaster\n"
    text = f"Tin Lantern\n16 counts 1 wall\n\n{lines}RS w2 here\n{lines.replace('1)', '2)')}"
    assert [(2, 8, "12:00")] == restarts(check_text(text, name="x"))


def test_here_behind_a_step_that_runs_over_is_the_end_of_the_section() -> None:
    """The 1 of an 8&1 is the dance's own first step (common practice, no source)."""
    lines = (
        "S1\n1 Step R side\n2-3 Rock L back, recover R\n4&5 Chasse L, R, L\n6-7 Rock R back, recover L\n"
        "8&1 Chasse R, L, R\nRestart here on wall 2\n"
        "S2\n2-3 Rock L back, recover R\n4&5 Chasse L, R, L\n6-7 Rock R back, recover L\n"
        "8& Step R in place, L in place\n"
    )
    report = check_text(f"Tin Lantern\n16 counts 1 wall\n\n{lines}", name="x")
    assert [(2, 8, "12:00")] == restarts(report)
    assert report.sound


HALF_BEATS = [
    "On wall 3 dance counts 1 to 16& and begin again",
    "On wall 3 dance 1-16& then restart",
    "Wall 3: only beats 1 to 16, then restart",
    "During wall 3 dance as far as count 16& and start again",
    "Restart on wall 3 after 16&",
]


@pytest.mark.parametrize("words", HALF_BEATS)
def test_a_restart_after_a_range_of_counts(words: str) -> None:
    """The last count of the range is where the wall is cut; an “&” behind it belongs to it."""
    assert (THIRD, []) == orders(words)


CHANGED = {
    "RESTARTS\nWall 4 starts at 9:00: dance 24 counts but replace counts 7&8 of S3 with: 7-8 step L back, "
    "touch R beside L. Restart facing 3:00\n*Wall 5 starts at 3:00: dance 24 counts and restart": [
        "23 L",
        "24 R",
    ],
    "STEP CHANGE: Wall 4 starts facing 9:00. Dance 24 counts, but change count 8 of S3 to: 8 - touch R "
    "beside L. Restart facing 3:00.": ["24 R"],
    "Wall 4: replace counts 7-8 of S3 with: step back (L), touch (R) next to (L). Restart after 24 counts.": [
        "23 L",
        "24 R",
    ],
    "On wall 4 dance 24, touch R beside L on count 8 instead of stepping, then restart": ["24 R"],
    "On wall 4 dance 23 counts, touch R beside L on count 8 instead of stepping, then restart": ["24 R"],
    "Restart on wall 4 after 24 counts: count 8 becomes a touch R beside L": ["24 R"],
    "Restart on wall 4 after 24 counts - instead of 7&8 do a L shuffle back and restart": [
        "23 L",
        "47/2 R",
        "24 L",
    ],
    "Restart wall 4 after 24 counts. Step change: 7-8 step L back, touch R beside L.": ["23 L", "24 R"],
}


@pytest.mark.parametrize("words", CHANGED)
def test_a_restart_changes_the_steps_before_it(words: str) -> None:
    """The steps told stand on the counts told, wherever in the text the change is told."""
    restart = next(r for r in checked(words).dance.restarts if r.wall == 4)
    assert 24 == restart.after_counts
    assert CHANGED[words] == [f"{step.at} {step.foot.value}" for step in restart.change]


UNKNOWN_CHANGES = [
    "Restart on wall 3 after 16 counts with a step change",
    "Wall 3: dance 16 counts, replace the last step with a flumble and restart",
    "Restart on wall 3 after 16 counts (change of steps, watch the video)",
]


@pytest.mark.parametrize("words", UNKNOWN_CHANGES)
def test_a_step_change_that_is_not_understood_is_told(words: str) -> None:
    """The restart is kept, and what it changes has to be settled."""
    report = checked(words)
    assert THIRD == restarts(report)
    assert ["restart-unclear"] == told(report)


LISTS = {
    "Wall 1: 32, Wall 2: 32, Wall 3: 16 restart, Wall 4: 32": THIRD,
    "Wall pattern: walls 1 and 2 all 32 counts, wall 3 only beats 1 to 16 then restart facing the front "
    "wall, all other walls 32 counts.": THIRD,
    "Walls 1 & 2 full, wall 3 16 counts then restart, walls 4 to 6 full": THIRD,
    "w1 32, w2 32, w3 16 RS, w4 32, w5 24 RS": [(3, 16, "12:00"), (5, 24, "9:00")],
    "Order of walls: wall 1 (32), wall 2 (32), wall 3 (16), wall 4 (32)": THIRD,
    "Wall 1 = 32\nWall 2 = 32\nWall 3 = 16 and restart\nWall 4 = 32": THIRD,
    "Restarts: wall 2: 16, wall 5: 24": [(2, 16, "9:00"), (5, 24, "9:00")],
    "Walls 1, 2 and 4: 32 counts. Wall 3: 16 counts, restart.": THIRD,
}


@pytest.mark.parametrize("words", LISTS)
def test_a_list_of_walls_orders_a_restart_of_each_short_one(words: str) -> None:
    """A wall that is danced whole is ordered nothing."""
    report = checked(words)
    assert LISTS[words] == restarts(report)
    assert report.sound


UNCLEAR = [
    "Dance two full walls, then 16 counts and restart",
    "32, 32, 16 (restart), 32, 32",
    "RS w3",
    "Wall 1: 32, wall 2: 32, wall 3: restart, wall 4: 32",
    "Wall 1: 32, wall 2: 32 + tag, wall 3: 32",
    "Tag after wall 4",
    "2 restarts: wall 3 after 16",
    "There are two restarts, the first is on wall 3 after 16 counts and the second when the singer says so",
    "Restart on wall 3 after 16 counts\nSecond restart: after count 24",
    "2 tags, after wall 2\nTag\n1-4 rocking chair R",
]


@pytest.mark.parametrize("words", UNCLEAR)
def test_an_order_without_its_wall_or_count_is_told(words: str) -> None:
    """What no words tell is not made up, and not kept quiet."""
    assert ["restart-unclear"] == told(checked(words))


@pytest.mark.parametrize(
    "head", ["Restart on wall 3", "1 restart: wall 3", "Restart on wall 3 after 16 counts"]
)
def test_a_place_without_a_wall_is_that_of_the_wall_without_a_place(head: str) -> None:
    """The header names the wall, and the star between the steps the count."""
    body = BODY.replace("[17-24]", "*Restart here\n[17-24]")
    report = check_text(f"Tin Lantern\n{head}\n32 counts 4 walls\n\n{body}\n", name="x")
    assert THIRD == restarts(report)
    assert report.sound


def test_a_place_without_a_wall_that_is_no_wall_s_is_told() -> None:
    """The restart of wall 3 is elsewhere."""
    body = BODY.replace("[17-24]", "*Restart here\n[17-24]")
    text = f"Tin Lantern\nRestart on wall 3 after 24 counts\n32 counts 4 walls\n\n{body}\n"
    assert ["restart-unclear"] == told(check_text(text, name="x"))
