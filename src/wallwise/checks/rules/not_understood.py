"""Words in the steps that could not be read as steps."""

import re
from collections.abc import Iterator

from wallwise.checks.rule import Rule
from wallwise.checks.sight import count_in, whole_sheet
from wallwise.dance.finding import Finding, Severity
from wallwise.dance.model import Foot
from wallwise.glossary.lexicon import Word, lexicon
from wallwise.reading import Reading
from wallwise.reading.blocks import ORDER_WORDS
from wallwise.reading.read import PartReading, Passage, is_ending
from wallwise.reading.tokens import tokenize

# A reading dearer than this bends the words further than a teacher would.
DOUBTFUL = 1.9


def _find(reading: Reading) -> Iterator[Finding]:
    yield from _stray(reading)
    for part in reading.parts.values():
        if is_ending(part.text.name):
            continue
        used = {e.group: e.layout for e in part.solution.events}
        for n, passage in enumerate(part.passages):
            problem = _problem(passage, used.get(n))
            if problem:
                yield whole_sheet(
                    RULE.name, RULE.severity, passage.span_at(None), problem + f" (“{_short(passage.group.text)}”)",
                    section=passage.section.number, part=part.text.name, count=_count(part, passage),
                )  # fmt: skip


def _stray(reading: Reading) -> Iterator[Finding]:
    """Steps told among the counted ones without a count: nobody would know when to dance them."""
    headings = {id(s.heading) for p in reading.outline.parts for s in p.sections}
    for remark in reading.outline.remarks:
        if id(remark.line) in headings:
            continue
        if (
            remark.group is None
            or remark.group.written is None
            or ORDER_WORDS.search(remark.text)
            or re.search(r"[:\"“”?!]", remark.text)
        ):
            continue
        tokens = tokenize(remark.text, lexicon())
        verbs = [t for t in tokens if t.word is Word.VERB and not t.ing]
        feet = [t for t in tokens if t.word in (Word.SIDE, Word.FOOT)]
        strange = any(t.word in ("unknown", "clock", "number") for t in tokens)
        if tokens and tokens[0].word is Word.VERB and verbs and feet and not strange:
            yield whole_sheet(
                RULE.name, RULE.severity, remark.line.span(remark.start, remark.end),
                f"These steps have no count (“{_short(remark.text)}”)", section=remark.section, part=remark.part or "main",
            )  # fmt: skip


def _problem(passage: Passage, index: int | None) -> str:
    if not passage.layouts or (index is None and not any(layout.moves for layout in passage.layouts)):
        return "These words could not be read as steps"
    layout = passage.layouts[index or 0]
    if (
        not any(m.foot is not Foot.NONE for _, m in layout.moves)
        and any(a.unknown for a in passage.acts)
        and layout.cost > 0.5
    ):
        return "These words could not be read as steps"
    strange = [t.text for act in passage.acts for t in act.unknown]
    if layout.cost < DOUBTFUL and not (strange and layout.left):
        return ""
    if strange:
        return f"These words could only be guessed at; not known here: {', '.join(strange[:4])}"
    if passage.group.written is not None and layout.left:
        return "There are fewer steps here than counts"
    return "The steps and the counts told here do not fit each other"


def _short(text: str) -> str:
    text = " ".join(text.split())
    return text if len(text) <= 60 else text[:57] + "…"


def _count(part: PartReading, passage: Passage) -> str:
    beats = passage.group.beats
    return count_in(passage.section, beats[0]) if beats else ""


RULE = Rule("not-understood", Severity.WARNING, "Words in the steps could not be read as steps.", _find)
