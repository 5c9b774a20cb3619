"""How a reading is held against the truth of a sheet; ``python -m tests.reading.scoring`` prints the figures.

Beside a sheet lies its truth, worked out by its writer from the trade's meaning of the words and
apart from this program (common practice, no source).  It is compared with the object that
`wallwise check --json` prints:

* A *weight change* is an event that takes weight on one foot.  It is read right when the foot and
  the facing after it are those of the truth, at the same beat of the same part.  Names of parts are
  compared without regard to capitals; where a dance has one part only, not at all.  A weight change
  too many is as wrong as one too few.
* An event marked `ambiguous` is not scored, since good dancers differ.  Of one marked
  `facing_loose`, where only the whole turn of a triple is told, the foot is scored and not the facing.
* The tag of a dance without parts is not among the events of its truth and is not scored.
* *Ends*: counts, walls, facing and weight at the end.  *Marks*: each restart with its wall, counts
  and facing; each tag with its wall and counts.
* Beside a sheet with one mistake lies `fault.json`.  The mistake is *flagged* by any error or warning;
  *located* when one of these names the section it is in, or when it is in no section; *mended* when
  the first mend offered leaves nothing to settle and gives the weight changes of the sound sheet.
"""

from __future__ import annotations

import json
import math
import re
import sys
from collections.abc import Iterable
from dataclasses import dataclass
from pathlib import Path
from typing import Any, TypeAlias

from wallwise import reading
from wallwise.checks import mends
from wallwise.checks.catalogue import findings_of
from wallwise.dance.finding import Finding
from wallwise.desk.report import Report, check_text

Truth: TypeAlias = dict[str, Any]
Beat: TypeAlias = tuple[str, float]

TESTS = Path(__file__).parent.parent
GROUPS = {
    path.name: path
    for path in (TESTS / "sheets", *sorted((TESTS / "corpus").iterdir()))
    if any(path.glob("*/truth.json"))
}
SOUND = {
    f"{name}/{p.parent.name}": p.parent for name in GROUPS for p in sorted(GROUPS[name].glob("*/truth.json"))
}
FAULTY = {
    f"{name}/{p.parent.name}": p.parent
    for name in GROUPS
    for p in sorted(GROUPS[name].glob("faulty/*/fault.json"))
}

ENDS = ("counts", "walls", "ends_facing", "ends_weight")


def sheet_text(folder: Path) -> str:
    """The sheet as it stands in its file, line ends and all."""
    return (folder / "sheet.txt").read_bytes().decode("utf-8")


def truth_of(folder: Path) -> Truth:
    """The truth of a sound sheet, or of the sound sheet that a faulty one was made from."""
    if (folder / "fault.json").exists():
        folder = folder.parent.parent / fault_of(folder)["from"]
    truth: Truth = json.loads((folder / "truth.json").read_text("utf-8"))
    return truth


def fault_of(folder: Path) -> Truth:
    """What the one mistake of a faulty sheet is."""
    fault: Truth = json.loads((folder / "fault.json").read_text("utf-8"))
    return fault


# -- sound sheets ----------------------------------------------------------------------------


def weight_changes(events: Iterable[Truth], *, part: str | None = None) -> dict[Beat, tuple[str, str]]:
    """Foot and facing of every weight change by part and beat; `part` names it where the events do not."""
    return {
        _beat(event, part): (event["foot"], event["facing"])
        for event in events
        if event["weight"] and event["foot"] in ("L", "R")
    }


def _beat(event: Truth, part: str | None = None) -> Beat:
    return ((part or event.get("part", "main")).casefold(), round(float(event["at"]), 3))


def disagreements(truth: Truth, read: Truth) -> list[str]:
    """Every weight change that is not as in the truth, in words; empty where all agree."""
    want = weight_changes(truth["events"])
    unsure = {_beat(event) for event in truth["events"] if event.get("ambiguous")}
    loose = {_beat(event) for event in truth["events"] if event.get("facing_loose")}
    got = _comparable(read, {part for part, _ in want})
    wrong = []
    for beat in sorted((want.keys() | got.keys()) - unsure):
        true, mine = want.get(beat), got.get(beat)
        if true != mine and not (beat in loose and true and mine and true[0] == mine[0]):
            wrong.append(f"{beat[0]} {beat[1]:g}: {true} is read as {mine}")
    return wrong


def _comparable(read: Truth, parts: set[str]) -> dict[Beat, tuple[str, str]]:
    """The weight changes as read that the truth has a word on."""
    got: dict[Beat, tuple[str, str]] = {}
    for part in read["parts"]:
        got |= weight_changes(part["events"], part=part["name"])
    got = {beat: step for beat, step in got.items() if beat[0] in parts or not beat[0].startswith("tag")}
    if len(parts) == 1 and len({part for part, _ in got}) == 1:
        (only,) = parts
        got = {(only, at): step for (_, at), step in got.items()}
    return got


