"""A viewer's question: "what about ...?" Whether the lesson has the position, what it is worth, and what to answer."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from lineproof.claims.bands import seen_from, spoken
from lineproof.claims.board import other, title, upper
from lineproof.claims.claim import SHOWN, Spot
from lineproof.claims.showing import comes_to, numbered, shortest
from lineproof.collection.asked import Asked, asked
from lineproof.engine import Board, Stop
from lineproof.lesson.graph import Graph
from lineproof.proof import Effort, EvidenceStore, evidence_file
from lineproof.proof.asker import Asker

from .likely import Replies, Reply

if TYPE_CHECKING:
    from lineproof.collection import Collection
    from lineproof.engine.outside.pool import OutsideEngine
    from lineproof.lesson import Lesson, Place

    from .natural import Natural

__all__ = ["Answer", "Left", "answer"]


@dataclass(frozen=True)
class Left:
    """Where the moves asked for leave the lesson. place: the last with a position of theirs. reply: the move that leaves it, with its likelihood there.

    by_taught: whether the taught side plays it; None where the lesson does not say which side is taught. uncounted: why no games were counted there, "" where some were.
    """

    place: Place
    reply: Reply
    by_taught: bool | None
    uncounted: str = ""


@dataclass(frozen=True)
class Answer:
    """What to say to a question.

    places: of the lesson with this position, on whatever road. left: where the moves leave the lesson; None where they do not, and for a FEN that
    the lesson has not. points: White's, out of 100; None where the game is over, as `over` then says.
    best: the best move, in SAN; line: what follows, in UCI; comes_to: what falls in it, in words; "" where nothing does.
    lesson_plays: the lesson's moves here, in SAN. sentence: what to reply with.
    """

    fen: str
    said: str
    places: tuple[Place, ...]
    left: Left | None
    over: str
    points: int | None
    best: str
    line: tuple[str, ...]
    comes_to: str
    lesson_plays: tuple[str, ...]
    sentence: str

    @property
    def board(self) -> Board:
        return Board(self.fen)


def answer(
    lesson: Lesson,
    question: str,
    effort: Effort = Effort.SKETCH,
    *,
    store: EvidenceStore | None = None,
    collection: Collection | None = None,
    natural: Natural | None = None,
    engine: OutsideEngine | None = None,
    stop: Stop | None = None,
) -> Answer:
    """Answers a question. question: moves from the initial position, or a FEN.

    :raises lineproof.collection.NotAPositionError: when it is neither.
    :raises CollectionError: when the collection cannot be read.
    """
    position = asked(question)
    graph = Graph(lesson)
    own = store is None
    evidence = EvidenceStore(evidence_file(lesson)) if store is None else store
    try:
        ask = Asker(evidence, effort.steps[0], stop, engine)
        replies = Replies(
            lesson.settings.audience, evidence, natural=natural, collection=collection, stop=stop
        )
        return _answer(graph, position, question, replies, ask, lesson.settings.side)
    finally:
        if own:
            evidence.close()


def _answer(
    graph: Graph, position: Asked, question: str, replies: Replies, ask: Asker, side: str | None
) -> Answer:
    spot = Spot(position.boards[0].fen, position.uci, position.board)
    board = spot.board
    places = graph.places(board.key) if board.key in graph.moves else ()
    plays = tuple(board.san(uci) for uci in graph.moves[board.key]) if places else ()
    left = None if places else _left(graph, position, replies, side)
    over = _over(board)
    best = None if over else ask.best(spot)
    if best is None:
        over = over or "The game is drawn here."
        return Answer(board.fen, question, places, left, over, None, "", (), "", plays, over)
    line = shortest(spot, best.moves, most=SHOWN)
    falls = comes_to(spot, line, board.turn)
    points = best.points
    san = board.san(best.moves[0])
    sentence = _sentence(spot, san, line, falls, points, plays, side)
    return Answer(board.fen, question, places, left, "", points, san, line, falls, plays, sentence)


def _left(graph: Graph, position: Asked, replies: Replies, side: str | None) -> Left | None:
    """The last position on the way that the lesson has, and the move from there."""
    for number in reversed(range(len(position.uci))):
        board = position.boards[number]
        if board.key in graph.moves:
            spot = Spot(position.boards[0].fen, position.uci[:number], board)
            reply = replies.at(spot).reply(position.uci[number])
            by_taught = None if side is None else board.turn == side
            return Left(graph.place[board.key], reply, by_taught, replies.uncounted([spot]))
    return None


def _over(board: Board) -> str:
    if board.is_checkmate:
        return f"It is mate: {title(other(board.turn))} has won."
    return "It is stalemate: the game is drawn." if board.is_stalemate else ""


def _sentence(
    spot: Spot,
    best: str,
    line: tuple[str, ...],
    falls: str,
    points: int,
    plays: tuple[str, ...],
    side: str | None,
) -> str:
    """What to reply with: the answer, what it comes to, and the verdict."""
    turn = spot.board.turn
    verdict = spoken(side or turn, seen_from(side or turn, points))
    shown = numbered(spot, line)
    if side is not None and turn != side:
        what = f"{title(turn)}'s best is {shown}"
    elif plays and best in plays:
        what = f"The lesson plays {numbered(spot, line[:1])}, and nothing is better: {shown}"
    elif plays:
        what = f"The lesson plays {' or '.join(plays)}; the best is {shown}"
    else:
        what = f"Play {shown}"
    end = f"; {falls}" if falls else ""
    return f"{what}{end}. {upper(verdict)}."
