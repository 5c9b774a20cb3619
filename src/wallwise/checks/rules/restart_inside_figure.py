"""A restart cuts a figure, or stands beyond the dance's last count."""

from collections.abc import Iterator

from wallwise.checks.rule import Rule
from wallwise.checks.sight import whole_sheet
from wallwise.dance.finding import Finding, Severity
from wallwise.reading import Reading


def _find(reading: Reading) -> Iterator[Finding]:
    dance = reading.dance
    if not dance.parts or dance.sequence is not None:
        return
    main = next(iter(reading.parts.values()))
    for restart in dance.restarts:
        after = restart.after_counts
        if restart.change:
            continue
        if after >= dance.parts[0].counts:
            yield whole_sheet(
                RULE.name, RULE.severity, restart.span,
                f"The restart on wall {restart.wall} is after {after} counts, but the dance has only {dance.parts[0].counts}.",
            )  # fmt: skip
            continue
        for passage in main.passages:
            beats = passage.group.beats
            if beats and beats[0] < after + 1 <= beats[-1] and _one_figure(beats):
                yield whole_sheet(
                    RULE.name, RULE.severity, restart.span,
                    f"The restart on wall {restart.wall} after {after} counts falls inside “{passage.group.text.strip()[:50]}”.",
                )  # fmt: skip


def _one_figure(beats) -> bool:  # type: ignore[no-untyped-def]
    """A short group of counts is one figure; a long one may well be cut between two."""
    return beats[-1] - beats[0] < 3


RULE = Rule(
    "restart-inside-figure", Severity.WARNING, "A restart cuts a figure or lies beyond the last count.", _find
)
