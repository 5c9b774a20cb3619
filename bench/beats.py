"""How well beats, eights and phrases of songs are found, and how fast.

    python bench/beats.py [--seed N ...] [--tuned] [--jobs N] [--songs]

Prints a Markdown table with the machine it was measured on.  The songs are rendered by the
generator of the tests, one of each rhythm a seed, a good third of them with a tempo that moves.
The seeds reported on by default were never heard while anything was tuned; `--tuned` takes those
that were (the figures are then better than they should be).

* told: the tempo, wrong by up to 6 % (drawn from the song's name), and the metre.
* tap: also one tap on the "1" of an eight, 40 ms late.
* F: beats within 70 ms; CMLt, AMLt: continuity; all three by mir_eval, on whole songs.
* tempo 1, 2: the median tempo within 4 %; and, for 2, also its half, double, third or three halves.
* bars, eights: F of the first beats of bars and of eights.  eights right: songs with F above 0.9.
* phrases: recall and precision of inner boundaries, within one beat.
* bias: the median of estimate minus truth over matched beats, averaged over songs.
* speed: processor time for a second of sound, of which nothing is spent on decoding.

The yardstick is librosa on the same samples: its tempo with the hint as `start_bpm` (and a narrow
`std_bpm`), then its beat tracker at that tempo.  It tells no bars, eights or phrases.
"""

from __future__ import annotations

import argparse
import os
import platform
import sys
import tempfile
import time
import warnings
import zlib
from collections.abc import Callable
from concurrent.futures import ProcessPoolExecutor
from dataclasses import replace
from pathlib import Path
from typing import Any

import mir_eval
import numpy as np

sys.path.insert(0, str(Path(__file__).resolve().parent.parent))

from tests.song.rhythms import RHYTHMS
from tests.song.tunes import MOVES, Tune, compose

from wallwise.song.analyse import analyse
from wallwise.song.corrections import NONE, Corrections
from wallwise.song.grid import BeatGrid
from wallwise.song.sound import Sound, read_mono

TUNED_SEEDS = (1, 2, 3, 4, 5, 6)
HELD_OUT_SEEDS = (105, 106)
WINDOW_SEC = 0.07
RIGHT = 0.9

Measured = dict[str, float]
Heard = dict[str, Any]


def hint_of(tune: Tune) -> float:
    """The tempo of the song as a teacher would remember it: up to 6 % off."""
    dice = np.random.default_rng(zlib.crc32(tune.name.encode()))
    return float(tune.bpm * (1 + dice.uniform(-0.06, 0.06)))


