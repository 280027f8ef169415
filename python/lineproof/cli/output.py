"""Writing to the terminal or a pipe, which may have been closed at the other end."""

from __future__ import annotations

import contextlib
import json
import os
import sys
from typing import Any


def tolerant() -> None:
    """A character that the terminal lacks is shown as a question mark instead of ending the run."""
    for stream in (sys.stdout, sys.stderr):
        reconfigure = getattr(stream, "reconfigure", None)
        if reconfigure is not None:
            reconfigure(errors="replace")


def write(text: str) -> None:
    """Writes to standard output. A reader that has gone away, as `head` does, is no error."""
    try:
        sys.stdout.write(text)
        sys.stdout.flush()
    except BrokenPipeError:
        _discard()


def write_json(value: Any) -> None:
    """Writes one JSON document and a line end."""
    write(json.dumps(value, ensure_ascii=False, indent=2) + "\n")


def close_quietly() -> None:
    """Flushes what is left, so that the interpreter does not complain of a closed pipe at its end."""
    try:
        sys.stdout.flush()
    except BrokenPipeError:
        _discard()


def _discard() -> None:
    with contextlib.suppress(OSError, ValueError):
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
