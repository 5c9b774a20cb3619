"""A song drawn: how loud it is, its beats, eights and phrases, and where count 1 falls.

A pure function of samples and grid; one row a minute, so that it can be read on paper.  Phrases
are told by their number and an upright line, never by colour alone.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from typing import TYPE_CHECKING
from xml.sax.saxutils import escape

from wallwise.song.grid import BeatGrid

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

ROW_SEC = 60.0
_WIDTH, _LEFT, _ROW, _TOP = 1200, 60, 120, 60  # pixels
_WAVE = 30  # half the height of the waveform
_STEPS = 600  # columns of the waveform in a row
COLOURS = {"wave": "#9db4c0", "beat": "#8a8a8a", "eight": "#1b1b1b", "phrase": "#a33b20", "text": "#1b1b1b"}


def draw(samples: NDArray[np.float32], rate_hz: int, grid: BeatGrid, *, title: str) -> str:
    """The song as SVG: `samples` [shape=(n,)] at `rate_hz` and the grid that was found for them."""
    rows = max(1, math.ceil(grid.length_sec / ROW_SEC))
    height = _TOP + rows * _ROW + 10
    style = f'font-family="sans-serif" font-size="13" fill="{COLOURS["text"]}"'
    parts = [
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {_WIDTH} {height}" {style}>',
        f"<title>{escape(title)}: beats, eights and phrases</title>",
        f'<rect width="{_WIDTH}" height="{height}" fill="#ffffff"/>',
        f'<text x="{_LEFT}" y="24" font-size="18">{escape(title)}</text>',
        f'<text x="{_LEFT}" y="42">{escape(_told(grid))}</text>',
        *_waves(samples, rate_hz, rows),
        *_marks(grid),
        "</svg>\n",
    ]
    return "\n".join(parts)


def _told(grid: BeatGrid) -> str:
    steady = "steady" if grid.steady else "its tempo moves"
    return (
        f"{grid.bpm:.1f} beats a minute, {steady}. Short marks: beats; long marks: "
        f"{'sixes' if grid.eights_are == 6 else 'eights'}; numbered lines: phrases and their counts; "
        "triangle: count 1."
    )


def _place(sec: float) -> tuple[float, float]:
    """Where a second is: x, and the middle of its row."""
    row = math.floor(max(0.0, sec) / ROW_SEC)
    x = _LEFT + (sec - row * ROW_SEC) / ROW_SEC * (_WIDTH - _LEFT - 20)
    return round(x, 1), _TOP + row * _ROW + _ROW / 2 + 8


def _waves(samples: NDArray[np.float32], rate_hz: int, rows: int) -> Iterator[str]:
    import numpy as np

    loudest = float(np.abs(samples).max(initial=1e-6))
    for row in range(rows):
        piece = samples[int(row * ROW_SEC * rate_hz) : int((row + 1) * ROW_SEC * rate_hz)]
        columns = max(1, round(_STEPS * len(piece) / (ROW_SEC * rate_hz)))
        tops = [float(np.abs(part).max(initial=0)) / loudest for part in np.array_split(piece, columns)]
        upper, lower = [], []
        for column, top in enumerate(tops):
            x, y = _place(row * ROW_SEC + (column + 0.5) / _STEPS * ROW_SEC)
            upper.append(f"{x},{y - _WAVE * top:.1f}")
            lower.append(f"{x},{y + _WAVE * top:.1f}")
        yield f'<polygon points="{" ".join(upper + lower[::-1])}" fill="{COLOURS["wave"]}"/>'
        yield f'<text x="8" y="{_place(row * ROW_SEC)[1] + 5:g}">{row}:00</text>'


def _marks(grid: BeatGrid) -> Iterator[str]:
    beats = [_line(grid.beat_to_sec(beat), 32, 38) for beat in range(grid.last_beat + 1)]
    eights = [_line(grid.beat_to_sec(beat), 30, 46) for beat in grid.eights()]
    yield f'<path d="{"".join(beats)}" stroke="{COLOURS["beat"]}" fill="none"/>'
    yield f'<path d="{"".join(eights)}" stroke="{COLOURS["eight"]}" stroke-width="1.5" fill="none"/>'
    for number, phrase in enumerate(grid.phrases, 1):
        sec = max(0.0, grid.beat_to_sec(phrase.starts_beat))
        x, y = _place(sec)
        yield f'<path d="{_line(sec, -44, 46)}" stroke="{COLOURS["phrase"]}" stroke-width="2" fill="none"/>'
        yield f'<text x="{x + 4:g}" y="{y - 34:g}">{number}: {phrase.counts:g}</text>'
    x, y = _place(max(0.0, grid.count_to_sec(1)))
    yield f'<path d="M{x - 6:g} {y - 52:g}h12l-6 10z" fill="{COLOURS["text"]}"/>'


def _line(sec: float, top: float, bottom: float) -> str:
    x, y = _place(sec)
    return f"M{x:g} {y + top:g}V{y + bottom:g}"
