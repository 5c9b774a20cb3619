"""The dances that come with Wallwise, checked and packed."""

from __future__ import annotations

from collections.abc import Iterator
from importlib import resources
from pathlib import Path

from wallwise.desk.files import write_whole
from wallwise.desk.pack import Pack, make_pack


def demo_sheets() -> tuple[tuple[str, bytes], ...]:
    """The name and content of every demo sheet, by name."""
    folder = resources.files("wallwise").joinpath("demo", "sheets")
    files = sorted((f for f in folder.iterdir() if f.is_file()), key=lambda f: f.name)
    return tuple((f.name, f.read_bytes()) for f in files)


def run_demo(folder: Path) -> Iterator[Pack]:
    """Lay every demo sheet into ``folder/sheets``, then check it and write its pack beside them.

    Each pack is given as soon as it is written.  Raises Unwritable.
    """
    for name, content in demo_sheets():
        sheet = write_whole(folder / "sheets" / name, content)
        yield make_pack(sheet, folder / Path(name).stem)
