"""A word to the entries that bear it: for a teacher who asks what a figure or a term is.

Pure: the same word finds the same entries.  Case, hyphens, accents and plurals make no
difference (``Kick-Ball-Changes``, ``chassés``).
"""

import re
import unicodedata
from difflib import get_close_matches
from functools import cache

from wallwise.glossary.entry import Figure, Term
from wallwise.glossary.load import figures, terms

_NEAR = 0.75  # likeness (difflib) from which a misspelt name is offered; "samab" still finds samba
_MOST = 5


def find(word: str) -> tuple[Figure | Term, ...]:
    """The entries named `word`; failing that, those whose names hold it; failing that, near misses.

    Figures come before terms.  Nothing like it, or a blank word, finds nothing.

    >>> [entry.name for entry in find("Jazz-Squares")]
    ['jazz box']
    >>> [entry.name for entry in find("samab walk")]
    ['samba walk']
    """
    wanted = fold(word)
    index = _index()
    if not wanted:
        return ()
    if wanted in index:
        return index[wanted]
    holding = [name for name in index if f" {wanted} " in f" {name} "]
    return _entries(holding or get_close_matches(wanted, index, n=_MOST, cutoff=_NEAR))


def fold(name: str) -> str:
    """`name` without case, accents, hyphens, punctuation and plurals; only for comparing.

    >>> fold("Chassés"), fold("kick-ball-changes")
    ('chass', 'kick ball chang')
    """
    plain = unicodedata.normalize("NFKD", name.casefold())
    bare = "".join(c for c in plain if not unicodedata.combining(c))
    return " ".join(_singular(w) for w in re.findall(r"[\w/&]+", bare.replace("'", "").replace("’", "")))


def _singular(word: str) -> str:
    """The stem that a noun and its plural share: ``switches``, ``switch``; ``vines``, ``vine``."""
    if len(word) > 4 and word.endswith("ies"):
        return word[:-3] + "y"
    if word.endswith("s") and not word.endswith("ss") and len(word) > 2:
        word = word[:-1]
    return word[:-1] if word.endswith("e") and len(word) > 3 else word


@cache
def _index() -> dict[str, tuple[Figure | Term, ...]]:
    found: dict[str, tuple[Figure | Term, ...]] = {}
    entries: tuple[Figure | Term, ...] = (*figures(), *terms())
    for entry in entries:
        for name in (entry.name, *entry.also):
            held = found.get(fold(name), ())
            if entry not in held:
                found[fold(name)] = (*held, entry)
    return found


def _entries(names: list[str]) -> tuple[Figure | Term, ...]:
    index = _index()
    return tuple(dict.fromkeys(entry for name in names for entry in index[name]))
