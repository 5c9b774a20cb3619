"""The counts declared are not the counts danced."""

from collections.abc import Iterator

from wallwise.checks.rule import Rule
from wallwise.dance.finding import Finding, Severity
from wallwise.reading import Reading


def _find(reading: Reading) -> Iterator[Finding]:
    yield from _of_dance(reading)
    yield from _of_parts(reading)


def _of_dance(reading: Reading) -> Iterator[Finding]:
    dance, claim = reading.dance, reading.declared.counts
    if claim is None or claim.value == dance.counts:
        return
    if dance.sequence is not None:
        # A phrased dance's header often counts its tags too, or the whole sequence.
        tags = {tag.part.name: tag.part.counts for tag in dance.tags}
        if claim.value == dance.counts + sum(tags.values()) or claim.value > dance.counts * 2:
            return
    yield RULE.on(
        claim.span,
        f"The sheet declares {claim.value} counts, but its sections add up to {dance.counts}.",
    )


def _of_parts(reading: Reading) -> Iterator[Finding]:
    lettered = {part.name.lower() for part in reading.dance.parts}
    parts = {name.lower(): part for name, part in reversed(reading.parts.items())}
    declared = reading.declared
    for name, claim in (*declared.part_counts.items(), *declared.headed_counts.items()):
        part = reading.parts.get(name.upper()) or parts.get(name)
        if part is None or part.part.counts == claim.value or not (name in lettered or part.text.extra):
            continue
        title = f"Part {name.upper()}" if len(name) == 1 else f"The {name}"
        yield RULE.on(
            claim.span,
            f"{title} is declared as {claim.value} counts, but its steps add up to {part.part.counts}.",
        )


RULE = Rule("total-counts", Severity.WARNING, "The counts declared are not the counts danced.", _find)
