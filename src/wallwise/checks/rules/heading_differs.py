"""A heading names a figure on the other foot, the other way or of another size than its lines dance.

The heading is read like steps, from the foot and the facing that its section begins with.
It is only held against the lines where one changed word makes it agree with them: most
headings leave out too much to be proof of anything.
"""

from collections.abc import Iterator, Sequence

from wallwise.checks.edits import word_edits
from wallwise.checks.rule import Rule
from wallwise.checks.sight import whole_sheet
from wallwise.dance.finding import Finding, Severity
from wallwise.dance.model import Foot, Span
from wallwise.glossary.lexicon import Word, lexicon
from wallwise.reading import Reading
from wallwise.reading.outline import SectionText
from wallwise.reading.read import PartReading, read_alone
from wallwise.reading.solve import Goal, Solution, Solved
from wallwise.reading.tokens import Token, tokenize

_SURE = 2.0  # a heading dearer than this is not read well enough to be held against anything


def _find(reading: Reading) -> Iterator[Finding]:
    for part in reading.parts.values():
        for section in part.text.sections:
            if (
                section.heading is None
                or section.from_heading
                or not section.groups
                or any(not g.beats for g in section.groups)
            ):
                continue
            for span, told, meant in _slips(reading, part, section):
                yield whole_sheet(
                    RULE.name, RULE.severity, span,
                    f"The heading of section {section.number} says “{told}”, but its lines dance it as “{meant}”.",
                    section=section.number, part=part.text.name,
                )  # fmt: skip
                break


def _slips(reading: Reading, part: PartReading, section: SectionText) -> Iterator[tuple[Span, str, str]]:
    """The words of the heading that, changed, make it agree with the lines: place, word, what it should be."""
    line = section.heading
    assert line is not None
    words = line.text[section.heading_at :]
    tokens = tokenize(words, lexicon())
    if not any(t.word in (Word.SIDE, Word.FOOT) for t in tokens):
        return
    events = [e for e in part.solution.events if part.passages[e.group].section is section]
    if not events:
        return
    before = part.solution.events[: part.solution.events.index(events[0])]
    weight, facing = (before[-1].weight, before[-1].facing) if before else (part.solution.started, 0)
    starts = {weight: 0.0} if weight is not Foot.BOTH else {Foot.LEFT: 0.0, Foot.RIGHT: 0.0}
    goal = Goal(starts, {events[-1].facing: 0.0}, 0.0, facing)
    plain = read_alone(words, section.base, section.counts, goal)
    if plain is None or _agrees(plain, events):
        return
    for i, token in enumerate(tokens):
        if not isinstance(token, Token) or token.word not in (Word.SIDE, Word.FOOT, Word.AMOUNT):
            continue
        beside = {t.word for t in tokens[max(i - 1, 0) : i + 3]}
        if token.word is Word.AMOUNT and Word.SIDE not in beside:
            continue  # half of what is left unsaid is no claim
        for edit in word_edits(
            reading.text, line, section.heading_at, token, before=tokens[i - 1] if i else None
        ):
            changed = words[: token.start] + edit.mend.replace + words[token.end :]
            other = read_alone(changed, section.base, section.counts, goal)
            if other is not None and _agrees(other, events):
                span = edit.mend.span
                yield span, reading.text[span.start : span.end], edit.mend.replace


def _agrees(told: Solution, danced: Sequence[Solved]) -> bool:
    """Whether the heading as read dances the feet and the turns of the lines."""
    if told.cost >= _SURE or _feet(told.events) != _feet(danced):
        return False
    return not all(e.move.way_told for e in told.events) or _net(told.events) == _net(danced)


def _net(events: Sequence[Solved]) -> int:
    """All turns added: two halves to the right are not two to the left, though they face alike."""
    return sum(e.turn for e in events)


def _feet(events: Sequence[Solved]) -> list[Foot]:
    return [e.foot for e in events if e.kind.takes_weight and e.foot in (Foot.LEFT, Foot.RIGHT)]


RULE = Rule(
    "heading-differs",
    Severity.WARNING,
    "A heading says another foot, way or size than its lines dance.",
    _find,
)
