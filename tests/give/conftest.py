"""A dance of the tests' own, written in notation and not read from a sheet."""

from __future__ import annotations

from fractions import Fraction

import pytest

from wallwise.dance.model import Dance, Option, Part, Restart, Section, Tag
from wallwise.glossary.notation import parse_steps


def section(number: int, heading: str, *lines: str, counts: int = 8) -> Section:
    """Section `number` of eights."""
    starts_at = Fraction(8 * (number - 1) + 1)
    return Section(number, starts_at, Fraction(counts), parse_steps(lines), heading)


@pytest.fixture(scope="session")
def ladder() -> Dance:
    """Two sections with a pivot, a Monterey, gestures, both feet and a hold; a restart, a tag, an option."""
    first = section(
        1,
        "WALK, SHUFFLE, STEP, PIVOT",
        "1 step R forward",
        "2 step L forward",
        "3 step R forward",
        "& step L beside",
        "4 step R forward",
        "5 step L forward",
        "6 turn R right 1/2",
        "7 kick L forward",
        "& ball L beside",
        "8 step R place",
    )
    second = section(
        2,
        "VINE <LEFT> & MONTEREY",
        "9 step L side",
        "10 step R behind",
        "11 step L side",
        "12 touch R beside",
        "13 point R side",
        "14 step R beside right 1/4",
        "15 swivel both toward L ends L",
        "16 hold",
    )
    steps = parse_steps(("1 sway R toward R", "2 sway L toward L", "3 stomp R place", "4 step L beside"))
    tag = Part("tag", (Section(1, Fraction(1), Fraction(4), steps),))
    return Dance(
        "The Lamplighter’s Ladder",
        (Part("main", (first, second)),),
        level="Improver",
        choreographer="Ysolde Pennifer",
        restarts=(Restart(3, Fraction(8)),),
        tags=(Tag(2, tag),),
        options=(
            Option(1, "5-6", Fraction(5), Fraction(6), parse_steps(("5 rock L forward", "6 recover R"))),
        ),
    )
