"""Invented songs with their true beats, bars and sections.

    tune = compose("waltz", seed=3)
    tune.samples, tune.beats_sec, tune.sections

A seed decides tempo, key, instruments, form, looseness and how the tempo moves.  `make_set`
gives one song of every rhythm; a set is named by its seed, so that one may be tuned on and
another be kept unheard.
"""

from __future__ import annotations

import zlib
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray
from tests.song.band import RATE_HZ, VOICES, Mix, drum, note
from tests.song.rhythms import RHYTHMS, Rhythm, Strokes

_ROOTS = {"C": 0, "D": 2, "E": 4, "F": 5, "G": 7, "A": 9, "B": 11}
_KINDS = {"": (0, 4, 7), "m": (0, 3, 7), "7": (0, 4, 7, 10), "m7": (0, 3, 7, 10)}
_DRUM_LOUD = {"kick": 1.0, "boom": 1.0, "snare": 0.55, "clap": 0.5, "crash": 0.45}
_SWELL_SEC = 0.012  # players of swelling sounds begin a little early
LEVEL = 0.30  # of a drum without a level of its own


@dataclass(frozen=True)
class Tune:
    """A song and the truth about it; seconds from the first sample, beats from 0."""

    name: str
    samples: NDArray[np.float32]
    rate_hz: int
    beats_sec: NDArray[np.float64]
    bars: tuple[int, ...]  # the beats that begin a bar
    sections: tuple[int, ...]  # the beats that begin a section
    labels: tuple[str, ...]
    eights: tuple[int, ...]  # the beats that begin an eight (a six in threes)
    beats_per_bar: int
    bpm: float
    moves: str  # how the tempo moves: "" is not at all

    @property
    def steady(self) -> bool:
        """Whether it is played to a click."""
        return not self.moves


class _Player:
    def __init__(self, rhythm: Rhythm, seed: int, moves: str) -> None:
        self.dice = np.random.default_rng([seed, zlib.crc32(rhythm.name.encode())])
        self.rhythm = rhythm
        dice = self.dice
        self.bpm = float(dice.uniform(*rhythm.bpm))
        self.swing = float(dice.uniform(*rhythm.swing))
        self.key = int(dice.integers(-5, 7))
        self.loose_sec = float(dice.uniform(0.002, 0.006) if not moves else dice.uniform(0.004, 0.010))
        self.bass, self.comp = dice.choice(rhythm.basses), dice.choice(rhythm.comps)
        self.leads = [str(name) for name in dice.permutation(rhythm.leads)]
        self.pad = bool(dice.random() < 0.5)
        self.crashes = float(dice.choice([0.3, 0.7, 1.0]))
        self.fills = rhythm.fills and dice.random() < 0.8
        self.lead_in_sec = float(dice.choice([0.0, 0.35, 1.2]))
        self.events: list[tuple[NDArray[np.float64], float, float, float]] = []  # wave, beat, late, loud
        self.chords = {
            part: str(dice.choice(rhythm.progressions)).split() for part in ("verse", "chorus", "bridge")
        }
        if len(rhythm.progressions) > 1:
            while self.chords["chorus"] == self.chords["verse"]:
                self.chords["chorus"] = str(dice.choice(rhythm.progressions)).split()

    def swung(self, beat: float) -> float:
        whole, part = divmod(beat, 1)
        swing = self.swing
        return whole + (part * 2 * swing if part < 0.5 else swing + (part - 0.5) * 2 * (1 - swing))

    def hit(self, wave: NDArray[np.float64], beat: float, loud: float, late_sec: float = 0.0) -> None:
        loose = self.dice.normal(0, self.loose_sec)
        self.events.append((wave, beat, loose + late_sec, loud * self.dice.uniform(0.85, 1.1)))

    def drums(self, bar: float, strokes: Strokes) -> None:
        for name, places in strokes.items():
            for beat, loud in places:
                self.hit(drum(name), bar + self.swung(beat), loud * _DRUM_LOUD.get(name, LEVEL))

    def tones(self, symbol: str) -> list[int]:
        root = (_ROOTS[symbol[0]] + self.key) % 12
        return [root + step for step in _KINDS[symbol[1:]]]

    def play(self, voice: str, pitch: int, beat: float, beats: float, loud: float) -> None:
        hundredths = max(5, round(beats * 60 / self.bpm * 20) * 5)  # rounded, so that waves are shared
        early = -_SWELL_SEC if VOICES[voice].attack > 0.02 else 0.0
        self.hit(note(voice, pitch, hundredths), beat, loud, early)

    def accompany(self, bar: float, symbol: str, *, loud: float = 1.0) -> None:
        tones = self.tones(symbol)
        root = 33 + (tones[0] - 33) % 12
        steps = {"r": 0, "3": tones[1] - tones[0], "5": 7, "6": 9, "8": 12}
        for beat, degree, beats in self.rhythm.bass:
            self.play(self.bass, root + steps[degree], bar + self.swung(beat), beats, 0.5 * loud)
        for beat, beats in self.rhythm.chords:
            for strum, tone in enumerate(tones):
                pitch = 55 + (tone - 55) % 12
                self.play(self.comp, pitch, bar + self.swung(beat) + 0.01 * strum, beats, 0.13 * loud)

    def hold(self, bar: float, symbol: str) -> None:
        for tone in self.tones(symbol):
            self.play("strings", 60 + tone % 12, bar, self.rhythm.beats_per_bar, 0.10)

    def sing(self, bar: float, symbol: str, lead: str, motif: str) -> None:
        """A melody that comes back: `motif` names it.  Singers anticipate and are a little late."""
        dice = np.random.default_rng(zlib.crc32(f"{self.key}/{self.bpm:.3f}/{motif}".encode()))
        tones, step = self.tones(symbol), self.rhythm.melody_step
        beat = 0.0
        while beat < self.rhythm.beats_per_bar - 1e-6:
            if dice.random() > 0.6:
                beat += step
                continue
            held = float(dice.choice([step, 2 * step, 3 * step]))
            early = step if dice.random() < 0.35 and beat >= step else 0.0
            pitch = 65 + (int(dice.choice(tones)) - 65) % 12
            left = self.rhythm.beats_per_bar - beat
            self.play(lead, pitch, bar + self.swung(beat - early), min(held, left), 0.28)
            beat += held

    def fill(self, bar: float) -> None:
        beats = self.rhythm.beats_per_bar
        half = beats / 2
        places = [(half + i / 4, 0.6 + 0.1 * i) for i in range(int(4 * (beats - half)))]
        self.drums(bar, {"kick": [(0, 1)], "snare": [(0, 0.5), *places[::2]], "low tom": places[1::2]})


