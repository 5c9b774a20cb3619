"""A sheet danced to a song: its walls by the clock, what does not fit, and how to end at the front.

The object that `wallwise walls --json` prints is made here and nowhere else.
"""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path
from typing import Any

from wallwise.checks import check_song
from wallwise.checks.catalogue import loud_findings
from wallwise.checks.endings import Ending, endings, own_ending
from wallwise.checks.rule import OnSong
from wallwise.dance.clock import facing_name
from wallwise.dance.walls import WallKind
from wallwise.desk.facts import number
from wallwise.desk.report import Report, read_text, with_sheet
from wallwise.desk.song_asked import GridFor
from wallwise.give.words import action
from wallwise.song.danced import Danced, Stretch, lay


@dataclass(frozen=True, slots=True)
class SongWalls:
    """What is known of a sheet on a song.

    `report` has the findings of the song rules alone; `sheet_settled` says whether the sheet by
    itself leaves nothing to settle.  `own` is the sheet's ending, `endings` those found.
    """

    report: Report
    danced: Danced
    own: Ending | None
    endings: tuple[Ending, ...]
    sheet_settled: bool

    def as_json(self) -> dict[str, Any]:
        """The object that `wallwise walls --json` prints, as dicts, lists, strings and numbers."""
        danced, grid = self.danced, self.danced.grid
        of_walls = [s for s in danced.stretches if s.wall.kind in (WallKind.WALL, WallKind.UNKNOWN)]
        others = [s for s in danced.stretches if s.wall.kind in (WallKind.TAG, WallKind.ENDING)]
        return {
            "title": danced.dance.title,
            "bpm": round(grid.bpm, 3),
            "counts_per_minute": round(grid.counts_per_minute, 3),
            "beats_per_bar": grid.beats_per_bar,
            "first_count_sec": _sec(grid.count_to_sec(1)),
            "walls": [_wall_row(stretch, danced) for stretch in of_walls],
            "restarts": [
                _restart_row(stretch, danced) for stretch in of_walls if stretch.cut_by == "restart"
            ],
            "tags": [_tag_row(stretch) for stretch in others],
            "end": _end_row(danced),
            "sheet_ending": ending_row(self.own, danced) if self.own else None,
            "endings": [ending_row(ending, danced) for ending in self.endings],
            "sheet_settled": self.sheet_settled,
            "findings": self.report.finding_rows(),
        }


def walls_on_song(path: str | Path, grid_for: GridFor) -> SongWalls:
    """The sheet at `path` on the song that `grid_for` gives for its dance; DeskError where there is none."""
    return with_sheet(path, lambda text, name: _made(text, name, grid_for))


def _made(text: str, name: str, grid_for: GridFor) -> SongWalls:
    reading = read_text(text, name=name)
    danced = lay(reading.dance, grid_for(reading.dance))
    own = own_ending(danced)
    found = check_song(OnSong(reading, danced))
    return SongWalls(
        report=Report(name, text, reading.dance, found),
        danced=danced,
        own=own,
        endings=() if own and not own.facing else endings(danced),
        sheet_settled=next(loud_findings(reading), None) is None,
    )


def _wall_row(stretch: Stretch, danced: Danced) -> dict[str, Any]:
    row = {
        "wall": stretch.wall.number,
        "part": stretch.wall.part,
        **_times(stretch),
        "cut_by": stretch.cut_by,
    }
    meeting = stretch.meeting
    if meeting is None:
        return {**row, "phrase": None, "phrase_count": None, "phrase_offset": None, "on_phrase": None}
    return {
        **row,
        "phrase": meeting.phrase,
        "phrase_count": number(meeting.count),
        "phrase_offset": number(meeting.offset),
        "on_phrase": not danced.off_phrase(stretch),
    }


def _times(stretch: Stretch) -> dict[str, Any]:
    return {
        "starts_sec": _sec(stretch.starts_sec),
        "ends_sec": _sec(stretch.ends_sec),
        "starts_count": number(stretch.starts_count),
        "counts": number(stretch.counts),
        "starts_facing": facing_name(stretch.wall.starts_facing),
        "ends_facing": facing_name(stretch.ends_facing),
    }


def _restart_row(stretch: Stretch, danced: Danced) -> dict[str, Any]:
    over = stretch.starts_count + stretch.counts
    return {
        "wall": stretch.wall.number,
        "after_counts": number(stretch.wall.skipped + stretch.counts),
        "sec": _sec(danced.grid.count_to_sec(over)),
        "count": number(over),
        "facing": facing_name(stretch.ends_facing),
    }


def _tag_row(stretch: Stretch) -> dict[str, Any]:
    return {
        "kind": stretch.wall.kind.value,
        "part": stretch.wall.part,
        "after_wall": stretch.wall.number,
        **_times(stretch),
    }


def _end_row(danced: Danced) -> dict[str, Any]:
    end = danced.end
    return {
        "wall": end.wall,
        "kind": end.kind.value,
        "part": end.part,
        "count": number(end.count),
        "facing": facing_name(end.facing),
        "sec": _sec(end.sec),
        "counts_left": number(end.counts_left),
    }


def ending_row(ending: Ending, danced: Danced) -> dict[str, Any]:
    """An ending as `--json` prints it: where it begins, and its steps with their facings."""
    wall = danced.stretches[ending.stretch].wall
    return {
        "counts": ending.counts,
        "starts_sec": _sec(danced.grid.count_to_sec(ending.starts_count)),
        "starts_count": number(ending.starts_count),
        "wall": wall.number,
        "kind": wall.kind.value,
        "from_count": number(ending.at),
        "starts_facing": facing_name(ending.trace.start.facing),
        "ends_facing": facing_name(ending.facing),
        "steps": [
            {
                "at": number(row.step.at),
                "foot": row.step.foot.value,
                "kind": row.step.kind.value,
                "place": row.step.place.value,
                "facing": facing_name(row.facing),
                "says": action(row.step),
            }
            for row in ending.trace.rows
        ],
    }


def _sec(sec: float) -> float:
    return round(sec, 3)
