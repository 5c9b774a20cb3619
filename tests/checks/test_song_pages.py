"""Every song rule's page is a case: on its song the first sheet is flagged, the second is that put right."""

from __future__ import annotations

import re
from functools import cache
from typing import NamedTuple

import pytest
from tests.checks.songs import told_song

from wallwise.checks import SONG_RULES, check, check_song
from wallwise.checks.rule import OnSong, SongRule
from wallwise.dance.finding import Finding
from wallwise.reading import read
from wallwise.song.danced import lay
from wallwise.song.tempos import ANY, RHYTHMS

_PAGE = re.compile(
    r"# (?P<name>\S+)\n\n(?P<says>[^\n]+)\n\n"
    r"## What\n\n(?P<what>[^#]+)\n\n"
    r"## Why\n\n(?P<why>[^#]+)\n\n"
    r"## Example\n\n[^\n]+:\n\n"
    r"```song\n(?P<song>.+?)```\n\n"
    r"```sheet flagged\n(?P<flagged>.+?)```\n\n> (?P<message>[^\n]+)\n\n"
    r"Put right:\n\n"
    r"```sheet clean\n(?P<clean>.+?)```\n\n"
    r"## Instead\n\n(?P<instead>[^#]+)\n",
    re.DOTALL,
)
every_rule = pytest.mark.parametrize("rule", SONG_RULES, ids=lambda rule: rule.name)


class Page(NamedTuple):
    """A page's own parts, as they stand in it."""

    name: str
    says: str
    song: str
    message: str
    flagged: str
    clean: str


def page(rule: SongRule) -> Page:
    """The rule's page taken apart; fails where a part is missing or stands elsewhere."""
    parts = _PAGE.fullmatch(rule.page)
    assert parts is not None, f"the page of {rule.name} has not its parts in order"
    return Page(*(parts[part] for part in Page._fields))


@cache
def on_song(sheet: str, song: str) -> tuple[Finding, ...]:
    """What the song rules find."""
    reading = read(sheet)
    return check_song(OnSong(reading, lay(reading.dance, told_song(song))))


@every_rule
def test_a_page_has_its_parts(rule: SongRule) -> None:
    """What, why, a song, an example flagged and put right, what to do; name and sentence are the rule's."""
    assert (rule.name, rule.says) == page(rule)[:2]


@every_rule
def test_the_first_sheet_is_flagged_as_the_page_says(rule: SongRule) -> None:
    """That one finding and no other, in the very words of the page, placed in the sheet."""
    told = page(rule)
    (finding,) = on_song(told.flagged, told.song)
    assert (rule.name, rule.severity, told.message) == (finding.rule, finding.severity, finding.message)
    assert 0 < finding.span.start < finding.span.end <= len(told.flagged)


@every_rule
def test_the_second_sheet_is_the_first_put_right(rule: SongRule) -> None:
    """The same dance on the same song, in which no rule finds anything."""
    told = page(rule)
    assert told.flagged.splitlines()[0] == told.clean.splitlines()[0]
    assert told.flagged != told.clean
    assert not on_song(told.clean, told.song)


@every_rule
def test_both_sheets_are_sound_by_themselves(rule: SongRule) -> None:
    """It is the song that makes the fault."""
    assert not [f for f in (*check(read(page(rule).flagged)), *check(read(page(rule).clean))) if f.loud]


def test_the_page_of_tempi_tells_the_windows_that_are_checked() -> None:
    """Every window of the published lists stands in it, as it is in the code."""
    (told,) = (rule.page for rule in SONG_RULES if rule.name == "tempo-unlikely")
    for rhythm in RHYTHMS:
        for slowest, fastest in rhythm.windows:
            assert f"{slowest:g} to {fastest:g}" in told, rhythm.name
    assert "{:g} to {:g}".format(*ANY.windows[0]) in told
