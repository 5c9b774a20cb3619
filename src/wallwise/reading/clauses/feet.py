"""Feet, sides and parts of a foot: who does it, against which foot, toward which side, or once more."""

from __future__ import annotations

from wallwise.glossary.lexicon import Word
from wallwise.reading.clauses.act import Act
from wallwise.reading.clauses.telling import Telling, side_of
from wallwise.reading.clauses.verbs import take_words
from wallwise.reading.tokens import Token

_BY_A_FOOT = ("beside", "across", "behind")  # places said of the other foot
_ON_BOTH = ("bump", "sway", "swivel", "roll")  # told once for each side
# Verbs that may name the other foot alone: "cross over L", "touch beside R".
_AGAINST_VERBS = ("cross", "close", "lock", "touch", "point", "hook")
_HIPS = ("hips", "hip")
_BODY = (*_HIPS, "feet", "both", "knees", "shoulders", "shoulder")


def take_foot(t: Telling, i: int, token: Token) -> int:
    """A foot that was called one: "right foot", "RF"."""
    if _goes_along(t, i):
        return take_words(t, i)
    _take_named(t, i, token, sure=True)
    return i + 1


def take_side(t: Telling, i: int, token: Token) -> int:
    """R or L alone: a direction, the way of a turn, or a foot."""
    if _goes_along(t, i):
        return take_words(t, i)
    act, before = t.act, t.at(i - 1)
    turn = act.turn
    if _is_direction(t, i) and not _opens_side(t, i, token):
        _point_toward(t, token)
    elif _is_touched(t, i, token):
        _place_against(t, token)
    elif before.word is Word.RELATION and before.value == "to" and _is_way(t, token):
        _take_to(t, token)
    elif (
        turn is not None
        and turn.way is None
        and (act.verb == "turn" or before.word is Word.TURN)
        and before.word is not Word.RELATION
    ):
        turn.way = side_of(token.value)
        turn.end = token.end
        t.touch(token)
    else:
        _take_named(t, i, token, sure=False)
    return i + 1


def _goes_along(t: Telling, i: int) -> bool:
    """Whether the other foot goes along with an act: "spiral right on L with R hooked in front"."""
    led = t.at(i - 1).text in ("with", "w/") and not t.act.empty
    return led and t.word(i + 1) is Word.VERB and t.at(i + 1).text.endswith("ed")


def _is_direction(t: Telling, i: int) -> bool:
    """Whether R or L belongs to the place after it: "to right side", "L forward diagonal"."""
    before, following, far = t.word(i - 1), t.at(i + 1), t.at(i + 2)
    if following.word is not Word.PLACE:
        return False
    led = before is Word.RELATION or t.act.foot is not None
    if following.value in ("side", "diagonal"):
        return led or before is Word.PLACE
    return (
        led and following.value in ("forward", "back") and far.word is Word.PLACE and far.value == "diagonal"
    )


def _is_touched(t: Telling, i: int, token: Token) -> bool:
    """Whether R or L begins a part of the leg that stands: "touch R toe to L instep"."""
    following = t.at(i + 1)
    led = t.word(i - 1) is Word.RELATION and following.word is Word.PART
    named = t.act.foot is not None and token.value is not t.act.foot
    return named and (led or following.value == "instep")


def _is_way(t: Telling, token: Token) -> bool:
    """Whether R or L after "to" is a side: "slide R to R", not "slide R to L", nor "drag R towards R"."""
    act = t.act
    if act.verb not in ("recover", "close", "drag"):
        return True
    slides = any(x.text.startswith("slid") for x in t.tokens if act.start <= x.start < token.start)
    return slides and act.foot is token.value


def _take_to(t: Telling, token: Token) -> None:
    """A side after "to": "R to right", but no more than the other foot in "step R together to left"."""
    act = t.act
    if act.verb in ("step", "touch") and act.foot is not None and act.place == "beside":
        return
    if (act.verb in ("touch", "ball") or act.part == "ball") and act.foot is token.value.other:
        act.place, act.said_place = act.place or "beside", True  # "touch L to R"
        _place_against(t, token)
        return
    _point_toward(t, token)
    moves = act.verb not in ("", "turn") or (act.foot is not None and not act.verb)
    if not act.place and moves:
        act.place, act.said_place = "side", True


def _take_named(t: Telling, i: int, token: Token, *, sure: bool) -> None:
    """A foot told: the act's own where it has none yet, else what a second foot can mean."""
    act, before = t.act, t.at(i - 1)
    if _leads_figure(t, i, token) or _leads_pivot(t, i, token) or _opens_side(t, i, token):
        t.flush()
        t.give_foot(token, sure=sure)
        return
    if _lists(t, i, token):
        begin, _ = act.feet_at or act.foot_at or (before.start, before.end)
        act.feet, act.feet_at = (*(act.feet or (before.value,)), token.value), (begin, token.end)
        act.foot = act.foot_at = None  # "two vines R L"
        t.touch(token)
    elif act.foot is not None:
        _take_second(t, i, token, sure=sure)
    elif _is_gone_round(t, i, sure=sure):
        _place_against(t, token)
    else:
        t.give_foot(token, sure=sure or bool(act.verb))


def _leads_figure(t: Telling, i: int, token: Token) -> bool:
    """Whether a foot behind a recover is that of the figure after it: "rock R recover R cross shuffle"."""
    if t.act.verb != "recover" or t.word(i + 1) is not Word.FIGURE:
        return False
    rocked = t.acts[-1].foot if t.acts else None
    return t.act.foot is not None or (rocked is not None and token.value is rocked)


