"""How a command fails: one line for the user, and an exit status."""

from __future__ import annotations

from typing import Final

CLAIM_FAILS: Final = 1
BAD_USE: Final = 2
STOPPED: Final = 130
"""128 and the number of SIGINT: what shells use (common practice)."""


class CommandError(Exception):
    """Ends a command. Its text is the one line that the user reads."""

    def __init__(self, line: str, status: int = BAD_USE) -> None:
        super().__init__(line)
        self.status = status


def unexpected(what: str, error: BaseException) -> CommandError:
    """An error that nobody foresaw, in one line. what: the file or the command that it came about with."""
    if isinstance(error, OSError):
        reason = (error.strerror or str(error)).lower()
        named = f": {error.filename}" if error.filename not in (None, what) else ""
        return CommandError(
            f"{what}: the system refuses it ({reason}{named}); check the name, who may read and write there,"
            " and that the disk has room"
        )
    if isinstance(error, RecursionError):
        return CommandError(f"{what}: it is nested too deeply; take some levels out of it")
    if isinstance(error, MemoryError):
        return CommandError(f"{what}: it does not fit into memory; split it into smaller files")
    told = f"{type(error).__name__}: {error}".removesuffix(": ")
    return CommandError(
        f"{what}: the program has a fault here ({told}); take out what you changed last,"
        " and send the file and this line to the makers"
    )
