"""Many sheets checked at once, on every core."""

from __future__ import annotations

import os
from collections.abc import Iterable, Iterator, Sequence
from concurrent.futures import ProcessPoolExecutor
from pathlib import Path
from typing import NamedTuple

from wallwise.desk.errors import Unreadable
from wallwise.desk.report import Report, check_sheet
from wallwise.reading.source import STDIN, SUFFIXES

# Starting a second process costs about as much as reading a few sheets.
_WORTH_SHARING = 6


class Checked(NamedTuple):
    """A sheet's report, or why there is none."""

    path: Path
    outcome: Report | Unreadable


def sheets_in(paths: Iterable[Path]) -> tuple[Path, ...]:
    """Every sheet named, and every sheet in every folder named, folder by folder in order of name.

    In a folder a sheet is a file with one of the suffixes in `SUFFIXES`; hidden files and
    folders are passed over.  A path named twice is checked once.  Raises Unreadable for a
    folder without a sheet; a missing file is for `check_sheet` to refuse.
    """
    found: dict[Path, None] = {}
    for path in paths:
        inside = list(_walk(path)) if path.is_dir() else [path]
        if not inside:
            raise Unreadable(f"{path}: there is no sheet in this folder ({', '.join(SUFFIXES)}).")
        found.update(dict.fromkeys(inside))
    return tuple(found)


def _walk(folder: Path) -> Iterator[Path]:
    for path in sorted(folder.rglob("*")):
        hidden = any(part.startswith(".") for part in path.relative_to(folder).parts)
        if not hidden and path.suffix.lower() in SUFFIXES and path.is_file():
            yield path


def check_many(paths: Sequence[Path], *, jobs: int | None = None) -> Iterator[Checked]:
    """The reports on the sheets, in the order given, each as soon as it is ready.

    `jobs` is the number of processes; as many as there are cores where it is not said.
    """
    jobs = min(jobs or os.cpu_count() or 1, len(paths))
    # Standard input can only be read by the process that was given it.
    if jobs <= 1 or len(paths) < _WORTH_SHARING or Path(STDIN) in paths:
        yield from map(_check, paths)
        return
    with ProcessPoolExecutor(jobs) as pool:
        yield from pool.map(_check, paths, chunksize=max(1, min(16, len(paths) // (4 * jobs))))


def _check(path: Path) -> Checked:
    try:
        return Checked(path, check_sheet(path))
    except Unreadable as refusal:
        return Checked(path, refusal)
