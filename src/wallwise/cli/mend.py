"""`wallwise mend`: the mends as a diff, and those chosen applied."""

from __future__ import annotations

import sys
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

if TYPE_CHECKING:
    from rich.console import Console

    from wallwise.desk.mending import Offer
    from wallwise.desk.report import Report


def mend(
    sheet: Annotated[Path, typer.Argument(metavar="SHEET", help="The sheet to mend.")],
    *,
    take: Annotated[str, typer.Option(metavar="NUMBERS", help="Make these mends, such as 1,3.")] = "",
    take_all: Annotated[bool, typer.Option("--all", help="Make the likeliest mend of each finding.")] = False,
    yes: Annotated[
        bool, typer.Option("--yes", help="Ask nothing; without --all or --take, make the safe mends alone.")
    ] = False,
) -> int:
    """Show the mends of a sheet and make those you choose.

    The old sheet is kept.  A mend is safe when it rewrites no step and less is found with it.
    Exits 0 when the sheet is sound afterwards, 1 when something is left to settle.
    """
    from wallwise.cli.screen import console
    from wallwise.desk.mending import offers
    from wallwise.desk.report import check_sheet

    if str(sheet) == "-":
        raise typer.BadParameter("standard input cannot be mended; name a file")
    out = console()
    report = check_sheet(sheet)
    found = offers(report)
    if not found:
        out.print("There is nothing to mend." if report.sound else "There is no mend for what was found.")
        return 0 if report.sound else 1
    for offer in found:
        _show(offer, report, out)
    text = _chosen(report, found, take=take, take_all=take_all, yes=yes, out=out)
    if text == report.text:
        out.print("Nothing was changed.")
        return 0 if report.sound else 1
    return _write(sheet, report, text=text, out=out)


def _show(offer: Offer, report: Report, out: Console) -> None:
    from rich.text import Text

    from wallwise.cli.screen import STYLES, printable
    from wallwise.desk.mending import changed_lines

    place = report.lines.place(offer.mend.span.start)
    safe = "  (safe: no step is rewritten)" if offer.safe else ""
    out.print(
        Text.assemble(
            (f"{offer.number:>2}  ", "bold"),
            (offer.finding.rule, STYLES[offer.finding.severity]),
            f", line {place.line}: {printable(offer.mend.says)}{safe}",
        )
    )
    old, new = changed_lines(report, offer.mend)
    for mark, lines, style in (("-", old, "red"), ("+", new, "green")):
        for line in lines:
            out.print(Text(f"    {mark} {printable(line)}", style=style))


def _chosen(
    report: Report, found: Sequence[Offer], *, take: str, take_all: bool, yes: bool, out: Console
) -> str:
    """The text with the mends that the options, or the answer, choose."""
    from wallwise.desk.mending import chosen_text, settle

    if take:
        return chosen_text(report, _numbers(take, found))
    if take_all:
        text, made = settle(report)
        for change in made:
            out.print(f"Makes: {change.says}")
        return text if yes or _agreed() else report.text
    if yes:
        return chosen_text(report, [offer for offer in found if offer.safe])
    if not sys.stdin.isatty():
        return report.text
    answer = typer.prompt("Which ones? Numbers, or none", default="none")
    return report.text if answer.strip().lower() == "none" else chosen_text(report, _numbers(answer, found))


def _agreed() -> bool:
    if not sys.stdin.isatty():
        raise typer.BadParameter("--all asks before it writes; add --yes where nobody can answer")
    return typer.confirm("Write them?")


def _numbers(text: str, found: Sequence[Offer]) -> list[Offer]:
    chosen = []
    for word in text.replace(",", " ").split():
        if not word.isdecimal() or not 1 <= int(word) <= len(found):
            raise typer.BadParameter(f"there is no mend {word!r}; they are numbered 1 to {len(found)}")
        chosen.append(found[int(word) - 1])
    return list(dict.fromkeys(chosen))


def _write(sheet: Path, report: Report, *, text: str, out: Console) -> int:
    from wallwise.cli.reporting import verdict
    from wallwise.desk.mending import write_mended
    from wallwise.desk.report import check_text

    mended = write_mended(sheet, text, was=report.text)
    out.print(f"Mended: {mended.path}; the old sheet is {mended.kept}.")
    after = check_text(text, name=sheet.name)
    out.print(verdict(after))
    return 0 if after.sound else 1
