"""From sound to the grid of its beats, with what the teacher told of it.

    analysis = analyse(read_mono(path), Corrections(bpm=120))
    analysis.grid.bpm, analysis.levels

Onsets are heard once (`hear`); every correction after that needs only `lay`.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from fractions import Fraction
from itertools import pairwise
from typing import TYPE_CHECKING

from wallwise.song import phrases
from wallwise.song.beatwise import Beatwise, beatwise
from wallwise.song.corrections import NONE, Corrections
from wallwise.song.dances import WINDOWS, prior_of
from wallwise.song.grid import Anchors, BeatGrid, Phrase
from wallwise.song.levels import Level, beats_per_bar, levels
from wallwise.song.lines import Line, fit, numbered
from wallwise.song.onsets import FRAMES_PER_SEC, Heard, hear
from wallwise.song.pulse import Pulse, beat_within, find_pulse, loudest_near, seconds
from wallwise.song.sound import Sound
from wallwise.song.tempo import Prior, candidates, hinted, local_periods

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]

SHORTEST_SEC = 5.0
_TAPS_SPREAD = 0.025
_STRUCK = 0.25  # of the usual stroke
_SILENT = 0.04  # of the loudness that the loud parts have
_OTHER_LEVEL = 0.08  # a level farther from the pulse than this is another pulse
_LONGEST_INTRO = 64  # counts; a first phrase of more is not danced out
_OFF_BEAT = 0.18  # of a beat; a tap farther than this from every beat is on another part of it
_HAND_LATE_SEC = 0.02  # a hand that taps is a little late, more often than early


class NoBeat(Exception):
    """The sound has no beat that can be counted; the text is a clause that says why."""


@dataclass(frozen=True, slots=True)
class Analysis:
    """The grid, the levels at which the song may be counted (the likeliest first), and why this one."""

    grid: BeatGrid
    levels: tuple[Level, ...]
    because: str


def analyse(sound: Sound, told: Corrections = NONE) -> Analysis:
    """The beats of a mono `sound` at HEARING_RATE_HZ, with what was told of it.  Raises NoBeat."""
    if sound.length_sec < SHORTEST_SEC:
        raise NoBeat(f"it lasts only {sound.length_sec:.1f} seconds")
    if not len(sound.samples) or abs(sound.samples).max() < 1e-4:
        raise NoBeat("it is silent")
    return lay(hear(sound), told, length_sec=sound.length_sec)


def lay(heard: Heard, told: Corrections = NONE, *, length_sec: float) -> Analysis:
    """The beats of what was heard, with what was told of it.  Raises NoBeat."""
    prior = _prior(told)
    pulse, ways = _pulse(heard, prior)
    if len(pulse.frames) < 8:
        raise NoBeat("no eight beats can be heard in it")
    line = fit(numbered(seconds(pulse.frames)), seconds(pulse.frames), pulse.weights)
    within = _within(heard, pulse, line, told)
    anchors = _from_first_sound(line.anchors, within, heard)
    first_sec, last_sec = _sounding(heard)
    bare = BeatGrid(
        anchors=anchors,
        beats_per_bar=4,
        first_beat=0,
        last_beat=1,
        counts_per_beat=told.counts_per_beat or Fraction(1),
        phrases=(),
        residual_sec=line.residual_sec,
        steady=line.steady,
        length_sec=length_sec,
        first_sound_sec=first_sec,
    )
    grid = _counted(heard, bare, told, last_beat=max(8, round(bare.sec_to_beat(last_sec) - 0.25)))
    return Analysis(grid, ways, _because(told))


def _prior(told: Corrections) -> Prior | None:
    if told.taps_sec:
        return Prior(_tapped_bpm(told.taps_sec), _TAPS_SPREAD)
    if told.bpm is not None:
        return hinted(told.bpm)
    if told.dance is not None:
        return prior_of(told.dance)
    return None


def _tapped_bpm(taps_sec: tuple[float, ...]) -> float:
    """The tempo of the taps: the median slope between any two of them (Theil and Sen)."""
    import numpy as np

    taps = np.unique(np.array(taps_sec))
    if len(taps) < 4:
        raise NoBeat("its taps fall on fewer than four places")
    numbers = numbered(taps)
    later, earlier = np.triu_indices(len(taps), 1)[::-1]
    slopes = (taps[later] - taps[earlier]) / (numbers[later] - numbers[earlier])
    return float(60 / np.median(slopes))


def _pulse(heard: Heard, prior: Prior | None) -> tuple[Pulse, tuple[Level, ...]]:
    """The pulse at the likeliest level, and the levels."""
    first = candidates(heard, prior or Prior())[0].bpm
    pulse = find_pulse(heard, local_periods(heard, first))
    if len(pulse.frames) < 8:
        return pulse, ()
    ways = levels(heard, pulse.frames, prior)
    if abs(ways[0].bpm / first - 1) > _OTHER_LEVEL:
        pulse = find_pulse(heard, local_periods(heard, ways[0].bpm))
    return pulse, ways


def _within(heard: Heard, pulse: Pulse, line: Line, told: Corrections) -> float:
    """The share of a beat by which the beats lie after the numbers of the line; a tap is on a beat."""
    if told.taps_sec:
        # Taps say which part of the pattern is the beat; where in the part, the strokes know better.
        return _nearest_part(_off(line, told.taps_sec)) % 1
    within = beat_within(heard, pulse.frames)
    if told.ones_sec:
        off = (_off(line, told.ones_sec) - within + 0.5) % 1 - 0.5
        if abs(off) > _OFF_BEAT:
            within = (within + _nearest_part(off)) % 1
    return within


def _off(line: Line, taps_sec: tuple[float, ...]) -> float:
    """How far after the numbers of the line the taps lie, in the mean: a share of a beat, -1/2 to 1/2."""
    import numpy as np

    place = BeatGrid(line.anchors, 4, 0, 1, Fraction(1), (), 0.0, line.steady, 0.0).sec_to_beat
    turns = np.array([place(max(0.0, sec - _HAND_LATE_SEC)) for sec in taps_sec]) * 2 * np.pi
    return float(np.angle(np.exp(1j * turns).mean()) / (2 * np.pi))


def _nearest_part(share: float) -> float:
    """The half, third or quarter of a beat nearest to the share: nobody plays other parts."""
    parts = sorted({part / whole for whole in (2, 3, 4) for part in range(-whole + 1, whole)})
    return min(parts, key=lambda part: abs(part - share))


def _sounding(heard: Heard) -> tuple[float, float]:
    """The first and the last second that are not silent."""
    import numpy as np

    loud = np.flatnonzero(heard.loud > _SILENT * np.percentile(heard.loud, 95))
    return float(loud[0] / FRAMES_PER_SEC), float(loud[-1] / FRAMES_PER_SEC)


def _from_first_sound(anchors: Anchors, within: float, heard: Heard) -> Anchors:
    """The anchors renumbered: beat 0 is the first that is not before the first sound."""
    moved = tuple((beat - within, sec) for beat, sec in anchors)
    place = BeatGrid(moved, 4, 0, 1, Fraction(1), (), 0.0, True, 0.0).sec_to_beat(_sounding(heard)[0])
    first = math.ceil(place - 0.25)
    return tuple((beat - first, sec) for beat, sec in moved)


def _counted(heard: Heard, grid: BeatGrid, told: Corrections, *, last_beat: int) -> BeatGrid:
    """The grid with its metre, phrases and count 1."""
    import numpy as np

    places = np.array([grid.beat_to_sec(beat) for beat in range(last_beat + 2)]) * FRAMES_PER_SEC
    last_beat = _last_struck(heard, places[:-1])
    places = places[: last_beat + 2]
    song = beatwise(heard, places)
    bar = told.beats_per_bar or _told_metre(told) or beats_per_bar(heard, places)
    grid = replace(grid, beats_per_bar=bar, last_beat=last_beat, clear_beat=_clear(song))
    eight = round(grid.eights_are / grid.counts_per_beat)
    later = round(told.later_counts / float(grid.counts_per_beat))
    cuts = _cuts(song, grid, told, eight=eight, later=later)
    grid = replace(grid, phrases=_phrases(cuts, grid, later))
    return replace(grid, first_beat=_first_beat(grid, told, later))


def _last_struck(heard: Heard, places: Floats) -> int:
    """The last beat on which something is struck: what follows is the room ringing."""
    import numpy as np

    strokes = loudest_near(heard.accents, places)
    struck = np.flatnonzero(strokes > _STRUCK * np.median(strokes))
    return max(8, int(struck[-1])) if len(struck) else len(places) - 1


def _told_metre(told: Corrections) -> int | None:
    return WINDOWS[told.dance].beats_per_bar if told.dance else None


def _clear(song: Beatwise) -> int:
    """The first beat from which four in a row are struck about as hard as the song's beats are."""
    import numpy as np

    struck = song.low + song.snare + song.high > np.percentile(song.low + song.snare + song.high, 25)
    runs = np.convolve(struck, np.ones(4), "valid")
    return int(np.argmax(runs >= 3)) if (runs >= 3).any() else 0


