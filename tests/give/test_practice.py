"""The practice track: beats where its grid says, a count-in before count 1, words ahead of their beats."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from functools import cache

import numpy as np
import pytest
from tests.give.voices import Tones

from wallwise.dance.model import Dance, Foot, Kind, Part, Place, Restart, Section, Step
from wallwise.give.lead import Lead
from wallwise.give.practice import Music, Track, practice_track, silent_grid, slowed
from wallwise.give.voice import RATE_HZ
from wallwise.glossary.calling import calls_of
from wallwise.song.grid import BeatGrid
from wallwise.song.loudness import loudness_lufs
from wallwise.song.sound import Sound

_FEET = (Foot.RIGHT, Foot.LEFT)


def _dance(counts: int = 8) -> Dance:
    """Steps forward, one a count, that never turn."""
    steps = tuple(
        Step(Fraction(n + 1), _FEET[n % 2], Kind.STEP, (Place.FORWARD, Place.BACK)[n // 4 % 2])
        for n in range(counts)
    )
    return Dance("Lantern Walk", (Part("main", (Section(1, Fraction(1), Fraction(counts), steps),)),))


def _clicked(grid: BeatGrid) -> Music:
    """A song that clicks on each of its beats."""
    samples = np.zeros((round(grid.length_sec * RATE_HZ), 2), np.float32)
    at = np.arange(400) / RATE_HZ
    click = (np.exp(-at * 500) * np.sin(2 * np.pi * 2500 * at)).astype(np.float32)
    for beat in range(grid.last_beat + 1):
        first = round(grid.beat_to_sec(beat) * RATE_HZ)
        samples[first : first + 400] += 0.6 * click[: len(samples) - first, np.newaxis]
    return Music(Sound(samples, RATE_HZ), grid)


def _song_grid(first_beat: int = 8, bpm: float = 126.0) -> BeatGrid:
    return replace(BeatGrid.steady_at(bpm, length_sec=14, first_sec=0.31), first_beat=first_beat)


@cache
def _track(tempo: float, lead: Lead, first_beat: int = 8, song: bool = True) -> Track:
    dance, grid = _dance(), _song_grid(first_beat)
    return practice_track(
        dance,
        music=_clicked(grid) if song else None,
        grid=grid if song else silent_grid(dance, 100),
        tempo=tempo,
        lead=lead,
        voice=Tones(),
        calls_of=calls_of,
    )


def _heard_sec(track: Track, near_sec: float) -> float:
    """Where the loudest click is within 80 ms of a moment."""
    first = round((near_sec - 0.08) * RATE_HZ)
    part = track.sound.samples[first : first + round(0.16 * RATE_HZ), 0]
    # The count-in's clicks and the words are lower than 2 kHz; a second difference leaves the song.
    return near_sec - 0.08 + float(np.argmax(np.abs(np.diff(part, n=2)))) / RATE_HZ


@pytest.mark.parametrize("tempo", [1.0, 0.75, 0.6])
def test_the_beats_of_the_slowed_song_are_heard_where_the_grid_says(tempo: float) -> None:
    """Within 10 ms, and nearly all far nearer."""
    track = _track(tempo, Lead.NONE)
    assert track.grid.bpm == pytest.approx(126 * tempo)
    errors = [
        abs(_heard_sec(track, sec) - sec)
        for beat in range(9, track.grid.last_beat - 1)
        if (sec := track.grid.beat_to_sec(beat)) < track.sound.length_sec
    ]
    assert len(errors) > 15
    assert max(errors) <= 0.010
    assert np.median(errors) <= 0.003


def test_every_word_ends_before_the_beat_it_calls() -> None:
    track = _track(0.75, Lead.WORDS)
    calls = [cue for cue in track.cues if cue.beat_sec > cue.ends_sec]
    beats = {round(track.grid.count_to_sec(count), 6) for count in range(1, 60)}
    assert len(calls) >= 12
    assert {round(cue.beat_sec, 6) for cue in calls} <= beats
    loud = np.abs(track.speech.samples) > 0.01 * np.max(np.abs(track.speech.samples))
    for cue in calls:
        just_before = loud[round((cue.beat_sec - 0.04) * RATE_HZ) : round(cue.beat_sec * RATE_HZ)]
        assert not just_before.any()


def test_a_song_that_begins_with_count_1_begins_later_to_be_counted_in() -> None:
    track = _track(0.75, Lead.COUNTS, first_beat=0)
    spoken = [cue.words for cue in track.cues if cue.beat_sec < track.grid.count_to_sec(1) - 0.01]
    assert ["one", "two", "three", "four", "five", "six", "seven", "eight"] == spoken
    assert track.cues[0].starts_sec >= 0.4
    shift = track.grid.beat_to_sec(0) - 0.31 / 0.75
    assert shift == pytest.approx(0.5 + 8 * 60 / (126 * 0.75) - 0.31 / 0.75, abs=0.001)


def test_a_song_with_an_intro_long_enough_begins_at_once() -> None:
    track = _track(1.0, Lead.COUNTS, first_beat=16)
    assert track.grid.beat_to_sec(0) == pytest.approx(0.31)
    assert track.cues[0].beat_sec == pytest.approx(track.grid.count_to_sec(-7))


def test_calls_are_counted_in_by_the_last_bar_as_far_as_the_first_call_leaves_room() -> None:
    track = _track(0.75, Lead.WORDS)
    before = [cue.words for cue in track.cues if cue.starts_sec < track.grid.count_to_sec(1)]
    assert before[:2] == ["five", "six"]
    assert "forward" in before[-1] or "walk" in before[-1]


def test_counts_begin_anew_with_every_wall() -> None:
    dance = replace(_dance(16), restarts=(Restart(1, Fraction(4)),))
    grid = _song_grid()
    track = practice_track(
        dance, music=None, grid=grid, tempo=1.0, lead=Lead.COUNTS, voice=Tones(), calls_of=lambda _: ()
    )
    spoken = [cue.words for cue in track.cues][8:16]
    assert ["one", "two", "three", "four", "one", "two", "three", "four"] == spoken


def test_a_restart_is_called_before_it_comes() -> None:
    dance = replace(_dance(16), restarts=(Restart(1, Fraction(8)),))
    track = practice_track(
        dance,
        music=None,
        grid=_song_grid(),
        tempo=0.75,
        lead=Lead.WORDS,
        voice=Tones(),
        calls_of=calls_of,
    )
    said = {round(track.grid.sec_to_count(cue.beat_sec), 3): cue.words for cue in track.cues}
    assert said[9.0].startswith("restart")
    assert not any("restart" in words for count, words in said.items() if count != 9.0)


def test_without_a_song_the_dance_is_clicked_until_the_room_is_back_at_the_front() -> None:
    track = _track(1.0, Lead.CLICK, song=False)
    assert track.grid.counts_per_minute == pytest.approx(100)
    for count in range(1, 9):
        sec = track.grid.count_to_sec(count)
        around = np.abs(
            track.sound.samples[round((sec - 0.005) * RATE_HZ) : round((sec + 0.02) * RATE_HZ), 0]
        )
        assert np.max(around) > 0.05
    quiet = track.sound.samples[round((track.grid.count_to_sec(1.55)) * RATE_HZ) :][: RATE_HZ // 10, 0]
    assert np.max(np.abs(quiet)) < 0.05


@pytest.mark.parametrize("lead", list(Lead))
def test_no_sample_is_clipped_and_clicks_alone_are_as_loud_as_their_peaks_allow(lead: Lead) -> None:
    track = _track(0.75, lead)
    assert np.max(np.abs(track.sound.samples)) < 0.9
    assert -24 < loudness_lufs(track.sound) < -15


def test_without_a_voice_clicks_lead() -> None:
    dance, grid = _dance(), _song_grid()
    music = Music(Sound(np.zeros((14 * RATE_HZ, 2), np.float32), RATE_HZ), grid)
    track = practice_track(
        dance, music=music, grid=grid, tempo=1.0, lead=Lead.WORDS, voice=None, calls_of=lambda _: ()
    )
    assert track.cues == ()
    at = round(track.grid.count_to_sec(3) * RATE_HZ)
    assert np.max(np.abs(track.sound.samples[at : at + 800])) > 0.05


def test_a_dance_longer_than_the_song_stops_with_it() -> None:
    track = _track(1.0, Lead.WORDS)
    assert max(cue.beat_sec for cue in track.cues) <= track.grid.beat_to_sec(track.grid.last_beat)
    assert track.sound.length_sec == pytest.approx(track.grid.length_sec, abs=0.01)


def test_slowing_a_grid_keeps_its_beats_and_stretches_its_seconds() -> None:
    grid = BeatGrid(((0.0, 1.0), (10.0, 6.0), (20.0, 12.0)), 4, 2, 20, Fraction(1), (), 0.002, False, 13.0)
    slow = slowed(grid, 0.8, delay_sec=1.5)
    for beat in (0, 2.5, 10, 17.25, 20):
        assert slow.beat_to_sec(beat) == pytest.approx(grid.beat_to_sec(beat) / 0.8 + 1.5)
    assert slow.residual_sec == pytest.approx(0.0025)
