"""Restarts, tags and the sequence: the sentences of a sheet that are no steps.

A sentence is searched for what it names (walls, counts, facings, the words restart and
tag); what it names decides what it orders.  The same order told three times (header,
"here", footnote) is one order.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from fractions import Fraction

from wallwise.dance.model import Span
from wallwise.reading.marks import NUMBER_WORDS
from wallwise.reading.outline import Outline, PartText, Remark
from wallwise.reading.tokens import TURN

_ORD = ["first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth", "tenth"]
_ORDINALS = {w: i for i, w in enumerate(_ORD, 1)}
_NUM = rf"(?:\d{{1,2}}(?:st|nd|rd|th)?|{'|'.join(_ORD)}|{'|'.join(list(NUMBER_WORDS)[:10])})"
_LISTED = rf"{_NUM}(?:\s*(?:,\s*and|,|and|&|\+|/)\s*(?:the\s+|on\s+|walls?\s+)?{_NUM}(?!\s*(?:counts?|beats?|o'?\s?c|:)))*"
_WALLS = re.compile(
    rf"\b(?:walls?|wls?|rotations?|repetitions?|w)\s*(?:no\.?|numbers?|#)?\s*(?P<a>{_LISTED})\b"
    rf"|\b(?P<b>(?:\d{{1,2}}(?:st|nd|rd|th)|{'|'.join(_ORD)})(?:\s*(?:,\s*and|,|and|&|\+)\s*(?:(?:in|on|during)\s+)?(?:the\s+)?(?:\d{{1,2}}(?:st|nd|rd|th)|{'|'.join(_ORD)}))*)\s+(?:walls?|repetitions?|rotations?|rounds?|time\s+(?:through|round|around)|sequence|go)\b"
    r"|\bw(?P<c>\d{1,2})\b",
    re.IGNORECASE,
)
_KIND = re.compile(
    r"\b(?P<restart>re-?starts?|re-?starting|start(?:ing)? (?:it )?(?:over|again|the dance (?:again|from)|from)|begin again|begin the dance again|go again|start again|go back to (?:the )?(?:start|beginning|count))\b|\b(?P<tag>tags?|bridges?|add)\b",
    re.IGNORECASE,
)
_AFTER = re.compile(
    rf"\b(?:after|up to(?: and including)?|to the end of|until|till|through|dance|do|only|for)\s+(?:the\s+|only\s+|just\s+|doing\s+|dancing\s+|up to\s+)*(?:first\s+)?(?:counts?\s*|beats?\s*)?(?P<a>\d{{1,3}})(?!\s*(?:st|nd|rd|th|walls?|o'?\s?c|:|times|secs?)\b)"
    rf"|\b(?P<b>\d{{1,3}})\s*(?:counts?|beats?|cts?|c)\b"
    rf"|\bcounts?\s*(?P<c>\d{{1,3}})\b"
    rf"|\b(?:section|sec|s|line|row|part|set)\s*(?P<d>\d{{1,2}})\b"
    rf"|\b(?P<e>\d{{1,2}}(?:st|nd|rd|th)|{'|'.join(_ORD)})\s+(?:eight|8|section|set|six|6|block|sequence of)\b"
    rf"|\b(?P<f>{'|'.join(list(NUMBER_WORDS)[:8])}|\d)\s+(?:eights|8s|8's|sections|sixes|sets)\b"
    rf"|\b(?P<g>halfway|half way)\b"
    rf"|\b(?P<h>{'|'.join(NUMBER_WORDS)})\s+(?:counts?|beats?)\b",
    re.IGNORECASE,
)
_CLOCK = re.compile(
    r"\b(?P<h>1[0-2]|0?[1-9])(?:[:.](?P<m>[0-5]\d)\b|\s?o'?\s?(?:clock|cl|c)\b)|\b(?:facing|face|to|at|towards?)\s+(?:the\s+)?(?P<wall>front|back|home)\b(?:\s+wall)?|\b(?:facing|face)\s+(?P<bare>12|3|6|9)\b(?!\s*(?:counts?|beats?))|\b(?P<word>twelve|three|six|nine)\s+o'?\s?clock|\b(?P<wall2>front|back|home)\s+wall",
    re.IGNORECASE,
)
_NEGATED = re.compile(
    r"\bno\s+(?:re-?starts?|tags?|bridges?)\b|\b(?:re-?starts?|tags?|bridges?)\s*[:=-]?\s*(?:none|nil|no\b|0\b)",
    re.IGNORECASE,
)
_CHANGES = r"\b(?:chang|replac|substitut)\w*|\binstead\b"
_CHANGED_TO = r"\b(?:chang|replac|substitut)\w*\b[^:]*?(?:\b(?:to|with|by|for)\b\s*:?|:(?!\d))\s*(?P<new>\S.*)|\binstead\b[^:]*:(?!\d)\s*(?P<new2>\S.*)"
_STARTS_FACING = re.compile(
    r"\b(?:starts?|begins?|starting|beginning|started|began|which is)\b[^.;,]*$", re.IGNORECASE
)
_HOURS = {"twelve": 0, "three": 3, "six": 6, "nine": 9}
_SENTENCE = re.compile(r"(?<=[.;!?])\s+(?=\S)|;\s*|\n")
_SEQUENCE_KEY = re.compile(
    r"\b(?:sequence|order|phrasing|pattern|structure|routine|phrase order|dance order)\b\s*(?:of (?:the )?(?:dance|parts))?\s*(?:is|goes|runs)?\s*[:=-]?\s*(?P<rest>.*)$",
    re.IGNORECASE,
)
_SEQUENCE_ITEM = re.compile(
    r"\b(?P<name>(?i:tag|bridge|ending|intro))\s*(?P<n>[1-9](?!\d))?\b|\b(?P<letters>[A-H]+)(?P<cut>\d{1,2})?(?P<mark>'|\*|-(?=\s*(?:,|$)))?(?=\b|[\s,*'-]|$)(?:\s*\(\s*(?:first\s+|only\s+|counts?\s+1-)*(?P<first>\d{1,3})(?:\s*(?:counts?|c))?(?:\s*only)?\s*\))?(?:\s*x\s*(?P<times>\d))?"
)


def changed_to(text: str) -> str:
    """The steps that a step change brings, as told ("… change count 8 to: step L beside R"); empty where none are."""
    pattern = re.compile(_CHANGED_TO, re.IGNORECASE)
    told = [
        m for verb in re.finditer(_CHANGES, text, re.IGNORECASE) if (m := pattern.match(text, verb.start()))
    ]
    told = [m for m in told if re.search(r"[A-Za-z]{4}", m["new"] or m["new2"])]
    if not told:
        return ""
    words = told[-1]["new"] or told[-1]["new2"]
    return re.split(r"\.\s+[A-Z]|[\s,]+(?:and\s+)?(?:then\s+)?restart\b", words)[0].strip(" -.;)\"'")


@dataclass(slots=True)
class RestartOrder:
    """A restart as told: the wall, the counts before it (None: not told), the facing claimed (1/48 turn)."""

    wall: int
    after: Fraction | None
    faces: int | None = None
    faces_span: Span | None = None
    span: Span = Span(0, 0)
    after_span: Span | None = None
    change: Remark | None = None
    faces_twice: bool = False  # two clocks are told; which is the restart's is not certain


@dataclass(slots=True)
class TagOrder:
    """A tag as told: after which wall, how many counts (None: its steps say), inside the wall after how many."""

    after_wall: int
    counts: int | None = None
    inside: Fraction | None = None
    faces: int | None = None
    faces_span: Span | None = None
    span: Span = Span(0, 0)
    part: str = ""


@dataclass(slots=True)
class Orders:
    """All orders of a sheet."""

    restarts: list[RestartOrder] = field(default_factory=list)
    tags: list[TagOrder] = field(default_factory=list)
    sequence: tuple[str, ...] | None = None
    sequence_spans: tuple[Span, ...] = ()
    vague: list[Remark] = field(default_factory=list)  # a restart or tag whose wall or count is told nowhere


@dataclass(slots=True)
class _Named:
    """What one sentence names."""

    kind: str
    walls: list[tuple[list[int], int]]
    counts: list[tuple[re.Match[str], int]]
    clocks: list[tuple[int, int, int]]


def read_sequence(remarks: list[Remark]) -> tuple[tuple[str, ...], tuple[Span, ...]] | None:
    """The order of parts ("A, A, B, Tag, A16, B") and each name's place; None where the sheet has none."""
    for remark in remarks:
        found = _SEQUENCE_KEY.search(remark.text)
        start = remark.start + found.start("rest") if found else remark.start
        text = remark.line.text[start : remark.end]
        if found is None and not re.fullmatch(
            r"\W*(?:(?:[A-H]\d{0,2}|tag|bridge|ending|intro)\W+){2,}(?:[A-H]\d{0,2}|tag|bridge|ending)\W*",
            text,
            re.IGNORECASE,
        ):
            continue
        names, spans = _sequence_items(remark, start)
        if len(names) >= 3:
            return tuple(names), tuple(spans)
    return None


