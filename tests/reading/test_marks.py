"""The counts that a line is danced on are read from its mark, in every way they are written.

Count 1 is the first beat; & is a half, e a quarter and a three quarters of a beat later (common
practice, no source).
"""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from wallwise.desk.report import check_text
from wallwise.reading import read
from wallwise.reading.marked import split_marks
from wallwise.reading.marks import leading_mark


def beats(told: str) -> list[Fraction]:
    return [Fraction(beat) for beat in told.split()]


MARKS = {
    "1-2 Walk R, L": "1 2",
    "1 Step R": "1",
    "3&4 Shuffle R": "3 7/2 4",
    "3 & 4 Shuffle R": "3 7/2 4",
    "&5-6 Ball, step, hold": "9/2 5 6",
    "& 5 - 6 Ball, step, hold": "9/2 5 6",
    "1a2 Samba R": "1 7/4 2",
    "7e&8 Cross": "7 29/4 15/2 8",
    "1e&a2 Shuffle": "1 5/4 3/2 7/4 2",
    "1 + 2 Shuffle R": "1 3/2 2",
    "1+2 Shuffle R": "1 3/2 2",
    "5-6-7-8 Jazz box": "5 6 7 8",
    "5-8 Jazz box": "5 6 7 8",
    "5, 6, 7, 8 Jazz box": "5 6 7 8",
    "1 2 3 4 Vine R": "1 2 3 4",
    "1234 Vine R": "1 2 3 4",
    "5678 Vine L": "5 6 7 8",
    "2-3-4&1 Step, rock, recover": "2 3 4 9/2 5",
    "8&1 Cross, side, behind": "8 17/2 9",
    "4&1 Chassé R": "4 9/2 5",
    "1&2& Heel switches": "1 3/2 2 5/2",
    "1&2&3&4 Weave": "1 3/2 2 5/2 3 7/2 4",
    "1-3 Twinkle L": "1 2 3",
    "4-6 Waltz back": "4 5 6",
    "33-40 Walks round": "33 34 35 36 37 38 39 40",
    "One, two: walk R, L": "1 2",
    "Five, six, seven, eight - jazz box": "5 6 7 8",
    "Three and four: shuffle R": "3 7/2 4",
    "1 and 2: shuffle R": "1 3/2 2",
    "1 to 4 Vine R": "1 2 3 4",
    "5 thru 8 Vine L": "5 6 7 8",
    "Counts 1-2: walk R, L": "1 2",
    "Count 1: step R": "1",
    "Cts 3&4 shuffle": "3 7/2 4",
    "Beats 1-4: vine R": "1 2 3 4",
    "On 1-2 walk R, L": "1 2",
    "[1-2] Walk R, L": "1 2",
    "(3&4) Shuffle R": "3 7/2 4",
    "(1-2): Walk R, L": "1 2",
    "1-2) Walk R, L": "1 2",
    "1-2. Walk R, L": "1 2",
    "1-2: Walk R, L": "1 2",
    "1-2 - Walk R, L": "1 2",
    "1-2 | Walk R, L": "1 2",
    "1-2 = Walk R, L": "1 2",
    "1-2\tWalk R, L": "1 2",
    "1-2": "1 2",
    "  7&8  Coaster": "7 15/2 8",
    "01-02  Walk R, L": "1 2",
    "09-10  Walk R, L": "9 10",
    "8 a   Rock R, recover L": "8 35/4",
    "one\tleft foot to the side": "1",
}


@pytest.mark.parametrize("text", MARKS)
def test_a_mark_says_its_beats(text: str) -> None:
    """The beats of the mark, in order, & and all."""
    mark = leading_mark(text)
    assert mark is not None
    assert beats(MARKS[text]) == list(mark.beats)


@pytest.mark.parametrize("text", MARKS)
def test_the_steps_begin_where_the_mark_ends(text: str) -> None:
    """Nothing of the mark is left before the steps, and no letter of them is taken."""
    mark = leading_mark(text)
    assert mark is not None
    rest = text[mark.end :]
    assert rest == rest.lstrip(" \t:.)]=|")
    assert "".join(c for c in text[: mark.end] if c.isalpha()).lower() in {
        "", "a", "e", "ea", "to", "thru", "and", "counts", "count", "cts", "beats", "on",
        "one", "onetwo", "fivesixseveneight", "threeandfour",
    }  # fmt: skip


