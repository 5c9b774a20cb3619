"""What the header declares, made to say what is danced."""

from collections.abc import Iterator

from wallwise.checks.edits.edit import Edit
from wallwise.checks.edits.spelling import number_like, reclocked, swapped
from wallwise.checks.sight import clock
from wallwise.dance.clock import walls_of
from wallwise.dance.model import Span
from wallwise.reading import Reading


def header_edits(reading: Reading) -> Iterator[Edit]:
    """Counts, walls, counts of a part, the foot that bears the weight at the start, the facing at the end."""
    yield from _counts(reading)
    yield from _walls(reading)
    yield from _part_counts(reading)
    yield from _weight(reading)
    yield from _end(reading)


def _counts(reading: Reading) -> Iterator[Edit]:
    claim, danced = reading.declared.counts, reading.dance.counts
    if claim is not None and danced.denominator == 1 and danced != claim.value:
        told = number_like(_words(reading, claim.span), int(danced))
        # Where the steps alone do not come out even, a count of theirs is lost or too many.
        phrase = 2 * reading.dance.beats_per_bar
        odd = danced % phrase and claim.value % phrase == 0
        yield Edit.of(claim.span, told, says=f"{danced} counts", surprise=2.8 if odd else 1.1)


def _walls(reading: Reading) -> Iterator[Edit]:
    claim, parts = reading.declared.walls, reading.dance.parts
    if claim is not None and parts:
        danced = walls_of(parts[0].net_turn)
        if danced == claim.value:
            return
        told = number_like(_words(reading, claim.span), danced)
        yield Edit.of(claim.span, told, says=f"{danced} walls", surprise=1.15)


def _part_counts(reading: Reading) -> Iterator[Edit]:
    parts = {name.lower(): part.part for name, part in reversed(reading.parts.items())}
    declared = reading.declared
    for name, claim in (*declared.part_counts.items(), *declared.headed_counts.items()):
        part = parts.get(name)
        if part is not None and part.counts != claim.value:
            says = f"{part.counts} counts for {name.upper()}"
            yield Edit.of(claim.span, str(part.counts), says=says, surprise=1.1)


def _weight(reading: Reading) -> Iterator[Edit]:
    span = reading.declared.bears_span
    if span is not None:
        shown = _words(reading, span)
        yield Edit.instead(span, swapped(shown), shown=shown, surprise=1.6)


def _end(reading: Reading) -> Iterator[Edit]:
    if reading.end_claim is None:
        return
    _, span = reading.end_claim
    shown = _words(reading, span)
    faced = next(iter(reading.parts.values())).solution.facing
    told = reclocked(shown, faced)
    if told != shown:
        yield Edit.of(span, told, says=f"facing {clock(faced)} at the end", surprise=2.0)


def _words(reading: Reading, span: Span) -> str:
    return reading.text[span.start : span.end]
