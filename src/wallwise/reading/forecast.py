"""What a part would cost with one of its passages told otherwise, without reading it anew.

The same search as `solve`, of costs alone: what leads up to each passage and what follows it
are worked out once, so that another wording of a passage is laid between them.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence

from wallwise.reading.claims import claimed
from wallwise.reading.layout import Layout
from wallwise.reading.moves import CONFLICT, Move
from wallwise.reading.pieces import few, in_time, on_beats
from wallwise.reading.record import PartReading, Passage
from wallwise.reading.repeats import same_of
from wallwise.reading.solve import State, end_cost, faced, outcomes
from wallwise.reading.tokens import TURN

_Costs = dict[State, float]
_KEPT = 2.2 * CONFLICT  # above the cheapest, a state is not followed further


class Forecast:
    """The costs of one part's other wordings."""

    def __init__(self, part: PartReading) -> None:
        self._part = part
        self._groups: list[Sequence[Layout]] = [p.layouts for p in part.passages]
        self._arrived = self._arrivals()
        # What it costs from each state on to the end, passage by passage, as far as it was asked for.
        self._rest: list[_Costs] = [{} for _ in range(len(self._groups) + 1)]
        self._repeats = [n for n, p in enumerate(part.passages) if same_of(p.acts) is not None]

    def cost(self, number: int, words: str) -> float | None:
        """What the part would cost with `words` in passage `number`; None where that is not to be told."""
        if any(n >= number for n in self._repeats):
            return None  # what is repeated would change as well
        layouts = _laid(self._part.passages[number], words)
        if not layouts:
            return math.inf
        after = _danced(self._arrived[number], layouts)
        self._follow(number + 1, after)
        rest = self._rest[number + 1]
        return min((cost + rest[state] for state, cost in after.items()), default=math.inf)

    def _arrivals(self) -> list[_Costs]:
        """The states before each passage, with what leads up to them."""
        goal = self._part.goal
        row = [{(weight, weight, goal.facing): cost for weight, cost in goal.starts.items()}]
        for layouts in self._groups:
            row.append(_danced(row[-1], layouts) or row[-1])
        return row

    def _follow(self, number: int, states: Iterable[State]) -> None:
        """Work out what it costs from these states before passage `number` on to the end."""
        asked = [{s for s in states if s not in self._rest[number]}]
        steps: list[dict[State, _Costs]] = []
        for n, layouts in enumerate(self._groups[number:], number):
            steps.append({s: _danced({s: 0.0}, layouts) or {s: 0.0} for s in asked[-1]})
            known = self._rest[n + 1]
            asked.append({after for row in steps[-1].values() for after in row if after not in known})
        for state in asked[-1]:
            self._rest[-1][state] = end_cost(state, self._part.goal)
        for n in reversed(range(len(steps))):
            here, then = self._rest[number + n], self._rest[number + n + 1]
            for state, row in steps[n].items():
                here[state] = min(cost + then[after] for after, cost in row.items())


def _laid(passage: Passage, words: str) -> list[Layout]:
    """The ways to lay other words on the passage's beats, claiming beside them what the passage claims."""
    section, beats = passage.section, passage.group.beats
    layouts = on_beats(words, beats) if beats else in_time(words, section.base, section.counts)
    last = next((layout.moves[-1][1] for layout in passage.layouts if layout.moves), None)
    kept = few(layouts)
    if last is None or last.faces is None or any(act.faces is not None for act in passage.acts):
        return kept
    return [claimed(layout, last.faces, last.faces_at) for layout in kept]


def _danced(states: _Costs, layouts: Sequence[Layout]) -> _Costs:
    """The states after one passage; empty where it has no layouts."""
    merged: _Costs = {}
    for layout in layouts:
        here = {state: cost + layout.cost for state, cost in states.items()}
        for _, move in layout.moves:
            here = _moved(here, move)
        for state, cost in here.items():
            if cost < merged.get(state, math.inf):
                merged[state] = cost
    most = min(merged.values(), default=0.0) + _KEPT
    return {state: cost for state, cost in merged.items() if cost <= most}


def _moved(states: _Costs, move: Move) -> _Costs:
    after: _Costs = {}
    ways = {weight: outcomes(weight, move) for weight in {weight for _, weight, _ in states}}
    for (start, weight, facing), cost in states.items():
        for extra, _, _, turn, bears, _ in ways[weight]:
            for more, now, _ in faced(move, (facing + turn) % TURN):
                state, total = (start, bears, now), cost + extra + more
                if total < after.get(state, math.inf):
                    after[state] = total
    return after
