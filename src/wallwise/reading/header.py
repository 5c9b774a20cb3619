"""What the sheet says of itself: title, counts, walls, level, names, intro, tempo, start foot.

What is declared is kept with its place: it is never believed over the feet, only compared.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass, field
from fractions import Fraction
from itertools import zip_longest

from wallwise.dance.model import Foot, Span
from wallwise.glossary.load import words
from wallwise.reading.marks import NUMBER_WORDS
from wallwise.reading.tidy import Line
from wallwise.reading.wording import any_of, number_of

_KEYS = words()["declared"]
_LEVELS = words()["level"]
_TENS = "|".join(word.replace(" ", "[- ]") for word in sorted(words()["tens"], key=len, reverse=True))
_COUNTS_KEY = re.compile(
    rf"""
    \b(?:counts?|cts?|beats?|length)\b\s*(?:[:=\t-]|\s)\s*
    (?P<n>\d{{1,3}}|{_TENS})\b(?!\s*[-&:/]\s*\d)(?!\s*(?:secs?|min))
    """,
    re.IGNORECASE | re.VERBOSE,
)
_COUNTS_TOLD = re.compile(
    rf"""
    \b(?P<n>\d{{1,3}}|{any_of(NUMBER_WORDS)}|{_TENS})\s*[- ]?(?:counts?|cts?|beats?|c)\b
    (?!\s*(?:intro|in\b(?!\s+(?:all|total))|lead|after|tag|restart|from|before|then|bridge|vocal|instrumental))
    """,
    re.IGNORECASE | re.VERBOSE,
)
_COUNTS_ADDED = re.compile(
    r"\b(?P<n>\d{1,3}(?:\s*\+\s*\d{1,3})+)\s*-?\s*(?:counts?|cts?|beats?)\b", re.IGNORECASE
)
# "Start: after the spoken words, 16 counts": whatever is counted there, up to what is told next
_BEGUN = re.compile(
    r"""
    ^\W*(?:start(?:s|ing)?|intro\w*|count[ -]?in|begin(?:s|ning)?|lead[ -]?in)\s*[:=]\s*\S
    .*?(?=\s[-|/]\s|;|\.\s|\s{3,}\S|\b\w+\s?:\s|$)
    """,
    re.IGNORECASE | re.VERBOSE,
)
_FEWEST_COUNTS = 8  # fewer are a tag's or an intro's
# What stands before a number of counts that are not the dance's, in the same breath,
_OTHER_COUNTS = re.compile(
    r"""
    (?: \b(?:intro\w*|start\w*|after|wait|tag|restart\w*|in|begin(?:s|ning)?|count[ ]in|lead|bridge|first|on
        |clap|add|last)
      | (?<!\bthe\s)(?<!\bthis\s)(?<!\ba\s)\bdance
    )\b
    (?:[^\w.;!]|\.{3,})*(?:(?!counts?\b|beats?\b)\w+[^\w.;!]+){0,2}$
    """,
    re.IGNORECASE | re.VERBOSE,
)
# unless this does.
_DANCE_COUNTS = re.compile(
    r"\blevel\b|\bline dance\b|\bdance (?:is|has|in)\b|\bdance(?: type)?\s*[:=]|\d\s*$", re.IGNORECASE
)
# or is no number of counts at all: "A = 32 counts" is a part's, "rolling 8-count" a rhythm.
_NO_COUNTS = re.compile(r"(?:\b[A-H]\s*[=:]|\brolling)\s*$", re.IGNORECASE)
_BEFORE = 40  # characters in which both are looked for
_WALLS_KEY = re.compile(
    r"\bwalls?\b\s*[:=\t-]\s*(?P<n>[1248]|one|two|four|eight)\b(?!\s*(?:tag|restart|bridge))", re.IGNORECASE
)
_WALLS_TOLD = (
    re.compile(
        r"(?<![/\w])(?P<n>[1248]|one|two|four|eight)\s*[- ]?(?:walls?|w|wds?)\b(?!\s*\d)", re.IGNORECASE
    ),
    re.compile(
        r"\bwalls?\s+(?P<n>[1248])(?=\s*(?:$|[,;|/\t)]|level|count|-\s)|\s*[.\u2022]\s)", re.IGNORECASE
    ),
)
_OTHER_WALL = re.compile(
    r"\b(?:restart|tag|on|after|during|end of|wall \d+ and)\s*(?:the\s+)?$", re.IGNORECASE
)
_COUNTS_AND_WALLS = re.compile(
    r"""
    \b(?P<counts>16|20|24|28|32|36|40|48|56|64|72|80|96|128)\s*(?:c\w*)?
    \s*/\s*(?P<walls>[1248])\s*(?:w|walls?)?\b
    """,
    re.IGNORECASE | re.VERBOSE,
)
_PART_NAME = f"[A-H]|(?i:{any_of(words()['part']['names'])})"
_SPELT = f"(?i:{_TENS}|{any_of(NUMBER_WORDS)})"
_PART_COUNTS = re.compile(
    rf"""
    \b(?P<word>(?i:part)\s*)?\(?(?P<name>{_PART_NAME})\b\)?\s*
    (?:(?P<sign>[-:=(]|is|has|of|,(?=\s*(?:\d+|{_SPELT})\s*[- ]?c(?:oun)?ts?\b))|\s)\s*
    (?P<n>\d{{1,3}}|{_SPELT}\b)(?!\s*(?:x|times|walls?|[&/]))\s*[- ]?(?:counts?|c|cts?)?\b
    """,
    re.VERBOSE,
)
_COUNTS_OF_PARTS = re.compile(
    rf"""
    \b(?P<n>\d{{1,3}}|{_SPELT}\b)\s*[- ]?(?:(?:counts?|cts?|c)\b)?\s*(?:(?:in|for|of)\b|\()?\s*
    (?:(?i:the|part)\s+)*(?P<name>{_PART_NAME})\b(?!\s*[-:=(])\)?
    """,
    re.VERBOSE,
)
_TAG_COUNTS = re.compile(
    r"""
    \b(?P<name>(?:tag|bridge)(?:\s[1-9](?=\W))?)\s*(?:[-:=(]|is|has|of|\s)\s*
    (?:1\s*(?:-|x|,|of)\s*)?  # "Tag: 1 - 2 counts after wall 4": there is one
    (?P<n>\d{1,3})\s*-?\s*(?:counts?|cts?|c|beats?)\b
    """,
    re.IGNORECASE | re.VERBOSE,
)
_PART = re.compile(r"\bparts?\s*\(?[A-H]\b|\btag\b", re.IGNORECASE)
_COUNTS = re.compile(r"\bcounts?\b", re.IGNORECASE)
_LEVEL = re.compile(
    rf"""
    \b(?P<level>
        (?:{any_of(_LEVELS["before"])}[ ])*{any_of(_LEVELS["levels"])}
        (?:\s*[/-]\s*(?:improver|intermediate|advanced))?
    )\b
    """,
    re.IGNORECASE | re.VERBOSE,
)
_KEY = re.compile(
    r"""
    (?P<key>
        title | (?<!type[ ]of[ ])(?<!type[ ]of[ ]the[ ])dance | name
      | choreographe?r(?:s|ed[ ]by)? | choreography(?:[ ]by)? | choreo(?:graphed)? | by
      | music | song | track | trk | tune
      | level | intro | bpm | tempo
    )\s*(?:by)?\s*[:=\t]\s*(?P<value>[^\n]*)
    """,
    re.IGNORECASE | re.VERBOSE,
)
_KEY_ROW = re.compile(
    r"""
    \s*(?:
        (?:counts?|walls?|level|choreo\w*(?:[ ]by)?|music|song|intro|bpm|title|dance)\s*(?:\t\s*|$)
    ){2,}
    """,
    re.IGNORECASE | re.VERBOSE,
)
_VALUE_END = re.compile(r"\s{3,}|\t| [|/] (?=[A-Z][a-z]+:)")
_BPM = re.compile(r"(?P<n>\d{2,3}(?:\.\d+)?)\s*bpm|\bbpm\s*[:=]?\s*(?P<m>\d{2,3}(?:\.\d+)?)", re.IGNORECASE)
_INTRO = re.compile(
    r"""
    \bintro(?:duction)?\b\D{0,12}(?P<n>\d{1,3})
    | (?P<m>\d{1,3})(?:\s*[- ]?(?:counts?|cts?|beats?)\s*|\s?(?!intro\s*:)|\s*(?=in\b|lead))
        (?:intro|in\b(?!\s+(?:all|total|part|(?-i:[A-H])\b))|lead[- ]in)
    | (?:starts?|begins?|count[ ]in|wait)\b\D{0,24}?(?P<k>\d{1,3})\s*(?:counts?|cts?|beats?)?
    """,
    re.IGNORECASE | re.VERBOSE,
)
_NO_INTRO = re.compile(r"restart|tag", re.IGNORECASE)
_WEIGHT = re.compile(
    r"""
    \b(?:weight|wt)\b[^.;\n]{0,25}?\b(?P<bears>left|right|lf|rf|l|r)\b
    | \bweight\s*[:=]?\s*(?P<bears2>l|r|left|right)\b
    | \bstart(?:s|ing|ed)?\s+(?:with\s+)?(?:on\s+)?(?:the\s+|your\s+)?(?P<leads>left|right|lf|rf)\b
        (?:\s+foot)?
    | \b(?P<leads2>left|right|lf|rf)\s+(?:foot\s+)?(?:lead|start|leads|starts)\b
    | \b(?:lead|start(?:ing)?|free)\s+foot\s*[:=]?\s*(?P<leads3>left|right|l|r|lf|rf)\b
    """,
    re.IGNORECASE | re.VERBOSE,
)
_WALTZ = re.compile(r"\bwaltz\b|(?<![\d/])3/4(?![\d/])\s*(?:time|beat|rhythm|tempo)|\b6/8\b", re.IGNORECASE)
_WORD = re.compile(r"[^\W\d_]+(?:'[^\W\d_]+)?")
_TITLE_END = re.compile(r"\s{3,}|\t|\s-\s|\(|\s\|")
_NO_TITLE = re.compile(
    r"""
    ^\W*(?:page|from|to|subject|date|sent|hi\b|hello|dear|counts?|walls?|level|choreo|music|song|http|www|re:
        |fwd:|fw:)
    | :\s | @ | \b(?:counts?|walls?)\b
    """,
    re.IGNORECASE | re.VERBOSE,
)
_LONGEST_TITLE = 8  # words


@dataclass(frozen=True, slots=True)
class Claim:
    """A number the sheet declares, with its place."""

    value: int
    span: Span


@dataclass(slots=True)
class Declared:
    """What the header declares.

    `part_counts` is by part letter or "tag", `headed_counts` what headings of parts say beside it;
    `bears` is the foot said to bear the weight at the start.
    """

    title: str = ""
    level: str = ""
    choreographer: str = ""
    music: str = ""
    intro_counts: int | None = None
    bpm: Fraction | None = None
    counts: Claim | None = None
    walls: Claim | None = None
    part_counts: dict[str, Claim] = field(default_factory=dict)
    headed_counts: dict[str, Claim] = field(default_factory=dict)
    bears: Foot | None = None
    bears_span: Span | None = None
    waltz: bool = False


def read_header(lines: list[Line]) -> Declared:
    """What the lines before the first steps declare; empty for no lines."""
    told = Declared()
    for line, below in zip_longest(lines, lines[1:]):
        if below is not None and _KEY_ROW.fullmatch(line.text):
            _read_table(told, line, below)
        else:
            _read_line(told, line)
    told.title = told.title or _title(lines)
    head = " ".join(line.text for line in lines)
    told.waltz = _WALTZ.search(head) is not None
    return told


def intro_end(text: str) -> int:
    """Where in a line what leads in to the dance is told, and more follows; 0 for a line that has no such."""
    begun = _BEGUN.match(text)
    return begun.end() if begun is not None and begun.end() < len(text) else 0


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


def _read_line(told: Declared, line: Line) -> None:
    """What one line declares; what an earlier one has declared stands."""
    text = line.text
    intro = _INTRO.search(text)
    of_parts = _read_part_counts(told, line)
    if told.counts is None:
        begun = _BEGUN.match(text)
        _read_counts(told, line, [*of_parts, *(found.span() for found in (intro, begun) if found)])
    told.walls = told.walls or _walls(line)
    if not told.level and (level := _LEVEL.search(text)):
        told.level = " ".join(level["level"].split())
    for key in _KEY.finditer(text):
        _take_key(told, key["key"].lower(), key["value"])
    if told.bpm is None and (bpm := _BPM.search(text)):
        told.bpm = Fraction(bpm["n"] or bpm["m"])
    if told.intro_counts is None and intro and not _NO_INTRO.search(text[: intro.start()][-12:]):
        told.intro_counts = int(intro["n"] or intro["m"] or intro["k"])
    if told.bears is None and (foot := _WEIGHT.search(text)):
        bears = foot["bears"] or foot["bears2"]
        named = Foot((bears or foot["leads"] or foot["leads2"] or foot["leads3"])[0].upper())
        told.bears = named if bears else named.other
        told.bears_span = line.span(*foot.span())


def _read_part_counts(told: Declared, line: Line) -> list[tuple[int, int]]:
    """The counts of "Part A: 32 counts, B 16", which are no dance's: where in the line they stand.

    Only a line that speaks of parts or of counts tells any.
    """
    lettered = list(_PART_COUNTS.finditer(line.text))
    several = len(lettered) > 1 and all(found["sign"] for found in lettered)
    if not (several or _PART.search(line.text) or _COUNTS.search(line.text)):
        return []
    if len(lettered) == 1 and not (lettered[0]["word"] or lettered[0]["sign"]):
        lettered = []  # "A 32-count dance"
    if not lettered and len(behind := list(_COUNTS_OF_PARTS.finditer(line.text))) > 1:
        lettered = behind
    parts = [*lettered, *_TAG_COUNTS.finditer(line.text)]
    for found in parts:
        told.part_counts.setdefault(" ".join(found["name"].lower().split()), _claim(line, found, "n"))
    return [found.span() for found in parts]


def _read_counts(told: Declared, line: Line, others: list[tuple[int, int]]) -> None:
    """The counts of the dance; with them its walls, where both are told as "32/4".

    `others` are places of counts that are an intro's or a part's.
    """
    added = _COUNTS_ADDED.search(line.text)
    if added and not any(start <= added.start() < end for start, end in others):
        told.counts = Claim(sum(map(int, re.findall(r"\d+", added["n"]))), line.span(*added.span("n")))
        return
    if both := _COUNTS_AND_WALLS.search(line.text):
        told.counts = _claim(line, both, "counts")
        told.walls = told.walls or _claim(line, both, "walls")
        return
    claims = (
        _claim(line, found, "n")
        for found in _counts_in(line.text)
        if not any(start <= found.start("n") < end for start, end in others)
    )
    told.counts = next((claim for claim in claims if claim.value >= _FEWEST_COUNTS), None)


def _counts_in(text: str) -> Iterator[re.Match[str]]:
    """Numbers of counts that can be the dance's, those behind the word "counts" first."""
    for pattern in (_COUNTS_KEY, _COUNTS_TOLD):
        for found in pattern.finditer(text):
            before = text[: found.start()][-_BEFORE:]
            if _NO_COUNTS.search(before):
                continue
            if not _OTHER_COUNTS.search(before) or _DANCE_COUNTS.search(before):
                yield found


def _walls(line: Line) -> Claim | None:
    if key := _WALLS_KEY.search(line.text):
        return _claim(line, key, "n")
    for pattern in _WALLS_TOLD:
        found = pattern.search(line.text)
        if found and not _OTHER_WALL.search(line.text[: found.start()]):
            return _claim(line, found, "n")
    return None


def _claim(line: Line, found: re.Match[str], group: str) -> Claim:
    number = number_of(found[group])
    assert number is not None, found[group]
    return Claim(number, line.span(*found.span(group)))


def _take_key(told: Declared, key: str, value: str) -> None:
    value = _unquoted(_VALUE_END.split(value)[0].strip(" *"))
    if key.startswith(("choreo", "by")):
        told.choreographer = told.choreographer or value
    elif key in _KEYS["music"]:
        told.music = told.music or value
    elif key in _KEYS["title"] and not _COUNTS_TOLD.match(value):
        told.title = told.title or value
    elif key == "level":
        told.level = told.level or value


def _unquoted(value: str) -> str:
    """The value without the quotes around all of it; quotes around a piece of it stay."""
    inner = value[1:-1]
    if len(value) > 2 and value[0] in "\"'" and value[0] == value[-1] and value[0] not in inner:
        return inner.strip()
    return value if value.count('"') % 2 == 0 else value.strip('"')


def _title(lines: list[Line]) -> str:
    """The first line that can be a name: few words, no key."""
    for line in lines:
        text = _TITLE_END.split(line.text.strip(" *#\"'"))[0].strip(" *#\"'=-")
        short = text and len(text.split()) <= _LONGEST_TITLE
        if short and not _NO_TITLE.search(text) and any(c.isalpha() for c in text):
            return _WORD.sub(lambda word: word.group().capitalize(), text) if text.isupper() else text
    return ""