def _sequence_items(remark: Remark, start: int) -> tuple[list[str], list[Span]]:
    names: list[str] = []
    spans: list[Span] = []
    text = remark.line.text
    for item in _SEQUENCE_ITEM.finditer(text, start, remark.end):
        span = remark.line.span(item.start(), item.end())
        if item["name"]:
            name = item["name"].title()
            names.append(name if not item["n"] else f"{name} {item['n']}")
            spans.append(span)
            continue
        letters = item["letters"]
        counts = item["cut"] or item["first"]
        for i, letter in enumerate(letters * int(item["times"] or 1)):
            last = i == len(letters) - 1
            names.append(
                f"{letter}({counts})" if counts and last else letter + ("-" if item["mark"] and last else "")
            )
            spans.append(span)
    return names, spans


def read_orders(out: Outline, header: list[Remark]) -> Orders:
    """Every restart, tag and sequence that the sheet orders."""
    orders = Orders()
    remarks = [*header, *out.remarks]
    found = read_sequence(remarks)
    if found is not None:
        orders.sequence, orders.sequence_spans = found
    main = next((p for p in out.parts if not p.extra), None)
    extras = [p for p in out.parts if p.extra]
    for remark in remarks:
        _read_remark(orders, remark, main, extras, in_header=remark in header)
    _merge(orders)
    _place_changes(orders)
    return orders


