"""`wallwise check`: what the sheet says, danced through, and what contradicts itself."""

from __future__ import annotations

import json
import sys
import time
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

if TYPE_CHECKING:
    from wallwise.desk.many import Checked

_LOOK_AGAIN_SEC = 0.5


def check(
    sheets: Annotated[
        list[Path], typer.Argument(metavar="SHEET", help="Sheets or folders of sheets; - is standard input.")
    ],
    *,
    as_json: Annotated[bool, typer.Option("--json", help="Print what was read as JSON.")] = False,
    watch: Annotated[bool, typer.Option("--watch", help="Check again whenever the sheet is saved.")] = False,
    jobs: Annotated[int | None, typer.Option(min=1, help="How many sheets to read at once.")] = None,
) -> int:
    """Check sheets: every count, foot, turn and wall.

    Exits 0 when all are sound, 1 when there are errors or warnings, 2 when one cannot be read.
    """
    from wallwise.desk.many import sheets_in

    if watch:
        if as_json or len(sheets) != 1 or not sheets[0].is_file():
            raise typer.BadParameter("--watch takes one sheet, and no --json")
        return _watch(sheets[0])
    paths = sheets_in(sheets)
    if len(sheets) == 1 and paths == tuple(sheets):
        return _check_one(sheets[0], as_json=as_json)
    return _check_all(paths, as_json=as_json, jobs=jobs)


def _check_one(path: Path, *, as_json: bool) -> int:
    from wallwise.desk.report import check_sheet

    report = check_sheet(path)
    if as_json:
        print(json.dumps(report.as_json(), indent=1))
    else:
        from wallwise.cli.reporting import show_report
        from wallwise.cli.screen import console

        show_report(report, console(), path=str(path))
    return 0 if report.sound else 1


def _check_all(paths: tuple[Path, ...], *, as_json: bool, jobs: int | None) -> int:
    from wallwise.cli.screen import console
    from wallwise.cli.table import progress, show_table
    from wallwise.desk.errors import Unreadable
    from wallwise.desk.many import check_many

    checked = list(progress(check_many(paths, jobs=jobs), len(paths), console(stderr=True)))
    if as_json:
        print(json.dumps([_row(item) for item in checked], indent=1))
    else:
        show_table(checked, console())
    if any(isinstance(item.outcome, Unreadable) for item in checked):
        return 2
    return 0 if all(_sound(item) for item in checked) else 1


def _sound(item: Checked) -> bool:
    from wallwise.desk.report import Report

    return isinstance(item.outcome, Report) and item.outcome.sound


def _row(item: Checked) -> dict[str, object]:
    from wallwise.desk.errors import Unreadable

    if isinstance(item.outcome, Unreadable):
        return {"sheet": str(item.path), "unreadable": str(item.outcome)}
    return {"sheet": str(item.path), **item.outcome.as_json()}


def _watch(path: Path) -> int:
    """Check whenever the file changes, until interrupted; the last exit code."""
    from wallwise.cli.screen import console
    from wallwise.desk.errors import Unreadable

    seen, code = -1, 0
    try:
        while True:
            stamp = path.stat().st_mtime_ns if path.exists() else 0
            if stamp != seen:
                seen = stamp
                console().clear()
                try:
                    code = _check_one(path, as_json=False)
                except Unreadable as refusal:
                    print(refusal, file=sys.stderr)
                    code = 2
                print("Watching; Ctrl-C ends.", flush=True)
            time.sleep(_LOOK_AGAIN_SEC)
    except KeyboardInterrupt:
        return code
