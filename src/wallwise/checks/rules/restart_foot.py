"""A restart falls where the foot that begins the dance bears the weight."""

from collections.abc import Iterator

from wallwise.checks.rule import Rule
from wallwise.checks.sight import FOOT_NAMES, whole_sheet
from wallwise.dance.finding import Finding, Severity
from wallwise.dance.model import Foot
from wallwise.dance.weight import weight_told
from wallwise.reading import Reading


def _find(reading: Reading) -> Iterator[Finding]:
    dance = reading.dance
    if not dance.parts or dance.sequence is not None:
        return
    for restart in dance.restarts:
        since = restart.change_from
        steps = [
            s for s in dance.parts[0].steps if s.at < (restart.after_counts + 1 if since is None else since)
        ]
        weight = dance.starts_on.other
        for step in (*steps, *restart.change):
            weight = weight_told(weight, step)
        if any(t.after_wall == restart.wall for t in dance.tags):
            continue  # the tag danced before it decides
        if weight not in (Foot.BOTH, dance.starts_on.other):
            yield whole_sheet(
                RULE.name, RULE.severity, restart.span,
                f"The restart on wall {restart.wall} after {restart.after_counts} counts leaves the weight on {FOOT_NAMES[weight]}, "
                f"which is the foot that begins the dance.",
            )  # fmt: skip


RULE = Rule("restart-foot", Severity.ERROR, "A restart does not free the foot that begins the dance.", _find)
