"""Dances whose turns are easily told, and a walk over a song count by count."""

from __future__ import annotations

from dataclasses import dataclass, replace
from fractions import Fraction

from wallwise.dance.model import Dance, Foot, Kind, Part, Place, Restart, Section, Step, Tag


def part(name: str, *eighths: int) -> Part:
    """A part with a step on every count, each turning so many eighths to the right, R and L by turns."""
    steps = tuple(
        Step(
            Fraction(at),
            Foot.RIGHT if at % 2 else Foot.LEFT,
            Kind.STEP,
            Place.FORWARD,
            turn=Fraction(turn, 8),
        )
        for at, turn in enumerate(eighths, 1)
    )
    return Part(name, (Section(1, Fraction(1), Fraction(len(eighths)), steps),))


def dance(
    *eighths: int, restarts: dict[int, int] | None = None, tags: dict[int, Part] | None = None
) -> Dance:
    """A dance of one such part, with restarts (counts by wall) and tags (parts by wall)."""
    return replace(
        Dance("Walked", (part("main", *eighths),)),
        restarts=tuple(Restart(wall, Fraction(after)) for wall, after in (restarts or {}).items()),
        tags=tuple(Tag(wall, tag) for wall, tag in (tags or {}).items()),
    )


@dataclass(frozen=True, slots=True)
class Walked:
    """A stretch as walked: its wall, whether it is a tag, its first and last count, facings in eighths."""

    wall: int
    tag: bool
    first: int
    last: int
    starts: int
    ends: int


def walk(danced: Dance, length: int) -> list[Walked]:
    """The stretches of a song of `length` counts, walked one count after the other."""
    main = [int(step.turn * 8) for step in danced.parts[0].steps]
    restarts = {r.wall: int(r.after_counts) for r in danced.restarts}
    tags = {t.after_wall: [int(step.turn * 8) for step in t.part.steps] for t in danced.tags}
    found: list[Walked] = []
    facing, wall, count = 0, 0, 0
    while count < length:
        wall += 1
        for turns, is_tag in ((main[: restarts.get(wall, len(main))], False), (tags.get(wall, []), True)):
            first, starts = count + 1, facing
            for turn in turns[: length - count]:
                count, facing = count + 1, (facing + turn) % 8
            if count >= first:
                found.append(Walked(wall, is_tag, first, count, starts, facing))
    return found
