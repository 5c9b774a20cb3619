"""Where count 1 falls, when the sheet says how long to wait and the song says where its eights begin."""

from __future__ import annotations

from dataclasses import replace

from wallwise.dance.model import Dance
from wallwise.song.corrections import Corrections
from wallwise.song.grid import BeatGrid


def begun_for(dance: Dance, grid: BeatGrid, told: Corrections) -> BeatGrid:
    """The grid with count 1 where the sheet's intro puts it; where it is, if somebody told that."""
    if dance.intro_counts is None or told.first_count_sec is not None or told.later_counts:
        return grid
    return with_intro(grid, dance.intro_counts)


def with_intro(grid: BeatGrid, counts: float) -> BeatGrid:
    """The grid with count 1 where an intro of so many counts ends, if an eight of the music begins there.

    The counts run from the first clear beat or from the first sound, and are counts of the dance
    or beats of the song: sheets do all of it.  Of the places where an eight begins the one nearest
    to the grid's own count 1 is taken.  Where there is none the two contradict each other, and the
    grid is given back as it is.

    >>> grid = BeatGrid.steady_at(120, length_sec=60)
    >>> with_intro(grid, 32).first_beat, with_intro(grid, 30).first_beat
    (32, 0)
    """
    sound = round(grid.sec_to_beat(grid.first_sound_sec))
    beats = {counts / float(grid.counts_per_beat), counts}
    places = sorted({round(start + waited) for start in (grid.clear_beat, sound) for waited in beats})
    eights = [beat for beat in places if beat < grid.last_beat and _begins_an_eight(grid, beat)]
    nearest = min(eights, key=lambda beat: abs(beat - grid.first_beat), default=grid.first_beat)
    return replace(grid, first_beat=nearest)


def _begins_an_eight(grid: BeatGrid, beat: int) -> bool:
    """Whether an eight begins on the beat: one counted from count 1, or from the phrase it lies in."""
    step = grid.eights_are / float(grid.counts_per_beat)
    begun = [phrase.starts_beat for phrase in grid.phrases if phrase.starts_beat <= beat]
    return (beat - (begun[-1] if begun else grid.first_beat)) % step == 0
