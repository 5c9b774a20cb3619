"""What can be looked up: rules, figures and terms."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from difflib import get_close_matches

from wallwise.checks import EVERY_RULE, rule_named
from wallwise.checks.rule import Named
from wallwise.desk.errors import NoSuchEntry
from wallwise.glossary.entry import Figure, Term
from wallwise.glossary.load import figures, terms


def rules() -> tuple[Named, ...]:
    """Every rule, in the order in which they are checked; those that need a song come last."""
    return EVERY_RULE


def rule(name: str) -> Named:
    """The rule that has this name or had it before; NoSuchEntry names the nearest where there is none."""
    wanted = name.strip().lower().replace(" ", "-").replace("_", "-")
    found = rule_named(wanted)
    if found is None:
        raise NoSuchEntry(f"There is no rule named {name!r}{_nearest(wanted, (r.name for r in EVERY_RULE))}.")
    return found


def entries() -> tuple[Figure | Term, ...]:
    """Every figure and term, by name."""
    return tuple(sorted((*figures(), *terms()), key=lambda entry: entry.name.casefold()))


def look_up(word: str) -> tuple[Figure | Term, ...]:
    """The entries that `word` names, or those whose names hold it; NoSuchEntry where there are none.

    An entry whose very name or abbreviation it is shuts out those that only contain it.
    """
    wanted = " ".join(word.casefold().split())
    exact = tuple(entry for entry in entries() if wanted in _names(entry))
    found = exact or tuple(e for e in entries() if any(wanted in name for name in _names(e)))
    if not found or not wanted:
        known = {name for entry in entries() for name in _names(entry)}
        raise NoSuchEntry(f"The glossary has no {word!r}{_nearest(wanted, known)}.")
    return found


def _names(entry: Figure | Term) -> Iterator[str]:
    yield entry.name.casefold()
    yield from (name.casefold() for name in entry.also)


def _nearest(wanted: str, known: Iterable[str]) -> str:
    near = get_close_matches(wanted, known, n=3, cutoff=0.6)
    return f"; did you mean {' or '.join(near)}" if near else ""
