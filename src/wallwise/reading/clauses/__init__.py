"""What each piece of a line says, and no more than it says: tokens to acts."""

from wallwise.reading.clauses.act import Act, Turn
from wallwise.reading.clauses.acts import read_acts

__all__ = ["Act", "Turn", "read_acts"]
