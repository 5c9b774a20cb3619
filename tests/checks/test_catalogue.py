"""The list of the rules: names, severities, and the one pass over a reading."""

from __future__ import annotations

import pkgutil
import re
from importlib import import_module, resources
from pathlib import Path

import pytest

from wallwise.checks import EVERY_RULE, RULES, SONG_RULES, rule_named, rules, song_rules
from wallwise.checks.catalogue import findings_of, loud_findings
from wallwise.dance.finding import Severity
from wallwise.reading import read

FAULTY = sorted((Path(__file__).parent.parent / "sheets" / "faulty").glob("*/sheet.txt"))

# Error: it cannot be danced as written.  Note: worth knowing.  All others are for the teacher to settle.
ERRORS = {
    "count-missing",
    "count-doubled",
    "foot-not-free",
    "ends-on-wrong-foot",
    "restart-foot",
    "tag-foot",
    "part-foot",
    "unknown-part",
}
NOTES = {"turn-too-fast", "step-too-long", "drifts"}


def severity_meant(name: str) -> Severity:
    """How grave a fault of that name is."""
    if name in ERRORS:
        return Severity.ERROR
    return Severity.NOTE if name in NOTES else Severity.WARNING


def test_names_are_kebab_case_and_stand_once() -> None:
    """A name that a rule had before is no other rule's name."""
    names = [name for rule in EVERY_RULE for name in (rule.name, *rule.aliases)]
    assert len(set(names)) == len(names)
    assert [n for n in names if not re.fullmatch(r"[a-z]+(-[a-z]+)*", n)] == []


def test_a_rule_says_its_fault_in_one_sentence() -> None:
    """One sentence, with a capital and a full stop."""
    assert [rule.says for rule in EVERY_RULE if not re.fullmatch(r"[A-Z][^.]*\.", rule.says)] == []


def test_every_rule_has_the_severity_that_its_fault_has() -> None:
    """The lists above name rules that there are, and each rule is as grave as they say."""
    assert {rule.name for rule in EVERY_RULE} >= ERRORS | NOTES
    meant = {rule.name: severity_meant(rule.name) for rule in EVERY_RULE}
    assert meant == {rule.name: rule.severity for rule in EVERY_RULE}


def test_every_file_of_rules_is_listed_and_bears_its_rules_name() -> None:
    """A rule that nobody lists would never be asked."""
    for room, listed in ((rules, RULES), (song_rules, SONG_RULES)):
        modules = [module.name for module in pkgutil.iter_modules(room.__path__)]
        named = {m.replace("_", "-"): import_module(f"{room.__name__}.{m}").RULE for m in modules}
        assert named == {rule.name: rule for rule in listed}


def test_every_page_is_a_rules() -> None:
    """A page whose rule is gone would explain what nobody finds."""
    pages = resources.files("wallwise.checks").joinpath("pages").iterdir()
    assert {page.name for page in pages} == {f"{rule.name}.md" for rule in EVERY_RULE}


def test_a_rule_is_found_by_its_name() -> None:
    """By the name it has; None for a name that no rule has."""
    assert [rule_named(rule.name) for rule in EVERY_RULE] == list(EVERY_RULE)
    assert rule_named("no-such-rule") is None


@pytest.mark.parametrize("sheet", FAULTY, ids=lambda path: path.parent.name)
def test_findings_come_in_the_order_of_the_sheet(sheet: Path) -> None:
    """By place, then by name; each is placed within the sheet and named as a rule is."""
    text = sheet.read_text(encoding="utf-8")
    found = findings_of(read(text))
    assert found == tuple(sorted(found, key=lambda finding: (finding.span.start, finding.rule)))
    assert all(0 <= f.span.start <= f.span.end <= len(text) for f in found)
    assert {f.rule for f in found} <= {rule.name for rule in RULES}


@pytest.mark.parametrize("sheet", FAULTY, ids=lambda path: path.parent.name)
def test_what_must_be_settled_is_what_is_loud(sheet: Path) -> None:
    """The quick pass of the search for mends leaves out the notes and nothing else."""
    reading = read(sheet.read_text(encoding="utf-8"))
    loud = [finding for finding in findings_of(reading) if finding.loud]
    assert loud
    assert sorted(loud_findings(reading), key=repr) == sorted(loud, key=repr)
