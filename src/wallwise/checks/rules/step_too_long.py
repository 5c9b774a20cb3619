"""A step whose foot has farther to go than its time allows.

In walking the body goes one step's length and the foot that swings goes two, so a foot is
twice as fast as the body.  People of 60 and over walk in comfort at 1.24 metres a second, with
a standard deviation of 0.28 (Kasović et al., 2021): two deviations above that make 1.8 for the
body and 3.6 for the foot.
"""

from collections.abc import Iterator
from fractions import Fraction

from wallwise.checks.rule import Rule
from wallwise.checks.sight import FOOT_NAMES, Sight, danced_through
from wallwise.dance.finding import Finding, Severity
from wallwise.dance.model import Foot, Kind
from wallwise.floor.apply import start
from wallwise.floor.trace import trace_steps
from wallwise.reading import Reading
from wallwise.reading.record import PartReading
from wallwise.reading.steps import step_of

MOST_M_PER_SEC = 2 * (1.24 + 2 * 0.28)


def _find(reading: Reading) -> Iterator[Finding]:
    """The foot with the least time for its way: smaller steps there are smaller steps throughout."""
    bpm = reading.dance.bpm
    if bpm is None:
        return
    danced = (hurry for part in danced_through(reading) for hurry in _danced(part))
    sight, far_m, beats = max(danced, key=lambda hurry: hurry[1] / hurry[2], default=(None, 0.0, 1.0))
    time_sec = beats * 60 / float(bpm)
    if sight is not None and far_m > MOST_M_PER_SEC * time_sec:
        yield RULE.at(
            sight,
            f"In {sight.where}, {FOOT_NAMES[sight.event.foot]} has {time_sec:.2f} seconds "
            f"(at {float(bpm):g} beats a minute) to go {far_m:.1f} metres: teach smaller steps.",
        )


def _danced(part: PartReading) -> Iterator[tuple[Sight, float, float]]:
    """Every event in which one foot moves: how far it goes, in metres, and the beats it has for that."""
    events, started = part.solution.events, part.solution.started
    trace = trace_steps(map(step_of, events), start=start(started.other))
    before = Fraction(0)
    for event, row in zip(events, trace.rows, strict=True):
        if event.kind is Kind.HOLD:
            continue
        if event.foot in (Foot.LEFT, Foot.RIGHT) and event.at > before:
            yield Sight(part, event), row.moved_m, float(event.at - before)
        before = event.at


RULE = Rule("step-too-long", Severity.NOTE, "A foot has farther to go than its time allows.", _find)
