"""Labels: what only numbers the lines of a list ("1. … 2. …", "a) … b) …"), each line an eight or so."""

import re
from collections.abc import Callable
from dataclasses import replace

from wallwise.reading.asides import step_count
from wallwise.reading.headings import head_of
from wallwise.reading.marked import behind_names, split_marks
from wallwise.reading.marks import leading_mark
from wallwise.reading.rows import Row
from wallwise.reading.stepwords import known_share
from wallwise.reading.wording import number_of

_LABEL = re.compile(
    r"""
    \W*?[(\[]?(?:
        (?P<digit>[1-9]\d?) \s?(?:[.)\]:\-\u2013]|(?=\s\D)|(?=\t))
      | (?P<letter>[a-h]) \s?[.):]
      | (?P<roman>[ivx]{1,4}) (?:\s?[.):]|(?=\t|\s\s))
    )
    (?!\S?\d) \s*
    (?=[^\s&-])
    """,
    re.IGNORECASE | re.VERBOSE,
)
_KINDS: dict[str, Callable[[str], int | None]] = {
    "digit": int,
    "letter": lambda letter: ord(letter.lower()) - ord("a") + 1,
    "roman": number_of,
}
_FIRST = (1, 6, 8, 12, 16)  # the first label: of a line, or the counts of one
_BUSY = 3  # steps: a line that tells as many is no single count
_LONG = 34  # characters: one count's steps are told in fewer
_STEPS = 0.5  # of a line's words, at the least


def unlabelled(rows: list[Row]) -> list[Row]:
    """The rows without the labels that number them as a list, each such row opening a section.

    A number that opens a line may count a beat as well.  It is a label where the numbers of all
    lines of steps run 1, 2, 3 … (or 8, 16, 24 …, the counts danced by the end of each line), no other line
    is counted, and most lines hold too much for one count.
    """
    for kind, value in _KINDS.items():
        found = {i: told for i, row in enumerate(rows) if (told := _label(row, kind)) is not None}
        first, end = _run([value(told[kind]) or 0 for told in found.values()])
        found = dict(list(found.items())[first:end])  # without "16 in, weight on L" and "4 count tag"
        if not found or not _are_lines(rows, found):
            continue
        return [
            replace(row, line=row.line.slice(found[i].end()), bullet=True, opens=True) if i in found else row
            for i, row in enumerate(rows)
        ]
    return rows


def _label(row: Row, kind: str) -> re.Match[str] | None:
    found = _LABEL.match(row.line.text)
    if found is None or not found[kind] or known_share(row.line.text[found.end() :]) < _STEPS:
        return None
    return found


def _run(values: list[int]) -> tuple[int, int]:
    """The longest run: from where to where the values count up by its first one, perhaps from that again."""
    runs = [(start, _run_end(values, start)) for start, value in enumerate(values) if value in _FIRST]
    first, end = max(runs, key=lambda run: run[1] - run[0], default=(0, 0))
    return (first, end) if len(set(values[first:end])) > 1 else (0, 0)


def _run_end(values: list[int], start: int) -> int:
    """Where the values stop that count up from `start` on by the first of them."""
    first, end = values[start], start + 1
    while end < len(values) and values[end] in (first, values[end - 1] + first):
        end += 1
    return end


def _is_counted_behind(text: str) -> bool:
    """Whether a line of steps has a count mark behind them."""
    return known_share(text) >= _STEPS and any(piece.mark is not None for piece in split_marks(text, None))


def _heads_section(row: Row) -> bool:
    head = head_of(row.line.text)
    return head is not None and head.kind == "heading"


def _are_lines(rows: list[Row], found: dict[int, re.Match[str]]) -> bool:
    """Whether the labelled rows are lines of steps themselves, and the only ones between first and last."""
    labelled = list(found)
    first, last = labelled[0], labelled[-1]
    if first and _heads_section(rows[first - 1]):
        return False
    others = [i for i in range(first, min(last + 2, len(rows))) if i not in labelled]
    texts = [rows[i].line.text[found[i].end() :] for i in labelled]
    counted = [i for i in others if leading_mark(rows[i].line.text) is not None]
    apart = [i for i in counted if not _is_open(rows[i - 1].line.text)]
    if apart and not (_are_counted(texts) and all(rows[i - 1].line.text.endswith(",") for i in apart)):
        return False
    plain = [rows[i].line.text for i in others if i < last and i not in counted]
    if any(_is_counted_behind(text) and not behind_names(text) for text in plain):
        return False
    busy = sum(step_count(text) >= _BUSY or len(" ".join(text.split())) > _LONG for text in texts)
    return 2 * busy >= len(texts)


def _is_open(text: str) -> bool:
    """Whether a bracket is open at the end of a line."""
    return text.count("(") > text.count(")")


def _are_counted(texts: list[str]) -> bool:
    """Whether most of the labelled lines have count marks of their own, which they may go on with below."""
    marked = [any(p.mark is not None for p in split_marks(text, leading_mark(text))) for text in texts]
    return 2 * sum(marked) >= len(marked)
