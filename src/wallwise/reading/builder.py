"""Blocks to an outline: each block is hung where it belongs, by what stands before and after it."""

import re

from wallwise.reading.asides import (
    aside_at,
    counts_told,
    facing_end,
    is_about_a_wall,
    is_header_line,
    is_option,
    is_prose,
    repeat_end,
    repeat_told,
    step_count,
    steps_at,
    steps_end,
    talk_end,
)
from wallwise.reading.blocks import Block
from wallwise.reading.clauses import Act
from wallwise.reading.headings import announces, lettered_part
from wallwise.reading.marked import Piece, split_marks
from wallwise.reading.marks import Mark, leading_mark
from wallwise.reading.openings import EIGHT, counts_on, halves, has_room, repeats, resets, takes_unmarked
from wallwise.reading.order_lines import ordered
from wallwise.reading.outline import Group, Outline, PartText, Remark, SectionText
from wallwise.reading.stepwords import actions_in, known_share
from wallwise.reading.tidy import Line
from wallwise.reading.wording import HERE, ORDER_WORDS

_RANGE = re.compile(r"\W*\d{1,3}\s*-")
_PUNCTUATION = re.compile(r"[\s:.-]*")
_STEPS = 0.75  # the share of step language of steps without a mark of their own
_LONGEST_HEADING = 160  # characters


def outline(blocks: list[Block], *, lettered: bool, bar: int) -> Outline:
    """The outline of a sheet's blocks; `lettered` says that A, B … are parts danced by a sequence.

    `bar` is the beats of a bar, for whoever places the counts.
    """
    built = _Builder(ordered(blocks), lettered=lettered).out
    built.bar = bar
    built.parts = [p for p in built.parts if p.sections]
    for part in built.parts:
        part.sections = [s for s in part.sections if s.groups or s.heading_text]
        for number, section in enumerate(part.sections, 1):
            below = [r for r in built.remarks if (r.part, r.section) == (part.name, section.number)]
            section.number = number
            if not section.groups and section.heading is not None:
                built.remarks += _take_heading_steps(part, section, section.heading)
                for remark in below:
                    if remark.line is not section.heading:
                        remark.group = section.groups[-1]
    return built


def _take_heading_steps(part: PartText, section: SectionText, heading: Line) -> list[Remark]:
    """Give a section the steps its heading tells ("First eight: R side on 1, L together on 2 …").

    What the heading says behind its last count is no step of any count: it comes back as a remark, unless
    it is an order, which was kept when the heading was met.
    """
    opened = _PUNCTUATION.match(heading.text, section.heading_at)
    line = heading.slice(opened.end() if opened is not None else section.heading_at)
    section.from_heading = True
    left = []
    for piece in _pieces_of_heading(line.text):
        last = section.groups[-1] if section.groups else None
        begin = _begin_of_steps(piece, line.text) if last is not None else piece.start
        if begin > piece.start:
            left.append(Remark(line, piece.start, begin, part.name, last, section.number))
        if piece.mark is not None:
            stop = aside_at(line.text, begin, piece.end)
            section.groups.append(Group(line, begin, stop, piece.mark))
        elif last is not None and not ORDER_WORDS.search(line.text, piece.start):
            left.append(Remark(line, piece.start, piece.end, part.name, last, section.number))
    section.groups = section.groups or [Group(line, 0, len(line.text), None)]
    return left


def _begin_of_steps(piece: Piece, text: str) -> int:
    """Where a piece's steps begin: where its mark follows them, behind what is said of the steps before."""
    if piece.mark is None or piece.mark.start < piece.end:
        return piece.start
    return talk_end(text, facing_end(text, piece.start, piece.end), piece.end)


def _is_counted(block: Block) -> bool:
    """Whether a block tells steps under count marks, be it in the words of a heading."""
    if block.kind == "heading":
        return any(piece.mark is not None for piece in _pieces_of_heading(block.text[block.rest :]))
    return block.kind == "steps" and block.mark is not None


