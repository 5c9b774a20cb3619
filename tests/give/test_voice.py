"""The voice of the extra, which the tests install too, and a teacher's own recordings."""

from __future__ import annotations

import sys
from pathlib import Path

import numpy as np
import pytest
from tests.give.voices import tone

from wallwise.give.syllables import MOST_PER_SEC, syllables
from wallwise.give.voice import RATE_HZ, Recorded, Spoken, spoken_voice
from wallwise.song.sound import Label, Sound, Unhearable, encoded


@pytest.fixture(scope="module")
def voice() -> Spoken:
    return Spoken()


@pytest.mark.parametrize("words", ["vine right", "together", "rock, recover", "seven"])
def test_words_are_never_faster_than_people_follow(voice: Spoken, words: str) -> None:
    for within_sec in (5.0, syllables(words) / MOST_PER_SEC + 0.05):
        said = voice.say(words, within_sec=within_sec)
        if said is not None:
            assert said.length_sec <= within_sec
            assert syllables(words) / said.length_sec <= MOST_PER_SEC


def test_what_would_have_to_be_hurried_is_not_said(voice: Spoken) -> None:
    assert voice.say("jazz box quarter right", within_sec=0.9) is None


def test_silence_around_a_word_is_cut_off_and_words_are_equally_strong(voice: Spoken) -> None:
    for words in ("one", "restart"):
        said = voice.say(words, within_sec=5.0)
        assert said is not None
        assert said.rate_hz == RATE_HZ
        edge = round(0.03 * RATE_HZ)
        assert np.max(np.abs(said.samples[:edge])) > 0.01 * np.max(np.abs(said.samples))
        assert np.sqrt(np.mean(said.samples**2)) == pytest.approx(0.12, abs=0.001)


def test_without_the_extra_there_is_no_voice(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(sys.modules, "piper", None)
    assert spoken_voice() is None


@pytest.fixture
def pack(tmp_path: Path) -> Recorded:
    quiet = np.zeros(RATE_HZ // 2, np.float32)
    word = Sound(np.concatenate([quiet, tone(0.4).samples, quiet]), RATE_HZ)
    for name in ("Vine-Right.wav", "5.flac", "jazz_box.ogg"):
        path = tmp_path / name
        path.write_bytes(encoded(word, path.suffix, Label(path.stem)))
    (tmp_path / "notes.txt").write_text("not a word")
    (tmp_path / "broken.wav").write_bytes(b"RIFF nothing")
    return Recorded(tmp_path)


@pytest.mark.parametrize("words", ["vine right", "five", "jazz box", "Vine, right"])
def test_a_recording_is_found_by_its_words_and_trimmed(pack: Recorded, words: str) -> None:
    said = pack.say(words, within_sec=1.0)
    assert said is not None
    assert said.length_sec == pytest.approx(0.4, abs=0.03)


def test_a_word_without_a_recording_or_without_time_is_not_said(pack: Recorded) -> None:
    assert pack.say("vine left", within_sec=1.0) is None
    assert pack.say("vine right", within_sec=0.3) is None


def test_a_broken_recording_is_refused_by_name(pack: Recorded) -> None:
    with pytest.raises(Unhearable, match=r"broken\.wav"):
        pack.say("broken", within_sec=1.0)
