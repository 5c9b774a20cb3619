"""Feet, amounts, facings and numbers written another, in the way the sheet writes them."""

import re

from wallwise.checks.sight import clock
from wallwise.reading.tokens import TURN

# Amounts of turn by their eighths of a full one.
_FRACTIONS = {1: "1/8", 2: "1/4", 3: "3/8", 4: "1/2", 6: "3/4", 8: "full"}
_SIGNS = {1: "⅛", 2: "¼", 3: "⅜", 4: "½", 6: "¾"}
_NAMED_SIGN = re.compile(r"&frac\d\d;", re.IGNORECASE)  # as the sign is written in a page of the web
_WORDS = {1: "eighth", 2: "quarter", 4: "half", 6: "three quarter", 8: "full"}
_DEGREES = {1: "45", 2: "90", 3: "135", 4: "180", 6: "270", 8: "360"}

# Facings in the reader's unit.
_NAMED = {0: "front", TURN // 2: "back"}
_HOURS = {0: "twelve", TURN // 4: "three", TURN // 2: "six", 3 * TURN // 4: "nine"}

_NUMBERS = {
    1: "one", 2: "two", 4: "four", 8: "eight", 16: "sixteen", 24: "twenty-four", 32: "thirty-two",
    36: "thirty-six", 40: "forty", 48: "forty-eight", 64: "sixty-four",
}  # fmt: skip

_OTHER = {"left": "right", "right": "left", "lt": "rt", "rt": "lt"}
_SIDES = re.compile(
    r"left|right|\b[lr]t\b|\b[lr](?=f\b|\.|\s|\)|/|-|,|&|$)|\b[lr]{2,8}\b|\b[lr]\b", re.IGNORECASE
)
_LETTERS = str.maketrans("LRlr", "RLrl")
_WAY_BEFORE = re.compile(r"\b(?:to|turn|turning|pivot)(?:\s+(?:the|your))?\s+$", re.IGNORECASE)
_WAY_AFTER = re.compile(r"\s+(?:side|diagonal|turn)", re.IGNORECASE)


def swapped(text: str) -> str:
    """Left for right and right for left, in whatever way it is written."""

    def other(found: re.Match[str]) -> str:
        word = found.group()
        told = _OTHER.get(word.lower())
        return word.translate(_LETTERS) if told is None else cased(told, word)

    return _SIDES.sub(other, text)


def feet_swapped(text: str) -> str:
    """The feet exchanged, and the ways they go left as they are."""

    def other(found: re.Match[str]) -> str:
        way = _WAY_BEFORE.search(text, 0, found.start()) or _WAY_AFTER.match(text, found.end())
        return found.group() if way else swapped(found.group())

    return _SIDES.sub(other, text)


def amount_like(shown: str, eighths: int) -> str:
    """So many eighths of a turn as a sign, a fraction, a word or degrees."""
    if any(sign in shown for sign in _SIGNS.values()):
        return _SIGNS.get(eighths, "full")
    if _NAMED_SIGN.search(shown):
        return f"&frac{_FRACTIONS[eighths].replace('/', '')};" if eighths in _SIGNS else "full"
    if digits := re.search(r"\d{2,3}", shown):
        return shown.replace(digits.group(), _DEGREES[eighths])
    if "/" in shown or "⁄" in shown:
        return _FRACTIONS[eighths]
    return cased(_WORDS.get(eighths, _FRACTIONS[eighths]), shown)


def reclocked(shown: str, facing: int) -> str:
    """The facing (in 1/48 of a turn) as a time, an hour or a wall; as shown where it has no such name."""
    hour, minute = clock(facing).split(":")
    if re.search(r"\d[:.]\d\d", shown):
        return re.sub(r"\d{1,2}([:.])\d\d", lambda time: f"{hour}{time[1]}{minute}", shown)
    if re.search(r"\d", shown):
        return re.sub(r"\d{1,2}", hour, shown, count=1) if minute == "00" else shown
    if facing in _NAMED and re.search(r"front|back|home", shown, re.IGNORECASE):
        return re.sub(r"front|back|home", _NAMED[facing], shown, count=1, flags=re.IGNORECASE)
    if facing in _HOURS:
        return re.sub(r"twelve|three|six|nine", _HOURS[facing], shown, count=1, flags=re.IGNORECASE)
    return shown


def number_like(shown: str, number: int) -> str:
    """The number in digits, or as a word where a word stood."""
    return str(number) if shown.isdigit() or number not in _NUMBERS else cased(_NUMBERS[number], shown)


def cased(word: str, like: str) -> str:
    """The word in capitals, with a capital or without, as the other is."""
    if like.isupper() and len(like) > 1:
        return word.upper()
    return word.capitalize() if like[:1].isupper() else word
