"""Sheets with one mistake each: it is seen, in the right section, and the first mend undoes it.

Mistakes and truths are their writers'; how they are scored is told in `scoring`.
"""

from __future__ import annotations

import math
from functools import cache
from itertools import islice

import pytest
from tests.reading import scoring

from wallwise.checks import mends
from wallwise.desk.report import Report, check_text

# Mistakes that nothing is said of, and why.
UNFLAGGED = {
    "fifteen/09-rhubarb-shuffle--section-of-nine": "no count marks: three claps fit into two counts",
    "four/11-leaky-tin-roof--section-of-nine": "no count marks: “hold, clap” is taken for one count",
    "nineteen/04-brickyard-boogie--left-right-contradiction": "a heading tells less than its lines",
    "twenty/19-sideboard-swing--left-right-contradiction": "a heading tells less than its lines",
    "thirtyone/04-cloudberry-letters--dropped-step": "a recover that goes without saying",
}

# How many mistakes of each group are located at least, before any mend is looked for.
LOCATED = {
    "sheets": 24, "one": 25, "two": 21, "three": 29, "four": 24, "five": 24, "six": 20, "seven": 13,
    "eight": 18, "nine": 24, "ten": 14, "eleven": 20, "twelve": 24, "thirteen": 21, "fourteen": 15,
    "fifteen": 23, "sixteen": 20, "seventeen": 32, "eighteen": 20, "nineteen": 20, "twenty": 21,
    "twentyone": 19, "twentytwo": 20, "twentythree": 22, "twentyfour": 22, "twentyfive": 22,
    "twentysix": 20, "twentyseven": 22, "twentyeight": 22, "twentynine": 17, "thirty": 34,
    "thirtyone": 21, "thirtytwo": 21, "thirtythree": 21, "thirtyfour": 21, "thirtyfive": 20,
    "thirtysix": 22, "thirtyseven": 22, "thirtyeight": 21,
}  # fmt: skip

# The search for mends takes a while: it is tried on every eighth sheet, with fewer edits than a
# teacher's sheet gets, and no clock, so that a busy machine finds as much as an idle one.
EVERY, TRIES = 8, 40
MENDED = {
    "sheets": 4, "one": 4, "two": 4, "three": 4, "four": 4, "five": 4, "six": 3, "seven": 2, "eight": 2,
    "nine": 3, "ten": 2, "eleven": 3, "twelve": 3, "thirteen": 3, "fourteen": 2, "fifteen": 2,
    "sixteen": 3, "seventeen": 4, "eighteen": 3, "nineteen": 3, "twenty": 3, "twentyone": 3,
    "twentytwo": 3, "twentythree": 2, "twentyfour": 2, "twentyfive": 3, "twentysix": 3, "twentyseven": 2,
    "twentyeight": 3, "twentynine": 1, "thirty": 5, "thirtyone": 3, "thirtytwo": 2, "thirtythree": 3,
    "thirtyfour": 3, "thirtyfive": 3, "thirtysix": 3, "thirtyseven": 3, "thirtyeight": 3,
}  # fmt: skip


@cache
def found(name: str) -> Report:
    return scoring.found_in(scoring.sheet_text(scoring.FAULTY[name]))


def of_group(group: str) -> list[str]:
    return [name for name in sorted(scoring.FAULTY) if name.startswith(f"{group}/")]


@pytest.mark.parametrize("name", sorted(set(scoring.FAULTY) - set(UNFLAGGED)))
def test_a_mistake_is_flagged(name: str) -> None:
    """A sheet with a mistake has something to settle."""
    assert scoring.says(found(name)) != []


@pytest.mark.parametrize("name", sorted(UNFLAGGED))
def test_what_is_flagged_is_not_listed_as_unflagged(name: str) -> None:
    """The list of mistakes that go unseen holds no other."""
    said = scoring.says(found(name))
    assert said == [], "it is flagged now: take it off the list"


@pytest.mark.parametrize("group", scoring.GROUPS)
def test_mistakes_are_located(group: str) -> None:
    """As many mistakes as were counted are found in the section they are in."""
    right = [scoring.located(found(name), scoring.fault_of(scoring.FAULTY[name])) for name in of_group(group)]
    assert LOCATED[group] <= sum(right)


@pytest.mark.parametrize("group", scoring.GROUPS)
def test_the_first_mend_restores_the_dance(group: str, monkeypatch: pytest.MonkeyPatch) -> None:
    """As many first mends as were counted leave nothing to settle and give the true dance."""
    monkeypatch.setattr(mends, "BUDGET_SEC", math.inf)
    monkeypatch.setattr(mends, "MOST_TRIES", TRIES)
    folders = [scoring.FAULTY[name] for name in islice(of_group(group), 0, None, EVERY)]
    reports = [check_text(scoring.sheet_text(folder), name=folder.name) for folder in folders]
    right = [scoring.mended(r, scoring.truth_of(f)) for r, f in zip(reports, folders, strict=True)]
    assert MENDED[group] <= sum(right)
