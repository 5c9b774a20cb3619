"""What the sheet says of itself: title, counts, walls, level, names, intro, tempo, start foot.

What is declared is kept with its place: it is never believed over the feet, only compared.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from fractions import Fraction
from itertools import zip_longest

from wallwise.dance.model import Foot, Span
from wallwise.reading.marks import NUMBER_WORDS
from wallwise.reading.tidy import Line

_WORD = "|".join(NUMBER_WORDS)
_N = rf"(?P<n>\d{{1,3}}|{_WORD}|thirty[- ]two|forty[- ]eight|sixty[- ]four|twenty[- ]four|thirty[- ]six|forty|twenty)"
_SPELT = {
    "twenty": 20,
    "twenty four": 24,
    "thirty two": 32,
    "thirty six": 36,
    "forty": 40,
    "forty eight": 48,
    "sixty four": 64,
}
_COUNTS = (
    re.compile(
        r"\b(?:counts?|beats?|length|ct)\b\s*(?:[:=\t-]|\s)\s*(?P<n>\d{1,3})\b(?!\s*[-&:/]\s*\d)(?!\s*(?:secs?|min))",
        re.IGNORECASE,
    ),
    re.compile(
        rf"\b{_N}\s*[- ]?(?:counts?|beats?|cts?|c|ct)\b(?!\s*(?:intro|in\b|lead|after|tag|restart|from|before|then|bridge|vocal|instrumental))",
        re.IGNORECASE,
    ),
)
_WALLS = (
    re.compile(r"\bwalls?\b\s*[:=\t-]\s*(?P<n>[1248]|one|two|four|eight)\b", re.IGNORECASE),
    re.compile(
        r"(?<![/\w])(?P<n>[1248]|one|two|four|eight)\s*[- ]?(?:walls?|w|wds?)\b(?!\s*\d)", re.IGNORECASE
    ),
    re.compile(r"\bwalls?\s+(?P<n>[1248])(?=\s*(?:$|[,;|/\t)]|level|count|-\s))", re.IGNORECASE),
)
_SLASH = re.compile(
    r"\b(?P<c>16|20|24|28|32|36|40|48|56|64|72|80|96|128)\s*(?:c\w*)?\s*/\s*(?P<w>[1248])\s*(?:w|walls?)?\b",
    re.IGNORECASE,
)
_LEVEL = re.compile(
    r"\b(?P<level>(?:absolute |ultra |easy |high |low |newcomer |phrased )*(?:beginner|improver|intermediate|advanced|novice|newcomer|experienced)(?:\s*[/-]\s*(?:improver|intermediate|advanced))?)\b",
    re.IGNORECASE,
)
_KEY = re.compile(
    r"(?P<key>title|dance|name|choreographe?r(?:s|ed by)?|choreography(?: by)?|choreo(?:graphed)?|by|music|song|track|trk|tune|level|intro|bpm|tempo)\s*(?:by)?\s*[:=\t]\s*(?P<value>[^\n]*)",
    re.IGNORECASE,
)
_BPM = re.compile(r"(?P<n>\d{2,3}(?:\.\d+)?)\s*bpm|\bbpm\s*[:=]?\s*(?P<m>\d{2,3}(?:\.\d+)?)", re.IGNORECASE)
_INTRO = re.compile(
    r"\bintro(?:duction)?\b\D{0,12}(?P<n>\d{1,3})|(?P<m>\d{1,3})\s*(?:[- ]?counts?|beats?)?\s*(?:intro|in\b|lead[- ]in)|(?:starts?|begins?|count in|wait)\b\D{0,24}?(?P<k>\d{1,3})\s*(?:counts?|beats?)?",
    re.IGNORECASE,
)
_WEIGHT = re.compile(
    r"\b(?:weight|wt)\b[^.;\n]{0,25}?\b(?P<foot>left|right|lf|rf|l|r)\b|\bweight\s*[:=]?\s*(?P<foot2>l|r|left|right)\b"
    r"|\bstart(?:s|ing|ed)?\s+(?:with\s+)?(?:on\s+)?(?:the\s+|your\s+)?(?P<lead>left|right|lf|rf)\b(?:\s+foot)?|\b(?P<lead2>left|right|lf|rf)\s+(?:foot\s+)?(?:lead|start|leads|starts)\b|\b(?:lead|start(?:ing)?|free)\s+foot\s*[:=]?\s*(?P<lead3>left|right|l|r|lf|rf)\b",
    re.IGNORECASE,
)
_WALTZ = re.compile(r"\bwaltz\b|(?<![\d/])3/4(?![\d/])\s*(?:time|beat|rhythm|tempo)|\b6/8\b", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class Claim:
    """A number the sheet declares, with its place."""

    value: int
    span: Span


@dataclass(slots=True)
class Declared:
    """What the header declares.  `part_counts` is by part letter or "tag"; `bears` is the foot said to bear the weight at the start."""

    title: str = ""
    level: str = ""
    choreographer: str = ""
    music: str = ""
    intro_counts: int | None = None
    bpm: Fraction | None = None
    counts: Claim | None = None
    walls: Claim | None = None
    part_counts: dict[str, Claim] = field(default_factory=dict)
    bears: Foot | None = None
    bears_span: Span | None = None
    waltz: bool = False
    phrased: bool = False


def read_header(lines: list[Line], all_text: str) -> Declared:
    """What the lines before the first steps declare; empty for no lines.

    `all_text` is the whole sheet, in which only the title's rhythm is looked for.
    """
    told = Declared()
    for line, below in zip_longest(lines, lines[1:]):
        if below is not None and _KEY_ROW.fullmatch(line.text):
            _read_table(told, line, below)
        else:
            _read_line(told, line)
    if not told.title:
        told.title = _title(lines)
    head = " ".join(line.text for line in lines)
    told.waltz = bool(_WALTZ.search(head))
    told.phrased = bool(re.search(r"\bphrased\b", head, re.IGNORECASE))
    return told


_KEY_ROW = re.compile(
    r"\s*(?:(?:counts?|walls?|level|choreo\w*(?: by)?|music|song|intro|bpm|title|dance)\s*(?:\t\s*|$)){2,}",
    re.IGNORECASE,
)


def _read_table(told: Declared, keys: Line, values: Line) -> None:
    """A row of keys over a row of values, cell by cell."""
    at = 0
    for key, cell in zip(keys.text.split("\t"), values.text.split("\t"), strict=False):
        name = key.strip().lower()
        number = re.search(r"\d+", cell)
        if name.startswith(("count", "wall")) and number:
            claim = Claim(int(number.group()), values.span(at + number.start(), at + number.end()))
            if name.startswith("count"):
                told.counts = told.counts or claim
            else:
                told.walls = told.walls or claim
        elif cell.strip():
            _take_key(told, name, cell.strip())
        at += len(cell) + 1


def _number(word: str) -> int:
    word = word.lower().replace("-", " ")
    return int(word) if word.isdigit() else NUMBER_WORDS.get(word) or _SPELT[word]


def _read_line(told: Declared, line: Line) -> None:
    text = line.text
    parts = re.findall(r"\bparts?\s*\(?[A-H]\b|\btag\b", text, re.IGNORECASE)
    for found in re.finditer(
        r"\b(?:part\s*)?\(?(?P<name>[A-H]|tag|bridge)\b\)?\s*(?:[-:=(]|is|has|\s)\s*(?P<n>\d{1,3})(?!\s*(?:x|times|walls?|[&/]))\s*(?:counts?|c|cts?)?\b",
        text,
    ):
        if len(parts) >= 1 or re.search(r"\bcounts?\b", text, re.IGNORECASE):
            told.part_counts.setdefault(
                found["name"].lower(), Claim(int(found["n"]), line.span(found.start("n"), found.end("n")))
            )
    intro = _INTRO.search(text)
    if not told.part_counts or not parts:
        _read_counts(told, line, intro)
    if told.walls is None:
        for pattern in _WALLS:
            if found := pattern.search(text):
                if (
                    re.search(
                        r"\b(?:restart|tag|on|after|during|end of|wall \d+ and)\s*(?:the\s+)?$",
                        text[: found.start()],
                        re.IGNORECASE,
                    )
                    and pattern is not _WALLS[0]
                ):
                    continue
                told.walls = Claim(_number(found["n"]), line.span(found.start("n"), found.end("n")))
                break
    if not told.level and (found := _LEVEL.search(text)):
        told.level = " ".join(found["level"].split())
    for found in _KEY.finditer(text):
        _take_key(told, found["key"].lower(), found["value"].strip(" *\"'"))
    if told.bpm is None and (found := _BPM.search(text)):
        told.bpm = Fraction(found["n"] or found["m"])
    if told.intro_counts is None and intro is not None and not _LOUD.search(text[: intro.start()][-12:]):
        told.intro_counts = int(intro["n"] or intro["m"] or intro["k"])
    if told.bears is None and (found := _WEIGHT.search(text)):
        bears = found["foot"] or found["foot2"]
        lead = found["lead"] or found["lead2"] or found["lead3"]
        foot = Foot((bears or lead)[0].upper())
        told.bears = foot if bears else foot.other
        told.bears_span = line.span(*found.span())


_LOUD = re.compile(r"restart|tag", re.IGNORECASE)


def _read_counts(told: Declared, line: Line, intro: re.Match[str] | None) -> None:
    if told.counts is not None:
        return
    text = line.text
    if found := _SLASH.search(text):
        told.counts = Claim(int(found["c"]), line.span(found.start("c"), found.end("c")))
        told.walls = told.walls or Claim(int(found["w"]), line.span(found.start("w"), found.end("w")))
        return
    for pattern in _COUNTS:
        for found in pattern.finditer(text):
            before = text[: found.start()][-28:]
            if re.search(
                r"\b(?:intro\w*|start\w*|after|wait|tag|restart\w*|in|begin(?:s|ning)?|count in|lead|bridge|dance|first|on|clap|add|last)\b\W*(?:\w+\W+){0,2}$",
                before,
                re.IGNORECASE,
            ) and not re.search(
                r"\blevel\b|\bline dance\b|\bdance (?:is|has|in)\b|\d\s*$", before, re.IGNORECASE
            ):
                continue
            if intro is not None and intro.start() <= found.start() < intro.end():
                continue
            value = _number(found["n"])
            if value >= 8:
                told.counts = Claim(value, line.span(found.start("n"), found.end("n")))
                return


def _take_key(told: Declared, key: str, value: str) -> None:
    value = re.split(r"\s{3,}|\t| [|/] (?=[A-Z][a-z]+:)", value)[0].strip(" *\"'")
    if key.startswith(("choreo", "by")):
        told.choreographer = told.choreographer or value
    elif key in ("music", "song", "track", "trk", "tune"):
        told.music = told.music or value
    elif key in ("title", "name", "dance") and value:
        told.title = told.title or value
    elif key == "level" and not told.level:
        told.level = value


_NO_TITLE = re.compile(
    r"^\W*(?:page|from|to|subject|date|sent|hi\b|hello|dear|counts?|walls?|level|choreo|music|song|http|www|re:|fwd:|fw:)|:\s|@|\b(?:counts?|walls?)\b",
    re.IGNORECASE,
)


def _title(lines: list[Line]) -> str:
    """The first line that can be a name: few words, no key."""
    for line in lines:
        text = re.split(r"\s{3,}|\t|\s-\s|\(|\s\|", line.text.strip(" *#\"'"))[0].strip(" *#\"'=-")
        if text and len(text.split()) <= 8 and not _NO_TITLE.search(text) and any(c.isalpha() for c in text):
            return text.title() if text.isupper() else text
    return ""
