"""Restarts, tags and the sequence: the sentences of a sheet that are no steps.

A sentence is searched for what it names (walls, counts, facings, the words restart and
tag); what it names decides what it orders.  The same order told three times (header,
"here", footnote) is one order.
"""

import re
from dataclasses import dataclass, field, replace
from fractions import Fraction
from typing import NamedTuple

from wallwise.dance.model import Span
from wallwise.reading.added import adds_counts
from wallwise.reading.asides import is_about_a_wall
from wallwise.reading.changes import change_at, changed_to, says_it_changes, tells_steps_with_feet
from wallwise.reading.counted_walls import counted_walls, is_counted
from wallwise.reading.cuts import leaves_out, shortens, tells_of_music
from wallwise.reading.header import intro_end
from wallwise.reading.headings import is_ending
from wallwise.reading.merged import is_same_restart, merge, merged_restarts, merged_tags
from wallwise.reading.naming import NEGATED, Named, announced_in, names_in
from wallwise.reading.outline import Outline, PartText, Remark
from wallwise.reading.restart_orders import Claimed, RestartOrder, place_told, restarts_told
from wallwise.reading.sequence import read_sequence
from wallwise.reading.stepwords import actions_in
from wallwise.reading.stretches import names_order, sentences, stretches_in, tells_close
from wallwise.reading.tag_cuts import tag_cut
from wallwise.reading.tag_orders import TagOrder, is_after_wall, size_of_tag, tags_told
from wallwise.reading.tag_repeats import danced_again
from wallwise.reading.wall_lists import by_wall, is_item, is_whole, listed_kind, lists_walls
from wallwise.reading.wording import HERE, NTH, RESTART

_CREDIT = re.compile(r"\b(?:choreo|music|song)\w*\s*:", re.IGNORECASE)
_ORDERED = re.compile(r"restart|tag|bridge", re.IGNORECASE)
_ONLY_COUNTS = re.compile(r"\W*(?:that is\s+)?\d{1,2}\s*(?:counts?|cts?|beats?)\W*", re.IGNORECASE)
_LABEL = re.compile(
    rf"\W*(?:(?:the|note|\d|one|two|three)\s+)?{RESTART}\W*\d?\W*"
    rf"|(?:(?!\bw(?:alls?\b|\d))[^.;:]){{0,60}}?\b{RESTART}\s*:\W*",  # "Listen out for two restarts:"
    re.IGNORECASE,
)
_THEN_AGAIN = re.compile(r"\bthen\s+(?:from|start|begin|back|go|straight)\b[^.;]*\W*$", re.IGNORECASE)
_LISTED = re.compile(rf"\W*(?:(?:on|during|in)\s+)?(?:the\s+)?(?:{NTH}\s+)?w(?:alls?|\d)\b", re.IGNORECASE)
_ADDS = re.compile(
    r"\b(?:extra|additional|more|again|twice|at the end|finish(?:es)? with|ends? with)\b", re.IGNORECASE
)
_EXTRA = re.compile(r"\b(?:extra|additional)\b", re.IGNORECASE)
_SEVERAL = 2  # words of steps
_RESTART_TOLD = re.compile(rf"\b{RESTART}\b", re.IGNORECASE)
_OTHERWISE = re.compile(
    r"(?<!n't )(?<!not )\b(?:except|apart\s+from|but\s+not|other\s+than|different(?:ly)?"
    r"|leave|skip|omit|miss|drop)\b",
    re.IGNORECASE,
)
_SHORT_WALL = re.compile(r"\bshort(?:er)?\s+walls?\b", re.IGNORECASE)
_WALL_IS_OVER = re.compile(
    r"\b(?:wall\s+\d{1,2}|w\d{1,2})\s+(?:ends?|stops?|finishes|is\s+over)\s+(?:here\b|(?:after|at|with)\b[^.;]*\d)"
    r"|^\W*(?:the\s+)?end\s+of\s+(?:the\s+)?wall\s+\d{1,2}\W*$",
    re.IGNORECASE,
)
_NO_ORDER = re.compile(r"\boptions?\b|\beasier\b|\beasy\b|enjoy|smile|\bdance again\b", re.IGNORECASE)


class Vague(NamedTuple):
    """A restart or tag that names no wall; `after` the counts of a restart, where these are told."""

    remark: Remark
    after: Fraction | None


