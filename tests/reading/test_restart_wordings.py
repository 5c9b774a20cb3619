"""More words for restarts: signs in the dance, numbered restarts, lists.

Worked out by hand from the trade's meaning of the words: common practice, no source.
"""

from __future__ import annotations

import pytest
from tests.reading.test_order_wordings import SHEET, ordered_in

from wallwise.checks.catalogue import findings_of
from wallwise.reading import read

TOLD = (
    ("restart 3 16", {"mid": "\n(On wall 3 this is where we go from count 8 back to count 1)"}),
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
    ("restart 3 16", {"head": "Restart on the third wall following section 2"}),
    ("restart 3 16", {"head": "Tags: 0 / Restarts: 1 (wall 3 after count 16)"}),
    ("restart 3 16", {"head": "Tags/Restarts: Restart on wall 3 (16 counts)"}),
    ("restart 3 16", {"head": "Restart – one, on wall 3, 16 counts in, facing 6 o'clock"}),
    ("restart 3 16, tag 5 4", {"head": "1 Restart (wall 3, 16 counts), 1 Tag (end of wall 5, 4 counts)"}),
    ("restart 3 16, tag 5 4", {"head": "Restart: W3 (16). Tag: W5 (4)."}),
    ("restart 3 16, tag 5 4", {"head": "Restart wall 3 after 16 / Tag wall 5 (4 counts)"}),
    (
        "restart 3 16, tag 5 4",
        {"head": "One restart on wall 3 after 16 counts and one 4-count tag after wall 5"},
    ),
    (
        "restart 3 16, tag 5 4",
        {"tail": "Restart: third wall, after 16.\nTag: fifth wall, at the end, 4 counts: R rocking chair."},
    ),
    ("restart 3 16, restart 6 16", {"mid": "\n(walls 3 and 6: restart)"}),
    ("restart 3 16, restart 6 16", {"mid": "\n*** Restart Walls 3 & 6 ***"}),
    ("restart 3 16, restart 6 16", {"mid": "\n<<Restart here 3rd and 6th time>>"}),
    ("restart 3 16", {"mid": "  RESTART (wall 3 only)"}),
    ("restart 3 16", {"mid": " ***RESTART WALL 3***"}),
    ("restart 3 16, restart 6 16", {"mid": " (restart point walls 3, 6)"}),
    ("restart 3 16", {"mid": "\nNote: Restart happens here on wall 3, then face 6:00 again."}),
    ("restart 3 16", {"tail": "*1 RESTART* - Wall 3 (facing 6:00) after 16 counts"}),
    ("restart 3 16", {"tail": "RESTART NOTE: You only dance half the dance on wall 3."}),
    ("restart 3 16", {"tail": "You have to start over after 16 counts when you dance the 3rd wall."}),
    ("restart 3 16", {"tail": "Wall 3 (6:00): dance 1-16, restart."}),
    ("restart 3 16, restart 6 24", {"tail": "W3: 1-16 R. W6: 1-24 R."}),
    ("restart 3 16, restart 6 24", {"tail": "Restarts occur twice: W3 @ 16 and W6 @ 24"}),
    (
        "restart 3 16, restart 6 24",
        {"tail": "First restart: wall 3, 16 counts. Second restart: wall 6, 24 counts."},
    ),
    (
        "restart 3 16, restart 6 24",
        {"tail": "1st restart wall 3 after 16 counts (6:00)\n2nd restart wall 6 after 24 counts (12:00)"},
    ),
    ("restart 3 16", {"tail": "Dance up to the end of Section 2 on wall 3 then restart from count 1."}),
    ("restart 3 16", {"tail": "Wall 3 - Restart after 16 counts, you will be facing 6.00"}),
    ("restart 3 16", {"tail": "Restart after two sections in wall 3."}),
    (
        "restart 3 16",
        {"tail": "Restart: dance 16 counts of the third wall, then begin again facing back wall."},
    ),
    ("restart 3 16", {"tail": "On the 3rd wall, dance the first 2 sections, then restart."}),
    ("restart 3 16", {"tail": "Halfway through wall 3, restart."}),
    ("restart 3 16", {"tail": "When dancing wall 3, leave off the last two eights."}),
    ("restart 3 16", {"tail": "Wall 3: omit sections 3 & 4 and restart"}),
    ("restart 3 16", {"tail": "Wall 3 is short: S1 and S2."}),
    ("restart 3 16", {"tail": "Short wall on wall 3: 16 counts"}),
    (
        "restart 3 16, tag 5 4",
        {"tail": "Wall 3: restart after 16. Wall 5: add a 4-count tag (sway R L R L)."},
    ),
    (
        "restart 3 16, tag 3 4",
        {"tail": "Tag and restart on wall 3: after 16 counts, sway R L R L, then restart"},
    ),
    ("restart 3 24", {"tail": "Restart on wall 3 before the jazz box (24 counts)"}),
    (
        "restart 3 16",
        {
            "tail": "Restart during wall 3, which starts facing 6:00 - after 16 counts you face 6:00 "
            "again and restart."
        },
    ),
    ("restart 3 16", {"tail": "Wall 3 starts at 6:00. Restart at 6:00 after 16 counts."}),
    ("", {"tail": "There are no restarts and no tags; just dance it through 9 times."}),
    ("", {"tail": "No need for restarts or tags!"}),
    ("", {"tail": "The dance has neither tags nor restarts."}),
    ("", {"head": "Tags: none     Restarts: none"}),
    ("", {"head": "Tag: No  Restart: No"}),
    ("", {"head": "Restarts/Tags: none, hooray!"}),
    ("", {"tail": "Ending: dance to count 16 of wall 9, facing 12:00. Ta-da!"}),
    ("", {"tail": "Finish: the song ends on wall 8 after 16 counts, which brings you to the front."}),
    ("", {"tail": "The last wall is wall 9. You'll be facing the front after count 16: hold your pose."}),
    (
        "restart 3 16, tag 5 4",
        {"head": "One restart on wall 3 after 16 counts and one 4-count tag after wall 5"},
    ),
    ("restart 3 16, restart 6 16", {"mid": "\nRestart here 3rd and 6th time"}),
    ("restart 3 16", {"mid": "\n<Restart here on wall 3>"}),
    ("restart 3 16", {"mid": "  <b>Restart here on wall 3</b>"}),
    ("restart 3 16", {"head": "R: wall 3 after 16 counts"}),
    ("restart 3 16", {"mid": "\n{Restart here - wall 3 - facing 6:00}"}),
    ("restart 3 16", {"mid": "   ← Restart (wall 3)"}),
    (
        "restart 3 16, restart 6 24",
        {"tail": "Restart #1: Wall 3 - 16 counts\nRestart #2: Wall 6 - 24 counts"},
    ),
    (
        "restart 3 16, restart 6 24",
        {"tail": "There are restarts on walls 3 and 6, after 16 and 24 counts respectively."},
    ),
    ("restart 3 16, restart 6 24", {"tail": "Restarts: walls 3/6 after 16/24 counts"}),
    ("restart 3 16, restart 6 24", {"tail": "Restart after S2 on wall 3 and after S3 on wall 6."}),
    ("restart 3 16", {"tail": "Restart after count 16 (wall 3) - weight must be on L."}),
    ("restart 3 16", {"tail": "- Restart: wall 3\n- After: 16 counts\n- Facing: 6:00"}),
    ("restart 3 16", {"tail": "Restart\n- When: wall 3\n- Where: after 16 counts"}),
    (
        "restart 4 16, tag 2 4",
        {"tail": "Tag\nWhen: after wall 2\n1-4 Sway R, L, R, L\nRestart\nWhen: wall 4 after 16 counts"},
    ),
    ("", {"tail": "Repeat the dance 8 times in all; the last time ends at the front."}),
    ("", {"tail": "On wall 3 don't miss the drum break!"}),
    (
        "restart 3 16, restart 6 24",
        {"tail": "Listen out for two restarts:\n- third wall, after count 16\n- sixth wall, after count 24"},
    ),
    ("restart 3 16", {"mid": "\n++ wall 3: go to the top ++"}),
    ("restart 3 16", {"mid": "\nStop here on wall 3 and start from the top."}),
    (
        "restart 2 24, restart 5 12",
        {
            "tail": (
                "Restarts: wall 2 after 24 counts, facing 3.00\n          wall 5 after 12 counts, facing 9.00"
            )
        },
    ),
    ("restart 2 24, restart 5 12", {"tail": "Restart: wall 2 - 24 counts\n         wall 5 - 12 counts"}),
    (
        "restart 2 24, restart 5 12",
        {"tail": ("RESTARTS: 2nd wall after count 24 (3:00),\n5th wall after count 12 (9:00)")},
    ),
    ("restart 2 24, restart 5 12", {"tail": "Restarts - W2 after 24c\n           W5 after 12c"}),
    (
        "restart 2 24, restart 5 12",
        {"tail": "Restart after 24 counts on wall 2,\nafter 12 counts on wall 5."},
    ),
    (
        "restart 2 24, restart 5 12",
        {
            "tail": (
                "2 Restarts: On the 2nd wall, dance 24 counts, facing 3 o'clock\n"
                "On the 5th wall, dance 12 counts, facing 9 o'clock"
            )
        },
    ),
    (
        "restart 2 24, restart 5 12",
        {"tail": "Restart on wall 2 after section 3\nand on wall 5 after 12 counts."},
    ),
    (
        "restart 2 24, restart 5 12",
        {"tail": "Restart: wall 2 after 24 counts\nThe same on wall 5 after 12 counts"},
    ),
    ("restart 2 24, restart 5 12", {"tail": "Restart: 2. wall after 24 counts\n5. wall after 12 counts"}),
    ("restart 2 24, restart 5 12", {"head": "Restarts: wall 2 after 24 counts\nwall 5 after 12 counts"}),
    (
        "restart 2 24, restart 5 12",
        {
            "head": (
                "Restarts: wall 2 after 24 counts, facing 3:00\n"
                "                wall 5 after 12 counts, facing 9:00"
            )
        },
    ),
    (
        "restart 2 24, restart 5 12",
        {"tail": ("Restarts: Wall 2: after 24 counts. Facing 3:00\nWall 5: after 12 counts. Facing 9:00")},
    ),
    (
        "restart 2 24, restart 5 12",
        {"tail": "There are two restarts: wall 2 (24 counts)\nwall 5 (12 counts)"},
    ),
    (
        "restart 3 16",
        {
            "mid": (
                "\n"
                "  (Restart: on the third wall dance up to 8& and then begin again: the 1 is"
                " your right step to the side. You will be facing 6:00.)"
            )
        },
    ),
    ("restart 3 16", {"mid": "\n(Restart: on the third wall dance up to 8 and begin again.)"}),
    ("restart 3 16", {"mid": "\n(On wall 3 stop at 8 and start again, facing 6:00)"}),
    ("restart 3 16", {"mid": "\n** On wall 3 dance to count 8 of this section and restart"}),
    ("restart 3 16", {"mid": "\n(Wall 3: up to 8, restart)"}),
    ("restart 3 16", {"mid": "\n(Wall 3: dance to count 8 and restart)"}),
    ("restart 3 16", {"mid": "\n(Wall 3: dance to count 16 and restart)"}),
    ("restart 3 16", {"mid": "\n*3rd wall: until count 8, then from the top (6:00)"}),
    ("restart 3 16", {"mid": "\n(Restart on wall 3 after the 8)"}),
    ("restart 3 16", {"mid": "\n(In the 3rd wall only to 8 and begin new)"}),
    (
        "restart 2 24, restart 5 12",
        {"tail": ("Restarts:\n- wall 2 after 24 counts (3:00)\n- wall 5 after 12 counts (9:00)")},
    ),
    (
        "restart 2 24, restart 5 12",
        {
            "tail": (
                "Restart in 2. wall after 24 counts, look to 3:00\n"
                "and in 5. wall after 12 counts, look to 9:00"
            )
        },
    ),
    ("restart 2 24, restart 5 12", {"tail": "RESTART: 2. Wall, 24 counts\n         5. Wall, 12 counts"}),
    (
        "restart 2 24, restart 5 12",
        {"tail": ("There's a restart on wall 2 after 24 counts.\nAnother one on wall 5 after 12 counts.")},
    ),
    (
        "restart 2 24, restart 5 12",
        {"tail": ("Restart after 24 counts during wall 2\nRestart after 12 counts during wall 5")},
    ),
    ("restart 2 24, restart 5 12", {"tail": "restart wall 2: after count 24\nwall 5: after count 12"}),
    (
        "restart 2 24, restart 5 12, restart 7 16",
        {"tail": ("Restarts: wall 2 after 24 counts\nwall 5 after 12 counts\nwall 7 after 16 counts")},
    ),
    (
        "restart 2 24",
        {
            "tail": (
                "Restart: wall 2 after 24 counts\n"
                "On wall 5 after 12 counts the music slows down, keep dancing."
            )
        },
    ),
    ("restart 2 24", {"tail": "Restart: wall 2 after 24 counts\nWall 5: 32 counts"}),
    ("restart 2 24, restart 5 12", {"tail": "Restarts: wall 2 @ 24 [3:00]\n          wall 5 @ 12 [9:00]"}),
    (
        "restart 2 24, restart 5 12",
        {
            "tail": (
                "Restarts (2): second wall after the third section; fifth wall after count 4 of section 2"
            )
        },
    ),
    (
        "restart 6 16",
        {"tail": ("Restart: wall 6 after 16 counts, right after the pause in the music (4 counts).")},
    ),
    ("restart 6 16", {"tail": "There's a break in the music on wall 6: restart after 16 counts."}),
    ("restart 3 16", {"mid": "\nRestart here on wall 3 without change"}),
    ("restart 3 14", {"tail": "Wall 3: dance to count 14, then restart instead of the pivot."}),
    ("restart 3 16", {"mid": "\n(3rd wall: dance to here, the 8, then from the top)"}),
    ("restart 3 16, restart 6 16", {"mid": "\n(Walls 3 and 6: dance as far as 8, then start again)"}),
    ("restart 3 12", {"mid": "\n(Wall 3: dance only to count 4 of this section, then restart)"}),
    ("restart 3 16", {"mid": "\n(Wall 3: after counts 7-8 start again)"}),
    ("restart 3 8", {"tail": "Wall 3: dance to count 8, then restart"}),
    ("restart 3 8", {"head": "Restart: wall 3, dance up to 8 and restart"}),
    (
        "restart 3 16",
        {
            "tail": (
                "Restart on wall 3 after 16 counts. Repeat the dance until you have danced it twice more."
            )
        },
    ),
    ("restart 3 16", {"tail": "Restart: after wall 2, on the next wall (wall 3) after 16 counts"}),
    ("restart 3 16", {"tail": "The break is on wall 3: after 16 counts start again."}),
    ("restart 2 24, restart 5 12", {"tail": "Restart wall 2 after 24 counts.\nand wall 5 after 12."}),
    ("restart 2 24, restart 5 24", {"tail": "Restart after 24 counts on wall 2\nand wall 5"}),
)


@pytest.mark.parametrize(("expected", "told"), TOLD)
def test_a_restart_is_read_in_these_words(expected: str, told: dict[str, str]) -> None:
    """The right walls are cut, and nothing is doubted."""
    reading = read(SHEET.format(**{"head": "", "mid": "", "tail": ""} | told))
    assert sorted(expected.split(", ") if expected else []) == ordered_in(reading)
    assert [finding.message for finding in findings_of(reading) if finding.loud] == []


@pytest.mark.parametrize("words", ["Wall 3 ends here.", "* end of wall 3 *"])
def test_a_wall_that_is_said_to_end_inside_the_dance_is_doubted(words: str) -> None:
    """Whether it restarts there is not said."""
    found = findings_of(read(SHEET.format(head="", mid=f"\n{words}", tail="")))
    assert ["restart-unclear"] == [finding.rule for finding in found if finding.loud]
