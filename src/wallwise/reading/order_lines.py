"""Orders and their steps, line by line: several tags told on one line, a change told below its order.

"Tag after wall 2: … Tag 2 after wall 4: …" are two lines; "Restart on wall 4, but change 7-8 to:" is one with
the steps below it.
"""

import re
from collections.abc import Iterator
from dataclasses import replace
from itertools import zip_longest

from wallwise.reading.asides import is_about_a_wall, steps_at
from wallwise.reading.blocks import Block
from wallwise.reading.changes import change_at
from wallwise.reading.headings import Head, head_of
from wallwise.reading.marks import NUMBER_WORDS, Mark, leading_mark
from wallwise.reading.tag_orders import is_after_wall
from wallwise.reading.tag_repeats import tells_those_again
from wallwise.reading.tidy import Line
from wallwise.reading.wording import AFTER_TIMES, ORDER_WORDS, any_of

_NEXT_TAG = re.compile(
    r"(?<=[.;])\s+(?=(?:(?:after|(?:at\s+(?:the\s+)?)?end\s+of)\s+(?:walls?\s+|w)\d[^.;:]*:[^.;:]*)?(?:tag|bridge)\b)",
    re.IGNORECASE,
)
_TAG = re.compile(r"\b(?:tag|bridge)\b", re.IGNORECASE)
_COUNTS = rf"(?:\d{{1,2}}|{any_of(NUMBER_WORDS)})\s*-?\s*(?:counts?|beats?)\b"
_NAMES_TAG = re.compile(  # "The tag", "A 4-count tag", "Tag of 2 counts", "There is a short tag"
    rf"\W*(?:(?:there\s+is|there's|we\s+have|you\s+need)\s+)?"
    rf"(?:(?:the|an?|one|extra|little|short|small|easy|simple|{_COUNTS})\s+)*(?:tag|bridge)\b(?:\s+of\s+{_COUNTS})?",
    re.IGNORECASE,
)
_ADDS = re.compile(
    r"(?:[^.;:]*\b(?:walls?|rounds|twice|times)\b[^.;:]*[.,:]\s+(?:at\s+the\s+end\s+)?)?\W*"
    r"(?:(?:we|you|just|please)\s+)*(?:add|insert)\b:?\s+(?:an?\s+)?",
    re.IGNORECASE,
)
_THE_TAG = re.compile(r"[^:]*\b(?:tag|bridge)\b[^:]*:\s+", re.IGNORECASE)  # in a sentence, before its steps
_AS_TAG = re.compile(
    rf"\s+as\s+(?:(?:the|an?|{_COUNTS})\s+)*(?:tag|bridge)\b", re.IGNORECASE
)  # behind its steps
_GOES_ON = re.compile(  # behind what is danced at a wall's end
    r"\b(?:then|and|before)\s+(?:(?:you|we)\s+)?(?:re-?start|start|begin|starting|beginning|go\s+on|continue|carry\s+on)",
    re.IGNORECASE,
)
_WALL_IS_OVER = re.compile(r"[^.;:,]*?\bwalls?\b\s*\w*(?:\s+(?:is|are)\s+\w+)?\s*[,:]?\s+", re.IGNORECASE)
_LABEL = re.compile(
    r"\W*(?:tag|bridge|re-?start)\b\W*(?:(?:on\s+)?walls?\s+\d|$|.*\b(?:wall|when|where)\b)", re.IGNORECASE
)
_KEYED = re.compile(  # "When: end of wall 2", "- 4 counts"
    rf"""
    \W*(?:
        (?:when|where|after|at|facing|faces?|counts?|walls?|steps?)\s*[:=]\s*\S[^.]*$
      | {_COUNTS}\W*$
      | (?:after|(?:at\s+)?(?:the\s+)?end\s+of)\s+(?:the\s+)?(?:walls?\s+\d[\d\s,&and]*|\w+\s+wall)\W*$
    )
    """,
    re.IGNORECASE | re.VERBOSE,
)
_UNPLACED = re.compile(r"\W*(?:tag|bridge)\b(?!.*\bwalls?\b).*", re.IGNORECASE)  # its wall stands below it
_PLACES_TAG = re.compile(
    r"\W*(?:(?:it|is|it's|danced|done|do|this|the|tag|comes?|happens|once|twice)\s+)*"
    r"(?:after|(?:at\s+)?(?:the\s+)?end\s+of)\s+(?:the\s+)?(?:walls?|w)\s*\d(?:[^:]|(?<=\d):(?=\d))*$",
    re.IGNORECASE,
)
_TAIL = re.compile(r"(?!(?i:tags?|bridge|walls?|w\d|no)\b|(?i:re-?starts?)\b\s+(?:on|in|w|:))[a-z]{2,}\s")
_TIMES = re.compile(AFTER_TIMES, re.IGNORECASE)
_LEADS_ON = re.compile(r"\b(?:to|with|by|do|dance|into|as|are|following|changes?|instead)$", re.IGNORECASE)
_BEGINS_AGAIN = re.compile(r"\W*(?:(?:and|then|now)\s+)*(?:re-?start|start|begin|go)\b", re.IGNORECASE)
_WALL = re.compile(r"\b(?:walls?\s+\w+|w\d)|\bwall\b", re.IGNORECASE)
_STEPS = 0.75  # the share of step language of steps without count marks
_EIGHT = 8


