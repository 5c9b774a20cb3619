"""A piece of a line as tokens: the phrases of the lexicon, with their places in the line."""

import re
from dataclasses import dataclass
from fractions import Fraction
from typing import Any

from wallwise.dance.model import Foot
from wallwise.glossary.lexicon import Lexicon, Word

_RAW = re.compile(
    r"(?P<lasts>\binstead of (?:the |a )?(?:right |left )?\w+|\b(?:over|for|across|during|on|lasting)\s+(?:the\s+)?(?:next\s+)?(?:\d|two|three|four|five|six|seven|eight)\s+(?:full\s+)?(?:counts?|beats?)\b)"
    r"|(?P<pair>\b(?:rf|lf|r\.f\.|l\.f\.)\s?[+&/]\s?(?:rf|lf|r\.f\.|l\.f\.))"
    r"|(?P<lead>\b(?:starting|leading|beginning|commencing)\s+(?:with|on)\s+(?:the\s+|your\s+|a\s+)?(?P<led>right|left|rf|lf|r|l)\b(?:\s+foot)?(?:\s+lead)?)"
    r"|(?P<clock>\(?\[?\b(?:1[0-2]|0?[1-9])[:.][0-5]\d(?!\d)\]?\)?(?:\s?o'?\s?c(?:lock|l)?\b\.?)?"
    r"|\b(?:1[0-2]|0?[1-9])\s?o'?\s?(?:clock|cl|c)\b\.?"
    r"|\b(?:twelve|three|six|nine)\s+o'?\s?clock\b|\(\s*(?:12|3|6|9)\s*\))"
    r"|(?P<amount>\b[12] \d/\d|\d/\d|\b1-\d/\d)"
    r"|(?P<dotted>\b[rl]\.?\s?f\.(?!\w)|\b[rl]/f\b)"
    r"|(?P<named>\b(?:right|left)(?:\s?[-/,&]\s?|,?\s+(?:and\s+)?)(?:right|left)(?:(?:\s?[-/,&]\s?|,?\s+(?:and\s+)?)(?:right|left)\b)+(?!\s+(?:foot|heel|toe|side|over|behind|in front|across|beside|next|to\b|forward|back|diagonal|knee)))"
    r"|(?P<feet>\b[rl](?:\s?(?:[-/,.&+]|and)\s?[rl]\b)+(?=\s*(?:$|[,;.:)\](|&+]|-\s|(?:and|then|in|on|turning|making|with|x\s?\d)\b|\d))|\b[rl]{2,8}\b)"
    r"|(?P<degrees>\d{2,3}(?=\s?deg))"
    r"|(?P<number>\d+)"
    r"|(?P<word>[a-z\u00e0-\u024f](?:[a-z'\u00e0-\u024f]|\.(?=[a-z]\.)|\.(?<=\b[rl]\.)(?=\s?f|\s?foot|f))*(?:/(?=f\b|o\b)[a-z])?)"
    r"|(?P<cell>\t)|(?P<stop>\s-+\s|[,;:()\[\]|*>=<~\"/.!?]|->|\.\.\.|-|&|\+|\u2022)"
)
_FACES = re.compile(
    r"(?:\b(?:to\s+)?(?:face|facing|looking at|see|towards?|on|the|at)\s+)?(?:(?:the|your|its)\s+)?\b(?P<wall>front|back|home|starting|original|rear|opening)\s+wall\b"
    r"|\b(?:face|facing|now on|to face|looking at|now facing)\s+(?:the\s+)?(?P<hour>1[0-2]|[1-9])(?=[\s).,;\]]|$)(?!\s*(?:counts?|o'?\s?c))"
    r"|\b(?:face|facing|now facing|to face)\s+(?:the\s+)?(?P<side>front|back|home)\b(?!\s+(?:to|foot))"
    r"|\b(?:face|facing|now facing|to face)\s+(?:the\s+)?(?P<hand>right|left)(?:[\s-]hand)?(?:\s+side)?\s+wall\b"
)
_WALLS = {"front": 0, "home": 0, "starting": 0, "original": 0, "opening": 0, "back": 24, "rear": 24, "right": 12, "left": 36}
_HOURS = {"twelve": 12, "three": 3, "six": 6, "nine": 9}

TURN = 48  # the reader's unit of turning: 1/48 of a full turn, so that thirds and sixteenths stay whole


@dataclass(frozen=True, slots=True)
class Token:
    """A phrase or a stop: its class (a `Word` or a stop's own character), value and place in the line.

    Other classes: ``clock`` (a facing, in 1/48 of a turn), ``feet`` (a tuple of feet),
    ``number``, ``unknown`` (a word that no list knows).
    """

    word: Word | str
    value: Any
    start: int
    end: int
    text: str
    place: str = ""
    ing: bool = False
    loose: bool = False  # a clock that only "on" or "at" brings in


