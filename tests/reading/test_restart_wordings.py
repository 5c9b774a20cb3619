"""More words for restarts: signs in the dance, numbered restarts, lists.

Worked out by hand from the trade's meaning of the words: common practice, no source.
"""

from __future__ import annotations

import pytest
from tests.reading.test_order_wordings import SHEET, ordered_in

from wallwise.checks.catalogue import findings_of
from wallwise.reading import read

TOLD = (
    ("restart 3 16", {"mid": "  (R1)", "tail": "R1: wall 3"}),
    ("restart 3 16, restart 6 16", {"mid": "  (R)", "tail": "(R) Restart on walls 3 and 6"}),
    ("restart 3 16", {"mid": "  (R1)", "tail": "(R1) = wall 3, restart"}),
    ("restart 3 16", {"mid": " [R1]", "tail": "Restart R1: wall 3, facing 6:00"}),
    ("restart 3 16", {"mid": "  #1", "tail": "#1 Restart on wall 3"}),
    ("restart 3 16", {"mid": "  (A)", "tail": "Restart at (A) on wall 3"}),
    ("restart 3 16", {"mid": " ^", "tail": "Restart at ^ during wall 3"}),
    ("restart 3 16", {"mid": " *", "tail": "Restart at the * on wall 3"}),
    ("restart 3 16", {"mid": " ***", "tail": "Wall 3: restart at ***"}),
    ("restart 3 16", {"mid": " <R>", "tail": "<R> Restart, wall 3"}),
    ("restart 3 16", {"mid": "\n--- R1 (wall 3) ---"}),
    ("restart 3 16", {"mid": "\n--- Restart 1 (wall 3) ---"}),
    (
        "restart 3 16, restart 6 24",
        {"tail": "Restart A: wall 3 after 16 counts. Restart B: wall 6 after 24 counts."},
    ),
    (
        "restart 3 16, restart 6 24",
        {"tail": "Restart A - wall 3, after section 2\nRestart B - wall 6, after section 3"},
    ),
    ("restart 3 16, restart 6 24", {"tail": "R1: wall 3 after 16 counts\nR2: wall 6 after 24 counts"}),
    ("restart 3 16, restart 6 24", {"tail": "RESTARTS\nR1 - wall 3, after 16\nR2 - wall 6, after 24"}),
    ("restart 3 16", {"mid": "\nR1 here, wall 3 (6:00)"}),
    ("restart 3 16", {"tail": "Restart x1: Wall 3, counts 1-16 only"}),
    ("restart 3 16", {"tail": "RESTART: On 3rd wall you do the first half and start afresh."}),
    ("restart 3 16", {"tail": "On wall 3 stop at the end of section 2 and go back to section 1."}),
    ("restart 3 16", {"tail": "Wall 3 only goes as far as count 16. Then from the top!"}),
    (
        "restart 3 16",
        {
            "tail": "Just one restart, folks: third time round, after the second pivot (count 16), "
            "facing the back wall."
        },
    ),
    (
        "restart 3 16",
        {"tail": "During the third wall (the one that starts at 6 o'clock) we restart after 16 counts."},
    ),
    ("restart 3 16", {"tail": "Restart after 16 counts of wall 3 (you'll be at 6 o'clock)."}),
    ("restart 3 16", {"head": "1 Restart: W3 (16c)"}),
    ("restart 3 16", {"head": "Restart(s): W3, 16 cts, 6:00"}),
    ("restart 3 16, restart 6 16", {"head": "Restarts: 3rd and 6th walls after 16 counts"}),
    (
        "restart 3 16, restart 6 16",
        {"tail": "There are two restarts. Both happen after count 16. They are on walls 3 and 6."},
    ),
    (
        "restart 3 16, restart 6 16",
        {"tail": "Restarts after count 16 of walls 3 and 6, facing 6:00 and 12:00."},
    ),
    ("restart 3 16", {"mid": "\n>>> On wall 3 start again from here <<<"}),
    ("restart 3 16", {"mid": "\n(wall 3 stops here - restart)"}),
    ("restart 3 16", {"mid": "\n... Wall 3: back to the beginning at this point"}),
    ("restart 3 16", {"mid": "  ** Restart here on wall three **"}),
    ("restart 3 16", {"mid": "\nRestart place for wall 3"}),
    ("restart 3 16", {"tail": "In wall 3, dance until the end of S2, then restart. No steps are changed."}),
    ("restart 3 16", {"tail": "The third wall is cut to 16 counts."}),
    ("restart 3 16", {"tail": "Restart\nWall 3, after 16 counts, facing 6:00"}),
    ("restart 3 16", {"tail": "Restart:\n* Wall 3 - after 16 counts (6:00)"}),
    (
        "restart 3 16, restart 6 24",
        {"tail": "Restarts:\n1) Wall 3 after 16 counts\n2) Wall 6 after 24 counts"},
    ),
    ("restart 3 16, restart 6 24", {"tail": "Restarts:\n* 16 counts into wall 3\n* 24 counts into wall 6"}),
    ("restart 3 16, restart 6 24", {"tail": "RESTARTS: wall 3 at 16, wall 6 at 24"}),
    ("restart 3 16, restart 6 24", {"head": "Restarts: 2, wall 3 (after S2) / wall 6 (after S3)"}),
    (
        "restart 3 16",
        {
            "tail": "Walls 1 and 2 are danced in full. Wall 3: only the first two sections. After "
            "that it is full walls to the end."
        },
    ),
    (
        "restart 3 16",
        {"tail": "RESTART: third wall starts facing the back; do counts 1-16, then restart facing the back."},
    ),
    (
        "restart 3 16",
        {"tail": "When you come to the back wall for the first time (wall 3), restart after 16 counts."},
    ),
    (
        "restart 3 16",
        {"tail": "You begin wall 3 at 6:00. Stop after the two pivots (16 counts) and begin wall 4 there."},
    ),
    ("restart 3 16", {"tail": "Wall 3 has a restart after count 16 - listen for the drum fill."}),
    ("restart 3 16", {"tail": "Watch for the restart! It comes in wall 3 when you've done 16 counts."}),
)


@pytest.mark.parametrize(("expected", "told"), TOLD)
def test_a_restart_is_read_in_these_words(expected: str, told: dict[str, str]) -> None:
    """The right walls are cut, and nothing is doubted."""
    reading = read(SHEET.format(**{"head": "", "mid": "", "tail": ""} | told))
    assert sorted(expected.split(", ")) == ordered_in(reading)
    assert [finding.message for finding in findings_of(reading) if finding.loud] == []
