"""A facing is stated that the turns do not give."""

from collections.abc import Iterator
from itertools import pairwise

from wallwise.checks.rule import Rule
from wallwise.checks.sight import clock, main_part, sights
from wallwise.dance.finding import Finding, Severity
from wallwise.reading import Reading


def _find(reading: Reading) -> Iterator[Finding]:
    yield from _along_the_way(reading)
    yield from _at_the_end(reading)


def _along_the_way(reading: Reading) -> Iterator[Finding]:
    for before, sight in pairwise([None, *sights(reading)]):
        assert sight is not None
        move = sight.event.move
        if "facing" not in sight.event.clash or move.faces is None:
            continue
        # Where the search followed the claim, what the turn itself gave is no longer in the event.
        began = before.event.facing if before is not None and before.part is sight.part else 0
        turned_to = clock(began + sight.event.turn)
        yield RULE.at(
            sight,
            f"After {sight.where} the sheet says {clock(move.faces)}, but the turns so far give {turned_to}.",
            span=sight.passage.span_at(move.faces_at),
        )


def _at_the_end(reading: Reading) -> Iterator[Finding]:
    main = main_part(reading)
    if reading.end_claim is None or main is None:
        return
    claimed, span = reading.end_claim
    faced = main.solution.facing
    if faced != claimed:
        yield RULE.on(
            span,
            f"At its end the sheet says {clock(claimed)}, but the turns give {clock(faced)}.",
            section=main.text.sections[-1].number,
        )


RULE = Rule("facing-differs", Severity.WARNING, "A facing is stated that the turns do not give.", _find)
