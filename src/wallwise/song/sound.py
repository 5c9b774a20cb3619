"""Sound from and to files: wav, flac, ogg, opus and mp3 by libsndfile; m4a and aac where PyAV is installed.

Whatever is heard, mixed or played comes from here: an mp3 without an encoder's header starts
about 25 ms late in every decoder, so beats found in one decoding fit only that decoding.  Files
are read block by block; no more is kept than the samples asked for.
"""

from __future__ import annotations

import io
import os
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Samples = NDArray[np.float32]  # -1 to 1

LONGEST_SEC = 30 * 60
HEARING_RATE_HZ = 22050  # what the analysis listens at
_RATES_HZ = (4000, 400_000)  # beyond these a header is broken, or the file no song
_BLOCK = 1 << 16
_SHARE_KEPT = 0.95  # of the length that the header tells; less, and the file breaks off


class Unhearable(Exception):
    """The file holds no song that can be heard; the text is one sentence that says why."""


@dataclass(frozen=True, slots=True)
class Sound:
    """Decoded samples [shape=(n,) mono, (n, 2) stereo], float32, and their rate."""

    samples: Samples
    rate_hz: int

    @property
    def length_sec(self) -> float:
        """Seconds from the first sample to the end."""
        return len(self.samples) / self.rate_hz


def read_mono(path: Path, rate_hz: int = HEARING_RATE_HZ) -> Sound:
    """The file at `path`, its channels mixed into one, at `rate_hz`.  Raises Unhearable."""
    return _read(path, rate_hz, lambda block: block.mean(axis=1, keepdims=True))


def read_stereo(path: Path, rate_hz: int = 44100) -> Sound:
    """The file at `path` in two channels at `rate_hz`; one channel is heard on both sides, and of
    more than two the first two are taken.  Raises Unhearable.
    """
    return _read(path, rate_hz, lambda block: block[:, [0, min(1, block.shape[1] - 1)]])


def at_rate(sound: Sound, rate_hz: int) -> Sound:
    """The sound at another rate; as long, to a sample."""
    if sound.rate_hz == rate_hz or not len(sound.samples):
        return Sound(sound.samples, rate_hz)
    import soxr

    return Sound(soxr.resample(sound.samples, sound.rate_hz, rate_hz), rate_hz)


def _read(path: Path, rate_hz: int, mix: Callable[[Samples], Samples]) -> Sound:
    import numpy as np
    import soxr

    kept: list[Samples] = []
    stream: Any = None
    for block, from_rate_hz in _blocks(path):
        mixed = np.ascontiguousarray(mix(block), dtype=np.float32)
        if not np.isfinite(mixed).all():
            raise Unhearable(f"{path}: this file is damaged (samples that are no numbers).")
        if stream is None:
            stream = soxr.ResampleStream(from_rate_hz, rate_hz, mixed.shape[1], dtype="float32")
        kept.append(stream.resample_chunk(mixed))
    if stream is None:
        raise Unhearable(f"{path}: there is no sound in this file.")
    kept.append(stream.resample_chunk(np.zeros((0, kept[0].shape[1]), np.float32), last=True))
    samples = np.concatenate(kept)
    return Sound(samples[:, 0] if samples.shape[1] == 1 else samples, rate_hz)


def _blocks(path: Path) -> Iterator[tuple[Samples, int]]:
    """The file as blocks [shape=(n, channels)], each with the file's rate."""
    try:
        with path.open("rb") as file:
            head = file.read(16)
    except OSError as error:
        raise Unhearable(f"{path}: this file cannot be opened ({error.strerror}).") from None
    if not head:
        raise Unhearable(f"{path}: this file is empty.")
    kind = _container_of_aac(head)
    frames = 0
    for block, rate_hz in _aac_blocks(path, kind) if kind else _plain_blocks(path):
        if not _RATES_HZ[0] <= rate_hz <= _RATES_HZ[1]:
            raise Unhearable(f"{path}: {rate_hz} samples a second are those of no song.")
        frames += len(block)
        if frames > LONGEST_SEC * rate_hz:
            raise _too_long(path)
        if len(block):
            yield block, rate_hz


def _plain_blocks(path: Path) -> Iterator[tuple[Samples, int]]:
    import soundfile

    frames = 0
    try:
        with _opened(path) as file:
            told = file.frames
            if told > LONGEST_SEC * file.samplerate:
                raise _too_long(path)
            while len(block := _next_block(file)):
                frames += len(block)
                yield block, file.samplerate
    except (soundfile.LibsndfileError, RuntimeError):
        if not frames:
            raise Unhearable(f"{path}: this is no sound file that can be read.") from None
        raise _breaks_off(path) from None
    if frames < _SHARE_KEPT * told:
        raise _breaks_off(path)