NO_MARKS = [
    "Step R forward",
    "1/4 turn right",
    "1/2 turn L",
    "3:00",
    "12.00 wall",
    "9 o'clock",
    "2x heel switches",
    "1st wall",
    "3rd time through",
    "2 walls",
    "32 counts",
    "2 restarts",
    "One restart",
    "Two tags",
    "4 times",
    "0-1 nothing",
    "and recover",
    "e-mail",
    "a step",
    "",
]


@pytest.mark.parametrize("text", NO_MARKS)
def test_a_number_that_counts_no_beats_is_no_mark(text: str) -> None:
    """Fractions, clock times, walls, totals and ordinals are not counts."""
    assert leading_mark(text) is None


def test_a_share_alone_belongs_to_the_beat_before() -> None:
    """A line under "&" alone is danced half a beat after the line before it."""
    mark = leading_mark("&\tStep L beside R")
    assert mark is not None
    assert (mark.floating, [Fraction(1, 2)]) == (True, list(mark.beats))


def test_beats_that_are_not_written_out_are_told_apart() -> None:
    """A range from 1 to 4 names two beats and means four."""
    ranged = {text: mark.ranged for text in ("1-4 x", "1-2-3-4 x", "1-2 x") if (mark := leading_mark(text))}
    assert ranged == {"1-4 x": True, "1-2-3-4 x": False, "1-2 x": False}


PLACED = {
    "before the steps": "1-2 {}\n3&4 {}\n5-6 {}\n7&8 {}",
    "at the end of the line": "{} 1-2\n{} 3&4\n{} 5-6\n{} 7&8",
    "in brackets at the end": "{} (1-2)\n{} (3&4)\n{} (5-6)\n{} (7&8)",
    "in brackets before": "(1-2) {}\n[3&4] {}\n(5-6) {}\n[7&8] {}",
    "in a column of their own": "1-2\t{}\n3&4\t{}\n5-6\t{}\n7&8\t{}",
    "in a table": "| 1-2 | {} |\n| 3&4 | {} |\n| 5-6 | {} |\n| 7&8 | {} |",
    "in words": "One, two: {}\nThree and four: {}\nFive, six: {}\nSeven and eight: {}",
    "on lines of their own": "1-2\n{}\n3&4\n{}\n5-6\n{}\n7&8\n{}",
    "all on one line": "1-2 {}, 3&4 {}, 5-6 {}, 7&8 {}",
    "with blanks and commas": "1, 2 {}\n3 & 4 {}\n5, 6 {}\n7 & 8 {}",
    "counting on through the section": "1 - 2: {}.\n3 + 4: {}.\n5 - 6: {}.\n7 + 8: {}.",
    "implied by the figures": "{}, {}, {}, {}",
}
FIGURES = ("Walk R, L", "Shuffle forward R, L, R", "Rock L forward, recover R", "L coaster step")


@pytest.mark.parametrize("case", PLACED)
def test_a_mark_is_read_wherever_it_stands(case: str) -> None:
    """Walks, a shuffle, a rock and a coaster on eight counts, however these are set beside the steps."""
    dance = read(f"Tin Lantern\n\nSection 1\n{PLACED[case].format(*FIGURES)}\n").dance
    told = [(step.at, step.foot.value) for step in dance.parts[0].steps if step.weight]
    assert list(zip(beats("1 2 3 7/2 4 5 6 7 15/2 8"), "RLRLRLRLRL", strict=True)) == told


def test_a_mark_may_cross_into_the_next_section() -> None:
    """In a cha cha counted from 1 the last step of a line is the 1 of the next."""
    body = "1\tStep R side\n2-3\tRock L back, recover R\n4&5\tChassé L\n6-7\tRock R back, recover L\n"
    dance = read(f"Tin Lantern\n\n[1-8]\n{body}8&1\tChassé R\n[9-16]\n2-3\tRock L back, recover R\n").dance
    assert [*beats("1 2 3 4 9/2 5 6 7 8 17/2 9 10 11")] == [s.at for s in dance.parts[0].steps if s.weight]


def test_one_line_a_count() -> None:
    """A line for every count, the half beat on a line of its own."""
    lines = (
        "1\tStep R forward",
        "2\tStep L forward",
        "3\tStep R forward",
        "&\tStep L beside R",
        "4\tStep R forward",
    )
    dance = read("Tin Lantern\n\n" + "\n".join(lines)).dance
    assert beats("1 2 3 7/2 4") == [step.at for step in dance.parts[0].steps if step.weight]


