"""The counts declared are not the counts danced."""

from collections.abc import Iterator

from wallwise.checks.rule import Rule
from wallwise.checks.sight import whole_sheet
from wallwise.dance.finding import Finding, Severity
from wallwise.reading import Reading


def _find(reading: Reading) -> Iterator[Finding]:
    claim = reading.declared.counts
    dance, danced = reading.dance, reading.dance.counts
    tags = (
        danced
        if dance.sequence is None
        else sum((t.part.counts for t in {t.part.name: t for t in reading.dance.tags}.values()), danced)
    )
    lettered = {p.name.lower() for p in reading.dance.parts}
    if claim is not None and claim.value not in (danced, tags) and not _half_or_double(reading, claim.value):
        yield whole_sheet(
            RULE.name,
            RULE.severity,
            claim.span,
            f"The sheet declares {claim.value} counts, but its sections add up to {danced}.",
        )
    for name, part_claim in reading.declared.part_counts.items():
        part = reading.parts.get(name.upper()) or next(
            (p for n, p in reading.parts.items() if n.lower() == name), None
        )
        if (
            part is not None
            and part.part.counts != part_claim.value
            and (name in lettered or part.text.extra)
        ):
            title = f"Part {name.upper()}" if len(name) == 1 else f"The {name}"
            yield whole_sheet(
                RULE.name, RULE.severity, part_claim.span,
                f"{title} is declared as {part_claim.value} counts, but its steps add up to {part.part.counts}.",
            )  # fmt: skip


def _half_or_double(reading: Reading, value: int) -> bool:
    """A phrased dance's header often counts the whole sequence: no contradiction."""
    if reading.dance.sequence is None:
        return False
    return value > reading.dance.counts * 2


RULE = Rule("total-counts", Severity.WARNING, "The counts declared are not the counts danced.", _find)
