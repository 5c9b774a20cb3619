"""Rules, figures and terms are found by the names that people use."""

from __future__ import annotations

import pytest

from wallwise.desk import reference
from wallwise.desk.errors import NoSuchEntry


def test_every_rule_is_found_by_its_name() -> None:
    """Each rule by its name, capitals and spaces no matter."""
    for rule in reference.rules():
        assert reference.rule(rule.name) is rule
        assert reference.rule(rule.name.replace("-", " ").upper()) is rule
        assert all(reference.rule(alias) is rule for alias in rule.aliases)


def test_a_rule_that_is_not_there_names_the_nearest() -> None:
    """A slip of the pen is answered with what was probably meant."""
    with pytest.raises(NoSuchEntry, match="did you mean facing-differs"):
        reference.rule("facing-difers")


def test_every_entry_is_found_by_each_of_its_names() -> None:
    """The chief name and every abbreviation lead to the entry."""
    for entry in reference.entries():
        for name in (entry.name, *entry.also):
            assert entry in reference.look_up(name.upper())


def test_a_part_of_a_name_finds_all_that_have_it() -> None:
    """Half a name lists what it may be, and nonsense is refused."""
    assert {"jazz box"} <= {entry.name for entry in reference.look_up("azz bo")}
    for nonsense in ("xyzzy", " "):
        with pytest.raises(NoSuchEntry, match="glossary has no"):
            reference.look_up(nonsense)
