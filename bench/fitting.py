"""How fast and how well restarts are fitted, and how far wrongly heard phrases lead astray.

    python bench/fitting.py [SONGS] [SEED]
    python bench/fitting.py --heard [SEED]

The second renders a song of every rhythm, to a click, with the generator of the tests, and hears
it with the tempo, the metre and the first count told: are the cuts that its heard phrases ask for
those that its true ones do?  Seeds below 200 are taken by the bench of the beats.

In the first, songs are invented as lists of phrases: 32 counts each and, here and there, one of 16, 24 or 36.
The dance has 32 counts, may restart after every eight, and its sheet is right: its restarts and
tags are those that the true phrases ask for.  Then phrases are heard wrongly, as bench figures
of boundary detectors are usually given: a share of the starts is missed (recall), others are
heard where none is (precision), and some are a count early or late.
"""

from __future__ import annotations

import random
import sys
import time
from dataclasses import replace
from pathlib import Path
from statistics import mean

from wallwise.song.analyse import analyse
from wallwise.song.corrections import Corrections
from wallwise.song.danced import phrasing_of
from wallwise.song.fit import Choices, Phrasing, Plan, fit, judge
from wallwise.song.sound import Sound

RESTARTS = (8, 16, 24)
CHOICES = Choices(32, restarts=RESTARTS)
HEARD = Choices(32, restarts=RESTARTS, tolerance=1)
KEEN = ((1.0, 1.0), (0.9, 0.9), (0.8, 0.7), (0.78, 0.72))


def song(dice: random.Random) -> list[int]:
    """The phrases of a song of some ten walls with one or two odd ones."""
    phrases = [32] * dice.randint(8, 11)
    for place in dice.sample(range(1, len(phrases) - 1), dice.choice([1, 1, 2])):
        phrases[place] = dice.choice([16, 16, 24, 36])
    return phrases


def heard(phrases: list[int], dice: random.Random, *, recall: float, precision: float) -> Phrasing:
    """The phrases with starts missed, starts added on eights, and a tenth of them a count beside."""
    true = Phrasing.of(phrases)
    kept = [p for p in true.places[1:] if dice.random() < recall]
    extra = round(len(kept) * (1 / precision - 1))
    others = [p for p in range(8, int(true.length), 8) if p not in true.places]
    places = {p + (dice.choice([-1, 1]) if dice.random() < 0.1 else 0) for p in kept}
    places |= set(dice.sample(others, min(extra, len(others))))
    return Phrasing((0, *sorted(places)), true.length)


def main(arguments: list[str]) -> None:
    """Print the table that is asked for."""
    if arguments[:1] == ["--heard"]:
        _heard_table(int(arguments[1]) if arguments[1:] else 201)
        return
    songs = int(arguments[0]) if arguments else 300
    seed = int(arguments[1]) if arguments[1:] else 1
    print("recall precision  the true cuts found  walls flagged of a right sheet  restarts and tags flagged")
    for recall, precision in KEEN:
        dice = random.Random(seed)
        found, walls, cuts = [], [], []
        for _ in range(songs):
            phrases = song(dice)
            right = fit(Phrasing.of(phrases), CHOICES)
            assert not right.off
            if not right.cuts:
                continue  # two short phrases made a whole one
            phrasing = heard(phrases, dice, recall=recall, precision=precision)
            found.append(fit(phrasing, HEARD).cuts == right.cuts)
            walls.append(judge(right.starts, right.cuts, phrasing, choices=HEARD).off / len(right.starts))
            cuts.append(_flagged(right, phrasing))
        print(f"{recall:6.2f} {precision:9.2f} {mean(found):20.2f} {mean(walls):31.2f} {mean(cuts):26.2f}")
    print(f"\nLongest search: {_longest(songs) * 1000:.0f} ms (64 counts, a restart after any, 30 phrases)")


def _heard_table(seed: int) -> None:
    sys.path.insert(0, str(Path(__file__).resolve().parent.parent))
    from tests.song.rhythms import RHYTHMS
    from tests.song.tunes import compose

    same, right, cut = [], [], 0
    for rhythm in RHYTHMS:
        tune = compose(rhythm.name, seed=seed, about_sec=100)
        begins = tune.sections[1]  # after the intro
        counts = 24 if tune.beats_per_bar == 3 else 32
        choices = replace(
            HEARD,
            counts=counts,
            restarts=tuple(range(counts // 4, counts, counts // 4)),
            tags=(3, 6) if tune.beats_per_bar == 3 else (2, 4, 8),
            eight=counts // 4,
        )
        places = tuple(place - begins for place in tune.sections[1:])
        true = fit(Phrasing(places, len(tune.beats_sec) - begins), replace(choices, tolerance=0))
        told = Corrections(
            bpm=tune.bpm,
            beats_per_bar=tune.beats_per_bar,
            first_count_sec=float(tune.beats_sec[begins]),
        )
        phrasing = phrasing_of(analyse(Sound(tune.samples, tune.rate_hz), told).grid)
        assert phrasing is not None
        heard_plan = fit(phrasing, choices)
        same.append(heard_plan.cuts == true.cuts)
        right.append(not _flagged(true, phrasing) if true.cuts else True)
        cut += bool(true.cuts)
        print(f"{tune.name:16} true: {_told(true):50} heard: {'the same' if same[-1] else _told(heard_plan)}")
    print(f"\nSame cuts in {sum(same)} of {len(same)} songs, {cut} of which ask for any.")
    print(f"No restart or tag of a right sheet is flagged in {sum(right)} of {len(right)}.")


def _told(plan: Plan) -> str:
    cuts = (f"{cut.kind} {cut.wall}:{cut.counts:g}" for cut in plan.cuts)
    return ", ".join(cuts) + (f" ({plan.off} off)" if plan.off else "") or "none"


def _flagged(plan: Plan, phrasing: Phrasing) -> float:
    """The share of the plan's cuts after which the next wall is off what was heard."""
    starts = [plan.starts[cut.wall] for cut in plan.cuts]
    return mean(judge([start], [], phrasing, choices=HEARD).off for start in starts)


def _longest(songs: int) -> float:
    dice = random.Random(2)
    choices = Choices(64, restarts=tuple(range(8, 64)))
    longest = 0.0
    for _ in range(max(1, songs // 60)):
        phrasing = Phrasing.of(dice.choice([16, 24, 30, 32, 36, 48]) for _ in range(30))
        since = time.process_time()
        fit(phrasing, choices)
        longest = max(longest, time.process_time() - since)
    return longest


if __name__ == "__main__":
    main(sys.argv[1:])
