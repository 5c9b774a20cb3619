"""Restarts, tags and the sequence, made to say what is danced."""

import re
from collections.abc import Iterator
from itertools import pairwise

from wallwise.checks.edits.edit import Edit
from wallwise.checks.edits.spelling import reclocked
from wallwise.checks.sight import clock
from wallwise.dance.model import Span
from wallwise.dance.walls import unroll
from wallwise.reading import Reading
from wallwise.reading.outline import PartText
from wallwise.reading.restart_orders import RestartOrder
from wallwise.reading.tokens import TURN

_MOST_WALLS = 40


def order_edits(reading: Reading) -> Iterator[Edit]:
    """The facings of restarts and tags, the counts after which a restart falls, parts of the sequence."""
    if reading.dance.parts and reading.dance.sequence is None:
        yield from _facings(reading)
    main = next((p.text for p in reading.parts.values() if not p.text.extra), None)
    if main is not None:
        for order in reading.orders.restarts:
            yield from _restart_counts(reading, order, main)
    yield from _sequence(reading)


def _facings(reading: Reading) -> Iterator[Edit]:
    """Restarts facing what the room faces at their end, tags what it faces at their start."""
    orders = reading.orders
    told: list[tuple[str, int, int | None, Span | None]] = []
    told += [("restart", o.wall, c.facing, c.span) for o in orders.restarts for c in o.claims]
    told += [("tag", o.after_wall, o.faces, o.faces_span) for o in orders.tags]
    told += [("start", wall, faces, span) for wall, faces, span in orders.starts]
    if not told:
        return
    walls = unroll(reading.dance, walls=min(max(wall for _, wall, _, _ in told), _MOST_WALLS))
    for kind, number, faces, span in told:
        kinds = ("wall", "start") if kind == "start" else (kind,)
        danced = next((w for w in walls if w.number == number and {w.cut_by, w.kind} & {*kinds}), None)
        if faces is None or span is None or danced is None:
            continue
        faced = int((danced.ends_facing if kind == "restart" else danced.starts_facing) * TURN)
        yield from _facing(reading.text, span, faced, kind)


def _facing(text: str, span: Span, faced: int, kind: str) -> Iterator[Edit]:
    shown = text[span.start : span.end]
    told = reclocked(shown, faced)
    if told != shown:
        yield Edit.of(span, told, says=f"facing {clock(faced)} at the {kind}", surprise=1.2)


def _restart_counts(reading: Reading, order: RestartOrder, main: PartText) -> Iterator[Edit]:
    """The restart after other counts, or after some where none are told."""
    if order.after is None:
        for end, surprise in _places(reading, order, main):
            place = Span(order.span.end, order.span.end)
            says = f"a restart after {end} counts"
            yield Edit.of(place, f" after {end} counts", says=says, surprise=surprise)
        return
    span = order.after_span
    if span is None or not re.search(r"\d", reading.text[span.start : span.end]):
        return
    for end, surprise in _places(reading, order, main):
        told = re.sub(r"\d+", str(end), reading.text[span.start : span.end], count=1)
        more = float(abs(end - order.after)) / 100
        yield Edit.of(span, told, says=f"a restart after {end} counts", surprise=surprise + more)


def _places(reading: Reading, order: RestartOrder, main: PartText) -> Iterator[tuple[int, float]]:
    """The counts a restart may fall after: those told of it elsewhere, ends of sections, full phrases."""
    told = {o.after for o in reading.orders.restarts if o.wall == order.wall}
    ends = {section.base + section.counts - 1 for section in main.sections}
    phrase = 2 * reading.dance.beats_per_bar
    for count in range(reading.dance.beats_per_bar, int(main.counts)):
        if count != order.after and (count in told or count in ends or count % phrase == 0):
            yield count, 1.0 if count in told else 1.3 if count in ends else 1.4


def _sequence(reading: Reading) -> Iterator[Edit]:
    """Another part in the sequence; the likeliest stands between the same neighbours elsewhere."""
    names = list(reading.dance.sequence or ())
    known = [p.name for p in reading.dance.parts] + [t.part.name for t in reading.dance.tags]
    pairs = list(pairwise(names))
    for i, (name, span) in enumerate(zip(names, reading.orders.sequence_spans, strict=False)):
        for other in known if name not in known else ():
            fits = sum(pairs.count((before, other)) for before in names[max(i - 1, 0) : i])
            fits += sum(pairs.count((other, after)) for after in names[i + 1 : i + 2])
            surprise = 1.5 - 0.1 * fits
            yield Edit.of(span, other, says=f"part {other} instead of {name}", surprise=surprise)
