"""A song heard for a sheet: walls fall on its true beats, and its odd phrase asks for what is missing."""

from __future__ import annotations

from collections.abc import Callable
from functools import cache
from pathlib import Path

import numpy as np
import pytest
from scipy.io import wavfile
from tests.song.tunes import Tune, compose

from wallwise.dance.model import Dance
from wallwise.desk.errors import DeskError, Unreadable
from wallwise.desk.fitting import fit_sheet
from wallwise.desk.on_song import SongWalls, walls_on_song
from wallwise.desk.song import corrected, hear_song
from wallwise.desk.song_asked import SongAsked, grid_for
from wallwise.song.grid import BeatGrid

EIGHT = """S{n}: SIDE TOUCHES, FORWARD, BACK
1-2  Step R to right side, touch L beside R
3-4  Step L to left side, touch R beside L
5-6  Step R forward, touch L beside R
7-8  Step L back, touch R beside L
"""
SHEET = "HEARTHRUG\n32 counts, 1 wall{head}\nIntro: 16 counts\n" + "".join(
    EIGHT.format(n=n) for n in (1, 2, 3, 4)
)

# A beat is found if it is heard within 70 ms (mir_eval's window for beats, after Davies and others, 2009).
WINDOW_SEC = 0.07


@pytest.fixture(scope="module")
def tune() -> Tune:
    """A rock song at 128: 16 beats of intro, three phrases of 32, a break of two, one more phrase."""
    tune = compose("rock", seed=4, about_sec=60)
    assert (0, 16, 48, 80, 112, 114) == tune.sections
    return tune


@pytest.fixture(scope="module")
def song(tune: Tune, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The song as a file."""
    path = tmp_path_factory.mktemp("songs") / "rock.wav"
    wavfile.write(path, tune.rate_hz, tune.samples)
    return path


@pytest.fixture
def sheet(tmp_path: Path) -> Path:
    """A sheet of 32 counts that waits for 16, written to a song of 128."""
    path = tmp_path / "hearthrug.txt"
    path.write_text(SHEET.format(head=", 128 bpm"), encoding="utf-8")
    return path


def of(song: Path, **asked: float) -> Callable[[Dance], BeatGrid]:
    """The grid of the song for a dance."""
    return lambda dance: grid_for(SongAsked(song, **asked), dance)  # type: ignore[arg-type]


@pytest.fixture(scope="module")
def heard(song: Path) -> Callable[[Dance], BeatGrid]:
    """The grid of the song for a dance of the sheet, heard once for all tests."""
    return cache(of(song))


def starts_sec(report: SongWalls) -> list[float]:
    """When each wall starts."""
    return [stretch.starts_sec for stretch in report.danced.stretches]


def test_walls_start_on_the_true_beats(sheet: Path, heard: Callable[[Dance], BeatGrid], tune: Tune) -> None:
    """Every 32 beats from the sixteenth on, each within the window of the beat."""
    found = starts_sec(walls_on_song(sheet, heard))
    true = tune.beats_sec[16::32]
    assert len(true) == len(found)
    assert np.abs(np.array(found) - true).max() < WINDOW_SEC


def test_a_break_asks_for_a_tag(sheet: Path, heard: Callable[[Dance], BeatGrid]) -> None:
    """Two beats more after wall 3: a tag of two counts there, and the sheet without it misses the phrase."""
    report = fit_sheet(sheet, heard)
    assert [("tag", 3, 2)] == [(cut.kind.value, cut.wall, cut.counts) for cut in report.plan.cuts]
    assert (0, 1) == (report.plan.off, report.own.off)


def test_a_song_at_another_tempo_than_the_sheets_is_believed(tmp_path: Path, song: Path, tune: Tune) -> None:
    """A sheet written to 108 leads the ear astray neither silently nor at all."""
    path = tmp_path / "other.txt"
    path.write_text(SHEET.format(head=", 108 bpm"), encoding="utf-8")
    report = walls_on_song(path, of(song))
    assert tune.bpm == pytest.approx(report.danced.grid.bpm, rel=0.01)
    assert "tempo-unlikely" in [finding.rule for finding in report.report.findings]


def test_beats_found_before_are_not_sought_again(sheet: Path, song: Path, tune: Tune, tmp_path: Path) -> None:
    """A file of beats gives the same walls; a first count that was told there stays."""
    beats = tmp_path / "rock.beats.json"
    hear_song(song, beats=beats)
    found = starts_sec(walls_on_song(sheet, of(beats)))
    assert np.abs(np.array(found) - tune.beats_sec[16::32]).max() < WINDOW_SEC
    later_sec = float(tune.beats_sec[24])
    hear_song(song, corrected(first_count_sec=later_sec), beats=beats)
    moved = walls_on_song(sheet, of(beats))
    assert later_sec == pytest.approx(starts_sec(moved)[0], abs=0.05)
    assert "intro-differs" in [finding.rule for finding in moved.report.findings]
    with pytest.raises(DeskError, match="correct them with"):
        walls_on_song(sheet, of(beats, bpm=120))


def test_what_is_no_song_is_refused_in_a_sentence(sheet: Path, tmp_path: Path) -> None:
    """No file, no sound, silence, and a file of beats that is none."""
    silent, text, beats = tmp_path / "silent.wav", tmp_path / "text.mp3", tmp_path / "no.beats.json"
    wavfile.write(silent, 22050, np.zeros(22050 * 8, dtype=np.float32))
    text.write_text("la la la", encoding="utf-8")
    beats.write_text("{}", encoding="utf-8")
    for path in (tmp_path / "missing.mp3", text, silent, beats):
        with pytest.raises(Unreadable) as refusal:
            walls_on_song(sheet, of(path))
        assert str(refusal.value).endswith(".")
        assert "\n" not in str(refusal.value)
