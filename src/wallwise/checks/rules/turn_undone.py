"""A half turn, and straight away a half turn back.

Two half turns either way face the same, so no facing that a sheet states tells which of the two
ways is the slip.  No dance of the sheets with truth among the tests does it.  Common practice, no
source.
"""

from collections.abc import Iterator
from itertools import pairwise

from wallwise.checks.rule import Rule
from wallwise.checks.sight import sights
from wallwise.dance.finding import Finding, Severity
from wallwise.reading import Reading
from wallwise.reading.tokens import TURN

_HALF = TURN // 2


def _find(reading: Reading) -> Iterator[Finding]:
    for first, second in pairwise(sights(reading)):
        turns = {first.event.turn, second.event.turn}
        if first.part is second.part and turns == {_HALF, -_HALF}:
            there, back = ("right", "left") if first.event.turn > 0 else ("left", "right")
            yield RULE.at(
                second,
                f"In {second.where} a half turn {back} undoes the half turn {there} straight before it; "
                "two half turns the same way face the same.",
            )


RULE = Rule("turn-undone", Severity.WARNING, "A half turn undoes the half turn before it.", _find)
