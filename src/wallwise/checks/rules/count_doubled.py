"""Counts that two lines dance."""

from collections.abc import Iterator
from fractions import Fraction

from wallwise.checks.rule import Rule
from wallwise.checks.sight import count_in
from wallwise.dance.finding import Finding, Severity
from wallwise.reading import Reading


def _find(reading: Reading) -> Iterator[Finding]:
    for part in reading.parts.values():
        danced: set[Fraction] = set()
        for passage in part.passages:
            section, beats = passage.section, passage.group.beats
            if not danced.isdisjoint(beats):
                told = count_in(section, beats[0])
                yield RULE.on(
                    passage.span_at(None),
                    f"Count {told} of section {section.number} is danced twice: "
                    "a line before this one has it already.",
                    section=section.number,
                    part=part.text.name,
                    count=told,
                )
            danced.update(beats)


RULE = Rule("count-doubled", Severity.ERROR, "Two lines dance the same count.", _find)
