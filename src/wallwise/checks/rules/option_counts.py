"""An easier way takes more or fewer counts than what it stands for."""

from collections.abc import Iterator

from wallwise.checks.rule import Rule
from wallwise.checks.sight import whole_sheet
from wallwise.dance.finding import Finding, Severity
from wallwise.reading import Reading


def _find(reading: Reading) -> Iterator[Finding]:
    for told in reading.options:
        if told.counts_told > told.counts_meant:
            yield whole_sheet(
                RULE.name, RULE.severity, told.span,
                f"The option for counts {told.option.counts} takes {told.counts_told} counts, the steps it stands for {told.counts_meant}.",
                section=told.option.section, part=told.option.part, count=told.option.counts,
            )  # fmt: skip


RULE = Rule(
    "option-counts",
    Severity.WARNING,
    "An easier way takes more or fewer counts than the steps it stands for.",
    _find,
)
