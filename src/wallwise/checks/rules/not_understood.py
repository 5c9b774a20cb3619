"""Words in the steps that could not be read as steps."""

import re
from collections.abc import Iterator, Sequence

from wallwise.checks.rule import Rule
from wallwise.checks.sight import count_in, danced_through
from wallwise.dance.finding import Finding, Severity
from wallwise.dance.model import Foot
from wallwise.glossary.lexicon import Word
from wallwise.reading import Reading
from wallwise.reading.asides import step_count
from wallwise.reading.layout import Layout
from wallwise.reading.options import unread_options
from wallwise.reading.outline import Remark
from wallwise.reading.pieces import LONGEST_PIECE, read_alone
from wallwise.reading.record import PartReading, Passage
from wallwise.reading.solve import Goal, Solved
from wallwise.reading.stepwords import tokens_of
from wallwise.reading.wording import ORDER_WORDS

# A reading dearer than this bends the words further than a teacher would.
DOUBTFUL = 1.9
_EIGHT = 8  # steps told one by one
_TURN_ON = re.compile(r"\bturn\w*\b[^,;.()]{0,30}?\bon\s+(?:count|beat)\s+(\d{1,2})\b", re.IGNORECASE)
_FOOT = re.compile(r"\b(?:left|right|[lr]f?)\b", re.IGNORECASE)
_ANYWHERE = Goal({Foot.LEFT: 0.0, Foot.RIGHT: 0.0}, loops=0.0)
_SEVERAL = 3  # steps in a line; a title can have two
_NO_STEPS = "These words could not be read as steps"


def _find(reading: Reading) -> Iterator[Finding]:
    yield from _before_steps(reading)
    yield from _stray(reading)
    yield from _headed(reading)
    yield from _options(reading)
    for part in danced_through(reading):
        layouts = {event.group: event.layout for event in part.solution.events}
        for n, passage in enumerate(part.passages):
            yield from _unread(passage, part.text.name)
            yield from _turned_elsewhere(passage, n, part)
            problem = _problem(passage, layouts.get(n))
            beats = passage.group.beats
            if problem:
                yield RULE.on(
                    passage.span_at(None),
                    f"{problem} (“{_short(passage.group.text)}”)",
                    section=passage.section.number,
                    part=part.text.name,
                    count=count_in(passage.section, beats[0]) if beats else "",
                )


def _unread(passage: Passage, part: str) -> Iterator[Finding]:
    """What of a stretch without end nobody read."""
    text = passage.group.text
    if text[LONGEST_PIECE:].strip():
        yield RULE.on(
            passage.span_at((LONGEST_PIECE, len(text))),
            f"Too much stands under one count here, and this is not read (“{_short(text[LONGEST_PIECE:])}”)",
            section=passage.section.number,
            part=part,
        )


def _turned_elsewhere(passage: Passage, n: int, part: PartReading) -> Iterator[Finding]:
    """A turn that is told of a count ("1/2 turn on count 3") and was read on another, in the n-th passage."""
    found = _TURN_ON.search(passage.group.text)
    if found is None:
        return
    turning = [e.at for e in part.solution.events if e.group == n and e.turn]
    turned = [count_in(passage.section, at) for at in turning]
    if turned and found[1] not in (*turned, *(str(at) for at in turning)):
        yield RULE.on(
            passage.span_at(found.span()),
            f"This turn is told on count {found[1]}, but was read on count {turned[0]}",
            section=passage.section.number,
            part=part.text.name,
            count=turned[0],
        )


def _stray(reading: Reading) -> Iterator[Finding]:
    """Steps told among the counted ones without a count: nobody would know when to dance them."""
    headings = {id(s.heading) for p in reading.outline.parts for s in p.sections}
    for remark in reading.outline.remarks:
        if id(remark.line) not in headings and _follows_a_count(remark) and _is_instruction(remark.text):
            yield RULE.on(
                remark.line.span(remark.start, remark.end),
                f"These steps have no count (“{_short(remark.text)}”)",
                section=remark.section,
                part=remark.part or "main",
            )


