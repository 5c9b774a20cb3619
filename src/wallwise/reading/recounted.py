"""Counts told with a part's letter ("A 1-4 …", "[B 9-16] …") or in bars ("Bar 1 …"), as plain counts."""

import re
from dataclasses import replace

from wallwise.reading.headings import lettered_part
from wallwise.reading.rows import Row
from wallwise.reading.tidy import Line

_LETTER = re.compile(
    r"\W*?(?:\[\s*(?P<boxed>[A-HT])\s*[.:-]?\s*|(?P<letter>[A-HT])(?:\s*[.:]\s*|\s+))(?=\d{1,2}\s?[-&,]\s?\d)"
)
_BAR = re.compile(r"\W*bar\s+(?P<bar>\d{1,2})\b[\s:.)-]*(?=[A-Za-z\d])", re.IGNORECASE)
_WALTZ = re.compile(r"\bwaltz", re.IGNORECASE)
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


def unbarred(rows: list[Row]) -> list[Row]:
    """The rows that each tell the steps of one bar ("Bar 2  R back, L beside R …"), under its counts."""
    found = {i: told for i, row in enumerate(rows) if (told := _BAR.match(row.line.text)) is not None}
    bars = [int(told["bar"]) for told in found.values()]
    if len(bars) < _FEWEST or bars != list(range(1, len(bars) + 1)):
        return rows
    beats = 3 if any(_WALTZ.search(row.line.text) for row in rows) else 4
    return [
        replace(row, line=_counted(row.line, found[i], beats)) if i in found else row
        for i, row in enumerate(rows)
    ]


def _counted(line: Line, told: re.Match[str], beats: int) -> Line:
    """The line with the counts of a bar of so many beats instead of its number."""
    last = int(told["bar"]) * beats
    counts = f"{last - beats + 1}-{last} "
    rest = line.slice(told.end())
    at, end = line.starts[told.start("bar")], line.ends[told.end("bar") - 1]
    return Line(counts + rest.text, [at] * len(counts) + rest.starts, [end] * len(counts) + rest.ends)


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
