"""The small words: what joins acts, repeats them, holds, says who bears the weight, or says nothing."""

from __future__ import annotations

from dataclasses import replace

from wallwise.dance.model import Foot
from wallwise.glossary.lexicon import Word
from wallwise.glossary.load import words
from wallwise.reading.clauses.act import Act
from wallwise.reading.clauses.again import take_told_again
from wallwise.reading.clauses.stops import STOPS
from wallwise.reading.clauses.telling import EDGE, Telling
from wallwise.reading.clauses.verbs import take_words
from wallwise.reading.tokens import Token

# Places that "and" makes one of: "forward and out", "back and across".
_FIRST_PLACES = ("forward", "back", "out", "in", "diagonal")
_SECOND_PLACES = (*_FIRST_PLACES, "across")
_MORE = ("again", "more", "time")  # "and again", "once more": said before a step they repeat nothing
_GOES = ("goes", "comes", "moves", "travels")
_GRIND = ("grind", "grinding")
_LETS, _ENDS = words()["alongside"]["lets"], words()["alongside"]["ends"]
_SIDE_OR_FOOT = (Word.SIDE, Word.FOOT)


def take_and(t: Telling, i: int, token: Token) -> int:
    """A word that joins two acts, or two words of one; "&" may be a count of its own."""
    if _joins_words(t, i):
        return i + 1
    t.flush(joined=True)
    after_turn = bool(t.acts) and t.acts[-1].verb == "turn"
    if token.text == "&" and (t.at(i + 1) is EDGE or not after_turn):
        t.acts.append(Act(verb="and", start=token.start, end=token.end))
    return i + 1


def _joins_words(t: Telling, i: int) -> bool:
    """Whether "and" stands inside an act: "forward and out", "right and left", "and weight on L"."""
    before, following = t.at(i - 1), t.at(i + 1)
    if following.word is Word.PLACE:
        opens_step = t.word(i + 2) in _SIDE_OR_FOOT and t.word(i + 3) is not Word.PLACE
        places = before.value in _FIRST_PLACES and following.value in _SECOND_PLACES
        return before.word is Word.PLACE and places and not opens_step
    if following.word in _SIDE_OR_FOOT:
        opens_act = t.solid(i + 2) in (Word.PLACE, Word.PART, Word.VERB, Word.FIGURE)
        return before.word in _SIDE_OR_FOOT and not opens_act
    return following.word in (Word.WEIGHT, "clock")


def take_then(t: Telling, i: int, _token: Token) -> int:
    """The act before is complete, but not in "the vine then goes to the left"."""
    if not t.act.empty and not (t.act.figures and t.at(i + 1).text.startswith(_GOES)):
        t.flush()
    return i + 1


def take_hold(t: Telling, i: int, token: Token) -> int:
    """A count without a step, with the word it was told by."""
    if not t.act.empty:
        t.flush()
    t.touch(token)
    t.act.verb = "hold"
    t.act.also.append(token.text)
    return i + 1


def take_again(t: Telling, i: int, token: Token) -> int:
    """How often: of the open act, the one before, or the whole bracket just closed."""
    if token.text.endswith(_MORE) and not t.acts and _only_names(t.act):
        t.act.verb = t.act.same = "same"  # "do the V once more"
        t.act.unknown = []
        t.touch(token)
    elif token.text.endswith(_MORE) and _says_like_before(t, i, token):
        if token.text.startswith("and"):
            t.flush(joined=True)
    elif t.act.start >= 0 or not t.acts or (token.text[0].isdigit() and _goes_on(t, i + 1)):
        t.touch(token)
        t.act.times = token.value
    elif t.word(i - 1) in (")", "]") and len(t.acts) - t.opened > 1:
        told = t.acts[t.opened :]  # "(step R, pivot 1/4 left) x2"
        for act in told:
            act.aside = False
        for _ in range(token.value - 1):
            t.acts += [replace(act, fresh=True) for act in told]
    else:
        t.acts[-1].times = token.value
    return i + 1


def _only_names(act: Act) -> bool:
    """Whether nothing was told but a name, which nobody knows: of something told before."""
    return act.empty and len(act.unknown) == 1


def _says_like_before(t: Telling, i: int, token: Token) -> bool:
    """Whether "again" only likens a step to one before: "and once more step R", "do it once more"."""
    return _goes_on(t, i + 1) or (not t.acts and not token.text.startswith("and") and not t.fresh)


def _goes_on(t: Telling, i: int) -> bool:
    """Whether a word of the same clause stands there."""
    return t.at(i) is not EDGE and t.word(i) not in (*STOPS, ")", "]", "(", "clock", "cell")


