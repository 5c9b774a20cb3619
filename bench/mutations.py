"""How many random mistakes in sound sheets are flagged, class by class.

    python bench/mutations.py [--each N] [--seed N] [--show] [FOLDER …]

Takes every sound sheet (a folder with sheet.txt and truth.json, no fault.json) under the
given folders (tests/corpus and tests/sheets), injects one random mistake at a time into the
words of its steps or into what it says of itself, reads and checks it in process, and prints
a Markdown table.  A mistake counts as flagged when the sheet gets an error or a warning.
Left out are sheets flagged without any mistake, and lines whose loss changes neither dance
nor declarations.  Some of what remains nobody could tell (a quarter turned the other way
where no facing is stated); `--show` lists every miss, so that each can be judged.
"""

import argparse
import random
import re
import sys
from collections.abc import Callable, Iterable
from dataclasses import dataclass
from pathlib import Path
from typing import NamedTuple

from wallwise import reading
from wallwise.checks.catalogue import findings_of
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
    """A sheet as read: lines that hold steps, the words of each step, lines of restarts and tags."""

    name: str
    text: str
    read: reading.Reading
    steps: tuple[Span, ...]
    words: tuple[Span, ...]
    orders: tuple[Span, ...]

    @property
    def body(self) -> Span:
        """Everything from the first line of steps to the last line that means anything."""
        ends = [span.end for span in (*self.steps, *self.orders)]
        return Span(self.steps[0].start, max(ends)) if self.steps else Span(0, 0)


class Outcome(NamedTuple):
    """What became of one mistake."""

    sheet: Sheet
    edit: Edit
    same: bool
    flagged: bool

    @property
    def harmless(self) -> bool:
        """Whether it is no mistake: the line that was dropped told nothing."""
        return self.same and not self.flagged and not self.edit.replace


_SIDE = re.compile(r"\b[LR]{1,4}(?=F?\b)|(?i:\b(?:left|right)\b)")
_TURN_BEFORE = re.compile(r"(?i)(?:turn|turning|pivot|unwind|[¼½¾]|/[248]|quarter|half|to the|to your) $")
_TO_BEFORE = re.compile(r"(?i)(?<!next)(?<!close) to $")
_WAY_AFTER = re.compile(r"(?i) (?:side|diagonal|turn|sailor|[¼½¾]|\d/\d|quarter|half)")
_LETTERS = str.maketrans("LR", "RL")
_FRACTION = re.compile(r"[¼½¾]|\b[13]/[248]\b|\b(?:quarter|half)\b", re.IGNORECASE)
_FRACTIONS = (("¼", "½", "¾"), ("1/4", "1/2", "3/4", "1/8", "3/8"), ("quarter", "half"))
_FACING = re.compile(r"\b(12|3|6|9)(?=[:.]00\b| ?o['’]?\s?c)", re.IGNORECASE)
_CLAUSE_END = re.compile(r"[,;.()|\[\]\n]")
_NUMBERS = {"one": 1, "two": 2, "four": 4}
_NUMBER = r"\d+|one|two|four"
_COUNTS = re.compile(r"(?i)\b(?:counts?:?\s*(\d+)|(\d+)[ -]?(?:counts?|c)\b(?!:))")
_WALLS = re.compile(rf"(?i)\b(?:walls?:\s*({_NUMBER})|({_NUMBER})[ -]?(?:walls?|w)\b(?!:))")
_OTHER_NUMBERS = re.compile(r"(?i)intro|start|wait|bpm|tag|restart|after|sec|counts? in\b")


def _found(pattern: re.Pattern[str], text: str, spans: Iterable[Span]) -> list[re.Match[str]]:
    return [match for span in spans for match in pattern.finditer(text, *span)]


def _other_side(match: re.Match[str]) -> Edit:
    """The match with left and right exchanged."""
    word = match[0]
    other = (
        "left" if word.lower() == "right" else "right" if word.lower() == "left" else word.translate(_LETTERS)
    )
    return Edit(*match.span(), other.upper() if word.isupper() else other)


def _is_way(match: re.Match[str]) -> bool:
    """Whether this left or right says where to, and not which foot."""
    before, after = match.string[max(0, match.start() - 9) : match.start()], match.string[match.end() :]
    to = len(match[0]) > 1 and _TO_BEFORE.search(before)
    return bool(to or _TURN_BEFORE.search(before) or _WAY_AFTER.match(after))


def _declared(pattern: re.Pattern[str], sheet: Sheet) -> list[tuple[str, Span]]:
    """The numbers that the header says; lines about the intro and the like are passed over."""
    lines = [Span(*m.span()) for m in re.finditer(r"[^\n]+", sheet.text[: sheet.body.start])]
    plain = [line for line in lines if not _OTHER_NUMBERS.search(sheet.text[line.start : line.end])]
    found = [(match, match.lastindex or 0) for match in _found(pattern, sheet.text, plain)]
    return [(match[group].lower(), Span(*match.span(group))) for match, group in found]


def foot(sheet: Sheet) -> list[Edit]:
    """L for R, or R for L."""
    return [_other_side(m) for m in _found(_SIDE, sheet.text, sheet.words) if not _is_way(m)]


def direction(sheet: Sheet) -> list[Edit]:
    """Left for right, or right for left, of a turn or a way to go."""
    return [_other_side(m) for m in _found(_SIDE, sheet.text, sheet.words) if _is_way(m)]


