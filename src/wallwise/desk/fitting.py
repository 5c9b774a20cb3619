"""Restarts and tags that would fit a song, beside those that the sheet has.

The object that `wallwise fit --json` prints is made here and nowhere else.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from fractions import Fraction
from pathlib import Path
from typing import Any

from wallwise.checks.rules.restart_inside_figure import inside_figure
from wallwise.dance.clock import facing_name
from wallwise.dance.model import Dance, Part, Restart, Section, Tag
from wallwise.dance.restarts import restart_counts
from wallwise.dance.walls import WallKind
from wallwise.desk.errors import DeskError
from wallwise.desk.facts import number
from wallwise.desk.report import read_text, with_sheet
from wallwise.desk.song_asked import GridFor
from wallwise.reading import Reading
from wallwise.song.danced import Danced, lay, tolerance_of
from wallwise.song.fit import MAX_CUTS, TAGS, Choices, Cut, CutKind, Plan, fit, judge

_WALTZ_TAGS = (3, 6)  # a bar of the waltz, or two


@dataclass(frozen=True, slots=True)
class FitReport:
    """The best plan and the sheet's own; each with the dance so cut, laid over the song."""

    title: str
    plan: Plan
    laid: Danced
    own: Plan
    own_laid: Danced

    @property
    def says(self) -> str:
        """How the sheet's own restarts and tags compare, in a sentence."""
        own, best = self.own, self.plan
        who = "The sheet's own restarts and tags" if own.cuts else "The sheet, which has none of them,"
        does, comes, leaves = ("do", "come", "leave") if own.cuts else ("does", "comes", "leaves")
        if own.cost < best.cost:
            return f"{who} {does} better than these: {_walls_off(own)}."
        if own.cost == best.cost:
            return f"{who} {does} as well as any: {_walls_off(own)}."
        if own.off == best.off:
            return f"{who} {comes} as near, {_but(own, best)}: {_walls_off(own)}."
        return f"{who} {leaves} {_walls_off(own)}; the best leaves {_walls_off(best)}."

    def as_json(self) -> dict[str, Any]:
        """The object that `wallwise fit --json` prints, as dicts, lists, strings and numbers."""
        return {
            "title": self.title,
            **_plan_row(self.plan, self.laid),
            "starts_sec": [round(self.laid.grid.count_to_sec(s), 3) for s in self.plan.starts],
            "own": _plan_row(self.own, self.own_laid),
            "says": self.says,
        }


def fit_sheet(path: str | Path, grid_for: GridFor, *, max_cuts: int = MAX_CUTS) -> FitReport:
    """Where the sheet at `path` would have to be cut for the song that `grid_for` gives for its dance.

    Raises a DeskError where there is no sheet or song, no phrases are known, or the dance is phrased.
    """
    return with_sheet(path, lambda text, name: _made(read_text(text, name=name), name, grid_for, max_cuts))


def _made(reading: Reading, name: str, grid_for: GridFor, max_cuts: int) -> FitReport:
    dance = reading.dance
    if dance.sequence is not None:
        raise DeskError(
            f"{name}: this dance follows a sequence of parts; `wallwise walls` shows where they fall."
        )
    grid = grid_for(dance)
    own_laid = lay(dance, grid)
    if own_laid.phrasing is None:
        raise DeskError("The phrases of the song are needed: --song, or --phrases “32 32 16 32”.")
    if not any(stretch.begins for stretch in own_laid.stretches):
        raise DeskError(f"{name}: there is nothing to dance here.")
    restarts = tuple(int(counts) for counts in restart_counts(dance))
    choices = Choices(
        counts=float(dance.parts[0].counts),
        restarts=restarts,
        rough=frozenset(k for k in restarts if inside_figure(reading, Fraction(k))),
        tags=_WALTZ_TAGS if dance.beats_per_bar == 3 else TAGS,
        max_cuts=max_cuts,
        tolerance=float(tolerance_of(grid)),
        eight=grid.eights_are,
    )
    plan = fit(own_laid.phrasing, choices)
    own = judge(*own_plan(own_laid, reading), own_laid.phrasing, choices=choices)
    return FitReport(dance.title, plan, lay(cut_as(dance, plan), grid), own, own_laid)


