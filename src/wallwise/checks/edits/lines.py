"""Whole lines of steps: one too many, one too few, or one under the wrong count mark."""

import re
from collections import Counter
from collections.abc import Iterator, Sequence
from fractions import Fraction

from wallwise.checks.edits.acts import told_acts
from wallwise.checks.edits.edit import Edit
from wallwise.checks.edits.spelling import swapped
from wallwise.dance.model import Span
from wallwise.glossary.lexicon import Word
from wallwise.reading.clauses import Act
from wallwise.reading.marks import Mark
from wallwise.reading.outline import SectionText
from wallwise.reading.record import PartReading, Passage
from wallwise.reading.stepwords import tokens_of

_BAR = 4
_PHRASE = 2 * _BAR


def line_edits(text: str, part: PartReading, passage: Passage) -> Iterator[Edit]:
    """The line left out, its mark moved or shortened, and a line added below it."""
    mark = passage.group.written
    row = _row(text, passage)
    if mark is not None or _stands_twice(part, passage):
        yield from _left_out(text, row, part, passage)
    if mark is None:
        return
    yield from _mark_moved(text, passage, mark)
    yield from _mark_shortened(text, part, passage, mark)
    missing = _missing_after(part, passage, mark)
    if missing is not None:
        yield from _line_added(text, row, part, passage, missing=missing, at=row.end)
    missing = _missing_before(part, passage, mark)
    if missing is not None:
        yield from _line_added(text, row, part, passage, missing=missing, at=row.start)


def _row(text: str, passage: Passage) -> Span:
    """The passage's whole line in the sheet, with its line end."""
    line = passage.group.line
    whole = line.span(0, len(line.text))
    end = text.find("\n", whole.end)
    return Span(text.rfind("\n", 0, whole.start) + 1, len(text) if end < 0 else end + 1)


def _mark_place(passage: Passage, mark: Mark) -> Span:
    return passage.group.line.span(mark.start, mark.end)


def _left_out(text: str, row: Span, part: PartReading, passage: Passage) -> Iterator[Edit]:
    line = passage.group.line
    if sum(p.group.line is line for p in part.passages) > 1:
        return
    twice = _stands_twice(part, passage)
    whole = line.span(0, len(line.text))
    shown = " ".join(text[whole.start : whole.end].split())[:50]
    yield Edit.of(row, "", says=f"without the line “{shown}”", surprise=0.7 if twice else 2.6)


def _stands_twice(part: PartReading, passage: Passage) -> bool:
    """Whether the passage before this one has its very words."""
    n = next(n for n, other in enumerate(part.passages) if other is passage)
    return n > 0 and part.passages[n - 1].group.text.split() == passage.group.text.split()


# -- the mark ---------------------------------------------------------------------------------


def _mark_moved(text: str, passage: Passage, mark: Mark) -> Iterator[Edit]:
    """The mark moved on or back so that it meets its neighbours."""
    gap = passage.group.gap
    shift = -gap if gap > 0 else 1 - gap
    if not gap or shift.denominator != 1:
        return
    span = _mark_place(passage, mark)
    shown = text[span.start : span.end]
    told = _shifted(shown, int(shift))
    yield Edit.of(span, told, says=f"“{told.strip()}” instead of “{shown.strip()}”", surprise=1.5)


