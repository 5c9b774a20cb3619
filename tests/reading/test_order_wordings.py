"""Restarts and tags in the words of many teachers, around one dance of 32 counts.

Worked out by hand from the trade's meaning of the words: common practice, no source.
"""

from __future__ import annotations

from fractions import Fraction

import pytest

from wallwise.checks.catalogue import findings_of
from wallwise.dance.walls import unroll
from wallwise.reading import Reading, read

SHEET = """Tin Lantern
32 counts, 4 walls, Improver
Music: Oil and Wick by the Trimmers
{head}
S1: Vine right, vine left
1-4 Step R to side, step L behind R, step R to side, touch L beside R
5-8 Step L to side, step R behind L, step L to side, touch R beside L
S2: Rocking chair, pivots
1-4 Rock R forward, recover L, rock R back, recover L
5-6 Step R forward, pivot 1/2 left (6:00)
7-8 Step R forward, pivot 1/2 left (12:00){mid}
S3: Shuffles
1&2 Shuffle forward R, L, R
3-4 Rock L forward, recover R
5&6 Shuffle back L, R, L
7-8 Rock R back, recover L
S4: Jazz box 1/4
1-4 Cross R over L, step L back, turn 1/4 right stepping R to side, step L beside R (3:00)
5-8 Walk forward R, L, R, L
{tail}
"""
# "restart 3 16": on wall 3 after 16 counts; "tag 2 4": after wall 2, of 4 counts.
TOLD = (
    ("tag 3 4", {"tail": "TAG end of wall 3 (facing 9) 4 cts: sway R L R L"}),
    ("restart 3 16", {"head": "Restart: Wall 3 after 16 counts"}),
    ("restart 3 16, restart 6 16", {"head": "Restarts: 2 (walls 3 & 6, after count 16)"}),
    ("restart 3 16", {"tail": "Restart on wall 3, after 16 counts (facing 6:00)"}),
    ("restart 3 16", {"tail": "Restart: during wall 3 dance up to count 16, then restart facing 6 o'clock"}),
    ("restart 3 16", {"mid": "  *R*", "tail": "*R* Restart here on wall 3"}),
    ("restart 3 16, restart 6 16", {"mid": "\n***Restart here on walls 3 and 6***"}),
    ("restart 3 16", {"mid": "\n(Restart here during 3rd wall)"}),
    ("restart 3 16", {"mid": "\n** Wall 3: restart dance from here **"}),
    ("restart 3 16", {"mid": "\nRestart point: wall 3"}),
    ("restart 3 16", {"tail": "In the 3rd repetition restart after section 2."}),
    ("restart 3 16", {"tail": "On the third wall, restart the dance after the second section facing 6:00"}),
    ("restart 3 16, restart 6 16", {"tail": "Restart after S2 on walls 3 and 6"}),
    ("restart 3 16", {"tail": "R/S: W3 after 16c"}),
    ("restart 3 16", {"head": "1 restart W3/16"}),
    ("restart 3 16", {"tail": "There is 1 restart, on wall 3 (you start it at 6:00), after count 16."}),
    ("restart 3 16", {"tail": "Restart w/3 after 16 cts; begin again"}),
    (
        "restart 3 16",
        {"tail": "Wall 3 - only dance the first 16 counts then start again from the beginning."},
    ),
    ("restart 3 16", {"tail": "When dancing wall 3 stop after count 16 and begin again"}),
    ("restart 3 16", {"tail": "Leave out sections 3 and 4 on wall 3."}),
    ("restart 3 16", {"tail": "Drop the last 16 counts of wall 3"}),
    ("tag 2 4", {"tail": "Tag: at the end of wall 2 add 4 counts: sway R, L, R, L"}),
    ("tag 2 4, tag 4 4", {"tail": "TAG (after walls 2 and 4)\n1-4 Sway R, L, R, L"}),
    ("tag 2 4", {"tail": "4 count Tag after wall 2: Rock R forward, recover L, rock R back, recover L"}),
    (
        "tag 2 4",
        {
            "tail": "Tag - danced once, at the end of the second wall (facing 6:00)\n"
            "1-2 Step R to side, touch L\n3-4 Step L to side, touch R"
        },
    ),
    ("tag 2 2, tag 5 2", {"tail": "Tag after 2nd and 5th wall: stomp R, stomp L (2 counts)"}),
    ("tag 3 2", {"tail": "*Tag: 2 counts at end of wall 3: hip bumps R L*"}),
    ("tag 2 4", {"tail": "Bridge after wall 2 - Sways R L R L (4 counts)"}),
    ("tag 2 4, tag 4 4", {"tail": "At end of W2 & W4 add the 4 ct tag: R rocking chair"}),
    ("restart 3 16", {"tail": "Restart: After count 16 in round 3"}),
    ("restart 3 16", {"tail": "NB! Restart in wall 3 after count 16 - you'll be facing 6:00"}),
    ("restart 3 16", {"mid": "\n(Wall 3 restart here, facing 6:00)"}),
    ("restart 3 16", {"mid": "\n-- RESTART (3rd wall) --"}),
    ("restart 3 16", {"mid": "  (Restart W3)"}),
    ("restart 3 16", {"head": "Tag/Restart: No tag, 1 restart on wall 3 after 16 counts"}),
    ("restart 3 16", {"head": "No tags - one restart (W3 after 16)"}),
    ("", {"tail": "Ending: On wall 9 dance to count 14, then step R forward, pivot 1/2 left to face front"}),
    ("restart 3 16", {"mid": "  *", "tail": "*Restart on wall 3"}),
    ("restart 3 16, restart 6 16", {"mid": "  **", "tail": "** Restart here on walls 3 and 6"}),
    ("restart 3 16", {"mid": "  (#)", "tail": "# restart wall 3"}),
    ("restart 3 16", {"mid": "  (*)", "tail": "(*) Wall 3: restart here"}),
    ("restart 3 16", {"mid": "  [R]", "tail": "[R] = Restart here on wall 3"}),
    ("restart 3 16", {"mid": "  <-- restart here wall 3"}),
    ("restart 3 16", {"mid": "  *Restart", "tail": "*Restart: wall 3"}),
    (
        "restart 3 16",
        {
            "mid": "  ***",
            "tail": "***Restart: On wall 3 dance up to here (16 counts) and start again facing 6:00",
        },
    ),
    ("restart 3 16", {"mid": "  +", "tail": "+ Restart on 3rd wall"}),
    ("restart 3 16, restart 6 16", {"mid": "  (Restart w3 & w6)"}),
    ("restart 3 16", {"tail": "Restart: Wall 3, after count 16 (6:00)"}),
    ("restart 3 16", {"tail": "Restart - 3rd wall after 16 counts, facing back"}),
    (
        "restart 3 16, restart 6 24",
        {"tail": "Restart 1: wall 3 after 16 counts. Restart 2: wall 6 after 24 counts"},
    ),
    (
        "restart 3 16, restart 6 24",
        {"tail": "Restart: After 16 counts on wall 3, after 24 counts on wall 6"},
    ),
    (
        "restart 3 16, restart 6 24",
        {"tail": "Two restarts: the first on wall 3 after 16 counts, the other on wall 6 after 24."},
    ),
    ("restart 3 16, restart 6 24", {"head": "Restarts: 3rd wall (16 counts), 6th wall (24 counts)"}),
    ("restart 3 16", {"tail": "Short wall: wall 3 is only 16 counts"}),
    ("restart 3 16", {"tail": "Wall 3 (start facing 6:00): restart after count 16"}),
    ("tag 2 4", {"tail": "TAG: After wall 2 facing 6:00 – R side rock, recover, R back rock, recover"}),
    (
        "tag 2 4",
        {"tail": "TAG (4 counts) End of wall 2\n1,2 Rock R forward, recover L\n3,4 Rock R back, recover L"},
    ),
    ("restart 3 12", {"tail": "Restart on wall 3 after count 4 of section 2"}),
    ("restart 3 12", {"tail": "Wall 3: dance up to count 4 of the second section, then restart"}),
    ("restart 3 12", {"tail": "On wall 3 dance to count 12 (count 4 of section 2) and restart"}),
    ("restart 3 16", {"head": "One restart (wall 3, after section two)"}),
    ("restart 3 16", {"tail": "Restart: wall 3 after 8x2"}),
    (
        "restart 3 16",
        {"tail": "RESTART: Wall 3 starts facing 6:00. Dance only [1-8] and [9-16], then restart"},
    ),
    ("restart 3 16", {"tail": "Restart: on the third wall dance steps 1 to 16 only, then start again"}),
    (
        "restart 3 16, tag 1 4",
        {"head": "Tag after wall 1 (4 counts) - Restart on wall 3 after 16 - Ending on wall 6"},
    ),
    ("restart 3 16", {"head": "Restart: wall 3 after 16 counts | Ending on wall 6"}),
    (
        "tag 2 4, tag 5 4",
        {"tail": "Tag: at the end of wall 2 and at the end of wall 5, four sways: R, L, R, L"},
    ),
    (
        "tag 2 8",
        {
            "tail": """TAG (end of wall 2)
[1-8] V step, rocking chair
1-2 Step R out, step L out
3-4 Step R back to centre, step L beside R
5-8 Rocking chair R"""
        },
    ),
    (
        "tag 2 4, tag 5 4",
        {"tail": "Tag (end of walls 2 and 5):\n1-2 Step R to side, touch L\n3-4 Step L to side, touch R"},
    ),
    ("restart 3 16", {"tail": "Wall 3: only S1 + S2, then start again (6:00)"}),
    ("restart 3 16", {"tail": "Wall 3: sections 1 and 2 only, then start again, facing 6:00"}),
    ("restart 3 16", {"tail": "Wall three: dance parts one and two only, then restart at 6 o'clock"}),
    ("restart 3 16", {"tail": "On wall 3, dance Sections I and II, then begin again."}),
    ("restart 3 16", {"tail": "Wall 3: first and second section only."}),
    ("restart 3 16", {"tail": "Wall 3 is two eights long, then it starts over."}),
    ("restart 3 16, restart 6 8", {"tail": "RESTARTS: w3 after #2 (6:00), w6 after #1"}),
    ("restart 3 16", {"tail": "Wall 3: restart before count 17, facing 6:00"}),
    ("restart 3 16", {"tail": "Restart on wall 3 before section 3"}),
    ("restart 3 16", {"tail": "Restart: 3rd wall after 2 sections | Tag: none"}),
    ("restart 3 16", {"tail": "Restart: wall 3, 2nd 8 (6 o'clock)"}),
    ("restart 3 16", {"tail": "Wall 3 ends early: you do the first two sections and go back to the top."}),
    ("restart 3 16", {"tail": "Wall 3 = 16 counts. All other walls = 32 counts."}),
    ("restart 3 16, restart 7 8", {"tail": "Walls 1-2: full. Wall 3: 16. Walls 4-6: full. Wall 7: 8."}),
    (
        "restart 3 16, restart 6 8",
        {"tail": "Walls 1, 2: all. Wall 3: 16 and restart. Walls 4, 5: all. Wall 6: 8 and restart."},
    ),
    ("restart 3 16", {"head": "2 walls of 32 counts, restarts on wall 3", "mid": "\n- wall 3: restart -"}),
    ("restart 3 16", {"tail": "Wall 3 (back wall 6:00): restart after 16 counts"}),
    (
        "restart 3 16",
        {"tail": "Restart: wall 3 (6:00), after 16 counts. You restart on the back wall."},
    ),
    (
        "restart 3 16",
        {"tail": "Wall 3: dance up to and including count 16, then begin the dance again (on 6:00)."},
    ),
    (
        "restart 3 16, restart 5 24",
        {
            "tail": "You restart twice: in wall 3, when you have done 16 counts, "
            "and in wall 5, when you have done 24."
        },
    ),
    ("restart 3 16, restart 6 16", {"tail": "Restarts come on walls 3 and 6. Both are after 16 counts."}),
    ("restart 3 16, restart 6 16, restart 9 16", {"tail": "Every third wall (3, 6, 9) is 16 counts only."}),
    ("restart 3 16, restart 6 8", {"tail": "RESTARTS (2)\nWall 3, after count 16\nOn wall 6 only 8 counts"}),
    ("restart 3 16", {"tail": "Restart: Wall 3 after S2. Ending: Wall 9 after S1, turn to the front."}),
    (
        "restart 3 16",
        {"tail": "Final: wall 9 starts at 6:00, dance sections 1 and 2 and pose. Restart: wall 3 after 16."},
    ),
    ("restart 3 16", {"tail": "Sequence: 32, 32, 16 (restart), 32, 32"}),
    ("restart 3 16", {"tail": "Phrasing: 32 - 32 - 16 R - 32 - 32"}),
    ("restart 4 16, tag 2 4", {"tail": "Order: 32, 32, Tag (4), 32, 16, 32\nTag: rocking chair R"}),
    ("tag 2 4, tag 4 4", {"tail": "Tag (after the end of the 2nd and of the 4th wall)\n1-4 Sway R, L, R, L"}),
    ("tag 2 4, tag 4 4", {"tail": "Tag: after the 2nd, and again after the 4th wall: rocking chair R"}),
    ("tag 2 4, tag 4 4", {"tail": "THE TAG (after walls 2 and 4)\n1-4 Sway right, left, right, left"}),
    (
        "tag 2 2, tag 3 2",
        {"tail": "+ Tag of 2 counts: sway R, sway L. You do it after wall 2 (6:00) and wall 3."},
    ),
    (
        "tag 2 4, tag 3 4",
        {
            "tail": "FOUR-COUNT TAG\nYou need it twice: when wall 2 is finished (facing 6:00) "
            "and when wall 3 is finished (facing 9:00).\n1-4 Sway right, left, right, left"
        },
    ),
    ("tag 2 4, tag 5 4", {"tail": "A 4-count tag is danced after walls 2 and 5. It goes: sway R, L, R, L."}),
    (
        "tag 3 4, tag 6 8",
        {"tail": "Tag: rocking chair R, end of wall 3 danced once and end of wall 6 danced twice"},
    ),
    ("tag 2 4", {"tail": "You will need a tag at the end of the second wall:\n1-4 Sway R, L, R, L"}),
    ("tag 2 4", {"tail": "TAG - 4 counts - after wall 2 - sway R, L, R, L - then carry on with wall 3"}),
    (
        "tag 1 4, tag 3 2",
        {"tail": "Tag A after wall 1: 1-4 rocking chair R. Tag B after wall 3: 1-2 sway R, sway L."},
    ),
    ("tag 4 4", {"tail": "At the end of wall 4 hold for 4 counts before starting wall 5."}),
    ("tag 4 2", {"tail": "Hold for 2 counts at the end of wall 4."}),
    (
        "tag 3 4",
        {
            "head": "Tag: 4 counts, after the 3rd wall",
            "tail": "Tag (facing 9:00): 1-4 sway R, L, R, L. Then from the top.",
        },
    ),
    (
        "tag 2 4",
        {
            "head": "Walls 1, 2 - all, then TAG (6:00)",
            "tail": "[TAG] 4 counts - end of wall 2\n1-4 Sway R, L, R, L",
        },
    ),
    (
        "tag 2 4",
        {"tail": "Tag after wall 2 (4 counts): sway R, L, R, L. It turns nobody, so wall 3 begins at 6:00."},
    ),
    ("restart 3 16", {"tail": "Our only restart: third wall, straight after the pivots at count sixteen."}),
    ("restart 5 24", {"tail": "Attention: wall 5 is shorter by 8 counts."}),
    ("restart 5 24", {"tail": "Wall 5 loses its last eight."}),
    ("restart 5 24", {"tail": "Wall 5: no section 4. Go straight to the top."}),
    ("restart 5 24", {"tail": "On wall 5 we skip the jazz box and the walks (section 4) and begin wall 6."}),
    ("restart 4 24", {"tail": "The 4th time you dance it, restart after count 24"}),
    ("restart 2 16, restart 5 24", {"tail": "Restart: W2-16, W5-24"}),
    ("restart 2 16, restart 5 24", {"tail": "Restarts after 16 counts on wall 2, 24 counts on wall 5"}),
    ("restart 2 16, restart 5 24", {"tail": "Wall 2: restart @16. Wall 5: restart @24."}),
    ("restart 3 16, restart 6 16", {"mid": " @", "tail": "@ on walls 3 and 6 restart"}),
    ("restart 3 16", {"tail": "Restart: 16 counts into the third wall"}),
    ("restart 3 16", {"tail": "On wall #3, after the 16th count, restart."}),
    ("restart 3 16, restart 6 16", {"tail": "Restart: 3rd & 6th (after 16)"}),
    (
        "restart 3 16, restart 6 16",
        {"tail": "On the third and sixth walls dance only as far as the pivots (count 16) and begin again."},
    ),
    ("restart 3 16", {"tail": "Restart comes on wall 3. 16 counts. Then start over."}),
    ("restart 3 16", {"tail": "Restart wall 3; 16 counts; no step change needed"}),
    (
        "restart 3 16, restart 6 16, tag 5 4",
        {"tail": "Restarts after 16 counts on 3rd and 6th wall, tag (rocking chair R, 4 counts) after 5th."},
    ),
    (
        "restart 3 16, tag 5 4",
        {"tail": "Restart on 3rd wall after 16. Tag after 5th wall: 1-4 rocking chair R"},
    ),
    ("tag 1 2, tag 3 2", {"tail": "Bridge: 2 counts after walls 1 and 3 - clap, clap"}),
    ("tag 3 4", {"tail": "There is one tag - you do it at the end of wall 3:\nSway R, L, R, L"}),
    ("", {"tail": "Wall 1 starts at 12:00, wall 2 at 3:00, wall 3 at 6:00, wall 4 at 9:00."}),
    ("", {"tail": "You dance 9 walls in all; the song ends on wall 9."}),
    ("", {"tail": "On wall 6 the music nearly stops for 8 counts, keep dancing."}),
    ("", {"tail": "No tags/restarts. The song fades on wall 10, keep dancing to the end."}),
    ("restart 3 16", {"tail": "Only sections 1 and 2 on wall 3!"}),
    ("restart 3 16", {"tail": "Wall 3 is a half wall."}),
    ("tag 2 4, tag 4 4", {"tail": "We add a rocking chair after walls 2 and 4."}),
    ("tag 2 4", {"tail": "Tag after wall 2: sway R, sway L, sway R, sway L, and begin wall 3."}),
    (
        "tag 3 4",
        {"tail": "TAG after wall 3\nRock R forward, recover L\nStomp R, stomp L"},
    ),
    (
        "restart 2 16, restart 5 16",
        {
            "head": "Start: 16 counts in     Two restarts: wall 2 and wall 5, both after Sec 2",
            "mid": "\n**Restart on wall 2 (you will face 3:00) and on wall 5 (you will face 9:00)**",
        },
    ),
    ("restart 2 24, restart 5 24", {"head": "16 count intro, restarts on walls 2 and 5 after section 3"}),
    ("restart 2 24, restart 5 24", {"head": "Intro: 16 counts - Restarts: wall 2, wall 5, after section 3"}),
    ("restart 3 16", {"tail": "Restart on wall 3 after II (16 ct)"}),
    ("restart 3 16", {"mid": "\n** Restart here on wall 3 after count 8, facing 6 o'clock **"}),
    (
        "restart 2 16, restart 5 24",
        {"mid": "\nRestart on wall 2 after 16 counts. On wall 5 restart after 24."},
    ),
    ("tag 3 4, tag 6 4", {"tail": "4 ct TAG end of wall 3 (on 9) and of wall 6 (on 6) = the 4 walks again"}),
    ("tag 3 4", {"tail": "At the end of wall 3 do the 4 forward walks once more, then start over."}),
    ("tag 3 4", {"tail": "Tag, end of wall 3 - the last 4 counts one extra time"}),
    (
        "tag 2 4",
        {"tail": "After the 2nd time through, clap 4 times (that's a 4-count tag), and start again."},
    ),
    ("tag 3 4", {"tail": "After the 3rd rotation: hold 4 counts, then start again"}),
    ("", {"tail": "no tags, no restarts"}),
    ("", {"tail": "without tags or restarts"}),
    ("", {"tail": "Start again (R to side on 1), no tags no restarts"}),
)


