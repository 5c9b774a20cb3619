"""A section is longer or shorter than its heading, or than the bars of the music."""

from collections.abc import Iterator

from wallwise.checks.rule import Rule
from wallwise.checks.sight import whole_sheet
from wallwise.dance.finding import Finding, Severity
from wallwise.dance.model import Span
from wallwise.reading import Reading
from wallwise.reading.outline import SectionText
from wallwise.reading.read import PartReading, is_ending


def _find(reading: Reading) -> Iterator[Finding]:
    bar = reading.dance.beats_per_bar
    for part in reading.parts.values():
        if is_ending(part.text.name):
            continue
        for section in part.text.sections:
            counts = section.counts
            told = section.range[1] - section.range[0] + 1 if section.range else None
            name = (
                f"Section {section.number}"
                if len(part.text.sections) > 1
                else f"{part.text.name.capitalize()}"
            )
            if told is not None and told != counts and counts % told:
                message = f"{name} counts to {counts}, but its heading makes it {told}."
            elif told is None and counts % (bar if bar == 3 else 2) and not _declared_so(reading, part):
                message = f"{name} has {counts} counts, which fills no bars of {bar}."
            elif (
                told is None
                and counts % bar
                and bar != 3
                and _others_are_eights(part, section)
                and not _declared_so(reading, part)
            ):
                message = f"{name} has {counts} counts, the others {part.text.sections[0 if section.number > 1 else 1].counts}."
            else:
                continue
            yield whole_sheet(
                RULE.name,
                RULE.severity,
                _place(part, section),
                message,
                section=section.number,
                part=part.text.name,
            )


def _declared_so(reading: Reading, part: PartReading) -> bool:
    """Whether the header counts the dance as it is danced: an odd section is then meant."""
    claim = reading.declared.counts
    own = reading.declared.part_counts.get(part.text.name.lower())
    return (claim is not None and claim.value == reading.dance.counts and not part.text.extra) or (
        own is not None and own.value == part.part.counts
    )


def _others_are_eights(part: PartReading, section: SectionText) -> bool:
    others = [s.counts for s in part.text.sections if s is not section]
    return bool(others) and all(c % 8 == 0 for c in others)


def _place(part: PartReading, section: SectionText) -> Span:
    last = next((p for p in reversed(part.passages) if p.section is section), None)
    return last.span_at(None) if last is not None else Span(0, 0)


RULE = Rule("section-length", Severity.WARNING, "A section is longer or shorter than it should be.", _find)
