"""What a verb may mean the foot to do, from the verb, the part of the foot and the weight told with it."""

from __future__ import annotations

from wallwise.dance.model import Foot, Kind, Place
from wallwise.reading.clauses import Act
from wallwise.reading.moves import Kinds, only

TWO_FOOTED = frozenset({"bump", "swivel", "split", "bounce", "roll", "pop"})
GESTURES = frozenset(
    {
        "touch", "point", "dig", "kick", "flick", "hook", "hitch", "brush", "scuff", "sweep", "drag",
        "stomp_up", "fan",
    }
)  # fmt: skip

_SURE = {
    "step": Kind.STEP, "rock": Kind.ROCK, "recover": Kind.RECOVER, "cross": Kind.STEP, "close": Kind.STEP,
    "lock": Kind.STEP, "ball": Kind.BALL, "stomp_up": Kind.STOMP_UP, "sway": Kind.SWAY, "drop": Kind.DROP,
    "touch": Kind.TOUCH, "point": Kind.POINT, "dig": Kind.HEEL, "kick": Kind.KICK, "flick": Kind.FLICK,
    "hook": Kind.HOOK, "hitch": Kind.HITCH, "brush": Kind.BRUSH, "scuff": Kind.SCUFF, "sweep": Kind.SWEEP,
    "jump": Kind.JUMP, "bump": Kind.BUMP, "swivel": Kind.SWIVEL, "split": Kind.SPLIT,
    "bounce": Kind.BOUNCE, "roll": Kind.ROLL, "fan": Kind.FAN, "pop": Kind.BOUNCE,
}  # fmt: skip
_KINDS: dict[str, Kinds] = {verb: only(kind) for verb, kind in _SURE.items()} | {
    "stomp": ((Kind.STOMP, 0.0), (Kind.STOMP_UP, 1.2)),
    "drag": ((Kind.DRAG, 0.0), (Kind.STEP, 0.6)),
    "hop": ((Kind.HOP, 0.0), (Kind.STEP, 1.0)),
}
# The likelier first; of a heel or toe that is put somewhere, the other.
_ON_HEEL: Kinds = ((Kind.STEP, 0.0), (Kind.HEEL, 0.5))
_ON_TOE: Kinds = ((Kind.STEP, 0.0), (Kind.TOE, 0.5))
_BY_PART: dict[tuple[str, str], Kinds] = {
    ("touch", "heel"): only(Kind.HEEL),
    ("step", "heel"): _ON_HEEL,
    ("step", "toe"): _ON_TOE,
    ("step", "ball"): ((Kind.BALL, 0.0), (Kind.TOE, 0.5)),
    ("cross", "heel"): _ON_HEEL,
    ("cross", "toe"): _ON_TOE,
    ("", "heel"): only(Kind.HEEL),
    ("", "toe"): only(Kind.TOE),
    ("", "knee"): only(Kind.HITCH),
    ("", "ball"): only(Kind.BALL),
}
# Said of a heel, a toe or a knee, these move that part of one foot.
_FANNED = frozenset({"swivel", "fan", "pop", "roll"})
# Verbs whose weight the sheet may tell otherwise than usual: "touch R (weight on R)".
_TAKING = frozenset(
    {"", "touch", "point", "dig", "close", "drag", "hook", "cross", "stomp", "brush", "sweep"}
)
_REFUSING = frozenset({"", "step", "close", "drag", "cross", "stomp", "brush", "sweep"})
_ROUND = ("touch", "point", "brush", "dig")  # gestures that go from place to place
_AWAY = ("forward", "back", "side", "across")
_STEPS_INSTEAD = 0.3
_PLACES = {place.value: place for place in Place}


def kinds_of(act: Act, before: Act | None) -> Kinds:
    """The kinds the act may mean, the likeliest first; `before` is the act told before it."""
    told = _by_weight(act) or _by_part(act)
    if told:
        return told
    if act.verb == "drag" and act.place == "side" and act.said_place:
        return ((Kind.STEP, 0.0), (Kind.DRAG, 0.8))  # "slide R to right side" is a long step
    if act.verb:
        return _KINDS[act.verb]
    if act.both:
        return ((Kind.BOUNCE, 0.5),)
    if before is not None and before.verb in _ROUND and act.place in _AWAY and before.place in _AWAY:
        return (*_KINDS[before.verb], (Kind.STEP, _STEPS_INSTEAD))  # "brush R forward, back, forward"
    if before is not None and _is_gesture(before):
        # "point R side, beside": a close as a rule, now and then another touch of the same foot
        return ((Kind.STEP, 0.0), (Kind.TOUCH, 0.8))
    return only(Kind.STEP)


def _by_weight(act: Act) -> Kinds:
    """What the weight told makes of the verb; empty where it makes nothing else of it."""
    if act.weight == "take" and act.verb in _TAKING:
        return only(Kind.STOMP if act.verb == "stomp" else Kind.STEP)
    if act.weight == "none" and act.verb in _REFUSING:
        return only(Kind.STOMP_UP if act.verb == "stomp" else Kind.TOUCH)
    return ()


def _by_part(act: Act) -> Kinds:
    """What the part of the foot told makes of the verb; empty where it makes nothing else of it."""
    if act.verb in _FANNED and act.part and not act.both:
        return only(Kind.FAN)
    kinds = _BY_PART.get((act.verb, act.part), ())
    if act.put and act.verb == "step" and act.part in ("heel", "toe"):
        (step, _), (touch, dearer) = kinds
        return ((touch, 0.0), (step, dearer))
    return kinds


def _is_gesture(act: Act) -> bool:
    return act.verb in GESTURES or (act.part in ("heel", "toe") and not act.verb)


def moves_both(act: Act) -> bool:
    """Whether an act moves both feet at once and nothing else."""
    if act.figures:
        return all(s.foot is Foot.BOTH for s in act.figures[0].ways[0].steps)
    return act.verb in TWO_FOOTED or act.both


def place_named(name: str) -> Place | None:
    """The place of that name; None for no name and for one that is no place."""
    return _PLACES.get(name)


def place_of(act: Act) -> Place:
    """Where the act says the foot goes; a diagonal told beside a direction is taken in."""
    if act.diagonal and act.place in ("forward", "", "side", "forward diagonal"):
        return Place.FORWARD_DIAGONAL
    if act.diagonal and act.place == "back":
        return Place.BACK_DIAGONAL
    return place_named(act.place) or Place.UNSAID
