"""Traditional dances: their net turns, their walls, their drift against the phrase.

Only facts that are published of them are used.  Where a dance is given here by its turns
alone, its footwork is no matter to what is checked.
"""

from fractions import Fraction
from math import lcm

import pytest

from wallwise.dance.clock import FRONT, facing_name, turn_name
from wallwise.dance.model import Dance, Foot, Kind, Part, Section, Step
from wallwise.dance.walls import back_at_front, unroll, wall_count
from wallwise.floor.trace import simulate
from wallwise.glossary.notation import parse_steps

VINES = """
1 step R side
2 step L behind
3 step R side
4 touch L beside
5 step L side
6 step R behind
7 step L side
8 touch R beside
9 step R back
10 step L back
11 step R back
12 touch L beside
"""

# As every source but one has it: The Garden Kitchen leaflet, with its count 13 put right.
ELECTRIC_SLIDE = (
    VINES
    + """
13 step L forward
14 touch R behind
15 step R back
16 touch L beside
17 step L forward
18 brush R left 1/4
"""
)

# As the leaflet prints it: count 13 is "step back on right foot".
ELECTRIC_SLIDE_LEAFLET = ELECTRIC_SLIDE.replace("13 step L forward", "13 step R back")

# Lloyd Shaw Foundation, LS E-14 (cue sheet "Walk Right In"): the turns on the first and third
# of four travelling steps.
AMOS_MOSES = """
1 heel R forward
2 touch R beside
3 heel R forward
4 touch R beside
5 step R side
6 step L beside
7 step R side
8 touch L beside
9 step L side
10 step R beside
11 step L side
12 touch R beside
13 step R forward left 1/4
14 step L forward
15 step R forward right 1/2
16 step L forward
"""


def _dance(notation: str, *, counts: int) -> Dance:
    steps = parse_steps(line for line in notation.splitlines() if line)
    return Dance("Traditional", (Part("main", (Section(1, Fraction(1), Fraction(counts), steps),)),))


def _turning(*turns: str, counts: int) -> Dance:
    steps = tuple(
        Step(Fraction(count), Foot.BOTH, Kind.JUMP, turn=Fraction(turn))
        for count, turn in enumerate(turns, 1)
    )
    return Dance("Traditional", (Part("main", (Section(1, Fraction(1), Fraction(counts), steps),)),))


@pytest.mark.parametrize(
    ("dance", "net", "source"),
    [
        (_dance(ELECTRIC_SLIDE, counts=18), "1/4 left", "The Garden Kitchen, Electric Slide"),
        (_dance(AMOS_MOSES, counts=16), "1/4 right", "Lloyd Shaw Foundation, LS E-14"),
        (_turning("1/4", counts=16), "1/4 right", "Lloyd Shaw Foundation, LS E-16, Alley Cat"),
        (_turning("1/4", counts=16), "1/4 right", "M. Landry, folk-dance notes, Pata Pata"),
        (_turning("-1/4", counts=32), "1/4 left", "womenslifestyle.com, 2015, Cupid Shuffle"),
        (_turning("-1/2", "-1/2", "-1/4", counts=16), "1 1/4 left", "Udall Elementary PE, Country Kick"),
        (_turning("1/2", "-1/2", "-1/4", counts=40), "1/4 left", "common practice, no source: Tush Push"),
    ],
    ids=[
        "electric slide",
        "amos moses",
        "alley cat",
        "pata pata",
        "cupid shuffle",
        "country kick",
        "tush push",
    ],
)
def test_net_turn_makes_four_walls(dance: Dance, net: str, source: str) -> None:
    """A dance whose published net turn is a quarter faces four walls and then the front."""
    assert net == turn_name(dance.parts[0].net_turn), source
    assert 4 == wall_count(dance) == back_at_front(dance)
    assert FRONT == unroll(dance)[-1].ends_facing


def test_alley_cat_eight_times_through() -> None:
    """Eight repetitions of a quarter right, as the cue sheet has it, end on the starting wall."""
    walls = unroll(_turning("1/4", counts=16), walls=8)

    assert FRONT == walls[-1].ends_facing
    assert 8 == len(walls)


def test_cupid_shuffle_goes_round_to_the_left() -> None:
    """The walls of a quarter left come as front, 9:00, 6:00, 3:00, front (a PE slide deck: N W S E N)."""
    walls = unroll(_turning("-1/4", counts=32), walls=5)

    assert ["12:00", "9:00", "6:00", "3:00", "12:00"] == [facing_name(w.starts_facing) for w in walls]


def test_country_kick_half_pivots_cancel() -> None:
    """Two half pivots and a quarter left end alike with a quarter left: 180 + 180 + 90 degrees."""
    assert "9:00" == facing_name(unroll(_turning("-1/2", "-1/2", "-1/4", counts=16))[0].ends_facing)


@pytest.mark.parametrize("notation", [ELECTRIC_SLIDE, AMOS_MOSES], ids=["electric slide", "amos moses"])
def test_danced_without_refusal_on_every_wall(notation: str) -> None:
    """The published footwork can be danced, and ends on the left with the right free to begin again."""
    trace = simulate(_dance(notation, counts=18), walls=4)

    assert () == trace.refused
    assert Foot.RIGHT is trace.end.free


def test_leaflet_is_refused_at_count_13() -> None:
    """The leaflet's count 13 steps on the right foot that took the weight on count 11.

    The touch of the right foot on count 14 is refused for the same reason, nothing after it.
    """
    refused = simulate(_dance(ELECTRIC_SLIDE_LEAFLET, counts=18)).refused

    assert [13, 14] == [row.count for row in refused]
    assert refused[0].refused is not None
    assert "the right foot bears the weight: it is not free to step" == refused[0].refused.says


@pytest.mark.parametrize(
    ("counts", "beats", "repetitions", "phrases"),
    [
        (18, 288, 16, 9),
        (20, 160, 8, 5),
        (22, 352, 16, 11),  # India Currents, "The wedding boogie", of the 22-count Electric
        (24, 96, 4, 3),
        (28, 224, 8, 7),
        (36, 288, 8, 9),
        (40, 160, 4, 5),
        (48, 96, 2, 3),
    ],
)
def test_phrase_drift(counts: int, beats: int, repetitions: int, phrases: int) -> None:
    """Dance and 32-count phrase begin together again after their least common multiple of beats.

    Arithmetic, but for the published 352 of the 22-count dance.
    """
    walls = unroll(_turning("1/4", counts=counts), walls=32)
    together = next(wall for wall in walls[1:] if wall.begins_after % 32 == 0)

    assert beats == together.begins_after == lcm(counts, 32)
    assert repetitions == together.number - 1
    assert phrases == together.begins_after / 32


@pytest.mark.parametrize(
    ("degrees", "walls"), [(0, 1), (180, 2), (90, 4), (270, 4), (45, 8), (135, 8), (225, 8), (315, 8)]
)
def test_wall_law(degrees: int, walls: int) -> None:
    """A net turn comes back to the front after 360 / gcd(360, turn) repetitions.

    Wikipedia, Line dance, for one, two and four walls; the eighths are arithmetic.
    """
    dance = _turning(f"{degrees}/360", counts=32)

    assert walls == wall_count(dance) == back_at_front(dance) == len(unroll(dance))
