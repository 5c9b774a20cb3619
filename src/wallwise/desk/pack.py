"""The teaching pack: a folder to take to the hall."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from wallwise.dance import codec
from wallwise.desk.errors import Unwritable
from wallwise.desk.files import write_whole
from wallwise.desk.report import Report, check_sheet
from wallwise.desk.song_asked import GridFor
from wallwise.give.page import page
from wallwise.song.danced import lay
from wallwise.song.grid import BeatGrid


@dataclass(frozen=True, slots=True)
class Pack:
    """What was written, and the report it was made from."""

    report: Report
    folder: Path
    files: tuple[Path, ...]


def make_pack(sheet: str | Path, folder: Path, *, grid_for: GridFor | None = None) -> Pack:
    """Write ``dance.json`` and ``page.html`` for the sheet into `folder`, which is made where it is missing.

    With the song that `grid_for` gives for the dance, the page has the walls on the clock.  Raises
    Unreadable for the sheet or the song and Unwritable for the folder; a sheet with findings gets
    its pack, and the page shows them.
    """
    report = check_sheet(sheet)
    return pack_report(report, folder, grid=grid_for(report.dance) if grid_for is not None else None)


def pack_report(report: Report, folder: Path, *, grid: BeatGrid | None = None) -> Pack:
    """`make_pack` for a sheet already checked, with the beats of its song."""
    if folder.exists() and not folder.is_dir():
        raise Unwritable(f"{folder}: this is a file, and a pack is a folder.")
    written = (
        write_whole(folder / "dance.json", codec.write(report.dance)),
        write_whole(folder / "page.html", page_of(report, grid)),
    )
    return Pack(report, folder, written)


def page_of(report: Report, grid: BeatGrid | None = None) -> str:
    """The page of a checked sheet, as HTML; its walls on the clock where the song's beats are given."""
    placed = [(report.lines.place(f.span.start).line, f) for f in report.findings]
    return page(report.dance, findings=placed, danced=lay(report.dance, grid) if grid is not None else None)
