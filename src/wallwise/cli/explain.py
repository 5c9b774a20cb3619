"""`wallwise explain`: what a rule means and what to do about it."""

from __future__ import annotations

from typing import Annotated

import typer


def explain(
    rule: Annotated[
        str | None, typer.Argument(metavar="RULE", help="A rule's name, as findings bear it.")
    ] = None,
) -> None:
    """Say what a rule means and what to do.

    Without a name, list the rules.
    """
    from rich.markdown import Markdown

    from wallwise.cli.screen import console
    from wallwise.desk import reference

    out = console()
    if rule is None:
        width = max(len(r.name) for r in reference.rules())
        for r in reference.rules():
            out.print(f"{r.name:<{width}}  {r.severity.value:<7}  {r.says}")
        return
    found = reference.rule(rule)
    out.print(Markdown(found.page) if out.is_terminal else found.page.strip())
    out.print(f"\nSeverity: {found.severity.value}")
