"""Reports made by hand, so that the desk is tested apart from the reader.

The `plain_reader` reads a sheet in the notation of the glossary, a line an event.  A line that ends
in ``?`` gets a warning whose mends are written after it: ``1 step R ? 1 step L | 1 step R``.  A first
line that ends in ``?`` is a title to be mended in the same way.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import replace
from fractions import Fraction

import pytest

from wallwise.dance.finding import Finding, Mend, Severity
from wallwise.dance.model import Dance, Part, Section, Span, Step
from wallwise.desk import mending, report
from wallwise.desk.errors import Unreadable
from wallwise.desk.report import Report
from wallwise.glossary.notation import parse_steps

Reader = Callable[[str], Report]


def read_plainly(text: str, *, name: str = "sheet.txt") -> Report:
    """The report on a sheet in notation; Unreadable for one without a line."""
    steps: list[Step] = []
    findings: list[Finding] = []
    for match in re.finditer(r"^.+$", text, re.MULTILINE):
        line, asked, mends = match.group().partition(" ?")
        span = Span(match.start(), match.end())
        if line[0].isdigit():
            steps += [replace(step, span=span) for step in parse_steps([line])]
        if asked:
            offered = tuple(
                Mend(span, m.strip(), f"write {m.strip()}") for m in mends.split("|") if m.strip()
            )
            said = f"Is it {line!r}?"
            findings.append(Finding("two-readings", Severity.WARNING, span, said, 1, line[0], offered))
    if not steps:
        raise Unreadable(f"{name}: this is no step sheet.")
    section = Section(1, Fraction(1), Fraction(len(steps)), tuple(steps))
    return Report(name, text, Dance("Plain", (Part("main", (section,)),)), tuple(findings))


@pytest.fixture
def plain_reader(monkeypatch: pytest.MonkeyPatch) -> Reader:
    """Put the plain reader in the place of the real one; the reader."""
    for module in (mending, report):
        monkeypatch.setattr(module, "check_text", read_plainly)
    return read_plainly
