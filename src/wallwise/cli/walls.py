"""`wallwise walls`: where the room faces, wall by wall, and when, on a song."""

from __future__ import annotations

import json
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from wallwise.cli.asking import Bpm, Level, SongFile, song_asked

if TYPE_CHECKING:
    from wallwise.dance.walls import Wall
    from wallwise.desk.song_asked import SongAsked


def walls(
    sheet: Annotated[Path, typer.Argument(metavar="SHEET", help="The sheet; - is standard input.")],
    *,
    song: SongFile = None,
    bpm: Bpm = None,
    length: Annotated[
        str | None, typer.Option(metavar="M:SS", help="How long the song is, where there is no file.")
    ] = None,
    phrases: Annotated[
        str | None,
        typer.Option(metavar="COUNTS", help="The song's phrases from count 1 on, as in “32 32 16 32”."),
    ] = None,
    level: Level = None,
    as_json: Annotated[bool, typer.Option("--json", help="Print the walls on the song as JSON.")] = False,
) -> int:
    """Show where each wall starts and ends facing.

    With the counts danced on it, its restart or tag, and when the room is back at the front.  With a
    song, or its tempo and length, also when each wall starts, in which phrase, where the song ends
    and how to end at the front; then exits 1 when the sheet and the song do not agree.
    """
    asked = song_asked(song, bpm=bpm, length=length, phrases=phrases, level=level)
    if asked.told:
        return _on_song(sheet, asked, as_json=as_json)
    if as_json:
        raise typer.BadParameter("--json needs a song: --song, or --bpm and --length")
    _by_itself(sheet)
    return 0


def _by_itself(sheet: Path) -> None:
    from wallwise.cli.screen import console
    from wallwise.cli.table import show_columns
    from wallwise.desk.facts import walls_of
    from wallwise.desk.report import check_sheet

    report = walls_of(check_sheet(sheet).dance)
    out = console()
    rows = [_cells(wall, phrased=report.phrased) for wall in report.walls]
    show_columns(("wall", "starts facing", "counts", "", "ends facing"), rows, out, left=("wall", ""))
    out.print(report.front_again)


def _on_song(sheet: Path, asked: SongAsked, *, as_json: bool) -> int:
    from wallwise.desk.on_song import walls_on_song
    from wallwise.desk.song_asked import grid_for

    report = walls_on_song(sheet, lambda dance: grid_for(asked, dance))
    if as_json:
        print(json.dumps(report.as_json(), indent=1))
    else:
        from wallwise.cli.screen import console
        from wallwise.cli.song_reporting import show_on_song

        show_on_song(report, console(), path=str(sheet))
    return 0 if report.report.sound else 1


def _cells(wall: Wall, *, phrased: bool) -> tuple[str, ...]:
    from wallwise.dance.clock import facing_name
    from wallwise.dance.walls import WallKind
    from wallwise.desk.facts import number, what_happens

    name = str(wall.number) if wall.kind is WallKind.WALL else ""
    if phrased and wall.kind is WallKind.WALL:
        name = f"{wall.number}  {wall.part}"
    return (
        name,
        facing_name(wall.starts_facing),
        str(number(wall.counts)),
        what_happens(wall),
        facing_name(wall.ends_facing),
    )
