"""The sequence names a part that has no steps."""

from collections.abc import Iterator

from wallwise.checks.rule import Rule
from wallwise.checks.sight import whole_sheet
from wallwise.dance.finding import Finding, Severity
from wallwise.dance.walls import part_named
from wallwise.reading import Reading


def _find(reading: Reading) -> Iterator[Finding]:
    dance = reading.dance
    seen = set()
    for name, span in zip(dance.sequence or (), reading.orders.sequence_spans, strict=False):
        if (
            name not in seen
            and part_named(dance, name) is None
            and not name.lower().startswith(("intro", "ending"))
        ):
            seen.add(name)
            known = ", ".join([p.name for p in dance.parts] + [t.part.name for t in dance.tags])
            yield whole_sheet(
                RULE.name,
                RULE.severity,
                span,
                f"The sequence calls for part {name}, but the sheet has only {known}.",
            )
    if dance.sequence is not None:
        for part in dance.parts:
            if not any(
                (found := part_named(dance, n)) is not None and found.name == part.name
                for n in dance.sequence
            ):
                yield whole_sheet(
                    RULE.name, Severity.WARNING, reading.orders.sequence_spans[0], f"Part {part.name} has steps, but the sequence never calls for it.",
                    part=part.name,
                )  # fmt: skip


RULE = Rule("unknown-part", Severity.ERROR, "The sequence names a part that has no steps.", _find)
