"""The sheet says which foot bears the weight, and it is the other one."""

from collections.abc import Iterator

from wallwise.checks.rule import Rule
from wallwise.checks.sight import FOOT_NAMES, at, sights, where
from wallwise.dance.finding import Finding, Severity
from wallwise.reading import Reading


def _find(reading: Reading) -> Iterator[Finding]:
    for sight in sights(reading):
        told = sight.event.move.weight
        if "weight" in sight.event.clash and told is not None:
            span = sight.passage.span_at(sight.event.move.weight_at)
            yield at(
                sight, RULE.name, RULE.severity,
                f"After {where(sight)} the sheet puts the weight on {FOOT_NAMES[told]}, but the steps leave it on {FOOT_NAMES[told.other]}.",
                span=span,
            )  # fmt: skip


RULE = Rule(
    "weight-differs",
    Severity.WARNING,
    "The weight is said to be on one foot and the steps leave it on the other.",
    _find,
)
