"""Every rule there is, as plain tuples, and the one pass over a reading, or over it and its song."""

from collections.abc import Iterator

from wallwise.checks.mends import with_mends
from wallwise.checks.rule import Named, OnSong, Rule, SongRule
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
from wallwise.checks.song_rules import (
    intro_differs,
    restart_off_phrase,
    song_runs_out,
    tag_off_phrase,
    tempo_unlikely,
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
SONG_RULES: tuple[SongRule, ...] = (
    tempo_unlikely.RULE,
    intro_differs.RULE,
    restart_off_phrase.RULE,
    tag_off_phrase.RULE,
    song_runs_out.RULE,
)
EVERY_RULE: tuple[Named, ...] = (*RULES, *SONG_RULES)


def rule_named(name: str) -> Named | None:
    """The rule of that name, about sheets or songs, or that had it before; None where there is none."""
    return next((r for r in EVERY_RULE if name == r.name or name in r.aliases), None)


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


def check_song(song: OnSong) -> tuple[Finding, ...]:
    """Everything the song rules find, without mends, in the order of the sheet."""
    found = [finding for rule in SONG_RULES for finding in rule.find(song)]
    return tuple(sorted(found, key=lambda f: (f.span.start, f.rule)))


__all__ = ["EVERY_RULE", "RULES", "SONG_RULES", "check", "check_song", "findings_of", "rule_named"]
