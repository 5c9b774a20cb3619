"""Figures told over several count marks: "sailor step, R behind (3), L side (&), R forward (4)"."""

from __future__ import annotations

from wallwise.reading.layout import Layout
from wallwise.reading.outline import Group
from wallwise.reading.pieces import items_in, on_beats
from wallwise.reading.tidy import Line

_TOO_DEAR = 1.9  # under its own mark the name fits no better: its steps come under the next marks
_FITS = 1.0
_MOST_STEPS = 6  # of a figure


def gather(groups: list[Group]) -> None:
    """Make one group of those over which a figure's steps are told: "sailor, R behind (3), L side (&), …".

    The last of them becomes it, since what is said behind the steps stands behind that one.
    """
    for i in range(len(groups) - 1, -1, -1):
        size = _groups_of_figure(groups[i : i + _MOST_STEPS])
        if size > 1:
            groups[i : i + size] = [_as_one(groups[i : i + size])]


def _groups_of_figure(groups: list[Group]) -> int:
    """How many groups tell the figure that the first one names; 1 where that is told by itself."""
    first = groups[0]
    named = any(act.figures for act in items_in(first.text)[1])
    if not named or len(first.beats) != 1 or _cost(on_beats(first.text, first.beats)) < _TOO_DEAR:
        return 1
    for size in range(2, len(groups) + 1):
        told = groups[:size]
        if len(told[-1].beats) != 1:
            return 1
        beats = tuple(beat for group in told for beat in group.beats)
        if list(beats) == sorted(set(beats)) and _cost(on_beats(listed(told).text, beats)) < _FITS:
            return size
    return 1


def _cost(layouts: tuple[Layout, ...]) -> float:
    return min((layout.cost for layout in layouts), default=_TOO_DEAR)


def listed(groups: list[Group]) -> Line:
    """The words of the groups as one line, a comma between them."""
    line = groups[0].line.slice(groups[0].start, groups[0].end)
    for group in groups[1:]:
        comma = Line(line.text + ",", [*line.starts, line.ends[-1]], [*line.ends, line.ends[-1]])
        line = (comma if line.text else line).join(group.line.slice(group.start, group.end))
    return line


def _as_one(groups: list[Group]) -> Group:
    first, last = groups[0], groups[-1]
    line = listed(groups)
    last.beats = tuple(beat for group in groups for beat in group.beats)
    last.line, last.start, last.end = line, 0, len(line.text)
    last.written, last.gap = first.written, first.gap
    return last
