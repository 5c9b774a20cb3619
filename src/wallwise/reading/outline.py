"""Blocks to an outline: parts, sections, groups of steps on absolute beats, and what stands between.

A `Group` is a stretch of text with its count mark; its beats are absolute within the part.
A `Remark` is a sentence that is no step (a restart, a tag, an option), with where it stands.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from fractions import Fraction

from wallwise.reading.blocks import ORDER_WORDS, Block, known_share
from wallwise.reading.marks import Mark
from wallwise.reading.tidy import Line


@dataclass(slots=True)
class Group:
    """Steps under one count mark.

    `beats` are absolute in the part (empty: no mark; the section decides).  `written` is the
    mark as it stands.  Text is ``line.text[start:end]``.
    """

    line: Line
    start: int
    end: int
    written: Mark | None
    beats: tuple[Fraction, ...] = ()
    gap: Fraction = Fraction(0)  # beats missing before it; negative: danced twice

    @property
    def text(self) -> str:
        """The words of the group, without its mark."""
        return self.line.text[self.start : self.end]


@dataclass(slots=True)
class SectionText:
    """A section as written: its heading's words and its groups; `range` as its heading says."""

    number: int
    heading: Line | None = None
    heading_at: int = 0
    range: tuple[int, int] | None = None
    groups: list[Group] = field(default_factory=list)
    base: Fraction = Fraction(1)
    counts: Fraction = Fraction(0)
    wraps: bool = False  # its last mark runs into the first beat of the next section ("8&1")
    from_heading: bool = False  # no lines follow: the heading is all there is

    @property
    def heading_text(self) -> str:
        """The heading's words without its number and range."""
        return self.heading.text[self.heading_at :].strip(" :.-\t") if self.heading is not None else ""


@dataclass(slots=True)
class PartText:
    """A part as written: ``main``, a letter, or the name of a tag, bridge or ending."""

    name: str
    extra: bool = False
    line: Line | None = None
    line_at: int = 0
    sections: list[SectionText] = field(default_factory=list)
    after: tuple[str, Fraction] | None = None

    @property
    def counts(self) -> Fraction:
        """Counts of all its sections."""
        return sum((s.counts for s in self.sections), Fraction(0))


@dataclass(slots=True)
class Remark:
    """A line that is no step, with the part and the beat after which it stands (None: before any)."""

    line: Line
    start: int
    end: int
    part: str = ""
    after: Fraction | None = None
    group: Group | None = None
    section: int | None = None

    @property
    def text(self) -> str:
        """The words of the remark."""
        return self.line.text[self.start : self.end]


@dataclass(slots=True)
class Outline:
    """The whole sheet by its shape."""

    header: list[Line] = field(default_factory=list)
    parts: list[PartText] = field(default_factory=list)
    remarks: list[Remark] = field(default_factory=list)
    bar: int = 4


