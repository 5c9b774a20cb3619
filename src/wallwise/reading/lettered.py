"""Lettered counts: lines that each begin with the letter of their part ("A 1-4 …", "[B 9-16] …")."""

import re
from dataclasses import replace

from wallwise.reading.headings import lettered_part
from wallwise.reading.rows import Row
from wallwise.reading.tidy import Line

_LETTER = re.compile(
    r"\W*?(?:\[\s*(?P<boxed>[A-HT])\s*[.:-]?\s*|(?P<letter>[A-HT])(?:\s*[.:]\s*|\s+))(?=\d{1,2}\s?[-&,]\s?\d)"
)
_TAG = "T"
_FEWEST = 3  # lines: a letter before fewer can be a foot or a slip


def unlettered(rows: list[Row]) -> list[Row]:
    """The rows without the letters before their counts; where the letter changes, a row heads that part."""
    found = {i: told for i, row in enumerate(rows) if (told := _LETTER.match(row.line.text)) is not None}
    if len(found) < _FEWEST:
        return rows
    heads: list[Row] = []
    letter = ""
    for i, row in enumerate(rows):
        told = found.get(i)
        if told is None:
            head = lettered_part(row.line.text)
            letter = head.name if head is not None else letter
            heads.append(row)
            continue
        at = told.start("boxed") if told["boxed"] else told.start("letter")
        if row.line.text[at] != letter:
            letter = row.line.text[at]
            heads.append(replace(row, line=_heading(row.line, at), bullet=False))
        heads.append(replace(row, line=_without(row.line, at, told.end())))
    return heads


def _heading(line: Line, at: int) -> Line:
    """A line that heads the part whose letter stands at that place."""
    letter = line.text[at]
    text = "Tag" if letter == _TAG else f"Part {letter}"
    return Line(text, [line.starts[at]] * len(text), [line.ends[at]] * len(text))


def _without(line: Line, start: int, end: int) -> Line:
    """The line without the characters from `start` to `end`."""
    kept = [*range(start), *range(end, len(line.text))]
    text = "".join(line.text[i] for i in kept)
    return Line(text, [line.starts[i] for i in kept], [line.ends[i] for i in kept])
