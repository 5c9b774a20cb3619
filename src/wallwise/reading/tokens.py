"""A piece of a line as tokens: the phrases of the lexicon, with their places in the line."""

import re
from collections.abc import Callable
from fractions import Fraction
from typing import Any, NamedTuple

from wallwise.dance.model import Foot
from wallwise.glossary.lexicon import Lexicon, Meaning, Word
from wallwise.reading.wording import number_of

_LASTS = (
    r"\binstead of (?:the |a )?(?:right |left )?\w+"
    r"|\b(?:over|for|across|during|on|lasting)\s+(?:the\s+)?(?:next\s+)?"
    r"(?:\d|two|three|four|five|six|seven|eight)\s+(?:full\s+)?(?:counts?|cts?|beats?)\b"
)
_LEAD = (
    r"\b(?:starting|leading|beginning|commencing)\s+(?:with|on)\s+(?:the\s+|your\s+|a\s+)?"
    r"(?P<led>right|left|rf|lf|r|l)\b(?:\s+foot)?(?:\s+lead)?"
    r"|\b(?P<led_first>right|left|rf|lf|r|l)(?:\s+foot)?\s+(?:goes\s+)?first\b(?!\s+\w)"
)
_SHOULDER = r"\b(?:over|round|around)\s+(?:the\s+|your\s+|to\s+)?(?P<shoulder>right|left|r|l)\s+shoulder\b"
_CLOCK = (
    r"\(?\[?\b(?:1[0-2]|0?[1-9])[:.][0-5]\d(?!\d)\]?\)?(?:\s?o'?\s?c(?:lock|l)?\b\.?)?"
    r"|\b(?:1[0-2]|0?[1-9])\s?o['/]?\s?(?:clock|cl|c)\b\.?|\b(?:12|3|6|9)\s?h\b"
    r"|\b(?:twelve|three|six|nine)\s+o'?\s?clock\b"
    r"|[(\[{]\s*(?:(?:now|to|on|at|facing|face|wall)\s+){0,2}(?:12|3|6|9)(?:\s+wall)?\s*[)\]}]"
    r"|(?:=|\t)\s*(?:12|3|6|9)\s*$"  # "… = 9", or in a cell of its own
)
_NAMED = (  # "right, left and right", where the last begins no phrase of its own
    r"\b(?:right|left)(?:\s?[-/,&]\s?|,?\s+(?:and\s+)?)(?:right|left)"
    r"(?:(?:\s?[-/,&]\s?|,?\s+(?:and\s+)?)(?:right|left)\b)+"
    r"(?!\s+(?:foot|heel|toe|side|over|behind|in front|across|beside|next|to\b|forward|back|diagonal|knee))"
)
_FEET = (  # "R-L-R", "RLR"; not "beside L, L in place"
    r"\b(?!(?P<own>[rl])(?:[,.;]|\s-)\s(?P=own)\s+(?:in|on)\b)[rl](?:\s?(?:[-/,.&+]|and)\s?[rl]\b)+"
    r"(?=\s*(?:$|[,;.:)\][({|&+*=]|-\s|(?:and|then|in|on|turning|making|with|x\s?\d)\b|\d))"
    r"|\b[rl](?:\s[rl]\b){2,}|(?:^|(?<=\t)|(?<=\t\s))[rl]\s[rl](?=\s*\t)"  # "R L" in a cell of its own
    r"|\b[rl]{2,8}\b"
)
_LETTERS = (
    r"[a-z\u00e0-\u024f](?:[a-z'\u00e0-\u024f]|\.(?=[a-z]\.)|\.(?<=\b[rl]\.)(?=\s?f|\s?foot|f))*"
    r"(?:/(?=f\b|o\b)[a-z])?"
)
# The pieces of a line, the more telling first: the first that fits a place is taken there.
_RAW = re.compile(
    rf"(?P<lasts>{_LASTS})"
    r"|(?P<pair>\b(?:rf|lf|r\.f\.|l\.f\.)\s?[+&/]\s?(?:rf|lf|r\.f\.|l\.f\.)"
    r"|\b(?:r\s?\+\s?l|l\s?\+\s?r)\b(?=\s+(?:\d/\d|turn|pivot|bounce|heel|toe|swivel)))"
    rf"|(?P<lead>{_LEAD})"
    rf"|(?P<over>{_SHOULDER})"
    rf"|(?P<clock>{_CLOCK})"
    r"|(?P<amount>\b[12](?: ?& ?| and | )\d/\d|\d/\d|\b1-\d/\d)"
    r"|(?P<sided>\b[rl]\.(?=\s+(?:side|heel|toes?|shin|knee|shoulder|diag\w*|and|on|with)\b))"
    r"|(?P<dotted>\b[rl]\.?\s?f\.(?!\w)|\b[rl]/f\b)"
    rf"|(?P<named>{_NAMED})"
    rf"|(?P<feet>{_FEET})"
    r"|(?P<steps>\b(?:two|three|four|five|six|seven|eight|[2-8])\s+(?:(?:small|little|big|quick)\s+)?steps\b)"
    r"|(?P<degrees>\d{2,3}(?=\s?deg))"
    r"|(?P<number>\d+)"
    rf"|(?P<word>w/(?!o\b)|{_LETTERS})"
    r"|(?P<cell>\t)|(?P<stop>\s-+\s|[,;:()\[\]|*>=<~\"/.!?]|->|\.\.\.|-|&|\+|\u2022)"
)
_FACING = r"\b(?:face|facing|now facing|to face)\s+(?:the\s+)?"
_FACES = re.compile(
    r"(?:\b(?:to\s+)?(?:face|facing|looking at|see|towards?|on|the|at)\s+)?(?:(?:the|your|its)\s+)?"
    r"\b(?P<wall>front|back|home|starting|original|rear|opening)\s+wall\b"
    r"|\b(?:face|facing|now on|to face|looking at|now facing)\s+(?:the\s+)?"
    r"(?P<hour>1[0-2]|[1-9])(?=[\s).,;\]]|$)(?!\s*(?:counts?|o'?\s?c))"
    r"|\bback\s+(?:to|at)\s+(?P<again>12|3|6|9)(?=[.,;)]|$)"
    rf"|{_FACING}(?P<side>front|back|home)\b(?!\s+(?:to|foot))"
    rf"|{_FACING}(?P<hand>right|left|[rl]\b)(?:[\s-]hand)?(?:\s+side)?\s+wall\b"
)
_CUT_SHORT = re.compile(r"\b(?P<word>[A-Za-z]{2,5})\.(?=\s+[a-z])")
_MAY_FACE = re.compile("wall|fac|looking|now on|back (?:to|at)")
WALLS = {
    "front": 0, "home": 0, "starting": 0, "original": 0, "opening": 0,
    "right": 12, "r": 12, "back": 24, "rear": 24, "left": 36, "l": 36,
}  # fmt: skip
_HOURS = {"twelve": 12, "three": 3, "six": 6, "nine": 9}
_NO_PHRASE = frozenset(
    {"clock", "feet", "named", "stop", "dotted", "cell", "lasts", "lead", "over", "pair", "steps"}
)  # begins none
_ENDS_PHRASE = _NO_PHRASE - {"pair"}

