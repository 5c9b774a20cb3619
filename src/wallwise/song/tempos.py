"""How fast the rhythms are danced: tempo windows as published, in counts a minute.

Sources.  UCWDC: competition tempos of the United Country Western Dance Council as an undated
secondary page gives them (two-step 182-198, waltz 84-100, West Coast swing 112-128, cha cha
100-116, East Coast swing 142-158, polka 114-130).  NDCA: tempos of the National Dance Council of
America as a ballroom information page lists them, measures turned into beats.  Gross: list
compiled by Rich Gross, 2012.  USA Dance: chapter 2030, "About our dance music".  Garron:
L. Garron, garron.net/dance/tempos.  Eijkhout: eijkhout.net.  A window here is the widest that
they leave: it is to tell a wrong count level or song from a brisk one, not to judge a contest.

The sources for nightclub differ by more than taste (54-64, 60-90, 76-88): some count it at half
the drummer's beats.  Its window is theirs, counted that way.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction

Window = tuple[int, int]


@dataclass(frozen=True, slots=True)
class Rhythm:
    """A dance rhythm: its name, the words that name it on a sheet, its windows, who published them."""

    name: str
    words: str
    windows: tuple[Window, ...]
    source: str
    beats_per_bar: int = 4


RHYTHMS: tuple[Rhythm, ...] = (
    Rhythm(
        "waltz",
        r"waltz",
        ((76, 110), (135, 200)),
        "76-98 Gross, 84-100 UCWDC, 90-110 USA Dance; fast waltz 135-200 Garron",
        beats_per_bar=3,
    ),
    Rhythm(
        "nightclub",
        r"night ?club(?: two[- ]?step)?|nc ?2 ?s?",
        ((54, 90),),
        "54-64 a ballroom club's list, 60-90 Eijkhout",
    ),
    Rhythm("cha cha", r"cha[- ]cha(?:[- ]cha)?|cha", ((96, 132),), "96-118 Gross, 104-132 USA Dance"),
    Rhythm("polka", r"polka", ((104, 140),), "104-124 a ballroom club's list, 105-140 Garron"),
    Rhythm("samba", r"samba", ((96, 104),), "96-104 NDCA, measures of two"),
    Rhythm(
        "East Coast swing", r"east[- ]coast(?: swing)?|ecs", ((124, 190),), "124-190 Gross, 140-184 USA Dance"
    ),
    Rhythm(
        "West Coast swing", r"west[- ]coast(?: swing)?|wcs", ((112, 144),), "112-128 NDCA, 112-144 USA Dance"
    ),
    Rhythm("two-step", r"(?<!triple )two[- ]?step", ((168, 200),), "168-200 Gross, 182-198 UCWDC"),
    Rhythm("rumba", r"rh?umba", ((104, 144),), "104-144 NDCA, 112-136 USA Dance"),
    Rhythm("hustle", r"hustle", ((108, 144),), "108-144 USA Dance"),
    Rhythm("lindy hop", r"lindy(?: hop)?", ((135, 180),), "135-180 Garron"),
    Rhythm("foxtrot", r"foxtrot", ((112, 128),), "112-128 NDCA"),
)
# The slowest and the fastest that any of them is danced: for a rhythm that is not told.
ANY = Rhythm("any rhythm", "", ((54, 200),), "the slowest and the fastest of all")

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


def within(counts_per_minute: float, windows: tuple[Window, ...], *, tolerance: float = TOLERANCE) -> bool:
    """Whether the tempo lies in one of the windows, or hardly outside."""
    return any(low * (1 - tolerance) <= counts_per_minute <= high * (1 + tolerance) for low, high in windows)


def level_that_fits(
    beats_per_minute: float, windows: tuple[Window, ...], *, now: Fraction = Fraction(1)
) -> Fraction | None:
    """The counts per beat (1/2, 1, 2; not `now`) at which a song of this tempo lies in a window, or None.

    >>> level_that_fits(132, ((54, 90),))
    Fraction(1, 2)
    """
    levels = (Fraction(1), Fraction(1, 2), Fraction(2))
    return next((k for k in levels if k != now and within(beats_per_minute * float(k), windows)), None)
