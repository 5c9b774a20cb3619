"""A turn that leaves hardly any time to turn in.

The limit is common practice, no source: a pivot of half a turn in one beat is danced to the
fastest East Coast Swing (158 beats a minute in the competition tempos of the United Country
Western Dance Council, as an undated secondary page gives them), which is 474 degrees a second.
It is far above what everybody can turn.  In people of 65 and over, a full turn that takes more
than 3.46 seconds tells the frail from the others (Tsai et al., preprint, 109 people): 104
degrees a second.
"""

from collections.abc import Iterator, Sequence
from fractions import Fraction
from itertools import groupby

from wallwise.checks.rule import Rule
from wallwise.checks.sight import Sight, danced_through
from wallwise.dance.finding import Finding, Severity
from wallwise.dance.model import Kind
from wallwise.reading import Reading
from wallwise.reading.solve import Solved
from wallwise.reading.tokens import TURN

MOST_DEGREES_PER_SEC = 480
MOST_DEGREES_PER_BEAT = 270  # where no tempo is told; common practice, no source

_ON_THE_SPOT = (Kind.TURN, Kind.SPIN)


def _find(reading: Reading) -> Iterator[Finding]:
    bpm = reading.dance.bpm
    most = MOST_DEGREES_PER_SEC * 60 / bpm if bpm else Fraction(MOST_DEGREES_PER_BEAT)
    for part in danced_through(reading):
        events, over = part.solution.events, part.part.counts + 1
        for first, last in _turns(events):
            turned = abs(sum(event.turn for event in events[first : last + 1]))
            beats = max(Fraction(1), _beats(events, first, last, over=over))
            degrees = Fraction(turned * 360, TURN) / beats
            if degrees > most:
                sight = Sight(part, events[last])
                yield RULE.at(
                    sight,
                    f"In {sight.where}, the body turns {round(degrees)} degrees within one beat{_in_sec(bpm)}"
                    ": too fast for some; offer an option with less turn, or with none.",
                )


def _turns(events: Sequence[Solved]) -> Iterator[tuple[int, int]]:
    """The first and the last event of each turn: those of a passage that follow each other one way."""
    for kind, turn in groupby(range(len(events)), key=lambda n: _kind_of_turn(events[n])):
        if kind is not None:
            members = tuple(turn)
            yield members[0], members[-1]


def _kind_of_turn(event: Solved) -> tuple[int, bool, bool] | None:
    return (event.group, event.turn > 0, event.kind in _ON_THE_SPOT) if event.turn else None


def _beats(events: Sequence[Solved], first: int, last: int, *, over: Fraction) -> Fraction:
    """The time the turn has in a part that is over at a beat.

    One on the spot ends before the next step.  One that is stepped begins after the
    step before, and the step that closes it in its passage still belongs to it.
    """
    began, ended = events[first].at, events[last].at
    since = events[first - 1].at if first else began - 1
    if events[first].kind in _ON_THE_SPOT:
        after = (event.at for event in events[last + 1 :] if event.kind is not Kind.HOLD)
        return max(ended - since, next(after, over) - began)
    for closing in events[last + 1 : last + 2]:
        if closing.group == events[last].group and closing.kind.takes_weight and not closing.turn:
            return closing.at - since
    return ended - since


def _in_sec(bpm: Fraction | None) -> str:
    return f" ({float(60 / bpm):.1f} seconds at {float(bpm):g} beats a minute)" if bpm else ""


RULE = Rule("turn-too-fast", Severity.NOTE, "A turn leaves hardly any time to turn in.", _find)