TURN = 48  # the reader's unit of turning: 1/48 of a full turn, so that thirds and sixteenths stay whole


class Token(NamedTuple):
    """A phrase or a stop: its class (a `Word` or a stop's own character), value and place in the line.

    Other classes: ``clock`` (a facing, in 1/48 of a turn), ``feet`` (a tuple of feet), ``lead``
    (the foot that starts), ``number``, ``cell`` (of a table row), ``lasts`` ("over two counts") and
    ``unknown`` (a word that no list knows).
    """

    word: Word | str
    value: Any
    start: int
    end: int
    text: str
    place: str = ""
    ing: bool = False


def tokenize(text: str, lexicon: Lexicon) -> list[Token]:
    """The tokens of `text`, the longest phrases first; empty for blank text."""
    if "." in text:
        text = _CUT_SHORT.sub(lambda cut: _without_dot(cut, lexicon), text)
    text = text.lower()
    faces = {m.start(): m for m in _FACES.finditer(text)} if _MAY_FACE.search(text) else {}
    raw = list(_RAW.finditer(text))
    tokens: list[Token] = []
    i = reached = 0
    while i < len(raw):
        found = raw[i]
        if found.start() < reached:  # inside a facing told in words
            i += 1
        elif (face := faces.get(found.start())) is not None:
            tokens.append(Token("clock", _wall_of(face), face.start(), face.end(), face.group()))
            reached = face.end()
            i += 1
        else:
            used, token = _phrase(raw, i, lexicon, placed=_tells_side(tokens, found))
            parted = token is None and found.lastgroup == "named" and _opens_figure(raw, i + 1, lexicon)
            tokens += (_parted(found) if parted else ()) or [token or _single(found)]
            i += used
    return tokens


