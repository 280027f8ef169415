"""What the words beside a position name: a reply that is spoken of is answered, an end that names what comes is no early stop."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from lineproof.claims.sentence import Sentence, sentences
from lineproof.engine import Board
from lineproof.lesson import Place
from lineproof.lesson.graph import Graph

_ALL = re.compile(
    r"\b(?:(?:any(?:thing)?|everything|nothing|whatever) else|any (?:other|sensible) (?:move|reply|answer)|other (?:moves|replies|answers))\b",
    re.IGNORECASE,
)


_STANDS = frozenset({"on", "from", "at"})
"""Words after which a square is where something stands, and no pawn move."""


@dataclass(frozen=True)
class Named:
    """A move that words name, in SAN without signs. number: its move number, where it is written; then `turn` is whose it is."""

    san: str
    number: int | None
    turn: str

    def fits(self, board: Board) -> bool:
        """Whether it can be a move at a position, by its number."""
        return self.number is None or (self.number, self.turn) == (board.move_number, board.turn)


def named(graph: Graph, key: int) -> frozenset[Named]:
    """The moves that the comments at a position name, those right before and behind it on every line included."""
    near = (
        at
        for place in graph.places(key)
        for at in (place, *([place.parent] if place.parent else []), *place.children)
    )
    return frozenset(move for sentence in _sentences(near) for move in _moves(sentence))


def names(said: Iterable[Named], board: Board, san: str) -> bool:
    """Whether a move at a position is among those that are named."""
    bare = san.rstrip("+#")
    return any(move.san == bare and move.fits(board) for move in said)


def for_all(graph: Graph, key: int) -> frozenset[Named] | None:
    """The moves that a comment at a position, or behind a move from there, names as the answer to whatever else may be played;
    None where no comment speaks of all else."""
    near = (at for place in graph.places(key) for at in (place, *place.children))
    said = [one for one in _sentences(near) if _ALL.search(" ".join(one.text.split()))]
    return frozenset(move for one in said for move in _moves(one)) if said else None


def _sentences(places: Iterable[Place]) -> Iterator[Sentence]:
    for place in places:
        for comment in place.comments:
            yield from sentences(comment.text, comment.start)


def _moves(sentence: Sentence) -> Iterator[Named]:
    """The moves that a sentence names: a bare square behind "on" is none."""
    before = ""
    for word in sentence.words:
        if word.move is not None and word.san:
            number = word.move.groupdict().get("number")
            if number or not (before in _STANDS and word.norm == word.san and len(word.san) == 2):
                turn = "black" if word.move.groupdict().get("dots") else "white"
                yield Named(word.san.rstrip("+#"), int(number) if number else None, turn)
        before = word.norm
