"""The beats of a song as a file: what was found, and what the teacher corrected.

A `.beats.json` holds the grid and the corrections apart: heard anew, the grid may change, the
corrections stay.  `beats.schema.json` beside this module describes it (JSON Schema 2020-12).
Nothing of the sound itself is kept, and of its name only the last part.
"""

from __future__ import annotations

import json
from dataclasses import dataclass
from fractions import Fraction
from typing import Any

from wallwise.song.corrections import Corrections
from wallwise.song.grid import BeatGrid, Phrase

VERSION = 1
SUFFIX = ".beats.json"


class NotBeats(Exception):
    """The text is no file of beats; a clause that says why."""


@dataclass(frozen=True, slots=True)
class BeatFile:
    """A song's name, the grid found for it, and what was corrected."""

    song: str
    grid: BeatGrid
    corrections: Corrections


def dump(file: BeatFile) -> str:
    """The file as text; undone by `load`."""
    content = {
        "wallwise_beats": VERSION,
        "song": file.song,
        "corrections": corrections_json(file.corrections),
        "grid": grid_json(file.grid),
    }
    return json.dumps(content, indent=1, ensure_ascii=False) + "\n"


def load(text: str) -> BeatFile:
    """The file that the text holds.  Raises NotBeats."""
    try:
        content = json.loads(text)
    except ValueError:
        raise NotBeats("it is no JSON") from None
    if not isinstance(content, dict) or "wallwise_beats" not in content:
        raise NotBeats("it holds no beats")
    if content["wallwise_beats"] != VERSION:
        raise NotBeats(f"it is of version {content['wallwise_beats']}, and {VERSION} is read here")
    try:
        return BeatFile(
            str(content["song"]), _grid(content["grid"]), _corrections(content.get("corrections", {}))
        )
    except (KeyError, TypeError, ValueError, ArithmeticError, AttributeError) as error:
        raise NotBeats(f"its contents contradict themselves ({error})") from None


def grid_json(grid: BeatGrid) -> dict[str, Any]:
    """The grid as JSON, every number as exact as it is."""
    return {
        "anchors": [list(anchor) for anchor in grid.anchors],
        "beats_per_bar": grid.beats_per_bar,
        "first_beat": grid.first_beat,
        "last_beat": grid.last_beat,
        "counts_per_beat": str(grid.counts_per_beat),
        "phrases": [
            {"starts_beat": p.starts_beat, "counts": p.counts, "confidence": p.confidence}
            for p in grid.phrases
        ],
        "residual_sec": grid.residual_sec,
        "steady": grid.steady,
        "length_sec": grid.length_sec,
        "first_sound_sec": grid.first_sound_sec,
        "clear_beat": grid.clear_beat,
    }


def _grid(content: dict[str, Any]) -> BeatGrid:
    return BeatGrid(
        anchors=tuple((float(beat), float(sec)) for beat, sec in content["anchors"]),
        beats_per_bar=int(content["beats_per_bar"]),
        first_beat=int(content["first_beat"]),
        last_beat=int(content["last_beat"]),
        counts_per_beat=Fraction(content["counts_per_beat"]),
        phrases=tuple(
            Phrase(int(p["starts_beat"]), float(p["counts"]), float(p["confidence"]))
            for p in content["phrases"]
        ),
        residual_sec=float(content["residual_sec"]),
        steady=bool(content["steady"]),
        length_sec=float(content["length_sec"]),
        first_sound_sec=float(content["first_sound_sec"]),
        clear_beat=int(content["clear_beat"]),
    )


def corrections_json(told: Corrections) -> dict[str, Any]:
    """What was corrected, as JSON; what was not is left out."""
    content: dict[str, Any] = {
        "bpm": told.bpm,
        "dance": told.dance,
        "beats_per_bar": told.beats_per_bar,
        "counts_per_beat": None if told.counts_per_beat is None else str(told.counts_per_beat),
        "taps_sec": list(told.taps_sec),
        "ones_sec": list(told.ones_sec),
        "first_count_sec": told.first_count_sec,
        "later_counts": told.later_counts or None,
        "breaks": [{"at_sec": sec, "counts": counts} for sec, counts in told.breaks],
        "moves": [{"from_sec": start, "to_sec": end} for start, end in told.moves],
    }
    return {key: value for key, value in content.items() if value is not None and value != []}


def _corrections(content: dict[str, Any]) -> Corrections:
    def number(key: str) -> float | None:
        return float(content[key]) if key in content else None

    return Corrections(
        bpm=number("bpm"),
        dance=content.get("dance"),
        beats_per_bar=int(content["beats_per_bar"]) if "beats_per_bar" in content else None,
        counts_per_beat=Fraction(content["counts_per_beat"]) if "counts_per_beat" in content else None,
        taps_sec=tuple(float(sec) for sec in content.get("taps_sec", ())),
        ones_sec=tuple(float(sec) for sec in content.get("ones_sec", ())),
        first_count_sec=number("first_count_sec"),
        later_counts=int(content.get("later_counts", 0)),
        breaks=tuple((float(b["at_sec"]), float(b["counts"])) for b in content.get("breaks", ())),
        moves=tuple((float(m["from_sec"]), float(m["to_sec"])) for m in content.get("moves", ())),
    )
