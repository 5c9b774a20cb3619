"""Sheets that any reader of step sheets understands, and the command line run on them."""

from __future__ import annotations

import io
import os
import pty
import select
import subprocess
import sys
import time
from collections.abc import Callable
from pathlib import Path
from typing import NamedTuple

import pytest

from wallwise.cli import main

SOUND = """LANTERN FERRY
Count: 16   Wall: 4   Level: Beginner
Choreographer: Ysolde Pennifer
Music: Wick and Tallow - The Saltmarsh Five

S1: WALK, WALK, WALK, TOUCH, BACK, BACK, BACK, TOUCH
1-2   Step R forward, step L forward
3-4   Step R forward, touch L beside R
5-6   Step L back, step R back
7-8   Step L back, touch R beside L

S2: VINE RIGHT, TOUCH, VINE LEFT 1/4 LEFT, TOUCH
1-2   Step R to right side, step L behind R
3-4   Step R to right side, touch L beside R
5-6   Step L to left side, step R behind L
7-8   Turn 1/4 left stepping L forward, touch R beside L (9:00)
"""
FAULTY = SOUND.replace("Step L back, step R back", "Step L back, step L back")
RESTARTED = SOUND + "\nRestart: on wall 3 dance 8 counts then restart facing 6:00\n"


class Said(NamedTuple):
    """What a command printed and its exit code."""

    code: int
    out: str
    err: str


Run = Callable[..., Said]
Terminal = Callable[..., str]


@pytest.fixture
def run(capsys: pytest.CaptureFixture[str]) -> Run:
    """Run `wallwise` with the arguments given."""

    def call(*arguments: object) -> Said:
        capsys.readouterr()
        code = main([str(argument) for argument in arguments])
        return Said(code, *capsys.readouterr())

    return call


@pytest.fixture
def sound(tmp_path: Path) -> Path:
    """A sheet with nothing to settle."""
    path = tmp_path / "lantern-ferry.txt"
    path.write_text(SOUND, encoding="utf-8")
    return path


@pytest.fixture
def faulty(tmp_path: Path) -> Path:
    """The same sheet, with the wrong foot at count 6 of section 1."""
    path = tmp_path / "faulty-ferry.txt"
    path.write_text(FAULTY, encoding="utf-8")
    return path


@pytest.fixture
def restarted(tmp_path: Path) -> Path:
    """The same sheet with a restart on wall 3."""
    path = tmp_path / "restarted-ferry.txt"
    path.write_text(RESTARTED, encoding="utf-8")
    return path


@pytest.fixture
def standard_input(monkeypatch: pytest.MonkeyPatch) -> Callable[[str], None]:
    """Put a text on standard input."""

    def put(text: str) -> None:
        monkeypatch.setattr("sys.stdin", io.TextIOWrapper(io.BytesIO(text.encode())))

    return put


def on_terminal(arguments: list[str], *, columns: int = 80, typed: str = "", **env: str) -> str:
    """What the command shows on a terminal this wide where `typed` is typed."""
    main, other = pty.openpty()
    environment = {k: v for k, v in os.environ.items() if k not in ("NO_COLOR", "FORCE_COLOR")}
    environment |= {"COLUMNS": str(columns), "LINES": "40", "TERM": "xterm-256color"} | env
    process = subprocess.Popen(
        [sys.executable, "-m", "wallwise", *arguments],
        stdin=other,
        stdout=other,
        stderr=other,
        env=environment,
    )
    os.close(other)
    os.write(main, typed.encode())
    shown = _read_until_closed(main)
    os.close(main)
    assert process.wait(timeout=10) in (0, 1)
    return shown


def _read_until_closed(end: int) -> str:
    shown, until = b"", time.monotonic() + 30
    while time.monotonic() < until:
        if select.select([end], [], [], 0.1)[0]:
            try:
                data = os.read(end, 65536)
            except OSError:  # the other end is closed
                break
            if not data:
                break
            shown += data
    return shown.decode()


@pytest.fixture
def terminal() -> Terminal:
    """Run a command on a terminal of its own."""
    return on_terminal
