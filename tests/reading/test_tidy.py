"""Every spelling of a sheet is made one, and every character keeps its place in the text as given."""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from wallwise.reading.tidy import tidy

# Code points and their meaning: The Unicode Standard 15.0, code charts.
PLAIN = {
    "vulgar fractions": ("turn 1/4, 1/2, 3/4, 1/8", "turn ¼, ½, ¾, ⅛"),
    "a fraction after a digit": ("turn 1 1/2 left", "turn 1½ left"),
    "the fraction slash": ("1/4 turn", "1⁄4 turn"),
    "dashes": ("1-2 3-4 5-6 7-8", "1–2 3—4 5−6 7‑8"),
    "quotes": ('"Ferry" o\'clock', "“Ferry” o’clock"),
    "an ellipsis": ("repeat...", "repeat…"),
    "times": ("rock x2", "rock ×2"),
    "degrees": ("turn 90 degrees", "turn 90°"),
    "accents": ("chasse, chaine turns", "chassé, chainé turns"),
    "ligatures": ("first", "ﬁrst"),
    "full-width letters": ("3&4 R", "３＆４ Ｒ"),
    "hard blanks": ("R side  L", "R\u00a0side \u2003L"),
    "blanks of no width": ("together", "to\u200bget\ufeffher"),
    "soft hyphens": ("together", "to\u00adgether"),
    "bullets": ("• 1-2", "● 1-2"),
    "arrows": ("-> 9:00", "→ 9:00"),
    "a named entity": ("rock & recover", "rock &amp; recover"),
    "an entity for a fraction": ("1/2 turn", "&frac12; turn"),
    "a numbered entity": ("1-2", "1&#8211;2"),
    "a hexadecimal entity": ("1-2", "1&#x2013;2"),
    "tags around words": ("STEP right", "<b>STEP</b> <span class='x'>right</span>"),
    "a remark in the markup": ("1-2 step", "1-2 <!-- new page -->step"),
    "bold and underlined": ("STEP right", "**STEP** __right__"),
    "l for a figure one": ("turn 1/4 left", "turn l/4 left"),
    "I for a figure one": ("turn 1/2 left", "turn I/2 left"),
    "l at the head of a count": ("1-2 step", "l-2 step"),
    "l in a range of counts": ("[1-8] walks", "[l-8] walks"),
    "letters O in a facing": ("face 3:00", "face 3:OO"),
    "an l that is a foot": ("step L / R", "step L / R"),
    "the hour in Norwegian": ("step L (9:00 )", "step L (kl. 9)"),
    "an hour in Danish": ("step L (    9:00)", "step L (kl. 9:00)"),
    "the hour in French": ("facing 6:00   now", "facing 6 h 00 now"),
    "the hour in German": ("facing 9:00", "facing 9 Uhr"),
    "blanks at the end": ("1-2 step", "1-2 step  \t "),
}


@pytest.mark.parametrize("case", PLAIN)
def test_a_line_is_made_plain(case: str) -> None:
    """Whatever spelling the text has, the line is in the one spelling the reader knows."""
    plain, given_text = PLAIN[case]
    assert [plain] == [line.text for line in tidy(given_text)]


BREAKS = {
    "line feeds": "a\n\nb",
    "carriage returns": "a\r\rb",
    "both": "a\r\n\r\nb",
    "page breaks": "a\f\fb",
    "line and paragraph separators": "a\u2028\u2029b",
    "markup": "a<br><BR/>b",
    "paragraphs": "a</p><p>b",
}


@pytest.mark.parametrize("case", BREAKS)
def test_every_way_to_break_a_line_does(case: str) -> None:
    """Whatever ends a line, the lines are the same, and an empty one is kept."""
    assert ["a", "", "b"] == [line.text for line in tidy(BREAKS[case])]


def test_cells_of_a_table_are_kept_apart() -> None:
    """A cell's end stands as a bar between two cells."""
    lines = tidy("<table><tr><td>1-2</td><td>Walk R, L</td></tr></table>")
    line = next(line for line in lines if "Walk" in line.text)
    assert ["1-2", "Walk R, L"] == [cell.strip() for cell in line.text.split("|") if cell.strip()]


PLACES = {
    "a word alone": ("step", "1-2 step R"),
    "behind a fraction": ("right", "turn 1½ right"),
    "behind an entity": ("right", "&frac14; turn right"),
    "within tags": ("right", "turn <b>right</b>"),
    "on the second line": ("right", "½\r\n¼ right"),
}


@pytest.mark.parametrize("case", PLACES)
def test_a_word_knows_where_it_stood(case: str) -> None:
    """The span of a word in a line made plain is where the word stands in the text."""
    word, text = PLACES[case]
    line = next(line for line in tidy(text) if word in line.text)
    start = line.text.index(word)
    span = line.span(start, start + len(word))
    assert word == text[span.start : span.end]


def test_a_fraction_made_plain_stands_where_the_sign_stood() -> None:
    """One sign that becomes three characters is one place in the text, and so is an entity."""
    for text, sign in (("turn ½ left", "½"), ("turn &frac12; left", "&frac12;")):
        (line,) = tidy(text)
        at = line.text.index("1/2")
        span = line.span(at, at + 3)
        assert sign == text[span.start : span.end]


ODD = st.sampled_from(
    ["½", "&frac12;", "<b>", "</p>", "\r\n", "\r", "—", "1½", "l/4", "ﬁ", "ß", "\u200b", "é", "3:OO"]
)
TEXTS = st.lists(st.one_of(ODD, st.text(max_size=8)), max_size=12).map("".join)


@given(text=TEXTS)
def test_every_character_maps_back_into_the_text(text: str) -> None:
    """Places lie in the text, go on from left to right, and none is lost on the way."""
    for line in tidy(text):
        assert len(line.text) == len(line.starts) == len(line.ends)
        assert all(0 <= start < end <= len(text) for start, end in zip(line.starts, line.ends, strict=True))
        assert all(a <= b for a, b in pairwise(line.starts))


@given(
    text=st.text(
        st.characters(min_codepoint=32, max_codepoint=126, exclude_characters="&<`*_~lIO"), max_size=60
    )
)
def test_plain_text_is_left_alone(text: str) -> None:
    """A line of plain characters comes out as it went in, each at its own place."""
    (line,) = tidy(text)
    assert text.rstrip() == line.text
    assert list(range(len(line.text))) == line.starts


@given(text=TEXTS, start=st.integers(0, 30), end=st.integers(0, 30))
def test_a_part_of_a_line_keeps_its_places(text: str, start: int, end: int) -> None:
    """What is cut from a line, or joined to another, still knows where it stood."""
    first, *_ = tidy(text)
    part = first.slice(start, end)
    assert part.text == part.text.strip() == first.text[start:end].strip()
    assert len(part.text) == len(part.starts) == len(part.ends)
    assert set(part.starts) <= set(first.starts)
    both = part.join(first)
    assert len(both.text) == len(both.starts) == len(both.ends)
