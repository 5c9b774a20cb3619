"""The sheet's text made plain, with every character's place in the text as given.

Fractions become ``1/4``, dashes ``-``, quotes straight, accents and HTML leftovers go,
so that everything after this deals with one spelling.  Nothing is lost: a `Line` knows
for each of its characters where it came from.
"""

import html
import re
import unicodedata
from dataclasses import dataclass
from functools import lru_cache

from wallwise.dance.model import Span

# What markup there is: "<Restart here on wall 3>" is none.
_ELEMENTS = (
    r"(?:a|abbr|article|b|big|blockquote|body|br|center|code|dd|div|dl|dt|em|font|footer|h[1-6]|head|header|hr"
    r"|html|i|img|li|link|main|meta|o:p|ol|p|pre|s|section|small|span|strike|strong|style|sub|sup|table|tbody|td"
    r"|tfoot|th|thead|title|tr|tt|u|ul)"
)
_MARKUP = re.compile(
    rf"&(?:[a-zA-Z]{{2,8}}\d{{0,2}}|#\d{{1,6}}|#x[0-9a-fA-F]{{1,5}});"
    rf"|</?(?:(?i:{_ELEMENTS})\s*/?|(?i:{_ELEMENTS})\s+[\w:-]+\s*=[^<>\n]{{0,80}})>"
    r"|<!--.{0,200}?-->|\r\n?|\*\*|__"
)
_BREAKS = ("<br", "</p", "<p", "</tr", "</li", "<li", "<h", "</h", "</div")
_CELLS = ("</td", "</th")
_SPECIAL = {
    "\u2013": "-", "\u2014": "-", "\u2212": "-", "\u2010": "-", "\u2011": "-", "\u2012": "-", "\u2015": "-",
    "\u2018": "'", "\u2019": "'", "\u201a": "'", "\u201b": "'", "\u00b4": "'", "\u2032": "'",
    "\u201c": '"', "\u201d": '"', "\u201e": '"', "\u00ab": '"', "\u00bb": '"',
    "\u2026": "...", "\u00d7": "x", "\u00b0": " degrees", "\u00ba": " degrees", "\u2044": "/",
    "\u2190": "<-", "\u2192": "->", "\u21d2": "->", "\u27a1": "->", "\u2794": "->", "\u25ba": "->",
    "\u200b": "", "\ufeff": "", "\u00ad": "", "\u200c": "", "\u200d": "", "\ufe0f": "",
    "\u2022": "\u2022", "\u25cf": "\u2022", "\u25aa": "\u2022", "\u25a0": "\u2022", "\u25e6": "\u2022",
    "\u2023": "\u2022", "\u00b7": "\u2022", "\uf0b7": "\u2022", "\u2713": "\u2022",
    "\u2605": "*", "\u2606": "*", "\u2217": "*", "\u2731": "*",
    "\u00df": "ss", "\u00e6": "ae", "\u00f8": "o", "\uff06": "&",
    "\x0c": "\n", "\x0b": "\n", "\u2028": "\n", "\u2029": "\n", "\x85": "\n", "`": "'",
}  # fmt: skip
_SPECIAL_ASCII = str.maketrans({char: plain for char, plain in _SPECIAL.items() if char.isascii()})


@dataclass(frozen=True, slots=True)
class Line:
    """One line made plain.

    `starts[i]` and `ends[i]` are where character i of `text` begins and ends in the sheet as
    given (0-based, end exclusive).
    """

    text: str
    starts: list[int]
    ends: list[int]

    @property
    def width(self) -> int:
        """How many characters of the sheet it takes."""
        return self.ends[-1] - self.starts[0] if self.starts else 0

    def span(self, start: int, end: int) -> Span:
        """The place in the sheet of characters `start` to `end` of this line."""
        if not self.starts:
            return Span(0, 0)
        start = min(max(start, 0), len(self.starts) - 1)
        last = min(max(end - 1, start), len(self.ends) - 1)
        return Span(self.starts[start], self.ends[last])

    def slice(self, start: int, end: int | None = None) -> "Line":
        """The part of the line from `start` to `end`, stripped of blanks at both ends."""
        text = self.text[start:end]
        left = len(text) - len(text.lstrip())
        begin = start + left
        stop = begin + len(text.strip())
        return Line(self.text[begin:stop], self.starts[begin:stop], self.ends[begin:stop])

    def join(self, other: "Line", between: str = " ") -> "Line":
        """One line of both, with what stands `between` them."""
        if not self.text:
            return other
        gap = [self.ends[-1]] * len(between)
        starts, ends = [*self.starts, *gap, *other.starts], [*self.ends, *gap, *other.ends]
        return Line(self.text + between + other.text, starts, ends)


