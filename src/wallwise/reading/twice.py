"""What "x2", "twice" and "repeat" behind a few acts bring back: the last act, or several of them.

"4 x 1/4 pivot left: step R, turn L" has all the steps behind its colon danced so often.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from wallwise.dance.model import Foot
from wallwise.reading.clauses import Act
from wallwise.reading.moves import Item
from wallwise.reading.ways import items_of

_SEVERAL = 0.15  # more than the last act comes again
_UNTOLD_FOOT = 0.3  # "repeat" alone, and the other foot is free
_LONGEST = 8  # acts that come again


def told_again(items: list[Item]) -> Iterator[tuple[float, list[Item]]]:
    """The items as they stand, and with several acts danced as often as the last says, with costs."""
    yield 0.0, items
    acts = [item.act for item in items]
    for i, act in enumerate(acts[:-1]):
        if act.label and act.times > 1:
            told = [_sized(step, act) for step in acts[i + 1 :]]
            yield _SEVERAL, items_of([*acts[:i], *(told * act.times)])
    for i, act in enumerate(acts):
        repeats = act.verb == "same" and act.counts is None and act.turn is None
        if not repeats and act.times < 2:
            continue
        once = acts[:i] if repeats else [*acts[:i], replace(act, times=1)]
        for first in range(max(0, i - _LONGEST), i):
            block = once[first:]
            if _begins(block[0]):
                for more, extra in _once_more(block, act) if repeats else ((block * (act.times - 1), 0.0),):
                    yield _SEVERAL + extra, items_of([*once, *more, *acts[i + 1 :]])


def _sized(step: Act, name: Act) -> Act:
    """A step told behind "4 x 1/4 pivot left:", its turn of the size and the way that this tells."""
    turn, named = step.turn, name.turn
    if turn is None or named is None:
        return step
    sized = replace(turn, eighths=turn.eighths or named.eighths, way=turn.way or named.way)
    return replace(step, turn=sized)


def _begins(act: Act) -> bool:
    return act.verb not in ("and", "hold") and not act.label and not act.aside


def _once_more(block: list[Act], same: Act) -> list[tuple[list[Act], float]]:
    """The acts as "repeat", "repeat on the other foot", "repeat to left" bring them back, with costs."""
    lead, led = same.foot or same.toward, block[0].foot or block[0].toward
    mirrored = [_mirrored(act) for act in block]
    if lead is None and same.same == "same":
        return [(block, 0.0), (mirrored, _UNTOLD_FOOT)]
    return [(block if lead is not None and lead is led else mirrored, 0.0)]


def _mirrored(act: Act) -> Act:
    """The act on the other foot and to the other side; what it claimed to face is dropped."""
    turn = act.turn
    if turn is not None and turn.way is not None:
        turn = replace(turn, way=-turn.way)
    return replace(
        act, turn=turn, foot=act.foot and act.foot.other, feet=tuple(foot.other for foot in act.feet),
        against=act.against and act.against.other, toward=act.toward and act.toward.other,
        weight=act.weight.other if isinstance(act.weight, Foot) else act.weight, faces=None,
    )  # fmt: skip
