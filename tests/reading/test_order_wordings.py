"""Restarts and tags in the words of many teachers, around one dance of 32 counts.

Worked out by hand from the trade's meaning of the words: common practice, no source.
"""

from __future__ import annotations

import pytest

from wallwise.checks.catalogue import findings_of
from wallwise.dance.walls import unroll
from wallwise.reading import read

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
)


@pytest.mark.parametrize(("expected", "told"), TOLD)
def test_an_order_is_read_in_these_words(expected: str, told: dict[str, str]) -> None:
    """The right walls are cut or followed by a tag, and nothing is doubted."""
    reading = read(SHEET.format(**{"head": "", "mid": "", "tail": ""} | told))
    found = []
    for wall in unroll(reading.dance, walls=12):
        if wall.cut_by == "restart":
            found.append(f"restart {wall.number} {wall.counts + wall.skipped}")
        elif wall.kind == "tag":
            found.append(f"tag {wall.number} {wall.counts}")
    assert ", ".join(sorted(found)) == ", ".join(sorted(expected.split(", ") if expected else []))
    assert [finding.message for finding in findings_of(reading) if finding.loud] == []


def test_counts_told_in_two_ways_are_doubted() -> None:
    """What is left out and what is danced cannot both be right."""
    told = "On wall 3 dance until count 16, leave out the last section and begin again"
    messages = [f.message for f in findings_of(read(SHEET.format(head="", mid="", tail=told))) if f.loud]
    assert messages == ["The restart on wall 3 is told twice, after 16 and after 24 counts."]