class _Builder:
    """Walks the blocks once and hangs each where it belongs."""

    def __init__(self, blocks: list[Block], lettered: bool) -> None:
        self.blocks = blocks
        self.lettered = lettered
        self.out = Outline()
        self.part: PartText | None = None
        self.section: SectionText | None = None
        self.unmarked = not any(b.kind == "steps" and b.pieces and b.pieces[0].mark for b in blocks)
        for i, block in enumerate(blocks):
            self._take(i, block)

    def _next(self, i: int) -> Block | None:
        return self.blocks[i + 1] if i + 1 < len(self.blocks) else None

    def _take(self, i: int, block: Block) -> None:
        if block.kind == "part":
            self._take_part(block)
        elif block.kind == "extra":
            self._take_extra(i, block)
        elif block.kind == "heading":
            self._open_section(block)
        elif block.kind == "steps":
            self._take_steps(i, block)
        else:
            self._take_text(i, block)

    def _main(self) -> PartText:
        if self.part is None:
            self.part = next((p for p in self.out.parts if p.name == "main"), None)
            if self.part is None:
                self.part = PartText("main")
                self.out.parts.append(self.part)
        return self.part

    def _take_part(self, block: Block) -> None:
        if not self.lettered:
            if block.number is None and not block.line.text[block.rest :].strip(" :.-"):
                self.section = None
                return
            block.number = block.number or (ord(block.name) - 64)
            if self.part is not None and self.part.extra:
                self.part = None
            self._open_section(block)
            return
        known = next((p for p in self.out.parts if p.name == block.name), None)
        if known is None:
            known = PartText(block.name, line=block.line, line_at=block.rest)
            self.out.parts.append(known)
        self.part, self.section = known, None
        if block.number is not None or (
            re.match(r"\W*\d{1,3}\s*-", block.line.text[block.rest :]) is None
            and known_share(block.line.text[block.rest :]) > 0.7
        ):
            self._open_section(block)
        self._remark(block, block.rest)

    def _open_section(self, block: Block) -> None:
        if (
            self.part is not None
            and self.part.extra
            and (block.number == 1 or (block.range and block.range[0] > 1) or (block.number or 0) > 1)
        ):
            # a numbered section after a tag goes on with the dance
            lettered = [p for p in self.out.parts if not p.extra]
            if lettered and block.number != 1:
                self.part = lettered[-1]
        part = self._main()
        self.section = SectionText(len(part.sections) + 1, block.line, block.rest, block.range)
        part.sections.append(self.section)
        self._remarks_in(block.line, block.rest)

    def _take_extra(self, i: int, block: Block) -> None:
        nxt = self._next(i)
        started = bool(self.out.parts)
        rest = block.line.text[block.rest :]
        mark = nxt.pieces[0].mark if nxt is not None and nxt.kind == "steps" and nxt.pieces else None
        plural = block.name.lower().endswith("s")
        steps_follow = mark is not None and mark.first <= 1 and started and not plural
        bare = (
            nxt is not None
            and nxt.kind == "text"
            and not rest.strip(" :.-()0123456789counts")
            and nxt.stands >= 0.7
            and started
        )
        inline = _steps_in(rest) if started and not plural else None
        if not (
            steps_follow
            or bare
            or inline is not None
            or (
                nxt is not None
                and nxt.kind == "text"
                and _is_orders(nxt.text)
                and self._steps_soon(i + 1)
                and started
                and not plural
            )
        ):
            if started or ORDER_WORDS.search(block.text):
                self._remark(block, 0)
            if not started:
                self.out.header.append(block.line)
            return
        name = " ".join(block.name.split()).title()
        taken = {p.name.lower() for p in self.out.parts}
        while name.lower() in taken:
            name = f"{name} 2" if not name[-1].isdigit() else f"{name[:-1]}{int(name[-1]) + 1}"
        where = self._where()
        self.part = PartText(name, True, block.line, 0, after=where)
        self.out.parts.append(self.part)
        self.section = None
        self._remark(block, 0)
        if inline is not None and not steps_follow:
            start = block.rest + inline
            self.section = SectionText(1, None, 0)
            self.part.sections.append(self.section)
            self.section.groups.append(Group(block.line, start, _steps_end(block.line.text, start), None))
            self.part, self.section = self._last_real(), None

    def _steps_soon(self, i: int) -> bool:
        nxt = self._next(i)
        return (
            nxt is not None
            and nxt.kind == "steps"
            and bool(nxt.pieces)
            and nxt.pieces[0].mark is not None
            and nxt.pieces[0].mark.first <= 1
        )

    def _last_real(self) -> PartText | None:
        return next((p for p in reversed(self.out.parts) if not p.extra), None)

    def _where(self) -> tuple[str, Fraction] | None:
        if self.part is None or not self.part.sections:
            return None
        return self.part.name, Fraction(len(self.part.sections))

    def _take_steps(self, i: int, block: Block) -> None:
        first = block.pieces[0].mark
        if first is None:
            self._take_text(i, block)
            return
        if not self.out.parts and (
            _HEADER_LINE.match(block.text)
            or first.first > 2
            or re.search(r"\bcounted\b|\bcount it\b", block.text, re.IGNORECASE)
        ):
            self.out.header.append(block.line)
            return
        if not self.out.parts and block.stands < 0.4 and not self._looks_started(i, block):
            self.out.header.append(block.line)
            return
        if (
            block.stands < 0.25
            and (self.section is None or not self._goes_on(first))
            and not block.text[block.pieces[0].start : block.pieces[0].end].strip() == ""
        ):
            self._take_text(i, block)
            return
        part = self._main()
        resets = self.section is not None and self.section.groups and self._resets(first)
        if self.section is None or resets:
            self.section = SectionText(len(part.sections) + 1)
            part.sections.append(self.section)
        for piece in block.pieces:
            if piece.mark is None:
                self._remarks_in(block.line, piece.start, whole=True)
                continue
            if piece is not block.pieces[0] and self.section.groups and self._resets(piece.mark):
                self.section = SectionText(len(part.sections) + 1)
                part.sections.append(self.section)
            end = self._carve(block.line, piece.start, piece.end)
            self.section.groups.append(Group(block.line, piece.start, end, piece.mark))
            if end < piece.end:
                self._remarks_in(block.line, end, stop=piece.end, whole=True)

    def _looks_started(self, i: int, block: Block) -> bool:
        nxt = self._next(i)
        return nxt is not None and nxt.kind == "steps" and block.stands > 0.2

    def _goes_on(self, mark: Mark) -> bool:
        if mark.floating:
            return True
        groups = self.section.groups if self.section else []
        last = next((g.written for g in reversed(groups) if g.written is not None), None)
        return (last is not None and 0 < mark.first - last.last <= 1) or (last is None and mark.first <= 1)

    def _resets(self, mark: Mark) -> bool:
        """Whether a mark starts a new section: it counts from 1 again after a full one."""
        assert self.section is not None
        last = next(
            (
                g.written
                for g in reversed(self.section.groups)
                if g.written is not None and not g.written.floating
            ),
            None,
        )
        if last is None or mark.floating:
            return False
        if self.section.range is not None and (self.section.range[1] - self.section.range[0]) >= 8:
            return False
        return mark.first <= 1 and last.last >= 6

    def _carve(self, line: Line, start: int, end: int) -> int:
        """Where the steps of a piece stop and an order or option written behind them begins."""
        text = line.text[start:end]
        found = _ASIDE.search(text)
        return start + found.start() if found is not None else end

    def _take_text(self, i: int, block: Block) -> None:
        nxt = self._next(i)
        started = bool(self.out.parts)
        text = block.text
        orders = ORDER_WORDS.search(text) is not None
        before_steps = (
            nxt is not None
            and nxt.kind == "steps"
            and nxt.pieces
            and nxt.pieces[0].mark is not None
            and nxt.pieces[0].mark.first <= 1
        )
        if block.stands >= 0.55 and before_steps and not orders and len(text) < 160 and not _sentence(text):
            self._open_section_text(block)
            return
        if orders or _is_orders(text):
            if not started and not (self.unmarked and block.stands >= 0.7):
                self.out.header.append(block.line)
            self._remark(block, 0)
            return
        if started and self.section is not None and not self.section.groups and block.stands >= 0.5:
            end = self._carve(block.line, 0, len(text))
            self.section.groups.append(Group(block.line, 0, end, None))
            if end < len(text):
                self._remarks_in(block.line, end, whole=True)
            return
        if (
            started
            and self.section is not None
            and self.section.groups
            and self.section.groups[-1].written is None
            and block.stands >= 0.6
            and self.section.heading is not None
        ):
            self.section.groups.append(Group(block.line, 0, len(text), None))
            return
        if self.unmarked and block.stands >= 0.6 and _step_count(text) >= 2:
            part = self._main()
            self.section = SectionText(len(part.sections) + 1)
            part.sections.append(self.section)
            self.section.groups.append(Group(block.line, 0, len(text), None))
            return
        if not started:
            self.out.header.append(block.line)
            return
        if (
            block.stands >= 0.75
            and _step_count(text) >= 3
            and self.section is not None
            and self.part is not None
            and not _sentence(text)
        ):
            self.section = SectionText(len(self.part.sections) + 1, block.line, 0)
            self.part.sections.append(self.section)
            return
        self._remark(block, 0)

    def _open_section_text(self, block: Block) -> None:
        if self.section is not None and not self.section.groups and self.section.heading is not None:
            return  # a second heading line: the first one numbers, this one names the figures
        if (
            self.section is not None
            and self.section.groups
            and self.section.groups[-1].written is not None
            and self.section.groups[-1].written.last < 4
            and self.section.range is None
        ):
            return
        part = self._main()
        self.section = SectionText(len(part.sections) + 1, block.line, 0)
        part.sections.append(self.section)

    # -- remarks --------------------------------------------------------------------------

    def _remark(self, block: Block, start: int) -> None:
        self._add_remark(block.line, start, len(block.line.text))

    def _remarks_in(self, line: Line, start: int, stop: int | None = None, whole: bool = False) -> None:
        text = line.text[start:stop]
        if whole or ORDER_WORDS.search(text):
            self._add_remark(line, start, stop if stop is not None else len(line.text))

    def _add_remark(self, line: Line, start: int, end: int) -> None:
        group = self.section.groups[-1] if self.section is not None and self.section.groups else None
        if (
            group is None
            and self.part is not None
            and len(self.part.sections) > 1
            and self.section is self.part.sections[-1]
        ):
            before = self.part.sections[-2]
            group = before.groups[-1] if before.groups else None
        self.out.remarks.append(
            Remark(
                line,
                start,
                end,
                self.part.name if self.part else "",
                None,
                group,
                self.section.number if self.section else None,
            )
        )


