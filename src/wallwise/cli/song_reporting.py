"""The dance on a song, on the screen: walls by the clock, what does not fit, how to end."""

from __future__ import annotations

from collections.abc import Iterator

from rich.console import Console

from wallwise.checks.endings import Ending
from wallwise.cli.reporting import show_findings
from wallwise.cli.screen import printable
from wallwise.cli.table import show_columns
from wallwise.dance.clock import facing_name
from wallwise.dance.walls import WallKind
from wallwise.desk.facts import number, what_happens
from wallwise.desk.fitting import FitReport, cut_row
from wallwise.desk.on_song import SongWalls
from wallwise.give.words import action
from wallwise.song.danced import Danced, Stretch
from wallwise.song.fit import Cut, CutKind
from wallwise.song.minutes import time_name

HEADINGS = ("wall", "from", "to", "counts", "", "starts", "ends", "music")


def show_on_song(report: SongWalls, console: Console, *, path: str) -> None:
    """Print what does not fit, the walls on the song, where it ends and how to end at the front."""
    danced = report.danced
    show_findings(report.report, console, path=path)
    phrased = danced.dance.sequence is not None
    rows = [_cells(stretch, danced, phrased=phrased) for stretch in danced.stretches]
    show_columns(HEADINGS, rows, console, left=("wall", "", "music"))
    for line in _summary(report):
        console.print(line)


def _cells(stretch: Stretch, danced: Danced, *, phrased: bool) -> tuple[str, ...]:
    wall = stretch.wall
    name = str(wall.number) if wall.kind is WallKind.WALL else ""
    if phrased and wall.kind is WallKind.WALL:
        name = f"{wall.number}  {printable(wall.part)}"
    return (
        name,
        time_name(stretch.starts_sec),
        time_name(stretch.ends_sec),
        f"{number(stretch.starts_count)}-{number(stretch.starts_count + stretch.counts - 1)}",
        "song ends" if stretch.cut_by == "end" else what_happens(wall),
        facing_name(wall.starts_facing),
        facing_name(stretch.ends_facing),
        _music(stretch, danced),
    )


def _music(stretch: Stretch, danced: Danced) -> str:
    """The phrase it starts in, from which count on, and whether no wall should begin there."""
    meeting = stretch.meeting
    if meeting is None:
        return ""
    where = f"phrase {meeting.phrase}"
    if meeting.count != 1:
        where += f", count {number(meeting.count)}"
    return f"{where}: off" if stretch.begins and danced.off_phrase(stretch) else where


def _summary(report: SongWalls) -> Iterator[str]:
    danced, end = report.danced, report.danced.end
    grid = danced.grid
    level = "" if grid.counts_per_beat == 1 else f", {grid.counts_per_minute:.1f} counts"
    yield f"{grid.bpm:.1f} beats a minute{level}; count 1 at {time_name(grid.count_to_sec(1))}."
    if not danced.stretches:
        yield "The song is over before the dance begins."
        return
    what = "the song" if not end.counts_left else "the dance"
    yield f"At {time_name(end.sec)} {what} ends, {_end_place(danced)}, facing {facing_name(end.facing)}."
    if end.counts_left:
        yield f"The song goes on for {number(end.counts_left)} counts."
    if report.own:
        placed, facing = _placed(report.own, danced), facing_name(report.own.facing)
        yield f"The sheet's ending, {placed}, ends facing {facing}."
    if report.endings:
        yield "To end at the front:"
    for ending in report.endings:
        steps = "; ".join(f"{number(row.step.at)} {_lower(action(row.step))}" for row in ending.trace.rows)
        yield f"  {_placed(ending, danced)}: {steps}."
    if not report.sheet_settled:
        yield "The sheet itself has something to settle: `wallwise check` shows it."


def _end_place(danced: Danced) -> str:
    end = danced.end
    count = f"count {number(end.count)} of"
    if end.kind is WallKind.WALL and danced.dance.sequence is None:
        return f"{count} wall {end.wall}"
    return f"{count} {printable(end.part)}" if danced.dance.sequence else f"{count} the {end.kind}"


def _placed(ending: Ending, danced: Danced) -> str:
    wall = danced.stretches[ending.stretch].wall
    where = f"wall {wall.number}" if wall.kind is WallKind.WALL else f"the {wall.kind}"
    last = "the last count" if ending.counts == 1 else f"the last {ending.counts} counts"
    return f"in place of {last}, from count {number(ending.at)} of {where}"


def _lower(text: str) -> str:
    return text[:1].lower() + text[1:]


def show_fit(report: FitReport, console: Console) -> None:
    """Print the cuts that fit, and how the sheet's own compare."""
    plan = report.plan
    if not plan.cuts:
        console.print("No restart and no tag is needed." if not plan.off else "No restart or tag helps.")
    for cut in plan.cuts:
        row = cut_row(cut, report.laid)
        console.print(f"{_told(cut)} at {time_name(row['sec'])}, facing {row['facing']}{_rough(cut)}")
    off = f"{plan.off} of them off the phrase" if plan.off else "each with a phrase"
    console.print(f"{len(plan.starts)} walls begin, {off}.")
    console.print(report.says)
    own = [f"{_told(cut)}{_rough(cut)}" for cut in report.own.cuts]
    if own:
        console.print("The sheet has: " + "; ".join(own) + ".")


def _told(cut: Cut) -> str:
    if cut.kind is CutKind.TAG:
        return f"Tag of {cut.counts:g} counts after wall {cut.wall}"
    return f"Restart on wall {cut.wall} after {cut.counts:g} counts"


def _rough(cut: Cut) -> str:
    return ", inside a figure" if cut.rough else ""
