"""`wallwise demo`: the main job on the dances that come with Wallwise."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

_FINDINGS_SHOWN = 2  # of each sheet


def demo(
    *,
    out: Annotated[Path, typer.Option("-o", "--out", metavar="DIR", help="The folder to write into.")] = Path(
        "wallwise-demo"
    ),
) -> None:
    """Check and pack the demo dances.

    They are those of an invented hall, some with a mistake to be found.
    """
    from wallwise.cli.reporting import show_findings
    from wallwise.cli.screen import console
    from wallwise.cli.table import show_table
    from wallwise.desk.demo import run_demo
    from wallwise.desk.many import Checked

    screen = console()
    made = run_demo(out)
    show_table([Checked(Path(pack.report.name), pack.report) for pack in made.packs], screen)
    screen.print()
    for pack in made.packs:
        if not pack.report.sound:
            show_findings(pack.report, screen, path=pack.report.name, most=_FINDINGS_SHOWN)
    screen.print(f"{made.song} is played for {made.sheet.stem}: its page has the walls on the clock.")
    asked = f"{made.sheet} --song {made.song} --tempo 75% -o practice.mp3"
    screen.print(f"A slow track: wallwise practice {asked}")
    screen.print(f"The sheets lie in {out / 'sheets'}. Each dance has its pack: open {out}/NAME/page.html.")
