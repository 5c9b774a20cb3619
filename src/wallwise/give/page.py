"""The page: one self-contained HTML file to read offline and to print.

Everything on it is made from the dance, its trace and the findings; the template only lays
it out.  The same dance gives the same bytes.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from functools import cache
from typing import Any

import jinja2

from wallwise.dance.clock import facing_name
from wallwise.dance.counts import full_label, label
from wallwise.dance.finding import Finding
from wallwise.dance.model import Dance, Foot, Kind, Part, Section, Step
from wallwise.dance.walls import Wall, WallKind, unroll, wall_count
from wallwise.floor.trace import Row, trace_part
from wallwise.give.footprints import footprints, wall_square
from wallwise.give.words import action, front_words, weight_words
from wallwise.song.danced import Danced
from wallwise.song.minutes import time_name

# From here up a turn within one event is named in the caution.
_BIG_TURN = Fraction(1, 2)


@dataclass(frozen=True, slots=True)
class Line:
    """A row of a count table."""

    count: str
    feet: tuple[str, ...]
    action: str
    facing: str
    weight: str
    drawing: str
    refused: bool


@dataclass(frozen=True, slots=True)
class Table:
    """A count table: what it is about, and its rows."""

    title: str
    heading: str
    lines: tuple[Line, ...]


# What keeps a wall from going on to its end.
_CUT = {"restart": "then restart", "tag": "then a tag inside", "sequence": "cut short"}


@dataclass(frozen=True, slots=True)
class Square:
    """A square of the wall strip."""

    title: str
    facing: str
    counts: str
    after: str
    drawing: str
    is_wall: bool
    starts_at: str = ""


def page(dance: Dance, *, findings: Sequence[tuple[int, Finding]] = (), danced: Danced | None = None) -> str:
    """The page of a dance as HTML text.

    `findings` come each with the line of the sheet (from 1) it is about.  With `danced`, the dance on
    a song, its walls are those of the song, each with the minute and second it starts at.
    """
    view: dict[str, Any] = {
        "dance": dance,
        "figures": _figures(dance),
        "findings": findings,
        "sound": not any(finding.loud for _, finding in findings),
        "strip": _strip(dance, danced),
        "front_again": front_words(dance),
        "song_ends": _song_ends(danced) if danced is not None else "",
        "tables": [table for part in _parts(dance) for table in _tables(dance, part)],
        "changes": list(_changes(dance)),
        "options": [_option(dance, index) for index in range(len(dance.options))],
        "turns": _turns(dance),
    }
    return _template().render(view)


def _figures(dance: Dance) -> list[tuple[str, str]]:
    """What a teacher asks first, as name and value."""
    danced = unroll(dance)
    last = danced[-1] if danced else None
    once = sum((part.net_turn for part in dance.parts), Fraction(0))
    ends = last.ends_facing if dance.sequence is not None and last else once
    figures = [
        ("Counts", _number(dance.counts)),
        ("Walls", str(wall_count(dance))),
        ("Level", dance.level),
        ("Time", f"{dance.beats_per_bar}/4"),
        ("Starts on", f"{weight_words(dance.starts_on)} foot"),
        ("Ends facing", facing_name(ends)),
        ("Choreographer", dance.choreographer),
        ("Music", dance.music),
        ("Tempo", f"{_number(dance.bpm)} bpm" if dance.bpm else ""),
        ("Intro", f"{dance.intro_counts} counts" if dance.intro_counts else ""),
        ("Sequence", " ".join(dance.sequence or ())),
    ]
    return [(name, value) for name, value in figures if value]


def _strip(dance: Dance, danced: Danced | None) -> list[Square]:
    """The walls in order: until the room is back at the front or, on a song, until that ends."""
    phrased = dance.sequence is not None
    if danced is None:
        return [_square(wall, phrased=phrased) for wall in unroll(dance)]
    return [
        replace(
            _square(stretch.wall, phrased=phrased),
            counts=f"{_number(stretch.counts)} counts",
            after="then the song ends" if stretch.cut_by == "end" else _CUT.get(stretch.cut_by or "", ""),
            starts_at=f"at {time_name(stretch.starts_sec)}",
        )
        for stretch in danced.stretches
    ]


def _song_ends(danced: Danced) -> str:
    """Where the room is when the song ends."""
    end = danced.end
    return f"The song ends at {time_name(end.sec)}, the room facing {facing_name(end.facing)}."


def _square(wall: Wall, *, phrased: bool) -> Square:
    is_wall = wall.kind is WallKind.WALL
    title = f"Wall {wall.number}" if is_wall else wall.part if wall.kind is WallKind.TAG else wall.kind.value
    if phrased and is_wall:
        title = f"{wall.number}: {wall.part}"
    return Square(
        title=title[:1].upper() + title[1:],
        facing=facing_name(wall.starts_facing),
        counts=f"{_number(wall.counts)} counts",
        after=_CUT.get(wall.cut_by or "", ""),
        drawing=wall_square(wall.starts_facing),
        is_wall=is_wall,
    )


def _parts(dance: Dance) -> list[Part]:
    """Every part that has a count table: the dance's own, each tag once, the ending."""
    tags = {tag.part.name: tag.part for tag in dance.tags}
    return [*dance.parts, *tags.values(), *([dance.ending] if dance.ending else [])]


