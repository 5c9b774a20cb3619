"""`wallwise check`, from the sheet to the exit code."""

from __future__ import annotations

import json
import re
import subprocess
import sys
import threading
from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

from wallwise.desk.errors import DeskError

if TYPE_CHECKING:
    from tests.cli.conftest import Run, Terminal


def test_a_sound_sheet_is_shown_at_a_glance(run: Run, sound: Path) -> None:
    """Figures, sections and the verdict; exit 0."""
    said = run("check", sound)
    assert said.code == 0, said.out
    assert "16 counts · 4 walls" in said.out
    assert "ends facing 9:00, weight left" in said.out
    assert "Sound: nothing to settle." in said.out
    assert "\x1b" not in said.out


def test_a_finding_stands_under_its_words(run: Run, faulty: Path) -> None:
    """Place, rule, the line with carets, the message and a mend; exit 1."""
    said = run("check", faulty)
    assert said.code == 1
    head = re.search(r"faulty-ferry\.txt:(\d+):(\d+): (error|warning): [a-z-]+", said.out)
    assert head, said.out
    assert re.search(r"^ +\d+ \| .*\n +\| +\^+$", said.out, re.MULTILINE)
    assert "mend" in said.out


def test_json_is_one_object_that_names_every_event(run: Run, sound: Path) -> None:
    """The object agrees with the dance, weight change by weight change."""
    said = run("check", sound, "--json")
    assert said.code == 0
    read = json.loads(said.out)
    assert (read["counts"], read["walls"], read["ends_facing"], read["ends_weight"]) == (16, 4, "9:00", "L")
    feet = [(e["at"], e["foot"]) for e in read["parts"][0]["events"] if e["weight"]]
    assert feet[:6] == [(1, "R"), (2, "L"), (3, "R"), (5, "L"), (6, "R"), (7, "L")]
    assert read["findings"] == []


def test_mends_of_the_json_fit_the_text_as_given(run: Run, faulty: Path) -> None:
    """The first mend, made in the file's own characters, gives back the sound sheet."""
    text = faulty.read_bytes().decode()
    findings = json.loads(run("check", faulty, "--json").out)["findings"]
    mend = next(m for f in findings for m in f["mends"])
    faulty.write_text(text[: mend["start"]] + mend["replace"] + text[mend["end"] :], encoding="utf-8")
    assert run("check", faulty).code == 0


@pytest.mark.parametrize("encoding", ["utf-8-sig", "utf-16"])
def test_a_byte_order_mark_does_no_harm(run: Run, sound: Path, encoding: str) -> None:
    """The mark is no part of the title."""
    sound.write_bytes(sound.read_text(encoding="utf-8").encode(encoding))
    said = run("check", sound, "--json")
    assert said.code == 0
    assert json.loads(said.out)["title"].upper() == "LANTERN FERRY"


def test_standard_input_is_a_sheet(run: Run, sound: Path, standard_input: Callable[[str], None]) -> None:
    """A dash reads what is piped in."""
    standard_input(sound.read_text(encoding="utf-8"))
    assert run("check", "-").code == 0


def test_a_folder_is_a_table(run: Run, sound: Path, faulty: Path) -> None:
    """One row a sheet, tabs between the columns in a pipe; the exit code is the worst."""
    said = run("check", sound.parent)
    assert said.code == 1
    head, *rows = [line.split("\t") for line in said.out.splitlines()]
    assert head[0] == "sheet"
    assert [(Path(row[0]).name, row[2], row[3]) for row in rows] == [
        ("faulty-ferry.txt", "16", "4"),
        ("lantern-ferry.txt", "16", "4"),
    ]
    (sound.parent / "letter.txt").write_text("Dear all, the hall is closed on Monday.\n")
    said = run("check", sound.parent, "--json")
    assert said.code == 2
    assert ["unreadable" in row for row in json.loads(said.out)] == [False, False, True]
    assert faulty.exists()


def test_what_is_no_sheet_is_one_sentence(run: Run, tmp_path: Path) -> None:
    """A letter, an empty file and a picture are refused alike; nothing is printed as JSON."""
    for name, data in (
        ("letter.txt", b"Dear all,\nthe hall is closed.\n"),
        ("e.txt", b""),
        ("p.txt", b"\x89PNG\r\n\0"),
    ):
        (tmp_path / name).write_bytes(data)
        said = run("check", tmp_path / name, "--json")
        assert (said.code, said.out) == (2, "")
        assert said.err.startswith(f"{name}: ")
        assert said.err.count("\n") == 1


def test_a_terminal_gets_colours_unless_they_are_not_wanted(terminal: Terminal, faulty: Path) -> None:
    """Colours on a terminal, none with NO_COLOR."""
    assert "\x1b[1;3" in terminal(["check", str(faulty)], columns=80)
    plain = terminal(["check", str(faulty)], columns=80, NO_COLOR="1")
    assert not re.search(r"\x1b\[[0-9;]*3[0-7]", plain)


def test_a_narrow_terminal_is_never_overrun(terminal: Terminal, faulty: Path, sound: Path) -> None:
    """No line is longer than forty columns, carets still under their words."""
    shown = terminal(["check", str(faulty)], columns=40, NO_COLOR="1")
    lines = re.sub(r"\x1b\[[0-9;?]*[a-zA-Z]", "", shown).splitlines()
    assert max(map(len, lines)) <= 40
    assert any(set(line.split("|")[-1].strip()) == {"^"} for line in lines if "|" in line)
    table = terminal(["check", str(sound.parent)], columns=60, NO_COLOR="1")
    assert "2 sheets: 1 sound, 1 with findings to settle." in table


def test_watching_checks_again_when_the_sheet_is_saved(sound: Path, faulty: Path) -> None:
    """The second check shows what was saved meanwhile; Ctrl-C ends with the last exit code."""
    command = [sys.executable, "-m", "wallwise", "check", str(sound), "--watch"]
    with subprocess.Popen(command, stdout=subprocess.PIPE, text=True) as process:
        late = threading.Timer(30, process.kill)
        late.start()
        assert process.stdout
        lines = iter(process.stdout.readline, "")
        assert any(line.startswith("Watching") for line in lines)
        sound.write_text(faulty.read_text(encoding="utf-8"), encoding="utf-8")
        assert any("lantern-ferry.txt:" in line for line in lines)
        assert any(line.startswith("Watching") for line in lines)
        process.send_signal(2)
        assert process.wait(timeout=10) == 1
        late.cancel()


def test_a_mistake_of_the_program_is_a_sentence(
    run: Run, monkeypatch: pytest.MonkeyPatch, sound: Path
) -> None:
    """No teacher sees a traceback, and one sheet stops no folder of them."""

    def stumble(*_: object) -> object:
        return 1 // 0

    monkeypatch.setattr("wallwise.checks.check", stumble)
    code, out, err = run("check", sound)
    assert (2, "") == (code, out)
    assert err.count("\n") == 1
    assert "mistake of Wallwise itself" in err


def test_a_refusal_anywhere_is_a_sentence(run: Run, monkeypatch: pytest.MonkeyPatch, sound: Path) -> None:
    """Whatever the desk refuses comes out the same way."""

    def refuse(*_: object) -> object:
        raise DeskError("The hall is closed.")

    monkeypatch.setattr("wallwise.desk.report.check_sheet", refuse)
    assert run("check", sound) == (2, "", "The hall is closed.\n")
