"""One sheet checked: its text, the dance read from it, and what was found.

The object that `wallwise check --json` prints is made here and nowhere else.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from functools import cached_property
from pathlib import Path
from typing import Any, TypeVar

from wallwise import checks, reading
from wallwise.dance import codec
from wallwise.dance.clock import facing_name
from wallwise.dance.finding import Finding, Severity
from wallwise.dance.model import Dance, Option, Span
from wallwise.desk.errors import DeskError, Unreadable
from wallwise.desk.facts import Facts, facts_of
from wallwise.desk.places import Lines
from wallwise.reading import Reading
from wallwise.reading.source import SourceError, load_text

Made = TypeVar("Made")


@dataclass(frozen=True)
class Report:
    """What is known of one sheet.

    `text` is the sheet as given; every span in `dance` and `findings` is a place in it.
    `findings` are sorted by place.
    """

    name: str
    text: str
    dance: Dance
    findings: tuple[Finding, ...]

    @property
    def sound(self) -> bool:
        """Whether nothing has to be settled: no error and no warning."""
        return not any(finding.loud for finding in self.findings)

    @cached_property
    def lines(self) -> Lines:
        """Line and column of every place in the text."""
        return Lines(self.text)

    @cached_property
    def facts(self) -> Facts:
        """The dance in a few figures."""
        return facts_of(self.dance)

    def tally(self) -> dict[Severity, int]:
        """How many findings there are of each severity."""
        return {s: sum(f.severity is s for f in self.findings) for s in Severity}

    def as_json(self) -> dict[str, Any]:
        """The object that `wallwise check --json` prints, as dicts, lists, strings and numbers."""
        dance, facts = self.dance, self.facts
        return {
            "title": dance.title,
            "level": dance.level,
            "counts": facts.counts,
            "walls": facts.walls,
            "beats_per_bar": dance.beats_per_bar,
            "starts_with": dance.starts_on.value,
            "ends_facing": facing_name(facts.ends_facing),
            "ends_weight": facts.ends_weight.value,
            "parts": codec.check_rows(dance, line_of=self._line_of),
            "sequence": list(dance.sequence) if dance.sequence is not None else None,
            "restarts": codec.restart_rows(dance),
            "tags": codec.tag_rows(dance),
            "options": [self._option_row(option) for option in dance.options],
            "findings": self.finding_rows(),
        }

    def finding_rows(self) -> list[dict[str, Any]]:
        """The findings as `--json` prints them."""
        return [self._finding_row(finding) for finding in self.findings]

    def _line_of(self, span: Span) -> int:
        return self.lines.place(span.start).line

    def _option_row(self, option: Option) -> dict[str, Any]:
        return {
            "part": option.part,
            "section": option.section,
            "counts": option.counts,
            "agrees": not any(_about(finding, option) for finding in self.findings),
        }

    def _finding_row(self, finding: Finding) -> dict[str, Any]:
        start, end = self.lines.place(finding.span.start), self.lines.place(finding.span.end)
        return {
            "rule": finding.rule,
            "severity": finding.severity.value,
            "line": start.line,
            "column": start.column,
            "end_line": end.line,
            "end_column": end.column,
            "part": finding.part,
            "section": finding.section,
            "count": finding.count,
            "message": finding.message,
            "mends": [
                {"start": m.span.start, "end": m.span.end, "replace": m.replace, "says": m.says}
                for m in finding.mends
            ],
        }


def _about(finding: Finding, option: Option) -> bool:
    """Whether the finding says that this option does not agree with the dance."""
    if not (finding.loud and finding.rule.startswith("option-")):
        return False
    if option.span is not None:
        return finding.span.start < option.span.end and option.span.start < finding.span.end
    return (finding.part, finding.section) == (option.part, option.section)


def check_text(text: str, *, name: str) -> Report:
    """The report on a sheet's text; Unreadable where it is no step sheet."""
    read = read_text(text, name=name)
    return Report(name, text, read.dance, checks.check(read))


def read_text(text: str, *, name: str) -> Reading:
    """A sheet's text as read, unchecked; Unreadable where it is no step sheet."""
    try:
        return reading.read(text)
    except reading.NotASheet as refusal:
        raise Unreadable(f"{name}: {refusal}") from None


def check_sheet(path: str | Path) -> Report:
    """The report on the sheet at `path`, ``-`` for standard input; Unreadable where there is none."""
    return with_sheet(path, lambda text, name: check_text(text, name=name))


def with_sheet(path: str | Path, make: Callable[[str, str], Made]) -> Made:
    """What `make` makes of the text and the name of the sheet at `path`; Unreadable where there is none.

    A mistake of the program comes as such a sentence too: one sheet must not stop a folder of them.
    """
    try:
        text = load_text(path)
    except SourceError as refusal:
        raise Unreadable(str(refusal)) from None
    name = "standard input" if str(path) == "-" else Path(path).name
    try:
        return make(text, name)
    except DeskError:
        raise
    except Exception as mistake:
        told = f"{name}: a mistake of Wallwise itself stopped it here ({type(mistake).__name__}: {mistake})."
        raise Unreadable(told) from mistake
