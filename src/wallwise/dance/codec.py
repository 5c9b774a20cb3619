"""A dance to JSON and back, exactly: the project's own ``dance.json``, and rows for programs.

In ``dance.json`` every value of the model is an object of its fields, without those that
have their default value; a `Fraction` is a whole number or a string such as ``"7/2"``.
Where a step stands in a sheet and what had to be inferred are no part of the dance and
are not written.
"""

import json
import re
from collections.abc import Callable
from dataclasses import MISSING, Field, fields, is_dataclass
from enum import StrEnum
from fractions import Fraction
from functools import cache
from types import NoneType, UnionType
from typing import Any, Union, get_args, get_origin, get_type_hints

from wallwise.dance.clock import FRONT, facing_name
from wallwise.dance.counts import label
from wallwise.dance.model import Dance, Foot, Part, Span, Step
from wallwise.dance.walls import WallKind, unroll

FORMAT = 1

_FRACTION = re.compile(r"-?[0-9]{1,9}/[1-9][0-9]{0,8}")

Json = dict[str, Any]


def write(dance: Dance) -> str:
    """The dance as the text of a ``dance.json``; `read` gives it back equal."""
    return json.dumps(to_json(dance), ensure_ascii=False, indent=1) + "\n"


def read(text: str) -> Dance:
    """The dance that `write` wrote; ValueError says what is wrong with any other text.

    >>> read('{"format": 1, "title": "Short", "parts": []}') == Dance("Short", ())
    True
    """
    try:
        raw = json.loads(text)
    except (ValueError, RecursionError) as problem:
        raise ValueError(f"not a dance: this is not JSON ({problem})") from problem
    return from_json(raw)


def to_json(dance: Dance) -> Json:
    """The dance as objects, lists, strings and numbers that JSON can hold."""
    return {"format": FORMAT, **_pack(dance)}


def from_json(raw: object) -> Dance:
    """The dance that `to_json` packed; ValueError names the place that is wrong."""
    if not isinstance(raw, dict):
        raise ValueError("not a dance: an object with a title and parts is wanted")
    if raw.get("format") != FORMAT:
        raise ValueError(f"not a dance: its format is {raw.get('format')!r}, this program reads {FORMAT}")
    bare = {key: value for key, value in raw.items() if key != "format"}
    dance: Dance = _unpack(Dance, bare, where="dance")
    return dance


def check_rows(dance: Dance, *, line_of: Callable[[Span], int] | None = None) -> list[Json]:
    """The ``parts`` that ``check --json`` prints: a row per event, holds apart.

    Every part begins at 12:00.  The tags of a phrased dance are parts of their own.
    `line_of` gives the line of the sheet, from 1, for the steps that know their place.
    """
    tags = () if dance.sequence is None else tuple(tag.part for tag in dance.tags)
    by_name: dict[str, Part] = {}
    for part in (*dance.parts, *tags):
        by_name.setdefault(part.name, part)
    return [_part_rows(part, line_of) for part in by_name.values()]


def restart_rows(dance: Dance) -> list[Json]:
    """The ``restarts`` of ``check --json``: `facing` is where the room begins again."""
    walls = unroll(dance)
    return [
        {
            "wall": wall.number,
            "after_counts": _number(wall.skipped + wall.counts),
            "facing": facing_name([w for w in walls if w.number == wall.number][-1].ends_facing),
        }
        for wall in walls
        if wall.cut_by == "restart"
    ]


def tag_rows(dance: Dance) -> list[Json]:
    """The ``tags`` of ``check --json``: `facing` is where the room faces when the tag begins.

    A tag that a sequence calls is a part instead; see `check_rows`.
    """
    called = {name.casefold() for name in dance.sequence or ()}
    return [
        {
            "after_wall": wall.number,
            "counts": _number(wall.counts),
            "facing": facing_name(wall.starts_facing),
        }
        for wall in unroll(dance)
        if wall.kind is WallKind.TAG and wall.part.casefold() not in called
    ]


