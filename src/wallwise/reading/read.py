"""A sheet's text to a `Reading`: the dance, and everything it was read from.

    tidy -> blocks -> outline -> layouts -> solve -> Dance

Text never makes this raise, but for `NotASheet`: a text without a single step.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from fractions import Fraction
from functools import lru_cache
from itertools import product

from wallwise.dance.model import Dance, Foot, Kind, Option, Part, Restart, Section, Span, Step, Tag
from wallwise.glossary.lexicon import lexicon
from wallwise.reading.blocks import blocks_of, split_marks
from wallwise.reading.clauses import Act, read_acts
from wallwise.reading.header import Claim, Declared, read_header
from wallwise.reading.layout import Layout, on_slots, on_time
from wallwise.reading.marks import leading_mark
from wallwise.reading.moves import CONFLICT, PERHAPS, Item, Move, items_of, ticks
from wallwise.reading.orders import Orders, RestartOrder, _clocks, changed_to, read_orders, read_sequence
from wallwise.reading.outline import Group, Outline, PartText, Remark, SectionText, outline, place_section
from wallwise.reading.solve import Goal, Solution, Solved, solve
from wallwise.reading.tidy import Line, tidy
from wallwise.reading.tokens import TURN, tokenize

# The longest sheet seen has some 6,000 characters; ten times that is a book of them.
LONGEST = 60_000
MOST_LINES = 600
LONGEST_PIECE = 1_500  # characters under one count mark; a paragraph of steps has a few hundred


class NotASheet(ValueError):
    """The text has no steps in it; the message is one sentence for the teacher."""


@dataclass(slots=True)
class Passage:
    """What one search group was read from: its section, its groups of text, and its layouts."""

    section: SectionText
    groups: list[Group]
    layouts: list[Layout]
    acts: list[Act]

    @property
    def group(self) -> Group:
        """The stretch of text it is."""
        return self.groups[0]

    def span_of(self, move: Move) -> Span:
        """The place in the sheet of the words that told the move."""
        return self.span_at(move.where)

    def span_at(self, where: tuple[int, int] | None) -> Span:
        """The place in the sheet of characters of this passage's text; of the whole passage for None."""
        group = self.groups[0]
        start, end = where if where is not None and where[1] > where[0] else (0, group.end - group.start)
        return group.line.span(group.start + start, group.start + end)


@dataclass(slots=True)
class PartReading:
    """One part as read: its text, its passages, and the search's result."""

    text: PartText
    passages: list[Passage]
    solution: Solution
    part: Part


@dataclass(slots=True)
class Reading:
    """A sheet as read.  `dance` is what the body does; the rest says what it came from."""

    text: str
    dance: Dance
    declared: Declared
    outline: Outline
    orders: Orders
    parts: dict[str, PartReading] = field(default_factory=dict)
    end_claim: tuple[int, Span] | None = None
    options: list[OptionReading] = field(default_factory=list)


@dataclass(slots=True)
class OptionReading:
    """An easier way told beside the steps, as read: its steps, whether it agrees, and what it misses."""

    option: Option
    span: Span
    solution: Solution | None
    counts_told: Fraction
    counts_meant: Fraction


def read(text: str) -> Reading:
    """The dance a sheet tells, and what it was read from; NotASheet where no step stands in it."""
    if len(text) > LONGEST or text.count("\n") > MOST_LINES:
        raise NotASheet(
            f"This text is {len(text):,} characters long, in {text.count(chr(10)) + 1:,} lines, far longer than a step sheet: give one dance at a time."
        )
    lines = tidy(text)
    blocks = blocks_of(lines)
    rough = [Remark(b.line, 0, len(b.line.text)) for b in blocks]
    lettered = read_sequence(rough) is not None or bool(re.search(r"\bphrased\b", text, re.IGNORECASE))
    waltz = read_header([b.line for b in blocks[:14] if b.kind != "steps"], text).waltz
    bar = 3 if waltz or _counts_in_threes(blocks) else 4
    out = outline(blocks, lettered=lettered, bar=bar)
    declared = read_header(out.header, text)
    for part in out.parts:
        if part.line is not None and not part.extra:
            told = re.search(
                r"\b(\d{1,3})\s*(?:counts?|cts?|c|beats?)\b", part.line.text[part.line_at :], re.IGNORECASE
            )
            if told is not None:
                at = part.line_at
                declared.part_counts.setdefault(
                    part.name.lower(),
                    Claim(int(told[1]), part.line.span(at + told.start(1), at + told.end(1))),
                )
    if not out.parts:
        raise NotASheet(
            "There are no steps in this text: a step sheet has lines such as “1-2 Step R forward, touch L beside R”."
        )
    header = [Remark(line, 0, len(line.text)) for line in out.header]
    reading = Reading(text, Dance("", ()), declared, out, Orders())
    _read_parts(reading, header, bar)
    if not any(s.weight for p in reading.dance.parts for s in p.steps):
        raise NotASheet(
            "There are no steps in this text: a step sheet has lines such as “1-2 Step R forward, touch L beside R”."
        )
    return reading


