"""Whatever the text, the reader gives a dance with its findings or says in a sentence that there is none."""

from __future__ import annotations

import gc
import sys
import time
from collections.abc import Iterator

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from tests.reading import scoring

from wallwise import checks, reading
from wallwise.checks import mends
from wallwise.checks.catalogue import findings_of
from wallwise.dance.finding import Finding

SHEETS = [scoring.sheet_text(folder) for folder in scoring.SOUND.values()]
LINES = sorted({line for sheet in SHEETS for line in sheet.splitlines() if line.strip()})
ODD = [
    "1-2", "&", "e", "a", "8&1", "1-8", "1-99", "0", "99", "123456", "1/0", "1/4", "½", "&frac12;", "full",
    "turn", "both", "R", "L", "RLR", "x2", "(", ")", "[", "]", "|", ":", "<br>", "<!--", "**", "\t", "\n",
    "\r", "\f", "\0", "ß", "İ", "﷽", "(3:00)", "12:00", "25:99", "S1:", "[1-8]", "PART A", "TAG", "ENDING",
    "restart", "wall 3", "w99", "tag", "repeat", "repeat 1-4", "same on the other foot", "option:",
    "Sequence: A, B, A(99), Tag", "32 counts", "0 walls", "weight on",
]  # fmt: skip

ANY_TEXT = st.text(max_size=1500)
ODD_TEXT = st.lists(st.sampled_from([*ODD, *LINES]), max_size=60).map(" ".join)
ODD_LINES = st.lists(st.sampled_from([*ODD, *LINES]), max_size=60).map("\n".join)


@st.composite
def spoilt_sheets(draw: st.DrawFn) -> str:
    """A sheet of the corpus with lines deleted, doubled and spliced in, and odd bits put anywhere."""
    lines = draw(st.sampled_from(SHEETS)).splitlines(keepends=True)
    for _ in range(draw(st.integers(1, 10))):
        at = draw(st.integers(0, max(len(lines) - 1, 0)))
        some = slice(at, at + draw(st.integers(1, 4)))
        match draw(st.sampled_from(["delete", "double", "splice", "odd", "cut"])):
            case "delete":
                del lines[some]
            case "double":
                lines[at:at] = lines[some]
            case "splice":
                lines.insert(at, draw(st.sampled_from(LINES)) + "\n")
            case "odd" if lines:
                middle = draw(st.integers(0, len(lines[at])))
                lines[at] = lines[at][:middle] + draw(st.sampled_from(ODD)) + lines[at][middle:]
            case "cut" if lines:
                lines[at] = lines[at][draw(st.integers(0, len(lines[at]))) :]
    return "".join(lines)


def found(text: str, *, tries: int = 0) -> tuple[Finding, ...]:
    """What is found in the text, with mends of so many tries; nothing where it is no sheet."""
    try:
        read = reading.read(text)
    except reading.NotASheet:
        return ()
    if not tries:
        return findings_of(read)
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(mends, "MOST_TRIES", tries)
        return checks.check(read)


def assert_in_place(text: str, findings: tuple[Finding, ...]) -> None:
    """Every finding and every mend is about a place in the text, and the mend changes it."""
    for finding in findings:
        assert 0 <= finding.span.start <= finding.span.end <= len(text)
        assert finding.message
        for mend in finding.mends:
            assert 0 <= mend.span.start <= mend.span.end <= len(text)
            assert text != mend.apply(text)


def fuzzed(examples: int) -> settings:
    """So many examples, the same on every run."""
    return settings(
        max_examples=examples,
        derandomize=True,
        database=None,
        deadline=None,
        suppress_health_check=[HealthCheck.too_slow, HealthCheck.data_too_large],
    )


@fuzzed(200)
@given(text=st.one_of(ANY_TEXT, ODD_TEXT, ODD_LINES))
def test_any_text_is_read_or_refused(text: str) -> None:
    """Nothing that is typed makes the reader raise anything but its refusal."""
    assert_in_place(text, found(text))


