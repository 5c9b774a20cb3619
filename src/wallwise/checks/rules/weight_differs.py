"""The sheet says which foot bears the weight, and it is the other one."""

from collections.abc import Iterator

from wallwise.checks.rule import Rule
from wallwise.checks.sight import FOOT_NAMES, sights
from wallwise.dance.finding import Finding, Severity
from wallwise.reading import Reading


def _find(reading: Reading) -> Iterator[Finding]:
    for sight in sights(reading):
        move = sight.event.move
        if "weight" in sight.event.clash and move.weight is not None:
            yield RULE.at(
                sight,
                f"After {sight.where} the sheet puts the weight on {FOOT_NAMES[move.weight]}, "
                f"but the steps leave it on {FOOT_NAMES[move.weight.other]}.",
                span=sight.passage.span_at(move.weight_at),
            )


RULE = Rule(
    "weight-differs",
    Severity.WARNING,
    "The weight is said to be on one foot and the steps leave it on the other.",
    _find,
)
