"""What only the whole row shows: which cell of a table tells the steps, and whose feet stand apart."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

from wallwise.dance.model import Foot
from wallwise.reading.clauses.act import Act

_BY_THE_OTHER = ("behind", "across", "beside", "lock behind", "lock front")  # places said of the other foot
_FEWEST = 2  # feet in a row that are those of the act before them
_FEWEST_OF_FIGURE = 3


def name_cells(acts: list[Act], starts: list[int]) -> None:
    """Of the cells of a table row, the one that tells most is the steps; the others name them.

    `starts` are the indices in `acts` at which the cells begin.
    """
    cells = [acts[a:b] for a, b in pairwise([*starts, len(acts)]) if a < b]
    if len(cells) < 2:
        return
    for cell, following in pairwise(cells):
        if all(act.bare for act in cell) and _give_column(cell, following):
            acts[:] = [
                act for act in acts if not any(act is told for told in cell)
            ]  # all it says is said of the steps
            cell.clear()
    told = max(reversed(cells), key=_tells)  # of a foot and what it does, the latter
    for cell in cells:
        if cell is not told:
            for act in cell:
                act.label = True


def _tells(cell: list[Act]) -> int:
    return sum(2 * bool(act.foot or act.feet) + (not act.empty) for act in cell if not act.bare)


def _give_column(column: list[Act], cell: list[Act]) -> bool:
    """Let the feet of a column do the acts of the next cell, one each; whether those take them."""
    feet = [(foot, act.feet_at or act.foot_at) for act in column for foot in act.feet or (act.foot,) if foot]
    if len(feet) == 1:
        return _give_column_foot(cell, *feet[0])
    at = [i for i, act in enumerate(cell) if _moves(act)]
    if len(at) != len(feet) or any(act.figures or act.feet for act in cell):
        return False
    told = list(zip(at, feet, strict=True))
    given = [_pivots(cell[i]) or _give_column_foot(cell[i:], *foot) for i, foot in told]
    return all(given)


def _moves(act: Act) -> bool:
    """Whether an act wants a foot of its own."""
    return act.verb not in ("", "and", "turn", "hold") or bool(act.place) or _pivots(act)


def _pivots(act: Act) -> bool:
    """Whether it is a pivot, whose foot is the other one than it was stepped on."""
    return act.turn is not None and act.turn.own == "pivot"


def _give_column_foot(cell: list[Act], foot: Foot, at: tuple[int, int] | None) -> bool:
    """Let a column that holds only the foot do the first act of the next cell; whether that takes it."""
    first = cell[0]
    if first.foot is None:
        if first.verb == "turn" and len(cell) > 1 and cell[1].foot is None:
            cell[1].foot, cell[1].foot_at = foot, at
            first.foot_at = None
        else:
            first.foot, first.foot_at = foot, at
    elif first.foot is foot.other and first.place in _BY_THE_OTHER and first.against is None:
        # "L | step behind R": R is what it goes behind
        first.against, first.against_at = first.foot, first.foot_at
        first.foot, first.foot_at = foot, at
    elif first.foot is foot.other and first.against is None and not first.figures:
        first.in_column = foot
    else:
        return first.foot is foot
    return True


def with_feet(acts: list[Act]) -> list[Act]:
    """The acts, feet told behind them put where they belong: "shuffle forward, right, left, right"."""
    joined: list[Act] = []
    i = 0
    while i < len(acts):
        paired = _pair_before(acts, i)
        act, i = paired if paired is not None else (acts[i], i + 1)
        joined.append(act)
        if _wants_feet(act):
            i = _take_feet(acts, i, act)
    return joined


def _pair_before(acts: list[Act], i: int) -> tuple[Act, int] | None:
    """The figure of "R & L heel switches", whose feet stand before it, and where the next act stands."""
    first = acts[i]
    at = i + 2 if i + 1 < len(acts) and acts[i + 1].verb == "and" else i + 1
    if at >= len(acts) or first.foot is None or not first.bare:
        return None
    figure = acts[at]
    if not (figure.figures and figure.joined and figure.foot is first.foot.other):
        return None
    feet_at = (first.start, figure.foot_at[1]) if figure.foot_at else None
    feet = (first.foot, first.foot.other)
    told = replace(figure, foot=None, feet=feet, feet_at=feet_at, start=first.start, fresh=first.fresh)
    return told, at + 1


def _wants_feet(act: Act) -> bool:
    if act.feet:
        return False
    return (act.verb == "step" and act.foot is None) or (act.verb in ("", "step") and bool(act.figures))


def _take_feet(acts: list[Act], i: int, act: Act) -> int:
    """Give `act` the feet told from `i` on if they alternate; where the next act stands."""
    feet = [act.foot] if act.foot is not None else []
    j = i
    while (
        j < len(acts)
        and (acts[j].bare or _is_stepping(acts[j]))
        and (not feet or acts[j].aside == acts[i].aside)
    ):
        feet += acts[j].feet or [foot for foot in (acts[j].foot,) if foot is not None]
        j += 1
    if j == i:
        return i
    first = acts[i]
    if not _alternate(feet) and act.foot is not None and first.feet and first.feet[0] is act.foot:
        feet, j = list(first.feet), i + 1  # "right shuffle, R-L-R": the lead is told twice
    elif not _alternate(feet):
        return i
    fewest = _FEWEST_OF_FIGURE if act.figures and act.times != len(feet) else _FEWEST
    if len(feet) < fewest:
        return i
    act.feet, act.feet_at = tuple(feet), first.feet_at or first.foot_at
    act.faces, act.faces_at = acts[j - 1].faces, acts[j - 1].faces_at
    act.end = acts[j - 1].end
    return j


def _is_stepping(act: Act) -> bool:
    """Whether it says no more than with which feet: ", stepping R, L, R"."""
    more = act.place or act.part or act.turn or act.unknown or act.weight or act.both
    return act.verb == "step" and act.ing and bool(act.feet) and not more


def _alternate(feet: list[Foot]) -> bool:
    return all(a is not b for a, b in pairwise(feet))