def ordered_in(reading: Reading) -> list[str]:
    """The restarts and tags of twelve walls, as the expected ones are written, in the order of the words."""
    found = []
    for wall in unroll(reading.dance, walls=12):
        if wall.cut_by == "restart":
            found.append(f"restart {wall.number} {wall.counts + wall.skipped}")
        elif wall.kind == "tag":
            found.append(f"tag {wall.number} {wall.counts}")
    return sorted(found)


@pytest.mark.parametrize(("expected", "told"), TOLD)
def test_an_order_is_read_in_these_words(expected: str, told: dict[str, str]) -> None:
    """The right walls are cut or followed by a tag, and nothing is doubted."""
    reading = read(SHEET.format(**{"head": "", "mid": "", "tail": ""} | told))
    assert sorted(expected.split(", ") if expected else []) == ordered_in(reading)
    assert [finding.message for finding in findings_of(reading) if finding.loud] == []


def test_counts_told_in_two_ways_are_doubted() -> None:
    """What is left out and what is danced cannot both be right."""
    told = "On wall 3 dance until count 16, leave out the last section and begin again"
    messages = [f.message for f in findings_of(read(SHEET.format(head="", mid="", tail=told))) if f.loud]
    assert messages == ["The restart on wall 3 is told twice, after 16 and after 24 counts."]


