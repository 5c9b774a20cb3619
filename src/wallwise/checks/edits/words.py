"""One word of the steps written for another, or the way of a turn not written at all."""

import re
from collections.abc import Iterator, Sequence
from itertools import takewhile

from wallwise.checks.edits.edit import Edit
from wallwise.checks.edits.spelling import amount_like, cased, reclocked, swapped
from wallwise.checks.sight import clock
from wallwise.dance.model import Span
from wallwise.glossary.lexicon import Word
from wallwise.reading.stepwords import tokens_of
from wallwise.reading.tidy import Line
from wallwise.reading.tokens import TURN, Token

# Amounts of turn in eighths, and how surprising it is that one is meant: quarters and halves are
# nine tenths of all turns.  Common practice, no source.
_SIZES = {2: 1.1, 4: 1.15, 6: 1.7, 8: 1.9, 1: 2.0, 3: 2.2}
_RARE = 0.3  # the less a slip surprises, where what is written is itself seldom meant
_OTHER_VERB = {
    "touch": "step", "point": "step", "stomp_up": "stomp",
    "step": "touch", "close": "touch", "stomp": "stomp up",
}  # fmt: skip
_QUARTER = TURN // 4


def words_edits(text: str, line: Line, where: tuple[int, int]) -> Iterator[Edit]:
    """The slips that any word of the line could be, from the first to before the second place in it."""
    start, end = where
    tokens = tokens_of(line.text[start:end])
    for i, token in enumerate(tokens):
        span = line.span(start + token.start, start + token.end)
        shown = text[span.start : span.end]
        yield from word_edits(shown, span, token, before=tokens[i - 1] if i else None)
        if token.word == "feet":
            yield from _one_of_feet(shown, span)
        elif token.word is Word.HOLD and not any(t.word == "lasts" for t in tokens[i + 1 : i + 2]):
            yield from _step_for_hold(shown, span, letters=re.search(r"\b[RL]\b", line.text) is not None)
        elif token.word is Word.AMOUNT and not _way_told(tokens, i):
            last = tokens[i + 1] if tokens[i + 1 : i + 2] and tokens[i + 1].word is Word.TURN else token
            yield from _way_missing(line.span(start + last.start, start + last.end))


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
    rare = _RARE if eighths not in (2, 4) else 0.0
    for size, surprise in _SIZES.items():
        if size != eighths:
            yield from _other(shown, span, amount_like(shown, size), surprise - rare)


def _one_of_feet(shown: str, span: Span) -> Iterator[Edit]:
    """One foot of several told in a row: "left, left, right"."""
    for found in re.finditer(r"(?i)left|right|[lr](?![a-z]{3})", shown):
        foot = Span(span.start + found.start(), span.start + found.end())
        yield from _other(found.group(), foot, swapped(found.group()), 1.0)


def _step_for_hold(shown: str, span: Span, *, letters: bool) -> Iterator[Edit]:
    """A hold where a step together was meant: the weight that is missing then."""
    left, right = ("L", "R") if letters else ("left", "right")
    step = "Step" if shown[:1].isupper() else "step"
    for foot, other in ((left, right), (right, left)):
        yield from _other(shown, span, f"{step} {foot} beside {other}", 1.7)


def _way_missing(span: Span) -> Iterator[Edit]:
    """The way of a turn that does not tell it."""
    for way in ("right", "left"):
        yield Edit.of(Span(span.end, span.end), f" {way}", says=f"the turn to the {way}", surprise=1.0)


def _way_told(tokens: Sequence[Token], i: int) -> bool:
    """Whether a left or right stands beside the amount, with none but words of the turn between."""
    of_turn = (Word.TURN, Word.AMOUNT, Word.SIDE)
    after = takewhile(lambda t: t.word in of_turn or t.word == "to", tokens[i + 1 :])
    before = takewhile(lambda t: t.word in of_turn or t.word == "to", reversed(tokens[:i]))
    return any(t.word is Word.SIDE for t in (*before, *after))


def _other_facings(shown: str, span: Span, facing: int) -> Iterator[Edit]:
    for other in range(0, TURN, TURN // 8):
        told = reclocked(shown, other)
        # A diagonal is not written for a wall.
        if other != facing and told != shown and (other % _QUARTER == 0 or facing % _QUARTER):
            yield Edit.of(span, told, says=f"facing {clock(other)} instead of {clock(facing)}", surprise=1.3)
