"""Every rule there is, as a plain tuple, and the one pass over a reading."""

from collections.abc import Iterator

from wallwise.checks.mends import with_mends
from wallwise.checks.rule import Rule
from wallwise.checks.rules import (
    count_doubled,
    count_missing,
    drifts,
    ends_on_wrong_foot,
    facing_differs,
    foot_against_itself,
    foot_not_free,
    heading_differs,
    not_understood,
    option_counts,
    option_ends_elsewhere,
    part_foot,
    pivot_against_body,
    restart_facing,
    restart_foot,
    restart_inside_figure,
    restart_unclear,
    section_length,
    side_differs,
    step_too_long,
    tag_foot,
    total_counts,
    turn_direction_missing,
    turn_too_fast,
    turn_undone,
    two_readings,
    unknown_part,
    walls_differ,
    weight_differs,
)
from wallwise.dance.finding import Finding, Severity
from wallwise.reading import Reading

RULES: tuple[Rule, ...] = (
    not_understood.RULE,
    two_readings.RULE,
    heading_differs.RULE,
    count_missing.RULE,
    count_doubled.RULE,
    section_length.RULE,
    total_counts.RULE,
    foot_not_free.RULE,
    foot_against_itself.RULE,
    pivot_against_body.RULE,
    turn_undone.RULE,
    weight_differs.RULE,
    side_differs.RULE,
    ends_on_wrong_foot.RULE,
    facing_differs.RULE,
    walls_differ.RULE,
    turn_direction_missing.RULE,
    restart_unclear.RULE,
    restart_foot.RULE,
    restart_facing.RULE,
    restart_inside_figure.RULE,
    tag_foot.RULE,
    part_foot.RULE,
    unknown_part.RULE,
    option_ends_elsewhere.RULE,
    option_counts.RULE,
    turn_too_fast.RULE,
    step_too_long.RULE,
    drifts.RULE,
)


def rule_named(name: str) -> Rule | None:
    """The rule of that name, or that had it before; None where there is none."""
    return next((r for r in RULES if name == r.name or name in r.aliases), None)


def findings_of(reading: Reading) -> tuple[Finding, ...]:
    """Everything the rules find, without mends, in the order of the sheet."""
    found = [f for rule in RULES for f in rule.find(reading)]
    return tuple(sorted(found, key=lambda f: (f.span.start, f.rule)))


def loud_findings(reading: Reading) -> Iterator[Finding]:
    """What must be settled, one after the other and in no order; rules that only note are not asked."""
    return (f for rule in RULES if rule.severity is not Severity.NOTE for f in rule.find(reading) if f.loud)


def check(reading: Reading) -> tuple[Finding, ...]:
    """Everything the rules find, in the order of the sheet, with the mends that make it agree."""
    return with_mends(reading, findings_of(reading), loud_findings)


__all__ = ["RULES", "check", "findings_of", "rule_named"]