def tokenize(text: str, lexicon: Lexicon, start: int = 0, end: int | None = None) -> list[Token]:
    """The tokens of ``text[start:end]``, the longest phrases first; empty for blank text."""
    text = text.lower()
    stop = len(text) if end is None else end
    faces = {m.start(): m for m in _FACES.finditer(text, start, stop)}
    raw = [m for m in _RAW.finditer(text, start, stop)]
    tokens: list[Token] = []
    skip_to = -1
    i = 0
    while i < len(raw):
        found = raw[i]
        if found.start() < skip_to:
            i += 1
            continue
        if (face := faces.get(found.start())) is not None:
            tokens.append(Token("clock", _wall_of(face), face.start(), face.end(), face.group()))
            skip_to = face.end()
            i += 1
            continue
        used, token = _phrase(raw, i, lexicon, text)
        if token is None:
            token, used = _single(found), 1
        tokens.append(token)
        i += used
    return tokens


def _wall_of(face: re.Match[str]) -> int:
    if face["hour"]:
        return int(face["hour"]) % 12 * TURN // 12
    return _WALLS[face["wall"] or face["side"] or face["hand"]]


def _phrase(raw: list[re.Match[str]], i: int, lexicon: Lexicon, text: str) -> tuple[int, Token | None]:
    """How many raw pieces the longest phrase from `i` takes, and its token (None: no phrase)."""
    first = raw[i]
    if first.lastgroup in ("clock", "feet", "named", "stop", "dotted", "cell", "lasts", "lead", "pair") and not (first.group() in "&+(") and first.group() != "-":
        return 1, None
    words: list[str] = []
    full: list[str] = []
    best: tuple[int, Token | None] = (1, None)
    previous_end = first.start()
    for j in range(i, min(i + 2 * lexicon.longest, len(raw))):
        piece = raw[j]
        word = piece.group()
        if j > i and word == "-" and piece.start() == previous_end and text[piece.end() : piece.end() + 1].isalnum():
            previous_end = piece.end()  # a hyphen inside a phrase: kick-ball-change
            continue
        if word == "(" and j + 2 < len(raw) and raw[j + 1].group() in ("r", "l") and raw[j + 2].group() == ")" and not words:
            foot = Foot(raw[j + 1].group().upper())
            return 3, Token(Word.SIDE, foot, piece.start(), raw[j + 2].end(), f"({foot.value})")
        if piece.lastgroup in ("clock", "stop", "cell", "lasts", "lead") and word not in "&+":
            break
        if piece.lastgroup in ("feet", "named", "dotted") and j > i:
            break
        spelt = word.split() if piece.lastgroup == "amount" else [_bare(word)]
        words += spelt
        full += [lexicon.short.get(w, w) for w in spelt]
        previous_end = piece.end()
        meaning = lexicon.phrases.get(tuple(words)) or (lexicon.phrases.get(tuple(full)) if words != full else None)
        if meaning is not None:
            token = Token(
                meaning.word, meaning.value, first.start(), piece.end(), text[first.start() : piece.end()], meaning.place, meaning.ing
            )
            best = (j - i + 1, token)
        if len(words) >= lexicon.longest:
            break
    return best


def _bare(word: str) -> str:
    return word if word.endswith(".f.") else word.rstrip(".'")


def _single(found: re.Match[str]) -> Token:
    text, group = found.group(), found.lastgroup
    place = (found.start(), found.end(), text)
    if group == "clock":
        return Token("clock", _clock(text), *place)
    if group == "amount":
        return _amount(text, *place)
    if group == "dotted":
        return Token(Word.FOOT, Foot(text[0].upper()), *place)
    if group == "feet":
        return Token("feet", tuple(Foot(c.upper()) for c in text if c in "rl"), *place)
    if group in ("number", "degrees"):
        return Token("number", int(text), *place)
    if group == "word":
        return Token("unknown", text, *place)
    if group == "pair":
        return Token(Word.BOTH, "both", *place)
    if group == "named":
        return Token("feet", tuple(Foot(w[0].upper()) for w in re.findall(r"right|left", text)), *place)
    if group in ("lead", "led"):
        return Token("lead", Foot(found["led"][0].upper()), *place)
    if group == "lasts":
        return Token("lasts", None, *place)
    if group == "cell":
        return Token("cell", None, *place)
    return Token("," if text.strip(" -") == "" and len(text) > 1 else text.strip(), None, *place)


def _clock(text: str) -> int:
    numbers = re.findall(r"\d+", text)
    hour = int(numbers[0]) if numbers else next(h for w, h in _HOURS.items() if w in text)
    minute = int(numbers[1]) if len(numbers) > 1 else 0
    return (hour % 12 * 60 + minute) * TURN // 720 % TURN


def _amount(text: str, start: int, end: int, shown: str) -> Token:
    whole, _, rest = text.rpartition(" ") if " " in text else text.rpartition("-")
    over, _, under = rest.partition("/")
    if under == "0":
        return Token("unknown", text, start, end, shown)
    size = Fraction(int(whole) if whole else 0) + Fraction(int(over), int(under))
    return Token(Word.AMOUNT, size * 8, start, end, shown)
