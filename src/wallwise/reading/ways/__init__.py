"""Every way an act can be danced: a verb's kinds and feet, a turn's sizes, a figure's accepted ways."""

from wallwise.reading.ways.figures import turn_named
from wallwise.reading.ways.items import items_of
from wallwise.reading.ways.turns import ticks

__all__ = ["items_of", "ticks", "turn_named"]