ONE_BEHIND = ["{} 1\n{} 2\n{} 3\n{} 4", "{} (1)\n{} (2)\n{} (3)\n{} (4)", "{}  1\n{}  2\n{}  3\n{}  4"]


@pytest.mark.parametrize("lines", ONE_BEHIND)
@pytest.mark.parametrize("many", [2, 4])
def test_lines_that_end_in_one_count_each(lines: str, many: int) -> None:
    """One number behind each line counts, whether there are two such lines or more."""
    steps = ("Step R side", "Step L beside R", "Step R side", "Touch L beside R")
    some = "\n".join(lines.splitlines()[:many])
    dance = read(f"Tin Lantern\n\n{some.format(*steps)}\n").dance
    assert list(range(1, many + 1)) == [step.at for step in dance.parts[0].steps]


HALVES = {
    "between two lines": "1 Step R side\n& Step L beside R\n2 Step R side",
    "between two beats of two": "1-2 Walk R, L\n& Step R beside L\n3-4 Walk L, R",
}


@pytest.mark.parametrize("case", HALVES)
def test_a_share_before_one_blank_is_a_count(case: str) -> None:
    """A row that begins with "&" and a blank is danced half a beat after the row before it."""
    steps = read(f"Tin Lantern\n\n{HALVES[case]}\n").dance.parts[0].steps
    assert [1] == [step.at.numerator % 2 for step in steps if step.at.denominator == 2]
    assert {"between two lines": 3, "between two beats of two": 5}[case] == len(steps)


@pytest.mark.parametrize(
    "line",
    [
        "3e&a: touch R heel fwd (3), R beside L (e), touch L heel fwd (&), L beside R (a)",
        "3e&a: (3) touch R heel fwd, (e) R beside L, (&) touch L heel fwd, (a) L beside R",
    ],
)
def test_each_beat_may_stand_in_brackets_at_its_step(line: str) -> None:
    """Shares in brackets belong to the beat before them, before their steps or behind."""
    dance = read(f"Tin Lantern\n\n1-2 Walk R, L\n{line}\n4 Step R forward\n").dance
    assert beats("1 2 13/4 15/4 4") == [step.at for step in dance.parts[0].steps if step.weight]


@pytest.mark.parametrize("told", ["(9)", "[9]", "(9:00)", "9:00"])
def test_a_number_behind_counted_steps_is_the_clock(told: str) -> None:
    """Where the count stands before the steps, a number in brackets behind them is a facing."""
    body = f"1-4 Vine R, touch L\n5-8 Vine L turning 1/4 left, touch R {told}"
    dance = read(f"Tin Lantern\n\n{body}\n").dance
    assert dance.counts == 8


def test_an_hour_in_brackets_behind_a_numbered_line_is_no_count() -> None:
    """A row that its number opens ends in the facing, not in another count."""
    rows = "1   R side rock rec, R behind side cross, L side rock, rec 1/4 R, L shuffle fwd   (3)"
    rows += "\n2   R rock fwd rec, R shuffle 1/2 R, L rock fwd rec, L coaster   (9)\n"
    dance = read(f"Tin Lantern   16c 4w\n\n{rows}").dance
    assert [8, 8] == [section.counts for section in dance.parts[0].sections]
    assert dance.parts[0].net_turn == Fraction(3, 4)


@pytest.mark.parametrize("heading", ["Sec. {} ({})", "Section {}: {}", "SECT {} [{}]"])
def test_sections_may_be_lettered(heading: str) -> None:
    """Letters number the sections where no sequence makes parts of them; quick and slow say no step."""
    first = "1-2 R to right side; L next to R (QQ)\n3-4 R forward; hold (S)\n5-8 L rocking chair (QQQQ)\n"
    second = "1-2 L to left side; R next to L (QQ)\n3-4 L back; hold (S)\n5-8 R rocking chair\n"
    one, two = (heading.format(letter, counts) for letter, counts in (("A", "1-8"), ("B", "9-16")))
    dance = read(f"Tin Lantern\n\n{one} Box forward\n{first}\n{two} Box back\n{second}").dance
    assert [8, 8] == [section.counts for section in dance.parts[0].sections]


