"""A song heard: its grid, what was corrected, and why it is counted so.

What a teacher corrects is kept in a file of beats, if she names one; heard again with that file,
the song keeps every correction.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from wallwise.desk.errors import NotToldRight, Unreadable
from wallwise.desk.files import write_whole
from wallwise.give.song_picture import draw
from wallwise.song.analyse import NoBeat, analyse
from wallwise.song.beatfile import SUFFIX, BeatFile, NotBeats, corrections_json, dump, load
from wallwise.song.corrections import NONE, Corrections
from wallwise.song.grid import BeatGrid
from wallwise.song.levels import Level
from wallwise.song.sound import Sound, Unhearable, read_mono

_NUMBER = re.compile(r"[-+]?(?:\d+\.?\d*|\.\d+)")


@dataclass(frozen=True, slots=True)
class SongReport:
    """A song as it was heard."""

    name: str
    sound: Sound
    grid: BeatGrid
    told: Corrections
    levels: tuple[Level, ...]
    because: str

    def as_json(self) -> dict[str, Any]:
        """The JSON that `wallwise song --json` prints; seconds to a tenth of a millisecond."""
        return {"song": self.name, **grid_as_json(self.grid)} | {
            "octaves": [
                {"bpm": round(level.bpm, 2), "likely": round(level.likely, 3)} for level in self.levels
            ],
            "because": self.because,
            "corrections": corrections_json(self.told),
        }

    def picture(self) -> str:
        """The song drawn, as SVG."""
        return draw(self.sound.samples, self.sound.rate_hz, self.grid, title=self.name)


def grid_as_json(grid: BeatGrid) -> dict[str, Any]:
    """The grid as other programs like it: every beat, eight and phrase in seconds."""

    def sec(beat: float) -> float:
        return round(grid.beat_to_sec(beat), 4)

    return {
        "bpm": round(grid.bpm, 3),
        "counts_per_minute": round(grid.counts_per_minute, 3),
        "counts_per_beat": str(grid.counts_per_beat),
        "beats_per_bar": grid.beats_per_bar,
        "length_sec": round(grid.length_sec, 4),
        "beats": [sec(beat) for beat in range(grid.last_beat + 1)],
        "first_count_sec": sec(grid.first_beat),
        "intro_counts": {"from_first_sound": grid.intro_counts, "from_clear_beat": grid.clear_intro_counts},
        "eights": [sec(beat) for beat in grid.eights()],
        "phrases": [
            {"starts_sec": sec(p.starts_beat), "counts": p.counts, "confidence": p.confidence}
            for p in grid.phrases
        ],
        "steady": grid.steady,
        "residual_ms": round(1000 * grid.residual_sec, 2),
    }


def hear_song(path: Path, told: Corrections = NONE, *, beats: Path | None = None) -> SongReport:
    """The song at `path`, with what was told before (in the file `beats`, if it is there) and now.

    A file `beats` is written anew.  Raises Unreadable and Unwritable.
    """
    if beats is not None and beats.exists():
        told = read_beats(beats).corrections.with_later(told)
    try:
        sound = read_mono(path)
        found = analyse(sound, told)
    except Unhearable as refusal:
        raise Unreadable(str(refusal)) from None
    except NoBeat as refusal:
        raise Unreadable(f"{path}: no beat can be counted here: {refusal}.") from None
    if beats is not None:
        write_whole(beats, dump(BeatFile(path.name, found.grid, told)))
    return SongReport(path.name, sound, found.grid, told, found.levels, found.because)


def read_beats(path: Path) -> BeatFile:
    """The file of beats at `path`.  Raises Unreadable."""
    try:
        return load(path.read_text(encoding="utf-8"))
    except OSError as error:
        raise Unreadable(f"{path}: this file cannot be opened ({error.strerror}).") from None
    except UnicodeDecodeError:
        raise Unreadable(f"{path}: this is no file of beats: it is no text.") from None
    except NotBeats as refusal:
        raise Unreadable(f"{path}: this is no file of beats: {refusal}.") from None


def grid_of(path: Path, told: Corrections = NONE) -> BeatGrid:
    """The grid of a song, or of a file of beats, at `path`.  Raises Unreadable."""
    if path.name.endswith(SUFFIX):
        return read_beats(path).grid
    return hear_song(path, told).grid


def read_taps(path: Path) -> tuple[float, ...]:
    """The seconds at which somebody tapped: numbers, parted by anything.  Raises Unreadable."""
    try:
        text = path.read_text(encoding="utf-8")
    except (OSError, UnicodeDecodeError):
        raise Unreadable(f"{path}: no taps can be read from this file.") from None
    taps = tuple(float(match) for match in _NUMBER.findall(text))
    if not taps:
        raise Unreadable(f"{path}: no taps can be read from this file.")
    return taps


def corrected(**told: Any) -> Corrections:
    """What was told, if it can be.  Raises NotToldRight."""
    try:
        return Corrections(**told)
    except ValueError as refusal:
        raise NotToldRight(str(refusal)) from None
