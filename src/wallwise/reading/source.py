"""The text of a sheet as it came: a text file, a Word document, a PDF or standard input.

What a file is, is told from its first bytes and never from its name.  Text is given back
with its line ends and its byte order mark (as U+FEFF) as they stand in the file, so that a
place in the text is a place in the file.  Whatever cannot be read as a sheet is refused with
`SourceError`: one sentence, fit to be shown to a teacher.
"""

from __future__ import annotations

import re
import subprocess
import sys
from codecs import BOM_UTF8, BOM_UTF16_BE, BOM_UTF16_LE, BOM_UTF32_BE, BOM_UTF32_LE
from collections.abc import Mapping
from pathlib import Path
from typing import NamedTuple

STDIN = "-"
SUFFIXES = (".txt", ".md", ".docx", ".pdf")

TEXT_LIMIT = 1_000_000  # characters; the longest sheets have some ten thousand
FILE_LIMIT = 20_000_000  # bytes, pictures and all
UNPACK_LIMIT_SEC = 3.5

_UNPACKER = Path(__file__).with_name("unpack.py")
_CONTROLS = re.compile(r"[\x00-\x08\x0e-\x1f\x7f]")  # tab, line ends and form feed pass
# UTF-8 that was cut or spliced shows these once it is taken for windows-1252.
_GARBLED = re.compile(r"â€|[ÃÂ][\x80-\xbf]")
# Western words seldom have two accented letters in a row and never four; other alphabets always do.
_OTHER_ALPHABET = re.compile(r"[À-ÿŠšŽžŒœŸƒ]{4}")
_FOREIGN_SHARE = 0.15  # French and German stay under a tenth


class SourceError(Exception):
    """A file that cannot be read as a step sheet; the text is one sentence that says why."""


class Source(NamedTuple):
    """The text of a sheet, and the codec that writes it back as it was.

    `encoding` is None where the file is no text file (a document, a PDF) and so cannot be
    written back.
    """

    text: str
    encoding: str | None


def load_text(path: str | Path) -> str:
    """The text of the sheet at `path`; SourceError where there is none to be had."""
    return load(path).text


def load(path: str | Path) -> Source:
    """The text of the sheet at `path`, ``-`` for standard input, with how it was written.

    Raises SourceError within five seconds whatever the file holds.
    """
    name = "standard input" if str(path) == STDIN else Path(path).name
    try:
        source = _decode(_bytes(path))
    except SourceError as error:
        raise SourceError(f"{name}: {error}") from None
    if len(source.text) > TEXT_LIMIT:
        raise SourceError(f"{name}: this is over a million characters of text, too long for a step sheet.")
    return source


def _bytes(path: str | Path) -> bytes:
    """What the file holds, never more than a little over the limit."""
    if str(path) == STDIN:
        data = sys.stdin.buffer.read(FILE_LIMIT + 1)
    else:
        data = _file_bytes(Path(path))
    if len(data) > FILE_LIMIT:
        raise SourceError("this file is over 20 MB, too large for a step sheet.")
    return data


def _file_bytes(path: Path) -> bytes:
    try:
        if path.is_dir():
            raise SourceError("this is a folder, and a sheet is a file.")
        if not path.exists():
            raise SourceError("there is no such file.")
        if not path.is_file():  # a device or a pipe may never end
            raise SourceError("this is not an ordinary file.")
        with path.open("rb") as file:
            return file.read(FILE_LIMIT + 1)
    except (OSError, ValueError) as error:  # ValueError: a name that no file can have
        reason = getattr(error, "strerror", None) or "no file can have this name"
        raise SourceError(f"this file cannot be opened ({reason}).") from None


def _decode(data: bytes) -> Source:
    if not data.strip(b" \t\r\n\x0c\x00"):
        raise SourceError("this file is empty.")
    if b"%PDF-" in data[:1024]:
        return Source(_unpack("pdf", data), None)
    if data.startswith(b"PK\x03\x04"):
        return Source(_unpack("docx", data), None)
    source = _decode_text(data)
    if not source.text.strip("\ufeff \t\r\n\f\v"):
        raise SourceError("this file is empty.")
    return source


def _decode_text(data: bytes) -> Source:
    if data.startswith((BOM_UTF32_BE, BOM_UTF32_LE)):
        raise SourceError("the encoding of this text cannot be told; save it as UTF-8.")
    if data.startswith((BOM_UTF16_BE, BOM_UTF16_LE)):
        return _decode_utf16(data)
    if data.startswith((b"{\\rtf", b"\xd0\xcf\x11\xe0")):
        raise SourceError("this is an old word-processor file; save it as .docx, .pdf or plain text.")
    try:
        text = data.decode("utf-8")
    except UnicodeDecodeError:
        return Source(_decode_western(data), "windows-1252")
    if _CONTROLS.search(text):
        raise SourceError("this is a binary file, not text.")
    return Source(text, "utf-8")


def _decode_utf16(data: bytes) -> Source:
    # The mark is cut off and given back by name, since the codec "utf-16" would write its own order.
    encoding = "utf-16-be" if data.startswith(BOM_UTF16_BE) else "utf-16-le"
    try:
        text = data.decode(encoding)
    except UnicodeDecodeError:
        raise SourceError("this text is marked as UTF-16 but is damaged.") from None
    if _CONTROLS.search(text):
        raise SourceError("this is a binary file, not text.")
    return Source(text, encoding)


def _decode_western(data: bytes) -> str:
    """`data` as windows-1252, if it reads like the mostly plain English of a step sheet."""
    if b"\x00" in data:
        raise SourceError("this is a binary file, not text.")
    if data.startswith(BOM_UTF8):
        raise SourceError("this text is marked as UTF-8 but is damaged.")
    try:
        text = data.decode("windows-1252")
    except UnicodeDecodeError:
        raise SourceError("the encoding of this text cannot be told; save it as UTF-8.") from None
    if _CONTROLS.search(text):
        raise SourceError("this is a binary file, not text.")
    foreign = [c for c in text if c > "\x7f"]
    if (
        len(foreign) > max(3, _FOREIGN_SHARE * len(text))
        or _OTHER_ALPHABET.search(text)
        or _GARBLED.search(text)
    ):
        raise SourceError("the encoding of this text cannot be told; save it as UTF-8.")
    return text


_UNPACK_SAYS: Mapping[str, str] = {"pdf": "PDF", "docx": "Word document"}


def _unpack(kind: str, data: bytes) -> str:
    """The text inside a packed file.

    A damaged or hostile file can make any library spin or swell, so it is unpacked in a process of its
    own, which can be ended.
    """
    what = _UNPACK_SAYS[kind]
    command = [sys.executable, "-P", str(_UNPACKER), kind]
    try:
        done = subprocess.run(  # noqa: S603 (our own interpreter and our own file)
            command, input=data, capture_output=True, timeout=UNPACK_LIMIT_SEC, check=False
        )
    except subprocess.TimeoutExpired:
        raise SourceError(f"this {what} takes too long to open; save it as plain text.") from None
    if done.returncode == 0:
        return done.stdout.decode("utf-8")
    said = done.stderr.decode("utf-8", "replace").strip()
    if done.returncode == 3 and said:  # the unpacker's own sentence
        raise SourceError(said)
    raise SourceError(f"this {what} is damaged and cannot be opened.")
