"""What can be read as text is; whatever cannot is refused in one sentence, and soon."""

from __future__ import annotations

import io
import time
import zipfile
import zlib
from pathlib import Path

import docx
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from wallwise.reading.source import FILE_LIMIT, SourceError, load, load_text

SHEET = "Lantern Ferry\r\n32 count 4 wall\r\n1-2 Step R forward, pivot ½ left\r\n"


def pdf(*lines: str, extra: bytes = b"") -> bytes:
    """A PDF of one page written out by hand after ISO 32000-1, annex H.3 ("Simple text string")."""
    shown = " ".join(f"({line}) Tj 0 -16 Td" for line in lines)
    content = f"BT /F1 12 Tf 50 700 Td {shown} ET".encode("latin-1") + extra
    packed = zlib.compress(content)
    objects = [
        b"<< /Type /Catalog /Pages 2 0 R >>",
        b"<< /Type /Pages /Kids [3 0 R] /Count 1 >>",
        b"<< /Type /Page /Parent 2 0 R /MediaBox [0 0 595 842] /Contents 4 0 R /Resources 6 0 R >>",
        b"<< /Length %d /Filter /FlateDecode >>\nstream\n%s\nendstream" % (len(packed), packed),
        b"<< /Type /Font /Subtype /Type1 /BaseFont /Helvetica /Encoding /WinAnsiEncoding >>",
        b"<< /Font << /F1 5 0 R >> >>",
    ]
    out, offsets = b"%PDF-1.4\n", []
    for number, body in enumerate(objects, 1):
        offsets.append(len(out))
        out += b"%d 0 obj\n%s\nendobj\n" % (number, body)
    table = b"".join(b"%010d 00000 n \n" % offset for offset in offsets)
    start = len(out)
    out += b"xref\n0 7\n0000000000 65535 f \n" + table
    return out + b"trailer << /Size 7 /Root 1 0 R >>\nstartxref\n%d\n%%%%EOF\n" % start


def word(build: str = "") -> bytes:
    """A Word document: a paragraph, a table of two rows, a paragraph."""
    document = docx.Document()
    document.add_paragraph("Lantern Ferry")
    table = document.add_table(rows=2, cols=2)
    for row, words in zip(table.rows, (("1-2", "Walk R, L"), ("3&4", "Shuffle R")), strict=True):
        for cell, text in zip(row.cells, words, strict=True):
            cell.text = text
    document.add_paragraph(f"Begin again{build}")
    out = io.BytesIO()
    document.save(out)
    return out.getvalue()


@pytest.mark.parametrize(
    ("data", "encoding"),
    [
        (SHEET.encode("utf-8"), "utf-8"),
        (SHEET.encode("utf-8-sig"), "utf-8"),
        (b"\xff\xfe" + SHEET.encode("utf-16-le"), "utf-16-le"),
        (b"\xfe\xff" + SHEET.encode("utf-16-be"), "utf-16-be"),
        (SHEET.encode("windows-1252"), "windows-1252"),
    ],
)
def test_text_is_read_and_can_be_written_back_byte_for_byte(
    tmp_path: Path, data: bytes, encoding: str
) -> None:
    """Whatever way the text is written, its words are the same and so are the bytes written back."""
    path = tmp_path / "sheet.txt"
    path.write_bytes(data)
    source = load(path)
    assert encoding == source.encoding
    assert SHEET == source.text.removeprefix("\ufeff")
    assert data == source.text.encode(encoding)


def test_word_tables_stand_where_they_stand(tmp_path: Path) -> None:
    """A table keeps its place between the paragraphs, and each row is a line."""
    path = tmp_path / "named-wrongly.txt"
    path.write_bytes(word())
    assert load_text(path) == "Lantern Ferry\n1-2\tWalk R, L\n3&4\tShuffle R\nBegin again"


def test_word_reviewers_changes_are_taken_as_accepted(tmp_path: Path) -> None:
    """Text a reviewer put in is part of the sheet and text struck out is not."""
    source = io.BytesIO(word("@"))
    out = io.BytesIO()
    with zipfile.ZipFile(source) as old, zipfile.ZipFile(out, "w") as new:
        for name in old.namelist():
            body = old.read(name)
            if name == "word/document.xml":
                put_in = b"again</w:t></w:r><w:ins><w:r><w:t> and smile</w:t></w:r></w:ins>"
                struck = b"<w:del><w:r><w:delText>never</w:delText><w:t>never</w:t></w:r></w:del><w:r><w:t>"
                assert b"again@" in body
                body = body.replace(b"again@", put_in + struck)
            new.writestr(name, body)
    path = tmp_path / "sheet.docx"
    path.write_bytes(out.getvalue())
    assert load_text(path).endswith("Begin again and smile")


