"""Single lines as choreographers write them, and the feet, turns and counts they are danced on.

Worked out by hand from the trade's meaning of the words: common practice, no source.
"""

from __future__ import annotations

import pytest

from wallwise.checks.catalogue import findings_of
from wallwise.dance.model import Foot, Step
from wallwise.reading import Reading, read


def reading(line: str) -> Reading:
    """The line as the whole of a dance; of a line that begins with ``L>`` the left foot is free first."""
    free_left = line.startswith("L>")
    bears = "right" if free_left else "left"
    body = line[2 * free_left :]
    head = f"Tin Lantern\nSequence: A, B, A, B\nStart with weight on {bears}"
    return read(f"{head}\n\nPART A\n{body}\n\nPART B\n1-2 Walk R, walk L\n")


def danced(line: str) -> str:
    """Beat and foot of every move: ``1R`` a step, ``1R.`` a gesture, ``>`` and ``<`` turns right and left."""
    return " ".join(_shown(step) for step in reading(line).dance.parts[0].steps)


def _shown(step: Step) -> str:
    foot = {Foot.NONE: "-", Foot.BOTH: "B"}.get(step.foot, step.foot.value)
    turn = f"{'>' if step.turn > 0 else '<'}{abs(step.turn)}" if step.turn else ""
    gesture = "" if step.weight or step.foot in (Foot.NONE, Foot.BOTH) else "."
    return f"{float(step.at):g}{foot}{gesture}{turn}"


