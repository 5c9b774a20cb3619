"""An easier way told beside the steps is an option: read for its counts, compared, never danced."""

from __future__ import annotations

import pytest

from wallwise.desk.report import Report, check_text

BODY = (
    "[1-8]\n1-2 Walk R, L\n3&4 Shuffle forward R, L, R\n5-6 Rock L forward, recover R\n"
    "7-8 Turn 1/2 left stepping L forward, turn 1/2 left stepping R back{}\n"
    "[9-16]\n1-2 Step L back, touch R beside L\n3-4 Step R forward, touch L beside R\n"
    "5-6 Step L to left side, touch R beside L\n7-8 Step R to right side, step L beside R\n{}"
)


def checked(*, beside: str = "", below: str = "") -> Report:
    return check_text(f"Tin Lantern\n16 counts 1 wall\n\n{BODY.format(beside, below)}", name="x")


BESIDE = {
    "in brackets": " (option: walk back L, R)",
    "in brackets, easier": " (easier option: walk L, R)",
    "on the line below": "\nOption: walk back L, R",
    "with a dash": "\nEasy option - step L back, step R back",
    "with its counts": "\nEasier option 7-8: walk back L, R",
    "with its counts behind": "\nOption for counts 7-8: walk back L, R",
    "with stars": "\n*Option: walk L, R*",
}


@pytest.mark.parametrize("case", BESIDE)
def test_an_option_is_found_beside_its_counts(case: str) -> None:
    """It replaces counts 7 and 8 of the first section and ends like the turn, so there is no alarm."""
    report = checked(beside=BESIDE[case])
    (option,) = report.as_json()["options"]
    assert (1, "7-8", True) == (option["section"], option["counts"], option["agrees"])
    assert report.sound


@pytest.mark.parametrize("case", BESIDE)
def test_an_option_is_not_danced(case: str) -> None:
    """With or without the option the dance is the same."""
    plain, optional = checked(), checked(beside=BESIDE[case])
    told = [(s.at, s.foot, s.kind, s.turn) for s in plain.dance.parts[0].steps]
    assert told == [(s.at, s.foot, s.kind, s.turn) for s in optional.dance.parts[0].steps]


def test_an_option_s_steps_are_those_it_tells() -> None:
    """Two walks, left and right, on the counts of the turn."""
    (option,) = checked(beside=BESIDE["in brackets"]).dance.options
    assert ["7 L 0", "8 R 0"] == [f"{s.at} {s.foot.value} {s.turn}" for s in option.steps]


BAD = {
    "it ends on the other foot": ("option-ends-elsewhere", " (option: step L back, touch R beside L)"),
    "it faces another wall": (
        "option-ends-elsewhere",
        " (option: turn 1/2 left stepping L forward, step R forward)",
    ),
    "it takes more counts": ("option-counts", " (option: walk back L, R, L, R)"),
}


@pytest.mark.parametrize("case", BAD)
def test_an_option_that_does_not_fit_is_found(case: str) -> None:
    """Dancers who take it would stand on the wrong foot, face elsewhere or be late."""
    rule, words = BAD[case]
    report = checked(beside=words)
    assert [rule] == [finding.rule for finding in report.findings if finding.loud]


def test_a_full_turn_less_is_no_difference() -> None:
    """Without the full turn the dancers face the same wall."""
    report = checked(beside=" (option: step L forward, step R back)")
    assert report.sound


def test_a_sheet_without_options_has_none() -> None:
    """Nothing is taken for an option that is not called one."""
    assert [] == checked(below="Begin again and smile!\n").as_json()["options"]
