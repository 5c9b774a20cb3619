"""Tags of which only some counts are danced after one of the walls, in the words of many teachers.

Worked out by hand from the trade's meaning of the words: common practice, no source.
"""

from __future__ import annotations

import pytest
from tests.reading.test_order_wordings import SHEET

from wallwise.checks.catalogue import findings_of
from wallwise.dance.model import Tag
from wallwise.reading import Reading, read

STEPS = """1-2 R forward, kick L forward
3-4 L back, touch R back
5-6 R forward, kick L forward
7-8 L side, touch R beside
"""
TAG = f"TAGS\nAfter wall 2 (facing 6:00), 8 counts:\n{STEPS}"
FIRST_HALF = (
    "After wall 5 (facing 3:00) only the first 4 counts of this tag.",
    "After wall 5 dance only counts 1-4 of the tag.",
    "After wall 5: only counts 1-4 of the tag, then start again.",
    "After wall 5 just the first half of the tag.",
    "Wall 5: first 4 counts of the tag only.",
    "Wall 5: only 4 counts of the tag.",
    "After wall 5 do the tag up to count 4.",
    "At the end of wall 5 dance half the tag (4 counts).",
    "Tag after wall 5: the first four counts of the above tag.",
    "On the fifth wall the tag is shorter: just the first 4 counts.",
    "After wall 5 you only dance the first four counts of the tag.",
    "NB: after wall 5 it's only half of the tag.",
    "After wall 5 stop the tag after count 4.",
    "After wall 5 leave out the last 4 counts of the tag.",
    "Wall 5 has the tag too, but without 5-8.",
)
LAST_HALF = (
    "After wall 5 dance the last 4 counts of the tag.",
    "After wall 5 only counts 5-8 of the tag.",
    "After wall 5 the tag without the first 4 counts.",
)
WHOLE = (
    "After wall 5 the same tag, and now with only your hands up.",
    "After wall 5 do this tag again. Smile on the first 4 counts of the tag.",
    "After wall 5 dance the tag again.",
)


def _read(words: str) -> tuple[Reading, Tag]:
    reading = read(SHEET.format(head="", mid="", tail=TAG + words))
    first, second = reading.dance.tags
    assert (2, 8) == (first.after_wall, int(first.part.counts))
    assert second.after_wall == 5
    return reading, second


def _kinds(tag: Tag) -> list[str]:
    return [f"{step.at} {step.kind.value}" for step in tag.part.steps]


@pytest.mark.parametrize("words", FIRST_HALF)
def test_the_first_counts_of_a_tag_are_danced_alone(words: str) -> None:
    """They are a tag of their own with just their steps."""
    reading, tag = _read(words)
    assert ["1 step", "2 kick", "3 step", "4 touch"] == _kinds(tag)
    assert tag.part.counts == 4
    assert [finding.message for finding in findings_of(reading) if finding.loud] == []


@pytest.mark.parametrize("words", LAST_HALF)
def test_the_last_counts_of_a_tag_are_danced_alone(words: str) -> None:
    """They begin at the first count of the tag that they are."""
    reading, tag = _read(words)
    assert tag.part.steps[2].place is not None
    assert tag.part.steps[2].place.value == "side"
    assert tag.part.counts == 4
    assert [finding.message for finding in findings_of(reading) if finding.loud] == []


@pytest.mark.parametrize("words", WHOLE)
def test_words_about_some_counts_leave_a_tag_whole(words: str) -> None:
    """Which of its counts something else is told of does not matter."""
    _, tag = _read(words)
    assert tag.part.counts == 8


def test_counts_are_told_of_each_wall() -> None:
    """In one heading, the whole of the tag for one wall and some of it for another."""
    words = f"Tag after wall 2 (8 counts) and after wall 5 (first 4 counts only)\n{STEPS}"
    reading = read(SHEET.format(head="", mid="", tail=words))
    assert [(2, 8), (5, 4)] == [(tag.after_wall, int(tag.part.counts)) for tag in reading.dance.tags]
    assert [finding.message for finding in findings_of(reading) if finding.loud] == []


def test_more_counts_than_the_tag_has_are_doubted() -> None:
    """Eight counts have no first twelve."""
    reading, _ = _read("After wall 5 dance only the first 12 counts of the tag.")
    assert ["restart-unclear"] == [finding.rule for finding in findings_of(reading) if finding.loud]