TWO_ENDS = (
    {"mid": "\n** In the 3rd wall stop here after 24 counts and begin again, facing 6 o'clock **"},
    {"mid": "\n(Restart here on wall 3, after 8 counts)"},
    {"mid": "\n*Restart on wall 3 after 24 counts"},
    {"mid": "\n*Restart wall 3 after section 3"},
    {"mid": "\n*Restart here on wall 3", "head": "Restart: wall 3 after 24 counts"},
    {"tail": "Restart on wall 3 after II (24 ct)"},
    {"tail": "Restart on wall 3, after section 2, 24 counts"},
    {"tail": "Wall 3: dance the first 16 counts (section 1) and restart"},
    {"tail": "Restart on walls 3 and 6 after section 2 (24 counts)"},
)


@pytest.mark.parametrize("told", TWO_ENDS)
def test_a_restart_with_two_ends_is_doubted(told: dict[str, str]) -> None:
    """Where it stands, the section it names and the count it tells are to agree."""
    reading = read(SHEET.format(**{"head": "", "mid": "", "tail": ""} | told))
    messages = [finding.message for finding in findings_of(reading) if finding.rule == "restart-unclear"]
    assert "The restart on wall 3 is told twice" in messages[0]


AGAIN = {
    "tag 2 8": (
        "Tag after wall 2: repeat the last eight.",
        "At the end of wall 2, repeat section 4.",
        "After wall 2, dance section 4 once more, then start again.",
        "Tag - at the end of wall 2 dance part four once more, 8 counts. So wall 3 begins at 9:00.",
        "The tag is section 4. It comes after wall 2.",
        "Tag at the end of wall 2: repeat counts 25-32, then start wall 3 facing 9:00.",
    ),
    "tag 2 4": (
        "Tag: end of wall 2, do the last 4 counts again.",
        "Tag after wall 2: counts 5-8 of section 4 once more.",
        "Tag: when wall 2 is finished, repeat counts 29-32",
    ),
}


