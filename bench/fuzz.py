"""Spoilt sheets, as many as the time allows: does any make the reader stumble?

    python bench/fuzz.py [--seed N] [--seconds N] [--keep FOLDER]

Takes sheets of the tests at random, deletes, doubles and splices stretches of them and puts odd bits
in, then reads and checks each; every twelfth is searched for mends too.  Anything raised but
`NotASheet` is a crash, and so is a finding or a mend that is no place in the text.  Prints how many
were tried and refused, every kind of crash once, and the slowest; with ``--keep`` the texts that
crashed and the slowest are written there.
"""

import argparse
import random
import sys
import time
import traceback
from dataclasses import dataclass, field
from pathlib import Path

from wallwise import checks, reading
from wallwise.checks.catalogue import findings_of

TESTS = Path(__file__).resolve().parent.parent / "tests"
ODD = [
    "1-2", "&", "e", "a", "8&1", "1-8", "1-99", "0", "99", "123456", "1/4", "½", "&frac12;", "1/0", "full",
    "turn", "R", "L", "both", "x2", "(", "[", "|", ":", "--", "\t", "\n", "\r", "\f", "\x00", "<br>", "ß",
    "(3:00)", "12:00", "S1:", "PART A", "TAG", "Sequence: A, B", "restart", "wall 3", "ending", "option:",
    "weight on", "repeat 1-4", "same on the other foot",
]  # fmt: skip
MENDED = 12  # every so manieth text is searched for mends


@dataclass
class Tally:
    """What became of the texts so far."""

    runs: int = 0
    refused: int = 0
    slowest_sec: float = 0.0
    slowest: str = ""
    crashes: dict[str, str] = field(default_factory=dict)


def spoilt(sheets: list[str], chance: random.Random) -> str:
    """A sheet with one to twelve stretches deleted, doubled, spliced in or made odd."""
    text = chance.choice(sheets)
    for _ in range(chance.randint(1, 12)):
        start = chance.randrange(len(text) + 1)
        end = min(len(text), start + chance.randint(1, 60))
        match chance.choices(["delete", "odd", "splice", "double"], [3, 3, 2, 2])[0]:
            case "delete":
                text = text[:start] + text[end:]
            case "odd":
                text = text[:start] + chance.choice(ODD) + text[start:]
            case "splice":
                other = chance.choice(sheets)
                at = chance.randrange(len(other))
                text = text[:start] + other[at : at + chance.randint(1, 200)] + text[start:]
            case "double":
                text = text[:end] + text[start:]
    return text


def try_once(text: str, *, mending: bool) -> bool:
    """Whether the text is read; False where it is refused.  Raises whatever goes wrong."""
    try:
        read = reading.read(text)
    except reading.NotASheet:
        return False
    for finding in checks.check(read) if mending else findings_of(read):
        for span in (finding.span, *(mend.span for mend in finding.mends)):
            if not 0 <= span.start <= span.end <= len(text):
                raise AssertionError(f"{finding.rule}: {span} is no place in {len(text)} characters")
    return True


def fuzz(sheets: list[str], *, seed: int, seconds: float) -> Tally:
    """The tally after so many seconds."""
    chance, tally = random.Random(seed), Tally()
    stop = time.monotonic() + seconds
    while time.monotonic() < stop:
        text = spoilt(sheets, chance)
        tally.runs += 1
        start = time.process_time()
        try:
            tally.refused += not try_once(text, mending=not tally.runs % MENDED)
        except Exception:  # noqa: BLE001 - whatever it is, it is what is looked for
            kind = "".join(traceback.format_exc().splitlines(keepends=True)[-3:])
            if tally.crashes.setdefault(kind, text) is text:
                print(kind, flush=True)
        taken = time.process_time() - start
        if taken > tally.slowest_sec:
            tally.slowest_sec, tally.slowest = taken, text
    return tally


def keep(tally: Tally, folder: Path) -> None:
    """Write the texts worth keeping."""
    folder.mkdir(parents=True, exist_ok=True)
    (folder / "slowest.txt").write_text(tally.slowest, encoding="utf-8", newline="")
    for number, text in enumerate(tally.crashes.values(), 1):
        (folder / f"crash-{number}.txt").write_text(text, encoding="utf-8", newline="")


def main() -> int:
    """The figures; the exit code is 1 where anything crashed."""
    parser = argparse.ArgumentParser(description=(__doc__ or "").partition("\n")[0])
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--seconds", type=float, default=600)
    parser.add_argument("--keep", type=Path, help="a folder for the texts that crashed and the slowest")
    args = parser.parse_args()
    paths = sorted(TESTS.glob("corpus/*/*/sheet.txt")) + sorted(TESTS.glob("sheets/*/sheet.txt"))
    tally = fuzz([path.read_bytes().decode() for path in paths], seed=args.seed, seconds=args.seconds)
    print(
        f"{tally.runs:,} texts from {len(paths)} sheets in {args.seconds:g} s, seed {args.seed}: "
        f"{len(tally.crashes)} crashes, {tally.refused} refused as no sheet, "
        f"slowest {tally.slowest_sec:.1f} s."
    )
    if args.keep:
        keep(tally, args.keep)
    return bool(tally.crashes)


if __name__ == "__main__":
    sys.exit(main())
