"""What a practice track keeps of its promises, measured on what is written.

    python -m bench.practice            all of it, some minutes
    python -m bench.practice --quick    two sheets and one tempo

Beats: clicks of a steady and a drifting song, slowed, against the grid of the track.  Words: every
demo sheet with the voice of the extra, at the sheet's tempo and at three quarters of it; where a
word ends is heard in the speech alone, read back from a file.  Peaks: tracks over a demo song,
written and decoded again.  Time: a song of three and a half minutes from file to file.
"""

from __future__ import annotations

import sys
import tempfile
import time
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path
from statistics import mean, median, pstdev

import numpy as np

from wallwise.demo.score import Score
from wallwise.demo.songs import PEG_AND_RAIL, play, truth_of
from wallwise.desk.demo import demo_sheets
from wallwise.desk.practice import Practice, PracticeAsked, caller_of, make_practice
from wallwise.desk.report import check_text
from wallwise.give.lead import Lead
from wallwise.give.mixing import Placed, song_gain
from wallwise.give.practice import Track, practice_track, silent_grid, slowed
from wallwise.give.syllables import syllables
from wallwise.give.voice import RATE_HZ, Spoken
from wallwise.song.grid import BeatGrid
from wallwise.song.loudness import loudness_lufs, true_peak
from wallwise.song.sound import FORMATS, Label, Sound, encoded, read_mono, read_stereo
from wallwise.song.stretch import stretched

_SILENT_DB = -38


def main(arguments: list[str]) -> None:
    """Print every measurement."""
    quick = "--quick" in arguments
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        _beats((0.75,) if quick else (0.5, 0.6, 0.75, 0.85, 0.9, 1.0, 1.1))
        _words(folder, quick=quick)
        _peaks(folder, quick=quick)
        _speed(folder)


def _beats(tempos: tuple[float, ...]) -> None:
    """Where the clicks of a slowed song are heard, against its grid."""
    drifting = _drifting()
    for tempo in tempos:
        errors_ms = []
        for grid in (BeatGrid.steady_at(123.4, length_sec=60, first_sec=0.4), drifting):
            slow, heard = slowed(grid, tempo), stretched(_clicks(grid), tempo)
            beats = [slow.beat_to_sec(beat) for beat in range(1, grid.last_beat)]
            errors_ms += [1000 * (_loudest_sec(heard, sec) - sec) for sec in beats]
        print(
            f"beats at {tempo:4.0%}: {len(errors_ms)} clicks, off by {mean(errors_ms):+.2f} ms on average, "
            f"spread {pstdev(errors_ms):.2f} ms, at most {max(map(abs, errors_ms)):.2f} ms"
        )


def _drifting() -> BeatGrid:
    """A song whose tempo wanders between 100 and 112."""
    bpm = 106 + 6 * np.sin(np.arange(100) / 9)
    seconds = 0.5 + np.concatenate([[0], np.cumsum(60 / bpm)])
    anchors = tuple((float(beat), float(sec)) for beat, sec in enumerate(seconds))
    steady = BeatGrid.steady_at(106, length_sec=float(seconds[-1]) + 1)
    return replace(steady, anchors=anchors, last_beat=100, steady=False)


def _clicks(grid: BeatGrid) -> Sound:
    samples = np.zeros((round(grid.length_sec * RATE_HZ) + RATE_HZ, 2), np.float32)
    at = np.arange(300) / RATE_HZ
    click = (np.exp(-at * 600) * np.sin(2 * np.pi * 3000 * at)).astype(np.float32)
    for beat in range(grid.last_beat + 1):
        first = round(grid.beat_to_sec(beat) * RATE_HZ)
        samples[first : first + 300] += click[:, np.newaxis]
    return Sound(samples, RATE_HZ)


def _loudest_sec(sound: Sound, near_sec: float) -> float:
    """The middle of the loudest 2 ms within 80 ms, less where it lies in a click as it was made (0.6 ms)."""
    first = round((near_sec - 0.08) * RATE_HZ)
    power = np.square(sound.samples[first : first + round(0.16 * RATE_HZ), 0])
    width = RATE_HZ // 500
    energy = np.convolve(power, np.ones(width), mode="valid")
    return near_sec - 0.08 + (int(np.argmax(energy)) + width / 2) / RATE_HZ - 0.001


