"""`wallwise practice`, from the arguments to the exit code."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

from wallwise.demo.songs import PEG_AND_RAIL, play, truth_of
from wallwise.give.voice import RATE_HZ
from wallwise.song.sound import Label, Sound, encoded, read_stereo

if TYPE_CHECKING:
    from tests.cli.conftest import Run


def test_a_track_without_a_song_is_written_and_told(run: Run, sound: Path) -> None:
    out = sound.parent / "track.wav"
    said = run("practice", sound, "-o", out, "--bpm", "120", "--tempo", "75%", "--voice", "click")
    assert (said.code, said.err) == (0, "")
    assert said.out.startswith(f"Wrote {out}\n")
    assert "90.0 counts a minute, count 1 at 5.83 s." in said.out
    assert "85 dB(A)" in said.out
    assert read_stereo(out).length_sec > 4 * 16 * 60 / 90


def test_a_song_is_heard_slowed_and_clicked(run: Run, sound: Path) -> None:
    """The beats are found in the file; with a corrected file of beats, those hold."""
    song, out = sound.parent / "song.flac", sound.parent / "track.wav"
    score = replace(PEG_AND_RAIL, order=("intro", "chorus", "ending"))
    song.write_bytes(encoded(Sound(play(score).samples, RATE_HZ), ".flac", Label(score.title)))
    beats = sound.parent / "song.beats.json"
    assert run("song", song, "--beats", beats, "--first", truth_of(score)["first_count_sec"]).code == 0
    said = run(
        *(
            "practice",
            sound,
            "-o",
            out,
            "--song",
            song,
            "--beats",
            beats,
            "--tempo",
            "75%",
            "--voice",
            "click",
        )
    )
    assert (said.code, said.err) == (0, "")
    assert "84.0 counts a minute" in said.out
    heard_sec = float(said.out.split("count 1 at ")[1].split()[0])
    assert heard_sec == pytest.approx(truth_of(score)["first_count_sec"] / 0.75, abs=0.02)


def test_a_sheet_with_something_to_settle_gets_its_track_and_exit_1(run: Run, faulty: Path) -> None:
    out = faulty.parent / "track.wav"
    said = run("practice", faulty, "-o", out, "--bpm", "160", "--voice", "none")
    assert said.code == 1
    assert out.exists()


@pytest.mark.parametrize(
    ("arguments", "sentence"),
    [
        (["--tempo", "quick"], "'quick' is no tempo; a share is wanted, as in 75%"),
        (["--tempo", "75%x"], "a share is wanted"),
        (["--tempo", "5%"], "5% is no tempo to practise at: 40% to 160% is."),
        (["--voice", "opera"], "'opera'"),
        (["--beats", "song.beats.json"], "name the song too, with --song"),
        (["--song", "no-such-song.mp3"], "no-such-song.mp3: this file cannot be opened"),
    ],
)
def test_bad_usage_is_one_sentence_and_writes_nothing(
    run: Run, sound: Path, arguments: list[str], sentence: str
) -> None:
    out = sound.parent / "track.wav"
    said = run("practice", sound, "-o", out, *arguments)
    assert (said.code, said.out) == (2, "")
    assert sentence in said.err
    assert said.err.count("\n") == 1
    assert not out.exists()


def test_no_place_to_write_to_is_bad_usage(run: Run, sound: Path) -> None:
    assert run("practice", sound).code == 2
