"""A dance walked through: both feet, the weight and the facing after every event.

A trace is a table beside the dance, a row per event in the order danced; it holds what
the dance's values never do: metres.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction

from wallwise.dance.model import Dance, Foot, Part, Step
from wallwise.dance.walls import Wall, events_of, unroll
from wallwise.floor.apply import Refusal, apply, refusal, start
from wallwise.floor.stance import Frame, Point, Stance
from wallwise.floor.stride import AVERAGE, Body


@dataclass(frozen=True, slots=True)
class Row:
    """One event danced.

    `count` runs from 1 at the first count of the trace; `before` and `after` are the
    stances around the event, in the room frame; `wall` is None where no wall is danced.
    `refused` says why no body can do it.
    """

    index: int
    step: Step
    count: Fraction
    before: Stance
    after: Stance
    wall: Wall | None = None
    refused: Refusal | None = None

    @property
    def facing(self) -> Fraction:
        """The facing after the event."""
        return self.after.facing

    @property
    def weight(self) -> Foot:
        """The foot that bears the weight after the event, or both."""
        return self.after.weight

    @property
    def free(self) -> Foot:
        """The foot that may step next, or both."""
        return self.after.free

    @property
    def moved_m(self) -> float:
        """How far the foot of the event goes; of two feet, the one that goes farther."""
        left = self.before.left.at.distance_m(self.after.left.at)
        right = self.before.right.at.distance_m(self.after.right.at)
        return {Foot.LEFT: left, Foot.RIGHT: right}.get(self.step.foot, max(left, right))


@dataclass(frozen=True, slots=True)
class Extents:
    """The floor a dance takes, in metres from where it starts: x to the right, y ahead."""

    left_m: float
    right_m: float
    back_m: float
    ahead_m: float

    @property
    def width_m(self) -> float:
        """From the leftmost to the rightmost edge of a foot."""
        return self.right_m - self.left_m

    @property
    def depth_m(self) -> float:
        """From the hindmost to the foremost edge of a foot."""
        return self.ahead_m - self.back_m


@dataclass(frozen=True, slots=True)
class Trace:
    """Where both feet are, event by event; places in the room frame."""

    start: Stance
    rows: tuple[Row, ...]
    body: Body

    @property
    def end(self) -> Stance:
        """The stance after the last event."""
        return self.rows[-1].after if self.rows else self.start

    @property
    def refused(self) -> tuple[Row, ...]:
        """The rows that no body can dance."""
        return tuple(row for row in self.rows if row.refused)

    @property
    def net_turn(self) -> Fraction:
        """All turns added, right positive, not reduced to one turn."""
        return sum((row.step.turn for row in self.rows), Fraction(0))

    @property
    def travel(self) -> Point:
        """From the start to the end of the body, metres in the room frame."""
        return self.end.over - self.start.over

    def wall_frame(self, row: Row) -> Frame:
        """The floor as seen from where the row's wall begins, facing as it begins."""
        if row.wall is None:
            return self.start.frame
        first = next(r for r in self.rows if r.wall is row.wall)
        return Frame(first.before.over, row.wall.starts_facing)


def simulate(dance: Dance, *, walls: int | None = 1, body: Body = AVERAGE) -> Trace:
    """Where both feet are, count by count.

    `walls` as in `unroll`: 1 for one repetition, None for the whole.  Metres in the room
    frame: x to the right of a dancer facing 12:00, y ahead, origin where the dance starts.
    A step no body can make is kept in its row as a Refusal; nothing is raised for a bad
    dance.  An empty dance gives an empty trace.
    """
    events = (
        (event.step, event.count, wall) for wall in unroll(dance, walls=walls) for event in events_of(wall)
    )
    return _traced(events, start(dance.starts_on, body=body), body)


def trace_part(part: Part, *, starts_on: Foot = Foot.RIGHT, body: Body = AVERAGE) -> Trace:
    """A part alone, begun at 12:00 with `starts_on` free; frames as in `simulate`."""
    return trace_steps(part.steps, start=start(starts_on, body=body), body=body)


def trace_steps(steps: Iterable[Step], *, start: Stance, body: Body = AVERAGE) -> Trace:
    """Steps danced on from any stance; their counts are their own beats."""
    return _traced(((step, step.at, None) for step in steps), start, body)


def extents(trace: Trace) -> Extents:
    """The floor between the outermost edges of the feet, the start among them.

    A foot is taken as long whichever way it points.
    """
    stances = (trace.start, *(row.after for row in trace.rows))
    feet = [foot.at for stance in stances for foot in (stance.left, stance.right)]
    half = trace.body.foot_m / 2
    return Extents(
        left_m=min(at.x_m for at in feet) - half,
        right_m=max(at.x_m for at in feet) + half,
        back_m=min(at.y_m for at in feet) - half,
        ahead_m=max(at.y_m for at in feet) + half,
    )


def _traced(events: Iterable[tuple[Step, Fraction, Wall | None]], stance: Stance, body: Body) -> Trace:
    first, rows = stance, []
    for index, (step, count, wall) in enumerate(events):
        before, stance = stance, apply(stance, step, body=body)
        refused = refusal(before, step)
        rows.append(Row(index, step, count, before=before, after=stance, wall=wall, refused=refused))
    return Trace(first, tuple(rows), body)
