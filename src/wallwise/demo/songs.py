"""The songs of the invented hall, played by a small band with numpy, with their true beats.

They belong to three of the demo sheets and fit them: *Peg and Rail* has a phrase of 16
counts where its dance restarts, *Lamplight on the Groyne* one of six where its dance has a
tag.  The room stands beside the others and knows none of them: it gives out samples and
times, and the desk writes them to files.
"""

from __future__ import annotations

import zlib
from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

import numpy as np
import numpy.typing as npt

from wallwise.demo import instruments
from wallwise.demo.instruments import RATE, Sound
from wallwise.demo.score import Score, Section, chord_of, tune_of
from wallwise.demo.styles import STYLES, Stroke, Style

_LEAD_IN_SEC = 0.35  # a file rarely begins on its first sound
_TAIL_SEC = 2.6
_LOOSE_SEC = 0.005  # players of tune and chords are up to this much behind the kit
_PEAK = 0.89  # 1 dB below full scale

PEG_AND_RAIL = Score(
    title="Peg and Rail",
    by="Lost Umbrella Department",
    sheet="coathook-corner.txt",
    style="country",
    bpm=112,
    beats_per_bar=4,
    key=67,
    swing=0.57,
    order=("intro", "verse", "chorus", "short", "verse", "chorus", "bridge", "chorus", "ending"),
    sections=(
        Section("intro", "1 4 1 5", "-:4 | -:4 | 3:.5 5:.5 1':1 5:1 3:1 | 2:1 5,:1 -:2", 1),
        Section(
            "verse",
            "1 1 4 1 1 6m 2m 5",
            "3:1 3:.5 2:.5 1:1 5,:1 | 1:1 2:1 3:2 | 4:1 4:.5 5:.5 6:1 4:1 | 3:3 -:1"
            "| 3:1 3:.5 2:.5 1:1 3:1 | 6,:1 1:1 3:2 | 2:1 2:.5 3:.5 4:1 2:1 | 2:1 7,:1 5,:1 -:1",
            1,
        ),
        Section(
            "chorus",
            "4 5 1 6m 4 5 1 1",
            "6:1.5 6:.5 5:1 4:1 | 5:1.5 5:.5 4:1 2:1 | 3:1 5:1 1':2 | 6:2 5:1 -:1"
            "| 6:1.5 6:.5 5:1 4:1 | 5:1 4:1 2:1 7,:1 | 1:3 5:.5 3:.5 | 1:2 -:2",
            3,
        ),
        Section(
            "short",
            "6m 6m 4 5",
            "6:1 -:1 6:1 -:1 | 6:.5 5:.5 3:1 1:2 | 4:1 -:1 4:1 -:1 | 5:1 5:1 5:1 -:1",
            2,
        ),
        Section(
            "bridge",
            "6m 4 1 5 6m 4 1 5",
            "1':3 7:1 | 6:4 | 5:2 3:2 | 2:3 -:1 | 1':2 7:1 6:1 | 6:2 4:2 | 3:1 4:1 5:1 6:1 | 5:3 -:1",
            1,
        ),
        Section("ending", "4 1", "6:1 5:1 4:1 2:1 | 1:4", 2),
    ),
)

