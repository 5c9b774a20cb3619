"""A foot is told to move while it bears the weight."""

from collections.abc import Iterator

from wallwise.checks.rule import Rule
from wallwise.checks.sight import FOOT_NAMES, at, sights, where
from wallwise.dance.finding import Finding, Severity
from wallwise.reading import Reading


def _find(reading: Reading) -> Iterator[Finding]:
    for sight in sights(reading):
        told = sight.event.move.foot
        if "foot" not in sight.event.clash or told is None:
            continue
        span = sight.passage.span_at(sight.event.move.foot_at) if sight.event.move.foot_at else sight.span
        yield at(
            sight, RULE.name, RULE.severity,
            f"In {where(sight)}, {FOOT_NAMES[told]} is to {_verb(sight.event.kind.takes_weight)}, but it already bears the weight: "
            f"only {FOOT_NAMES[told.other]} is free.",
            span=span,
        )  # fmt: skip


def _verb(step: bool) -> str:
    return "step" if step else "move"


RULE = Rule("foot-not-free", Severity.ERROR, "A foot is told to move while it bears the weight.", _find)
