"""Counts told with a part's letter or in bars: common practice, no source."""

from __future__ import annotations

import pytest

from wallwise.checks.catalogue import findings_of
from wallwise.reading import read

LETTERED = {
    "before the counts": """
A 1-2   Walk R, L
A 3&4   Shuffle forward R, L, R
B 1-2   Rock L forward, recover R
B 3-4   Step L back, touch R beside L
T 1-2   Stomp R, stomp L""",
    "before a range in brackets": """
=== A ===
A (1-4)  Walks, shuffle
1-2: Walk R, L
3&4: Shuffle forward R, L, R
=== B ===
B (1-4)  Rock, step
1-2: Rock L forward, recover R
3-4: Step L back, touch R beside L
=== T ===
T (1-2)  Stomps
1-2: Stomp R, stomp L""",
    "in the brackets of headings": """
[A 1-4] Walks, shuffle
1-2 Walk R, L
3&4 Shuffle forward R, L, R
[B 1-4] Rock, step
1-2 Rock L forward, recover R
3-4 Step L back, touch R beside L
[T 1-2] Stomps
1-2 Stomp R, stomp L""",
}


@pytest.mark.parametrize("body", LETTERED.values(), ids=LETTERED)
def test_the_letter_before_counts_is_that_of_their_part(body: str) -> None:
    """Each part has its own counts from 1, and T is the tag."""
    reading = read(f"Tin Lantern\nPhrased\nSequence: A B T A B\n\n{body}\n")
    assert {"A": 4, "B": 4, "Tag": 2} == {name: int(part.text.counts) for name, part in reading.parts.items()}
    assert ("A", "B", "Tag", "A", "B") == reading.dance.sequence


BARS = """Tin Lantern
A waltz of 4 bars for four walls

Bars 1-2: Basics
Bar 1{counts} L forward, R beside L, L in place
Bar 2{again} R back, L beside R, R in place
Bars 3 and 4: Twinkle, quarter turn
Bar 3{counts} L across R, R to side, L in place
Bar 4{again} R across L, turn 1/4 right stepping L back, R to side (3:00)

Restart: on wall 3 dance bars 1 to 2, then begin again
"""


@pytest.mark.parametrize(("counts", "again"), [("   ", "   "), (" (1 2 3)", " (4 5 6)")])
def test_a_bar_of_a_waltz_is_three_counts(counts: str, again: str) -> None:
    """Wherever bars are named they are counts: in lines of steps, headings and orders."""
    reading = read(BARS.format(counts=counts, again=again))
    assert [float(n) for n in range(1, 13)] == [float(step.at) for step in reading.dance.parts[0].steps]
    assert [(3, 6)] == [(restart.wall, int(restart.after_counts)) for restart in reading.dance.restarts]
    assert [] == [finding.message for finding in findings_of(reading) if finding.loud]


VINES = "1R 2L 3R 4L 5L 6R 7L 8R"
COUNTED = {
    "as one number": """
12 Step R to side, step L behind R
34 Step R to side, touch L beside R
56 Step L to side, step R behind L
78 Step L to side, touch R beside L""",
    "as lengths": """
STEP R TO SIDE, STEP L BEHIND R ........ 2
STEP R TO SIDE, TOUCH L BESIDE R ....... 2
STEP L TO SIDE, STEP R BEHIND L .. 2
STEP L TO SIDE, TOUCH R BESIDE L ... 2""",
    "behind an equals sign": """
R to side / L behind R = 1, 2
R to side / touch L = 3, 4
L to side / R behind L = 5, 6
L to side / touch R = 7, 8""",
    "over a paragraph": """
COUNTS 1 2 3 4

Step right to the side. Step left behind.
Step right to the side. Touch left beside right.

COUNTS 5 6 7 8

Step left to the side. Step right behind.
Step left to the side. Touch right beside left.""",
    "again in a range": """
1-8: 1 R side, 2 L behind, 3 R side, 4 touch L, 5 L side, 6 R behind, 7 L side, 8 touch R""",
    "behind the names of figures": """
Vine R 1-4 (R side, L behind, R side, touch L), vine L 5-8 (L side, R behind, L side, touch R)""",
    "behind a heading's number": """
1st four   1-2  Step R to side, step L behind R
           3-4  Step R to side, touch L beside R
           5-6  Step L to side, step R behind L
           7-8  Step L to side, touch R beside L""",
}


