"""A dance laid over a song: when each wall starts, in which phrase, and where the song ends.

Conventions: a count of the song is a count of the dance, from 1 at the first; a stretch of n
counts from count c is over when count c + n begins.  Counts are exact, seconds are the grid's.
A wall may begin with a phrase, and after each whole wall inside one (see `fit`).  Count 1 of the
dance begins a phrase whatever the music does: the teacher has chosen it.
"""

from __future__ import annotations

from bisect import bisect_right
from dataclasses import dataclass
from fractions import Fraction
from math import floor

from wallwise.dance.clock import FRONT
from wallwise.dance.model import Dance, Step
from wallwise.dance.walls import Wall, WallKind, part_named, unroll
from wallwise.song.fit import Phrasing
from wallwise.song.grid import BeatGrid

# The starts of phrases that are heard are right to within a beat; those that are told are exact.
HEARD_TOLERANCE = Fraction(1)


@dataclass(frozen=True, slots=True)
class Meeting:
    """Where a wall meets the phrases of the music.

    It begins on count `count` (from 1) of phrase `phrase` (from 1, the one that count 1 of the
    dance begins).  `offset` is how many counts it is behind the start of phrase `nearest`, below
    zero before it; breaks, which are shorter than an eight, are no such phrases.  `beside` is the
    same for the nearest place where a wall may begin.  `confidence` is how sure the start of the
    nearest phrase is.
    """

    phrase: int
    count: Fraction
    nearest: int
    offset: Fraction
    beside: Fraction
    confidence: float


@dataclass(frozen=True, slots=True)
class Stretch:
    """One stretch of the dance on the song: a wall, a piece of one, or a tag.

    `wall` is the stretch as it would be danced without an end; `counts`, `steps` and
    `ends_facing` are what the song leaves of it.  `cut_by` is as the wall's, or "end".
    `meeting` is None where no phrase is known.
    """

    wall: Wall
    starts_count: Fraction
    counts: Fraction
    starts_sec: float
    ends_sec: float
    ends_facing: Fraction
    steps: tuple[Step, ...]
    cut_by: str | None
    meeting: Meeting | None

    @property
    def begins(self) -> bool:
        """Whether the wall begins here: it is no tag, and does not go on after one."""
        return self.wall.kind is WallKind.WALL and not self.wall.skipped


@dataclass(frozen=True, slots=True)
class End:
    """Where the song ends: in which stretch, on which of its part's counts, facing where.

    `wall` is 0 and `count` 0 where nothing is danced.  `counts_left` are counts that sound after
    a phrased dance is over.
    """

    wall: int
    kind: WallKind
    part: str
    count: Fraction
    facing: Fraction
    sec: float
    counts_left: Fraction = Fraction(0)


@dataclass(frozen=True, slots=True)
class Danced:
    """The dance on the song.

    `unreached` are the stretches of a phrased dance that the song is too short for.
    """

    dance: Dance
    grid: BeatGrid
    phrasing: Phrasing | None
    tolerance: Fraction
    stretches: tuple[Stretch, ...]
    unreached: tuple[Wall, ...]
    end: End

    def off_phrase(self, stretch: Stretch) -> bool:
        """Whether the stretch begins where no wall may begin.

        False where no phrases are known, and in the song's last counts, fewer than an eight.
        """
        left = song_counts(self.grid) - stretch.starts_count + 1
        if stretch.meeting is None or left < self.grid.eights_are:
            return False
        return abs(stretch.meeting.beside) > self.tolerance


def lay(dance: Dance, grid: BeatGrid) -> Danced:
    """The dance from the grid's count 1 until the song ends, or its sequence does.

    >>> from wallwise.dance.model import Foot, Kind, Part, Section
    >>> turn = Step(Fraction(1), Foot.RIGHT, Kind.STEP, turn=Fraction(1, 2))
    >>> dance = Dance("Half", (Part("main", (Section(1, Fraction(1), Fraction(32), (turn,)),)),))
    >>> laid = lay(dance, BeatGrid.steady_at(120, length_sec=40))
    >>> [(s.starts_sec, s.ends_sec, int(s.counts)) for s in laid.stretches]
    [(0.0, 16.0, 32), (16.0, 32.0, 32), (32.0, 40.0, 16)]
    """
    length = song_counts(grid)
    phrased = dance.sequence is not None
    walls = unroll(dance, walls=_enough(dance, length), ending=phrased) if dance.counts else ()
    phrasing = phrasing_of(grid)
    reached = [wall for wall in walls if wall.begins_after < length]
    stretches = tuple(_stretch(wall, dance, grid, length=length, phrasing=phrasing) for wall in reached)
    beyond = walls[len(reached) :] if phrased else ()
    return Danced(
        dance=dance,
        grid=grid,
        phrasing=phrasing,
        tolerance=tolerance_of(grid),
        stretches=stretches,
        unreached=beyond,
        end=_end(stretches, grid, length=length),
    )


