"""A disk that refuses, in this process: full, or one of which a folder can only be read."""

from __future__ import annotations

import errno
import os
from pathlib import Path
from types import ModuleType
from typing import Any

import pytest

from lineproof.desk import steps
from lineproof.lesson import save


class _Full:
    """The system with a full disk, as a module of ours sees it."""

    def __init__(self, real: ModuleType) -> None:
        self._real = real

    def __getattr__(self, name: str) -> Any:
        return getattr(self._real, name)

    def write(self, handle: int, data: bytes) -> int:
        """Writes the half of it, as a disk does that has just filled up."""
        if len(data) > 1:
            self._real.write(handle, data[: len(data) // 2])
        raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))


def fill_disk(patch: pytest.MonkeyPatch) -> None:
    """From now on nothing more can be written of a lesson: neither its files nor its steps."""
    for module in (save, steps):
        patch.setattr(module, "os", _Full(os))


def forbid(patch: pytest.MonkeyPatch, folder: Path) -> None:
    """From now on nothing can be made or written in a folder, as on a disk that is mounted to be read only."""
    real_open, real_mkdir = os.open, os.mkdir

    def refuse(path: Any) -> None:
        if Path(os.fspath(path)).is_relative_to(folder):
            raise OSError(errno.EROFS, os.strerror(errno.EROFS), os.fspath(path))

    def opened(path: Any, flags: int, *rest: Any, **more: Any) -> int:
        if flags & (os.O_WRONLY | os.O_RDWR | os.O_CREAT):
            refuse(path)
        return real_open(path, flags, *rest, **more)

    def made(path: Any, *rest: Any, **more: Any) -> None:
        refuse(path)
        real_mkdir(path, *rest, **more)

    patch.setattr(os, "open", opened)
    patch.setattr(os, "mkdir", made)
