"""Dances worked out by hand, event by event, unrolled.

The truths beside the sheets of the corpus were worked out by their writers from the meaning
of the words, apart from this program: foot, weight and facing of every event, where the dance
ends, and where the room faces at each restart and tag.  The unrolled dance must come to the same.
"""

import json
from dataclasses import replace
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest

from wallwise.dance.clock import facing_name, parse_facing
from wallwise.dance.codec import restart_rows, tag_rows
from wallwise.dance.model import Dance, Foot, Kind, Part, Restart, Section, Step, Tag
from wallwise.dance.walls import unroll, wall_count
from wallwise.floor.trace import simulate

CORPUS = Path(__file__).parent.parent / "corpus"
EXTRAS = ("Tag", "Bridge")
Truth = dict[str, Any]

# Truths that do not tell how a tag turns the room, or which steps a restart changes.
TURNS_UNTOLD = {
    "08-salt-on-the-stair", "13-sugar-bowl-cha", "16-halfpenny-harbour", "23-paper-crane-postbox",
}  # fmt: skip
TRUTHS = sorted(path for path in CORPUS.glob("*/*/truth.json") if path.parent.name not in TURNS_UNTOLD)
BAR = 4


def _steps(events: list[Truth]) -> tuple[Step, ...]:
    """The events as bare steps; only foot, weight and facing are told by a truth."""
    facing = Fraction(0)
    steps = []
    for event in events:
        turn = parse_facing(event["facing"]) - facing
        facing += turn
        foot = Foot(event["foot"])
        kind = Kind.SWIVEL if foot is Foot.BOTH else Kind.STEP if event["weight"] else Kind.TOUCH
        at = Fraction(event["at"]).limit_denominator(12)
        steps.append(Step(at, foot, kind, turn=turn))
    return tuple(steps)


def _part(name: str, events: list[Truth], counts: int) -> Part:
    mine = [event for event in events if event.get("part", "main").casefold() == name.casefold()]
    return Part(name, (Section(1, Fraction(1), Fraction(counts), _steps(mine)),))


def _part_counts(truth: Truth) -> dict[str, int]:
    """The counts of every part by its name, whole bars as far as its last event where they are not told."""
    if "parts" in truth:
        return {name: part["counts"] for name, part in truth["parts"].items()}
    ends: dict[str, float] = {}
    for event in truth["events"]:
        ends[event["part"]] = max(ends.get(event["part"], 0), int(event["at"]))
    called = {name.casefold(): name for name in truth["sequence"]}
    return {called.get(name.casefold(), name): -(-int(end) // BAR) * BAR for name, end in ends.items()}


def _restart(row: Truth) -> Restart:
    change = row.get("step_change")
    if change is None:
        return Restart(row["wall"], Fraction(row["after_counts"]))
    # The facings of a change are those of its wall: only its turns are the same on every wall.
    turns = [Fraction(event.get("turn_eighths", 0), 8) for event in change["events"]]
    steps = tuple(replace(s, turn=turn) for s, turn in zip(_steps(change["events"]), turns, strict=True))
    return Restart(row["wall"], Fraction(row["after_counts"]), steps, Fraction(change["replaces_from"]))


def _dance(truth: Truth) -> Dance:
    common: Truth = {
        "title": truth["title"],
        "starts_on": Foot(truth["starts_with"]),
        "restarts": tuple(_restart(row) for row in truth["restarts"]),
    }
    if truth.get("sequence") is None:
        parts = (_part("main", truth["events"], truth["counts"]),)
        tag_events = truth.get("tag_events", [])
        tags = tuple(Tag(row["after_wall"], _part("tag", tag_events, row["counts"])) for row in truth["tags"])
        return Dance(parts=parts, tags=tags, **common)
    named = [_part(name, truth["events"], counts) for name, counts in _part_counts(truth).items()]
    return Dance(
        parts=tuple(part for part in named if part.name not in EXTRAS),
        tags=tuple(Tag(0, part) for part in named if part.name in EXTRAS),
        sequence=tuple(truth["sequence"]),
        **common,
    )


@pytest.mark.parametrize("path", TRUTHS, ids=lambda path: path.parent.name)
def test_unrolled_as_worked_out_by_hand(path: Path) -> None:
    """Every truth can be danced, and ends, restarts and turns the room as its writer found."""
    truth = json.loads(path.read_text(encoding="utf-8"))
    dance = _dance(truth)
    plain = dance if dance.sequence else replace(dance, restarts=(), tags=())
    end = unroll(plain, walls=None if dance.sequence else 1)[-1]

    assert truth["counts"] == dance.counts
    assert truth.get("walls") in (wall_count(dance), None)
    assert truth.get("ends_facing") in (facing_name(end.ends_facing), None)
    assert truth.get("ends_weight") in (end.ends_weight.value, None) or end.ends_weight is Foot.BOTH
    assert [(r["wall"], r["after_counts"], r["facing"]) for r in truth["restarts"]] == [
        (r["wall"], r["after_counts"], r["facing"]) for r in restart_rows(dance)
    ]
    assert [tuple(row.values()) for row in truth["tags"]] == [tuple(row.values()) for row in tag_rows(dance)]
    assert () == simulate(dance, walls=None).refused