@pytest.mark.parametrize(
    "line",
    [
        "32 count - 2 wall - Advanced - rolling 8 count (1, 2a3, 4a5, 6a7, 8a)",
        "Improver, 8 counts, 1 wall, rolling count 1 a2 3 a4",
    ],
)
def test_a_line_that_declares_the_dance_is_no_step(line: str) -> None:
    """What says how many counts and walls there are may show how they are counted, and is no step."""
    dance = read(
        f"Tin Lantern\n{line}\nMusic: none\n\n- 1: step R fwd\n- 2a3: step L fwd, R beside L, L fwd"
    ).dance
    assert beats("1 2 11/4 3") == [step.at for step in dance.parts[0].steps if step.weight]


def test_a_count_behind_a_colon_is_one_whatever_stands_before_it() -> None:
    """What is told "on each stomp: five, six …" is counted; the colon parts the words from the count."""
    line = "Walk right, left, right, brush the left: one, two, three, four. Stomp left and clap, "
    line += "stomp right and clap, taking the weight on each stomp: five, six, seven, eight."
    marks = [piece.mark for piece in split_marks(line, None)]
    assert [beats("1 2 3 4"), beats("5 6 7 8")] == [list(mark.beats) for mark in marks if mark is not None]


NUMBERS = st.integers(1, 60)


@given(first=NUMBERS, length=st.integers(1, 16), join=st.sampled_from(["-", " - ", " to "]))
def test_a_range_counts_up_from_its_first_beat(first: int, length: int, join: str) -> None:
    """A range holds every whole beat between its ends, and its ends."""
    mark = leading_mark(f"{first}{join}{first + length} Steps")
    assert mark is not None
    assert [Fraction(n) for n in range(first, first + length + 1)] == list(mark.beats)


@settings(max_examples=500)
@given(text=st.text(st.sampled_from("0123456789&ea-+,. [](): ortwoXx/\t"), max_size=30))
def test_no_mark_makes_beats_out_of_order(text: str) -> None:
    """Whatever stands there, a mark's beats ascend and the mark lies in the text."""
    mark = leading_mark(text)
    if mark is not None:
        assert list(mark.beats) == sorted(set(mark.beats))
        assert 0 <= mark.start < mark.end <= len(text)


EIGHT = ["1R", "2L", "3R", "3.5L", "4R", "5L", "6R", "7L", "7.5R", "8L"]


def danced(body: str) -> list[str]:
    """The weight changes of a sheet's only part, as "beat foot"."""
    steps = read(f"Tin Lantern\n\n{body}\n").dance.parts[0].steps
    return [f"{float(step.at):g}{step.foot.value}" for step in steps if step.weight]


UNSTOPPED = [
    "1 walk R 2 walk L 3 R fwd & L beside R 4 R fwd 5 rock L fwd 6 recover R 7 L back & R tog 8 L fwd",
    "Section 1: 1 R fwd 2 L fwd 3 R fwd & L beside R 4 R fwd 5 rock L fwd 6 rec R 7 L back & R tog 8 L fwd",
    "Sec. 1: 1-2 walk R L 3&4 shuffle fwd R 5-6 rock L fwd recover R 7&8 coaster L",
    "Section 1: 1-2 Walk R, L, 3&4 shuffle fwd R, 5-6 rock L fwd, recover R, 7&8 coaster L",
    "1 walk R fwd 2 walk L fwd\n3&4 shuffle R 5-6 rock L fwd recover R\n7 L back & R beside L 8 L fwd",
    "walk R 1 walk L 2\nR fwd 3 ball L & R fwd 4\nrock L fwd 5 recover R 6 L back 7 ball R & L fwd 8",
    "walk R L 1-2 shuffle fwd R L R 3&4 rock L fwd recover R 5-6 coaster L R L 7&8",
    "count 1 walk R count 2 walk L counts 3&4 shuffle R counts 5-6 rock L recover R counts 7&8 coaster L",
    "1: walk R 2: walk L 3&4: shuffle fwd R 5: rock L fwd 6: recover R 7&8: coaster L",
    "Walk R, L, then 3&4 shuffle R L R, 5-6 rock L fwd rec, 7&8 coaster L",
    "With walks: 1 walk R, 2 walk L, 3 R fwd, & L together, 4 R fwd\n5-6 rock L fwd, rec, 7&8 coaster L",
]


@pytest.mark.parametrize("body", UNSTOPPED)
def test_counts_need_no_stop_before_them(body: str) -> None:
    """Marks that count on from one to the next are counts, before their steps or behind them."""
    assert EIGHT == danced(body)


