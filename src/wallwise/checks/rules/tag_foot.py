"""A tag ends on the foot that begins the dance."""

from collections.abc import Iterator

from wallwise.checks.rule import Rule
from wallwise.checks.sight import FOOT_NAMES, Sight, main_part
from wallwise.dance.finding import Finding, Severity
from wallwise.dance.model import Foot
from wallwise.reading import Reading


def _find(reading: Reading) -> Iterator[Finding]:
    main = main_part(reading)
    if main is None:
        return
    for part in reading.parts.values():
        solution = part.solution
        if not part.text.extra or part.part is reading.dance.ending or not solution.events:
            continue
        frees = part.goal.end_weight or main.solution.started
        if solution.ended not in (Foot.BOTH, frees):
            yield RULE.at(
                Sight(part, solution.events[-1]),
                f"The {part.text.name.lower()} ends with the weight on {FOOT_NAMES[solution.ended]}, "
                "but the dance goes on with that foot.",
            )


RULE = Rule("tag-foot", Severity.ERROR, "A tag does not free the foot that the dance goes on with.", _find)
