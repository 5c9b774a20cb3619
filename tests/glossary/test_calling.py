"""The call words of danced steps: the figure that they are, or a word for each."""

from __future__ import annotations

from fractions import Fraction
from functools import cache

import pytest

from wallwise.dance.mirror import mirror_step
from wallwise.dance.model import Step
from wallwise.desk.demo import demo_sheets
from wallwise.glossary.calling import calls_of
from wallwise.glossary.load import figures
from wallwise.glossary.notation import parse_steps
from wallwise.reading import read


def _called(*steps: str, said: str = "") -> list[tuple[str, str]]:
    calls = calls_of(parse_steps(steps), lambda _: said)
    return [(str(call.at), call.words[0]) for call in calls]


@cache
def _demo_steps(name: str) -> tuple[Step, ...]:
    return read(dict(demo_sheets())[name].decode()).dance.parts[0].steps


def test_a_beginner_dance_is_called_by_its_figures() -> None:
    """Worked out by hand from the sheet, which names no figure in its first two lines in full."""
    expected = [
        ("1", "side"), ("2", "together"), ("3", "right step touch"),
        ("5", "side"), ("6", "together"), ("7", "left step touch"),
        ("9", "side rock right"), ("11", "right cross shuffle"),
        ("13", "side rock left"), ("15", "left cross shuffle"),
        ("17", "step, pivot quarter left"), ("19", "step, pivot quarter left"),
        ("21", "right rocking chair"),
        ("25", "forward"), ("26", "forward"), ("27", "right kick ball change"),
        ("29", "jazz box quarter right"),
    ]  # fmt: skip
    calls = calls_of(_demo_steps("coathook-corner.txt"))
    assert expected == [(str(call.at), call.words[0]) for call in calls]


def test_a_figure_of_one_rhythm_is_called_only_where_the_sheet_names_it() -> None:
    basic = ("1 step R side", "2 step L beside", "3 step R side", "4 touch L beside")
    bachata = ("1 step R side", "2 step L beside", "3 step R side", "4 touch L beside")
    assert "bachata" not in " ".join(word for _, word in _called(*basic))
    assert [("1", "bachata right")] == _called(*bachata, said="Bachata to the right")


def test_of_two_figures_danced_alike_the_one_the_sheet_names_is_called() -> None:
    steps = ("1 step R side", "1& step L beside", "2 step R side")
    assert [("1", "chasse right")] == _called(*steps, said="1&2 Chassé R")
    assert [("1", "shuffle right")] == _called(*steps, said="Shuffle to the right side")


def test_the_turn_that_is_danced_is_called_not_the_one_in_the_name() -> None:
    steps = ("1 step R side", "1& step L beside", "2 step R forward right 1/4")
    assert [("1", "shuffle quarter right")] == _called(*steps, said="1&2 Shuffle 1/4 turn right")


def test_steps_without_a_figure_are_called_one_by_one() -> None:
    assert [("1", "cross"), ("2", "quarter left"), ("4", "stomp")] == _called(
        "1 step R across", "2 step L forward left 1/4", "3 hold", "4 stomp R beside"
    )


def test_nothing_calls_nothing() -> None:
    assert () == calls_of(())


@pytest.mark.parametrize("name", [name for name, _ in demo_sheets()])
def test_on_the_other_foot_the_calls_are_the_same_with_left_and_right_exchanged(name: str) -> None:
    swap = {"left": "right", "right": "left"}
    steps = _demo_steps(name)
    mirrored = calls_of([mirror_step(step) for step in steps])
    exchanged = [
        (call.at, tuple(" ".join(swap.get(w, w) for w in words.split()) for words in call.words))
        for call in calls_of(steps)
    ]
    assert exchanged == [(call.at, call.words) for call in mirrored]


@pytest.mark.parametrize("name", [name for name, _ in demo_sheets()])
def test_calls_stand_on_beats_of_steps_in_order_and_grow_shorter(name: str) -> None:
    steps = _demo_steps(name)
    calls = calls_of(steps)
    beats = [call.at for call in calls]
    assert beats == sorted(set(beats))
    assert set(beats) <= {step.at for step in steps}
    assert calls[0].at <= next(step.at for step in steps) + 1
    for call in calls:
        lengths = [len(words) for words in call.words]
        assert lengths == sorted(lengths, reverse=True)


def test_most_figures_of_the_glossary_are_called_when_they_are_named_and_danced() -> None:
    """Some are danced like another figure of the same name; none is called on another beat."""
    right = 0
    known = [figure for figure in figures() if len(figure.ways[0].steps) > 1]
    for figure in known:
        calls = calls_of(figure.ways[0].steps, lambda _, name=figure.name: name)  # type: ignore[misc]
        assert calls[0].at == figure.ways[0].steps[0].at or calls[0].at == Fraction(1)
        core = figure.call.split(",")[0].split()[0].lower()
        right += core in calls[0].words[0].lower()
    assert right >= 0.9 * len(known)
