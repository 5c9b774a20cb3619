"""Songs that are told instead of heard: ``bpm: 120``, ``phrases: 32 32 16``, a line each."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from itertools import accumulate

from wallwise.song.grid import BeatGrid, Phrase
from wallwise.song.minutes import parse_time


def told_song(text: str, *, beats_per_bar: int = 4) -> BeatGrid:
    """The grid of a song told by its `bpm`, and by its `phrases` or its `length`, with an `intro`."""
    told = dict(line.split(": ", 1) for line in text.strip().splitlines())
    bpm, intro = float(told["bpm"]), int(told.get("intro", 0))
    level = Fraction(told.get("count per beat", 1))
    phrases = [int(counts) for counts in told.get("phrases", "").split()]
    beats = intro + sum(phrases) / level
    length_sec = parse_time(told["length"]) if "length" in told else float(beats) * 60 / bpm
    grid = BeatGrid.steady_at(bpm, length_sec=length_sec, beats_per_bar=beats_per_bar, counts_per_beat=level)
    starts = accumulate(phrases[:-1], initial=0) if phrases else ()
    confidence = float(told.get("confidence", 1))
    return replace(
        grid,
        first_beat=intro,
        phrases=tuple(
            Phrase(intro + int(start / level), counts, confidence)
            for start, counts in zip(starts, phrases, strict=True)
        ),
    )
