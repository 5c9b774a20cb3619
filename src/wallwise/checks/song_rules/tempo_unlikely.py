"""The song is much faster or slower than the sheet says, or than its rhythm is danced."""

from __future__ import annotations

import re
from collections.abc import Iterator
from fractions import Fraction

from wallwise.checks.rule import OnSong, SongRule
from wallwise.checks.song_sight import header_span
from wallwise.dance.finding import Finding, Severity
from wallwise.reading import Reading
from wallwise.song.tempos import ANY, Rhythm, level_that_fits, rhythm_of, same_tempo, within

# Music and names lines name songs and people, which may be called anything.
_OTHERS = re.compile(r"^\W*(?:music|song|tune|track|trk|choreo\w*|by|from|to|subject)\b", re.IGNORECASE)
_LEVELS = {
    Fraction(1, 2): "a count for every two of its beats",
    Fraction(1): "a count for every beat",
    Fraction(2): "two counts for every beat",
}


def _find(song: OnSong) -> Iterator[Finding]:
    reading, grid, told = song.reading, song.danced.grid, song.danced.dance.bpm
    if told is not None and not any(
        same_tempo(bpm, float(told)) for bpm in (grid.bpm, grid.counts_per_minute)
    ):
        yield RULE.on(
            header_span(reading, rf"\b{_number(float(told))}\b"),
            f"The sheet gives {_number(float(told))} beats a minute, but the song has {_number(grid.bpm)}"
            f"{_octave(grid.bpm, told)}.",
        )
        return
    rhythm = _rhythm(reading)
    tempo = grid.counts_per_minute
    if within(tempo, rhythm.windows):
        return
    windows = " or ".join(f"{low:g} to {high:g}" for low, high in rhythm.windows)
    level = level_that_fits(grid.bpm, rhythm.windows, now=grid.counts_per_beat)
    advice = f"; {_LEVELS[level]} would make it {_number(grid.bpm * float(level))}" if level else ""
    yield RULE.on(
        header_span(reading, rhythm.words) if rhythm.words else None,
        f"The song makes {_number(tempo)} counts a minute, but {rhythm.name} is danced at {windows}{advice}.",
    )


def _rhythm(reading: Reading) -> Rhythm:
    """The rhythm that the sheet's header names, `ANY` where it names none."""
    dance = reading.dance
    lines = [line.text for line in reading.outline.header if not _OTHERS.match(line.text)]
    heads = [text for text in lines if text.strip().casefold() != dance.title.strip().casefold()]
    return rhythm_of(dance, *heads) or ANY


def _octave(bpm: float, told: Fraction) -> str:
    for factor, said in ((2, "twice as many: count every second beat"), (0.5, "half as many")):
        if same_tempo(bpm / factor, float(told)):
            return f", {said}"
    return ": another song or version, or another speed"


def _number(tempo: float) -> str:
    return f"{tempo:.1f}".removesuffix(".0")


RULE = SongRule(
    "tempo-unlikely", Severity.WARNING, "The song is not at the tempo of the sheet or of its rhythm.", _find
)
