"""Which rhythm a sheet names, and whether a song is at its tempo.

The windows are those of `dances`, as published; here they are counts of the dance a minute.  A
window is the widest that the lists leave: it is to tell a wrong count level or song from a brisk
one, not to judge a contest.  The lists for nightclub differ by more than taste (54-64, 60-90,
76-88): some count it at half the drummer's beats.  Its window is theirs, counted that way.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction

from wallwise.dance.model import Dance
from wallwise.song.dances import WINDOWS

Windows = tuple[tuple[float, float], ...]


@dataclass(frozen=True, slots=True)
class Rhythm:
    """A rhythm: its name, the words that name it on a sheet, its windows in counts a minute."""

    name: str
    words: str
    windows: Windows
    beats_per_bar: int = 4


def _rhythm(name: str, words: str, *others: str) -> Rhythm:
    """A rhythm with the window of its name, and of those it may also be danced as."""
    windows = [WINDOWS[key] for key in (name, *others)]
    spans = tuple((window.slowest_bpm, window.fastest_bpm) for window in windows)
    return Rhythm(name, words, spans, windows[0].beats_per_bar)


RHYTHMS: tuple[Rhythm, ...] = (
    _rhythm("waltz", r"waltz", "quick waltz"),
    _rhythm("nightclub", r"night ?club(?: two[- ]?step)?|nc ?2 ?s?"),
    _rhythm("cha cha", r"cha[- ]cha(?:[- ]cha)?|cha"),
    _rhythm("polka", r"polka"),
    _rhythm("samba", r"samba"),
    _rhythm("east coast swing", r"east[- ]coast(?: swing)?|ecs"),
    _rhythm("west coast swing", r"west[- ]coast(?: swing)?|wcs"),
    _rhythm("two-step", r"(?<!triple )two[- ]?step"),
    _rhythm("rumba", r"rh?umba"),
    _rhythm("hustle", r"hustle"),
    _rhythm("lindy hop", r"lindy(?: hop)?"),
)
# The slowest and the fastest that any of them is danced: for a rhythm that is not told.
ANY = Rhythm(
    "any rhythm",
    "",
    ((min(w.slowest_bpm for w in WINDOWS.values()), max(w.fastest_bpm for w in WINDOWS.values())),),
)

# "Within 4 per cent" is how the tempo of a song counts as found (Schreiber & Müller, "accuracy 1").
TOLERANCE = 0.04


def rhythm_in(text: str) -> Rhythm | None:
    """The rhythm that stands first in the text; None where none does.

    >>> rhythm_in("32 count, 4 wall, cha cha").name
    'cha cha'
    >>> rhythm_in("Nightclub Two-Step").name
    'nightclub'
    """
    found = [
        (match.start(), -len(match.group()), rhythm)
        for rhythm in RHYTHMS
        if (match := re.search(rf"\b(?:{rhythm.words})\b", text, re.IGNORECASE))
    ]
    return min(found, key=lambda row: row[:2])[2] if found else None


def rhythm_of(dance: Dance, *more: str) -> Rhythm | None:
    """The rhythm that the dance's level, `more` lines of its sheet, or the last word of its title name.

    One of another metre is not believed, and a dance in threes is a waltz; None where none is named.
    """
    rhythm = rhythm_in("\n".join([dance.level, *more, *dance.title.split()[-1:]]))
    if rhythm is None or rhythm.beats_per_bar != dance.beats_per_bar:
        return RHYTHMS[0] if dance.beats_per_bar == 3 else None
    return rhythm


def same_tempo(bpm: float, other_bpm: float) -> bool:
    """Whether two tempi are the same, to within 4 per cent of the second."""
    return abs(bpm / other_bpm - 1) <= TOLERANCE


def within(counts_per_minute: float, windows: Windows, *, tolerance: float = TOLERANCE) -> bool:
    """Whether the tempo lies in one of the windows, or hardly outside."""
    return any(low * (1 - tolerance) <= counts_per_minute <= high * (1 + tolerance) for low, high in windows)


def level_that_fits(
    beats_per_minute: float, windows: Windows, *, now: Fraction = Fraction(1)
) -> Fraction | None:
    """The counts per beat (1/2, 1, 2; not `now`) at which a song of this tempo lies in a window, or None.

    >>> level_that_fits(132, ((54, 90),))
    Fraction(1, 2)
    """
    levels = (Fraction(1), Fraction(1, 2), Fraction(2))
    return next((k for k in levels if k != now and within(beats_per_minute * float(k), windows)), None)