LAMPLIGHT = Score(
    title="Lamplight on the Groyne",
    by="Captain Tolliver's Daughters",
    sheet="slow-tide-at-wending.txt",
    style="waltz",
    bpm=96,
    beats_per_bar=3,
    key=65,
    order=("intro", "verse", "chorus", "turn", "verse", "ending"),
    sections=(
        Section(
            "intro",
            "1 4 1 5 1 4 5 1",
            "-:3 | -:3 | -:3 | -:3 | 3:2 4:1 | 6:2 4:1 | 2:1 7,:1 2:1 | 1:3",
            1,
        ),
        Section(
            "verse",
            "1 1 4 1 5 5 1 1 1 1 4 2m 5 5 1 1",
            "3:2 4:1 | 5:3 | 6:2 4:1 | 5:3 | 4:2 3:1 | 2:2 7,:1 | 1:2 2:1 | 3:3"
            "| 3:2 4:1 | 5:2 1':1 | 6:2 5:1 | 4:3 | 2:1 3:1 4:1 | 3:1 2:1 7,:1 | 1:3 | -:3",
            1,
        ),
        Section(
            "chorus",
            "4 4 1 1 5 5 6m 6m 4 4 1 6m 2m 5 1 1",
            "6:2 1':1 | 6:2 4:1 | 5:2 1':1 | 5:2 3:1 | 2:1 5:1 7:1 | 1':1 7:1 5:1 | 6:3 | 6:2 -:1"
            "| 6:2 1':1 | 6:1 5:1 4:1 | 5:2 3:1 | 1:3 | 2:1 3:1 4:1 | 5:2 7,:1 | 1:3 | -:3",
            3,
        ),
        Section("turn", "4 5", "6:1 5:1 4:1 | 5:3", 0),
        Section("ending", "1 1", "5:1 3:1 1:1 | 1:3", 2),
    ),
)

TWO_COLUMNS = Score(
    title="Two Columns and a Rose",
    by="Los Contables de la Luna",
    sheet="ledger-line-cha.txt",
    style="cha cha",
    bpm=116,
    beats_per_bar=4,
    key=60,
    order=("intro", "verse", "chorus", "verse", "chorus", "chorus", "ending"),
    sections=(
        Section(
            "intro",
            "6m 6m 3 6m 2m 6m 3 6m",
            "-:4 | -:4 | -:4 | -:4 | 4':1 2':1 6:2 | 3':1 1':1 6:2 | 7:1 7:.5 6:.5 7:1 2':1 | 6:3 -:1",
            2,
        ),
        Section(
            "verse",
            "6m 6m 3 6m 2m 6m 3 6m",
            "-:.5 3:.5 6:1 7:.5 1':.5 7:1 | 6:2 3:1 -:1 | -:.5 7:.5 7:1 7:.5 6:.5 7:1 | 1':2 6:1 -:1"
            "| -:.5 1':.5 2':1 1':.5 6:.5 4:1 | 3:2 1':1 6:1 | 7:1 7:.5 6:.5 7:1 2':1 | 6:3 -:1",
            1,
        ),
        Section(
            "chorus",
            "4 5 1 6m 4 3 6m 6m",
            "1':1.5 1':.5 6:1 4:1 | 2':1.5 2':.5 7:1 5:1 | 3':1 1':1 5:2 | 6:1 7:1 1':2"
            "| 1':1.5 1':.5 6:1 4:1 | 7:1 7:1 3:2 | 6:3 3:.5 3:.5 | 6:2 -:2",
            3,
        ),
        Section("ending", "3 6m", "7:1 2':1 7:1 3:1 | 6:4", 2),
    ),
)

SCORES = (PEG_AND_RAIL, LAMPLIGHT, TWO_COLUMNS)

_KIT: dict[str, Callable[[], Sound]] = {
    "kick": instruments.kick,
    "snare": instruments.snare,
    "brush": instruments.brush,
    "hat": instruments.hat,
    "open hat": lambda: instruments.hat(0.3),
    "crash": instruments.crash,
    "high tom": lambda: instruments.tom(165.0),
    "low tom": lambda: instruments.tom(110.0),
    "block": instruments.block,
    "long scrape": lambda: instruments.scraper(0.22),
    "short scrape": lambda: instruments.scraper(0.09),
}
_PAN = {"hat": 0.3, "open hat": 0.3, "crash": -0.3, "high tom": 0.25, "low tom": -0.25, "block": 0.35}


@dataclass(frozen=True)
class Song:
    """A song played: stereo samples, shape (n, 2), at `RATE`."""

    score: Score
    samples: npt.NDArray[np.float32]


def beat_sec(score: Score, beat: float) -> float:
    """When beat `beat` (from 0) sounds, in seconds of the file."""
    return _LEAD_IN_SEC + beat * 60 / score.bpm


