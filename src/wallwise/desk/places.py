"""Lines and columns of a text, worked out only to be shown.

Both are 1-based; a column counts characters.  A line ends with a line feed, a carriage
return, or both together.
"""

from __future__ import annotations

import re
from bisect import bisect_right
from typing import NamedTuple

_LINE_END = re.compile(r"\r\n|\r|\n")


class Place(NamedTuple):
    """A line and a column, both from 1."""

    line: int
    column: int


class Lines:
    r"""The lines of a text.

    >>> lines = Lines("Lantern Ferry\r\n1-2  Walk R, L")
    >>> lines.place(15), lines.line(2)
    (Place(line=2, column=1), '1-2  Walk R, L')
    """

    def __init__(self, text: str) -> None:
        self._text = text
        self._ends = [match.start() for match in _LINE_END.finditer(text)]
        self._starts = [0, *(match.end() for match in _LINE_END.finditer(text))]

    def __len__(self) -> int:
        return len(self._starts)

    def place(self, offset: int) -> Place:
        """Where the character `offset` (from 0) stands; an offset past the end stands at the end."""
        offset = max(0, min(offset, len(self._text)))
        line = bisect_right(self._starts, offset)
        return Place(line, offset - self._starts[line - 1] + 1)

    def line(self, number: int) -> str:
        """The text of line `number` (from 1) without its end; ValueError where there is none."""
        if not 1 <= number <= len(self):
            raise ValueError(f"no line {number} in a text of {len(self)} lines")
        end = self._ends[number - 1] if number <= len(self._ends) else len(self._text)
        return self._text[self._starts[number - 1] : end]
