"""Tempi that dances are danced at, as something known before a song is heard.

In beats of the song a minute.  Sources: UCWDC, the competition tempos a social-dance page prints
(undated); NDCA, its recommended tempi as listed on a ballroom page, bars a minute times beats a
bar; Gross, a list compiled by Rich Gross (2012); Garron, garron.net/dance/tempos; Eijkhout,
eijkhout.net on the nightclub two step; USA Dance, the social tempos of chapter 2030.
"""

from __future__ import annotations

from types import MappingProxyType
from typing import NamedTuple

from wallwise.song.tempo import Prior


class Window(NamedTuple):
    """The slowest and the fastest usual tempo, in beats a minute, and the beats of a bar."""

    slowest_bpm: float
    fastest_bpm: float
    beats_per_bar: int
    source: str


WINDOWS = MappingProxyType(
    {
        "waltz": Window(76, 110, 3, "Gross; USA Dance"),
        "quick waltz": Window(135, 200, 3, "Garron"),
        "two-step": Window(168, 200, 4, "Gross; UCWDC 182-198"),
        "cha cha": Window(96, 132, 4, "Gross; USA Dance"),
        "rumba": Window(104, 144, 4, "NDCA; USA Dance"),
        "samba": Window(96, 104, 4, "NDCA"),
        "polka": Window(104, 140, 4, "Garron; UCWDC 114-130"),
        "nightclub": Window(54, 90, 4, "Eijkhout and two lists"),
        "west coast swing": Window(112, 144, 4, "UCWDC; USA Dance"),
        "east coast swing": Window(124, 184, 4, "Gross; USA Dance"),
        "lindy hop": Window(135, 180, 4, "Garron"),
        "hustle": Window(108, 144, 4, "USA Dance"),
    }
)


def prior_of(dance: str) -> Prior:
    """What the name of a dance tells of its tempo: its window lies within two deviations; KeyError.

    >>> round(prior_of("two-step").bpm)
    183
    """
    window = WINDOWS[dance]
    ratio: float = window.fastest_bpm / window.slowest_bpm
    # Half the window is two deviations, and no song is nearer to its window than some hundredths.
    return Prior((window.slowest_bpm * window.fastest_bpm) ** 0.5, max(0.05, ratio**0.25 - 1))