def take_same(t: Telling, i: int, token: Token) -> int:
    """Something told before comes again: as it was, on the other foot, in reverse."""
    act = t.act
    if act.same:
        if token.value != "same":
            act.same = token.value
        t.touch(token)
        return i + 1
    if token.text == "same" and t.word(i + 1) in (Word.IGNORE, Word.VERB, Word.FIGURE):
        return i + 1  # "on the same foot", "the same step"
    if act.figures and t.at(i + 1).text == "way":
        return i + 2  # "then vine to the left in the same way"
    if token.value in ("other", "opposite") and not act.empty and act.verb != "same":
        return i + 1  # "the other foot" of an act under way
    if not act.empty:
        t.flush()
    t.touch(token)
    t.act.verb = "same"
    t.act.same = token.value
    return take_told_again(t, i + 1)


def take_weight(t: Telling, i: int, token: Token) -> int:
    """Who bears the weight after the act: "weight on L", "taking weight", "no weight"."""
    if token.value == "moves":
        # "and change weight to L": an event of its own where a count waits for it
        t.flush(joined=True)
        _recover(t, token, "change weight")
        return i + 1
    if (after := _taken_by_both(t, i)) is not None:
        return after
    begins = t.fresh and t.act.start < 0 and t.acts
    if begins and t.word(i + 1) is Word.RELATION and t.at(i + 2).text == "it":
        t.acts[-1].weight, t.acts[-1].weight_at = "take", (token.start, t.at(i + 2).end)
        return i + 3
    leads_on = t.word(i + 1) in (*_SIDE_OR_FOOT, Word.RELATION, Word.PLACE)
    if token.value == "weight" and begins and leads_on:
        # "- weight back on R": told like a step of its own, and where a count waits for it, it is one
        _recover(t, token, "weight")
        return i + 1
    j = i + 1
    while _leads_to_bearer(t.at(j)):
        j += 1
    value: Foot | str = "take" if token.value == "weight" else "none"
    end, bearer = token.end, t.at(j)
    if bearer.word in (*_SIDE_OR_FOOT, Word.BOTH):
        value, end = Foot.BOTH if bearer.word is Word.BOTH else bearer.value, bearer.end
        j += 1
    target = t.acts[-1] if t.act.empty and t.acts else t.act
    if target is t.act:
        t.touch(token)
    target.weight, target.weight_at = value, (token.start, end)
    return j


def _taken_by_both(t: Telling, i: int) -> int | None:
    """Where "weight on both stomps" ends, which says that the last two acts take weight; else None."""
    j = i + 1
    while _leads_to_bearer(t.at(j)):
        j += 1
    told = [*t.acts, t.act][-3:] if t.act.verb else t.acts[-2:]
    last = [act for act in told if act.verb][-2:]
    named = t.at(j + 1).word is Word.VERB and all(act.verb == t.at(j + 1).value for act in last)
    if t.word(j) is not Word.BOTH or not named or len(last) < 2:
        return None
    for act in last:
        act.weight, act.weight_at = "take", (t.at(i).start, t.at(j + 1).end)
    return j + 2


def _recover(t: Telling, token: Token, told: str) -> None:
    t.act.verb = "recover"
    t.touch(token)
    t.act.also.append(told)


def _leads_to_bearer(token: Token) -> bool:
    """Whether the token may stand between "weight" and the foot that bears it."""
    return token.word in (Word.RELATION, Word.IGNORE, Word.WEIGHT, "-", "=") or (
        token.word is Word.PLACE and token.text in ("forward", "back", "over")
    )


def take_ignored(t: Telling, i: int, token: Token) -> int:
    """Of the words that say nothing, some do: "long" of a step, "it" of a foot, "grind" of a heel."""
    act = t.act
    if not act.empty and token.text in _LETS:
        return take_words(t, i)  # "spiral R, letting R hook across L": the spiral's own
    if t.acts and t.acts[-1].figures and act.empty and _tells_how_it_ends(t, i):
        t.act = Act(label=True)
        return take_words(t, i)
    if token.text.startswith(_GRIND):
        _grind(t)
        return _end_of_toes(t, i + 1)
    if token.text in ("long", "big", "large") and t.word(i + 1) is not Word.IGNORE:
        act.long = True
    if token.text == "it" and act.verb and act.foot is None and t.acts:
        act.foot, act.foot_at = t.acts[-1].foot, None
    return i + 1


def _tells_how_it_ends(t: Telling, i: int) -> bool:
    """Whether it says where a figure's last step is, which is no step more: "…, finish with R back"."""
    ends = t.at(i).text in _ENDS and t.at(i + 1).text == "with"
    placed = t.word(i + 2) in _SIDE_OR_FOOT and t.word(i + 3) is Word.PLACE
    return ends and placed and not _goes_on(t, i + 4)


def _end_of_toes(t: Telling, i: int) -> int:
    """Where it ends to say how the toes go round while a heel is ground: "grind toes left to right"."""
    if t.at(i).text not in ("toe", "toes"):
        return i
    while t.word(i) in (Word.BOTH, Word.PART, Word.SIDE, Word.RELATION):
        i += 1
    return i


def _grind(t: Telling) -> None:
    """A heel that is ground bears the weight: "R heel forward, grind heel 1/4 right"."""
    last = t.act if t.act.part else t.acts[-1] if t.acts else t.act
    if last.part == "heel" and last.weight is None and last.foot is not None:
        last.weight = "take"
