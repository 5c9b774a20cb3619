"""Walls on a song and cuts that fit, from the arguments to the exit code."""

from __future__ import annotations

import json
from typing import TYPE_CHECKING

import pytest

if TYPE_CHECKING:
    from pathlib import Path

    from tests.cli.conftest import Run, Terminal


def test_walls_on_a_song_have_times_and_an_end(run: Run, sound: Path) -> None:
    """16 counts at 120 are eight seconds; a quarter each wall; the song ends where it says."""
    said = run("walls", sound, "--bpm", "120", "--length", "1:00")
    assert (0, "") == (said.code, said.err)
    rows = [line.split("\t") for line in said.out.splitlines()]
    assert ["wall", "from", "to", "counts", "", "starts", "ends", "music"] == rows[0]
    assert ["2", "0:08", "0:16", "17-32", "", "9:00", "6:00", ""] == rows[2]
    assert "At 1:00 the song ends, count 8 of wall 8, facing 3:00." in said.out
    assert (
        "in place of the last count, from count 8 of wall 8: 1 turn 1/4 left: step right foot to the side."
        in said.out
    )


def test_what_does_not_fit_is_shown_and_makes_exit_1(run: Run, restarted: Path) -> None:
    """The restart of wall 3 misses the phrases of 32."""
    said = run("walls", restarted, "--bpm", "120", "--phrases", "32 32 32")
    assert said.code == 1
    assert "warning: restart-off-phrase" in said.out
    assert "phrase 2, count 9: off" in said.out
    assert run("walls", restarted, "--bpm", "120", "--phrases", "32 8 32").code == 0


def test_walls_as_json_are_one_object(run: Run, sound: Path) -> None:
    """And nothing else."""
    made = json.loads(run("walls", sound, "--bpm", "120", "--length", "1:00", "--json").out)
    assert {"bpm", "first_count_sec", "walls", "end", "endings", "findings"} <= set(made)
    assert [1, 2, 3, 4, 5, 6, 7, 8] == [row["wall"] for row in made["walls"]]


def test_the_count_level_is_asked_for(run: Run, sound: Path) -> None:
    """At half time a wall lasts twice as long."""
    said = run("walls", sound, "--bpm", "120", "--length", "1:00", "--count-per-beat", "1/2")
    assert "\n2\t0:16\t0:32\t17-32" in said.out
    assert "120.0 beats a minute, 60.0 counts" in said.out


def test_a_fit_is_told_and_compared(run: Run, restarted: Path, sound: Path) -> None:
    """The sheet's restart on wall 3 is just what a phrase of 24 asks for; without it, it is found."""
    phrases = "32 8 32 32"
    own = run("fit", restarted, "--phrases", phrases)
    assert own.code == 0
    assert "The sheet's own restarts and tags do as well as any: no wall off the phrase." in own.out
    found = run("fit", sound, "--phrases", phrases)
    assert "Restart on wall 3 after 8 counts at 0:20, facing 6:00" in found.out
    assert "The sheet, which has none of them, leaves" in found.out


def test_a_fit_as_json_is_one_object(run: Run, sound: Path) -> None:
    """With the cost, the cuts, the starts, the misfit, and the sheet's own beside them."""
    made = json.loads(run("fit", sound, "--phrases", "32 8 32 32", "--json").out)
    assert {"cost", "cuts", "starts", "misfit_counts", "own", "says"} <= set(made)
    assert [1, 17, 33, 41, 57, 73, 89] == made["starts"]


def test_no_cut_may_be_made(run: Run, sound: Path) -> None:
    """With none allowed, the walls stay off the phrase and the command says so."""
    said = run("fit", sound, "--phrases", "32 8 32 32", "--max-cuts", "0")
    assert "No restart or tag helps." in said.out
    assert "off the phrase" in said.out
    assert "No restart and no tag is needed." in run("fit", sound, "--phrases", "32 32").out


