"""Restarts, tags and sequences, however they are worded and wherever they stand.

The facings follow from the wall law (common practice, no source): the dance below turns three
quarters left, so walls 1 to 5 start facing 12:00, 3:00, 6:00, 9:00 and 12:00, and its first sixteen
counts turn half a turn.
"""

from __future__ import annotations

from typing import TypeAlias

import pytest

from wallwise.desk.report import check_text

Marks: TypeAlias = list[tuple[int, int, str]]

SECTION = "1-2 Walk R, L\n3&4 Shuffle forward R, L, R\n5-6 Rock L forward, recover R\n7&8 L coaster step\n"
TURNING = (
    "1-2 Step R side, touch L\n3-4 Step L side, touch R\n5-6 Step R forward, pivot {} left\n7-8 Walk R, L\n"
)
BODY = f"[1-8]\n{SECTION}[9-16]\n{TURNING.format('1/2')}\n[17-24]\n{SECTION}[25-32]\n{TURNING.format('1/4')}"
CHAIR = "1-4 Rock R forward, recover L, rock R back, recover L"


def orders(words: str, *, before: str = "") -> tuple[Marks, Marks]:
    """Restarts and tags of the dance with `words` after its steps: wall, counts, facing."""
    read = check_text(f"Tin Lantern\n{before}\n32 counts 4 walls\n\n{BODY}\n{words}\n", name="x").as_json()
    return (
        [(row["wall"], row["after_counts"], row["facing"]) for row in read["restarts"]],
        [(row["after_wall"], row["counts"], row["facing"]) for row in read["tags"]],
    )


THIRD: Marks = [(3, 16, "12:00")]
RESTARTS: dict[str, Marks] = {
    "Restart on wall 3 after 16 counts": THIRD,
    "Restart after 16 counts on wall 3.": THIRD,
    "Restart: wall 3, after count 16": THIRD,
    "RESTART: on wall 3 dance 16 counts then restart facing 12:00": THIRD,
    "There is one restart on the 3rd wall after 16 counts": THIRD,
    "On wall 3, dance up to count 16 and start again.": THIRD,
    "On the third wall dance only the first 16 counts, then begin again from the top": THIRD,
    "Restart wall 3 after section 2": THIRD,
    "During wall 3, after the second eight, restart": THIRD,
    "Restart halfway through wall 3": THIRD,
    "w3 restart after 16": THIRD,
    "One restart! Wall three, sixteen counts in, facing the front wall": THIRD,
    "Two restarts, both after count 24: wall 2 and wall 5": [(2, 24, "9:00"), (5, 24, "9:00")],
    "Restarts: wall 2 (after 16) and wall 5 (after 24)": [(2, 16, "9:00"), (5, 24, "9:00")],
    "Restarts on walls 2 & 5 after 16 counts": [(2, 16, "9:00"), (5, 16, "9:00")],
    "Restart after 16 on walls 2, 4 and 6": [(2, 16, "9:00"), (4, 16, "6:00"), (6, 16, "3:00")],
    "Weight on L at the start. Restart on wall 3 after 16 counts": THIRD,
    "On walls 2 & 5 dance up to count 16 then restart facing 9:00": [(2, 16, "9:00"), (5, 16, "9:00")],
    "Restart on walls 2 (after 16 counts) and 5 (after 24 counts)": [(2, 16, "9:00"), (5, 24, "9:00")],
    "Restart after 16 counts: 9 o'c on w2 and 3 o'c on w3": [(2, 16, "9:00"), (3, 16, "3:00")],
    "Two restarts. The first is on wall 2 after 16 counts, the second on wall 5 after 24 counts.": [
        (2, 16, "9:00"),
        (5, 24, "9:00"),
    ],
    "1st restart: wall 2, after 16 counts. 2nd restart: wall 5, after 24 counts.": [
        (2, 16, "9:00"),
        (5, 24, "9:00"),
    ],
    "You will restart twice: walls 2 and 5, both times after count 24": [(2, 24, "9:00"), (5, 24, "9:00")],
    "Wall 3 starts facing 6.00. Restart after 16 counts facing 12.00": THIRD,
    "RESTART – Wall 3 (6:00) after 16 counts (12:00)": THIRD,
    "There's a restart during the third wall. You dance 16 counts and start over.": THIRD,
    "In wall 3 after 16 counts there is a restart": THIRD,
    "On the 3rd repetition restart after the second section": THIRD,
    "Restart: W3 after S2": THIRD,
    "Restart w3 @ 16": THIRD,
    "Restart at count 16 on wall 3": THIRD,
    "Restart in wall 3 following count 16": THIRD,
    "On your third wall stop after 16 counts and go back to the beginning": THIRD,
    "Dance 16 counts of wall 3 and begin wall 4": THIRD,
    "After 16 counts of wall 3, start the next wall": THIRD,
    "Wall 3, dance the first half only, then it's wall 4": THIRD,
    "Wall 3 is short: only 16 counts": THIRD,
    "Short wall: wall 3 (16 counts)": THIRD,
    "Cut wall 3 after 16 counts": THIRD,
    "Walls 2 and 5: only dance the first 24 counts": [(2, 24, "9:00"), (5, 24, "9:00")],
    "The third time through, leave out the last sixteen and start again": THIRD,
    "The fourth time through, leave out the last eight and start again": [(4, 24, "3:00")],
    "Drop counts 25-32 on wall 3 and start again": [(3, 24, "12:00")],
    "On wall 3 leave off the last two sections": THIRD,
    "On wall 3 leave out sections 3 and 4": THIRD,
    "On wall 3, skip the last 16 counts": THIRD,
    "Leave the last 16 counts off wall 3": THIRD,
    "Miss the last two sections on wall 3": THIRD,
    "Wall 3: stop at count 16. Restart.": THIRD,
    "Wall 3 - after count 16 - go straight back to the beginning": THIRD,
    "At count 16 of wall 3, restart from count 1": THIRD,
    "Restart on the third wall after the first two sets of eight": THIRD,
    "On wall 3 (which starts facing 6:00) dance 16 counts and restart": THIRD,
    "Walls 3 and 5 are short walls: restart after 16 counts": [(3, 16, "12:00"), (5, 16, "9:00")],
    "There is a restart after section 2 on wall 3 and another after section 3 on wall 5": [
        (3, 16, "12:00"),
        (5, 24, "9:00"),
    ],
    "No restarts, no tags": [],
    "Wall 2 starts facing 3.00": [],
    "Start again facing 3:00": [],
    "On wall 4 the music slows; keep dancing at the same tempo": [],
    "The music ends on wall 9; dance only 16 counts and strike a pose": [],
    "Restart: none": [],
    "Start again and smile!": [],
    "Begin again.": [],
}


