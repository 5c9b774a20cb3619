"""After a tag, the next wall begins where no phrase of the music begins."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import takewhile

from wallwise.checks.rule import OnSong, SongRule
from wallwise.checks.song_sight import beside_words, next_wall, severity_of, told_at
from wallwise.dance.finding import Finding, Severity
from wallwise.dance.model import Span
from wallwise.dance.walls import WallKind
from wallwise.song.danced import Danced, Stretch


def _find(song: OnSong) -> Iterator[Finding]:
    danced, stretches = song.danced, song.danced.stretches
    for index, tag in enumerate(stretches):
        first = index == 0 or stretches[index - 1].wall.kind is not WallKind.TAG
        if tag.wall.kind is not WallKind.TAG or not first:
            continue
        run = list(takewhile(lambda s: s.wall.kind is WallKind.TAG, stretches[index:]))
        begun = next_wall(danced, index)
        # Where the wall goes on after a tag inside it, its restart or its end is to meet the phrase.
        if begun is None or begun is not stretches[index + len(run)] or not danced.off_phrase(begun):
            continue
        counts = sum(stretch.wall.counts for stretch in run)
        where = f"after wall {tag.wall.number}" if tag.wall.number else "before the first wall"
        yield RULE.on(
            _span(danced, tag),
            f"After the tag of {counts} counts {where}, wall {begun.wall.number} begins "
            f"{told_at(begun)}, {beside_words(begun)}.",
            severity=severity_of(RULE, begun),
        )


def _span(danced: Danced, stretch: Stretch) -> Span | None:
    """Where the sheet tells the tag."""
    named = [tag for tag in danced.dance.tags if tag.part.name == stretch.wall.part]
    here = [tag for tag in named if tag.after_wall == stretch.wall.number]
    return next((tag.span for tag in (*here, *named)), None)


RULE = SongRule(
    "tag-off-phrase",
    Severity.WARNING,
    "The wall after a tag does not begin with a phrase of the music.",
    _find,
)
