"""Minutes and seconds as people write them: ``3:05``."""

from __future__ import annotations

import re

_TIME = re.compile(r"(?:(?P<hours>\d{1,2}):(?=\d\d:))?(?P<minutes>\d{1,3}):(?P<seconds>[0-5]\d(?:\.\d+)?)")
_SECONDS = re.compile(r"\d{1,5}(?:\.\d+)?")


def time_name(sec: float) -> str:
    """A time as minutes and seconds, to the nearest second; what is before the start has a minus.

    >>> time_name(185.4), time_name(59.7), time_name(-2)
    ('3:05', '1:00', '-0:02')
    """
    minutes, seconds = divmod(round(abs(sec)), 60)
    return f"{'-' if round(sec) < 0 else ''}{minutes}:{seconds:02d}"


def parse_time(text: str) -> float:
    """The seconds that ``m:ss``, ``h:mm:ss`` or plain seconds tell; ValueError for anything else.

    >>> parse_time("3:05"), parse_time("185.5")
    (185.0, 185.5)
    """
    text = text.strip()
    if _SECONDS.fullmatch(text):
        return float(text)
    told = _TIME.fullmatch(text)
    if told is None:
        raise ValueError(f"not a time: {text!r} (minutes and seconds, as in 3:05)")
    return int(told["hours"] or 0) * 3600 + int(told["minutes"]) * 60 + float(told["seconds"])
