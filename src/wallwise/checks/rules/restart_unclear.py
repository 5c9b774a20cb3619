"""A restart or tag whose wall or count is told nowhere, or told in two ways."""

from collections.abc import Iterator

from wallwise.checks.rule import Rule
from wallwise.checks.sight import whole_sheet
from wallwise.dance.finding import Finding, Severity
from wallwise.reading import Reading


def _find(reading: Reading) -> Iterator[Finding]:
    orders = reading.orders
    seen: dict[int, list[str]] = {}
    for order in orders.restarts:
        if order.after is None:
            yield whole_sheet(
                RULE.name,
                RULE.severity,
                order.span,
                f"The sheet restarts on wall {order.wall} but does not say after how many counts.",
            )
        else:
            seen.setdefault(order.wall, []).append(str(order.after))
    for wall, afters in seen.items():
        if len(afters) > 1:
            span = next(o.span for o in orders.restarts if o.wall == wall)
            yield whole_sheet(
                RULE.name,
                RULE.severity,
                span,
                f"The restart on wall {wall} is told twice, after {' and after '.join(afters)} counts.",
            )
    if not orders.restarts and not orders.tags:
        for remark in orders.vague:
            yield whole_sheet(
                RULE.name, RULE.severity, remark.line.span(remark.start, remark.end),
                "A restart or tag is told here, but not on which wall.",
            )  # fmt: skip
    told = {t.part.name.lower() for t in reading.dance.tags}
    called = {n.lower() for n in reading.dance.sequence or ()}
    for name, part in reading.parts.items():
        lowered = name.lower()
        if (
            part.text.extra
            and lowered not in told
            and lowered not in called
            and part.part is not reading.dance.ending
        ):
            yield whole_sheet(
                RULE.name, RULE.severity, part.passages[0].span_at(None) if part.passages else None,
                f"“{name}” has steps, but the sheet does not say after which wall it is danced.", part=name,
            )  # fmt: skip


RULE = Rule(
    "restart-unclear",
    Severity.WARNING,
    "A restart's or tag's wall or count is told nowhere, or in two ways.",
    _find,
)
