"""The song rules beyond their pages: what they say in the corners, and when they keep still."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest
from tests.checks.songs import told_song

from wallwise.checks import check_song
from wallwise.checks.rule import OnSong
from wallwise.dance.finding import Finding, Severity
from wallwise.reading import read
from wallwise.song.danced import lay
from wallwise.song.grid import Phrase

EIGHTS = """S1: SIDE TOUCHES, FORWARD, BACK
1-2  Step R to right side, touch L beside R
3-4  Step L to left side, touch R beside L
5-6  Step R forward, touch L beside R
7-8  Step L back, touch R beside L
"""
TAG = """Tag of {counts} counts after wall {wall}
1-2  Step R to right side, touch L beside R
3-4  Step L to left side, touch R beside L
"""
FEATHERS = "FEATHERS\n16 counts, 1 wall{head}\n" + EIGHTS + EIGHTS.replace("S1", "S2")
WALTZ = """SLOW FEATHERS
6 counts, 1 wall, waltz
1-3  Step L forward, step R beside L, step L in place
4-6  Step R back, step L beside R, step R in place
"""


def found(sheet: str, song: str, *, beats_per_bar: int = 4) -> list[Finding]:
    """What the song rules find."""
    reading = read(sheet)
    laid = lay(reading.dance, told_song(song, beats_per_bar=beats_per_bar))
    return list(check_song(OnSong(reading, laid)))


def named(sheet: str, song: str, *, beats_per_bar: int = 4) -> list[str]:
    """The names of the rules that find something."""
    return [finding.rule for finding in found(sheet, song, beats_per_bar=beats_per_bar)]


def feathers(*after: str, head: str = "") -> str:
    """The sheet of 16 counts with these lines after its steps."""
    return FEATHERS.format(head=head) + "\n".join(after)


def test_a_restart_says_where_it_would_fit() -> None:
    """The first phrase has two eights: a restart after one misses the second phrase, after two it fits."""
    sheet = feathers(EIGHTS.replace("S1", "S3"), "Restart on wall 1 after 8 counts").replace("16", "24")
    (finding,) = found(sheet, "bpm: 120\nphrases: 16 24 24")
    assert finding.message == (
        "The restart on wall 1 after 8 counts begins wall 2 at 0:04, 8 counts before phrase 2 begins; "
        "after 16 counts it would fit."
    )


def test_a_restart_before_a_tag_is_left_to_the_tag() -> None:
    """Eight counts, a tag of four and on: it is the tag that misses the phrase."""
    sheet = feathers("Restart on wall 2 after 8 counts", TAG.format(counts=4, wall=2))
    assert named(sheet, "bpm: 120\nphrases: 32 32 32") == ["tag-off-phrase"]


def test_a_phrase_hardly_heard_is_only_noted() -> None:
    """Of a phrase that may not be there, nothing has to be settled."""
    (finding,) = found(
        feathers("Restart on wall 1 after 8 counts"), "bpm: 120\nphrases: 32 32 32\nconfidence: 0.3"
    )
    assert ("restart-off-phrase", Severity.NOTE) == (finding.rule, finding.severity)


def test_a_restart_that_meets_its_phrase_is_none_to_tell() -> None:
    """And without known phrases there is nothing to meet."""
    sheet = feathers("Restart on wall 3 after 8 counts")
    assert not found(sheet, "bpm: 120\nphrases: 32 8 32 32")
    assert not found(sheet, "bpm: 120\nlength: 2:00")


def test_a_restart_on_the_songs_last_count_is_danced() -> None:
    """24 counts: the restart comes with the end. One count less and it never does."""
    sheet = feathers("Restart on wall 2 after 8 counts")
    assert not found(sheet, "bpm: 120\nlength: 0:12")
    assert named(sheet, "bpm: 120\nlength: 0:11") == ["song-runs-out"]


def test_a_tag_after_the_songs_last_wall_is_never_danced() -> None:
    """Two walls and no more; with a few counts more it has begun."""
    sheet = feathers(TAG.format(counts=4, wall=2))
    assert named(sheet, "bpm: 120\nlength: 0:16") == ["song-runs-out"]
    assert not found(sheet, "bpm: 120\nlength: 0:17")


def test_a_sequence_cut_off_is_told_once() -> None:
    """What of it is still to come, in counts and by name."""
    sheet = (
        "PAIRS\nPhrased, 1 wall\nSequence: A, B, A, B\n\nPART A: 8 counts\n"
        + EIGHTS.replace("S1: ", "")
        + "\nPART B: 8 counts\n"
        + EIGHTS.replace("S1: ", "")
    )
    (finding,) = found(sheet, "bpm: 120\nlength: 0:10")
    assert "song-runs-out" == finding.rule
    assert "12 counts of the sequence are still to come (B)" in finding.message
    assert not found(sheet, "bpm: 120\nlength: 0:16")


@pytest.mark.parametrize(
    ("head", "bpm", "flagged"),
    [
        (", 120 bpm", 120, False),
        (", 120 bpm", 124, False),  # within 4 per cent
        (", 120 bpm", 126, True),
        (", 60 bpm", 120, True),
        ("", 120, False),
        ("", 210, True),
        ("", 45, True),
        (", cha cha", 120, False),
        (", cha cha", 150, True),
        (", nightclub", 64, False),
        (", nightclub", 128, True),
        ("\nMusic: Polka of the Ferry", 90, False),  # what a song is called is no rhythm
        ("\nLevel: Improver polka", 90, True),
    ],
)
def test_a_tempo_is_unlikely_beside_the_sheets_or_its_rhythms(head: str, bpm: int, flagged: bool) -> None:
    """The sheet's own beats a minute within 4 per cent; else the published windows of the rhythm it names."""
    names = named(feathers(head=head), f"bpm: {bpm}\nlength: 2:00")
    assert (["tempo-unlikely"] if flagged else []) == names


