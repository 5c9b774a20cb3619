"""Every example line of the glossary is read, in a sheet, as the glossary says.

The line stands between two steps that leave its leading foot free and bounces after which
either foot may go on, so that nothing but the line itself decides.
"""

from dataclasses import replace
from fractions import Fraction

import pytest

from wallwise.dance.model import Foot, Kind, Step
from wallwise.glossary.entry import Example
from wallwise.glossary.load import figures
from wallwise.reading import read

BEFORE = {
    Foot.RIGHT: "1-2 Step R forward, step L forward\n3-4 Step R back, step L beside R",
    Foot.LEFT: "1-2 Step L forward, step R forward\n3-4 Step L back, step R beside L",
}
AFTER = "1-2 Bounce both heels twice\n3-4 Bounce both heels twice"
STARTS = 5

EXAMPLES = [(figure.name, example) for figure in figures() for example in figure.examples]


def leads(steps: tuple[Step, ...]) -> Foot:
    """The foot that moves first; the right where both do."""
    feet = (s.foot for s in steps if s.foot in BEFORE and not s.kind.on_standing_foot)
    return next(feet, Foot.RIGHT)


def read_between(example: Example) -> list[Step]:
    """What the reader makes of the line, with beats from 1."""
    sheet = "\n\n".join(
        (
            "Example\nBeginner",
            f"Section 1\n{BEFORE[leads(example.reads)]}",
            f"Section 2\n{example.line}",
            f"Section 3\n{AFTER}",
        )
    )
    (part,) = read(sheet).dance.parts
    ends = part.sections[2].starts_at
    return [
        replace(step, at=step.at - STARTS + 1)
        for step in part.steps
        if STARTS - Fraction(1, 2) <= step.at < ends
    ]


@pytest.mark.parametrize(("name", "example"), EXAMPLES, ids=lambda value: getattr(value, "line", value))
def test_example_is_read_as_the_glossary_says(name: str, example: Example) -> None:
    """Beat, foot, action and turn of every step are those of the entry."""

    def told(steps: list[Step] | tuple[Step, ...]) -> list[tuple[Fraction, Foot, Kind, Fraction]]:
        return [(s.at, s.foot, s.kind, s.turn) for s in steps if s.kind is not Kind.HOLD]

    assert told(example.reads) == told(read_between(example))