def tidy(text: str) -> list[Line]:
    """The lines of `text` made plain; blank ones are kept as empty lines."""
    plain = _Plain()
    at = 0
    for found in _MARKUP.finditer(text):
        plain.put_text(text, at, found.start())
        plain.put(_markup(found.group()), found.start(), found.end())
        at = found.end()
    plain.put_text(text, at, len(text))
    return _lines("".join(plain.pieces), plain.starts, plain.ends)


class _Plain:
    """Plain text as it grows: its pieces, and where each character began and ended in the sheet."""

    def __init__(self) -> None:
        self.pieces: list[str] = []
        self.starts: list[int] = []
        self.ends: list[int] = []

    def put(self, piece: str, start: int, end: int) -> None:
        """Add `piece`, which stands for characters `start` to `end` of the sheet."""
        self.pieces.append(piece)
        self.starts += [start] * len(piece)
        self.ends += [end] * len(piece)

    def put_text(self, text: str, start: int, end: int) -> None:
        """Add ``text[start:end]``, which holds no markup, character by character."""
        piece = text[start:end]
        if piece.isascii():
            # The quick way: most of a sheet is plain already and maps one to one.
            self.pieces.append(piece.translate(_SPECIAL_ASCII))
            self.starts += range(start, end)
            self.ends += range(start + 1, end + 1)
            return
        for i, char in enumerate(piece, start):
            self.put(_plain(char, text[i - 1] if i else ""), i, i + 1)


@lru_cache(maxsize=2048)
def _plain(char: str, before: str) -> str:
    if char in _SPECIAL:
        return _SPECIAL[char]
    if char.isascii():
        return char
    if unicodedata.category(char) == "Zs":
        return " "
    folded = unicodedata.normalize("NFKD", char)
    if "\u2044" in folded:  # a vulgar fraction: keep "1½" apart from "11/2"
        return (" " if before.isdigit() else "") + folded.replace("\u2044", "/")
    kept = "".join(_SPECIAL.get(c, c) for c in folded if not unicodedata.combining(c))
    return kept if kept.isascii() else (kept if char.isalpha() else " ")


def _markup(piece: str) -> str:
    if piece in ("\r", "\r\n"):
        return "\n"
    if piece in ("**", "__"):
        return ""
    if piece.startswith("<"):
        lowered = piece.lower()
        if lowered.startswith(_BREAKS):
            return "\n"
        return " | " if lowered.startswith(_CELLS) else ""
    return "".join(_plain(c, "") for c in html.unescape(piece))


def _as_blanks(found: re.Match[str]) -> str:
    return " " * len(found.group())


def _as_nth_wall(found: re.Match[str]) -> str:
    """The wall with its number behind it, in as many characters."""
    return f"wall {found[1]}".ljust(len(found.group()))


def _as_clock(found: re.Match[str]) -> str:
    """The hour as a clock time that takes as many characters."""
    return f"{found[1]}:00".ljust(len(found.group()))


# Slips of scanners and keyboards that stand for a figure one, and a dash of another kind between figures.
_SLIPS = (
    (re.compile(r"(?<=\d)~(?=\d)"), "-"),
    (re.compile(r"(?<![A-Za-z])[lI](?=/[2348]\b)"), "1"),
    (re.compile(r"(?m)^([^\S\n]*(?:\u2022\s*)?)[lI](?=\s?[-&]\s?\d)"), r"\g<1>1"),
    (re.compile(r"(?<=\d)[lI](?=:[03O]0)"), "1"),
    (re.compile(r"(?<=\d:)[O0][O0]\b"), "00"),
    (re.compile(r"(?<=[\[(])[lI](?=\s?-\s?\d)"), "1"),
    # Clock times as other languages write them.
    (
        re.compile(r"\bkl(?:\.\s?|\s)(?=\d{1,2}[:.]\d\d)", re.IGNORECASE),
        lambda found: " " * len(found.group()),
    ),
    (re.compile(r"\bkl(?:\.\s?|\s)(\d{1,2})\b", re.IGNORECASE), _as_clock),
    (re.compile(r"\b(\d{1,2})(?:\s?uhr\b|\s?h\s?00\b)", re.IGNORECASE), _as_clock),
    (
        re.compile(r"(?<![\w.:])(\d{1,2})\. (?:wall\b(?!\s*(?:\d|no\b|#))|Wall(?=\s?[,:(-]))"),
        _as_nth_wall,
    ),  # "2. wall"
    (re.compile(r"(?<=\d)[lI](?=[-\])])|(?<=[\[(]\d)[lI](?=\s?-)"), "1"),
)


def _lines(plain: str, starts: list[int], ends: list[int]) -> list[Line]:
    for pattern, fixed in _SLIPS:
        plain = pattern.sub(fixed, plain)
    lines = []
    at = 0
    for row in plain.split("\n"):
        stop = at + len(row)
        trimmed = row.rstrip()
        lines.append(Line(trimmed, starts[at : at + len(trimmed)], ends[at : at + len(trimmed)]))
        at = stop + 1
    return lines
