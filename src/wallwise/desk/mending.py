"""Mends chosen and applied; the old sheet is kept beside the new one."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from pathlib import Path

from wallwise.dance.finding import Finding, Mend
from wallwise.dance.model import Part, Span
from wallwise.desk.errors import DeskError, Unreadable, Unwritable
from wallwise.desk.files import keep_copy, write_whole
from wallwise.desk.report import Report, check_text
from wallwise.reading.source import SourceError, load


@dataclass(frozen=True, slots=True)
class Offer:
    """One mend on offer, numbered from 1.

    `safe` says that it rewrites no step, that with it the very same steps are danced, and that
    less is found: only what is said about the dance changes.
    """

    number: int
    finding: Finding
    mend: Mend
    safe: bool

    @property
    def likeliest(self) -> bool:
        """Whether it is the first mend its finding offers."""
        return self.finding.mends[0] == self.mend


@dataclass(frozen=True, slots=True)
class Mended:
    """A mended sheet on disk: where it is, and where the old one is kept."""

    path: Path
    kept: Path


def offers(report: Report) -> tuple[Offer, ...]:
    """Every mend the report holds, in the order of the findings; one edit is offered once."""
    found: list[Offer] = []
    seen: set[tuple[Span, str]] = set()
    for finding in report.findings:
        for mend in finding.mends:
            if (mend.span, mend.replace) not in seen:
                seen.add((mend.span, mend.replace))
                safe = len(finding.mends) == 1 and _is_safe(report, mend)
                found.append(Offer(len(found) + 1, finding, mend, safe))
    return tuple(found)


def _is_safe(report: Report, mend: Mend) -> bool:
    # The reader dances what was most likely meant, so the same dance is no proof that no step was rewritten.
    if any(_overlap(step.span, mend.span) for part in _parts(report) for step in part.steps if step.span):
        return False
    try:
        after = check_text(mend.apply(report.text), name=report.name)
    except Unreadable:
        return False
    old, new = report.dance, after.dance
    same = (old.parts, old.tags, old.restarts, old.sequence, old.ending, old.options) == (
        new.parts,
        new.tags,
        new.restarts,
        new.sequence,
        new.ending,
        new.options,
    )
    return same and _faults(after) < _faults(report)


def _parts(report: Report) -> tuple[Part, ...]:
    return (*report.dance.parts, *(tag.part for tag in report.dance.tags))


def _overlap(one: Span, other: Span) -> bool:
    return one.start < other.end and other.start < one.end


def _faults(report: Report) -> int:
    return sum(finding.loud for finding in report.findings)


def apply_mends(text: str, mends: Iterable[Mend]) -> str:
    """`text` with every mend made; DeskError where two of them would change the same characters."""
    last_start = len(text) + 1
    for mend in sorted(mends, key=lambda m: m.span, reverse=True):
        if mend.span.end > last_start or mend.span.start == last_start:
            raise DeskError("Two of these mends change the same words; choose one of them.")
        text = mend.apply(text)
        last_start = mend.span.start
    return text


def settle(report: Report) -> tuple[str, tuple[Mend, ...]]:
    """The text after the likeliest mends, one at a time, and the mends made.

    After each mend the sheet is read again, since one mistake is often behind several findings.
    A mend that leaves as many findings as before is not kept.
    """
    made: list[Mend] = []
    refused: set[tuple[Span, str]] = set()
    while mend := _next_mend(report, refused):
        try:
            after = check_text(mend.apply(report.text), name=report.name)
        except Unreadable:
            after = report
        if _faults(after) < _faults(report):
            report, refused = after, set()
            made.append(mend)
        else:
            refused.add((mend.span, mend.replace))
    return report.text, tuple(made)


def _next_mend(report: Report, refused: set[tuple[Span, str]]) -> Mend | None:
    mends = (finding.mends[0] for finding in report.findings if finding.loud and finding.mends)
    return next((m for m in mends if (m.span, m.replace) not in refused), None)


def chosen_text(report: Report, choice: Sequence[Offer]) -> str:
    """The report's text with the offers chosen; DeskError where they clash."""
    return apply_mends(report.text, (offer.mend for offer in choice))


def write_mended(path: Path, text: str, *, was: str) -> Mended:
    """Put `text` in place of the sheet at `path`, in its own encoding, and keep a copy of the old one.

    A document or a PDF is left as it is and the mended text is written beside it.  Raises
    Unwritable; Unreadable where the sheet has gone, or is no longer `was`, the text that was checked.
    """
    try:
        text_now, encoding = load(path)
    except SourceError as refusal:
        raise Unreadable(str(refusal)) from None
    if text_now != was:
        raise Unreadable(f"{path.name}: this sheet was changed meanwhile; nothing was mended.")
    if encoding is None:
        return Mended(write_whole(path.with_name(f"{path.stem}.mended.txt"), text), path)
    try:
        data = text.encode(encoding)
    except UnicodeEncodeError:
        raise Unwritable(
            f"{path.name}: the mend has a letter that {encoding} lacks; save the sheet as UTF-8."
        ) from None
    kept = keep_copy(path)
    return Mended(write_whole(path, data), kept)


def changed_lines(report: Report, mend: Mend) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """The lines that the mend touches, before and after, without those it leaves as they are."""
    text = report.text
    start = text.rfind("\n", 0, mend.span.start) + 1
    end = text.find("\n", mend.span.end)
    end = len(text) if end < 0 else end
    old = text[start:end].splitlines()
    new = (text[start : mend.span.start] + mend.replace + text[mend.span.end : end]).splitlines()
    while old and new and old[-1] == new[-1]:
        del old[-1], new[-1]
    return tuple(old), tuple(new)