def _without_dot(cut: re.Match[str], lexicon: Lexicon) -> str:
    """A word cut short, which its dot ends rather than a sentence: "step L fwd. making 1/4 turn"."""
    return cut["word"] + (" " if cut["word"].lower() in lexicon.short else ".")


def _wall_of(face: re.Match[str]) -> int:
    hour = face["hour"] or face["again"]
    if hour:
        return int(hour) % 12 * TURN // 12
    return WALLS[face["wall"] or face["side"] or face["hand"]]


# -- phrases ----------------------------------------------------------------------------------


def _tells_side(before: list[Token], piece: re.Match[str]) -> bool:
    """Whether a word ends a direction: "to right side", "to left front diagonal", "on the diagonal"."""
    if piece.group() not in ("side", "diagonal"):
        return False
    words = [token.word for token in before[-3:] if token.text not in ("front", "forward", "back")]
    on_diagonal = piece.group() == "diagonal" and words[-1:] == [Word.RELATION]
    return on_diagonal or words[-2:] == [Word.RELATION, Word.SIDE]


def _phrase(raw: list[re.Match[str]], i: int, lexicon: Lexicon, *, placed: bool) -> tuple[int, Token | None]:
    """How many raw pieces the longest phrase from `i` takes, and its token (1 and None: no phrase).

    A phrase that begins with the end of a direction, which is `placed`, is no figure's name.
    """
    if raw[i].group() == "(":
        return _bracketed_side(raw, i)
    told = _meanings(raw, i, lexicon)
    if placed:
        told = [(meaning, last) for meaning, last in told if meaning.word is not Word.FIGURE]
    if (
        len(told) > 1
        and told[-2][0].word is Word.FIGURE
        and _opens_figure(raw, told[-1][1], lexicon, words=2)
    ):
        told.pop()  # "side rock recover, cross shuffle" without its comma
    if not told:
        return 1, None
    best, last = told[-1]
    start, end = raw[i].start(), raw[last].end()
    shown = raw[i].string[start:end]
    return last - i + 1, Token(best.word, best.value, start, end, shown, best.place, best.ing)


def _opens_figure(raw: list[re.Match[str]], i: int, lexicon: Lexicon, *, words: int = 1) -> bool:
    """Whether a figure's name of so many words or more begins at that piece."""
    told = _meanings(raw, i, lexicon) if i < len(raw) else ()
    return any(meaning.word is Word.FIGURE and last >= i + words - 1 for meaning, last in told)


def _meanings(raw: list[re.Match[str]], i: int, lexicon: Lexicon) -> list[tuple[Meaning, int]]:
    """The phrases that begin at the piece `i`, the longest last, each with its last piece."""
    told: list[tuple[Meaning, int]] = []
    words: tuple[str, ...] = ()
    full: tuple[str, ...] = ()  # the same, words cut short written out
    reached = raw[i].start()
    for j in range(i, len(raw)):
        piece = raw[j]
        kind, text = piece.lastgroup, piece.group()
        if j > i and text == "-" and _is_hyphen(piece, reached):
            reached = piece.end()
            continue
        if kind in (_NO_PHRASE if j == i else _ENDS_PHRASE) and text not in "&+/":
            break
        for word in text.split() if kind == "amount" else (text,):
            spelt = word if word.endswith(".f.") else word.rstrip(".'")
            words += (spelt,)
            full += (lexicon.short.get(spelt, spelt),)
        reached = piece.end()
        meaning = lexicon.phrases.get(words) or (full != words and lexicon.phrases.get(full))
        if meaning:
            told.append((meaning, j))
        if words not in lexicon.openings and full not in lexicon.openings:
            break
    return told


