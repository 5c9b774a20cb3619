"""`wallwise walls`: where the room faces, wall by wall."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

if TYPE_CHECKING:
    from wallwise.dance.walls import Wall


def walls(
    sheet: Annotated[Path, typer.Argument(metavar="SHEET", help="The sheet; - is standard input.")],
) -> None:
    """Show where each wall starts and ends facing.

    With the counts danced on it, its restart or tag, and when the room is back at the front.
    """
    from rich.table import Table

    from wallwise.cli.screen import console
    from wallwise.cli.table import show_rows
    from wallwise.desk.facts import walls_of
    from wallwise.desk.report import check_sheet

    report = walls_of(check_sheet(sheet).dance)
    out = console()
    rows = [_cells(wall, phrased=report.phrased) for wall in report.walls]
    headings = ("wall", "starts facing", "counts", "", "ends facing")
    if out.is_terminal:
        table = Table(box=None, pad_edge=False, header_style="bold")
        for heading in headings:
            table.add_column(heading, justify="left" if heading in ("wall", "") else "right")
        for row in rows:
            table.add_row(*row)
        out.print(table)
    else:
        show_rows([headings, *rows], out)
    out.print(report.front_again)


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
