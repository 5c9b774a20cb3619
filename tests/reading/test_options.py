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
    "for the tired": " (if tired: walk back L, R)",
    "for the dizzy": " [if dizzy, walk L, R]",
    "easier": "\nEasier: walk L, R",
    "easier, behind a dash": " - easier: walk L, R",
    "for beginners": "\nBeginners may walk L, R",
    "for beginners, by its counts": "\nFor beginners: 7-8 walk L, R",
    "for beginners, counts last": "\nBeginners can walk L, R on counts 7-8",
    "for those who do not turn": "\nThose who don't turn can walk L, R",
    "for non-turners": "\nNon-turners: walk back L, R",
    "if one does not like it": "\nIf you don't like turning, walk L, R",
    "to be easier": "\nTo make it easier walk L, R",
    "instead": "\nInstead of the turn: walk L, R",
    "or simply": " or simply walk L, R",
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


ELSEWHERE = {
    "Option for counts 7-8 of section 1: walk back L, R": (1, "7-8"),
    "Option: section 1, counts 7-8 - walk L, R": (1, "7-8"),
    "Easier option S1 7-8: walk L, R": (1, "7-8"),
    "Beginners may walk L, R on counts 7-8 of section 1": (1, "7-8"),
    "Option for section 2: vine L, touch, vine R, step L beside R": (2, "1-8"),
}


@pytest.mark.parametrize("words", ELSEWHERE)
def test_an_option_told_below_stands_for_the_section_it_names(words: str) -> None:
    """By its number, with its counts or whole."""
    report = checked(below=f"{words}\n")
    (option,) = report.as_json()["options"]
    assert (*ELSEWHERE[words], True) == (option["section"], option["counts"], option["agrees"])
    assert report.sound


def test_an_option_told_below_stands_for_the_part_it_names() -> None:
    """Its counts run through the part, wherever it is told."""
    text = (
        "Tin Lantern\nSequence: A, B, Tag, A, B\n\nPart A\n1-4 Vine R, touch L\n5-8 Vine L, touch R\n"
        "1-2 Step R forward, pivot 1/2 left\n3-4 Step R forward, pivot 1/2 left\n5-8 Rocking chair R\n"
        "Part B\n1-4 Sway R, L, R, L\nTag\n1-2 Stomp R, stomp L\nOption for counts 9-12 of part A: {}\n"
    )
    found = [
        check_text(text.format(words), name="x").as_json()["options"][0]
        for words in ("rocking chair R", "step R forward, pivot 1/2 left, walk R, L")
    ]
    assert [("A", 2, "1-4")] * 2 == [(o["part"], o["section"], o["counts"]) for o in found]
    assert [True, False] == [option["agrees"] for option in found]


def test_an_option_may_stand_for_one_count_and_its_half() -> None:
    """It is held against the steps of that count alone."""
    lines = (
        "1-2& Step R side, step L behind R, step R side\n3-4& Step L forward, {}turn 1/2 left stepping {}\n"
    )
    text = (
        f"Tin Lantern\n\n{lines.format('turn 1/2 left stepping R back, ', 'L forward')}Option: 4& walk {{}}\n"
    )
    right, wrong = (check_text(text.format(feet), name="x").as_json() for feet in ("R, L", "R forward, hold"))
    assert [("4&", True), ("4&", False)] == [
        (option["counts"], option["agrees"]) for read in (right, wrong) for option in read["options"]
    ]


BAD = {
    "it is for the tired and ends on the other foot": (
        "option-ends-elsewhere",
        " (if tired: step L back, touch R beside L)",
    ),
    "it is for beginners and faces another wall": (
        "option-ends-elsewhere",
        "\nBeginners may turn 1/2 left stepping L forward, step R forward",
    ),
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


IN_PROSE = (
    "First eight: Rock L back, recover R (1-2). Turn 1/2 right stepping L back, turn 1/2 right stepping R "
    "forward (3-4). {} Shuffle forward L, R, L (5&6), shuffle forward R, L, R (7&8)."
)
SENTENCES = [
    "If your knees object just walk left, right.", "If that's too much, walk L, R.", "Option: walk L, R.",
    "(Or just walk L, R.)", "Beginners may walk L, R.",
]  # fmt: skip


@pytest.mark.parametrize("sentence", SENTENCES)
def test_an_option_told_between_the_steps_of_a_paragraph_takes_none_of_them(sentence: str) -> None:
    """The steps behind the sentence belong to the count mark behind them."""
    plain = check_text(f"Tin\n\n{IN_PROSE.format('')}", name="x").dance.parts[0].steps
    report = check_text(f"Tin\n\n{IN_PROSE.format(sentence)}", name="x")
    assert [(s.at, s.foot, s.turn) for s in plain] == [
        (s.at, s.foot, s.turn) for s in report.dance.parts[0].steps
    ]
    assert [(1, "3-4", True)] == [
        (o["section"], o["counts"], o["agrees"]) for o in report.as_json()["options"]
    ]


def test_a_full_turn_less_is_no_difference() -> None:
    """Without the full turn the dancers face the same wall."""
    report = checked(beside=" (option: step L forward, step R back)")
    assert report.sound


def test_a_sheet_without_options_has_none() -> None:
    """Nothing is taken for an option that is not called one."""
    assert [] == checked(below="Begin again and smile!\n").as_json()["options"]