def _read_remark(
    orders: Orders, remark: Remark, main: PartText | None, extras: list[PartText], *, in_header: bool
) -> None:
    text = remark.text
    extra = next((p for p in extras if p.line is remark.line), None)
    if re.match(r"\W*(?:ending|finish|finale|outro)\b\s*[:(-]", text, re.IGNORECASE):
        return
    if (
        extra is None
        and re.search(r"\b(?:choreo|music|song)\w*\s*:", text, re.IGNORECASE)
        and not re.search(r"restart|tag", text, re.IGNORECASE)
    ):
        return
    kind = "tag" if extra is not None else ""
    walls_before: list[tuple[list[int], int]] = []
    at = remark.start
    for sentence in _sentences(text):
        start, end = at + sentence[0], at + sentence[1]
        for s, e in _by_kind(remark.line.text, start, end):
            named = _names(remark.line.text, s, e)
            changes = re.search(_CHANGES, remark.line.text[s:e], re.IGNORECASE) is not None
            here_kind = named.kind or (
                kind if named.walls or changes or (named.clocks and walls_before) else ""
            )
            if not named.walls and walls_before and (named.counts or named.clocks or changes) and here_kind:
                named.walls = walls_before
            elif named.walls:
                walls_before = named.walls
            if not here_kind and not named.walls:
                continue
            if not here_kind:
                _claim_facings(orders, remark, named)
                continue
            kind = here_kind
            if here_kind == "restart" and not named.kind and not named.counts and named.clocks:
                _claim_facings(orders, remark, named)
                continue
            _order(
                orders,
                Remark(remark.line, s, e, remark.part, None, remark.group, remark.section),
                named,
                here_kind,
                main=main,
                extra=extra,
                extras=extras,
                in_header=in_header,
            )