def _opened(path: Path) -> Any:
    import soundfile

    class Straight(soundfile.SoundFile):  # type: ignore[misc]
        """Read from front to back: soundfile seeks to where it stands after every block of a file that
        can seek, and after a seek an mp3 decoder gives some 40 ms of rubbish.
        """

        def seekable(self) -> bool:
            return False

    with _hushed():
        return Straight(path)


def _next_block(file: Any) -> Samples:
    with _hushed():
        block: Samples = file.read(_BLOCK, dtype="float32", always_2d=True)
    return block


def _container_of_aac(head: bytes) -> str:
    """PyAV's name of the container if the file is an m4a or a bare aac stream, else ""."""
    if head[4:8] == b"ftyp":
        return "mp4"
    # ADTS: twelve bits of sync, then the layer, which is always 0 (ISO/IEC 13818-7, 6.2)
    if head[0] == 0xFF and head[1] & 0xF6 == 0xF0:
        return "aac"
    return ""


def _aac_blocks(path: Path, container: str) -> Iterator[tuple[Samples, int]]:
    import numpy as np

    try:
        import av
    except ImportError:
        raise Unhearable(f"{path}: m4a and aac need an extra: pip install 'wallwise[m4a]'.") from None
    heard = False
    try:
        # An open file and a named container: the decoder is to follow no link out of the file.
        with path.open("rb") as file, av.open(file, "r", format=container) as songs:
            if not songs.streams.audio:
                raise Unhearable(f"{path}: there is no sound in this file.")
            planes = av.AudioResampler(format="fltp")
            for frame in songs.decode(songs.streams.audio[0]):
                for plane in planes.resample(frame):
                    heard = True
                    samples: Samples = plane.to_ndarray().T.astype(np.float32)
                    yield samples, plane.sample_rate
    except av.FFmpegError:
        if not heard:
            raise Unhearable(f"{path}: this is no sound file that can be read.") from None
        raise _breaks_off(path) from None


def _too_long(path: Path) -> Unhearable:
    return Unhearable(f"{path}: this lasts longer than {LONGEST_SEC // 60} minutes; cut the song out of it.")


def _breaks_off(path: Path) -> Unhearable:
    return Unhearable(f"{path}: this file is damaged, it breaks off in the middle.")


@dataclass(frozen=True, slots=True)
class Label:
    """What a written file says of itself, in its tags."""

    title: str
    artist: str = ""
    comment: str = ""


FORMATS = {  # libsndfile's names, by the ending of the file
    ".wav": ("WAV", "PCM_16"),
    ".flac": ("FLAC", "PCM_16"),
    ".ogg": ("OGG", "VORBIS"),
    ".mp3": ("MP3", "MPEG_LAYER_III"),
}


def encoded(sound: Sound, suffix: str, label: Label) -> bytes:
    """The bytes of a sound file of the kind that `suffix` names, one of `FORMATS`, with its tags.

    Samples beyond -1 to 1 would be clipped.  ValueError for another suffix.
    """
    import soundfile

    if suffix not in FORMATS:
        raise ValueError(
            f"sound is written as {', '.join(FORMATS)}, not {suffix or 'a file without an ending'}"
        )
    kind, coding = FORMATS[suffix]
    channels = 1 if sound.samples.ndim == 1 else sound.samples.shape[1]
    written = io.BytesIO()
    with soundfile.SoundFile(
        written, "w", samplerate=sound.rate_hz, channels=channels, format=kind, subtype=coding
    ) as file:
        for tag, said in (("title", label.title), ("artist", label.artist), ("comment", label.comment)):
            if said:  # libsndfile refuses an empty one
                setattr(file, tag, said)
        # In blocks: libsndfile 1.2 crashes on a long ogg written at once.
        for first in range(0, len(sound.samples), _BLOCK):
            file.write(sound.samples[first : first + _BLOCK])
    return written.getvalue()


@contextmanager
def _hushed() -> Iterator[None]:
    """No talk of the decoder's own on standard error: its C code writes there past Python."""
    try:
        kept = os.dup(2)
    except OSError:  # there is no standard error
        yield
        return
    nowhere = os.open(os.devnull, os.O_WRONLY)
    try:
        os.dup2(nowhere, 2)
        yield
    finally:
        os.dup2(kept, 2)
        os.close(nowhere)
        os.close(kept)