_HEADER_LINE = re.compile(
    r"\W*(?:start(?:s|ing)?|intro\w*|notes?|music|song|choreo\w*|type|level|description|counts?|rhythm|timing|dance)\s*[:=]|\W*(?:counted|count(?:ed)? in)\b",
    re.IGNORECASE,
)
_ASIDE = re.compile(
    r"[\[(*\u2022>\s~-]*\b(?:(?:two |one |first |second |2nd |1st )?re-?starts?\b(?! of)|(?:easy|easier|non-turning|no[- ]turn|alternative|alternate|optional?)\b(?!ly)[^,;]{0,25}?:?|option\b|tag\b|bridge\b|ending\b|start again|begin again|for the ending|on walls?\s+\d|during walls?\s|wall \d)"
    r"|\(\s*or\b|\bor\s+(?:walk|just)\b|[\[(]\s*(?:note|nb|styling)\b",
    re.IGNORECASE,
)


def _is_orders(text: str) -> bool:
    return bool(
        re.search(
            r"\b(?:after|end of|during|on)\s+(?:the\s+)?(?:walls?|\d(?:st|nd|rd|th)\s+wall|repetition)\b",
            text,
            re.IGNORECASE,
        )
    )


def _sentence(text: str) -> bool:
    """Whether a text reads as prose rather than as a heading."""
    return bool(
        re.search(r"\b(?:you|should|this|your|we|please|dance is|repeat|facing)\b", text, re.IGNORECASE)
    )


