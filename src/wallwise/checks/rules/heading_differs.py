"""A heading names a figure on the other foot, the other way or of another size than its lines dance."""

from collections.abc import Iterator

from wallwise.checks.edits import heading_slip
from wallwise.checks.rule import Rule
from wallwise.dance.finding import Finding, Severity
from wallwise.reading import Reading


def _find(reading: Reading) -> Iterator[Finding]:
    for part in reading.parts.values():
        for section in part.text.sections:
            slip = heading_slip(reading.text, part, section)
            if slip is None:
                continue
            span = slip.mend.span
            yield RULE.on(
                span,
                f"The heading of section {section.number} says “{reading.text[span.start : span.end]}”, "
                f"but its lines dance it as “{slip.mend.replace}”.",
                section=section.number,
                part=part.text.name,
            )


RULE = Rule(
    "heading-differs",
    Severity.WARNING,
    "A heading says another foot, way or size than its lines dance.",
    _find,
)
