"""Ways to end at the front: a few simple steps in place of the last counts of the song.

Found by trying every string of simple moves over the last one to four counts, and proven by the
floor, which dances all that went before and then them.  Conventions as in `song.danced`; the
steps of an ending count from 1 at its first count.
"""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Iterator
from dataclasses import dataclass, replace
from fractions import Fraction
from functools import cache
from math import ceil

from wallwise.dance.clock import FRONT
from wallwise.dance.model import Foot, Kind, Place, Step
from wallwise.floor.apply import start
from wallwise.floor.stance import Stance
from wallwise.floor.trace import Trace, trace_steps
from wallwise.song.danced import Danced

LONGEST = 4  # counts
MOST = 3  # endings offered

_QUARTER, _HALF, _EIGHTH = Fraction(1, 4), Fraction(1, 2), Fraction(1, 8)


@dataclass(frozen=True, slots=True)
class Ending:
    """The last counts of the song danced otherwise, so that the room ends at the front.

    It begins on count `starts_count` of the song, which is count `at` of stretch `stretch` (from
    0) of the dance, and lasts `counts` counts, up to the song's last.  `trace` is the floor's
    proof.
    """

    starts_count: Fraction
    counts: int
    stretch: int
    at: Fraction
    steps: tuple[Step, ...]
    trace: Trace

    @property
    def facing(self) -> Fraction:
        """Where the room faces at the end."""
        return self.trace.rows[-1].facing


@dataclass(frozen=True, slots=True)
class _Move:
    """Steps begun by the free foot: how many counts they take, how hard they are to do."""

    steps: tuple[Step, ...]
    counts: int
    effort: float


def endings(danced: Danced) -> tuple[Ending, ...]:
    """At most `MOST` endings of different lengths, the easiest first; none where the room is at the front.

    None either where nothing is danced, or where the dance is over before the song.
    """
    if not danced.stretches or danced.end.facing == FRONT or danced.end.counts_left:
        return ()
    found: list[tuple[float, Ending]] = []
    stances = _stances(danced)
    for counts in range(1, LONGEST + 1):
        first = _last_count(danced) - counts + 1
        if first <= 1:
            break
        before = stances.before(first)
        for effort, steps in _ways(before, counts):
            ending = _proven(danced, first, before, steps=steps, counts=counts)
            if ending is not None:
                found.append((effort, ending))
                break
    found.sort(key=lambda pair: (pair[0], pair[1].counts))
    return tuple(ending for _, ending in found[:MOST])


def own_ending(danced: Danced) -> Ending | None:
    """The sheet's own ending where it ends with the song, wherever the room then faces.

    None where the sheet tells none, where the song has no time for it, and for a phrased dance,
    whose ending follows its sequence.
    """
    dance = danced.dance
    if dance.ending is None or dance.sequence is not None or not danced.stretches:
        return None
    counts = ceil(dance.ending.counts)
    first = _last_count(danced) - counts + 1
    if not dance.ending.steps or first < 1:
        return None
    return _placed(danced, first, trace_steps(dance.ending.steps, start=stance_before(danced, first)), counts)


def stance_before(danced: Danced, count: Fraction) -> Stance:
    """How a dancer stands when `count` of the song begins, all before it being danced."""
    return _stances(danced).before(count)


@dataclass(frozen=True, slots=True)
class _Stances:
    """The stance at the start and after each event, with the events' counts in the song."""

    counts: list[Fraction]
    stances: list[Stance]

    def before(self, count: Fraction) -> Stance:
        return self.stances[bisect_left(self.counts, count)]


def _stances(danced: Danced) -> _Stances:
    events = list(_events(danced))
    trace = trace_steps((step for _, step in events), start=start(danced.dance.starts_on))
    return _Stances([at for at, _ in events], [trace.start, *(row.after for row in trace.rows)])


def _events(danced: Danced) -> Iterator[tuple[Fraction, Step]]:
    """Every step of the song with its count in the song."""
    for stretch in danced.stretches:
        for step in stretch.steps:
            yield stretch.starts_count - 1 - stretch.wall.skipped + step.at, step


def _last_count(danced: Danced) -> Fraction:
    last = danced.stretches[-1]
    return last.starts_count + last.counts - 1


def _proven(
    danced: Danced, first: Fraction, before: Stance, *, steps: tuple[Step, ...], counts: int
) -> Ending | None:
    """The ending, if the floor dances it to the front without a refusal."""
    trace = trace_steps(steps, start=before)
    if any(row.refused for row in trace.rows) or trace.rows[-1].facing != FRONT:
        return None
    return _placed(danced, first, trace, counts)


