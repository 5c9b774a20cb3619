"""A practice track made from a sheet, with a song or without, and written to a file."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from pathlib import Path

from wallwise.dance.call import Call
from wallwise.dance.model import Dance, Step
from wallwise.desk.errors import DeskError, Unreadable, Unwritable
from wallwise.desk.files import write_whole
from wallwise.desk.report import Report, check_sheet
from wallwise.desk.song_asked import GridFor, refuse_no_tempo
from wallwise.give.lead import Lead
from wallwise.give.practice import CallsOf, Music, Track, practice_track, silent_grid
from wallwise.give.voice import NEEDS_EXTRA, RATE_HZ, Recorded, Voice, spoken_voice
from wallwise.glossary.calling import calls_of
from wallwise.song.beatfile import SUFFIX
from wallwise.song.grid import BeatGrid
from wallwise.song.sound import FORMATS, Label, Sound, Unhearable, encoded, read_stereo
from wallwise.song.stretch import FASTEST, SLOWEST

LONGEST_SEC = 12 * 60  # of the song; slowed to its half it fills a gigabyte
_COMMON_BPM = {3: 90.0}  # where neither the sheet nor the teacher says: a slow waltz, else 100
_OTHER_BPM = 100.0

_HEARD_ONE = (
    "Count 1 is where it was heard, {sec:.2f} s into the song; if that is wrong, tell it with "
    "`wallwise song FILE --first SEC --beats NAME.beats.json` and name that file here with --beats."
)

# NIOSH, Criteria for a recommended standard: occupational noise exposure, 1998: 85 dB(A) for eight
# hours, half the time for every 3 dB more.
SAFE_LISTENING = (
    "Keep the music where people can talk over it: 85 dB(A) is for 8 hours a day at most, 94 for one hour, "
    "100 for a quarter of an hour (NIOSH 1998), and the hall's own rules come first."
)


@dataclass(frozen=True, slots=True)
class PracticeAsked:
    """What is asked of the track: `tempo` is a share of the song's own, 0.75 for three quarters.

    `bpm` is the tempo where there is no song, `beats` the file of beats that somebody has looked at;
    `voice_pack` is a folder of the teacher's own words.
    """

    song: Path | None = None
    beats: Path | None = None
    bpm: float | None = None
    tempo: float = 1.0
    lead: Lead = Lead.WORDS
    voice_pack: Path | None = None


@dataclass(frozen=True)
class Practice:
    """What was written, from what, and what the teacher should know of it, in sentences."""

    report: Report
    path: Path
    track: Track
    notes: tuple[str, ...]


def make_practice(sheet: str | Path, out: Path, *, asked: PracticeAsked, song_grid: GridFor) -> Practice:
    """Write the practice track of the sheet to `out`, whose ending says what kind of file it is.

    `song_grid` finds the beats of the song that is asked for; it is not called without one.  A sheet
    with findings gets its track as it is danced.  Raises DeskError where sheet, song, voice or place
    refuse.
    """
    _refuse_misuse(asked, out)
    report = check_sheet(sheet)
    notes: list[str] = []
    music, grid = _music(report.dance, asked, song_grid, notes)
    track = practice_track(
        report.dance,
        music=music,
        grid=grid,
        tempo=asked.tempo,
        lead=asked.lead,
        voice=_voice(asked, notes),
        calls_of=caller_of(report),
    )
    if track.left_out:
        notes.append(_left_out(track, recorded=asked.voice_pack is not None))
    label = _label(report.dance, asked, track)
    path = write_whole(out, encoded(track.sound, out.suffix.lower(), label))
    return Practice(report, path, track, (*notes, SAFE_LISTENING))


def caller_of(report: Report) -> CallsOf:
    """What calls the steps of the dance; a figure that the sheet names around a step bears that name."""
    dance = report.dance
    sections = [s for part in (*dance.parts, *(t.part for t in dance.tags)) for s in part.sections]
    said = {
        step.span: f"{section.heading} {report.text[slice(*section.span)] if section.span else ''}"
        for section in sections
        for step in section.steps
        if step.span is not None
    }

    def around(step: Step) -> str:
        return said.get(step.span, "") if step.span is not None else ""

    @cache
    def called(steps: tuple[Step, ...]) -> tuple[Call, ...]:
        return calls_of(steps, around)

    return called


def _refuse_misuse(asked: PracticeAsked, out: Path) -> None:
    if out.suffix.lower() not in FORMATS:
        raise DeskError(f"{out}: sound is written as {', '.join(FORMATS)}; end the name with one of these.")
    if out.is_dir():
        raise Unwritable(f"{out}: this is a folder, and a track is a file.")
    if not SLOWEST <= asked.tempo <= FASTEST:
        raise DeskError(f"{asked.tempo:.0%} is no tempo to practise at: {SLOWEST:.0%} to {FASTEST:.0%} is.")
    if asked.song is not None and asked.song.name.endswith(SUFFIX):
        raise DeskError(f"{asked.song}: these are beats; name the song itself, and these with --beats.")
    if asked.bpm is not None:
        refuse_no_tempo(asked.bpm)


def _music(
    dance: Dance, asked: PracticeAsked, song_grid: GridFor, notes: list[str]
) -> tuple[Music | None, BeatGrid]:
    if asked.song is None:
        return None, silent_grid(dance, _counts_per_minute(dance, asked, notes))
    try:
        sound = read_stereo(asked.song, RATE_HZ)
    except Unhearable as refusal:
        raise Unreadable(str(refusal)) from None
    if sound.length_sec > LONGEST_SEC:
        raise Unreadable(f"{asked.song}: a practice track is made of at most {LONGEST_SEC // 60} minutes.")
    grid = song_grid(dance)
    if asked.beats is None:
        notes.append(_HEARD_ONE.format(sec=grid.count_to_sec(1)))
    return Music(sound, grid), grid


def _counts_per_minute(dance: Dance, asked: PracticeAsked, notes: list[str]) -> float:
    told = asked.bpm if asked.bpm is not None else dance.bpm
    if told is not None:
        return float(told)
    bpm = _COMMON_BPM.get(dance.beats_per_bar, _OTHER_BPM)
    notes.append(f"Neither the sheet nor --bpm gives a tempo: {bpm:g} counts a minute are taken.")
    return bpm


def _voice(asked: PracticeAsked, notes: list[str]) -> Voice | None:
    if asked.lead not in (Lead.WORDS, Lead.COUNTS):
        return None
    if asked.voice_pack is not None:
        return _recorded(asked.voice_pack)
    voice = spoken_voice()
    if voice is None:
        notes.append(NEEDS_EXTRA)
    return voice


def _recorded(folder: Path) -> Voice:
    pack = Recorded(folder)
    try:
        empty = not pack.files
    except OSError as error:
        raise Unreadable(f"{folder}: this folder of recordings cannot be read ({error.strerror}).") from None
    if empty:
        raise Unreadable(f"{folder}: there is no recording in this folder (five.wav, vine-right.mp3 …).")
    return _Hearable(pack)


@dataclass(frozen=True)
class _Hearable:
    """Recordings of which a damaged one is a refusal of the desk."""

    pack: Recorded

    def say(self, words: str, *, within_sec: float) -> Sound | None:
        try:
            return self.pack.say(words, within_sec=within_sec)
        except Unhearable as refusal:
            raise Unreadable(str(refusal)) from None


def _left_out(track: Track, *, recorded: bool) -> str:
    words = sorted({wanted.words[0] for wanted in track.left_out})
    shown = ", ".join(words[:6]) + (" …" if len(words) > 6 else "")
    why = (
        "have no recording short enough" if recorded else "are not called, for want of time before their beat"
    )
    return f"{len(track.left_out)} calls {why}: {shown}."


def _label(dance: Dance, asked: PracticeAsked, track: Track) -> Label:
    """What the file says of itself: the dance, how fast, to what, and how it was made."""
    slow = "" if asked.tempo == 1 else f" at {asked.tempo:.0%}"
    song = f"over {asked.song.name}" if asked.song is not None else "without a song"
    return Label(
        title=f"{dance.title}{slow}: practice",
        artist="Wallwise",
        comment=f"Practice track {song}, {track.grid.counts_per_minute:.1f} counts a minute.",
    )
