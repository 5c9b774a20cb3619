"""A number or a letter before a line of steps either counts a beat or only numbers the line.

How people number the lines of their own notes is common practice, no source.
"""

import pytest

from wallwise.desk.report import check_text
from wallwise.reading import read

EIGHTS = ("Vine R, touch, vine L, touch", "R rocking chair, R fwd, pivot 1/2 L, walk R, L")
LABELS = (
    ("1.", "2."), ("1)", "2)"), ("a)", "b)"), ("A.", "B."), ("i)", "ii)"), ("1", "2"), ("1 -", "2 -"),
    (" 8  ", "16  "),  # the counts danced by the end of each
)  # fmt: skip


@pytest.mark.parametrize("labels", LABELS, ids=lambda pair: pair[0])
def test_labels_that_number_the_lines_make_each_a_section(labels: tuple[str, str]) -> None:
    lines = "\n".join(f"{label} {steps}" for label, steps in zip(labels, EIGHTS, strict=True))
    sections = read(f"Any Dance\n16 counts\n\n{lines}\n").dance.parts[0].sections
    assert [section.counts for section in sections] == [8, 8]


def test_other_numbers_around_a_list_are_none_of_it() -> None:
    """A wait before it, and a tag below."""
    lines = "\n".join(f"{n}) {steps}" for n, steps in enumerate(EIGHTS, 1))
    text = f"Any Dance\n32 in, weight on L\n\n{lines}\n\n*** 4 ct tag end of wall 2: sway R L R L\n"
    assert [section.counts for section in read(text).dance.parts[0].sections] == [8, 8]


def test_a_wide_table_of_counts_is_no_list() -> None:
    rows = [
        ("Right", "step to right side"),
        ("Left", "step next to right"),
        ("Right", "step forward"),
        ("Left", "touch"),
    ]
    lines = "\n".join(f"  {n}    {foot:5}  {step:36}  12" for n, (foot, step) in enumerate(rows * 2, 1))
    part = read(f"Any Dance\n8 counts\n\nCount  Foot   What it does\n{lines}\n").dance.parts[0]
    assert [step.at for step in part.steps] == [*range(1, 9)]


def test_numbers_that_count_one_step_each_are_beats() -> None:
    steps = ("Step R forward", "Touch L beside R", "Step L back", "Touch R beside L")
    lines = "\n".join(f"{count}. {step}" for count, step in enumerate(steps, 1))
    part = read(f"Any Dance\n\n{lines}\n").dance.parts[0]
    assert [step.at for step in part.steps] == [1, 2, 3, 4]


@pytest.mark.parametrize("label", ["{}) ", "{}. ", "{}  ", "{} - "])
def test_a_label_may_stand_before_a_count(label: str) -> None:
    eights = (
        "1 R side, 2-3 rock L back rec, 4&5 L chassé, 6-7 rock R back rec, 8 touch R",
        "1 R side, 2-3 rock L back rec, 4&5 L chassé, 6-7 rock R back rec, 8 touch R",
    )
    lines = "\n".join(f"{label.format(number)}{steps}" for number, steps in enumerate(eights, 1))
    sections = read(f"Any Dance\n\n{lines}\n").dance.parts[0].sections
    assert [section.counts for section in sections] == [8, 8]


def test_a_list_under_a_heading_numbers_no_sections() -> None:
    text = (
        "Any Dance\n\nSection 1:\n1. Walk forward right, left (1-2)\n"
        "2. Shuffle forward right, left, right (3&4)\n"
        "3. Rock left forward, recover on right (5-6)\n4. Left coaster step (7&8)\n"
    )
    assert [section.counts for section in read(text).dance.parts[0].sections] == [8]


@pytest.mark.parametrize("lead", ["First eight.", "Section 1:", "First eight (steps to the side)."])
def test_steps_told_in_the_heading_itself_keep_their_counts(lead: str) -> None:
    told = "Right foot to the right side on 1, close the left beside it on 2, step the right forward on 3."
    steps = read(f"Any Dance\n\n{lead} {told}\n").dance.parts[0].steps
    assert [f"{step.at} {step.foot.value}" for step in steps if step.weight] == ["1 R", "2 L", "3 R"]