def compose(name: str, *, seed: int, moves: str = "", about_sec: float = 80) -> Tune:
    """The song of the rhythm `name` that `seed` decides, about `about_sec` long.

    `moves` is "" (a click), "waves", "wanders" (a live band) or "changes" (once, by some 5 %).
    """
    rhythm = next(rhythm for rhythm in RHYTHMS if rhythm.name == name)
    player = _Player(rhythm, seed, moves)
    form = _form(player, about_sec)
    beat, bars, sections = 0, [], []
    for part, count, beats in form:
        sections.append(beat)
        for number in range(count):
            bars.append(beat)
            _bar(player, part, number, count, float(beat))
            beat += beats
    seconds = _clock(player, moves, beat)
    samples = _record(player, seconds, beat)
    starts = [(start, end) for start, end in zip(sections, [*sections[1:], beat], strict=True)]
    eight = 6 if rhythm.beats_per_bar == 3 else 8
    return Tune(
        f"{name} {seed}{' ' + moves if moves else ''}",
        samples,
        RATE_HZ,
        np.array([seconds(place) for place in range(beat)]),
        tuple(bars),
        tuple(sections),
        tuple(part for part, _, _ in form),
        tuple(place for start, end in starts for place in range(start, end, eight)),
        rhythm.beats_per_bar,
        player.bpm,
        moves,
    )


