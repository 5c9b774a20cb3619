"""Where a dance can be broken off and begun again."""

from fractions import Fraction

from wallwise.dance.model import Dance, Foot
from wallwise.dance.weight import weight_told

# Fewer counts are no wall: common practice, no source.
FEWEST = 4


def restart_counts(dance: Dance) -> tuple[Fraction, ...]:
    """After which counts the dance can begin again: the foot that begins it is free then.

    Whole counts from `FEWEST` on, fewer than the whole dance, in order.  None for a phrased
    dance, whose parts come in the order of its sequence, and for one without parts.

    >>> from wallwise.dance.model import Kind, Part, Section, Step
    >>> walks = [Foot.RIGHT, Foot.LEFT] * 4
    >>> steps = tuple(Step(Fraction(at), foot, Kind.STEP) for at, foot in enumerate(walks, 1))
    >>> section = Section(1, Fraction(1), Fraction(8), steps)
    >>> [int(counts) for counts in restart_counts(Dance("Walks", (Part("main", (section,)),)))]
    [4, 6]
    """
    if dance.sequence is not None or not dance.parts:
        return ()
    found, weight, steps = [], dance.starts_on.other, list(dance.parts[0].steps)
    counts = Fraction(1)
    while counts < dance.parts[0].counts:
        while steps and steps[0].at < counts + 1:
            weight = weight_told(weight, steps.pop(0))
        if counts >= FEWEST and weight in (Foot.BOTH, dance.starts_on.other):
            found.append(counts)
        counts += 1
    return tuple(found)
