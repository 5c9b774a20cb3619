"""One pass over the tokens of a piece of a line, each given to whoever knows its class."""

from __future__ import annotations

from collections.abc import Sequence

from wallwise.glossary.lexicon import Word
from wallwise.reading.clauses import feet, joins, places, stops, turns, verbs
from wallwise.reading.clauses.act import Act
from wallwise.reading.clauses.columns import name_cells, with_feet
from wallwise.reading.clauses.telling import Handler, Telling
from wallwise.reading.tokens import Token
from wallwise.reading.wording import number_of

# Classes that are not listed ("-", words of relation) say nothing by themselves.
_HANDLERS: dict[Word | str, Handler] = {
    **dict.fromkeys(stops.STOPS, stops.take_stop),
    ".": stops.take_full_stop,
    ":": stops.take_colon,
    "(": stops.take_opening,
    "[": stops.take_opening,
    ")": stops.take_closing,
    "]": stops.take_closing,
    "cell": stops.take_cell,
    "lead": stops.take_lead,
    "clock": stops.take_clock,
    "steps": stops.take_steps,
    "lasts": stops.take_lasts,
    "feet": stops.take_feet,
    "number": stops.take_number,
    "unknown": stops.take_unknown,
    Word.VERB: verbs.take_verb,
    Word.FIGURE: verbs.take_figure,
    Word.FOOT: feet.take_foot,
    Word.SIDE: feet.take_side,
    Word.BOTH: feet.take_both,
    Word.PART: feet.take_part,
    Word.PLACE: places.take_place,
    Word.TURN: turns.take_turn,
    Word.AMOUNT: turns.take_turn,
    Word.AND: joins.take_and,
    Word.THEN: joins.take_then,
    Word.HOLD: joins.take_hold,
    Word.AGAIN: joins.take_again,
    Word.SAME: joins.take_same,
    Word.WEIGHT: joins.take_weight,
    Word.IGNORE: joins.take_ignored,
}


def read_acts(tokens: Sequence[Token]) -> list[Act]:
    """What the tokens tell, in order; empty for no tokens."""
    telling = Telling(tokens)
    i = 0
    while i < len(tokens):
        counts = tokens[i].word is Word.IGNORE and number_of(tokens[i].text) is not None
        handler = stops.take_number_word if counts else _HANDLERS.get(tokens[i].word)
        i = handler(telling, i, tokens[i]) if handler is not None else i + 1
    telling.flush()
    name_cells(telling.acts, telling.cells)
    return with_feet(telling.acts)
