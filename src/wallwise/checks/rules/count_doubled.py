"""Counts that two lines dance."""

from collections.abc import Iterator
from fractions import Fraction

from wallwise.checks.rule import Rule
from wallwise.checks.sight import count_in, whole_sheet
from wallwise.dance.finding import Finding, Severity
from wallwise.reading import Reading


def _find(reading: Reading) -> Iterator[Finding]:
    for part in reading.parts.values():
        danced: set[Fraction] = set()
        for passage in part.passages:
            beats = set(passage.group.beats)
            if danced & beats:
                told = count_in(passage.section, passage.group.beats[0])
                yield whole_sheet(
                    RULE.name, RULE.severity, passage.span_at(None),
                    f"Count {told} of section {passage.section.number} is danced twice: a line before this one has it already.",
                    section=passage.section.number, part=part.text.name, count=told,
                )  # fmt: skip
            danced |= beats


RULE = Rule("count-doubled", Severity.ERROR, "Two lines dance the same count.", _find)
