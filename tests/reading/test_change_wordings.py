"""Step changes before a restart in the words of many teachers.

Worked out by hand from the trade's meaning of the words: common practice, no source.
"""

from __future__ import annotations

import pytest
from tests.reading.test_order_wordings import SHEET, ordered_in

from wallwise.checks.catalogue import findings_of
from wallwise.reading import read

TOLD = (
    (
        "restart 3 16, change 3 16 1",
        {"tail": "Wall 3: dance to count 15, step L beside R on 16, restart."},
    ),
    (
        "restart 3 16, change 3 15 2",
        {"tail": "Wall 3: after count 6 of section 2 do: 7-8 step R forward, step L beside R, then restart."},
    ),
    (
        "restart 3 16, change 3 16 1",
        {"mid": "\n*Restart here on wall 3 (step L beside R on count 8 instead of the pivot)"},
    ),
    (
        "restart 3 16, change 3 15 2",
        {"tail": "Step change & restart on wall 3: counts 15-16: step R forward, step L beside R, restart."},
    ),
    (
        "restart 3 16, change 3 15 2",
        {
            "head": "Restart w3 after 16 with step change",
            "tail": "Step change wall 3: 15-16 step R forward, step L beside R",
        },
    ),
    (
        "restart 3 16, change 3 15 2",
        {
            "tail": "Restart on wall 3 with step change. Dance counts 1-14, then 15-16: step R "
            "forward, step L beside R."
        },
    ),
    (
        "restart 3 16, change 3 15 2",
        {
            "tail": "On wall 3, counts 7-8 of section 2 change to: step R forward, step L beside R. "
            "Then restart."
        },
    ),
    (
        "restart 3 16, change 3 15 2",
        {"tail": "On wall 3 change counts 7-8 of S2: step R forward, step L beside R and restart."},
    ),
    (
        "restart 3 16, change 3 15 2",
        {"mid": "\n*Wall 3: replace 7-8 with step R forward, step L beside R and restart"},
    ),
    (
        "restart 3 16, change 3 15 2",
        {"mid": "\nRestart here on wall 3. Instead of counts 7-8: step R forward, step L beside R."},
    ),
    (
        "restart 3 16, change 3 15 2",
        {"mid": "\nRestart here, wall 3. Change: 7-8 Step R forward, step L beside R."},
    ),
    (
        "restart 3 16, change 3 16 1",
        {"tail": "Restart on wall 3 after 16 counts: on count 16 step L beside R, no pivot."},
    ),
    (
        "restart 3 16, change 3 16 1",
        {"tail": "Restart on wall 3 after 16 counts, changing the last step to step L beside R."},
    ),
    (
        "restart 3 16, change 3 16 1",
        {"tail": "Restart on wall 3 after 16 counts. Step change: on 16 step L next to R."},
    ),
    ("restart 3 16, change 3 16 1", {"mid": "\n*Restart here on wall 3 with a change: 8: step L beside R"}),
    (
        "restart 3 16, change 3 16 1",
        {"mid": " *", "tail": "* Restart on wall 3: replace count 8 with step L beside R"},
    ),
    (
        "restart 3 16, change 3 16 1",
        {"mid": " (R)", "tail": "(R) Restart on wall 3. Replace count 8 by stepping L beside R."},
    ),
    (
        "restart 3 16, change 3 15 2",
        {"tail": "Restart, wall 3: section 2, change last two counts to walk R, L."},
    ),
    (
        "restart 3 16, change 3 15 2",
        {"tail": "Restart on wall 3 after section 2, but walk R, L instead of the last pivot."},
    ),
    (
        "restart 3 16, change 3 15 2",
        {"tail": "3rd wall: restart after section 2. The last pivot becomes walk R, walk L."},
    ),
    (
        "restart 3 16, change 3 13 4",
        {"tail": "Restart on wall 3 after section 2. Replace both pivots with walk R, L, R, L."},
    ),
    (
        "restart 3 16, change 3 13 4",
        {"tail": "Wall 3: counts 5-8 of section 2 become a rocking chair, then restart."},
    ),
    (
        "restart 3 16, change 3 13 4",
        {"mid": "\nRestart on wall 3 - here you dance a rocking chair on 5-8 instead of the pivots"},
    ),
    (
        "restart 3 16, change 3 13 4",
        {"tail": "Restart after 16 counts on wall 3; on that wall counts 13-16 are: walk R, L, R, L"},
    ),
    ("restart 3 16, change 3 13 4", {"tail": "On wall 3 only: 13-16 Walk R, L, R, L, then restart"}),
    (
        "restart 3 24, change 3 23 2",
        {
            "tail": "Restart on wall 3 after 24 counts with change of steps: counts 23-24: step R "
            "back, step L beside R"
        },
    ),
    (
        "restart 3 24, change 3 23 2",
        {"tail": "Wall 3 restart after S3 (replace 7-8 with: step R to side, step L together)"},
    ),
    (
        "restart 3 24, change 3 23 2, restart 6 24, change 6 23 2",
        {
            "tail": "Restart on walls 3 and 6 after 24 counts; replace 23-24 with: step R to side, "
            "step L together"
        },
    ),
    (
        "restart 3 16, restart 6 24, change 6 23 2",
        {
            "tail": "Restarts: wall 3 after 16 counts; wall 6 after 24 counts, replacing 23-24 with "
            "step R to side, step L together"
        },
    ),
    (
        "restart 3 16, change 3 16 1",
        {
            "tail": "Note: on wall 3 you restart after 16 counts; to free the right foot, step L "
            "next to R on count 16 instead of pivoting."
        },
    ),
    ("restart 3 16", {"tail": "Restart on wall 3 after 16 counts, no step change."}),
    (
        "restart 3 16",
        {"tail": "Restart on wall 3 after 16 counts. No need to change anything: weight is on L."},
    ),
    ("restart 3 16", {"tail": "Restart on wall 3 after the R rocking chair and two pivots (16 counts)."}),
    (
        "restart 3 16",
        {"tail": "Restart after 16 counts on wall 3 (after the second pivot 1/2 L, facing 6:00)."},
    ),
    (
        "restart 3 16, change 3 15 2",
        {
            "tail": (
                "Restart: 3rd wall, after 16 count. In section 2 change 7&8 to\n"
                "7-8 RF rock back, LF recover, then start from the top facing 12:00."
            )
        },
    ),
    (
        "restart 5 24, change 5 23 2",
        {
            "tail": (
                "Restart: wall 5 begins at 12:00. Dance 22 counts, then in place of 7,8 of no."
                " 3 do\n"
                "           7  R step to right side   8  L step beside R\n"
                "           and begin again facing 12:00."
            )
        },
    ),
    (
        "restart 6 24, change 6 23 2",
        {
            "tail": (
                "Restart: wall 6 begins at 3:00. Dance up to count 22, then instead of the kick"
                " ball cross touch R beside L on 23 and hold 24. Restart at 3:00 (24 counts"
                " danced)."
            )
        },
    ),
    (
        "restart 3 16, change 3 15 2",
        {
            "tail": (
                "Restart wall 3: in section 2 instead of 7-8 do\n"
                "7 touch R forward\n"
                "8 touch R beside L\n"
                "and restart"
            )
        },
    ),
    (
        "restart 3 16, change 3 15 2",
        {
            "tail": (
                "On wall 3 the last two counts of section 2 change:\n"
                "7 touch R forward, 8 touch R together.\n"
                "Start again from the top."
            )
        },
    ),
    (
        "restart 3 16, change 3 15 2",
        {
            "tail": (
                "Restart in wall 3 after count 16 with this change\n7-8 Touch R forward, touch R beside L"
            )
        },
    ),
    (
        "restart 3 16, change 3 15 2",
        {
            "tail": (
                "Wall 3: dance 14 counts. For 15 and 16 do touch R forward, touch R beside L and start over."
            )
        },
    ),
    (
        "restart 3 16, change 3 15 2",
        {
            "tail": (
                "3rd wall: dance up to count 14, then on 15 touch R forward and on 16 touch R"
                " beside L. Restart."
            )
        },
    ),
    (
        "restart 3 16, change 3 15 2",
        {"tail": ("Restart (wall 3): S2 counts 7-8 replaced by\n7-8 touch R forward, touch R beside L.")},
    ),
    (
        "restart 3 16, change 3 15 2",
        {
            "tail": (
                "Restart wall 3. Dance till count 14 then replace 7-8 with\n"
                "7-8 Touch R forward, touch R beside L\n"
                "and start from the beginning."
            )
        },
    ),
    (
        "restart 3 16, change 3 15 2",
        {
            "tail": (
                "On wall 3 dance to count 14 and in place of the pivot do touch R forward on 15"
                " and touch R beside L on 16, then restart."
            )
        },
    ),
    (
        "restart 3 16, change 3 15 2",
        {
            "tail": (
                "Restart on wall 3 after 16 counts.\n"
                "Change 7-8 of section 2 to:\n"
                "7 Touch R forward\n"
                "8 Touch R beside L"
            )
        },
    ),
    (
        "restart 3 16, change 3 16 1",
        {
            "tail": (
                "Restart on wall 3 after 16 counts. On the last count put L beside R instead of the pivot."
            )
        },
    ),
    (
        "restart 3 16, change 3 15 2",
        {
            "tail": (
                "Restart on 3. wall: you dance 14 counts, then you make instead of 7-8 touch R"
                " forward, touch R beside L."
            )
        },
    ),
    (
        "restart 3 16, change 3 15 2",
        {
            "tail": (
                "Wall 3: dance up to count 14, then for 15-16 do touch R forward, touch R"
                " beside L and restart."
            )
        },
    ),
    (
        "restart 3 16, change 3 15 2",
        {"tail": ("On wall 3, in section 2 swap 7-8 for touch R forward, touch R beside L and restart.")},
    ),
    (
        "restart 3 16, change 3 15 2",
        {
            "tail": (
                "Restart wall 3 after section 2 with 7-8 changed to\n"
                "7-8 Touch R forward, touch R beside L\n"
                "then start again facing 12:00"
            )
        },
    ),
    (
        "restart 3 16, change 3 15 2",
        {"mid": ("\nWall 3, restart here with this change\n7-8 Touch R forward, touch R beside L")},
    ),
    (
        "restart 3 16, change 3 13 4",
        {"tail": ("Restart on wall 3 after 16 counts: instead of the pivots dance a rocking chair.")},
    ),
    ("restart 3 16, change 3 16 1", {"mid": "\nWall 3: touch R beside L on 8 and restart"}),
    (
        "restart 3 16, change 3 15 2",
        {
            "tail": (
                "Restart on wall 3. Up to 14 as normal, then on 15 touch R forward, on 16 touch"
                " R beside L, begin again."
            )
        },
    ),
    (
        "restart 3 16, change 3 15 2",
        {
            "tail": (
                "Restart + step change: wall 3, S2. Counts 7 & 8 become: touch R forward, touch"
                " R beside L. Restart."
            )
        },
    ),
)


