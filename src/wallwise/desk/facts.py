"""A dance in a few figures, and its walls in a table: as danced, never as declared."""

from __future__ import annotations

from dataclasses import dataclass, replace
from fractions import Fraction

from wallwise.dance.clock import FRONT
from wallwise.dance.model import Dance, Foot
from wallwise.dance.walls import Wall, WallKind, unroll, wall_count
from wallwise.give.words import front_words


@dataclass(frozen=True, slots=True)
class Facts:
    """What a teacher asks first.

    `counts` is whole where the dance is.  For a phrased dance `ends_facing` and `ends_weight`
    are after the whole sequence, for any other after one repetition without restart or tag.
    """

    counts: int | float
    walls: int
    ends_facing: Fraction
    ends_weight: Foot


def facts_of(dance: Dance) -> Facts:
    """The figures of the dance; one without steps faces the front on the foot it stood on."""
    plain = replace(dance, restarts=(), tags=()) if dance.sequence is None else dance
    danced = unroll(plain, walls=1 if dance.sequence is None else None)
    return Facts(
        counts=number(dance.counts),
        walls=wall_count(dance),
        ends_facing=danced[-1].ends_facing if danced else FRONT,
        ends_weight=danced[-1].ends_weight if danced else dance.starts_on.other,
    )


def number(counts: Fraction) -> int | float:
    """Counts as an int where they are whole."""
    return int(counts) if counts.denominator == 1 else float(counts)


@dataclass(frozen=True, slots=True)
class WallsReport:
    """The dance wall by wall, and after which walls the room is back at the front, in a sentence."""

    title: str
    phrased: bool
    walls: tuple[Wall, ...]
    front_again: str


def walls_of(dance: Dance) -> WallsReport:
    """Every wall with its restarts and tags, on until nothing more is to come and the front is reached."""
    return WallsReport(
        title=dance.title,
        phrased=dance.sequence is not None,
        walls=unroll(dance, ending=True),
        front_again=front_words(dance),
    )


def what_happens(wall: Wall) -> str:
    """Why this stretch is no plain wall, in a word or two; empty for a plain one."""
    if wall.kind is not WallKind.WALL:
        return {WallKind.TAG: "tag", WallKind.ENDING: "ending", WallKind.UNKNOWN: "unknown part"}[wall.kind]
    return {None: "", "restart": "restart", "tag": "tag inside", "sequence": "cut short"}.get(
        wall.cut_by, str(wall.cut_by)
    )
