"""`wallwise glossary`: figures and terms looked up."""

from __future__ import annotations

from typing import TYPE_CHECKING, Annotated

import typer

if TYPE_CHECKING:
    from collections.abc import Iterator

    from wallwise.glossary.entry import Figure, Term, Way


def glossary(
    word: Annotated[
        str | None, typer.Argument(metavar="WORD", help="A figure, a term, or a part of its name.")
    ] = None,
) -> None:
    """Look up a figure or a term.

    Without a word, list them all.
    """
    from wallwise.cli.screen import console
    from wallwise.desk import reference

    out = console()
    if word is None:
        for entry in reference.entries():
            out.print(_line(entry))
        return
    found = reference.look_up(word)
    if len(found) > 6:
        for entry in found:
            out.print(_line(entry))
        return
    for entry in found:
        for line in entry_lines(entry):
            out.print(line)
        out.print()


def _line(entry: Figure | Term) -> str:
    also = f" ({', '.join(entry.also)})" if entry.also else ""
    return f"{entry.name}{also}"


def entry_lines(entry: Figure | Term) -> Iterator[str]:
    """The entry as it is printed: names, what it is, its ways count by count, its source."""
    from wallwise.glossary.entry import Figure

    yield _line(entry)
    if entry.says:
        yield f"  {entry.says}"
    if isinstance(entry, Figure):
        several = len(entry.ways) > 1
        for index, way in enumerate(entry.ways, 1):
            title = f"Way {index}" if several else "Led by the right foot"
            yield f"  {title}{': ' + way.says if way.says else ''}"
            yield from _way_lines(way)
        yield f"  Called: {entry.call}"
    yield f"  Source: {entry.source}"


def _way_lines(way: Way) -> Iterator[str]:
    from wallwise.dance.counts import label
    from wallwise.give.words import action

    for step in way.steps:
        yield f"    {label(step.at):<3} {action(step)}"
