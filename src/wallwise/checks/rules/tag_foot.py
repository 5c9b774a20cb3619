"""A tag ends on the foot that begins the dance."""

from collections.abc import Iterator

from wallwise.checks.rule import Rule
from wallwise.checks.sight import FOOT_NAMES, Sight, main_part
from wallwise.dance.finding import Finding, Severity
from wallwise.dance.model import Foot
from wallwise.dance.weight import weight_after, weight_told
from wallwise.reading import Reading


def _find(reading: Reading) -> Iterator[Finding]:
    main = main_part(reading)
    if main is None:
        return
    yield from _danced_again(reading)
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


def _danced_again(reading: Reading) -> Iterator[Finding]:
    """Tags of counts of the dance or of another tag, which has them for other feet than are free then."""
    for tag in reading.dance.tags:
        own = any(part.text.extra and part.text.name == tag.part.name for part in reading.parts.values())
        if own or not tag.part.steps:
            continue
        weight, fits = reading.main.solution.ended, True
        for step in tag.part.steps:
            fits = fits and weight_after(weight, step) is not None
            weight = weight_told(weight, step)
        if not fits or weight not in (Foot.BOTH, reading.main.solution.started):
            yield RULE.on(
                tag.span,
                f"The tag after wall {tag.after_wall} dances counts told before, "
                "but not on the foot that is free there, or without freeing the foot that begins the dance.",
            )


RULE = Rule("tag-foot", Severity.ERROR, "A tag does not free the foot that the dance goes on with.", _find)
