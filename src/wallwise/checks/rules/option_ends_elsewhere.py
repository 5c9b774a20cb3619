"""An easier way ends on another foot or facing another wall."""

from collections.abc import Iterator

from wallwise.checks.rule import Rule
from wallwise.checks.sight import FOOT_NAMES, clock
from wallwise.dance.finding import Finding, Severity
from wallwise.dance.model import Foot
from wallwise.reading import Reading
from wallwise.reading.record import OptionReading


def _find(reading: Reading) -> Iterator[Finding]:
    for told in reading.options:
        option, problem = told.option, differs(reading, told)
        if problem:
            yield RULE.on(
                told.span,
                f"The option for counts {option.counts} {problem}.",
                section=option.section,
                part=option.part,
                count=option.counts,
            )


def differs(reading: Reading, told: OptionReading) -> str:
    """How the option ends elsewhere than the steps it stands for; empty where it agrees."""
    option, solution = told.option, told.solution
    events = reading.parts[option.part].solution.events
    replaced = [e for e in events if option.first <= e.at < option.last // 1 + 1]
    if solution is None or not replaced:
        return ""
    last = replaced[-1]
    if any("foot" in e.clash for e in solution.events):
        return "begins with a foot that bears the weight"
    if solution.facing != last.facing:
        return f"ends facing {clock(solution.facing)}, the dance {clock(last.facing)}"
    if Foot.BOTH not in (solution.ended, last.weight) and solution.ended is not last.weight:
        return f"ends with the weight on {FOOT_NAMES[solution.ended]}, the dance on {FOOT_NAMES[last.weight]}"
    return ""


RULE = Rule(
    "option-ends-elsewhere",
    Severity.WARNING,
    "An easier way ends on another foot or facing another wall.",
    _find,
)