def _counts_in_threes(blocks) -> bool:  # type: ignore[no-untyped-def]
    """Whether most count marks are three long and begin a three: a waltz that does not say so."""
    marks = [b.pieces[0].mark for b in blocks if b.kind == "steps" and b.pieces and b.pieces[0].mark]
    threes = sum(
        len(m.beats) % 3 == 0 and m.first % 3 == 1 and m.beats[-1] - m.beats[0] == len(m.beats) - 1
        for m in marks
    )
    return len(marks) >= 3 and threes > 0.6 * len(marks)


@lru_cache(maxsize=8192)
def _items(text: str) -> tuple[tuple[Item, ...], tuple[Act, ...]]:
    acts = read_acts(tokenize(text[:LONGEST_PIECE], lexicon()))
    return tuple(items_of(acts)), tuple(acts)


# -- layouts ------------------------------------------------------------------------------------


def _passages(part: PartText, bar: int, usual: int) -> list[Passage]:
    """Every piece of a part with its layouts, sections placed one after the other."""
    cursor, wrapped = Fraction(1), False
    passages: list[Passage] = []
    for section in part.sections:
        section.base = cursor
        place_section(section, cursor, bar, usual, danced=wrapped)
        wrapped = section.wraps
        marked = [g for g in section.groups if g.beats]
        if marked:
            for group in marked:
                passages.append(_marked_passage(section, group, passages))
                _claim_before(passages)
        else:
            passages.append(_unmarked_passage(section, passages, usual, bar))
        cursor += section.counts
    return passages


def _marked_passage(section: SectionText, group: Group, before: list[Passage]) -> Passage:
    acts = _items(group.text)[1]
    layouts = list(_on_beats(group.text, group.beats))
    same = _same_of(acts)
    if same is not None and (not layouts or layouts[0].cost > 1.0):
        layouts = (
            _repeated(
                same,
                group.beats[0],
                group.beats[-1] // 1 - group.beats[0] // 1 + 1,
                before=before,
                section=section,
            )
            + layouts
        )
    return Passage(section, [group], _few(layouts), list(acts))


def _claim_before(passages: list[Passage]) -> None:
    """A facing told before the first step of a passage is told of the one before: "…, to face 9 o'clock"."""
    if len(passages) < 2 or not passages[-1].acts:
        return
    first, last = passages[-1].acts[0], passages[-2]
    if not first.empty or first.faces is None or (first.unknown and len(first.unknown) > 4):
        return
    told = []
    for layout in last.layouts:
        if layout.moves and layout.moves[-1][1].faces is None:
            at, move = layout.moves[-1]
            layout = replace(
                layout, moves=(*layout.moves[:-1], (at, replace(move, faces=first.faces, faces_at=None)))
            )
        told.append(layout)
    last.layouts = told


@lru_cache(maxsize=8192)
def _on_beats(text: str, beats: tuple[Fraction, ...]) -> tuple[Layout, ...]:
    """The ways to dance a piece of text on the beats that its mark writes out."""
    items = list(_items(text)[0])
    layouts = on_slots(items, beats)
    whole = all(b.denominator == 1 for b in beats)
    if whole and len(beats) > 1 and (not layouts or layouts[0].cost > 0.1):
        layouts = layouts + on_time(items, beats[0], Fraction(len(beats)))
    return tuple(layouts)


@lru_cache(maxsize=8192)
def _in_time(text: str, start: Fraction, counts: Fraction) -> tuple[Layout, ...]:
    """The ways to dance a piece of text without a mark so that it fills `counts`."""
    return tuple(on_time(list(_items(text)[0]), start, counts))


