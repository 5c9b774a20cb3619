"""A restart, a tag or the start of a wall is said to face one wall and faces another."""

from collections.abc import Iterator

from wallwise.checks.rule import Rule
from wallwise.checks.sight import clock
from wallwise.dance.clock import facing_name
from wallwise.dance.finding import Finding, Severity
from wallwise.dance.walls import Wall, WallKind, unroll
from wallwise.reading import Reading
from wallwise.reading.restart_orders import RestartOrder
from wallwise.reading.tag_orders import TagOrder
from wallwise.reading.tokens import TURN

_MOST_WALLS = 40  # no song is longer


def _find(reading: Reading) -> Iterator[Finding]:
    dance, orders = reading.dance, reading.orders
    named = [r.wall for r in dance.restarts] + [t.after_wall for t in dance.tags]
    last = max(named + [wall for wall, *_ in orders.starts], default=0)
    if not dance.parts or dance.sequence is not None or not 0 < last <= _MOST_WALLS:
        return
    walls = unroll(dance, walls=last)
    for restart in orders.restarts:
        yield from _at_restart(reading, restart, [w for w in walls if w.number == restart.wall])
    for tag in orders.tags:
        yield from _at_tag(tag, [w for w in walls if w.number == tag.after_wall])
    for number, faces, span in orders.starts:
        wall = next((w for w in walls if w.number == number and w.kind is WallKind.WALL), None)
        if wall is not None and faces != wall.starts_facing * TURN:
            yield RULE.on(
                span,
                f"Wall {number} is said to start facing {clock(faces)}, "
                f"but the room faces {facing_name(wall.starts_facing)} then.",
            )


def _at_restart(reading: Reading, order: RestartOrder, walls: list[Wall]) -> Iterator[Finding]:
    cut = next((w for w in walls if w.cut_by == "restart"), None)
    if cut is None:
        return
    wrong = [claim for claim in order.claims if claim.facing != cut.ends_facing * TURN]
    if len({claim.facing for claim in order.claims}) > 1:  # one of them can be where the wall starts
        wrong = [claim for claim in wrong if claim.facing != cut.starts_facing * TURN]
    if not wrong:
        return
    yield RULE.at_beat(
        reading.main.text,
        cut.counts + cut.skipped,
        f"The restart on wall {order.wall} is said to face {clock(wrong[-1].facing)}, "
        f"but the room faces {facing_name(cut.ends_facing)} then.",
        span=wrong[-1].span,
    )


def _at_tag(order: TagOrder, walls: list[Wall]) -> Iterator[Finding]:
    tag = next((w for w in walls if w.kind is WallKind.TAG), None)
    if tag is None or order.faces is None:
        return
    if order.faces not in (tag.starts_facing * TURN, tag.ends_facing * TURN):
        yield RULE.on(
            order.faces_span or order.span,
            f"The tag after wall {order.after_wall} is said to face {clock(order.faces)}, "
            f"but the room faces {facing_name(tag.starts_facing)} then.",
        )


RULE = Rule(
    "restart-facing",
    Severity.WARNING,
    "A restart, a tag or the start of a wall is said to face one wall and faces another.",
    _find,
)
