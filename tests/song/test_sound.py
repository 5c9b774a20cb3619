"""Files become the same samples whatever their format, and what is no song gets one sentence."""

from __future__ import annotations

import builtins
from pathlib import Path
from typing import Any

import av
import numpy as np
import pytest
import soundfile

from wallwise.song import sound
from wallwise.song.sound import Unhearable, read_mono, read_stereo

RATE_HZ = 44100
CLICKS_SEC = (0.5, 1.0, 2.25, 3.75)
FORMATS = {
    "wav": ("WAV", "PCM_16", RATE_HZ),
    "flac": ("FLAC", "PCM_16", RATE_HZ),
    "ogg": ("OGG", "VORBIS", RATE_HZ),
    "opus": ("OGG", "OPUS", 48000),
    "mp3": ("MP3", "MPEG_LAYER_III", RATE_HZ),
}


def clicks(rate_hz: int, length_sec: float = 5.0) -> Any:
    """Short bursts at CLICKS_SEC [shape=(n, 2)]; the right side is half as loud."""
    samples = np.zeros((int(length_sec * rate_hz), 2), np.float32)
    time = np.arange(int(0.02 * rate_hz)) / rate_hz
    burst = 0.8 * np.sin(2 * np.pi * 1500 * time) * np.exp(-time / 0.004)
    for at in CLICKS_SEC:
        start = round(at * rate_hz)
        samples[start : start + len(burst)] += burst[:, None] * [1.0, 0.5]
    return samples


def write(path: Path, name: str) -> Path:
    container, coding, rate_hz = FORMATS[name]
    with soundfile.SoundFile(path, "w", rate_hz, 2, format=container, subtype=coding) as file:
        samples = clicks(rate_hz)
        for start in range(0, len(samples), 65536):  # libsndfile crashes on one long ogg write
            file.write(samples[start : start + 65536])
    return path


def onsets_sec(samples: Any, rate_hz: int) -> list[float]:
    loud = np.flatnonzero(np.abs(samples) > 0.15)
    starts = loud[np.diff(loud, prepend=-RATE_HZ) > 0.2 * rate_hz]
    return [float(start) / rate_hz for start in starts]


@pytest.mark.parametrize("name", FORMATS)
def test_every_format_gives_the_clicks_where_they_were(tmp_path: Path, name: str) -> None:
    """Within 2 ms of where they were written, at the length they were written."""
    heard = read_mono(write(tmp_path / f"song.{name}", name))
    assert pytest.approx(CLICKS_SEC, abs=0.002) == onsets_sec(heard.samples, heard.rate_hz)
    assert heard.rate_hz == 22050
    assert heard.samples.dtype == np.float32
    # What is told of an opus file's end is rounded up to its pages.
    assert pytest.approx(5.0, abs=0.5 if name == "opus" else 0.01) == heard.length_sec


def test_the_format_is_known_by_content_not_by_name(tmp_path: Path) -> None:
    """An mp3 called .txt is heard."""
    assert len(onsets_sec(read_mono(write(tmp_path / "notes.txt", "mp3")).samples, 22050)) == 4


def test_stereo_keeps_its_sides(tmp_path: Path) -> None:
    """Left and right are not mixed, and a mono file is heard on both."""
    both = read_stereo(write(tmp_path / "song.wav", "wav")).samples
    assert pytest.approx(2.0, rel=0.01) == np.abs(both[:, 0]).max() / np.abs(both[:, 1]).max()
    soundfile.write(tmp_path / "mono.wav", clicks(RATE_HZ)[:, 0], RATE_HZ)
    one = read_stereo(tmp_path / "mono.wav").samples
    assert one.shape == (5 * RATE_HZ, 2)
    assert np.array_equal(one[:, 0], one[:, 1])


