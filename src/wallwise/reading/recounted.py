"""Counts told with a part's letter ("A 1-4 …", "[B 9-16] …", "V1."), in bars or as lengths, as plain ones."""

import re
from dataclasses import replace
from itertools import groupby, pairwise

from wallwise.reading.headings import head_of, lettered_part
from wallwise.reading.marks import Mark, leading_mark
from wallwise.reading.rows import Row
from wallwise.reading.stepwords import known_share
from wallwise.reading.tidy import Line

_LETTER = re.compile(
    r"\W*?(?:\[\s*(?P<boxed>[A-HT])\s*[.:-]?\s*|(?P<letter>[A-HT])(?:\s*[.:]\s*|\s+|(?=\[)))"
    r"(?=[\[(]?\d{1,2}\s?[-&,]\s?\d)"
)
_INITIAL = re.compile(r"\W*(?P<initial>[A-RT-Z])(?=\d\s?[.:)-]\s)")
_PACKED = re.compile(
    r"\W*?(?P<counts>12345678|5678|1234|123|456|12|34|56|78)(?=&?[\s:.)]+[A-Za-z\u00bc-\u00be\d])"
)
_HIGH_COUNT = re.compile(r"\W*[1-9]\d[\s:.)-]+[A-Za-z]")
_BAR = re.compile(
    r"\W*bar\s+(?P<bar>\d{1,2})\b[\s:.)-]*(?:\((?:\d[\s,&-]*)+\)\s*)?(?=[A-Za-z\d])", re.IGNORECASE
)
_BARS = re.compile(r"\bbars?\s+(?P<bar>\d{1,2})(?:\s*(?:-|to|and|&)\s*(?P<to>\d{1,2}))?\b", re.IGNORECASE)
_LASTS = re.compile(
    r"\S(?:\s*\.{2,}\s*|\t\s*|\s{2,})(?P<counts>\d{1,2})\s*(?:counts?|cts?|beats?)?$", re.IGNORECASE
)
_FACING_FIRST = re.compile(r"(?:1[0-2]|[1-9]):[0-5]\d(?=\t\s*(?:\d|&))")
_GAP = re.compile(r"(?:\t\s*|\s{2,})(?=\d)")
_HELD = re.compile(r"\W*(?:\d{1,2}\s*,\s*)*(?P<last>\d{1,2})\s*,\s*(?P<held>hold)\s*(?=[-:])", re.IGNORECASE)
_WALTZ = re.compile(r"\bwaltz", re.IGNORECASE)
_SOME = 0.3  # of the lengths: so many may be longer than the one before
_STEPS = 0.5  # the share of step language of a line of steps
_TAG = "T"
_LENGTHS = (1, 2, 3, 4, 6, 8, 12, 16)  # counts that a line of steps may last
_WIDEST = 300  # characters of a row of columns
_FEWEST = 3  # lines: a letter before fewer can be a foot or a slip


def recounted(rows: list[Row]) -> list[Row]:
    """The rows, with plain counts for every other way to tell them."""
    rows = [_with_hold_counted(row) for row in unfolded(faced_behind(rows))]
    return untotalled(unbarred(unlettered(uninitialled(unpacked(rows)))))


def _with_hold_counted(row: Row) -> Row:
    """The row, with the number of a count that its mark calls by what is done on it: "1, 2, 3, hold - …"."""
    told = _HELD.match(row.line.text)
    if told is None:
        return row
    count = str(int(told["last"]) + 1)
    return replace(row, line=_put(row.line, told.start("held"), told.end("held"), count))


def faced_behind(rows: list[Row]) -> list[Row]:
    """The rows of a table with the facing that a first column gives behind the steps that end with it."""
    found = {
        i: told for i, row in enumerate(rows) if (told := _FACING_FIRST.match(row.line.text)) is not None
    }
    if len(found) < _FEWEST:
        return rows
    behind = {
        i: rows[i].line.slice(t.end()).join(rows[i].line.slice(0, t.end()), "\t") for i, t in found.items()
    }
    return [replace(row, line=behind.get(i, row.line)) for i, row in enumerate(rows)]


def unfolded(rows: list[Row]) -> list[Row]:
    """The rows with counts that stand side by side in columns (5 beside 1) one below the other."""
    out: list[Row] = []
    for columns, group in groupby(rows, key=lambda row: (row.paragraph, len(_columns(row.line)))):
        run = list(group)
        cells = [cell for column in zip(*[_columns(row.line) for row in run], strict=True) for cell in column]
        if columns[1] > 1 and len(run) > 1 and _count_on(cells):
            run = [replace(run[i % len(run)], line=line) for i, (_, line) in enumerate(cells)]
        out += run
    return out


def _columns(line: Line) -> list[tuple[Mark, Line]]:
    """The pieces of a line that each begin with a count mark behind a gap, or at its beginning."""
    if len(line.text) > _WIDEST:
        return []
    starts = [0, *(gap.end() for gap in _GAP.finditer(line.text))]
    marks = [(start, mark) for start in starts if (mark := leading_mark(line.text, start)) is not None]
    if not marks or marks[0][0] > 0:
        return []
    ends = [*(start for start, _ in marks[1:]), len(line.text)]
    return [(mark, line.slice(start, end)) for (start, mark), end in zip(marks, ends, strict=True)]


