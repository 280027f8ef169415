"""What the model games did at the end of a line, in sentences."""

from __future__ import annotations

from collections.abc import Iterator

from lineproof.claims.board import NAMES, title
from lineproof.replies.model_games import LATER, ModelGames, Stood

from .collected import interval, percent
from .counted import counted, listed


def modelled(of: ModelGames) -> str:
    """ "12 games come to it. White scores ...; mostly 9. Bd3 (8 of 12) ..." """
    return " ".join(_said(of))


def _said(of: ModelGames) -> Iterator[str]:
    yield f"{counted(of.games, 'game')} {'comes' if of.games == 1 else 'come'} to it."
    yield scored(of)
    if of.line:
        yield f"Mostly {continuation(of)}."
    if of.stood:
        yield f"{later(of)}: {stood(of.stood)}."


def scored(of: ModelGames) -> str:
    """The taught side's result, with its interval and its counts."""
    result = of.result
    if result is None:
        return "None of them has a known result."
    return (
        f"{title(of.side)} scores {percent(result.points, result.interval)} of 100 (95 %: {interval(result.interval)}):"
        f" {result.won:,} won, {result.drawn:,} drawn, {result.lost:,} lost."
    )


def later(of: ModelGames) -> str:
    """Of which games it is told where the pieces stand."""
    looked = f" of the {of.looked_at:,} looked at" if of.looked_at < of.games else ""
    return (
        f"{LATER // 2} moves later, in the {counted(of.lasted, 'game')}{looked} that last so long,"
        f" {title(of.side)}'s pieces mostly stand so"
    )


def continuation(of: ModelGames) -> str:
    """The commonest continuation with its numbers and counts."""
    board = of.place.board
    number, white = board.move_number, board.turn == "white"
    words = []
    for first, step in zip((True, *(False for _ in of.line)), of.line, strict=False):
        dots = f"{number}. " if white else f"{number}... " if first else ""
        words.append(f"{dots}{step.san} ({step.games:,} of {step.of:,})")
        number += not white
        white = not white
    return " ".join(words)


def stood(found: tuple[Stood, ...]) -> str:
    """ "king on g1 (8), rooks on e1 (5) and d1 (4)": each piece with its squares and in how many games."""
    by_piece: dict[str, list[str]] = {}
    for one in found:
        by_piece.setdefault(one.piece, []).append(f"{one.square} ({one.games:,})")
    return ", ".join(
        f"{NAMES[piece.lower()]} on {listed(squares)}" for piece, squares in by_piece.items()
    )
