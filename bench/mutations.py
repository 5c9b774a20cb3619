"""How many random mistakes in sound sheets are flagged, class by class.

    python bench/mutations.py [--each N] [--seed N] [--show] [FOLDER …]

Takes every sound sheet (a folder with sheet.txt and truth.json, no fault.json) under the
given folders (tests/corpus and tests/sheets), injects one random mistake at a time where
the sheet tells steps or speaks of itself, reads and checks it in process, and prints a
Markdown table.  A mistake counts as flagged when the sheet gets an error or a warning.
Left out are mistakes in steps that change nothing (the dance read and all that the sheet
declares are as before: a word in chatter) and sheets that are flagged without any.  Some
of what remains nobody could tell (a quarter turned the other way in a sheet that states no
facing); `--show` lists every miss, so that each can be judged.
"""

import argparse
import random
import re
import sys
from collections.abc import Callable, Iterable
from dataclasses import dataclass
from pathlib import Path
from typing import NamedTuple

from wallwise import checks, reading
from wallwise.dance.finding import Finding
from wallwise.dance.model import Span

FOLDERS = [Path(__file__).resolve().parent.parent / "tests" / name for name in ("corpus", "sheets")]


class Edit(NamedTuple):
    """Characters `start` to `end` become `replace`."""

    start: int
    end: int
    replace: str

    def apply(self, text: str) -> str:
        """`text` with the mistake in it."""
        return text[: self.start] + self.replace + text[self.end :]


@dataclass(frozen=True)
class Sheet:
    """A sound sheet as read: `steps` are the lines that hold steps, `orders` those of restarts and tags."""

    name: str
    text: str
    read: reading.Reading
    findings: tuple[Finding, ...]
    steps: tuple[Span, ...]
    orders: tuple[Span, ...]

    @property
    def header(self) -> Span:
        """Everything before the first line of steps."""
        return Span(0, self.steps[0].start if self.steps else 0)

    @property
    def body(self) -> Span:
        """Everything from the first line of steps to the last line that means anything."""
        return Span(self.header.end, max((span.end for span in (*self.steps, *self.orders)), default=0))


class Outcome(NamedTuple):
    """What became of one mistake."""

    sheet: Sheet
    edit: Edit
    changed: bool
    flagged: bool


_SIDE = re.compile(r"\b([LR])(?=F?\b)|(?i:\b(left|right)\b)")
_TURN_BEFORE = re.compile(r"(?i)(?:turn|turning|pivot|unwind|[¼½¾]|/[248]|quarter|half|to the|to your) $")
_TO_BEFORE = re.compile(r"(?i)(?<!next)(?<!close) to $")
_WAY_AFTER = re.compile(r"(?i) (?:side|diagonal|turn|sailor|[¼½¾]|\d/\d|quarter|half)")
_SIDES = {"l": "R", "r": "L", "left": "right", "right": "left"}
_FRACTION = re.compile(r"[¼½¾]|\b[13]/[248]\b|\b(?:quarter|half)\b", re.IGNORECASE)
_FRACTIONS = (("¼", "½", "¾"), ("1/4", "1/2", "3/4", "1/8", "3/8"), ("quarter", "half"))
_FACING = re.compile(r"\b(12|3|6|9)(?=[:.]00\b| ?o['’]?\s?c)", re.IGNORECASE)
_NUMBERS = {"one": 1, "two": 2, "four": 4}
_NUMBER = r"\d+|one|two|four"
_COUNTS = re.compile(r"(?i)\b(?:counts?:?\s*(\d+)|(\d+)[ -]?(?:counts?|c)\b(?!:))")
_WALLS = re.compile(rf"(?i)\b(?:walls?:\s*({_NUMBER})|({_NUMBER})[ -]?(?:walls?|w)\b(?!:))")
_OTHER_NUMBERS = re.compile(r"(?i)intro|start|wait|bpm|tag|restart|after|sec")


def _found(pattern: re.Pattern[str], text: str, spans: Iterable[Span]) -> list[re.Match[str]]:
    return [match for span in spans for match in pattern.finditer(text, *span)]


def _other_side(match: re.Match[str]) -> Edit:
    """The match with left and right exchanged, capitals kept."""
    start, end = match.span(match.lastindex or 0)
    word = match.string[start:end]
    other = _SIDES[word.lower()]
    shaped = other.upper() if word.isupper() else other.lower() if word.islower() else other.capitalize()
    return Edit(start, end, shaped)


