"""From a sheet to a practice track in a file: the file, what is said of it, and every refusal."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path
from typing import Any

import numpy as np
import pytest
import soundfile
from tests.cli.conftest import RESTARTED, SOUND
from tests.give.voices import Tones, tone

from wallwise.desk import practice
from wallwise.desk.errors import DeskError, Unreadable
from wallwise.desk.practice import Practice, PracticeAsked, make_practice
from wallwise.give.lead import Lead
from wallwise.give.voice import RATE_HZ
from wallwise.song.grid import BeatGrid
from wallwise.song.sound import Label, Sound, encoded

_SLOW = PracticeAsked(bpm=200, tempo=0.8, lead=Lead.COUNTS)


@pytest.fixture(autouse=True)
def voice(monkeypatch: pytest.MonkeyPatch) -> Tones:
    """The quick voice of the tests instead of the spoken one."""
    tones = Tones()
    monkeypatch.setattr(practice, "spoken_voice", lambda: tones)
    return tones


@pytest.fixture
def sheet(tmp_path: Path) -> Path:
    path = tmp_path / "lantern-ferry.txt"
    path.write_text(SOUND, encoding="utf-8")
    return path


def _no_song(_: Any) -> BeatGrid:
    raise AssertionError("there is no song to find beats in")


def _made(sheet: Path, out: str, asked: PracticeAsked) -> Practice:
    return make_practice(sheet, sheet.parent / out, asked=asked, song_grid=_no_song)


@pytest.mark.parametrize("suffix", ["wav", "mp3"])
def test_the_track_is_written_with_a_title_that_says_what_it_is(sheet: Path, suffix: str) -> None:
    made = _made(sheet, f"track.{suffix}", replace(_SLOW, lead=Lead.CLICK))
    with soundfile.SoundFile(made.path) as file:
        assert file.title == "Lantern Ferry at 80%: practice"
        assert file.comment == "Practice track without a song, 160.0 counts a minute."
        assert file.frames / file.samplerate == pytest.approx(made.track.sound.length_sec)


def test_a_song_is_slowed_and_its_beats_are_those_it_was_given(sheet: Path) -> None:
    song = sheet.parent / "song.flac"
    samples = np.zeros((20 * RATE_HZ, 2), np.float32)
    samples[::RATE_HZ] = 0.5
    song.write_bytes(encoded(Sound(samples, RATE_HZ), ".flac", Label("Song")))
    grid = replace(BeatGrid.steady_at(120, length_sec=20, first_sec=0.5), first_beat=8)
    made = make_practice(
        sheet, sheet.parent / "track.flac", asked=replace(_SLOW, song=song), song_grid=lambda _: grid
    )
    assert made.track.grid.bpm == pytest.approx(96)
    assert made.track.sound.length_sec == pytest.approx(25, abs=1)
    assert "Count 1 is where it was heard, 4.50 s into the song" in made.notes[0]
    assert "over song.flac" in soundfile.SoundFile(made.path).comment


def test_the_note_on_safe_listening_is_always_given(sheet: Path) -> None:
    """NIOSH 1998 (reference: CDC/NIOSH): 85 dB(A) for 8 h, and half the time for every 3 dB more."""
    note = _made(sheet, "track.wav", _SLOW).notes[-1]
    hours_at_94 = 8 / 2 ** ((94 - 85) / 3)
    quarter_at_100 = 8 / 2 ** ((100 - 85) / 3)
    assert (hours_at_94, quarter_at_100) == (1.0, 0.25)
    assert "85 dB(A) is for 8 hours" in note
    assert "94 for one hour, 100 for a quarter of an hour" in note


def test_the_names_on_the_sheet_are_called_and_a_restart_too(sheet: Path, voice: Tones) -> None:
    sheet.write_text(RESTARTED, encoding="utf-8")
    made = _made(sheet, "track.wav", replace(_SLOW, bpm=125, lead=Lead.WORDS))
    said = [cue.words for cue in made.track.cues]
    assert "vine right" in said
    assert sum(words.startswith("restart") for words in said) == 1
    assert made.report.sound


def test_without_a_tempo_one_is_taken_and_said(sheet: Path) -> None:
    made = _made(sheet, "track.wav", replace(_SLOW, bpm=None, tempo=1.0))
    assert made.track.grid.counts_per_minute == pytest.approx(100)
    assert made.notes[0] == "Neither the sheet nor --bpm gives a tempo: 100 counts a minute are taken."


def test_without_the_extra_clicks_lead_and_the_extra_is_named(
    sheet: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(practice, "spoken_voice", lambda: None)
    made = _made(sheet, "track.wav", _SLOW)
    assert made.track.cues == ()
    assert "pip install 'wallwise[voice]'" in made.notes[0]
    assert np.max(np.abs(made.track.sound.samples)) > 0.1


def test_clicks_alone_ask_for_no_voice(sheet: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(practice, "spoken_voice", _no_song)
    assert len(_made(sheet, "track.wav", replace(_SLOW, lead=Lead.CLICK)).notes) == 1


def test_the_teachers_own_words_are_used_and_those_missing_are_told(sheet: Path) -> None:
    folder = sheet.parent / "pack"
    folder.mkdir()
    for name in ("forward", "back", "five", "six"):
        (folder / f"{name}.wav").write_bytes(encoded(tone(0.3), ".wav", Label(name)))
    made = _made(sheet, "track.wav", replace(_SLOW, lead=Lead.WORDS, voice_pack=folder))
    assert {cue.words for cue in made.track.cues} <= {"forward", "back", "five", "six"}
    assert "have no recording short enough" in made.notes[0]
    assert "vine" in made.notes[0]


@pytest.mark.parametrize(
    ("asked", "out", "refusal"),
    [
        (_SLOW, "track.doc", r"track\.doc: sound is written as \.wav"),
        (_SLOW, "track", "end the name with one of these"),
        (replace(_SLOW, tempo=0.1), "track.wav", "10% is no tempo to practise at: 40% to 160% is"),
        (replace(_SLOW, bpm=1000), "track.wav", "1000 is no tempo"),
        (replace(_SLOW, song=Path("no-such-song.mp3")), "track.wav", "no-such-song.mp3: this file cannot be"),
        (replace(_SLOW, song=Path("a.beats.json")), "track.wav", "these are beats; name the song itself"),
        (replace(_SLOW, voice_pack=Path("no-such-folder")), "track.wav", "no-such-folder: this folder of"),
    ],
)
def test_what_cannot_be_made_is_refused_in_one_sentence_and_nothing_is_written(
    sheet: Path, asked: PracticeAsked, out: str, refusal: str
) -> None:
    with pytest.raises(DeskError, match=refusal):
        _made(sheet, out, asked)
    assert [sheet] == list(sheet.parent.iterdir())


def test_a_file_that_is_no_song_and_a_folder_without_a_word_are_refused(sheet: Path) -> None:
    with pytest.raises(Unreadable, match=r"lantern-ferry\.txt: this is no sound file"):
        _made(sheet, "track.wav", replace(_SLOW, song=sheet))
    with pytest.raises(Unreadable, match="there is no recording in this folder"):
        _made(sheet, "track.wav", replace(_SLOW, voice_pack=sheet.parent))
    (sheet.parent / "five.wav").write_bytes(b"RIFF and nothing more")
    with pytest.raises(Unreadable, match=r"five\.wav: this is no sound file"):
        _made(sheet, "track.wav", replace(_SLOW, voice_pack=sheet.parent))


def test_a_track_is_not_written_over_a_folder(sheet: Path) -> None:
    (sheet.parent / "track.wav").mkdir()
    with pytest.raises(DeskError, match="this is a folder"):
        _made(sheet, "track.wav", _SLOW)
