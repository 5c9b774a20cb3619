"""Cuts that make the walls begin with the phrases: the cheapest there are, by trying every one."""

from __future__ import annotations

import random
from collections.abc import Iterator
from math import lcm

import pytest

from wallwise.song.fit import Choices, Cut, CutKind, Phrasing, Plan, fit, judge


def every_plan(
    phrasing: Phrasing, choices: Choices, *, starts: tuple[float, ...] = (1,), cuts: tuple[Cut, ...] = ()
) -> Iterator[Plan]:
    """Every plan there is, tried out one wall after the other."""
    place, wall = starts[-1] - 1, len(starts)
    if place + choices.counts >= phrasing.length:
        yield Plan(starts, cuts, *weighed(starts, cuts, phrasing, choices))
    for restart in (None, *choices.restarts):
        for tag in (None, *choices.tags):
            made = list(cuts)
            counts = choices.counts if restart is None else restart
            if restart is not None:
                made.append(Cut(CutKind.RESTART, wall, restart, rough=restart in choices.rough))
            if tag is not None:
                made.append(Cut(CutKind.TAG, wall, tag))
                counts += tag
            if len(made) <= choices.max_cuts and place + counts < phrasing.length:
                following = (*starts, place + counts + 1)
                yield from every_plan(phrasing, choices, starts=following, cuts=tuple(made))


def weighed(
    starts: tuple[float, ...], cuts: tuple[Cut, ...], phrasing: Phrasing, choices: Choices
) -> tuple[int, float]:
    """Walls off the phrase and the sum of the misfits, count by count and without a search."""
    may_begin = set()
    for place, end in zip(phrasing.places, (*phrasing.places[1:], phrasing.length), strict=True):
        for at in range(int(place), int(end)):
            rest = (at - place) % choices.counts
            left = end - at
            if rest == 0 and (at == 0 or left >= min(choices.eight, choices.counts)):
                may_begin.add(at)
    heard = [start for start in starts if phrasing.length - (start - 1) >= choices.eight]
    misfits = [min(abs(start - 1 - at) for at in may_begin) for start in heard]
    inside, count_in_stretch, wall = 0, 0, 0
    tagged = {cut.wall: cut.counts for cut in cuts if cut.kind is CutKind.TAG}
    for at in range(int(phrasing.length)):
        if at + 1 in starts:
            count_in_stretch, wall = 0, wall + 1
            following = starts[wall] - 1 if wall < len(starts) else phrasing.length
        elif at == following - tagged.get(wall, 0):
            count_in_stretch = 0
        if at in phrasing.places and phrasing.length - at >= choices.eight:
            into = count_in_stretch % choices.eight
            apart = min(into, choices.eight - into)
            inside += apart if apart > choices.tolerance else 0
        count_in_stretch += 1
    return sum(misfit > choices.tolerance for misfit in misfits), sum(misfits) + inside


def small_case(seed: int) -> tuple[Phrasing, Choices]:
    """A song of at most 70 counts and a dance of 4 to 16, with a few places to cut."""
    dice = random.Random(seed)
    phrasing = Phrasing.of(dice.choice([3, 4, 5, 6, 8, 12, 16, 17]) for _ in range(dice.randint(2, 4)))
    counts = dice.choice([8, 10, 12, 16])
    restarts = tuple(sorted(dice.sample(range(3, counts), dice.randint(1, 4))))
    rough = frozenset(r for r in restarts if dice.random() < 0.3)
    tags = tuple(sorted(dice.sample([1, 2, 4], dice.randint(0, 2))))
    return phrasing, Choices(
        counts,
        restarts=restarts,
        rough=rough,
        tags=tags,
        max_cuts=dice.choice([0, 1, 2, 3, 3]),
        tolerance=dice.choice([0, 0, 1]),
        eight=dice.choice([6, 8]),
    )


def tags(plan: Plan) -> int:
    """How many tags the plan has."""
    return sum(cut.kind is CutKind.TAG for cut in plan.cuts)


@pytest.mark.parametrize("block", range(10))
def test_no_plan_is_cheaper(block: int) -> None:
    """500 small songs and dances: the plan found costs what the best of all costs, with as few tags."""
    for seed in range(block * 50, block * 50 + 50):
        phrasing, choices = small_case(seed)
        plans = list(every_plan(phrasing, choices))
        plan = fit(phrasing, choices)
        assert plan in plans, seed
        assert min((p.cost, tags(p)) for p in plans) == (plan.cost, tags(plan)), seed


def test_the_small_cases_are_no_easy_ones() -> None:
    """Many need a cut, some two or three, some cannot be made to fit, some cut a figure."""
    plans = [fit(*small_case(seed)) for seed in range(500)]
    assert sum(bool(plan.cuts) for plan in plans) > 120
    assert sum(len(plan.cuts) > 1 for plan in plans) > 30
    assert sum(plan.off > 0 for plan in plans) > 100
    assert sum(any(cut.rough for cut in plan.cuts) for plan in plans) > 15


