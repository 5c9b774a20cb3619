"""What the song rules look at: where walls begin in the music, and where the header says what."""

from __future__ import annotations

import re

from wallwise.checks.rule import Named
from wallwise.dance.finding import Severity
from wallwise.dance.model import Span
from wallwise.reading import Reading
from wallwise.song.danced import Danced, Stretch
from wallwise.song.minutes import time_name

# A phrase that is heard less surely than this is no reason to warn: a rule of thumb.
_SURE = 0.5


def next_wall(danced: Danced, index: int) -> Stretch | None:
    """The next wall that begins after stretch `index` (from 0); None where the song is over before."""
    return next((stretch for stretch in danced.stretches[index + 1 :] if stretch.begins), None)


def told_at(stretch: Stretch) -> str:
    """When the stretch begins, in words: "at 1:04"."""
    return f"at {time_name(stretch.starts_sec)}"


def beside_words(stretch: Stretch) -> str:
    """How far the stretch begins from the nearest phrase: "8 counts before phrase 5 begins"."""
    assert stretch.meeting is not None
    offset = stretch.meeting.offset
    counts = f"{abs(offset)} count{'s' if abs(offset) != 1 else ''}"
    return f"{counts} {'after' if offset > 0 else 'before'} phrase {stretch.meeting.nearest} begins"


def severity_of(rule: Named, stretch: Stretch) -> Severity:
    """The rule's severity, or a note where the phrase is hardly heard."""
    sure = stretch.meeting is None or stretch.meeting.confidence >= _SURE
    return rule.severity if sure else Severity.NOTE


def header_span(reading: Reading, *patterns: str) -> Span | None:
    """The place in the sheet's header of the first pattern found, case being no matter; None for none."""
    for pattern in patterns:
        for line in reading.outline.header:
            if found := re.search(pattern, line.text, re.IGNORECASE):
                return line.span(*found.span())
    return None
