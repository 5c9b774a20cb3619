"""Steps told on the lines below an order that announces them: "Restart on wall 4, but change 7-8 to:"."""

from dataclasses import replace

from wallwise.reading.blocks import Block
from wallwise.reading.changes import change_at
from wallwise.reading.wording import ORDER_WORDS

_EIGHT = 8


def with_changes(blocks: list[Block]) -> list[Block]:
    """The blocks, with the steps of a change as part of the order above that announces them."""
    whole: list[Block] = []
    last: Block | None = None  # the line of such steps that was taken just now
    for block in blocks:
        if whole and block.kind == "steps" and (_goes_on(last, block) or _announces_change(whole[-1])):
            whole[-1] = replace(whole[-1], line=whole[-1].line.join(block.line))
            last = block
        else:
            whole.append(block)
            last = None
    return whole


def _announces_change(block: Block) -> bool:
    """Whether an order says last that other steps follow."""
    text = block.text.rstrip(" *")
    return (
        block.kind == "text"
        and text.endswith(":")
        and ORDER_WORDS.search(text) is not None
        and change_at(text) is not None
    )


def _goes_on(last: Block | None, block: Block) -> bool:
    """Whether steps count on from those of a change before them, inside the same eight."""
    if last is None or last.mark is None or block.mark is None:
        return False
    end = last.mark.last // 1
    return end % _EIGHT != 0 and block.mark.first // 1 == end + 1