def _words(folder: Path, *, quick: bool) -> None:
    voice = Spoken()
    ahead_ms: list[float] = []
    rates: list[float] = []
    total = left_out = 0
    for name, content in demo_sheets()[: 2 if quick else None]:
        report = check_text(content.decode(), name=name)
        bpm = float(report.dance.bpm or (90 if report.dance.beats_per_bar == 3 else 110))
        for tempo in (0.75,) if quick else (1.0, 0.75):
            track = practice_track(
                report.dance,
                music=None,
                grid=silent_grid(report.dance, bpm),
                tempo=tempo,
                lead=Lead.WORDS,
                voice=voice,
                calls_of=caller_of(report),
            )
            here = list(_ahead_ms(track, folder))
            ahead_ms += here
            rates += [syllables(cue.words) / cue.sound.length_sec for cue in track.cues]
            total += len(here) + len(track.left_out)
            left_out += len(track.left_out)
            print(
                f"  {name:28} {bpm * tempo:5.1f} counts a minute: {len(here):4} calls, ahead by "
                f"{median(here):.0f} ms, {len(track.left_out)} left out"
            )
    late = sum(ms <= 0 for ms in ahead_ms)
    print(
        f"words: {len(ahead_ms)} spoken calls, {1 - late / len(ahead_ms):.2%} end before their beat; "
        f"ahead by {mean(ahead_ms):.0f} ms on average, spread {pstdev(ahead_ms):.0f} ms, "
        f"least {min(ahead_ms):.0f} ms, most {max(ahead_ms):.0f} ms; {left_out} of {total} left out; "
        f"at most {max(rates):.2f} syllables a second"
    )


def _ahead_ms(track: Track, folder: Path) -> Iterator[float]:
    """How long before its beat the last of every call is heard, in the speech read back from a file."""
    path = folder / "speech.flac"
    path.write_bytes(encoded(track.speech, path.suffix, Label("Speech")))
    speech = np.abs(read_mono(path, RATE_HZ).samples)
    for cue in track.cues:
        if cue.beat_sec <= cue.starts_sec:
            continue  # a number of the count-in
        first, until = round(cue.starts_sec * RATE_HZ), round((cue.ends_sec + 0.04) * RATE_HZ)
        word = speech[first:until]
        last = first + np.flatnonzero(word > np.max(word) * 10 ** (_SILENT_DB / 20))[-1]
        yield 1000 * (cue.beat_sec - last / RATE_HZ)


def _lengthened(score: Score, at_least_sec: float) -> Score:
    """The score with verses and choruses repeated until it lasts so long."""
    while truth_of(score)["length_sec"] < at_least_sec:
        score = replace(score, order=(*score.order[:-1], "verse", "chorus", "ending"))
    return score


def _grid_of(score: Score) -> BeatGrid:
    truth = truth_of(score)
    beats = truth["beats"]
    return replace(
        BeatGrid.steady_at(truth["bpm"], length_sec=truth["length_sec"]),
        anchors=((0.0, beats[0]), (float(len(beats) - 1), beats[-1])),
        first_beat=beats.index(truth["first_count_sec"]),
        last_beat=len(beats) - 1,
    )


def _made(folder: Path, score: Score, lead: Lead, out: str, *, tempo: float = 0.75) -> Practice:
    sheet = folder / score.sheet
    sheet.write_bytes(dict(demo_sheets())[score.sheet])
    asked = PracticeAsked(folder / "song.flac", tempo=tempo, lead=lead)
    return make_practice(sheet, folder / out, asked=asked, song_grid=lambda _: _grid_of(score))


def _lay(folder: Path, score: Score) -> None:
    song = Sound(play(score).samples, RATE_HZ)
    (folder / "song.flac").write_bytes(encoded(song, ".flac", Label(score.title)))


def _peaks(folder: Path, *, quick: bool) -> None:
    _lay(folder, PEG_AND_RAIL)
    for lead in (Lead.WORDS,) if quick else tuple(Lead):
        made = _made(folder, PEG_AND_RAIL, lead, "track.wav")
        words = [Placed(cue.starts_sec, cue.sound) for cue in made.track.cues]
        gain = song_gain(words, len(made.track.sound.samples))
        under = [
            gain[round(w.sec * RATE_HZ) : round((w.sec + w.sound.length_sec) * RATE_HZ)].max() for w in words
        ]
        ducked = f", song {-20 * np.log10(max(under)):.1f} dB down under words" if under else ""
        for suffix in FORMATS:
            path = folder / f"track{suffix}"
            path.write_bytes(encoded(made.track.sound, suffix, Label("Track")))
            heard = read_stereo(path, RATE_HZ)
            peak = float(np.max(np.abs(heard.samples)))
            clipped = int(np.sum(np.abs(heard.samples) >= 32767 / 32768))
            print(
                f"peaks: {lead.value:6} {suffix:5} {loudness_lufs(heard):6.2f} LUFS, "
                f"highest sample {peak:.3f}, true peak "
                f"{20 * np.log10(true_peak(heard.samples)):+.2f} dBTP, {clipped} clipped{ducked}"
            )


def _speed(folder: Path) -> None:
    score = _lengthened(PEG_AND_RAIL, 210)
    _lay(folder, score)
    for out in ("track.mp3", "track.flac"):
        begun, busy = time.perf_counter(), time.process_time()
        made = _made(folder, score, Lead.WORDS, out)
        took, worked = time.perf_counter() - begun, time.process_time() - busy
        song_sec = truth_of(score)["length_sec"]
        print(
            f"time: a song of {song_sec:.0f} s at 75 % to {out[6:]} of {made.track.sound.length_sec:.0f} s: "
            f"{took:.1f} s ({took / song_sec:.3f} of real time), {worked:.1f} s of processor"
        )


if __name__ == "__main__":
    main(sys.argv[1:])
