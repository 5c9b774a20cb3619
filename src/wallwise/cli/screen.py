"""The screen: its width, its colours, and text that may safely be shown on it.

A terminal gets colours and wraps at its own width; a pipe gets plain lines of any length.
`NO_COLOR` is honoured by rich.
"""

from __future__ import annotations

import sys
from collections.abc import Iterable
from typing import IO, Any

from rich.cells import cell_len
from rich.console import Console
from rich.text import Text

from wallwise.dance.finding import Severity

# A pipe has no width of its own; lines in it are never broken.
_PIPE_WIDTH = 10_000
_WIDEST = 110

STYLES = {Severity.ERROR: "bold red", Severity.WARNING: "bold yellow", Severity.NOTE: "bold cyan"}


def console(*, stderr: bool = False) -> Console:
    """A console on standard output, or on standard error."""
    stream: IO[Any] = sys.stderr if stderr else sys.stdout
    made = Console(file=stream, highlight=False, markup=False, emoji=False, soft_wrap=not stream.isatty())
    if not made.is_terminal:
        made.width = _PIPE_WIDTH
    elif made.width > _WIDEST:
        made.width = _WIDEST  # longer lines are hard to read
    return made


def printable(text: str) -> str:
    """`text` on one line, every control character and tab a space, so that nothing in it moves the cursor."""
    return "".join(" " if ord(c) < 32 or 127 <= ord(c) < 160 else c for c in text.replace("\ufeff", ""))


def excerpt(line: str, start: int, end: int, width: int) -> tuple[str, str]:
    """As much of `line` as fits in `width` cells around characters `start` to `end`, and carets under them.

    Both offsets count from 0, the end exclusive; at least one caret is drawn.
    """
    end = max(end, start + 1)
    cut = 0
    if cell_len(line) > width:
        room = max(width - (end - start) - 2, 0)
        cut = max(0, min(start - room // 2, len(line) - width + 1))
    shown = printable(line[cut:])
    before = ""
    if cut:
        before = "…"
        shown = shown[1:]
        cut += 1
    fitting = shown
    while fitting and cell_len(before + fitting) > width:
        fitting = fitting[:-1]
    if len(fitting) < len(shown):
        fitting = fitting[:-1] + "…"
    indent = cell_len(before + shown[: max(0, start - cut)])
    marked = max(1, cell_len(shown[max(0, start - cut) : end - cut]))
    return before + fitting, " " * indent + "^" * max(1, min(marked, width - indent))


def joined(parts: Iterable[str | tuple[str, str]]) -> Text:
    """Words, some with a style, as one text."""
    return Text.assemble(*parts)
