"""`wallwise fit`: the restarts and tags that a song asks for."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Annotated

import typer

from wallwise.cli.asking import Bpm, Level, SongFile, song_asked


def fit(
    sheet: Annotated[Path, typer.Argument(metavar="SHEET", help="The sheet; - is standard input.")],
    *,
    song: SongFile = None,
    phrases: Annotated[
        str | None,
        typer.Option(metavar="COUNTS", help="The song's phrases from count 1 on, as in “32 32 16 32”."),
    ] = None,
    bpm: Bpm = None,
    level: Level = None,
    max_cuts: Annotated[int, typer.Option(min=0, max=12, help="How many restarts and tags at most.")] = 3,
    as_json: Annotated[bool, typer.Option("--json", help="Print what fits as JSON.")] = False,
) -> None:
    """Find the fewest restarts and tags that fit.

    As many walls as can be then begin with the phrases of the song.  Says how the sheet's own
    restarts and tags compare.
    """
    from wallwise.desk.fitting import fit_sheet
    from wallwise.desk.song_asked import grid_for

    if (song is None) == (phrases is None):
        raise typer.BadParameter("one of --song and --phrases is needed")
    asked = song_asked(song, bpm=bpm, phrases=phrases, level=level)
    report = fit_sheet(sheet, lambda dance: grid_for(asked, dance, any_tempo=True), max_cuts=max_cuts)
    if as_json:
        print(json.dumps(report.as_json(), indent=1))
    else:
        from wallwise.cli.screen import console
        from wallwise.cli.song_reporting import show_fit

        show_fit(report, console())