def _step_count(text: str) -> int:
    return len(re.split(r"[,;/]|\s-\s|\band\b|&|\bthen\b", text))


def _steps_in(text: str) -> int | None:
    """Where steps begin in the words of a tag's heading ("end of wall 2: sway R, L, R, L"); None if it has none."""
    for start in sorted(
        {m.end() for m in re.finditer(r"[:\u2022]|\s-\s|\b(?:add|dance|do)\b|\)", text)} | {0}, reverse=False
    ):
        rest = text[start:]
        cut = _steps_end(rest, 0)
        words = re.sub(r"\bcounts?\b|\bsteps?\b", " ", rest[:cut])
        if (
            known_share(words) >= 0.75
            and len(re.findall(r"[A-Za-z]{2,}", words)) >= 1
            and _verbs(words) >= 1
            and not re.search(r"\bwalls?\b|\bof\b|after|facing", words, re.IGNORECASE)
        ):
            return start
    return None


def _verbs(text: str) -> int:
    from wallwise.glossary.lexicon import Word
    from wallwise.reading.blocks import _tokens_of

    return sum(t.word in (Word.VERB, Word.FIGURE, Word.PART) for t in _tokens_of(text))


def _steps_end(text: str, start: int) -> int:
    found = re.search(
        r"\.\s|\bthen (?:start|begin|restart)|\bstart again|\brestart|\bfacing\b|\(facing",
        text[start:],
        re.IGNORECASE,
    )
    return start + found.start() if found else len(text)