def _leads_pivot(t: Telling, i: int, token: Token) -> bool:
    """Whether a foot behind a figure is that of the pivot after it: "R coaster step L 1/4 pivot R"."""
    act = t.act
    at = i + 2 if t.word(i + 1) is Word.AMOUNT else i + 1
    return bool(act.figures) and act.foot is token.value.other and t.at(at).value == "pivot"


def _lists(t: Telling, i: int, token: Token) -> bool:
    """Whether a figure's feet are told one after the other: "(L)(R)(L)"."""
    act, before = t.act, t.at(i - 1)
    told = bool(act.figures) and (act.foot is not None or bool(act.feet))
    return told and before.value == token.value.other and not _opens_next(act, t.word(i + 1))


def _is_gone_round(t: Telling, i: int, *, sure: bool) -> bool:
    """Whether the first foot told is the one the act goes by: "cross over L", "in front of L"."""
    act, before, last = t.act, t.before(i), t.acts[-1] if t.acts else None
    if not act.verb:
        return act.place in _BY_A_FOOT and before.text.endswith((" of", " to"))
    # "LF 1/4 turn left, cross behind RF"
    turned = last is not None and last.verb == "turn" and last.foot is t.at(i).value.other
    return (
        act.verb in _AGAINST_VERBS
        and before.word is Word.PLACE
        and before.value in _BY_A_FOOT
        and before.text not in ("together", "tog")
        and (not sure or turned)
        and t.word(i + 1) not in (Word.PLACE, Word.FOOT, Word.SIDE, Word.PART)
    )


def _take_second(t: Telling, i: int, token: Token, *, sure: bool) -> None:
    act, before = t.act, t.before(i)
    if before.word is Word.PLACE and before.value in _BY_A_FOOT:
        _place_against(t, token)
    elif before.word is Word.RELATION and before.value in ("to", "of"):
        if act.verb in ("close", "drag", "touch"):
            _place_against(t, token)
    elif act.verb in _ON_BOTH or act.both:
        if act.verb != "sway" or token.value != act.foot:
            _again_on(t, token)
    elif before.word in (Word.SIDE, Word.FOOT, Word.AND) and (act.verb or act.place) and not act.figures:
        if before.word is Word.SIDE and before.value == token.value:
            act.toward = token.value  # "step left left"
        else:
            _again_on(t, token)
    elif _opens_next(act, t.word(i + 1)):
        t.flush()
        t.give_foot(token, sure=sure)
    elif not act.toward and not sure:
        _step_toward(t, token)


def _opens_side(t: Telling, i: int, token: Token) -> bool:
    """Whether a foot behind a place goes to the side itself: "L behind R side L cross"."""
    behind = t.at(i - 1).value in _BY_A_FOOT and t.act.foot is token.value.other
    return behind and t.at(i + 1).value == "side" and t.word(i + 2) in (Word.SIDE, Word.FOOT)


def _opens_next(act: Act, following: Word | str) -> bool:
    """Whether a second foot begins an act of its own: "R side L behind", "right shuffle L forward"."""
    placed = act.place and act.said_place and following in (Word.PLACE, Word.PART, Word.VERB)
    return bool(placed or (act.figures and following in (Word.FIGURE, Word.VERB, Word.PLACE, Word.PART)))


def _step_toward(t: Telling, token: Token) -> None:
    act = t.act
    if act.verb in ("step", "rock", "point", "stomp") and not act.place and act.sure:
        act.place, act.said_place = "side", True  # "RF step left"
    _point_toward(t, token)


def _point_toward(t: Telling, token: Token) -> None:
    t.act.toward, t.act.toward_at = token.value, (token.start, token.end)
    t.touch(token)


def _place_against(t: Telling, token: Token) -> None:
    if t.act.against is None:
        t.act.against, t.act.against_at = token.value, (token.start, token.end)
    t.touch(token)


def _again_on(t: Telling, token: Token) -> None:
    """The same act once more on another foot: "walk right, left"."""
    act = t.act
    again = Act(
        verb=act.verb, part=act.part, place=act.place, said_place=act.said_place,
        diagonal=act.diagonal, both=act.both, aside=act.aside,
    )  # fmt: skip
    t.flush(then=again)
    t.give_foot(token, sure=True)


def take_part(t: Telling, i: int, token: Token) -> int:
    """A heel, toe, ball or knee: of the foot that acts, or the beginning of the next act."""
    act, before = t.act, t.at(i - 1)
    if act.part and not act.verb:
        t.flush(then=Act())
    elif act.figures:
        if before.word not in (Word.SIDE, Word.FIGURE) and before.text not in ("with", "w/"):
            return i + 1
        t.flush()
    elif (
        act.foot is not None
        and act.verb
        and not act.part
        and act.said_place
        and before.word is Word.PLACE
        and token.value in ("heel", "toe")
    ):
        t.flush()  # "step R forward, heel ...": the step is complete
    act = t.act
    if act.foot_at is not None and before.word in (Word.SIDE, Word.FOOT) and before.start != act.foot_at[0]:
        return i + 1  # the part of the foot it is placed against: "beside L heel"
    t.touch(token)
    act.part = act.part or token.value
    return i + 1


def take_both(t: Telling, i: int, token: Token) -> int:
    """Both feet, heels, toes, knees, or the hips."""
    act = t.act
    if (act.figures and token.text in _BODY) or (act.verb == "sway" and token.text in _HIPS):
        return i + 1
    if act.both and act.verb and token.text in ("heels", "toes") and (act.toward or act.also):
        t.flush(then=Act(verb=act.verb))  # "swivel heels right, toes right"
        act = t.act
    t.touch(token)
    if token.text == "toes" and act.foot is not None:
        act.part = "toe"
        return i + 1
    act.both = True
    if token.text in _HIPS and not act.verb:
        act.verb = "bump"
    return i + 1
