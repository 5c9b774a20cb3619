"""The drawings: byte for byte as they were looked at, and true to the floor."""

from __future__ import annotations

import os
import re
from fractions import Fraction
from pathlib import Path
from xml.etree import ElementTree as ET

import pytest

from wallwise.dance.model import Dance, Foot
from wallwise.floor.trace import Row, trace_part
from wallwise.give.footprints import SIZE, footprints, wall_square

GOLDEN = Path(__file__).parent.parent / "golden" / "footprints"


@pytest.fixture
def rows(ladder: Dance) -> tuple[Row, ...]:
    """The dance's trace."""
    return trace_part(ladder.parts[0]).rows


def golden(name: str, text: str) -> str:
    """The stored text of this name, written anew where WALLWISE_REGEN asks for it."""
    path = GOLDEN / f"{name}.svg"
    if os.environ.get("WALLWISE_REGEN"):
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text + "\n", encoding="utf-8")
    return path.read_text(encoding="utf-8").rstrip("\n")


def test_drawings_are_as_they_were_looked_at(rows: tuple[Row, ...]) -> None:
    """Each event's drawing is the stored one, byte for byte."""
    for row in rows:
        drawn = footprints(row)
        assert golden(f"ladder-{row.index + 1:02}", drawn) == drawn


def test_wall_squares_are_as_they_were_looked_at() -> None:
    """So is each eighth of the wall strip."""
    for eighth in range(8):
        drawn = wall_square(Fraction(eighth, 8))
        assert golden(f"wall-{eighth}", drawn) == drawn


def test_drawings_are_well_formed(rows: tuple[Row, ...]) -> None:
    """An XML parser reads every drawing, and everything in it lies inside the picture."""
    for row in rows:
        root = ET.fromstring(footprints(row))
        assert root.attrib["viewBox"] == f"0 0 {SIZE:g} {SIZE:g}"
        for x, y in re.findall(r"translate\((\S+) (\S+)\)", footprints(row)):
            assert 0 <= float(x) <= SIZE
            assert 0 <= float(y) <= SIZE


def test_left_is_an_outline_and_right_is_filled(rows: tuple[Row, ...]) -> None:
    """Both feet are always drawn, told apart by letter and by fill."""
    for row in rows:
        soles = re.findall(r'scale\((-?)[\d.]+ [\d.]+\)" fill="(#\w+)"', footprints(row))
        assert sorted(soles) == [("", "#1a1a1a"), ("-", "#ffffff")]
        assert sorted(re.findall(r">([LR])</text>", footprints(row))) == ["L", "R"]


def test_the_pad_lies_under_the_foot_that_bears_the_weight(rows: tuple[Row, ...]) -> None:
    """One pad for one foot, two where both stand."""
    for row in rows:
        pads = footprints(row).count("<ellipse")
        assert pads == (2 if row.weight is Foot.BOTH else 1)
