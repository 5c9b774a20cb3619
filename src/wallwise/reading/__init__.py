"""Text to a dance: tidy, blocks, outline, clauses, layouts, solve."""

from wallwise.reading.read import NotASheet, read
from wallwise.reading.record import Reading

__all__ = ["NotASheet", "Reading", "read"]
