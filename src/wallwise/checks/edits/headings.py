"""A heading's figure on the other foot, the other way or of another size: the word that its lines belie.

The heading is read like steps, from the foot and the facing that its section begins with.
It is only held against the lines where one changed word makes it agree with them, or one turn told
the other way: most headings leave out too much to be proof of anything.
"""

from collections import Counter
from collections.abc import Iterator, Sequence
from fractions import Fraction
from functools import lru_cache
from typing import NamedTuple

from wallwise.checks.edits.edit import Edit
from wallwise.checks.edits.words import word_edits
from wallwise.dance.model import Foot
from wallwise.glossary.lexicon import Word, lexicon
from wallwise.reading.outline import SectionText
from wallwise.reading.pieces import read_alone
from wallwise.reading.record import PartReading
from wallwise.reading.solve import Goal, Solution, Solved
from wallwise.reading.tidy import Line
from wallwise.reading.tokens import TURN, Token, tokenize

_Stance = tuple[Foot, int, int]  # who bears the weight before the section, the facing then and after it

_ONE_THEN_OTHER = ([Word.SIDE, Word.THEN, Word.SIDE], [Word.SIDE, Word.AND, Word.SIDE])
_LONGEST = 120  # characters: more are no heading but a paragraph
_SURE = 2.0  # a heading dearer than this is not read well enough to be held against anything


def heading_slip(text: str, part: PartReading, section: SectionText) -> Edit | None:
    """The first changed word that makes the heading agree with its lines; None where none helps."""
    line = section.heading
    if line is None or section.from_heading or not section.groups or not all(g.beats for g in section.groups):
        return None
    if len(line.text) - section.heading_at > _LONGEST:
        return None
    told = _Told(text, section, line.slice(section.heading_at))
    events = [e for e in part.solution.events if part.passages[e.group].section is section]
    if not events or not any(t.word in (Word.SIDE, Word.FOOT) for t in told.tokens):
        return None
    stance = _stance(part.solution, events)
    plain = told.read(stance)
    if plain is not None and _agrees(plain, events):
        return None
    return (_word_slip(told, plain, stance, events) if plain is not None else None) or _way_slip(told, events)


class _Told:
    """A heading's words, as they stand in the sheet's text and as tokens."""

    def __init__(self, text: str, section: SectionText, line: Line) -> None:
        self.text, self.section, self.line = text, section, line
        self.tokens = tokenize(line.text, lexicon())

    def read(self, stance: _Stance, changed: str = "") -> Solution | None:
        """The heading, or what it is changed to, read like steps that begin and end as its section does."""
        return _read(changed or self.line.text, self.section.base, self.section.counts, stance=stance)

    def edits(self, i: int) -> Iterator[Edit]:
        """The words that the token at `i` could have been."""
        token = self.tokens[i]
        span = self.line.span(token.start, token.end)
        shown = self.text[span.start : span.end]
        return word_edits(shown, span, token, before=self.tokens[i - 1] if i else None)


def _word_slip(told: _Told, plain: Solution, stance: _Stance, events: Sequence[Solved]) -> Edit | None:
    """The first word whose change makes the heading, read like steps, dance what its lines dance."""
    words = told.line.text
    # A half turn told of a figure that turns two quarters is no other size.
    turned = sum(_ticks(t) for t in told.tokens if t.word is Word.AMOUNT) == sum(abs(e.turn) for e in events)
    for i, token in enumerate(told.tokens):
        if not _claims(told.tokens, i) or (turned and token.word is Word.AMOUNT):
            continue
        for edit in told.edits(i):
            other = told.read(stance, words[: token.start] + edit.mend.replace + words[token.end :])
            if (
                other is not None
                and _agrees(other, events)
                and _belied(plain, other, token=token, danced=events)
            ):
                return edit
    return None


def _way_slip(told: _Told, events: Sequence[Solved]) -> Edit | None:
    """The way of a turn that the lines turn the other way, whatever else the heading leaves out.

    Its turns are held against theirs only where each says its way and they turn as much in all.
    """
    turns = [_way_of_turn(told.tokens, i) for i, t in enumerate(told.tokens) if t.word is Word.AMOUNT]
    ways = [way for way in turns if way is not None]
    if not ways or len(ways) < len(turns):
        return None
    right = sum(way.ticks for way in ways if way.right)
    left = sum(way.ticks for way in ways if not way.right)
    rights = sum(e.turn for e in events if e.turn > 0)
    lefts = -sum(e.turn for e in events if e.turn < 0)
    if right + left != rights + lefts:
        return None
    wrong = [way for way in ways if way.ticks == (right - rights if way.right else rights - right)]
    return next(told.edits(wrong[0].at), None) if wrong else None


class _Way(NamedTuple):
    """A turn that a heading tells: its size in 1/48, its way, and which token says that."""

    ticks: int
    right: bool
    at: int


def _ticks(amount: Token) -> int:
    return int(amount.value * TURN / 8)


def _way_of_turn(tokens: Sequence[Token], i: int) -> _Way | None:
    """The turn of an amount ("¼ TURN R", "1/2 SAILOR LEFT"); None where its way is not told for certain."""
    for j in range(i + 1, len(tokens)):
        if tokens[j].word is Word.SIDE:
            following = tokens[j + 1].word if j + 1 < len(tokens) else None
            of_turn = following not in (Word.PLACE, Word.PART, Word.VERB, Word.FIGURE, Word.AMOUNT)
            return _Way(_ticks(tokens[i]), tokens[j].value is Foot.RIGHT, j) if of_turn else None
        if tokens[j].word not in (Word.TURN, Word.FIGURE, Word.VERB, Word.IGNORE, "-"):
            return None
    return None


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
    """Whether the word says a foot, a way, or an amount with its way: half of what is unsaid is no claim.

    "Side together side touch, R then L" tells in what order the whole is danced, not a foot of its steps.
    """
    word = tokens[i].word
    around = [t.word for t in tokens[max(i - 2, 0) : i + 3]]
    if any(around[j : j + 3] in _ONE_THEN_OTHER for j in range(len(around))):
        return False
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
