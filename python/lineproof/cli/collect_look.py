"""`lineproof collect look`: what the games of a collection say of a position."""

from __future__ import annotations

import argparse
from typing import TYPE_CHECKING

from .collected import add_collection_option, opened
from .failures import CommandError
from .output import write, write_json
from .shared import add_command, check_audience

if TYPE_CHECKING:
    from .shared import Commands

MODELS = 4


def add(commands: Commands) -> None:
    command = add_command(commands, "look", "say what is played in a position", run)
    command.add_argument(
        "position",
        metavar="MOVES-or-FEN",
        nargs="*",
        help='such as "1. e4 e5 2. Nc3"; nothing for the initial position',
    )
    command.add_argument(
        "--audience",
        type=int,
        metavar="RATING",
        help="count only games of players within 200 points of it",
    )
    command.add_argument(
        "--above", type=int, metavar="RATING", help="games to show: both players rated at least so"
    )
    command.add_argument(
        "--models", type=int, default=MODELS, metavar="N", help=f"games to show ({MODELS})"
    )
    add_collection_option(command)


def run(given: argparse.Namespace) -> int:
    from lineproof.collection.asked import asked
    from lineproof.collection.collection import PLIES
    from lineproof.collection.openings import opening
    from lineproof.report.collected import looked, numbered
    from lineproof.report.collected_json import look_json

    check_audience(given.audience)
    if not 0 <= given.models <= 100:
        raise CommandError(f"--models is {given.models}; give 0 to 100")
    with opened(given) as collection:
        position = asked(" ".join(given.position))
        figures = collection.look(position, audience=given.audience)
        orders = collection.orders(position)
        models = collection.model_games(position, above=given.above, most=given.models)
        moves = position.uci or (_moves(orders[0].san) if orders else ())
        name = opening(moves)
        if given.json:
            write_json(
                look_json(
                    figures,
                    collection=collection.name,
                    opening=name,
                    orders=orders,
                    models=models,
                )
            )
            return 0
        board = position.board
        ply = 2 * (board.move_number - 1) + (board.turn == "black")
        said = numbered(position.san) if position.san else figures.fen
        if not position.san and figures.fen.split()[0] == _START:
            said = "The initial position"
        write(
            looked(
                figures,
                collection=collection.name,
                said=said,
                opening=name,
                orders=orders,
                models=models,
                deep=ply >= PLIES,
            )
        )
    return 0


_START = "rnbqkbnr/pppppppp/8/8/8/8/PPPPPPPP/RNBQKBNR"


def _moves(san: tuple[str, ...]) -> tuple[str, ...]:
    from lineproof.collection.asked import asked

    return asked(" ".join(san)).uci
