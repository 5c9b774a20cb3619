"""A sheet on a song, as programs are told it."""

from __future__ import annotations

import json
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest

from wallwise.desk.on_song import walls_on_song
from wallwise.desk.song_asked import SongAsked, grid_for

SHEET = """FENDER
16 counts, 2 walls
Intro: 16 counts

S1: SIDE TOUCHES, FORWARD, BACK
1-2  Step R to right side, touch L beside R
3-4  Step L to left side, touch R beside L
5-6  Step R forward, touch L beside R
7-8  Step L back, touch R beside L
S2: PIVOT, SIDE TOUCH, WALKS
1-2  Step R forward, pivot 1/2 left
3-4  Step R to right side, touch L beside R
5-6  Step L forward, step R forward
7-8  Step L forward, touch R beside L
{orders}"""
TAG = """Tag of 4 counts after wall 2
1-2  Step R to right side, touch L beside R
3-4  Step L to left side, touch R beside L
"""


def told(tmp_path: Path, asked: SongAsked, orders: str = "") -> dict[str, Any]:
    """The JSON, written and read again."""
    path = tmp_path / "fender.txt"
    path.write_text(SHEET.format(orders=orders), encoding="utf-8")
    report = walls_on_song(path, lambda dance: grid_for(asked, dance))
    made: dict[str, Any] = json.loads(json.dumps(report.as_json()))
    return made


def test_every_wall_has_its_times_counts_and_facings(tmp_path: Path) -> None:
    """Eight seconds of intro, then a wall every eight seconds, front and back by turns."""
    made = told(tmp_path, SongAsked(bpm=120, length="0:44"))
    assert (120.0, 8.0, 4) == (made["bpm"], made["first_count_sec"], made["beats_per_bar"])
    assert [
        (1, 8.0, 16.0, 1, 16, "12:00", "6:00", None),
        (2, 16.0, 24.0, 17, 16, "6:00", "12:00", None),
        (3, 24.0, 32.0, 33, 16, "12:00", "6:00", None),
        (4, 32.0, 40.0, 49, 16, "6:00", "12:00", None),
        (5, 40.0, 44.0, 65, 8, "12:00", "12:00", "end"),
    ] == [
        tuple(
            row[key]
            for key in (
                "wall", "starts_sec", "ends_sec", "starts_count", "counts",
                "starts_facing", "ends_facing", "cut_by",
            )
        )
        for row in made["walls"]
    ]  # fmt: skip
    assert {"wall": 5, "count": 8, "facing": "12:00", "counts_left": 0}.items() <= made["end"].items()
    assert ([], [], True) == (made["endings"], made["findings"], made["sheet_settled"])
    assert {None} == {row["phrase_offset"] for row in made["walls"]}


def test_restarts_and_tags_have_their_own_rows(tmp_path: Path) -> None:
    """Wall 1 is cut after eight counts at 0:12; four counts follow wall 2 from 0:20 on, facing the back."""
    made = told(tmp_path, SongAsked(bpm=120, length="1:00"), "Restart on wall 1 after 8 counts\n" + TAG)
    assert [{"wall": 1, "after_counts": 8, "sec": 12.0, "count": 9, "facing": "12:00"}] == made["restarts"]
    (tag,) = made["tags"]
    assert (2, 4, 20.0, 22.0, 25, "6:00") == tuple(
        tag[key]
        for key in ("after_wall", "counts", "starts_sec", "ends_sec", "starts_count", "starts_facing")
    )
    assert ["restart", None] == [row["cut_by"] for row in made["walls"]][:2]
    assert [1, 2, 3, 4] == [row["wall"] for row in made["walls"]][:4]


def test_phrases_show_how_far_each_wall_is(tmp_path: Path) -> None:
    """A phrase of 24 between two of 32: from wall 4 on it is eight counts beside."""
    made = told(tmp_path, SongAsked(bpm=120, phrases="32 24 32"))
    assert [(1, 1, True), (1, 17, True), (2, 1, True), (2, 17, True), (3, 9, False), (3, 25, False)] == [
        (row["phrase"], row["phrase_count"], row["on_phrase"]) for row in made["walls"]
    ]
    assert [0, -16, 0, -8, 8, 24] == [row["phrase_offset"] for row in made["walls"]]


def test_endings_come_with_their_steps(tmp_path: Path) -> None:
    """52 seconds are five and a half walls: the half turn of wall 5 is undone in four counts at most."""
    made = told(tmp_path, SongAsked(bpm=120, length="0:52"))
    assert "6:00" == made["end"]["facing"]
    assert made["endings"]
    for ending in made["endings"]:
        assert 1 <= ending["counts"] <= 4
        assert 88 - ending["counts"] + 1 == ending["starts_count"]
        assert ("12:00", "12:00") == (ending["ends_facing"], ending["steps"][-1]["facing"])
        assert ending["starts_facing"] == "6:00"
        assert all(step["says"] and step["foot"] in ("L", "R") for step in ending["steps"])


def test_what_the_sheet_itself_leaves_open_is_said(tmp_path: Path) -> None:
    """A wrong foot is the sheet's fault, not the song's."""
    path = tmp_path / "fender.txt"
    faulty = SHEET.format(orders="").replace(
        "Step L forward, step R forward", "Step L forward, step L forward"
    )
    path.write_text(faulty, encoding="utf-8")
    made = walls_on_song(path, lambda dance: grid_for(SongAsked(bpm=120, length="0:44"), dance))
    assert not made.sheet_settled
    assert not made.report.findings


@pytest.mark.parametrize("level", [Fraction(1, 2), Fraction(2)])
def test_the_level_of_counting_is_told(tmp_path: Path, level: Fraction) -> None:
    """Beats and counts a minute, both."""
    made = told(tmp_path, SongAsked(bpm=96, length="1:00", level=level))
    assert (96.0, 96.0 * level) == (made["bpm"], made["counts_per_minute"])
