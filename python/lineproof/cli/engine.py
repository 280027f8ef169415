"""`lineproof engine`: the engine alone; `perft` counts paths, to test the rules against published figures."""

from __future__ import annotations

import argparse
from typing import TYPE_CHECKING

from . import engine_match, engine_solve, engine_speed, engine_uci
from .failures import CommandError
from .output import write, write_json
from .shared import add_command

if TYPE_CHECKING:
    from .shared import Commands

FORMAT = 1
"""Of the JSON."""
DEEPEST = 15
"""Plies; more would outlast any patience and the 64 bits of the count."""


def add(commands: Commands) -> None:
    from .commands import Parser

    engine = commands.add_parser(
        "engine",
        help="use the engine alone",
        description="Use the engine alone.",
        allow_abbrev=False,
    )
    inner = engine.add_subparsers(
        title="commands",
        metavar="COMMAND",
        dest="engine_command",
        required=True,
        parser_class=Parser,
    )
    command = add_command(inner, "perft", "count the paths of exactly DEPTH plies", perft)
    command.add_argument("depth", metavar="DEPTH", type=int, help=f"plies, 0 to {DEEPEST}")
    command.add_argument("--fen", help="the position to start from")
    for each in (engine_uci, engine_solve, engine_speed, engine_match):
        each.add(inner)


def perft(given: argparse.Namespace) -> int:
    import time

    from lineproof.engine import Board, FenError
    from lineproof.engine import perft as count

    from .waiting import wait_for

    if not 0 <= given.depth <= DEEPEST:
        raise CommandError(f"the depth is {given.depth}; give 0 to {DEEPEST} plies")
    try:
        board = Board(given.fen) if given.fen is not None else Board()
    except FenError as error:
        raise CommandError(f"--fen: {error}; correct the FEN") from error
    began = time.perf_counter()
    paths = wait_for(lambda: count(board.fen, given.depth))
    seconds = time.perf_counter() - began
    if given.json:
        write_json(
            {
                "format": FORMAT,
                "fen": board.fen,
                "depth": given.depth,
                "paths": paths,
                "seconds": round(seconds, 3),
            }
        )
    else:
        plies = "1 ply" if given.depth == 1 else f"{given.depth} plies"
        speed = f", {paths / seconds / 1e6:.0f} million a second" if seconds > 0.01 else ""
        write(
            f"{paths:,} {'path' if paths == 1 else 'paths'} of {plies} in {seconds:.2f} s{speed}.\n"
        )
    return 0
