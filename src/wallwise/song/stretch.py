"""A song slower or faster at the same pitch; the only place that knows python-stretch.

Where a beat stood at second t of the song, it stands at t / tempo of what comes back.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from wallwise.song.sound import Samples, Sound

SLOWEST, FASTEST = 0.4, 1.6  # beyond these drums smear and voices warble (by ear and by habit; no source)


def stretched(sound: Sound, tempo: float) -> Sound:
    """The sound at `tempo` times its speed, 0.75 being three quarters: slower, hence longer.

    At a tempo of 1 the very samples come back: the method changes even what it leaves as fast as
    it was (some -42 dB).  Peaks can come out at twice full scale, so level or limit what
    comes back before it is written in whole numbers.  ValueError outside `SLOWEST` to `FASTEST`.
    """
    if not SLOWEST <= tempo <= FASTEST:
        raise ValueError(f"a tempo of {tempo:.0%}; it can be {SLOWEST:.0%} to {FASTEST:.0%}")
    if tempo == 1 or not len(sound.samples):
        return sound
    import numpy as np
    from python_stretch import Signalsmith

    from wallwise.song.sound import Sound

    channels = np.atleast_2d(sound.samples.T)
    stretch: Any = Signalsmith.Stretch()
    stretch.preset(len(channels), sound.rate_hz)
    stretch.setTimeFactor(tempo)
    slow: Samples = stretch.process(np.ascontiguousarray(channels, dtype=np.float32))
    return Sound(slow[0] if sound.samples.ndim == 1 else slow.T, sound.rate_hz)
