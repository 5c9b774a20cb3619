"""A restart begins the next wall where no phrase of the music begins."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from wallwise.checks.rule import OnSong, SongRule
from wallwise.checks.song_sight import beside_words, next_wall, severity_of, told_at
from wallwise.dance.finding import Finding, Severity
from wallwise.dance.restarts import restart_counts
from wallwise.dance.walls import WallKind
from wallwise.song.danced import Danced, Stretch


def _find(song: OnSong) -> Iterator[Finding]:
    danced = song.danced
    for index, cut in enumerate(danced.stretches):
        if cut.cut_by != "restart":
            continue
        following = danced.stretches[index + 1 : index + 2]
        if not following or following[0].wall.kind is WallKind.TAG:
            continue  # the tag danced before it decides
        begun = next_wall(danced, index)
        if begun is None or not danced.off_phrase(begun):
            continue
        restart = next((r for r in danced.dance.restarts if r.wall == cut.wall.number), None)
        after = cut.wall.skipped + cut.wall.counts
        yield RULE.on(
            restart.span if restart else None,
            f"The restart on wall {cut.wall.number} after {after} counts begins wall {begun.wall.number} "
            f"{told_at(begun)}, {beside_words(begun)}{_better(danced, cut)}.",
            severity=severity_of(RULE, begun),
        )


def _better(danced: Danced, cut: Stretch) -> str:
    """After how many counts the restart would meet a phrase, where the free foot allows it."""
    if danced.phrasing is None or not cut.begins:
        return ""
    dance = danced.dance
    marks = danced.phrasing.marks(float(dance.parts[0].counts), eight=danced.grid.eights_are)
    ways = [k for k in restart_counts(dance) if cut.wall.begins_after + k in {Fraction(m) for m in marks}]
    if not ways:
        return ""
    best = min(ways, key=lambda k: abs(k - cut.wall.counts))
    return f"; after {best} counts it would fit"


RULE = SongRule(
    "restart-off-phrase", Severity.WARNING, "A restart does not begin with a phrase of the music.", _find
)
