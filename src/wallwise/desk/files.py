"""Files written whole or not at all."""

from __future__ import annotations

import os
import shutil
import tempfile
from contextlib import suppress
from pathlib import Path

from wallwise.desk.errors import Unwritable


def write_whole(path: Path, data: bytes | str) -> Path:
    """Write `data` (text as UTF-8) to `path` in one move; the path written.

    Whoever reads `path` meanwhile sees the old file or the new one.  A link stays a link and
    the file keeps its permissions.  Raises Unwritable.
    """
    target = path.resolve()
    try:
        target.parent.mkdir(parents=True, exist_ok=True)
        handle, name = tempfile.mkstemp(prefix=f".{target.name}.", dir=target.parent)
        try:
            with os.fdopen(handle, "wb") as file:
                file.write(data.encode() if isinstance(data, str) else data)
            _give_mode(name, target)
            Path(name).replace(target)
        except BaseException:
            with suppress(FileNotFoundError):
                Path(name).unlink()
            raise
    except OSError as error:
        raise Unwritable(f"{path}: this place cannot be written to ({error.strerror}).") from None
    return path


def _give_mode(name: str, target: Path) -> None:
    """Temporary files are private; the file takes the mode of the old one, or what is usual."""
    if target.exists():
        shutil.copymode(target, name)
    else:
        mask = os.umask(0)
        os.umask(mask)
        Path(name).chmod(0o666 & ~mask)


def keep_copy(path: Path) -> Path:
    """Copy `path` beside itself under a name not yet taken; the copy's path.  Raises Unwritable."""
    number = 1
    while True:
        copy = path.with_name(f"{path.stem}.before-{number}{path.suffix}")
        try:
            with copy.open("xb") as file:
                file.write(path.read_bytes())
        except FileExistsError:
            number += 1
        except OSError as error:
            raise Unwritable(f"{copy}: no copy can be kept here ({error.strerror}).") from None
        else:
            shutil.copymode(path, copy)
            return copy
