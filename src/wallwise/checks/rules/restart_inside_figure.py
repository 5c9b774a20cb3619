"""A restart cuts a figure, or stands beyond the dance's last count."""

from collections.abc import Iterator
from fractions import Fraction

from wallwise.checks.rule import Rule
from wallwise.dance.finding import Finding, Severity
from wallwise.reading import Reading
from wallwise.reading.record import Passage

_LONG = 3  # beats from the first to the last


def _find(reading: Reading) -> Iterator[Finding]:
    dance = reading.dance
    if not dance.parts or dance.sequence is not None:
        return
    counts, main = dance.parts[0].counts, next(iter(reading.parts.values()))
    for restart in dance.restarts:
        after = restart.after_counts
        told = f"The restart on wall {restart.wall}"
        if restart.change:
            continue
        if after >= counts:
            yield RULE.on(restart.span, f"{told} is after {after} counts, but the dance has only {counts}.")
            continue
        for passage in main.passages:
            if _cuts(after, passage):
                words = passage.group.text.strip()[:50]
                yield RULE.on(restart.span, f"{told} after {after} counts falls inside “{words}”.")


def inside_figure(reading: Reading, after: Fraction) -> bool:
    """Whether a restart of the reading's first part after so many counts would cut a figure."""
    return any(_cuts(after, passage) for passage in reading.main.passages)


def _cuts(after: Fraction, passage: Passage) -> bool:
    """Whether the passage goes on after so many counts: a short one is one figure, a long one may be cut."""
    beats = passage.group.beats
    if not beats or not beats[0] < after + 1 <= beats[-1] or beats[-1] - beats[0] >= _LONG:
        return False
    return not (_ends_with(passage, after) and beats[-1] == after + 1)


def _ends_with(passage: Passage, after: Fraction) -> bool:
    """Whether so many counts fill the passage's section: the 1 of an 8&1 is then the dance's own."""
    return passage.section.base + passage.section.counts - 1 == after


RULE = Rule(
    "restart-inside-figure", Severity.WARNING, "A restart cuts a figure or lies beyond the last count.", _find
)
