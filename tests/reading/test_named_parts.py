"""Parts that are called as those of the song, and repeats that a heading names."""

from __future__ import annotations

import re

import pytest

from wallwise.checks.catalogue import findings_of
from wallwise.dance.model import Foot
from wallwise.reading import read
from wallwise.reading.header import read_header
from wallwise.reading.tidy import tidy

WALKS = "1-2 walk forward right, left\n3&4 shuffle forward right, left, right\n"
WALKS += "5-6 rock left forward, recover on right\n7&8 left coaster step\n"
STOMPS = "1-2 stomp right to right side, clap\n3-4 stomp left to left side, clap\n"
STOMPS += "5-6 sway right, sway left\n7-8 sway right, sway left\n"
CALLED = {
    "Order: Verse, Chorus, Verse, Chorus x2": ("VERSE STEPS\nVerse, first eight", "CHORUS STEPS"),
    "You dance: verse, chorus, verse, chorus, chorus": ("Verse [1-8]", "Chorus [1-8]"),
    "Verse - Chorus - Verse - Chorus - Chorus": ("**The Verse**", "**The Chorus**"),
    "Sequence: Verse Chorus Verse Chorus Chorus": ("Verse (8 counts)", "Chorus (8 counts)"),
}


@pytest.mark.parametrize("order", CALLED)
def test_parts_may_be_called_as_those_of_the_song(order: str) -> None:
    """Each part has its own steps, and the sequence calls them by name."""
    verse, chorus = CALLED[order]
    reading = read(f"Tin Lantern\n\n{order}\n\n{verse}\n{WALKS}\n{chorus}\n{STOMPS}")
    assert ["Verse", "Chorus"] == [part.name for part in reading.dance.parts]
    assert [8, 8] == [part.counts for part in reading.dance.parts]
    assert ("Verse", "Chorus", "Verse", "Chorus", "Chorus") == reading.dance.sequence
    assert [] == [finding.message for finding in findings_of(reading) if finding.loud]


def test_counts_of_parts_with_names_are_no_total() -> None:
    """They are each part's own."""
    told = read_header(tidy("Tin Lantern\nVerse is 32 counts, Chorus is 16, Tag is 4 counts"))
    assert {"verse": 32, "chorus": 16, "tag": 4} == {n: claim.value for n, claim in told.part_counts.items()}
    assert told.counts is None


def test_verses_by_number_without_a_sequence_are_sections() -> None:
    """No sequence makes parts of them."""
    dance = read(f"Tin Lantern\n\nVerse 1\n{WALKS}\nVerse 2\n{WALKS}").dance
    assert ["main"] == [part.name for part in dance.parts]


QUARTER = "1-2 Walk R, L\n3-4 Step R forward, pivot 1/4 left\n5-6 Rock R forward, recover L\n"
QUARTER += "7-8 Step R back, touch L beside R\n"
REPEATS = [
    "[9-16] MIRROR\nRepeat counts 1-8 on the other foot: L leads, turns reversed. You end facing 12:00.",
    "[9-16] REPEAT\nRepeat section 1 on the other foot. You finish at the front wall.",
    "[9-16] MIRROR IMAGE\nAs section 1, mirrored.",
    "[9-16] MIRROR",
    "Section 2: MIRROR\nRepeat section 1 on the other foot: start with L and turn right instead of left.",
]


@pytest.mark.parametrize("repeat", REPEATS)
def test_a_repeat_that_its_heading_names_is_danced_once(repeat: str) -> None:
    """What explains it adds no step and no turn."""
    reading = read(f"Tin Lantern\n16 counts, 1 wall\n\n[1-8] WALKS\n{QUARTER}\n{repeat}\n")
    (part,) = reading.dance.parts
    assert part.counts == 16
    assert part.net_turn == 0
    assert [Foot.LEFT, Foot.RIGHT] == [step.foot for step in part.steps if step.at in (9, 10)]
    assert [] == [finding.message for finding in findings_of(reading) if finding.loud]


VINE = "step right to the right side, step left behind right, step right to the right side and touch left "
VINE += (
    "beside right (1-4), step left to the left side, step right behind left, turn a quarter left stepping "
)
VINE += "forward on left, and brush right forward (5-8)."
SONGS = [
    'Music is anything steady, I like "Wellingtons"; start on the words with the weight on the left. ',
    "Any song that goes along will do, I used the one about the lamps. ",
    "My band plays it slow. Choose a tune you like. ",
]


@pytest.mark.parametrize("song", SONGS)
def test_a_sentence_about_the_music_before_the_steps_is_no_step(song: str) -> None:
    """The steps begin behind it."""
    reading = read(f"TIN LANTERN\n8 counts, 4 walls\n\n{song}{VINE.capitalize()}\n")
    assert 8 == len(reading.dance.parts[0].steps)
    assert [] == [finding.message for finding in findings_of(reading) if finding.loud]


LETTERED = (
    "PART A", "Part A:", "Part A - 16 counts", "Part A (16 counts)", "PART A: 16c", "--- A: 16 counts ---",
    "--- A ---", "*** PART A (16 counts) ***", "=== A ===", "A (16c)", "Part A - 16 counts -", "A-part",
    "**Part A: 16 counts**", "[A] 16 counts", "A:", "A", "A – 16 counts", "Section A (16 counts)",
    "PART A (facing 12:00)", "A: 16 counts (facings as if you begin at 12:00)", 'Part "A"', "A PART",
    "Phrase A: 16 counts", "A-PART: 16 COUNTS", "|| A || 16 counts", "A = 16 counts", "** A **", "~ A ~",
    "Part A, 16 counts, always danced to the verse", "Teil A", "A section",
)  # fmt: skip
OF_LETTERS = """Tin Lantern
Phrased, 24 counts (A: 16, B: 8), 2 walls, Improver
Sequence: A - B - A - B

{A}
{A1}Step touches, shuffle, rock
1-2 Step R forward, touch L beside R
3-4 Step L back, touch R beside L
5&6 Shuffle forward R, L, R
7-8 Rock L forward, recover R
{A2}Shuffle back, rock, pivot 1/2, stomps
1&2 Shuffle back L, R, L
3-4 Rock R back, recover L
5-6 Step R forward, pivot 1/2 left (6:00)
7-8 Stomp R, stomp L

{B}
1-4 Step R to side, touch L beside R, step L to side, touch R beside L
5-8 Rock R forward, recover L, rock R back, recover L
"""


@pytest.mark.parametrize("sections", ["S{}: ", "A{}: ", "[A{}] ", "A{} - "])
@pytest.mark.parametrize("heading", LETTERED)
def test_a_letter_heads_a_part_of_a_phrased_dance(heading: str, sections: str) -> None:
    """However the letter is set, and however the sections below it are headed."""
    other = re.sub(r"\bA\b", "B", heading).replace("16", "8")
    text = OF_LETTERS.format(A=heading, B=other, A1=sections.format(1), A2=sections.format(2))
    reading = read(text)
    assert {name: float(part.part.counts) for name, part in reading.parts.items()} == {"A": 16, "B": 8}
    assert [finding.message for finding in findings_of(reading) if finding.loud] == []


def test_a_sequence_of_letters_that_head_nothing_is_told() -> None:
    """Where no steps are headed by the letters of the sequence, nobody knows which are which."""
    reading = read(OF_LETTERS.format(A="", B="", A1="S1: ", A2="S2: "))
    assert "unknown-part" in {finding.rule for finding in findings_of(reading)}
