"""The sheet says how many counts to wait, and count 1 falls elsewhere in the song."""

from __future__ import annotations

from collections.abc import Iterator

from wallwise.checks.rule import OnSong, SongRule
from wallwise.checks.song_sight import header_span
from wallwise.dance.finding import Finding, Severity
from wallwise.song.danced import Danced
from wallwise.song.minutes import time_name

_WAITS = r"(?:intro|start|begin|wait|lead|in\b)"


def _find(song: OnSong) -> Iterator[Finding]:
    told, grid = song.danced.dance.intro_counts, song.danced.grid
    if told is None:
        return
    heard = [grid.clear_intro_counts, grid.intro_counts]
    # A sheet may count its intro in the song's beats where the dance is counted at another level.
    beats = [counts / float(grid.counts_per_beat) for counts in heard]
    span = header_span(
        song.reading, rf"\b{told}\b[^\d\n]*{_WAITS}", rf"{_WAITS}[^\d\n]*\b{told}\b", rf"\b{told}\b"
    )
    if any(abs(told - counts) < 1 for counts in (*heard, *beats)):
        if beside := _beside_a_phrase(song.danced):
            yield RULE.on(span, f"After the {told} counts of intro {beside}.", severity=Severity.NOTE)
        return
    clear, sound = (f"{counts:g}" for counts in heard)
    first = "" if clear == sound else f" ({sound} after the first sound)"
    yield RULE.on(
        span,
        f"The sheet says {told} counts of intro, but count 1 at {time_name(grid.count_to_sec(1))} comes "
        f"{clear} counts after the first clear beat{first}.",
    )


def _beside_a_phrase(danced: Danced) -> str:
    """Where the nearest phrase begins if none does on count 1, in words; empty where one does."""
    grid = danced.grid
    starts = [grid.beat_to_count(phrase.starts_beat) - 1 for phrase in grid.phrases]
    nearest = min(starts, key=lambda counts: (abs(counts), -counts), default=0.0)
    if abs(nearest) <= danced.tolerance:
        return ""
    counts, way = f"{abs(nearest):g}", "later" if nearest > 0 else "earlier"
    now, then = time_name(grid.count_to_sec(1)), time_name(grid.count_to_sec(1 + nearest))
    return f"no phrase begins at {now}; the nearest begins {counts} counts {way}, at {then}"


RULE = SongRule(
    "intro-differs", Severity.WARNING, "The first count is not where the sheet's intro ends.", _find
)
