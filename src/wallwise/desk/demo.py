"""The dances that come with Wallwise, checked and packed, and a song that is played for one of them."""

from __future__ import annotations

import json
from dataclasses import dataclass
from functools import partial
from importlib import resources
from pathlib import Path
from typing import TYPE_CHECKING

from wallwise.desk import song_asked
from wallwise.desk.files import write_whole
from wallwise.desk.pack import Pack, make_pack
from wallwise.desk.song import corrected, hear_song
from wallwise.desk.song_asked import SongAsked
from wallwise.song.beatfile import SUFFIX

if TYPE_CHECKING:
    from wallwise.demo.score import Score


def demo_sheets() -> tuple[tuple[str, bytes], ...]:
    """The name and content of every demo sheet, by name."""
    folder = resources.files("wallwise").joinpath("demo", "sheets")
    files = sorted((f for f in folder.iterdir() if f.is_file()), key=lambda f: f.name)
    return tuple((f.name, f.read_bytes()) for f in files)


@dataclass(frozen=True, slots=True)
class Demo:
    """What the demo wrote: the packs in order, and a sheet with the song that it is danced to."""

    packs: tuple[Pack, ...]
    sheet: Path
    song: Path


def run_demo(folder: Path) -> Demo:
    """Lay every demo sheet into ``folder/sheets``, then check it and write its pack beside them.

    The dance of the song in ``folder/songs`` has its walls on the clock.  Raises Unwritable.
    """
    danced, song, beats = sung(folder / "songs")
    sheets = [write_whole(folder / "sheets" / name, content) for name, content in demo_sheets()]
    on_song = partial(song_asked.grid_for, SongAsked(beats))
    packs = [
        make_pack(sheet, folder / sheet.stem, grid_for=on_song if sheet.name == danced else None)
        for sheet in sheets
    ]
    return Demo(tuple(packs), folder / "sheets" / danced, song)


def sung(folder: Path) -> tuple[str, Path, Path]:
    """The demo sheet that is danced to the song in `folder`, the song, and its beats, found anew.

    Count 1 is where a teacher who knows the song would tap it.  Raises Unwritable.
    """
    song, truth = lay_song(folder)
    told = json.loads(truth.read_text(encoding="utf-8"))
    beats = folder / f"{song.stem}{SUFFIX}"
    beats.unlink(missing_ok=True)
    hear_song(song, corrected(first_count_sec=told["first_count_sec"]), beats=beats)
    return told["sheet"], song, beats


def lay_song(folder: Path, score: Score | None = None) -> tuple[Path, Path]:
    """The song of a demo dance in `folder` and its true beats beside it, as FLAC and JSON: both paths.

    It is *Peg and Rail*, to which `coathook-corner.txt` is danced, where no score is named.  It is
    played here, which takes some seconds, and only where it does not lie there yet.  Raises Unwritable.
    """
    from wallwise.demo.songs import PEG_AND_RAIL, play, truth_of

    score = score or PEG_AND_RAIL
    name = score.title.casefold().replace(" ", "-").replace("'", "")
    song, beats = folder / f"{name}.flac", folder / f"{name}.beats-true.json"
    truth = json.dumps(truth_of(score), indent=1) + "\n"
    if not (song.exists() and beats.exists() and beats.read_text(encoding="utf-8") == truth):
        from wallwise.demo.instruments import RATE
        from wallwise.song.sound import Label, Sound, encoded

        label = Label(score.title, score.by, "Invented music of the Wallwise demo")
        write_whole(song, encoded(Sound(play(score).samples, RATE), song.suffix, label))
        write_whole(beats, truth)
    return song, beats
