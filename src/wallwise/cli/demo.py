"""`wallwise demo`: the main job on the dances that come with Wallwise."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer


def demo(
    *,
    out: Annotated[Path, typer.Option("-o", "--out", metavar="DIR", help="The folder to write into.")] = Path(
        "wallwise-demo"
    ),
) -> None:
    """Check and pack the demo dances.

    They are those of an invented hall, some with a mistake to be found.
    """
    from wallwise.cli.reporting import finding_lines
    from wallwise.cli.screen import console
    from wallwise.cli.table import show_table
    from wallwise.desk.demo import run_demo
    from wallwise.desk.many import Checked

    screen = console()
    packs = list(run_demo(out))
    show_table([Checked(Path(p.report.name), p.report) for p in packs], screen)
    for made in packs:
        for finding in (f for f in made.report.findings if f.loud):
            screen.print()
            for line in finding_lines(finding, made.report, path=made.report.name, width=screen.width):
                screen.print(line)
    screen.print()
    screen.print(f"The sheets lie in {out / 'sheets'}. Each dance has its pack: open {out}/NAME/page.html.")