@pytest.mark.parametrize(("expected", "words"), [(tag, words) for tag in AGAIN for words in AGAIN[tag]])
def test_a_tag_dances_counts_of_the_dance_again(expected: str, words: str) -> None:
    """It has their steps and their turn: the jazz box of section 4 turns a quarter more."""
    reading = read(SHEET.format(head="", mid="", tail=words))
    (tag,) = reading.dance.tags
    assert expected == f"tag {tag.after_wall} {tag.part.counts}"
    assert tag.part.net_turn == (Fraction(1, 4) if tag.part.counts > 4 else 0)
    assert [finding.message for finding in findings_of(reading) if finding.loud] == []


def test_a_tag_that_begins_on_the_wrong_foot_is_found() -> None:
    """The last four counts of section 1 begin with the left foot, which bears the weight after the dance."""
    reading = read(SHEET.format(head="", mid="", tail="Tag after wall 2: repeat counts 5-8 of section 1."))
    assert ["tag-foot"] == [finding.rule for finding in findings_of(reading) if finding.loud]


def test_a_tag_of_several_walls_told_in_one_breath_is_doubted() -> None:
    """After each of them, or only after the last."""
    told = "Walls 1, 2 - all, then the tag (4 counts)"
    found = [f.message for f in findings_of(read(SHEET.format(head="", mid="", tail=told))) if f.loud]
    assert ["only after the last" in message for message in found] == [True]


