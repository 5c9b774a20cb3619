"""Turns: an amount, a word of turning and a way, in any order."""

from __future__ import annotations

from fractions import Fraction

from wallwise.glossary.lexicon import Word
from wallwise.glossary.load import words
from wallwise.reading.clauses.act import Act, Turn
from wallwise.reading.clauses.places import take_place
from wallwise.reading.clauses.telling import Telling, side_of
from wallwise.reading.tokens import Token

_PLAIN = ("", "turn")
_OWN = ("pivot", "unwind", "spin")  # turns that are events of their own
_SHARES = words()["alongside"]["shares"]
_FULL = 8  # eighths
_PARTS = ("heels", "toes", "knees")


def take_turn(t: Telling, i: int, token: Token) -> int:
    """A turn phrase that begins here, given to the act it belongs to."""
    if token.text.startswith("45") and t.word(i - 1) is Word.PLACE and t.word(i + 1) is not Word.TURN:
        return take_place(t, i, token._replace(word=Word.PLACE, value="diagonal"))  # "R forward 45 degrees"
    if token.value == "turn" and _turns_a_part(t, i + 1):
        if not t.act.empty:
            t.flush()
        t.act.verb = "swivel"  # "turn both heels out"
        t.touch(token)
        return i + 1
    turn = Turn(None, None, "", token.start, token.end)
    j = i
    while _adds(t, j, turn):
        if t.word(j) is not Word.IGNORE:
            turn.end = t.at(j).end
        j += 1
    undirected = turn.way is None and turn.own == "" and t.word(j) not in (Word.SIDE, Word.TURN)
    if turn.eighths == _FULL and undirected:
        return i + 1  # "full", "complete" with nothing turning
    if token.word is Word.AMOUNT and not turn.own and t.act.said_place and t.word(j) is Word.PLACE:
        t.flush()  # "side, together, 1/4 left forward" without commas: the turn is the next step's
    if t.at(j).text in _SHARES and _is_share(t, turn):
        return j + 1  # "walk a full turn left, a quarter on each step"
    figure = _told_in_brackets(t, i)
    if figure is not None and turn.own in _PLAIN:
        figure.turn = turn
    else:
        _place_turn(t, turn, ing=token.ing)
    return j


def _is_share(t: Telling, turn: Turn) -> bool:
    """Whether the turn is an equal share of the one told just before."""
    whole = t.acts[-1].turn if t.acts and t.act.empty else None
    if whole is None or not whole.eighths or not turn.eighths:
        return False
    return whole.eighths > turn.eighths and whole.eighths % turn.eighths == 0


def _told_in_brackets(t: Telling, i: int) -> Act | None:
    """The figure whose steps the bracket before the turn told: "jazz box (cross, ...) with 1/4 left"."""
    before = i - 1
    while t.word(before) is Word.IGNORE or t.at(before).text in ("with", "w/"):
        before -= 1
    if t.word(before) not in (")", "]") or t.depth or not 0 < t.opened < len(t.acts):
        return None
    figure = t.acts[t.opened - 1]
    turns = any(act.turn is not None for act in t.acts[t.opened - 1 :])
    return figure if figure.figures and not turns else None


def _turns_a_part(t: Telling, i: int) -> bool:
    """Whether heels, toes or knees are what is turned, and not the body."""
    while t.word(i) in (Word.IGNORE, Word.SIDE, Word.FOOT):
        i += 1
    return t.word(i) is Word.PART or (t.word(i) is Word.BOTH and t.at(i).text.endswith(_PARTS))


def _adds(t: Telling, i: int, turn: Turn) -> bool:
    """Whether the token belongs to the turn; what it says is put into `turn`."""
    token, following = t.at(i), t.at(i + 1)
    if token.word is Word.AMOUNT:
        if turn.eighths is not None:
            return False
        turn.eighths = Fraction(token.value)
        return True
    if token.word is Word.TURN:
        return _adds_own(token, turn)
    if token.word is Word.IGNORE:
        goes_on = following.word in (Word.TURN, Word.AMOUNT, Word.SIDE)
        return goes_on and token.text in ("a", "the", "another", "your")
    if turn.way is not None:
        return False
    if token.word is Word.RELATION:
        # "to the left", but not "to left side"
        return token.value == "to" and _is_side(following) and t.word(i + 2) is not Word.PLACE
    if _is_side(token) and not _names_more(following):
        turn.way = side_of(token.value)
        return True
    return False


def _is_side(token: Token) -> bool:
    """Whether the word is a way to turn: "left", "your left"."""
    return token.word is Word.SIDE or (token.word is Word.FOOT and token.text.startswith("your "))


def _names_more(token: Token) -> bool:
    """Whether R or L belongs to the word after it, not to a turn: "right heel", "left side"."""
    return token.word is Word.PART or (token.word is Word.PLACE and token.value in ("side", "diagonal"))


def _adds_own(token: Token, turn: Turn) -> bool:
    if turn.own not in _PLAIN:
        return bool(token.value == "turn")  # "pivot 1/2 turn left"
    complete = turn.eighths is not None and turn.way is not None
    if turn.own == token.value and complete:
        return False  # "1/4 turn left, turn ...": the next one
    turn.own = token.value
    return True


def _place_turn(t: Telling, turn: Turn, *, ing: bool) -> None:
    """Give the turn to the open act, or to one of its own where it cannot go with that."""
    act = t.act
    if act.both and not act.verb and not act.part:
        act.both = False  # "RF+LF pivot": on both feet it turns, as pivots do
    placed = act.foot is not None and bool(act.place)
    if turn.own in _OWN and (act.verb or act.part or act.both or placed):
        t.flush()
    told = t.act.turn
    if told is not None:
        if told.eighths is None and turn.eighths is not None:
            turn.way = turn.way if turn.way is not None else told.way
        else:
            t.flush()
    act = t.act
    t.touch(turn)
    act.turn = turn
    if not act.verb and not act.figures and not (act.foot is not None and act.place) and not act.feet:
        act.verb, act.ing = "turn", ing