def _is_way(match: re.Match[str]) -> bool:
    """Whether this left or right says where to, and not which foot."""
    before, after = match.string[max(0, match.start() - 9) : match.start()], match.string[match.end() :]
    to = len(match[0]) > 1 and _TO_BEFORE.search(before)
    return bool(to or _TURN_BEFORE.search(before) or _WAY_AFTER.match(after))


def _declared(pattern: re.Pattern[str], sheet: Sheet) -> list[re.Match[str]]:
    """Where the header says a number; lines about the intro and the like are passed over."""
    lines = [Span(*m.span()) for m in re.finditer(r"[^\n]+", sheet.text[: sheet.header.end])]
    plain = [line for line in lines if not _OTHER_NUMBERS.search(sheet.text[line.start : line.end])]
    return _found(pattern, sheet.text, plain)


def foot(sheet: Sheet) -> list[Edit]:
    """L for R, or R for L."""
    sides = _found(_SIDE, sheet.text, sheet.steps)
    return [_other_side(match) for match in sides if not _is_way(match)]


def direction(sheet: Sheet) -> list[Edit]:
    """Left for right, or right for left, of a turn or a way to go."""
    sides = _found(_SIDE, sheet.text, sheet.steps)
    return [_other_side(match) for match in sides if _is_way(match)]


def fraction(sheet: Sheet) -> list[Edit]:
    """Another share of a turn."""
    return [
        Edit(*match.span(), other)
        for match in _found(_FRACTION, sheet.text, sheet.steps)
        for row in _FRACTIONS
        if match[0].lower() in row
        for other in row
        if other != match[0].lower()
    ]


def dropped_line(sheet: Sheet) -> list[Edit]:
    """A line of steps is missing."""
    return [Edit(line.start, line.end + 1, "") for line in sheet.steps]


def doubled_line(sheet: Sheet) -> list[Edit]:
    """A line of steps stands twice."""
    return [Edit(line.end, line.end, "\n" + sheet.text[line.start : line.end]) for line in sheet.steps]


def facing(sheet: Sheet) -> list[Edit]:
    """Another stated facing."""
    return [
        Edit(*match.span(1), wall)
        for match in _found(_FACING, sheet.text, [sheet.body])
        for wall in ("12", "3", "6", "9")
        if wall != match[1]
    ]


def declared_counts(sheet: Sheet) -> list[Edit]:
    """The header tells another number of counts."""
    section = 6 if sheet.read.dance.beats_per_bar == 3 else 8
    edits = []
    for match in _declared(_COUNTS, sheet):
        start, end = match.span(match.lastindex or 0)
        counts = int(match.string[start:end])
        edits += [Edit(start, end, str(counts + by)) for by in (-section, section) if counts + by > 0]
    return edits


def declared_walls(sheet: Sheet) -> list[Edit]:
    """The header tells another number of walls."""
    edits = []
    for match in _declared(_WALLS, sheet):
        start, end = match.span(match.lastindex or 0)
        word = match.string[start:end].lower()
        told = _NUMBERS.get(word) or int(word)
        others = [(name, walls) for name, walls in _NUMBERS.items() if walls != told]
        edits += [Edit(start, end, name if word in _NUMBERS else str(walls)) for name, walls in others]
    return edits


def restart_count(sheet: Sheet) -> list[Edit]:
    """A restart after another number of counts."""
    dance = sheet.read.dance
    section = 6 if dance.beats_per_bar == 3 else 8
    edits = []
    for counts in sorted({restart.after_counts for restart in dance.restarts}):
        told = re.compile(rf"(?<![\d:-]){counts}(?= ?c(?:oun)?ts?\b)")
        others = [counts + by for by in (-section, section) if 0 < counts + by < dance.counts]
        for match in _found(told, sheet.text, sheet.orders):
            edits += [Edit(*match.span(), str(other)) for other in others]
    return edits


MISTAKES: dict[str, Callable[[Sheet], list[Edit]]] = {
    "a wrong foot": foot,
    "a wrong direction": direction,
    "a wrong fraction": fraction,
    "a line dropped": dropped_line,
    "a line doubled": doubled_line,
    "a wrong facing stated": facing,
    "wrong counts declared": declared_counts,
    "wrong walls declared": declared_walls,
    "a wrong restart count": restart_count,
}
SAYINGS = tuple(MISTAKES)[-4:]