def test_a_dance_as_long_as_the_phrases_is_not_cut() -> None:
    """32 counts in phrases of 32: a start every 32 counts and nothing to pay."""
    plan = fit(Phrasing.of([32] * 6), Choices(32, restarts=tuple(range(4, 32))))
    assert ((1, 33, 65, 97, 129, 161), (), 0, 0, 0) == (
        plan.starts,
        plan.cuts,
        plan.off,
        plan.misfit,
        plan.cost,
    )


def test_a_short_phrase_asks_for_a_restart() -> None:
    """A phrase of 16 among phrases of 32: the wall in it is cut after 16 counts."""
    plan = fit(Phrasing.of([32, 32, 16, 32, 32]), Choices(32, restarts=(8, 16, 24)))
    assert ((1, 33, 65, 81, 113), (Cut(CutKind.RESTART, 3, 16),), 0) == (plan.starts, plan.cuts, plan.misfit)


def test_a_phrase_of_four_more_asks_for_a_tag() -> None:
    """36 counts: four are added after wall 2."""
    plan = fit(Phrasing.of([32, 36, 32]), Choices(32, restarts=(8, 16, 24)))
    assert (Cut(CutKind.TAG, 2, 4),) == plan.cuts
    assert plan.off == 0


def test_a_wall_does_not_begin_with_a_break_that_a_tag_fills() -> None:
    """Four counts of break before a phrase: the tag fills them, and the wall begins with the phrase."""
    plan = fit(Phrasing.of([32, 4, 32, 32]), Choices(32, restarts=(8, 16, 24)))
    assert ((1, 37, 69), (Cut(CutKind.TAG, 1, 4),), 0) == (plan.starts, plan.cuts, plan.misfit)


def test_a_cut_inside_a_figure_is_the_second_choice() -> None:
    """Of two restarts that tolerance allows, the one between figures, although it is a count late."""
    choices = Choices(32, restarts=(20, 21), rough=frozenset({20}), tolerance=1)
    assert (Cut(CutKind.RESTART, 1, 21),) == fit(Phrasing.of([20, 32]), choices).cuts
    rough = Choices(32, restarts=(20,), rough=frozenset({20}))
    assert (Cut(CutKind.RESTART, 1, 20, rough=True),) == fit(Phrasing.of([20, 32]), rough).cuts


def test_the_last_few_counts_ask_for_nothing() -> None:
    """A last chord after whole walls is no wall that begins off the phrase."""
    plan = fit(Phrasing.of([32, 32, 29, 4]), Choices(32, restarts=tuple(range(8, 32))))
    assert ((), 0, 0) == (plan.cuts, plan.off, plan.misfit)


def test_more_cuts_than_allowed_are_not_made() -> None:
    """Two short phrases and one cut: the earlier one is put right, where more walls follow."""
    phrasing = Phrasing.of([32, 16, 32, 32, 32, 8, 32])
    plan = fit(phrasing, Choices(32, restarts=(8, 16), max_cuts=1))
    assert len(plan.cuts) == 1
    assert plan.off > 0
    assert fit(phrasing, Choices(32, restarts=(8, 16), max_cuts=2)).off == 0


def test_a_little_beside_the_phrase_is_with_it() -> None:
    """A phrase heard a count early moves nothing where one count is tolerated."""
    phrasing = Phrasing.of([31, 33, 32, 32])
    assert not fit(phrasing, Choices(32, restarts=(16,), tolerance=1)).cuts
    assert fit(phrasing, Choices(32, restarts=(16,), tolerance=1)).misfit == 1


@pytest.mark.parametrize(
    ("counts", "phrases"),
    # Least common multiples, by arithmetic; 352 for 22 counts is told in "The wedding boogie",
    # India Currents, as the counts after which the dance and the music meet again.
    [(22, 11), (18, 9), (20, 5), (24, 3), (28, 7), (36, 9), (40, 5), (48, 3)],
)
def test_dance_and_phrases_meet_again_where_they_must(counts: int, phrases: int) -> None:
    """Without a cut, walls begin with a phrase of 32 again after the least common multiple."""
    phrasing = Phrasing.of([32] * (2 * phrases))
    plan = fit(phrasing, Choices(counts, max_cuts=0))
    with_phrase = [start - 1 for start in plan.starts if (start - 1) % 32 == 0]
    assert [0, lcm(counts, 32)] == with_phrase
    assert lcm(counts, 32) == phrases * 32


def test_a_start_elsewhere_is_judged_by_the_same_measure() -> None:
    """A plan told in starts and cuts costs what it would cost if it had been found."""
    phrasing, choices = Phrasing.of([32, 32, 16, 32, 32]), Choices(32, restarts=(16,))
    assert judge([1, 33, 65, 81, 113], [Cut(CutKind.RESTART, 3, 16)], phrasing, choices=choices) == fit(
        phrasing, choices
    )
    uncut = judge([1, 33, 65, 97, 129], [], phrasing, choices=choices)
    assert (2, 32, 2_000_032) == (uncut.off, uncut.misfit, uncut.cost)


def test_phrases_have_to_last() -> None:
    """No phrase, a phrase of no counts and a dance of none are refused."""
    for phrases in ([], [0], [32, -8, 32]):
        with pytest.raises(ValueError, match="phrase"):
            Phrasing.of(phrases)
    with pytest.raises(ValueError, match="some counts"):
        fit(Phrasing.of([32]), Choices(0))
