"""Sheets in many house styles are read as their writers dance them, or the doubt is told."""

from __future__ import annotations

from functools import cache
from typing import Any

import pytest
from tests.reading import scoring

from wallwise.desk.report import Report

# Sheets that are not read exactly, and why.  Not one of them may pass in silence.
MISREAD = {
    "nineteen/20-slate-roof-slide": "a scissor step spelt in brackets before its hold",
    "twentyseven/01-lantern-street-stroll": "a vine in a sentence that counts seven and eight alone",
    "thirtyfive/05-kettle-on-the-hob": "the counts of an eight stand on a line of their own below it",
    "thirtyseven/04-lantern-lane-stroll": "counts in words behind a comma: “touch the left, one, two.”",
}

# Sheets that are misread in silence: defects of the reader, every one.
SILENT: dict[str, str] = {}

# Sheets that are read exactly and raise an alarm all the same, and why.
ALARMED = {
    "seven/06-turnip-lantern-stomp": "“V step: right out, left out …”, and a wall in a sentence",
    "four/24-backstairs-bannister": "a figure's steps are spelt out once more in brackets behind it",
    "one/15-static-in-the-wardrobe": "which “&” of a vaudeville without verbs is a step",
    "twentyeight/22-quarterdeck-saturday": "two vines in one eight, each spelt out in brackets",
    "twentynine/18-dovecote-lullaby": "a tag of twice three counts, told apart and then as a repeat",
    "thirtythree/11-teacup-tango": "a hook told as two: “lift LF and cross it before the shin”",
    "thirtyfour/20-aunt-prus-parlour": "an option for “all of C”, which is a section's label",
    "thirtyfive/12-gravel-road-gospel": "a note that lists which wall each wall is on",
    "thirtyseven/03-sawdust-and-sashes": "a heading's second line, above steps counted behind",
}

# Restarts and tags that differ from the truth's, and why.
ORDERED_OTHERWISE = {
    "three/22-night-mail-to-nowhere": "a bridge inside wall 5, which the truth has no list for",
    "twentynine/18-dovecote-lullaby": "a tag of twice three counts is taken for one of three",
}

# The same in silence: defects of the reader.
ORDERED_IN_SILENCE: dict[str, str] = {}


def but(names: set[str], defects: dict[str, str]) -> list[Any]:
    """The names in order, the defects among them expected to fail until they are mended."""
    return [
        pytest.param(name, marks=pytest.mark.xfail(strict=True, reason=defects[name]))
        if name in defects
        else name
        for name in sorted(names)
    ]


@cache
def report(name: str) -> Report:
    return scoring.found_in(scoring.sheet_text(scoring.SOUND[name]))


@pytest.mark.parametrize("name", but(set(scoring.SOUND) - set(MISREAD), SILENT))
def test_every_weight_change_is_that_of_the_truth(name: str) -> None:
    """Foot, beat and facing of every weight change agree."""
    assert scoring.disagreements(scoring.truth_of(scoring.SOUND[name]), report(name).as_json()) == []


@pytest.mark.parametrize("name", sorted(set(scoring.SOUND) - set(MISREAD)))
def test_the_end_is_that_of_the_truth(name: str) -> None:
    """Counts, walls, and facing and weight at the end agree."""
    truth = scoring.truth_of(scoring.SOUND[name])
    assert scoring.ends(truth, truth) == scoring.ends(report(name).as_json(), truth)


@pytest.mark.parametrize("name", but(set(scoring.SOUND) - {*MISREAD, *ORDERED_OTHERWISE}, ORDERED_IN_SILENCE))
def test_restarts_and_tags_are_those_of_the_truth(name: str) -> None:
    """Each cuts or follows the right wall after the right counts, and none is made up."""
    truth, read = scoring.truth_of(scoring.SOUND[name]), report(name).as_json()
    assert scoring.restarts(truth) == scoring.restarts(read)
    assert scoring.tags(truth) == scoring.tags(read)


@pytest.mark.parametrize("name", sorted(set(scoring.SOUND) - {*MISREAD, *ALARMED}))
def test_a_sound_sheet_raises_no_alarm(name: str) -> None:
    """Nothing in a sheet without a mistake has to be settled."""
    assert scoring.says(report(name)) == []


@pytest.mark.parametrize("name", sorted(MISREAD))
def test_no_sheet_is_misread_in_silence(name: str) -> None:
    """A sheet that is not read exactly says that something has to be settled."""
    assert scoring.says(report(name)) != []


@pytest.mark.parametrize("name", sorted(MISREAD))
def test_what_is_read_exactly_is_not_listed_as_misread(name: str) -> None:
    """The list of sheets that are misread holds no other."""
    read = report(name).as_json()
    truth = scoring.truth_of(scoring.SOUND[name])
    right = scoring.disagreements(truth, read) == []
    assert not right, "it is read exactly now: take it off the list"


@pytest.mark.parametrize("name", sorted(ALARMED))
def test_what_is_quiet_is_not_listed_as_alarmed(name: str) -> None:
    """The list of sheets that are doubted without a mistake holds no other."""
    assert scoring.says(report(name)) != [], "it raises no alarm now: take it off the list"