def test_m4a_is_heard_with_the_extra(tmp_path: Path) -> None:
    """AAC in m4a, the encoder's lead-in taken off."""
    path = tmp_path / "song.m4a"
    with av.open(str(path), "w") as file:
        stream = file.add_stream("aac", rate=RATE_HZ, layout="stereo")
        frame = av.AudioFrame.from_ndarray(
            np.ascontiguousarray(clicks(RATE_HZ).T), format="fltp", layout="stereo"
        )
        frame.sample_rate, frame.pts = RATE_HZ, 0
        file.mux([*stream.encode(frame), *stream.encode(None)])
    heard = read_mono(path)
    assert pytest.approx(CLICKS_SEC, abs=0.003) == onsets_sec(heard.samples, heard.rate_hz)
    whole = path.read_bytes()
    path.write_bytes(whole[: len(whole) // 2])
    with pytest.raises(Unhearable, match=r"no sound file|breaks off"):
        read_mono(path)


def test_without_the_extra_a_sentence_names_it(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """An m4a is not called damaged where only PyAV is missing."""
    path = tmp_path / "song.m4a"
    path.write_bytes(b"\0\0\0\x20ftypM4A \0\0\0\0")
    real = builtins.__import__

    def without_av(name: str, *rest: Any, **named: Any) -> Any:
        if name == "av":
            raise ImportError(name)
        return real(name, *rest, **named)

    monkeypatch.setattr(builtins, "__import__", without_av)
    with pytest.raises(Unhearable, match=r"wallwise\[m4a\]"):
        read_mono(path)


@pytest.mark.parametrize(
    ("content", "says"),
    [
        (b"", "empty"),
        (b"1-8 Walk R, L\n" * 500, "no sound file"),
        (bytes(10_000), "no sound file"),
        (bytes(np.random.default_rng(1).integers(0, 256, 100_000, dtype=np.uint8)), "no sound file"),
        (b"\0\0\0\x20ftypM4A \0\0\0\0" + bytes(500), "no sound"),
        (b"\xff\xf1" + bytes(500), "no sound"),
    ],
)
def test_what_is_no_sound_gets_one_sentence(
    tmp_path: Path, capfd: pytest.CaptureFixture[str], content: bytes, says: str
) -> None:
    """The sentence is all that is said; the decoders' own talk stays unheard."""
    path = tmp_path / "thing"
    path.write_bytes(content)
    with pytest.raises(Unhearable, match=says) as refusal:
        read_mono(path)
    assert str(refusal.value).endswith(".")
    assert capfd.readouterr() == ("", "")


def test_a_missing_file_and_a_folder_get_one_sentence(tmp_path: Path) -> None:
    """No traceback for what cannot be opened."""
    for path in (tmp_path / "nothing.mp3", tmp_path):
        with pytest.raises(Unhearable, match="cannot be opened"):
            read_mono(path)


def test_a_file_cut_off_is_told(tmp_path: Path, capfd: pytest.CaptureFixture[str]) -> None:
    """Half of a flac is no song."""
    path = write(tmp_path / "song.flac", "flac")
    whole = path.read_bytes()
    path.write_bytes(whole[: len(whole) // 2])
    with pytest.raises(Unhearable, match=r"damaged|no sound file"):
        read_mono(path)
    assert capfd.readouterr() == ("", "")


def test_no_numbers_and_no_samples_are_told(tmp_path: Path) -> None:
    """A file of floats may hold what is none; a wav may hold nothing."""
    bad = clicks(RATE_HZ)
    bad[1000] = np.nan
    soundfile.write(tmp_path / "nan.wav", bad, RATE_HZ, subtype="FLOAT")
    with pytest.raises(Unhearable, match="no numbers"):
        read_mono(tmp_path / "nan.wav")
    soundfile.write(tmp_path / "none.wav", bad[:0], RATE_HZ)
    with pytest.raises(Unhearable, match="no sound in"):
        read_mono(tmp_path / "none.wav")


def test_more_than_half_an_hour_is_refused(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """By its header before a block is read, or by counting where the header lies."""
    path = write(tmp_path / "song.wav", "wav")
    monkeypatch.setattr(sound, "LONGEST_SEC", 4)
    with pytest.raises(Unhearable, match="longer than"):
        read_mono(path)


def test_a_rate_of_no_song_is_refused(tmp_path: Path) -> None:
    """One sample a second would grow 22050-fold."""
    soundfile.write(tmp_path / "slow.wav", clicks(RATE_HZ)[:1000], 1)
    with pytest.raises(Unhearable, match="samples a second"):
        read_mono(tmp_path / "slow.wav")
