"""What is danced inside a wall goes on with that wall; a step change may stand apart from its restart.

What the words mean is common practice, no source.
"""

from __future__ import annotations

import pytest

from wallwise.checks.catalogue import findings_of
from wallwise.dance.model import Foot
from wallwise.dance.walls import unroll
from wallwise.reading import read
from wallwise.reading.changes import changed_to

DANCE = """Tin Lantern
16 counts, 1 wall, weight on left

[1-8]
1-4 Walk forward R, L, R, kick L
5-7 Walk back L, R, L
8 Step R beside L
[9-16]
1-4 Rock L forward, recover R, rock L back, recover R
5-7 Walk forward L, R, L
8 Touch R beside L
"""


@pytest.mark.parametrize(
    "bridge",
    [
        "Bridge: on wall 2, after 8 counts, dance these 2 counts, then carry on\n1-2 Sway L, sway R",
        "Bridge (wall 2, after count 8):\n1-2 Step L to side, recover R",
    ],
)
def test_a_bridge_begins_and_ends_as_the_wall_stands(bridge: str) -> None:
    """Its first foot is the one that is free inside the wall, and so is the foot that it frees."""
    told = read(f"{DANCE}\n{bridge}\n")
    steps = next(part for name, part in told.parts.items() if part.text.extra).solution.events
    assert [event.foot for event in steps] == [Foot.LEFT, Foot.RIGHT]
    assert [finding.rule for finding in findings_of(told) if finding.loud] == []


@pytest.mark.parametrize(
    ("told", "steps"),
    [
        ("Step change for the restart on wall 5, count 16: L to side", "L to side"),
        ("Change for wall 3: stomp R, stomp L", "stomp R, stomp L"),
        ("Change count 8 for a touch R beside L", "a touch R beside L"),
    ],
)
def test_a_change_is_told_behind_what_it_is_for(told: str, steps: str) -> None:
    """Where a change is *for* a wall or a restart, its steps follow the colon."""
    assert changed_to(told).words == steps


def test_what_a_change_leaves_out_is_not_danced() -> None:
    """A turn that the change leaves out is not made: the restart faces as the wall began."""
    turning = DANCE.replace("8 Touch R beside L", "8 Turn 1/4 right stepping R to side").replace(
        "16 c", "24 c"
    )
    notes = "Restart on wall 2 after 16 counts with a step change, facing 3:00\n"
    notes += "Step change for the restart on wall 2, count 16: touch R to side without the 1/4 turn.\n"
    rest = "[17-24]\n1-4 Rock L forward, recover R, rock L back, recover R\n5-8 Walk back L, R, L, touch R\n"
    walls = unroll(read(f"{turning}{rest}\n{notes}").dance, walls=3)
    assert walls[1].starts_facing == walls[2].starts_facing
