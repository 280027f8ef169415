"""Which program an outside engine is: found, and known again by its bytes."""

from __future__ import annotations

import hashlib
import json
import os
import shutil
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from .errors import NoProgramError, NotRunnableError

LONGEST = 80
"""Characters of a name that a program gives itself, or of a line that it writes, that are shown."""


@dataclass(frozen=True)
class Program:
    """An engine as it was met.

    path: absolute. name: what it calls itself, on one line. sha256: of the file's bytes, in hex.
    options: set by us, by name. declared: the options that it has, with types and defaults, as one hash in hex.
    """

    path: Path
    name: str
    sha256: str
    options: Mapping[str, int | bool | str]
    declared: str

    @property
    def identity(self) -> str:
        """Equal only for the same program with the same options: part of the key of kept answers."""
        parts = (self.name, self.sha256, dict(sorted(self.options.items())), self.declared)
        return f"outside {json.dumps(parts)}"


def is_outside(identity: str) -> bool:
    """Whether an engine that was recorded is an outside one."""
    return identity.startswith("outside ")


def find(given: Path) -> Path:
    """The program's absolute path; a bare name that is no file here is looked for on the PATH too.

    :raises NoProgramError, NotRunnableError:
    """
    path = given
    if not path.exists() and path.name == str(path):
        on_path = shutil.which(str(path))
        path = Path(on_path) if on_path else path
    if not path.exists():
        raise NoProgramError(f"{given}: there is no such program; check the path")
    if path.is_dir():
        raise NotRunnableError(f"{given}: this is a folder; give the program inside it")
    if not os.access(path, os.X_OK):
        raise NotRunnableError(
            f"{given}: this file may not be run; allow it (chmod +x), or give another program"
        )
    return path.absolute()


def hash_of(path: Path) -> str:
    """SHA-256 of a file's bytes, in hex.

    :raises NotRunnableError: when it cannot be read, so that it could not be known again
    """
    try:
        with path.open("rb") as file:
            return hashlib.file_digest(file, "sha256").hexdigest()
    except OSError as error:
        reason = (error.strerror or str(error)).lower()
        raise NotRunnableError(
            f"{path}: this file cannot be read ({reason}), and its answers are kept under what it"
            " holds; allow reading it"
        ) from error


def tame(text: str) -> str:
    """What a program wrote, on one line, short, and without anything that commands a terminal."""
    line = "".join(c if c.isprintable() else " " for c in text)
    line = " ".join(line.split())
    return line if len(line) <= LONGEST else line[: LONGEST - 1] + "…"