NO_COUNTS = {
    "1-4 Walk forward 3 steps, touch L\n5-8 walk back 3 steps, touch R": "1R 2L 3R 5L 6R 7L",
    "1-2 Bounce both heels 2 times\n3-4 walk R, L": "1both 2both 3R 4L",
    "1-2 Step R, turn 1/4 L, weight on L (9:00)\n3-4 walk R, L": "1R 2L 3R 4L",
}


@pytest.mark.parametrize("body", NO_COUNTS)
def test_numbers_of_steps_times_and_turns_are_no_counts(body: str) -> None:
    """What says how many or how far does not count on, even where it is the next number."""
    assert NO_COUNTS[body].split() == danced(body)


SOME_COUNTED = [
    "1-8 walk R, L, shuffle fwd R (3&4), rock L fwd, rec R, coaster L",
    "1-8 walk R, L (1-2), shuffle fwd R, rock L fwd, rec R, coaster L (7&8)",
    "1-8 (1-2) walk R, L, (3&4) shuffle fwd R, rock L fwd, rec R, (7&8) coaster L",
    "walk R, L, shuffle fwd R (3&4), rock L fwd, rec R, coaster L (7&8)",
    "Section 1\nWalk R, L (1-2), shuffle fwd R (3&4), rock L fwd, rec R, coaster L",
    "1-2 Walk R, L\nShuffle fwd R 3&4\nRock L fwd, recover R, coaster L 7&8",
    "walk R, L, shuffle fwd R - 1-2 3&4 - then rock L fwd, rec R, coaster L",
]


@pytest.mark.parametrize("body", SOME_COUNTED)
def test_a_line_may_count_only_some_of_its_steps(body: str) -> None:
    """Steps without a count of their own have those that the line leaves to them."""
    assert EIGHT == danced(body)


def test_counts_that_are_told_again_may_run_through_the_part() -> None:
    """The counts in brackets begin at 1 or at the line's own first count; hours stand among them."""
    once = "1-8 Walk R, L, shuffle fwd R (3&4), step L fwd, pivot 1/2 R (6), L shuffle fwd (7&8)"
    for more in ("9-16 walk R, L, shuffle fwd R (11&12)", "9-16 walk R, L, shuffle fwd R (3&4)"):
        body = f"{once}\n{more}, step L fwd, pivot 1/2 R (12), L shuffle fwd"
        assert "9R 10L 11R 11.5L 12R 13L 14R 15L 15.5R 16L" == " ".join(danced(body)[10:])


def test_a_line_left_out_is_still_missed() -> None:
    """A mark behind its steps reaches back only where these fill the counts before it."""
    dance = read("Tin Lantern\n\nWalk R, L (1-2)\nRock L fwd, recover R (5-6)\nCoaster L (7&8)\n").dance
    assert beats("1 2 5 6 7 15/2 8") == [step.at for step in dance.parts[0].steps if step.weight]


LISTED = [
    "Walk R, L (beats 1 and 2), shuffle R (beats 3 and 4), rock L, rec (beats 5 and 6), shuffle L (7 and 8)",
    "On counts 1 and 2 walk R, L. On counts 3 and 4 shuffle R.\nOn 5 and 6 rock L, R. On 7 and 8 shuffle L.",
    "1 and 2 walk R, L\n3 and 4 shuffle R\n5 and 6 rock L back, recover R\n7 and 8 shuffle L",
    "Counts 1 and 2: walk R, L\nCts 3 and 4: shuffle R\nCts 5 and 6: rock L, rec R\nCts 7 and 8: shuffle L",
]


@pytest.mark.parametrize("body", LISTED)
def test_and_between_two_counts_is_a_half_beat_only_where_a_step_takes_it(body: str) -> None:
    """“Beats 9 and 10” are two; in “3 and 4” a shuffle takes the half beat, and a rock step does not."""
    assert EIGHT == danced(body)


OVER_THE_BAR = [
    "8& shuffle fwd R L\n1 finish shuffle R fwd",
    "8& shuffle fwd R, L\n1 end of the shuffle, R fwd",
    "8& start a shuffle forward R, L\n1 finishing the shuffle R forward",
    "8& coaster R, L\n1 last step of the coaster: R forward",
]


