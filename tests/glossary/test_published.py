"""The glossary's figures against what published glossaries say of them.

Weight changes, the foot left free and the net turn were counted by hand from the steps that
each source gives.  Names in quotes are the source's own heading.
"""

from fractions import Fraction
from typing import NamedTuple

import pytest

from wallwise.dance.model import Foot
from wallwise.dance.weight import weight_after
from wallwise.glossary.entry import Way
from wallwise.glossary.load import figures
from wallwise.glossary.notation import write_steps

L, R = Foot.LEFT, Foot.RIGHT


class Row(NamedTuple):
    """One figure led by the right foot: what the source says of one of its ways."""

    figure: str
    way: str
    counts: int
    changes: int
    turn: Fraction
    free: Foot
    source: str


NONE, FULL, HALF = Fraction(0), Fraction(1), Fraction(1, 2)
COMMON = "common practice, no source"

ROWS = [
    Row("vine", "ends with a touch", 4, 3, NONE, L, 'Wikipedia, "Grapevine (dance move)"'),
    Row("weave", "side, behind, side, across", 4, 4, NONE, R, "Walker, The Modern Dances, 1914"),
    Row(
        "weave", "across, side, behind, side", 4, 4, NONE, R, 'Wikipedia, "Grapevine (dance move)", mirrored'
    ),
    Row("rolling vine", "ends with a touch", 4, 3, FULL, L, 'glossaria.net, "3-step turn"'),
    Row("chasse", "side", 2, 3, NONE, L, 'Wikipedia, "Chassé"'),
    Row("shuffle", "forward", 2, 3, NONE, L, COMMON),
    Row("triple step", "in place", 2, 3, NONE, L, "Descriptionary, 4th ed."),
    Row("ball change", "beside", 1, 2, NONE, R, 'Wikipedia, "Ball change"'),
    Row("kick ball change", "in place", 2, 2, NONE, R, 'Wikipedia, "Ball change"'),
    Row("heel ball change", "in place", 2, 2, NONE, R, 'Wikipedia, "Ball change"'),
    Row("coaster", "back", 2, 3, NONE, L, 'Wikipedia, "Coaster step"'),
    Row("coaster", "forward", 2, 3, NONE, L, 'Wikipedia, "Coaster step"'),
    Row("sailor", "ends to the side", 2, 3, NONE, L, 'glossaria.net, "Sailor step", mirrored'),
    Row("behind side cross", "quick", 2, 3, NONE, L, COMMON),
    Row("jazz box", "closes beside", 4, 4, NONE, R, "Leander ISD vocabulary"),
    Row("jazz box", "ends forward", 4, 4, NONE, R, "Leander ISD vocabulary"),
    Row("pivot", "half turn away from the leading foot", 2, 2, -HALF, R, COMMON),
    Row("monterey", "half turn", 4, 2, HALF, R, COMMON),
    Row("mambo", "forward", 2, 3, NONE, L, COMMON),
    Row("mambo", "forward, with a hold", 4, 3, NONE, L, COMMON),
    Row("rock", "forward", 2, 2, NONE, R, COMMON),
    Row("charleston", "touch, back, touch, step", 4, 2, NONE, R, COMMON),
    Row("charleston", "step, kick, back, touch", 4, 2, NONE, R, COMMON),
    Row("cha cha basic", "forward and back", 8, 10, NONE, R, COMMON),
    Row("lock step", "forward, a count each", 3, 3, NONE, L, 'Wikipedia, "Glossary of dance moves"'),
    Row("toe fan", "two counts", 2, 0, NONE, R, COMMON),
    Row("heel fan", "two counts", 2, 0, NONE, R, COMMON),
    Row("waltz box", "six counts", 6, 6, NONE, R, 'Wikipedia, "Glossary of dance moves"'),
    Row("waltz balance", "side, behind, recover", 3, 3, NONE, L, COMMON),
    Row("waltz balance", "step, close without weight, hold", 3, 1, NONE, L, COMMON),
    Row("hesitation", "forward", 3, 1, NONE, L, COMMON),
    Row("nightclub basic", "rock behind", 2, 3, NONE, L, 'Wikipedia, "Nightclub two step"'),
    Row("nightclub basic", "to both sides", 4, 6, NONE, R, 'Wikipedia, "Nightclub two step"'),
    Row("nightclub basic", "quick quick slow", 2, 3, NONE, L, 'Wikipedia, "Nightclub two step"'),
    Row("box step", "eight counts", 8, 6, NONE, R, COMMON),
    # One full left box is four quarter turns over twelve counts (CCCA; Wilkinson, Dancing Without
    # an Instructor); led by the right foot it is the right box.
    Row("waltz turning box", "twelve counts, forward first", 12, 12, FULL, R, 'CCCA, "Turning Boxes"'),
    Row("waltz turning box", "three counts, forward", 3, 3, Fraction(1, 4), L, 'CCCA, "Turning Boxes"'),
]


