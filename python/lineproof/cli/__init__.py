"""The command `lineproof`: parses, calls, prints. What a command needs is imported inside it."""

from __future__ import annotations

import sys
from collections.abc import Sequence

from .commands import parser
from .failures import BAD_USE, CommandError


def main(arguments: Sequence[str] | None = None) -> int:
    """Runs one command and gives its exit status.

    0: done. 1: with --strict, when a claim fails. 2: bad use or bad input, with one line that says where, what
    is wrong and what to do. 130: stopped by the user.
    """
    from .output import close_quietly, tolerant

    tolerant()
    try:
        given = parser().parse_args(arguments)
        status: int = given.run(given)
        return status
    except CommandError as error:
        print(error, file=sys.stderr)
        return error.status
    except KeyboardInterrupt:
        print("\nStopped.", file=sys.stderr)
        return 130
    except BrokenPipeError:
        return BAD_USE
    finally:
        close_quietly()