@fuzzed(200)
@given(text=spoilt_sheets())
def test_a_spoilt_sheet_is_read_or_refused(text: str) -> None:
    """Nothing that becomes of a sheet on its way makes the reader raise anything but its refusal."""
    assert_in_place(text, found(text))


@fuzzed(40)
@given(text=st.one_of(spoilt_sheets(), ODD_LINES))
def test_mends_of_a_spoilt_sheet_lie_in_it(text: str) -> None:
    """Whatever the sheet, a mend can be made where it is said to be."""
    assert_in_place(text, found(text, tries=6))


@fuzzed(20)
@given(text=st.one_of(spoilt_sheets(), ODD_LINES))
def test_reading_again_finds_the_same(text: str) -> None:
    """The same text gives the same findings, whatever was read before."""
    assert found(text) == found(text)


LONGEST = 20_000
WIDE_SHEET = "".join(line + (" - " if i % 100 else "\n") for i, line in enumerate(LINES))
LONG = {
    "sheets one after the other": "\n\n".join(SHEETS),
    "many lines in one": WIDE_SHEET,
    "steps without an end": "step R forward, pivot 1/2 left, " * 2000,
    "figures without an end": "1-2 vine R, jazz box 1/4 right x2\n" * 500,
    "counts without an end": "1-2&3-4&" * 8000,
    "numbers without an end": "1 2 3 4 5 6 7 8 " * 4000,
    "one long number": "1" * LONGEST,
    "feet without an end": "R, L, " * LONGEST,
    "feet without a stop": "RL" * LONGEST,
    "brackets without an end": "(" * LONGEST,
    "entities without an end": "&amp" * LONGEST,
    "tags without an end": "<b" * LONGEST,
    "fractions without an end": "½" * LONGEST,
    "bars without an end": "| R | " * LONGEST,
    "blanks without an end": "1-2 step R" + " " * LONGEST,
    "walls without an end": "restart on wall 2, 3 and 4 after 16 counts and " * 2000,
    "returns without an end": "1-2 step R, touch L\r" * 3000,
    "breaks without an end": "1-2 step R, touch L<br>" * 3000,
    "pages without an end": "S1\f1-2 step R, touch L\f" * 3000,
    "parts without an end": "PART A\n1-2 step R, touch L\n" * 95,
    "repeats without an end": "1-4 step R, pivot 1/4 left\n5-8 repeat 1-4 x2\n" * 95,
    "paragraphs without an end": ("1turn 1-2 step R,\nto " * 600)[:12_000],
    "lines that all break off": ",\n".join(LINES[::5][:180]),
    "bars and shares without an end": "| &" * LONGEST,
    "counts and commas without an end": "1, 2, 3 & 4 " * LONGEST,
    "lone counts far apart": "    1" * LONGEST,
    "open brackets and counts": "1&(\t\t" * LONGEST,
    "blank lines without an end": "\n" * LONGEST,
    "letters on lines of their own": "a\n" * 190,
    "lines that break off": "walk R and\n" * 190,
    "walls and brackets without an end": "restart on walls 2 (" * LONGEST,
    "walls that start facing without an end": "wall 2 starts facing 3:00 and " * LONGEST,
    "doubts without an end": "1&2& turn R touch L or R (option: hitch) x2\n" * 190,
}


@pytest.fixture
def alone() -> Iterator[None]:
    """Without the tracing that measures coverage, and without searching what other tests keep for garbage.

    Both take longer than the reader, and neither is its own.
    """
    trace = sys.gettrace()
    sys.settrace(None)
    gc.freeze()
    yield
    gc.unfreeze()
    sys.settrace(trace)


@pytest.mark.usefixtures("alone")
@pytest.mark.parametrize("case", LONG)
def test_the_longest_text_takes_less_than_five_seconds(case: str) -> None:
    """A text out of all proportion is read and checked, or refused, before a teacher gives up on it."""
    text = LONG[case][:LONGEST]
    start = time.process_time()
    findings = found(text, tries=mends.MOST_TRIES)
    assert time.process_time() - start < 5
    assert_in_place(text, findings)
