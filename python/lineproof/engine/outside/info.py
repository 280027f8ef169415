"""What an engine says while it searches: `info` lines, and the line of play that its answer is.

>>> read("info depth 9 score cp 31 nodes 1200 pv e2e4 e7e5").moves
('e2e4', 'e7e5')
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from lineproof._engine import Board, IllegalMoveError, MoveSyntaxError, points
from lineproof.engine.answer import Line

from .errors import WrongAnswerError
from .program import tame

_FIELDS = frozenset(
    [
        "depth",
        "seldepth",
        "time",
        "nodes",
        "pv",
        "multipv",
        "score",
        "currmove",
        "currmovenumber",
        "hashfull",
        "nps",
        "tbhits",
        "sbhits",
        "cpuload",
        "string",
        "refutation",
        "currline",
    ]
)
"""Words that begin a field, and so end a line of play. Source: the UCI description."""

MOST = 29_000
"""Centipawns that a score without a mate is cut to, so that it is never taken for a mate."""


@dataclass(frozen=True, slots=True)
class Info:
    """One `info` line. centipawns and mate are the mover's; a line without a score has neither.

    bound: whether the score is only a bound. rank: 1 for the best line, 2 for the next.
    """

    centipawns: int | None = None
    mate: int | None = None
    bound: bool = False
    rank: int = 1
    depth: int = 0
    nodes: int = 0
    moves: tuple[str, ...] = ()

    @property
    def has_score(self) -> bool:
        return self.centipawns is not None or self.mate is not None


def read(line: str) -> Info:
    """Reads one line. What is no number where one belongs counts as not said."""
    words = line.split()
    found: dict[str, int] = {}
    moves: tuple[str, ...] = ()
    bound = False
    at = 1
    while at < len(words):
        field, at = words[at], at + 1
        if field == "string":
            break
        if field in ("depth", "nodes", "multipv"):
            found.update(_number(field, words[at : at + 1]))
        elif field == "score" and at + 1 < len(words) and words[at] in ("cp", "mate"):
            found.update(_number(words[at], words[at + 1 : at + 2]))
            bound = words[at + 2 : at + 3] in (["lowerbound"], ["upperbound"])
        elif field == "pv":
            end = next((n for n in range(at, len(words)) if words[n] in _FIELDS), len(words))
            moves, at = tuple(word.lower() for word in words[at:end]), end
    return Info(
        found.get("cp"),
        found.get("mate"),
        bound,
        found.get("multipv", 1),
        found.get("depth", 0),
        found.get("nodes", 0),
        moves,
    )


def _number(field: str, words: Sequence[str]) -> dict[str, int]:
    try:
        return {field: int(words[0])}
    except (ValueError, IndexError):
        return {}


def chosen(infos: Sequence[Info], best: str) -> Info:
    """The last scored line that begins with the move which the engine plays; an exact score before a bound.

    :raises WrongAnswerError: when there is none
    """
    scored = [info for info in infos if info.has_score and info.rank == 1]
    if not scored:
        raise WrongAnswerError("it gave a move but no score")
    fitting = [info for info in scored if info.moves[:1] == (best,)]
    if not fitting and not any(info.moves for info in scored):
        fitting = scored  # it tells its move only at the end
    if not fitting:
        raise WrongAnswerError(f"it plays {tame(best)}, but gave no score for that move")
    exact = [info for info in fitting if not info.bound]
    return (exact or fitting)[-1]


def line_of(info: Info, best: str, board: Board) -> Line:
    """The line with its worth for White. A mate is as the engine says, not proved.

    :raises WrongAnswerError: when a move is not legal, or the side to move is said to be mated already
    """
    moves = info.moves or (best,)
    at = board
    for number, uci in enumerate(moves):
        try:
            if uci == "0000":
                raise IllegalMoveError(uci)
            at = at.play(uci)
        except (IllegalMoveError, MoveSyntaxError) as error:
            where = "its move" if number == 0 else f"move {number + 1} of its line"
            raise WrongAnswerError(f"{where}, {tame(uci)}, is not legal") from error
    sign = 1 if board.turn == "white" else -1
    san = tuple(board.san_line(list(moves)))
    if info.mate is not None:
        if info.mate == 0:
            raise WrongAnswerError("it says that the side to move is mated, which is not so")
        distance = min(abs(info.mate), 30_000 - MOST)
        value = (30_000 - distance) * (1 if info.mate > 0 else -1) * sign
        return Line(moves, san, points(value), value, info.mate * sign)
    value = sign * max(-MOST, min(MOST, info.centipawns or 0))
    return Line(moves, san, points(value), value, None)
