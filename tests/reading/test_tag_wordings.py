"""More words for tags: steps before them, without the word, listed by walls.

Worked out by hand from the trade's meaning of the words: common practice, no source.
"""

from __future__ import annotations

import pytest
from tests.reading.test_order_wordings import SHEET, ordered_in

from wallwise.checks.catalogue import findings_of
from wallwise.reading import read

TOLD = (
    ("tag 2 4", {"tail": "Tag/Restart: at the end of wall 2 add 4 counts and restart: sway R L R L"}),
    ("tag 2 4", {"tail": "Tag/Restart: After wall 2, add 4 counts (sway R, L, R, L) and restart"}),
    ("tag 2 4", {"head": "Tag/Restart: after wall 2 add 4 counts and restart"}),
    (
        "tag 2 4",
        {"head": "Tag/Restart: 1 tag (4 counts) after wall 2, no restart", "tail": "Tag: sway R L R L"},
    ),
    ("tag 2 4", {"tail": "Sway R, L, R, L as a tag after wall 2."}),
    ("tag 2 4", {"tail": "After wall 2 sway R, L, R, L (4-count tag)."}),
    (
        "tag 2 4",
        {"tail": "Rock R forward, recover L, rock R back, recover L as a 4 count tag at the end of wall 2."},
    ),
    ("tag 2 4", {"tail": "4 extra counts after wall 2: sway R L R L"}),
    ("tag 2 4", {"tail": "At the end of the second wall there are 4 extra counts. Sway R, L, R, L."}),
    ("tag 2 4", {"tail": "TAG 1 x 4 counts after wall 2: sway R L R L"}),
    ("tag 2 4, tag 4 4", {"tail": "TAG x2: end of walls 2 and 4: 1-4 Sway R L R L"}),
    (
        "tag 2 4",
        {"tail": "Tag: (end wall 2, facing 6:00) 1-2 Rock R fwd, recover L 3-4 Rock R back, recover L"},
    ),
    ("tag 2 4", {"tail": "TAG: 4 counts\nDanced at the end of wall 2, facing 6:00\n1-4 Sway R, L, R, L"}),
    ("tag 2 4", {"tail": "TAG\nEnd of wall 2 (6:00)\n1-4 Sway R, L, R, L"}),
    ("tag 2 4", {"tail": "Tag\n1-4 Sway R, L, R, L\n(danced after wall 2)"}),
    ("tag 2 4", {"tail": "Tag: 1-4 Sway R, L, R, L\nDo the tag after wall 2"}),
    ("tag 2 4, tag 4 4", {"head": "Tags: 2", "tail": "TAG (after walls 2 & 4): rocking chair"}),
    ("tag 2 4", {"tail": "*** TAG *** After 2nd wall only\n1,2,3,4: Sway R,L,R,L"}),
    ("tag 2 4", {"tail": "Between walls 2 and 3 there is a 4-count tag: sway R L R L"}),
    ("tag 2 4", {"tail": "Before wall 3 add a rocking chair (4 counts)."}),
    ("tag 2 4", {"tail": "Just before you start wall 3, sway R, L, R, L (4-count tag)"}),
    ("tag 2 4", {"tail": "Once wall 2 is done, sway R, L, R, L then go on with wall 3"}),
    ("tag 2 4", {"tail": "Wall 2 ends with a 4 count tag: sway R L R L"}),
    ("tag 2 4", {"tail": "2nd wall: at the end add a R rocking chair"}),
    (
        "tag 2 2, tag 4 4",
        {
            "tail": "Tags:\nAfter wall 2: stomp R, stomp L (2 counts)\nAfter wall 4: rocking chair R "
            "(4 counts)"
        },
    ),
    (
        "tag 2 2, tag 4 4",
        {
            "tail": "After wall 2: 2-count tag - stomp R, stomp L. After wall 4: 4-count tag - "
            "rocking chair R."
        },
    ),
    ("tag 2 2, tag 4 4", {"head": "Tags: 2 counts after wall 2, 4 counts after wall 4"}),
    ("tag 2 4", {"tail": "Hold 4 counts after wall 2, then restart the dance"}),
    ("tag 2 4", {"tail": "After wall 2 wait 4 counts and start again"}),
    ("tag 2 4", {"tail": "The music pauses after wall 2: hold for 4 counts"}),
    ("tag 2 8", {"tail": "After wall 2 repeat section 4, then start from the top"}),
    ("tag 2 4", {"tail": "TAG after wall 2: dance the last four counts again (walks R L R L)"}),
    ("tag 2 4", {"tail": "Tag (4c) W2: R rocking chair"}),
    ("tag 2 4", {"tail": "W2 + tag 4c (sway R L R L)"}),
    ("tag 2 4", {"tail": "Tag 4 cts: after W2. Step R to side, touch L, step L to side, touch R"}),
    (
        "tag 2 4",
        {
            "tail": "There is a little tag after the second wall. It is only a rocking chair on the "
            "right foot."
        },
    ),
    (
        "tag 2 4",
        {
            "tail": "At the end of wall 2 you will hear four extra beats in the music. Sway R, L, R, "
            "L through these."
        },
    ),
    (
        "tag 2 4",
        {
            "tail": "Bridge (4 counts): after wall 2\nStep R to side, touch L beside R\nStep L to "
            "side, touch R beside L"
        },
    ),
    ("tag 2 4", {"head": "1 bridge (4 counts, after 2nd wall)", "tail": "Bridge: sway R, L, R, L"}),
    ("tag 2 4", {"tail": "(Tag: after wall 2 - 4 counts: R side, touch, L side, touch)"}),
    ("tag 2 4", {"tail": "Tag: Complete wall 2 (6:00), then sway R, L, R, L"}),
    ("tag 2 4", {"tail": "TAG – wall 2 – end – sway R L R L"}),
    ("tag 2 4, tag 5 4", {"tail": "TAG: Repeat the rocking chair at the end of walls 2 and 5"}),
    ("tag 2 4", {"tail": "TAG: counts 1-4 of section 2 (rocking chair) at the end of wall 2"}),
    ("tag 2 4", {"tail": "T = tag, 4 counts, end of wall 2: rocking chair R"}),
    ("tag 2 4", {"tail": "After wall 2, sway R, L, R, L, then start again."}),
    (
        "tag 2 4",
        {
            "tail": "At the end of wall 2 rock R forward, recover L, rock R back, recover L and "
            "start the dance again from count 1."
        },
    ),
    ("tag 2 4, tag 5 4", {"tail": "After walls 2 and 5, sway R, L, R, L, then begin again."}),
    ("tag 2 4", {"tail": "When wall 2 is over, R rocking chair and carry on."}),
    (
        "tag 2 4",
        {
            "head": "4-count tag after the 2nd wall",
            "tail": "TAG\n1-2 Rock R forward, recover L\n3-4 Rock R back, recover L",
        },
    ),
    (
        "tag 2 4",
        {"head": "Tag at end of wall 2 only (facing 6:00)", "tail": "Tag: Sway R, L, R, L (4 counts)"},
    ),
    (
        "tag 2 4",
        {
            "tail": "TAG: (4 counts) - after wall 2 - you will be facing 6:00\n1-2 Step R side, touch "
            "L\n3-4 Step L side, touch R"
        },
    ),
    (
        "tag 2 4",
        {
            "tail": "Tag - End of Wall 2\nSide Touch R, Side Touch L\n1-2 Step R to side, touch L "
            "beside R\n3-4 Step L to side, touch R beside L"
        },
    ),
    (
        "tag 2 4",
        {"tail": "TAG: END OF WALL 2\nROCKING CHAIR\n1-4 Rock R forward, recover L, rock R back, recover L"},
    ),
    ("tag 2 8", {"tail": "8 count tag at the end of wall 2:\n1-4 Rocking chair R\n5-8 Sway R, L, R, L"}),
    (
        "tag 2 8, tag 4 8",
        {"tail": "**Tag** danced after walls 2 and 4\n[1-8]\n1-4 Rocking chair R\n5-8 Sway R, L, R, L"},
    ),
    ("tag 2 4", {"tail": "Tag after wall 2 (6:00): 4 counts of hip sways R, L, R, L."}),
    (
        "tag 2 4",
        {"tail": "You will do a 4-count tag at the end of the 2nd wall, facing 6:00: R rocking chair"},
    ),
    ("tag 2 4", {"tail": "After finishing wall 2 you do this tag: 1-4 Sway R, L, R, L"}),
    ("tag 2 4", {"tail": "Tag (once, after wall 2): sway R, sway L, sway R, sway L"}),
    ("tag 2 4, tag 5 4", {"tail": "The tag happens twice, after walls 2 and 5: sway R, L, R, L"}),
    (
        "tag 2 4, tag 5 4",
        {
            "tail": "TAG - danced at the end of Walls 2 & 5\n1 Step R to R side\n2 Touch L next to R\n3 "
            "Step L to L side\n4 Touch R next to L"
        },
    ),
    ("tag 2 4, tag 5 8", {"tail": "Tag after wall 2: R rocking chair. After wall 5 do it twice."}),
    ("tag 2 4", {"tail": "The tag: when wall 2 ends, clap four times (4 counts)."}),
    ("tag 2 4", {"tail": "(4 count tag here at the end of wall 2: hold for 4 counts)"}),
    ("tag 2 4", {"tail": "After the 2nd wall: pause 4 counts."}),
    ("tag 2 4", {"tail": "There's a 4 beat pause after wall 2; just hold."}),
    ("tag 2 4", {"tail": "Tag after wall 2 - rocking chair: rock R fwd, rec L, rock R bk, rec L"}),
    ("tag 2 4", {"tail": "Tag after wall 2 - rocking chair, 4 cts: rock R fwd, rec L, rock R bk, rec L"}),
    ("tag 2 8", {"tail": "Tag = section 4 again, after wall 2"}),
    ("tag 2 16", {"tail": "Tag after wall 2: dance section 4 twice"}),
    ("tag 2 8", {"tail": "Tag after wall 2: dance section 4 twice, i.e. one extra time"}),
    ("tag 2 8", {"tail": "Tag after wall 2: dance section 4 twice (once more than written)"}),
    ("tag 2 8", {"tail": "End of wall 2: repeat last 8 counts"}),
    ("tag 2 8", {"tail": "TAG: on the 2nd wall repeat section 4 at the end"}),
    ("tag 2 16", {"tail": "TAG after wall 2: repeat the last two sections"}),
    ("tag 2 4", {"tail": "2nd wall tag (4 counts): Sway R, L, R, L"}),
    ("tag 2 4", {"tail": "TAG wall 2: Sway R, L, R, L"}),
    ("tag 2 4", {"tail": "Tag 1: end of W2: 4 counts - Sway R, L, R, L"}),
    ("tag 2 4, tag 4 4", {"tail": "Tag: W2 & W4 (end): R rocking chair"}),
    ("tag 2 4", {"tail": "Insert 4 counts after wall 2: sway R, L, R, L"}),
    ("tag 2 4", {"tail": "Then comes the tag, after wall 2 only: rocking chair R."}),
    ("tag 2 4", {"tail": "1-4 TAG (after wall 2): Sway R, L, R, L"}),
    ("tag 2 4, tag 4 4, tag 6 4", {"tail": "Tag after every second wall (2, 4 and 6): sway R L R L"}),
    ("tag 2 4", {"tail": "Bridge at the end of the second repetition - rocking chair R"}),
    ("tag 2 4", {"tail": "Tag: facing 6:00 (end of wall 2): Sway R, L, R, L"}),
    (
        "tag 2 4",
        {
            "tail": "To fit the music there is a 4 count tag at the end of wall 2 (6:00). Rock R fwd, "
            "recover L, rock R back, recover L."
        },
    ),
    (
        "tag 3 4",
        {"tail": "TAG after wall 3, facing 9:00, sway R, sway L, sway R, sway L. Restart the dance."},
    ),
    ("restart 3 16, tag 3 4", {"mid": "\nOn wall 3 here: 4-count tag (sway R L R L) then restart"}),
    ("tag 4 2", {"head": "Tag: 1 - 2 counts after wall 4", "tail": "Tag: end of wall 4. Sway R, sway L."}),
    ("tag 4 2", {"head": "Tag: 2 counts", "tail": "Tag: after wall 4, stomp R, stomp L, then begin wall 5."}),
    ("tag 2 4", {"tail": "After wall 2 (only) dance these four counts: sway R, L, R, L"}),
    ("tag 2 4", {"tail": "After wall 2 there is a 4-count break in the music. Hold it!"}),
    ("tag 2 16", {"tail": "After wall 2, dance sections 1 and 2 again as a tag, then start from the top"}),
    (
        "tag 2 2",
        {
            "tail": (
                "Extra bit! When you have danced it twice you face 6:00. Stomp R, stomp L (2"
                " counts), then go on with wall 3."
            )
        },
    ),
    (
        "tag 2 2",
        {"tail": ("Tag: After two walls (6:00): stomp R, stomp L (2 counts), then go on with wall 3.")},
    ),
    (
        "tag 3 4",
        {
            "tail": (
                "When you've danced it three times you face 9:00. Sway R, L, R, L (4 counts),"
                " then carry on with wall 4."
            )
        },
    ),
    ("tag 2 4", {"tail": "After you have done the dance twice, add 4 counts: sway R L R L."}),
    ("tag 3 4", {"tail": "Tag: when the dance has been danced three times: sway R L R L"}),
    ("tag 2 4", {"tail": "Tag (4 counts) after you have completed the dance twice: sway R L R L"}),
    ("tag 2 2", {"tail": "Dance it two times through, then add: stomp R, stomp L (2 counts)."}),
    ("tag 2 4", {"tail": "After two rounds add 4 counts: sway R, L, R, L"}),
    (
        "tag 2 4",
        {
            "tail": (
                "Once you have danced the whole thing twice, clap four times (4 counts), then"
                " off we go again."
            )
        },
    ),
    ("tag 3 4", {"tail": "After three walls there is a tag: sway R, L, R, L"}),
    ("tag 3 4", {"tail": "Tag 4 counts after 3 walls: sway R, L, R, L"}),
    ("tag 3 4", {"tail": "Having done 3 full walls, sway R, L, R, L before wall 4."}),
    (
        "tag 6 4",
        {
            "tail": (
                "Don't forget the little wait after wall 6. You'll be looking at 6:00, just"
                " clap four times (4 counts), keep your weight on the left, then off we go"
                " again."
            )
        },
    ),
    ("tag 6 4", {"tail": "There is a little pause after wall 6: hold 4 counts, then start again."}),
    ("tag 6 4", {"tail": ("After wall 6 the music takes a breather: wait 4 counts, then off again.")}),
    ("tag 6 4", {"tail": "Wait 4 counts after wall 6."}),
    ("tag 6 4", {"tail": "After wall 6 there's a 4 count break in the music, just hold."}),
    (
        "tag 6 4",
        {"tail": ("Mind the pause at the end of wall 6 (4 counts) and start again with the vocals.")},
    ),
    ("tag 6 4", {"tail": ("Breather after wall 6: 4 counts, facing 6:00. Start again with the singing.")}),
    ("tag 6 4", {"tail": "After wall 6 stand still for 4 counts, then begin again."}),
    ("tag 6 4", {"tail": "Pause after wall 6 (4 counts)"}),
    (
        "tag 6 4",
        {
            "tail": (
                "At the end of the sixth wall the band stops for four beats. Wait for them and begin again."
            )
        },
    ),
    (
        "restart 2 24, tag 5 4",
        {"tail": ("Restart: wall 2 after 24 counts\nTag: wall 5, after 32 counts: sway R, L, R, L")},
    ),
    ("restart 2 24, tag 5 4", {"tail": "Restart: wall 2 after 24 counts\nTag after wall 5: sway R, L, R, L"}),
    (
        "tag 2 4, tag 5 2",
        {
            "tail": (
                "TAG after wall 2 (4 counts):\n"
                "1-4 Sway R, L, R, L\n"
                "After wall 5 only do sway R, L (first 2 counts)."
            )
        },
    ),
    (
        "tag 2 4, tag 5 2",
        {"tail": ("TAG after wall 2 (4 counts):\n1-4 Sway R, L, R, L\nWall 5: only 2 counts of the tag.")},
    ),
    (
        "tag 2 4, tag 5 2",
        {
            "tail": (
                "TAG after wall 2 (4 counts):\n"
                "1-4 Sway R, L, R, L\n"
                "After wall 5: only counts 1-2 of the tag, then start again."
            )
        },
    ),
    (
        "tag 2 4, tag 4 4, tag 5 2",
        {
            "tail": (
                "TAG after walls 2 and 4 (4 counts):\n"
                "1-4 Sway R, L, R, L\n"
                "After wall 5 you only dance the first two counts of the tag."
            )
        },
    ),
    (
        "tag 2 4, tag 5 8",
        {"tail": ("TAG after wall 2 (4 counts):\n1-4 Sway R, L, R, L\nAfter wall 5 dance the tag twice.")},
    ),
    (
        "tag 2 4, tag 5 2",
        {
            "tail": (
                "TAG after wall 2 (4 counts):\n"
                "1-4 Sway R, L, R, L\n"
                "On the fifth wall the tag is shorter: just the first 2 counts."
            )
        },
    ),
    ("tag 2 4", {"tail": "TAG - when you've done the dance twice - 4 counts: sway R L R L"}),
    ("tag 4 4", {"tail": "After 4 walls comes the tag (4 counts): sway R, L, R, L"}),
    (
        "tag 4 4",
        {"tail": ("Tag: 4 counts, after having danced the whole dance four times.\n1-4 Sway R, L, R, L")},
    ),
    ("tag 2 4", {"tail": ("When you have gone through it twice: sway R, L, R, L, then from the top.")}),
    ("tag 2 4", {"tail": ("Tag after the dance has been done two times (facing 6:00): 1-4 sway R, L, R, L")}),
    ("", {"tail": "After four walls you will be facing the front again."}),
    ("", {"tail": "The dance ends after 8 walls, facing the front."}),
    ("", {"tail": "Dance it twice a week and enjoy!"}),
    ("tag 3 4", {"tail": "Finished three walls? Then add 4 counts: sway R, L, R, L"}),
    ("tag 3 4", {"tail": ("At the end of three walls: sway R, L, R, L (4 counts), go on with wall 4.")}),
    ("tag 3 4", {"tail": ("When three walls are done, sway R, L, R, L (4 counts) and go on with wall 4.")}),
    (
        "tag 6 8",
        {
            "tail": (
                "After wall 6 there are 8 counts where nothing happens: just stand and smile,"
                " then begin again."
            )
        },
    ),
    (
        "tag 6 4",
        {"tail": ("There is a gap of 4 counts after the sixth wall. Hold it and start again on the vocals.")},
    ),
    ("tag 6 4", {"tail": "4 counts pause after wall 6"}),
    ("tag 6 4", {"tail": "Tag: hold 4 counts after wall 6"}),
    ("tag 6 4", {"tail": "After wall 6 you must wait 4 counts and then start new."}),
    ("tag 6 4", {"tail": "After wall 6, clap, clap, clap, clap (4 counts) and off you go again!"}),
    ("", {"tail": "After two walls the lyrics start."}),
    ("tag 2 4", {"tail": "After wall 2 (after two rounds) add 4 counts: sway R, L, R, L"}),
    ("tag 2 4, tag 5 4", {"tail": "TAG (wall 2 and 5): sway R, L, R, L"}),
    ("tag 2 4", {"tail": "After the second time through, pause for four counts."}),
)


@pytest.mark.parametrize(("expected", "told"), TOLD)
def test_a_tag_is_read_in_these_words(expected: str, told: dict[str, str]) -> None:
    """The right walls are followed by a tag, and nothing is doubted."""
    reading = read(SHEET.format(**{"head": "", "mid": "", "tail": ""} | told))
    assert sorted(expected.split(", ") if expected else []) == ordered_in(reading)
    assert [finding.message for finding in findings_of(reading) if finding.loud] == []


LENGTHS = (
    ("After wall 2 there is a tag of 2 counts: sway R, sway L, sway R, sway L", True),
    ("After wall 2 there is a tag of 4 counts: sway R, sway L, sway R, sway L", False),
    ("Tag after wall 2 (8 counts)\n1-4 Rock R forward, recover L, rock R back, recover L", True),
    ("Tag after wall 2 (4 counts)\n1-4 Rock R forward, recover L, rock R back, recover L", False),
)


@pytest.mark.parametrize(("tail", "differs"), LENGTHS)
def test_a_tag_whose_steps_last_other_counts_than_told_is_doubted(tail: str, differs: bool) -> None:
    found = findings_of(read(SHEET.format(head="", mid="", tail=tail)))
    assert any(finding.loud for finding in found) is differs
