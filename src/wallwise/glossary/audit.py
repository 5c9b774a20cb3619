"""What is wrong with the glossary, in plain sentences; nothing when all is well.

Meant for whoever adds a figure: each sentence names the entry and what to change.
"""

import re
from collections import Counter
from collections.abc import Iterable, Iterator
from dataclasses import replace
from fractions import Fraction
from itertools import pairwise

from wallwise.dance.mirror import mirror_step
from wallwise.dance.model import Foot, Kind, Step
from wallwise.dance.weight import weight_after
from wallwise.glossary.entry import Example, Figure, Term, Way

_NAME = re.compile(r"[a-z0-9/&]+( [a-z0-9/&]+)*")
_CALL_WORDS = 5  # what can be said in the beat or two before a figure
_LONGEST = 16  # counts: no figure that has a name is longer than two eights


def audit(figures: Iterable[Figure], terms: Iterable[Term]) -> list[str]:
    """A sentence for each fault, in the order of the entries; an empty list for none."""
    all_figures, all_terms = list(figures), list(terms)
    return [
        *_shared_names("figure", all_figures),
        *_shared_names("term", all_terms),
        *(f"Figure {f.name!r}: {fault}" for f in all_figures for fault in figure_faults(f)),
        *(f"Term {t.name!r}: {fault}" for t in all_terms for fault in _wording_faults(t)),
    ]


def figure_faults(figure: Figure) -> Iterator[str]:
    """What is wrong with one figure, without its name."""
    yield from _wording_faults(figure)
    if not 1 <= len(figure.call.split()) <= _CALL_WORDS:
        yield f"its call {figure.call!r} is not one to {_CALL_WORDS} words, to be said in time."
    for number, way in enumerate(figure.ways, 1):
        for fault in way_faults(way):
            yield f"way {number} ({way.says or 'no words'}): {fault}"
        if any((way.steps, way.counts) == (w.steps, w.counts) for w in figure.ways[: number - 1]):
            yield f"way {number} ({way.says}) has the steps of an earlier one."
    yield from _side_faults(figure)
    if not figure.examples:
        yield "it has no example."
    for example in figure.examples:
        if not any(_agrees(example, way) for way in figure.ways):
            yield f"the example {example.line!r} is none of its ways, turned or not."


def _shared_names(kind: str, entries: Iterable[Figure | Term]) -> Iterator[str]:
    bearers = Counter(name for entry in entries for name in (entry.name, *entry.also))
    for name, times in bearers.items():
        if times > 1:
            yield f"{times} {kind}s are named {name!r}; one entry lists all its meanings as ways."


def _wording_faults(entry: Figure | Term) -> Iterator[str]:
    for name in (entry.name, *entry.also):
        if not _NAME.fullmatch(name):
            yield f"the name {name!r} is not plain lower-case words."
    if not entry.source.strip():
        yield "it has no source (a title and year, or common practice)."
    if not re.fullmatch(r"[A-Z].*[.]", entry.says):
        yield "what it says is not a sentence."


def _side_faults(figure: Figure) -> Iterator[str]:
    if figure.side == "turn" and not any(way.turn for way in figure.ways):
        yield "a letter beside it says the turn, and no way turns."
    if figure.side == "travel" and not all(way.travels for way in figure.ways):
        yield "a letter beside it says the travel, and a way does not travel."


def way_faults(way: Way) -> Iterator[str]:
    """What is wrong with one way of a figure: words, beats, turns, weight."""
    if not way.says:
        yield "it does not say how it differs."
    beats = [step.at for step in way.steps]
    if any(late <= early for early, late in pairwise(beats)):
        yield "its steps are not in order, each on a beat of its own."
    if not 0 < beats[0] <= 1:
        yield f"it begins on beat {beats[0]} and not on 1, or just before."
    if way.counts.denominator != 1 or not 1 <= way.counts <= _LONGEST:
        yield f"it lasts {way.counts} counts."
    if beats[-1] >= way.counts + 1:
        yield f"it lasts {way.counts} counts and has a step on beat {beats[-1]}."
    yield from _turn_faults(way)
    yield from _weight_faults(way)


def _turn_faults(way: Way) -> Iterator[str]:
    moving = {step.at for step in way.steps if step.kind is not Kind.HOLD}
    for beat in sorted({beat for place in way.turn_on for beat in place} - moving):
        yield f"a turn may be taken on beat {beat}, where nothing moves."
    if len(set(way.turn_on)) < len(way.turn_on):
        yield "a place for a turn is named twice."


def _weight_faults(way: Way) -> Iterator[str]:
    """Led by the right foot from weight on the left, and by the left foot when mirrored."""
    for stands, steps in ((Foot.LEFT, way.steps), (Foot.RIGHT, tuple(map(mirror_step, way.steps)))):
        refused = _first_refused(stands, steps)
        if refused is not None:
            yield (
                f"with the weight on {stands}, beat {refused.at} ({refused.kind} {refused.foot})"
                " cannot be danced."
            )


def _first_refused(weight: Foot, steps: Iterable[Step]) -> Step | None:
    for step in steps:
        after = weight_after(weight, step)
        if after is None:
            return step
        weight = after
    return None


def _agrees(example: Example, way: Way) -> bool:
    """Whether the example is the way, on either foot, with its own turn or one taken where it may be."""
    for led in (way.steps, tuple(map(mirror_step, way.steps))):
        if _still(example.reads) != _still(led):
            continue
        turned = {a.at for a, b in zip(example.reads, led, strict=True) if a.turn != b.turn}
        if not turned or any(turned <= set(place) for place in way.turn_on):
            return True
    return False


def _still(steps: Iterable[Step]) -> tuple[Step, ...]:
    return tuple(replace(step, turn=Fraction(0)) for step in steps)
