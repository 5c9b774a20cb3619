"""Counts that no line dances."""

from collections.abc import Iterator

from wallwise.checks.rule import Rule
from wallwise.checks.sight import count_in
from wallwise.dance.finding import Finding, Severity
from wallwise.reading import Reading


def _find(reading: Reading) -> Iterator[Finding]:
    for part in reading.parts.values():
        for passage in part.passages:
            section, group = passage.section, passage.group
            if group.gap <= 0 or not group.beats:
                continue
            missing, before = (count_in(section, group.beats[0] - back) for back in (group.gap, 1))
            told = f"count {missing}" if group.gap <= 1 else f"counts {missing} to {before}"
            yield RULE.on(
                passage.span_at(None),
                f"Section {section.number} jumps: nothing is told for {told}.",
                section=section.number,
                part=part.text.name,
                count=missing,
            )


RULE = Rule("count-missing", Severity.ERROR, "No line says what is danced on these counts.", _find)
