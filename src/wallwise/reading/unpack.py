"""The text inside a Word document or a PDF.  Run as a script: bytes in, UTF-8 out.

`source` starts this file in a process of its own.  It imports nothing of the package, so that
starting it costs little.  Exit 0: the text is on standard output.  Exit 3: one sentence is on
standard error.  Anything else: the file is damaged.
"""

from __future__ import annotations

import io
import logging
import re
import sys
import zipfile
from collections.abc import Iterator
from contextlib import suppress
from typing import Any

PAGES = 60
TEXT_LIMIT = 1_000_000  # characters
XML_LIMIT = 12_000_000  # bytes of one part of a document, unpacked
ZIP_LIMIT = 80_000_000  # bytes of the whole document, pictures and all, unpacked
MEMORY_LIMIT = 1_500_000_000  # bytes

_W = "{http://schemas.openxmlformats.org/wordprocessingml/2006/main}"
_MC = "{http://schemas.openxmlformats.org/markup-compatibility/2006}"
# Text struck out by a reviewer, and the second copy of a text box kept for old readers.
_SKIPPED = frozenset({f"{_W}del", f"{_W}moveFrom", f"{_W}instrText", f"{_MC}Fallback"})
_CONTROLS = re.compile(r"[\x00-\x08\x0e-\x1f\x7f]")
_GLYPHS = {f"{_W}tab": "\t", f"{_W}br": "\n", f"{_W}cr": "\n", f"{_W}noBreakHyphen": "-"}


class Refusal(Exception):
    """Why the file is refused, in one sentence."""


def docx_text(data: bytes) -> str:
    """Paragraphs and tables in the order of the document; a table row is a line, its cells parted by tabs."""
    import docx

    with zipfile.ZipFile(io.BytesIO(data)) as archive:
        entries = archive.infolist()
        if "[Content_Types].xml" not in archive.namelist():
            raise Refusal("this is an archive, not a step sheet.")
        large = any(e.file_size > XML_LIMIT for e in entries if e.filename.endswith((".xml", ".rels")))
        if large or sum(e.file_size for e in entries) > ZIP_LIMIT:
            raise Refusal("this Word document is too large for a step sheet.")
    body = docx.Document(io.BytesIO(data)).element.body
    return "\n".join(_blocks(body))


def _blocks(element: Any) -> Iterator[str]:
    for child in element:
        if child.tag == f"{_W}p":
            yield _paragraph(child)
        elif child.tag == f"{_W}tr":
            yield "\t".join(" ".join(_blocks(cell)).strip() for cell in child.iter(f"{_W}tc"))
        elif isinstance(child.tag, str) and child.tag not in _SKIPPED:
            yield from _blocks(child)


def _paragraph(element: Any) -> str:
    """The text of a paragraph; a text box anchored in it follows on lines of its own."""
    return "".join(_runs(element))


def _runs(element: Any) -> Iterator[str]:
    for child in element:
        if child.tag == f"{_W}t":
            yield child.text or ""
        elif child.tag in _GLYPHS:
            yield _GLYPHS[child.tag]
        elif child.tag == f"{_W}txbxContent":
            yield "\n" + "\n".join(_blocks(child))
        elif isinstance(child.tag, str) and child.tag not in _SKIPPED and child.tag != f"{_W}tabs":
            yield from _runs(child)


def pdf_text(data: bytes) -> str:
    """The pages' text, line by line as the eye sees it; a form feed between pages."""
    import pypdf

    logging.getLogger("pypdf").setLevel(logging.CRITICAL)
    reader = pypdf.PdfReader(io.BytesIO(data))
    if reader.is_encrypted and not reader.decrypt(""):
        raise Refusal("this PDF is locked with a password.")
    if len(reader.pages) > PAGES:
        raise Refusal(f"this PDF has over {PAGES} pages, too many for a step sheet.")
    pages: list[str] = []
    for page in reader.pages:
        pages.append(page.extract_text(extraction_mode="layout"))
        if sum(map(len, pages)) > TEXT_LIMIT:
            break  # `source` refuses it for its length
    return "\f\n".join(pages)


def _bound_memory() -> None:
    with suppress(ImportError, ValueError, OSError):  # not every system can
        import resource

        resource.setrlimit(resource.RLIMIT_AS, (MEMORY_LIMIT, MEMORY_LIMIT))


def main(kind: str) -> int:
    """Unpack standard input; the exit code."""
    _bound_memory()
    data = sys.stdin.buffer.read()
    try:
        text = docx_text(data) if kind == "docx" else pdf_text(data)
        if not text.strip():
            nothing = "holds no text, perhaps only pictures of pages; type it out or use text recognition."
            raise Refusal(f"this {'Word document' if kind == 'docx' else 'PDF'} {nothing}")
    except Refusal as refusal:
        print(refusal, file=sys.stderr)
        return 3
    except Exception:  # noqa: BLE001 (a damaged file may fail anywhere in a library)
        return 1
    sys.stdout.buffer.write(_CONTROLS.sub(" ", text).encode("utf-8", "replace"))
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1]))
