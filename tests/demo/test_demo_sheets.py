"""The demo's sheets are read as they are danced, and their deliberate mistakes are found and mended.

The truth was worked out by hand, count by count, from the trade's meaning of the words
(common practice, no source); no reader made it.
"""

import json
from fractions import Fraction
from importlib.resources import files
from pathlib import Path
from typing import Any, TypeAlias

import pytest

from wallwise import checks, reading
from wallwise.dance.clock import facing_name
from wallwise.dance.finding import Finding
from wallwise.dance.model import Dance, Foot, Part, Step
from wallwise.dance.walls import WallKind, unroll, wall_count

Truth: TypeAlias = dict[str, Any]
Changes: TypeAlias = dict[tuple[str, Fraction], tuple[str, str]]

FOLDER = Path(__file__).parent / "truth"
TRUTHS: dict[str, Truth] = {p.stem: json.loads(p.read_text("utf-8")) for p in sorted(FOLDER.glob("*.json"))}
SHEETS = {Path(s.name).stem: s.read_text("utf-8") for s in (files("wallwise") / "demo" / "sheets").iterdir()}
MISTAKEN = sorted(name for name, truth in TRUTHS.items() if "mistake" in truth)
SOUND = sorted(set(TRUTHS) - set(MISTAKEN))
STEP_CHANGED = sorted(n for n, t in TRUTHS.items() if any("step_change" in r for r in t["restarts"]))
EITHER_FOOT = (Foot.LEFT, Foot.RIGHT)


def told(events: list[Truth]) -> Changes:
    """The true weight changes: the foot and the facing after it, by part and beat."""
    return {
        (e["part"].casefold(), Fraction(e["at"])): (e["foot"], e["facing"])
        for e in events
        if e["weight"] and e["foot"] in EITHER_FOOT
    }


def danced(parts: tuple[Part, ...]) -> Changes:
    """The weight changes as read, each part as if it began at 12:00."""
    changes: Changes = {}
    for part in parts:
        facing = Fraction(0)
        for step in part.steps:
            facing += step.turn
            if step.weight and step.foot in EITHER_FOOT:
                changes[part.name.casefold(), step.at] = (step.foot.value, facing_name(facing))
    return changes


def without_loose_facings(changes: Changes, truth: Truth) -> Changes:
    """Where only the whole turn of a triple is told, the facing within it is the dancer's own."""
    loose = {(e["part"].casefold(), Fraction(e["at"])) for e in truth["events"] if e.get("facing_loose")}
    return {key: (foot, "" if key in loose else facing) for key, (foot, facing) in changes.items()}


def parts_scored(dance: Dance) -> tuple[Part, ...]:
    """All parts; the tag of a phrased dance is one of them."""
    return dance.parts if dance.sequence is None else (*dance.parts, *(tag.part for tag in dance.tags))


def feet(steps: tuple[Step, ...]) -> list[tuple[Fraction, str, bool]]:
    return [(s.at, s.foot.value, s.weight) for s in steps if s.foot is not Foot.NONE]


def assert_danced_as_told(dance: Dance, truth: Truth) -> None:
    read = danced(parts_scored(dance))
    assert without_loose_facings(told(truth["events"]), truth) == without_loose_facings(read, truth)
    last = unroll(dance, walls=None if dance.sequence else 1)[-1 if dance.sequence else 0]
    assert (truth["counts"], truth["walls"]) == (dance.counts, wall_count(dance))
    assert (truth["ends_facing"], truth["ends_weight"]) == (facing_name(last.ends_facing), last.ends_weight)
    assert truth["sequence"] == (list(dance.sequence) if dance.sequence else None)


def loud(findings: tuple[Finding, ...]) -> list[Finding]:
    return [finding for finding in findings if finding.loud]


def sheet_read(text: str) -> tuple[Dance, list[Finding]]:
    read = reading.read(text)
    return read.dance, loud(checks.check(read))


def mended(name: str) -> str:
    """The sheet after the first mend offered for its deliberate mistake."""
    text = SHEETS[name]
    _, findings = sheet_read(text)
    assert findings, "the deliberate mistake goes unseen"
    return next(mend for finding in findings for mend in finding.mends).apply(text)


