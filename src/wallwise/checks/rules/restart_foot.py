"""A restart falls where the foot that begins the dance bears the weight."""

from collections.abc import Iterator

from wallwise.checks.rule import Rule
from wallwise.checks.sight import FOOT_NAMES
from wallwise.dance.finding import Finding, Severity
from wallwise.dance.model import Dance, Foot, Restart
from wallwise.dance.weight import weight_told
from wallwise.reading import Reading


def _find(reading: Reading) -> Iterator[Finding]:
    dance = reading.dance
    if not dance.parts or dance.sequence is not None:
        return
    for restart in dance.restarts:
        if any(tag.after_wall == restart.wall for tag in dance.tags):
            continue  # the tag danced before it decides
        weight = _weight_at(restart, dance)
        if weight not in (Foot.BOTH, dance.starts_on.other):
            yield RULE.at_beat(
                reading.main.text,
                restart.after_counts,
                f"The restart on wall {restart.wall} after {restart.after_counts} counts leaves the weight "
                f"on {FOOT_NAMES[weight]}, which is the foot that begins the dance.",
                span=restart.span,
            )


def _weight_at(restart: Restart, dance: Dance) -> Foot:
    """The foot that bears the weight when the dance begins again."""
    until = restart.after_counts + 1 if restart.change_from is None else restart.change_from
    weight = dance.starts_on.other
    for step in (*(s for s in dance.parts[0].steps if s.at < until), *restart.change):
        weight = weight_told(weight, step)
    return weight


RULE = Rule("restart-foot", Severity.ERROR, "A restart does not free the foot that begins the dance.", _find)
