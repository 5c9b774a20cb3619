"""Help comes at once, misuse gets one sentence, and nothing makes a traceback."""

from __future__ import annotations

import json
import subprocess
import sys
from typing import TYPE_CHECKING

import pytest

if TYPE_CHECKING:
    from tests.cli.conftest import Run

HEAVY = (
    "rich",
    "jinja2",
    "docx",
    "pypdf",
    "lxml",
    "numpy",
    "scipy",
    "soundfile",
    "piper",
    "wallwise.reading",
    "wallwise.glossary",
    "wallwise.floor",
)
COMMANDS = ("check", "walls", "fit", "song", "mend", "explain", "glossary", "pack", "practice", "demo")


@pytest.mark.parametrize("arguments", [["--help"], ["check", "--help"], ["--version"]])
def test_help_imports_nothing_heavy(arguments: list[str]) -> None:
    """Neither the reader nor any library but typer is loaded to print the help."""
    program = (
        "import json, sys; from wallwise.cli import main; code = main(sys.argv[1:]);"
        "print(json.dumps([code, sorted(sys.modules)]))"
    )
    done = subprocess.run(
        [sys.executable, "-c", program, *arguments], capture_output=True, text=True, check=True
    )
    code, modules = json.loads(done.stdout.splitlines()[-1])
    assert code == 0
    assert not set(HEAVY) & set(modules)


def test_help_names_every_command(run: Run) -> None:
    """Without a command the help is printed, with the first sentence of each whole."""
    said = run()
    assert said.code == 0
    for command in COMMANDS:
        assert f"\n  {command} " in said.out
    assert "..." not in said.out.split("Commands:")[1]


@pytest.mark.parametrize(
    "arguments",
    [
        ["frobnicate"],
        ["check"],
        ["check", "--nope", "x"],
        ["check", "--jobs", "many", "x"],
        ["check", "no-such-file.txt"],
        ["check", "-", "--watch"],
        ["walls"],
        ["walls", "no-such-file.txt"],
        ["walls", "no-such-file.txt", "--bpm", "120", "--length", "3:00"],
        ["walls", "-", "--json"],
        ["walls", "-", "--song", "no-such-song.mp3", "--length", "3:00"],
        ["walls", "-", "--bpm", "fast", "--length", "3:00"],
        ["fit"],
        ["fit", "no-such-file.txt"],
        ["fit", "no-such-file.txt", "--phrases", "32 32"],
        ["fit", "-", "--phrases", "32", "--song", "no-such-song.mp3"],
        ["mend", "-"],
        ["mend", "no-such-file.txt"],
        ["pack", "no-such-file.txt", "-o", "out"],
        ["pack", "no-such-file.txt"],
        ["explain", "no-such-rule"],
        ["glossary", "xyzzy"],
        ["song"],
        ["song", "no-such-file.mp3"],
        ["song", "/"],
    ],
)
def test_bad_usage_is_one_sentence_and_exit_2(run: Run, arguments: list[str]) -> None:
    """The sentence is on standard error and nothing on standard output."""
    said = run(*arguments)
    assert (said.code, said.out) == (2, "")
    assert said.err.count("\n") == 1
    assert said.err.endswith(".\n")


def test_the_module_is_the_command() -> None:
    """`python -m wallwise` does the same."""
    done = subprocess.run(
        [sys.executable, "-m", "wallwise", "--version"], capture_output=True, text=True, check=True
    )
    assert done.stdout.startswith("wallwise ")
