"""The line notation writes what it reads and refuses the rest."""

from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.strategies import any_step

from wallwise.dance.counts import SHARES
from wallwise.dance.model import Foot, Kind, Place, Step
from wallwise.glossary.load import figures
from wallwise.glossary.notation import parse_steps, write_steps

L, R = Foot.LEFT, Foot.RIGHT

_BEATS = st.builds(
    Fraction.__add__,
    st.integers(0, 64).map(Fraction),
    st.sampled_from([Fraction(0), *SHARES.values()]),
)


@st.composite
def writable_steps(draw: st.DrawFn) -> Step:
    """A step the notation can hold: a count it has a letter for, a foot unless it is a hold."""
    at = draw(_BEATS)
    step = replace(draw(any_step(at)), also=())
    if step.kind is Kind.HOLD or step.foot is Foot.NONE:
        return Step(at, Foot.NONE, Kind.HOLD)
    return step


@given(st.lists(writable_steps(), max_size=8).map(tuple))
def test_what_is_written_is_read_back(steps: tuple[Step, ...]) -> None:
    """Writing steps and reading them gives the same steps."""
    assert steps == parse_steps(write_steps(steps))


@given(st.lists(writable_steps(), max_size=8).map(tuple))
def test_writing_again_changes_nothing(steps: tuple[Step, ...]) -> None:
    """The written form is stable."""
    lines = write_steps(steps)
    assert lines == write_steps(parse_steps(lines))


def test_every_way_of_the_glossary_is_written_as_it_is_read() -> None:
    """The whole glossary survives the notation."""
    for way in (w for f in figures() for w in f.ways):
        assert way.steps == parse_steps(write_steps(way.steps))


def test_letter_alone_belongs_to_the_number_before_it() -> None:
    """``&`` after 1 is a beat and a half, before any number half a beat."""
    assert [Fraction(1), Fraction(3, 2)] == [s.at for s in parse_steps(["1 step R", "& step L"])]
    assert [Fraction(1, 2), Fraction(1)] == [s.at for s in parse_steps(["& ball R", "1 step L"])]
    assert [Fraction(1), Fraction(7, 4), Fraction(2)] == [
        s.at for s in parse_steps(["1 step R", "a step L", "2 step R"])
    ]


def test_details_come_in_any_order() -> None:
    """Place, turn, side, ending and length are free in their order."""
    told = Step(Fraction(3), Foot.BOTH, Kind.SWIVEL, Place.UNSAID, Fraction(1, 8), R, L, True)
    for line in (
        "3 swivel both right 1/8 toward R ends L long",
        "3 swivel both long ends L toward R right 1/8",
    ):
        assert (told,) == parse_steps([line])
    assert Place.FORWARD_DIAGONAL is parse_steps(["1 step R left 1/4 forward diagonal"])[0].place
    assert Kind.STOMP_UP is parse_steps(["1 stomp up R beside"])[0].kind


@pytest.mark.parametrize(
    "line",
    [
        "",
        "1",
        "1 step",
        "1 leap R",
        "1 step X forward",
        "1 step R nowhere",
        "1 step R forward back",
        "1 step R left",
        "1 step R left 1/0",
        "1 step R left -1/4",
        "1 step R left 0",
        "1 step R left 1/4 right 1/4",
        "1 step R toward",
        "1 hold R",
        "-1 step R",
        "1_0 step R",
        "one step R",
        "1ea step R",
        "1&& step R",
        "1.5 step R",
    ],
)
def test_what_is_not_notation_is_refused_and_shown(line: str) -> None:
    """The refusal quotes the line; nothing else than ValueError is raised."""
    with pytest.raises(ValueError, match="not a step in notation") as refused:
        parse_steps(["1 step R", line])
    assert repr(line) in str(refused.value)


@given(st.text(max_size=30))
def test_any_text_is_read_or_refused(line: str) -> None:
    """No text breaks the notation's reader."""
    try:
        steps = parse_steps([line])
    except ValueError:
        return
    assert len(steps) == 1
