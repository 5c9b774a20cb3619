"""Items without a count of their own: what it costs to believe that, and what they leave behind."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from typing import Any

from wallwise.dance.model import Foot
from wallwise.glossary.load import words
from wallwise.reading.clauses import Act
from wallwise.reading.moves import Item, Move

Placed = tuple[Fraction, Move]

# Verbs whose -ing form goes with the step before: "step R, sweeping L".
_ALONG = frozenset(
    {
        "sweep", "drag", "hitch", "flick", "kick", "hook", "brush", "roll", "bump", "swivel", "bounce",
        "lock", "pop", "touch", "point",
    }
)  # fmt: skip
# What goes without a count now and then: its cost after a stop, and joined by "and".
_HELD = 2.2  # in a line that marks no counts: a count more than it has room for
_OFTEN = {"hold": (0.8, 0.5), "sweep": (0.9, 0.9), "drag": (0.9, 0.9), "sway": (3.0, 0.9)} | dict.fromkeys(
    ("hitch", "flick", "bump", "roll", "swivel", "pop", "bounce", "hook", "kick", "lock", "brush"),
    (1.4, 0.9),
)
_SHOWN = ("sweep", "drag", "hitch", "flick", "bump", "roll")  # noted on the step they go with


def silent_cost(item: Item, *, slots: bool) -> float | None:
    """What it costs to let the item have no count of its own; None: it must have one."""
    act = item.act
    if not item.options:
        return 0.4 if act.unknown else 0.05
    if act.verb == "and":
        return 0.0 if slots else None
    after_stop, joined = _OFTEN.get(act.verb, (0.0, 0.0))
    reasons = (
        (act.verb == "recover" and bool(act.also), 0.1),  # "weight on L"
        (act.label, 0.15),
        (act.closed, 0.6),
        (act.ing and act.verb in _ALONG, 0.2),
        (act.aside, 0.8 if act.verb == "turn" else 0.3),
        (not slots and not act.joined and _is_wait(act), _HELD),
        (act.verb in _OFTEN, joined if act.joined else after_stop),
        # a figure's name often stands beside the steps that it means, or says how a step is done
        (bool(act.figures) and act.turn is None, 1.9 if act.fresh else 1.2),
        (bool(act.unknown), 2.5),
    )
    return next((cost for holds, cost in reasons if holds), 3.0)


def _is_wait(act: Act) -> bool:
    """Whether it is a count of waiting, and not a clap, which goes with a step as well."""
    return act.verb == "hold" and set(act.also[:1]) <= set(words()["hold"]["hold"])


def must_count(act: Act) -> bool:
    """Whether the act is no name, aside or filling: one expects a count for it."""
    return not (act.label or act.aside or act.figures or act.verb in ("and", "hold"))


def note(moves: tuple[Placed, ...], item: Item) -> tuple[Placed, ...]:
    """The moves, with what an item without a count of its own leaves on the last of them."""
    if not moves:
        return moves
    act = item.act
    at, last = moves[-1]
    changes: dict[str, Any] = {}
    if words := _words_left(act):
        changes["also"] = (*last.also, *words)
    if act.faces is not None and last.faces is None:
        changes |= {"faces": act.faces, "faces_at": act.faces_at}
    if last.weight is None:
        if isinstance(act.weight, Foot):
            changes |= {"weight": act.weight, "weight_at": act.weight_at}
        elif act.verb == "recover" and act.also and act.foot is not None:
            changes |= {"weight": act.foot, "weight_at": act.foot_at}
    return (*moves[:-1], (at, replace(last, **changes))) if changes else moves


def _words_left(act: Act) -> list[str]:
    if act.verb == "hold":
        return act.also
    if act.verb in _SHOWN:
        return [f"{act.verb} {act.foot.value}" if act.foot else act.verb]
    return []
