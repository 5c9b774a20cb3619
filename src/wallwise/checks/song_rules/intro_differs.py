"""The sheet says how many counts to wait, and count 1 falls elsewhere in the song."""

from __future__ import annotations

from collections.abc import Iterator

from wallwise.checks.rule import OnSong, SongRule
from wallwise.checks.song_sight import header_span
from wallwise.dance.finding import Finding, Severity
from wallwise.song.minutes import time_name

_WAITS = r"(?:intro|start|begin|wait|lead|in\b)"


def _find(song: OnSong) -> Iterator[Finding]:
    told, grid = song.danced.dance.intro_counts, song.danced.grid
    if told is None:
        return
    heard = [grid.clear_intro_counts, grid.intro_counts]
    # A sheet may count its intro in the song's beats where the dance is counted at another level.
    beats = [counts / float(grid.counts_per_beat) for counts in heard]
    if any(abs(told - counts) < 1 for counts in (*heard, *beats)):
        return
    clear, sound = (f"{counts:g}" for counts in heard)
    first = "" if clear == sound else f" ({sound} after the first sound)"
    yield RULE.on(
        header_span(
            song.reading, rf"\b{told}\b[^\d\n]*{_WAITS}", rf"{_WAITS}[^\d\n]*\b{told}\b", rf"\b{told}\b"
        ),
        f"The sheet says {told} counts of intro, but count 1 at {time_name(grid.count_to_sec(1))} comes "
        f"{clear} counts after the first clear beat{first}.",
    )


RULE = SongRule(
    "intro-differs", Severity.WARNING, "The first count is not where the sheet's intro ends.", _find
)
