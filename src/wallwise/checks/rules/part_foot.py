"""A part of a phrased dance ends on the foot that the next part begins with."""

from collections.abc import Iterator
from itertools import pairwise

from wallwise.checks.rule import Rule
from wallwise.checks.sight import FOOT_NAMES, Sight
from wallwise.dance.finding import Finding, Severity
from wallwise.dance.model import Foot
from wallwise.dance.walls import Wall, WallKind, unroll
from wallwise.reading import Reading


def _find(reading: Reading) -> Iterator[Finding]:
    if reading.dance.sequence is None:
        return
    walls = [w for w in unroll(reading.dance) if w.kind is not WallKind.UNKNOWN and w.steps]
    said: set[tuple[str, str]] = set()
    for here, after in pairwise(walls):
        foot = _barred(here, after)
        if foot is None or (here.part, after.part) in said:
            continue
        said.add((here.part, after.part))
        part = reading.parts[here.part]
        yield RULE.at(
            Sight(part, part.solution.events[-1]),
            f"Part {here.part} ends with the weight on {FOOT_NAMES[foot]}, "
            f"but part {after.part}, which follows it, begins with that foot.",
        )


def _barred(here: Wall, after: Wall) -> Foot | None:
    """The foot that begins what comes after and bears the weight still; None where it is free."""
    first = next((s for s in after.steps if s.foot in (Foot.LEFT, Foot.RIGHT)), None)
    if first is None or first.kind.on_standing_foot or here.ends_weight is not first.foot:
        return None
    return first.foot


RULE = Rule("part-foot", Severity.ERROR, "A part ends on the foot that the next part begins with.", _find)
