"""What a sheet says of itself is read in any order and punctuation, and the steps are not taken for it."""

from __future__ import annotations

from fractions import Fraction

import pytest

from wallwise.dance.model import Foot
from wallwise.reading import Reading, read
from wallwise.reading.header import read_header
from wallwise.reading.tidy import tidy

STEPS = (
    "Section 1\n1-2 Walk R, L\n3&4 Shuffle forward R, L, R\n"
    "5-6 Rock L forward, recover R\n7&8 L coaster step\n"
)


def reading(head: str) -> Reading:
    return read(f"{head}\n\n{STEPS}")


SIZES = {
    "Tin Lantern\n32 Count, 4 Wall, Improver": (32, 4),
    "Tin Lantern\nCount: 32 Wall: 4 Level: Improver": (32, 4),
    "Tin Lantern\nCounts: 32\nWalls: 4": (32, 4),
    "TIN LANTERN - 32c 4w improver": (32, 4),
    "Tin Lantern\n32 counts / 4 walls / Improver": (32, 4),
    "Tin Lantern (32/4)": (32, 4),
    "Tin Lantern\nA thirty-two count, four wall dance": (32, 4),
    "Tin Lantern\nWalls: 4\tCounts: 32\tLevel: Beginner": (32, 4),
    "Tin Lantern\nlength 32 counts . walls 4 . improver": (32, 4),
    "Counts\tWalls\tLevel\n32\t4\tImprover": (32, 4),
    "| Counts | 32 |\n| Walls | 4 |": (32, 4),
    "Tin Lantern\nNightclub two step, intermediate, 32 counts, 2 walls": (32, 2),
    "Tin Lantern\nEasy line dance - 32 count / 4 wall - cha cha basic": (32, 4),
    "Tin Lantern\n64 count 2 wall line dance": (64, 2),
    "Tin Lantern\n4-wall line dance, 48 counts": (48, 4),
    "Tin Lantern\n48 count 1 wall waltz": (48, 1),
    "Tin Lantern\nDescription: 32 count, 4 wall, beginner": (32, 4),
    "Tin Lantern\nIntro: 16 counts\n32 count 4 wall": (32, 4),
    "Tin Lantern\nStart: after the spoken words, 16 counts\n32 count 4 wall": (32, 4),
    "Tin Lantern\nCount-in: wait for the bell, then 8 counts\nCounts: 32, walls: 4": (32, 4),
    "Tin Lantern\nStart after 16 counts\n32 count 4 wall": (32, 4),
    "Hello all, it's the new one, 32 counts, 4 walls. It starts after 16 counts.": (32, 4),
    "Tin Lantern\nIntro: 16 counts. 32 count 4 wall": (32, 4),
    "Tin Lantern\nIntro 16 counts, 32 count, 4 wall dance": (32, 4),
    "Tin Lantern\nWait 16 counts then begin. 32 counts, 4 walls": (32, 4),
    "Tin Lantern\n16 count intro; 32 count, 4 wall": (32, 4),
    "Tin Lantern\nA dance of thirty-two counts and four walls": (32, 4),
    "Tin Lantern\nThe dance counts 32\n4 walls": (32, 4),
    "Tin Lantern\nCounts: thirty-two\nWalls: four": (32, 4),
    "Tin Lantern\n32 counts in all\n4 walls": (32, 4),
    "Tin Lantern\n32 counts plus a tag of 8 counts\n4 walls": (32, 4),
    "Tin Lantern\nType of dance: 56 counts\n4 walls": (56, 4),
    "Tin Lantern\nDance type: 56-count line dance, 4 walls": (56, 4),
    "Tin Lantern\nDescription: 56 count, 2 wall": (56, 2),
    "Dance: 48 counts, 4 walls": (48, 4),
    "Tin Lantern\nAbout the dance: 40 counts, 2 walls": (40, 2),
    "Tin Lantern\nAdvanced rolling 8-count, 32 counts, 2 walls": (32, 2),
    "Tin Lantern\nIntro ......... 16 counts\n32 count, 4 wall": (32, 4),
    "Tin Lantern\nWait 16 counts, restart after 8 counts": (None, None),
    "Tin Lantern": (None, None),
}


@pytest.mark.parametrize("head", SIZES)
def test_counts_and_walls_are_declared(head: str) -> None:
    """The total and the number of walls, and not the counts of the intro or of a restart."""
    told = reading(head).declared
    assert SIZES[head] == (told.counts and told.counts.value, told.walls and told.walls.value)


def test_counts_of_parts_are_added() -> None:
    """Two parts are told in one breath; the place is that of both."""
    declared = reading("Tin Lantern\nphrased, two parts, 32 + 16 counts").declared
    assert declared.counts is not None
    assert 48 == declared.counts.value


@pytest.mark.parametrize("head", [head for head, (counts, _) in SIZES.items() if counts])
def test_what_is_declared_stands_in_the_sheet(head: str) -> None:
    """The places of the declared numbers are where they stand in the text."""
    read_text = reading(head)
    told = read_text.declared
    assert told.counts
    assert told.walls
    for claim, words in ((told.counts, {"thirty-two"}), (told.walls, {"four"})):
        written = read_text.text[claim.span.start : claim.span.end]
        assert written in {str(claim.value), *words}


NAMES = {
    "Tin Lantern": "Tin Lantern",
    "TIN LANTERN": "Tin Lantern",
    "“Tin Lantern”": "Tin Lantern",
    "# Tin Lantern": "Tin Lantern",
    "**Tin Lantern**": "Tin Lantern",
    "Title: Tin Lantern": "Tin Lantern",
    "Dance: Tin Lantern": "Tin Lantern",
    "TIN LANTERN   32c 4w": "Tin Lantern",
    "32 count 4 wall\nTitle: Tin Lantern": "Tin Lantern",
    "Page 1 of 2\nTin Lantern": "Tin Lantern",
}


