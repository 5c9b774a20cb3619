"""The dance unrolled: wall after wall, with its restarts, tags, parts and ending.

A *wall* is one repetition of the dance, or one part of a phrased dance.  Counts of a
part run from 1, so its first k counts are the beats from 1 up to, not with, k + 1: an
``&`` after count k belongs to count k.  Weight that the body would refuse is taken as
the dance tells it (`weight_told`); to say so is for the checks.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction
from itertools import groupby, repeat, takewhile
from typing import Self

from wallwise.dance.clock import FRONT, walls_of
from wallwise.dance.model import Dance, Foot, Part, Restart, Step, Tag
from wallwise.dance.weight import weight_told

# No song lasts longer: 100 walls of 16 counts are more than thirteen minutes at 120 bpm.
LONGEST = 100

# "A-", "A*"; "A(16)", "A (first 16 counts)", "A16".  "A2" may number the part or shorten it, and
# another note in brackets may mean anything: that is for the reader to settle.
_ABRIDGED = re.compile(
    r"(?P<name>.+?)\s*(?:[-–*+'’]+|\((?:first\s+)?(?P<counts>\d{1,3})(?:\s*(?:counts?|cts?|c))?\))"
    r"|(?P<letter>[a-z])(?P<number>[4-9]|[1-9]\d{1,2})",
    re.IGNORECASE,
)


class WallKind(StrEnum):
    """What a stretch of the dance is; UNKNOWN where the sequence names no part there is."""

    WALL = "wall"
    TAG = "tag"
    ENDING = "ending"
    UNKNOWN = "unknown"


@dataclass(frozen=True, slots=True)
class Event:
    """A step where the unrolled dance has it.

    `facing` is the facing after it; `count` runs from 1 at the first count of the dance.
    """

    step: Step
    facing: Fraction
    count: Fraction


@dataclass(frozen=True, slots=True)
class Wall:
    """One stretch danced without a break.

    `number` is the wall's, from 1; a tag bears the number of the wall it follows or
    interrupts, 0 before the first.  `counts` are those danced here, after the first
    `skipped` counts of the part (more than none only where a wall goes on after a tag
    inside it).  `cut_by` is what kept it from going on to the part's last count: "tag",
    "restart", or "sequence" where the sequence asks for no more.  `begins_after` is the
    number of counts danced before.
    """

    kind: WallKind
    number: int
    part: str
    starts_facing: Fraction
    ends_facing: Fraction
    starts_weight: Foot
    ends_weight: Foot
    counts: Fraction
    begins_after: Fraction
    steps: tuple[Step, ...]
    skipped: Fraction = Fraction(0)
    cut_by: str | None = None

    @property
    def starts_on(self) -> Foot | None:
        """The foot that moves first; None where none does."""
        return next((s.foot for s in self.steps if s.foot is not Foot.NONE), None)


def events_of(wall: Wall) -> Iterator[Event]:
    """Every event of the wall in order, holds too.

    >>> from wallwise.dance.model import Kind, Section
    >>> steps = (Step(Fraction(1), Foot.RIGHT, Kind.STEP), Step(Fraction(2), Foot.LEFT, Kind.STEP))
    >>> dance = Dance("Two Walks", (Part("main", (Section(1, Fraction(1), Fraction(2), steps),)),))
    >>> [str(e.count) for wall in unroll(dance, walls=2) for e in events_of(wall)]
    ['1', '2', '3', '4']
    """
    facing = wall.starts_facing
    before = wall.begins_after - wall.skipped
    for step in wall.steps:
        if step.turn:
            facing = (facing + step.turn) % 1
        yield Event(step, facing, before + step.at)


def unroll(dance: Dance, *, walls: int | None = None, ending: bool = False) -> tuple[Wall, ...]:
    """The dance as danced: its walls in order, the tags among them.

    `walls` is how many walls to dance, tags not counted; a phrased dance never outlasts its
    sequence.  Without it a phrased dance is danced whole, and any other until the room is
    back at the front with no restart or tag to come (or, where it never comes back, the
    wall law's number of walls beyond the last of them).  With `ending` the dance's ending
    closes.  A name in the sequence that names nothing is kept as an UNKNOWN wall of no
    counts.  A dance without parts gives nothing.
    """
    last = _walls_to_front(dance) if walls is None and dance.sequence is None else walls
    danced = tuple(takewhile(lambda wall: last is None or wall.number <= last, _danced(dance)))
    if not (ending and dance.ending):
        return danced
    room = _Room.after(danced[-1]) if danced else _Room.at_start(dance)
    return (*danced, room.dance(WallKind.ENDING, dance.ending))


def back_at_front(dance: Dance, *, after: int = 0) -> int | None:
    """The first wall beyond wall `after` at whose end the room faces the front again.

    Restarts are counted, and tags as part of the wall they follow.  None where the room is
    never at the front again at the end of a wall, or the sequence is over before.

    >>> from wallwise.dance.model import Kind, Section
    >>> quarter = Step(Fraction(1), Foot.RIGHT, Kind.STEP, turn=Fraction(1, 4))
    >>> part = Part("main", (Section(1, Fraction(1), Fraction(1), (quarter,)),))
    >>> back_at_front(Dance("Four Walls", (part,)))
    4
    """
    last = max(after, _last_change(dance)) + _law(dance)
    for number, group in groupby(_danced(dance), key=_number):
        if dance.sequence is None and number > last:
            return None
        if number > after and list(group)[-1].ends_facing == FRONT:
            return number
    return None


def wall_count(dance: Dance) -> int:
    """How many walls the dance has, its restarts and tags apart.

    That is the wall law of its net turn; for a phrased dance, the number of facings from
    which one of its parts is begun.
    """
    if dance.sequence is None:
        return _law(dance)
    return len({wall.starts_facing for wall in _danced(dance) if wall.kind is WallKind.WALL}) or 1


def part_named(dance: Dance, name: str) -> Part | None:
    """The part or tag that a sequence means by `name`; None where there is none.

    Case and the marks of a shortened part are no matter: "a", "A-", "A16" and "A(16)" all
    mean part A, unless a part is called just that.

    >>> part_named(Dance("One Part", (Part("A", ()),)), "A(16)")
    Part(name='A', sections=())
    """
    known = {part.name.casefold(): part for part in (*(tag.part for tag in dance.tags), *dance.parts)}
    if part := known.get(name.strip().casefold()):
        return part
    short = _ABRIDGED.fullmatch(name.strip())
    return known.get((short["name"] or short["letter"]).casefold()) if short else None


@dataclass(slots=True)
class _Room:
    """Where the room stands while the dance is unrolled."""

    facing: Fraction
    weight: Foot
    danced: Fraction
    number: int = 0

    @classmethod
    def at_start(cls, dance: Dance) -> Self:
        return cls(FRONT, dance.starts_on.other, Fraction(0))

    @classmethod
    def after(cls, wall: Wall) -> Self:
        return cls(wall.ends_facing, wall.ends_weight, wall.begins_after + wall.counts, wall.number)

    def dance(
        self,
        kind: WallKind,
        part: Part,
        *,
        steps: tuple[Step, ...] | None = None,
        counts: tuple[Fraction, Fraction] | None = None,
        cut_by: str | None = None,
    ) -> Wall:
        """Dance the part, or the given `steps` of it, from one count to another."""
        steps = part.steps if steps is None else steps
        begin, end = counts or (Fraction(0), part.counts)
        facing, weight, danced = self.facing, self.weight, self.danced
        for step in steps:
            if step.turn:
                self.facing = (self.facing + step.turn) % 1
            self.weight = weight_told(self.weight, step)
        self.danced += end - begin
        return Wall(
            kind=kind,
            number=self.number,
            part=part.name,
            starts_facing=facing,
            ends_facing=self.facing,
            starts_weight=weight,
            ends_weight=self.weight,
            counts=end - begin,
            begins_after=danced,
            steps=steps,
            skipped=begin,
            cut_by=cut_by,
        )


def _danced(dance: Dance) -> Iterator[Wall]:
    """Every wall and tag in order; without end for a dance that is not phrased."""
    room = _Room.at_start(dance)
    if dance.sequence is None:
        for part in repeat(dance.parts[0]) if dance.parts else ():
            yield from _wall(dance, room, part)
        return
    tags = _tags_by_name(dance)
    for name in dance.sequence:
        named = part_named(dance, name)
        if named is None:
            room.number += 1
            yield room.dance(WallKind.UNKNOWN, Part(name, ()))
        elif named.name.casefold() in tags:
            yield room.dance(WallKind.TAG, named)
        else:
            yield from _wall(dance, room, named, asked=_counts_asked(name, named))


def _wall(dance: Dance, room: _Room, part: Part, *, asked: Fraction | None = None) -> Iterator[Wall]:
    """The next wall, in pieces where a tag stands inside it, then the tags after it.

    `asked` is how many counts of the part the sequence wants.
    """
    room.number += 1
    restart = min(
        (r for r in dance.restarts if r.wall == room.number), key=lambda r: r.after_counts, default=None
    )
    begin, end = Fraction(0), part.counts
    cut_by = None
    if asked is not None and asked < end:
        end, cut_by = asked, "sequence"
    if restart and restart.after_counts < end:
        end, cut_by = restart.after_counts, "restart"
    steps = _steps_until(end, part, restart, whole=cut_by is None)
    for at, tag in _tags_inside(dance, room.number, end):
        if at > begin:
            here = tuple(s for s in steps if s.at < at + 1)
            yield room.dance(WallKind.WALL, part, steps=here, counts=(begin, at), cut_by="tag")
            steps, begin = tuple(s for s in steps if s.at >= at + 1), at
        yield room.dance(WallKind.TAG, tag)
    yield room.dance(WallKind.WALL, part, steps=steps, counts=(begin, end), cut_by=cut_by)
    for tag in _tags_after(dance, room.number, part, end):
        yield room.dance(WallKind.TAG, tag)


def _counts_asked(name: str, part: Part) -> Fraction | None:
    """How many counts of the part a sequence asks for: 16 in "A(16)"; None for all of them."""
    short = _ABRIDGED.fullmatch(name.strip())
    if short is None or part.name.casefold() == name.strip().casefold():
        return None
    counts = short["counts"] or short["number"]
    return Fraction(counts) if counts else None


def _steps_until(end: Fraction, part: Part, restart: Restart | None, *, whole: bool) -> tuple[Step, ...]:
    """The part's steps to count `end`, with the step change that the restart brings."""
    steps = part.steps if whole else tuple(s for s in part.steps if s.at < end + 1)
    if not (restart and restart.change):
        return steps
    since = restart.change[0].at if restart.change_from is None else restart.change_from
    return (*(s for s in steps if s.at < since), *restart.change)


def _tags_inside(dance: Dance, number: int, end: Fraction) -> list[tuple[Fraction, Part]]:
    """The tags inside the wall, each with the count it comes after, in the order danced."""
    inside = [
        (tag.after_counts, tag.part)
        for tag in _tags_of(dance, number)
        if tag.after_counts is not None and tag.after_counts < end
    ]
    return sorted(inside, key=lambda pair: pair[0])


def _tags_after(dance: Dance, number: int, part: Part, end: Fraction) -> list[Part]:
    """The tags once the wall is over.  One that stands beyond a cut is never reached."""
    return [
        tag.part
        for tag in _tags_of(dance, number)
        if tag.after_counts is None or tag.after_counts == end or tag.after_counts >= part.counts == end
    ]


def _tags_of(dance: Dance, number: int) -> list[Tag]:
    """The wall's tags, without those that the sequence calls by name."""
    called = {name.strip().casefold() for name in dance.sequence or ()}
    return [t for t in dance.tags if t.after_wall == number and t.part.name.casefold() not in called]


def _tags_by_name(dance: Dance) -> set[str]:
    lettered = {part.name.casefold() for part in dance.parts}
    return {tag.part.name.casefold() for tag in dance.tags} - lettered


def _number(wall: Wall) -> int:
    return wall.number


def _law(dance: Dance) -> int:
    return walls_of(dance.parts[0].net_turn) if dance.parts else 1


def _last_change(dance: Dance) -> int:
    """The last wall that a restart or tag alters, 0 where none does."""
    walls = [*(r.wall for r in dance.restarts), *(t.after_wall for t in dance.tags)]
    return max([wall for wall in walls if wall <= LONGEST], default=0)


def _walls_to_front(dance: Dance) -> int:
    last = _last_change(dance)
    return back_at_front(dance, after=max(last - 1, 0)) or last + _law(dance)
