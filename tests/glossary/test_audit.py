"""The glossary holds together, and the audit sees it when it does not."""

from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from wallwise.dance.mirror import mirror_step
from wallwise.dance.model import Foot, Step
from wallwise.dance.weight import weight_told
from wallwise.glossary.audit import audit, figure_faults, way_faults
from wallwise.glossary.entry import Example, Figure, Term, Way
from wallwise.glossary.load import figures, terms
from wallwise.glossary.notation import parse_steps


def way(*lines: str, counts: int = 4, turn_on: tuple[tuple[int, ...], ...] = ()) -> Way:
    places = tuple(tuple(map(Fraction, place)) for place in turn_on)
    return Way(parse_steps(lines), Fraction(counts), places, "four steps")


WALK = way("1 step R forward", "2 step L forward", "3 step R forward", "4 touch L beside")
SOUND = Figure(
    name="stride",
    also=("long walk",),
    ways=(WALK,),
    call="stride",
    source="common practice",
    family="walks",
    says="Three steps and a touch.",
    examples=(Example("1-4 Stride", WALK.steps),),
)


def test_nothing_is_wrong_with_the_glossary() -> None:
    """Counts add up, weights alternate, names are unique, every entry is sourced and exemplified."""
    assert [] == audit(figures(), terms())


def test_glossary_is_large_enough_to_teach_from() -> None:
    """At least 170 named figures and 45 terms."""
    assert len(figures()) >= 170
    assert len(terms()) >= 45


def test_sound_figure_has_no_faults() -> None:
    """A figure with all that it needs passes."""
    assert [] == list(figure_faults(SOUND))


@pytest.mark.parametrize(
    ("wrong", "says"),
    [
        (replace(SOUND, source=" "), "no source"),
        (replace(SOUND, call=""), "call"),
        (replace(SOUND, call="now we all walk forward together"), "call"),
        (replace(SOUND, says="three steps"), "not a sentence"),
        (replace(SOUND, name="Kick-Ball-Change"), "plain lower-case"),
        (replace(SOUND, examples=()), "no example"),
        (replace(SOUND, ways=(WALK, replace(WALK, says="again"))), "earlier one"),
        (replace(SOUND, side="turn"), "no way turns"),
        (replace(SOUND, side="travel"), "does not travel"),
        (replace(SOUND, examples=(Example("1-3 Stride", WALK.steps[:3]),)), "none of its ways"),
        (
            replace(
                SOUND,
                examples=(
                    Example("1-4 Stride", (replace(WALK.steps[0], turn=Fraction(1, 4)), *WALK.steps[1:])),
                ),
            ),
            "none of its ways",
        ),
    ],
)
def test_faulty_figure_is_told(wrong: Figure, says: str) -> None:
    """One fault gives one sentence that names it."""
    (fault,) = figure_faults(wrong)
    assert says in fault


@pytest.mark.parametrize(
    ("wrong", "says"),
    [
        (way("1 step R forward", "2 step R forward"), "cannot be danced"),
        (way("1 step L forward", "2 step R forward"), "cannot be danced"),
        (way("1 step R forward", "3 step L forward", "2 step R back"), "not in order"),
        (way("2 step R forward", "3 step L forward"), "begins on beat 2"),
        (way("1 step R forward", "2 step L forward", counts=1), "has a step on beat 2"),
        (way("1 step R forward", counts=17), "lasts 17"),
        (way("1 step R forward", "2 hold", turn_on=((2,),)), "nothing moves"),
        (way("1 step R forward", turn_on=((1,), (1,))), "named twice"),
        (replace(way("1 step R forward"), says=""), "how it differs"),
    ],
)
def test_faulty_way_is_told(wrong: Way, says: str) -> None:
    """A way that the body, the beat or the turn refuses is told."""
    assert any(says in fault for fault in way_faults(wrong))


def test_name_of_two_figures_is_told() -> None:
    """Several meanings of a name are ways of one entry, never two entries."""
    faults = audit([SOUND, replace(SOUND, name="pace")], [])
    assert faults == ["2 figures are named 'long walk'; one entry lists all its meanings as ways."]


def test_term_without_a_sentence_is_told() -> None:
    """Terms are held to the same wording as figures."""
    (fault,) = audit([], [Term("wall", "a side of the room", "common practice")])
    assert "Term 'wall'" in fault


def test_example_may_be_led_by_the_other_foot_and_turned_where_the_way_allows() -> None:
    """The mirrored way with a quarter turn on the third step is still the way."""
    turning = replace(WALK, turn_on=((Fraction(3),),))
    mirrored = tuple(map(mirror_step, WALK.steps))
    reads = (*mirrored[:2], replace(mirrored[2], turn=Fraction(-1, 4)), mirrored[3])
    assert [] == list(figure_faults(replace(SOUND, ways=(turning,), examples=(Example("x", reads),))))


def _ends_on(steps: tuple[Step, ...], weight: Foot) -> Foot:
    for step in steps:
        weight = weight_told(weight, step)
    return weight


@given(st.sampled_from([w for f in figures() for w in f.ways]))
def test_mirrored_way_turns_travels_and_ends_the_other_way(way: Way) -> None:
    """Led by the left foot a way is the same thing in a looking glass, and mirrored twice it is itself."""
    mirrored = replace(way, steps=tuple(map(mirror_step, way.steps)))
    assert -way.turn == mirrored.turn
    assert (way.travels.other if way.travels else None) is mirrored.travels
    assert _ends_on(way.steps, Foot.LEFT).other is _ends_on(mirrored.steps, Foot.RIGHT)
    assert way.steps == tuple(map(mirror_step, mirrored.steps))


@pytest.mark.parametrize(
    ("lines", "side"),
    [
        (("1 step R side", "2 step L behind", "3 step R side", "4 step L across"), Foot.RIGHT),
        (("1 step R across", "2 step L side", "3 step R behind"), Foot.LEFT),
        (("1 step R side", "& step L beside", "2 step R side"), Foot.RIGHT),
        (("1 step R side toward L", "2 step L side"), Foot.LEFT),
        (("1 step R side", "2 step L side"), None),
        (("1 step R forward", "2 step L forward"), None),
        (("1 point R side", "2 step R beside"), None),
    ],
)
def test_travel_of_a_way(lines: tuple[str, ...], side: Foot | None) -> None:
    """Side steps go to the foot's own side, crosses to the other's; gestures go nowhere."""
    assert side is way(*lines).travels
