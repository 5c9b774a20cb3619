"""Files are written whole or not at all."""

from __future__ import annotations

from pathlib import Path

import pytest

from wallwise.desk.errors import Unwritable
from wallwise.desk.files import keep_copy, write_whole


def test_a_file_is_written_into_folders_that_are_made(tmp_path: Path) -> None:
    """Missing folders are made, and nothing but the file is left in them."""
    path = tmp_path / "a" / "b" / "page.html"
    assert write_whole(path, "½") == path
    assert path.read_bytes() == "½".encode()
    assert list(path.parent.iterdir()) == [path]


def test_a_new_file_may_be_read_by_all_who_usually_may(tmp_path: Path) -> None:
    """A written file has the mode of any new file, and a rewritten one keeps its own."""
    ordinary = tmp_path / "ordinary"
    ordinary.touch()
    path = write_whole(tmp_path / "new", b"")
    assert path.stat().st_mode == ordinary.stat().st_mode
    path.chmod(0o600)
    write_whole(path, b"again")
    assert path.stat().st_mode & 0o777 == 0o600


def test_a_write_that_fails_leaves_the_old_file(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """When the last move fails the old content stands and no other file is left."""
    path = tmp_path / "sheet.txt"
    path.write_text("old")

    def fail(*_: object) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(Path, "replace", fail)
    with pytest.raises(Unwritable, match="No space left"):
        write_whole(path, "new")
    assert path.read_text() == "old"
    assert list(tmp_path.iterdir()) == [path]


def test_a_link_stays_a_link(tmp_path: Path) -> None:
    """Writing through a link changes the file it points to."""
    (tmp_path / "real.txt").write_text("old")
    link = tmp_path / "link.txt"
    link.symlink_to("real.txt")
    write_whole(link, "new")
    assert link.is_symlink()
    assert (tmp_path / "real.txt").read_text() == "new"


def test_a_folder_in_the_way_is_refused(tmp_path: Path) -> None:
    """A path through a file is refused in a sentence that names it."""
    (tmp_path / "file").touch()
    with pytest.raises(Unwritable, match=r"page\.html: this place cannot be written to"):
        write_whole(tmp_path / "file" / "page.html", "")


def test_copies_never_overwrite_each_other(tmp_path: Path) -> None:
    """Each copy takes the next free number."""
    path = tmp_path / "sheet.txt"
    path.write_text("first")
    assert keep_copy(path).name == "sheet.before-1.txt"
    path.write_text("second")
    assert keep_copy(path).name == "sheet.before-2.txt"
    assert (tmp_path / "sheet.before-1.txt").read_text() == "first"
