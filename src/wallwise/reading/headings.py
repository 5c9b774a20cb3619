"""Headings: the lines that open a section, a part, a tag or an ending, by their words and numbers."""

import re
from dataclasses import dataclass

from wallwise.glossary.load import words
from wallwise.reading.marked import split_marks
from wallwise.reading.marks import NUMBER_WORDS, leading_mark
from wallwise.reading.stepwords import actions_in, known_share
from wallwise.reading.wording import AFTER_TIMES, NTH, ORDER_WORDS, ORDINAL_WORDS, any_of, number_of

_HEADING = words()["heading"]
_NUMBER = rf"\d{{1,2}}|{any_of(NUMBER_WORDS)}|{any_of(ORDINAL_WORDS)}"
_SECTION = re.compile(
    rf"""
    ^\W*(?:
        {any_of(_HEADING["numbered"])}\b\.?\s*(?:\#|no\.?)?\s*(?:[a-ht](?=\d))?(?P<named>{_NUMBER}|[ivx]+)\b
      | (?:s|sec|sect|t)(?P<short>\d{{1,2}})\b
      | (?:(?:in|for|on|now)\s+)?(?:the\s+)?(?P<nth>\d(?:st|nd|rd|th)|{any_of(ORDINAL_WORDS)})\s+
        {any_of(_HEADING["counted"])}(?:\s+(?:counts?|cts?|beats?))?\b
      | (?:(?:the|and|in|for|on|now)\s+)*
        (?P<placed>{any_of(_HEADING["placed"])})\s+{any_of(_HEADING["counted"])}
        (?:\s+(?:counts?|cts?|beats?))?(?=\s*(?:[.:,;(\[-]|$))
    )
    (?:
        \s*\(?\s*(?:counts?\s*)?\(?
        (?P<from>\d{{1,3}})\s*(?:-|to)\s*(?P<to>\d{{1,3}})
        \)?(?:\s*counts?)?\s*\)?
    )?
    (?P<rest>\W.*|)$
    """,
    re.IGNORECASE | re.VERBOSE,
)
_LEADS_IN = re.compile(r"\W*(?:in|for|on|now)\s", re.IGNORECASE)
_NO_SECTION = re.compile(r"\s*(?:restarts?|walls?)\b", re.IGNORECASE)
_RANGE_BEHIND = re.compile(
    r"""
    [\s:.,-]*[\[(]?\s*(?:counts?\s*)?
    (?P<from>\d{1,3})\s*-\s*(?P<to>\d{1,3})
    \s*(?:counts?)?\s*[\])]?\s*[:.-]?(?=\s|$)
    """,
    re.VERBOSE,
)
_RANGE = re.compile(
    r"""
    ^\W*?(?P<open>[\[(])?\s*(?:[a-ht](?=\d))?(?:(?:counts?|cts?|beats?|steps?|section)\s*:?\s*)?
    (?P<from>\d{1,3})\s*(?:-+|to|thru)\s*(?P<to>\d{1,3})(?:&1?\b|&(?=\s))?
    \s*(?:counts?\s*)?(?P<close>[\])])?\s*(?:[:.=-]*|,)(?P<rest>\s.*|)$
    """,
    re.IGNORECASE | re.VERBOSE,
)
_TITLED = re.compile(
    r"\s*[A-Z][A-Za-z' &/-]{2,30}\((?P<n>6|8|12|16)\s*(?:counts?|cts?)\)\s*[.:-]+\s*(?P<rest>\S.*)$"
)
_FEWEST_STEPS, _STEPS = 3, 0.6  # behind a section's name, and the share of step language there
_RULED = re.compile(r"\s*[-=*_~]{3,}\s*\w")  # "---- B ----"
_BARS = re.compile(r"^\W*bars?\s*\d+(?:\s*(?:-|to|&|and)\s*\d+)?\W*(?P<rest>.*)$", re.IGNORECASE)
_PART = re.compile(
    r"^\W*(?:(?:part|pt)\.?\s*[-:]?\s*(?P<letter>[A-H])|(?:section|sect|sec)\.?\s*(?P<lettered>[A-H]))\b(?P<rest>.*)$",
    re.IGNORECASE,
)
_PART_CALLED = re.compile(
    rf"^\W*(?:the\s+)?(?P<name>{any_of(words()['part']['names'])})\b(?:\s+steps\b)?(?!\s*\d)", re.IGNORECASE
)
_A_PART_CALLED = re.compile(rf"\b{any_of(words()['part']['names'])}\b", re.IGNORECASE)
_ONLY_A_PART = re.compile(
    r"\W*(?:part\b)?\W*(?:\d{1,3}\s*-?\s*counts?\b.*)?\W*$|\s*(?::|-\s)\s*\S.*$", re.IGNORECASE
)
_COUNTED_OFF = r"\d{1,3}\s*-?\s*(?:counts?|cts?|beats?|c)\b"
_LETTER = re.compile(
    rf"""
    ^\W*(?:(?i:(?:the\s+)?(?:part|phrase|pattern|section|teil)\b)\W*)?
    (?P<letter>[A-H])(?:["”'>\])]|\b)\s*(?:-?\s*(?i:part|phrase|section|teil)\b)?
    (?P<rest>
        \W*(?:\([^()]*\)\W*)?
      | \s*[^\w\s]\W*(?i:{_COUNTED_OFF})(?:\W*|\s*[,(-].*)
      | \s+(?i:{_COUNTED_OFF})\W*
    )$
    """,
    re.VERBOSE,
)
_AFTER_ONE = 2
_LETTER_OF_EIGHT = re.compile(r"^\W*(?:(?i:part)\s+)?(?P<letter>[A-H])\s*[^\w\s]\W*(?=\w)")
_PARTS_LISTED = re.compile(r"[A-H]\s*[-=:,]?\s*\d+.*\b[A-H]\b")
_PARTS_JOINED = re.compile(r"\s*(?:and|,|&)\s*(?:parts?\s+)?[A-H]\b")
_PART_NAMED = re.compile(r"\bparts?\s+[A-H]\b", re.IGNORECASE)
_PART_SECTION = re.compile(
    r"""
    ^\W*(?P<letter>[A-H])\s?-?(?P<number>\d)\s*[:.)\]\-]\s*(?P<rest>.*)$
    | ^\W*(?P<letter2>[A-H])(?P<number2>\d)\s+(?P<rest2>[\[(A-Z].*)$
    """,
    re.VERBOSE,
)
_EXTRA = re.compile(
    rf"""
    ^\W*(?:(?:there\s+is\s+)?(?:an?\s+)?(?:\d{{1,2}}|{any_of(NUMBER_WORDS)})\s*-?\s*(?:counts?|cts?|beats?)\s+)?
    (?P<name>
        (?:(?:1st|2nd|3rd|first|second|big|little|short|long)\s+)?
        {any_of(_HEADING["extra"])}
        (?!\s+of\b)
        (?:\s*[1-9A-C]\b(?!\s*(?:counts?|cts?|beats?|restarts?|-count)))?
    )\b(?P<rest>.*)$
    """,
    re.IGNORECASE | re.VERBOSE,
)
_ENDING = re.compile(
    rf"(?:tag\s\()?(?:(?:big|little|short|long)\s+)?{any_of(_HEADING['close'])}\b", re.IGNORECASE
)
_WALL_END = re.compile(
    rf"""
    ^\W*(?:(?:add|dance|do|insert)\s+)?
    (?:(?:these|this|the|following|an?|extra|more|tag|bridge|{_NUMBER}|counts?|cts?|beats?|steps?)\s+)*
    (?:{AFTER_TIMES}|(?:(?:when|once)\s+you\s+(?:reach|get\s+to|come\s+to)\s+)?
    (?:(?:at\s+)?(?:the\s+)?end\s+of|after|following|before|between|(?:when|once)\s+you(?:'ve|\s+have)?\s+(?:finish(?:ed)?|danced|done))\s+
    (?:(?:the|your|dancing|starting|beginning)\s+)*
    (?:
        (?:walls?|w)\s*(?:{_NUMBER})(?:\s*(?:,|&|and)\s*(?:wall\s+)?(?:{_NUMBER}))*\b
      | {NTH}(?:\s*(?:,|&|and)\s*(?:the\s+)?{NTH})*\s+walls?\b
    ))
    """,
    re.IGNORECASE | re.VERBOSE,
)
_NO_TAG = re.compile(r"\W*(?:re-?start|start\s+again|begin\s+again)", re.IGNORECASE)
_SAYS_WHAT = re.compile(r"\b(?:add|dance|do|hold|insert|following|these)\b|:(?!\d)|,(?=\s)", re.IGNORECASE)
_ANNOUNCES = re.compile(r"\b(?:add|insert|following|these|extra|tag|bridge)\b|:\s*$", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class Head:
    """What a line heads.

    `kind`: ``heading`` (of a section), ``part`` or ``extra`` (tag, bridge, ending).  `rest` is where its own
    words begin, `range` the counts that it gives and `range_at` where they stand, `name` a part's letter or
    the extra's words.
    """

    kind: str
    rest: int
    number: int | None = None
    name: str = ""
    range: tuple[int, int] | None = None
    range_at: int = 0


@dataclass(frozen=True, slots=True)
class Range:
    """Counts `first` to `last` at the beginning of a line; its words begin at `rest`."""

    first: int
    last: int
    rest: int
    bracketed: bool


def head_of(text: str) -> Head | None:
    """What the line heads for certain, whatever stands around it; None where it heads nothing."""
    return (
        _section_of_part(text)
        or _part(text)
        or _part_called(text)
        or _section(text)
        or _bars(text)
        or _extra(text)
        or _wall_end(text)
        or _titled(text)
    )


def is_ending(name: str) -> bool:
    """Whether an extra part of that name closes the song rather than adding to a wall."""
    return _ENDING.match(name) is not None


def announces(text: str) -> bool:
    """Whether a line that tells of the end of a wall says that steps of a tag come next."""
    return _WALL_END.match(text) is None or _ANNOUNCES.search(text) is not None


def starts_block(text: str) -> bool:
    """Whether a line looks like a heading, so that it cannot go on with the line before it."""
    if any(pattern.match(text) for pattern in (_RULED, _SECTION, _EXTRA, _PART, _PART_SECTION)):
        return True
    counts = _RANGE.match(text)
    return counts is not None and counts["open"] is not None


def leading_range(text: str) -> Range | None:
    """The counts that a line begins with ("1-8 …", "[9-16] …"); None where it begins with none."""
    found = _RANGE.match(text)
    if found is None or int(found["to"]) <= int(found["from"]):
        return None
    bracketed = found["open"] is not None and found["close"] is not None
    first = int(found["from"])
    # "2 - 8&1": the section before has danced this one's first count.
    return Range(
        1 if first == _AFTER_ONE else first, int(found["to"]), rest=found.start("rest"), bracketed=bracketed
    )


def _section_of_part(text: str) -> Head | None:
    found = _PART_SECTION.match(text)
    if found is None:
        return None
    letter = found["letter"] or found["letter2"]
    number = int(found["number"] or found["number2"])
    rest = found.start("rest" if found["letter"] else "rest2")
    counts, rest = _range_behind(text, rest)
    return Head("part", rest, number, letter.upper(), counts)


def _part(text: str) -> Head | None:
    """The part of "Part B …", unless its words go on to list the parts ("Part A 32, B 16")."""
    found = _PART.match(text)
    if found is None:
        return None
    rest = found["rest"]
    if _PARTS_LISTED.search(rest) or _PARTS_JOINED.match(rest) or _PART_NAMED.search(rest):
        return None
    counts, begin = _range_behind(text, found.start("rest"))
    return Head("part", begin, name=(found["letter"] or found["lettered"]).upper(), range=counts)


def lettered_part(text: str) -> Head | None:
    """The part that a line heads by its letter, in a dance of lettered parts: "--- A: 32 counts ---"."""
    found = _LETTER.match(text)
    eight = _LETTER_OF_EIGHT.match(text)
    section = _section(text[eight.end() :]) if eight is not None else None
    if eight is not None and section is not None:  # "A, first eight"
        return Head("part", eight.end() + section.rest, section.number, eight["letter"], section.range)
    if found is None or _PARTS_LISTED.search(text):
        return None
    return Head("part", found.start("rest"), name=found["letter"])


def _part_called(text: str) -> Head | None:
    """The part of "VERSE STEPS", "Chorus, second eight", "Refrain [1-8]": called as the song's are."""
    found = _PART_CALLED.match(text)
    if found is None:
        return None
    name, behind = found["name"].title(), found.end()
    if _A_PART_CALLED.search(text, behind):
        return None  # "Verse - Chorus - Verse": a sequence
    section = _section(text[behind:])
    if section is not None:
        return Head("part", behind + section.rest, section.number, name, section.range)
    counts, begin = _range_behind(text, behind)
    if counts is None and not _ONLY_A_PART.match(text[behind:]):
        return None
    return Head("part", begin, name=name, range=counts)


def _section(text: str) -> Head | None:
    found = _SECTION.match(text)
    if found is None or _NO_SECTION.match(found["rest"]):
        return None
    if _LEADS_IN.match(text) and ORDER_WORDS.search(text):
        return None  # "In the last section restart …"
    number = None if found["placed"] else number_of(found["named"] or found["short"] or found["nth"])
    if number is None and not found["placed"]:
        return None
    counts, rest = _range_behind(text, found.start("rest"))
    if counts is None and found["from"] and int(found["from"]) <= int(found["to"]):
        counts = int(found["from"]), int(found["to"])
    return Head("heading", rest, number, range=counts, range_at=found.start("rest"))


def _range_behind(text: str, rest: int) -> tuple[tuple[int, int] | None, int]:
    """The range after a heading's number ("Section 2 [9-16]: …"), and where the words after it begin."""
    found = _RANGE_BEHIND.match(text[rest:])
    if found is None or int(found["to"]) - int(found["from"]) < 2 or _counts_on(text[rest:], found):
        return None, rest
    return (int(found["from"]), int(found["to"])), rest + found.end()


def _counts_on(text: str, counts: re.Match[str]) -> bool:
    """Whether the counts are only the first of a line that goes on counting ("1-4 vine R, 5-8 vine L")."""
    mark = leading_mark(text, counts.start("from"))
    if mark is None or "[" in counts.group() or "(" in counts.group():
        return False
    return any(
        piece.mark is not None and 0 < piece.mark.first - mark.last <= 1 for piece in split_marks(text, mark)
    )


def _bars(text: str) -> Head | None:
    found = _BARS.match(text)
    return Head("heading", found.start("rest")) if found else None


def _titled(text: str) -> Head | None:
    """A section by its name and length, before its steps: "Lock steps (8 counts). Step R forward, …"."""
    found = _TITLED.match(text)
    if found is None or actions_in(found["rest"]) < _FEWEST_STEPS or known_share(found["rest"]) < _STEPS:
        return None
    return Head("heading", found.start("rest"), range=(1, int(found["n"])), range_at=found.start("n"))


def _extra(text: str) -> Head | None:
    found = _EXTRA.match(text)
    return Head("extra", found.start("rest"), name=found["name"].strip()) if found else None


def _wall_end(text: str) -> Head | None:
    """A tag that is told only by its place: "At the end of wall 2 add: …", "After wall 3, dance these: …"."""
    found = _WALL_END.match(text)
    if found is None or not _SAYS_WHAT.search(text) or _NO_TAG.match(text[found.end() :]):
        return None
    return Head("extra", found.end(), name="Tag")