def test_pdf_lines_are_lines(tmp_path: Path) -> None:
    """Each line of a PDF page is a line of text."""
    path = tmp_path / "sheet.pdf"
    path.write_bytes(pdf("Lantern Ferry", "1-2   Walk R, L", "3&4   Shuffle R"))
    lines = [" ".join(line.split()) for line in load_text(path).splitlines() if line.strip()]
    assert lines == ["Lantern Ferry", "1-2 Walk R, L", "3&4 Shuffle R"]


def test_standard_input_is_read(monkeypatch: pytest.MonkeyPatch) -> None:
    """A dash stands for standard input."""

    class Pipe:
        buffer = io.BytesIO(SHEET.encode())

    monkeypatch.setattr("sys.stdin", Pipe())
    assert load_text("-") == SHEET


def zip_bomb() -> bytes:
    """A small document whose one part unpacks to 200 MB."""
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w", zipfile.ZIP_DEFLATED) as archive:
        archive.writestr("[Content_Types].xml", "<Types/>")
        archive.writestr("word/document.xml", b" " * 200_000_000)
    return out.getvalue()


REFUSED = {
    "empty": (b"", "empty"),
    "blank": (b" \r\n\t\n", "empty"),
    "byte order mark alone": (b"\xef\xbb\xbf\n", "empty"),
    "zeros": (b"\x00" * 64, "empty"),
    "binary": (b"\x7fELF\x02\x01\x01\x00\x00\x00\x01\x02\x03", "binary"),
    "control characters": (b"Step R\x01\x02\x03", "binary"),
    "UTF-16 without a mark": ("Step R forward".encode("utf-16-le"), "binary"),
    "UTF-16 cut short": (b"\xff\xfeS\x00t", "damaged"),
    "UTF-32": ("Step R".encode("utf-32"), "encoding"),
    "UTF-8 cut short, marked": (b"\xef\xbb\xbfStep \xc2", "damaged"),
    "Cyrillic in KOI8-R": ("Шаг правой вперёд, поворот".encode("koi8-r"), "encoding"),
    "a Cyrillic word among English": (f"Step R forward {'x ' * 300} поворот".encode("cp1251"), "encoding"),
    "Japanese in Shift-JIS": ("右足を前に踏み出す".encode("shift-jis"), "encoding"),
    "UTF-8 with one byte spoilt": ("Turn ½ left – step\xa0".encode() + b"\xff", "encoding"),
    "rich text": (b"{\\rtf1\\ansi Step R}", "old word-processor"),
    "too long": (b"step right " * 100_000, "million"),
    "too large": (b" " * FILE_LIMIT + b"x" * 10, "20 MB"),
    "damaged PDF": (b"%PDF-1.7\nthe rest is missing", "damaged"),
    "PDF cut in half": (pdf("Lantern Ferry")[:200], "PDF"),
    "PDF without text": (pdf(), "no text"),
    "PDF that swells": (pdf("x", extra=b" " * 300_000_000), "PDF"),
    "PDF that never ends": (pdf("x", extra=b" q Q" * 2_000_000), "PDF"),
    "damaged document": (word()[:3000], "damaged"),
    "an archive": (zip_bomb()[:30] + b"PK", "damaged"),
    "document that swells": (zip_bomb(), "too large"),
}


@pytest.mark.parametrize("case", REFUSED)
def test_what_is_no_sheet_gets_one_sentence_within_five_seconds(tmp_path: Path, case: str) -> None:
    """A file that cannot be read is refused in one sentence that names it."""
    data, word_said = REFUSED[case]
    path = tmp_path / "sheet.txt"
    path.write_bytes(data)
    start = time.monotonic()
    with pytest.raises(SourceError) as refusal:
        load_text(path)
    assert time.monotonic() - start < 5
    said = str(refusal.value)
    assert word_said in said
    assert said.startswith("sheet.txt: ")
    assert said.endswith(".")
    assert "\n" not in said


def test_a_zip_that_is_no_document_is_refused(tmp_path: Path) -> None:
    """An archive of other things is no sheet."""
    path = tmp_path / "things.zip"
    with zipfile.ZipFile(path, "w") as archive:
        archive.writestr("readme.txt", "hello")
    with pytest.raises(SourceError, match=r"things\.zip: this is an archive"):
        load_text(path)


def test_missing_files_and_folders_are_refused(tmp_path: Path) -> None:
    """No such file, a folder, a device and an impossible name each get their sentence."""
    for path, said in (
        (tmp_path / "none.txt", "no such file"),
        (tmp_path, "folder"),
        (Path("/dev/zero"), "ordinary"),
        ("bad\0name", "name"),
    ):
        with pytest.raises(SourceError, match=said):
            load_text(path)


@settings(max_examples=150, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(data=st.binary(max_size=300))
def test_any_bytes_are_text_or_refused(tmp_path: Path, data: bytes) -> None:
    """Nothing that a text file holds makes a traceback."""
    path = tmp_path / "any.txt"
    path.write_bytes(b"Step R " + data)
    try:
        source = load(path)
    except SourceError:
        return
    assert source.encoding is not None
    assert source.text.encode(source.encoding) == path.read_bytes()
