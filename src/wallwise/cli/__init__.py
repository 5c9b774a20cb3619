"""The command line: arguments in, a desk call, text out."""

from __future__ import annotations

from collections.abc import Sequence


def main(arguments: Sequence[str] | None = None) -> int:
    """Run `wallwise` with `arguments` (those of the process where not given); the exit code."""
    from wallwise.cli.app import run

    return run(arguments)
