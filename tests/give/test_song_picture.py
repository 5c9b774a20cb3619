"""The picture of a song is well-formed, the same every time, and shows what the grid says."""

from __future__ import annotations

from dataclasses import replace
from xml.etree import ElementTree as ET

import numpy as np

from wallwise.give.song_picture import draw
from wallwise.song.grid import BeatGrid, Phrase

GRID = replace(
    BeatGrid.steady_at(120, length_sec=75, first_sec=0.5),
    first_beat=16,
    phrases=(Phrase(0, 16, 0.5), Phrase(16, 32, 0.9), Phrase(48, 102, 0.9)),
)
SAMPLES = np.sin(np.arange(75 * 1000) / 5).astype(np.float32)
SVG = "{http://www.w3.org/2000/svg}"


def test_every_beat_eight_and_phrase_is_drawn() -> None:
    """A mark a beat and an eight, a numbered line a phrase, a row a minute, and the title as given."""
    picture = draw(SAMPLES, 1000, GRID, title="Salt & <Lanterns>")
    root = ET.fromstring(picture)
    beats, eights, *phrases, count_one = root.findall(f"{SVG}path")
    assert GRID.last_beat + 1 == beats.attrib["d"].count("M")
    assert len(list(GRID.eights())) == eights.attrib["d"].count("M")
    assert 3 == len(phrases)
    assert count_one.attrib["d"].endswith("z")
    texts = [element.text for element in root.findall(f"{SVG}text")]
    assert "Salt & <Lanterns>" in texts
    assert {"0:00", "1:00", "1: 16", "2: 32", "3: 102"} <= set(texts)
    assert 2 == len(root.findall(f"{SVG}polygon"))


def test_the_picture_is_the_same_every_time() -> None:
    """Byte for byte."""
    assert draw(SAMPLES, 1000, GRID, title="x") == draw(SAMPLES, 1000, GRID, title="x")
