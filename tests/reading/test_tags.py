"""Tags whose line tells where the room faces, and endings: neither is taken for steps of the dance.

The dance is that of the orders' tests: wall 2 of it ends facing 6:00 (the wall law, common practice).
"""

from __future__ import annotations

import pytest
from tests.reading.test_orders import BODY

from wallwise.desk.report import Report, check_text


def checked(words: str) -> Report:
    """The dance with `words` below its steps."""
    return check_text(f"Tin Lantern\n32 counts 4 walls\n\n{BODY}\n{words}\n", name="x")


FACING_TAGS = [
    "*** tag after wall 2 (on 6): R side touch, L side touch, 4 counts",
    "Tag after wall 2 (facing 6): rocking chair R",
    "Tag (end of wall 2, on 6): sway R, L, R, L",
    "Tag after wall 2, facing 6 - sway R, L, R, L",
    "Tag: after wall 2 (you're on 6 o'clock) sway R L R L",
    "Tag after wall 2 (6:00): walk R, L, R, L, 4 counts",
    "4 ct tag end of w2 (on 6) - R side, touch, L side, touch",
    "Tag after wall 2 (back wall): rocking chair R",
]


@pytest.mark.parametrize("words", FACING_TAGS)
def test_an_hour_in_a_tag_s_line_is_no_count(words: str) -> None:
    """The tag has its four counts, and the room faces as told."""
    report = checked(words)
    (tag,) = report.as_json()["tags"]
    assert (2, 4, "6:00") == (tag["after_wall"], tag["counts"], tag["facing"])
    assert report.sound


def test_another_hour_in_a_tag_s_line_is_told() -> None:
    """After wall 2 the room faces 6:00."""
    found = checked("*** tag after wall 2 (on 12): R side touch, L side touch, 4 counts").findings
    assert ["restart-facing"] == [finding.rule for finding in found if finding.loud]


LED_IN = [
    "TAG end of wall 2 (facing 6) 4 cts: sway R L R L",
    "Tag (4 cts, end of w2): sway R L R L",
    "4-count tag after wall 2 - sway R L R L",
    "Tag end of wall 2 (on 6) 4 beats - sway R L R L",
    "Tag after wall 2 (back wall), 4 cts - rocking chair R",
    "tag, 4 cts: end of wall 2, on 6 o'c - rock R fwd rec, rock R back rec",
    "tag, 4 cts: end of wall 2, always on the back wall - rock R fwd rec, rock R back rec",
    "tag, 4 cts: end of wall 2, once on 6 o'c: rock R fwd rec, rock R back rec",
    "Tag (end of wall 2) counts 1-4: sway R, L, R, L",
]


@pytest.mark.parametrize("words", LED_IN)
def test_what_leads_in_to_a_tag_s_steps_is_no_step(words: str) -> None:
    """Its length and its facing are told before the steps, which are read from the first of their own."""
    report = checked(words)
    (tag,) = report.as_json()["tags"]
    assert (2, 4) == (tag["after_wall"], tag["counts"])
    assert report.sound


def test_a_tag_for_two_walls_may_say_where_both_of_them_face() -> None:
    """The facing belongs to the walls, not to the steps behind the dash."""
    words = "tag, 4 cts: end of wall 2 and end of wall 6, both on 6 o'c - R fwd rock rec, R back rock rec"
    report = checked(words)
    assert [(2, 4), (6, 4)] == [(tag["after_wall"], tag["counts"]) for tag in report.as_json()["tags"]]
    assert report.sound


ENDINGS = [
    "Ending: dance to count 12 of wall 9 then 1/2 turn to face front",
    "ENDING: On wall 9 dance up to count 12, then step R forward, pivot 1/2 left to face 12:00",
    "To end: dance the first 12 counts of wall 9 and turn 1/2 L to the front",
    "Finish: after count 12 of wall 9 make a 1/2 turn to face front and pose",
    "For the big ending, dance 12 counts of wall 9 and turn 1/2 left stepping L forward",
    "The dance ends on wall 9 after 12 counts: stomp R and hold",
    "Last wall: dance 12 counts then turn 1/2 left to face front",
    "On the last wall, change counts 15-16 to a 1/2 turn to the front",
    "Wall 9 is the last wall: dance 12 counts, step R forward, pivot 1/2 left to the front.",
    "End of dance: cross R over L, unwind 1/2 left to face the front",
    "Ending: 1-2 step R forward, pivot 1/2 left, 3 stomp R",
]


@pytest.mark.parametrize("words", ENDINGS)
def test_an_ending_is_no_part_of_the_dance(words: str) -> None:
    """Its steps are danced once, as the song closes: the dance is the same without them."""
    plain, ended = checked(""), checked(words)
    assert plain.dance.parts == ended.dance.parts
    assert ([], []) == (list(ended.dance.restarts), list(ended.dance.tags))
    assert ended.sound


def test_the_steps_of_an_ending_are_kept() -> None:
    """Under their own name, whether marked or not."""
    for words in ENDINGS[-2:]:
        ending = checked(words).dance.ending
        assert ending is not None
        assert ending.steps


def test_a_tag_said_to_last_no_counts_is_still_danced() -> None:
    """A slip in a header or a heading stops nothing."""
    text = "Any Dance\n8 counts\n\n1-8 Vine R, touch L, vine L, touch R\n\n"
    text += "Tag (0 counts) after wall 2\nSway R, sway L\n"
    assert [2] == [tag.after_wall for tag in check_text(text, name="x").dance.tags]