def _cuts(
    song: Beatwise, grid: BeatGrid, told: Corrections, *, eight: int, later: int
) -> tuple[phrases.Cut, ...]:
    """The phrases before they are all moved `later` beats; breaks and moves are told of what is seen."""
    known = _known(grid, told, later)
    bar = min(grid.beats_per_bar, eight)
    cuts = phrases.cut(song, bar=bar, eight=eight, known=known)
    if not told.moves:
        return cuts
    # A phrase is moved from where it would have been, which is known only now.
    cut, kept = set(known.cuts), set(known.no_cuts)
    for from_sec, to_sec in told.moves:
        at = grid.sec_to_beat(from_sec) - later
        kept.add(min(cuts, key=lambda found: abs(found.beat - at)).beat)
        cut.add(round(grid.sec_to_beat(to_sec)) - later)
    known = phrases.Known(frozenset(cut), known.ones, frozenset(kept - cut))
    return phrases.cut(song, bar=bar, eight=eight, known=known)


def _known(grid: BeatGrid, told: Corrections, later: int) -> phrases.Known:
    ones = {round(grid.sec_to_beat(max(0.0, sec - _HAND_LATE_SEC))) for sec in told.ones_sec}
    if told.first_count_sec is not None:
        ones.add(round(grid.sec_to_beat(told.first_count_sec)))
    cuts, quiet = set(), set()
    for sec, counts in told.breaks:
        start = round(grid.sec_to_beat(sec)) - later
        end = start + max(1, round(counts / float(grid.counts_per_beat)))
        cuts |= {start, end}
        quiet |= set(range(start + 1, end))
    return phrases.Known(frozenset(cuts), frozenset(ones), frozenset(quiet))


