"""Early stops: lines that end in the middle of a fight."""

from __future__ import annotations

import re
from dataclasses import dataclass

from lineproof.claims.bands import seen_from
from lineproof.claims.claim import Spot
from lineproof.claims.exchange import gained
from lineproof.claims.sentence import sentences
from lineproof.claims.showing import comes_to, shortest
from lineproof.lesson import Place

from .course import Course
from .words import named, names

GAINS = 15
"""Points that a capture or check at the end gains at least against every quiet move; where the best move takes a pawn or more with gain, none are asked."""
_TOLD = re.compile(
    r"\b(?:threat\w*|next|falls?|wins?|winning|won|mates?|resigns?)\b", re.IGNORECASE
)
_TAKES = re.compile(
    r"\b(?:tak(?:es?|ing|en)|captur\w*|recaptur\w*|regain\w*|hangs?|hanging)\b", re.IGNORECASE
)
"""Words that tell of a capture where the square stands beside them."""


@dataclass(frozen=True)
class Stop:
    """A line that ends too early. side: whose capture or check it is; to_move: whether it is his move, otherwise it is a threat.

    line: the moves that would round it off, in UCI, from `spot`. what: what they come to, in words.
    """

    place: Place
    side: str
    to_move: bool
    spot: Spot
    line: tuple[str, ...]
    gain: int
    what: str


def stop(course: Course, key: int) -> Stop | None:
    """The early stop at the end of a line, or None."""
    if course.graph.moves[key]:
        return None
    spot = course.spot(key)
    place = course.graph.place[key]
    said = named(course.graph, key)
    words = [comment.text for at in course.graph.places(key) for comment in at.comments]
    told = any(map(_TOLD.search, words))
    for at in (spot, spot.passed()):
        if at is None or not at.board.legal_moves():
            continue
        found = _sharp(course, at)
        if found is None:
            continue
        line, gain = found
        if told or names(said, at.board, at.board.san(line[0])) or _takes(words, line[0][2:4]):
            return None
        side = at.board.turn
        return Stop(place, side, at is spot, at, line, gain, comes_to(at, line, side))
    return None


def _takes(words: list[str], square: str) -> bool:
    """Whether a sentence tells that something is taken on a square."""
    return any(
        _TAKES.search(sentence.text) and re.search(rf"\b{square}\b", sentence.text)
        for text in words
        for sentence in sentences(text, 0)
    )


def _sharp(course: Course, spot: Spot) -> tuple[tuple[str, ...], int] | None:
    """The best line, where it begins with a capture or check that gains a pawn or 15 points, and what it gains in points."""
    board = spot.board
    best = course.ask.best(spot)
    if best is None:
        return None
    san = board.san(best.moves[0])
    if not ("x" in san or san.endswith(("+", "#"))):
        return None
    sharp = [
        uci for uci in board.legal_moves() if "x" in (s := board.san(uci)) or s.endswith(("+", "#"))
    ]
    quiet = course.ask.best(spot, without=sharp)
    side = board.turn
    alone = course.ask.move(spot, best.moves[0])
    gain = seen_from(side, alone.points) - (
        seen_from(side, quiet.points) if quiet is not None else 0
    )
    if gain < GAINS and gained(board, best.moves[0]) < 1:
        return None
    return shortest(spot, alone.moves), max(gain, 0)
