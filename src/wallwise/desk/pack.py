"""The teaching pack: a folder to take to the hall."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from wallwise.dance import codec
from wallwise.desk.errors import Unwritable
from wallwise.desk.files import write_whole
from wallwise.desk.report import Report, check_sheet
from wallwise.give.page import page


@dataclass(frozen=True, slots=True)
class Pack:
    """What was written, and the report it was made from."""

    report: Report
    folder: Path
    files: tuple[Path, ...]


def make_pack(sheet: str | Path, folder: Path) -> Pack:
    """Write ``dance.json`` and ``page.html`` for the sheet into `folder`, which is made where it is missing.

    Raises Unreadable for the sheet and Unwritable for the folder; a sheet with findings gets
    its pack, and the page shows them.
    """
    return pack_report(check_sheet(sheet), folder)


def pack_report(report: Report, folder: Path) -> Pack:
    """`make_pack` for a sheet already checked."""
    if folder.exists() and not folder.is_dir():
        raise Unwritable(f"{folder}: this is a file, and a pack is a folder.")
    written = (
        write_whole(folder / "dance.json", codec.write(report.dance)),
        write_whole(folder / "page.html", page_of(report)),
    )
    return Pack(report, folder, written)


def page_of(report: Report) -> str:
    """The page of a checked sheet, as HTML."""
    placed = [(report.lines.place(f.span.start).line, f) for f in report.findings]
    return page(report.dance, findings=placed)
