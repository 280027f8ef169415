"""Writing to the terminal or a pipe, which may be closed, full, or gone at the other end."""

from __future__ import annotations

import contextlib
import json
import os
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import IO, Any

from .failures import CommandError


def prepare() -> None:
    """Makes the standard streams safe to use. A character that the terminal lacks is shown as a question mark.

    :raises CommandError: when standard output is closed, so that there is nowhere to answer.
    """
    _fill_closed()
    silent = sys.stdout is None
    if sys.stderr is None:
        sys.stderr = _nowhere()
    if silent:
        sys.stdout = _nowhere()
    for stream in (sys.stdout, sys.stderr):
        reconfigure = getattr(stream, "reconfigure", None)
        if reconfigure is not None:
            reconfigure(errors="replace")
    if silent:
        raise CommandError("standard output is closed; send it to a file or a terminal")


def write(text: str) -> None:
    """Writes to standard output. A reader that has gone away, as `head` does, is no error.

    :raises CommandError: when it cannot be written, as to a full disk.
    """
    with _answering():
        sys.stdout.write(text)
        sys.stdout.flush()


def write_json(value: Any) -> None:
    """Writes one JSON document and a line end."""
    from lineproof.report.plain import escaped

    write(escaped(json.dumps(value, ensure_ascii=False, indent=2)) + "\n")


def finish() -> None:
    """Flushes what is left, so that the interpreter finds nothing to complain of at its end.

    :raises CommandError: when it cannot be written.
    """
    with _answering():
        sys.stdout.flush()


def say(line: str) -> None:
    """Writes a line to standard error; where that is not possible, nothing is left to say it to.

    Names and words in it come from files and arguments, so nothing in it may command the terminal.
    """
    from lineproof.report.plain import plain

    try:
        print(plain(line), file=sys.stderr, flush=True)
    except OSError:
        _discard(sys.stderr)


def end_line() -> None:
    """Ends the line on which the terminal has shown ^C."""
    with contextlib.suppress(OSError):
        print(file=sys.stderr, flush=True)


@contextmanager
def _answering() -> Iterator[None]:
    try:
        yield
    except BrokenPipeError:
        _discard(sys.stdout)
    except OSError as error:
        _discard(sys.stdout)
        reason = (error.strerror or str(error)).lower()
        raise CommandError(
            f"standard output cannot be written ({reason}); make room, or send it to another place"
        ) from error


def _fill_closed() -> None:
    """Opens the null device under each closed number of the standard streams: no other file may come by it."""
    while (handle := os.open(os.devnull, os.O_RDWR)) <= 2:
        pass
    os.close(handle)


def _nowhere() -> IO[str]:
    return Path(os.devnull).open("w", encoding="utf-8")


def _discard(stream: IO[str]) -> None:
    """What the stream still holds, and what is yet written to it, goes nowhere."""
    with contextlib.suppress(OSError, ValueError):
        handle = os.open(os.devnull, os.O_WRONLY)
        try:
            os.dup2(handle, stream.fileno())
        finally:
            os.close(handle)
