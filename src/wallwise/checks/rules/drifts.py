"""A dance that wanders off across the floor, wall after wall the same way.

Only a dance without a turn can: where one repetition turns, the next ones go off in the other
directions, and when the room faces the front again it is back on its spot.
"""

from collections.abc import Iterator
from math import hypot

from wallwise.checks.rule import Rule
from wallwise.dance.clock import walls_of
from wallwise.dance.finding import Finding, Severity
from wallwise.floor.stance import Point
from wallwise.floor.trace import simulate
from wallwise.reading import Reading

# A dancer's own place is some 25 square feet, 1.52 metres either way: a rule of thumb of
# flooring vendors.  That half of it is too much is common practice, no source.
MOST_M = 1.52 / 2


def _find(reading: Reading) -> Iterator[Finding]:
    dance = reading.dance
    if dance.sequence is not None or not dance.parts or walls_of(dance.parts[0].net_turn) > 1:
        return
    travel = simulate(dance).travel
    if hypot(travel.x_m, travel.y_m) > MOST_M:
        yield RULE.on(
            None,
            f"Each wall ends about {_told(travel)} of where it began, and always the same way: "
            "leave room on that side, or take smaller steps.",
        )


def _told(travel: Point) -> str:
    """The way gone along and across the front, where it is more than a hand's breadth."""
    ways = [
        (abs(travel.y_m), "ahead" if travel.y_m > 0 else "behind"),
        (abs(travel.x_m), "to the right" if travel.x_m > 0 else "to the left"),
    ]
    return " and ".join(f"{far_m:.1f} metres {way}" for far_m, way in ways if far_m >= 0.1)


RULE = Rule("drifts", Severity.NOTE, "A dance that does not turn wanders across the floor.", _find)