CHANGED = {
    "Restart with a step change on wall 3: dance to count 14, then hold for counts 15-16 and restart.": "15",
    "Restart: on wall 3 dance up to count 15; on count 16 touch R beside L in place of the pivot.": "16",
    "On wall 3 replace the last 7-8 of S2 with:\n7-8 Touch R forward, touch R beside L\nand restart.": "15",
    "Restart on wall 3: replace counts 15-16 with: touch R forward, touch R beside L.": "15",
    "Step change on wall 3: Dance to count 6 of section 2, then do 7-8: touch R forward, touch R beside L\n"
    "instead of the pivot, then restart.": "15",
    "Restart, wall 3, after 16 with a step change: dance 15-16 as: touch R forward, touch R beside L": "15",
}


@pytest.mark.parametrize("words", CHANGED)
def test_steps_change_before_a_restart(words: str) -> None:
    """The last counts before it are danced otherwise, and it is after 16 counts all the same."""
    (restart,) = read(SHEET.format(head="", mid="", tail=words)).dance.restarts
    assert (3, Fraction(16), CHANGED[words]) == (restart.wall, restart.after_counts, str(restart.change_from))


def test_a_change_that_cannot_be_placed_is_doubted() -> None:
    """On which counts the steps behind "then" are is not told."""
    told = "On wall 3 dance 14 counts, then step R forward and restart."
    found = [f.rule for f in findings_of(read(SHEET.format(head="", mid="", tail=told))) if f.loud]
    assert "restart-unclear" in found


def test_a_sequence_of_counts_with_other_words_is_doubted() -> None:
    """What the words order is not known."""
    told = "Sequence: 32, 32, 16 with the big finish of the bus, 32"
    found = [f.rule for f in findings_of(read(SHEET.format(head="", mid="", tail=told))) if f.loud]
    assert found == ["restart-unclear"]
