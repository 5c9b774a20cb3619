"""How long it takes to read, check and unroll step sheets.

    python bench/reading.py [--runs N] [--sheets N]

Prints a Markdown table with the machine it was measured on.  The sheets are those of the tests
that are read exactly and quietly as they stand.

* One sheet: those of 32 counts, in this process, on one core, with every cache of the program
  emptied before each: read, every rule asked, every wall unrolled; no mends are looked for.
  Processor time, which another program on the machine does not lengthen much.
* Many sheets: all of them over and over under changed titles, as files in a folder, on all cores.
* Growth: one sheet of 16 counts written out one to sixteen times, its sections numbered on and no
  two written alike (capitals differ, or the caches would help), and the exponent of the power law
  that fits the times best (1 is linear).

As a yardstick the texts of the first are only tokenized, by a blank English pipeline of spaCy, a
library for natural language (``pip install spacy``); without it that row is left out.
"""

import argparse
import gc
import math
import os
import platform
import statistics
import sys
import tempfile
import time
from collections.abc import Callable, Iterable, Iterator
from functools import _lru_cache_wrapper
from importlib import import_module
from importlib.util import find_spec
from itertools import cycle, islice
from pathlib import Path

from wallwise import reading
from wallwise.checks.catalogue import findings_of
from wallwise.dance.walls import unroll
from wallwise.desk.many import check_many
from wallwise.glossary.lexicon import lexicon

TESTS = Path(__file__).resolve().parent.parent / "tests"
EIGHTS = (
    """1-2 Walk forward R, L
3&4 Shuffle forward R, L, R
5-6 Rock L forward, recover on R
7&8 Coaster step L, R, L
""",
    """1-2 Step R to right side, step L behind R
3&4 Chassé right R, L, R
5-6 Cross L over R, step R back turning 1/4 left
7-8 Step L to left side, touch R beside L
""",
)
TIMES = (1, 2, 4, 8, 16)


def sheets() -> dict[str, str]:
    """The text of every sheet that is sound as it stands, by the name of its folder."""
    folders = sorted(
        path.parent for path in TESTS.rglob("truth.json") if (path.parent / "sheet.txt").exists()
    )
    texts = {folder.name: (folder / "sheet.txt").read_bytes().decode() for folder in folders}
    return {
        name: text for name, text in texts.items() if not any(f.loud for f in findings_of(reading.read(text)))
    }


def proven(text: str) -> int:
    """Read, checked and unrolled: how many walls there are."""
    read = reading.read(text)
    findings_of(read)
    return len(unroll(read.dance))


def caches() -> list[_lru_cache_wrapper]:  # type: ignore[type-arg]
    """Every cache of the program that a sheet fills; the vocabulary is read once and stays."""
    vocabulary = {"wallwise.glossary.lexicon", "wallwise.glossary.load", "wallwise.glossary.lookup"}
    return [
        thing
        for thing in gc.get_objects()
        if isinstance(thing, _lru_cache_wrapper)
        and thing.__module__.startswith("wallwise")
        and thing.__module__ not in vocabulary
    ]


def cold_ms(work: Callable[[str], object], texts: Iterable[str], *, runs: int) -> list[float]:
    """Milliseconds of processor time per text, the best of `runs`, every cache emptied before each."""
    emptied = caches()
    found = []
    for text in texts:
        times = []
        for _ in range(runs):
            for cache in emptied:
                cache.cache_clear()
            start = time.process_time()
            work(text)
            times.append(1000 * (time.process_time() - start))
        found.append(min(times))
    return found


def many(texts: dict[str, str], *, count: int) -> tuple[float, int]:
    """Seconds for so many files on all cores, and the characters in them."""
    with tempfile.TemporaryDirectory() as room:
        paths = []
        for number, (name, text) in enumerate(islice(cycle(texts.items()), count)):
            path = Path(room) / f"{number:05}-{name}.txt"
            path.write_bytes(f"No. {number} {text}".encode())
            paths.append(path)
        start = time.perf_counter()
        done = sum(1 for _ in check_many(paths))
        elapsed = time.perf_counter() - start
        assert done == count
        return elapsed, sum(path.stat().st_size for path in paths)


def growth(*, runs: int) -> tuple[list[tuple[int, float]], float]:
    """Counts and milliseconds of dances of growing length, and the exponent of the fit."""
    rows = []
    for times in TIMES:
        parts = [f"Section {n + 1}\n{unlike(eight, n)}\n" for n, eight in enumerate(EIGHTS * times)]
        (ms,) = cold_ms(proven, ["Long Lane Lantern\n\n" + "".join(parts)], runs=runs)
        rows.append((16 * times, ms))
    return rows, exponent(rows)


def unlike(text: str, number: int) -> str:
    """The text with capitals that no other number gives any of its lines."""
    lines = [line.split() for line in text.splitlines()]
    return "\n".join(
        words[0]
        + " "
        + " ".join(word.upper() if number >> place & 1 else word for place, word in enumerate(words[1:]))
        for words in lines
    )


def exponent(rows: list[tuple[int, float]]) -> float:
    """The slope of the straight line through the logarithms, by least squares."""
    xs, ys = [math.log(x) for x, _ in rows], [math.log(y) for _, y in rows]
    return statistics.linear_regression(xs, ys).slope


def yardstick(texts: list[str], *, runs: int) -> float | None:
    """Median milliseconds for spaCy to tokenize the texts; None where it is not installed."""
    if find_spec("spacy") is None:
        return None
    pipeline = import_module("spacy").blank("en")
    pipeline(texts[0])
    return statistics.median(cold_ms(pipeline, texts, runs=runs))


def report(*, runs: int, count: int) -> Iterator[str]:
    """The lines of the table, each as soon as it is measured."""
    lexicon()
    texts = sheets()
    short = [text for text in texts.values() if reading.read(text).dance.counts == 32]
    times = sorted(cold_ms(proven, short, runs=runs))
    yield f"{os.cpu_count()} cores, {platform.machine()}, Python {platform.python_version()}.\n"
    yield "| what | measured |\n|---|---|"
    worst = times[int(0.9 * len(times))]
    yield (
        f"| one sheet of 32 counts, read, checked and unrolled, cold, one core ({len(short)} sheets) "
        f"| {statistics.median(times):.1f} ms median, {worst:.1f} ms ninth decile |"
    )
    token = yardstick(short, runs=runs)
    if token is None:
        yield "| the same texts only tokenized by spaCy | left out: `pip install spacy` |"
    else:
        yield f"| the same texts only tokenized by spaCy's blank English pipeline | {token:.1f} ms median |"
    elapsed, size = many(texts, count=count)
    yield (
        f"| {count:,} sheets, all cores ({size / count:.0f} characters each) "
        f"| {elapsed:.1f} s, {count / elapsed:.0f} sheets a second |"
    )
    rows, slope = growth(runs=runs)
    told = ", ".join(f"{counts}: {ms:.1f}" for counts, ms in rows)
    yield f"| ms by counts of the dance | {told} |"
    yield f"| exponent of the growth | {slope:.2f} |"


def main() -> int:
    """The table."""
    parser = argparse.ArgumentParser(description=(__doc__ or "").partition("\n")[0])
    parser.add_argument("--runs", type=int, default=3, help="how often each text is read; the best counts")
    parser.add_argument("--sheets", type=int, default=1000, help="how many sheets for all cores")
    args = parser.parse_args()
    for line in report(runs=args.runs, count=args.sheets):
        print(line, flush=True)
    return 0


if __name__ == "__main__":
    sys.exit(main())
