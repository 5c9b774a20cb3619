"""Hard line breaks: a line that its margin broke goes on, and a line that begins something does not.

That sheets are pasted from columns, e-mails and pages is common practice, no source.
"""

from __future__ import annotations

import pytest

from wallwise.checks.catalogue import findings_of
from wallwise.reading import read

VINES = "1R 2L 3R 4L 5L 6R 7L 8R"


def danced(sheet: str) -> str:
    """The beats and feet of a sheet's only part, and the rules it breaks."""
    reading = read(f"Tin Lantern\n\n{sheet}\n")
    steps = [f"{float(s.at):g}{s.foot.value}" for s in reading.dance.parts[0].steps]
    return " ".join([*steps, *(finding.rule for finding in findings_of(reading) if finding.loud)])


BROKEN = {
    "in small letters": """
1-4 Step R to right side, step L behind R, step
R to right side, touch L beside R
5-8 Step L to left side, step R behind L, step L
to left side, touch R beside L""",
    "in capitals": """
1-4 STEP R TO RIGHT SIDE, STEP L BEHIND R, STEP
R TO RIGHT SIDE, TOUCH L BESIDE R
5-8 STEP L TO LEFT SIDE, STEP R BEHIND L, STEP L TO
LEFT SIDE, TOUCH R BESIDE L""",
    "before a dash": """
1-4 R to right side - L behind R - R to right side
- touch L beside R
5-8 L to left side - R behind L - L to left side
- touch R beside L""",
    "in running prose": """
Step the right foot to the right side (1), the left
behind it (2), the right to the right side again
(3), touch the left foot beside the right foot (4).
Step the left foot to the left side (5), the right
behind it (6), the left to the left side again (7),
touch the right foot beside the left foot (8).""",
    "however its counts stand": """
Step the right foot to the right side, the left behind
it, the right to the side again, touch the left beside
(1-4). Step the left foot to the left side, the right
behind it, the left to the side again, touch the right
beside it (5-8).""",
    "behind labels, which no margin counts": """
1) R to right side, L behind R, R to right side
touch L beside R
2) L to left side, R behind L, L to left side
touch R beside L""",
    "in a heading": """
S1: STEP R TO THE SIDE, STEP L BEHIND R, STEP R,
TOUCH L
1-4 Step R to right side, step L behind R, step
R to right side, touch L beside R
5-8 Step L to left side, step R behind L, step
L to left side, touch R beside L""",
    "before a facing": """
1-4 R to right side, L behind R, R to right side,
touch L beside R
5-8 L to left side, R behind L, L to left side, then
touch R beside L
(12:00)""",
    "not behind a heading": """
Section 1 - Step to the right, behind, to the right again, and touch beside it
Step R to side, step L behind R (1-2)
Step R to side, touch L beside R (3-4)
Step L to side, step R behind L (5-6)
Step L to side, touch R beside L (7-8)""",
}


@pytest.mark.parametrize("sheet", BROKEN.values(), ids=BROKEN)
def test_a_broken_line_goes_on(sheet: str) -> None:
    """The steps are those of the unbroken lines."""
    assert danced(sheet) == VINES


def test_a_turn_at_the_beginning_of_a_line_goes_on_with_the_line_before() -> None:
    """A line of steps without a count of its own cannot begin anything."""
    vine = "1-4 Step R to side, step L behind R, turn\n1/4 right stepping R forward, brush L\n"
    assert danced(f"{vine}5-8 Walk L, R, L, R").startswith("1R 2L 3R 4L 5L 6R 7L 8R")


def test_the_second_line_of_a_sheet_is_not_part_of_its_title() -> None:
    """Who made it, or for whom, is told in small letters below."""
    for about in ("an easy dance for four walls", "by Odile Tansy and the Tuesday class"):
        assert (
            read(f"Tin Lantern & the Moth\n{about}\n\n1-2 Walk R, L\n").dance.title
            == "Tin Lantern & the Moth"
        )


def test_a_title_in_capitals_keeps_its_apostrophes() -> None:
    assert read("TINKER'S LANTERN\n\n1-2 Walk R, L\n").dance.title == "Tinker's Lantern"
