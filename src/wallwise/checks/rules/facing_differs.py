"""A facing is stated that the turns do not give."""

from collections.abc import Iterator

from wallwise.checks.rule import Rule
from wallwise.checks.sight import at, clock, sights, where, whole_sheet
from wallwise.dance.finding import Finding, Severity
from wallwise.reading import Reading
from wallwise.reading.tokens import TURN


def _find(reading: Reading) -> Iterator[Finding]:
    for sight in sights(reading):
        event = sight.event
        if "facing" not in event.clash or event.move.faces is None:
            continue
        faced = _turned_to(reading, sight.part.text.name, event)
        yield at(
            sight, RULE.name, RULE.severity,
            f"After {where(sight)} the sheet says {clock(event.move.faces)}, but the turns so far give {clock(faced)}.",
            span=sight.passage.span_at(event.move.faces_at),
        )  # fmt: skip
    claim = reading.end_claim
    main = next((p for p in reading.parts.values() if not p.text.extra), None)
    if claim is not None and main is not None and main.solution.facing != claim[0]:
        yield whole_sheet(
            RULE.name, RULE.severity, claim[1],
            f"At its end the sheet says {clock(claim[0])}, but the turns give {clock(main.solution.facing)}.",
            section=main.text.sections[-1].number,
        )  # fmt: skip


def _turned_to(reading: Reading, part: str, event) -> int:  # type: ignore[no-untyped-def]
    """The facing the turn itself gave: where the search followed the claim, its own is no longer in the event."""
    before = 0
    for other in reading.parts[part].solution.events:
        if other is event:
            break
        before = other.facing
    return (before + event.turn) % TURN


RULE = Rule("facing-differs", Severity.WARNING, "A facing is stated that the turns do not give.", _find)
