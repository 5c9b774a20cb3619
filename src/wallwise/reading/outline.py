"""The outline of a sheet: parts, sections, groups of steps, and the remarks between them.

A `Group` is a stretch of text with its count mark; its beats are absolute within the part.
A `Remark` is a sentence that is no step (a restart, a tag, an option), with where it stands.
"""

from dataclasses import dataclass, field
from fractions import Fraction

from wallwise.reading.marks import Mark
from wallwise.reading.tidy import Line


@dataclass(slots=True)
class Group:
    """Steps under one count mark.

    `beats` are absolute in the part (empty: no mark; the section decides).  `written` is the
    mark as it stands, `lasts` the counts that a repeat without one says.  Text is ``line.text[start:end]``.
    """

    line: Line
    start: int
    end: int
    written: Mark | None
    beats: tuple[Fraction, ...] = ()
    lasts: int | None = None
    gap: Fraction = Fraction(0)  # beats missing before it; negative: danced twice

    @property
    def text(self) -> str:
        """The words of the group, without its mark, nor the sign that leads to it."""
        words = self.line.text[self.start : self.end]
        follows = self.written is not None and self.written.start >= self.end
        return words.rstrip(" :-") if follows else words


@dataclass(slots=True)
class SectionText:
    """A section as written: its heading's words and its groups; `range` as its heading says."""

    number: int
    heading: Line | None = None
    heading_at: int = 0
    range: tuple[int, int] | None = None
    groups: list[Group] = field(default_factory=list)
    base: Fraction = Fraction(1)
    counts: Fraction = Fraction(0)
    wraps: bool = False  # its last mark runs into the first beat of the next section ("8&1")
    from_heading: bool = False  # no lines follow: the heading is all there is

    @property
    def heading_text(self) -> str:
        """The heading's words without its number and range."""
        return self.heading.text[self.heading_at :].strip(" :.-\t") if self.heading is not None else ""


@dataclass(slots=True)
class PartText:
    """A part as written: ``main``, a letter, or the name of a tag, bridge or ending."""

    name: str
    extra: bool = False
    line: Line | None = None
    line_at: int = 0
    sections: list[SectionText] = field(default_factory=list)

    @property
    def counts(self) -> Fraction:
        """Counts of all its sections."""
        return sum((s.counts for s in self.sections), Fraction(0))


@dataclass(slots=True)
class Remark:
    """A stretch of a line that is no step, with the part, section and group that it stands behind."""

    line: Line
    start: int
    end: int
    part: str = ""
    group: Group | None = None
    section: int | None = None

    @property
    def text(self) -> str:
        """The words of the remark."""
        return self.line.text[self.start : self.end]


@dataclass(slots=True)
class Outline:
    """The whole sheet by its shape."""

    header: list[Line] = field(default_factory=list)
    parts: list[PartText] = field(default_factory=list)
    remarks: list[Remark] = field(default_factory=list)
    bar: int = 4  # beats
