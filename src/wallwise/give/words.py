"""The dance in plain words, as a teacher would say it while showing it.

Written from the steps alone: how the sheet worded them does not matter here.
"""

from __future__ import annotations

from collections.abc import Callable

from wallwise.dance.clock import turn_name
from wallwise.dance.model import Dance, Foot, Kind, Place, Step
from wallwise.dance.walls import back_at_front, unroll

_FOOT = {Foot.LEFT: "left", Foot.RIGHT: "right", Foot.BOTH: "both"}

_VERB = {
    Kind.STEP: "Step {foot} foot",
    Kind.ROCK: "Rock {foot} foot",
    Kind.BALL: "Step on the ball of the {foot} foot",
    Kind.STOMP: "Stomp {foot} foot",
    Kind.DROP: "Lower {foot} foot, taking the weight",
    Kind.JUMP: "Jump, {foot} foot",
    Kind.TOUCH: "Touch {foot} foot",
    Kind.POINT: "Point {foot} toe",
    Kind.HEEL: "Touch {foot} heel",
    Kind.TOE: "Touch {foot} toe",
    Kind.KICK: "Kick {foot} foot",
    Kind.FLICK: "Flick {foot} foot",
    Kind.HOOK: "Hook {foot} foot",
    Kind.HITCH: "Hitch {foot} knee",
    Kind.BRUSH: "Brush {foot} foot",
    Kind.SCUFF: "Scuff {foot} heel",
    Kind.STOMP_UP: "Stomp {foot} foot without weight",
    Kind.SWEEP: "Sweep {foot} foot",
    Kind.DRAG: "Drag {foot} foot",
    Kind.FAN: "Fan {foot} foot",
    Kind.HOP: "Hop on {foot} foot",
}
_VERB_BOTH = {
    Kind.JUMP: "Jump with both feet",
    Kind.SWIVEL: "Swivel both feet",
    Kind.SPLIT: "Split both feet",
    Kind.BOUNCE: "Bounce both heels",
    Kind.BUMP: "Bump hips",
    Kind.ROLL: "Roll hips",
    Kind.SWAY: "Sway",
    Kind.STOMP: "Stomp both feet",
}
# Kinds of the hips and heels that lead to a side rather than to a place on the floor.
_SIDEWAYS = {Kind.SWAY: "Sway", Kind.BUMP: "Bump hips", Kind.ROLL: "Roll hips", Kind.SWIVEL: "Swivel heels"}


def action(step: Step) -> str:
    """What the dancer does, in one sentence without a full stop.

    >>> from fractions import Fraction
    >>> action(Step(Fraction(1), Foot.RIGHT, Kind.STEP, Place.SIDE))
    'Step right foot to the side'
    >>> action(Step(Fraction(2), Foot.LEFT, Kind.TURN, turn=Fraction(-1, 2)))
    'Turn 1/2 left, weight on left'
    """
    said = _hold(step) if step.foot is Foot.NONE else _plain(step)
    if step.turn and step.foot is not Foot.NONE and step.kind not in (Kind.TURN, Kind.SPIN):
        said = f"Turn {turn_name(step.turn)}: {said[0].lower()}{said[1:]}"
    if step.ends_on in (Foot.LEFT, Foot.RIGHT) and step.foot is Foot.BOTH:
        said += f", weight ends on {_FOOT[step.ends_on]}"
    return said + "".join(f", {_also(words)}" for words in step.also)


def front_words(dance: Dance) -> str:
    """After which walls the room faces the front again, in a sentence.

    >>> front_words(Dance("Empty", ()))
    'The room does not come back to the front.'
    """
    last = max((wall.number for wall in unroll(dance)), default=0)
    fronts: list[str] = []
    wall = back_at_front(dance)
    while wall is not None and wall <= last:
        fronts.append(str(wall))
        wall = back_at_front(dance, after=wall)
    if not fronts:
        return "The room does not come back to the front."
    *early, latest = fronts
    walls = f"walls {', '.join(early)} and {latest}" if early else f"wall {latest}"
    again = "" if latest == str(last) else ", and not again"
    return f"The room is back at the front after {walls}{again}."


def weight_words(weight: Foot) -> str:
    """The foot that bears the weight, in a word: ``"left"``, ``"right"``, ``"both"``."""
    return _FOOT.get(weight, "both")


def _plain(step: Step) -> str:
    if maker := _MAKERS.get(step.kind):
        return maker(step)
    if step.kind in _SIDEWAYS and (step.foot is not Foot.BOTH or step.toward):
        side = step.toward or step.foot
        if side in (Foot.LEFT, Foot.RIGHT):
            return f"{_SIDEWAYS[step.kind]} to the {_FOOT[side]}"
    if step.foot is Foot.BOTH and step.kind in _VERB_BOTH:
        return _with_place(_VERB_BOTH[step.kind], step)
    verb = _VERB.get(step.kind, f"{step.kind.value.capitalize()} {{foot}} foot")
    said = verb.format(foot=_FOOT[step.foot])
    if step.foot is Foot.BOTH:
        said = said.replace("both foot", "both feet")
    if step.long:
        said = f"Long {said[0].lower()}{said[1:]}"
    return _with_place(said, step)


def _recover(step: Step) -> str:
    return f"Recover onto {_feet(step)}"


def _turn(step: Step) -> str:
    return f"Turn {turn_name(step.turn)}, weight on {_FOOT[step.foot]}"


def _spin(step: Step) -> str:
    return f"Spin {turn_name(step.turn)} on {_feet(step)}"


def _hold(step: Step) -> str:
    return f"Hold, the turn goes on {turn_name(step.turn)}" if step.turn else "Hold"


def _feet(step: Step) -> str:
    return "both feet" if step.foot is Foot.BOTH else f"{_FOOT[step.foot]} foot"


_MAKERS: dict[Kind, Callable[[Step], str]] = {
    Kind.RECOVER: _recover,
    Kind.TURN: _turn,
    Kind.SPIN: _spin,
}


def _with_place(said: str, step: Step) -> str:
    where = _where(step)
    if step.kind is Kind.DROP or not where:
        return said
    return f"{said} {where}"


def _where(step: Step) -> str:
    """The place in words; the standing foot is named where the place is told by it."""
    standing = f"the {_FOOT[step.foot.other]}" if step.foot in (Foot.LEFT, Foot.RIGHT) else "each other"
    side = _FOOT.get(step.toward or step.foot, "")
    across_body = step.toward is not None and step.toward is not step.foot
    return {
        Place.IN_PLACE: "in place",
        Place.FORWARD: "forward",
        Place.BACK: "back",
        Place.SIDE: f"to the {side}" if across_body else "to the side",
        Place.BESIDE: f"beside {standing}",
        Place.ACROSS: f"across {standing}",
        Place.BEHIND: f"behind {standing}",
        Place.LOCK_BEHIND: f"locked behind {standing}",
        Place.LOCK_FRONT: f"locked in front of {standing}",
        Place.FORWARD_DIAGONAL: f"forward to the {side} diagonal".replace("  ", " "),
        Place.BACK_DIAGONAL: f"back to the {side} diagonal".replace("  ", " "),
        Place.UNSAID: "",
    }[step.place]


def _also(words: str) -> str:
    """``"sweep L"`` as ``"sweep left"``."""
    letters = {"L": "left", "R": "right", "l": "left", "r": "right"}
    return " ".join(letters.get(word, word) for word in words.split(" "))
