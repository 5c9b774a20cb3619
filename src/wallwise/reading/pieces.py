"""A piece of text by itself: what it says, and the ways to lay that on beats.

All of it is remembered, since a sheet that is read to try a mend differs by a word from the
one read before, and since verses repeat.
"""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction
from functools import lru_cache
from math import ceil

from wallwise.reading.clauses import Act, read_acts
from wallwise.reading.layout import Layout, on_slots, on_time
from wallwise.reading.moves import Item
from wallwise.reading.solve import Goal, Solution, solve
from wallwise.reading.stepwords import tokens_of
from wallwise.reading.ways import items_of, led_by

LONGEST_PIECE = 1_500  # characters under one count mark; a paragraph of steps has a few hundred
_REMEMBERED = 8192  # pieces: a hundred sheets or so
_MOST_LAYOUTS = 8
_TOO_DEAR = 2.2  # above the cheapest layout
_MANY = 32  # things told, whatever the mark counts
_DENSEST = 6  # things told of one beat, stops and asides among them
_UNFIT = 1.0  # what costs more on the beats written out leaves some of them to the figures
_NO_READING = 4.0  # what costs more is not what the text says


def items_in(text: str, led: str = "") -> tuple[tuple[Item, ...], tuple[Act, ...]]:
    """The items of a piece of text, and the acts they were made from.

    `led` are the words before it: where it leaves its verb to them, it takes that of these.
    """
    return _items_in(text, led)  # so that the cache knows a piece by both arguments


@lru_cache(maxsize=_REMEMBERED)
def _items_in(text: str, led: str) -> tuple[tuple[Item, ...], tuple[Act, ...]]:
    acts = read_acts(tokens_of(text[:LONGEST_PIECE]))
    before = led_by(items_in(led)[0], acts) if led else None
    return tuple(items_of(acts, before)), tuple(acts)


def words_led(text: str, before: str) -> str:
    """The words `before` a piece of text if it leaves its verb to them, else nothing."""
    acts = items_in(text)[1]
    first = next((act for act in acts if act.verb != "and"), None)
    if first is None or first.verb or first.figures:
        return ""
    return before if led_by(items_in(before)[0], acts) is not None else ""


@lru_cache(maxsize=_REMEMBERED)
def on_beats(text: str, beats: tuple[Fraction, ...], led: str = "") -> tuple[Layout, ...]:
    """The ways to dance a piece of text on the beats that its mark writes out; `led`: see `items_in`."""
    items = list(items_in(text, led)[0])
    if len(items) > max(_MANY, _DENSEST * len(beats)):
        return ()  # nobody dances so much in so little time
    layouts = on_slots(items, beats)
    whole = all(beat.denominator == 1 for beat in beats)
    again = any(item.act.times > 1 for item in items)  # a step, or all that stands before it
    if whole and len(beats) > 1 and (again or not layouts or layouts[0].cost > 0.1):
        # the mark says which counts there are: no quick step between them is left to the body
        counted = [item for item in items if item.act.verb != "and"]
        layouts = layouts + on_time(counted, beats[0], Fraction(len(beats)))
    elif not whole and (not layouts or layouts[0].cost > _UNFIT):
        span = Fraction(ceil(beats[-1] + Fraction(1, 2)) - beats[0] // 1)
        layouts = layouts + [lay for lay in on_time(items, beats[0], span) if _dances_shares(lay, beats)]
    return tuple(layouts)


def _dances_shares(layout: Layout, beats: tuple[Fraction, ...]) -> bool:
    """Whether every beat that a mark divides is divided so: figures may divide others of themselves."""
    danced = {at for at, _ in layout.moves}
    return all(beat in danced for beat in beats if beat.denominator > 1)


@lru_cache(maxsize=_REMEMBERED)
def in_time(text: str, start: Fraction, counts: Fraction) -> tuple[Layout, ...]:
    """The ways to dance a piece of text without a mark so that it fills `counts`."""
    return tuple(on_time(list(items_in(text)[0]), start, counts))


def few(layouts: Iterable[Layout]) -> list[Layout]:
    """The layouts worth searching, cheapest first: no two alike, none much dearer than the cheapest."""
    ranked = sorted(layouts, key=lambda lay: lay.cost)
    kept: list[Layout] = []
    seen = set()
    for layout in ranked:
        if layout.cost > ranked[0].cost + _TOO_DEAR or len(kept) == _MOST_LAYOUTS:
            break
        key = tuple((at, m.foot, m.kinds, m.turns, m.faces, m.weight) for at, m in layout.moves)
        if key not in seen:
            seen.add(key)
            kept.append(layout)
    return kept


def read_alone(text: str, *, start: Fraction, counts: Fraction, goal: Goal) -> Solution | None:
    """A piece of text read by itself so that it fills `counts`, or None where it does not by far."""
    layouts = few(in_time(text, start, counts))
    if not layouts or not layouts[0].moves or layouts[0].cost > _NO_READING:
        return None
    return solve([layouts], goal)
