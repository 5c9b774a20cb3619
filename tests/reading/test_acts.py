"""What each clause of a line tells: a verb, a foot, a place, a turn, a figure; and no more than it tells.

What the words mean is common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

import pytest

from wallwise.glossary.lexicon import lexicon
from wallwise.reading import read
from wallwise.reading.clauses import Act, read_acts
from wallwise.reading.tokens import TURN, tokenize


def told(text: str) -> list[str]:
    """What each act tells, in a few words: ``step R forward turn 1/4 right``."""
    return [" ".join(_words(act)) for act in read_acts(tokenize(text, lexicon()))]


def _words(act: Act) -> Iterator[str]:
    yield from (word for word in (act.verb, *(f"<{figure.name}>" for figure in act.figures[:1])) if word)
    yield from ("both" for _ in range(act.both))
    yield from (word for word in (act.foot, "".join(act.feet), act.part, act.place) if word)
    yield from (f"{how} {foot}" for how, foot in (("of", act.against), ("to", act.toward)) if foot)
    yield from _turn(act)
    yield from _beside(act)


def _beside(act: Act) -> Iterator[str]:
    if act.weight:
        yield f"weight {act.weight}"
    if act.faces is not None:
        yield f"facing {act.faces * 12 // TURN or 12}:00"
    if act.times > 1:
        yield f"x{act.times}"
    yield from (f"?{token.text}" for token in act.unknown)


def _turn(act: Act) -> Iterator[str]:
    if act.turn is None:
        return
    yield act.turn.own or "turn"
    if act.turn.eighths is not None:
        yield str(act.turn.eighths / 8)
    if act.turn.way:
        yield "right" if act.turn.way > 0 else "left"


FEET = {
    "Step R forward": ["step R forward"],
    "R step forward": ["step R forward"],
    "RF step fwd": ["step R forward"],
    "Step forward on the right foot": ["step R forward"],
    "Step forward on R": ["step R forward"],
    "Forward R": ["R forward"],
    "Step forward right and step forward left": ["step R forward", "step L forward"],
    "Rock back on RF, recover LF": ["rock R back", "recover L"],
    "Walk R, L, R": ["step RLR forward"],
    "Walk RL": ["step RL forward"],
    "Shuffle forward R, L, R": ["<shuffle> RLR forward"],
    "Shuffle RLR": ["<shuffle> RLR"],
    "Shuffle forward, right, left, right": ["<shuffle> RLR forward"],
    "Bump hips R, L, R, L": ["bump both RLRL"],
    "Swivel both heels right": ["swivel both R"],
}
BALLS = {
    "RF step next to LF on the ball, LF step in place": ["step R ball beside of L", "step L place"],
    "Rock L ball to left, recover R": ["rock L ball side to L", "recover R"],
    "Step R ball beside L": ["step R ball beside of L"],
    "Kick R fwd, R ball tog, L in place": ["kick R forward", "ball R beside", "L place"],
    "L kick forward, L ball closes, R forward": ["kick L forward", "ball L beside", "R forward"],
    "Step R back on the ball of the foot, step L": ["step R ball back", "step L"],
    "Step R to side without the 1/4 turn, touch L": ["step R side", "touch L"],
}
PLACES = {
    "Cross R over L": ["cross R across of L"],
    "X R over L": ["cross R across of L"],
    "Cross R over L, step L back": ["cross R across of L", "step L back"],
    "Step L behind R": ["step L behind of R"],
    "Step L beside R": ["step L beside of R"],
    "Touch R toe beside L": ["touch R toe beside of L"],
    "Tap the right heel in front": ["touch R heel forward"],
    "Step R to right side": ["step R side to R"],
    "Step R to side": ["step R side"],
    "Drag L towards R": ["drag L of R"],
    "Touch L to R": ["touch L beside of R"],
    "L behind R side L cross": ["L behind", "R side", "cross L across"],
    "R beside L, L in place": ["R beside of L", "L place"],
    "R out to forward diagonal": ["R forward"],
    "RF step to r. side": ["step R side to R"],
    "Step R to right side then step L together": ["step R side to R", "step L beside"],
}
AMPERSANDS = {
    "Step R & touch L": ["step R", "and", "touch L"],
    "Rock R forward & recover L": ["rock R forward", "and", "recover L"],
    "Rock R forward and recover L": ["rock R forward", "recover L"],
    "Step R forward, & step L beside": ["step R forward", "and", "step L beside"],
}
TURNS = {
    "Turn 1/4 left stepping L forward": ["step L forward turn 1/4 left"],
    "1/4 turn right stepping R forward": ["step R forward turn 1/4 right"],
    "Step R forward turning 1/4 right": ["step R forward turn 1/4 right"],
    "Step R to side making 1/4 turn left": ["step R side turn 1/4 left"],
    "Turning 90 degrees left step on L": ["step L turn 1/4 left"],
    "Make a quarter turn left, step L forward": ["turn turn 1/4 left", "step L forward"],
    "LF 1/4 turn left, cross behind RF": ["turn L turn 1/4 left", "cross behind of R"],
    "Pivot 1/2 turn left": ["turn pivot 1/2 left"],
    "1/2 pivot L": ["turn pivot 1/2 left"],
    "Step R forward, pivot 1/2 left": ["step R forward", "turn pivot 1/2 left"],
    "Unwind 1/2 left": ["turn unwind 1/2 left"],
    "Turn left": ["turn turn left"],
    "Full turn left": ["turn turn 1 left"],
    "Full turn right stepping R, L": ["step RL turn 1 right"],
    "Jazz box 1/4 turn right": ["<jazz box> turn 1/4 right"],
    "Monterey 1/2 turn right": ["<monterey> turn 1/2 right"],
}
PARTICIPLES = {
    "Step L to left side swaying hips left": ["sway L side to L"],
    "Step R forward sweeping L from back to front": ["step R forward"],
    "Touching R toe beside L": ["touch R toe beside of L"],
}
BRACKETS = {
    "Step R forward (3:00)": ["step R forward facing 3:00"],
    "Step L beside R (weight on L)": ["step L beside of R weight L"],
    "Stomp R (no weight)": ["stomp R weight none"],
    "Heel switches x2": ["<heel switch> x2"],
    "Kick ball change (x2)": ["<kick ball change> x2"],
    "Kick ball change twice": ["<kick ball change> x2"],
    "(step R, pivot 1/4 left) x2": ["step R", "turn pivot 1/4 left"] * 2,
    "Step R back, weight back on L": ["step R back", "recover L"],
    "Step L forward [9]": ["step L forward facing 9:00"],
    "Step L forward (now on 9)": ["step L forward facing 9:00"],
    "Step L forward to face the back wall": ["step L forward facing 6:00"],
}
DOUBTS = {
    "Flurb R forward": ["R forward ?flurb"],
    "": [],
}
CLAUSES = FEET | BALLS | PLACES | AMPERSANDS | TURNS | PARTICIPLES | BRACKETS | DOUBTS


@pytest.mark.parametrize("text", CLAUSES)
def test_a_clause_tells_what_it_says(text: str) -> None:
    """Verb, foot, place, other foot, turn, weight, facing and repeats, as far as they are told."""
    assert CLAUSES[text] == told(text)


@pytest.mark.parametrize("text", CLAUSES)
def test_an_act_stands_where_its_words_stand(text: str) -> None:
    """Every act has a place in the line."""
    for act in read_acts(tokenize(text, lexicon())):
        assert 0 <= act.start < act.end <= len(text)


def steps_of(body: str) -> list[tuple[str, str, str]]:
    """Beat, foot and turn of every weight change of the first section, sixteenths of a turn and all."""
    dance = read(f"Tin Lantern\n\nSection 1\n{body}\n").dance
    return [(str(s.at), s.foot.value, str(s.turn)) for s in dance.parts[0].steps if s.weight]


WALKS = [("1", "R", "0"), ("2", "L", "0"), ("3", "R", "0"), ("4", "L", "0")]
SAME_WALKS = {
    "words": "1-4 Walk forward right, left, right, left",
    "letters": "1-4 Walk R, L, R, L",
    "a column for the feet": "1\tR\tstep forward\n2\tL\tstep forward\n3\tR\tstep forward\n4\tL\tstep forward",
    "a table": "".join(f"| {n} | {foot} | step forward |\n" for n, foot in enumerate("RLRL", 1)),
    "brackets": "1-4 Step forward (R), step forward (L), step forward (R), step forward (L)",
    "a name before its steps": "1-4 Walks: step R forward, step L forward, step R forward, step L forward",
    "a bullet each": "• 1-2 Walk R, L\n• 3-4 Walk R, L",
    "a line broken in the middle": "1-4 Walk forward on the right foot, then left,\nright, left",
}


@pytest.mark.parametrize("case", SAME_WALKS)
def test_four_walks_are_four_walks(case: str) -> None:
    """However they are set out, four walks are danced on four beats, right foot first."""
    assert steps_of(SAME_WALKS[case]) == WALKS


TURNED = [("1", "R", "0"), ("2", "L", "-1/2"), ("3", "R", "0"), ("4", "L", "-1/4")]
SAME_TURNS = {
    "one after the other": "1-2 Step R forward, pivot 1/2 left\n3-4 Step R forward, pivot 1/4 left",
    "fractions first": "1-2 Step R fwd, 1/2 pivot L\n3-4 Step R fwd, 1/4 pivot L",
    "spelt out": "1-2 Step fwd on right, pivot half turn left\n3-4 Step fwd on right, pivot a quarter left",
    "degrees": "1-2 Step R forward, pivot 180 degrees left\n3-4 Step R forward, pivot 90 degrees left",
    "with facings": "1-2 Step R forward, pivot 1/2 L (6:00)\n3-4 Step R forward, pivot 1/4 L (3:00)",
    "with weight": "1-2 Step R fwd, 1/2 pivot L (weight L)\n3-4 Step R fwd, 1/4 pivot L taking weight L",
    "no comma": "1-2 Step R forward pivot 1/2 left\n3-4 Step R forward pivot 1/4 left",
    "and": "1-2 Step R forward and pivot 1/2 left\n3-4 Step R forward and pivot 1/4 left",
}


@pytest.mark.parametrize("case", SAME_TURNS)
def test_two_pivots_are_two_pivots(case: str) -> None:
    """However they are told, a half and a quarter pivot turn left and give the weight to the left foot."""
    assert steps_of(SAME_TURNS[case]) == TURNED


def test_turns_are_taken_before_during_or_after_the_step_alike() -> None:
    """A quarter told before, with or after a step leaves foot and facing the same."""
    for words in (
        "1/4 turn right stepping R forward",
        "step R forward turning 1/4 right",
        "turn 1/4 right, step R fwd",
    ):
        steps = steps_of(f"1 {words}\n2 Step L beside R\n3-4 Walk R, L")
        assert [("R", Fraction(1, 4)), ("L", Fraction(0))] == [(f, Fraction(t)) for _, f, t in steps[:2]]


ONE_STEP = {
    "R fwd 45": ["R forward"],
    "Step L forward 45 degrees": ["step L forward"],
    "Step R at 45 degrees to the right": ["step R side to R"],
    "RF step diagonally right forward": ["step R forward to R"],
    "recover crossing R over L": ["recover R across of L"],
    "recover stepping L forward": ["recover L forward"],
    "cross/step R over L": ["cross R across of L"],
    "R in behind L": ["R behind of L"],
}


@pytest.mark.parametrize("text", ONE_STEP)
def test_what_says_more_of_a_step_is_no_step_of_its_own(text: str) -> None:
    """A diagonal told in degrees, where a recover goes, or two words for one step."""
    assert ONE_STEP[text] == told(text)


ONE_FIGURE = {
    "full spiral turn R letting L hook across R shin": 1,
    "spiral turn right on L with R hooked in front": 1,
    "sailor step turning 1/4 left, finish with R forward": 1,
    "spiral turn right on L, hook R in front": 2,
    "sailor step turning 1/4 left, step R forward": 2,
}


@pytest.mark.parametrize("text", ONE_FIGURE)
def test_what_goes_along_with_a_figure_is_no_step_more(text: str) -> None:
    """What the free foot does meanwhile, and where the last step of the figure ends; but a step is one."""
    acts = read_acts(tokenize(text, lexicon()))
    assert ONE_FIGURE[text] == sum(not act.empty for act in acts)


def test_a_turn_shared_out_is_told_once() -> None:
    """A quarter on each of four steps is how the full turn is danced."""
    assert ["<walk around> RLRL turn 1 left"] == told(
        "walk round a full turn left, a quarter on each step: R, L, R, L"
    )


def test_a_heel_with_weight_on_it_is_a_step() -> None:
    """And the toes that go round meanwhile are no step more."""
    assert ["R heel forward weight take"] == told(
        "right heel forward, weight on it, grind toes left to right"
    )
