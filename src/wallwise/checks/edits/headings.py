"""A heading's figure on the other foot, the other way or of another size: the word that its lines belie.

The heading is read like steps, from the foot and the facing that its section begins with.
It is only held against the lines where one changed word makes it agree with them: most
headings leave out too much to be proof of anything.
"""

from collections import Counter
from collections.abc import Sequence
from fractions import Fraction
from functools import lru_cache

from wallwise.checks.edits.edit import Edit
from wallwise.checks.edits.words import word_edits
from wallwise.dance.model import Foot
from wallwise.glossary.lexicon import Word, lexicon
from wallwise.reading.outline import SectionText
from wallwise.reading.pieces import read_alone
from wallwise.reading.record import PartReading
from wallwise.reading.solve import Goal, Solution, Solved
from wallwise.reading.tokens import Token, tokenize

_LONGEST = 120  # characters: more are no heading but a paragraph
_SURE = 2.0  # a heading dearer than this is not read well enough to be held against anything


def heading_slip(text: str, part: PartReading, section: SectionText) -> Edit | None:
    """The first changed word that makes the heading agree with its lines; None where none helps."""
    line = section.heading
    if line is None or section.from_heading or not section.groups or not all(g.beats for g in section.groups):
        return None
    words = line.text[section.heading_at :]
    if len(words) > _LONGEST:
        return None
    tokens = tokenize(words, lexicon())
    events = [e for e in part.solution.events if part.passages[e.group].section is section]
    if not events or not any(t.word in (Word.SIDE, Word.FOOT) for t in tokens):
        return None
    stance = _stance(part.solution, events)
    plain = _read(words, section.base, section.counts, stance=stance)
    if plain is None or _agrees(plain, events):
        return None
    for i, token in enumerate(tokens):
        if not _claims(tokens, i):
            continue
        span = line.span(section.heading_at + token.start, section.heading_at + token.end)
        shown = text[span.start : span.end]
        for edit in word_edits(shown, span, token, before=tokens[i - 1] if i else None):
            changed = words[: token.start] + edit.mend.replace + words[token.end :]
            other = _read(changed, section.base, section.counts, stance=stance)
            if (
                other is not None
                and _agrees(other, events)
                and _belied(plain, other, token=token, danced=events)
            ):
                return edit
    return None


_Stance = tuple[Foot, int, int]  # who bears the weight before the section, the facing then and after it


def _stance(solution: Solution, events: Sequence[Solved]) -> _Stance:
    before = solution.events[: solution.events.index(events[0])]
    weight, facing = (before[-1].weight, before[-1].facing) if before else (solution.started, 0)
    return weight, facing, events[-1].facing


@lru_cache(maxsize=4096)  # every try of a mend asks again for all headings
def _read(words: str, start: Fraction, counts: Fraction, *, stance: _Stance) -> Solution | None:
    """The heading read like steps that begin and end as its section does."""
    weight, facing, end = stance
    starts = (Foot.LEFT, Foot.RIGHT) if weight is Foot.BOTH else (weight,)
    goal = Goal(dict.fromkeys(starts, 0.0), {end: 0.0}, loops=0.0, facing=facing)
    return read_alone(words, start=start, counts=counts, goal=goal)


def _claims(tokens: Sequence[Token], i: int) -> bool:
    """Whether the word says a foot, a way, or an amount with its way: half of what is unsaid is no claim."""
    word = tokens[i].word
    beside = {t.word for t in tokens[max(i - 1, 0) : i + 3]}
    return word in (Word.SIDE, Word.FOOT) or (word is Word.AMOUNT and Word.SIDE in beside)


def _agrees(told: Solution, danced: Sequence[Solved]) -> bool:
    """Whether the heading as read dances the feet and the turns of the lines."""
    if told.cost >= _SURE or _feet(told.events) != _feet(danced):
        return False
    return not all(e.move.way_told for e in told.events) or _net(told.events) == _net(danced)


def _belied(plain: Solution, changed: Solution, *, token: Token, danced: Sequence[Solved]) -> bool:
    """Whether the word itself is belied: turns that it tells are not among the lines', which have others.

    Otherwise the heading is only read in another way once the word is changed, and proves nothing.
    """
    told, lines = _turns(plain.events), _turns(danced)
    if told == lines:
        return token.word is not Word.AMOUNT
    if not (told - lines and lines - told):
        return False
    then = _turns(changed.events)
    nearer = _unlike(then, lines) <= _unlike(told, lines)
    return then == lines or (nearer and _net(changed.events) == _net(danced))


def _unlike(told: Counter[int], lines: Counter[int]) -> int:
    """How many turns only one of the two has."""
    return ((told - lines) + (lines - told)).total()


def _turns(events: Sequence[Solved]) -> Counter[int]:
    return Counter(e.turn for e in events if e.turn)


def _net(events: Sequence[Solved]) -> int:
    """All turns added: two halves to the right are not two to the left, though they face alike."""
    return sum(e.turn for e in events)


def _feet(events: Sequence[Solved]) -> list[Foot]:
    return [e.foot for e in events if e.kind.takes_weight and e.foot in (Foot.LEFT, Foot.RIGHT)]