@pytest.mark.parametrize("words", RESTARTS)
def test_a_restart_is_read_after_the_steps(words: str) -> None:
    """Wall, counts and where the room then faces, whatever the sentence."""
    assert (RESTARTS[words], []) == orders(words)


@pytest.mark.parametrize("words", RESTARTS)
def test_a_restart_is_read_before_the_steps(words: str) -> None:
    """The same sentence in the header orders the same."""
    assert (RESTARTS[words], []) == orders("", before=words)


def test_a_restart_told_beside_its_count_is_there() -> None:
    """The count meant by “here” is the one that the words stand beside."""
    here = BODY.replace("[17-24]", "Restart here on wall 3 (12:00)\n[17-24]")
    read = check_text(f"Tin Lantern\n32 counts 4 walls\n\n{here}", name="x").as_json()
    assert [(3, 16, "12:00")] == [(r["wall"], r["after_counts"], r["facing"]) for r in read["restarts"]]


def test_an_order_told_twice_is_one() -> None:
    """Header and footnote tell the same restart; the dance has one."""
    words = "Restart on wall 3 after 16 counts"
    assert (THIRD, []) == orders(words, before=words)


TAGS: dict[str, Marks] = {
    f"Tag: after wall 2 (4 counts)\n{CHAIR}": [(2, 4, "6:00")],
    f"TAG at the end of wall 2\n{CHAIR}": [(2, 4, "6:00")],
    f"4 count tag at the end of wall 2, facing 6:00\n{CHAIR}": [(2, 4, "6:00")],
    "Tag (after wall 3): sway R, L, R, L": [(3, 4, "9:00")],
    f"Tag: 4 counts after walls 2 and 4\n{CHAIR}": [(2, 4, "6:00"), (4, 4, "12:00")],
    f"Bridge: after wall 1\n{CHAIR}": [(1, 4, "3:00")],
    f"Bridge: during wall 4, after 16 counts, dance these 4 counts then carry on\n{CHAIR}": [(4, 4, "3:00")],
    "At the end of wall 2 add: 1-4 Rocking chair R": [(2, 4, "6:00")],
    "4 count tag after walls 2 and 4: rocking chair R (1-4)": [(2, 4, "6:00"), (4, 4, "12:00")],
    f"After wall 3, dance the following 4 counts:\n{CHAIR}": [(3, 4, "9:00")],
    f"Add these 4 counts at the end of walls 2 & 4:\n{CHAIR}": [(2, 4, "6:00"), (4, 4, "12:00")],
    f"Once you have danced wall 2, add:\n{CHAIR}": [(2, 4, "6:00")],
    f"Do this tag at the end of wall 2:\n{CHAIR}": [(2, 4, "6:00")],
    "After wall 2 dance these four counts: rocking chair R": [(2, 4, "6:00")],
    "At the end of the second wall, add a rocking chair": [(2, 4, "6:00")],
    "At the end of wall 2: rocking chair R, then start again": [(2, 4, "6:00")],
    "At the end of wall 2, hold for 4 counts then begin wall 3": [(2, 4, "6:00")],
    "Between walls 2 and 3 there is a 4 count bridge: sway R, L, R, L": [(2, 4, "6:00")],
    "Before wall 3 there is a 4 count tag: sway R, L, R, L": [(2, 4, "6:00")],
    "TAG: end of walls 1 and 3: sway R, L, R, L": [(1, 4, "3:00"), (3, 4, "9:00")],
    "Tag - end of wall 2 - sway R, sway L, sway R, sway L": [(2, 4, "6:00")],
    "Tag after wall 2: 1-4 rocking chair R, 5, 6, 7, 8 - sway R, L, R, L": [(2, 8, "6:00")],
    "Tag 1: after wall 1: sway R, L, R, L\nTag 2: after wall 3: rocking chair R, sway R, L, R, L": [
        (1, 4, "3:00"),
        (3, 8, "9:00"),
    ],
    "When you reach the end of wall 2, sway R, L, R, L before starting wall 3": [(2, 4, "6:00")],
    "End of wall 2: 4-count bridge (sway R, L, R, L)": [(2, 4, "6:00")],
    "4 extra counts at the end of wall 2: sway R, L, R, L": [(2, 4, "6:00")],
    "Wall 2 ends with a 4 count tag: sway R, L, R, L": [(2, 4, "6:00")],
    "After the second wall there's a four count tag. Sway R, L, R, L.": [(2, 4, "6:00")],
    f"TAG\n{CHAIR}\nDance the tag after walls 2 and 4": [(2, 4, "6:00"), (4, 4, "12:00")],
    "No tags, no restarts": [],
    "After wall 6 the singer stops for 8 counts, keep dancing": [],
    "Tags: none": [],
}


