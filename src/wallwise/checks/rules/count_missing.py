"""Counts that no line dances."""

from collections.abc import Iterator

from wallwise.checks.rule import Rule
from wallwise.checks.sight import count_in, whole_sheet
from wallwise.dance.finding import Finding, Severity
from wallwise.reading import Reading


def _find(reading: Reading) -> Iterator[Finding]:
    for part in reading.parts.values():
        for passage in part.passages:
            group = passage.group
            if group.gap > 0 and group.beats:
                first = group.beats[0] - group.gap
                told = count_in(passage.section, first)
                yield whole_sheet(
                    RULE.name, RULE.severity, passage.span_at(None),
                    f"Section {passage.section.number} jumps: nothing is told for count {told}"
                    + (f" and {group.gap - 1} more before count {count_in(passage.section, group.beats[0])}." if group.gap > 1 else "."),
                    section=passage.section.number, part=part.text.name, count=told,
                )  # fmt: skip


RULE = Rule("count-missing", Severity.ERROR, "No line says what is danced on these counts.", _find)
