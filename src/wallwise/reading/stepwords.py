"""How much of a text is step language: what tells a line of steps from chatter."""

from functools import lru_cache

from wallwise.glossary.lexicon import Word, lexicon
from wallwise.reading.tokens import Token, tokenize

_STEP_WORDS = frozenset(
    {
        Word.VERB, Word.FOOT, Word.SIDE, Word.BOTH, Word.PLACE, Word.TURN, Word.AMOUNT, Word.PART,
        Word.HOLD, Word.FIGURE, "feet",
    }
)  # fmt: skip
_ACTIONS = frozenset({Word.VERB, Word.FIGURE, Word.PART, Word.HOLD})


@lru_cache(maxsize=4096)
def tokens_of(text: str) -> tuple[Token, ...]:
    """The text's tokens by the glossary that comes with Wallwise."""
    return tuple(tokenize(text, lexicon()))


def known_share(text: str) -> float:
    """The share of a text's words that are step language, 0 to 1; 0 for no words."""
    known = unknown = 0
    for token in tokens_of(text):
        if token.word in _STEP_WORDS:
            known += max(1, token.text.count(" ") + 1)
        elif token.word == "unknown":
            unknown += 1
    return known / (known + unknown) if known + unknown else 0.0


def actions_in(text: str) -> int:
    """How many words and figures of a text say what a foot does, or that it waits."""
    return sum(token.word in _ACTIONS for token in tokens_of(text))
