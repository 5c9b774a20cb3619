"""Places: where the foot goes, and when a second place means a second act."""

from __future__ import annotations

from dataclasses import replace

from wallwise.glossary.lexicon import Word
from wallwise.reading.clauses.act import Act
from wallwise.reading.clauses.telling import Telling
from wallwise.reading.tokens import Token

_OUT_OR_IN = ("out", "in")
_OUT_OR_IN_PLACES = {"out": "side", "in": "beside"}
# Verbs of both feet or of a part of the foot, for which "out" and "in" are directions.
_SPREAD = ("swivel", "fan", "split", "jump")
# Gestures that a second place repeats: "touch forward, side".
_REPEATED = ("touch", "kick", "point", "dig", "hook", "flick")
_LINES = ("forward", "back", "diagonal")
_BY_A_FOOT = ("beside", "across")  # places said of the other foot
_ON_THE_SPOT = ("in place", "on the spot")  # where a turn is danced that is no step
# Said after a place, these only fill it out: "cross in front", "step back to place".
_FILLERS = (
    "in front", "ahead", "centre", "center", "to centre", "to center", "home", "to place", "back to place",
)  # fmt: skip


def take_place(t: Telling, i: int, token: Token) -> int:
    """A place: the act's own, more of the one it has, or the beginning of the next act."""
    value = token.value
    if token.text == "in" and t.word(i + 1) is Word.SAME:
        return i + 1  # "to the left in the same way"
    if value == "diagonal":
        t.act.diagonal = True
        t.touch(token)
    elif value in _OUT_OR_IN:
        _take_out_or_in(t, i, token)
    elif not (token.text == "by" and value == "beside" and t.word(i - 1) is Word.RELATION):
        _take_whither(t, i, token)
    return i + 1


def _take_whither(t: Telling, i: int, token: Token) -> None:
    act, turn, value = t.act, t.act.turn, token.value
    plain = act.verb == "turn" and turn is not None and turn.own in ("", "turn")
    if plain and token.text not in _ON_THE_SPOT:
        act.verb = ""  # "1/4 turn left, forward": the place opens a step that the turn goes with
    if act.spread and value in _LINES and t.word(i - 1) in (Word.RELATION, Word.PLACE):
        act.spread, act.place = False, value  # "out to forward diagonal", "out forward"
        t.touch(token)
        return
    if act.place and act.said_place:
        if act.diagonal and act.place == "side" and value in _LINES:
            act.place = value  # "step diagonally right forward"
            t.touch(token)
            return
        if _is_by_the_other_foot(t, i, token):
            act.place = value
            t.touch(token)
            return
        if _says_more(act, token):
            if value == "behind":
                act.place = value  # "cross behind"
            t.touch(token)
            return
        repeated = act.verb in _REPEATED or act.part
        t.flush(then=Act(verb=act.verb, part=act.part) if repeated else Act())
        act = t.act
    t.touch(token)
    if act.verb == "lock" and value in ("across", "behind"):
        act.place = "lock front" if value == "across" else "lock behind"
    elif not (act.place.startswith("lock") and value == "beside"):
        act.place = value
    act.said_place = True


def _is_by_the_other_foot(t: Telling, i: int, token: Token) -> bool:
    """Whether it says how the step goes by the foot that stands: "walk R forward across L"."""
    act, other = t.act, t.at(i + 1)
    named = other.word in (Word.SIDE, Word.FOOT) and act.foot is not None and other.value is act.foot.other
    ends = t.word(i + 2) not in (Word.PLACE, Word.PART, Word.VERB, Word.SIDE, Word.FOOT)
    return act.place in _LINES and token.value in _BY_A_FOOT and named and ends


def _says_more(act: Act, token: Token) -> bool:
    """Whether a second place only says more of the first ("side ... together" does not)."""
    value = token.value
    if act.parted and act.verb != "step" and value == act.place:
        return False  # "forward, lock, forward" without commas
    if value in (act.place, "place") or token.text in _FILLERS:
        return True
    if act.place == "back" and value == "behind" and act.foot is not None:
        return True  # "rock R back behind L"
    if act.place == "across" and act.verb == "cross":
        return value in ("behind", "forward")
    swept = act.verb in ("touch", "point", "sweep") and act.foot is not None
    return swept and act.place in ("across", "behind") and value == "side"


def _take_out_or_in(t: Telling, i: int, token: Token) -> None:
    """The words "out" and "in": places for a foot, directions for heels, toes and knees."""
    act = t.act
    if act.both or act.verb in _SPREAD or act.part:
        _spread(t, token)
        return
    place = _OUT_OR_IN_PLACES[token.value]
    before = t.at(i - 1)
    if not act.place:
        if not act.verb and not act.figures and act.foot is None and act.turn is not None:
            t.flush()
            act = t.act
        if not act.figures or act.verb:
            act.place, act.said_place, act.spread = place, True, True
    elif before.word is Word.PLACE and before.value in _OUT_OR_IN and _is_repeated(act):
        t.flush(then=Act(verb=act.verb, place=place, said_place=True, spread=True))  # "step out, out"
    t.touch(token)


def _is_repeated(act: Act) -> bool:
    return not act.verb or (act.verb == "step" and act.place in _OUT_OR_IN_PLACES.values() and act.said_place)


def _spread(t: Telling, token: Token) -> None:
    """Heels, toes or knees out or in; told twice, it is done twice."""
    act = t.act
    t.touch(token)
    if act.also and act.also[-1] in _OUT_OR_IN:
        t.flush(then=replace(act, also=[token.value], start=token.start, end=token.end))
    else:
        act.also.append(token.value)
