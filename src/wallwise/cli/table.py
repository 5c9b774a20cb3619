"""Many sheets on the screen: a progress bar while they are read, then a table."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from pathlib import Path
from typing import TypeVar

from rich.console import Console
from rich.progress import BarColumn, MofNCompleteColumn, Progress, TextColumn
from rich.table import Table
from rich.text import Text

from wallwise.cli.screen import STYLES, printable
from wallwise.dance.clock import facing_name
from wallwise.dance.finding import Severity
from wallwise.desk.errors import Unreadable
from wallwise.desk.many import Checked
from wallwise.desk.report import Report

Item = TypeVar("Item")


def progress(items: Iterable[Item], total: int, console: Console) -> Iterator[Item]:
    """The items, with a bar on `console` while they come; no bar where it is no terminal."""
    columns = (TextColumn("Reading"), BarColumn(), MofNCompleteColumn())
    with Progress(*columns, console=console, transient=True, disable=not console.file.isatty()) as bar:
        yield from bar.track(items, total=total)


HEADINGS = ("sheet", "dance", "counts", "walls", "ends", "errors", "warnings", "notes")


def show_table(checked: Sequence[Checked], console: Console) -> None:
    """A row a sheet: a table on a terminal, tabs between the columns in a pipe."""
    if not console.is_terminal:
        show_rows([HEADINGS, *map(cells, checked)], console)
        return
    table = Table(box=None, pad_edge=False, header_style="bold")
    for heading in HEADINGS:
        table.add_column(
            heading, justify="left" if heading in ("sheet", "dance") else "right", overflow="fold"
        )
    for item in _without_folder(checked):
        table.add_row(*(_styled(h, c) for h, c in zip(HEADINGS, cells(item), strict=True)))
    console.print(table)
    console.print(Text(_total(checked)))


def show_columns(
    headings: Sequence[str], rows: Iterable[Sequence[str]], console: Console, *, left: Sequence[str]
) -> None:
    """The rows under their headings: a table on a terminal, those named in `left` flush left, else tabs."""
    if not console.is_terminal:
        show_rows([headings, *rows], console)
        return
    table = Table(box=None, pad_edge=False, header_style="bold")
    for heading in headings:
        table.add_column(heading, justify="left" if heading in left else "right")
    for row in rows:
        table.add_row(*row)
    console.print(table)


def _without_folder(checked: Sequence[Checked]) -> list[Checked]:
    """The same, each path without the folder that all have in common: a screen is narrow."""
    if len({item.path.parent for item in checked}) != 1:
        return list(checked)
    return [item._replace(path=Path(item.path.name)) for item in checked]


def show_rows(rows: Iterable[Sequence[str]], console: Console) -> None:
    """The rows with tabs between the columns, as other programs like them."""
    for row in rows:
        print("\t".join(row), file=console.file)  # rich would turn the tabs into spaces


def cells(item: Checked) -> tuple[str, ...]:
    """The texts of a row; a sheet that cannot be read says why in the place of its title."""
    name = printable(str(item.path))
    if isinstance(item.outcome, Unreadable):
        return (name, printable(str(item.outcome).removeprefix(f"{item.path.name}: ")), *[""] * 6)
    report: Report = item.outcome
    facts, tally = report.facts, report.tally()
    figures = (facts.counts, facts.walls, facing_name(facts.ends_facing), *(tally[s] for s in Severity))
    return (name, printable(report.dance.title), *map(str, figures))


def _styled(heading: str, cell: str) -> Text:
    severity = {"errors": Severity.ERROR, "warnings": Severity.WARNING}.get(heading)
    return Text(cell, style=STYLES[severity] if severity and cell not in ("0", "") else "")


def _total(checked: Sequence[Checked]) -> str:
    reports = [item.outcome for item in checked if isinstance(item.outcome, Report)]
    sound = sum(report.sound for report in reports)
    unread = len(checked) - len(reports)
    tail = f", {unread} that cannot be read" if unread else ""
    return f"{len(checked)} sheets: {sound} sound, {len(reports) - sound} with findings to settle{tail}."
