"""A part's text to passages: every piece of it with the ways to lay it on the part's beats."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from wallwise.reading.asides import counts_of_all
from wallwise.reading.beats import place_section
from wallwise.reading.claims import claim_before
from wallwise.reading.gathered import gather, listed
from wallwise.reading.layout import Layout
from wallwise.reading.marks import whole_of
from wallwise.reading.outline import Group, PartText, SectionText
from wallwise.reading.pieces import few, in_time, items_in, on_beats, words_led
from wallwise.reading.record import Passage
from wallwise.reading.repeats import counts_again, named_again, repeated, same_of

_DENSEST = 4  # things told of one count
_UNSURE = 1.0  # a repeat's words that read better than this by themselves are no repeat
_SPELT_OTHERWISE = 2.0  # a figure whose steps the sheet has told is danced as these
# How long a section is that does not say so, in sections of the usual length, with what it costs.
_LENGTHS = (
    (Fraction(1), 0.0), (Fraction(2), 0.7), (Fraction(1, 2), 0.7),
    (Fraction(3, 2), 1.2), (Fraction(3), 1.5), (Fraction(4), 1.5),
)  # fmt: skip


def passages_of(part: PartText, *, bar: int, usual: int, surely: bool) -> list[Passage]:
    """Every piece of a part with its layouts, sections placed one after the other.

    `bar` is the beats of a bar, `usual` the counts of a section that does not say how long it is,
    `surely` whether it has just these.
    """
    lengths = _LENGTHS[:1] if surely else _LENGTHS
    cursor, wrapped = Fraction(1), False
    passages: list[Passage] = []
    for section in part.sections:
        section.base = cursor
        place_section(section, cursor, bar=bar, usual=usual, danced=wrapped)
        wrapped = section.wraps
        gather(section.groups)
        marked = any(group.beats for group in section.groups)
        for group in section.groups if marked else ():
            passages.append(_marked(section, group, passages) if group.beats else _unplaced(section, group))
            claim_before(passages)
        if not marked:
            passages.append(_unmarked(section, passages, usual, lengths))
        cursor += section.counts
    return passages


def _marked(section: SectionText, group: Group, before: list[Passage]) -> Passage:
    """A piece under a count mark."""
    acts = items_in(group.text)[1]
    led = _led_by(group, before[-1]) if before and before[-1].section is section else ""
    layouts = list(on_beats(group.text, group.beats, led))
    if group.written is not None and group.written.listed:
        layouts += on_beats(group.text, whole_of(group.beats), led)
    counts = Fraction(group.beats[-1] // 1 - group.beats[0] // 1 + 1)
    same = same_of(acts)
    spelt = named_again(acts, group.beats[0], counts, before=before, section=section)
    if spelt:
        layouts = spelt + [replace(lay, cost=lay.cost + _SPELT_OTHERWISE) for lay in layouts]
    elif same is not None and (not layouts or layouts[0].cost > _UNSURE):
        layouts = repeated(same, group.beats[0], counts, before=before, section=section) + layouts
    return Passage(section, group, few(layouts), list(acts), led)


def _led_by(group: Group, before: Passage) -> str:
    """The words before a piece that it leaves its verb to ("heels right (5), centre (6)"); else nothing."""
    return words_led(group.text, f"{before.led}, {before.group.text}" if before.led else before.group.text)


def _unplaced(section: SectionText, group: Group) -> Passage:
    """A line among counted ones that has no count and none left for it: nothing of it can be danced."""
    return Passage(section, group, [], list(items_in(group.text)[1]))


def _unmarked(
    section: SectionText, before: list[Passage], usual: int, lengths: tuple[tuple[Fraction, float], ...]
) -> Passage:
    """A section without count marks: its figures last as long as they last, and fill it."""
    group = _one_group(section)
    same = same_of(items_in(group.text)[1])
    told = section.counts if section.range else _counts_in(section)
    if same is not None and not section.range:
        told = counts_again(same, before, section) or told
    sizes = ((told, 0.0),) if told else tuple((usual * times, extra) for times, extra in lengths)
    danced = sum(1 for item in items_in(group.text)[0] if item.options)
    sizes = tuple(size for size in sizes if danced <= size[0] * _DENSEST) or sizes[-1:]
    best: list[Layout] = []
    chosen = sizes[0][0]
    for counts, extra in sizes:
        layouts = _filling(section, group, counts, before=before)
        if extra:
            layouts = [replace(lay, cost=lay.cost + extra) for lay in layouts]
        if layouts and (not best or layouts[0].cost < best[0].cost):
            best, chosen = layouts, counts
    section.counts = chosen
    if best and best[0].over:
        section.counts = chosen + best[0].over
    elif best and best[0].left and best[0].moves and not section.range:
        section.counts = chosen - best[0].left
    return Passage(section, group, few(best), list(items_in(group.text)[1]))


def _filling(section: SectionText, group: Group, counts: Fraction, *, before: list[Passage]) -> list[Layout]:
    """The ways to fill that many counts with the text, or with what it repeats, cheapest first."""
    layouts = list(in_time(group.text, section.base, counts))
    same = same_of(items_in(group.text)[1])
    if same is not None:
        layouts += repeated(same, section.base, counts, before=before, section=section)
        layouts.sort(key=lambda lay: lay.cost)
    return layouts


def _one_group(section: SectionText) -> Group:
    """The lines of a section without marks as one stretch of text."""
    if len(section.groups) == 1:
        return section.groups[0]
    line = listed(section.groups)
    return Group(line, 0, len(line.text), None)


def _counts_in(section: SectionText) -> Fraction | None:
    """How long a section says it is, in its heading or else its first line: "(4 counts)"."""
    line = section.heading if section.heading is not None else section.groups[0].line
    lasts = counts_of_all(line.text)
    return None if lasts is None else Fraction(lasts)
