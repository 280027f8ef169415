"""`lineproof engine uci`: the engine for any program that speaks UCI."""

from __future__ import annotations

import argparse
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from .shared import Commands


def add(commands: Commands) -> None:
    command = commands.add_parser(
        "uci",
        help="speak UCI on standard input and output",
        description="Speak UCI on standard input and output, until `quit` or the end of the input.",
        allow_abbrev=False,
    )
    command.set_defaults(run=uci)


def uci(_: argparse.Namespace) -> int:
    from lineproof.engine import uci as speak

    from .waiting import wait_for

    wait_for(speak)
    return 0
