"""One word of the steps written for another."""

from collections.abc import Iterator
from itertools import pairwise

from wallwise.checks.edits.edit import Edit
from wallwise.checks.edits.spelling import amount_like, cased, reclocked, swapped
from wallwise.checks.sight import clock
from wallwise.dance.model import Span
from wallwise.glossary.lexicon import Word, lexicon
from wallwise.reading.tidy import Line
from wallwise.reading.tokens import TURN, Token, tokenize

_SIZES = (2, 4, 6, 8, 1, 3)  # amounts of turn in eighths, the usual ones first
_OTHER_VERB = {
    "touch": "step", "point": "step", "stomp_up": "stomp",
    "step": "touch", "close": "touch", "stomp": "stomp up",
}  # fmt: skip
_QUARTER = TURN // 4


def words_edits(text: str, line: Line, where: tuple[int, int]) -> Iterator[Edit]:
    """The slips that any word of the line could be, from the first to before the second place in it."""
    start, end = where
    for before, token in pairwise([None, *tokenize(line.text[start:end], lexicon())]):
        assert token is not None
        span = line.span(start + token.start, start + token.end)
        yield from word_edits(text[span.start : span.end], span, token, before=before)


def word_edits(shown: str, span: Span, token: Token, *, before: Token | None = None) -> Iterator[Edit]:
    """The other foot or way, another amount, a touch for a step, another facing.

    `shown` stands at `span` of the sheet and was read as `token`; `before` is the token before it.
    """
    if token.word in (Word.SIDE, Word.FOOT, "feet"):
        turned = before is not None and before.word in (Word.TURN, Word.AMOUNT)
        yield from _other(shown, span, swapped(shown), 1.1 if turned else 1.0)
    elif token.word is Word.AMOUNT:
        yield from _other_amounts(shown, span, int(token.value))
    elif token.word is Word.VERB and not token.ing and token.value in _OTHER_VERB:
        yield from _other(shown, span, cased(_OTHER_VERB[token.value], shown), 1.5)
    elif token.word == "clock":
        yield from _other_facings(shown, span, token.value)


def _other(shown: str, span: Span, told: str, surprise: float) -> Iterator[Edit]:
    if told != shown:
        yield Edit.instead(span, told, shown=shown, surprise=surprise)


def _other_amounts(shown: str, span: Span, eighths: int) -> Iterator[Edit]:
    for size in _SIZES:
        if size != eighths:
            yield from _other(shown, span, amount_like(shown, size), _amount_surprise(size, eighths))


def _amount_surprise(size: int, eighths: int) -> float:
    if {size, eighths} <= {2, 4}:
        return 1.2
    return 1.7 if size in (6, 8) else 2.2


def _other_facings(shown: str, span: Span, facing: int) -> Iterator[Edit]:
    for other in range(0, TURN, TURN // 8):
        told = reclocked(shown, other)
        # A diagonal is not written for a wall.
        if other != facing and told != shown and (other % _QUARTER == 0 or facing % _QUARTER):
            yield Edit.of(span, told, says=f"facing {clock(other)} instead of {clock(facing)}", surprise=1.3)
