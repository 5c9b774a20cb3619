"""Every rule's page is a case: its first sheet is flagged as it says, its second is that sheet put right."""

from __future__ import annotations

import re
from functools import cache
from typing import NamedTuple

import pytest

from wallwise.checks import RULES, check
from wallwise.checks.rule import Rule
from wallwise.dance.finding import Finding
from wallwise.reading import read

_PAGE = re.compile(
    r"# (?P<name>\S+)\n\n(?P<says>[^\n]+)\n\n"
    r"## What\n\n(?P<what>[^#]+)\n\n"
    r"## Why\n\n(?P<why>[^#]+)\n\n"
    r"## Example\n\n"
    r"```sheet flagged\n(?P<flagged>.+?)```\n\n> (?P<message>[^\n]+)\n\n"
    r"Put right:\n\n"
    r"```sheet clean\n(?P<clean>.+?)```\n\n"
    r"## Instead\n\n(?P<instead>[^#]+)\n",
    re.DOTALL,
)
every_rule = pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.name)

# What no single change settles: words that are not known, two ways to read what is told, and the notes.
WITHOUT_MEND = {
    "not-understood",
    "two-readings",
    "turn-too-fast",
    "step-too-long",
    "drifts",
}


class Page(NamedTuple):
    """A page's own parts, as they stand in it."""

    name: str
    says: str
    message: str
    flagged: str
    clean: str


def page(rule: Rule) -> Page:
    """The rule's page taken apart; fails where a part is missing or stands elsewhere."""
    parts = _PAGE.fullmatch(rule.page)
    assert parts is not None, f"the page of {rule.name} has not its parts in order"
    return Page(*(parts[part] for part in Page._fields))


@cache
def checked(sheet: str) -> tuple[Finding, ...]:
    """What is found in the sheet, with mends."""
    return check(read(sheet))


def loud(sheet: str) -> list[str]:
    """The messages of what must be settled in the sheet."""
    return [finding.message for finding in checked(sheet) if finding.loud]


@every_rule
def test_a_page_has_its_parts(rule: Rule) -> None:
    """What, why, an example flagged and put right, what to do; its name and its sentence are the rule's."""
    assert (rule.name, rule.says) == page(rule)[:2]


@every_rule
def test_the_first_sheet_is_flagged_as_the_page_says(rule: Rule) -> None:
    """The rule finds its own example, in the very words of the page."""
    assert page(rule).message in [f.message for f in checked(page(rule).flagged) if f.rule == rule.name]


@every_rule
def test_the_second_sheet_is_the_first_put_right(rule: Rule) -> None:
    """The same dance, in which the rule finds nothing and nothing is left to settle."""
    flagged, clean = page(rule).flagged, page(rule).clean
    assert flagged.splitlines()[0] == clean.splitlines()[0]
    assert flagged != clean
    assert loud(clean) == []
    assert rule.name not in [finding.rule for finding in checked(clean)]


@every_rule
def test_the_first_mend_makes_the_sheet_sound(rule: Rule) -> None:
    """Fix, then check, is clean; and every rule has a mend but those that cannot."""
    own = [f for f in checked(page(rule).flagged) if f.rule == rule.name]
    mended = [finding.mends[0].apply(page(rule).flagged) for finding in own if finding.mends]
    assert (rule.name in WITHOUT_MEND) == (not mended)
    assert [loud(sheet) for sheet in mended] == [[]] * len(mended)


@every_rule
def test_nothing_else_is_told_of_the_dance_than_the_page_is_about(rule: Rule) -> None:
    """A teacher who reads the example sees one mistake: what else is loud in it goes with the same mend."""
    others = [f for f in checked(page(rule).flagged) if f.loud and f.rule != rule.name]
    assert all(f.mends and not loud(f.mends[0].apply(page(rule).flagged)) for f in others)
