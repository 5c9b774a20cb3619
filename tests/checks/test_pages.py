"""Every rule's page is a case: its example is flagged by the rule, what it says instead is sound."""

from __future__ import annotations

import re

import pytest

from wallwise.checks import RULES, check
from wallwise.checks.rule import Rule
from wallwise.reading import read


def sheets(rule: Rule) -> list[str]:
    """The sheets that stand on the rule's page: the flagged one, then the clean one."""
    return re.findall(r"```text\n(.*?)```", rule.page, re.DOTALL)


@pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.name)
def test_a_page_has_its_four_parts(rule: Rule) -> None:
    """What, why, an example, what to do instead; a sheet in each of the last two."""
    assert re.findall(r"^## (.*)$", rule.page, re.MULTILINE) == ["What", "Why", "Example", "Instead"]
    assert len(sheets(rule)) == 2


@pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.name)
def test_the_example_is_flagged_and_the_other_is_clean(rule: Rule) -> None:
    """The rule finds its own example, and nothing is left to settle in the sheet that does it right."""
    flagged, clean = sheets(rule)
    found = {finding.rule for finding in check(read(flagged))}
    left = [finding.message for finding in check(read(clean)) if finding.loud]
    assert rule.name in found
    assert left == []


def test_rules_are_named_for_the_fault() -> None:
    """Names are kebab-case and stand once; each rule says its fault in one sentence."""
    names = [name for rule in RULES for name in (rule.name, *rule.aliases)]
    assert len(names) == len(set(names))
    for rule in RULES:
        assert re.fullmatch(r"[a-z]+(-[a-z]+)*", rule.name)
        assert re.fullmatch(r"[A-Z][^.]*\.", rule.says)
