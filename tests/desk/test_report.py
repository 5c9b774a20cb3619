"""The object that `check --json` prints, worked out by hand."""

from __future__ import annotations

import json
from dataclasses import replace
from fractions import Fraction

import pytest

from wallwise import checks, reading
from wallwise.dance.finding import Finding, Mend, Severity
from wallwise.dance.model import Dance, Foot, Option, Part, Restart, Section, Span, Tag
from wallwise.desk.errors import Unreadable
from wallwise.desk.report import Report, check_text
from wallwise.glossary.notation import parse_steps

TEXT = "Lantern Ferry\r\n1 walk R\r\n2& turn 1/4 right, close, facing 6:00\r\n"


def dance() -> Dance:
    """Two counts and a half that turn a quarter to the right."""
    first, second, third = parse_steps(("1 step R forward", "2 step L forward right 1/4", "& step R beside"))
    steps = (
        replace(first, span=Span(17, 23)),
        replace(second, span=Span(25, 40), inferred=("foot",)),
        replace(third, span=Span(42, 47)),
    )
    return Dance("Lantern Ferry", (Part("main", (Section(1, Fraction(1), Fraction(2), steps),)),))


WARNING = Finding(
    "facing-differs",
    Severity.WARNING,
    Span(TEXT.index("6:00"), TEXT.index("6:00") + 4),
    "Count 2 ends facing 3:00, the sheet says 6:00.",
    section=1,
    count="2",
    mends=(Mend(Span(TEXT.index("6:00"), TEXT.index("6:00") + 4), "3:00", "write 3:00"),),
)


def test_the_object_is_the_one_that_programs_expect() -> None:
    """Every key of the object, its figures worked out by hand."""
    report = Report("ferry.txt", TEXT, dance(), (WARNING,))
    data = report.as_json()
    assert json.loads(json.dumps(data)) == data
    (part,) = data.pop("parts")
    assert (part["name"], part["counts"]) == ("main", 2)
    keys = ("section", "at", "label", "foot", "kind", "weight", "facing", "line", "inferred")
    assert [tuple(row[key] for key in keys) for row in part["events"]] == [
        (1, 1, "1", "R", "step", True, "12:00", 2, []),
        (1, 2, "2", "L", "step", True, "3:00", 3, ["foot"]),
        (1, 2.5, "&", "R", "step", True, "3:00", 3, []),
    ]
    assert data == {
        "title": "Lantern Ferry",
        "level": "",
        "counts": 2,
        "walls": 4,
        "beats_per_bar": 4,
        "starts_with": "R",
        "ends_facing": "3:00",
        "ends_weight": "R",
        "sequence": None,
        "restarts": [],
        "tags": [],
        "options": [],
        "findings": [
            {
                "rule": "facing-differs",
                "severity": "warning",
                "line": 3,
                "column": 34,
                "end_line": 3,
                "end_column": 38,
                "part": "main",
                "section": 1,
                "count": "2",
                "message": "Count 2 ends facing 3:00, the sheet says 6:00.",
                "mends": [{"start": 58, "end": 62, "replace": "3:00", "says": "write 3:00"}],
            }
        ],
    }
    assert TEXT[58:62] == "6:00"


def test_ends_are_those_of_one_repetition_whatever_is_cut_or_added() -> None:
    """A restart or a tag on the first wall does not change where the dance ends."""
    tag = Part("tag", (Section(1, Fraction(1), Fraction(1), parse_steps(["1 step L forward left 1/2"])),))
    cut = replace(dance(), restarts=(Restart(1, Fraction(1)),), tags=(Tag(1, tag),))
    data = Report("ferry.txt", TEXT, cut, ()).as_json()
    assert (data["ends_facing"], data["ends_weight"], data["walls"]) == ("3:00", "R", 4)
    assert data["restarts"] == [{"wall": 1, "after_counts": 1, "facing": "6:00"}]
    assert data["tags"] == [{"after_wall": 1, "counts": 1, "facing": "12:00"}]


def test_a_phrased_dance_ends_after_its_whole_sequence() -> None:
    """Parts are summed, and the ends are those of the sequence."""
    a, b = (replace(dance().parts[0], name=name) for name in "AB")
    data = Report("x", TEXT, replace(dance(), parts=(a, b), sequence=("A", "B", "A")), ()).as_json()
    assert (data["counts"], data["ends_facing"], data["sequence"]) == (4, "9:00", ["A", "B", "A"])
    assert [part["name"] for part in data["parts"]] == ["A", "B"]


def test_an_option_agrees_unless_a_finding_says_otherwise() -> None:
    """The finding that lies in the option's words is the one about it."""
    spans = (Span(0, 7), Span(8, 13))
    options = tuple(Option(1, "2", Fraction(2), Fraction(2), (), span=span) for span in spans)
    finding = Finding("option-ends-elsewhere", Severity.WARNING, Span(9, 12), "It ends elsewhere.", 1)
    data = Report("x", TEXT, replace(dance(), options=options), (finding,)).as_json()
    assert [row["agrees"] for row in data["options"]] == [True, False]


def test_notes_leave_a_sheet_sound() -> None:
    """Only errors and warnings have to be settled."""
    note = replace(WARNING, severity=Severity.NOTE)
    assert Report("x", TEXT, dance(), (note,)).sound
    assert not Report("x", TEXT, dance(), (note, WARNING)).sound


def test_what_is_no_sheet_is_refused_by_name(monkeypatch: pytest.MonkeyPatch) -> None:
    """The reader's refusal comes out as one sentence that names the file."""

    def refuse(_: str) -> object:
        raise reading.NotASheet("this is no step sheet.")

    monkeypatch.setattr(reading, "read", refuse)
    with pytest.raises(Unreadable, match=r"^letter\.txt: this is no step sheet\.$"):
        check_text("Dear all", name="letter.txt")


def test_findings_are_those_of_the_checks(monkeypatch: pytest.MonkeyPatch) -> None:
    """What is read is what is checked, and the report holds both."""

    class Read:
        text, dance, findings = TEXT, dance(), ()

    monkeypatch.setattr(reading, "read", lambda _: Read)
    monkeypatch.setattr(checks, "check", lambda read: (WARNING,) if read is Read else ())
    report = check_text(TEXT, name="ferry.txt")
    assert (report.dance, report.findings) == (dance(), (WARNING,))
    assert report.dance.starts_on is Foot.RIGHT
