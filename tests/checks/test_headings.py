"""A heading is held against its lines only where its own words belie them."""

from __future__ import annotations

import pytest

from wallwise.checks.catalogue import findings_of
from wallwise.checks.edits.spelling import amount_like
from wallwise.reading import read

TWO_TURNS = "1-2 Step R forward, pivot 1/2 left [6:00]\n3-4 Step R forward, pivot 1/4 left [3:00]"
HEELS = "1&2& Touch R heel forward, step R beside L, touch L heel forward, step L beside R\n"
HEELS += (
    "3-4 Step R forward, pivot 1/4 left [9:00]\n5&6 Cross R over L, step L to left side, cross R over L\n"
)
HEELS += "7-8 Rock L to left side, recover on R"
STOMPS = "1&2 Shuffle forward R, L, R\n3&4 Shuffle forward L, R, L\n"
STOMPS += "5-6 Step forward on R, pivot 1/2 turn left [6:00]\n7-8 Stomp R beside L, stomp L in place"
BACK = "1-2 Step R forward, turn 1/2 right stepping L back [6:00]\n3&4 Shuffle back R, L, R\n"
BACK += "5-8 Rock L back, recover R, walk L, R"

SIDES = "1-4 Step R to side, close L to R, step R to side, touch L beside R\n"
SIDES += "5-8 Step L to side, close R to L, step L to side, touch R beside L"


def sheet(heading: str, lines: str) -> str:
    return f"PAPER WINDMILL\n\nS1: {heading}\n{lines}\n"


def rules(text: str, only: str = "heading-differs") -> list[str]:
    return [finding.message for finding in findings_of(read(text)) if finding.rule == only]


AGREEING = {
    "HEEL & HEEL & STEP, PIVOT 1/4 L, CROSS SHUFFLE, SIDE ROCK": HEELS,
    "HEEL SWITCHES & STEP, PIVOT 1/4 L, CROSS SHUFFLE, SIDE ROCK": HEELS,
    "HEELS, 1/4 PIVOT, CROSSING SHUFFLE, ROCK": HEELS,
    "SHUFFLE FORWARD x 2, PIVOT 1/2 TURN L, STOMP x 2": STOMPS,
    "2 SHUFFLES, 1/2 PIVOT L, 2 STOMPS": STOMPS,
    "SHUFFLES FORWARD, STEP PIVOT 1/2 L, STOMPS": STOMPS,
    "STEP, 1/2 R BACK, SHUFFLE BACK, BACK ROCK": BACK,
    "STEP 1/2 TURN RIGHT, SHUFFLE, ROCK, WALK": BACK,
    "Side together side touch, R then L": SIDES,
}


@pytest.mark.parametrize("heading", AGREEING)
def test_a_heading_that_leaves_steps_out_is_not_held_against_its_lines(heading: str) -> None:
    """Its turns are those of the lines, whatever else it names or leaves out."""
    assert rules(sheet(heading, AGREEING[heading])) == []


BELIED = {
    "STEP, PIVOT 1/2 L, STEP, PIVOT 1/2 L": (TWO_TURNS, "“1/2”"),
    "STEP, PIVOT 1/2 L, STEP, PIVOT 1/4 R": (TWO_TURNS, "“R”"),
    "SHUFFLE, SHUFFLE, STEP, PIVOT 1/4 L, STOMP, STOMP": (STOMPS, "“1/4”"),
    "SHUFFLE, SHUFFLE, STEP, PIVOT 1/2 RIGHT, STOMP, STOMP": (STOMPS, "“RIGHT”"),
}


@pytest.mark.parametrize("heading", BELIED)
def test_one_of_several_turns_that_a_heading_tells_otherwise_is_told(heading: str) -> None:
    """The lines have another turn in the place of the one that it names."""
    lines, word = BELIED[heading]
    (message,) = rules(sheet(heading, lines))
    assert word in message


@pytest.mark.parametrize(
    ("eighths", "sign"), [(2, "&frac14;"), (4, "&frac12;"), (6, "&frac34;"), (8, "full")]
)
def test_a_fraction_named_as_in_a_page_of_the_web_is_mended_by_such_a_name(eighths: int, sign: str) -> None:
    """The name of the sign is one that HTML knows (HTML Living Standard, named character references)."""
    assert amount_like("&frac38;", eighths) == sign


ON_ONE = "1 Step R to right side\n2-3 Rock L back, recover R\n4&5 Chasse left L, R, L\n"
ON_ONE += "6-7 Cross rock R, recover L\n"
ON_ONE += "8&1 Chasse right R, L, R\n\n{}\n2-3 Rock L back, recover R\n"
ON_ONE += "4&5 Chasse left L, R, L\n6-7 Rock R back, recover L\n"
ON_ONE += "8& Step R to right side, step L beside R\n"
HEADS = [
    ("[1-9] BASICS", "[10-16] BASICS"),
    ("[1-9] BASICS", "[2-8] BASICS"),
    ("[1-8] BASICS", "[9-16] BASICS"),
]


@pytest.mark.parametrize("heads", HEADS)
def test_a_heading_may_count_the_first_beat_of_the_next_eight(heads: tuple[str, str]) -> None:
    """A heading from the first count of its lines to their last is as long as they are."""
    first, second = heads
    assert rules(f"PAPER WINDMILL\n\n{first}\n{ON_ONE.format(second)}", "section-length") == []


@pytest.mark.parametrize("heads", [("[1-9] BASICS", "[10-15] BASICS"), ("[1-10] BASICS", "[9-16] BASICS")])
def test_a_heading_that_counts_otherwise_than_its_lines_is_told(heads: tuple[str, str]) -> None:
    """It ends on another count than the lines do."""
    first, second = heads
    assert len(rules(f"PAPER WINDMILL\n\n{first}\n{ON_ONE.format(second)}", "section-length")) == 1


EIGHT = "Step L to left side, step R beside L, step L to left side, touch R beside L, step R to right side, "
EIGHT += "step L beside R, step R to right side, touch L beside R"
COUNTED = "1-2 Step L to left side, step R beside L\n3-4 Step L to left side, touch R beside L\n"
COUNTED += "5-6 Step R to right side, step L beside R\n7-8 Step R to right side, touch L beside R"


def test_steps_told_one_by_one_above_other_steps_are_no_heading() -> None:
    """An eight without counts is not lost in silence."""
    (message,) = rules(f"PAPER WINDMILL\n\n{EIGHT}\n{TWO_TURNS}\n5-8 Walk R, L, R, L\n", "not-understood")
    assert "those below are others" in message


def test_a_heading_that_tells_the_steps_below_it_one_by_one_is_one() -> None:
    """Its steps are those of the lines."""
    assert rules(f"PAPER WINDMILL\n\n{EIGHT}\n{COUNTED}\n", "not-understood") == []


WAYS = "1-2 Rock R forward, recover L\n3-4 Turn 1/4 right stepping R to side, touch L beside R\n"
WAYS += "5-8 Walk L, R, L, R"


@pytest.mark.parametrize(("way", "wrong"), [("RIGHT", False), ("LEFT", True)])
def test_a_turn_named_the_other_way_is_flagged_whatever_else_is_left_out(way: str, wrong: bool) -> None:
    """The heading leaves out steps, so that it cannot be danced; its one turn is the lines' or is not."""
    assert bool(rules(sheet(f"ROCK, 1/4 TURN {way}, STRUT ABOUT", WAYS))) == wrong
