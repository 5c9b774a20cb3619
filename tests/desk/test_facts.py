"""The walls of a dance in a table."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from wallwise.dance.clock import facing_name
from wallwise.dance.model import Dance, Part, Restart, Section, Tag
from wallwise.desk.facts import facts_of, number, walls_of, what_happens
from wallwise.glossary.notation import parse_steps


def section(*lines: str) -> tuple[Section, ...]:
    """One section of as many counts as lines."""
    return (Section(1, Fraction(1), Fraction(len(lines)), parse_steps(lines)),)


DANCE = Dance("Quarter", (Part("main", section("1 step R forward", "2 step L forward left 1/4")),))


def test_each_wall_says_where_it_starts_and_ends() -> None:
    """A quarter to the left each wall: 12, 9, 6, 3 and the front again."""
    report = walls_of(DANCE)
    assert [(facing_name(w.starts_facing), facing_name(w.ends_facing)) for w in report.walls] == [
        ("12:00", "9:00"),
        ("9:00", "6:00"),
        ("6:00", "3:00"),
        ("3:00", "12:00"),
    ]
    assert report.front_again == "The room is back at the front after wall 4."
    assert {what_happens(wall) for wall in report.walls} == {""}


def test_restarts_and_tags_are_named() -> None:
    """A wall that is cut says so, and a tag stands after its wall."""
    tag = Part("tag", section("1 step R forward"))
    report = walls_of(replace(DANCE, restarts=(Restart(2, Fraction(1)),), tags=(Tag(1, tag),)))
    assert [(w.number, what_happens(w), number(w.counts)) for w in report.walls][:3] == [
        (1, "", 2),
        (1, "tag", 1),
        (2, "restart", 1),
    ]


def test_an_empty_dance_stands_at_the_front() -> None:
    """Nothing danced: no count, one wall, facing 12:00."""
    facts = facts_of(Dance("", ()))
    assert (facts.counts, facts.walls, facing_name(facts.ends_facing)) == (0, 1, "12:00")