def _count_on(cells: list[tuple[Mark, Line]]) -> bool:
    """Whether each piece begins with the count that follows the one before it."""
    return all(0 < after.first - before.last <= 1 for (before, _), (after, _) in pairwise(cells))


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
        heads.append(replace(row, line=_put(row.line, at, told.end(), "")))
    return heads


def unpacked(rows: list[Row]) -> list[Row]:
    """The rows with their counts apart, where these stand as one number: "12 step R, touch L", "34& …"."""
    found = {i: told for i, row in enumerate(rows) if (told := _PACKED.match(row.line.text)) is not None}
    high = any(_is_high(row.line.text) for i, row in enumerate(rows) if i not in found)
    if high or len({told["counts"] for told in found.values()}) < _FEWEST:
        return rows  # 12, 34 and 56 may be counts of a long dance themselves
    apart = list(rows)
    for i, told in found.items():
        line = _put(rows[i].line, told.start("counts"), told.end("counts"), "-".join(told["counts"]))
        apart[i] = replace(rows[i], line=line)
    return apart


def _is_high(text: str) -> bool:
    """Whether a line of steps begins with a count of two figures."""
    return _HIGH_COUNT.match(text) is not None and known_share(text) >= _STEPS


def uninitialled(rows: list[Row]) -> list[Row]:
    """The rows of parts that go by a name, with "S" for its initial ("V1.", "C2.")."""
    initial = ""
    plain: list[Row] = []
    for row in rows:
        told = _INITIAL.match(row.line.text)
        if told is not None and told["initial"] == initial:
            row = replace(row, line=_put(row.line, told.start("initial"), told.end(), "S"))
        elif (head := head_of(row.line.text)) is not None and head.kind == "part":
            initial = head.name[:1] if len(head.name) > 1 else ""
        plain.append(row)
    return plain


def unbarred(rows: list[Row]) -> list[Row]:
    """The rows that each tell the steps of one bar ("Bar 2  R back, L beside R …"), under its counts."""
    found = {i: told for i, row in enumerate(rows) if (told := _BAR.match(row.line.text)) is not None}
    bars = [int(told["bar"]) for told in found.values()]
    if len(bars) < _FEWEST or bars != list(range(1, len(bars) + 1)):
        return rows
    beats = 3 if any(_WALTZ.search(row.line.text) for row in rows) else 4
    return [replace(row, line=_in_counts(row.line, found.get(i), beats)) for i, row in enumerate(rows)]


def untotalled(rows: list[Row]) -> list[Row]:
    """The rows that end in how many counts each lasts ("ROCKING CHAIR ..... 4"), with the counts instead."""
    found = {i: told for i, row in enumerate(rows) if (told := _lasts(row.line.text)) is not None}
    lengths = [int(told["counts"]) for told in found.values()]
    grown = sum(b > a for a, b in pairwise(lengths))  # as counts would, that mark where a line stands
    if len(lengths) < _FEWEST or not set(lengths) <= set(_LENGTHS) or grown > _SOME * len(lengths):
        return rows
    danced = 0
    counted: list[Row] = []
    for i, row in enumerate(rows):
        if (told := found.get(i)) is not None:
            first, danced = danced + 1, danced + int(told["counts"])
            line = _put(row.line, told.start("counts"), told.end(), f"({first}-{danced})")
            row = replace(row, line=line)
        elif head_of(row.line.text) is not None:
            danced = 0
        counted.append(row)
    return counted


def _lasts(text: str) -> re.Match[str] | None:
    """How many counts a line without a count mark says at its end that it lasts."""
    return _LASTS.search(text) if leading_mark(text) is None else None


def _in_counts(line: Line, told: re.Match[str] | None, beats: int) -> Line:
    """The line under the counts of the bar it tells, and with counts wherever it names bars."""
    if told is not None:
        return _put(line, told.start(), told.end(), _counts_of(told, beats) + " ")
    for named in reversed(list(_BARS.finditer(line.text))):
        line = _put(line, named.start(), named.end(), "counts " + _counts_of(named, beats))
    return line


def _counts_of(bars: re.Match[str], beats: int) -> str:
    """The counts from the first bar's first to the last one's last, as "4-9"."""
    first, last = int(bars["bar"]), int(bars.groupdict().get("to") or bars["bar"])
    return f"{(first - 1) * beats + 1}-{last * beats}"


def _put(line: Line, start: int, end: int, text: str) -> Line:
    """The line with other words from `start` to `end`, which stand where those stood."""
    at, to = line.starts[start], line.ends[end - 1]
    return Line(
        line.text[:start] + text + line.text[end:],
        [*line.starts[:start], *[at] * len(text), *line.starts[end:]],
        [*line.ends[:start], *[to] * len(text), *line.ends[end:]],
    )


def _heading(line: Line, at: int) -> Line:
    """A line that heads the part whose letter stands at that place."""
    letter = line.text[at]
    text = "Tag" if letter == _TAG else f"Part {letter}"
    return Line(text, [line.starts[at]] * len(text), [line.ends[at]] * len(text))