@pytest.mark.parametrize("words", TAGS)
def test_a_tag_is_read_with_its_steps(words: str) -> None:
    """After which wall it comes, how long it is and where the room faces when it begins."""
    assert ([], TAGS[words]) == orders(words)


ENDINGS = [
    "Ending: wall 8 starts facing 9:00. Dance 12 counts, then stomp R forward",
    "Ending: on wall 8 dance 16 counts then step R forward",
    "Big finish on wall 9: after count 16, stomp R",
    "The dance ends on wall 8 after 16 counts",
    "For a nice finish on wall 8, only dance 16 counts",
]


@pytest.mark.parametrize("words", ENDINGS)
def test_an_ending_orders_nothing(words: str) -> None:
    """What closes the song is neither a restart nor a tag."""
    assert ([], []) == orders(words)


STEPS_OF_TAGS = [
    "At the end of wall 2 add: 1-4 Rocking chair R",
    "4 count tag after wall 2: rocking chair R (1-4)",
    f"After wall 2, dance the following 4 counts:\n{CHAIR}",
]


@pytest.mark.parametrize("words", STEPS_OF_TAGS)
def test_a_tag_told_in_a_sentence_has_its_steps(words: str) -> None:
    """The steps are the tag's and not the dance's, and nothing is left to settle."""
    text = f"Tin Lantern\n32 counts 4 walls\n\n{BODY}\n{words}\n"
    report = check_text(text, name="x")
    tag = report.dance.tags[0].part
    assert report.dance.counts == 32
    assert tag.counts == 4
    assert ["R", "L", "R", "L"] == [step.foot.value for step in tag.steps]
    assert report.sound