def _pieces_of_heading(text: str) -> list[Piece]:
    """The pieces of a heading's words: these may begin with a mark where others count on from it."""
    lead = leading_mark(text)
    if lead is not None:
        pieces = split_marks(text, lead)
        if len(lead.beats) > 1 or sum(piece.mark is not None for piece in pieces) > 1:
            return pieces
    return split_marks(text, None)


class _Builder:
    """Walks the blocks once and hangs each in the part and the section that are open."""

    def __init__(self, blocks: list[Block], *, lettered: bool) -> None:
        self.blocks = blocks
        self.lettered = lettered
        self.out = Outline()
        self.part: PartText | None = None
        self.section: SectionText | None = None
        self.unmarked = not any(_is_counted(block) for block in blocks)
        for i, block in enumerate(blocks):
            self._take(i, block)

    def _take(self, i: int, block: Block) -> None:
        if self.lettered and (block.kind == "part" or self._is_lettered_part(i, block)):
            self._take_part(block)
        elif block.kind == "part":
            self._take_lettered_section(block)
        elif block.kind == "extra":
            self._take_extra(i, block)
        elif block.kind == "heading":
            self._take_heading(block)
        elif block.opens:
            self._take_line(self._open_section(), block)
        elif block.kind == "steps" and block.mark is not None:
            self._take_marked(i, block, block.mark)
        else:
            self._take_text(i, block)

    def _is_lettered_part(self, i: int, block: Block) -> bool:
        """Whether a line heads a part by its letter, with steps below; the block is that part's then."""
        head = lettered_part(block.text)
        below = self._next(i)
        if head is None or below is None or lettered_part(below.text) is not None:
            return False
        if below.kind not in ("heading", "steps") and below.stands < _STEPS:
            return False
        block.kind, block.name, block.rest, block.range = "part", head.name, head.rest, None
        return True

    # -- what is open -----------------------------------------------------------------------

    @property
    def _started(self) -> bool:
        return bool(self.out.parts)

    def _next(self, i: int) -> Block | None:
        return self.blocks[i + 1] if i + 1 < len(self.blocks) else None

    def _begins_below(self, i: int) -> bool:
        """Whether steps that count from the beginning follow block `i`."""
        below = self._next(i)
        return below is not None and below.begins and not below.opens

    def _part_named(self, name: str) -> PartText | None:
        return next((p for p in self.out.parts if p.name == name), None)

    def _last_part(self) -> PartText | None:
        """The last part that is no tag, bridge or ending."""
        return next((p for p in reversed(self.out.parts) if not p.extra), None)

    def _open_part(self, part: PartText) -> PartText:
        self.part, self.section = part, None
        self.out.parts.append(part)
        return part

    def _open_section(
        self, heading: Line | None = None, at: int = 0, counts: tuple[int, int] | None = None
    ) -> SectionText:
        """A new section of the open part; of the main part where none is open."""
        if self.part is None:
            self.part = self._part_named("main") or self._open_part(PartText("main"))
        self.section = SectionText(len(self.part.sections) + 1, heading, at, counts)
        self.part.sections.append(self.section)
        return self.section

    # -- headings ---------------------------------------------------------------------------

    def _take_part(self, block: Block) -> None:
        known = self._part_named(block.name)
        if known is None:
            self._open_part(PartText(block.name, line=block.line, line_at=block.rest))
        else:
            self.part, self.section = known, None
        words = block.text[block.rest :]
        if block.number is not None or (_RANGE.match(words) is None and known_share(words) > 0.7):
            self._take_heading(block)
        self._remark(block.line, block.rest)

    def _take_lettered_section(self, block: Block) -> None:
        """A section that a letter only numbers ("Part B: vine, touch", where no sequence calls for B)."""
        if block.number is None and not block.text[block.rest :].strip(" :.-"):
            self.section = None
            return
        if self.part is not None and self.part.extra:
            self.part = None
        self._take_heading(block)

    def _take_heading(self, block: Block) -> None:
        if self.part is not None and self.part.extra and self._goes_on(block):
            self.part = self._last_part() or self.part
        self._open_section(block.line, block.rest, block.range)
        if ORDER_WORDS.search(block.text[block.rest :]):
            self._remark(block.line, block.rest)

    def _take_extra(self, i: int, block: Block) -> None:
        """A tag, bridge or ending: a part of its own where steps are told for it, else a remark."""
        if not self._started:
            if ORDER_WORDS.search(block.text) or is_about_a_wall(block.text):
                self._remark(block.line)
            self.out.header.append(block.line)
            return
        inline = steps_at(block.text[block.rest :])
        heads = self._begins_below(i) or (inline is None and self._section_below(i))
        begins = heads and announces(block.text)
        if not (begins or inline is not None or self._steps_below(i, block)):
            self._remark(block.line)
            return
        here = self._last_group() if HERE.search(block.text) else None
        self._open_part(PartText(self._free_name(block.name), True, block.line))
        self._remark(block.line, group=here)
        if inline is not None and not begins:
            start = block.rest + inline
            lasts = counts_told(block.text[:start])
            self._take_inline(block.line.slice(start, steps_end(block.text, start)), lasts=lasts)
            self.part, self.section = self._last_part(), None

    def _take_inline(self, line: Line, *, lasts: int | None) -> None:
        """The steps told in a tag's own line, under their count marks where they have any."""
        pieces = split_marks(line.text, leading_mark(line.text))
        marked = any(piece.mark is not None for piece in pieces)
        section = self._open_section(counts=None if lasts is None or marked else (1, lasts))
        for piece in pieces:
            section.groups.append(Group(line, piece.start, piece.end, piece.mark))

    def _steps_below(self, i: int, block: Block) -> bool:
        """Whether a line without marks tells the steps of a tag, or orders it before they are told."""
        below = self._next(i)
        if below is None or below.kind != "text":
            return False
        bare = not block.text[block.rest :].strip(" :.-()0123456789counts")
        counted = not self.unmarked and below.stands >= _STEPS and actions_in(below.text) > 0
        if counted and not self._begins_below(i + 1) and not ORDER_WORDS.search(below.text):
            return True  # in a sheet with count marks a line without any is no more of the dance
        return (bare and below.stands >= 0.7) or (is_about_a_wall(below.text) and self._begins_below(i + 1))

    def _section_below(self, i: int) -> bool:
        """Whether a section that counts from 1 again is headed under a tag's heading: it is the tag's."""
        below, last = self._next(i), self._last_part()
        if below is None or last is None or not self._begins_below(i + 1):
            return False
        if below.kind == "text":
            return not is_about_a_wall(below.text) and self._heads_steps_below(i + 1, below)
        if below.kind != "heading":
            return False
        first = below.range[0] if below.range is not None else below.number
        return first == 1 and not self._goes_on(below)

    def _goes_on(self, block: Block) -> bool:
        """Whether a numbered section after a tag goes on with the dance: with counts not told there yet."""
        last = self._last_part()
        told = last.sections if last is not None else []
        if block.range is not None:
            ends = [section.range[1] for section in told if section.range is not None]
            return block.range[0] > max(ends, default=EIGHT * len(told))
        return block.number is not None and block.number > len(told)

    def _free_name(self, words: str) -> str:
        """A name that no part has yet: "Tag", "Tag 2" …"""
        name = " ".join(words.split()).title()
        taken = {p.name.lower() for p in self.out.parts}
        while name.lower() in taken:
            name = f"{name[:-1]}{int(name[-1]) + 1}" if name[-1].isdigit() else f"{name} 2"
        return name

    # -- steps ------------------------------------------------------------------------------

    def _take_marked(self, i: int, block: Block, mark: Mark) -> None:
        if not self._started and self._is_before_steps(i, block, mark):
            self.out.header.append(block.line)
        elif self._started and (is_option(block.text) or _begins_with_order(block)):
            self._remark(block.line)
        elif (
            block.stands < 0.25 and not counts_on(self.section, block, self._next(i)) and _first_words(block)
        ):
            self._take_text(i, block)
        else:
            self._take_pieces(block)

    def _take_line(self, section: SectionText, block: Block) -> None:
        """A line of a list, which is a section of its own."""
        if block.mark is not None:
            self._take_pieces(block)
        else:
            self._take_steps(section, block.line, 0, end=len(block.text), mark=None)

    def _take_pieces(self, block: Block) -> None:
        for piece in block.pieces:
            if piece.mark is None and not _tells_steps(block.text[piece.start : piece.end]):
                self._remark(block.line, piece.start, piece.end)
                continue
            section = self.section
            if section is None or (piece.mark is not None and resets(section, piece.mark)):
                section = self._open_section()
            begin = _begin_of_steps(piece, block.text) if section.groups else piece.start
            if begin > piece.start:
                self._remark(block.line, piece.start, begin)
            self._take_steps(section, block.line, begin, end=piece.end, mark=piece.mark)

    def _take_steps(
        self, section: SectionText, line: Line, start: int, *, end: int, mark: Mark | None
    ) -> None:
        """Steps of a line into a section; talk before them and orders behind are remarks."""
        begin = talk_end(line.text, start, end)
        if begin > start:
            self._remark(line, start, begin)
        start, stop = begin, aside_at(line.text, begin, end)
        section.groups.append(Group(line, start, stop, mark))
        if stop < end:
            self._remark(line, stop, end)

    def _is_before_steps(self, i: int, block: Block, mark: Mark) -> bool:
        """Whether a line with a number, before any steps, still tells of the dance."""
        if is_header_line(block.text) or (mark.first > 2 and block.stands < 0.75):
            return True
        below = self._next(i)
        begun = block.stands > 0.2 and below is not None and below.kind == "steps"
        return block.stands < 0.4 and not begun

    # -- lines without marks ----------------------------------------------------------------

    def _take_text(self, i: int, block: Block) -> None:
        text = block.text
        orders = ORDER_WORDS.search(text) is not None
        if self._is_tag_s(block) and not self._begins_below(i):
            self._take_tag_line(block)
            return
        if block.again is not None and repeats(self.section, block.again):
            self._take_repeat(block, block.again)
        elif not orders and self._heads_steps_below(i, block):
            self._take_named_section(block)
        elif orders or is_about_a_wall(text):
            if not self._started and not (self.unmarked and block.stands >= 0.7):
                self.out.header.append(block.line)
            self._remark(block.line)
        elif self.section is not None and self._goes_on_unmarked(self.section, i, block):
            self._take_unmarked(self.section, block)
        elif (
            self.unmarked
            and block.stands >= 0.6
            and (self._started or (step_count(text) >= 2 and not is_header_line(text)))
        ):
            self._open_section().groups.append(Group(block.line, 0, len(text), None))
        elif not self._started:
            self.out.header.append(block.line)
        elif (
            self.section is not None and block.stands >= 0.75 and step_count(text) >= 3 and not is_prose(text)
        ):
            self._open_section(block.line)
        else:
            self._remark(block.line)

    def _goes_on_unmarked(self, section: SectionText, i: int, block: Block) -> bool:
        """Whether a line without marks is steps of the section, not talk below a heading that tells them."""
        if not section.groups and section.heading is not None and block.stands < _STEPS:
            pieces = _pieces_of_heading(section.heading_text)
            if any(piece.mark is not None for piece in pieces):
                return False
        return takes_unmarked(section, block, self._next(i))

    def _is_tag_s(self, block: Block) -> bool:
        """Whether a line without count marks tells steps of the tag that is open, as all its lines do."""
        tag = self.part if self.part is not None and self.part.extra else None
        if tag is None or tag.line is None or not _tells_steps(block.text):
            return False
        return all(group.written is None for section in tag.sections for group in section.groups)

    def _take_tag_line(self, block: Block) -> None:
        if self.section is not None:
            self.section.groups.append(Group(block.line, 0, len(block.text), None))
        elif self.part is not None and self.part.line is not None:
            self._take_inline(block.line, lasts=counts_told(self.part.line.text))

    def _take_repeat(self, block: Block, again: Act) -> None:
        """A repeat without a count mark fills the open section, what that leaves open, or a new one."""
        section, counts = self.section, again.counts
        lasts = None if counts is None or again.of_section else counts[1] - counts[0] + 1
        if section is None:
            section = self._open_section()
        elif (
            section.heading is not None
            and not section.groups
            and counts is None
            and _heading_tells_steps(section)
        ):
            # the heading tells the steps that come again
            heading, at = section.heading, section.heading_at
            section.groups.append(Group(heading, at, len(heading.text), None))
        if section.groups and not has_room(section, lasts):
            section.range, second_half = halves(section)
            section = self._open_section(counts=second_half)
        stop = repeat_end(block.text)
        section.groups.append(Group(block.line, 0, stop, None, lasts=lasts))
        if stop < len(block.text):
            self._remark(block.line, stop)

    def _heads_steps_below(self, i: int, block: Block) -> bool:
        """Whether a line names the figures of the section that begins under it."""
        return (
            block.stands >= 0.55
            and (self._begins_below(i) or self._eight_begins_below(i, block))
            and (self._started or not is_header_line(block.text))
            and len(block.text) < _LONGEST_HEADING
            and not is_prose(block.text)
        )

    def _eight_begins_below(self, i: int, block: Block) -> bool:
        """Whether a line in capitals parts two eights whose counts run on through the dance (…8, 9…)."""
        below, section = self._next(i), self.section
        if not block.text.isupper() or below is None or below.mark is None or section is None:
            return False
        last = section.groups[-1].written if section.groups else None
        runs_on = last is not None and below.kind == "steps" and last.last // 1 + 1 == below.mark.first
        return runs_on and below.mark.first % EIGHT == 1

    def _take_named_section(self, block: Block) -> None:
        """A section by a line that names its figures, unless that line only adds to an open heading."""
        if self.section is not None:
            if not self.section.groups and self.section.heading is not None:
                return  # a second heading line: the first one numbers, this one names the figures
            written = self.section.groups[-1].written if self.section.groups else None
            if written is not None and written.last < 4 and self.section.range is None:
                self._remark(block.line)
                return
        self._open_section(block.line)

    def _take_unmarked(self, section: SectionText, block: Block) -> None:
        length = len(block.text)
        if section.groups:
            section.groups.append(Group(block.line, 0, length, None))
        else:
            self._take_steps(section, block.line, 0, end=length, mark=None)

    # -- remarks ----------------------------------------------------------------------------

    def _remark(
        self, line: Line, start: int = 0, end: int | None = None, *, group: Group | None = None
    ) -> None:
        self.out.remarks.append(
            Remark(
                line,
                start,
                len(line.text) if end is None else end,
                part=self.part.name if self.part else "",
                group=group or self._last_group(),
                section=self.section.number if self.section else None,
            )
        )

    def _last_group(self) -> Group | None:
        """The steps a remark stands behind: of the open section or, while it is empty, the one before."""
        if self.section is not None and self.section.groups:
            return self.section.groups[-1]
        if self.part is None or len(self.part.sections) < 2 or self.section is not self.part.sections[-1]:
            return None
        before = self.part.sections[-2]
        return before.groups[-1] if before.groups else None


def _tells_steps(text: str) -> bool:
    """Whether what stands in a counted line without a mark of its own tells steps all the same.

    What ends in a colon only names what comes behind it.
    """
    words = text.strip(" .,;-")
    if words.endswith(":") or ORDER_WORDS.search(words) or is_about_a_wall(words):
        return False
    return aside_at(words, 0, len(words)) > 0 and known_share(words) >= _STEPS and actions_in(words) > 0


def _begins_with_order(block: Block) -> bool:
    """Whether a line opens with an order that counts stand behind: "On wall 2 change the coaster (7&8) …"."""
    return leading_mark(block.text) is None and aside_at(block.text, 0, len(block.text)) == 0


def _heading_tells_steps(section: SectionText) -> bool:
    """Whether a heading has words, and more than that something is repeated."""
    return bool(section.heading_text) and repeat_told(section.heading_text) is None


def _first_words(block: Block) -> str:
    """The words of a block's first piece."""
    return block.text[block.pieces[0].start : block.pieces[0].end].strip()
