"""``dance.json`` and the rows that other programs read."""

import json
from contextlib import nullcontext
from fractions import Fraction
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.strategies import dances, part_of

from wallwise.dance.codec import check_rows, read, restart_rows, tag_rows, to_json, write
from wallwise.dance.model import Dance, Foot, Kind, Part, Restart, Section, Span, Step, Tag
from wallwise.glossary.notation import parse_steps

QUARTER = part_of(
    parse_steps(["1 step R forward", "2 step L side left 1/4", "& touch R beside", "3 hold"]), counts=4
)


@settings(max_examples=50)
@given(dances)
def test_round_trip_is_exact(dance: Dance) -> None:
    """What is written is read back equal, and written again the same."""
    assert dance == read(write(dance))
    assert write(dance) == write(read(write(dance)))


def test_fractions_are_whole_numbers_or_strings() -> None:
    """No count or turn is ever a floating-point number."""
    steps = to_json(Dance("Short", (QUARTER,)))["parts"][0]["sections"][0]["steps"]

    assert [1, 2, "5/2", 3] == [step["at"] for step in steps]
    assert "-1/4" == steps[1]["turn"]


def test_place_in_the_sheet_is_not_written() -> None:
    """Where a step stands in a sheet, and what was inferred, are no part of the dance."""
    step = Step(Fraction(1), Foot.RIGHT, Kind.STEP, span=Span(3, 9), inferred=("foot",))

    packed = to_json(Dance("Short", (part_of((step,), counts=1),)))

    assert [{"at": 1, "foot": "R", "kind": "step"}] == packed["parts"][0]["sections"][0]["steps"]


def _spoilt(**changes: Any) -> str:
    return json.dumps({**to_json(Dance("Short", (QUARTER,))), **changes})


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("", "not JSON"),
        ("[" * 100_000, "not JSON"),
        ("[]", "an object with a title"),
        ("{}", "its format is None"),
        (_spoilt(format=99), "its format is 99"),
        (_spoilt(title=3), "dance.title must be text, not 3"),
        (_spoilt(parts={}), "dance.parts must be a list"),
        (_spoilt(parts=[3]), r"dance.parts\[0\] must be an object"),
        (_spoilt(parts=[{"name": "A"}]), r"dance.parts\[0\] lacks 'sections'"),
        (_spoilt(colour="red"), "has 'colour'"),
        (_spoilt(starts_on="X"), "dance.starts_on must be one of L, R, both, none"),
        (_spoilt(starts_on=["L"]), "dance.starts_on must be one of"),
        (_spoilt(beats_per_bar=True), "dance.beats_per_bar must be a whole number, not true"),
        (_spoilt(bpm=120.5), "dance.bpm must be a whole number or a fraction"),
        (_spoilt(bpm="1/0"), "dance.bpm must be"),
        (_spoilt(bpm="1e9"), "dance.bpm must be"),
        (_spoilt(sequence="AAB"), "dance.sequence must be a list"),
    ],
    ids=str,
)
def test_anything_else_is_refused_by_its_place(text: str, says: str) -> None:
    """A file that is no dance raises one error that names the place."""
    with pytest.raises(ValueError, match=says):
        read(text)


@settings(max_examples=50)
@given(
    st.recursive(
        st.none() | st.booleans() | st.integers() | st.floats() | st.text(),
        lambda inner: st.lists(inner) | st.dictionaries(st.text(), inner),
    )
)
def test_no_json_whatever_raises_another_error(raw: object) -> None:
    """Every JSON that is no dance raises ValueError and nothing else."""
    with pytest.raises(ValueError, match=r"^not a dance"):
        read(json.dumps(raw))
    with pytest.raises(ValueError, match=r"^not a dance") if raw != [] else nullcontext():
        read(json.dumps({"format": 1, "title": "x", "parts": raw}))


def test_check_rows() -> None:
    """A part's events and its holds stand apart; facings are those after the event, from 12:00."""
    (rows,) = check_rows(Dance("Short", (QUARTER,)))

    assert ("main", 4) == (rows["name"], rows["counts"])
    assert [
        (1, 1.0, "1", "R", "step", True, "12:00", 0.0),
        (1, 2.0, "2", "L", "step", True, "9:00", -0.25),
        (1, 2.5, "&", "R", "touch", False, "9:00", 0.0),
    ] == [
        tuple(row[key] for key in ("section", "at", "label", "foot", "kind", "weight", "facing", "turn"))
        for row in rows["events"]
    ]
    assert [{"at": 3.0, "label": "3"}] == rows["holds"]


def test_check_rows_tell_the_line_where_it_is_known() -> None:
    """A row has the line of its step, and what was inferred of it."""
    step = Step(Fraction(1), Foot.RIGHT, Kind.STEP, span=Span(30, 34), inferred=("foot",))
    (rows,) = check_rows(Dance("Short", (part_of((step,), counts=1),)), line_of=lambda span: span.start // 10)

    assert [(3, ["foot"])] == [(row["line"], row["inferred"]) for row in rows["events"]]


def test_check_rows_of_a_phrased_dance_have_the_tag_as_a_part() -> None:
    """Each part begins at 12:00, and a tag that the sequence calls is a part of its own."""
    a, b, tag = (part_of(QUARTER.steps, counts=4, name=name) for name in ("A", "B", "Tag"))
    dance = Dance("Phrased", (a, b), tags=(Tag(0, tag), Tag(0, tag)), sequence=("A", "Tag", "B", "Tag"))

    assert ["A", "B", "Tag"] == [rows["name"] for rows in check_rows(dance)]
    assert ["12:00"] * 3 == [rows["events"][0]["facing"] for rows in check_rows(dance)]
    assert [] == tag_rows(dance)


def test_restart_and_tag_rows() -> None:
    """A restart tells where the room begins again, a tag where the room faces when it begins."""
    walk = parse_steps(["1 step R forward", "2 step L forward"])
    part = part_of((*QUARTER.steps, Step(Fraction(4), Foot.RIGHT, Kind.STEP)), counts=4)
    dance = Dance(
        "Cut",
        (part,),
        restarts=(Restart(3, Fraction(2)),),
        tags=(Tag(2, part_of(walk, counts=2, name="tag")),),
    )

    assert [{"wall": 3, "after_counts": 2, "facing": "3:00"}] == restart_rows(dance)
    assert [{"after_wall": 2, "counts": 2, "facing": "6:00"}] == tag_rows(dance)


def test_a_section_keeps_its_number_and_heading() -> None:
    """Sections come back as they were written, empty ones too."""
    dance = Dance("Bare", (Part("main", (Section(7, Fraction(9), Fraction(8), (), "Turn"),)),))

    assert dance == read(write(dance))
