"""The other commands, from the sheet to the exit code."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from wallwise.dance import codec
from wallwise.desk.demo import demo_sheets
from wallwise.desk.report import check_sheet

if TYPE_CHECKING:
    import pytest
    from tests.cli.conftest import Run, Terminal


def test_walls_are_counted_round(run: Run, sound: Path) -> None:
    """Four walls, each a quarter to the left of the one before, then the front."""
    said = run("walls", sound)
    assert said.code == 0
    rows = [line.split("\t") for line in said.out.splitlines()]
    assert [(row[1], row[4]) for row in rows[1:5]] == [
        ("12:00", "9:00"),
        ("9:00", "6:00"),
        ("6:00", "3:00"),
        ("3:00", "12:00"),
    ]
    assert "back at the front after wall 4" in said.out


def test_a_restart_shows_on_its_wall(run: Run, restarted: Path) -> None:
    """Wall 3 is cut after eight counts and says why."""
    rows = [line.split("\t") for line in run("walls", restarted).out.splitlines()]
    assert rows[3] == ["3", "6:00", "8", "restart", "6:00"]


def test_mend_shows_a_diff_and_changes_nothing_unasked(run: Run, faulty: Path) -> None:
    """Without a choice, and nobody to ask, the sheet stays as it is."""
    before = faulty.read_bytes()
    said = run("mend", faulty)
    assert said.code == 1
    assert "\n    - 5-6" in said.out
    assert "\n    + 5-6" in said.out
    assert "Nothing was changed." in said.out
    assert faulty.read_bytes() == before


def test_the_likeliest_mends_make_the_sheet_sound(run: Run, faulty: Path, sound: Path) -> None:
    """The wrong foot is mended to what it was, and the old sheet lies beside it."""
    before = faulty.read_bytes()
    said = run("mend", faulty, "--all", "--yes")
    assert said.code == 0, said.out
    assert (faulty.parent / "faulty-ferry.before-1.txt").read_bytes() == before
    assert check_sheet(faulty).dance == check_sheet(sound).dance
    assert run("mend", faulty).out == "There is nothing to mend.\n"


def test_a_mend_is_chosen_by_its_number(run: Run, faulty: Path) -> None:
    """The first mend by number; a number that is not there is refused."""
    assert run("mend", faulty, "--take", "99").code == 2
    said = run("mend", faulty, "--take", "1")
    assert "Mended: " in said.out
    assert said.code == 0


def test_a_mend_is_asked_for_on_a_terminal(terminal: Terminal, faulty: Path) -> None:
    """The number typed is the mend made; plain Enter makes none."""
    before = faulty.read_bytes()
    assert "Nothing was changed." in terminal(["mend", str(faulty)], typed="\n")
    assert faulty.read_bytes() == before
    assert "Mended: " in terminal(["mend", str(faulty)], typed="1\n")
    assert check_sheet(faulty).sound


def test_a_changed_foot_is_never_safe(run: Run, faulty: Path) -> None:
    """`--yes` alone makes no mend that changes a step."""
    before = faulty.read_bytes()
    assert run("mend", faulty, "--yes").code == 1
    assert faulty.read_bytes() == before


def test_a_pack_holds_the_dance_and_its_page(run: Run, sound: Path, tmp_path: Path) -> None:
    """`dance.json` is the very dance, and the page names it."""
    said = run("pack", sound, "-o", tmp_path / "pack")
    assert said.code == 0
    written = (tmp_path / "pack" / "dance.json").read_text(encoding="utf-8")
    assert codec.read(written) == check_sheet(sound).dance
    page = (tmp_path / "pack" / "page.html").read_text(encoding="utf-8")
    assert "<h1>LANTERN FERRY</h1>".casefold() in page.casefold()


def test_a_pack_of_a_faulty_sheet_shows_the_fault(run: Run, faulty: Path, tmp_path: Path) -> None:
    """The page is written and says what to settle; exit 1."""
    assert run("pack", faulty, "-o", tmp_path / "pack").code == 1
    assert "Settle this before anybody dances it." in (tmp_path / "pack" / "page.html").read_text("utf-8")


def test_a_file_in_the_way_of_a_pack_is_refused(run: Run, sound: Path) -> None:
    """The folder may not be a file."""
    said = run("pack", sound, "-o", sound)
    assert said.code == 2
    assert "a pack is a folder" in said.err


def test_rules_are_explained(run: Run) -> None:
    """The list names each rule, and each has its page."""
    listed = run("explain")
    assert listed.code == 0
    for line in listed.out.splitlines():
        said = run("explain", line.split()[0])
        assert said.code == 0
        assert len(said.out) > 200


def test_the_glossary_says_a_figure_count_by_count(run: Run) -> None:
    """Names, each way, and the source."""
    said = run("glossary", "jazz square")
    assert said.code == 0
    assert said.out.startswith("jazz box (")
    assert "1   Step right foot across the left" in said.out
    assert "Source: " in said.out
    assert "jazz box" in run("glossary").out


def test_the_demo_does_the_whole_job(run: Run, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Every demo sheet is checked and packed, and what is wrong is shown with its mend."""
    monkeypatch.chdir(tmp_path)
    said = run("demo")
    assert said.code == 0
    sheets = demo_sheets()
    assert len(sheets) >= 8
    for name, content in sheets:
        assert (tmp_path / "wallwise-demo" / "sheets" / name).read_bytes() == content
        assert (tmp_path / "wallwise-demo" / Path(name).stem / "page.html").exists()
        assert name in said.out
    assert "mend" in said.out