@pytest.mark.parametrize(("expected", "told"), TOLD)
def test_a_step_change_is_read_in_these_words(expected: str, told: dict[str, str]) -> None:
    """The restarts are where they are told; "change 3 15 2": on wall 3 from count "
    "15 on two steps differ.
    """
    reading = read(SHEET.format(**{"head": "", "mid": "", "tail": ""} | told))
    changed = [
        f"change {restart.wall} {restart.change_from} {len(restart.change)}"
        for restart in reading.dance.restarts
        if restart.change
    ]
    assert sorted(expected.split(", ")) == sorted([*ordered_in(reading), *changed])
    assert [finding.message for finding in findings_of(reading) if finding.loud] == []


DOUBTED = (
    "Restart: W3 after 16, but the last count is a step: step L beside R (count 16)",
    "RESTART wall 3: dance 14 counts. Then step R forward (15), step L beside R (16). Restart.",
    "Restart wall 3 (16 counts): instead of step, pivot dance step R forward, step L beside R (15-16)",
    "Dance sections 3 and 4 on every wall except wall 3.",
    "On wall 3 things are a bit different: leave out the shuffles.",
    "On wall 4 skip counts 9-16.",
    "Wall 3 ends after 16 counts.",
    "One short wall: the third, 16 counts only.",
    "Wall 5 has an extra bit: rock, recover, together.",
    "On wall 3 after 16 counts, the dance is different.",
    "Restart on wall 3 after 40 counts",
    "Restart on wall 3 after section 7",
    "On the third wall we dance 16 counts, then freeze for a bit and go on.",
    "Wall 3: dance S1 and S2, then jump straight to S4.",
    "Sections 3 and 4 are not danced on wall 3 but S2 twice.",
    "On walls 2 and 4, dance S1 twice.",
    "On wall 2, repeat section 2 before going on with section 3.",
    "WALL 3 - RESTART WITH STEP CHANGE\nDance up to count 14, then:\n15 Touch R forward\n16 Touch R beside L",
    "At wall 3 do not pivot on 7-8 of section 2 but touch R forward, touch R beside L, then restart.",
    "Restarts: wall 2 after 24 counts\nwall 5 ditto",
    "Tags: wall 2 - 4 counts: sway R L R L\nwall 5 - 2 counts: sway R L",
    "Wall 3: 16 counts, then hold 4 counts and start again.",
    "After wall 6 there is a pause, then start again.",
    "On wall 3 swap the two pivots for a rocking chair, then restart.",
)


@pytest.mark.parametrize("words", DOUBTED)
def test_what_is_not_read_is_doubted(words: str) -> None:
    """A wall that is danced otherwise is read, or something says that it is not."""
    assert [f.rule for f in findings_of(read(SHEET.format(head="", mid="", tail=words))) if f.loud] != []


SPOTS = (
    "\n(Wall 3: dance 8 counts and restart)",
    "\n(Wall 3: dance to count 24 and restart)",
    "\n(Wall 3: after 8 start again)",
    "\nRestart here on wall 3 with step change",
)


@pytest.mark.parametrize("words", SPOTS)
def test_counts_that_are_not_those_of_the_spot_are_doubted(words: str) -> None:
    """Told behind the second eight, the counts may be those of the dance or those of the section."""
    assert [f.rule for f in findings_of(read(SHEET.format(head="", mid=words, tail=""))) if f.loud] != []
