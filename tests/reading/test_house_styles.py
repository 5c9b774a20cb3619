"""One dance in the shapes that teachers give their sheets: every shape is danced alike, and none is doubted.

The shapes are those of many sheets seen: common practice, no source.
"""

from __future__ import annotations

import pytest

from wallwise.checks.catalogue import findings_of
from wallwise.reading import read

TOP = "Tin Lantern\n16 counts, 4 walls, Beginner\nMusic: Oil and Wick by the Trimmers\n\n"
EIGHTS = (
    (
        "Step touches, shuffle, rock",
        ("1-2", "Step R forward, touch L beside R"),
        ("3-4", "Step L back, touch R beside L"),
        ("5&6", "Shuffle forward R, L, R"),
        ("7-8", "Rock L forward, recover R"),
    ),
    (
        "Shuffle back, rock, pivot 1/4, stomps",
        ("1&2", "Shuffle back L, R, L"),
        ("3-4", "Rock R back, recover L"),
        ("5-6", "Step R forward, pivot 1/4 left"),
        ("7-8", "Stomp R, stomp L"),
    ),
)
HEADINGS = (
    "S{n}: {title}", "S{n}", "Section {word} - {caps}", "SEC {n} {title}", "Sect. {n}. {title}",
    "Section{n}- {title}", "## Section {n}: {title}", "[{first}-{last}] {title}", "({first}-{last}) {title}",
    "{first}-{last} {caps}", "{first} - {last}: {title}", "Counts {first}-{last}: {title}",
    "Counts {first} to {last} – {title}", "<{first}-{last}> {title}", "S{n} ({first}-{last})",
    "S{n} [{first}-{last}]: {title}", "{title} ({first}-{last})", "{title} [{first}-{last}]",
    "{roman}. {title}", "{nth} eight: {title}", "{nth} count of 8 - {title}", "{ordinal} 8 counts: {title}",
    "{letter}. {title}", "#{n} {title}", "{n}) {title}", "{n}/ {title}", "Set {n}: {title}",
    "Part {n}: {title}", "Block {n} - {title}", "Phrase {n}: {title}", "Eight {n}: {title}",
    "Line {n}: {title}", "Group {n}: {title}", "{caps}", "**{n}. {title}**", "=== {title} ===", "",
)  # fmt: skip
MARKS = (
    "{mark} {steps}", "{mark}: {steps}", "{mark}) {steps}", "{mark}. {steps}", "({mark}) {steps}",
    "[{mark}] {steps}", "{mark} - {steps}", "{mark} = {steps}", "{mark}\t{steps}", "{spaced} {steps}",
    "{commas} {steps}", "{listed} {steps}", "Counts {mark} {steps}", "cts {mark}: {steps}",
    "Beats {mark} – {steps}", "Count {mark}: {steps}.", "{and} {steps}", "{to} {steps}",
    "{spoken}: {steps}", "• {mark} {steps}", "- {mark} {steps}", "| {mark} | {steps} |", "{mark} | {steps}",
    "{dash} {steps}", "{wide}   {steps}", "{plus} {steps}", "**{mark}** {steps}", "{mark} ..... {steps}",
    "{mark}; {steps}", "{mark} {caps}", "{through} {steps}",
    "{steps} ({mark})", "{steps} [{mark}]", "{steps} {mark}", "{steps} - {mark}", "{steps} ({spoken})",
    "{steps}: {spoken}.",
)  # fmt: skip
RUNS = ("; ", ", ", ". ", " | ", " ")
SPOKEN = dict(zip("12345678", ("one", "two", "three", "four", "five", "six", "seven", "eight"), strict=True))


def spoken(mark: str) -> str:
    """The mark in words: "five and six"."""
    words = (SPOKEN.get(sign, {"-": ", ", "&": " and "}.get(sign, sign)) for sign in mark)
    return "".join(words)


