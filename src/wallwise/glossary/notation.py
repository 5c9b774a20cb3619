"""The restricted line notation: one event a line, nothing left unsaid.

    1 step R side
    2 turn L left 1/2
    & ball R beside
    3 swivel both toward R ends L
    4 hold

A line is a count, a kind, a foot (``R``, ``L``, ``both``; none for a hold), then in any
order a place, ``left`` or ``right`` with a fraction of a turn, ``toward`` and ``ends``
with a foot, ``long``.  The kinds and places are the values of `Kind` and `Place`.  A
letter alone (``&``, ``e``, ``a``) belongs to the number before it; before any number it
belongs to beat 0, so that ``& ball R`` / ``1 step L`` is a ball change into beat 1.
"""

from collections.abc import Iterable
from fractions import Fraction
from typing import Any

from wallwise.dance.counts import SHARES, full_label
from wallwise.dance.model import Foot, Kind, Place, Step

_KINDS = sorted(Kind, key=lambda kind: -len(kind))
_PLACES = sorted((p for p in Place if p is not Place.UNSAID), key=lambda place: -len(place))
_FEET = {"R": Foot.RIGHT, "L": Foot.LEFT, "both": Foot.BOTH}


def parse_steps(lines: Iterable[str]) -> tuple[Step, ...]:
    """The steps that the lines write; ValueError names the first line that is not notation.

    >>> [s.turn for s in parse_steps(["1 step R forward", "2 turn L left 1/2"])]
    [Fraction(0, 1), Fraction(-1, 2)]
    """
    steps: list[Step] = []
    beat = 0
    for line in lines:
        count, _, rest = line.strip().partition(" ")
        try:
            beat, share = _parse_count(count, beat)
            steps.append(_parse_action(beat + share, rest.strip()))
        except (KeyError, ValueError, IndexError, ZeroDivisionError) as problem:
            raise ValueError(f"not a step in notation: {line!r} ({problem})") from problem
    return tuple(steps)


def _parse_count(count: str, beat: int) -> tuple[int, Fraction]:
    """The beat and the share of it; a letter alone belongs to the `beat` before it."""
    number = count.rstrip("".join(SHARES))
    letter = count[len(number) :]
    if number and not (number.isascii() and number.isdigit()):
        raise ValueError(f"no such count {count!r}")
    return int(number) if number else beat, SHARES[letter] if letter else Fraction(0)


def _parse_action(at: Fraction, text: str) -> Step:
    kind = next((k for k in _KINDS if (text + " ").startswith(k + " ")), None)
    if kind is None:
        raise ValueError("no such kind")
    words = text[len(kind) :].split()
    if kind is Kind.HOLD:
        if words:
            raise ValueError("nothing follows a hold")
        return Step(at, Foot.NONE, kind)
    if not words:
        raise ValueError("no foot")
    return Step(at, _FEET[words.pop(0)], kind, **_parse_details(words))


def _parse_details(words: list[str]) -> dict[str, Any]:
    """The fields of a step that the words after the foot say, in any order, each once."""
    said: dict[str, Any] = {}
    while words:
        field, value = _parse_detail(words)
        if field in said:
            raise ValueError(f"{field} said twice")
        said[field] = value
    return said


def _parse_detail(words: list[str]) -> tuple[str, object]:
    """The next field and its value, taken from the front of `words`."""
    word = words.pop(0)
    if word in ("left", "right"):
        turn = Fraction(words.pop(0))
        if turn <= 0:
            raise ValueError("a turn is more than nothing")
        return "turn", turn if word == "right" else -turn
    if word == "toward":
        return "toward", _FEET[words.pop(0)]
    if word == "ends":
        return "ends_on", _FEET[words.pop(0)]
    if word == "long":
        return "long", True
    rest = " ".join((word, *words)) + " "
    place = next((p for p in _PLACES if rest.startswith(p + " ")), None)
    if place is None:
        raise ValueError(f"unknown word {word!r}")
    del words[: len(place.split()) - 1]
    return "place", place


def write_steps(steps: Iterable[Step]) -> list[str]:
    """The lines that `parse_steps` reads back to the same steps (spans and `also` left out)."""
    return [_write(step) for step in steps]


def _write(step: Step) -> str:
    words = [full_label(step.at), str(step.kind)]
    if step.foot is not Foot.NONE:
        words.append(step.foot.value)
    if step.place is not Place.UNSAID:
        words.append(step.place.value)
    if step.turn:
        words += ["right" if step.turn > 0 else "left", str(abs(step.turn))]
    if step.toward:
        words += ["toward", step.toward.value]
    if step.ends_on:
        words += ["ends", step.ends_on.value]
    if step.long:
        words.append("long")
    return " ".join(words)
