"""Mends are offered, judged, applied together or one at a time, and written with a copy kept."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import pytest

from wallwise.dance.finding import Mend
from wallwise.dance.model import Span
from wallwise.desk.errors import DeskError, Unreadable, Unwritable
from wallwise.desk.mending import (
    apply_mends,
    changed_lines,
    chosen_text,
    offers,
    settle,
    write_mended,
)

if TYPE_CHECKING:
    from tests.desk.conftest import Reader

SAFE = "Ferry\n1 step R ? 1 step R\n2 step L\n"
FOOT = "Ferry\n1 step R\n2 step R ? 2 step L | 2 touch R\n3 step R ? 3 step R\n"


def test_a_mend_is_safe_when_it_rewrites_no_step(plain_reader: Reader) -> None:
    """A lone mend outside the steps is safe; one of several, or one that rewrites a step, never."""
    assert [offer.safe for offer in offers(plain_reader("Ferry ? Ferry\n1 step R\n"))] == [True]
    assert [offer.safe for offer in offers(plain_reader("Ferry ? Ferry | Fairy\n1 step R\n"))] == [False] * 2
    assert [offer.safe for offer in offers(plain_reader("Ferry ? Ferry ?\n1 step R\n"))] == [False]
    assert [(o.number, o.safe, o.likeliest) for o in offers(plain_reader(FOOT))] == [
        (1, False, True),
        (2, False, False),
        (3, False, True),
    ]


def test_chosen_mends_are_made_together(plain_reader: Reader) -> None:
    """The first and the third at once, though the first moves the place of the third."""
    report = plain_reader(FOOT)
    first, _, third = offers(report)
    assert chosen_text(report, [third, first]) == "Ferry\n1 step R\n2 step L\n3 step R\n"


def test_two_mends_of_the_same_words_are_refused(plain_reader: Reader) -> None:
    """One of them has to be chosen."""
    report = plain_reader(FOOT)
    with pytest.raises(DeskError, match="choose one"):
        chosen_text(report, offers(report)[:2])
    with pytest.raises(DeskError, match="choose one"):
        apply_mends("abc", [Mend(Span(1, 1), "x", ""), Mend(Span(1, 1), "y", "")])


def test_settling_makes_the_likeliest_mends_until_the_sheet_is_sound(plain_reader: Reader) -> None:
    """Both findings are gone, the likelier mend of the first was made, and settling again changes nothing."""
    text, made = settle(plain_reader(FOOT))
    assert text == "Ferry\n1 step R\n2 step L\n3 step R\n"
    assert [mend.replace for mend in made] == ["2 step L", "3 step R"]
    assert settle(plain_reader(text)) == (text, ())


def test_settling_keeps_no_mend_that_does_not_help(plain_reader: Reader) -> None:
    """A mend after which as much is found as before is left out, and the next finding's is tried."""
    text = "Ferry\n1 step R ? 1 step L ?\n2 step L ? 2 step L\n"
    assert settle(plain_reader(text))[0] == "Ferry\n1 step R ? 1 step L ?\n2 step L\n"


def test_the_diff_shows_only_the_lines_that_change(plain_reader: Reader) -> None:
    """A changed line before and after; a line taken out has nothing after it."""
    report = plain_reader(SAFE)
    assert changed_lines(report, offers(report)[0].mend) == (("1 step R ? 1 step R",), ("1 step R",))
    start = SAFE.index("2 step")
    assert changed_lines(report, Mend(Span(start, len(SAFE)), "", "leave it out")) == (("2 step L",), ())


def test_the_old_sheet_is_kept_and_the_encoding_too(tmp_path: Path) -> None:
    """The copy is the old file byte for byte; the new one is written as the old one was."""
    path = tmp_path / "sheet.txt"
    path.write_bytes("caf\u00e9 L\r\n".encode("windows-1252"))
    mended = write_mended(path, "caf\u00e9 R\r\n", was="caf\u00e9 L\r\n")
    assert mended.path.read_bytes() == "caf\u00e9 R\r\n".encode("windows-1252")
    assert mended.kept.read_bytes() == "caf\u00e9 L\r\n".encode("windows-1252")


def test_a_letter_the_encoding_lacks_changes_nothing(tmp_path: Path) -> None:
    """The refusal comes before anything is written."""
    path = tmp_path / "sheet.txt"
    path.write_bytes("caf\u00e9\n".encode("windows-1252"))
    with pytest.raises(Unwritable, match="save the sheet as UTF-8"):
        write_mended(path, "\u0416", was="caf\u00e9\n")
    assert [p.name for p in tmp_path.iterdir()] == ["sheet.txt"]


def test_a_sheet_changed_meanwhile_is_left_alone(tmp_path: Path) -> None:
    """What somebody else wrote since the check is never overwritten."""
    path = tmp_path / "sheet.txt"
    path.write_text("newer")
    with pytest.raises(Unreadable, match="changed meanwhile"):
        write_mended(path, "mended", was="older")
    assert path.read_text() == "newer"


def test_a_document_is_mended_beside_itself(tmp_path: Path) -> None:
    """A Word document stays as it is, and the mended text lies beside it."""
    import docx

    path = tmp_path / "sheet.docx"
    document = docx.Document()
    document.add_paragraph("1 step L")
    document.save(str(path))
    before = path.read_bytes()
    mended = write_mended(path, "1 step R", was="1 step L")
    assert (mended.path.name, mended.kept) == ("sheet.mended.txt", path)
    assert mended.path.read_text() == "1 step R"
    assert path.read_bytes() == before
