"""The screen: its width, its colours, and text that may safely be shown on it.

A terminal gets colours and wraps at its own width; a pipe gets plain lines of any length.
`NO_COLOR` is honoured by rich.
"""

from __future__ import annotations

import sys
from typing import IO, Any

from rich.cells import cell_len
from rich.console import Console

from wallwise.dance.finding import Severity

# A pipe has no width of its own; lines in it are never broken.
_PIPE_WIDTH = 10_000
_WIDEST = 110

STYLES = {Severity.ERROR: "bold red", Severity.WARNING: "bold yellow", Severity.NOTE: "bold cyan"}


def console(*, stderr: bool = False) -> Console:
    """A console on standard output, or on standard error."""
    stream: IO[Any] = sys.stderr if stderr else sys.stdout
    made = Console(file=stream, highlight=False, markup=False, emoji=False)
    if not made.is_terminal:
        made.width, made.soft_wrap = _PIPE_WIDTH, True
    elif made.width > _WIDEST:
        made.width = _WIDEST  # longer lines are hard to read
    return made


def printable(text: str) -> str:
    """`text` on one line, every control character and tab a space, so that nothing in it moves the cursor."""
    return "".join(" " if ord(c) < 32 or 127 <= ord(c) < 160 else c for c in text.replace("\ufeff", ""))


def excerpt(line: str, start: int, end: int, *, width: int) -> tuple[str, str]:
    """As much of `line` as fits in `width` cells around characters `start` to `end`, and carets under them.

    Both offsets count from 0, the end exclusive; at least one caret is drawn.
    """
    cells = [printable(character) for character in line]
    first = 0
    if _width(cells) >= width:  # what ends the line may have its caret one cell further
        while first < start and _width(cells[first:start]) > width // 2 - 1:
            first += 1
    cut = "…" if first else ""
    shown = cut + _fitting(cells[first:], width - len(cut))
    indent = len(cut) + _width(cells[first:start])
    return shown, " " * indent + "^" * max(1, min(_width(cells[start:end]), width - indent))


def _fitting(cells: list[str], width: int) -> str:
    """The cells joined, cut with an ellipsis where they are wider than `width`."""
    if _width(cells) <= width:
        return "".join(cells)
    while cells and _width(cells) > width - 1:
        cells = cells[:-1]
    return "".join(cells) + "…"


def _width(cells: list[str]) -> int:
    return sum(map(cell_len, cells))