def sound_text(name: str) -> str:
    return mended(name) if name in MISTAKEN else SHEETS[name]


def test_every_sheet_has_its_truth() -> None:
    """No demo sheet goes untested and no truth stands alone."""
    assert set(TRUTHS) == set(SHEETS)


@pytest.mark.parametrize("name", SOUND)
def test_sound_sheet_is_read_as_danced(name: str) -> None:
    """Every weight change has the true foot, beat and facing, and the dance ends where it should."""
    assert_danced_as_told(reading.read(SHEETS[name]).dance, TRUTHS[name])


@pytest.mark.parametrize("name", SOUND)
def test_sound_sheet_is_loud_only_about_an_option_that_ends_elsewhere(name: str) -> None:
    """A sound dance raises nothing but the one easier option that leaves its dancers on another wall."""
    elsewhere = [("option-ends-elsewhere", o["section"]) for o in TRUTHS[name]["options"] if not o["agrees"]]
    _, findings = sheet_read(SHEETS[name])
    assert elsewhere == [(f.rule, f.section) for f in findings]


@pytest.mark.parametrize("name", sorted(TRUTHS))
def test_restarts_fall_where_they_are_told(name: str) -> None:
    """Each restart cuts the right wall after the right count, the room facing as told."""
    dance, _ = sheet_read(sound_text(name))
    cut = [w for w in unroll(dance, walls=8) if w.cut_by == "restart"]
    read = [(w.number, w.skipped + w.counts, facing_name(w.ends_facing)) for w in cut]
    assert [(r["wall"], r["after_counts"], r["facing"]) for r in TRUTHS[name]["restarts"]] == read


@pytest.mark.parametrize("name", STEP_CHANGED)
def test_step_change_replaces_the_steps_told(name: str) -> None:
    """A restart's step change puts the right feet on the right beats and leaves the steps before alone."""
    dance, _ = sheet_read(SHEETS[name])
    for restart, true in zip(dance.restarts, TRUTHS[name]["restarts"], strict=True):
        change = true.get("step_change", {"events": []})
        assert [(e["at"], e["foot"], e["weight"]) for e in change["events"]] == feet(restart.change)
        assert change.get("replaces_from") == restart.change_from


@pytest.mark.parametrize("name", sorted(n for n, t in TRUTHS.items() if t["tags"]))
def test_tags_follow_the_wall_told(name: str) -> None:
    """Each tag comes after the right wall, the room facing as told, with the right feet."""
    dance, _ = sheet_read(sound_text(name))
    tags = [w for w in unroll(dance, walls=8) if w.kind is WallKind.TAG]
    read = [(w.number, w.counts, facing_name(w.starts_facing)) for w in tags]
    assert [(t["after_wall"], t["counts"], t["facing"]) for t in TRUTHS[name]["tags"]] == read
    steps = [step for wall in tags for step in wall.steps]
    assert [(e["at"], e["foot"], e["weight"]) for e in TRUTHS[name]["tag_events"]] == feet(tuple(steps))


@pytest.mark.parametrize("name", sorted(n for n, t in TRUTHS.items() if t["options"]))
def test_options_are_found_where_they_stand(name: str) -> None:
    """Every easier option is read for its own section."""
    dance, _ = sheet_read(SHEETS[name])
    want = [(o.get("part", "main").casefold(), o["section"]) for o in TRUTHS[name]["options"]]
    assert want == [(o.part.casefold(), o.section) for o in dance.options]


@pytest.mark.parametrize("name", MISTAKEN)
def test_mistake_is_found_in_its_section(name: str) -> None:
    """The one deliberate mistake is reported, in the section that has it."""
    section = int(TRUTHS[name]["mistake"]["where"].split()[1])
    _, findings = sheet_read(SHEETS[name])
    assert section in {f.section for f in findings}


@pytest.mark.parametrize("name", MISTAKEN)
def test_first_mend_restores_the_dance(name: str) -> None:
    """After the first mend offered, the dance is the true one and nothing is left to settle."""
    dance, findings = sheet_read(mended(name))
    assert_danced_as_told(dance, TRUTHS[name])
    assert findings == []
