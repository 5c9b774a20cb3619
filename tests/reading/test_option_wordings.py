"""An easier way in the words of many teachers, for one full turn on counts 5-6.

Worked out by hand from the trade's meaning of the words: common practice, no source.
"""

from __future__ import annotations

import pytest

from wallwise.checks.catalogue import findings_of
from wallwise.reading import read

SHEET = """Tin Lantern
16 counts, 2 walls, Improver
S1: Step touches, full turn
1-2 Step R forward, touch L beside R
3-4 Step L back, touch R beside L
5-6 Turn 1/2 left stepping R back, turn 1/2 left stepping L forward{beside}
7&8 Shuffle forward R, L, R{below}
S2: Rock, shuffle 1/2, stomps, rock
1-2 Rock L forward, recover R
3&4 Shuffle 1/2 turn left stepping L, R, L (6:00)
5-6 Stomp R, stomp L
7&8 Kick R forward, step R beside L, step L in place
{end}
"""
BESIDE = (
    "  (Option: walk forward R, L)", " [easy option: walk R, L]", " (or walk R, L)", " - easy: walk R, L",
    " (or just walk forward R, L)", " (beginners: walk R, L)", " (option: 2 walks)", " Opt: walk R, L",
    "\nOption: walk forward R, L", "\nEasier option for 5-6: walk forward R, L", "\n* Option 5-6: walk R L",
    "\n(Non-turning option: walk R, L)", "\nAlt: walk fwd R, L", "\nBeginners can walk R, L here instead",
    "\nNo-turn option: Walk forward R, walk forward L", "\nIf you don't like to turn: walk forward R, L",
    "\nEasy alternative counts 5-6: walk forward on R, walk forward on L.",
    "\nEasier option for 5-6: leave out the turn and walk R, L", " (option: skip the turn, just walk R, L)",
    "\nEasier: counts 5-6: without the turn, walk forward R, L",
)  # fmt: skip
BELOW = ("\nOption for counts 5-6: replace the full turn with two walks forward R, L",)
END = (
    "Option: Section 1, counts 5-6: walk forward R, L",
    "Easy option: in S1 replace the full turn with walk R, walk L",
    "Non turners: S1 5-6 walk R, L",
    "Options: S1 counts 5-6 – walk forward R, L instead of the full turn",
    "Easier: counts 5-6 of section 1 can be walked forward R, L",
    "* no turn: walk R, L on counts 5-6",
    "No turns for you? Counts 5-6 of part 1 can be danced: walk forward R, L",
    "Not turning? Counts 5-6 of section 1: walk R, L",
    "If you'd rather not turn, section 1, counts 5-6: walk R, L",
    "Easier option for counts 5-6: leave out the turning and step R forward, step L forward.",
)
WHERE = [("beside", words) for words in BESIDE] + [("below", w) for w in BELOW] + [("end", w) for w in END]


@pytest.mark.parametrize(("where", "words"), WHERE)
def test_an_easier_way_is_read_in_these_words(where: str, words: str) -> None:
    """One option is found, it agrees with the steps it stands for, and the dance is what it was."""
    plain = read(SHEET.format(beside="", below="", end=""))
    reading = read(SHEET.format(**{"beside": "", "below": "", "end": ""} | {where: words}))
    feet = [[(s.at, s.foot, s.turn) for s in r.dance.parts[0].steps if s.weight] for r in (plain, reading)]
    assert feet[0] == feet[1]
    assert len(reading.dance.options) == 1
    assert [finding.message for finding in findings_of(reading) if finding.loud] == []


HALF = (
    "No turns for you? Counts 5-6 of part 1 can be danced: step R forward, pivot 1/2 L",
    "Not turning? Section 1, counts 5-6: step R forward, pivot 1/2 left",
    "Easy option for counts 5-6 of section 1: step R forward, pivot 1/2 L",
)


@pytest.mark.parametrize("words", HALF)
def test_an_easier_way_that_turns_a_half_for_a_full_turn_is_told(words: str) -> None:
    """A full turn ends where it began; half of one does not."""
    found = findings_of(read(SHEET.format(beside="", below="", end=words)))
    assert ["option-ends-elsewhere"] == [finding.rule for finding in found if finding.loud]


UNREAD = (
    "No tags, no restarts. Watch them on the pivots - if dizzy, L rocking chair",
    "Mind the turns: if tired, L rocking chair",
    "Easy option: L rocking chair",
    "Enjoy! If dizzy: rocking chair L, monterey 1/4 R, jazz box",
)


@pytest.mark.parametrize("words", UNREAD)
def test_an_easier_way_is_never_left_out_without_a_word(words: str) -> None:
    """Either it is among the options, or something says that it is not; the dance itself is no worse."""
    reading = read(SHEET.format(beside="", below="", end=words))
    told = [f.rule for f in findings_of(reading) if f.rule in ("not-understood", "option-counts")]
    assert reading.options or told


def test_what_was_left_out_is_a_note() -> None:
    """It changes nothing of the dance, and so raises no alarm."""
    reading = read(SHEET.format(beside="", below="", end=UNREAD[0]))
    (found,) = findings_of(reading)
    assert ("not-understood", False) == (found.rule, found.loud)
    assert "L rocking chair" in found.message
