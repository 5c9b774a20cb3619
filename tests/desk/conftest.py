"""Reports made by hand, so that the desk is tested apart from the reader.

The `plain_reader` reads a sheet in the notation of the glossary, a line an event.  A line that ends
in ``?`` gets a warning whose mends are written after it: ``1 step R ? 1 step L | 1 step R``.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from fractions import Fraction

import pytest

from wallwise.dance.finding import Finding, Mend, Severity
from wallwise.dance.model import Dance, Part, Section, Span
from wallwise.desk import mending, report
from wallwise.desk.errors import Unreadable
from wallwise.desk.report import Report
from wallwise.glossary.notation import parse_steps

Reader = Callable[[str], Report]


def read_plainly(text: str, *, name: str = "sheet.txt") -> Report:
    """The report on a sheet in notation; Unreadable for one without a line."""
    steps, findings = [], []
    for match in re.finditer(r"^\d.*$", text, re.MULTILINE):
        line, asked, mends = match.group().partition(" ?")
        steps.append(line)
        if asked:
            span = Span(match.start(), match.end())
            offered = tuple(
                Mend(span, m.strip(), f"write {m.strip()}") for m in mends.split("|") if m.strip()
            )
            said = f"Is it {line!r}?"
            findings.append(Finding("two-readings", Severity.WARNING, span, said, 1, line[0], offered))
    if not steps:
        raise Unreadable(f"{name}: this is no step sheet.")
    counts = Fraction(len(steps))
    section = Section(1, Fraction(1), counts, parse_steps(steps))
    dance = Dance(text.splitlines()[0], (Part("main", (section,)),))
    return Report(name, text, dance, tuple(findings))


@pytest.fixture
def plain_reader(monkeypatch: pytest.MonkeyPatch) -> Reader:
    """Put the plain reader in the place of the real one; the reader."""
    for module in (mending, report):
        monkeypatch.setattr(module, "check_text", read_plainly)
    return read_plainly
