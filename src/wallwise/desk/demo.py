"""The dances that come with Wallwise, checked and packed, and a song that is played for one of them."""

from __future__ import annotations

import json
from collections.abc import Iterator
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


def run_demo(folder: Path) -> Iterator[Pack]:
    """Lay every demo sheet into ``folder/sheets``, then check it and write its pack beside them.

    The dance of the song in ``folder/songs`` has its walls on the clock.  Each pack is given as soon
    as it is written.  Raises Unwritable.
    """
    danced_to = sung(folder / "songs")
    for name, content in demo_sheets():
        sheet = write_whole(folder / "sheets" / name, content)
        beats = danced_to.get(name)
        grid_for = partial(song_asked.grid_for, SongAsked(beats)) if beats is not None else None
        yield make_pack(sheet, folder / Path(name).stem, grid_for=grid_for)


def sung(folder: Path) -> dict[str, Path]:
    """The beats of the song in `folder`, by the demo sheet that is danced to it; they are found anew.

    Count 1 is where a teacher who knows the song would tap it.  Raises Unwritable.
    """
    song, truth = lay_song(folder)
    told = json.loads(truth.read_text(encoding="utf-8"))
    beats = folder / f"{song.stem}{SUFFIX}"
    beats.unlink(missing_ok=True)
    hear_song(song, corrected(first_count_sec=told["first_count_sec"]), beats=beats)
    return {told["sheet"]: beats}


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