def ordered(blocks: list[Block]) -> list[Block]:
    """The blocks with each tag on a line of its own, and each change with the order that announces it."""
    blocks = _with_tails(blocks)
    headed = [_tag_headed(block, below) for block, below in zip_longest(blocks, blocks[1:])]
    return _with_changes([single for block in headed if block for single in _tags_apart(block)])


def _with_tails(blocks: list[Block]) -> list[Block]:
    """The blocks, each order with the lines below it on which its sentence goes on, or its list."""
    whole: list[Block] = []
    for block in blocks:
        if whole and _ends_open(whole[-1]) and _is_tail(block):
            whole[-1] = replace(whole[-1], line=whole[-1].line.join(block.line))
        elif whole and _UNPLACED.fullmatch(whole[-1].text) and _PLACES_TAG.match(block.text):
            between = " " if whole[-1].text.endswith(".") else ". "
            whole[-1] = replace(whole[-1], line=whole[-1].line.join(block.line, between))
        elif whole and _LABEL.match(whole[-1].text) and _KEYED.match(block.text):
            between = " " if whole[-1].text.endswith((":", ".", ",")) else ", "
            whole[-1] = replace(whole[-1], kind="text", line=whole[-1].line.join(block.line, between))
        else:
            whole.append(block)
    return whole


def _is_tail(block: Block) -> bool:
    """Whether a block can be the end of a sentence: it begins in small letters, and no list's line."""
    plain = block.kind == "text" and not block.opens and block.stands < _STEPS
    return plain and _TAIL.match(block.text) is not None


def _ends_open(block: Block) -> bool:
    """Whether a block is an order, begun as a sentence, that does not end as one."""
    text = block.text
    orders = ORDER_WORDS.search(text) is not None or is_about_a_wall(text)
    return (
        block.kind == "text"
        and text[:1].isupper()
        and not text.endswith((".", ":", "!", "?", ")"))
        and orders
    )


def _tag_headed(block: Block | None, below: Block | None) -> Block | None:
    """A block that heads a tag in a sentence ("You need the tag after wall 2:"), as such a heading."""
    if block is None or block.kind not in ("text", "part", "extra"):
        return block
    text = block.text
    if (told := _AS_TAG.search(text)) is not None and steps_at(text[: told.start()]) == 0:
        return replace(block, kind="extra", name="Tag", rest=0)
    begins = below is not None and below.begins and not below.opens
    if not begins and tells_those_again(text):
        return replace(block, kind="text")
    named = _NAMES_TAG.match(text) if block.kind != "extra" else None
    if named is not None and (begins or steps_at(text[named.end() :]) is not None):
        return replace(block, kind="extra", name="Tag", rest=named.end())
    if block.kind == "text" and is_after_wall(text):
        over = (_WALL_IS_OVER.match(text) or _TIMES.search(text)) if _GOES_ON.search(text) else None
        for led_in in (_ADDS.match(text), _THE_TAG.match(text), over):
            if led_in is not None and steps_at(text[led_in.end() :]) is not None:
                return replace(block, kind="extra", name="Tag", rest=led_in.end())
    plain = below is not None and below.kind == "text" and below.stands >= _STEPS
    if (begins or plain) and text.rstrip().endswith(":") and _TAG.search(text) and is_after_wall(text):
        return replace(block, kind="extra", name="Tag", rest=len(text))
    return block


