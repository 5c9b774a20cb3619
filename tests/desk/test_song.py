"""A song at the desk: files in, a report out, and corrections that stay."""

from __future__ import annotations

from pathlib import Path

import pytest
import soundfile
from tests.song.tunes import compose

from wallwise.desk.errors import NotToldRight, Unreadable
from wallwise.desk.song import corrected, grid_of, hear_song, read_beats, read_taps


@pytest.fixture(scope="module")
def song(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Some forty seconds of rock."""
    tune = compose("rock", seed=21, about_sec=40)
    path = tmp_path_factory.mktemp("songs") / "harbour lights.flac"
    soundfile.write(path, tune.samples, tune.rate_hz)
    return path


def test_corrections_survive_another_hearing(song: Path, tmp_path: Path) -> None:
    """Told once, kept in the file of beats, heard again; new words are added to the old."""
    beats = tmp_path / "harbour.beats.json"
    plain = hear_song(song).grid
    first = hear_song(song, corrected(later_counts=1), beats=beats).grid
    assert plain.first_beat + 1 == first.first_beat
    again = hear_song(song, beats=beats)
    assert first == again.grid == read_beats(beats).grid == grid_of(beats)
    more = hear_song(song, corrected(later_counts=1, beats_per_bar=4), beats=beats)
    assert plain.first_beat + 2 == more.grid.first_beat
    assert (2, 4) == (read_beats(beats).corrections.later_counts, read_beats(beats).corrections.beats_per_bar)


def test_the_json_holds_what_the_grid_says(song: Path) -> None:
    """Times in seconds, increasing, inside the song."""
    report = hear_song(song)
    content = report.as_json()
    assert report.grid.last_beat + 1 == len(content["beats"])
    assert content["beats"] == sorted(content["beats"])
    assert content["first_count_sec"] in content["beats"]
    assert set(content["eights"]) <= set(content["beats"])
    assert {p["starts_sec"] for p in content["phrases"]} <= set(content["eights"])
    assert pytest.approx(report.grid.bpm, abs=0.01) == content["bpm"]
    assert content["octaves"][0]["likely"] > 0


def test_files_that_are_no_song_or_beats_get_one_sentence(tmp_path: Path) -> None:
    """Each ends with a full stop and names the file."""
    text = tmp_path / "notes.beats.json"
    text.write_text("1-8 Walk R, L", encoding="utf-8")
    quiet = tmp_path / "quiet.wav"
    soundfile.write(quiet, [0.0] * 22050 * 6, 22050)
    binary = tmp_path / "x.beats.json"
    binary.write_bytes(b"\xff\xfe\x00")
    missing = tmp_path / "none.beats.json"
    for path in (text, quiet, binary, missing):
        with pytest.raises(Unreadable) as refusal:
            grid_of(path)
        assert str(refusal.value).startswith(str(path))
        assert str(refusal.value).endswith(".")


def test_taps_are_numbers_parted_by_anything(tmp_path: Path) -> None:
    """Lines, commas, words between; a file without numbers is refused."""
    path = tmp_path / "taps.txt"
    path.write_text("0.51\n1.02, 1.5; and 2\n", encoding="utf-8")
    assert (0.51, 1.02, 1.5, 2.0) == read_taps(path)
    path.write_text("none", encoding="utf-8")
    with pytest.raises(Unreadable, match="no taps"):
        read_taps(path)


def test_what_cannot_be_told_is_refused() -> None:
    """As a refusal of the desk, which the command line shows as one sentence."""
    with pytest.raises(NotToldRight, match="no dance"):
        corrected(bpm=7)
