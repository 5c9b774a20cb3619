"""Glossary files: what a good one gives, and which fault of a bad one is told."""

from fractions import Fraction
from pathlib import Path

import pytest

from wallwise.glossary.entry import Figure
from wallwise.glossary.load import GlossaryError, figures, read_own, terms, words

GOOD = """
[[figure]]
name = "teapot turn"
also = ["teapot"]
call = "teapot"
source = "our own class"
side = "turn"
says = "A pivot with a pose."

[[figure.way]]
says = "half"
steps = ["1 step R forward", "2 turn L left 1/2", "3 hold"]
counts = 4
turn_on = ["2", "1+2"]

[[figure.way]]
says = "quick"
steps = ["& ball R forward", "1 turn L left 1/2", "& touch R beside"]
turn_on = ["&", "&+1"]

[[figure.example]]
line = "1-4 Teapot"
reads = ["1 step R forward", "2 turn L left 1/2", "3 hold"]

[[term]]
name = "lid"
says = "The pose."
source = "our own class"
"""


def own(folder: Path, text: str) -> tuple[Figure, ...]:
    path = folder / "glossary.toml"
    path.write_text(text, encoding="utf-8")
    return read_own(path)


def test_own_file_gives_its_figures(tmp_path: Path) -> None:
    """Names, ways, turns and examples of a teacher's own figure come as written."""
    (figure,) = own(tmp_path, GOOD)
    half, quick = figure.ways
    assert ("teapot turn", "teapot") == figure.names
    assert ("turn", "glossary") == (figure.side, figure.family)
    assert ((Fraction(2),), (Fraction(1), Fraction(2))) == half.turn_on
    assert ((Fraction(1, 2),), (Fraction(1, 2), Fraction(1))) == quick.turn_on
    assert half.steps == figure.examples[0].reads
    assert Fraction(-1, 2) == half.turn


def test_counts_are_the_whole_beat_of_the_last_step_where_left_out(tmp_path: Path) -> None:
    """A step on the half beat after 1 still lies in count 1; what is written counts."""
    (figure,) = own(tmp_path, GOOD)
    assert [4, 1] == [way.counts for way in figure.ways]


@pytest.mark.parametrize(
    ("old", "new", "says"),
    [
        ('call = "teapot"', "", "'call' is missing"),
        ('source = "our own class"\nside', "side", "'source' is missing"),
        ('name = "teapot turn"', "", "'name' is missing"),
        ('side = "turn"', 'side = "trun"', "side is 'trun'"),
        ("turn_on", "turnon", "unknown key turnon"),
        ('also = ["teapot"]', 'also = "teapot"', "also is not a list"),
        ('says = "A pivot with a pose."', "says = 4", "says is not a text"),
        ("counts = 4", 'counts = "four"', "'four'"),
        ('"2 turn L left 1/2", "3 hold"]\ncounts', '"2 turn L left half"]\ncounts', "2 turn L left half"),
        ('steps = ["1 step R forward", "2 turn L left 1/2", "3 hold"]', "steps = []", "no steps"),
        ('"2", "1+2"', '"two"', "'two'"),
        ('"2", "1+2"', '""', "not a count"),
        ('line = "1-4 Teapot"', "", "'line' is missing"),
        ("[[figure.way]]", "[[figure.path]]", "unknown key path"),
    ],
)
def test_fault_in_a_figure_names_file_entry_and_fault(tmp_path: Path, old: str, new: str, says: str) -> None:
    """A teacher is told which figure of which file to mend, and what is wrong with it."""
    assert old in GOOD
    with pytest.raises(GlossaryError) as refused:
        own(tmp_path, GOOD.replace(old, new))
    message = str(refused.value)
    assert "glossary.toml" in message
    assert "(no name)" in message if "name =" in old else "teapot turn" in message
    assert says in message


def test_figure_without_ways_is_refused(tmp_path: Path) -> None:
    """A name that says no steps is of no use to the reader."""
    with pytest.raises(GlossaryError, match=r"'nothing' in glossary.toml: 'way' is missing"):
        own(tmp_path, '[[figure]]\nname = "nothing"\ncall = "x"\nsource = "x"\n')


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("name = ", "cannot be read"),
        ('[figure]\nname = "x"', r"\[\[figure\]\] with two brackets"),
        ('[[figures]]\nname = "x"', "unknown heading 'figures'"),
        ('[[term]]\nname = "lid"\nsource = "x"', "term 'lid' in glossary.toml: 'says' is missing"),
        ('[[term]]\nname = "lid"\nsays = "x"\nsource = "x"\nsee = "y"', "unknown key see"),
        ("figure = 3", "two brackets"),
        ("figure = [3]", "two brackets"),
        ("[[figure]]\nway = 3", "'name' is missing"),
        ('[[figure]]\nname = "x"\nway = [3]', "figure 'x' in glossary.toml"),
    ],
)
def test_fault_in_a_file_names_the_file(tmp_path: Path, text: str, says: str) -> None:
    """What is no glossary is refused in one sentence that names the file."""
    with pytest.raises(GlossaryError, match=says) as refused:
        own(tmp_path, text)
    assert "glossary.toml" in str(refused.value)


def test_missing_file_is_refused(tmp_path: Path) -> None:
    """A path that leads nowhere is a glossary that cannot be read."""
    with pytest.raises(GlossaryError, match=r"nowhere\.toml cannot be read"):
        read_own(tmp_path / "nowhere.toml")


def test_file_in_another_encoding_is_refused(tmp_path: Path) -> None:
    """Glossary files are UTF-8, as TOML asks."""
    path = tmp_path / "latin.toml"
    path.write_bytes('[[figure]]\nname = "chassé"\n'.encode("latin-1"))
    with pytest.raises(GlossaryError, match=r"latin\.toml cannot be read"):
        read_own(path)


def test_empty_file_has_no_figures(tmp_path: Path) -> None:
    """An empty overlay changes nothing."""
    assert () == own(tmp_path, "")


def test_what_comes_with_wallwise_is_loaded_once() -> None:
    """Figures, terms and words are the same objects each time; no figure is called a word file's."""
    assert figures() is figures()
    assert terms() is terms()
    assert "verb" in words()
    assert "words" not in {f.family for f in figures()}