@pytest.mark.parametrize("over", OVER_THE_BAR)
def test_a_figure_may_be_told_in_two_halves(over: str) -> None:
    """What ends a figure on the next line's 1 is the one step told there."""
    eight = "1 R side, 2-3 rock L back rec, 4&5 L chassé (L R L), 6-7 rock R back rec"
    assert "8R 8.5L 9R 10L 11R" == " ".join(danced(f"{eight}, {over}, 2-3 walk L, R")[8:])


NAMED_BEHIND = [
    "rock back on the right and recover onto the left again, so that is a rocking chair",
    "rock back on the right and recover onto the left, which makes a rocking chair",
    "rock back right, recover left; this is called a rocking chair",
]


@pytest.mark.parametrize("told", NAMED_BEHIND)
def test_a_name_behind_the_steps_is_not_danced_once_more(told: str) -> None:
    """A sentence that ends in what the steps are called has told them before."""
    assert "1R 2L 3R 4L" == " ".join(danced(f"1-4 Rock forward right, recover left, {told}"))


def test_a_column_that_holds_only_the_foot_costs_nothing_to_believe() -> None:
    """Foot, step and facing in columns of their own tell one thing between them."""
    rows = ("1\tR\tstep forward\t12:00", "2\tL\ttouch beside R\t12:00", "3\tL\tstep behind R\t12:00")
    reading = read("Tin Lantern\n\n" + "\n".join(rows) + "\n4\tR\tturn 1/4 right, step forward\t3:00\n")
    assert ["1R", "3L", "4R"] == [f"{s.at}{s.foot.value}" for s in reading.dance.parts[0].steps if s.weight]
    assert [0.0, 0.0, 0.0] == [passage.layouts[0].cost for passage in reading.parts["main"].passages[:3]]


def test_what_is_too_long_for_one_count_mark_is_told() -> None:
    """No words are left out unread in silence, however many stand under one mark."""
    text = "Tin Lantern\n\n1-8 " + "walk R, L, " * 200 + "stomp R\n9-10 Walk R, L\n"
    findings = [f for f in check_text(text, name="any").findings if f.rule == "not-understood"]
    assert any("not read" in f.message for f in findings)


WRITTEN = {
    "apostrophes": "1, 2 {}\n3 'n' 4 {}\n5, 6 {}\n7 an' 8 {}",
    "words run together": "1to2 {}\n3and4 {}\n5to6 {}\n7and8 {}",
    "waves for dashes": "1~2 {}\n3&4 {}\n5~6 {}\n7&8 {}",
    "signs in a sentence": "{} (beats 1 & 2), {} (cts 3 & 4), {} (beats 5 & 6), {} (cts 7 & 8).",
    "dashes round the half": "1-2: {}\n3-&-4: {}\n5-6: {}\n7-&-8: {}",
    "leaders of dots": "{} ...... 1-2\n{} ...... 3&4\n{} ...... 5-6\n{} ...... 7&8",
    "one line of timing": "{}, {}, {}, {} Timing: 1, 2, 3&4, 5, 6, 7&8",
}


@pytest.mark.parametrize("case", WRITTEN)
def test_counts_are_read_however_they_are_joined(case: str) -> None:
    """Signs and words between two counts, and what fills the line before them, are many."""
    assert danced(WRITTEN[case].format("Walk R, L", "shuffle R", "rock L fwd, rec R", "coaster L")) == EIGHT


def test_halves_may_be_told_by_a_word_in_a_column() -> None:
    """“And” in the column of the counts is the half beat after the row before."""
    body = "1\tWalk R\n2\tWalk L\n3\tStep R fwd\nand\tL beside R\n4\tR fwd"
    assert danced(body) == ["1R", "2L", "3R", "3.5L", "4R"]


def test_lines_that_end_in_a_count_are_not_run_together() -> None:
    """Each line of long sentences counts its own eight, whose counts stand behind the steps."""
    line = (
        "Walk R on 1, walk L on 2, shuffle fwd R on 3&4, rock L fwd on 5, recover R on 6, L coaster on 7&8."
    )
    assert danced(f"{line}\n{line}") == [*EIGHT, *(f"{float(e[:-1]) + 8:g}{e[-1]}" for e in EIGHT)]
    line = "Walk R 1, walk L 2, R fwd 3, L together &, R fwd 4, rock L 5, rec R 6, L back 7, R tog &, L fwd 8"
    assert danced(f"{line}\n{line}")[:11] == [*EIGHT, "9R"]