def test_steps_behind_the_last_count_of_a_heading_are_told() -> None:
    told = "First eight: Right to the side on 1, left together on 2. Stomp right, stomp left."
    findings = check_text(f"Any Dance\n\n{told}\n", name="any").findings
    assert [f.rule for f in findings if "Stomp right" in f.message] == ["not-understood"]


def steps_of(body: str) -> list[str]:
    """The weight changes of a sheet with that body, as beat and foot."""
    steps = read(f"Any Dance\nWeight on left\n\n{body}\n").dance.parts[0].steps
    return [f"{float(step.at):g} {step.foot.value}" for step in steps if step.weight]


COUNTED = {
    "Step forward right, left: one, two. Shuffle forward right, left, right: three and four.": [
        "1 R", "2 L", "3 R", "3.5 L", "4 R",
    ],
    "WALK R L 1-2. SHUFFLE FWD R L R 3&4.": ["1 R", "2 L", "3 R", "3.5 L", "4 R"],
    "1-8 R shuffle fwd (1&2), L shuffle fwd (3&4), rock R fwd, rec L (5-6), R coaster (7&8)": [
        "1 R", "1.5 L", "2 R", "3 L", "3.5 R", "4 L", "5 R", "6 L", "7 R", "7.5 L", "8 R",
    ],
    "| Block | Count | What |\n| 1 | 1-2 | RF forward, LF forward |\n| | 3-4 | Walk RF, LF |": [
        "1 R", "2 L", "3 R", "4 L",
    ],
    "1-4 R to side and sway R, sway L, sway R, sway L": ["1 R", "2 L", "3 R", "4 L"],
    "1-4 R & L toe struts": ["2 R", "4 L"],
    "1-4 Right and left sailor steps": ["1 R", "1.5 L", "2 R", "3 L", "3.5 R", "4 L"],
}  # fmt: skip


@pytest.mark.parametrize("body", COUNTED)
def test_counts_and_feet_told_for_several_steps_are_shared_out(body: str) -> None:
    assert steps_of(body) == COUNTED[body]


def test_eights_lettered_by_their_part_are_sections_of_it() -> None:
    text = (
        "Any Dance\nSequence: A, B, A, B\n\nPART A\n[A1-8] Walk, walk\n1-2 Walk R, L\n3-8 Hold\n"
        "[A9-16] Walk, walk\n1-2 Walk R, L\n3-8 Hold\n\n"
        "PART B\nSection B1 (1-8) Walk\n1-2 Walk R, L\n3-8 Hold\n"
    )
    assert [[s.counts for s in part.sections] for part in read(text).dance.parts] == [[8, 8], [8]]


TABLE = "| 1-2 | Walk R, L |\n| 3-4 | Rock R forward, recover L |\n"
TABLE += "| 5-6 | Walk back R, L |\n| 7-8 | Rock R back, recover L |"


@pytest.mark.parametrize(
    "columns", ["| Count | Step |", "| **Beats** | **Footwork** | Facing |", "| Count | Feet | Clock |"]
)
def test_a_numbered_heading_over_a_table_names_its_figure(columns: str) -> None:
    """What names the columns is neither steps nor a heading of its own."""
    body = "\n\n".join(
        f"## {n}. {name}\n\n{columns}\n|---|---|\n{TABLE}" for n, name in ((1, "Walks twice"), (2, "Rocks"))
    )
    dance = read(f"# Tin Lantern\n\n{body}\n").dance
    assert ["Walks twice", "Rocks"] == [section.heading for section in dance.parts[0].sections]
    assert [8, 8] == [section.counts for section in dance.parts[0].sections]


def test_a_heading_that_tells_its_steps_is_shown_by_its_beginning() -> None:
    told = (
        "Section 1: walk forward on the right, the left and the right, and touch the left beside the right; "
    )
    told += "then walk back on the left, the right and the left, and touch the right beside the left"
    sections = read(f"Any Dance\n\n{told}\n").dance.parts[0].sections
    assert [section.counts for section in sections] == [8]
    assert len(sections[0].heading) <= 80
    assert sections[0].heading.startswith("walk forward")
