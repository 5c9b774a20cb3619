"""Every way an act can be danced: a verb's kinds and feet, a turn's sizes, a figure's accepted ways."""

from wallwise.reading.ways.figures import turn_named
from wallwise.reading.ways.items import items_of, led_by
from wallwise.reading.ways.kinds import GESTURES
from wallwise.reading.ways.turns import ticks

__all__ = ["GESTURES", "items_of", "led_by", "ticks", "turn_named"]