def _sentences(text: str) -> list[tuple[int, int]]:
    spans = []
    at = 0
    for cut in _SENTENCE.finditer(text):
        if re.search(r"\b(?:no|approx|secs?|st)\.$", text[at : cut.start()]):
            continue
        spans.append((at, cut.start()))
        at = cut.end()
    spans.append((at, len(text)))
    return [(a, b) for a, b in spans if text[a:b].strip()]


def _by_kind(text: str, start: int, end: int) -> list[tuple[int, int]]:
    """A sentence that speaks of a tag and of a restart, cut between them; else whole."""
    kinds = [m for m in _KIND.finditer(text, start, end)]
    cuts = []
    for a, b in zip(kinds, kinds[1:], strict=False):
        if (
            (a["tag"] is None) != (b["tag"] is None)
            and _WALLS.search(text, a.end(), b.start())
            and _WALLS.search(text, b.end(), end)
        ):
            cuts.append(b.start())
    edges = [start, *cuts, end]
    return list(zip(edges, edges[1:], strict=False))


def _names(text: str, start: int, end: int) -> _Named:
    kinds = [
        m
        for m in _KIND.finditer(text, start, end)
        if not _NEGATED.search(text[max(start, m.start() - 6) : min(end, m.end() + 10)])
    ]
    kind = ""
    if any(m["tag"] for m in kinds) and any(m["restart"] for m in kinds):
        kind = "both"
    elif kinds:
        kind = "tag" if kinds[0]["tag"] else "restart"
    walls = [
        ([_num(w) for w in re.findall(_NUM, m["a"] or m["b"] or m["c"], re.IGNORECASE)], m.start())
        for m in _WALLS.finditer(text, start, end)
    ]
    taken = [m.span() for m in _WALLS.finditer(text, start, end)]
    counts = [
        (m, m.start())
        for m in _AFTER.finditer(text, start, end)
        if not any(a <= m.start(m.lastgroup or 0) < b for a, b in taken)
    ]
    return _Named(kind, walls, counts, _clocks(text, start, end))


def _num(word: str) -> int:
    word = word.lower()
    if word[0].isdigit():
        return int(re.match(r"\d+", word).group())  # type: ignore[union-attr]
    return _ORDINALS.get(word) or NUMBER_WORDS[word]


def _clocks(text: str, start: int, end: int) -> list[tuple[int, int, int]]:
    found = []
    for m in _CLOCK.finditer(text, start, end):
        wall = m["wall"] or m["wall2"]
        if wall:
            value = TURN // 2 if wall.lower() == "back" else 0
        else:
            hour = int(m["h"] or m["bare"]) if (m["h"] or m["bare"]) else _HOURS[m["word"].lower()]
            value = (hour % 12 * 60 + int(m["m"] or 0)) * TURN // 720
        found.append((value, m.start(), m.end()))
    return found


def _counts_of(m: re.Match[str], main: PartText | None) -> Fraction | None:
    """How many counts a phrase means: "24 counts", "section 2", "the 2nd eight"."""
    if m["a"] or m["b"] or m["c"]:
        return Fraction(int(m["a"] or m["b"] or m["c"]))
    if m["h"]:
        return Fraction(NUMBER_WORDS[m["h"].lower()])
    if main is None:
        return None
    if m["g"]:
        return main.counts / 2
    n = _num(m["d"] or m["e"] or m["f"])
    if not 0 < n <= len(main.sections):
        return None
    section = main.sections[n - 1]
    return section.base + section.counts - 1


