"""What the band plays: one rhythm for each of many dances, bar by bar.

A stroke is (beat in the bar from 0, loudness); drums are told for the plain and the full
sections.  The patterns are the trade's commonplaces (common practice, no source).
"""

from __future__ import annotations

from dataclasses import dataclass, field

Strokes = dict[str, list[tuple[float, float]]]
Steps = list[tuple[float, str, float]]  # beat, degree of the chord, beats held


def _every(
    step: float, beats: float, *, loud: float = 0.6, soft: float = 0.4, start: float = 0.0
) -> list[tuple[float, float]]:
    places = [start + i * step for i in range(round((beats - start) / step))]
    return [(place, loud if place % 1 == 0 else soft) for place in places]


def _on(*beats: float, loud: float = 1.0) -> list[tuple[float, float]]:
    return [(beat, loud) for beat in beats]


@dataclass(frozen=True)
class Rhythm:
    """One dance's accompaniment."""

    name: str
    bpm: tuple[float, float]
    plain: Strokes
    full: Strokes
    bass: Steps
    chords: list[tuple[float, float]]  # beat, beats held
    beats_per_bar: int = 4
    swing: tuple[float, float] = (0.5, 0.5)  # where the half beat falls
    basses: tuple[str, ...] = ("bass",)
    comps: tuple[str, ...] = ("guitar", "piano", "organ")
    leads: tuple[str, ...] = ("voice", "horn", "flute")
    progressions: tuple[str, ...] = ("C Am F G", "F G C Am", "C G Am F", "Am F C G", "C F C G")
    fills: bool = True
    melody_step: float = 0.5
    tags: frozenset[str] = field(default_factory=frozenset)


WALK: Steps = [(0, "r", 0.9), (1, "3", 0.9), (2, "5", 0.9), (3, "6", 0.9)]
TWO: Steps = [(0, "r", 0.9), (2, "5", 0.9)]
DRIVE: Steps = [(0, "r", 0.9), (1, "r", 0.4), (1.5, "r", 0.4), (2, "r", 0.9), (3, "5", 0.4), (3.5, "r", 0.4)]
COUNTRY = ("C C F C C Am G G", "C C F F C C G G", "G G C C D D G G")

