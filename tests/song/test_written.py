"""Sound written and read again: the samples, the length and the tags."""

from __future__ import annotations

import io
from pathlib import Path

import numpy as np
import pytest
import soundfile

from wallwise.song.sound import FORMATS, Label, Sound, encoded, read_stereo


def _sound() -> Sound:
    at = np.arange(3 * 44_100) / 44_100
    tone = 0.5 * np.sin(2 * np.pi * 330 * at).astype(np.float32)
    return Sound(np.column_stack([tone, 0.5 * tone]), 44_100)


@pytest.mark.parametrize("suffix", FORMATS)
def test_what_is_written_is_read_again(suffix: str, tmp_path: Path) -> None:
    path = tmp_path / f"tone{suffix}"
    path.write_bytes(encoded(_sound(), suffix, Label("Tone")))
    heard = read_stereo(path)
    assert len(heard.samples) == len(_sound().samples)
    middle = slice(44_100, 88_200)
    loss = heard.samples[middle] - _sound().samples[middle]
    assert np.sqrt(np.mean(loss**2)) < 0.01


@pytest.mark.parametrize("suffix", FORMATS)
def test_the_tags_say_what_it_is(suffix: str) -> None:
    label = Label("Lantern Walk at 75 %", "Wallwise", "practice track")
    with soundfile.SoundFile(io.BytesIO(encoded(_sound(), suffix, label))) as file:
        assert (label.title, label.artist, label.comment) == (file.title, file.artist, file.comment)


def test_a_long_ogg_is_written_in_blocks() -> None:
    long = Sound(np.zeros((44_100 * 90, 2), np.float32), 44_100)
    with soundfile.SoundFile(io.BytesIO(encoded(long, ".ogg", Label("Long")))) as file:
        assert len(long.samples) == file.frames


def test_another_ending_is_refused() -> None:
    with pytest.raises(ValueError, match=r"\.wav, \.flac, \.ogg, \.mp3, not \.doc"):
        encoded(_sound(), ".doc", Label("Tone"))
