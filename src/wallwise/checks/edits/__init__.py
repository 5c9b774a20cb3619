"""Every small change that a slip of the pen could be: the candidates the search for mends tries.

Each comes with a *surprise*: how unlikely a slip it would be, before anything is known of
whether it helps.  Nothing here knows what is wrong with the sheet.
"""

from collections.abc import Iterator
from dataclasses import replace

from wallwise.checks.edits.acts import act_edits
from wallwise.checks.edits.edit import Edit
from wallwise.checks.edits.header import header_edits
from wallwise.checks.edits.headings import heading_slip
from wallwise.checks.edits.lines import line_edits
from wallwise.checks.edits.options import option_edits
from wallwise.checks.edits.orders import order_edits
from wallwise.checks.edits.words import words_edits
from wallwise.reading import Reading


def edits_of(reading: Reading) -> Iterator[Edit]:
    """Every single edit worth trying; of two with the same surprise the first is tried first."""
    for part in reading.parts.values():
        for passage in part.passages:
            group = passage.group
            for edit in (
                *words_edits(reading.text, group.line, (group.start, group.end)),
                *line_edits(reading.text, part, passage),
                *act_edits(reading.text, passage),
            ):
                yield replace(edit, passage=passage, part=part.text.name)
        for section in part.text.sections:
            slip = heading_slip(reading.text, part, section)
            if slip is not None:
                yield slip
    yield from header_edits(reading)
    yield from order_edits(reading)
    yield from option_edits(reading)


__all__ = ["Edit", "edits_of", "heading_slip"]
