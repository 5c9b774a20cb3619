"""The options by which a command is told its song, so that they are the same everywhere."""

from __future__ import annotations

from enum import StrEnum
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

if TYPE_CHECKING:
    from fractions import Fraction

    from wallwise.desk.song_asked import SongAsked


class CountsPerBeat(StrEnum):
    """How many counts are danced to a beat of the song."""

    HALF = "1/2"
    ONE = "1"
    TWO = "2"


SongFile = Annotated[
    Path | None, typer.Option("--song", metavar="FILE", help="The song, or the .beats.json found of it.")
]
Bpm = Annotated[
    float | None, typer.Option(metavar="N", help="The song's beats a minute; without, the sheet's.")
]
Level = Annotated[
    CountsPerBeat | None,
    typer.Option("--count-per-beat", help="How many counts are danced to a beat of the song."),
]


def song_asked(
    song: Path | None,
    *,
    bpm: float | None,
    length: str | None = None,
    phrases: str | None = None,
    level: CountsPerBeat | None = None,
) -> SongAsked:
    """What the options say of the song; misuse where they tell two songs at once."""
    from wallwise.desk.song_asked import SongAsked

    if song is not None and (length is not None or phrases is not None):
        raise typer.BadParameter("--song tells its own length and phrases; leave out --length and --phrases")
    return SongAsked(song, bpm, length, phrases, fraction_of(level))


def fraction_of(level: CountsPerBeat | None) -> Fraction | None:
    """The counts per beat that were chosen; None for none."""
    from fractions import Fraction

    return Fraction(level.value) if level is not None else None
