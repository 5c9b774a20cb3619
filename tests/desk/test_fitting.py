"""What fits a song, laid over it, falls where the plan says; the sheet's own is judged alike."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from pathlib import Path

import pytest
from tests.song.walking import dance, part

from wallwise.dance.model import Dance, Tag
from wallwise.desk.errors import DeskError
from wallwise.desk.fitting import FitReport, cut_as, fit_sheet
from wallwise.desk.song_asked import SongAsked, grid_for
from wallwise.song.danced import lay
from wallwise.song.fit import Choices, Phrasing, fit

EIGHT = """S{n}: SIDE TOUCHES, FORWARD, BACK
1-2  Step R to right side, touch L beside R
3-4  Step L to left side, touch R beside L
5-6  Step R forward, touch L beside R
7-8  Step L back, touch R beside L
"""
SHEET = "HEARTHRUG\n32 counts, 1 wall\n" + "".join(EIGHT.format(n=n) for n in (1, 2, 3, 4))
TAG = """Tag of 4 counts after wall {n}
1-2  Step R to right side, touch L beside R
3-4  Step L to left side, touch R beside L
"""


def fitted(tmp_path: Path, sheet: str, phrases: str, *, max_cuts: int = 3) -> FitReport:
    """The report on a sheet and phrases."""
    path = tmp_path / "hearthrug.txt"
    path.write_text(sheet, encoding="utf-8")
    asked = SongAsked(phrases=phrases)
    return fit_sheet(path, lambda d: grid_for(asked, d, any_tempo=True), max_cuts=max_cuts)


def test_the_json_says_what_was_found(tmp_path: Path) -> None:
    """A short third phrase: wall 3 is cut after 16 counts."""
    found = fitted(tmp_path, SHEET, "32 32 16 32 32").as_json()
    assert (10_000, 0, 0, [1, 33, 65, 81, 113]) == (
        found["cost"],
        found["misfit_counts"],
        found["walls_off_phrase"],
        found["starts"],
    )
    (cut,) = found["cuts"]
    assert ("restart", 3, 16, "12:00", 40.0) == tuple(
        cut[key] for key in ("kind", "wall", "after_counts", "facing", "sec")
    )
    assert [0.0, 16.0, 32.0, 40.0, 56.0] == found["starts_sec"]


@pytest.mark.parametrize(
    ("orders", "phrases", "says"),
    [
        ("", "32 32 32", "which has none of them, does as well as any: no wall off the phrase"),
        ("Restart on wall 3 after 16 counts\n", "32 32 16 32", "do as well as any: no wall off the phrase"),
        ("Restart on wall 2 after 16 counts\n", "32 32 16 32", "leave 1 of 4 walls off the phrase; the best"),
        ("", "32 32 16 32", "which has none of them, leaves 1 of 4 walls off the phrase; the best leaves no"),
        (TAG.format(n=1), "32 4 32 32", "do as well as any"),
        (
            "Restart on wall 1 after 8 counts\n" + TAG.format(n=2),
            "8 32 4 32",
            "no wall off the phrase",
        ),
    ],
)
def test_the_sheets_own_order_is_compared(tmp_path: Path, orders: str, phrases: str, says: str) -> None:
    """In a sentence: as good as any, or what it leaves and what the best leaves."""
    assert says in fitted(tmp_path, SHEET + orders, phrases).says


def test_more_cuts_than_needed_are_told(tmp_path: Path) -> None:
    """A restart and a tag that undo each other fit, but nothing does so with none."""
    orders = "Restart on wall 2 after 24 counts\n" + TAG.format(n=2).replace("of 4", "of 8")
    orders += "5-6  Step R forward, touch L beside R\n7-8  Step L back, touch R beside L\n"
    report = fitted(tmp_path, SHEET + orders, "32 32 32 32")
    assert "come as near, but with 2 cuts instead of none: no wall off the phrase" in report.says


@pytest.mark.parametrize("phrases", [[32, 32, 16, 32], [32, 36, 32, 24, 32], [32, 8, 30, 32], [28, 32, 32]])
def test_a_dance_cut_so_starts_where_the_plan_says(phrases: list[int]) -> None:
    """The plan's starts are those of the dance with its restarts and tags, unrolled over the song."""
    danced = dance(2, *[0] * 31)
    plan = fit(Phrasing.of(phrases), Choices(32, restarts=tuple(range(8, 32, 2))))
    assert plan.cuts
    grid = grid_for(SongAsked(bpm=120, phrases=" ".join(map(str, phrases))), danced)
    laid = lay(cut_as(danced, plan), grid)
    assert list(plan.starts) == [s.starts_count for s in laid.stretches if s.begins]


def test_its_own_order_does_not_outlive_the_best(tmp_path: Path) -> None:
    """The best plan replaces the sheet's restarts; nothing of them is left in it."""
    report = fitted(tmp_path, SHEET + "Restart on wall 1 after 8 counts\n", "32 32 32")
    assert not report.plan.cuts
    assert not report.laid.dance.restarts
    assert [1, 9, 41, 73] == list(report.own.starts)


def test_a_waltz_is_given_bars(tmp_path: Path) -> None:
    """A phrase of three counts more: a tag of a bar, not of two, four or eight."""
    waltz = "SLOW HEARTHRUG\n12 counts, 1 wall, waltz\n" + "".join(
        f"S{n}\n1-3  Step L forward, step R beside L, step L in place\n"
        "4-6  Step R back, step L beside R, step R in place\n"
        for n in (1, 2)
    )
    report = fitted(tmp_path, waltz, "12 12 3 12 12")
    assert [("tag", 2, 3)] == [(c.kind.value, c.wall, c.counts) for c in report.plan.cuts]


def test_a_phrased_dance_and_a_song_without_phrases_are_refused(tmp_path: Path) -> None:
    """Each in a sentence."""
    phrased = (
        "PAIRS\nPhrased, 1 wall\nSequence: A, B, A\n\nPART A: 8 counts\n"
        + EIGHT.format(n=1)
        + "\nPART B: 8 counts\n"
        + EIGHT.format(n=1)
    )
    with pytest.raises(DeskError, match="sequence of parts"):
        fitted(tmp_path, phrased, "32 32")
    path = tmp_path / "plain.txt"
    path.write_text(SHEET, encoding="utf-8")
    with pytest.raises(DeskError, match="phrases of the song are needed"):
        fit_sheet(path, lambda d: grid_for(SongAsked(bpm=120, length="2:00"), d))


def test_a_tag_stands_still() -> None:
    """What is danced in a tag that fits is for the teacher to say: it turns nothing."""
    danced = dance(2, *[0] * 31)
    plan = fit(Phrasing.of([32, 36, 32]), Choices(32))
    (tag,) = cut_as(danced, plan).tags
    assert (2, Fraction(4), Fraction(0)) == (tag.after_wall, tag.part.counts, tag.part.net_turn)
    replaced: Dance = replace(danced, tags=(Tag(1, part("old", 4, 4)),))
    assert cut_as(danced, plan) == cut_as(replaced, plan)


def test_a_sheet_with_more_cuts_than_allowed_may_do_better(tmp_path: Path) -> None:
    """Its one restart fits where none may be made anew."""
    report = fitted(tmp_path, SHEET + "Restart on wall 3 after 16 counts\n", "32 32 16 32", max_cuts=0)
    assert "do better than these: no wall off the phrase" in report.says
