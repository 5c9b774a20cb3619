"""A section is longer or shorter than its heading, or than the bars of the music."""

from collections.abc import Iterator

from wallwise.checks.rule import Rule
from wallwise.checks.sight import danced_through
from wallwise.dance.finding import Finding, Severity
from wallwise.dance.model import Span
from wallwise.reading import Reading
from wallwise.reading.outline import SectionText
from wallwise.reading.record import PartReading

_WALTZ_BAR = 3


def _find(reading: Reading) -> Iterator[Finding]:
    for part in danced_through(reading):
        meant = _declared_so(reading, part)
        for section in part.text.sections:
            if section.range is not None:
                problem = _unlike_heading(section, section.range)
            else:
                problem = "" if meant else _unlike_music(part, section, reading.dance.beats_per_bar)
            if problem:
                yield RULE.on(
                    _place(part, section),
                    f"{_name(part, section)} {problem}.",
                    section=section.number,
                    part=part.text.name,
                )


def _unlike_heading(section: SectionText, told: tuple[int, int]) -> str:
    """How the section differs from the counts of its heading; one danced several times over does not."""
    counts, size = section.counts, told[1] - told[0] + 1
    if counts % size == 0 or _counts_through(section, told):
        return ""
    return f"counts to {counts}, but its heading makes it {size}"


def _counts_through(section: SectionText, told: tuple[int, int]) -> bool:
    """Whether its lines count from the first told to the last, be it the 1 of the next eight."""
    beats = [beat // 1 for group in section.groups for beat in group.beats]
    in_part, in_section = 0, section.base - 1
    return bool(beats) and any(
        (beats[0] - shift, beats[-1] - shift) == told for shift in (in_part, in_section)
    )


def _unlike_music(part: PartReading, section: SectionText, bar: int) -> str:
    """How the section fails to fill bars: half a bar of four is enough where not all others are eights."""
    counts = section.counts
    if counts % (bar if bar == _WALTZ_BAR else 2):
        return f"has {counts} counts, which fills no bars of {bar}"
    others = [s.counts for s in part.text.sections if s is not section]
    if counts % bar and others and all(other % 8 == 0 for other in others):
        return f"has {counts} counts, the others {others[0]}"
    return ""


def _declared_so(reading: Reading, part: PartReading) -> bool:
    """Whether the header counts the dance as it is danced: an odd section is then meant."""
    whole = reading.declared.counts
    own = reading.declared.part_counts.get(part.text.name.lower())
    return (whole is not None and whole.value == reading.dance.counts and not part.text.extra) or (
        own is not None and own.value == part.part.counts
    )


def _name(part: PartReading, section: SectionText) -> str:
    several = len(part.text.sections) > 1
    return f"Section {section.number}" if several else part.text.name.capitalize()


def _place(part: PartReading, section: SectionText) -> Span | None:
    last = next((p for p in reversed(part.passages) if p.section is section), None)
    return last.span_at(None) if last is not None else None


RULE = Rule("section-length", Severity.WARNING, "A section is longer or shorter than it should be.", _find)
