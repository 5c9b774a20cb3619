"""The search for mends: where they stand, what they leave, and that it ends."""

from __future__ import annotations

from itertools import count
from pathlib import Path

import pytest

from wallwise.checks import check, mends
from wallwise.checks.edits import edits_of
from wallwise.dance.finding import Finding, Severity
from wallwise.reading import read

FAULTY = sorted((Path(__file__).parent.parent / "sheets" / "faulty").glob("*/sheet.txt"))

SOUND = """LANTERN FERRY
16 counts, 1 wall
S1
1-2  Step R to right side, touch L beside R
3-4  Step L to left side, touch R beside L
5-6  Step R forward, touch L beside R
7-8  Step L back, touch R beside L
S2
1-2  Step R to right side, step L behind R
3-4  Step R to right side, touch L beside R
5-6  Step L to left side, step R behind L
7-8  Step L to left side, touch R beside L
"""
WRONG_COUNTS = ("16 counts", "32 counts")
WRONG_FOOT = ("step R behind L", "step L behind L")
WRONG_SIDE = ("3-4  Step L to left side", "3-4  Step L to right side")


def with_slips(*slips: tuple[str, str]) -> str:
    """The sound sheet with each right wording made a wrong one."""
    text = SOUND
    for right, wrong in slips:
        assert text.count(right) == 1
        text = text.replace(right, wrong)
    return text


def loud(text: str) -> list[Finding]:
    """What must be settled in the sheet."""
    return [finding for finding in check(read(text)) if finding.loud]


@pytest.mark.parametrize("sheet", FAULTY, ids=lambda path: path.parent.name)
def test_every_change_that_may_become_a_mend_lies_in_the_text(sheet: Path) -> None:
    """Each span is one of the sheet as given: what reads its text can make the change."""
    text = sheet.read_text(encoding="utf-8")
    edits = [edit.mend for edit in edits_of(read(text))]
    assert edits
    assert all(0 <= mend.span.start <= mend.span.end <= len(text) for mend in edits)


def test_a_sound_sheet_needs_no_mend() -> None:
    """Nothing is found, so nothing is searched."""
    assert check(read(SOUND)) == ()


@pytest.mark.parametrize("slip", [WRONG_COUNTS, WRONG_FOOT, WRONG_SIDE], ids=lambda slip: slip[1])
def test_the_likeliest_mend_of_one_slip_undoes_it(slip: tuple[str, str]) -> None:
    """Fix, then check, is clean; and what stands there then is what stood there before the slip."""
    text = with_slips(slip)
    found = loud(text)
    assert found
    assert {finding.mends[0].apply(text) for finding in found} == {SOUND}


def test_two_slips_are_mended_one_by_one() -> None:
    """No one change settles both, so each finding gets the one that settles it; both together are sound."""
    text = with_slips(WRONG_COUNTS, WRONG_SIDE)
    found = loud(text)
    assert {"total-counts", "side-differs"} == {finding.rule for finding in found}
    after_first = found[0].mends[0].apply(text)
    left = loud(after_first)
    assert [finding.rule for finding in left] == [found[1].rule]
    assert left[0].mends[0].apply(after_first) == SOUND


def test_notes_are_never_searched_for_mends(monkeypatch: pytest.MonkeyPatch) -> None:
    """A sheet in which only notes are found is not read again."""
    text = "HARBOUR TRAM\n8 counts, 1 wall\n1-8  Walk forward R, L, R, L, R, L, R, L\n"
    reading = read(text)
    monkeypatch.setattr(mends, "read", None)
    found = check(reading)
    assert [(Severity.NOTE, ())] == [(finding.severity, finding.mends) for finding in found]


def test_the_search_ends_when_its_time_is_up(monkeypatch: pytest.MonkeyPatch) -> None:
    """On a clock that ticks half a second at each look, no more is read than the budget has ticks."""
    reading = read(with_slips(WRONG_COUNTS, WRONG_SIDE, WRONG_FOOT))
    ticks = count(0)
    reads = count(0)

    def counted_read(text: str) -> object:
        next(reads)
        return read(text)

    monkeypatch.setattr(mends, "thread_time", lambda: next(ticks) / 2)
    monkeypatch.setattr(mends, "read", counted_read)
    check(reading)
    assert 1 <= next(reads) <= mends.BUDGET_SEC * 2


def test_the_search_tries_no_more_than_it_may(monkeypatch: pytest.MonkeyPatch) -> None:
    """Where nothing helps, the number of tries is bounded whatever the clock says."""
    text = with_slips(WRONG_FOOT).replace("5-6  Step R forward, touch L beside R", "5-6  Do the heron")
    reading = read(text)
    reads = count(0)

    def counted_read(text: str) -> object:
        next(reads)
        return read(text)

    monkeypatch.setattr(mends, "MOST_TRIES", 5)
    monkeypatch.setattr(mends, "read", counted_read)
    check(reading)
    assert next(reads) <= 5


def test_a_sheet_at_odds_with_itself_everywhere_is_not_searched(monkeypatch: pytest.MonkeyPatch) -> None:
    """Where too much is loud no one change helps: the findings come without mends."""
    monkeypatch.setattr(mends, "MOST_LOUD", 1)
    found = loud(with_slips(WRONG_COUNTS, WRONG_SIDE))
    assert len(found) == 2
    assert [finding.mends for finding in found] == [(), ()]