def _form(player: _Player, about_sec: float) -> list[tuple[str, int, int]]:
    """Sections as (part, bars, beats a bar)."""
    dice, beats = player.dice, player.rhythm.beats_per_bar
    bar_sec = beats * 60 / player.bpm
    usual = min((4, 8, 16), key=lambda bars: abs(bars * bar_sec - 15))
    form = [("intro" if dice.random() < 0.75 else "quiet", int(dice.choice([usual // 2, usual])), beats)]
    body = [("verse", usual, beats), ("chorus", usual, beats)] * 2
    extras: list[tuple[str, int, int]] = []
    if dice.random() < 0.3:
        extras.append(("bridge" if dice.random() < 0.5 else "quiet", usual, beats))
    if dice.random() < 0.4:
        extras.append(("verse", usual // 2, beats))  # the short phrase that forces a restart
    if beats == 4 and dice.random() < 0.15:
        extras.append(("break", 1, 2))
    for extra in extras:
        body.insert(int(dice.integers(1, len(body))), extra)
    while sum(bars * per for _, bars, per in form + body) * 60 / player.bpm < about_sec - 12:
        body.append(("chorus" if body[-1][0] != "chorus" or dice.random() < 0.3 else "verse", usual, beats))
    return form + body


def _bar(player: _Player, part: str, number: int, count: int, bar: float) -> None:
    rhythm = player.rhythm
    if part == "break":  # one stroke, then silence
        player.drums(bar, {"kick": [(0, 1.0)], "crash": [(0, 0.8)]})
        return
    kind = {"intro": "verse", "quiet": "verse"}.get(part, part)
    symbol = player.chords[kind][number % len(player.chords[kind])]
    if part == "quiet":
        player.hold(bar, symbol)
        player.accompany(bar, symbol, loud=0.5)
        return
    if number == 0 and player.dice.random() < player.crashes:
        player.drums(bar, {"crash": [(0, 1.0)]})
    if player.fills and number == count - 1:
        player.fill(bar)
    else:
        player.drums(bar, rhythm.full if part in ("chorus", "bridge") else rhythm.plain)
    player.accompany(bar, symbol)
    if part == "chorus" and player.pad:
        player.hold(bar, symbol)
    if part != "intro":
        lead = player.leads[0 if part == "verse" else 1 % len(player.leads)]
        player.sing(bar, symbol, lead, f"{part}/{number % 4}/{symbol}")


def _clock(player: _Player, moves: str, beats: int) -> Callable[[float], float]:
    """From beats to seconds."""
    dice, per_beat = player.dice, 8
    grid = np.arange((beats + 8) * per_beat + 1) / per_beat
    factor = np.ones(len(grid))
    if moves == "waves":
        factor += dice.uniform(0.012, 0.025) * np.sin(
            2 * np.pi * grid / dice.uniform(48, 110) + dice.uniform(0, 6)
        )
    elif moves == "wanders":
        knots = np.cumsum(dice.normal(0, 0.005, beats // 2 + 8))
        knots -= np.linspace(0, knots[-1], len(knots)) * 0.6 + knots.mean() * 0.5
        factor += np.interp(grid, np.arange(len(knots)) * 2, knots)
    elif moves == "changes":
        factor[grid >= beats * dice.uniform(0.35, 0.65)] *= 1 + dice.choice([-1, 1]) * dice.uniform(
            0.03, 0.07
        )
    steps = 60 / (player.bpm * factor[:-1]) / per_beat
    clock = player.lead_in_sec + np.concatenate([[0.0], np.cumsum(steps)])
    return lambda beat: float(np.interp(beat, grid, clock))


def _record(player: _Player, seconds: Callable[[float], float], beats: int) -> NDArray[np.float32]:
    mix = Mix(seconds(beats) + 1.5)
    for wave, beat, late_sec, loud in player.events:
        mix.add(wave, seconds(beat) + late_sec, loud)
    dice = player.dice
    return mix.finish(
        room=float(dice.uniform(0.1, 0.5)),
        drive=float(dice.uniform(1.0, 2.2)),
        hiss=float(dice.choice([0.0005, 0.004])),
    )


MOVES = ("", "", "waves", "", "wanders", "", "", "changes", "", "wanders")


def make_set(seed: int, *, about_sec: float = 80) -> Iterator[Tune]:
    """One song of every rhythm, a good third of them with a tempo that moves."""
    for place, rhythm in enumerate(RHYTHMS):
        yield compose(rhythm.name, seed=seed, moves=MOVES[(place + seed) % len(MOVES)], about_sec=about_sec)


def truth_json(tune: Tune) -> dict[str, Any]:
    """What is true of the song, to be written beside it."""
    return {
        "beats": [round(float(beat), 4) for beat in tune.beats_sec],
        "beats_per_bar": tune.beats_per_bar,
        "bars": list(tune.bars),
        "sections": [
            {"beat": b, "label": label} for b, label in zip(tune.sections, tune.labels, strict=True)
        ],
        "eights": list(tune.eights),
    }
