"""A change to try."""

from __future__ import annotations

from dataclasses import dataclass

from wallwise.dance.finding import Mend
from wallwise.dance.model import Span
from wallwise.reading.record import Passage


@dataclass(frozen=True, slots=True)
class Edit:
    """The mend it would be, its surprise, and the passage it stands in (None: not in the steps)."""

    mend: Mend
    surprise: float
    passage: Passage | None = None
    part: str = "main"

    @classmethod
    def of(cls, span: Span, replace: str, *, says: str, surprise: float) -> Edit:
        """The characters of `span` become `replace`; `says` tells it in words."""
        return cls(Mend(span, replace, says), surprise)

    @classmethod
    def instead(cls, span: Span, told: str, *, shown: str, surprise: float) -> Edit:
        """`told` in the place of `shown`, which stands at `span`."""
        return cls.of(span, told, says=f"“{told}” instead of “{shown}”", surprise=surprise)
