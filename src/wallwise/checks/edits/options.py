"""Easier ways told beside the steps: a word of theirs written for another, or none told at all."""

from collections.abc import Iterator
from dataclasses import replace

from wallwise.checks.edits.edit import Edit
from wallwise.checks.edits.words import words_edits
from wallwise.dance.model import Span
from wallwise.reading import Reading
from wallwise.reading.outline import Remark


def option_edits(reading: Reading) -> Iterator[Edit]:
    """The slips that any word of an option could be; each option left out."""
    for told in reading.options:
        remark = _remark_at(reading, told.span.start)
        if remark is None:
            continue
        for edit in words_edits(reading.text, remark.line, (remark.start, remark.end)):
            yield replace(edit, surprise=edit.surprise + 0.1)
        yield Edit.of(_place(remark), "", says="without the option", surprise=2.4)


def _remark_at(reading: Reading, at: int) -> Remark | None:
    """The remark that a character of the sheet stands in."""
    return next((r for r in reading.outline.remarks if _place(r).start <= at < _place(r).end), None)


def _place(remark: Remark) -> Span:
    return remark.line.span(remark.start, remark.end)