PHRASED = f"Part A\n{SECTION}\nPart B\n{TURNING.format('1/2')}\nTag\n{CHAIR}\n"
SEQUENCES = {
    "Sequence: A, B, A, Tag, B": ("A", "B", "A", "Tag", "B"),
    "Sequence: A B A Tag B": ("A", "B", "A", "Tag", "B"),
    "Sequence of the dance: A - B - A - Tag - B": ("A", "B", "A", "Tag", "B"),
    "SEQUENCE: AAB TAG AB": ("A", "A", "B", "Tag", "A", "B"),
    "Order: A, A, B, Tag, A, B": ("A", "A", "B", "Tag", "A", "B"),
    "Phrasing = A/B/A/TAG/B": ("A", "B", "A", "Tag", "B"),
    "Sequence: A, B, A x2, B": ("A", "B", "A", "A", "B"),
    "Sequence: A, A4 x2, B": ("A", "A(4)", "A(4)", "B"),
    "Sequence: AB x2, Tag": ("A", "B", "A", "B", "Tag"),
    "Sequence: A, B, Tag, A(4), B": ("A", "B", "Tag", "A(4)", "B"),
    "Sequence: A, B, Tag, A4, B": ("A", "B", "Tag", "A(4)", "B"),
    "A, B, A, Tag, B": ("A", "B", "A", "Tag", "B"),
}


@pytest.mark.parametrize("words", SEQUENCES)
def test_a_sequence_is_the_order_of_the_parts(words: str) -> None:
    """Every part in its turn, cut short where that is told."""
    for text in (
        f"Tin Lantern\nPhrased\n{words}\n\n{PHRASED}",
        f"Tin Lantern\nPhrased\n\n{PHRASED}\n{words}\n",
    ):
        assert list(SEQUENCES[words]) == check_text(text, name="x").as_json()["sequence"]


LOUD = {
    "a restart without a wall": "Restart after 16 counts",
    "a restart without a count": "Restart on wall 3",
    "a restart that faces elsewhere": "Restart on wall 3 after 16 counts facing 6:00",
    "a wall that starts elsewhere": "Wall 3 starts facing 9:00",
    "a restart facing a wall told in words": "Restart on wall 3 after 16 counts facing the right-hand wall",
    "a wall that is told of in other words": "Do the pivot once more at the end of wall 2",
    "a tag of steps told elsewhere": "Before you start wall 3 add the rocking chair",
    "a section danced twice": "On wall 2 dance section 1 twice",
    "a wall that is over early": "Wall 2 finishes after section 1. Wall 3 is danced in full",
    "an extra figure": "Wall 2 finishes with an extra rocking chair",
    "steps that a wall has more": "Wall 2 has two extra stomps at the end",
    "steps that several walls end with": "Walls 2 and 4 finish with four stamps",
    "counts left out inside a wall": "On wall 3 leave out counts 9-16",
    "a restart on the wrong foot": "Restart on wall 3 after 4 counts",
}


def test_of_two_facings_one_may_be_where_the_wall_starts() -> None:
    """A restart that tells both is doubted only where neither is the one that the room faces."""
    words = "Restart on wall 3 facing 12:00 after 16 counts (6:00)"
    assert check_text(f"Tin Lantern\n32 counts 4 walls\n\n{BODY}\n{words}\n", name="x").sound


@pytest.mark.parametrize("case", LOUD)
def test_an_order_that_cannot_be_followed_is_loud(case: str) -> None:
    """What is missing or contradicts the dance has to be settled."""
    assert not check_text(f"Tin Lantern\n32 counts 4 walls\n\n{BODY}\n{LOUD[case]}\n", name="x").sound


FACED_IN_WORDS = {
    "facing the back wall": "6:00",
    "to face the left-hand wall": "9:00",
    "facing the right side wall": "3:00",
    "facing your home wall": "12:00",
}


@pytest.mark.parametrize("words", FACED_IN_WORDS)
def test_a_facing_told_in_words_is_claimed(words: str) -> None:
    """What the turns do not give is told; the dance below faces 9:00 then."""
    lines = f"1-4 Vine R, touch L\n5-8 Vine L turning 1/4 left, touch R {words}"
    found = check_text(f"Tin Lantern\n\n{lines}\n", name="x").as_json()["findings"]
    differs = [finding["rule"] for finding in found if finding["rule"] == "facing-differs"]
    assert ([] if FACED_IN_WORDS[words] == "9:00" else ["facing-differs"]) == differs


def test_a_side_wall_is_no_step_to_the_side() -> None:
    """Which of the two side walls is meant is not told, and the step stays as it is."""
    plain, told = (
        check_text(f"Tin Lantern\n\n1-2 Turn 1/4 left stepping L forward{w}, touch R\n", name="x").as_json()
        for w in ("", " to face the side wall")
    )
    assert plain["parts"][0]["events"] == told["parts"][0]["events"]
