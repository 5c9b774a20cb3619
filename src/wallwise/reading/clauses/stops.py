"""What is no word: stops, brackets, cells, facings, numbers, feet in a row, words nobody knows."""

from __future__ import annotations

from wallwise.glossary.lexicon import Word
from wallwise.reading.clauses.act import Act, Turn
from wallwise.reading.clauses.again import SECTION_WORDS
from wallwise.reading.clauses.telling import EDGE, Telling, side_of
from wallwise.reading.tokens import Token
from wallwise.reading.wording import number_of

STOPS = frozenset(',;.|>*=<~!?"/\u2022') | {"->", "..."}
_MOST_TIMES = 4
_SINGULAR = ("step", "cross")  # "cross" ends so itself; of steps the number says how many feet
_SET_OFF = ("(", "[", "-", ":")
_CLAUSE_ENDS = STOPS | {":", "(", ")", "[", "]", "clock", Word.AND, Word.THEN}
_COUNTS = ("ct", "cts")
_LEFT_OUT = ("without", "omitting", "skipping")  # "L to side without the 1/4 turn"
# What opens a bracket that only says more of the act it stands in: a facing, a weight, feet, a turn's amount.
_QUALIFIERS = ("clock", "feet", Word.WEIGHT, Word.AGAIN, Word.AMOUNT, Word.SIDE, Word.FOOT)


def take_stop(t: Telling, i: int, _token: Token) -> int:
    """A stop closes the act."""
    t.stop()
    return i + 1


def take_full_stop(t: Telling, i: int, _token: Token) -> int:
    """A figure's name with a full stop behind it is a sentence of its own."""
    t.stop()
    if t.acts and t.acts[-1].figures:
        t.acts[-1].closed = True
    return i + 1


def take_colon(t: Telling, i: int, _token: Token) -> int:
    """What stands before a colon is a name for what follows."""
    t.stop()
    if t.acts:
        t.acts[-1].label = True
    return i + 1


def take_cell(t: Telling, i: int, _token: Token) -> int:
    """A cell of a table row begins."""
    t.stop()
    if t.acts and t.cells[-1] != len(t.acts):
        t.cells.append(len(t.acts))
    return i + 1


def take_opening(t: Telling, i: int, _token: Token) -> int:
    """A bracket opens: an aside, or more of the act it stands in."""
    if t.act.start < 0 or not _qualifies(t, i + 1):
        t.stop()
        t.opened = len(t.acts)
        t.act = Act(aside=True)
    t.depth += 1
    return i + 1


def _qualifies(t: Telling, i: int) -> bool:
    word = t.word(i)
    if word in (Word.SIDE, Word.FOOT) and t.word(i + 1) == "," and t.word(i + 2) in (Word.SIDE, Word.FOOT):
        return False  # "vine with a touch (R, L behind …)" tells one step after the other
    if t.act.figures and word in (Word.SIDE, Word.FOOT) and t.word(i + 1) is Word.PLACE:
        return False  # "vine (R side, L behind …)" tells the figure's steps
    return word in _QUALIFIERS or (
        word in (Word.IGNORE, Word.RELATION, Word.THEN) and t.word(i + 1) == "clock"
    )


def take_closing(t: Telling, i: int, _token: Token) -> int:
    """A bracket closes, and with it an act that began inside."""
    if t.depth:
        if t.act.aside:
            t.flush()
        t.depth -= 1
        t.act.aside = t.depth > 0
    return i + 1


def take_unknown(t: Telling, i: int, token: Token) -> int:
    """A word that no list knows stays with the act, for whoever reports it; what is left out is passed by."""
    if token.text in _COUNTS and t.word(i - 1) == "number":
        return i + 1  # "rocking chair, 4 cts: …"
    t.touch(token)
    if token.text in _LEFT_OUT:
        while t.at(i) is not EDGE and t.word(i) not in _CLAUSE_ENDS:
            i += 1
        return i
    t.act.unknown.append(token)
    return i + 1


def take_lead(t: Telling, i: int, token: Token) -> int:
    """A lead ("starting with right") waits for the next act that names no foot, or is that of the last."""
    last = t.act if t.act.figures else t.acts[-1] if t.acts and t.act.empty else None
    behind = token.text.endswith("first") or t.at(i + 1) is EDGE
    if behind and last is not None and last.figures and last.foot is None and not last.feet:
        last.foot, last.foot_at, last.sure = token.value, (token.start, token.end), True
    else:
        t.lead = token
    return i + 1


def take_clock(t: Telling, i: int, token: Token) -> int:
    """A facing after the act."""
    t.touch(token)
    t.act.faces, t.act.faces_at = token.value, (token.start, token.end)
    return i + 1


