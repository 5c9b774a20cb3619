"""`wallwise song` prints the song at a glance, or JSON, and writes what it is asked to."""

from __future__ import annotations

import json
from pathlib import Path
from typing import TYPE_CHECKING

import pytest
import soundfile
from tests.song.tunes import compose

if TYPE_CHECKING:
    from tests.cli.conftest import Run


@pytest.fixture(scope="module")
def song(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Some thirty-five seconds of waltz."""
    tune = compose("waltz", seed=22, about_sec=35)
    path = tmp_path_factory.mktemp("songs") / "orchard.wav"
    soundfile.write(path, tune.samples, tune.rate_hz)
    return path


def test_the_song_at_a_glance(run: Run, song: Path, tmp_path: Path) -> None:
    """Tempo, why, count 1, the phrases; the picture and the file of beats are written."""
    picture, beats = tmp_path / "orchard.svg", tmp_path / "orchard.beats.json"
    said = run("song", str(song), "--dance", "waltz", "--picture", str(picture), "--beats", str(beats))
    assert (0, "") == (said.code, said.err)
    assert "3/4" in said.out
    assert "a waltz is danced at 76 to 110" in said.out
    assert "Count 1 at " in said.out
    assert picture.read_text(encoding="utf-8").startswith("<svg")
    assert "waltz" == json.loads(beats.read_text(encoding="utf-8"))["corrections"]["dance"]


def test_json_follows_what_is_told(run: Run, song: Path) -> None:
    """Half a count a beat and a moved count 1 are in it."""
    said = run("song", str(song), "--json", "--bpm", "90", "--count-per-beat", "1/2", "--later", "1")
    content = json.loads(said.out)
    assert {"bpm", "beats_per_bar", "beats", "first_count_sec", "eights", "phrases", "steady"} <= set(content)
    assert "1/2" == content["counts_per_beat"]
    assert pytest.approx(content["bpm"] / 2, abs=0.01) == content["counts_per_minute"]
    assert {"bpm": 90.0, "counts_per_beat": "1/2", "later_counts": 1} == content["corrections"]


@pytest.mark.parametrize(
    "options",
    [
        ["--bpm", "7"],
        ["--dance", "frog hop"],
        ["--count-per-beat", "3"],
        ["--beats-per-bar", "9"],
        ["--break", "ten"],
        ["--break", "10:0"],
        ["--move", "1"],
        ["--one", "-3"],
        ["--taps", "no-such-file.txt"],
        ["--beats", "/dev/null/x.beats.json"],
    ],
)
def test_what_cannot_be_told_is_one_sentence(run: Run, song: Path, options: list[str]) -> None:
    """On standard error, with exit 2."""
    said = run("song", str(song), *options)
    assert (2, "") == (said.code, said.out)
    assert 1 == said.err.count("\n")
    assert said.err.endswith(".\n")
