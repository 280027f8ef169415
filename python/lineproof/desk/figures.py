"""Figures of a position of the lesson, from the user's collections of games: sentences with counts and intervals."""

from __future__ import annotations

from lineproof.collection import Collection, NoSuchCollectionError, opening
from lineproof.collection.asked import Asked, asked
from lineproof.collection.collection import PLIES, collections
from lineproof.collection.reach import reached
from lineproof.lesson import Place
from lineproof.report.collected import comes_here, looked

from .questions import INITIAL
from .shown import legal_move
from .wire import CollectionShown, CollectionsShown, FigureShown, FiguresShown

MODELS = 5
"""Games to show that are named."""


def collections_shown() -> CollectionsShown:
    """Every collection of the user."""
    found = [CollectionShown(name=each.name, games=each.games) for each in collections()]
    return CollectionsShown(collections=found)


def figures_shown(place: Place, name: str, *, of_audience: bool) -> FiguresShown:
    """What a collection says of a place, and how many of the audience's games come there. of_audience: count only games of players near the rating of the lesson's audience.

    :raises CollectionError: when there is no such collection, or it is damaged.
    """
    position = _asked(place)
    with Collection.open(name) as collection:
        if not collection.exists:
            raise NoSuchCollectionError(f"there is no collection {name}")
        audience = place.lesson.settings.audience if of_audience else None
        figures = collection.look(position, audience=audience)
        orders = collection.orders(position)
        models = collection.model_games(position, most=MODELS)
        here = reached(collection, place)
    board = position.board
    ply = 2 * (board.move_number - 1) + (board.turn == "black")
    said = looked(
        figures,
        collection=name,
        said=place.label if place.ply else "The start",
        opening=opening(position.uci),
        orders=orders,
        models=models,
        deep=ply >= PLIES,
    )
    moves = [
        FigureShown(
            move=legal_move(board, each.uci),
            games=each.games,
            of=each.of,
            share=each.share,
            low=each.interval.low,
            high=each.interval.high,
        )
        for each in figures.moves
    ]
    lines = said.splitlines()
    if here is not None:
        lines.append(comes_here(here, str(place.lesson.settings.side)))
    return FiguresShown(collection=name, games=figures.games, said=lines, moves=moves)


def _asked(place: Place) -> Asked:
    """The place with its moves, where its game begins as games do; else its position alone."""
    if place.root_fen == INITIAL and "0000" not in place.moves():
        return asked(" ".join(each.san or "" for each in place.path()[1:]))
    return asked(place.board.fen)