def _headed(reading: Reading) -> Iterator[Finding]:
    """Steps told one by one in the place of a heading, which the lines below do not dance."""
    for part in danced_through(reading):
        for section in part.text.sections:
            line, text = section.heading, section.heading_text
            told_by_number = section.heading_at or section.range is not None or section.from_heading
            if line is None or told_by_number or not _tells_an_eight(text):
                continue
            events = [e for e in part.solution.events if part.passages[e.group].section is section]
            alone = read_alone(text, start=section.base, counts=section.counts, goal=_ANYWHERE)
            if alone is None or _weights(alone.events) != _weights(events):
                yield RULE.on(
                    line.span(0, len(line.text)),
                    f"These steps have no count, and those below are others (“{_short(text)}”)",
                    section=section.number,
                    part=part.text.name,
                )


def _options(reading: Reading) -> Iterator[Finding]:
    """Easier ways left out of the dance: the dance itself is none the worse, but they must be told."""
    for span in unread_options(reading):
        told = reading.text[span.start : span.end]
        yield RULE.on(
            span,
            f"This easier way could not be read for any counts, and is left out (“{_short(told)}”)",
            severity=Severity.NOTE,
        )


def _tells_an_eight(text: str) -> bool:
    """Whether a text tells the steps of an eight one by one, most of them with their foot."""
    steps, feet = step_count(text), len(_FOOT.findall(text))
    return steps >= _EIGHT and 2 * feet >= steps and _is_instruction(text)


def _weights(events: Sequence[Solved]) -> list[Foot]:
    return [event.foot for event in events if event.kind.takes_weight]


def _before_steps(reading: Reading) -> Iterator[Finding]:
    """Steps told before the first that have a count: a line that looks like those, taken for the header."""
    for line in reading.outline.header:
        if step_count(line.text) >= _SEVERAL and _is_instruction(line.text):
            yield RULE.on(
                line.span(0, len(line.text)),
                f"These steps have no count (“{_short(line.text)}”)",
                part="main",
            )


def _follows_a_count(remark: Remark) -> bool:
    return remark.group is not None and remark.group.written is not None


def _is_instruction(text: str) -> bool:
    """Whether a text is an instruction to a foot, and nothing but that."""
    if ORDER_WORDS.search(text) or re.search(r"[:\"“”?!]", text):
        return False
    tokens = tokens_of(text)
    return (
        bool(tokens)
        and tokens[0].word is Word.VERB
        and any(t.word is Word.VERB and not t.ing for t in tokens)
        and any(t.word in (Word.SIDE, Word.FOOT) for t in tokens)
        and not any(t.word in ("unknown", "clock", "number") for t in tokens)
    )


def _problem(passage: Passage, chosen: int | None) -> str:
    """What is wrong with the passage in the layout that was chosen; empty where it is well read."""
    if not passage.layouts or (chosen is None and not any(layout.moves for layout in passage.layouts)):
        return _NO_STEPS
    if any(act.in_column is not None for act in passage.acts):
        return "The column of feet says another foot than the step beside it"
    layout = passage.layouts[chosen or 0]
    strange = [t.text for act in passage.acts for t in act.unknown]
    moves_a_foot = any(move.foot is not Foot.NONE for _, move in layout.moves)
    if strange and not moves_a_foot and layout.cost > 0.5:
        return _NO_STEPS
    if layout.cost < DOUBTFUL and not (strange and layout.left) and not _lacks_steps(passage, layout):
        return ""
    if strange:
        return f"These words could only be guessed at; not known here: {', '.join(strange[:4])}"
    if passage.group.written is not None and layout.left:
        return "There are fewer steps here than counts"
    return "The steps and the counts told here do not fit each other"


def _lacks_steps(passage: Passage, layout: Layout) -> bool:
    """Whether counts are left that no word fills; one step told for two whole counts just lasts."""
    group = passage.group
    quick = any(beat.denominator > 1 for beat in group.beats or ())
    return group.written is not None and bool(layout.left) and (quick or len(layout.moves) > 1)


def _short(text: str) -> str:
    text = " ".join(text.split())
    return text if len(text) <= 60 else text[:57] + "…"


RULE = Rule("not-understood", Severity.WARNING, "Words in the steps could not be read as steps.", _find)