def fraction(sheet: Sheet) -> list[Edit]:
    """Another share of a turn."""
    return [
        Edit(*match.span(), other)
        for match in _found(_FRACTION, sheet.text, sheet.words)
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
    told = [(int(word), span) for word, span in _declared(_COUNTS, sheet)]
    by = 2 * sheet.read.dance.beats_per_bar
    return [Edit(*span, str(other)) for n, span in told for other in (n - by, n + by) if other > 0]


def declared_walls(sheet: Sheet) -> list[Edit]:
    """The header tells another number of walls."""
    return [
        Edit(*span, name if word in _NUMBERS else str(walls))
        for word, span in _declared(_WALLS, sheet)
        for name, walls in _NUMBERS.items()
        if word not in (name, str(walls))
    ]


def restart_count(sheet: Sheet) -> list[Edit]:
    """A restart after another number of counts."""
    dance = sheet.read.dance
    edits = []
    for counts in sorted({restart.after_counts for restart in dance.restarts}):
        told = re.compile(rf"(?i)(?<=count ){counts}\b|(?<![\d:-])(?<!intro ){counts}(?= ?c(?:oun)?ts?\b)")
        others = [counts + by * dance.beats_per_bar for by in (-2, 2)]
        found = _found(told, sheet.text, sheet.orders)
        edits += [Edit(*m.span(), str(n)) for m in found for n in others if 0 < n < dance.counts]
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


def flagged(read: reading.Reading) -> bool:
    """Whether anything found is an error or a warning."""
    return any(finding.loud for finding in findings_of(read))


def read_sheet(folder: Path) -> Sheet:
    """The sheet of `folder` with the places of its steps and its orders."""
    text = (folder / "sheet.txt").read_bytes().decode("utf-8")
    read = reading.read(text)
    parts = (*read.dance.parts, *(tag.part for tag in read.dance.tags))
    steps = sorted({step.span for part in parts for step in part.steps if step.span})
    orders = {o.span for o in read.dance.restarts if o.span} | {o.span for o in read.dance.tags if o.span}
    return Sheet(
        name=folder.name,
        text=text,
        read=read,
        steps=tuple(sorted({_line(text, span.start) for span in steps})),
        words=tuple(sorted({_clause(text, span) for span in steps})),
        orders=tuple(sorted({_line(text, span.start) for span in orders})),
    )


def _line(text: str, at: int) -> Span:
    end = text.find("\n", at)
    return Span(text.rfind("\n", 0, at) + 1, len(text) if end < 0 else end)


def _clause(text: str, span: Span) -> Span:
    """The span on to the end of its clause: the foot that is crossed over stands there."""
    end = _CLAUSE_END.search(text, span.end)
    return Span(span.start, end.start() if end else len(text))


def sound_folders(roots: Iterable[Path]) -> list[Path]:
    """The folders of all sheets without a deliberate mistake."""
    truths = sorted(truth.parent for root in roots for truth in root.rglob("truth.json"))
    return [folder for folder in truths if not (folder / "fault.json").exists()]


def inject(sheet: Sheet, edit: Edit) -> Outcome:
    """The sheet read again with the mistake in it."""
    try:
        read = reading.read(edit.apply(sheet.text))
    except reading.NotASheet:
        return Outcome(sheet, edit, same=False, flagged=True)
    same = (read.dance, read.declared) == (sheet.read.dance, sheet.read.declared)
    return Outcome(sheet, edit, same, flagged(read))


def outcomes(sheets: list[Sheet], mistake: str, *, each: int, seed: int) -> list[Outcome]:
    """Up to `each` mistakes of one class in every sheet."""
    found = []
    for sheet in sheets:
        edits = sorted(set(MISTAKES[mistake](sheet)))
        chance = random.Random(f"{seed} {mistake} {sheet.name}")
        found += [inject(sheet, edit) for edit in chance.sample(edits, min(each, len(edits)))]
    return found


def row(mistake: str, found: list[Outcome]) -> str:
    """One line of the table."""
    changed = [outcome for outcome in found if not outcome.harmless]
    seen = sum(outcome.flagged for outcome in changed)
    share = f"{100 * seen / len(changed):.1f} %" if changed else "none"
    return f"| {mistake} | {len(found)} | {len(found) - len(changed)} | {seen} | {share} |"


def place(outcome: Outcome) -> str:
    """Sheet, line and the edit, on one line."""
    sheet, edit = outcome.sheet, outcome.edit
    old, words = (sheet.text[a:b].strip() for a, b in (edit[:2], _line(sheet.text, edit.start)))
    number = sheet.text.count("\n", 0, edit.start) + 1
    return f"{sheet.name}:{number} {old!r} -> {edit.replace!r} in {words!r}"


def main() -> int:
    """The table and, if asked for, every miss."""
    parser = argparse.ArgumentParser(description=(__doc__ or "").partition("\n")[0])
    parser.add_argument("folders", nargs="*", type=Path, default=FOLDERS)
    parser.add_argument("--each", type=int, default=1, help="mistakes of each class in every sheet")
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--show", action="store_true", help="list what was not flagged")
    args = parser.parse_args()
    every = [read_sheet(folder) for folder in sound_folders(args.folders)]
    sheets = [sheet for sheet in every if not flagged(sheet.read)]
    print(f"{len(sheets)} sound sheets; {len(every) - len(sheets)} left out, flagged as they are.\n")
    print("| mistake | tried | left out | flagged | share |\n|---|--:|--:|--:|--:|")
    found = {m: outcomes(sheets, m, each=args.each, seed=args.seed) for m in MISTAKES}
    for mistake, of_class in [*found.items(), ("all", [o for each in found.values() for o in each])]:
        print(row(mistake, of_class))
    missed = [(m, o) for m, of_class in found.items() for o in of_class if not o.flagged]
    for mistake, outcome in missed if args.show else ():
        print(f"- {mistake}{' (read as before)' if outcome.same else ''}: {place(outcome)}")
    return 0


if __name__ == "__main__":
    sys.exit(main())
