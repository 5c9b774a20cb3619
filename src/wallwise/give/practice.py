"""The practice track: the song slowed, the counts or the calls spoken over it, a count-in before it.

The track has seconds of its own: second t of the song is heard at t / tempo, later by as much as
the count-in needs.  `Track.grid` reads the beats in those seconds.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from typing import TYPE_CHECKING

from wallwise.dance.call import Call
from wallwise.dance.model import Dance, Step
from wallwise.dance.walls import Wall, WallKind, unroll
from wallwise.give import clicks
from wallwise.give.cues import Cue, Wanted, gathered, lay_calls, lay_numbers
from wallwise.give.lead import Lead
from wallwise.give.mixing import MUSIC_LUFS, Placed, mixed
from wallwise.give.voice import NUMBERS, RATE_HZ, Voice
from wallwise.song.danced import Danced, Stretch, lay
from wallwise.song.grid import BeatGrid
from wallwise.song.loudness import gain_to, loudness_lufs
from wallwise.song.sound import Sound
from wallwise.song.stretch import stretched

if TYPE_CHECKING:
    from wallwise.song.sound import Samples

_BEFORE_SEC = 0.5  # of silence before the first click
_AFTER_SEC = 2.0  # after the last count, where there is no song
_COUNTED = {3: 3, 4: 4}  # the numbers spoken of the last eight before count 1: a bar of them
_CLICK_GAIN, _FIRST_GAIN, _HALF_GAIN, _BELL_GAIN = 0.32, 0.42, 0.2, 0.45


# The calls of steps danced one after another: those of a wall, or of as much of it as is danced.
CallsOf = Callable[[tuple[Step, ...]], Sequence[Call]]


@dataclass(frozen=True)
class Track:
    """A practice track: stereo sound, the beats in its seconds, the words in it and those left out.

    `speech` holds the words alone, as loud as they are in `sound`; it is as long.
    """

    sound: Sound
    speech: Sound
    grid: BeatGrid
    cues: tuple[Cue, ...]
    left_out: tuple[Wanted, ...]


@dataclass(frozen=True)
class Music:
    """A song to dance to: its samples in stereo at `voice.RATE_HZ`, and its beats."""

    sound: Sound
    grid: BeatGrid


def silent_grid(dance: Dance, counts_per_minute: float) -> BeatGrid:
    """The beats for a dance without a song: as many as bring the room back to the front.

    That is after the last restart or tag, or the whole sequence of a phrased dance.
    """
    walls = unroll(dance, ending=dance.sequence is not None)
    counts = sum((wall.counts for wall in walls), Fraction(0))
    length_sec = float(max(counts, Fraction(2))) * 60 / counts_per_minute
    return BeatGrid.steady_at(counts_per_minute, length_sec=length_sec, beats_per_bar=dance.beats_per_bar)


def slowed(grid: BeatGrid, tempo: float, *, delay_sec: float = 0.0) -> BeatGrid:
    """The grid of the song at `tempo` times its speed, begun `delay_sec` late.

    >>> slow = slowed(BeatGrid.steady_at(120, length_sec=60), 0.75, delay_sec=4)
    >>> round(slow.bpm, 6), slow.beat_to_sec(0)
    (90.0, 4.0)
    """
    return replace(
        grid,
        anchors=tuple((beat, sec / tempo + delay_sec) for beat, sec in grid.anchors),
        residual_sec=grid.residual_sec / tempo,
        length_sec=grid.length_sec / tempo + delay_sec,
        first_sound_sec=grid.first_sound_sec / tempo + delay_sec,
    )


def practice_track(
    dance: Dance,
    *,
    music: Music | None,
    grid: BeatGrid,
    tempo: float,
    lead: Lead,
    voice: Voice | None,
    calls_of: CallsOf,
) -> Track:
    """The track of a dance over `music`, or over clicks alone where there is none.

    `grid` is at the song's own speed, `tempo` the share of it at which the track plays.  Without a
    `voice` clicks lead instead of words and counts.  `calls_of` gives the calls of a wall's steps.
    """
    delay_sec = _delay(slowed(grid, tempo))
    heard = slowed(grid, tempo, delay_sec=delay_sec)
    danced = lay(dance, heard)
    cues, left_out = _spoken(danced, lead, voice, calls_of)
    clicking = music is None or lead is Lead.CLICK or (voice is None and lead is not Lead.NONE)
    marks = list(_marks(danced, clicking=clicking))
    song = _song(music, tempo, delay_sec) if music is not None else None
    length_sec = max(
        heard.length_sec + (_AFTER_SEC if music is None else 0), *(c.ends_sec for c in cues), 0.0
    )
    sound, speech = mixed(
        song,
        marks,
        [Placed(cue.starts_sec, cue.sound) for cue in cues],
        length_sec=length_sec,
    )
    return Track(sound, speech, heard, cues, left_out)


def _song(music: Music, tempo: float, delay_sec: float) -> Placed:
    # Stretching leaves the loudness as it was, and the song as it came is the shorter one to measure.
    level = gain_to(MUSIC_LUFS, loudness_lufs(music.sound))
    return Placed(delay_sec, stretched(music.sound, tempo), level)


def _delay(grid: BeatGrid) -> float:
    """How much later the song has to begin, so that a whole eight can be counted before count 1."""
    return max(0.0, _BEFORE_SEC - grid.count_to_sec(1 - grid.eights_are))


def _spoken(
    danced: Danced, lead: Lead, voice: Voice | None, calls_of: CallsOf
) -> tuple[tuple[Cue, ...], tuple[Wanted, ...]]:
    if voice is None or lead not in (Lead.WORDS, Lead.COUNTS):
        return (), ()
    if lead is Lead.COUNTS:
        return lay_numbers(list(_numbers(danced)), voice)
    calls, left_out = lay_calls(gathered(_calls(danced, calls_of)), voice)
    counted, _ = lay_numbers(list(_count_in(danced.grid)), voice, among=calls)
    return tuple(sorted((*counted, *calls), key=lambda cue: cue.starts_sec)), left_out


def _calls(danced: Danced, calls_of: CallsOf) -> Iterator[Wanted]:
    """The calls of every wall; what is out of the ordinary is said before its first call."""
    before: Wall | None = None
    for stretch in danced.stretches:
        news = _news(stretch.wall, before)
        before = stretch.wall
        for call in calls_of(stretch.steps):
            words = call.words
            if news:
                words = (*(f"{news}, {said}" for said in words), news, *words)
                news = ""
            yield Wanted(_sec_of(danced.grid, stretch, call.at), words)


def _news(wall: Wall, before: Wall | None) -> str:
    if wall.kind is WallKind.TAG:
        return "tag"
    return "restart" if before is not None and before.cut_by == "restart" else ""


def _sec_of(grid: BeatGrid, stretch: Stretch, at: Fraction) -> float:
    """When beat `at` of the stretch's part comes."""
    return grid.count_to_sec(stretch.starts_count - stretch.wall.skipped + at - 1)


