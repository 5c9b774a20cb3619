"""A finding: what is wrong or doubtful in a sheet, where, and what would mend it."""

from dataclasses import dataclass
from enum import StrEnum

from wallwise.dance.model import Span


class Severity(StrEnum):
    """ERROR: cannot be danced as written.  WARNING: the teacher must settle it.  NOTE: worth knowing."""

    ERROR = "error"
    WARNING = "warning"
    NOTE = "note"


@dataclass(frozen=True, slots=True)
class Mend:
    """One edit of the sheet as given: the characters of `span` become `replace`."""

    span: Span
    replace: str
    says: str

    def apply(self, text: str) -> str:
        """`text` with the edit made."""
        return text[: self.span.start] + self.replace + text[self.span.end :]


@dataclass(frozen=True, slots=True)
class Finding:
    """One fault under its rule's name, placed in the sheet, with mends, the likeliest first.

    `section` is 1-based within its part (None where the whole sheet is meant); `count` as
    counted aloud.
    """

    rule: str
    severity: Severity
    span: Span
    message: str
    section: int | None = None
    count: str = ""
    mends: tuple[Mend, ...] = ()
    part: str = "main"

    @property
    def loud(self) -> bool:
        """Whether it must be settled: an error or a warning."""
        return self.severity is not Severity.NOTE