def take_steps(t: Telling, i: int, token: Token) -> int:
    """How many steps: "walk forward three steps", "3 steps back"."""
    if not t.act.figures:
        t.act.verb = t.act.verb or "step"
        t.act.number = token.value
    t.touch(token)
    return i + 1


def take_lasts(t: Telling, i: int, token: Token) -> int:
    """How long the act lasts: "over two counts"."""
    act = t.acts[-1] if t.act.start < 0 and t.acts else t.act
    act.lasts = act.lasts or not token.text.startswith("instead")
    return i + 1


def take_feet(t: Telling, i: int, token: Token) -> int:
    """Feet in a row: "R-L-R"; a second row is danced by an act of its own."""
    dancing = _danced_by_row(t, i, len(token.value))
    if dancing:
        for act, foot in zip(dancing, token.value, strict=True):
            act.foot, act.foot_at, act.sure = foot, (token.start, token.end), True
        return i + 1
    t.touch(token)
    turn = t.act.turn
    if turn is not None and _is_way_and_foot(turn, token):
        turn.way = side_of(token.value[0])
        t.stop()
        t.give_foot(token._replace(word=Word.SIDE, value=token.value[1], start=token.end - 1), sure=False)
        return i + 1
    if t.act.feet:
        t.flush()
        t.touch(token)
    t.act.feet, t.act.feet_at = token.value, (token.start, token.end)
    return i + 1


def _is_way_and_foot(turn: Turn, feet: Token) -> bool:
    """Whether two sides are the way of a pivot and the foot of the next act: "1/2 pivot L, R 1/2 pivot L"."""
    pivots = turn.own == "pivot" and turn.eighths is not None and turn.way is None
    return pivots and len(feet.value) == 2 and "," in feet.text


def _danced_by_row(t: Telling, i: int, feet: int) -> list[Act]:
    """The acts that a row of feet set off behind them is for: "side, together, side (R, L, R)"."""
    if t.at(i - 1).text not in _SET_OFF:
        return []
    acts = [*t.acts, *([] if t.act.empty else [t.act])]
    row, before = acts[-feet:], acts[:-feet]
    fits = len(row) == feet > 1 and all((a.verb or a.place) and a.verb != "hold" for a in row)
    if not fits or any(a.foot or a.feet or a.figures or a.both or a.label for a in row):
        return []
    return row if not before or before[-1].foot or before[-1].feet else []


def _counts_figures(t: Telling, i: int) -> bool:
    """Whether a figure or a pivot follows, its turn before it or not: "two 1/4 paddle turns"."""
    while t.word(i) in (Word.AMOUNT, Word.IGNORE) and not t.at(i).text.startswith(("count", "beat")):
        i += 1
    return t.word(i) is Word.FIGURE or t.at(i).value in ("pivot", "turn")


def _counts_plural(t: Telling, i: int) -> bool:
    """Whether several steps or waits follow, "stomps" or "claps", whose feet are not told one by one."""
    token, feet = t.at(i), (t.word(i + 1), t.word(i + 2))
    several = token.word in (Word.VERB, Word.HOLD) and token.text.endswith("s")
    told = feet[0] == ":" or all(word in (Word.SIDE, Word.FOOT) for word in feet)
    return several and token.value not in _SINGULAR and not told


def take_number_word(t: Telling, i: int, token: Token) -> int:
    """Of the words that say nothing, "two", "three", "four" say how many figures or steps follow."""
    value = number_of(token.text)
    follows = _counts_figures(t, i + 1) or _counts_plural(t, i + 1)
    if value is not None and 1 < value <= _MOST_TIMES and follows and t.act.empty:
        t.touch(token)
        t.act.times = value
    return i + 1


def take_number(t: Telling, i: int, token: Token) -> int:
    """How often ("3 walks forward"), or which counts or sections come again ("repeat 1-8")."""
    act = t.act
    following = t.at(i + 1)
    counted = t.word(i - 1) not in ("-", "number", Word.AND, Word.RELATION)  # not the 4 of "1-4 shuffle"
    several = (_counts_figures(t, i + 1) and not act.figures) or (act.empty and _counts_plural(t, i + 1))
    if counted and several and 1 < token.value <= _MOST_TIMES:
        t.touch(token)
        act.times = token.value
    elif following.word is Word.VERB and not act.verb:
        t.touch(token)
        act.number = token.value
    elif act.verb == "same":
        act.of_section = t.at(i - 1).text in SECTION_WORDS
        last = t.at(i + 2)
        if following.word in ("-", ",", Word.RELATION, Word.AND) and last.word == "number":
            act.counts = (token.value, last.value)
            t.touch(last)
            return i + 3
        act.counts = (token.value, token.value)
    elif act.verb and 1 < token.value <= 8 and act.number is None:
        act.number = token.value
        t.touch(token)
    return i + 1
