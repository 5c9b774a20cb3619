"""One order a wall: what one sentence leaves out another tells."""

from fractions import Fraction

from wallwise.reading.restart_orders import RestartOrder
from wallwise.reading.tag_orders import TagOrder


def merged_restarts(told: list[RestartOrder]) -> list[RestartOrder]:
    """One order for each restart, by its wall and counts; of two told without counts each is another."""
    merged: list[RestartOrder] = []
    for order in told:
        held = next((h for h in merged if is_same_restart(h, order)), None)
        if held is None:
            merged.append(order)
            continue
        merge(held, order)
        # It goes to the end: a restart told next without its counts is rather one of the others.
        merged.remove(held)
        merged.append(held)
    return sorted(merged, key=lambda order: (order.wall, order.after or Fraction(0)))


def merge(held: RestartOrder, order: RestartOrder) -> None:
    """Take into one order what another tells of the same restart."""
    held.after = held.after if held.after is not None else order.after
    held.after_span = held.after_span or order.after_span
    held.otherwise = held.otherwise or order.otherwise
    held.claims += order.claims
    held.change, held.changing = held.change or order.change, held.changing or order.changing


def is_same_restart(held: RestartOrder, order: RestartOrder) -> bool:
    """Whether two orders can be of the same restart: on one wall, and not after different counts."""
    return held.wall == order.wall and (
        held.after == order.after or held.after is None or order.after is None
    )


def merged_tags(told: list[TagOrder]) -> list[TagOrder]:
    """One order for each wall; those told only perhaps go where one of them is told for certain."""
    merged: dict[int, TagOrder] = {}
    perhaps = {order.after_wall for order in told if order.loose}
    certain = [order for order in told if not order.loose]
    settled = any(order.after_wall in perhaps for order in certain)
    for order in certain if settled else told:
        held = merged.setdefault(order.after_wall, order)
        held.counts = held.counts or order.counts
        held.part = held.part or order.part
        held.again = held.again or order.again
        held.cut = held.cut or order.cut
        held.times = max(held.times, order.times)
        held.inside = held.inside if held.inside is not None else order.inside
        if held.faces is None:
            held.faces, held.faces_span = order.faces, order.faces_span
    return [merged[wall] for wall in sorted(merged)]
