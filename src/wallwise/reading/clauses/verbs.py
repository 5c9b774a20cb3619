"""Verbs and figures: what opens an act, and what only says how the act before is done."""

from __future__ import annotations

import re

from wallwise.dance.model import Kind
from wallwise.glossary.entry import Figure
from wallwise.glossary.lexicon import Word
from wallwise.glossary.load import words
from wallwise.reading.clauses.act import Act
from wallwise.reading.clauses.stops import STOPS
from wallwise.reading.clauses.telling import Telling
from wallwise.reading.tokens import Token
from wallwise.reading.wording import any_of

# Done by the free foot while the other turns.
_FREE_FOOT = ("hitch", "sweep", "kick", "flick", "hook", "touch", "point", "brush", "drag")
_STYLE = ("roll", "sway", "pop", "bounce")  # in the -ing form, how a turn is danced: "pivot rolling hips"
# Goes with a step in its -ing form.
_WITH = frozenset(
    {"sweep", "hitch", "drag", "flick", "kick", "hook", "brush", "bump", "roll", "sway", "point", "touch"}
)
# Done by the hips alone: the turn it goes with moves the weight, these do not.
_BY_HIPS = ("bump", "roll")
_HIPS = (*_BY_HIPS, "sway")  # "step R to the side with a sway": how it is danced
_WITH_PIVOT = _WITH | {"bounce", "swivel"}
# Done with a heel or a toe named before the verb: "heel touch", "toe drop".
_PART_VERBS = ("touch", "point", "kick", "dig", "drop", "fan", "swivel", "hook", "flick")
# Done at a place named before the verb: "side rock", "forward touch".
_PLACED_VERBS = (
    "rock", "step", "touch", "point", "kick", "close", "lock", "ball", "stomp", "drag", "sway",
)  # fmt: skip
_PUT = ("place", "put")  # a foot somewhere: its heel or toe may only touch there
_STEPS = ("step", "close", "cross", "recover", "rock", "stomp")
_NAMING = re.compile(
    rf"\b{any_of([*words()['naming']['named'], *words()['naming']['ended']])}(?:\s(?:an?|the|your))?$"
)
_WITH_ENDS = STOPS | {"clock", "(", ")", "[", "]", ":", Word.THEN, Word.AND, Word.TURN, Word.WEIGHT}


def take_verb(t: Telling, i: int, token: Token) -> int:
    """A verb opens an act, takes over a turn or a place told before it, or qualifies the act it stands in."""
    act = t.act
    if _styles_turn(t, i, token):
        return _take_with(t, i, token)
    if _takes_ball(t, i, token):
        return i + 1
    if act.verb == "turn":
        if token.ing and token.value in _STYLE:
            return take_words(t, i)
        _after_turn(t, i, token)
    elif _is_placed_foot(act) and ((token.ing and token.value in _WITH) or _by_hips(t, i, token)):
        act.verb = "step"  # "L behind R sweeping R": a step, and what goes with it
        return _take_with(t, i, token)
    elif act.verb or act.figures:
        with_hips = not act.figures and _by_hips(t, i, token)
        if (token.ing or with_hips) and act.verb != "same":
            return _take_with(t, i, token)
        if _says_how(t, i, token):
            return i + 1
        t.flush()
    elif _begins_anew(act, token) or _is_for_other_foot(t, i):
        t.flush()
    _set_verb(t, token)
    return i + 1


def _takes_ball(t: Telling, i: int, token: Token) -> bool:
    """Whether "ball" goes with the foot before it in one step: "rock L ball to left", "R ball tog"."""
    act, named = t.act, t.word(i - 1) in (Word.SIDE, Word.FOOT)
    if token.value == "ball" and named and act.verb in ("step", "rock") and not (act.place or act.part):
        act.part = "ball"
    elif _is_one_ball_step(t, i, token):
        act.verb = "ball"
        act.place = "beside" if token.value == "ball+beside" else act.place
    elif token.value == "close" and act.verb == "ball" and not act.place:
        act.place = "beside"  # "L ball closes"
    else:
        return False
    t.touch(token)
    return True


def _is_one_ball_step(t: Telling, i: int, token: Token) -> bool:
    """Whether a foot steps on its ball by the other, which stands: "R ball step next to L"."""
    place, other, foot = t.at(i + 1), t.at(i + 2), t.act.foot
    if token.value == "ball+beside":
        return foot is not None and not t.act.verb  # "kick R fwd, R ball tog, L in place"
    by_other = other.word in (Word.SIDE, Word.FOOT) and foot is not None and other.value is foot.other
    alone = foot is not None and not t.act.verb
    return alone and token.value == "ball+step" and place.value == "beside" and by_other