def line(shape: str, mark: str, steps: str, *, base: int) -> str:
    """One line of steps under its mark, in that shape; `base` counts come before its eight."""
    through = "".join(str(int(sign) + base) if sign.isdigit() else sign for sign in mark)
    return shape.format(
        mark=mark, steps=steps, caps=steps.upper(), spaced=" ".join(mark), spoken=spoken(mark),
        commas=mark.replace("-", ",").replace("&", ",&,"),
        listed=mark.replace("-", ", ").replace("&", ", &, "),
        to=mark.replace("-", " to "), dash=mark.replace("-", "–"), plus=mark.replace("&", "+"),
        wide=mark.replace("&", " & ").replace("-", " - "), through=through,
        **{"and": mark.replace("&", " and ").replace("-", " - ")},
    )  # fmt: skip


def sheet(heading: str = HEADINGS[0], marks: str = MARKS[0], *, between: str = "\n") -> str:
    """The dance in that shape."""
    parts = []
    for n, (title, *rows) in enumerate(EIGHTS, 1):
        head = heading.format(
            n=n, title=title, caps=title.upper(), first=8 * n - 7, last=8 * n, roman="I" * n,
            word=("One", "Two")[n - 1], nth=("First", "Second")[n - 1], ordinal=("1st", "2nd")[n - 1],
            letter="AB"[n - 1],
        )  # fmt: skip
        steps = between.join(line(marks, *row, base=8 * n - 8) for row in rows)
        parts.append(f"{head}\n{steps}" if head else steps)
    return TOP + "\n\n".join(parts) + "\n"


EXPECTED = "1R 3L 5R 5.5L 6R 7L 8R 9L 9.5R 10L 11R 12L 13R 14L<1/4 15R 16L"


def agrees(text: str) -> None:
    """The text is danced as it should be, and nothing in it is doubted."""
    reading = read(text)
    steps = [step for part in reading.dance.parts for step in part.steps if step.weight]
    turns = {step: f"<{-step.turn}" if step.turn else "" for step in steps}
    assert " ".join(f"{float(step.at):g}{step.foot.value}{turns[step]}" for step in steps) == EXPECTED
    assert [finding.message for finding in findings_of(reading) if finding.loud] == []


@pytest.mark.parametrize("heading", HEADINGS)
def test_every_heading_is_one(heading: str) -> None:
    """However the sections are headed, or not at all."""
    agrees(sheet(heading))


@pytest.mark.parametrize("marks", MARKS)
def test_every_count_mark_is_one(marks: str) -> None:
    """However the counts stand beside their steps."""
    agrees(sheet(marks=marks))


@pytest.mark.parametrize(
    "marks", ["{mark} {steps}", "{mark}: {steps}", "{steps} ({mark})", "{steps} ({spoken})"]
)
@pytest.mark.parametrize("between", RUNS)
def test_an_eight_in_one_line_is_counted(marks: str, between: str) -> None:
    """However the counted steps of a line are set apart."""
    agrees(sheet(marks=marks, between=between))


@pytest.mark.parametrize(
    "rhythm", ["Timing: 1-2, 3-4, 5&6, 7-8", "Rhythm:  1, 2, 3, 4, 5&6, 7, 8&", "Counted: 1-2-3-4-5&6-7-8"]
)
def test_a_header_that_says_how_an_eight_is_counted_adds_no_counts(rhythm: str) -> None:
    """It tells of every eight, and none of its counts is danced."""
    agrees(sheet().replace("Music:", f"{rhythm}\nMusic:"))
    agrees(sheet().replace("by the Trimmers\n", f"by the Trimmers\n{rhythm}\n"))


@pytest.mark.parametrize(
    "key", ["RF = right foot, LF = left foot, R = right, L = left", "Abbreviations: R = right, L = left"]
)
def test_a_line_that_explains_abbreviations_tells_no_steps(key: str) -> None:
    """Wherever it stands."""
    agrees(f"{sheet()}\n{key}\n")
    agrees(f"{key}\n{sheet()}")


def test_sections_may_be_headed_by_their_names_and_lengths() -> None:
    """The steps stand behind, with counts or without."""
    agrees(
        f"{TOP}"
        "Step touches (8 counts). 1 step R forward, 2 touch L beside R, 3 step L back, 4 touch R beside L, "
        "5&6 shuffle forward R, L, R, 7 rock L forward, 8 recover R.\n\n"
        "Shuffle back (8 counts). 1&2 shuffle back L, R, L, 3 rock R back, 4 recover L, 5 step R forward, "
        "6 pivot 1/4 left, 7 stomp R, 8 stomp L.\n"
    )