def _numbers(danced: Danced) -> Iterator[Wanted]:
    """Every count from the count-in on, by eights that begin anew with each wall."""
    grid = danced.grid
    for count in range(1 - grid.eights_are, 1):
        yield _number(grid, grid.count_to_sec(count), count)
    for stretch in danced.stretches:
        for count in _counts_of(stretch):
            yield _number(grid, _sec_of(grid, stretch, Fraction(count)), count)


def _counts_of(stretch: Stretch) -> range:
    """The whole counts of the stretch, from 1 at the beginning of its part."""
    first = int(stretch.wall.skipped) + 1
    return range(first, first + int(stretch.counts))


def _number(grid: BeatGrid, sec: float, count: int) -> Wanted:
    return Wanted(sec, (NUMBERS[(count - 1) % grid.eights_are],))


def _count_in(grid: BeatGrid) -> Iterator[Wanted]:
    """The last bar before count 1: "five, six, seven, eight"."""
    for count in range(1 - _COUNTED.get(grid.beats_per_bar, grid.beats_per_bar), 1):
        yield _number(grid, grid.count_to_sec(count), count)


def _marks(danced: Danced, *, clicking: bool) -> Iterator[Placed]:
    """The clicks: the count-in always, and where nothing else leads, all counts, halves and walls."""
    grid = danced.grid
    for count in range(1 - grid.eights_are, 1):
        yield _click(grid.count_to_sec(count), first=count == 1 - grid.eights_are)
    for stretch in danced.stretches if clicking else ():
        for count in _counts_of(stretch):
            sec = _sec_of(grid, stretch, Fraction(count))
            if count == 1:
                yield _placed(sec, clicks.wall_bell(), _BELL_GAIN)
            else:
                yield _click(sec, first=count % grid.eights_are == 1)
        for step in stretch.steps:
            if step.at.denominator > 1:
                yield _placed(_sec_of(grid, stretch, step.at), clicks.half_click(), _HALF_GAIN)


def _click(sec: float, *, first: bool) -> Placed:
    if first:
        return _placed(sec, clicks.first_click(), _FIRST_GAIN)
    return _placed(sec, clicks.count_click(), _CLICK_GAIN)


def _placed(sec: float, samples: Samples, gain: float) -> Placed:
    return Placed(sec, Sound(samples, RATE_HZ), gain)