LINES = {
    "1-4 Step R forward, pivot 1/4 left x2": "1R 2L<1/4 3R 4L<1/4",
    "1-4 Step R forward, pivot 1/4 left, twice": "1R 2L<1/4 3R 4L<1/4",
    "1-4 Step R forward, pivot 1/4 left, and again": "1R 2L<1/4 3R 4L<1/4",
    "1-4 Step R forward pivot 1/4 left x2": "1R 2L<1/4 3R 4L<1/4",
    "1-4 Point R to side, touch R beside x2": "1R. 2R. 3R. 4R.",
    "1-4 Walk R, walk L x2": "1R 2L 3R 4L",
    "1-2 Full turn right stepping R, L": "1R>1/2 2L>1/2",
    "1-3 full turn R stepping R, L, R": "1R>1/3 2L>1/3 3R>1/3",
    "1-3 rolling full turn: R, L, R": "1R 2L>1/2 3R>1/2",
    "1&2 triple half turn to the right, stepping R L R": "1R>1/4 1.5L 2R>1/4",
    "1&2 Triple 1/2 turn right stepping R, L, R": "1R>1/4 1.5L 2R>1/4",
    "1-2 Full turn left stepping R, L": "1R<1/2 2L<1/2",
    "1-3 Full turn left, R, L, R": "1R<1/3 2L<1/3 3R<1/3",
    "1-2 cross R over L, unwind 1/2 left": "1R 2L<1/2",
    "1-2 Step R forward, 1/2 turn L hitching R": "1R 2L<1/2",
    "1-2 Step R forward, 1/2 turn L hitching L": "1R 2L.<1/2",
    "1-2 Step R forward, turn 1/4 right hitching L knee": "1R 2L.>1/4",
    "1-2 Slide R to R, touch L beside R": "1R 2L.",
    "1-2 Slide right to right side, touch L": "1R 2L.",
    "1-2 Step R forward, spiral full turn left": "1R 2R.<1",
    "1-2 Step R forward, spiral full turn right": "1R 2R.>1",
    "1-2 cross rock R over L turning 1/4 left, recover L": "1R<1/4 2L",
    "1-4 Stomp R, clap clap": "1R 2- 3-",
    "1-2 touch R toe to L instep, touch R heel to L instep": "1R. 2R.",
    "1-2 touch R toe to L instep, touch R heel forward": "1R. 2R.",
    "1-4 R side tch L, L side tch R": "1R 2L. 3L 4R.",
    "1-4 bump hips RLRL": "1B 2B 3B 4B",
    "1-4 bumping hips R, L, R, L": "1B 2B 3B 4B",
    "1&2 bumping hips R, L, R": "1B 1.5B 2B",
    "1&2 bump hips RLR": "1B 1.5B 2B",
    "1&2 right, left, right": "1R 1.5L 2R",
    "1-3 right, left, right": "1R 2L 3R",
    "1&2 Shuffle forward right, left, right & clap": "1R 1.5L 2R",
    "1-2 step R & clap, step L & clap": "1R 2L",
    "1&2& Heel R, together, heel L, together": "1R. 1.5R 2L. 2.5L",
    "1-2 Step R forward & clap, touch L beside & clap": "1R 2L.",
    "1-2 Full turn R, stepping R, L": "1R>1/2 2L>1/2",
    "1&2 half turn triple step to the right R L R": "1R>1/4 1.5L 2R>1/4",
    "1-2 1/2 turn left, walk R, L": "1R<1/2 2L",
    "1-2 turn 1/4 left, stepping R, L": "1R<1/4 2L",
    "1-4 3/4 turn right walking R, L, R, L": "1R>3/16 2L>3/16 3R>3/16 4L>3/16",
    "1-2 Step R forward, pivot 1/2 L hitching R": "1R 2L<1/2",
    "1-2 Drag R to L, hold": "1R. 2-",
    "L>1-2 L side tch R": "1L 2R.",
    "1-4 R fwd touch L, L back touch R": "1R 2L. 3L 4R.",
    "1-4 R side step L behind, R side step L across": "1R 2L 3R 4L",
    "1-2 R behind sweep L": "1R 2L.",
    "1-2 R side rock turning 1/4 left, recover L": "1R<1/4 2L",
    "1-3 Stomp R, clap clap": "1R 2- 3-",
    "1&2 Stomp R, clap clap": "1R 1.5- 2-",
    "1-4 Shuffle forward R & shuffle L": "1R 1.5L 2R 3L 3.5R 4L",
    "1-4 Step R forward, pivot 1/4 left, once more": "1R 2L<1/4 3R 4L<1/4",
    "1-4 Step R forward, turn 1/4 left, x2": "1R 2L<1/4 3R 4L<1/4",
    "1-6 Step R fwd, pivot 1/4 left x2, rock R fwd, recover L": "1R 2L<1/4 3R 4L<1/4 5R 6L",
    "1-4 Step R to side, touch L beside, repeat on other foot": "1R 2L. 3L 4R.",
    "1-4 Step R to side, touch L beside R, repeat to left": "1R 2L. 3L 4R.",
    "1-4 Step R to side, touch L beside R, repeat": "1R 2L. 3L 4R.",
    "1-4 Step R forward, pivot 1/2 left, repeat": "1R 2L<1/2 3R 4L<1/2",
    "1-4 Kick ball change R x2": "1R. 1.5R 2L 3R. 3.5R 4L",
    "1-4 heel R, hook R x2": "1R. 2R. 3R. 4R.",
    "1-4 Walk R, L x2": "1R 2L 3R 4L",
    "1-4 hip bumps R x2, L x2": "1B 2B 3B 4B",
    "1-4 Step R forward and again step L forward, clap x2": "1R 2L 3- 4-",
    "1-2 Hook R to L shin, step R fwd": "1R. 2R",
    "1-2 Step R forward spiral full turn left, step L forward": "1R<1 2L",
    "1&2& bump hips RLRL": "1B 1.5B 2B 2.5B",
    "1-4 bump R, L, R, L": "1B 2B 3B 4B",
    "1-2 Bump hips right twice": "1B 2B",
    "1-4 Bump hips right twice, left twice": "1B 2B 3B 4B",
    "1-4 Step R forward bumping hips R, L, R, L": "1R 2B 3B 4B",
    "1-4 Step R to side bumping hips right, left, right, left (weight on L)": "1R 2B 3B 4B",
    "1&2 Step R forward bumping hips R L R": "1R 1.5B 2B",
    "right, left, right (1&2), left, right, left (3&4)": "1R 1.5L 2R 3L 3.5R 4L",
    "Walk R (1-2), walk L (3-4)": "1R 3L",
    "1&2&3&4 volta turn left": "1R<1/4 1.5L 2R<1/4 2.5L 3R<1/4 3.5L 4R<1/4",
    "1-2 Step R to side, bump hips L (weight on L)": "1R 2L",
    "1-2 Step R forward, pivot 1/4 left rolling hips": "1R 2L<1/4",
    "1-2 Step R forward, 1/4 turn left rolling hips anti-clockwise": "1R 2L<1/4",
    "1-2 Step R forward, turn 1/2 left swaying hips": "1R 2L<1/2",
    "1-2 Sway R, sway L taking weight": "1R 2L",
    "1-2 Step forward on the right foot, lock left behind right": "1R 2L",
    "1&2 Step R fwd, lock L behind R, step R fwd": "1R 1.5L 2R",
    "1&2 R lock step fwd": "1R 1.5L 2R",
    "1-4 R lock step forward, scuff L": "1R 2L 3R 4L.",
    "1-2 Step right foot to right side, close left next to right": "1R 2L",
    "1-2 RF step to the side, LF close beside RF": "1R 2L",
    "1-2 RF to R side, LF behind RF": "1R 2L",
    "1-4 Stp R to R, LF tog, stp R to R, LF touch": "1R 2L 3R 4L.",
    "1-4 Side R, together L, side R, touch L": "1R 2L 3R 4L.",
    "1&2 Chasse R": "1R 1.5L 2R",
    "1&2 Chassé to the right (R, L, R)": "1R 1.5L 2R",
    "1&2 side shuffle R": "1R 1.5L 2R",
    "1&2 Shuffle 1/2 turn left R-L-R": "1R<1/4 1.5L 2R<1/4",
    "1&2 Shuffle 1/2 turn over right shoulder stepping R L R": "1R>1/4 1.5L 2R>1/4",
    "1&2 Triple in place R-L-R": "1R 1.5L 2R",
    "1&2 Triple step on the spot R,L,R": "1R 1.5L 2R",
    "1&2 Cha cha in place R-L-R": "1R 1.5L 2R",
    "1&2 Coaster step R": "1R 1.5L 2R",
    "1&2 Right coaster cross": "1R 1.5L 2R",
    "1&2 Step R back, step L together, cross R over L": "1R 1.5L 2R",
    "1&2 Sailor 1/4 R": "1R>1/4 1.5L 2R",
    "1&2 Right sailor step turning 1/4 right": "1R>1/4 1.5L 2R",
    "1&2 R sailor 1/2 turn R": "1R>1/2 1.5L 2R",
    "1&2 Behind side cross R": "1R 1.5L 2R",
    "1&2 R behind, L side, R cross": "1R 1.5L 2R",
    "1&2 Step R behind L, step L to left side, cross R over L": "1R 1.5L 2R",
    "1-2 Rock R to side, recover onto L": "1R 2L",
    "1&2 Side rock & cross R": "1R 1.5L 2R",
    "1&2 Rock R to right side, recover L, cross R over L": "1R 1.5L 2R",
    "1-2 Cross rock R over L, replace weight to L": "1R 2L",
    "1-4 Rocking chair R": "1R 2L 3R 4L",
    "1&2& Rock fwd R, recover L, rock back R, recover L": "1R 1.5L 2R 2.5L",
    "1&2 Mambo fwd R": "1R 1.5L 2R",
    "1&2 R mambo 1/2 turn right": "1R 1.5L 2R>1/2",
    "1&2 Rock R fwd, recover L turning 1/2 right, step R fwd": "1R 1.5L>1/2 2R",
    "1&2 Mambo side R": "1R 1.5L 2R",
    "1-2 Step R fwd, pivot 1/2 left (weight on L)": "1R 2L<1/2",
    "1-2 Step R fwd, 1/2 pivot L": "1R 2L<1/2",
    "1-2 Step turn 1/2 left": "1R 2L<1/2",
    "1-4 Step R fwd, pivot 1/8 left, step R fwd, pivot 1/8 left": "1R 2L<1/8 3R 4L<1/8",
    "1-4 Paddle 1/4 left x2": "1R 2L<1/4 3R 4L<1/4",
    "1-4 Monterey 1/2 R": "1R. 2R>1/2 3L. 4L",
    "1-4 Monterey turn 1/4 right": "1R. 2R>1/4 3L. 4L",
    "1-2 Hinge 1/2 left stepping R, L": "1R<1/4 2L<1/4",
    "1-4 Jazz box R": "1R 2L 3R 4L",
    "1-4 Jazz box 1/4 turn right": "1R 2L 3R>1/4 4L",
    "1-4 Jazz box cross R": "1R 2L 3R 4L",
    "1-4 Cross R over L, step L back, 1/4 turn right stepping R to side, step L fwd": "1R 2L 3R>1/4 4L",
    "1-4 Grapevine right, touch L": "1R 2L 3R 4L.",
    "1-4 Rolling vine right, touch L": "1R>1/4 2L>1/2 3R>1/4 4L.",
    "1-2 Cross R over L, unwind 3/4 left (weight L)": "1R 2L<3/4",
    "1-2 Touch R toe behind L, unwind 1/2 turn right (weight on R)": "1R. 2R>1/2",
    "1-2 Touch R behind, unwind 1/2 R taking weight on R": "1R. 2R>1/2",
    "1-4 Toe strut R, toe strut L": "1R. 2R 3L. 4L",
    "1-4 R toe strut fwd, L toe strut fwd": "1R. 2R 3L. 4L",
    "1-2 Toe strut R with 1/4 right": "1R. 2R>1/4",
    "1-4 Heel grind R 1/4 right, coaster step R": "1R 2L>1/4 3R 3.5L 4R",
    "1-2 Heel grind R with 1/4 turn R, step L back": "1R>1/4 2L",
    "1&2 Kick ball change R": "1R. 1.5R 2L",
    "1&2 Kick ball point R": "1R. 1.5R 2L.",
    "1&2 Kick R fwd, step R beside L, point L to left side": "1R. 1.5R 2L.",
    "1&2 Kick ball touch R": "1R. 1.5R 2L.",
    "1&2 Kick ball cross R": "1R. 1.5R 2L",
    "1&2 Kick ball step R": "1R. 1.5R 2L",
    "1&2 Heel ball cross R": "1R. 1.5R 2L",
    "&1 Ball cross R": "0.5L 1R",
    "&1 Step R beside L, cross L over R": "0.5R 1L",
    "&1&2 Out R, out L, in R, in L": "0.5R 1L 1.5R 2L",
    "1-4 Out, out, in, in": "1R 2L 3R 4L",
    "1-4 V step R": "1R 2L 3R 4L",
    "&1&2 Out out in in": "0.5R 1L 1.5R 2L",
    "1-8 K step R": "1R 2L. 3L 4R. 5R 6L. 7L 8R.",
    "1-8 Rumba box fwd": "1R 2L 3R 4- 5L 6R 7L 8-",
    "1-4 Side R, together L, fwd R, hold": "1R 2L 3R 4-",
    "1&2& Heel switches R, L": "1R. 1.5R 2L. 2.5L",
    "1&2& Touch R heel fwd, step R beside L, touch L heel fwd, step L beside R": "1R. 1.5R 2L. 2.5L",
    "1&2 Point R to side, step R next to L, point L to side": "1R. 1.5R 2L.",
    "1-2 Stomp R, stomp L": "1R 2L",
    "1-2 Stomp R fwd, stomp up L": "1R 2L.",
    "1-4 Swivel heels R, toes R, heels R, clap": "1B 2B 3B 4-",
    "1 Step R to side dragging L": "1R",
    "1-2 Step R back sweeping L from front to back, step L behind R": "1R 2L",
    "1-2 Step R fwd sweeping L round from back to front, cross L over R": "1R 2L",
    "1-2 Cross R over L, ronde L from back to front": "1R 2L.",
    "1-2 Skate R, skate L": "1R 2L",
    "1-2 Sway R, sway L": "1R 2L",
    "1-2 Step R to R side swaying hips R, sway hips L": "1R 2L",
    "1-2 Hitch R knee, step R back": "1R. 2R",
    "1 Turn 1/4 left on ball of L hitching R": "1R.<1/4",
    "1-2 Point R across L, point R to right side": "1R. 2R.",
    "1-4 Step R fwd, touch L behind R, step L back, kick R fwd": "1R 2L. 3L 4R.",
    "1-2 Step R fwd, pivot 1/2 over left shoulder": "1R 2L<1/2",
    "1-4 Sway hips R, L, R, L": "1R 2L 3R 4L",
    "1-2 While turning 1/4 left step R to side, touch L": "1R<1/4 2L.",
    "1-2 As you turn 1/4 left, step R to side, then touch L next to it": "1R<1/4 2L.",
    "1-2 Turning 3/8 right step R fwd, step L fwd": "1R>3/8 2L",
    "1-2 Make a 5/8 turn left stepping R back, step L fwd": "1R<5/8 2L",
    "1-2 Turn 1/8 right stepping R fwd to face 1:30, touch L beside R": "1R>1/8 2L.",
    "1-2 Step R to R diagonal, touch L next to R": "1R 2L.",
    "1-4 Step R fwd to R diagonal, touch L tog, step L back to centre, touch R tog": "1R 2L. 3L 4R.",
    "1&2 Rock R out to side, recover weight on L, cross R over in front of L": "1R 1.5L 2R",
    "1-2 Press ball of R fwd, recover weight on L": "1R 2L",
    "1&2 R samba step": "1R 1.5L 2R",
    "1&2 Cross R over L, rock L to L side, recover R": "1R 1.5L 2R",
    "1a2 Cross samba R": "1R 1.75L 2R",
    "1&2& Cross R over L, step L side, R heel diag fwd, step R tog": "1R 1.5L 2R. 2.5R",
    "1-2 & Step R side, cross L behind R, step R side": "1R 2L 2.5R",
    "1-2& Basic nightclub R": "1R 2L 2.5R",
    "1-2& Step R big step to R, rock L behind R, recover R": "1R 2L 2.5R",
    "1-3 Basic waltz forward right": "1R 2L 3R",
    "1-3 R twinkle": "1R 2L 3R",
    "1-3 Cross R over L, step L to L side, step R in place": "1R 2L 3R",
    "1-6 R twinkle, L twinkle": "1R 2L 3R 4L 5R 6L",
    "1-3 Step R fwd, point L to side, hold": "1R 2L. 3-",
    "1-4 Weave to the right": "1R 2L 3R 4L",
    "1&2& R side, L behind, R side, L across": "1R 1.5L 2R 2.5L",
    "1-2 R dorothy step": "1R 2L 2.5R",
    "1-2& Dorothy R": "1R 2L 2.5R",
    "1-2& Step R diag fwd, lock L behind, step R diag fwd": "1R 2L 2.5R",
    "1&2 Wizard step R": "1R 1.5L 2R",
    "1-4 Charleston R": "1R. 2R 3L. 4L",
    "1-4 Step R fwd, kick L fwd, step L back, touch R back": "1R 2L. 3L 4R.",
    "1-4 Lindy R": "1R 1.5L 2R 3L 4R",
    "1&2-3-4 Chasse R, rock back L, recover R": "1R 1.5L 2R 3L 4R",
    "1&2 3-4 Side shuffle right, rock L behind, recover R": "1R 1.5L 2R 3L 4R",
    "1-4 Scissor step R, hold": "1R 2L 3R 4-",
    "1&2 R scissors": "1R 1.5L 2R",
    "1&2 Step R to side, close L, cross R over L": "1R 1.5L 2R",
    "1-2 Botafogo R": "1R 1.5L 2R",
    "1-4 Heel split, heel split": "1B 2B 3B 4B",
    "1-2 Split heels apart, bring them together": "1B 2B",
    "1-4 Pigeon toes x2": "1B 2B 3B 4B",
    "1-2 Ronde R 1/4 right, step R behind": "1R.>1/4 2R",
    "1-4 Toe heel cross R, hold": "1R. 2R. 3R 4-",
    "1&2 Anchor step R": "1R 1.5L 2R",
    "1&2 Step R behind L, step L in place, step R back": "1R 1.5L 2R",
    "1&2 Step R behind L, replace L, R back": "1R 1.5L 2R",
    "1-4 Hip roll anti clockwise": "1B",
    "1-4 Roll hips to the left": "1B",
    "1-2 Body roll": "1B",
    "1-2 Shoulder shimmy": "1-",
    "1-4 Elvis knees R, L, R, L": "1B 2B 3B 4B",
    "1-2 Knee pop R, knee pop L": "1B 2B",
    "1-4 Bounce heels x4 turning 1/2 L": "1B<1/8 2B<1/8 3B<1/8 4B<1/8",
    "1-4 Step R fwd, bounce heels 3 times making 1/2 turn L": "1R 2B<1/6 3B<1/6 4B<1/6",
    "1-4 Four count walk around full turn right": "1R>1/4 2L>1/4 3R>1/4 4L>1/4",
    "1-4 Walk round 1/2 circle left R, L, R, L": "1R<1/8 2L<1/8 3R<1/8 4L<1/8",
    "1&2& Run R, L, R, L": "1R 1.5L 2R 2.5L",
    "1&2 Run fwd R, L, R": "1R 1.5L 2R",
    "1-2 Prissy walk R, L": "1R 2L",
    "1-4 Cross walk R, L, R, L": "1R 2L 3R 4L",
    "1-2 Boogie walk R, L": "1R 2L",
    "1-4 Slide R to R, drag L to R, step L back, touch R": "1R 2L. 3L 4R.",
    "1-2 Slide R to right side, touch L beside": "1R 2L.",
    "L>1-2 cross L over R, unwind 1/2 right": "1L 2R>1/2",
    "L>1-3 Waltz fwd L": "1L 2R 3L",
    "L>1-4 Cross L over R, R to R side, L behind R, R to R side": "1L 2R 3L 4R",
}


