"""A foot is told to move while it bears the weight."""

from collections.abc import Iterator

from wallwise.checks.rule import Rule
from wallwise.checks.sight import FOOT_NAMES, sights
from wallwise.dance.finding import Finding, Severity
from wallwise.reading import Reading


def _find(reading: Reading) -> Iterator[Finding]:
    for sight in sights(reading):
        event, told = sight.event, sight.event.move.foot
        if "foot" not in event.clash or told is None:
            continue
        verb = "step" if event.kind.takes_weight else "move"
        yield RULE.at(
            sight,
            f"In {sight.where}, {FOOT_NAMES[told]} is to {verb}, but it already bears the weight: "
            f"only {FOOT_NAMES[told.other]} is free.",
            span=sight.passage.span_at(event.move.foot_at) if event.move.foot_at else None,
        )


RULE = Rule("foot-not-free", Severity.ERROR, "A foot is told to move while it bears the weight.", _find)