def _tags_apart(block: Block) -> Iterator[Block]:
    """The tags of a line that tells several orders, those with steps as blocks; else the block itself."""
    starts = [0, *(found.start() for found in _NEXT_TAG.finditer(block.text))]
    lines = [block.line.slice(*ends) for ends in zip(starts, [*starts[1:], None], strict=True)]
    heads = [_tag_with_steps(line) for line in lines]
    opens = heads[0] is not None or (leading_mark(block.text) is None and ORDER_WORDS.search(lines[0].text))
    if len(lines) == 1 or not opens or not all(heads[1:]):
        yield block
        return
    for head, line in zip(heads, lines, strict=True):
        if head is None:
            yield Block(line, stands=block.stands)
        else:
            yield Block(line, "extra", rest=head.rest, name=head.name, stands=block.stands)


def _tag_with_steps(line: Line) -> Head | None:
    """The heading of a tag that has its steps on its line; None for any other line."""
    head = head_of(line.text)
    tag = head is not None and head.kind == "extra" and steps_at(line.text[head.rest :]) is not None
    return head if tag else None


def _with_changes(blocks: list[Block]) -> list[Block]:
    """The blocks, with the steps of a change as part of the order above that announces them."""
    whole: list[Block] = []
    last: Block | None = None  # the line of such steps that was taken just now
    danced: Mark | None = None  # the counts told last of the dance
    for block in blocks:
        if block.kind == "steps" and len(whole) > 1 and _says_change_of(whole[-1], whole[-2]):
            below = whole.pop()
            whole[-1] = replace(whole[-1], line=whole[-1].line.join(below.line))
        begins = whole and block.kind == "steps" and _announces_change(whole[-1], block.mark, danced)
        if begins or (block.kind == "steps" and _goes_on(last, block)):
            whole[-1] = replace(whole[-1], kind="text", pieces=[], line=whole[-1].line.join(block.line))
            last = block
        elif last is not None and _ends_change(block):
            whole[-1] = replace(whole[-1], line=whole[-1].line.join(block.line))
            last = None
        else:
            whole.append(block)
            danced = block.mark if block.kind == "steps" else danced
            last = None
    return whole


def _says_change_of(block: Block, order: Block) -> bool:
    """Whether a line between an order and steps only says which counts of it change: "Change 7-8 to:"."""
    told = block.kind in ("text", "steps") and order.kind == "text" and block.text.endswith(":")
    changes = told and change_at(block.text) == 0 and not is_about_a_wall(block.text)
    return changes and ORDER_WORDS.search(order.text) is not None


def _announces_change(block: Block, steps: Mark | None, danced: Mark | None) -> bool:
    """Whether an order says last that other steps follow.

    Where only its last word says so, the counts of the steps are such as are `danced` already.
    """
    text = block.text.rstrip(" *")
    orders = ORDER_WORDS.search(text) is not None or is_about_a_wall(text)
    if block.kind not in ("text", "steps") or leading_mark(text) is not None or not orders:
        return False
    if change_at(text) is None:
        return False
    again = steps is not None and danced is not None and 1 < steps.first <= danced.last
    named = steps is not None and re.search(rf"\b{steps.first}\b", text) is not None
    return text.endswith(":") or ((again or named) and _LEADS_ON.search(text) is not None)


def _ends_change(block: Block) -> bool:
    """Whether a line below the steps of a change only says that the dance begins again."""
    text = block.text
    return block.kind == "text" and _BEGINS_AGAIN.match(text) is not None and _WALL.search(text) is None


def _goes_on(last: Block | None, block: Block) -> bool:
    """Whether steps count on from those of a change before them, inside the same eight."""
    if last is None or last.mark is None or block.mark is None:
        return False
    end = last.mark.last // 1
    return end % _EIGHT != 0 and block.mark.first // 1 == end + 1