# -- beats -------------------------------------------------------------------------------------


def outline(blocks: list[Block], *, lettered: bool, bar: int) -> Outline:
    """The outline of a sheet's blocks; `lettered` says that A, B … are parts danced by a sequence."""
    built = _Builder(blocks, lettered).out
    built.bar = bar
    built.parts = [p for p in built.parts if p.sections]
    for part in built.parts:
        part.sections = [s for s in part.sections if s.groups or s.heading_text]
        _number_lines(part)
        for n, section in enumerate(part.sections, 1):
            section.number = n
            if not section.groups and section.heading is not None:
                section.from_heading = True
                section.groups.append(
                    Group(section.heading, section.heading_at, len(section.heading.text), None)
                )
    return built


def _number_lines(part: PartText) -> None:
    """Lines that only number the eights (``1) … 2) …``) are sections of their own, not counts."""
    groups = [g for s in part.sections for g in s.groups]
    singles = [
        g
        for g in groups
        if g.written is not None and len(g.written.beats) == 1 and g.written.first.denominator == 1
    ]
    if len(singles) < 2 or len(singles) < len(groups) or any(s.heading is not None for s in part.sections):
        return
    numbers = [int(g.written.first) for g in singles if g.written is not None]
    if numbers != list(range(1, len(numbers) + 1)):
        return
    busy = sum(_step_count(g.text) >= 3 or len(g.text) > 34 for g in singles)
    if busy * 2 < len(singles):
        return
    part.sections = []
    for n, group in enumerate(singles, 1):
        group.written = None
        part.sections.append(SectionText(n, groups=[group]))


def place_section(
    section: SectionText, base: Fraction, bar: int, usual: int, *, danced: bool = False
) -> None:
    """Give every marked group of a section its absolute beats, from `base` on, and the section its counts.

    `danced` says that the section before has danced its first beat already.
    """
    marked = [g for g in section.groups if g.written is not None]
    if not marked:
        length = section.range[1] - section.range[0] + 1 if section.range else usual
        section.counts = Fraction(length)
        return
    first = next(
        (g.written for g in marked if g.written is not None and not g.written.floating), marked[0].written
    )
    assert first is not None
    running = base > 1 and -1 <= first.first - base <= 1
    shift = Fraction(0) if running else base - 1
    begins = base
    last = base - 1 + danced  # the last beat danced so far
    wrapped = False
    for group in marked:
        mark = group.written
        assert mark is not None
        if mark.floating:
            group.beats = (last // 1 + mark.first,)
            last = group.beats[0]
            continue
        start = mark.first + shift
        if start <= last and group is not marked[0]:
            for bars in (bar, 2 * bar, 8, 16, 12, 24):
                if Fraction(0) < start + bars - last <= 1:
                    shift += bars
                    break
        group.beats = tuple(b + shift for b in mark.beats)
        if (
            len(mark.beats) == 1
            and mark.start > group.start
            and group.beats[0] - last > 1
            and mark.first.denominator == 1
        ):
            # a number behind a line of several steps says how far the count has come
            group.beats = tuple(Fraction(n) for n in range(int(last // 1) + 1, int(group.beats[0]) + 1))
        gap = group.beats[0] - last
        group.gap = gap - 1 if gap > 1 else (gap if gap <= 0 else Fraction(0))
        last = max(last, group.beats[-1])
        wrapped = len(mark.beats) > 1 and mark.beats[-1] - mark.beats[0] > 0 and _wraps(group)
    end = last // 1
    if wrapped and end > begins:
        end -= 1
        section.wraps = True
    section.counts = Fraction(end - begins + 1)
    if (
        section.range is not None
        and section.range[1] - section.range[0] + 1 > section.counts
        and section is not None
    ):
        # A section whose last counts are told nowhere keeps the length its heading gives.
        section.counts = max(section.counts, Fraction(0))


def _wraps(group: Group) -> bool:
    """Whether the mark's last number was written smaller than the one before it (``8&1``)."""
    assert group.written is not None
    numbers = [int(n) for n in re.findall(r"\d+", group.line.text[group.written.start : group.written.end])]
    return len(numbers) > 1 and numbers[-1] < numbers[-2]
