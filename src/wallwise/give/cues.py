"""When each word is spoken: calls end before the beat they call, numbers begin on their beat.

Calls come first: each is set so that it ends `LEAD_SEC` before its beat and begins after the word
before it has ended.  Where the full words do not fit, the words before them move up a little;
where that is not enough, the voice is asked to be as brisk as people can follow, then shorter
words are tried.  Numbers fill what the calls leave free.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace

from wallwise.give.voice import Voice
from wallwise.song.sound import Sound

# The beat must be free when it comes: 60 ms is about what the dancer 15 m away loses to the air (44 ms)
# and a sound engineer's tolerance.
LEAD_SEC = 0.06
_EARLIEST_SEC = 0.4  # before its beat less the lead: no call moves up further than this
_BREATH_SEC = 0.05  # between two words
_TOO_CLOSE_SEC = 0.49  # beats nearer than this are called in one breath: "cross, side, behind"
_MOST_AT_ONCE = 4
_MOVING = 8  # how many calls may move up for one; the last of them has hardly anywhere to go


@dataclass(frozen=True, slots=True)
class Wanted:
    """Words wanted at a beat: `words` says the same ever shorter, the fullest first."""

    beat_sec: float
    words: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Cue:
    """Words as they are spoken: from `starts_sec` on, about the beat at `beat_sec`."""

    starts_sec: float
    beat_sec: float
    words: str
    sound: Sound

    @property
    def ends_sec(self) -> float:
        """When the last of it is heard."""
        return self.starts_sec + self.sound.length_sec


def gathered(calls: Iterable[Wanted]) -> Iterator[Wanted]:
    """The calls, those in quick succession made one call before the first of them.

    >>> quick = [Wanted(1.0, ("cross",)), Wanted(1.3, ("side",)), Wanted(3.0, ("vine right", "vine"))]
    >>> [call.words for call in gathered(quick)]
    [('cross, side', 'cross'), ('vine right', 'vine')]
    """
    group: list[Wanted] = []
    for call in calls:
        if group and (call.beat_sec - group[-1].beat_sec > _TOO_CLOSE_SEC or len(group) == _MOST_AT_ONCE):
            yield _as_one(group)
            group = []
        group.append(call)
    if group:
        yield _as_one(group)


def _as_one(group: Sequence[Wanted]) -> Wanted:
    first = group[0]
    short = [call.words[-1] for call in group[1:]]
    told = [", ".join((first.words[-1], *short[:size])) for size in range(len(short), 0, -1)]
    return Wanted(first.beat_sec, (*told, *first.words))


def lay_calls(calls: Iterable[Wanted], voice: Voice) -> tuple[tuple[Cue, ...], tuple[Wanted, ...]]:
    """The calls as spoken, and those for which there was no time (or no recording), both in order.

    `calls` are in the order of their beats; seconds are those of the track, and nothing begins before 0.
    """
    laid: list[Cue] = []
    left_out: list[Wanted] = []
    for call in calls:
        ends_sec = call.beat_sec - LEAD_SEC
        free_sec = ends_sec - (laid[-1].ends_sec + _BREATH_SEC if laid else 0.0)
        said = _fullest(call.words, voice, within_sec=free_sec, at_most_sec=free_sec + _slack(laid))
        if said is None:
            left_out.append(call)
            continue
        words, sound = said
        _move_up(laid, sound.length_sec - free_sec)
        laid.append(Cue(ends_sec - sound.length_sec, call.beat_sec, words, sound))
    return tuple(laid), tuple(left_out)


def _fullest(
    words: Sequence[str], voice: Voice, *, within_sec: float, at_most_sec: float
) -> tuple[str, Sound] | None:
    """The fullest of the words that can be said in the first time, or else in the second."""
    for shorter in words:
        for limit_sec in dict.fromkeys((within_sec, at_most_sec)):
            sound = voice.say(shorter, within_sec=limit_sec) if limit_sec > 0 else None
            if sound is not None:
                return shorter, sound
    return None


def _slack(laid: Sequence[Cue]) -> float:
    """How far the last of the cues can move up, those before it moving where they have to."""
    slack_sec = 0.0
    earlier = laid[-_MOVING - 1 : -_MOVING]
    before_sec = earlier[0].ends_sec if earlier else -_BREATH_SEC
    for cue in laid[-_MOVING:]:
        early_sec = cue.beat_sec - LEAD_SEC - cue.ends_sec
        free_sec = cue.starts_sec - before_sec - _BREATH_SEC
        slack_sec = max(0.0, min(_EARLIEST_SEC - early_sec, free_sec + slack_sec))
        before_sec = cue.ends_sec
    return slack_sec


def _move_up(laid: list[Cue], by_sec: float) -> None:
    """Move the last of the cues up by this much, and those before it where they are in the way."""
    place = len(laid) - 1
    while place >= 0 and by_sec > 0:
        cue = laid[place] = replace(laid[place], starts_sec=laid[place].starts_sec - by_sec)
        place -= 1
        if place >= 0:
            by_sec = laid[place].ends_sec + _BREATH_SEC - cue.starts_sec


def lay_numbers(
    numbers: Sequence[Wanted], voice: Voice, *, among: Sequence[Cue] = ()
) -> tuple[tuple[Cue, ...], tuple[Wanted, ...]]:
    """The numbers as spoken on their beats, and those for which there was no time.

    A number keeps clear of the next one and of the calls `among` which it is spoken.
    """
    laid: list[Cue] = []
    left_out: list[Wanted] = []
    free_sec = 0.0
    taken = sorted((cue.starts_sec, cue.ends_sec) for cue in among)
    for place, number in enumerate(numbers):
        begins = number.beat_sec
        over = [start for start, _ in taken if start >= begins]
        if place + 1 < len(numbers):
            over.append(numbers[place + 1].beat_sec)
        room = min(over, default=begins + 2.0) - _BREATH_SEC / 2 - begins
        busy = begins < free_sec or any(start <= begins < end + _BREATH_SEC for start, end in taken)
        said = None if busy else _fullest(number.words, voice, within_sec=room, at_most_sec=room)
        if said is None:
            left_out.append(number)
            continue
        words, sound = said
        laid.append(Cue(begins, begins, words, sound))
        free_sec = begins + sound.length_sec
    return tuple(laid), tuple(left_out)
