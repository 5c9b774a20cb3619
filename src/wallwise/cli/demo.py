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
    packs = list(run_demo(out))
    show_table([Checked(Path(p.report.name), p.report) for p in packs], screen)
    screen.print()
    for made in packs:
        if not made.report.sound:
            show_findings(made.report, screen, path=made.report.name, most=_FINDINGS_SHOWN)
    sheet, song = out / "sheets" / "coathook-corner.txt", out / "songs" / "peg-and-rail.flac"
    screen.print(f"The song of Coathook Corner lies in {out / 'songs'}; its page has the walls on the clock.")
    screen.print(f"A slow track: wallwise practice {sheet} --song {song} --tempo 75% -o practice.mp3")
    screen.print(f"The sheets lie in {out / 'sheets'}. Each dance has its pack: open {out}/NAME/page.html.")
