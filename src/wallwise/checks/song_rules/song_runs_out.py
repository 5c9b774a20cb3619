"""The song is over before all that the sheet orders has been danced."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from wallwise.checks.rule import OnSong, SongRule
from wallwise.dance.finding import Finding, Severity
from wallwise.dance.model import Span
from wallwise.dance.walls import WallKind
from wallwise.song.danced import Danced
from wallwise.song.minutes import time_name


def _find(song: OnSong) -> Iterator[Finding]:
    danced = song.danced
    over = f"The song is over at {time_name(danced.end.sec)}, {_where(danced)}"
    if danced.dance.sequence is not None:
        if to_come := _to_come(danced):
            yield RULE.on(None, f"{over}: {to_come}.")
        return
    for told, span in _never_danced(danced):
        yield RULE.on(span, f"{over}: {told} is never danced.")


def _where(danced: Danced) -> str:
    end = danced.end
    if not danced.stretches:
        return "before the dance begins"
    return f"after {end.count} counts of {_named(danced, len(danced.stretches) - 1)}"


def _named(danced: Danced, index: int) -> str:
    wall = danced.stretches[index].wall
    if danced.dance.sequence is not None:
        return f"{wall.part}, which is number {index + 1} of the sequence"
    return f"the tag after wall {wall.number}" if wall.kind is WallKind.TAG else f"wall {wall.number}"


def _to_come(danced: Danced) -> str:
    """What of the sequence is cut off, in words; empty where all is danced."""
    last = danced.stretches[-1] if danced.stretches else None
    left = sum((wall.counts for wall in danced.unreached), Fraction(0))
    left += last.wall.counts - last.counts if last else 0
    if not left:
        return ""
    parts = ", ".join(wall.part for wall in danced.unreached)
    return f"{left} counts of the sequence are still to come" + (f" ({parts})" if parts else "")


def _never_danced(danced: Danced) -> Iterator[tuple[str, Span | None]]:
    """The restarts and tags that lie beyond the song, in words, each with its place in the sheet."""
    end, dance = danced.end, danced.dance
    counts = dance.parts[0].counts if dance.parts else Fraction(0)
    danced_to = {s.wall.number for s in danced.stretches if s.cut_by == "restart"}
    for restart in dance.restarts:
        cuts = restart.after_counts < counts
        if cuts and restart.wall >= end.wall and restart.wall not in danced_to:
            yield f"the restart on wall {restart.wall}", restart.span
    begun = {(s.wall.number, s.wall.part) for s in danced.stretches if s.wall.kind is WallKind.TAG}
    for tag in dance.tags:
        reached = end.wall > tag.after_wall or (tag.after_wall, tag.part.name) in begun
        if not reached:
            yield f"the tag {_place(tag.after_wall, tag.after_counts)}", tag.span


def _place(wall: int, after: Fraction | None) -> str:
    return f"after wall {wall}" if after is None else f"in wall {wall} after {after} counts"


RULE = SongRule(
    "song-runs-out", Severity.WARNING, "The song is over before all that the sheet orders is danced.", _find
)