def _part_rows(part: Part, line_of: Callable[[Span], int] | None) -> Json:
    events: list[Json] = []
    holds: list[Json] = []
    facing = FRONT
    for section in part.sections:
        for step in section.steps:
            facing = (facing + step.turn) % 1
            if step.foot is Foot.NONE:
                holds.append({"at": float(step.at), "label": label(step.at)})
            else:
                events.append(_event_row(step, section=section.number, facing=facing, line_of=line_of))
    return {"name": part.name, "counts": _number(part.counts), "events": events, "holds": holds}


def _event_row(step: Step, *, section: int, facing: Fraction, line_of: Callable[[Span], int] | None) -> Json:
    row = {
        "section": section,
        "at": float(step.at),
        "label": label(step.at),
        "foot": step.foot.value,
        "kind": step.kind.value,
        "weight": step.weight,
        "facing": facing_name(facing),
        "turn": float(step.turn),
        "inferred": list(step.inferred),
    }
    if line_of and step.span:
        row["line"] = line_of(step.span)
    return row


def _number(value: Fraction) -> int | float:
    return int(value) if value.denominator == 1 else float(value)


def _pack(value: Any) -> Any:
    if isinstance(value, Fraction):
        return int(value) if value.denominator == 1 else str(value)
    if isinstance(value, tuple):
        return [_pack(item) for item in value]
    if is_dataclass(value) and not isinstance(value, type):
        return {
            f.name: _pack(getattr(value, f.name))
            for f in fields(value)
            if f.compare and getattr(value, f.name) != f.default
        }
    return value


def _unpack(hint: Any, raw: Any, *, where: str) -> Any:
    """The value of type `hint` that `raw` packs; `where` names its place for the error."""
    if get_origin(hint) in (Union, UnionType):
        if raw is None:
            return None
        (hint,) = (arg for arg in get_args(hint) if arg is not NoneType)
    if get_origin(hint) is tuple:
        if not isinstance(raw, list):
            raise _wrong(where, "a list", raw)
        return tuple(_unpack(get_args(hint)[0], v, where=f"{where}[{i}]") for i, v in enumerate(raw))
    if is_dataclass(hint):
        return _unpack_object(hint, raw, where=where)
    if hint is Fraction:
        return _unpack_fraction(raw, where=where)
    if issubclass(hint, StrEnum):
        if raw not in list(hint):
            raise _wrong(where, f"one of {', '.join(hint)}", raw)
        return hint(raw)
    # To Python true is an int; to a dance it is not.
    if type(raw) is not hint:
        raise _wrong(where, {int: "a whole number", str: "text", bool: "true or false"}[hint], raw)
    return raw


def _unpack_object(hint: Any, raw: Any, *, where: str) -> Any:
    if not isinstance(raw, dict):
        raise _wrong(where, "an object", raw)
    known = _fields(hint)
    if strange := sorted(raw.keys() - known.keys()):
        raise ValueError(f"not a dance: {where} has {strange[0]!r}, which means nothing here")
    if missing := [name for name, (f, _) in known.items() if f.default is MISSING and name not in raw]:
        raise ValueError(f"not a dance: {where} lacks {missing[0]!r}")
    return hint(**{name: _unpack(known[name][1], v, where=f"{where}.{name}") for name, v in raw.items()})


def _unpack_fraction(raw: Any, *, where: str) -> Fraction:
    if type(raw) is int or (isinstance(raw, str) and _FRACTION.fullmatch(raw)):
        return Fraction(raw)
    raise _wrong(where, 'a whole number or a fraction such as "7/2"', raw)


def _wrong(where: str, wanted: str, raw: Any) -> ValueError:
    return ValueError(f"not a dance: {where} must be {wanted}, not {json.dumps(raw)[:40]}")


@cache
def _fields(hint: type) -> dict[str, tuple[Field[Any], Any]]:
    """The fields that are written, by name, each with its type."""
    types = get_type_hints(hint)
    return {f.name: (f, types[f.name]) for f in fields(hint) if f.compare}
