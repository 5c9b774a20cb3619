"""A restart or tag is said to face one wall and faces another."""

from collections.abc import Iterator

from wallwise.checks.rule import Rule
from wallwise.checks.sight import clock, whole_sheet
from wallwise.dance.clock import facing_name
from wallwise.dance.finding import Finding, Severity
from wallwise.dance.walls import WallKind, unroll
from wallwise.reading import Reading
from wallwise.reading.tokens import TURN


def _find(reading: Reading) -> Iterator[Finding]:
    dance = reading.dance
    if not dance.parts or dance.sequence is not None:
        return
    last = max([r.wall for r in dance.restarts] + [t.after_wall for t in dance.tags], default=0)
    if not last or last > 40:
        return
    walls = unroll(dance, walls=last)
    for order in reading.orders.restarts:
        cut = next((w for w in walls if w.number == order.wall and w.cut_by == "restart"), None)
        if cut is not None and order.faces is not None and order.faces != cut.ends_facing * TURN:
            if order.faces == cut.starts_facing * TURN and order.faces_twice:
                continue
            yield whole_sheet(
                RULE.name, RULE.severity, order.faces_span or order.span,
                f"The restart on wall {order.wall} is said to face {clock(order.faces)}, but the room faces {facing_name(cut.ends_facing)} then.",
            )  # fmt: skip
    for tag in reading.orders.tags:
        danced = next((w for w in walls if w.kind is WallKind.TAG and w.number == tag.after_wall), None)
        if (
            danced is not None
            and tag.faces is not None
            and tag.faces != danced.starts_facing * TURN
            and tag.faces != danced.ends_facing * TURN
        ):
            yield whole_sheet(
                RULE.name, RULE.severity, tag.faces_span or tag.span,
                f"The tag after wall {tag.after_wall} is said to face {clock(tag.faces)}, but the room faces {facing_name(danced.starts_facing)} then.",
            )  # fmt: skip


RULE = Rule(
    "restart-facing", Severity.WARNING, "A restart or tag is said to face one wall and faces another.", _find
)