def tap_of(tune: Tune) -> float:
    """A tap on the "1" of an eight a quarter into the song, 40 ms late."""
    return float(tune.beats_sec[tune.eights[len(tune.eights) // 4]] + 0.04)


def told(tune: Tune) -> Heard:
    """Ours, with tempo and metre; then with a tap."""
    words = Corrections(bpm=hint_of(tune), beats_per_bar=tune.beats_per_bar)
    found = untold(tune, words)
    grid = analyse(_sound(tune), replace(words, ones_sec=(tap_of(tune),))).grid
    return found | {"tapped": [grid.beat_to_sec(beat) for beat in grid.eights()]}


def untold(tune: Tune, words: Corrections = NONE) -> Heard:
    """Ours."""
    start = time.process_time()
    grid = analyse(_sound(tune), words).grid
    took = time.process_time() - start
    return {
        "beats": [grid.beat_to_sec(beat) for beat in range(grid.last_beat + 1)],
        "bars": [grid.beat_to_sec(beat) for beat in _bars(grid)],
        "eights": [grid.beat_to_sec(beat) for beat in grid.eights()],
        "phrases": [grid.beat_to_sec(phrase.starts_beat) for phrase in grid.phrases],
        "steady": grid.steady,
        "took": took,
    }


def _bars(grid: BeatGrid) -> list[int]:
    starts = [phrase.starts_beat for phrase in grid.phrases]
    ends = [*starts[1:], grid.last_beat + 1]
    return [
        beat
        for start, end in zip(starts, ends, strict=True)
        for beat in range(start, end, grid.beats_per_bar)
    ]


def yardstick_told(tune: Tune) -> Heard:
    """The yardstick, with the hint."""
    return _yardstick(tune, {"start_bpm": hint_of(tune), "std_bpm": 0.1})


def yardstick(tune: Tune) -> Heard:
    """The yardstick."""
    return _yardstick(tune, {})


def _yardstick(tune: Tune, known: dict[str, float]) -> Heard:
    import librosa

    start = time.process_time()
    onsets = librosa.onset.onset_strength(y=tune.samples, sr=tune.rate_hz)
    tempo = float(librosa.feature.tempo(onset_envelope=onsets, sr=tune.rate_hz, **known)[0])
    _, beats = librosa.beat.beat_track(onset_envelope=onsets, sr=tune.rate_hz, bpm=tempo, units="time")
    return {"beats": list(beats), "took": time.process_time() - start}


def _sound(tune: Tune) -> Sound:
    return Sound(tune.samples, tune.rate_hz)


WAYS: dict[str, Callable[[Tune], Heard]] = {
    "told": told,
    "told nothing": untold,
    "librosa, told": yardstick_told,
    "librosa": yardstick,
}


def measure(place: tuple[str, int, str]) -> list[tuple[str, str, bool, Measured]]:
    """Every way on one song: (way, song, steady, figures)."""
    warnings.filterwarnings("ignore")
    name, seed, moves = place
    tune = compose(name, seed=seed, moves=moves)
    return [(way, tune.name, tune.steady, figures(tune, listen(tune))) for way, listen in WAYS.items()]


def figures(tune: Tune, heard: Heard) -> Measured:
    """What is right in what was heard."""
    truth = tune.beats_sec
    beats = _inside(heard["beats"], truth)
    bpm = 60 / np.median(np.diff(beats)) if len(beats) > 2 else 0.0
    true_bpm = 60 / np.median(np.diff(truth))
    late = (
        np.array([beats[np.abs(beats - beat).argmin()] - beat for beat in truth])
        if len(beats)
        else np.ones(1)
    )
    matched = late[np.abs(late) <= WINDOW_SEC]
    _, cmlt, _, amlt = mir_eval.beat.continuity(truth, beats)
    found: Measured = {
        "F": f_measure(truth, beats),
        "CMLt": cmlt,
        "AMLt": amlt,
        "tempo 1": float(abs(bpm / true_bpm - 1) < 0.04),
        "tempo 2": float(any(abs(bpm / true_bpm / k - 1) < 0.04 for k in (1, 2, 0.5, 3, 1 / 3, 1.5, 2 / 3))),
        "bias ms": float(1000 * np.median(matched)) if len(matched) else np.nan,
        "speed": heard["took"] * tune.rate_hz / len(tune.samples),
    }
    if "bars" in heard:
        found["bars"] = f_measure(truth[list(tune.bars)], heard["bars"])
        found["eights"] = f_measure(truth[list(tune.eights)], heard["eights"])
        found["eights right"] = float(found["eights"] > RIGHT)
        found["steady told"] = float(heard["steady"] == tune.steady)
        found |= _phrases(tune, heard["phrases"])
    if "tapped" in heard:
        found["eights, tap"] = f_measure(truth[list(tune.eights)], heard["tapped"])
        found["right, tap"] = float(found["eights, tap"] > RIGHT)
    return found


def f_measure(truth: Any, found: Any) -> float:
    """F within 70 ms."""
    truth = np.asarray(truth, float)
    return float(mir_eval.beat.f_measure(truth, _inside(found, truth), f_measure_threshold=WINDOW_SEC))


def _inside(found: Any, truth: Any) -> Any:
    """What was found while the song plays: its reverberation has no true beats."""
    found = np.asarray(found, float)
    return found[(found > truth[0] - 0.5) & (found < truth[-1] + 0.5)]


def _phrases(tune: Tune, found: list[float]) -> Measured:
    beat_sec = 60 / tune.bpm
    truth = tune.beats_sec[list(tune.sections[1:])]
    inner = np.array(
        [s for s in found if tune.beats_sec[0] + 2 * beat_sec < s < tune.beats_sec[-1] - beat_sec]
    )
    near = 1.05 * beat_sec
    return {
        "phrases": len(truth),
        "phrases found": sum(len(inner) > 0 and np.abs(inner - start).min() <= near for start in truth),
        "cuts": len(inner),
        "cuts right": sum(np.abs(truth - start).min() <= near for start in inner),
    }


def pooled(rows: list[Measured]) -> Measured:
    """The mean of each figure over the songs; of phrases recall and precision over all of them."""
    names = dict.fromkeys(name for row in rows for name in row)
    means = {name: float(np.nanmean([row[name] for row in rows if name in row])) for name in names}
    if "cuts" in means:
        means["phrases recall"] = means.pop("phrases found") / means.pop("phrases")
        means["precision"] = means.pop("cuts right") / max(1e-9, means.pop("cuts"))
    return means


COLUMNS = (
    "F", "CMLt", "AMLt", "tempo 1", "tempo 2", "bias ms", "bars", "eights", "eights right", "eights, tap",
    "right, tap", "phrases recall", "precision", "steady told", "speed",
)  # fmt: skip


def table(rows: list[tuple[str, str, bool, Measured]]) -> str:
    """The table, as Markdown."""
    lines = [f"| way | tempo | songs | {' | '.join(COLUMNS)} |", "|---" * (len(COLUMNS) + 3) + "|"]
    for way in WAYS:
        for name, wanted in (("all", (True, False)), ("constant", (True,)), ("moving", (False,))):
            chosen = [row for which, _, steady, row in rows if which == way and steady in wanted]
            means = pooled(chosen)
            cells = [_cell(column, means) for column in COLUMNS]
            lines.append(f"| {way} | {name} | {len(chosen)} | {' | '.join(cells)} |")
    return "\n".join(lines)


def _cell(column: str, means: Measured) -> str:
    if column not in means:
        return "–"
    return f"{means[column]:.1f}" if column == "bias ms" else f"{means[column]:.3f}"


def whole_song() -> str:
    """How long three and a half minutes of mp3 take, decoded and analysed."""
    import soundfile

    tune = compose("rock", seed=HELD_OUT_SEEDS[0], about_sec=215)
    with tempfile.TemporaryDirectory() as room:
        path = Path(room) / "song.mp3"
        samples = tune.samples[: 210 * tune.rate_hz]
        both = np.repeat(np.repeat(samples, 2)[:, None], 2, axis=1)
        soundfile.write(path, both, 2 * tune.rate_hz, format="MP3")
        start, start_cpu = time.perf_counter(), time.process_time()
        sound = read_mono(path)
        decoded = time.perf_counter()
        analyse(sound)
        end, cpu = time.perf_counter(), time.process_time() - start_cpu
    length, took = sound.length_sec, end - start
    return (
        f"A song of {length:.0f} s as mp3, 44.1 kHz stereo: {took:.1f} s, {decoded - start:.1f} s of them "
        f"decoding ({cpu:.1f} s of processor; {took / length:.4f} of real time)."
    )


def main() -> None:
    """Measure and print."""
    parser = argparse.ArgumentParser(description=(__doc__ or "").split("\n", 1)[0])
    parser.add_argument("--seed", type=int, nargs="*", default=list(HELD_OUT_SEEDS))
    parser.add_argument("--tuned", action="store_true", help="the songs that were tuned on")
    parser.add_argument("--jobs", type=int, default=os.cpu_count())
    parser.add_argument("--songs", action="store_true", help="also a line for every song")
    arguments = parser.parse_args()
    seeds = TUNED_SEEDS if arguments.tuned else arguments.seed
    places = [
        (rhythm.name, seed, MOVES[(number + seed) % len(MOVES)])
        for seed in seeds
        for number, rhythm in enumerate(RHYTHMS)
    ]
    with ProcessPoolExecutor(arguments.jobs) as pool:
        rows = [row for rows in pool.map(measure, places) for row in rows]
    print(
        f"{platform.machine()}, {os.cpu_count()} cores, Python {platform.python_version()}; seeds {seeds}\n"
    )
    print(table(rows))
    print(f"\n{whole_song()}")
    if arguments.songs:
        for way, name, _, row in rows:
            print(f"{way:14} {name:24} " + "  ".join(f"{key} {value:.3f}" for key, value in row.items()))


if __name__ == "__main__":
    main()