def _unmarked_passage(section: SectionText, before: list[Passage], usual: int, bar: int) -> Passage:
    """A section without count marks: its figures last as long as they last, and fill it."""
    group = _one_group(section)
    acts = list(_items(group.text)[1])
    told_counts = section.counts if section.range else _counts_in(section)
    sizes = [(told_counts, 0.0)] if told_counts else [
        (Fraction(usual), 0.0), (Fraction(2 * usual), 0.7), (Fraction(usual, 2), 0.7),
        (Fraction(3 * usual, 2), 1.2), (Fraction(3 * usual), 1.5), (Fraction(4 * usual), 1.5),
    ]  # fmt: skip
    same = _same_of(acts)
    best: list[Layout] = []
    chosen = sizes[0][0]
    for counts, extra in sizes:
        layouts = [replace(lay, cost=lay.cost + extra) for lay in _in_time(group.text, section.base, counts)]
        if same is not None:
            layouts += [
                replace(lay, cost=lay.cost + extra)
                for lay in _repeated(same, section.base, counts, before=before, section=section)
            ]
            layouts.sort(key=lambda lay: lay.cost)
        if layouts and (not best or layouts[0].cost < best[0].cost):
            best, chosen = layouts, counts
    section.counts = chosen
    if best and best[0].over:
        section.counts = chosen + best[0].over
    elif best and best[0].left and not section.range:
        section.counts = chosen - best[0].left
    return Passage(section, [group], _few(best), acts)


def _one_group(section: SectionText) -> Group:
    """The lines of a section without marks as one stretch of text."""
    if len(section.groups) == 1:
        return section.groups[0]
    line = section.groups[0].line.slice(section.groups[0].start, section.groups[0].end)
    for group in section.groups[1:]:
        comma = Line(line.text + ",", [*line.starts, line.ends[-1]], [*line.ends, line.ends[-1]])
        line = comma.join(group.line.slice(group.start, group.end))
    return Group(line, 0, len(line.text), None)


def _counts_in(section: SectionText) -> Fraction | None:
    """A section that says how long it is: "(4 counts)"."""
    text = (
        section.heading.text
        if section.heading is not None
        else (section.groups[0].line.text if section.groups else "")
    )
    found = re.search(r"\b(\d{1,2})\s*[- ]?\s*(?:counts?|beats?|cts?)\b", text, re.IGNORECASE)
    return Fraction(int(found[1])) if found and int(found[1]) > 1 else None


def _few(layouts: list[Layout]) -> list[Layout]:
    """The layouts worth searching: no two alike, none much dearer than the cheapest."""
    layouts = sorted(layouts, key=lambda lay: lay.cost)
    kept: list[Layout] = []
    seen = set()
    for layout in layouts:
        if layout.cost > layouts[0].cost + 3.5 or len(kept) == 8:
            break
        key = tuple((at, m.foot, m.kinds, m.turns, m.faces, m.weight) for at, m in layout.moves)
        if key not in seen:
            seen.add(key)
            kept.append(layout)
    return kept


def read_alone(text: str, start: Fraction, counts: Fraction, goal: Goal) -> Solution | None:
    """A piece of text read by itself so that it fills `counts`, or None where it does not by far."""
    layouts = _few(list(_in_time(text, start, counts)))
    if not layouts or not layouts[0].moves or layouts[0].cost > 4:
        return None
    return solve([layouts], goal)


# -- "the same on the other foot" -----------------------------------------------------------------


def _same_of(acts: Sequence[Act]) -> Act | None:
    """The "same again" among the acts, with the turn, the count and the facing told beside it."""
    same = next((a for a in acts if a.verb == "same"), None)
    if same is None:
        return None
    for act in acts:
        if act is not same and act.turn is not None and same.turn is None and act.verb == "turn":
            same = replace(
                same,
                turn=act.turn,
                faces=same.faces or act.faces,
                faces_at=same.faces_at or act.faces_at,
                number=act.number,
            )
    return same