@pytest.mark.parametrize("body", COUNTED.values(), ids=COUNTED)
def test_counts_are_found_wherever_they_stand(body: str) -> None:
    """The steps are those of two vines, one count each, and nothing is doubted."""
    reading = read(f"Tin Lantern\n8 counts\n\n{body}\n")
    assert " ".join(f"{float(s.at):g}{s.foot.value}" for s in reading.dance.parts[0].steps) == VINES
    assert [] == [finding.message for finding in findings_of(reading) if finding.loud]


NAMED = """Tin Lantern
Order: Verse, Chorus, Verse

VERSE
V1. Walks
1-4 Walk R, L, R, touch L

CHORUS
C1. Rock, back
1-4 Rock L forward, recover R, step L back, touch R beside L
"""


def test_the_initial_of_a_named_part_numbers_its_sections() -> None:
    reading = read(NAMED)
    assert {"Verse": 4, "Chorus": 4} == {name: int(part.text.counts) for name, part in reading.parts.items()}


CROSSING = """Tin Lantern
16 counts

1 - 8&1   Side, rock, lock step, rock, lock step back
1 Step right to right side
2-3 Rock left back, recover onto right
4&5 Step left forward, lock right behind left, step left forward
6-7 Rock right forward, recover onto left
8&1 Step right back, lock left across right, step right back

2 - 8&   Rock, chassé, rock, ball change
2-3 Rock left back, recover onto right
4&5 Step left to left side, close right beside left, step left to left side
6-7 Cross rock right over left, recover onto left
8& Step right to right side, step left beside right

Start again from the beginning, stepping right to right side on count 1.
"""


def test_an_eight_of_a_cha_cha_may_begin_on_its_second_count() -> None:
    reading = read(CROSSING)
    assert [8, 8] == [int(section.counts) for section in reading.dance.parts[0].sections]
    assert [] == [finding.message for finding in findings_of(reading) if finding.loud]


def danced(body: str) -> str:
    """Beat and foot of every event; what is doubted behind them."""
    reading = read(f"Tin Lantern\n\n{body}\n")
    steps = [f"{float(s.at):g}{s.foot.value}" for s in reading.dance.parts[0].steps]
    return " ".join([*steps, *(finding.message for finding in findings_of(reading) if finding.loud)])


def test_counts_in_columns_side_by_side_are_read_down() -> None:
    """Count 5 stands beside count 1, and comes after count 4."""
    body = """SECTION 1
1 step right forward          5 step left forward
2 lock left behind right      6 half turn right, weight right
3 step right forward          7 step left forward
4 scuff left                  8 hold"""
    assert "1R 2L 3R 4L 5L 6R 7L 8none" == danced(body)


def test_counts_side_by_side_that_run_on_are_read_across() -> None:
    """Count 2 stands beside count 1, and comes before count 3."""
    assert "1R 2L 3R 4L" == danced("1 step R forward    2 step L forward\n3 step R back    4 step L back")


def test_a_column_of_facings_before_the_counts_tells_where_each_line_ends() -> None:
    """Each facing is that of the last step of its own line, not of the line before."""
    body = """Section 1
12:00   1-2   RF walk forward, LF walk forward
6:00    3-4   RF step forward, pivot 1/2 turn left
3:00    5-6   RF step forward, pivot 1/4 turn left
3:00    7-8   RF walk forward, LF walk forward"""
    assert "1R 2L 3R 4L 5R 6L 7R 8L" == danced(body)
    assert "says 9:00" in danced(body.replace("6:00  ", "9:00  "))


def test_a_hold_may_be_named_in_the_mark() -> None:
    """The mark has the number of the hold, though it names it by what is done."""
    body = "1, 2, 3, hold - R side, L closes, R crosses over L, hold on 4\n5-8 walk L, R, L, touch R"
    assert danced(body).startswith("1R 2L 3R 4none 5L")
