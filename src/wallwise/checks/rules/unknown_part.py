"""The sequence names a part that has no steps."""

from collections.abc import Iterator

from wallwise.checks.rule import Rule
from wallwise.dance.finding import Finding, Severity
from wallwise.dance.walls import part_named
from wallwise.reading import Reading


def _find(reading: Reading) -> Iterator[Finding]:
    if reading.dance.sequence is not None:
        yield from _without_steps(reading, reading.dance.sequence)
        yield from _never_called(reading, reading.dance.sequence)
    elif reading.orders.sequence is not None:
        yield from _no_parts(reading, reading.orders.sequence)


def _without_steps(reading: Reading, sequence: tuple[str, ...]) -> Iterator[Finding]:
    dance = reading.dance
    known = ", ".join([p.name for p in dance.parts] + [t.part.name for t in dance.tags])
    said: set[str] = set()
    for name, span in zip(sequence, reading.orders.sequence_spans, strict=False):
        apart = name.lower().startswith(("intro", "ending"))
        if name not in said and not apart and part_named(dance, name) is None:
            said.add(name)
            yield RULE.on(span, f"The sequence calls for part {name}, but the sheet has only {known}.")


def _no_parts(reading: Reading, sequence: tuple[str, ...]) -> Iterator[Finding]:
    """A sequence of several letters over steps of which none are headed by a letter."""
    letters = sorted({name[0] for name in sequence if name[1:2] in ("", "-", "(")})
    if len(letters) > 1:
        yield RULE.on(
            reading.orders.sequence_spans[0],
            f"The sequence calls for parts {' and '.join(letters)}, but no steps are headed so.",
        )


def _never_called(reading: Reading, sequence: tuple[str, ...]) -> Iterator[Finding]:
    called = {part.name for name in sequence if (part := part_named(reading.dance, name)) is not None}
    for part in reading.dance.parts:
        if part.name not in called:
            yield RULE.on(
                reading.orders.sequence_spans[0],
                f"Part {part.name} has steps, but the sequence never calls for it.",
                part=part.name,
                severity=Severity.WARNING,
            )


RULE = Rule("unknown-part", Severity.ERROR, "The sequence names a part that has no steps.", _find)
