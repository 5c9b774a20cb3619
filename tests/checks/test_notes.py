"""What is worth knowing and need not be settled: fast turns, long steps, a dance that drifts."""

from __future__ import annotations

from math import hypot, isclose

import pytest

from wallwise.checks.catalogue import findings_of
from wallwise.checks.rules.drifts import MOST_M
from wallwise.checks.rules.step_too_long import MOST_M_PER_SEC
from wallwise.checks.rules.turn_too_fast import MOST_DEGREES_PER_SEC
from wallwise.dance.finding import Severity
from wallwise.floor.trace import simulate
from wallwise.reading import read

TOUCHES = "1-2  Step R to right side, touch L beside R\n3-4  Step L to left side, touch R beside L\n"


def notes(lines: str, *, bpm: int | None = None) -> list[tuple[str, str]]:
    """Rule and count of everything found in a sheet of these lines."""
    tempo = f", {bpm} bpm" if bpm else ""
    found = findings_of(read(f"WEATHERCOCK\n8 counts{tempo}\n{lines}"))
    assert {finding.severity for finding in found} <= {Severity.NOTE}
    return [(finding.rule, finding.count) for finding in found]


# -- turns ------------------------------------------------------------------------------------

PIVOTS = (
    "1-2  Step R forward, pivot 1/2 left\n3-4  Step R forward, pivot 1/2 left\n"
    "5-6  Rock R forward, recover onto L\n7-8  Step R back, step L beside R\n"
)
SPIRAL = TOUCHES + "5-6  Step R forward, spiral full turn left\n7-8  Step L back, touch R beside L\n"


@pytest.mark.parametrize(
    ("bpm", "degrees_per_sec"), [(84, 252), (100, 300), (120, 360), (130, 390), (180, 540)]
)
def test_a_half_turn_in_a_beat_is_as_fast_as_the_music(bpm: int, degrees_per_sec: int) -> None:
    """Arithmetic: half a turn in one beat is 180 degrees in 60 / bpm seconds."""
    assert degrees_per_sec == 180 * bpm / 60
    expected = (
        [("turn-too-fast", "2"), ("turn-too-fast", "4")] if degrees_per_sec > MOST_DEGREES_PER_SEC else []
    )
    assert expected == notes(PIVOTS, bpm=bpm)


def test_the_fastest_swing_leaves_time_for_a_half_turn() -> None:
    """East Coast Swing 142-158: competition tempos of the UCWDC, as an undated secondary page gives them."""
    assert notes(PIVOTS, bpm=158) == []


def test_the_limit_is_far_above_what_tells_the_frail_from_the_others() -> None:
    """A full turn in more than 3.46 s, at 65 and over: Tsai et al., preprint, 109 people."""
    assert MOST_DEGREES_PER_SEC > 4 * 360 / 3.46


def test_a_full_turn_in_a_beat_is_fast_unless_the_music_is_slow() -> None:
    """At 60 beats a minute there is a whole second for it; without a tempo it is told."""
    assert [("turn-too-fast", "6")] == notes(SPIRAL)
    assert [("turn-too-fast", "6")] == notes(SPIRAL, bpm=104)
    assert notes(SPIRAL, bpm=60) == []


@pytest.mark.parametrize(
    "lines",
    [
        "5-6  1/2 right stepping R back, 1/2 right stepping L forward\n7-8  Rock R back, recover onto L\n",
        "5&6  Triple full turn right stepping R L R\n7-8  Step L back, touch R beside L\n",
        "5-8  Rolling vine right, touch L beside R\n",
        "5-8  Cross R over L, unwind full turn left over 3 counts\n",
    ],
    ids=["two halves", "triple", "rolling vine", "slow unwind"],
)
def test_a_full_turn_over_two_beats_or_more_is_not_too_fast(lines: str) -> None:
    """At 120 beats a minute it is 360 degrees a second at most, as a half turn in a beat is."""
    assert "turn-too-fast" not in [
        f.rule for f in findings_of(read(f"T\n8 counts\n120 bpm\n{TOUCHES}{lines}"))
    ]


# -- steps ------------------------------------------------------------------------------------

RUNS = "1&2& Run forward R, L, R, L\n3-4  Rock R forward, recover onto L\n5-8  Walk back R, L, R, L\n"


def test_the_limit_of_a_step_is_twice_a_brisk_walk() -> None:
    """1.24 m/s, standard deviation 0.28, at 60 and over: Kasović et al., 2021; two deviations above it."""
    assert isclose(2 * (1.24 + 2 * 0.28), MOST_M_PER_SEC)


def test_runs_are_long_steps_only_where_the_music_is_fast() -> None:
    """The tightest place is told once; without a tempo there is nothing to say."""
    assert [("step-too-long", "2")] == notes(RUNS, bpm=132)
    assert notes(RUNS, bpm=72) == []
    assert notes(RUNS) == []


def test_walking_on_every_beat_is_no_long_step_at_any_usual_tempo() -> None:
    """At 200 beats a minute, the top of the country two step, a walk of one step a beat is still a walk."""
    assert notes("1-4  Walk forward R, L, R, L\n5-8  Walk back R, L, R, L\n", bpm=200) == []


# -- drift ------------------------------------------------------------------------------------


def test_the_limit_of_drift_is_half_of_a_dancers_place() -> None:
    """25 square feet each, a rule of thumb of flooring vendors; a foot is 0.3048 m."""
    assert isclose(25**0.5 * 0.3048 / 2, MOST_M, abs_tol=0.005)


def test_a_dance_that_goes_forward_and_never_turns_drifts() -> None:
    """Eight walks forward end far ahead; four forward and four back do not."""
    assert [("drifts", "")] == notes("1-8  Walk forward R, L, R, L, R, L, R, L\n")
    assert notes("1-4  Walk forward R, L, R, L\n5-8  Walk back R, L, R, L\n") == []


def test_a_dance_that_turns_comes_back() -> None:
    """Six walks and half a turn: two walls later the room is where it was."""
    lines = "1-6  Walk forward R, L, R, L, R, L\n7-8  Step R forward, pivot 1/2 left\n"
    away = simulate(read(f"WEATHERCOCK\n8 counts\n{lines}").dance, walls=None).travel
    assert isclose(0, hypot(away.x_m, away.y_m), abs_tol=1e-9)
    assert notes(lines) == []


def test_a_box_closes() -> None:
    """A waltz box ends where it began: forward, side, close; back, side, close."""
    there = "1-3  Step L forward, step R to right side, step L beside R\n"
    back = "4-6  Step R back, step L to left side, step R beside L\n"
    assert findings_of(read(f"SIX PLUMS\n6 counts, 1 wall, waltz\n{there}{back}")) == ()
