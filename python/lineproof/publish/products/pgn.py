"""The lesson as PGN: the author's file as it is, the lines alone, a game for each line, the repertoire."""

from __future__ import annotations

from lineproof.lesson import Game, Lesson, Place
from lineproof.publish.movetext import Step, first_half, game_text
from lineproof.publish.naming import slug_of
from lineproof.publish.product import Choices, Files, Found, Product
from lineproof.publish.repertoire import numbers, repertoire

OPEN = "*"
"""Termination marker of a line that is no finished game."""
UNKNOWN = ("", "?", "-")
"""A Round tag that says nothing (PGN standard, 8.1.1.4)."""


def make(lesson: Lesson, found: Found, choices: Choices) -> Files:  # noqa: ARG001 - one shape for all
    name = slug_of(lesson)
    side = lesson.settings.side
    texts = {
        f"{name}-lines.pgn": [_whole(game) for game in lesson.games],
        f"{name}-line-by-line.pgn": [_line(n, end) for n, end in enumerate(lesson.lines(), 1)],
    }
    if side is not None:
        texts[f"{name}-repertoire.pgn"] = [
            game_text(game.tags, steps, first_half(game), game.result or OPEN)
            for game, steps in repertoire(lesson, side)
        ]
    whole = lesson.source.encode() if lesson.disk is None else lesson.disk
    return {f"{name}.pgn": whole} | {
        file: "\n".join(games).encode() for file, games in texts.items() if games
    }


def _whole(game: Game) -> str:
    """A game with its variations and glyphs, without its words."""
    first: list[Step] = []
    left = [(game.root, first)]
    while left:
        place, steps = left.pop()
        for move in place.children:
            steps.append(_step(move))
            left.append((move, steps[-1].then))
    return game_text(game.tags, first, first_half(game), game.result or OPEN)


def _line(number: int, end: Place) -> str:
    """One line as a game of its own, told from the others by its Round where the author has given none."""
    game = end.game
    first: list[Step] = []
    steps = first
    for place in end.path()[1:]:
        steps.append(_step(place))
        steps = steps[-1].then
    result = (game.result or OPEN) if end.is_main else OPEN
    tags = dict(game.tags)
    if tags.get("Round", "") in UNKNOWN:
        tags["Round"] = str(number)
    if "Result" in tags:
        tags["Result"] = result
    return game_text(tuple(tags.items()), first, first_half(game), result)


def _step(place: Place) -> Step:
    return Step(place.san or "", numbers(place))


PRODUCT = Product("pgn", "the whole lesson, the lines alone, line by line, the repertoire", make)
