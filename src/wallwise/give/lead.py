"""What leads the dancers over a song: a choice that costs nothing to import."""

from enum import StrEnum


class Lead(StrEnum):
    """What is heard over the song: call words, counts, clicks, or the song alone."""

    WORDS = "words"
    COUNTS = "counts"
    CLICK = "click"
    NONE = "none"
