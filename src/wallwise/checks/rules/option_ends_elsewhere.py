"""An easier way ends on another foot or facing another wall."""

from collections.abc import Iterator

from wallwise.checks.rule import Rule
from wallwise.checks.sight import FOOT_NAMES, clock, whole_sheet
from wallwise.dance.finding import Finding, Severity
from wallwise.dance.model import Foot
from wallwise.reading import Reading
from wallwise.reading.read import OptionReading


def differs(reading: Reading, told: OptionReading) -> str:
    """How the option ends elsewhere than the steps it stands for; empty where it agrees."""
    option, solution = told.option, told.solution
    if solution is None:
        return ""
    events = reading.parts[option.part].solution.events
    inside = [e for e in events if option.first <= e.at < option.last // 1 + 1]
    if not inside:
        return ""
    if any("foot" in e.clash for e in solution.events):
        return "begins with a foot that bears the weight"
    if solution.facing != inside[-1].facing:
        return f"ends facing {clock(solution.facing)}, the dance {clock(inside[-1].facing)}"
    if Foot.BOTH not in (solution.ended, inside[-1].weight) and solution.ended is not inside[-1].weight:
        return f"ends with the weight on {FOOT_NAMES[solution.ended]}, the dance on {FOOT_NAMES[inside[-1].weight]}"
    return ""


def _find(reading: Reading) -> Iterator[Finding]:
    for told in reading.options:
        problem = differs(reading, told)
        if problem:
            yield whole_sheet(
                RULE.name, RULE.severity, told.span, f"The option for counts {told.option.counts} {problem}.",
                section=told.option.section, part=told.option.part, count=told.option.counts,
            )  # fmt: skip


RULE = Rule(
    "option-ends-elsewhere",
    Severity.WARNING,
    "An easier way ends on another foot or facing another wall.",
    _find,
)
