"""Text to a dance: tidy, blocks, outline, clauses, layouts, solve."""

from wallwise.reading.read import NotASheet, Reading, read

__all__ = ["NotASheet", "Reading", "read"]
