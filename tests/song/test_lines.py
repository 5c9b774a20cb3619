"""The line through the beats is as simple as they allow, and no wild beat pulls it."""

from __future__ import annotations

import numpy as np
import pytest
from numpy.typing import NDArray

from wallwise.song.lines import Line, fit, numbered

BEATS = np.arange(200.0)


def line_through(beats_sec: NDArray[np.float64]) -> Line:
    return fit(numbered(beats_sec), beats_sec, np.ones(len(beats_sec)))


def at(line: Line, beats: NDArray[np.float64]) -> NDArray[np.float64]:
    places, secs = zip(*line.anchors, strict=True)
    found: NDArray[np.float64] = np.interp(beats, places, secs)
    return found


def loose(beats_sec: NDArray[np.float64], sec: float = 0.006) -> NDArray[np.float64]:
    return beats_sec + np.random.default_rng(3).normal(0, sec, len(beats_sec))


def test_a_click_is_one_straight_line() -> None:
    """Beats 6 ms loose about a click give its tempo within a hundredth of a beat a minute."""
    line = line_through(loose(BEATS * 0.5))
    assert line.steady
    assert 2 == len(line.anchors)
    assert pytest.approx(120, abs=0.02) == 60 / ((line.anchors[1][1] - line.anchors[0][1]) / 199)
    assert pytest.approx(0.006, rel=0.25) == line.residual_sec


def test_wild_and_missing_beats_do_not_pull() -> None:
    """A fifth of the beats anywhere, and ten missing, move the line by less than 3 ms."""
    truth = BEATS * 0.5
    heard = loose(truth)
    dice = np.random.default_rng(4)
    wild = dice.choice(200, 40, replace=False)
    heard[wild] += dice.uniform(-0.12, 0.12, 40)
    kept = np.delete(BEATS.astype(int), slice(60, 70))
    line = line_through(heard[kept])
    assert line.steady
    assert np.abs(at(line, BEATS) - truth).max() < 0.003


def test_one_change_of_tempo_is_one_bend() -> None:
    """From 100 to 106 beats a minute: three anchors, the bend within four beats of where it is."""
    steps = np.where(BEATS < 96, 0.6, 60 / 106)
    truth = np.concatenate([[0.0], np.cumsum(steps[:-1])])
    line = line_through(loose(truth))
    assert not line.steady
    assert 3 == len(line.anchors)
    assert pytest.approx(96, abs=8) == line.anchors[1][0]
    assert np.abs(at(line, BEATS) - truth).max() < 0.02


def test_a_drifting_band_is_followed() -> None:
    """Two per cent up and down every 72 beats is followed within 10 ms, at the ends within 25."""
    steps = 0.5 * (1 + 0.02 * np.sin(2 * np.pi * BEATS / 72))
    truth = np.concatenate([[0.0], np.cumsum(steps[:-1])])
    line = line_through(loose(truth))
    assert not line.steady
    wrong = np.abs(at(line, BEATS) - truth)
    assert wrong[4:-4].max() < 0.010
    assert wrong.max() < 0.025


def test_missing_beats_keep_their_numbers() -> None:
    """After two missing beats the next is the third."""
    assert [0, 1, 2, 5, 6, 7] == list(numbered(np.array([0.0, 0.5, 1.0, 2.5, 3.0, 3.5])))
