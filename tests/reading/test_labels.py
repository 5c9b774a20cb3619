"""A number or a letter before a line of steps either counts a beat or only numbers the line.

How people number the lines of their own notes is common practice, no source.
"""

import pytest

from wallwise.reading import read

EIGHTS = ("Vine R, touch, vine L, touch", "R rocking chair, R fwd, pivot 1/2 L, walk R, L")
LABELS = (("1.", "2."), ("1)", "2)"), ("a)", "b)"), ("A.", "B."), ("i)", "ii)"), ("1", "2"), ("1 -", "2 -"))


@pytest.mark.parametrize("labels", LABELS, ids=lambda pair: pair[0])
def test_labels_that_number_the_lines_make_each_a_section(labels: tuple[str, str]) -> None:
    lines = "\n".join(f"{label} {steps}" for label, steps in zip(labels, EIGHTS, strict=True))
    sections = read(f"Any Dance\n16 counts\n\n{lines}\n").dance.parts[0].sections
    assert [section.counts for section in sections] == [8, 8]


def test_numbers_that_count_one_step_each_are_beats() -> None:
    steps = ("Step R forward", "Touch L beside R", "Step L back", "Touch R beside L")
    lines = "\n".join(f"{count}. {step}" for count, step in enumerate(steps, 1))
    part = read(f"Any Dance\n\n{lines}\n").dance.parts[0]
    assert [step.at for step in part.steps] == [1, 2, 3, 4]


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