@dataclass(slots=True)
class Orders:
    """All orders of a sheet."""

    restarts: list[RestartOrder] = field(default_factory=list)
    tags: list[TagOrder] = field(default_factory=list)
    starts: list[tuple[int, int, Span]] = field(default_factory=list)  # walls and the facing they start with
    unread: list[Remark] = field(default_factory=list)  # something is done on a wall, and not known what
    sequence: tuple[str, ...] | None = None
    sequence_spans: tuple[Span, ...] = ()
    vague: list[Vague] = field(default_factory=list)
    announced: list[tuple[str, int, Span]] = field(
        default_factory=list
    )  # restarts or tags said to be so many


def read_orders(out: Outline, header: list[Remark]) -> Orders:
    """Every restart, tag and sequence that the sheet orders."""
    orders = Orders()
    remarks = [*header, *out.remarks]
    found = read_sequence(remarks)
    if found is not None:
        orders.sequence, orders.sequence_spans = found
    reader = _Reader(orders, out)
    for remark in remarks:
        reader.read(remark, in_header=remark in header)
    orders.restarts = [order for order in merged_restarts(orders.restarts) if order.wall > 0]
    _put_where_told(orders)
    orders.tags = merged_tags(orders.tags)
    return orders


class _Reader:
    """Reads remark after remark into the orders, with the parts of the sheet at hand."""

    def __init__(self, orders: Orders, out: Outline) -> None:
        self.orders = orders
        self.main = next((p for p in out.parts if not p.extra), None)
        self.extras = [p for p in out.parts if p.extra]
        self.label: re.Match[str] | None = None  # the line just read, where it only announces restarts
        self.listing = False  # whether the line just read orders restarts and nothing else

    def read(self, remark: Remark, *, in_header: bool) -> None:
        """Add what a remark orders; a sentence goes on with the walls and the kind of the one before it."""
        if in_header:
            remark = replace(remark, start=remark.start + intro_end(remark.text))
        self.orders.announced += announced_in(remark)
        extra = next((p for p in self.extras if p.line is remark.line), None)
        if _orders_nothing(remark.text, extra):
            return
        label, self.label = self.label, _LABEL.fullmatch(remark.text)
        listing, self.listing = self.listing, False
        kind = "tag" if extra is not None else ""
        if label is not None and not kind and _is_listed(remark):
            kind = "restart"
            self._forget_label(label)
            self.label = label
        elif listing and not kind and is_item(names_in(remark)) and not is_after_wall(remark.text):
            kind = "restart"
        if (counted := counted_walls(remark, self.main)) is not None:
            self._take_counted(*counted)
            return
        if is_counted(remark, self.main):
            self.orders.unread.append(remark)
        if lists_walls(remark.text, list(sentences(remark.text))) and self._read_list(remark, extra):
            return
        before, restarts_before = len(self.orders.tags), len(self.orders.restarts)
        self._read_stretches(remark, extra, kind=kind, in_header=in_header)
        self._put_what_is_danced(self.orders.tags[before:], remark.text)
        told = self.orders.restarts[restarts_before:]
        self._put_end(told, remark)
        self.listing = bool(told) and len(self.orders.tags) == before

    def _read_stretches(self, remark: Remark, extra: PartText | None, *, kind: str, in_header: bool) -> None:
        """Add what the sentences of a remark order, each with what the one before it has begun."""
        of_tag = any(part.name == remark.part and not is_ending(part.name) for part in self.extras)
        walls: list[tuple[int, int]] = []
        for stretch in stretches_in(remark):
            named = names_in(stretch)
            self._note_starts(named)
            if self._read_list(stretch, extra):
                continue
            own = named.kind = _kind_of(named, extra, self.main, of_tag=of_tag) or self._changes_restart(
                named
            )
            if kind == "tag" and _goes_over(named):
                continue
            if not own and (is_whole(named, self.main) or not _goes_on(named, kind, begun=bool(walls))):
                self._keep_unread(named, changes=kind == "restart" and bool(walls))
                continue
            named.kind = own or kind
            more = not named.walls
            if named.walls:
                walls = named.walls
            elif named.kind and (named.counts or named.clocks or _changes(stretch.text)):
                named.walls = walls
            if not named.kind:
                self._take_no_order(named, in_header=in_header)
                continue
            kind = named.kind
            if not own and kind == "restart" and named.clocks and not named.counts:
                self._claim_facings(named)
            else:
                self._order(named, extra, more=more)
            if own and not named.walls and extra is None and not in_header:
                self._note_vague(named)

    def _keep_unread(self, named: Named, *, changes: bool) -> None:
        """Keep a stretch that tells of a shorter wall, or steps where a restart `changes` some, as unread."""
        short = bool(named.counts) and not named.walls and _SHORT_WALL.search(named.text)
        if short or (changes and tells_steps_with_feet(named.text)):
            self.orders.unread.append(named.remark)

    def _changes_restart(self, named: Named) -> str:
        """A restart, for a stretch that tells the step change of one ordered before; else nothing."""
        ordered = {order.wall for order in self.orders.restarts}
        told = named.walls and all(wall in ordered for wall, _ in named.walls)
        return (
            "restart"
            if told and says_it_changes(named.text) is not None and changed_to(named.text).words
            else ""
        )

    def _take_counted(self, restarts: list[RestartOrder], tags: list[TagOrder]) -> None:
        """Add what a sequence of counts orders; a tag that is told once only has its steps by its heading."""
        names = [part.name for part in self.extras if not is_ending(part.name)]
        for tag in tags:
            tag.part = names[0] if len(names) == 1 else ""
        self.orders.restarts += restarts
        self.orders.tags += tags

    def _read_list(self, stretch: Remark, extra: PartText | None) -> bool:
        """Whether a stretch lists what is danced of several walls; add what it orders of each."""
        items = by_wall(stretch.line.text, stretch.start, stretch.end)
        lead = names_in(replace(stretch, end=items[0][0])).kind if items else ""
        for start, end in items:
            named = names_in(replace(stretch, start=start, end=end))
            named.kind = named.kind or lead
            named.kind = listed_kind(named, self.main)
            self._order(named, extra)
        return bool(items)

    def _take_no_order(self, named: Named, *, in_header: bool) -> None:
        """Facings of restarts told before; what else is told of a wall is kept as unread."""
        self._claim_facings(named)
        told = is_about_a_wall(named.text) or any(stop.is_exact for stop in named.counts)
        if _tells_of_a_wall(named) and (told or not in_header):
            self.orders.unread.append(named.remark)

    def _put_what_is_danced(self, tags: list[TagOrder], text: str) -> None:
        """Give tags what the remark tells apart from their walls: "A 4-count tag. You do it after wall 2"."""
        if any(tag.counts is not None or tag.again is not None for tag in tags):
            return
        size, again = size_of_tag(text), danced_again(text, self.main)
        for tag in tags:
            tag.counts = int(again.counts) if again is not None else size
            tag.again = again

    def _put_end(self, restarts: list[RestartOrder], remark: Remark) -> None:
        """Give restarts the one end that the remark tells apart from their walls ("Both after count 16")."""
        told = _RESTART_TOLD.search(remark.text)
        if told is None or HERE.search(remark.text) or any(order.after is not None for order in restarts):
            return
        behind = names_in(replace(remark, start=remark.start + told.end())).counts
        ends = {end for stop in behind if stop.is_exact and (end := stop.counts(self.main))}
        for order in restarts if len(ends) == 1 else []:
            (order.after,) = ends

    def _note_starts(self, named: Named) -> None:
        """Keep where walls are said to start ("wall 5 starts facing 12:00")."""
        self.orders.starts += named.starts()

    def _order(self, named: Named, extra: PartText | None, *, more: bool = False) -> None:
        if named.kind in ("restart", "both"):
            for order in restarts_told(named, self.main, more=more):
                if not (more and self._adds_to_last(order)):
                    self.orders.restarts.append(order)
        if named.kind in ("tag", "both"):
            self.orders.tags += tags_told(named, self.main, extra=extra, extras=self.extras)

    def _adds_to_last(self, order: RestartOrder) -> bool:
        """Whether an order only tells more of the one told last for its wall; it is then part of that."""
        last = next((told for told in reversed(self.orders.restarts) if told.wall == order.wall), None)
        if last is None or not is_same_restart(last, order):
            return False
        merge(last, order)
        return True

    def _forget_label(self, label: re.Match[str]) -> None:
        """A line that only announces restarts is not vague where they are listed below it."""
        self.orders.vague = [vague for vague in self.orders.vague if vague.remark.text != label.string]

    def _note_vague(self, named: Named) -> None:
        """Keep a restart or tag that names no wall, where no sequence tells it either."""
        if self.orders.sequence is not None or named.kind == "both":
            return
        if _ORDERED.search(NEGATED.sub(" ", named.text)) and not _NO_ORDER.search(named.text):
            after = place_told(named, self.main) if named.kind == "restart" else None
            self.orders.vague.append(Vague(named.remark, after))

    def _claim_facings(self, named: Named) -> None:
        """Take facings for those of restarts told before ("w3 you go again on 3 o'c, w6 on 6 o'c")."""
        for i, (wall, _) in enumerate(named.walls):
            for order in self.orders.restarts:
                if order.wall == wall and not order.claims:
                    order.claims = tuple(Claimed(*told) for told in named.faced_on(i))


