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