def _is_hyphen(piece: re.Match[str], reached: int) -> bool:
    """Whether the dash stands inside a phrase: "kick-ball-change"."""
    return piece.start() == reached and piece.string[piece.end() : piece.end() + 1].isalnum()


def _bracketed_side(raw: list[re.Match[str]], i: int) -> tuple[int, Token | None]:
    """The foot of "step (R)", which is no aside."""
    told = [piece.group() for piece in raw[i + 1 : i + 3]]
    if told not in (["r", ")"], ["l", ")"]):
        return 1, None
    foot = Foot(told[0].upper())
    return 3, Token(Word.SIDE, foot, raw[i].start(), raw[i + 2].end(), f"({foot.value})")


# -- single pieces ----------------------------------------------------------------------------


def _single(found: re.Match[str]) -> Token:
    """The token of a piece that is in no phrase."""
    assert found.lastgroup is not None
    word, value = _SINGLES[found.lastgroup](found)
    return Token(word, value, found.start(), found.end(), found.group())


def _stop(found: re.Match[str]) -> tuple[str, None]:
    text = found.group()
    return ("," if len(text) > 1 and not text.strip(" -") else text.strip()), None


def _clock(found: re.Match[str]) -> tuple[str, int]:
    text = found.group()
    numbers = re.findall(r"\d+", text)
    hour = int(numbers[0]) if numbers else next(h for w, h in _HOURS.items() if w in text)
    minute = int(numbers[1]) if len(numbers) > 1 else 0
    return "clock", (hour % 12 * 60 + minute) * TURN // 720 % TURN


def _amount(found: re.Match[str]) -> tuple[Word | str, Fraction | str]:
    """Eighths of a turn; "1/0" is none."""
    text = found.group()
    *whole, over, under = map(int, re.findall(r"\d+", text))
    if under == 0:
        return "unknown", text
    return Word.AMOUNT, 8 * (sum(whole) + Fraction(over, under))


_SINGLES: dict[str, Callable[[re.Match[str]], tuple[Word | str, Any]]] = {
    "over": lambda found: (Word.SIDE, Foot(found["shoulder"][0].upper())),
    "lasts": lambda _: ("lasts", None),
    "pair": lambda _: (Word.BOTH, "both"),
    "lead": lambda found: ("lead", Foot((found["led"] or found["led_first"])[0].upper())),
    "clock": _clock,
    "amount": _amount,
    "dotted": lambda found: (Word.FOOT, Foot(found.group()[0].upper())),
    "sided": lambda found: (Word.SIDE, Foot(found.group()[0].upper())),
    "named": lambda found: ("feet", _feet(re.findall(r"right|left", found.group()))),
    "feet": lambda found: ("feet", _feet(re.findall(r"[rl]", found.group()))),
    "steps": lambda found: ("steps", number_of(found.group().split()[0])),
    "degrees": lambda found: ("number", int(found.group())),
    "number": lambda found: ("number", int(found.group()[:9])),  # Python refuses thousands of digits
    "word": lambda found: ("unknown", found.group()),
    "cell": lambda _: ("cell", None),
    "stop": _stop,
}


def _parted(found: re.Match[str]) -> tuple[Token, ...]:
    """The feet before the last comma, and the one that leads a figure: "walk right, left, right shuffle"."""
    text = found.group()
    head, comma, last = text.rpartition(",")
    names = re.findall(r"right|left", head)
    if not comma or len(re.findall(r"right|left", last)) > 1:
        return ()
    end = found.start() + len(head)
    word, value = ("feet", _feet(names)) if len(names) > 1 else (Word.SIDE, _feet(names)[0])
    lead = last.strip()
    return (
        Token(word, value, found.start(), end, head),
        Token(",", None, end, end + 1, ","),
        Token(Word.SIDE, _feet([lead])[0], found.end() - len(lead), found.end(), lead),
    )


def _feet(names: list[str]) -> tuple[Foot, ...]:
    return tuple(Foot(name[0].upper()) for name in names)
