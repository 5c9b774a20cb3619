"""Syllables of the words that are called, counted by hand (Merriam-Webster's divisions, from memory)."""

from __future__ import annotations

import pytest

from wallwise.give.syllables import syllables

BY_HAND = {
    1: "one two three four five six eight side close step stomp touch point vine weave rock back cross half "
    "hold kick scuff brush sweep drag heel twist waltz change cha skate spin lunge",
    2: "seven forward behind restart coaster sailor shuffle quarter pivot swivel rocking triple twinkle "
    "paddle spiral rolling rumba samba mambo cuban prissy unwind double jumping scissor polka basic balance",
    3: "together recover monterey dorothy merengue bachata potato reversing",
    4: "diagonal botafogo",
}


@pytest.mark.parametrize(
    ("count", "words"), [(n, word) for n, words in BY_HAND.items() for word in words.split()]
)
def test_a_word_has_the_syllables_that_were_counted_by_hand(count: int, words: str) -> None:
    assert count == syllables(words)


def test_a_phrase_has_those_of_its_words() -> None:
    assert 6 == syllables("step, pivot quarter left")
    assert 0 == syllables(" , ")