def _way(figure: str, says: str) -> Way:
    (found,) = [w for f in figures() if f.name == figure for w in f.ways if w.says == says]
    return found


def _danced(way: Way) -> Foot:
    weight: Foot = L
    for step in way.steps:
        after = weight_after(weight, step)
        assert after is not None, step
        weight = after
    return weight


@pytest.mark.parametrize("row", ROWS, ids=lambda row: f"{row.figure}, {row.way}")
def test_figure_is_the_published_one(row: Row) -> None:
    """Counts, weight changes, net turn and the foot left free are those of the source."""
    way = _way(row.figure, row.way)
    assert row.counts == way.counts
    assert row.changes == sum(step.weight for step in way.steps)
    assert row.turn == way.turn
    assert row.free is _danced(way).other


STEPS = {
    ("coaster", "back"): ["1 step R back", "1& step L beside", "2 step R forward"],
    ("coaster", "forward"): ["1 step R forward", "1& step L beside", "2 step R back"],
    ("sailor", "ends to the side"): ["1 step R behind", "1& step L side", "2 step R side"],
    ("kick ball change", "in place"): ["1 kick R forward", "1& ball R beside", "2 step L place"],
    ("jazz box", "closes beside"): ["1 step R across", "2 step L back", "3 step R side", "4 step L beside"],
    ("lock step", "forward, a count each"): ["1 step R forward", "2 step L lock behind", "3 step R forward"],
    ("charleston", "touch, back, touch, step"): [
        "1 touch R forward",
        "2 step R back",
        "3 touch L back",
        "4 step L forward",
    ],
    ("charleston", "step, kick, back, touch"): [
        "1 step R forward",
        "2 kick L forward",
        "3 step L back",
        "4 touch R back",
    ],
    ("box step", "eight counts"): [
        "1 step R forward",
        "2 step L beside",
        "3 step R side",
        "4 touch L beside",
        "5 step L back",
        "6 step R beside",
        "7 step L side",
        "8 touch R beside",
    ],
    ("nightclub basic", "rock behind"): ["1 step R side", "2 rock L behind", "2& recover R"],
}
"""Places of the feet where the sources of `ROWS` give them."""


@pytest.mark.parametrize(("named", "lines"), STEPS.items(), ids=lambda value: ", ".join(value)[:40])
def test_feet_go_where_the_source_says(named: tuple[str, str], lines: list[str]) -> None:
    """Step by step the figure is the published one."""
    assert lines == write_steps(_way(*named).steps)


@pytest.mark.parametrize(
    ("figure", "first"),
    [
        ("coaster", "back"),
        ("vine", "three steps"),
        ("jazz box", "closes beside"),
        ("nightclub basic", "rock behind"),
        ("shuffle", "forward"),
        ("triple step", "in place"),
        ("chasse", "side"),
    ],
)
def test_commonest_meaning_comes_first(figure: str, first: str) -> None:
    """A name with several meanings lists the one most teachers mean first (common practice, no source)."""
    assert first == next(f for f in figures() if f.name == figure).ways[0].says


def test_parity_tells_which_figures_can_stand_for_each_other() -> None:
    """A kick ball change leaves the foot that began it free, a triple the other one.

    The parity law of a published partner-dance lesson: a swap of figures must keep the
    number of weight changes odd or even.
    """
    changes = {
        name: sum(s.weight for s in next(f for f in figures() if f.name == name).ways[0].steps)
        for name in ("kick ball change", "heel ball change", "rock", "pivot", "shuffle", "coaster", "sailor")
    }
    even = {name for name, n in changes.items() if n % 2 == 0}
    assert {"kick ball change", "heel ball change", "rock", "pivot"} == even