@pytest.mark.parametrize(
    "arguments",
    [
        ["walls", "SHEET", "--bpm", "120"],
        ["walls", "SHEET", "--length", "3:00"],
        ["walls", "SHEET", "--bpm", "120", "--length", "long"],
        ["walls", "SHEET", "--bpm", "0", "--length", "3:00"],
        ["walls", "SHEET", "--json"],
        ["walls", "SHEET", "--bpm", "120", "--length", "3:00", "--count-per-beat", "3"],
        ["fit", "SHEET"],
        ["fit", "SHEET", "--phrases", "some"],
        ["fit", "SHEET", "--phrases", "32", "--max-cuts", "-1"],
    ],
)
def test_what_cannot_be_done_is_one_sentence_and_exit_2(run: Run, sound: Path, arguments: list[str]) -> None:
    """On standard error, and nothing on standard output."""
    said = run(*(sound if word == "SHEET" else word for word in arguments))
    assert (2, "") == (said.code, said.out)
    assert said.err.count("\n") == 1
    assert said.err.endswith(".\n")


def test_the_table_fits_a_narrow_terminal(terminal: Terminal, sound: Path) -> None:
    """80 columns hold a row on one line, its phrase with it."""
    shown = terminal(["walls", str(sound), "--bpm", "120", "--phrases", "32 32 32"])
    row = next(line for line in shown.splitlines() if line.startswith("2 "))
    assert "phrase 1, count 17" in row


PAIRS = """PAIRS
Phrased, 1 wall
Sequence: A, B, A

PART A: 8 counts
1-2  Step R to right side, touch L beside R
3-4  Step L to left side, touch R beside L
5-6  Step R forward, pivot 1/2 left
7-8  Step R forward, step L forward

PART B: 4 counts
1-2  Step R to right side, touch L beside R
3-4  Step L to left side, touch R beside L
"""


def test_a_phrased_dance_may_be_over_before_the_song(run: Run, tmp_path: Path) -> None:
    """20 counts of a song of 30; with fewer the song ends in a part."""
    sheet = tmp_path / "pairs.txt"
    sheet.write_text(PAIRS, encoding="utf-8")
    said = run("walls", sheet, "--bpm", "120", "--length", "0:15")
    assert said.code == 0, said.out
    assert "2  B\t0:04\t0:06\t9-12" in said.out
    assert "At 0:10 the dance ends, count 8 of A, facing 12:00." in said.out
    assert "The song goes on for 10 counts." in said.out
    short = run("walls", sheet, "--bpm", "120", "--length", "0:09")
    assert short.code == 1
    assert "which is number 3 of the sequence: 2 counts of the sequence are still to come." in short.out


def test_the_sheets_own_ending_is_shown(run: Run, tmp_path: Path) -> None:
    """Where it would begin to end with the song, and where it leaves the room."""
    sheet = tmp_path / "ending.txt"
    main = PAIRS.split("PART A: 8 counts\n")[1].split("\nPART B", maxsplit=1)[0]
    sheet.write_text(
        f"ENDING\n8 counts, 2 walls\n{main}Ending\n1-2  Step R forward, pivot 1/2 left\n", encoding="utf-8"
    )
    said = run("walls", sheet, "--bpm", "120", "--length", "0:12")
    assert (
        "The sheet's ending, in place of the last 2 counts, from count 7 of wall 3, ends facing 12:00."
        in said.out
    )
    assert "To end at the front" not in said.out


def test_a_song_shorter_than_the_intro_is_over_before_the_dance(run: Run, sound: Path) -> None:
    """Nothing is danced, and that is said."""
    sheet = sound.read_text(encoding="utf-8").replace("Choreographer:", "Intro: 32 counts\nChoreographer:")
    sound.write_text(sheet, encoding="utf-8")
    said = run("walls", sound, "--bpm", "120", "--length", "0:10")
    assert "The song is over before the dance begins." in said.out


def test_an_ending_in_a_tag_is_placed_in_it(run: Run, sound: Path) -> None:
    """Wall 1 and three counts of its tag."""
    steps = "1-2  Step R to right side, touch L beside R\n3-4  Step L to left side, touch R beside L\n"
    sound.write_text(f"{sound.read_text(encoding='utf-8')}\nTag after wall 1\n{steps}", encoding="utf-8")
    said = run("walls", sound, "--bpm", "120", "--length", "0:09.5")
    assert "count 3 of the tag, facing 9:00" in said.out
    assert "of the tag: 1 " in said.out
