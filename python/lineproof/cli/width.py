"""Consoles of a width that can be read, whatever the environment says of it."""

from __future__ import annotations

import io
from typing import TYPE_CHECKING, Final, Literal, cast

if TYPE_CHECKING:
    from rich.console import Console

    _Colours = Literal["standard", "256", "truecolor", "windows"]

NARROWEST: Final = 40
"""Columns; below it lines are broken by the terminal and not by us."""


def output() -> Console:
    """A console with the colours and the width of standard output, which does not write to it itself."""
    from rich.console import Console

    real = Console()
    return Console(
        file=io.StringIO(),
        force_terminal=real.is_terminal,
        color_system=cast("_Colours | None", real.color_system),
        width=max(real.width, NARROWEST),
    )


def error() -> Console:
    """A console on standard error."""
    from rich.console import Console

    real = Console(stderr=True)
    return real if real.width >= NARROWEST else Console(stderr=True, width=NARROWEST)