def _is_listed(remark: Remark) -> bool:
    """Whether a remark can be an item of a list of restarts: it names walls, and where they end."""
    if _LISTED.match(remark.text):
        return True
    named = names_in(remark)
    return bool(named.walls and named.counts) and not named.kind


def _kind_of(named: Named, extra: PartText | None, main: PartText | None, *, of_tag: bool) -> str:
    """What a stretch orders; "then start again" behind a tag's steps orders nothing more.

    `of_tag`: it stands below a tag's heading, where "after walls 2 and 4" orders that tag.
    """
    text = named.text
    one_wall = named.kind in ("", "restart") or len(named.walls) == 1
    adds = adds_counts(named, main)
    if one_wall and named.kind != "tag" and is_after_wall(text) and adds:
        return "tag"
    of_tag_only = extra is not None or (named.kind == "both" and tag_cut(text) is not None)
    if named.kind in ("restart", "both") and is_after_wall(text) and of_tag_only:
        return "tag"
    if (
        named.kind in ("restart", "both")
        and is_after_wall(text)
        and not any(told.is_exact for told in named.counts)
    ):
        return "tag" if named.kind == "both" else named.kind
    if not named.kind and extra is None and named.walls and not is_after_wall(text) and shortens(text):
        return "restart" if named.counts or leaves_out(text) else ""
    return named.kind or ("tag" if of_tag and named.walls and is_after_wall(text) else "")


