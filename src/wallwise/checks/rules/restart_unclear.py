"""A restart or tag whose wall or count is told nowhere, or told in two ways."""

from collections import defaultdict
from collections.abc import Iterator
from fractions import Fraction

from wallwise.checks.rule import Rule
from wallwise.dance.finding import Finding, Severity
from wallwise.reading import Reading
from wallwise.reading.orders import Orders


def _find(reading: Reading) -> Iterator[Finding]:
    yield from _no_count(reading.orders)
    yield from _told_twice(reading)
    yield from _unknown_change(reading)
    yield from _no_wall(reading.orders)
    yield from _no_steps(reading)
    yield from _other_size(reading)
    yield from _each_or_last(reading.orders)
    yield from _fewer(reading)
    yield from _unread(reading.orders)
    yield from _never_called(reading)


def _no_count(orders: Orders) -> Iterator[Finding]:
    for order in orders.restarts:
        if order.after is None:
            yield RULE.on(
                order.span,
                f"The sheet restarts on wall {order.wall} but does not say after how many counts.",
            )


def _told_twice(reading: Reading) -> Iterator[Finding]:
    told: dict[int, list[Fraction]] = defaultdict(list)
    spans = {order.wall: order.span for order in reversed(reading.orders.restarts)}
    for order in reading.orders.restarts:
        told[order.wall] += [order.otherwise] if order.otherwise is not None else []
    for restart in reading.dance.restarts:
        told[restart.wall].append(restart.after_counts)
    for wall, places in told.items():
        afters = [str(place) for place in dict.fromkeys(places)]
        if len(afters) > 1:
            yield RULE.on(
                spans[wall],
                f"The restart on wall {wall} is told twice, after {' and after '.join(afters)} counts.",
            )


def _unknown_change(reading: Reading) -> Iterator[Finding]:
    changed = {restart.wall for restart in reading.dance.restarts if restart.change}
    for order in reading.orders.restarts:
        told = order.changing or ((order.wall,) if order.change is not None else ())
        if told and not changed.intersection(told):
            yield RULE.on(
                order.span,
                f"The restart on wall {order.wall} is said to change steps, but to which could not be read.",
            )


def _no_wall(orders: Orders) -> Iterator[Finding]:
    afters = {order.after for order in orders.restarts}
    for remark, after in orders.vague:
        if (orders.restarts or orders.tags) and (after is None or after in afters):
            continue  # what it leaves out is told elsewhere
        yield RULE.on(
            remark.line.span(remark.start, remark.end),
            "A restart or tag is told here, but not on which wall.",
        )


def _no_steps(reading: Reading) -> Iterator[Finding]:
    danced = {tag.after_wall for tag in reading.dance.tags}
    for order in reading.orders.tags:
        if order.after_wall not in danced:
            yield RULE.on(
                order.span,
                f"A tag is told after wall {order.after_wall}, but neither its steps nor its counts.",
            )


def _other_size(reading: Reading) -> Iterator[Finding]:
    """Tags whose steps last other counts than are told of them after one of the walls."""
    danced = {tag.after_wall: tag.part.counts for tag in reading.dance.tags}
    for order in reading.orders.tags:
        counts = danced.get(order.after_wall)
        if (
            order.counts is not None
            and counts is not None
            and counts not in (order.counts, order.counts * order.times)
        ):
            yield RULE.on(
                order.span,
                f"The tag after wall {order.after_wall} is said to have {order.counts} counts, "
                f"but its steps last {counts}.",
            )


def _each_or_last(orders: Orders) -> Iterator[Finding]:
    loose = [order for order in orders.tags if order.loose]
    for order in loose[:-1]:
        yield RULE.on(
            order.span,
            f"Whether the tag is danced after wall {order.after_wall} too, "
            "or only after the last of the walls told here, is not clear.",
        )


def _fewer(reading: Reading) -> Iterator[Finding]:
    """Fewer restarts or tags found than the sheet says there are; a sequence tells its own."""
    orders = reading.orders
    if orders.sequence is not None:
        return
    found = {"restart": len(orders.restarts), "tag": len(orders.tags)}
    for kind, many, span in orders.announced:
        if 0 < found[kind] < many:
            yield RULE.on(span, f"The sheet speaks of {many} {kind}s, but only {found[kind]} could be found.")


def _unread(orders: Orders) -> Iterator[Finding]:
    for remark in orders.unread:
        yield RULE.on(
            remark.line.span(remark.start, remark.end),
            "Something is done on a wall of its own here, but what it is could not be read.",
        )


def _never_called(reading: Reading) -> Iterator[Finding]:
    """Tags and bridges with steps that neither an order nor the sequence calls for."""
    dance = reading.dance
    called = {name.lower() for name in (*(t.part.name for t in dance.tags), *(dance.sequence or ()))}
    for name, part in reading.parts.items():
        if part.text.extra and name.lower() not in called and part.part is not dance.ending:
            yield RULE.on(
                part.passages[0].span_at(None) if part.passages else None,
                f"“{name}” has steps, but the sheet does not say after which wall it is danced.",
                part=name,
            )


RULE = Rule(
    "restart-unclear",
    Severity.WARNING,
    "A restart's or tag's wall or count is told nowhere, or in two ways.",
    _find,
)
