"""`wallwise song`: the beats of a song, and what the teacher corrects in them."""

from __future__ import annotations

import json
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from wallwise.cli.asking import Level, fraction_of

if TYPE_CHECKING:
    from collections.abc import Iterator

    from wallwise.desk.song import SongReport

Song = Annotated[Path, typer.Argument(metavar="FILE", help="The song: wav, flac, ogg, opus, mp3.")]
Bpm = Annotated[float | None, typer.Option(metavar="N", help="About how many beats a minute.")]
Dance = Annotated[str | None, typer.Option(metavar="NAME", help="What is danced to it, such as waltz.")]
Metre = Annotated[int | None, typer.Option(metavar="N", help="2, 3 or 4.")]
Taps = Annotated[Path | None, typer.Option(metavar="FILE", help="Seconds at which beats were tapped.")]
Ones = Annotated[list[float] | None, typer.Option(metavar="SEC", help='A tap on the "1" of an eight.')]
First = Annotated[float | None, typer.Option(metavar="SEC", help="Where count 1 of the dance is.")]
Later = Annotated[int, typer.Option(metavar="N", help="Every count N later; below zero earlier.")]
Breaks = Annotated[
    list[str] | None,
    typer.Option("--break", metavar="SEC:N", help="Here the eights stop for N counts."),
]
Moves = Annotated[
    list[str] | None,
    typer.Option(metavar="SEC:SEC", help="The phrase that begins about the first begins at the second."),
]
Beats = Annotated[
    Path | None, typer.Option(metavar="FILE", help="A .beats.json that keeps beats and corrections.")
]
AsJson = Annotated[bool, typer.Option("--json", help="Print the beats as JSON.")]
Picture = Annotated[Path | None, typer.Option(metavar="FILE", help="Draw the song into this SVG file.")]


def song(
    file: Song,
    *,
    bpm: Bpm = None,
    dance: Dance = None,
    beats_per_bar: Metre = None,
    level: Level = None,
    taps: Taps = None,
    one: Ones = None,
    first: First = None,
    later: Later = 0,
    stop: Breaks = None,
    move: Moves = None,
    beats: Beats = None,
    as_json: AsJson = False,
    picture: Picture = None,
) -> None:
    """Find the beats, eights and phrases of a song.

    What is told with the options is kept in the file of --beats, and heard with it the next time.
    """
    from wallwise.desk.files import write_whole
    from wallwise.desk.song import corrected, hear_song, read_taps

    told = corrected(
        bpm=bpm,
        dance=dance,
        beats_per_bar=beats_per_bar,
        counts_per_beat=fraction_of(level),
        taps_sec=read_taps(taps) if taps else (),
        ones_sec=tuple(one or ()),
        first_count_sec=first,
        later_counts=later,
        breaks=tuple(_pair(text, "--break") for text in stop or ()),
        moves=tuple(_pair(text, "--move") for text in move or ()),
    )
    report = hear_song(file, told, beats=beats)
    if picture is not None:
        write_whole(picture, report.picture())
    if as_json:
        print(json.dumps(report.as_json(), indent=1))
        return
    from wallwise.cli.screen import console

    out = console()
    for line in song_lines(report):
        out.print(line)
    for path in (beats, picture):
        if path is not None:
            out.print(f"Wrote {path}")


def _pair(text: str, option: str) -> tuple[float, float]:
    first, _, second = text.partition(":")
    try:
        return float(first), float(second)
    except ValueError:
        raise typer.BadParameter(f"{option} {text} is not two numbers with a colon between") from None


def song_lines(report: SongReport) -> Iterator[str]:
    """The song at a glance."""
    from wallwise.cli.screen import printable

    grid = report.grid
    metre = {2: "2/4", 3: "3/4", 4: "4/4"}.get(grid.beats_per_bar, f"{grid.beats_per_bar} beats a bar")
    moves = "steady" if grid.steady else "the tempo moves"
    about = (clock(grid.length_sec), f"{grid.bpm:.1f} beats a minute", metre, moves)
    yield f"{printable(report.name)}   {' · '.join(about)}"
    yield f"Counted so because {report.because}."
    others = [f"{level.bpm:.0f}" for level in report.levels[1:4] if level.likely >= 0.02]
    if others:
        yield f"It could also be counted at {' or '.join(others)}: tell --bpm or --dance."
    if grid.counts_per_beat != 1:
        yield f"{grid.counts_per_beat} counts for a beat: {grid.counts_per_minute:.1f} counts a minute."
    yield (
        f"Count 1 at {clock(grid.count_to_sec(1))}, {grid.intro_counts:g} counts after the first sound, "
        f"{grid.clear_intro_counts:g} after the first clear beat."
    )
    yield f"The heard beats lie {1000 * grid.residual_sec:.0f} ms about the grid."
    yield "phrase  starts    counts  sure"
    for number, phrase in enumerate(grid.phrases, 1):
        starts = clock(max(0.0, grid.beat_to_sec(phrase.starts_beat)))
        yield f"{number:>6}  {starts:<8}  {phrase.counts:>6g}  {phrase.confidence:.0%}"


def clock(sec: float) -> str:
    """Minutes and seconds to a tenth.

    >>> clock(83.46)
    '1:23.5'
    """
    tenths = round(sec * 10)
    return f"{tenths // 600}:{tenths % 600 / 10:04.1f}"
