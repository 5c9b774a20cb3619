"""Where a dance can be broken off and begun again."""

from fractions import Fraction

from wallwise.dance.model import Dance, Foot
from wallwise.dance.weight import weight_told

_BARS = 2  # fewer are no wall: common practice, no source


def restart_counts(dance: Dance) -> tuple[Fraction, ...]:
    """After which counts the dance can begin again: the foot that begins it is free then.

    Whole counts, no fewer than an eight (a six in the waltz) and fewer than the whole dance, in
    order.  None for a phrased dance, whose parts come in the order of its sequence, and for one
    without parts.

    >>> from wallwise.dance.model import Kind, Part, Section, Step
    >>> walks = [Foot.RIGHT, Foot.LEFT] * 6
    >>> steps = tuple(Step(Fraction(at), foot, Kind.STEP) for at, foot in enumerate(walks, 1))
    >>> section = Section(1, Fraction(1), Fraction(12), steps)
    >>> [int(counts) for counts in restart_counts(Dance("Walks", (Part("main", (section,)),)))]
    [8, 10]
    """
    if dance.sequence is not None or not dance.parts:
        return ()
    found, weight, steps = [], dance.starts_on.other, list(dance.parts[0].steps)
    counts = Fraction(1)
    while counts < dance.parts[0].counts:
        while steps and steps[0].at < counts + 1:
            weight = weight_told(weight, steps.pop(0))
        if counts >= _BARS * dance.beats_per_bar and weight in (Foot.BOTH, dance.starts_on.other):
            found.append(counts)
        counts += 1
    return tuple(found)
