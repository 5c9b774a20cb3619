"""Beats: the count marks of a section on the beats of its part."""

import re
from dataclasses import dataclass
from fractions import Fraction
from math import ceil

from wallwise.reading.marks import Mark
from wallwise.reading.outline import Group, SectionText
from wallwise.reading.pieces import on_beats

_NONE = 9.0  # the cost of steps that cannot be laid on the beats at all


def place_section(
    section: SectionText, base: Fraction, *, bar: int, usual: int, danced: bool = False
) -> None:
    """Give every marked group of a section its absolute beats, from `base` on, and the section its counts.

    `bar` is the beats of a bar, `usual` the counts of a section that tells none.  `danced` says
    that the section before has danced this one's first beat already.
    """
    marked = [(g, g.written) for g in section.groups if g.written is not None]
    if not marked:
        length = section.range[1] - section.range[0] + 1 if section.range else usual
        section.counts = Fraction(length)
        return
    counted = [(g, mark) for g, mark in marked if not mark.floating]
    first = (counted or marked)[0][1].first
    runs_on = base > 1 and -1 <= first - base <= 1
    count = _Count(last=base - 1 + danced, shift=Fraction(0) if runs_on else base - 1, bar=bar)
    waiting: list[Group] = []  # told between the marks without one
    for group in section.groups:
        if group.written is None:
            waiting.append(group)
            continue
        before = count.last
        count.take(group, group.written, opens=group is marked[0][0], waited=bool(waiting))
        if group.beats:
            _fill(waiting, group, before)
            waiting = []
    if len(waiting) == 1:
        first = Fraction(count.last // 1 + 1)
        lasts = waiting[0].lasts or _left(section, first - base, usual)
        waiting[0].beats = tuple(first + n for n in range(lasts))
        count.last = max([count.last, *waiting[0].beats])
    end = count.last // 1
    if counted and _wraps(*counted[-1]) and end > base:
        end -= 1
        section.wraps = True
    section.counts = end - base + 1


def _left(section: SectionText, danced: Fraction, usual: int) -> int:
    """How many counts a section leaves, of which so many are danced, to steps told last without a mark."""
    if section.range is not None:
        return max(0, section.range[1] - section.range[0] + 1 - int(danced))
    return -int(danced) % usual


def _fill(waiting: list[Group], group: Group, before: Fraction) -> None:
    """Let what waits without a mark take the counts that are missing before the next mark."""
    if len(waiting) == 1 and group.gap >= 1:
        first, last = int(before // 1) + 1, group.beats[0]
        waiting[0].beats = tuple(Fraction(beat) for beat in range(first, ceil(last)))
        group.gap = Fraction(0)


@dataclass(slots=True)
class _Count:
    """The count as far as it has been danced: the last beat, and how far marks lie before their beats."""

    last: Fraction
    shift: Fraction
    bar: int

    def take(self, group: Group, mark: Mark, *, opens: bool, waited: bool) -> None:
        """Place a group by its mark.

        `opens` says that it is the section's first, `waited` that steps without a mark stand before it.
        """
        if mark.floating:
            self.last = self.last // 1 + mark.first
            group.beats = (self.last,)
            return
        if not opens:
            self._begin_again(mark.first)
        beats = tuple(beat + self.shift for beat in mark.beats)
        if mark.start > group.start and beats[0] - self.last > 1 and not waited:
            beats = _come_to(group.text, self.last, beats)
        step = beats[0] - self.last
        group.beats = beats
        group.gap = step - 1 if step > 1 else min(step, Fraction(0))
        self.last = max(self.last, beats[-1])

    def _begin_again(self, first: Fraction) -> None:
        """Shift a mark that counts a bar or a section from 1 again to where the count stands."""
        start = first + self.shift
        if start > self.last:
            return
        for bars in (self.bar, 2 * self.bar, 8, 16, 12, 24):
            if 0 < start + bars - self.last <= 1:
                self.shift += bars
                return


def _come_to(text: str, last: Fraction, beats: tuple[Fraction, ...]) -> tuple[Fraction, ...]:
    """The beats of steps whose mark stands behind them: all since the `last` where they tell so many.

    A number behind a line of several steps says how far the count has come, and "walk R, L, shuffle R
    (3&4)" gives the counts of the shuffle alone.
    """
    since = *(Fraction(beat) for beat in range(int(last // 1) + 1, ceil(beats[0]))), *beats
    if len(beats) == 1 and beats[0].denominator == 1:
        return since
    own, whole = (min((lay.cost for lay in on_beats(text, some)), default=_NONE) for some in (beats, since))
    return since if whole < own else beats


def _wraps(group: Group, mark: Mark) -> bool:
    """Whether the mark's last number was written smaller than the one before it (``8&1``)."""
    numbers = [int(n) for n in re.findall(r"\d+", group.line.text[mark.start : mark.end])]
    return len(mark.beats) > 1 and len(numbers) > 1 and numbers[-1] < numbers[-2]
