"""The songs of the demo: what is heard falls where the truth beside them says."""

from __future__ import annotations

import json
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest

from wallwise.demo.instruments import RATE
from wallwise.demo.score import Score, Section, tune_of
from wallwise.demo.songs import PEG_AND_RAIL, SCORES, Song, play, truth_of
from wallwise.desk.demo import demo_sheets, lay_song
from wallwise.song.sound import read_stereo


@pytest.fixture(scope="module")
def song() -> Song:
    """The opening of *Peg and Rail*: intro, verse and ending."""
    return play(replace(PEG_AND_RAIL, order=("intro", "verse", "ending")))


def _loudest_rise_sec(song: Song, near_sec: float) -> float:
    """Where within 60 ms of a moment the sound rises most, measured in steps of 1 ms."""
    hop = RATE // 1000
    first = round((near_sec - 0.06) * RATE)
    treble = np.diff(song.samples[first : first + 120 * hop + 1].mean(axis=1))
    power = np.square(treble).reshape(120, hop).mean(axis=1)
    return near_sec - 0.06 + float(np.argmax(np.diff(np.log(power + 1e-7)))) / 1000 + 0.001


def test_the_first_and_third_beats_of_each_bar_sound_within_five_milliseconds_of_the_truth(
    song: Song,
) -> None:
    beats = truth_of(song.score)["beats"][: 12 * 4 : 2]
    errors = [abs(_loudest_rise_sec(song, beat) - beat) for beat in beats]
    assert np.median(errors) <= 0.002
    assert max(errors) <= 0.005


def test_nothing_is_clipped_and_nothing_is_silent(song: Song) -> None:
    assert 0.85 <= np.max(np.abs(song.samples)) <= 0.9
    assert song.samples.dtype == np.float32
    assert abs(len(song.samples) / RATE - truth_of(song.score)["length_sec"]) < 0.001
    assert np.all(np.isfinite(song.samples))


def test_the_same_score_gives_the_same_samples(song: Song) -> None:
    again = play(replace(PEG_AND_RAIL, order=("intro", "verse", "ending")))
    assert np.array_equal(song.samples, again.samples)


@pytest.mark.parametrize("score", SCORES, ids=lambda score: score.title)
def test_every_song_is_one_to_two_and_a_half_minutes_long(score: Score) -> None:
    beats = sum(len(section.chords.split()) for section, _ in score.played()) * score.beats_per_bar
    assert 60 <= beats * 60 / score.bpm <= 150


@pytest.mark.parametrize("score", SCORES, ids=lambda score: score.title)
def test_every_tune_fits_its_chords_bar_for_bar(score: Score) -> None:
    for section in score.sections:
        assert len(section.chords.split()) == len(section.tune.split("|"))
        list(tune_of(section, key=score.key, beats_per_bar=score.beats_per_bar))


def test_every_song_is_the_music_that_its_sheet_names() -> None:
    sheets = dict(demo_sheets())
    for score in SCORES:
        assert score.title in sheets[score.sheet].decode()
        assert score.by in sheets[score.sheet].decode()


def test_one_song_has_a_short_phrase_where_its_dance_restarts() -> None:
    """*Coathook Corner* restarts on wall 3 after 16 counts, and is danced in 32."""
    truth = truth_of(PEG_AND_RAIL)
    assert [32, 32, 16, 32] == [phrase["counts"] for phrase in truth["phrases"]][1:5]
    assert truth["first_count_sec"] == truth["phrases"][1]["starts_sec"]


def test_a_bar_that_does_not_add_up_is_refused_by_name() -> None:
    with pytest.raises(ValueError, match="verse, bar 2"):
        list(tune_of(Section("verse", "1 1", "1:4 | 1:3"), key=60, beats_per_bar=4))


def test_a_song_is_laid_down_once_and_played_anew_when_it_has_changed(tmp_path: Path) -> None:
    score = replace(PEG_AND_RAIL, order=("intro", "ending"))
    laid = lay_song(tmp_path, score)
    assert (tmp_path / "peg-and-rail.flac", tmp_path / "peg-and-rail.beats-true.json") == laid
    assert truth_of(score) == json.loads(laid[1].read_text())
    assert read_stereo(laid[0]).length_sec == pytest.approx(truth_of(score)["length_sec"], abs=0.001)
    before = laid[0].stat().st_mtime_ns
    lay_song(tmp_path, score)
    assert before == laid[0].stat().st_mtime_ns
    lay_song(tmp_path, replace(score, bpm=120))
    assert before != laid[0].stat().st_mtime_ns
