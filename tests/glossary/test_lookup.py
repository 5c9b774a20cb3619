"""Looking a word up in the glossary."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from wallwise.glossary.entry import Figure, Term
from wallwise.glossary.load import figures, terms
from wallwise.glossary.lookup import find, fold


def names(word: str) -> list[str]:
    return [entry.name for entry in find(word)]


@pytest.mark.parametrize(
    "word",
    ["kick ball change", "Kick-Ball-Change", "KICK BALL CHANGES", "kbc", " kick  ball change. "],
)
def test_case_hyphens_plurals_and_abbreviations_make_no_difference(word: str) -> None:
    """However it is written, it is the same figure."""
    assert ["kick ball change"] == names(word)


@pytest.mark.parametrize("word", ["chassé", "Chassés", "chasse", "CHASSÉ"])
def test_accents_make_no_difference(word: str) -> None:
    """A chassé is a chasse."""
    assert ["chasse"] == names(word)


@pytest.mark.parametrize(
    ("plural", "name"),
    [
        ("heel switches", "heel switch"),
        ("jazz boxes", "jazz box"),
        ("ponies", "pony"),
        ("lunges", "lunge"),
        ("toe struts", "toe strut"),
        ("crosses", "cross"),
        ("scissors", "scissor"),
        ("Suzie Qs", "suzie q"),
    ],
)
def test_plurals_find_the_singular(plural: str, name: str) -> None:
    """English plurals of all the trade's endings fold together."""
    assert [name] == names(plural)


def test_figure_stands_before_the_term_of_the_same_name() -> None:
    """A name that is both gives both, what to dance first."""
    kinds = [type(entry) for entry in find("twist")]
    assert [Figure, Term] == kinds


def test_part_of_a_name_finds_all_that_hold_it() -> None:
    """A word inside longer names finds them, whole words only."""
    found = names("sailor cross")
    assert ["sailor cross"] == found
    assert {"grapevine"} <= {n for entry in find("grapevine") for n in (entry.name, *entry.also)}
    assert {"jazz box strut", "side strut"} <= set(names("toe strut jazz")) | set(names("side toe strut"))
    assert all("potato" in n for n in names("potato"))


@pytest.mark.parametrize(
    ("slip", "name"), [("samab step", "samba step"), ("montery turn", "monterey"), ("grapvine", "vine")]
)
def test_slip_of_the_pen_finds_the_nearest(slip: str, name: str) -> None:
    """A misspelt name still finds its figure."""
    assert name in names(slip)


@pytest.mark.parametrize("word", ["", "   ", "---", "qqqqqq", "…"])
def test_nothing_like_it_finds_nothing(word: str) -> None:
    """No entry is made up."""
    assert () == find(word)


def test_every_entry_is_found_by_every_name() -> None:
    """Whatever an entry calls itself leads to it."""
    every: tuple[Figure | Term, ...] = (*figures(), *terms())
    for entry in every:
        for name in (entry.name, *entry.also):
            assert entry in find(name), name
            assert entry in find(name.upper().replace(" ", "-")), name


@given(st.text(max_size=20))
def test_any_text_can_be_looked_up(word: str) -> None:
    """No text breaks the search, and folding twice is folding once for what finds something exactly."""
    assert len(find(word)) == len(set(find(word)))
    assert fold(word) == fold(word.upper()) or not word.isascii()
