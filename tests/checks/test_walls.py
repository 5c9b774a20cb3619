"""The walls of a phrased dance, and where a finding says that it is."""

from __future__ import annotations

import pytest

from wallwise.checks.catalogue import findings_of
from wallwise.reading import read

VINE = "1-4 Vine R, touch L\n5-8 Vine L{}, touch R\n"
PHRASED = f"TIN LANTERN\n{{}} walls\nSequence: A, B, A, B\n\nPart A\n{VINE.format(' turning 1/2 left')}\n"
PHRASED += f"Part B\n{VINE.format('')}"


def said(text: str, rule: str) -> list[str]:
    return [finding.message for finding in findings_of(read(text)) if finding.rule == rule]


def test_a_phrased_dance_is_danced_on_the_walls_where_its_parts_begin() -> None:
    """A half turn in part A: its parts begin on the front and the back wall (common practice, no source)."""
    assert said(PHRASED.format(2), "walls-differ") == []


@pytest.mark.parametrize("declared", [1, 4, 8])
def test_other_walls_than_a_phrased_dance_begins_on_are_told(declared: int) -> None:
    """The sheet declares what no sense of the word gives."""
    walls = "1 wall" if declared == 1 else f"{declared} walls"
    expected = f"The sheet declares {walls}, but the parts of its sequence begin on 2 walls."
    assert [expected] == said(PHRASED.replace("{} walls", walls), "walls-differ")


TAGS = {
    "Tag: after wall 2": "In the tag, count 2,",
    "Tag 2: after wall 2": "In tag 2, count 2,",
    "Bridge: after wall 2": "In the bridge, count 2,",
}


@pytest.mark.parametrize("heading", TAGS)
def test_a_finding_in_a_tag_says_so_in_a_sentence(heading: str) -> None:
    """The tag is called as one speaks of it."""
    tag = "1-2 Step R side, step R side\n3-4 Step L side, touch R"
    found = said(f"TIN LANTERN\n\n{VINE.format('')}\n{heading}\n{tag}\n", "foot-not-free")
    assert [TAGS[heading]] == [message[: len(TAGS[heading])] for message in found]