def _phrases(cuts: tuple[phrases.Cut, ...], grid: BeatGrid, later: int) -> tuple[Phrase, ...]:
    """The phrases, `later` beats later, each up to the next and the last up to the last beat.

    What would begin before the song begins with its first whole eight.
    """
    per_beat = float(grid.counts_per_beat)
    eight = round(grid.eights_are / per_beat)
    found = []
    ends = [*(cut.beat for cut in cuts[1:]), grid.last_beat + 1 - later]
    for cut, end in zip(cuts, ends, strict=True):
        start, stop = cut.beat + later, min(end + later, grid.last_beat + 1)
        start = start if start >= 0 else start % eight
        if start < stop:
            found.append(Phrase(start, (stop - start) * per_beat, cut.confidence))
    return tuple(found)


def _first_beat(grid: BeatGrid, told: Corrections, later: int) -> int:
    """Where count 1 is: as told, else after an intro of one phrase (common practice, no source)."""
    if told.first_count_sec is not None:
        return round(grid.sec_to_beat(told.first_count_sec)) + later
    for phrase, following in pairwise(grid.phrases):
        if following.starts_beat * float(grid.counts_per_beat) > _LONGEST_INTRO:
            return phrase.starts_beat
        if phrase.counts >= grid.eights_are:
            return following.starts_beat
    return grid.phrases[0].starts_beat if grid.phrases else 0


def _because(told: Corrections) -> str:
    if told.taps_sec:
        return "it is the tempo that was tapped"
    if told.bpm is not None:
        return f"it is near the {told.bpm:g} that was told"
    if told.dance is not None:
        window = WINDOWS[told.dance]
        return f"a {told.dance} is danced at {window.slowest_bpm:g} to {window.fastest_bpm:g}"
    return "its beats are struck most, the music comes back in bars of it, and it is a usual tempo"
