"""Many sheets: which they are, and that none is lost on the way."""

from __future__ import annotations

from pathlib import Path

import pytest

from wallwise.desk.errors import Unreadable
from wallwise.desk.many import check_many, sheets_in


def test_a_folder_stands_for_the_sheets_in_it(tmp_path: Path) -> None:
    """Files with a sheet's suffix, by name, hidden ones passed over, none twice."""
    for name in ("b.txt", "a.md", "c.PDF", "notes.log", ".hidden.txt", "in/d.docx", ".git/e.txt"):
        (tmp_path / name).parent.mkdir(exist_ok=True)
        (tmp_path / name).touch()
    found = sheets_in([tmp_path / "b.txt", tmp_path])
    assert [path.relative_to(tmp_path).as_posix() for path in found] == [
        "b.txt",
        "a.md",
        "c.PDF",
        "in/d.docx",
    ]


def test_a_folder_without_sheets_is_refused(tmp_path: Path) -> None:
    """It is bad usage rather than a sound result."""
    with pytest.raises(Unreadable, match="no sheet in this folder"):
        sheets_in([tmp_path])


@pytest.mark.parametrize("number", [1, 9])
def test_every_sheet_gets_its_answer_in_order(tmp_path: Path, number: int) -> None:
    """One process or several: as many outcomes as paths, each with its own path, refusals among them."""
    paths = [tmp_path / f"{index}.txt" for index in range(number)]
    checked = list(check_many(paths, jobs=2))
    assert [item.path for item in checked] == paths
    assert all(isinstance(item.outcome, Unreadable) for item in checked)
    assert str(checked[0].outcome) == "0.txt: there is no such file."