def test_another_count_level_makes_a_tempo_likely() -> None:
    """128 beats are no nightclub, 64 counts are; the finding says so, and counted so there is none."""
    sheet = feathers(head=", nightclub")
    (finding,) = found(sheet, "bpm: 128\nlength: 2:00")
    assert "a count for every two of its beats would make it 64" in finding.message
    assert not found(sheet, "bpm: 128\nlength: 2:00\ncount per beat: 1/2")


def test_a_waltz_has_its_own_windows() -> None:
    """90 and 174 are waltzes (the second a fast one), 120 is none (National Dance Council of America:
    84-90 and 168-180, as a ballroom page lists them).
    """
    assert not found(WALTZ, "bpm: 90\nlength: 2:00", beats_per_bar=3)
    assert not found(WALTZ, "bpm: 174\nlength: 2:00", beats_per_bar=3)
    assert named(WALTZ, "bpm: 120\nlength: 2:00", beats_per_bar=3) == ["tempo-unlikely"]


@pytest.mark.parametrize(("told", "heard", "differs"), [(16, 16, False), (16, 32, True), (32, 16, True)])
def test_the_intro_is_compared_with_the_song(told: int, heard: int, differs: bool) -> None:
    """Counts before count 1 as the sheet tells them and as the song has them."""
    sheet = feathers(head=f"\nIntro: {told} counts")
    assert (["intro-differs"] if differs else []) == named(sheet, f"bpm: 120\nlength: 2:00\nintro: {heard}")


def test_an_intro_may_be_told_in_beats() -> None:
    """32 beats are 16 counts where every second beat is counted; a sheet may say either."""
    for told in (16, 32):
        sheet = feathers(head=f"\nIntro: {told} counts")
        assert not found(sheet, "bpm: 120\nlength: 2:00\nintro: 32\ncount per beat: 1/2")


def test_an_intro_that_ends_within_a_phrase_is_noted() -> None:
    """16 counts as the sheet says, but the phrases begin with the song and 32 counts later."""
    reading = read(feathers(head="\nIntro: 16 counts"))
    grid = told_song("bpm: 120\nlength: 2:00\nintro: 16")
    for starts, noted in ((0, 32), True), ((0, 16), False):
        phrases = tuple(Phrase(start, 32, 0.8) for start in starts)
        laid = lay(reading.dance, replace(grid, phrases=phrases))
        findings = check_song(OnSong(reading, laid))
        assert ([Severity.NOTE] if noted else []) == [f.severity for f in findings]
        assert all("the nearest begins 16 counts" in f.message for f in findings)


def test_a_sheet_without_an_intro_says_nothing() -> None:
    """Nothing told, nothing to compare."""
    assert not found(feathers(), "bpm: 120\nlength: 2:00\nintro: 7")


@pytest.mark.parametrize(
    "sheet",
    sorted((Path(__file__).parent.parent / "sheets").glob("*/*/sheet.txt"))[::6],
    ids=lambda path: path.parent.name,
)
def test_findings_on_any_sheet_are_placed_in_it(sheet: Path) -> None:
    """Whatever the sheet, a song makes no error, and what is found stands in the sheet, in order."""
    text = sheet.read_text(encoding="utf-8")
    findings = found(text, "bpm: 300\nphrases: 32 30 8 33 32 16\nintro: 3")
    assert findings == sorted(findings, key=lambda f: (f.span.start, f.rule))
    assert all(0 <= f.span.start <= f.span.end <= len(text) for f in findings)
    assert "tempo-unlikely" in [f.rule for f in findings]
