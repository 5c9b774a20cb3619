"""Every small change that a slip of the pen could be: the candidates the search for mends tries.

Each comes with a *surprise*: how unlikely a slip it would be, before anything is known of
whether it helps.  Nothing here knows what is wrong with the sheet.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from wallwise.checks.sight import clock
from wallwise.dance.clock import walls_of
from wallwise.dance.finding import Mend
from wallwise.dance.model import Span
from wallwise.dance.walls import unroll
from wallwise.glossary.lexicon import Word, lexicon
from wallwise.reading import Reading
from wallwise.reading.read import PartReading, Passage
from wallwise.reading.tidy import Line
from wallwise.reading.tokens import TURN, Token, tokenize

_FRACTIONS = {1: "1/8", 2: "1/4", 3: "3/8", 4: "1/2", 6: "3/4", 8: "full"}
_SIGNS = {1: "⅛", 2: "¼", 3: "⅜", 4: "½", 6: "¾"}
_WORDS = {1: "eighth", 2: "quarter", 4: "half", 6: "three quarter", 8: "full"}
_DEGREES = {1: "45", 2: "90", 3: "135", 4: "180", 6: "270", 8: "360"}


@dataclass(frozen=True, slots=True)
class Edit:
    """A change to try: the mend it would be, its surprise, and the passage it stands in (None: not in the steps)."""

    mend: Mend
    surprise: float
    passage: Passage | None = None
    part: str = "main"


def edits_of(reading: Reading) -> Iterator[Edit]:
    """Every single edit worth trying, in no order."""
    for part in reading.parts.values():
        for n, passage in enumerate(part.passages):
            for edit in _in_passage(reading, part, passage, n):
                yield Edit(edit.mend, edit.surprise, passage, part.text.name)
    yield from _in_header(reading)
    yield from _in_orders(reading)
    yield from _in_options(reading)


def _edit(span: Span, replace: str, says: str, surprise: float) -> Edit:
    return Edit(Mend(span, replace, says), surprise)


# -- words of the steps ---------------------------------------------------------------------------


def _in_passage(reading: Reading, part: PartReading, passage: Passage, n: int) -> Iterator[Edit]:
    group = passage.group
    tokens = tokenize(group.text, lexicon())
    for i, token in enumerate(tokens):
        yield from word_edits(
            reading.text, group.line, group.start, token, before=tokens[i - 1] if i else None
        )
    if group.written is not None:
        yield from _line_edits(reading, part, passage, n)
    yield from _act_edits(reading, passage)


def word_edits(
    text: str, line: Line, start: int, token: Token, *, before: Token | None = None
) -> Iterator[Edit]:
    """The slips that one word could be: the other foot or way, another amount, a touch for a step, another facing."""
    span = line.span(start + token.start, start + token.end)
    shown = text[span.start : span.end]
    if token.word in (Word.SIDE, Word.FOOT, "feet"):
        other = swapped(shown)
        if other != shown:
            turned = before is not None and before.word in (Word.TURN, Word.AMOUNT)
            yield _edit(span, other, f"“{other}” instead of “{shown}”", 1.1 if turned else 1.0)
    elif token.word is Word.AMOUNT:
        yield from _amounts(span, shown, int(token.value))
    elif token.word is Word.VERB and not token.ing and token.value in ("touch", "step", "close", "point"):
        word = {"touch": "step", "point": "step"}.get(str(token.value), "touch")
        yield _edit(span, _cased(word, shown), f"“{_cased(word, shown)}” instead of “{shown}”", 1.5)
    elif token.word == "clock":
        for facing in range(0, TURN, TURN // 8):
            if facing != token.value and (facing % 12 == 0 or token.value % 12):
                told = reclocked(shown, facing)
                if told != shown:
                    yield _edit(span, told, f"facing {clock(facing)} instead of {clock(token.value)}", 1.3)


def _amounts(span: Span, shown: str, eighths: int) -> Iterator[Edit]:
    for size in (2, 4, 6, 8, 1, 3):
        if size == eighths:
            continue
        surprise = 1.2 if {size, eighths} <= {2, 4} else 1.7 if size in (6, 8) else 2.2
        told = _amount_like(shown, size)
        if told and told != shown:
            yield _edit(span, told, f"“{told}” instead of “{shown}”", surprise)


def _amount_like(shown: str, size: int) -> str:
    """The amount written the way the sheet writes it: a sign, a fraction, a word, degrees."""
    if any(sign in shown for sign in _SIGNS.values()):
        return _SIGNS.get(size, "full")
    if digits := re.search(r"\d{2,3}", shown):
        return shown.replace(digits.group(), _DEGREES[size])
    if "/" in shown or "⁄" in shown:
        return _FRACTIONS[size]
    return _cased(_WORDS.get(size, _FRACTIONS[size]), shown)


def swapped(text: str) -> str:
    """Left for right and right for left, in whatever way it is written."""
    pairs = {"left": "right", "right": "left", "lt": "rt", "rt": "lt"}

    def other(found: re.Match[str]) -> str:
        word = found.group()
        if word.lower() in pairs:
            return _cased(pairs[word.lower()], word)
        return word.translate(str.maketrans("LRlr", "RLrl"))

    return re.sub(
        r"(?i)left|right|\b[lr]t\b|\b[lr](?=f\b|\.|\s|\)|/|-|,|&|$)|\b[lr]{2,8}\b|\b[lr]\b", other, text
    )


def reclocked(text: str, facing: int) -> str:
    """The facing written the way the sheet writes it."""
    hour, minute = clock(facing).split(":")
    if re.search(r"\d[:.]\d\d", text):
        return re.sub(r"\d{1,2}([:.])\d\d", lambda m: f"{hour}{m[1]}{minute}", text)
    if re.search(r"\d", text):
        return re.sub(r"\d{1,2}", hour, text, count=1) if minute == "00" else text
    names = {0: "front", TURN // 2: "back"}
    if facing in names and re.search(r"front|back|home", text, re.IGNORECASE):
        return re.sub(r"(?i)front|back|home", names[facing], text, count=1)
    words = {0: "twelve", 12: "three", 24: "six", 36: "nine"}
    if facing in words:
        return re.sub(r"(?i)twelve|three|six|nine", words[facing], text, count=1)
    return text


def _cased(word: str, like: str) -> str:
    if like.isupper() and len(like) > 1:
        return word.upper()
    return word.capitalize() if like[:1].isupper() else word


# -- whole acts and lines ---------------------------------------------------------------------------


def _act_edits(reading: Reading, passage: Passage) -> Iterator[Edit]:
    """One thing told left out: a word or a clause too many."""
    group = passage.group
    acts = [a for a in passage.acts if a.start >= 0 and a.verb != "and"]
    spans = [(a.start, a.end, 1.25) for a in acts] + (
        [(acts[0].start, acts[-1].end, 1.7)] if len(acts) > 1 else []
    )
    for start, end, surprise in spans:
        span = group.line.span(group.start + start, group.start + end)
        shown = reading.text[span.start : span.end]
        other = swapped(shown)
        if sum(a != b for a, b in zip(shown.split(), other.split(), strict=False)) > 1:
            yield _edit(span, other, f"“{other}” instead of “{shown}”", surprise)
    for i, act in enumerate(acts):
        if len(acts) < 2:
            break
        end = acts[i + 1].start if i + 1 < len(acts) else act.end
        start = act.start if i + 1 < len(acts) else acts[i - 1].end
        span = group.line.span(group.start + start, group.start + end)
        if i + 1 < len(acts):
            span = Span(span.start, group.line.span(group.start + end, group.start + end + 1).start)
        words = reading.text[span.start : span.end].strip(" ,;-\n")
        same = (
            i > 0
            and group.text[act.start : act.end].strip().lower()
            == group.text[acts[i - 1].start : acts[i - 1].end]
            .split()[-1:][0:1]
            .__str__()
            .strip("[]'")
            .lower()
        )
        yield _edit(span, "", f"without “{words}”", 1.4 if same or len(words) <= 6 else 2.4)


def _line_edits(reading: Reading, part: PartReading, passage: Passage, n: int) -> Iterator[Edit]:
    text, group = reading.text, passage.group
    whole = group.line.span(0, len(group.line.text))
    begin = text.rfind("\n", 0, whole.start) + 1
    end = text.find("\n", whole.end)
    end = len(text) if end < 0 else end + 1
    shown = " ".join(text[whole.start : whole.end].split())[:50]
    twice = n > 0 and part.passages[n - 1].group.text.split() == group.text.split()
    one_line = sum(p.group.line is group.line for p in part.passages) == 1
    if one_line:
        yield _edit(Span(begin, end), "", f"without the line “{shown}”", 0.7 if twice else 2.6)
    yield from _mark_edits(text, part, passage, n)
    yield from _insertions(text, part, passage, n, (begin, end))


def _mark_edits(text: str, part: PartReading, passage: Passage, n: int) -> Iterator[Edit]:
    """The count mark moved on or back so that it meets its neighbours, or shortened with what it counts."""
    group = passage.group
    mark = group.written
    assert mark is not None
    span = group.line.span(mark.start, mark.end)
    shown = text[span.start : span.end]
    if group.gap:
        shift = -group.gap if group.gap > 0 else 1 - group.gap
        if shift.denominator == 1:
            told = re.sub(r"\d+", lambda m: str(int(m.group()) + int(shift)), shown)
            yield _edit(span, told, f"“{told.strip()}” instead of “{shown.strip()}”", 1.5)
    section = passage.section
    last = [p for p in part.passages if p.section is section][-1:] == [passage]
    over = section.counts - (
        section.range[1] - section.range[0] + 1 if section.range else section.counts // 4 * 4
    )
    if last and 0 < over < len(mark.beats) and any(c.isdigit() for c in shown):
        acts = [a for a in passage.acts if a.start >= 0 and a.verb != "and"]
        fewer = _shorter_mark(shown, int(over))
        for i, act in enumerate(acts):
            rest = _without(group.text, acts, i)
            whole = Span(span.start, group.line.span(group.start, group.end).end)
            words = group.text[act.start : act.end]
            yield _edit(
                whole,
                fewer + rest,
                f"“{fewer.strip()}” and without “{words}”",
                1.2 if act.verb == "hold" else 1.8,
            )


def _shorter_mark(shown: str, over: int) -> str:
    numbers = list(re.finditer(r"\d+", shown))
    if len(numbers) > 2:
        return shown[: numbers[-2].end()] + shown[numbers[-1].end() :]
    last = numbers[-1]
    return shown[: last.start()] + str(int(last.group()) - over) + shown[last.end() :]


def _without(text: str, acts: list, i: int) -> str:  # type: ignore[type-arg]
    if i + 1 < len(acts):
        return text[: acts[i].start] + text[acts[i + 1].start :]
    return text[: acts[i - 1].end] if i else text[acts[i].end :]


def _insertions(
    text: str, part: PartReading, passage: Passage, n: int, line: tuple[int, int]
) -> Iterator[Edit]:
    """A line for counts that no line dances: one of its neighbours again, or on the other foot."""
    section = passage.section
    mine = [p for p in part.passages if p.section is section]
    group = passage.group
    shown = text[line[0] : line[1]].rstrip("\n")
    mark = group.written
    assert mark is not None
    missing = _missing_after(section, mine, passage)
    if missing is None:
        return
    first, last = missing
    lead = text[line[0] : group.line.span(mark.start, mark.end).start]
    gap = text[group.line.span(mark.start, mark.end).start : group.line.span(mark.start, mark.end).end]
    spacing = re.search(r"[\s.):|\]]*$", gap)
    tail = shown[len(shown.rstrip(" |")) :]
    for other in part.passages:
        beats = other.group.beats
        if not beats or beats[-1] // 1 - beats[0] // 1 != last - first:
            continue
        words = other.group.text.strip(" |")
        words = re.sub(r"\s*[\[(]?\b\d{1,2}[:.]\d\d\b[\])]?\s*$", "", words)
        marked = _mark_like(other, first)
        near = 0.0 if other.section is section else 0.4
        order = abs(part.passages.index(other) - n) * 0.02
        for body, extra in ((swapped(words), 0.0), (words, 0.15)):
            row = f"{lead}{marked}{spacing.group() if spacing else ' '}{body}{tail}\n"
            yield _edit(Span(line[1], line[1]), row, f"a line “{marked} {body}”", 1.9 + near + extra + order)


def _mark_like(other: Passage, first: Fraction) -> str:
    mark = other.group.written
    assert mark is not None
    shown = other.group.line.text[mark.start : mark.end].strip(" .):|[(]\t")
    shift = int(first) - int(mark.first if mark.first.denominator == 1 else mark.first // 1 + 1)
    return re.sub(r"\d+", lambda m: str(int(m.group()) + shift), shown)


def _missing_after(section, mine: list[Passage], passage: Passage) -> tuple[int, int] | None:  # type: ignore[no-untyped-def]
    """The written counts that are missing right after this passage: first and last."""
    mark = passage.group.written
    assert mark is not None
    i = mine.index(passage)
    if i + 1 < len(mine):
        gap = mine[i + 1].group.gap
        return (int(mark.last // 1) + 1, int(mark.last // 1 + gap)) if gap >= 1 else None
    told = section.range[1] - section.range[0] + 1 if section.range else -(-section.counts // 4) * 4
    if section.counts < told or told in (4, 12):
        size = told if section.counts < told else told + 4
        short = int(size - section.counts)
        return int(mark.last // 1) + 1, int(mark.last // 1) + short
    return None


# -- header, orders, options ---------------------------------------------------------------------------


def _in_header(reading: Reading) -> Iterator[Edit]:
    declared, dance = reading.declared, reading.dance
    if declared.counts is not None and dance.counts.denominator == 1:
        yield _edit(
            declared.counts.span,
            _number_like(reading.text, declared.counts.span, int(dance.counts)),
            f"{dance.counts} counts",
            1.1,
        )
    if declared.walls is not None and dance.parts:
        walls = walls_of(dance.parts[0].net_turn)
        yield _edit(
            declared.walls.span,
            _number_like(reading.text, declared.walls.span, walls),
            f"{walls} walls",
            1.15,
        )
    for name, claim in declared.part_counts.items():
        part = next((p for n, p in reading.parts.items() if n.lower() == name), None)
        if part is not None and part.part.counts != claim.value:
            yield _edit(
                claim.span, str(part.part.counts), f"{part.part.counts} counts for {name.upper()}", 1.1
            )
    if declared.bears_span is not None:
        shown = reading.text[declared.bears_span.start : declared.bears_span.end]
        yield _edit(declared.bears_span, swapped(shown), f"“{swapped(shown)}” instead of “{shown}”", 1.6)
    if reading.end_claim is not None:
        span = reading.end_claim[1]
        shown = reading.text[span.start : span.end]
        main = next(iter(reading.parts.values()))
        told = reclocked(shown, main.solution.facing)
        if told != shown:
            yield _edit(span, told, f"facing {clock(main.solution.facing)} at the end", 1.4)


def _number_like(text: str, span: Span, n: int) -> str:
    shown = text[span.start : span.end]
    words = {
        1: "one",
        2: "two",
        4: "four",
        8: "eight",
        16: "sixteen",
        24: "twenty-four",
        32: "thirty-two",
        36: "thirty-six",
        40: "forty",
        48: "forty-eight",
        64: "sixty-four",
    }
    return str(n) if shown.isdigit() or n not in words else _cased(words[n], shown)


def _in_orders(reading: Reading) -> Iterator[Edit]:
    orders, dance = reading.orders, reading.dance
    text = reading.text
    if dance.parts and dance.sequence is None and (orders.restarts or orders.tags):
        yield from _facings_of_orders(reading)
    main = next((p for p in reading.parts.values() if not p.text.extra), None)
    for order in orders.restarts:
        if order.after_span is None or main is None or order.after is None:
            continue
        shown = text[order.after_span.start : order.after_span.end]
        for section in main.text.sections[:-1]:
            end = section.base + section.counts - 1
            if end != order.after and re.search(r"\d+", shown) and end.denominator == 1:
                told = re.sub(r"\d+", str(end), shown, count=1)
                yield _edit(
                    order.after_span,
                    told,
                    f"a restart after {end} counts",
                    1.3 + float(abs(end - order.after)) / 100,
                )
    yield from _sequence_edits(reading)


def _facings_of_orders(reading: Reading) -> Iterator[Edit]:
    orders, dance, text = reading.orders, reading.dance, reading.text
    last = max([o.wall for o in orders.restarts] + [t.after_wall for t in orders.tags])
    walls = unroll(dance, walls=min(last, 40))
    told = [(o.wall, o.faces, o.faces_span, "restart") for o in orders.restarts] + [
        (t.after_wall, t.faces, t.faces_span, "tag") for t in orders.tags
    ]
    for wall, faces, span, kind in told:
        if faces is None or span is None:
            continue
        danced = next((w for w in walls if w.number == wall and (w.cut_by == kind or w.kind == kind)), None)
        if danced is not None:
            facing = int((danced.ends_facing if kind == "restart" else danced.starts_facing) * TURN)
            shown = text[span.start : span.end]
            now = reclocked(shown, facing)
            if now != shown:
                yield _edit(span, now, f"facing {clock(facing)} at the {kind}", 1.2)


def _sequence_edits(reading: Reading) -> Iterator[Edit]:
    """Another part in the sequence; the likeliest is the one that stands between the same neighbours elsewhere."""
    names = list(reading.dance.sequence or ())
    known = [p.name for p in reading.dance.parts] + [t.part.name for t in reading.dance.tags]
    for i, (name, span) in enumerate(zip(names, reading.orders.sequence_spans, strict=False)):
        if name in known:
            continue
        pairs = list(zip(names, names[1:], strict=False))
        for other in known:
            fits = pairs.count((names[i - 1], other)) if i else 0
            fits += pairs.count((other, names[i + 1])) if i + 1 < len(names) else 0
            yield _edit(span, other, f"part {other} instead of {name}", 1.5 - 0.1 * fits)


def _in_options(reading: Reading) -> Iterator[Edit]:
    for told in reading.options:
        remark = next(
            (
                r
                for r in reading.outline.remarks
                if r.line.span(r.start, r.end).start <= told.span.start < r.line.span(r.start, r.end).end
            ),
            None,
        )
        if remark is None:
            continue
        tokens = tokenize(remark.text, lexicon())
        for i, token in enumerate(tokens):
            for edit in word_edits(
                reading.text, remark.line, remark.start, token, before=tokens[i - 1] if i else None
            ):
                yield Edit(edit.mend, edit.surprise + 0.1)
        span = remark.line.span(remark.start, remark.end)
        yield _edit(span, "", "without the option", 2.4)