RHYTHMS = (
    Rhythm(
        "rock",
        (92, 136),
        {"kick": [*_on(0, 2), (2.5, 0.8)], "snare": _on(1, 3), "hat": _every(0.5, 4)},
        {"kick": [(0, 1), (1.5, 0.8), (2, 1)], "snare": _on(1, 3), "open": _every(1, 4)},
        DRIVE,
        [(0, 0.9), (1.5, 0.4), (2.5, 0.4), (3, 0.8)],
        comps=("dirty guitar", "guitar", "organ"),
    ),
    Rhythm(
        "floor",
        (112, 132),
        {"kick": _on(0, 1, 2, 3), "hat": _on(0.5, 1.5, 2.5, 3.5, loud=0.6)},
        {
            "kick": _on(0, 1, 2, 3),
            "clap": _on(1, 3),
            "open": _on(0.5, 1.5, 2.5, 3.5, loud=0.8),
            "hat": _every(0.25, 4, loud=0.3, soft=0.3),
        },
        [(0.5, "r", 0.4), (1.5, "r", 0.4), (2.5, "r", 0.4), (3.5, "r", 0.4)],
        [(0, 0.4), (0.75, 0.4), (1.5, 0.4), (2.5, 0.4), (3.25, 0.4)],
        basses=("synth bass",),
        comps=("saw", "organ"),
        leads=("voice", "saw", "bell"),
        fills=False,
    ),
    Rhythm(
        "train",
        (176, 200),
        {"brush": [(i / 2, (0.55, 0.5, 1.0, 0.5)[i % 4]) for i in range(8)], "kick": _on(0, 2, loud=0.8)},
        {
            "brush": [(i / 2, (0.6, 0.5, 1.1, 0.5)[i % 4]) for i in range(8)],
            "kick": _on(0, 2),
            "tambourine": _on(1, 3, loud=0.7),
        },
        TWO,
        [(1, 0.4), (3, 0.4)],
        basses=("upright", "bass"),
        comps=("guitar",),
        leads=("fiddle", "voice"),
        progressions=COUNTRY,
        melody_step=1.0,
    ),
    Rhythm(
        "two-step",
        (168, 204),
        {"kick": _on(0, 2), "rim": _on(1, 3, loud=0.8), "hat": _every(1, 4)},
        {"kick": _on(0, 2), "snare": _on(1, 3), "hat": _every(1, 4), "open": _on(3, loud=0.4)},
        TWO,
        [(1, 0.3), (3, 0.3)],
        comps=("guitar", "piano"),
        leads=("fiddle", "voice", "accordion"),
        progressions=COUNTRY,
        melody_step=1.0,
    ),
    Rhythm(
        "cha cha",
        (104, 128),
        {
            "cowbell": _on(0, 1, 2, 3, loud=0.7),
            "guiro": _on(0, 2, loud=0.7),
            "short guiro": _on(1, 1.5, 3, 3.5, loud=0.6),
            "slap": _on(1, loud=0.8),
            "high conga": _on(0, 2, loud=0.5),
            "low conga": _on(3, 3.5, loud=1.0),
        },
        {
            "cowbell": _on(0, 1, 2, 3),
            "guiro": _on(0, 2, loud=0.7),
            "short guiro": _on(1, 1.5, 3, 3.5, loud=0.6),
            "slap": _on(1, loud=0.9),
            "low conga": _on(3, 3.5, loud=1.0),
            "clave": _on(0, 1.5, 3),
            "high tom": _on(0.5, 1, 2.5, loud=0.6),
        },
        [(0, "r", 1.3), (1.5, "5", 1.3), (3, "8", 0.9)],
        [(0.5, 0.4), (1, 0.4), (1.5, 0.3), (2.5, 0.4), (3, 0.3), (3.5, 0.4)],
        basses=("upright", "bass"),
        comps=("piano",),
        leads=("horn", "flute", "voice"),
        progressions=("Am Dm E7 Am", "F G C E7", "Am G F E7"),
    ),
    Rhythm(
        "rumba",
        (92, 112),
        {
            "clave": _on(0, 1.5, 3),
            "shaker": _every(0.5, 4),
            "low conga": _on(1, 3, 3.5, loud=0.8),
            "kick": _on(0, 2, loud=0.6),
        },
        {
            "clave": _on(0, 1.5, 3),
            "shaker": _every(0.5, 4),
            "low conga": _on(1, 3, 3.5),
            "rim": _on(1, 3, loud=0.6),
            "kick": _on(0, 2, loud=0.8),
        },
        [(0, "r", 1.4), (1.5, "5", 0.4), (2, "8", 0.9), (3, "5", 0.9)],
        [(0, 0.4), (1, 0.4), (1.5, 0.4), (2.5, 0.4), (3.5, 0.4)],
        basses=("upright",),
        comps=("guitar", "piano"),
        progressions=("Am Dm E7 Am", "C Am Dm G7", "Dm G7 C Am"),
    ),
    Rhythm(
        "samba",
        (96, 120),
        {
            "kick": [(0, 0.8), (0.75, 0.5), (1, 1), (1.75, 0.5), (2, 0.8), (2.75, 0.5), (3, 1), (3.75, 0.5)],
            "shaker": _every(0.25, 4),
            "rim": [(0, 0.6), (0.75, 0.6), (1.5, 0.6), (2.5, 0.6), (3.25, 0.6)],
        },
        {
            "kick": [(0, 0.8), (0.75, 0.5), (1, 1), (1.75, 0.5), (2, 0.8), (2.75, 0.5), (3, 1), (3.75, 0.5)],
            "shaker": _every(0.25, 4),
            "snare": [(0, 0.7), (0.75, 0.6), (1.5, 0.7), (2.5, 0.6), (3.25, 0.7)],
            "tambourine": _on(1, 3, loud=0.6),
        },
        [(0, "r", 0.7), (0.75, "r", 0.2), (1, "5", 0.9), (2, "r", 0.7), (2.75, "r", 0.2), (3, "5", 0.9)],
        [(0, 0.3), (0.75, 0.3), (1.5, 0.4), (2.5, 0.3), (3.25, 0.3)],
        comps=("guitar",),
        leads=("flute", "voice"),
        progressions=("Dm G7 C Am", "C Am Dm G7"),
    ),
    Rhythm(
        "waltz",
        (84, 118),
        {"kick": _on(0), "rim": _on(1, 2, loud=0.7), "hat": [(0, 0.5), (1, 0.5), (2, 0.5), (2.5, 0.3)]},
        {"kick": _on(0), "snare": _on(1, 2, loud=0.7), "ride": [(0, 0.7), (1, 0.7), (2, 0.7), (2.5, 0.5)]},
        [(0, "r", 0.95)],
        [(1, 0.4), (2, 0.4)],
        beats_per_bar=3,
        basses=("upright", "bass"),
        leads=("fiddle", "voice", "accordion"),
        progressions=COUNTRY,
    ),
    Rhythm(
        "quick waltz",
        (158, 182),
        {"kick": _on(0, loud=0.7), "brush": _on(1, 2, loud=0.4)},
        {"kick": _on(0, loud=0.9), "snare": _on(1, 2, loud=0.45), "tambourine": _on(0, loud=0.4)},
        [(0, "r", 0.9)],
        [(1, 0.35), (2, 0.35)],
        beats_per_bar=3,
        basses=("upright",),
        comps=("accordion", "piano", "strings"),
        leads=("fiddle", "flute"),
        progressions=("C C G7 G7 G7 G7 C C", "F F C C G7 G7 C C"),
        melody_step=1.0,
    ),
    Rhythm(
        "six eight",
        (56, 72),
        {"kick": _on(0), "snare": _on(1), "hat": [(i / 3, 0.7 if i % 3 == 0 else 0.45) for i in range(6)]},
        {
            "kick": [(0, 1), (5 / 3, 0.7)],
            "snare": _on(1),
            "ride": [(i / 3, 0.7 if i % 3 == 0 else 0.45) for i in range(6)],
        },
        [(0, "r", 0.6), (2 / 3, "r", 0.3), (1, "5", 0.6)],
        [(i / 3, 0.28) for i in range(6)],
        beats_per_bar=2,
        comps=("piano", "guitar"),
        melody_step=1 / 3,
    ),
    Rhythm(
        "jig",
        (112, 126),
        {"kick": _on(0, 1, loud=0.7), "shaker": [(i / 3, 0.8 if i % 3 == 0 else 0.5) for i in range(6)]},
        {
            "kick": _on(0, 1),
            "snare": [(2 / 3, 0.5), (5 / 3, 0.6)],
            "shaker": [(i / 3, 0.8 if i % 3 == 0 else 0.5) for i in range(6)],
        },
        [(0, "r", 0.8), (1, "5", 0.8)],
        [(0, 0.5), (2 / 3, 0.3), (1, 0.5), (5 / 3, 0.3)],
        beats_per_bar=2,
        basses=("upright",),
        comps=("guitar", "accordion"),
        leads=("fiddle", "flute"),
        progressions=COUNTRY,
        melody_step=1 / 3,
    ),
    Rhythm(
        "swing",
        (128, 172),
        {
            "ride": [(0, 0.8), (1, 0.9), (1.5, 0.6), (2, 0.8), (3, 0.9), (3.5, 0.6)],
            "hat": _on(1, 3, loud=0.8),
        },
        {
            "ride": [(0, 0.8), (1, 0.9), (1.5, 0.6), (2, 0.8), (3, 0.9), (3.5, 0.6)],
            "hat": _on(1, 3, loud=0.8),
            "kick": _on(0, 2, loud=0.4),
            "snare": [(1, 0.4), (3, 0.5), (3.5, 0.3)],
        },
        WALK,
        [(0, 0.3), (1.5, 0.5)],
        swing=(0.62, 0.68),
        basses=("upright",),
        comps=("piano",),
        leads=("horn", "flute"),
        progressions=("C Am7 Dm7 G7", "E7 E7 A7 A7 D7 D7 G7 G7"),
    ),
    Rhythm(
        "shuffle",
        (104, 140),
        {"kick": [(0, 1), (2, 1), (2.5, 0.6)], "snare": _on(1, 3), "hat": _every(0.5, 4)},
        {"kick": [(0, 1), (2, 1), (2.5, 0.6)], "snare": _on(1, 3), "ride": _every(0.5, 4)},
        [
            (0, "r", 0.5),
            (0.5, "r", 0.3),
            (1, "3", 0.5),
            (1.5, "3", 0.3),
            (2, "5", 0.5),
            (2.5, "5", 0.3),
            (3, "6", 0.5),
            (3.5, "5", 0.3),
        ],
        [(1, 0.3), (3, 0.3)],
        swing=(0.6, 0.67),
        comps=("organ", "guitar"),
        progressions=("C7 C7 F7 C7", "F7 F7 C7 C7 G7 F7 C7 C7"),
    ),
    Rhythm(
        "west coast",
        (92, 112),
        {"kick": [(0, 1), (1.5, 0.6), (2, 1)], "clap": _on(1, 3), "hat": _every(0.5, 4)},
        {
            "kick": [(0, 1), (0.5, 0.5), (2, 1), (2.75, 0.6)],
            "snare": _on(1, 3),
            "hat": _every(0.25, 4, loud=0.5, soft=0.3),
        },
        [(0, "r", 0.7), (1.5, "r", 0.4), (2, "5", 0.7), (3.5, "6", 0.4)],
        [(1, 0.3), (2.5, 0.3), (3, 0.3)],
        swing=(0.56, 0.64),
        comps=("organ", "piano"),
    ),
    Rhythm(
        "nightclub",
        (64, 84),
        {"kick": _on(0, loud=0.7), "rim": _on(2, loud=0.6)},
        {
            "kick": [(0, 0.9), (2.5, 0.6)],
            "snare": _on(2, loud=0.8),
            "hat": _every(0.5, 4, loud=0.4, soft=0.3),
        },
        [(0, "r", 1.9), (2, "5", 1.6)],
        [(i / 2, 0.45) for i in range(8)],
        comps=("piano", "guitar"),
        leads=("voice", "flute"),
        progressions=("C G Am F", "F G Em Am"),
        fills=False,
    ),
    Rhythm(
        "funk",
        (92, 114),
        {
            "kick": [(0, 1), (0.75, 0.8), (2.5, 1), (3.75, 0.7)],
            "snare": [(1, 1), (1.75, 0.4), (2.25, 0.4), (3, 1)],
            "hat": _every(0.25, 4, loud=0.7, soft=0.5),
        },
        {
            "kick": [(0, 1), (1.5, 0.9), (2.5, 0.9), (3.25, 0.8)],
            "snare": [(1, 1), (3, 1), (3.75, 0.6)],
            "open": _on(0.5, 2.5, loud=0.7),
            "hat": _every(0.25, 4, loud=0.7, soft=0.5),
        },
        [
            (0, "r", 0.4),
            (0.75, "8", 0.2),
            (1.5, "r", 0.3),
            (2.25, "5", 0.2),
            (2.5, "8", 0.3),
            (3.25, "5", 0.2),
            (3.75, "r", 0.3),
        ],
        [(0.75, 0.2), (1.25, 0.15), (1.5, 0.3), (2.75, 0.2), (3.5, 0.2), (3.75, 0.2)],
        comps=("guitar", "organ"),
        leads=("horn", "voice"),
        progressions=("Em7 Em7 A7 A7", "C D Em7 Em7", "Dm7 Dm7 G7 G7"),
    ),
    Rhythm(
        "dembow",
        (86, 102),
        {"kick": _on(0, 1, 2, 3), "rim": [(0.75, 0.9), (1.5, 1), (2.75, 0.9), (3.5, 1)]},
        {
            "kick": _on(0, 1, 2, 3),
            "snare": [(0.75, 0.9), (1.5, 1), (2.75, 0.9), (3.5, 1)],
            "hat": _every(0.5, 4),
        },
        [(0, "r", 0.6), (0.75, "r", 0.5), (1.5, "r", 0.4), (2, "r", 0.6), (2.75, "5", 0.5), (3.5, "5", 0.4)],
        [(0, 0.9), (1.5, 0.4), (2.5, 0.9)],
        basses=("synth bass",),
        comps=("guitar", "saw"),
        leads=("voice", "bell"),
        progressions=("Am F C G", "F G Am Am"),
        fills=False,
    ),
    Rhythm(
        "trap",
        (66, 80),
        {"boom": [(0, 1), (2.5, 0.9)], "clap": _on(1, 3), "hat": _every(0.25, 4, loud=0.5, soft=0.4)},
        {
            "boom": [(0, 1), (0.75, 0.9), (1.75, 0.8), (2.5, 1)],
            "snare": _on(1, 3),
            "clap": _on(1, 3),
            "hat": [*_every(0.25, 3), *[(3 + i / 6, 0.5) for i in range(6)]],
        },
        [(0, "r", 0.7), (0.75, "r", 0.9), (2.5, "r", 1.2)],
        [(0, 3.5)],
        basses=("synth bass",),
        comps=("strings", "bell"),
        leads=("voice", "bell"),
        progressions=("Am F Dm E", "F G Am Am"),
        fills=False,
    ),
    Rhythm(
        "polka",
        (112, 130),
        {"kick": _on(0, 1, loud=0.9), "snare": _on(0.5, 1.5, loud=0.5)},
        {"kick": _on(0, 1), "snare": _on(0.5, 1.5, loud=0.7), "hat": _every(0.25, 2)},
        [(0, "r", 0.4), (1, "5", 0.4)],
        [(0.5, 0.25), (1.5, 0.25)],
        beats_per_bar=2,
        basses=("upright", "horn"),
        comps=("accordion",),
        leads=("accordion", "fiddle", "horn"),
        progressions=COUNTRY,
    ),
    Rhythm(
        "cumbia",
        (84, 104),
        {
            "guiro": _on(0, 1, 2, 3, loud=0.8),
            "short guiro": [(b + h, 0.6) for b in range(4) for h in (0.5, 0.75)],
            "kick": _on(0, 2, loud=0.9),
            "low conga": _on(1.5, 3.5, loud=0.8),
        },
        {
            "guiro": _on(0, 1, 2, 3, loud=0.8),
            "short guiro": [(b + h, 0.6) for b in range(4) for h in (0.5, 0.75)],
            "kick": _on(0, 2),
            "low conga": _on(1.5, 3.5),
            "cowbell": _on(0, 1, 2, 3, loud=0.6),
        },
        [(0, "r", 0.9), (1, "3", 0.4), (1.5, "5", 0.4), (2, "r", 0.9), (3, "3", 0.4), (3.5, "5", 0.4)],
        [(0.5, 0.3), (1.5, 0.3), (2.5, 0.3), (3.5, 0.3)],
        comps=("accordion", "guitar"),
        leads=("accordion", "flute", "voice"),
        progressions=("Am E7 Am E7", "C G7 C G7", "Am Dm E7 Am"),
    ),
    Rhythm(
        "disco",
        (110, 128),
        {"kick": _on(0, 1, 2, 3), "snare": _on(1, 3, loud=0.8), "open": _on(0.5, 1.5, 2.5, 3.5, loud=0.6)},
        {
            "kick": _on(0, 1, 2, 3),
            "snare": _on(1, 3),
            "open": _on(0.5, 1.5, 2.5, 3.5),
            "tambourine": _every(0.5, 4),
        },
        [(i / 2, "r" if i % 2 == 0 else "8", 0.4) for i in range(8)],
        [(0.5, 0.2), (1.5, 0.2), (1.75, 0.2), (3, 0.2), (3.5, 0.2)],
        comps=("guitar", "strings"),
        leads=("voice", "strings", "horn"),
    ),
    Rhythm(
        "half time",
        (136, 160),
        {"kick": [(0, 1), (1.5, 0.7)], "snare": _on(2), "hat": _every(1, 4)},
        {
            "kick": [(0, 1), (1, 0.6), (2.5, 0.8)],
            "snare": _on(2),
            "open": _every(1, 4),
            "hat": _every(0.5, 4),
        },
        [(0, "r", 1.4), (1.5, "r", 0.9), (3, "5", 0.9)],
        [(0, 1.8), (2, 0.9), (3, 0.9)],
        comps=("dirty guitar", "guitar"),
        melody_step=1.0,
    ),
)
