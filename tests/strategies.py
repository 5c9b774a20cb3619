"""Every hypothesis strategy in one place: steps that can be danced, and values of any kind."""

from fractions import Fraction

from hypothesis import strategies as st

from wallwise.dance.model import Dance, Foot, Kind, Option, Part, Place, Restart, Section, Step, Tag
from wallwise.dance.weight import weight_told

FEET = st.sampled_from([Foot.LEFT, Foot.RIGHT])
EIGHTHS = st.integers(-8, 8).map(lambda eighths: Fraction(eighths, 8))
PLACES = st.sampled_from(Place)
SHARES = st.sampled_from([Fraction(0), Fraction(1, 4), Fraction(1, 2), Fraction(2, 3), Fraction(3, 4)])
COUNTS = st.builds(Fraction.__add__, st.integers(1, 64).map(Fraction), SHARES)
WORDS = st.text(st.characters(exclude_categories=["Cs"]), max_size=12)

_ONE_FOOT = [kind for kind in Kind if kind is not Kind.HOLD]


@st.composite
def any_step(draw: st.DrawFn, at: Fraction | None = None) -> Step:
    """A step whose foot may or may not be free."""
    return Step(
        at=draw(COUNTS) if at is None else at,
        foot=draw(st.sampled_from(Foot)),
        kind=draw(st.sampled_from(Kind)),
        place=draw(PLACES),
        turn=draw(EIGHTHS),
        toward=draw(st.none() | FEET),
        ends_on=draw(st.none() | FEET),
        long=draw(st.booleans()),
        also=tuple(draw(st.lists(st.sampled_from(["clap", "sweep L", "snap", "drag right"]), max_size=2))),
    )


@st.composite
def danceable_steps(draw: st.DrawFn, *, weight: Foot = Foot.LEFT, counts: int = 8) -> tuple[Step, ...]:
    """A step on every count, none with a foot that bears the weight."""
    steps: list[Step] = []
    for count in range(1, counts + 1):
        free = weight.other if weight is not Foot.BOTH else draw(FEET)
        kind = draw(st.sampled_from(_ONE_FOOT))
        stands = weight if weight is not Foot.BOTH else free.other
        foot = stands if kind.on_standing_foot else draw(st.sampled_from([free, free, free, Foot.BOTH]))
        step = Step(
            at=Fraction(count),
            foot=foot,
            kind=kind,
            place=draw(PLACES),
            turn=draw(EIGHTHS),
            toward=draw(st.none() | FEET),
            ends_on=draw(st.none() | FEET) if foot is Foot.BOTH else None,
            long=draw(st.booleans()),
        )
        steps.append(step)
        weight = weight_told(weight, step)
    return tuple(steps)


def part_of(steps: tuple[Step, ...], *, counts: int, name: str = "main") -> Part:
    """The steps as one part of one section."""
    return Part(name, (Section(1, Fraction(1), Fraction(counts), steps),))


@st.composite
def danceable(draw: st.DrawFn, *, counts: int = 8) -> Dance:
    """A dance without restarts, tags or parts whose first wall the body never refuses."""
    first = draw(FEET)
    steps = draw(danceable_steps(weight=first.other, counts=counts))
    return Dance("Untitled", (part_of(steps, counts=counts),), starts_on=first)


_SECTIONS = st.builds(
    Section,
    number=st.integers(1, 12),
    starts_at=COUNTS,
    counts=COUNTS,
    steps=st.lists(any_step(), max_size=4).map(tuple),
    heading=WORDS,
)
_PARTS = st.builds(Part, name=WORDS, sections=st.lists(_SECTIONS, max_size=2).map(tuple))

dances = st.builds(
    Dance,
    title=WORDS,
    parts=st.lists(_PARTS, max_size=3).map(tuple),
    starts_on=FEET,
    beats_per_bar=st.sampled_from([3, 4]),
    level=WORDS,
    choreographer=WORDS,
    music=WORDS,
    intro_counts=st.none() | st.integers(0, 128),
    bpm=st.none() | st.fractions(60, 200, max_denominator=10),
    restarts=st.lists(
        st.builds(
            Restart,
            wall=st.integers(1, 9),
            after_counts=COUNTS,
            change=st.lists(any_step(), max_size=2).map(tuple),
            change_from=st.none() | COUNTS,
        ),
        max_size=2,
    ).map(tuple),
    tags=st.lists(
        st.builds(Tag, after_wall=st.integers(0, 9), part=_PARTS, after_counts=st.none() | COUNTS), max_size=2
    ).map(tuple),
    sequence=st.none() | st.lists(WORDS, max_size=4).map(tuple),
    ending=st.none() | _PARTS,
    options=st.lists(
        st.builds(
            Option,
            section=st.integers(1, 8),
            counts=WORDS,
            first=COUNTS,
            last=COUNTS,
            steps=st.lists(any_step(), max_size=3).map(tuple),
            part=WORDS,
        ),
        max_size=1,
    ).map(tuple),
)
"""Any dance at all, sensible or not."""
