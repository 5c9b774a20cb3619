"""The glossary's files to entries: one TOML file a family under ``en/``.

    [[figure]]
    name = "jazz box"
    also = ["jazz square"]             # lower case, singular, plain spaces
    call = "jazz box"
    source = "Leander ISD vocabulary"
    side = "lead"                      # or "turn", "travel"; "lead" where left out
    says = "A square in four steps."   # one sentence for the printed glossary

    [[figure.way]]
    says = "closes beside"
    steps = ["1 step R across", "2 step L back", "3 step R side", "4 step L beside"]
    counts = 4                         # the whole beat of the last step, where left out
    turn_on = ["3", "2", "2+3"]        # where a stated turn is taken; "2+3" shares it

    [[figure.example]]
    line = "1-4 Jazz box"
    reads = ["1 step R across", "2 step L back", "3 step R side", "4 step L beside"]

    [[term]]
    name = "wall"
    says = "…"
    source = "…"

The commonest way comes first.  A teacher's own ``glossary.toml`` has the same shape and
goes before these.  A key that is not listed here is refused, so that a slip of the pen is
not a silent loss.
"""

import tomllib
from collections.abc import Iterable, Mapping
from fractions import Fraction
from functools import cache
from importlib import resources
from math import floor
from pathlib import Path
from typing import Any

from wallwise.dance.counts import SHARES, parse_label
from wallwise.glossary.entry import Example, Figure, Term, Way
from wallwise.glossary.notation import parse_steps

SIDES = ("lead", "turn", "travel")

_FIGURE_KEYS = frozenset({"name", "also", "call", "source", "side", "says", "way", "example"})
_WAY_KEYS = frozenset({"says", "steps", "counts", "turn_on"})
_EXAMPLE_KEYS = frozenset({"line", "reads"})
_TERM_KEYS = frozenset({"name", "also", "says", "source"})


class GlossaryError(ValueError):
    """A glossary file that cannot be used; the message names the file and the entry."""


@cache
def figures() -> tuple[Figure, ...]:
    """Every figure that comes with Wallwise, by family file in alphabetical order."""
    return tuple(f for family, data in _files() for f in _figures(data, family))


@cache
def terms() -> tuple[Term, ...]:
    """Every term that comes with Wallwise, in the order of the files."""
    return tuple(t for family, data in _files() for t in _terms(data, family))


def read_own(path: Path) -> tuple[Figure, ...]:
    """The figures of a teacher's own file; GlossaryError names what is wrong in it."""
    try:
        data = tomllib.loads(path.read_text(encoding="utf-8"))
    except (OSError, UnicodeDecodeError, tomllib.TOMLDecodeError) as problem:
        raise GlossaryError(f"{path.name} cannot be read as a glossary: {problem}") from problem
    _terms(data, path.stem)
    return tuple(_figures(data, path.stem))


@cache
def words() -> Mapping[str, Any]:
    """The small words of the trade (verbs, places, feet …) as written in ``en/words.toml``."""
    text = resources.files("wallwise.glossary").joinpath("en/words.toml").read_text(encoding="utf-8")
    return tomllib.loads(text)


@cache
def _files() -> tuple[tuple[str, Mapping[str, Any]], ...]:
    folder = resources.files("wallwise.glossary").joinpath("en")
    files = sorted((f for f in folder.iterdir() if f.name.endswith(".toml")), key=lambda f: f.name)
    return tuple(
        (f.name.removesuffix(".toml"), tomllib.loads(f.read_text(encoding="utf-8")))
        for f in files
        if f.name != "words.toml"
    )


def _figures(data: Mapping[str, Any], family: str) -> list[Figure]:
    for key in data.keys() - {"figure", "term"}:
        raise GlossaryError(f"{family}.toml: unknown heading {key!r} (it holds [[figure]] and [[term]])")
    return [_figure(raw, family) for raw in _tables(data, "figure", family)]