def truth_of(score: Score) -> dict[str, Any]:
    """The true beats and phrases, with the keys that `wallwise song --json` uses for what it hears."""
    played = [
        (section, beat, len(section.chords.split()) * score.beats_per_bar) for section, beat in score.played()
    ]
    beats = played[-1][1] + played[-1][2]
    return {
        "title": score.title,
        "by": score.by,
        "sheet": score.sheet,
        "bpm": float(score.bpm),
        "beats_per_bar": score.beats_per_bar,
        "length_sec": round(beat_sec(score, beats) + _TAIL_SEC, 6),
        "beats": [round(beat_sec(score, beat), 6) for beat in range(beats)],
        "first_count_sec": round(beat_sec(score, played[score.intro][1]), 6),
        "phrases": [
            {"name": section.name, "starts_sec": round(beat_sec(score, beat), 6), "counts": counts}
            for section, beat, counts in played
        ],
    }


def play(score: Score) -> Song:
    """The song of a score.  The same score gives the same samples; it takes about a second."""
    stage = _Stage(score)
    for section, beat in score.played():
        _play_section(stage, section, beat)
    return Song(score, stage.mixed())


class _Stage:
    """Where the sounds of a song are added up: left, right, and what goes to the room's echo."""

    def __init__(self, score: Score) -> None:
        self.score = score
        self._dry = np.zeros((round(truth_of(score)["length_sec"] * RATE), 2))
        self._wet = np.zeros(len(self._dry))
        self._loose = np.random.default_rng(zlib.crc32(score.title.encode()))

    def add(self, sound: Sound, beat: float, *, gain: float, pan: float = 0.0, echo: float = 0.15) -> None:
        """Add a sound on a beat of the song; the second halves of beats come late where it swings.

        `pan` is from -1, left, to 1, right; `echo` how much of it the room gives back.
        """
        whole, half = divmod(beat, 1.0)
        swing = self.score.swing
        late = half * 2 * swing if half < 0.5 else swing + (half - 0.5) * 2 * (1 - swing)
        first = round(beat_sec(self.score, whole + late) * RATE)
        end = min(first + len(sound), len(self._dry))
        heard = gain * sound[: end - first]
        angle = (pan + 1) * np.pi / 4
        self._dry[first:end, 0] += np.cos(angle) * heard
        self._dry[first:end, 1] += np.sin(angle) * heard
        self._wet[first:end] += echo * heard

    def play(self, sound: Sound, beat: float, *, gain: float, pan: float = 0.0) -> None:
        """Like `add`, for a player who is a few milliseconds behind the kit."""
        late_beats = self._loose.uniform(0, _LOOSE_SEC) * self.score.bpm / 60
        self.add(sound, beat + late_beats, gain=gain, pan=pan, echo=0.3)

    def mixed(self) -> npt.NDArray[np.float32]:
        """Everything together in a small room, its peak 1 dB below full scale."""
        mix = self._dry + np.column_stack([_echo(self._wet, seed=seed) for seed in (21, 22)])
        return np.asarray(mix * (_PEAK / np.max(np.abs(mix))), np.float32)


def _echo(sound: npt.NDArray[np.float64], *, seed: int) -> npt.NDArray[np.float64]:
    """A small room's answer: noise that dies away, and nothing before 12 ms, so that beats stay sharp."""
    size = round(0.9 * RATE)
    answer = np.random.default_rng(seed).standard_normal(size) * np.exp(-np.arange(size) / RATE * 6.5)
    answer = np.convolve(answer, np.ones(6) / 6, mode="same")  # plaster swallows the treble
    answer[: round(0.012 * RATE)] = 0
    answer *= 0.5 / np.sqrt(np.sum(answer**2))
    fast = 1 << (len(sound) + size).bit_length()
    return np.fft.irfft(np.fft.rfft(sound, fast) * np.fft.rfft(answer, fast), fast)[: len(sound)]


