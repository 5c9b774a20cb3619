"""Rows: the lines of a sheet without what only dresses them (quoting, bullets, table bars, page numbers)."""

import re
from dataclasses import dataclass

from wallwise.glossary.load import words
from wallwise.reading.headings import starts_block
from wallwise.reading.marks import leading_mark
from wallwise.reading.stepwords import known_share
from wallwise.reading.tidy import Line
from wallwise.reading.wording import ORDER_WORDS, any_of

_QUOTE = re.compile(r"^\s*(?:>\s?)+")
_BULLET = re.compile(
    r"""
    ^\s*(?:
        [\u2022*+o] | -> | -(?=\s)
      | \d{1,2}[.)](?=\s+(?:\(?\d+\s?[-&,]|&))  # a number before a count mark only numbers the line
      | \d{1,2}(?=\s*\t\s*\(?\d+\s?[-&])  # as does one in a cell before it
    )\s+(?=\S)
    | ^\s*\u2022\s*
    """,
    re.VERBOSE,
)
_DASH = re.compile(r"[^\W\d]\s-\s[^\W]")
_RULE = re.compile(r"^[\s|:=_*~.#+-]*$")
_PAGE = re.compile(
    r"""
    \b(?:page|sheet|p\.)\s*\d+\s*(?:of|/)\s*\d+
    | ^\s*-?\s*\d{1,3}\s*-?\s*$
    | ^\s*page\s+\d+\s*$
    """,
    re.IGNORECASE | re.VERBOSE,
)
_COLUMNS = re.compile(r"(?<=\S)[ ]{3,}(?=\S)")
# A column of directions that a long line leaves only two blanks for: "… (3:00)  Turning right".
_LAST_CELL = re.compile(rf"(?<=[.)]) {{2}}(?={any_of(words()['table']['directions'])}$)", re.IGNORECASE)
_CELLS = re.compile(r"\t|\s{2,}")
_HASH = re.compile(r"^\s*#{1,6}\s*")
_ABBREVIATION = re.compile(  # "RF = right foot, LF = left foot"
    r"(?<![\w/])[A-Z][A-Za-z.]{0,4}\s?=\s?(?:the\s)?"
    r"(?:right|left|both|foot|forward|back|side|together|touch|step|recover|turn|clockwise)\b",
    re.IGNORECASE,
)
_COLUMN_NAMES = frozenset(words()["table"]["columns"])
_WALL = re.compile(r"\bw(?:all)?\s?\d", re.IGNORECASE)
_DIGITS = re.compile(r"\d+")


@dataclass(frozen=True, slots=True)
class Row:
    """A line undressed, the paragraph it stands in (from 0), and whether a bullet opened it.

    `width` is how many characters the line had in the sheet, with what dressed it.  `opens` is
    whether it is a line of a numbered list, and with that a section of its own.
    """

    line: Line
    paragraph: int
    width: int
    bullet: bool = False
    opens: bool = False


def rows_of(lines: list[Line]) -> list[Row]:
    """The rows of a sheet that say something; empty for a sheet of blank lines."""
    rows: list[Row] = []
    paragraph = 0
    for line in lines:
        width = line.width
        if quote := _QUOTE.match(line.text):
            line = line.slice(quote.end())
        if _RULE.match(line.text):
            paragraph += not line.text.strip(" |")
            continue
        if "|" in line.text:
            line = _with_text(line, line.text.replace("|", "\t")).slice(0)
        if hashes := _HASH.match(line.text):
            line = line.slice(hashes.end())
            paragraph += 1
        line = _with_text(line, _COLUMNS.sub(lambda gap: "\t" + gap.group()[1:], line.text))
        line = _with_text(line, _LAST_CELL.sub(lambda gap: "\t" + gap.group()[1:], line.text))
        bullet = None if rows and _goes_on(rows[-1].line.text, line.text) else _BULLET.match(line.text)
        line = _without_column_names(_unquoted(line.slice(bullet.end() if bullet else 0)))
        if _names_columns(line.text) or len(_ABBREVIATION.findall(line.text)) > 1:
            continue
        if line.text:
            rows.append(Row(line, paragraph, width, bullet is not None))
        else:
            paragraph += 1
    return _without_page_marks(rows)


def _goes_on(before: str, text: str) -> bool:
    """Whether a dash that opens a line parts it from steps before it, as others there are parted."""
    return text.startswith("- ") and _DASH.search(before) is not None and leading_mark(before) is not None


def _with_text(line: Line, text: str) -> Line:
    """The line with other signs in the same places."""
    return line if text == line.text else Line(text, line.starts, line.ends)


def _unquoted(line: Line) -> Line:
    text = line.text
    quoted = len(text) > 2 and text[0] in "\"'(" and text[-1] in "\"'"
    return line.slice(1, len(text) - 1) if quoted else line


def _names_columns(text: str) -> bool:
    """Whether a row only names the columns of a table of steps ("Count | Step | Facing")."""
    cells = [cell.strip(" *_").lower() for cell in _CELLS.split(text) if cell.strip()]
    return len(cells) > 1 and all(cell in _COLUMN_NAMES for cell in cells)


def _without_column_names(line: Line) -> Line:
    """The one cell of a row that says something beside names of columns: "Count | SECTION 1 | Wall"."""
    at, told, named = 0, [], 0
    for cell in _CELLS.split(line.text):
        start = line.text.index(cell, at)
        at = start + len(cell)
        if cell.strip(" *_").lower() in _COLUMN_NAMES:
            named += 1
        elif cell.strip():
            told.append((start, at))
    return line.slice(*told[0]) if named > 1 and len(told) == 1 else line


def _without_page_marks(rows: list[Row]) -> list[Row]:
    """Page headers and footers out: lines that only number a page or come again with another number."""
    kept: list[Row] = []
    held: set[str] = set()
    for row in rows:
        text = row.line.text
        mask = _DIGITS.sub("#", text.lower())
        if leading_mark(text) is None and (_PAGE.search(text) or (mask in held and _says_nothing(text))):
            continue
        kept.append(row)
        held.add(mask)
    return kept


def _says_nothing(text: str) -> bool:
    """Whether a line can be left out when it comes again: it is no step, heading or order."""
    told = starts_block(text) or ORDER_WORDS.search(text) or _WALL.search(text)
    return known_share(text) < 0.5 and not told