@pytest.mark.parametrize("line", LINES)
def test_a_line_is_danced_as_its_words_say(line: str) -> None:
    """The feet, the counts and the turns of the words, and nothing else."""
    assert danced(line) == LINES[line]


TOLD = (
    "1-4 Slow walks R, L",
    "1-3 Walk R, L x2",
    "1-2 Bump hips RLRL",
    "1-4 Step R to side, touch L beside, step L to side",
    "1-8 Run round in a full circle to the right",
)


@pytest.mark.parametrize("line", TOLD)
def test_steps_that_do_not_fit_their_counts_are_told(line: str) -> None:
    """Which count each step has cannot be known from the words: the reader says so."""
    assert "not-understood" in {finding.rule for finding in findings_of(reading(line)) if finding.loud}


def test_a_foot_that_is_not_free_is_no_reason_to_leave_out_its_step() -> None:
    """The cross is told, and it cannot be danced: that is said, and the cross is kept."""
    line = "L>1-2 Cross R over L, unwind 1/2 left"
    assert danced(line).startswith("1")
    assert {f.rule for f in findings_of(reading(line))} & {"foot-not-free", "two-readings"}


def test_a_figure_is_not_left_out_for_a_hold() -> None:
    """Three steps and a hold, though the next part begins with the foot that then bears the weight."""
    assert danced("1-4 Scissor step R, hold") == "1R 2L 3R 4-"