def song_counts(grid: BeatGrid) -> Fraction:
    """How many counts sound, from count 1 to the last beat, that beat's count with them; 0 for none."""
    return Fraction(max(0, floor((grid.last_beat - grid.first_beat) * grid.counts_per_beat) + 1))


def phrasing_of(grid: BeatGrid) -> Phrasing | None:
    """The phrases as the dance meets them, from count 1 to the end; None where the grid has none."""
    length = song_counts(grid)
    if not grid.phrases or length <= 0:
        return None
    places = {_place(grid, phrase.starts_beat) for phrase in grid.phrases} | {Fraction(0)}
    return Phrasing(tuple(_plain(p) for p in sorted(places) if 0 <= p < length), _plain(length))


def _place(grid: BeatGrid, beat: int) -> Fraction:
    """Counts danced before the beat."""
    return (beat - grid.first_beat) * grid.counts_per_beat


def _plain(counts: Fraction) -> float:
    return int(counts) if counts.denominator == 1 else float(counts)


def tolerance_of(grid: BeatGrid) -> Fraction:
    """How many counts beside a phrase of this grid still count as with it."""
    return Fraction(0) if all(phrase.confidence >= 1 for phrase in grid.phrases) else HEARD_TOLERANCE


def _enough(dance: Dance, length: Fraction) -> int | None:
    """More walls than the song has room for; None for a phrased dance, which ends by itself."""
    if dance.sequence is not None:
        return None
    return int(length / dance.parts[0].counts) + len(dance.restarts) + 1 if dance.parts[0].counts else 1


def _stretch(
    wall: Wall, dance: Dance, grid: BeatGrid, *, length: Fraction, phrasing: Phrasing | None
) -> Stretch:
    starts = wall.begins_after + 1
    counts = min(wall.counts, length - wall.begins_after)
    cut = counts < wall.counts
    steps = tuple(s for s in wall.steps if s.at < wall.skipped + counts + 1) if cut else wall.steps
    return Stretch(
        wall=wall,
        starts_count=starts,
        counts=counts,
        starts_sec=grid.count_to_sec(starts),
        ends_sec=grid.count_to_sec(starts + counts),
        ends_facing=(wall.starts_facing + sum((s.turn for s in steps), Fraction(0))) % 1,
        steps=steps,
        cut_by="end" if cut else wall.cut_by,
        meeting=_meeting(wall, dance, grid, phrasing) if phrasing and _in_phrases(wall, grid) else None,
    )


def _in_phrases(wall: Wall, grid: BeatGrid) -> bool:
    """Whether it begins before the last phrase is over: those told may not last to the song's end."""
    last = grid.phrases[-1]
    return float(wall.begins_after) < float(_place(grid, last.starts_beat)) + last.counts


def _meeting(wall: Wall, dance: Dance, grid: BeatGrid, phrasing: Phrasing) -> Meeting:
    place, places = wall.begins_after, [Fraction(p) for p in phrasing.places]
    index = bisect_right(places, place) - 1
    ends = [*places[1:], Fraction(phrasing.length)]
    whole = [p for p, end in zip(places, ends, strict=True) if not p or end - p >= grid.eights_are]
    near = min(whole, key=lambda p: (abs(place - p), -p))
    part = part_named(dance, wall.part)
    holds = part.counts if part is not None and part.counts else dance.counts
    marks = (Fraction(m) for m in phrasing.marks(_plain(holds), eight=grid.eights_are))
    known = {_place(grid, phrase.starts_beat): phrase.confidence for phrase in grid.phrases}
    return Meeting(
        phrase=index + 1,
        count=place - places[index] + 1,
        nearest=places.index(near) + 1,
        offset=place - near,
        beside=place - min(marks, key=lambda m: (abs(place - m), -m)),
        confidence=known.get(near, 1.0),
    )


def _end(stretches: tuple[Stretch, ...], grid: BeatGrid, *, length: Fraction) -> End:
    if not stretches:
        return End(0, WallKind.WALL, "", Fraction(0), FRONT, grid.beat_to_sec(grid.last_beat))
    last = stretches[-1]
    over = last.starts_count + last.counts - 1
    return End(
        wall=last.wall.number,
        kind=last.wall.kind,
        part=last.wall.part,
        count=last.wall.skipped + last.counts,
        facing=last.ends_facing,
        sec=grid.count_to_sec(over),
        counts_left=length - over,
    )