def _here(remark: Remark) -> Fraction | None:
    group = remark.group
    if group is None or not group.beats:
        return None
    return Fraction(group.beats[-1] // 1)


def _order(
    orders: Orders,
    remark: Remark,
    named: _Named,
    kind: str,
    *,
    main: PartText | None,
    extra: PartText | None,
    extras: list[PartText],
    in_header: bool,
) -> None:
    span = remark.line.span(remark.start, remark.end)
    walls = [(w, at) for group, at in named.walls for w in group]
    if not walls:
        if (
            orders.sequence is None
            and kind != "both"
            and not in_header
            and not re.search(r"\boptions?\b|\beasier\b|\beasy\b", remark.text, re.IGNORECASE)
            and extra is None
            and not re.search(r"enjoy|smile|\bdance again\b", remark.text, re.IGNORECASE)
            and named.kind
            and re.search(r"restart|tag|bridge", remark.text, re.IGNORECASE)
        ):
            orders.vague.append(remark)
        return
    text = remark.line.text
    if kind in ("restart", "both"):
        _order_restarts(orders, remark, named, walls, main=main, span=span, text=text, both=kind == "both")
    if kind in ("tag", "both"):
        _order_tags(
            orders,
            remark,
            named,
            walls,
            main=main,
            span=span,
            extra=extra,
            extras=extras,
            both=kind == "both",
            in_header=in_header,
        )


def _order_restarts(
    orders: Orders,
    remark: Remark,
    named: _Named,
    walls: list[tuple[int, int]],
    *,
    main: PartText | None,
    span: Span,
    text: str,
    both: bool,
) -> None:
    counts = [
        (value, m)
        for m, _ in named.counts
        if (value := _counts_of(m, main)) is not None
        and value >= (4 if main is not None and main.counts > 16 else 1)
    ]
    if both:
        counts = [
            c
            for c in counts
            if not re.match(r"\W*(?:count\s+)?(?:tag|bridge)", text[c[1].end() :], re.IGNORECASE)
        ]
    told = [c for c in counts if c[1]["a"] or c[1]["d"] or c[1]["e"]]
    changes = re.search(_CHANGES, text[remark.start : remark.end], re.IGNORECASE)
    if changes:
        # "dance 24 counts but change counts 7-8 to": what is changed is no place to restart at
        told = [c for c in told if c[1].start() < remark.start + changes.start() or c[1]["a"]]
        counts = told
    counts = told or counts
    here = (
        _here(remark)
        if re.search(
            r"\bhere\b|\bat this point\b|\brestart point\b", text[remark.start : remark.end], re.IGNORECASE
        )
        or not counts
        else None
    )
    if here is not None and not counts and main is not None and here >= main.counts:
        here = None
    for i, (wall, at) in enumerate(walls):
        after: Fraction | None = None
        after_span: Span | None = None
        if here is not None:
            after = here
        elif counts:
            value, m = _nearest(counts, i, len(walls), at)
            after, after_span = value, remark.line.span(*m.span())
        order = RestartOrder(wall, after, span=span, after_span=after_span)
        _with_facing(order, remark, named, walls, i)
        if changed_to(remark.text):
            order.change = remark
        orders.restarts.append(order)


def _nearest(
    counts: list[tuple[Fraction, re.Match[str]]], i: int, walls: int, at: int
) -> tuple[Fraction, re.Match[str]]:
    if len(counts) == walls:
        return counts[i]
    if len(counts) == 1:
        return counts[0]
    return min(counts, key=lambda c: abs(c[1].start() - at))


def _with_facing(
    order: RestartOrder | TagOrder, remark: Remark, named: _Named, walls: list[tuple[int, int]], i: int
) -> None:
    """The facing claimed for this wall: the clock named nearest after it; what says "starts at" is no claim of it."""
    at = walls[i][1]
    stop = next((b for _, b in walls[i + 1 :] if b > at), remark.end)
    text = remark.line.text
    near = [
        c for c in named.clocks
        if (at <= c[1] < stop or len(walls) == 1 or not remark.start <= at < remark.end)
        and not _STARTS_FACING.search(text[remark.start : c[1]])
    ]  # fmt: skip
    if len(named.clocks) == len(walls) > 1:
        near = [named.clocks[i]]
    if near:
        value, start, end = near[-1]
        order.faces, order.faces_span = value, remark.line.span(start, end)


def _order_tags(
    orders: Orders,
    remark: Remark,
    named: _Named,
    walls: list[tuple[int, int]],
    *,
    main: PartText | None,
    span: Span,
    extra: PartText | None,
    extras: list[PartText],
    both: bool,
    in_header: bool,
) -> None:
    text = remark.text
    sized = re.search(
        rf"\b(\d{{1,2}}|{'|'.join(NUMBER_WORDS)})\s*[- ]?(?:counts?|beats?|c)\b", text, re.IGNORECASE
    )
    counts = (int(sized[1]) if sized[1].isdigit() else NUMBER_WORDS[sized[1].lower()]) if sized else None
    inside: Fraction | None = None
    within = re.search(
        r"\b(?:during|after|on)\s+(?:the\s+)?(?:first\s+)?(?:counts?\s*)?(\d{1,2})\s*(?:counts?|beats?)\b|\bafter\s+count\s+(\d{1,2})|\bafter\s+(?:section|s)\s*(\d)",
        text,
        re.IGNORECASE,
    )
    if within and not re.search(r"\b(?:end|after)\s+(?:of\s+)?(?:the\s+)?walls?\b", text, re.IGNORECASE):
        value = within[1] or within[2]
        inside = Fraction(int(value)) if value else _section_end(main, int(within[3]))
        others = [
            int(m[1])
            for m in re.finditer(r"\b(\d{1,2})\s*[- ]?(?:counts?|beats?|c)\b", text, re.IGNORECASE)
            if int(m[1]) != inside
        ]
        counts = others[0] if others else None
    elif (
        re.search(r"\bhere\b", text)
        and extra is None
        and _here(remark) is not None
        and main is not None
        and _here(remark) < main.counts
    ):  # type: ignore[operator]
        inside = _here(remark)
    part = extra.name if extra is not None else _part_of_tag(text, extras)
    for i, (wall, _) in enumerate(walls):
        order = TagOrder(wall, counts, inside, span=span, part=part)
        _with_facing(order, remark, named, walls, i)
        orders.tags.append(order)


def _section_end(main: PartText | None, n: int) -> Fraction | None:
    if main is None or not 0 < n <= len(main.sections):
        return None
    return main.sections[n - 1].base + main.sections[n - 1].counts - 1


def _part_of_tag(text: str, extras: list[PartText]) -> str:
    for part in extras:
        if re.search(rf"\b{re.escape(part.name)}\b", text, re.IGNORECASE) and (
            part.name[-1].isdigit() or len(extras) == 1
        ):
            return part.name
    tags = [
        p
        for p in extras
        if not re.match(r"(?:tag \()?(?:ending|finish|finale|outro|end)", p.name, re.IGNORECASE)
    ]
    return tags[0].name if len(tags) == 1 else ""


def _claim_facings(orders: Orders, remark: Remark, named: _Named) -> None:
    """ "w3 you go again on 3 o'c, w6 on 6 o'c": facings of restarts told before."""
    walls = [(w, at) for group, at in named.walls for w in group]
    for i, (wall, _) in enumerate(walls):
        for order in orders.restarts:
            if order.wall == wall and order.faces is None:
                _with_facing(order, remark, named, walls, i)


def _merge(orders: Orders) -> None:
    """One order a wall: what one sentence leaves out another tells."""
    restarts: dict[tuple[int, Fraction | None], RestartOrder] = {}
    for order in orders.restarts:
        key = next(
            (
                k
                for k in restarts
                if k[0] == order.wall and (k[1] == order.after or k[1] is None or order.after is None)
            ),
            None,
        )
        if key is None:
            restarts[order.wall, order.after] = order
            continue
        held = restarts.pop(key)
        held.after = held.after if held.after is not None else order.after
        held.after_span = held.after_span or order.after_span
        if held.faces is None:
            held.faces, held.faces_span = order.faces, order.faces_span
        held.change = held.change or order.change
        restarts[held.wall, held.after] = held
    orders.restarts = sorted(restarts.values(), key=lambda o: (o.wall, o.after or 0))
    tags: dict[int, TagOrder] = {}
    for tag in orders.tags:
        held_tag = tags.setdefault(tag.after_wall, tag)
        held_tag.counts = held_tag.counts or tag.counts
        held_tag.part = held_tag.part or tag.part
        held_tag.inside = held_tag.inside if held_tag.inside is not None else tag.inside
        if held_tag.faces is None:
            held_tag.faces, held_tag.faces_span = tag.faces, tag.faces_span
    orders.tags = [tags[w] for w in sorted(tags)]


def _place_changes(orders: Orders) -> None:
    """A restart whose counts no sentence tells is left for the checks to say so."""
    orders.restarts = [o for o in orders.restarts if o.wall > 0]
