"""Calls end before their beat, words never overlap, and nobody is hurried."""

from __future__ import annotations

from itertools import pairwise

from hypothesis import given
from hypothesis import strategies as st
from tests.give.voices import Tones, tone

from wallwise.give.cues import LEAD_SEC, Cue, Wanted, gathered, lay_calls, lay_numbers
from wallwise.give.syllables import MOST_PER_SEC, syllables

_WORDS = st.sampled_from(
    [
        ("vine right", "vine"),
        ("side",),
        ("together", "close"),
        ("jazz box quarter right", "jazz box"),
        ("hold",),
    ]
)
_GAPS = st.lists(st.tuples(st.floats(0.2, 3.0), _WORDS), max_size=12)


def _wanted(gaps: list[tuple[float, tuple[str, ...]]]) -> list[Wanted]:
    at, calls = 0.5, []
    for gap, words in gaps:
        at += gap
        calls.append(Wanted(at, words))
    return calls


@given(_GAPS)
def test_every_call_ends_before_its_beat_and_after_the_one_before_it(
    gaps: list[tuple[float, tuple[str, ...]]],
) -> None:
    wanted = _wanted(gaps)
    laid, left_out = lay_calls(wanted, Tones())
    assert len(wanted) == len(laid) + len(left_out)
    for cue in laid:
        assert cue.ends_sec <= cue.beat_sec - LEAD_SEC + 1e-4
        assert cue.starts_sec >= -1e-9
        assert syllables(cue.words) / cue.sound.length_sec <= MOST_PER_SEC * 1.001
    for cue, later in pairwise(laid):
        assert cue.ends_sec < later.starts_sec
        assert cue.beat_sec < later.beat_sec


@given(_GAPS)
def test_no_call_comes_more_than_half_a_second_early(gaps: list[tuple[float, tuple[str, ...]]]) -> None:
    laid, _ = lay_calls(_wanted(gaps), Tones())
    assert all(cue.beat_sec - cue.ends_sec <= 0.5 for cue in laid)


def test_with_time_enough_the_fullest_words_end_just_before_the_beat() -> None:
    laid, left_out = lay_calls([Wanted(4.0, ("vine right", "vine"))], Tones())
    assert ["vine right"] == [cue.words for cue in laid]
    assert abs(4.0 - LEAD_SEC - laid[0].ends_sec) < 1e-4
    assert left_out == ()


def test_words_are_shortened_before_the_voice_is_hurried() -> None:
    """Five syllables take a second at least; there is half of one."""
    laid, _ = lay_calls([Wanted(0.5, ("jazz box quarter right", "jazz box"))], Tones())
    assert ["jazz box"] == [cue.words for cue in laid]


def test_the_words_before_move_up_where_that_makes_room() -> None:
    """The three syllables of "kick ball change" take 0.6 s; its count comes 0.5 s after that of "side"."""
    calls = [Wanted(2.0, ("side",)), Wanted(2.5, ("kick ball change",))]
    laid, left_out = lay_calls(calls, Tones())
    assert left_out == ()
    assert ["side", "kick ball change"] == [cue.words for cue in laid]
    assert laid[0].ends_sec < laid[1].starts_sec


def test_what_cannot_be_said_in_time_is_left_out_and_told() -> None:
    calls = [Wanted(0.1, ("jazz box",)), Wanted(3.0, ("side",))]
    laid, left_out = lay_calls(calls, Tones())
    assert (calls[0],) == left_out
    assert ["side"] == [cue.words for cue in laid]


def test_steps_in_quick_succession_are_called_in_one_breath() -> None:
    calls = [
        Wanted(2.0, ("cross",)),
        Wanted(2.25, ("side",)),
        Wanted(2.5, ("behind",)),
        Wanted(3.5, ("hold",)),
    ]
    expected = [(2.0, ("cross, side, behind", "cross, side", "cross")), (3.5, ("hold",))]
    assert expected == [(call.beat_sec, call.words) for call in gathered(calls)]
    laid, left_out = lay_calls(gathered(calls), Tones())
    assert ["cross, side, behind", "hold"] == [cue.words for cue in laid]
    assert left_out == ()


def test_no_more_than_four_steps_are_called_at_once() -> None:
    calls = [Wanted(1 + 0.2 * n, ("step",)) for n in range(6)]
    assert [4, 2] == [call.words[0].count("step") for call in gathered(calls)]


def test_numbers_begin_on_their_beats() -> None:
    numbers = [Wanted(1.0, ("one",)), Wanted(1.5, ("two",)), Wanted(2.0, ("seven",))]
    laid, left_out = lay_numbers(numbers, Tones())
    assert [1.0, 1.5, 2.0] == [cue.starts_sec for cue in laid]
    assert left_out == ()
    assert all(cue.ends_sec < later.starts_sec for cue, later in pairwise(laid))


def test_a_number_gives_way_to_a_call() -> None:
    call = Cue(1.4, 2.0, "vine", tone(0.5))
    numbers = [Wanted(1.0, ("seven",)), Wanted(1.5, ("eight",)), Wanted(2.0, ("one",))]
    laid, left_out = lay_numbers(numbers, Tones(), among=[call])
    assert ["one"] == [cue.words for cue in laid]
    assert [numbers[0], numbers[1]] == list(left_out)


def test_numbers_too_close_to_be_said_are_left_to_the_clicks() -> None:
    numbers = [Wanted(0.3 * n, ("seven",)) for n in range(4)]
    laid, left_out = lay_numbers(numbers, Tones())
    assert len(laid) == 1  # the last, which nothing follows
    assert len(left_out) == 3