def _repeated(
    same: Act, first: Fraction, counts: Fraction, *, before: list[Passage], section: SectionText
) -> list[Layout]:
    """What was danced before, once more from beat `first`, on the same foot or the other."""
    sources = _sources(same, first, counts, before, section)
    if not sources:
        return []
    start = (
        sources[0].layouts[0].moves[0][0] // 1
        if sources[0].layouts and sources[0].layouts[0].moves
        else first
    )
    begin = min((p.groups[0].beats[0] for p in sources if p.groups[0].beats), default=start)
    shift = first - (begin if begin.denominator == 1 or first.denominator != 1 else begin // 1 + 1)
    found = []
    for choice in product(*[p.layouts[:3] for p in sources]):
        cost = sum(lay.cost for lay in choice)
        plain = tuple(
            (at + shift, replace(m, faces=None, weight=None)) for lay in choice for at, m in lay.moves
        )
        mirror = tuple((at, _flip(m)) for at, m in plain)
        for moves, flipped in ((plain, False), (mirror, True)):
            price = cost + _repeat_cost(same, moves, flipped)
            if same.turn is None:
                found.append(Layout(price, _claiming(moves, same)))
            else:
                found += [
                    Layout(price + extra, _claiming(more, same))
                    for more, extra in _with_turn(moves, same, section)
                ]
        if len(found) > 12:
            break
    return found


def _claiming(moves: tuple[tuple[Fraction, Move], ...], same: Act) -> tuple[tuple[Fraction, Move], ...]:
    """The repeated moves with the facing that the repeat is said to end in."""
    if same.faces is None or not moves:
        return moves
    at, last = moves[-1]
    return (*moves[:-1], (at, replace(last, faces=same.faces, faces_at=same.faces_at)))


def _with_turn(
    moves: tuple[tuple[Fraction, Move], ...], same: Act, section: SectionText
) -> list[tuple[tuple[tuple[Fraction, Move], ...], float]]:
    """The repeated moves with the turn that the repeat adds, on the count it names or on any."""
    found = []
    for i, (at, move) in enumerate(moves):
        on = at - section.base + 1
        if (same.number is not None and on != same.number) or move.foot is Foot.NONE:
            continue
        turned = tuple(
            (size + own, cost + price) for size, cost in ticks(same.turn) for own, price in move.turns
        )
        found.append(
            ((*moves[:i], (at, replace(move, turns=turned)), *moves[i + 1 :]), 0.1 if same.number else 0.4)
        )
    return found


def _repeat_cost(same: Act, moves: tuple[tuple[Fraction, Move], ...], flipped: bool) -> float:
    lead = same.foot or same.toward or (same.feet[0] if same.feet else None)
    if lead in (Foot.LEFT, Foot.RIGHT):
        foot = next((m.foot for _, m in moves if m.foot in (Foot.LEFT, Foot.RIGHT)), None)
        return 0.1 if foot is lead else (3.0 if foot is not None else (0.1 if flipped else 0.2))
    if same.same in ("other", "reverse"):
        return 0.1 if flipped else 3.0
    return 0.3 if flipped else 0.1


def _flip(move: Move) -> Move:
    return replace(
        move,
        foot=move.foot.other if move.foot else None,
        turns=tuple((-t, c) for t, c in move.turns),
        toward=move.toward.other if move.toward else None,
        against=move.against.other if move.against else None,
        weight=move.weight.other if move.weight else None,
    )


def _sources(
    same: Act, first: Fraction, counts: Fraction, before: list[Passage], section: SectionText
) -> list[Passage]:
    """The passages a repeat means: those of the counts it names, else those just before it."""
    placed = [p for p in before if p.layouts and p.layouts[0].moves]
    if same.counts is not None:
        a, b = same.counts
        if same.of_section:
            return [p for p in placed if a <= p.section.number <= b]
        for shift in (section.base - 1, Fraction(0), section.base - 9):
            found = [
                p for p in placed if a + shift - Fraction(1, 2) <= p.layouts[0].moves[0][0] < b + shift + 1
            ]
            if found and found[0].layouts[0].moves[0][0] < first:
                return found
        if a == b:  # "repeat section 2"
            found = [p for p in placed if p.section.number == a]
            if found:
                return found
    found = []
    for passage in reversed(placed):
        if passage.layouts[0].moves[0][0] < first - counts - Fraction(1, 2):
            break
        found.insert(0, passage)
    return found


# -- parts -----------------------------------------------------------------------------------------


def _read_parts(reading: Reading, header: list[Remark], bar: int) -> None:
    out = reading.outline
    usual = _usual(out, bar)
    passages = {part.name: _passages(part, bar, usual) for part in out.parts}
    called = {n.lower() for n in (read_sequence([*header, *out.remarks]) or ((), ()))[0]}
    for part in out.parts:
        if part.extra and part.name.lower() not in called and not part.name.lower().startswith("tag"):
            passages[f"Tag ({part.name.lower()})"] = passages.pop(part.name)
            for remark in out.remarks:
                if remark.part == part.name:
                    remark.part = f"Tag ({part.name.lower()})"
            part.name = f"Tag ({part.name.lower()})"
    reading.orders = read_orders(out, header)
    real = [p for p in out.parts if not p.extra]
    phrased = reading.orders.sequence is not None
    reading.end_claim = _end_claim(reading) if not phrased else None
    _claims_beside(reading, passages)
    last_end = Foot.LEFT
    for part in real:
        goal = _goal(reading, phrased)
        solution = solve([p.layouts for p in passages[part.name]], goal)
        reading.parts[part.name] = PartReading(
            part, passages[part.name], solution, _part(part, passages[part.name], solution)
        )
        last_end = solution.ended
    main = reading.parts[real[0].name].solution if real else None
    for part in out.parts:
        if part.extra:
            starts = {last_end if last_end is not Foot.BOTH else Foot.LEFT: 0.0}
            if last_end is Foot.BOTH:
                starts[Foot.RIGHT] = 0.0
            goal = Goal(starts, None, 1.5, end_weight=main.started if main else None)
            if is_ending(part.name):
                # It is danced from somewhere inside a wall: which foot is free then, and where the
                # room faces, is not known here.
                goal = Goal({Foot.LEFT: 0.0, Foot.RIGHT: 0.1}, None, 0.0)
                for passage in passages[part.name]:
                    passage.layouts = [_without_claims(lay) for lay in passage.layouts]
            solution = solve([p.layouts for p in passages[part.name]], goal)
            reading.parts[part.name] = PartReading(
                part, passages[part.name], solution, _part(part, passages[part.name], solution)
            )
    reading.dance = _dance(reading, real, bar)
    reading.options = _options(reading)
    reading.dance = replace(reading.dance, options=tuple(o.option for o in reading.options))


def is_ending(name: str) -> bool:
    """Whether an extra part of that name closes the song rather than adding to a wall."""
    return re.match(r"(?:tag \()?(?:ending|finish|finale|outro|end\b)", name, re.IGNORECASE) is not None


def _without_claims(layout: Layout) -> Layout:
    return replace(layout, moves=tuple((at, replace(m, faces=None)) for at, m in layout.moves))


def _usual(out: Outline, bar: int) -> int:
    ranges = [r[1] - r[0] + 1 for p in out.parts for s in p.sections if (r := s.range) is not None]
    if ranges:
        return max(set(ranges), key=ranges.count)
    return 6 if bar == 3 else 8


def _goal(reading: Reading, phrased: bool) -> Goal:
    """What the sheet says of the start and the end, as costs."""
    starts = {Foot.LEFT: 0.0, Foot.RIGHT: 0.4 if not reading.declared.waltz else 0.1}
    bears = reading.declared.bears
    if bears is not None:
        starts = {bears: 0.0, bears.other: CONFLICT}
    if phrased:
        return Goal({Foot.LEFT: starts[Foot.LEFT], Foot.RIGHT: min(starts[Foot.RIGHT], 1.0)}, None, 1.0)
    ends: dict[int, float] | None = None
    walls = reading.declared.walls
    if walls is not None or reading.end_claim is not None:
        ends = {}
        for facing in range(TURN):
            cost = 0.0
            if walls is not None and _walls(facing) != walls.value:
                cost += CONFLICT
            if reading.end_claim is not None and facing != reading.end_claim[0]:
                cost += CONFLICT
            ends[facing] = cost
    return Goal(starts, ends)


@lru_cache(maxsize=64)
def _walls(facing: int) -> int:
    return Fraction(facing, TURN).denominator if facing % TURN else 1


_NO_CLAIM = re.compile(
    r"\b(?:re-?start|tag|bridge|options?|easier|easy|ending|finish|walls?\s+\d|w\d|\d(?:st|nd|rd|th)\s+wall|start|begin|begins|starts|wall one"
    r"|(?:first|second|third|fourth|fifth|sixth|seventh|eighth|next|new|one|two)\s+wall)\b",
    re.IGNORECASE,
)


def _claims_beside(reading: Reading, passages: dict[str, list[Passage]]) -> None:
    """Facings told in sentences between the steps ("you are looking at 6 o'clock") are claims for the step before."""
    by_group = {id(p.group): p for rows in passages.values() for p in rows}
    for remark in reading.outline.remarks:
        passage = by_group.get(id(remark.group))
        if passage is None or _NO_CLAIM.search(remark.text):
            continue
        clocks = _clocks(remark.line.text, remark.start, remark.end)
        if len(clocks) != 1 or (
            reading.end_claim is not None
            and reading.end_claim[1] == remark.line.span(clocks[0][1], clocks[0][2])
        ):
            continue
        value, start, end = clocks[0]
        shift = passage.group.start if remark.line is passage.group.line else None
        at = (start - shift, end - shift) if shift is not None else None
        passage.layouts = [_claimed(layout, value, at) for layout in passage.layouts]


def _claimed(layout: Layout, faces: int, where: tuple[int, int] | None) -> Layout:
    if not layout.moves or layout.moves[-1][1].faces is not None:
        return layout
    at, move = layout.moves[-1]
    return replace(layout, moves=(*layout.moves[:-1], (at, replace(move, faces=faces, faces_at=where))))


def _end_claim(reading: Reading) -> tuple[int, Span] | None:
    """A facing told after the last steps: "you should now face 3 o'clock"."""
    real = [p for p in reading.outline.parts if not p.extra]
    if not real:
        return None
    last = next((g for s in reversed(real[-1].sections) for g in reversed(s.groups)), None)
    for remark in reading.outline.remarks:
        if remark.group is last and last is not None and remark.part == real[-1].name:
            text = remark.text
            if re.search(
                r"\b(?:restart|tag|bridge|wall\s*\d|walls|option|ending\s*:|finish\s*:|w\d|\d(?:st|nd|rd|th) wall|(?:first|second|third|fourth|fifth|sixth) wall)\b",
                text,
                re.IGNORECASE,
            ):
                continue
            if re.match(r"\W*(?:finish|ending|finale)\b\s*[:(-]", text, re.IGNORECASE):
                continue
            clocks = _clocks(remark.line.text, remark.start, remark.end)
            if len(clocks) == 1:
                value, start, end = clocks[0]
                return value, remark.line.span(start, end)
    return None


def _part(text: PartText, passages: list[Passage], solution: Solution) -> Part:
    steps = [
        replace(_step(e), span=passages[e.group].span_of(e.move))
        for e in solution.events
        if e.kind is not Kind.HOLD or e.move.from_figure != PERHAPS
    ]
    sections = []
    for n, section in enumerate(text.sections):
        begin, end = section.base, section.base + section.counts
        first, last = n == 0, n == len(text.sections) - 1
        mine = tuple(s for s in steps if (s.at >= begin or first) and (s.at < end or last))
        sections.append(Section(section.number, begin, section.counts, mine, section.heading_text))
    return Part(text.name, tuple(sections))


def _step(event: Solved) -> Step:
    move = event.move
    inferred = []
    if move.foot is None and event.foot in (Foot.LEFT, Foot.RIGHT):
        inferred.append("foot")
    if len(move.turns) > 1:
        inferred.append("turn")
    if len(move.kinds) > 1:
        inferred.append("weight")
    return Step(
        at=event.at, foot=event.foot, kind=event.kind, place=move.place, turn=Fraction(event.turn, TURN),
        toward=move.toward if move.toward in (Foot.LEFT, Foot.RIGHT) else None,
        ends_on=move.weight if event.foot is Foot.BOTH and move.weight in (Foot.LEFT, Foot.RIGHT) else None,
        long=move.long, also=move.also, span=None, inferred=tuple(inferred),
    )  # fmt: skip


def _dance(reading: Reading, real: list[PartText], bar: int) -> Dance:
    declared, orders = reading.declared, reading.orders
    parts = tuple(reading.parts[p.name].part for p in real)
    extras = {n: r.part for n, r in reading.parts.items() if r.text.extra}
    main = reading.parts[real[0].name].solution
    tags = _tags(reading, extras)
    sequence = orders.sequence
    if sequence is not None and len(real) == 1 and real[0].name == "main":
        sequence = None
    ending = next((p for n, p in extras.items() if is_ending(n)), None)
    if sequence is not None:
        tags += tuple(
            Tag(0, p)
            for n, p in extras.items()
            if p is not ending and not any(t.part.name == n for t in tags)
        )
    return Dance(
        title=declared.title, parts=parts, starts_on=main.started.other, beats_per_bar=bar, level=declared.level,
        choreographer=declared.choreographer, music=declared.music, intro_counts=declared.intro_counts, bpm=declared.bpm,
        restarts=_restarts(reading), tags=tags, sequence=sequence, ending=ending,
    )  # fmt: skip


def _restarts(reading: Reading) -> tuple[Restart, ...]:
    found = []
    for order in reading.orders.restarts:
        if order.after is None:
            continue
        change, start = _change(reading, order)
        found.append(Restart(order.wall, order.after, change, start, order.span))
    return tuple(found)


def _change(reading: Reading, order: RestartOrder) -> tuple[tuple[Step, ...], Fraction | None]:
    """The steps that replace the last ones before a restart, read from the words after the colon."""
    if order.change is None or order.after is None:
        return (), None
    words = changed_to(order.change.text)
    if not words:
        return (), None
    groups = _changed_groups(reading, order.after, words)
    if not groups:
        return (), None
    layouts = [_few(list(_on_beats(text, beats))) for text, beats in groups]
    if not all(rows and rows[0].moves for rows in layouts):
        return (), None
    main = next(iter(reading.parts.values()))
    start = groups[0][1][0]
    before, facing = main.solution.started, 0
    for event in main.solution.events:
        if event.at < start:
            before, facing = event.weight, event.facing
    starts = {before: 0.0} if before is not Foot.BOTH else {Foot.LEFT: 0.0, Foot.RIGHT: 0.0}
    solution = solve(layouts, Goal(starts, None, 1.0, facing, end_weight=main.solution.started))
    return tuple(_step(e) for e in solution.events), start


def _changed_groups(reading: Reading, after: Fraction, words: str) -> list[tuple[str, tuple[Fraction, ...]]]:
    """The words of a step change on absolute beats: by its own count marks, else on the last counts before the cut."""
    base = Fraction(0)
    for section in next(iter(reading.parts.values())).text.sections:
        if section.base <= after:
            base = section.base - 1
    pieces = [p for p in split_marks(words, leading_mark(words)) if p.mark is not None]
    if pieces:
        groups = []
        last = Fraction(0)
        for piece in pieces:
            assert piece.mark is not None
            beats = piece.mark.beats if not piece.mark.floating else (last // 1 + piece.mark.first,)
            last = beats[-1]
            shift = base if last + base <= after + 1 else Fraction(0)
            groups.append((words[piece.start : piece.end].strip(" -"), tuple(b + shift for b in beats)))
        return groups
    n = sum(1 for item in _items(words)[0] if item.options)
    return [(words, tuple(after - n + 1 + i for i in range(n)))] if n else []


def _tags(reading: Reading, extras: dict[str, Part]) -> tuple[Tag, ...]:
    tags = []
    for order in reading.orders.tags:
        part = extras.get(order.part)
        if part is None:
            if order.counts is None:
                continue
            part = Part("Tag", (Section(1, Fraction(1), Fraction(order.counts), ()),))
        tags.append(Tag(order.after_wall, part, order.inside, order.span))
    return tuple(tags)


# -- options ---------------------------------------------------------------------------------------

_OPTION = re.compile(
    r"\b(?:(?:an?\s+)?(?:easy|easier|non[- ]turning|no[- ]turn|simple|simpler|alternative|alternate|beginner)\s*(?:option|version|way|alternative|variation|step)?s?|options?|or)\b\s*(?P<rest>[^\])]*)",
    re.IGNORECASE,
)


def _options(reading: Reading) -> list[OptionReading]:
    found: list[OptionReading] = []
    for remark in reading.outline.remarks:
        if remark.group is None or re.search(r"\brestart|^\W*(?:tag|bridge)\b", remark.text, re.IGNORECASE):
            continue
        for told in _OPTION.finditer(remark.line.text, remark.start, remark.end):
            option = _option(reading, remark, told)
            if option is not None:
                found.append(option)
                break
    return found


def _option(reading: Reading, remark: Remark, told: re.Match[str]) -> OptionReading | None:
    read_part = reading.parts.get(remark.part)
    if read_part is None or remark.group is None:
        return None
    rest = told["rest"]
    base = remark.line.text
    start = told.start("rest")
    named = re.search(
        r"(?:(?:for|on|of|in place of|instead of|to|replac\w+)\s*(?:the\s+)?(?:counts?\s*)?|\bcounts?\s*)(?:\([^)]*\)\s*)?(\d{1,3}(?:\s*[-&,]\s*\d{1,3})*)(?!\s*(?:walls?|turns?|/))",
        rest,
        re.IGNORECASE,
    )
    beats = remark.group.beats
    if named is not None:
        mark = leading_mark(named[1])
        if mark is not None:
            beats = _named_beats(read_part, remark, mark.beats)
            start = start + named.end()
    colon = base.find(":", told.start(), told.end())
    if colon >= 0 and colon >= start - 1:
        start = colon + 1
    body = base[start : told.end("rest")]
    body = re.sub(r"^\W*(?:is|are|to|-|=|:|replace (?:with|by)|just|simply)?\s*", "", body)
    body = re.sub(
        r"[,;(]?\s*\b(?:with\s+)?(?:no|without(?: the)?)\s+turn(?:s|ing)?\b\)?", "", body, flags=re.IGNORECASE
    )
    if not beats:
        return None
    items, acts = _items(body)
    if not any(i.options for i in items) or not any(a.verb or a.figures for a in acts):
        return None
    layouts = list(_on_beats(body, beats))
    meant = beats[-1] // 1 - beats[0] // 1 + 1
    section = next(
        (s for s in reversed(read_part.text.sections) if s.base <= beats[0]), read_part.text.sections[0]
    )
    rel = [b - section.base + 1 for b in beats]
    label = f"{rel[0]}-{rel[-1] // 1}" if len(rel) > 1 else str(rel[0])
    span = remark.line.span(told.start(), told.end("rest"))
    if not layouts or not layouts[0].moves or layouts[0].cost > 1.9:
        natural = _natural_counts(body)
        if natural is None or natural == meant:
            return None
        option = Option(section.number, label, beats[0], beats[-1], (), remark.part, span)
        return OptionReading(option, span, None, natural, meant)
    events = read_part.solution.events
    before = [e for e in events if e.at < beats[0]]
    weight = before[-1].weight if before else read_part.solution.started
    facing = before[-1].facing if before else 0
    inside = [e for e in events if beats[0] <= e.at <= beats[-1] + Fraction(3, 4)]
    if not inside:
        return None
    starts = {weight: 0.0} if weight is not Foot.BOTH else {Foot.LEFT: 0.0, Foot.RIGHT: 0.0}
    solution = solve(
        [_few(layouts)], Goal(starts, {inside[-1].facing: 0.0}, 2.0, facing, end_weight=inside[-1].weight)
    )
    steps = tuple(_step(e) for e in solution.events)
    option = Option(section.number, label, beats[0], beats[-1], steps, remark.part, span)
    told_counts = layouts[0].moves[-1][0] // 1 - beats[0] // 1 + 1 + layouts[0].over
    return OptionReading(option, span, solution, told_counts, meant)


def _natural_counts(text: str) -> Fraction | None:
    """How many counts a piece of text lasts of itself; None where it does not read well at any length up to 16."""
    found = [
        (rows[0].cost, Fraction(n))
        for n in range(1, 17)
        if (rows := _in_time(text, Fraction(1), Fraction(n)))
    ]
    cost, counts = min(found, default=(9.0, Fraction(0)))
    return counts if cost < 1 else None


def _named_beats(part: PartReading, remark: Remark, beats: tuple[Fraction, ...]) -> tuple[Fraction, ...]:
    """The counts an option names, as beats of the part: of the section it stands in, or running."""
    section = next((s for s in part.text.sections if remark.group in s.groups), None)
    running = section is None or beats[0] > section.counts
    shift = Fraction(0) if running or section is None else section.base - 1
    return tuple(b + shift for b in beats)
