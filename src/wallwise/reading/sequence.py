"""The sequence: the order in which the parts of a phrased dance are danced ("A, A, B, Tag, A16, B")."""

import re

from wallwise.dance.model import Span
from wallwise.glossary.load import words
from wallwise.reading.outline import Remark
from wallwise.reading.wording import any_of

_NAMES = any_of(words()["part"]["names"])

KEY = re.compile(
    r"""
    \b(?:
        (?:sequence|seq|order|phrasing|pattern|structure|routine|phrase[ ]order|dance[ ]order)\b
      | (?:(?:you|we)[ ]dance(?:[ ]it)?|dance[ ]it|danced[ ]as)\b(?=\s*[:=-])
    )
    \s*(?:of[ ](?:the[ ])?(?:dance|parts))?\s*(?:is|goes|runs)?\s*[:=-]?\s*(?P<rest>.*)$
    """,
    re.IGNORECASE | re.VERBOSE,
)
"""What announces a sequence; `rest` is where it is told."""

_BARE = re.compile(
    rf"\W*(?:(?:[A-H]\d{{0,2}}|tag|bridge|ending|intro|{_NAMES})\W+){{2,}}"
    rf"(?:[A-H]\d{{0,2}}|tag|bridge|ending|{_NAMES})\W*",
    re.IGNORECASE,
)
_ITEM = re.compile(
    rf"""
    \b(?P<name>(?i:tag|bridge|ending|intro)|T(?=\s*(?:[\s,;/>-]|$)))\s*(?P<number>[1-9](?!\d))?\b
    | (?:
        \b(?P<called>(?i:{_NAMES}))\b
      | \b(?P<letters>[A-H]+)(?P<cut>\d{{1,2}})?(?P<mark>'|\*|-(?=\s*(?:,|$)))?(?=\b|[\s,*'-]|$)
      )
      (?:\s*\(\s*(?:first\s+|only\s+|counts?\s+1-)*(?P<first>\d{{1,3}})(?:\s*(?:counts?|c))?(?:\s*only)?\s*\))?
      (?:\s*x\s*(?P<times>\d))?
    """,
    re.VERBOSE,
)
# "(A is the verse, B is the chorus)" says what the parts are, not when they are danced.
_GLOSS = re.compile(r"\([^()]*(?:\b(?:is|are|means|being)\b|=)[^()]*\)")
_NEXT_SENTENCE = re.compile(r"\.\s+(?=[A-Z][a-z]+\s+(?:[A-H]\s+)?[a-z]{2,}\s)")  # "A, B, A. Part A turns …"
_FEWEST = 3  # parts; fewer are no sequence


def read_sequence(remarks: list[Remark]) -> tuple[tuple[str, ...], tuple[Span, ...]] | None:
    """The order of parts and each name's place; None where the sheet has none.

    A part cut short is "A(16)", one danced otherwise "A-".
    """
    for remark in remarks:
        found = KEY.search(remark.text)
        start = remark.start + found.start("rest") if found else remark.start
        if found is None and not _BARE.fullmatch(remark.text):
            continue
        told = _GLOSS.sub(lambda gloss: " " * len(gloss.group()), remark.line.text)
        stop = _NEXT_SENTENCE.search(told, start, remark.end)
        end = stop.start() if stop is not None else remark.end
        items = [item for one in _ITEM.finditer(told, start, end) for item in _names(one, remark)]
        if len(items) >= _FEWEST:
            return tuple(name for name, _ in items), tuple(span for _, span in items)
    return None


def _names(told: re.Match[str], remark: Remark) -> list[tuple[str, Span]]:
    """The parts that one item of a sequence names ("AAB16", "A x2", "Tag 2")."""
    span = remark.line.span(told.start(), told.end())
    if told["name"]:
        name = "Tag" if told["name"] == "T" else told["name"].title()
        return [(f"{name} {told['number']}" if told["number"] else name, span)]
    counts = told["cut"] or told["first"]
    if counts:
        ending = f"({counts})"
    else:
        ending = "-" if told["mark"] else ""
    # What stands behind several letters is told of the last of them alone.
    names = [told["called"].title()] if told["called"] else list(told["letters"])
    names[-1] += ending
    return [(name, span) for name in names * int(told["times"] or 1)]
