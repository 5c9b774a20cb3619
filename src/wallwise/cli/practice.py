"""`wallwise practice`: a slow track with calls, counts or clicks to practise to."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from wallwise.cli.asking import Bpm, Level, SongFile, song_asked
from wallwise.give.lead import Lead

if TYPE_CHECKING:
    from wallwise.desk.practice import Practice


def practice(
    sheet: Annotated[Path, typer.Argument(metavar="SHEET", help="The sheet; - is standard input.")],
    *,
    out: Annotated[
        Path, typer.Option("-o", "--out", metavar="FILE", help="The track: .mp3, .flac, .ogg or .wav.")
    ],
    song: SongFile = None,
    beats: Annotated[
        Path | None, typer.Option(metavar="FILE", help="The .beats.json found of the song, as corrected.")
    ] = None,
    bpm: Bpm = None,
    level: Level = None,
    tempo: Annotated[
        str, typer.Option(metavar="SHARE", help="How fast: 75% is three quarters of the song's tempo.")
    ] = "100%",
    voice: Annotated[Lead, typer.Option(help="What is heard over the song.")] = Lead.WORDS,
    voice_pack: Annotated[
        Path | None, typer.Option(metavar="DIR", help="Your own recorded words, one file each.")
    ] = None,
) -> int:
    """Make a slow practice track with the calls.

    The song at any share of its tempo and at its own pitch, counted in, with each call ending before
    the beat it calls; without a song, clicks and voice alone.  Exits 0 when the sheet is sound, 1 when
    it has something to settle.
    """
    from wallwise.desk.practice import PracticeAsked, make_practice
    from wallwise.desk.song_asked import grid_for

    asked = PracticeAsked(song, beats, bpm, _share(tempo), voice, voice_pack)
    if beats is not None and song is None:
        raise typer.BadParameter("--beats tells the beats of a song; name the song too, with --song")
    told = song_asked(beats or song, bpm=bpm, level=level)
    made = make_practice(sheet, out, asked=asked, song_grid=lambda dance: grid_for(told, dance))
    _show(made)
    return 0 if made.report.sound else 1


def _share(text: str) -> float:
    """The share of the tempo that ``75%`` or ``0.75`` means."""
    number, percent, rest = text.strip().partition("%")
    try:
        share = float(number) / (100 if percent else 1)
    except ValueError:
        share = float("nan")
    if rest or not 0 < share < 10:
        raise typer.BadParameter(f"{text!r} is no tempo; a share is wanted, as in 75%")
    return share


def _show(made: Practice) -> None:
    from wallwise.cli.reporting import verdict
    from wallwise.cli.screen import console

    screen = console()
    grid = made.track.grid
    minutes, seconds = divmod(round(made.track.sound.length_sec), 60)
    screen.print(f"Wrote {made.path}")
    screen.print(
        f"{minutes}:{seconds:02d}, {grid.counts_per_minute:.1f} counts a minute, count 1 at "
        f"{grid.count_to_sec(1):.2f} s."
    )
    for note in made.notes:
        screen.print(note)
    screen.print(verdict(made.report))
