"""What the band does in each bar: patterns of the kit, the bass and the chords, by style.

Beats of a bar are from 0.  `least` is the fullness from which a stroke is played.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import NamedTuple


class Stroke(NamedTuple):
    """One stroke of the kit."""

    instrument: str
    beat: float
    gain: float
    least: int = 1


class Tone(NamedTuple):
    """One note of the bass (`step` 0 root, 2 fifth of the chord) or one touch of the whole chord."""

    beat: float
    beats: float
    step: int = 0
    gain: float = 1.0


@dataclass(frozen=True, slots=True)
class Style:
    """A rhythm: the kit, the bass, the chords, and the drums of the last bar before a new section."""

    kit: tuple[Stroke, ...]
    bass: tuple[Tone, ...]
    chords: tuple[Tone, ...]
    fill: tuple[Stroke, ...]


def _every(instrument: str, beats: tuple[float, ...], gain: float, least: int = 1) -> tuple[Stroke, ...]:
    return tuple(Stroke(instrument, beat, gain, least) for beat in beats)


_FOUR_FILL = (
    *_every("snare", (2.0, 2.5), 0.5),
    Stroke("high tom", 3.0, 0.6),
    Stroke("low tom", 3.5, 0.7),
)

STYLES = {
    "country": Style(
        kit=(
            *_every("kick", (0.0, 2.0), 0.9),
            *_every("snare", (1.0, 3.0), 0.55),
            *_every("hat", (0.0, 1.0, 2.0, 3.0), 0.16),
            *_every("hat", (0.5, 1.5, 2.5, 3.5), 0.1, 2),
            *_every("block", (1.0, 3.0), 0.07, 3),
        ),
        bass=(Tone(0.0, 1.6), Tone(2.0, 1.6, 2)),
        chords=(Tone(1.0, 0.9), Tone(1.5, 0.4, gain=0.5), Tone(3.0, 0.9), Tone(3.5, 0.4, gain=0.5)),
        fill=_FOUR_FILL,
    ),
    "waltz": Style(
        kit=(
            Stroke("kick", 0.0, 0.7),
            *_every("brush", (1.0, 2.0), 0.22),
            *_every("hat", (0.0, 1.0, 2.0), 0.08, 2),
            Stroke("open hat", 2.0, 0.06, 3),
        ),
        bass=(Tone(0.0, 2.4),),
        chords=(Tone(1.0, 0.95), Tone(2.0, 0.95, gain=0.8)),
        fill=(Stroke("brush", 1.5, 0.2), Stroke("high tom", 2.0, 0.4), Stroke("low tom", 2.5, 0.45)),
    ),
    "cha cha": Style(
        kit=(
            Stroke("kick", 0.0, 0.75),
            Stroke("kick", 2.5, 0.35, 2),
            *_every("block", (0.0, 1.0, 2.0, 3.0), 0.2),
            *_every("long scrape", (0.0, 2.0), 0.12, 2),
            *_every("short scrape", (1.0, 1.5, 3.0, 3.5), 0.12, 2),
            *_every("high tom", (1.0,), 0.22),
            *_every("low tom", (3.0, 3.5), 0.42),
        ),
        bass=(Tone(0.0, 1.2), Tone(1.5, 0.5, 2), Tone(2.0, 0.8, 2), Tone(3.0, 0.9)),
        chords=(Tone(0.5, 0.4), Tone(1.0, 0.4, gain=0.7), Tone(1.5, 0.4), Tone(2.5, 0.4), Tone(3.5, 0.4)),
        fill=_FOUR_FILL,
    ),
}
