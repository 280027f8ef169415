"""Writing a report: whole or not at all, and never through a name that another program could foresee."""

from __future__ import annotations

import contextlib
import errno
import os
import secrets
import stat
from pathlib import Path

_TRIES = 8
"""Random names that may be taken; a second one hardly ever is."""


def write_whole(file: Path, data: bytes) -> None:
    """Writes a file as one step: what was there stays whole when the new cannot be written.

    A symbolic link stays, and the file that it leads to is written.

    :raises OSError: when it cannot be written.
    """
    if file.exists() and not file.is_file():
        file.write_bytes(data)  # a pipe or a device; a folder is refused here
        return
    real = Path(os.path.realpath(file))
    if real.exists() and not os.access(real, os.W_OK):
        raise PermissionError(errno.EACCES, os.strerror(errno.EACCES))
    beside, handle = _new_beside(real)
    try:
        with os.fdopen(handle, "wb") as stream:
            stream.write(data)
        if real.exists():
            beside.chmod(stat.S_IMODE(real.stat().st_mode))
        beside.replace(real)
    except BaseException:
        with contextlib.suppress(OSError):
            beside.unlink()
        raise


def _new_beside(file: Path) -> tuple[Path, int]:
    """A file in the same folder that nobody made before, and its open handle."""
    for _ in range(_TRIES):
        beside = file.with_name(f".{secrets.token_hex(16)}.new")
        with contextlib.suppress(FileExistsError):
            return beside, os.open(beside, _FLAGS, 0o666)
    raise FileExistsError(errno.EEXIST, os.strerror(errno.EEXIST))


_FLAGS = os.O_WRONLY | os.O_CREAT | os.O_EXCL | getattr(os, "O_BINARY", 0)
"""O_EXCL follows no symbolic link at the last part of a path (POSIX.1-2017, open)."""
