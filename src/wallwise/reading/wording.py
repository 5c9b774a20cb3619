"""Words as they stand in patterns: lists of the glossary as alternations, and words for numbers."""

import re
from collections.abc import Iterable

from wallwise.glossary.load import words
from wallwise.reading.marks import NUMBER_WORDS

ORDINAL_WORDS: tuple[str, ...] = tuple(words()["numbers"]["ordinal"])
_NUMBERS: dict[str, int] = {
    **{word: number for number, word in enumerate(words()["numbers"]["roman"], 1)},
    **{word: number for number, word in enumerate(ORDINAL_WORDS, 1)},
    **words()["tens"],
    **NUMBER_WORDS,
    "twice": 2,
}


def any_of(phrases: Iterable[str]) -> str:
    """A group for a pattern, verbose or not, that matches any of the phrases; the first is tried first."""
    return f"(?:{'|'.join(map(re.escape, phrases))})"


NTH = rf"(?:\d{{1,2}}(?:st|nd|rd|th)|{any_of(ORDINAL_WORDS)})"
"""A pattern for an ordinal: "2nd", "second"."""


def number_of(word: str) -> int | None:
    """The number that "2", "2nd", "two", "second", "ii" or "thirty-two" means; None where it means none."""
    digits = re.match(r"\d+", word)
    return int(digits.group()) if digits else _NUMBERS.get(word.lower().replace("-", " "))


_ORDER = words()["order"]
_SHORT = any_of(_ORDER["restart_short"])
_TOLD_WITH = (
    rf"(?:[:@-]|(?:on|in|at|during|after|here|walls?|wls?|w\s?\d|{any_of(ORDINAL_WORDS)}|\d\w{{0,3}})\b)"
)
_NUMBERED = (  # "R1: wall 3", "R2 here", "R: w3"
    r"(?-i:R)(?=\s*[:=]\s*(?:on\s+)?w(?:alls?\b|\d))|"
    r"(?-i:R)[1-5](?=[)\]>*]*\s*(?:[:=(-]\s*)?(?:here\b|(?:(?:on|in|during)\s+)?(?:the\s+)?"
    rf"(?:walls?\b|w\d|(?:\d\w\w|{any_of(ORDINAL_WORDS)})\s+wall\b)))"
)
# "Restart", "RS w3", "RST here", "w3: RS"; to be followed by an end of word.
RESTART = (
    rf"(?:{any_of(sorted(_ORDER['restart'], key=len, reverse=True))}"
    rf"|{_SHORT}(?=\s*{_TOLD_WITH})|(?:(?<=w\d\s)|(?<=w\d:\s)|(?<=\bhere\s)){_SHORT}"
    rf"|(?<=\d\s){_SHORT}(?=\s*(?:[,;.)]|$))|{_NUMBERED})"
)
_EASIER = words()["option"]
# "Beginners may", "if tired", "or simply": an easier way follows.
OPTION_LEAD = (
    rf"(?:{any_of(_EASIER['who'])}\b[^:;.()\[\]]{{0,40}}?(?::|\b{any_of(_EASIER['may'])}\b)"
    rf"|{any_of(_EASIER['when'])}\b|or(?=\s+{any_of(_EASIER['or'])}\b))"
)
# What a line that is no step mostly speaks of: how and how often the dance is danced.
ORDER_WORDS = re.compile(rf"\b(?:(?:{RESTART}|{any_of(_ORDER['words'])})\b|{OPTION_LEAD})", re.IGNORECASE)

HERE = re.compile(r"\bhere\b", re.IGNORECASE)
"""What tells that an order stands where it is danced."""

_MANY = rf"(?:\d{{1,2}}|{any_of(NUMBER_WORDS)})"
_IT = (
    r"(?:it|(?:the\s+)?(?:(?:whole|full|entire)\s+)?(?:dance|thing|lot|routine|sequence)"
    r"|everything|all\s+of\s+it)"
)
_DANCED = (
    r"(?:danc(?:ed|e|ing)|do(?:ne|ing)?|complet(?:ed|e|ing)|finish(?:ed|ing)?|(?:been|gone|going)\s+through)"
)
AFTER_TIMES = (
    rf"(?:\b(?:(?:after|when|once|having)\s+(?:(?:you|we)(?:'ve|\s+have)?\s+)?{_DANCED}\s+{_IT}"
    rf"|(?:after|when|once)\s+{_IT}\s+(?:is|was|has\s+been)\s+{_DANCED}|(?:dance|do)\s+{_IT}(?=[^.;:]*,?\s+then\b))"
    rf"\s+(?:(?:all|right|through|round)\s+)*(?P<times>twice|{_MANY}(?=\s+times\b))(?:\s+times\b)?(?:\s+through\b)?"
    rf"|\b(?:after|having\s+{_DANCED}|when\s+(?:you|we)(?:'ve|\s+have)\s+{_DANCED}"
    r"|at\s+the\s+end\s+of|when|once|finished|completed)\s+"
    rf"(?P<rounds>(?!(?:one|1)\b){_MANY})"
    r"\s+(?:(?:full|whole|complete|normal)\s+)?(?:walls|rounds|repetitions|rotations)\b)"
)
"""A pattern, verbose or not, for the end of a wall that is told by how often the dance is danced then."""
