""" "What about ...?": a question asked of an open lesson, at its start, at one of its places, or of any position."""

from __future__ import annotations

from collections.abc import Sequence

from lineproof.claims.claim import Spot
from lineproof.claims.showing import numbered
from lineproof.collection.asked import Asked, asked
from lineproof.collection.errors import NotAPositionError
from lineproof.engine import AmbiguousMoveError, Board, IllegalMoveError, MoveSyntaxError
from lineproof.lesson import Lesson, Place
from lineproof.proof import EvidenceStore
from lineproof.replies.answering import Answer, answer
from lineproof.report.studied import answered

from .naming import Names
from .shown import evidence, without_options
from .ways import Looking, collection_of
from .wire import AnswerShown, Moves

INITIAL = Board().fen


def ask(
    lesson: Lesson,
    names: Names,
    store: EvidenceStore,
    looking: Looking,
    place: Place | None,
    question: str,
) -> AnswerShown:
    """Answers a question. place: where its moves begin; None for the start of the game, or a FEN.

    :raises lineproof.collection.NotAPositionError: when it is neither moves nor a FEN.
    """
    whole, moves = (question, ()) if place is None else _from(place, question)
    with collection_of(looking.collection) as collection:
        found = answer(
            lesson,
            whole,
            looking.effort,
            store=store,
            collection=collection,
            engine=looking.outside,
        )
    said = without_options(answered(found, name=lesson.settings.title)).splitlines()
    board = found.board
    spot = Spot(board.fen, (), board)
    line = list(found.line)
    return AnswerShown(
        fen=board.fen,
        said=said,
        places=[names.of(at) for at in found.places],
        evidence=evidence(board, line, numbered(spot, line)) if line else None,
        add=_add(found, asked(whole), names) or _after(place, moves, line, names),
    )


def _from(place: Place, question: str) -> tuple[str, tuple[str, ...]]:
    """A question whose moves begin at a place, as one that begins with the game. In a game that begins with a position of its own it is a FEN,
    with the moves to it, in UCI."""
    if "/" in question:
        return question, ()
    if place.root_fen == INITIAL and "0000" not in place.moves():
        return " ".join([*(at.san or "" for at in place.path()[1:]), question]), ()
    board, moves = place.board, []
    for word in question.split():
        bare = word.lstrip("0123456789.…")
        if bare:
            moves.append(_uci(board, bare))
            board = board.play(moves[-1])
    return board.fen, tuple(moves)


def _uci(board: Board, move: str) -> str:
    try:
        return board.parse_san(move)
    except (MoveSyntaxError, IllegalMoveError, AmbiguousMoveError) as error:
        raise NotAPositionError(f"{move}: {error}; correct it, or give a FEN") from error


def _after(
    place: Place | None, moves: Sequence[str], line: Sequence[str], names: Names
) -> Moves | None:
    """The moves asked for from a place on, and the line after them; None where there are none."""
    if place is None or not moves:
        return None
    return Moves(place=names.of(place), moves=[*moves, *line])


def _add(found: Answer, position: Asked, names: Names) -> Moves | None:
    """What would take the answer into the lesson: the moves asked for from where they leave it, and the line after them."""
    if found.places:
        at, moves = found.places[0], list(found.line)
    elif found.left is not None:
        at = found.left.place
        number = _last(position.boards, at.board.key)
        moves = [*position.uci[number:], *found.line]
    else:
        return None
    return Moves(place=names.of(at), moves=moves) if moves else None


def _last(boards: Sequence[Board], key: int) -> int:
    return max(number for number, board in enumerate(boards) if board.key == key)
