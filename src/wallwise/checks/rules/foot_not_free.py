"""A foot is told to move while it bears the weight."""

from collections.abc import Iterator

from wallwise.checks.rule import Rule
from wallwise.checks.sight import FOOT_NAMES, sights
from wallwise.dance.finding import Finding, Severity
from wallwise.reading import Reading


def _find(reading: Reading) -> Iterator[Finding]:
    for sight in sights(reading):
        event, told = sight.event, sight.event.move.foot
        if "along" in event.clash:
            yield RULE.at(
                sight,
                f"In {sight.where}, {FOOT_NAMES[event.foot]} takes the weight, and the same foot is to move "
                f"along with the step: only {FOOT_NAMES[event.foot.other]} is free.",
                span=sight.passage.span_at(event.move.along_at),
            )
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