def _mark_shortened(text: str, part: PartReading, passage: Passage, mark: Mark) -> Iterator[Edit]:
    """The last mark of a section that is too long, shortened together with what it counts."""
    group, section = passage.group, passage.section
    place = _mark_place(passage, mark)
    shown = text[place.start : place.end]
    over = section.counts - (_declared(section) or section.counts // _BAR * _BAR)
    last = [p for p in part.passages if p.section is section][-1:] == [passage]
    if not last or not 0 < over < len(mark.beats) or not any(c.isdigit() for c in shown):
        return
    span = Span(place.start, group.line.span(group.start, group.end).end)
    fewer = _shortened(shown, int(over))
    acts = told_acts(passage)
    for i, act in enumerate(acts):
        yield Edit.of(
            span,
            fewer + _without(group.text, acts, i),
            says=f"“{fewer.strip()}” and without “{group.text[act.start : act.end]}”",
            surprise=1.2 if act.verb == "hold" else 1.8,
        )


def _declared(section: SectionText) -> int | None:
    """The counts that a section's heading gives it ("25-32"); None where it gives none."""
    return section.range[1] - section.range[0] + 1 if section.range else None


def _shifted(mark: str, shift: int) -> str:
    return re.sub(r"\d+", lambda number: str(int(number.group()) + shift), mark)


def _shortened(mark: str, over: int) -> str:
    numbers = list(re.finditer(r"\d+", mark))
    last = numbers[-1]
    if len(numbers) > 2:
        return mark[: numbers[-2].end()] + mark[last.end() :]
    return mark[: last.start()] + str(int(last.group()) - over) + mark[last.end() :]


def _without(words: str, acts: Sequence[Act], i: int) -> str:
    if i + 1 < len(acts):
        return words[: acts[i].start] + words[acts[i + 1].start :]
    return words[: acts[i - 1].end] if i else words[acts[i].end :]


# -- a line more ------------------------------------------------------------------------------


def _line_added(
    text: str, row: Span, part: PartReading, passage: Passage, *, missing: tuple[int, int], at: int
) -> Iterator[Edit]:
    """A line for counts that no line dances, worded like its neighbours or like its heading."""
    mark = passage.group.written
    assert mark is not None
    first, last = missing
    place = _mark_place(passage, mark)
    shown = text[row.start : row.end].rstrip("\n")
    lead, tail = text[row.start : place.start], shown[len(shown.rstrip(" |")) :]
    spacing = re.search(r"[\s.):|\]]*$", text[place.start : place.end])
    between = spacing.group() if spacing else " "
    added: set[str] = set()
    for other in part.passages:
        beats = other.group.beats
        if other.group.written is None or not beats or beats[-1] // 1 - beats[0] // 1 != last - first:
            continue
        marked = _mark_like(other, first)
        away = 0.02 * abs(part.passages.index(other) - part.passages.index(passage))
        away += 0.0 if other.section is passage.section else 0.4
        for body, surprise in _bodies(passage, other, first=first):
            line = f"{lead}{marked}{between}{body}{tail}\n"
            if line not in added:
                added.add(line)
                says = f"a line “{marked} {body}”"
                yield Edit.of(Span(at, at), line, says=says, surprise=surprise + away)


def _bodies(passage: Passage, other: Passage, *, first: int) -> Iterator[tuple[str, float]]:
    """What a line added may say: the words of another, on the other foot or not; a piece of the heading."""
    words = _words_again(other)
    yield swapped(words), 1.9
    yield words, 2.05
    section = passage.section
    pieces = [piece.strip() for piece in re.split(r"[,;]|\s-\s", section.heading_text)]
    for i in range(len(pieces) if len(pieces) > 1 else 0):
        tokens = tokens_of(pieces[i])
        if tokens and tokens[0].word in (Word.FIGURE, Word.VERB) and tokens[0].value != "recover":
            # Headings name their figures in the order of the lines.
            off = abs(i / len(pieces) - float((first - 1) % section.counts / section.counts))
            yield pieces[i], 1.8 + off / 2
            if pieces[i + 1 :]:
                yield f"{pieces[i]}, {pieces[i + 1]}", 1.85 + off / 2


def _words_again(passage: Passage) -> str:
    """The passage's words without the facing at their end: the line added need not end there."""
    return re.sub(r"\s*[\[(]?\b\d{1,2}[:.]\d\d\b[\])]?\s*$", "", passage.group.text.strip(" |"))


def _mark_like(passage: Passage, first: int) -> str:
    """The passage's mark, counting from `first`."""
    mark = passage.group.written
    assert mark is not None
    shown = passage.group.line.text[mark.start : mark.end].strip(" .):|[(]\t")
    begins = mark.first if mark.first.denominator == 1 else mark.first // 1 + 1
    return _shifted(shown, first - int(begins))


def _missing_after(part: PartReading, passage: Passage, mark: Mark) -> tuple[int, int] | None:
    """The written counts that are missing right after this passage: first and last."""
    section = passage.section
    mine = [p for p in part.passages if p.section is section]
    after = mine[mine.index(passage) + 1 :]
    missing = after[0].group.gap if after else _missing_at_end(part, section)
    ended = mark.last // 1
    return (int(ended) + 1, int(ended + missing)) if missing >= 1 else None


def _missing_before(part: PartReading, passage: Passage, mark: Mark) -> tuple[int, int] | None:
    """The written counts that are missing before the first passage of a section: first and last."""
    gap = passage.group.gap
    if gap < 1 or any(p.section is passage.section for p in part.passages[: part.passages.index(passage)]):
        return None
    return (int(mark.first // 1 - gap // 1), int(mark.first // 1 - 1))


def _missing_at_end(part: PartReading, section: SectionText) -> Fraction:
    """Counts that the section lacks of its heading's, or else of what the part's sections usually have."""
    told = _declared(section)
    if told is not None:
        return told - section.counts
    others = Counter(s.counts for s in part.text.sections if s is not section and s.counts)
    usual = others.most_common(1)[0][0] if others else Fraction(_PHRASE)
    return -section.counts % usual
