"""Counts that two lines dance."""

from collections.abc import Iterator

from wallwise.checks.rule import Rule
from wallwise.checks.sight import count_in, whole_sheet
from wallwise.dance.finding import Finding, Severity
from wallwise.reading import Reading


def _find(reading: Reading) -> Iterator[Finding]:
    for part in reading.parts.values():
        for passage in part.passages:
            group = passage.group
            if group.beats and group.gap <= 0 and group is not part.passages[0].group and _overlaps(part, group):
                told = count_in(passage.section, group.beats[0])
                yield whole_sheet(
                    RULE.name, RULE.severity, passage.span_at(None),
                    f"Count {told} of section {passage.section.number} is danced twice: a line before this one has it already.",
                    section=passage.section.number, part=part.text.name, count=told,
                )  # fmt: skip


def _overlaps(part, group) -> bool:  # type: ignore[no-untyped-def]
    for passage in part.passages:
        other = passage.group
        if other is group:
            return False
        if other.beats and set(other.beats) & set(group.beats):
            return True
    return False


RULE = Rule("count-doubled", Severity.ERROR, "Two lines dance the same count.", _find)
