"""What was read, put together as the dance."""

from __future__ import annotations

from fractions import Fraction

from wallwise.dance.model import Dance, Part, Section, Tag
from wallwise.reading.headings import is_ending
from wallwise.reading.record import Reading
from wallwise.reading.restarts import restarts_of
from wallwise.reading.tag_cuts import cut_part
from wallwise.reading.tag_repeats import part_again, part_times


def dance_of(reading: Reading) -> Dance:
    """The dance: its parts in order, what the header declares, restarts, tags, ending and options."""
    declared, out = reading.declared, reading.outline
    names = [part.name for part in out.parts if not part.extra]
    extras = {name: read.part for name, read in reading.parts.items() if read.text.extra}
    ending = next((part for name, part in extras.items() if is_ending(name)), None)
    tags = _tags(reading, extras)
    # a sequence of a dance without lettered parts tells nothing that its one part does not
    sequence = reading.orders.sequence if names != ["main"] else None
    if sequence is not None:
        placed = {tag.part.name for tag in tags}
        tags += [Tag(0, part) for name, part in extras.items() if part is not ending and name not in placed]
    return Dance(
        title=declared.title, parts=tuple(reading.parts[name].part for name in names),
        starts_on=reading.main.solution.started.other, beats_per_bar=out.bar, level=declared.level,
        choreographer=declared.choreographer, music=declared.music, intro_counts=declared.intro_counts,
        bpm=declared.bpm, restarts=restarts_of(reading), tags=tuple(tags), sequence=sequence,
        ending=ending, options=tuple(told.option for told in reading.options),
    )  # fmt: skip


def _tags(reading: Reading, extras: dict[str, Part]) -> list[Tag]:
    """The tags ordered; one whose steps are told nowhere is so many counts without a step."""
    tags = []
    for order in reading.orders.tags:
        part = extras.get(order.part)
        if part is None and order.again is not None:
            part = part_again(reading.main.part, order.again)
        elif part is not None:
            part = cut_part(part, order.cut) if order.cut is not None else part
            part = part_times(part, order.times) if order.times > 1 else part
        if part is None and order.counts is not None:
            part = Part("Tag", (Section(1, Fraction(1), Fraction(order.counts), ()),))
        if part is not None:
            tags.append(Tag(order.after_wall, part, order.inside, order.span))
    return tags