def ends(told: Truth, truth: Truth) -> Truth:
    """Counts, walls, and facing and weight at the end, as far as the truth tells them."""
    return {key: told[key] for key in ENDS if truth.get(key) is not None}


def restarts(told: Truth) -> list[tuple[int, float, str]]:
    """Wall, counts and facing of every restart, in order."""
    return sorted((row["wall"], row["after_counts"], row["facing"]) for row in told["restarts"])


def tags(told: Truth) -> list[tuple[int, float]]:
    """Wall and counts of every tag, in order; a truth keeps those inside a wall apart, as bridges."""
    inside = [(row["wall"], row["counts"]) for row in told.get("bridges", [])]
    return sorted([*inside, *((row["after_wall"], row["counts"]) for row in told["tags"])])


# -- sheets with a mistake --------------------------------------------------------------------


def found_in(text: str) -> Report:
    """The sheet read and checked, without the search for mends."""
    read = reading.read(text)
    return Report("sheet", text, read.dance, findings_of(read))


def bells(report: Report) -> list[Finding]:
    """What has to be settled."""
    return [finding for finding in report.findings if finding.loud]


def says(report: Report) -> list[str]:
    """What has to be settled, a line each."""
    return [f"{finding.rule}: {finding.message}" for finding in bells(report)]


def located(report: Report, fault: Truth) -> bool:
    """Whether a finding names the section of the mistake; any finding will do where it is in none."""
    section = re.search(r"section (\d+)", fault["where"], re.IGNORECASE)
    sections = {finding.section for finding in bells(report)}
    return bool(sections) and (section is None or int(section[1]) in sections)


def mended(report: Report, truth: Truth) -> bool:
    """Whether the first mend offered leaves nothing to settle and gives the true weight changes."""
    first = next((mend for finding in bells(report) for mend in finding.mends), None)
    if first is None:
        return False
    after = found_in(first.apply(report.text))
    return after.sound and not disagreements(truth, after.as_json())


# -- the figures ------------------------------------------------------------------------------


@dataclass
class Figures:
    """How many of how many, by what was scored."""

    rows: dict[str, tuple[int, int]]

    def __add__(self, other: Figures) -> Figures:
        """Both together."""
        pairs = {key: (self.rows[key], other.rows[key]) for key in self.rows}
        return Figures({key: (a[0] + b[0], a[1] + b[1]) for key, (a, b) in pairs.items()})


def figures_of(group: str) -> Figures:
    """Every figure of one group of sheets."""
    return Figures(_sound_figures(group) | _faulty_figures(group))


def _sound_figures(group: str) -> dict[str, tuple[int, int]]:
    sound = [SOUND[name] for name in SOUND if name.startswith(f"{group}/")]
    pairs = [(truth_of(folder), found_in(sheet_text(folder))) for folder in sound]
    read = [(truth, report.as_json(), report) for truth, report in pairs]
    wrong = [(len(disagreements(truth, told)), report) for truth, told, report in read]
    exact = [report for errors, report in wrong if not errors]
    steps = sum(len(weight_changes(truth["events"])) for truth, _ in pairs)
    marks = [(m, told) for truth, told, _ in read for m in {*restarts(truth), *tags(truth)}]
    return {
        "weight changes exact": (steps - sum(errors for errors, _ in wrong), steps),
        "sheets exact": (len(exact), len(sound)),
        "misread in silence": (sum(bool(errors) and report.sound for errors, report in wrong), len(sound)),
        "false alarms": (sum(not report.sound for report in exact), len(exact)),
        "ends": (sum(ends(truth, truth) == ends(told, truth) for truth, told, _ in read), len(sound)),
        "restarts and tags": (sum(m in {*restarts(told), *tags(told)} for m, told in marks), len(marks)),
    }


def _faulty_figures(group: str) -> dict[str, tuple[int, int]]:
    faulty = [FAULTY[name] for name in FAULTY if name.startswith(f"{group}/")]
    checked = [(folder, check_text(sheet_text(folder), name=folder.name)) for folder in faulty]
    return {
        "mistakes flagged": (sum(not report.sound for _, report in checked), len(faulty)),
        "in the right section": (sum(located(r, fault_of(folder)) for folder, r in checked), len(faulty)),
        "first mend right": (sum(mended(r, truth_of(folder)) for folder, r in checked), len(faulty)),
    }


def main() -> int:
    """A Markdown table of the figures, group by group; with no limit of time on the search for mends."""
    mends.BUDGET_SEC = math.inf
    found = {group: figures_of(group) for group in GROUPS}
    first, *others = found.values()
    found["all"] = sum(others, first)
    print("| |", " | ".join(found), "|")
    print("|---" * (len(found) + 1) + "|")
    for key in found["all"].rows:
        print(f"| {key} |", " | ".join("{}/{}".format(*figures.rows[key]) for figures in found.values()), "|")
    return 0


if __name__ == "__main__":
    sys.exit(main())
