"""What a rule is: a name for a fault, how grave it is, one sentence, a page, and where to look.

A rule looks at a sheet; a song rule looks at a sheet and the song it is danced to.
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from fractions import Fraction
from importlib import resources

from wallwise.checks.sight import Sight, count_in
from wallwise.dance.finding import Finding, Severity
from wallwise.dance.model import Span
from wallwise.reading import Reading
from wallwise.reading.outline import PartText
from wallwise.song.danced import Danced


@dataclass(frozen=True, slots=True)
class Named:
    """What every rule has: its name, its severity, its sentence; `aliases` are names it had before."""

    name: str
    severity: Severity
    says: str
    aliases: tuple[str, ...] = field(default=(), kw_only=True)

    @property
    def page(self) -> str:
        """The rule's page in Markdown: its name, its sentence, what, why, an example, what to do."""
        page = resources.files("wallwise.checks").joinpath(f"pages/{self.name}.md")
        return page.read_text(encoding="utf-8")

    def at(self, sight: Sight, message: str, *, span: Span | None = None) -> Finding:
        """A finding at an event, placed at the words that told it, or at `span`."""
        return self.on(
            span or sight.span,
            message,
            section=sight.section.number,
            part=sight.part.text.name,
            count=sight.count,
        )

    def at_beat(self, part: PartText, beat: Fraction, message: str, *, span: Span | None) -> Finding:
        """A finding about what happens after a beat of a part and is told at `span`."""
        section = next((s for s in part.sections if s.base <= beat < s.base + s.counts), None)
        number, count = (section.number, count_in(section, beat)) if section is not None else (None, "")
        return self.on(span, message, section=number, part=part.name, count=count)

    def on(
        self,
        span: Span | None,
        message: str,
        *,
        section: int | None = None,
        part: str = "main",
        count: str = "",
        severity: Severity | None = None,
    ) -> Finding:
        """A finding about what stands at `span` (None: nowhere), of the rule's severity or another."""
        grave = severity or self.severity
        return Finding(self.name, grave, span or Span(0, 0), message, section, count, part=part)


@dataclass(frozen=True, slots=True)
class Rule(Named):
    """A rule about a sheet.  `find` yields its findings, without mends."""

    find: Callable[[Reading], Iterator[Finding]]


@dataclass(frozen=True, slots=True)
class OnSong:
    """A sheet as read and its dance laid over a song."""

    reading: Reading
    danced: Danced


@dataclass(frozen=True, slots=True)
class SongRule(Named):
    """A rule about a sheet and a song.  `find` yields its findings; they have no mends."""

    find: Callable[[OnSong], Iterator[Finding]]