def _play_section(stage: _Stage, section: Section, first: int) -> None:
    score = stage.score
    style = STYLES[score.style]
    chords = section.chords.split()
    if first and section.fullness:
        stage.add(_KIT["crash"](), first, gain=0.1 + 0.04 * section.fullness, pan=_PAN["crash"])
    for number, name in enumerate(chords):
        bar = first + number * score.beats_per_bar
        last = number == len(chords) - 1
        pitches = chord_of(name, key=score.key)
        if last and section.name == "ending":
            _hold(stage, pitches, bar)
        else:
            _play_kit(stage, style, section, bar, fill=last)
            _play_chord(stage, style, section, pitches, bar)
    for note in tune_of(section, key=score.key, beats_per_bar=score.beats_per_bar):
        seconds = note.beats * 60 / score.bpm * 0.95
        stage.play(instruments.whistle(_hz(note.pitch), seconds), first + note.starts_beat, gain=0.2)


def _play_kit(stage: _Stage, style: Style, section: Section, bar: int, *, fill: bool) -> None:
    filled_from = min((stroke.beat for stroke in style.fill), default=9.0) if fill else 9.0
    strokes = [s for s in style.kit if s.least <= section.fullness and s.beat < filled_from]
    for stroke in (*strokes, *(style.fill if fill and section.fullness else ())):
        _strike(stage, stroke, bar)


def _strike(stage: _Stage, stroke: Stroke, bar: int) -> None:
    pan = _PAN.get(stroke.instrument, 0.0)
    stage.add(_KIT[stroke.instrument](), bar + stroke.beat, gain=stroke.gain, pan=pan)


def _play_chord(
    stage: _Stage, style: Style, section: Section, pitches: tuple[int, int, int], bar: int
) -> None:
    beat_sec = 60 / stage.score.bpm
    bar_sec = stage.score.beats_per_bar * beat_sec
    for tone in style.bass:
        sound = instruments.bass(_hz(pitches[tone.step] - 24), tone.beats * beat_sec)
        stage.add(sound, bar + tone.beat, gain=0.42, echo=0.05)
    for tone in style.chords:
        for place, pitch in enumerate(pitches):
            sound = instruments.string(_hz(_near(pitch, stage.score.key - 5)), tone.beats * beat_sec + 0.12)
            stage.play(sound, bar + tone.beat, gain=0.13 * tone.gain, pan=-0.45 + 0.1 * place)
    if section.fullness >= 3:
        for pitch in pitches:
            sound = instruments.organ(_hz(_near(pitch, stage.score.key - 5)), bar_sec)
            stage.play(sound, bar, gain=0.045, pan=0.5)
    if section.fullness >= 2:
        for place, pitch in enumerate(pitches):
            sound = instruments.keys(_hz(_near(pitch, stage.score.key + 7)), beat_sec)
            stage.play(sound, bar + 0.5 * place, gain=0.06, pan=0.4)


def _hold(stage: _Stage, pitches: tuple[int, int, int], bar: int) -> None:
    """The last chord, left to ring."""
    seconds = stage.score.beats_per_bar * 60 / stage.score.bpm
    stage.add(_KIT["kick"](), bar, gain=0.8)
    stage.add(_KIT["crash"](), bar, gain=0.13, pan=_PAN["crash"])
    stage.add(instruments.bass(_hz(pitches[0] - 24), seconds), bar, gain=0.45, echo=0.05)
    for place, pitch in enumerate(pitches):
        sound = instruments.string(_hz(pitch - 12), seconds + 1.0, damping=0.5)
        stage.play(sound, bar, gain=0.18, pan=-0.4 + 0.3 * place)


def _near(pitch: int, centre: int) -> int:
    """The same note of the scale within half an octave of `centre`: chords move by small steps."""
    return centre + (pitch - centre + 5) % 12 - 5


def _hz(pitch: int) -> float:
    return float(440.0 * 2 ** ((pitch - 69) / 12))