def _terms(data: Mapping[str, Any], family: str) -> list[Term]:
    return [_term(raw, family) for raw in _tables(data, "term", family)]


def _tables(data: Mapping[str, Any], kind: str, family: str) -> list[Mapping[str, Any]]:
    tables = data.get(kind, [])
    if not isinstance(tables, list) or not all(isinstance(t, dict) for t in tables):
        raise GlossaryError(f"{family}.toml: write [[{kind}]] with two brackets")
    return tables


def _figure(raw: Mapping[str, Any], family: str) -> Figure:
    try:
        _refuse_unknown(raw, _FIGURE_KEYS)
        return Figure(
            name=_text(raw, "name"),
            also=_texts(raw, "also"),
            ways=tuple(_way(w) for w in _some(raw, "way")),
            call=_text(raw, "call"),
            source=_text(raw, "source"),
            family=family,
            side=_side(raw),
            says=_text(raw, "says", ""),
            examples=tuple(_example(e) for e in raw.get("example", ())),
        )
    except (KeyError, ValueError, TypeError, AttributeError) as problem:
        raise GlossaryError(_complaint("figure", raw, family, problem)) from problem


def _term(raw: Mapping[str, Any], family: str) -> Term:
    try:
        _refuse_unknown(raw, _TERM_KEYS)
        return Term(_text(raw, "name"), _text(raw, "says"), _text(raw, "source"), _texts(raw, "also"))
    except (KeyError, ValueError) as problem:
        raise GlossaryError(_complaint("term", raw, family, problem)) from problem


def _complaint(kind: str, raw: Mapping[str, Any], family: str, problem: Exception) -> str:
    what = f"{problem} is missing" if isinstance(problem, KeyError) else str(problem)
    return f"{kind} {raw.get('name', '(no name)')!r} in {family}.toml: {what}"


def _way(raw: Mapping[str, Any]) -> Way:
    _refuse_unknown(raw, _WAY_KEYS)
    steps = parse_steps(_texts(raw, "steps"))
    if not steps:
        raise ValueError("a way has no steps")
    counts = Fraction(str(raw["counts"])) if "counts" in raw else Fraction(max(1, floor(steps[-1].at)))
    return Way(steps, counts, tuple(_beats(on) for on in _texts(raw, "turn_on")), _text(raw, "says", ""))


def _beats(on: str) -> tuple[Fraction, ...]:
    """The beats of ``"1+2&"``; a letter alone stands before count 1, as in the notation."""
    return tuple(parse_label("0" + label if label in SHARES else label) for label in on.split("+"))


def _example(raw: Mapping[str, Any]) -> Example:
    _refuse_unknown(raw, _EXAMPLE_KEYS)
    return Example(_text(raw, "line"), parse_steps(_texts(raw, "reads")))


def _side(raw: Mapping[str, Any]) -> str:
    side = _text(raw, "side", "lead")
    if side not in SIDES:
        raise ValueError(f"side is {side!r}; it is one of {', '.join(SIDES)}")
    return side


def _refuse_unknown(raw: Mapping[str, Any], known: Iterable[str]) -> None:
    unknown = raw.keys() - set(known)
    if unknown:
        raise ValueError(f"unknown key {', '.join(sorted(unknown))}")


def _some(raw: Mapping[str, Any], key: str) -> list[Any]:
    if not raw[key]:
        raise ValueError(f"{key} is empty")
    return list(raw[key])


def _text(raw: Mapping[str, Any], key: str, default: str | None = None) -> str:
    value = raw[key] if default is None else raw.get(key, default)
    if not isinstance(value, str):
        raise ValueError(f"{key} is not a text")
    return value


def _texts(raw: Mapping[str, Any], key: str) -> tuple[str, ...]:
    values = raw.get(key, [])
    if not isinstance(values, list) or not all(isinstance(v, str) for v in values):
        raise ValueError(f"{key} is not a list of texts")
    return tuple(values)
