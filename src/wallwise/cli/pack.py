"""`wallwise pack`: the folder to take to the hall."""

from __future__ import annotations

from functools import partial
from pathlib import Path
from typing import Annotated

import typer

from wallwise.cli.asking import SongFile


def pack(
    sheet: Annotated[Path, typer.Argument(metavar="SHEET", help="The sheet; - is standard input.")],
    *,
    out: Annotated[Path, typer.Option("-o", "--out", metavar="DIR", help="The folder to write into.")],
    song: SongFile = None,
) -> int:
    """Write the teaching pack of a sheet.

    It holds dance.json, and page.html to read and to print; with a song, its walls on the clock.
    Exits 0 when the sheet is sound, 1 when the page shows something to settle.
    """
    from wallwise.cli.reporting import verdict
    from wallwise.cli.screen import console
    from wallwise.desk.pack import make_pack

    grid_for = None
    if song is not None:
        from wallwise.desk import song_asked

        grid_for = partial(song_asked.grid_for, song_asked.SongAsked(song))
    made = make_pack(sheet, out, grid_for=grid_for)
    screen = console()
    for path in made.files:
        screen.print(f"Wrote {path}")
    screen.print(verdict(made.report))
    return 0 if made.report.sound else 1
