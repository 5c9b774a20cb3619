"""The end of the dance does not free the foot that begins it."""

from collections.abc import Iterator

from wallwise.checks.rule import Rule
from wallwise.checks.sight import FOOT_NAMES, Sight
from wallwise.dance.finding import Finding, Severity
from wallwise.dance.model import Foot
from wallwise.reading import Reading


def _find(reading: Reading) -> Iterator[Finding]:
    if reading.dance.sequence is not None:
        return
    for part in reading.parts.values():
        solution = part.solution
        if part.text.extra or not solution.events or solution.ended in (Foot.BOTH, solution.started):
            continue
        last = Sight(part, solution.events[-1])
        yield RULE.at(
            last,
            f"The dance ends ({last.where}) with the weight on {FOOT_NAMES[solution.ended]}, "
            "but it begins again with that same foot.",
        )


RULE = Rule(
    "ends-on-wrong-foot", Severity.ERROR, "The end of the dance does not free the foot that begins it.", _find
)
