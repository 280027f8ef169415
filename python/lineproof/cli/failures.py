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
