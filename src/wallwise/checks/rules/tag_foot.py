"""A tag ends on the foot that begins the dance."""

from collections.abc import Iterator

from wallwise.checks.rule import Rule
from wallwise.checks.sight import FOOT_NAMES, Sight, at
from wallwise.dance.finding import Finding, Severity
from wallwise.dance.model import Foot
from wallwise.reading import Reading


def _find(reading: Reading) -> Iterator[Finding]:
    main = next((p for p in reading.parts.values() if not p.text.extra), None)
    if main is None:
        return
    for part in reading.parts.values():
        if not part.text.extra or part.part is reading.dance.ending or not part.solution.events:
            continue
        ended = part.solution.ended
        if ended in (Foot.BOTH, main.solution.started):
            continue
        last = part.solution.events[-1]
        sight = Sight(part, part.passages[last.group], last)
        yield at(
            sight, RULE.name, RULE.severity,
            f"The {part.text.name.lower()} ends with the weight on {FOOT_NAMES[ended]}, but the dance goes on with that foot.",
        )  # fmt: skip


RULE = Rule("tag-foot", Severity.ERROR, "A tag does not free the foot that the dance goes on with.", _find)
