"""A footprint drawing of one event: a row of the trace in, SVG text out.

The drawing lies like the room: the front wall (12:00) is the double line at the top.  The
left foot is an outline, the right foot is filled, and each bears its letter.  The foot that
bears the weight stands on a grey pad; a foot without weight is smaller.  A dot and a dashed
line show where the foot that moves came from; the wedge on the edge shows the way the body faces.
The same row gives the same text, byte for byte.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from math import cos, pi, sin

from wallwise.dance.model import Foot
from wallwise.floor.stance import Footprint, Point, Stance
from wallwise.floor.trace import Row

SIZE = 120.0  # of the square drawing, in its own units
_EDGE_AT = 12.0  # the walls; outside them there is room for the wedge
_SCALE = 165.0  # units to a metre
_MARGIN = 37.0  # the edge and the half of a foot
_FREE = 0.78  # the size of a foot without weight
_SOLE_SIZE = 1.5

_INK = "#1a1a1a"
_PAPER = "#ffffff"
_PAD = "#c9c9c9"
_EDGE = "#767676"

# A right sole, toes up, its middle at the origin, 28 units long.
_SOLE = (
    "M-1-14C4-14 6.2-10 5.9-4.5C5.7-1 4.3 1.5 4.3 5.5C4.3 11 3 14 0 14"
    "C-3 14-4.2 11-4.2 6.5C-4.2 2.5-5.6 0-5.7-5C-5.8-11-4.5-14-1-14Z"
)


@dataclass(frozen=True, slots=True)
class _View:
    """From metres on the floor to units of the drawing."""

    middle: Point
    scale: float

    def place(self, at: Point) -> tuple[float, float]:
        x = SIZE / 2 + (at.x_m - self.middle.x_m) * self.scale
        y = SIZE / 2 - (at.y_m - self.middle.y_m) * self.scale
        return x, y


def footprints(row: Row) -> str:
    """The event of `row` drawn: both feet after it, and where the foot that moved came from."""
    moved = _moved(row)
    view = _view([row.after.left.at, row.after.right.at])
    body = [_room(row.after.facing), *_pads(row.after, view)]
    body += [_way(before, after, view) for before, after in moved]
    standing_first = sorted((Foot.LEFT, Foot.RIGHT), key=lambda foot: foot is row.step.foot)
    body += [_foot(row.after, foot, view) for foot in standing_first]
    return _svg("".join(body))


def stance(feet: Stance) -> str:
    """Both feet as they stand, nothing moving."""
    view = _view([feet.left.at, feet.right.at])
    pads = "".join(_pads(feet, view))
    return _svg(_room(feet.facing) + pads + _foot(feet, Foot.LEFT, view) + _foot(feet, Foot.RIGHT, view))


def wall_square(facing: Fraction) -> str:
    """The room with a wedge in the middle that points to the wall that is faced."""
    low, high, middle = _n(_EDGE_AT), _n(SIZE - _EDGE_AT), _n(SIZE / 2)
    turned = f"translate({middle} {middle}) rotate({_n(float(facing) * 360)})"
    return _svg(f'{_walls(low, high)}<path d="M0-34L26 26L0 14L-26 26Z" fill="{_INK}" transform="{turned}"/>')


def _moved(row: Row) -> list[tuple[Footprint, Footprint]]:
    """Each foot that changes its spot, before and after."""
    pairs = ((row.before.foot(f), row.after.foot(f)) for f in (Foot.LEFT, Foot.RIGHT))
    return [(before, after) for before, after in pairs if before.at.distance_m(after.at) > 0.02]


def _view(points: list[Point]) -> _View:
    """Everything in the square: drawn at one scale, smaller only where it would not fit."""
    xs, ys = [p.x_m for p in points], [p.y_m for p in points]
    middle = Point((min(xs) + max(xs)) / 2, (min(ys) + max(ys)) / 2)
    widest = max(max(xs) - min(xs), max(ys) - min(ys))
    room = SIZE - 2 * _MARGIN
    return _View(middle, min(_SCALE, room / widest) if widest else _SCALE)


def _room(facing: Fraction) -> str:
    """The walls, and outside them the wedge at the way the body faces."""
    angle = float(facing) * 2 * pi
    # Along the square, not a circle: the diagonals reach into the corners.
    reach = (SIZE / 2 - 5.5) / max(abs(sin(angle)), abs(cos(angle)))
    x, y = SIZE / 2 + reach * sin(angle), SIZE / 2 - reach * cos(angle)
    turned = f"translate({_n(x)} {_n(y)}) rotate({_n(float(facing) * 360)})"
    wedge = f'<path d="M0-5L9 5H-9Z" fill="{_INK}" transform="{turned}"/>'
    return _walls(_n(_EDGE_AT), _n(SIZE - _EDGE_AT)) + wedge


def _walls(low: str, high: str) -> str:
    """The square of the floor; its front wall is a double line."""
    second = _n(_EDGE_AT + 4)
    return (
        f'<path d="M{low} {low}V{high}H{high}V{low}" fill="none" stroke="{_EDGE}" stroke-width="1.5"/>'
        f'<path d="M{low} {low}H{high}M{low} {second}H{high}" stroke="{_INK}" stroke-width="2"/>'
    )


def _pads(feet: Stance, view: _View) -> Iterator[str]:
    for foot in (Foot.LEFT, Foot.RIGHT):
        if feet.weight in (foot, Foot.BOTH):
            print_ = feet.foot(foot)
            yield f'<ellipse rx="14" ry="25.5" fill="{_PAD}" transform="{_stand(print_, view)}"/>'


def _way(before: Footprint, after: Footprint, view: _View) -> str:
    """The way a foot came: from a dot, or from the edge where the dot would lie outside."""
    (x1, y1), (x2, y2) = view.place(before.at), view.place(after.at)
    low, high = _EDGE_AT + 6, SIZE - _EDGE_AT - 4
    share = min(_share_inside(x2, x1, low=low, high=high), _share_inside(y2, y1, low=low, high=high))
    x1, y1 = x2 + (x1 - x2) * share, y2 + (y1 - y2) * share
    line = (
        f'<path d="M{_n(x1)} {_n(y1)}L{_n(x2)} {_n(y2)}" stroke="{_INK}" stroke-width="2" '
        'stroke-dasharray="5 3.5"/>'
    )
    if share < 1:
        return line
    dot = f'<circle cx="{_n(x1)}" cy="{_n(y1)}" r="4" fill="{_PAPER}" stroke="{_INK}" stroke-width="2"/>'
    return line + dot


def _share_inside(start: float, end: float, *, low: float, high: float) -> float:
    """How much of the way from `start` to `end` lies between `low` and `high`, 0 to 1."""
    if low <= end <= high:
        return 1.0
    edge = low if end < low else high
    return max(0.0, min(1.0, (edge - start) / (end - start))) if end != start else 0.0


def _foot(feet: Stance, foot: Foot, view: _View) -> str:
    """One sole with its letter; the letter stays upright whichever way the toes point."""
    print_ = feet.foot(foot)
    size = _SOLE_SIZE if feet.weight in (foot, Foot.BOTH) else _SOLE_SIZE * _FREE
    filled = foot is Foot.RIGHT
    mirrored = size if filled else -size
    angle = float(print_.toes) * 2 * pi
    x, y = view.place(print_.at)
    letter_x, letter_y = x + 5 * size * sin(angle), y - 5 * size * cos(angle)
    drop = 3.5 * size  # from the middle of a capital to its foot
    return (
        f'<path d="{_SOLE}" transform="{_stand(print_, view)} scale({_n(mirrored)} {_n(size)})" '
        f'fill="{_INK if filled else _PAPER}" stroke="{_INK}" stroke-width="1.8"/>'
        f'<text x="{_n(letter_x)}" y="{_n(letter_y + drop)}" fill="{_PAPER if filled else _INK}" '
        f'font-size="{_n(9.5 * size)}" font-weight="700" text-anchor="middle">{foot.value}</text>'
    )


def _stand(print_: Footprint, view: _View) -> str:
    x, y = view.place(print_.at)
    return f"translate({_n(x)} {_n(y)}) rotate({_n(float(print_.toes) * 360)})"


def _svg(body: str) -> str:
    side = _n(SIZE)
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {side} {side}" aria-hidden="true" '
        f'font-family="Verdana, DejaVu Sans, sans-serif">{body}</svg>'
    )


def _n(value: float) -> str:
    """A number with one decimal at most; never a negative zero, so that the text is stable."""
    return f"{round(value, 1) + 0.0:.1f}".removesuffix(".0")
