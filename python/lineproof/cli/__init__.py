"""The command `lineproof`: parses, calls, prints. What a command needs is imported inside it."""

from __future__ import annotations

import argparse
from collections.abc import Sequence

from .commands import parser
from .failures import STOPPED, CommandError, unexpected


def main(arguments: Sequence[str] | None = None) -> int:
    """Runs one command and gives its exit status.

    0: done. 1: when a claim fails, with --strict or when publishing. 2: bad use or bad input, with one line that says where, what
    is wrong and what to do. 130: stopped by the user.
    """
    from .output import end_line, finish, prepare, say

    try:
        prepare()
        status = _run(arguments)
        finish()
        return status
    except CommandError as error:
        say(str(error))
        return error.status
    except KeyboardInterrupt:
        end_line()
        say("Stopped.")
        return STOPPED


def _run(arguments: Sequence[str] | None) -> int:
    try:
        given = parser().parse_args(arguments)
    except SystemExit as end:  # after the help or the version
        return int(end.code or 0)
    try:
        status: int = given.run(given)
    except (CommandError, KeyboardInterrupt):
        raise
    except BaseException as error:  # a panic of the engine is no Exception
        raise unexpected(_subject(given), error) from error
    return status


def _subject(given: argparse.Namespace) -> str:
    """The file or folder that a command works on, or the command itself."""
    for name in ("lesson", "folder"):
        if hasattr(given, name):
            return str(getattr(given, name))
    return f"lineproof {given.command}"
