"""A file of beats is what its schema says, and reading undoes writing."""

from __future__ import annotations

import json
from dataclasses import replace
from fractions import Fraction
from importlib.resources import files

import jsonschema
import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.song.test_grid import grids

from wallwise.song.beatfile import BeatFile, NotBeats, dump, load
from wallwise.song.corrections import NONE, Corrections
from wallwise.song.dances import WINDOWS
from wallwise.song.grid import BeatGrid, Phrase

SCHEMA = json.loads(files("wallwise.song").joinpath("beats.schema.json").read_text(encoding="utf-8"))
STEADY = BeatGrid.steady_at(120, length_sec=60)
PLAIN = BeatFile("song.mp3", STEADY, NONE)

_secs = st.floats(0, 600)
_told = st.builds(
    Corrections,
    bpm=st.none() | st.floats(40, 240),
    dance=st.none() | st.sampled_from(sorted(WINDOWS)),
    beats_per_bar=st.sampled_from([None, 2, 3, 4]),
    counts_per_beat=st.sampled_from([None, Fraction(1, 2), Fraction(1), Fraction(2)]),
    taps_sec=st.just(()) | st.tuples(_secs, _secs, _secs, _secs),
    ones_sec=st.lists(_secs, max_size=2).map(tuple),
    first_count_sec=st.none() | _secs,
    later_counts=st.integers(-8, 8),
    breaks=st.lists(st.tuples(_secs, st.sampled_from([0.5, 2.0, 4.0])), max_size=2).map(tuple),
    moves=st.lists(st.tuples(_secs, _secs), max_size=2).map(tuple),
)


@given(grids(), _told)
def test_reading_undoes_writing(grid: BeatGrid, told: Corrections) -> None:
    """Grid and corrections come back exactly, and the text is what the schema says."""
    grid = replace(grid, phrases=(Phrase(0, 32.0, 0.8), Phrase(32, 2.0, 1.0)))
    text = dump(BeatFile("Öl.mp3", grid, told))
    assert BeatFile("Öl.mp3", grid, told) == load(text)
    jsonschema.validate(json.loads(text), SCHEMA)


def test_the_schema_is_one_and_refuses() -> None:
    """The schema is valid itself, and a grid with one anchor is not valid by it."""
    jsonschema.Draft202012Validator.check_schema(SCHEMA)
    content = json.loads(dump(PLAIN))
    content["grid"]["anchors"] = content["grid"]["anchors"][:1]
    with pytest.raises(jsonschema.ValidationError):
        jsonschema.validate(content, SCHEMA)


def _changed(**grid: object) -> str:
    content = json.loads(dump(PLAIN))
    content["grid"] |= grid
    return json.dumps(content)


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("", "no JSON"),
        ("[]", "holds no beats"),
        ("{}", "holds no beats"),
        ('{"wallwise_beats": 2}', "version 2"),
        ('{"wallwise_beats": 1, "song": "x"}', "contradict"),
        (_changed(anchors=[[0, 0], [0, 1]]), "contradict"),
        (_changed(anchors="none"), "contradict"),
        (_changed(counts_per_beat="1/0"), "contradict"),
        (_changed(phrases=[1]), "contradict"),
        (dump(PLAIN).replace('"corrections": {}', '"corrections": {"bpm": 7}'), "contradict"),
        (dump(PLAIN).replace('"corrections": {}', '"corrections": 7'), "contradict"),
    ],
)
def test_what_is_no_file_of_beats_is_told(text: str, says: str) -> None:
    """One clause, whatever is wrong."""
    with pytest.raises(NotBeats, match=says):
        load(text)