def _goes_on(named: Named, kind: str, *, begun: bool) -> bool:
    """Whether a stretch that orders nothing by itself tells more of what the one before it ordered.

    `begun`: walls were named there.
    """
    if kind == "tag" and _only_starts(named):
        return False
    if named.walls or (_changes(named.text) if begun else change_at(named.text) is not None):
        return True
    if kind == "tag" or _ONLY_COUNTS.fullmatch(named.text):
        return begun and bool(named.clocks or _ONLY_COUNTS.fullmatch(named.text))
    told = any(stop.is_exact for stop in named.counts) and not actions_in(named.text)
    return begun and bool(named.clocks or told)


def _goes_over(named: Named) -> bool:
    """Whether a stretch behind a tag only tells that the dance begins again: "… then from the top"."""
    return named.kind == "restart" and not named.walls and _THEN_AGAIN.search(named.text) is not None


def _changes(text: str) -> bool:
    """Whether a text tells of a step change, or steps under counts of their own."""
    return change_at(text) is not None or bool(changed_to(text).words)


def _only_starts(named: Named) -> bool:
    """Whether a stretch only tells where a wall starts: "so wall 4 begins at 12:00"."""
    told = {wall for wall, *_ in named.starts()}
    return bool(told) and all(wall in told for wall, _ in named.walls)


def _tells_of_a_wall(named: Named) -> bool:
    """Whether a stretch that orders nothing known tells of steps or counts of one of the walls."""
    text = named.text
    over = _WALL_IS_OVER.search(text) is not None
    closes = len(named.walls) == 1 and tells_of_music(text) and not (_EXTRA.search(text) or over)
    closes = closes and not _next_wall_told(named)
    if not named.walls or named.clocks or _NO_ORDER.search(text) or closes:
        return False
    adds, at_end = _ADDS.search(text) is not None, is_after_wall(text)
    steps = actions_in(text) >= (1 if adds or at_end else _SEVERAL)
    return bool(named.counts) or steps or over or (adds and at_end) or _OTHERWISE.search(text) is not None


def _next_wall_told(named: Named) -> bool:
    """Whether a later wall is told of behind it: "Wall 3 finishes after section 2. Wall 4 begins …"."""
    line = named.remark.line
    behind = names_in(replace(named.remark, start=named.remark.end, end=len(line.text)))
    return any(wall > named.walls[0][0] for wall, _ in behind.walls)


def _orders_nothing(text: str, extra: PartText | None) -> bool:
    """Whether a text tells how the song closes, or whose it is."""
    if extra is not None:
        return is_ending(extra.name)
    return tells_close(text) or _is_credit(text)


def _is_credit(text: str) -> bool:
    """Whether a remark names who made the dance or the music, and orders nothing."""
    return _CREDIT.search(text) is not None and not names_order(text)


def _put_where_told(orders: Orders) -> None:
    """Give restarts without counts the one place where the sheet restarts on no wall ("*Restart here")."""
    places = {vague.after for vague in orders.vague if vague.after is not None}
    if len(places) == 1:
        (place,) = places
        for order in orders.restarts:
            order.after = place if order.after is None else order.after