def _tables(dance: Dance, part: Part) -> list[Table]:
    trace = trace_part(part, starts_on=_first_foot(part, dance.starts_on))
    rows = iter(trace.rows)
    tables = []
    for section in part.sections:
        lines = tuple(_line(next(rows), section) for _ in section.steps)
        tables.append(Table(_title(dance, part, section), section.heading, lines))
    return tables


def _first_foot(part: Part, otherwise: Foot) -> Foot:
    feet = (step.foot for step in part.steps if step.foot in (Foot.LEFT, Foot.RIGHT))
    return next(feet, otherwise)


def _title(dance: Dance, part: Part, section: Section) -> str:
    last = section.starts_at + section.counts - 1
    counts = f"counts {_number(section.starts_at)}–{_number(last)}"
    if part is dance.ending:
        return f"Ending, {counts}"
    if part not in dance.parts:
        return f"{part.name[:1].upper()}{part.name[1:]}, {counts}"
    named = f"Part {part.name}, section" if len(dance.parts) > 1 else "Section"
    return f"{named} {section.number}, {counts}"


def _line(row: Row, section: Section) -> Line:
    feet = ("L", "R") if row.step.foot is Foot.BOTH else (row.step.foot.value,)
    return Line(
        count=label(_called(row.step.at, section)),
        feet=() if row.step.foot is Foot.NONE else feet,
        action=action(row.step),
        facing=facing_name(row.facing),
        weight=weight_words(row.weight),
        drawing=footprints(row),
        refused=row.refused is not None,
    )


def _called(at: Fraction, section: Section | None) -> Fraction:
    """The count called aloud: every section begins again at one."""
    return at - section.starts_at + 1 if section else at


def _changes(dance: Dance) -> list[str]:
    """Restarts and tags, a sentence each."""
    said = []
    for restart in dance.restarts:
        line = f"Wall {restart.wall}: restart after {_number(restart.after_counts)} counts."
        if restart.change:
            line += f" Danced there instead: {_steps(restart.change)}."
        said.append(line)
    for tag in dance.tags:
        if dance.sequence is not None and (tag.part.name in dance.sequence or tag.after_wall < 1):
            continue  # the sequence tells when it is danced
        inside = f" after {_number(tag.after_counts)} counts" if tag.after_counts is not None else ""
        where = f"Inside wall {tag.after_wall}{inside}" if inside else f"After wall {tag.after_wall}"
        said.append(f"{where}: {tag.part.name}, {_number(tag.part.counts)} counts.")
    return said


def _option(dance: Dance, index: int) -> str:
    option = dance.options[index]
    sections = [s for part in dance.parts if part.name == option.part for s in part.sections]
    section = next((s for s in sections if s.number == option.section), None)
    part = f"Part {option.part}, section" if option.part != "main" else "Section"
    return f"{part} {option.section}, counts {option.counts}: {_steps(option.steps, section)}."


def _steps(steps: Sequence[Step], section: Section | None = None) -> str:
    """The steps in a line, each with its count."""
    said = ((full_label(_called(step.at, section)), action(step)) for step in steps)
    return "; ".join(f"{count} {words[:1].lower()}{words[1:]}" for count, words in said)


def _turns(dance: Dance) -> bool:
    """Whether the dance asks for a half turn or more at once, or a spin."""
    steps = [step for part in _parts(dance) for step in part.steps]
    return any(abs(step.turn) >= _BIG_TURN or step.kind is Kind.SPIN for step in steps)


def _number(value: Fraction) -> str:
    return str(value) if value.denominator == 1 else f"{float(value):g}"


@cache
def _template() -> jinja2.Template:
    rooms = jinja2.Environment(
        loader=jinja2.PackageLoader("wallwise.give"),
        autoescape=True,
        trim_blocks=True,
        lstrip_blocks=True,
        undefined=jinja2.StrictUndefined,
    )
    return rooms.get_template("page.html")
