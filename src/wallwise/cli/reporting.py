"""A report on the screen: each finding under the words it is about, then the dance at a glance."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from rich.console import Console, RenderableType
from rich.padding import Padding
from rich.text import Text

from wallwise.cli.screen import STYLES, excerpt, printable
from wallwise.dance import codec
from wallwise.dance.clock import facing_name
from wallwise.dance.finding import Finding, Severity
from wallwise.dance.model import Part
from wallwise.desk.facts import number
from wallwise.desk.report import Report

MENDS_SHOWN = 3  # of a finding; `wallwise mend` shows them all

_FOOT = {"L": "left", "R": "right", "both": "both feet"}


def show_findings(report: Report, console: Console, *, path: str, most: int | None = None) -> None:
    """Print the findings, a blank line after each, and how many more there are than `most`."""
    for finding in report.findings[:most]:
        for line in finding_lines(finding, report, path=path, width=console.width):
            console.print(line)
        console.print()
    if most is not None and len(report.findings) > most:
        console.print(f"{len(report.findings) - most} more in {printable(path)}.\n")


def show_report(report: Report, console: Console, *, path: str) -> None:
    """Print the findings, then the summary."""
    show_findings(report, console, path=path)
    for line in summary_lines(report):
        console.print(line)
    console.print()
    console.print(verdict(report))


def finding_lines(finding: Finding, report: Report, *, path: str, width: int) -> Iterator[RenderableType]:
    """The finding as a compiler would show it: place, line, carets, message, mends."""
    place = report.lines.place(finding.span.start)
    end = report.lines.place(finding.span.end)
    style = STYLES[finding.severity]
    yield Text.assemble(
        (f"{printable(path)}:{place.line}:{place.column}: ", "bold"),
        (finding.severity.value, style),
        f": {finding.rule}",
        (_where(finding), "dim"),
    )
    line = report.lines.line(place.line)
    stop = end.column - 1 if end.line == place.line else len(line)
    gutter = f"{place.line:>5} | "
    shown, carets = excerpt(line, place.column - 1, stop, width=max(width - len(gutter), 20))
    yield Text.assemble((gutter, "dim"), shown)
    yield Text.assemble((f"{'':>5} | ", "dim"), (carets, style))
    yield _indented(Text(printable(finding.message)))
    for index, mend in enumerate(finding.mends[:MENDS_SHOWN], 1):
        name = "mend" if len(finding.mends) == 1 else f"mend {index}"
        yield _indented(Text.assemble((f"{name}: ", "bold green"), printable(mend.says)))


def _indented(text: Text) -> RenderableType:
    return Padding(text, (0, 0, 0, 2), expand=False)


def _where(finding: Finding) -> str:
    words = []
    if finding.part != "main":
        words.append(finding.part if finding.part.lower().startswith("tag") else f"part {finding.part}")
    if finding.section is not None:
        words.append(f"section {finding.section}")
    if finding.count:
        words.append(f"count {finding.count}")
    return f"  ({', '.join(words)})" if words else ""


def summary_lines(report: Report) -> Iterator[Text]:
    """The dance at a glance: figures, sections, restarts and tags, in less than a screen."""
    dance, facts = report.dance, report.facts
    about = [f"{facts.counts} counts", f"{facts.walls} wall{'s' if facts.walls != 1 else ''}"]
    about += [f"{dance.beats_per_bar}/4", *([dance.level] if dance.level else [])]
    yield Text.assemble(
        (printable(dance.title) or "(no title)", "bold"), f"   {printable(' · '.join(about))}"
    )
    yield Text(
        f"Starts on the {_FOOT[dance.starts_on.value]} foot; "
        f"ends facing {facing_name(facts.ends_facing)}, weight {_FOOT[facts.ends_weight.value]}."
    )
    if dance.sequence:
        yield Text(f"Sequence: {printable(' '.join(dance.sequence))}")
    for part in dance.parts:
        yield from _part_lines(part, named=len(dance.parts) > 1)
    yield from _change_lines(report)


def _part_lines(part: Part, *, named: bool) -> Iterator[Text]:
    if named:
        yield Text(f"Part {part.name}, {number(part.counts)} counts")
    facing = Fraction(0)
    for section in part.sections:
        facing += sum((step.turn for step in section.steps), Fraction(0))
        first, last = section.starts_at, section.starts_at + section.counts - 1
        counts = f"{number(first)}-{number(last)}"
        heading = printable(section.heading)
        yield Text(f"  {section.number:>2}  {counts:<8}ends {facing_name(facing):<6} {heading}".rstrip())


def _change_lines(report: Report) -> Iterator[Text]:
    for row in codec.restart_rows(report.dance):
        yield Text(
            f"Restart on wall {row['wall']} after {row['after_counts']} counts, facing {row['facing']}"
        )
    for row in codec.tag_rows(report.dance):
        yield Text(f"Tag of {row['counts']} counts after wall {row['after_wall']}, facing {row['facing']}")
    for row in report.as_json()["options"]:
        ends = "ends like the dance" if row["agrees"] else "does not agree with the dance"
        yield Text(f"Option for section {row['section']}, counts {row['counts']}: {ends}")


def verdict(report: Report) -> Text:
    """How many findings there are, in one line."""
    tally = report.tally()
    said = [
        (f"{count} {severity.value}{'s' if count != 1 else ''}", STYLES[severity])
        for severity, count in tally.items()
        if count
    ]
    if report.sound:
        notes = tally[Severity.NOTE]
        extra = f" {notes} note{'s' if notes != 1 else ''}." if notes else ""
        return Text.assemble(("Sound: ", "bold green"), f"nothing to settle.{extra}")
    parts: list[str | tuple[str, str]] = []
    for item in said:
        parts += [item, ", "]
    return Text.assemble(*parts[:-1], ". `wallwise mend` makes the mends." if _has_mends(report) else ".")


def _has_mends(report: Report) -> bool:
    return any(finding.mends for finding in report.findings)