def _placed(danced: Danced, first: Fraction, trace: Trace, counts: int) -> Ending:
    """The ending that `trace` dances, begun on count `first` of the song."""
    index = max(n for n, s in enumerate(danced.stretches) if s.starts_count <= first)
    stretch = danced.stretches[index]
    at = first - stretch.starts_count + 1 + stretch.wall.skipped
    return Ending(first, counts, index, at, tuple(row.step for row in trace.rows), trace)


def _ways(before: Stance, counts: int) -> list[tuple[float, tuple[Step, ...]]]:
    """The strings of moves that turn to the front in just these counts, the easiest first."""
    feet = [before.weight.other] if before.weight is not Foot.BOTH else [Foot.RIGHT, Foot.LEFT]
    ways = [
        (effort, steps)
        for free in feet
        for effort, steps in _strings(free, counts)
        if (before.facing + sum((step.turn for step in steps), Fraction(0))) % 1 == FRONT
    ]
    return sorted(ways, key=lambda way: way[0])


@cache
def _strings(free: Foot, counts: int, *, turned: bool = False) -> tuple[tuple[float, tuple[Step, ...]], ...]:
    """Every string of moves that takes so many counts, with its effort; no second turn in it.

    Easy to remember is what counts: few steps, little turn, and a pose on the last count.
    """
    if counts == 0:
        return ((0.0, ()),)
    found = []
    for move in _moves(free):
        turns = any(step.turn for step in move.steps)
        if move.counts > counts or (turns and turned):
            continue
        last = move.steps[-1]
        effort = move.effort + (0.5 if move.counts == counts and not _poses(last) else 0)
        for rest, steps in _strings(last.foot.other, counts - move.counts, turned=turned or turns):
            later = tuple(replace(step, at=step.at + move.counts) for step in steps)
            found.append((effort + rest, (*move.steps, *later)))
    return tuple(found)


def _poses(step: Step) -> bool:
    """Whether the step makes an end: what goes forward, out to the side or comes down does."""
    return step.kind in (Kind.STOMP, Kind.TOUCH) or step.place in (Place.FORWARD, Place.SIDE)


@cache
def _moves(free: Foot) -> tuple[_Move, ...]:
    """What the free foot can simply do; the effort of each is a rule of thumb."""
    away = 1 if free is Foot.LEFT else -1  # a foot stepping forward pivots away from its own side
    plain = [_one(free, place) for place in (Place.FORWARD, Place.SIDE, Place.BESIDE)]
    closes = replace(_one(free, Place.BESIDE), steps=(_step(1, free, Place.BESIDE, kind=Kind.STOMP),))
    # To its own side a foot turns forward, to the other side it goes out.
    turning = [
        _one(free, place, turn=turn * way, effort=2.0 * turn + 1.5 + (0.25 if awkward else 0))
        for turn in (_EIGHTH, _QUARTER)
        for way in (away, -away)
        for place, awkward in ((Place.FORWARD, way == away), (Place.SIDE, way != away))
    ]
    back = _one(free, Place.BACK, turn=away * _HALF, effort=4.5)
    pivots = [_pivot(free, away * turn) for turn in (_QUARTER, _EIGHTH + _QUARTER, _HALF)]
    unwind = _pivot(free, away * _HALF, kind=Kind.TOUCH, place=Place.ACROSS, effort=2.75)
    return (*plain, closes, *turning, back, *pivots, unwind)


def _one(free: Foot, place: Place, *, turn: Fraction = FRONT, effort: float = 1.0) -> _Move:
    """One step on one count."""
    return _Move((_step(1, free, place, turn=turn),), 1, effort)


def _pivot(
    free: Foot, turn: Fraction, *, kind: Kind = Kind.STEP, place: Place = Place.FORWARD, effort: float = 2.5
) -> _Move:
    """The free foot goes to its place, and the turn brings the weight to the other foot, or to it."""
    onto = free.other if kind.takes_weight else free
    return _Move(
        (_step(1, free, place, kind=kind), _step(2, onto, Place.UNSAID, kind=Kind.TURN, turn=turn)), 2, effort
    )


def _step(at: int, foot: Foot, place: Place, *, kind: Kind = Kind.STEP, turn: Fraction = FRONT) -> Step:
    return Step(Fraction(at), foot, kind, place, turn=turn)