def own_plan(laid: Danced, reading: Reading) -> tuple[list[float], list[Cut]]:
    """The starts and cuts that the sheet itself has on this song; what no wall follows is no cut."""
    begun = [index for index, stretch in enumerate(laid.stretches) if stretch.begins]
    starts = [number(laid.stretches[index].starts_count) for index in begun]
    cuts: list[Cut] = []
    for stretch in laid.stretches[: begun[-1]]:
        wall, counts = stretch.wall.number, stretch.wall.skipped + stretch.counts
        if stretch.wall.kind is WallKind.TAG:
            cuts.append(Cut(CutKind.TAG, wall, number(stretch.counts)))
        elif stretch.cut_by == "restart":
            changed = any(r.wall == wall and r.change for r in laid.dance.restarts)
            rough = not changed and inside_figure(reading, counts)
            cuts.append(Cut(CutKind.RESTART, wall, number(counts), rough))
    return starts, cuts


def cut_as(dance: Dance, plan: Plan) -> Dance:
    """The dance with the plan's restarts and tags in place of its own; a tag stands still."""
    restarts = [c for c in plan.cuts if c.kind is CutKind.RESTART]
    tags = [c for c in plan.cuts if c.kind is CutKind.TAG]
    return replace(
        dance,
        restarts=tuple(Restart(cut.wall, Fraction(cut.counts)) for cut in restarts),
        tags=tuple(Tag(cut.wall, _standing(Fraction(cut.counts))) for cut in tags),
    )


def _standing(counts: Fraction) -> Part:
    return Part("tag", (Section(1, Fraction(1), counts, ()),))


def _plan_row(plan: Plan, laid: Danced) -> dict[str, Any]:
    return {
        "cost": number(Fraction(plan.cost)),
        "cuts": [cut_row(cut, laid) for cut in plan.cuts],
        "starts": [number(Fraction(start)) for start in plan.starts],
        "misfit_counts": number(Fraction(plan.misfit)),
        "walls_off_phrase": plan.off,
    }


def cut_row(cut: Cut, laid: Danced) -> dict[str, Any]:
    """A cut as `--json` prints it, with its second and where the room faces then."""
    stretch = next(
        s
        for s in laid.stretches
        if s.wall.number == cut.wall
        and (s.wall.kind is WallKind.TAG if cut.kind is CutKind.TAG else s.cut_by == "restart")
    )
    if cut.kind is CutKind.TAG:
        told = {"kind": "tag", "after_wall": cut.wall, "counts": number(Fraction(cut.counts))}
        at, facing = stretch.starts_count, stretch.wall.starts_facing
    else:
        told = {"kind": "restart", "wall": cut.wall, "after_counts": number(Fraction(cut.counts))}
        at, facing = stretch.starts_count + stretch.counts, stretch.ends_facing
    told |= {"inside_figure": cut.rough} if cut.kind is CutKind.RESTART else {}
    return {**told, "sec": round(laid.grid.count_to_sec(at), 3), "facing": facing_name(facing)}


def _walls_off(plan: Plan) -> str:
    if not plan.off:
        return "no wall off the phrase"
    return f"{plan.off} of {len(plan.starts)} walls off the phrase"


def _cuts(plan: Plan) -> str:
    return f"{len(plan.cuts)} cut{'s' if len(plan.cuts) != 1 else ''}"


def _but(own: Plan, best: Plan) -> str:
    """What makes the sheet's own plan the worse of two that leave as many walls off the phrase."""
    if len(own.cuts) > len(best.cuts):
        return f"but with {_cuts(own)} instead of {len(best.cuts) or 'none'}"
    if sum(cut.rough for cut in own.cuts) > sum(cut.rough for cut in best.cuts):
        return "but inside a figure"
    return f"but {own.misfit - best.misfit:g} counts further off in all"
