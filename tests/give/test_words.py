"""Every event has its sentence, said as a teacher would say it."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from itertools import product

import pytest

from wallwise.dance.mirror import mirror_step
from wallwise.dance.model import Dance, Foot, Kind, Part, Place, Restart, Step
from wallwise.give.words import action, front_words
from wallwise.glossary.notation import parse_steps

HALF = parse_steps(("1 step R forward", "2 turn L left 1/4", "3 step R forward", "4 turn L left 1/4"))


@pytest.mark.parametrize(
    ("said", "notation"),
    [
        ("Step right foot to the side", "1 step R side"),
        ("Step left foot behind the right", "1 step L behind"),
        ("Step right foot to the left", "1 step R side toward L"),
        ("Long step left foot to the side", "1 step L side long"),
        ("Rock right foot back", "1 rock R back"),
        ("Recover onto left foot", "1 recover L"),
        ("Step on the ball of the right foot beside the left", "1 ball R beside"),
        ("Turn 1/2 left, weight on left", "1 turn L left 1/2"),
        ("Turn 1/4 right: step right foot forward", "1 step R forward right 1/4"),
        ("Spin full turn left on right foot", "1 spin R left 1"),
        ("Stomp left foot without weight beside the right", "1 stomp up L beside"),
        ("Lower right foot, taking the weight", "1 drop R forward"),
        ("Touch right heel forward", "1 heel R forward"),
        ("Sway to the left", "1 sway L"),
        ("Swivel heels to the right, weight ends on left", "1 swivel both toward R ends L"),
        ("Bounce both heels", "1 bounce both"),
        ("Step left foot locked behind the right", "1 step L lock behind"),
        ("Hold", "1 hold"),
    ],
)
def test_a_step_in_words(said: str, notation: str) -> None:
    """The sentence is the one a teacher would say."""
    assert said == action(parse_steps([notation])[0])


def test_what_goes_with_a_step_is_said_with_it() -> None:
    """A sweep or a clap without a count of its own follows the step."""
    step = Step(Fraction(1), Foot.RIGHT, Kind.STEP, Place.FORWARD, also=("sweep L", "clap"))
    assert action(step) == "Step right foot forward, sweep left, clap"


def test_every_time_at_the_front_is_told(ladder: Dance) -> None:
    """All walls after which the front is faced, up to the last that is shown."""
    quarter = replace(ladder, restarts=(), tags=())
    assert front_words(quarter) == "The room is back at the front after wall 4."
    # Three quarters to the right a wall, but wall 5 is cut after its half turn: 9, 6, 3, 12, 6, 3, 12.
    cut = replace(quarter, restarts=(Restart(5, Fraction(8)),))
    assert front_words(cut) == "The room is back at the front after walls 4 and 7."
    # A half turn a wall, but wall 3 is cut after a quarter: 6, 12, 9, 3, 9 and never the front again.
    half = Part("main", (replace(ladder.parts[0].sections[0], steps=HALF),))
    once = replace(quarter, parts=(half,), restarts=(Restart(3, Fraction(2)),))
    assert front_words(once) == "The room is back at the front after wall 2, and not again."


@pytest.mark.parametrize("kind", Kind)
def test_every_kind_has_words(kind: Kind) -> None:
    """No kind, foot, place and turn together leave a gap or a double space in the sentence."""
    for foot, place, turn in product(Foot, Place, (Fraction(0), Fraction(-1, 4), Fraction(1))):
        said = action(Step(Fraction(1), foot, kind, place, turn))
        assert said == " ".join(said.split())
        assert "{" not in said
        assert said[0].isupper()


@pytest.mark.parametrize("kind", Kind)
def test_mirrored_steps_say_the_other_side(kind: Kind) -> None:
    """The words for the mirrored step are the same words with left and right exchanged."""
    swap = {"left": "right", "right": "left"}
    step = Step(Fraction(1), Foot.RIGHT, kind, Place.FORWARD_DIAGONAL, Fraction(1, 4))
    said = action(step).replace(",", " ,").replace(":", " :")
    mirrored = action(mirror_step(step)).replace(",", " ,").replace(":", " :")
    assert [swap.get(word, word) for word in said.split()] == mirrored.split()