def _after_turn(t: Telling, i: int, token: Token) -> None:
    """A verb after a turn: "turn 1/4 right stepping R" is one act, "turn left, step R" two."""
    act, turn = t.act, t.act.turn
    following = t.at(i + 1)
    other = following.word in (Word.SIDE, Word.FOOT) and following.value is not act.foot
    if token.ing and (token.value in _FREE_FOOT or other):
        act.foot = act.foot_at = None  # "turn 1/2 left on L hitching R": L only stands
    apart = turn is not None and (
        (turn.eighths is None and not act.joined) if turn.own == "turn" else turn.own != ""
    )
    if apart and not token.ing:
        t.flush()
    else:
        act.verb = ""


def _styles_turn(t: Telling, i: int, token: Token) -> bool:
    """Whether a word only says how a turn or a figure is done: "pivot 1/4 left rolling hips"."""
    act = t.act
    turns = act.verb == "turn" and act.turn is not None
    if not (turns or act.figures) or not (token.ing or _is_led_by_with(t, i)):
        return False
    if token.word is Word.FIGURE:
        return all(_is_of_hips(figure) for figure in token.value)
    pivots = act.turn is not None and act.turn.own == "pivot"
    return token.value in (_WITH_PIVOT if pivots else _BY_HIPS)


def _is_led_by_with(t: Telling, i: int) -> bool:
    i -= 1
    while t.at(i).text in ("a", "your"):
        i -= 1
    return t.at(i).text in ("with", "w/")


def _by_hips(t: Telling, i: int, token: Token) -> bool:
    """Whether it only says how the hips go with a step: "with a sway", "with a hip roll"."""
    several = (
        token.text.endswith("s") or t.word(i + 1) == "feet"
    )  # "with hip bumps R, L": counts of their own
    if several or not _is_led_by_with(t, i):
        return False
    return token.value in _HIPS if token.word is Word.VERB else all(_is_of_hips(f) for f in token.value)


def _is_of_hips(figure: Figure) -> bool:
    return all(step.kind in (Kind.BUMP, Kind.ROLL) for way in figure.ways for step in way.steps)


def _is_placed_foot(act: Act) -> bool:
    """Whether a foot and its place were told, and no verb yet."""
    return not act.verb and not act.figures and act.foot is not None and act.said_place


def _says_how(t: Telling, i: int, token: Token) -> bool:
    """Whether the verb only says more of a step: "step ball", "step right a long step to the side"."""
    act = t.act
    if act.verb != "step":
        return False
    if token.value == "ball" and (not act.foot or t.at(i - 1).value == "on"):
        act.part = "ball"
        t.touch(token)
        return True
    if token.value == "step" and token.place == "long" and not act.said_place:
        act.long = True
        t.touch(token)
        return True
    return False


def _begins_anew(act: Act, token: Token) -> bool:
    """Whether the verb has nothing to do with the part or the place told before it."""
    if act.part and act.part != "ball" and not act.feet:
        return act.foot is None and token.value not in _PART_VERBS  # not "RF toe cross over LF"
    return bool(act.place) and act.said_place and act.foot is None and token.value not in _PLACED_VERBS


def _is_for_other_foot(t: Telling, i: int) -> bool:
    """Whether the verb goes with the other foot, named behind it: "L side touch R"."""
    act, at = t.act, i + 1
    while t.at(at).text in ("the", "your"):
        at += 1
    following, then = t.at(at), t.at(at + 1)
    placed = act.foot is not None and act.place and act.said_place
    listed = act.bare and bool(t.acts) and t.acts[-1].verb == "step"  # "walk R, L, R touch L beside R"
    side = then.word is Word.PLACE and then.value in ("side", "diagonal")
    named = following.word in (Word.SIDE, Word.FOOT) and not side
    return bool((placed or listed) and named and following.value is not act.foot)


def _set_verb(t: Telling, token: Token) -> None:
    act = t.act
    act.parted = act.said_place and not act.verb and not act.part
    t.touch(token)
    kind, _, second = str(token.value).partition("+")
    if second:
        _set_two_verbs(t, token, kind, second=second)
        return
    act.verb = kind
    act.ing = token.ing
    act.put = token.text.startswith(_PUT)
    if token.place == "long":
        act.long = True
    elif token.place and not (act.place and act.said_place):
        act.place = token.place
        act.said_place = act.said_place or token.text.split()[0].startswith(("cross", "x"))


def _set_two_verbs(t: Telling, token: Token, first: str, *, second: str) -> None:
    """Two acts in two words: "ball cross", "ball side"."""
    t.act.verb = first
    t.flush()
    t.touch(token)
    if second in ("side", "forward", "back", "beside"):
        t.act.verb, t.act.place, t.act.said_place = "step", second, True
    else:
        t.act.verb, t.act.place = second, "across" if second == "cross" else ""


