"""Sheets with truth: every weight change is read exactly, and a sound sheet raises no alarm."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest

from wallwise.checks.catalogue import findings_of
from wallwise.dance.clock import facing_name
from wallwise.dance.model import Dance, Foot
from wallwise.reading import read

SHEETS = sorted(p.parent for p in (Path(__file__).parent.parent / "sheets").glob("*/truth.json"))


def steps(dance: Dance) -> dict[tuple[str, float], tuple[str, str]]:
    """The weight changes of all parts by part and beat: foot and facing after it."""
    found = {}
    for part in dance.parts:
        facing = dance.parts[0].net_turn * 0
        for step in part.steps:
            facing = (facing + step.turn) % 1
            if step.weight and step.foot in (Foot.LEFT, Foot.RIGHT):
                found[part.name.lower(), float(step.at)] = (step.foot.value, facing_name(facing))
    return found


@pytest.mark.parametrize("folder", SHEETS, ids=lambda p: p.name)
def test_a_true_sheet_is_read_exactly_and_quietly(folder: Path) -> None:
    """Beat, foot and facing agree with the truth (facing not where the truth calls it loose)."""
    truth: dict[str, Any] = json.loads((folder / "truth.json").read_text(encoding="utf-8"))
    reading = read((folder / "sheet.txt").read_text(encoding="utf-8"))
    got = steps(reading.dance)
    parts = {part.name.lower() for part in reading.dance.parts}
    want = {
        (e["part"].lower(), float(e["at"])): (e["foot"], e["facing"] if not e.get("facing_loose") else None)
        for e in truth["events"]
        if e["weight"] and e["foot"] in ("L", "R") and e["part"].lower() in parts
    }
    assert want.keys() == got.keys()
    assert [] == [k for k, (foot, facing) in want.items() if (foot, facing or got[k][1]) != got[k]]
    assert [] == [f.rule for f in findings_of(reading) if f.loud]
