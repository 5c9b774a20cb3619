"""The commands of `wallwise`, and what becomes of a refusal.

Exit codes: 0 sound, 1 errors or warnings found, 2 bad usage or nothing that can be read.
Only typer is imported here: `wallwise --help` has to answer at once, so each command imports
the desk, and the desk the libraries, when it runs.
"""

from __future__ import annotations

import sys
from collections.abc import Sequence
from typing import Annotated

import typer
from typer.exceptions import TyperException

from wallwise.cli import check, demo, explain, fit, glossary, mend, pack, practice, song, walls
from wallwise.desk.errors import DeskError

app = typer.Typer(
    help="Line-dance step sheets, proven: every foot, turn and wall, and what contradicts itself.",
    add_completion=False,
    rich_markup_mode=None,
    pretty_exceptions_enable=False,
    context_settings={"help_option_names": ["-h", "--help"]},
)
for command in (
    check.check,
    walls.walls,
    fit.fit,
    song.song,
    mend.mend,
    explain.explain,
    glossary.glossary,
    pack.pack,
    practice.practice,
    demo.demo,
):
    app.command()(command)


@app.callback(invoke_without_command=True)
def _without_command(
    context: typer.Context,
    version: Annotated[bool, typer.Option("--version", help="Print the version and stop.")] = False,
) -> None:
    if version:
        from wallwise import __version__

        print(f"wallwise {__version__}")
        raise typer.Exit
    if context.invoked_subcommand is None:
        print(context.get_help())


def run(arguments: Sequence[str] | None = None) -> int:
    """Run the command line; the exit code.  A refusal is one sentence on standard error."""
    try:
        code = app(arguments, standalone_mode=False, prog_name="wallwise")
    except DeskError as refusal:
        print(refusal, file=sys.stderr)
        return 2
    except TyperException as misuse:
        said = " ".join(misuse.format_message().split())
        if said:
            print(f"{said.rstrip('.')} (wallwise --help tells more).", file=sys.stderr)
        return 2
    except typer.Abort:
        return 130
    return code if isinstance(code, int) else 0
