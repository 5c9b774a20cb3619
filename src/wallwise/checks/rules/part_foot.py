"""A part of a phrased dance ends on the foot that the next part begins with."""

from collections.abc import Iterator
from itertools import pairwise

from wallwise.checks.rule import Rule
from wallwise.checks.sight import FOOT_NAMES, Sight, at
from wallwise.dance.finding import Finding, Severity
from wallwise.dance.model import Foot
from wallwise.dance.walls import WallKind, unroll
from wallwise.reading import Reading


def _find(reading: Reading) -> Iterator[Finding]:
    if reading.dance.sequence is None:
        return
    walls = [w for w in unroll(reading.dance) if w.kind is not WallKind.UNKNOWN and w.steps]
    said = set()
    for here, after in pairwise(walls):
        first = next((s for s in after.steps if s.foot in (Foot.LEFT, Foot.RIGHT)), None)
        clash = first is not None and not first.kind.on_standing_foot and here.ends_weight is first.foot
        if not clash or (here.part, after.part) in said or first is None:
            continue
        said.add((here.part, after.part))
        part = next(p for n, p in reading.parts.items() if n == here.part)
        last = part.solution.events[-1]
        sight = Sight(part, part.passages[last.group], last)
        yield at(
            sight, RULE.name, RULE.severity,
            f"Part {here.part} ends with the weight on {FOOT_NAMES[first.foot]}, but part {after.part}, which follows it, begins with that foot.",
        )  # fmt: skip


RULE = Rule("part-foot", Severity.ERROR, "A part ends on the foot that the next part begins with.", _find)
