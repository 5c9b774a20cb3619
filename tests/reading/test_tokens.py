"""A line falls into the phrases of the trade, the longest first, each at its place."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from wallwise.dance.model import Foot
from wallwise.glossary.entry import Figure
from wallwise.glossary.lexicon import Word, lexicon
from wallwise.reading.tokens import TURN, Token, tokenize


def shown(token: Token) -> str:
    """The token's class and value in words: ``side R``, ``amount 1/4``, ``clock 3:00``."""
    word = token.word.value if isinstance(token.word, Word) else token.word
    value = token.value
    if word == "clock":
        value = f"{value * 12 // TURN or 12}:{value * 720 // TURN % 60:02}"
    elif word == "amount":
        value = Fraction(value) / 8
    elif isinstance(value, tuple):
        value = " ".join(v.name if isinstance(v, Figure) else v.value for v in value)
    elif isinstance(value, Foot):
        value = value.value
    return f"{word} {value}" if value is not None else word


FEET = {
    "side R": ["R", "right", "(R)"],
    "foot R": ["RF", "R.F.", "r/f", "right foot", "R foot"],
    "foot L": ["LF", "L.F.", "left foot", "L foot"],
    "feet L R L": ["LRL", "L, R, L", "L-R-L", "L/R/L", "left, right, left", "left, right and left"],
    "both both": ["both feet", "RF+LF", "both heels"],
}
PLACES = {
    "place forward": ["forward", "fwd"],
    "place back": ["back", "bk", "backwards"],
    "place beside": ["beside", "together", "tog", "next to"],
    "place across": ["across", "over", "in front of"],
    "place behind": ["behind"],
}
VERBS = {
    "verb touch": ["touch", "tch", "tap"],
    "verb recover": ["recover", "rec", "replace"],
    "verb cross": ["cross", "x"],
    "verb step": ["step", "stepping"],
}
TURNS = {
    "amount 1/4": ["1/4", "quarter", "90 degrees"],
    "amount 1/2": ["1/2", "half", "180 degrees"],
    "amount 3/4": ["3/4", "three quarter", "270 degrees"],
    "amount 1": ["full", "360 degrees"],
    "amount 3/2": ["1 1/2", "1-1/2"],
    "turn pivot": ["pivot"],
}
FACINGS = {
    "clock 3:00": ["(3:00)", "[3.00]", "3:00", "3 o'clock", "three o'clock", "facing the right wall", "(3)"],
    "clock 6:00": ["6 o'c", "to face the back wall", "back wall", "facing 6"],
    "clock 12:00": ["12 o'clock", "front wall", "facing the front wall", "12:00"],
    "clock 9:00": ["09:00", "nine o'clock", "facing the left wall"],
    "clock 1:30": ["(1:30)", "1:30", "01:30"],
    "clock 10:30": ["10:30", "[10.30]"],
}
OTHERS = {
    "again 2": ["x2", "twice", "2 times", "two times"],
    "again 3": ["x3", "3 times"],
    "same same": ["repeat"],
    "same other": ["mirror"],
    "weight none": ["no weight"],
    "hold hold": ["hold"],
    "figure kick ball change": ["kick ball change", "kick-ball-change", "kick ball changes"],
    "figure rocking chair": ["rocking chair", "rocking-chair"],
    "lead R": ["starting with the right foot", "leading with R"],
    "unknown zorp": ["zorp"],
}
ONE = {
    t: told
    for table in (FEET, PLACES, VERBS, TURNS, FACINGS, OTHERS)
    for told, ts in table.items()
    for t in ts
}


@pytest.mark.parametrize("text", ONE)
def test_a_phrase_is_one_token(text: str) -> None:
    """Every spelling of the phrase has the same meaning, and nothing else comes of it."""
    assert [ONE[text]] == [shown(token) for token in tokenize(text, lexicon())]


LINES = {
    "step R fwd": ["verb step", "side R", "place forward"],
    "rock R, rec L": ["verb rock", "side R", ",", "verb recover", "side L"],
    "1/2 pivot left": ["amount 1/2", "turn pivot", "side L"],
    "touch & hold": ["verb touch", "and &", "hold hold"],
    "shuffle RLR": ["figure shuffle", "feet R L R"],
    "kick ball": ["verb kick", "verb ball"],
    "R|L": ["side R", "|", "side L"],
    "R\tstep": ["side R", "cell", "verb step"],
    "weight on L": ["weight weight", "relation on", "side L"],
    "right heel": ["side R", "body part heel"],
    "STEP Right": ["verb step", "side R"],
    "": [],
    "   ": [],
}


@pytest.mark.parametrize("text", LINES)
def test_the_longest_phrase_wins(text: str) -> None:
    """A line is read from left to right, and of two phrases that fit the longer is taken."""
    assert LINES[text] == [shown(token) for token in tokenize(text, lexicon())]


WORDS = st.sampled_from([*ONE, *LINES, "9", "1/0", "-", "o'", "()", "x", "é"])


@given(words=st.lists(st.one_of(WORDS, st.text(max_size=6)), max_size=8))
def test_tokens_stand_in_order_and_in_the_line(words: list[str]) -> None:
    """No two tokens overlap, and each says the words that stand at its place."""
    text = " ".join(words).lower()
    reached = 0
    for token in tokenize(text, lexicon()):
        assert reached <= token.start < token.end <= len(text)
        reached = token.end
