"""The beats of a song heard for one dance: what its sheet says of the music helps the ear.

The sheet's tempo, its rhythm and its metre are hints, not truths: sheets are written to one
recording and danced to another.  Where the song is not at the sheet's tempo, and by itself is
heard at quite another and about as evenly, the song is believed.
"""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from wallwise.dance.model import Dance
from wallwise.song.analyse import Analysis, lay
from wallwise.song.corrections import NONE, Corrections
from wallwise.song.grid import BeatGrid
from wallwise.song.intro import begun_for
from wallwise.song.onsets import hear
from wallwise.song.sound import Sound
from wallwise.song.tempo import FASTEST_BPM, SLOWEST_BPM
from wallwise.song.tempos import rhythm_of, same_tempo

# Heard at another level a tempo is the same: "accuracy 2" of Schreiber & Müller; and three against two.
_LEVELS = tuple(Fraction(*parts) for parts in ((1, 1), (1, 2), (2, 1), (1, 3), (3, 1), (2, 3), (3, 2)))

_AS_TOLD = 0.02  # a recording that the sheet was written to is hardly farther from its tempo
_AS_EVEN = 1.5


def grid_heard_for(dance: Dance, sound: Sound, told: Corrections = NONE) -> BeatGrid:
    """The grid of a mono `sound` at HEARING_RATE_HZ with count 1 where the dance begins.

    What is `told` holds; where it tells nothing, the dance's own tempo, rhythm, metre and intro
    help.  Raises NoBeat.
    """
    heard = hear(sound)
    hinted = with_hints(dance, told)
    analysis = lay(heard, hinted, length_sec=sound.length_sec)
    if hinted.bpm != told.bpm and abs(analysis.grid.bpm / (hinted.bpm or 1) - 1) > _AS_TOLD:
        alone = lay(heard, replace(hinted, bpm=None), length_sec=sound.length_sec)
        analysis = _believed(analysis, alone)
    return begun_for(dance, analysis.grid, told)


def with_hints(dance: Dance, told: Corrections) -> Corrections:
    """What is told, and from the sheet what is not; taps and a tempo told stand before its tempo."""
    bpm = float(dance.bpm) if dance.bpm is not None and SLOWEST_BPM <= dance.bpm <= FASTEST_BPM else None
    rhythm = rhythm_of(dance)
    return replace(
        told,
        bpm=told.bpm if told.bpm is not None or told.taps_sec else bpm,
        dance=told.dance or (rhythm.name if rhythm else None),
        beats_per_bar=told.beats_per_bar or dance.beats_per_bar,
    )


def _believed(hinted: Analysis, alone: Analysis) -> Analysis:
    """The song heard with the sheet's tempo, unless it is heard as evenly at quite another."""
    another = not any(same_tempo(alone.grid.bpm * float(k), hinted.grid.bpm) for k in _LEVELS)
    even = alone.grid.residual_sec <= _AS_EVEN * hinted.grid.residual_sec
    return alone if another and even else hinted