@pytest.mark.parametrize("head", NAMES)
def test_the_title_is_the_name_of_the_dance(head: str) -> None:
    """The name without its quotes, marks and what stands beside it."""
    assert NAMES[head] == reading(head).dance.title


FACTS = {
    "Level: Improver": ("level", "Improver"),
    "32 count 4 wall low intermediate": ("level", "low intermediate"),
    "Level: Beginner / Improver": ("level", "Beginner / Improver"),
    "Choreographer: Odile Farrow": ("choreographer", "Odile Farrow"),
    "Choreographed by: Odile Farrow": ("choreographer", "Odile Farrow"),
    "Choreo: Odile Farrow": ("choreographer", "Odile Farrow"),
    "Music: Row Me Over by The Tarpaulin Choir": ("music", "Row Me Over by The Tarpaulin Choir"),
    "Music: “Row Me Over”": ("music", "Row Me Over"),
    "Music: “Row Me Over” by The Choir": ("music", '"Row Me Over" by The Choir'),
    "Music: 'Row Me Over'": ("music", "Row Me Over"),
    "Song: Row Me Over": ("music", "Row Me Over"),
    "Intro: 16 counts": ("intro_counts", 16),
    "Intro 32 counts (approx. 18 secs)": ("intro_counts", 32),
    "16 count intro": ("intro_counts", 16),
    "Start after 16 counts": ("intro_counts", 16),
    "BPM: 112": ("bpm", Fraction(112)),
    "Music: Row Me Over, 104.5 bpm": ("bpm", Fraction(209, 2)),
    "48 count waltz": ("beats_per_bar", 3),
    "32 count 4 wall": ("beats_per_bar", 4),
}


@pytest.mark.parametrize("line", FACTS)
def test_a_fact_of_the_header_is_the_dance_s(line: str) -> None:
    """Level, names, intro, tempo and metre."""
    key, value = FACTS[line]
    assert value == getattr(reading(f"Tin Lantern\n{line}").dance, key)


WEIGHTS = {
    "Start with weight on L": Foot.LEFT,
    "Weight on the right foot": Foot.RIGHT,
    "wt L": Foot.LEFT,
    "Start on the right foot": Foot.LEFT,
    "Left foot lead": Foot.RIGHT,
    "Lead foot: right": Foot.LEFT,
    "RF start": Foot.LEFT,
    "32 count 4 wall": None,
}


@pytest.mark.parametrize("line", WEIGHTS)
def test_the_foot_that_bears_the_weight_is_declared(line: str) -> None:
    """The foot that starts is the one that does not bear the weight."""
    assert WEIGHTS[line] == read_header(tidy(f"Tin Lantern\n{line}")).bears


PARTS = {
    "Parts: A = 32 counts, B = 16 counts": {"a": 32, "b": 16},
    "A: 32c / B: 16c": {"a": 32, "b": 16},
    "A (32 counts) B (16 counts)": {"a": 32, "b": 16},
    "A is thirty-two counts, B is sixteen counts": {"a": 32, "b": 16},
    "two parts: A of 32 counts and B of 16": {"a": 32, "b": 16},
    "32 counts in A, 16 in B": {"a": 32, "b": 16},
    "32 counts (A) + 16 counts (B)": {"a": 32, "b": 16},
    "Part A, 32 counts. Part B, 16 counts": {"a": 32, "b": 16},
    "Part A: 32 counts, Part B: 16 counts": {"a": 32, "b": 16},
    "Part A 32 counts / Part B 16 counts": {"a": 32, "b": 16},
    "Part A: 32 counts, Part B: 16 counts, Tag: 4 counts": {"a": 32, "b": 16, "tag": 4},
    "A 32, B 16, Tag 1: 4 counts, Tag 2: 8 counts": {"a": 32, "b": 16, "tag 1": 4, "tag 2": 8},
}


@pytest.mark.parametrize("line", PARTS)
def test_parts_are_declared_one_by_one(line: str) -> None:
    """Each letter with its own number of counts, and no total."""
    told = read_header(tidy(f"Tin Lantern\n{line}"))
    assert PARTS[line] == {name: claim.value for name, claim in told.part_counts.items()}
    assert told.counts is None


def test_chatter_around_the_sheet_changes_nothing() -> None:
    """Greetings, signatures and page marks leave the steps as they are."""
    plain = reading("Tin Lantern\n32 count 4 wall").dance
    mail = (
        f"From: Maud\nTo: Tuesday class\nSubject: new dance\n\nHello all,\n\nhere it is.\n\n"
        f"Tin Lantern\n32 count 4 wall\n\n{STEPS}\n\nSee you Tuesday!\nMaud\n--\nSent from the kitchen\n"
    )
    told = [(step.at, step.foot, step.kind, step.turn) for step in plain.parts[0].steps]
    assert told == [(step.at, step.foot, step.kind, step.turn) for step in read(mail).dance.parts[0].steps]


def test_an_empty_header_declares_nothing() -> None:
    """No lines, no claims."""
    told = read_header([])
    assert (told.title, told.counts, told.walls, told.bears) == ("", None, None, None)


def test_a_total_beside_the_counts_of_the_parts_is_read() -> None:
    """The total stands in the same line as what it is the sum of."""
    told = reading("Tin Lantern\n48 counts, 2 walls (A 32, B 16)").declared
    assert told.counts is not None
    assert 48 == told.counts.value


def test_a_type_of_dance_is_no_title() -> None:
    """What follows the key is the size of the dance."""
    assert "Tin Lantern" == reading("Type of dance: 56 counts\nTin Lantern").declared.title