def loud(findings: Iterable[Finding]) -> bool:
    """Whether anything found is an error or a warning."""
    return any(finding.loud for finding in findings)


def read_sheet(folder: Path) -> Sheet:
    """The sheet of `folder` with the lines that hold steps and those that hold orders."""
    text = (folder / "sheet.txt").read_bytes().decode("utf-8")
    read = reading.read(text)
    dance = read.dance
    parts = (*dance.parts, *(tag.part for tag in dance.tags))
    steps = {_line(text, step.span.start) for part in parts for step in part.steps if step.span}
    orders = {_line(text, order.span.start) for order in (*dance.restarts, *dance.tags) if order.span}
    return Sheet(folder.name, text, read, checks.check(read), tuple(sorted(steps)), tuple(sorted(orders)))


def _line(text: str, at: int) -> Span:
    end = text.find("\n", at)
    return Span(text.rfind("\n", 0, at) + 1, len(text) if end < 0 else end)


def sound_folders(roots: Iterable[Path]) -> list[Path]:
    """The folders of all sheets without a deliberate mistake."""
    truths = sorted(truth.parent for root in roots for truth in root.rglob("truth.json"))
    return [folder for folder in truths if not (folder / "fault.json").exists()]


def inject(sheet: Sheet, edit: Edit, *, said: bool) -> Outcome:
    """The sheet read again with the mistake in it; a false saying (`said`) always changes something."""
    try:
        read = reading.read(edit.apply(sheet.text))
    except reading.NotASheet:
        return Outcome(sheet, edit, changed=True, flagged=True)
    flagged = loud(checks.check(read))
    same = (read.dance, read.declared) == (sheet.read.dance, sheet.read.declared)
    return Outcome(sheet, edit, changed=flagged or said or not same, flagged=flagged)


def outcomes(sheets: list[Sheet], mistake: str, *, each: int, seed: int) -> list[Outcome]:
    """Up to `each` mistakes of one class in every sheet."""
    found = []
    for sheet in sheets:
        edits = MISTAKES[mistake](sheet)
        chance = random.Random(f"{seed} {mistake} {sheet.name}")
        said = mistake in SAYINGS
        found += [inject(sheet, edit, said=said) for edit in chance.sample(edits, min(each, len(edits)))]
    return found


def row(mistake: str, found: list[Outcome]) -> str:
    """One line of the table."""
    changed = [outcome for outcome in found if outcome.changed]
    flagged = sum(outcome.flagged for outcome in changed)
    share = f"{100 * flagged / len(changed):.1f} %" if changed else "none"
    return f"| {mistake} | {len(found)} | {len(found) - len(changed)} | {flagged} | {share} |"


def place(outcome: Outcome) -> str:
    """Sheet, line and the edit, on one line."""
    sheet, edit = outcome.sheet, outcome.edit
    text, line = sheet.text, _line(sheet.text, edit.start)
    old, words = (text[a:b].strip() for a, b in ((edit.start, edit.end), line))
    return f"{sheet.name}:{text.count(chr(10), 0, edit.start) + 1} {old!r} -> {edit.replace!r} in {words!r}"


def main() -> int:
    """The table and, if asked for, every miss."""
    parser = argparse.ArgumentParser(description=(__doc__ or "").partition("\n")[0])
    parser.add_argument("folders", nargs="*", type=Path, default=FOLDERS)
    parser.add_argument("--each", type=int, default=1, help="mistakes of each class in every sheet")
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--show", action="store_true", help="list what was not flagged and what was left out")
    args = parser.parse_args()
    every = [read_sheet(folder) for folder in sound_folders(args.folders)]
    sheets = [sheet for sheet in every if not loud(sheet.findings)]
    print(f"{len(sheets)} sound sheets; {len(every) - len(sheets)} left out, flagged as they are.\n")
    print("| mistake | tried | changes nothing | flagged | share |\n|---|--:|--:|--:|--:|")
    found = {m: outcomes(sheets, m, each=args.each, seed=args.seed) for m in MISTAKES}
    for mistake, of_class in found.items():
        print(row(mistake, of_class))
    print(row("all", [outcome for of_class in found.values() for outcome in of_class]))
    for mistake, of_class in found.items() if args.show else ():
        for outcome in of_class:
            if not outcome.flagged:
                print(f"- {mistake}{'' if outcome.changed else ' (changes nothing)'}: {place(outcome)}")
    return 0


if __name__ == "__main__":
    sys.exit(main())
