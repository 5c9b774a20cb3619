"""The parts of a sheet, each solved: the dance's own first, then its tags, bridges and ending."""

from __future__ import annotations

from wallwise.dance.model import Foot
from wallwise.reading.claims import claim_beside, claim_headed, end_claim, seen_from, without_claims
from wallwise.reading.goals import dance_goal, ending_goal, tag_goal
from wallwise.reading.headings import is_ending
from wallwise.reading.orders import read_orders
from wallwise.reading.outline import Outline, PartText, Remark
from wallwise.reading.passages import passages_of
from wallwise.reading.record import PartReading, Passage, Reading
from wallwise.reading.sequence import read_sequence
from wallwise.reading.solve import Goal, Solution, solve
from wallwise.reading.steps import part_of
from wallwise.reading.tokens import TURN


def read_parts(reading: Reading) -> None:
    """Fill in the reading's parts, its orders and what it claims of the end."""
    out = reading.outline
    header = [Remark(line, 0, len(line.text)) for line in out.header]
    usual = _usual(out)
    surely = _is_sum(reading, usual)
    _declare_lengths(reading)
    passages = {
        part.name: passages_of(part, bar=out.bar, usual=usual, surely=surely and not part.extra)
        for part in out.parts
    }
    _name_tags(out, header, passages)
    reading.orders = read_orders(out, header)
    phrased = reading.orders.sequence is not None
    reading.end_claim = None if phrased else end_claim(out)
    claim_beside(reading, passages)
    for row in passages.values():
        claim_headed(row)
    goal = dance_goal(reading, phrased=phrased)
    ended = Foot.LEFT
    for part in out.parts:
        if not part.extra:
            ended = _solve(reading, part, passages[part.name], goal=goal).ended
    for part in out.parts:
        if part.extra:
            _solve_extra(reading, part, passages[part.name], ended=ended)


def _declare_lengths(reading: Reading) -> None:
    """Give tags without a count mark the length that the sheet declares for them."""
    for part in reading.outline.parts:
        declared = reading.declared.part_counts.get(part.name.lower())
        marked = any(group.written is not None for section in part.sections for group in section.groups)
        if not part.extra or declared is None or declared.value < 1:
            continue
        if len(part.sections) == 1 and not marked:
            part.sections[0].range = part.sections[0].range or (1, declared.value)


def _solve(reading: Reading, part: PartText, passages: list[Passage], *, goal: Goal) -> Solution:
    solution = solve([passage.layouts for passage in passages], goal)
    read = PartReading(part, passages, goal, solution, part_of(part, passages, solution))
    reading.parts[part.name] = read
    return solution


def _solve_extra(reading: Reading, part: PartText, passages: list[Passage], *, ended: Foot) -> None:
    """Solve a tag, a bridge or an ending; `ended` is the foot that bears the weight after the dance."""
    goal = _bridge_goal(reading, part) or tag_goal(ended, reading.main.solution.started)
    if is_ending(part.name):
        # Where the room faces when the song closes is not known here.
        goal = ending_goal()
        for passage in passages:
            passage.layouts = [without_claims(layout) for layout in passage.layouts]
    # A tag's facings are told as if it began at the front, or as the room faces when it is danced.
    seen = [
        [[seen_from(layout, facing) for layout in passage.layouts] for passage in passages]
        for facing in (0, *_begun_facing(reading, part))
    ]
    likeliest = min(seen, key=lambda layouts: solve(layouts, goal).cost)
    for passage, layouts in zip(passages, likeliest, strict=True):
        passage.layouts = layouts
    _solve(reading, part, passages, goal=goal)


def _begun_facing(reading: Reading, part: PartText) -> list[int]:
    """Where the room may face when a tag begins, in 1/48 of a turn: as it says, or as the walls turn."""
    orders = [order for order in reading.orders.tags if order.part == part.name]
    facings = [order.faces for order in orders if order.faces is not None]
    facings += [reading.main.solution.facing * order.after_wall % TURN for order in orders]
    return [facing for facing in dict.fromkeys(facings) if facing]


def _bridge_goal(reading: Reading, part: PartText) -> Goal | None:
    """The goal of what is danced inside a wall and goes on with it; None for what stands at a wall's end."""
    inside = {order.inside for order in reading.orders.tags if order.part == part.name}
    if len(inside) != 1 or (after := inside.pop()) is None:
        return None
    weight, _ = reading.main.stance_before(after + 1)
    return tag_goal(weight, weight)


def _usual(out: Outline) -> int:
    """The counts of a section that does not say how long it is: as its fellows, else two bars."""
    ranges = [r[1] - r[0] + 1 for part in out.parts for s in part.sections if (r := s.range) is not None]
    if ranges:
        return max(set(ranges), key=ranges.count)
    return 2 * out.bar


def _is_sum(reading: Reading, usual: int) -> bool:
    """Whether the counts declared are those of all sections of the dance, each of the `usual` length."""
    told = reading.declared.counts
    sections = [s for part in reading.outline.parts if not part.extra for s in part.sections]
    return told is not None and told.value == usual * len(sections)


def _name_tags(out: Outline, header: list[Remark], passages: dict[str, list[Passage]]) -> None:
    """Call an extra part a tag, in its name, where no sequence calls it by the name it has."""
    names, _ = read_sequence([*header, *out.remarks]) or ((), ())
    called = {name.lower() for name in names}
    for part in out.parts:
        old = part.name
        if not part.extra or old.lower() in called or old.lower().startswith("tag"):
            continue
        part.name = f"Tag ({old.lower()})"
        passages[part.name] = passages.pop(old)
        for remark in out.remarks:
            if remark.part == old:
                remark.part = part.name
