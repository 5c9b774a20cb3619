"""An easier way takes more or fewer counts than what it stands for."""

from collections.abc import Iterator

from wallwise.checks.rule import Rule
from wallwise.dance.finding import Finding, Severity
from wallwise.reading import Reading


def _find(reading: Reading) -> Iterator[Finding]:
    for told in reading.options:
        option = told.option
        if told.counts_told > told.counts_meant:
            yield RULE.on(
                told.span,
                f"The option for counts {option.counts} takes {told.counts_told} counts, "
                f"the steps it stands for {told.counts_meant}.",
                section=option.section,
                part=option.part,
                count=option.counts,
            )


RULE = Rule(
    "option-counts",
    Severity.WARNING,
    "An easier way takes more or fewer counts than the steps it stands for.",
    _find,
)