def _take_with(t: Telling, i: int, token: Token) -> int:
    """An -ing form after a verb: what goes with the act ("sweeping L"), or how it is done ("stepping")."""
    act = t.act
    if token.value in (*_STEPS, "ball", "lock") and (act.figures or act.verb == "hold"):
        if not act.figures:
            act.verb = token.value
        act.place = act.place or token.place
        t.touch(token)
    elif t.at(i - 1).value == "recover" and token.value in _STEPS:
        t.touch(token)  # "recover crossing R over L" is one step
        act.place, act.said_place = act.place or token.place, bool(token.place)
    elif token.value in _STEPS:
        t.flush()
        _set_verb(t, token)
    elif token.value == "bump" and (feet := _feet_listed(t, i + 1)) is not None:
        act.also.append(f"bump {feet.value[0].value}")  # the first is danced with the step itself
        t.flush(then=Act(verb="bump", both=True, feet=feet.value[1:], feet_at=(feet.start, feet.end)))
        t.touch(feet)
        return t.tokens.index(feet, i) + 1
    elif token.value == "sway" and act.verb == "step":
        act.verb = "sway"
        t.touch(token)
    else:
        return take_words(t, i)
    return i + 1


def _feet_listed(t: Telling, i: int) -> Token | None:
    """The sides in a row that come next, hips or not: "bumping hips R, L, R"."""
    while t.word(i) in (Word.BOTH, Word.IGNORE):
        i += 1
    return t.at(i) if t.word(i) == "feet" else None


def _foot_after(t: Telling, i: int) -> Token | None:
    """The foot named next, if it is no side: "sweeping L", not "sweeping to left side"."""
    while t.word(i) is Word.IGNORE:
        i += 1
    named = t.word(i) in (Word.SIDE, Word.FOOT) and t.word(i + 1) is not Word.PLACE
    return t.at(i) if named or t.word(i) is Word.FOOT else None


def take_words(t: Telling, i: int) -> int:
    """Everything up to the next stop goes with the act, word for word."""
    words: list[str] = []
    gesture, named = t.at(i), _foot_after(t, i + 1)
    if gesture.value in _FREE_FOOT and named is not None:
        t.act.along, t.act.along_at = named.value, (named.start, named.end)
    while i < len(t.tokens) and t.tokens[i].word not in _WITH_ENDS and not (words and _is_next_step(t, i)):
        words.append(t.tokens[i].text)
        t.touch(t.tokens[i])
        i += 1
    t.act.also.append(" ".join(words))
    return i


def _has_turned(act: Act) -> bool:
    """Whether a turn that is an event of its own was told in full: "pivot 1/4 L rocking chair R"."""
    turn = act.turn
    if act.verb != "turn" or turn is None or turn.own != "pivot":
        return False
    return turn.eighths is not None and turn.way is not None


def _is_next_step(t: Telling, i: int) -> bool:
    """Whether a verb opens the next act without a stop before it: "sweeping L to front cross L over R"."""
    token, following = t.at(i), t.at(i + 1)
    steps = token.word is Word.VERB and not token.ing and token.value in _STEPS
    return steps and following.word in (Word.SIDE, Word.FOOT, Word.PLACE)


def take_figure(t: Telling, i: int, token: Token) -> int:
    """A figure's name; a turn, a foot or a place told before it belong to it."""
    if _styles_turn(t, i, token):
        return _take_with(t, i, token)
    act = t.act
    if (act.verb == "step" or _is_placed_foot(act)) and not act.figures and _by_hips(t, i, token):
        act.verb = "step"
        return take_words(t, i)
    led_in = act.ing and act.verb in ("step", "cross", "close")  # "stepping into a coaster"
    if act.verb and act.verb != "turn" and not led_in:
        if not _is_mere_step(act):
            t.flush()
    elif act.figures or act.part or _has_turned(act):
        t.flush()
    elif act.turn is not None and t.led_into(i):
        act.turn.ahead = True
    t.act.verb = ""
    t.act.figures = token.value
    t.touch(token)
    if _is_only_named(t, i):
        t.act.label = True
        t.flush()
    return i + 1


def _is_only_named(t: Telling, i: int) -> bool:
    """Whether a name stands for steps told beside it: "…, that is a jazz box", "finish the shuffle R"."""
    said: list[str] = []
    while t.word(i - 1) in (Word.IGNORE, Word.RELATION):
        i -= 1
        said.insert(0, t.at(i).text)
    return bool(said) and _NAMING.search(" ".join(said)) is not None


def _is_mere_step(act: Act) -> bool:
    """Whether a step was told and nothing of it: "step a shuffle" is a shuffle."""
    return act.verb == "step" and act.foot is None and not act.place and not act.turn
