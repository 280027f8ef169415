"""Recurring ideas: the same move at several positions of a lesson, good here and bad there, and what makes the difference."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from lineproof.claims.board import NAMES, names, side_of
from lineproof.claims.claim import GameOver
from lineproof.claims.cost import SAFE, Cost, weigh
from lineproof.engine import Board
from lineproof.lesson import Place

from .course import Course

COSTS = 15
"""Points that the move costs at least where it is bad."""
APART = 8
"""Squares on which two positions may differ at most for the difference to be told."""


@dataclass(frozen=True)
class Occurrence:
    """The move at one position. played: whether the lesson plays it there."""

    place: Place
    cost: Cost
    played: bool


@dataclass(frozen=True)
class Idea:
    """A move that is good at some positions and bad at others, and that the lesson plays at one of them at least. move: in words, "the knight takes on f7".

    works, fails: where, in the order of the lesson. differs: what stands otherwise between the two of them that are most alike, in one sentence; "" where too much does.
    pair: these two, the one where it works first.
    """

    side: str
    move: str
    works: tuple[Occurrence, ...]
    fails: tuple[Occurrence, ...]
    differs: str
    pair: tuple[Occurrence, Occurrence]

    @property
    def taught(self) -> bool:
        """Whether the lesson plays it both where it works and where it fails."""
        return any(one.played for one in self.works) and any(one.played for one in self.fails)


def ideas(course: Course) -> list[Idea]:
    """The recurring ideas of a lesson: moves that it plays at one position and that it plays or that are likely at another, from the same square or,
    where a piece takes, from any. Those that the lesson plays on both sides come first, then those whose positions are most alike."""
    groups: dict[tuple[str, str, str], list[tuple[int, str]]] = {}
    for key in course.order:
        for uci in _candidates(course, key):
            for name in _names(course.spot(key).board, uci):
                groups.setdefault(name, []).append((key, uci))
    found: list[Idea] = []
    seen: set[tuple[tuple[int, str], ...]] = set()
    for (side, _, move), at in groups.items():
        where = tuple(dict.fromkeys(at))
        if len({key for key, _ in where}) < 2 or where in seen:
            continue
        seen.add(where)
        idea = _idea(course, side, move, where)
        if idea is not None:
            found.append(idea)
    return sorted(found, key=lambda idea: (not idea.taught, len(_apart(*idea.pair))))


def _candidates(course: Course, key: int) -> Iterator[str]:
    """Moves that the lesson plays at a position, and likely ones."""
    yield from course.graph.moves[key]
    if course.spot(key).board.legal_moves():
        yield from (reply.uci for reply in course.likely(key).replies if reply.likely)


def _names(board: Board, uci: str) -> Iterator[tuple[str, str, str]]:
    """Under what a move is known: from its square; a capture by a piece also by its aim alone. (side, key, in words)"""
    letter = (board.piece_at(uci[:2]) or "p").lower()
    piece, takes = NAMES[letter], "x" in board.san(uci)
    verb = "takes on" if takes else "goes to"
    san = board.san(uci).rstrip("+#")
    said = f"the {piece} {verb} {uci[2:4]}"
    if san.startswith("O-O"):
        said = f"castling on the {'queen' if san == 'O-O-O' else 'king'}'s side"
    if takes and letter != "p":
        yield board.turn, f"{letter}x{uci[2:4]}", said
    else:
        yield board.turn, uci, said


def _idea(course: Course, side: str, move: str, where: tuple[tuple[int, str], ...]) -> Idea | None:
    works: list[Occurrence] = []
    fails: list[Occurrence] = []
    for key, uci in where:
        try:
            cost = weigh(course.ask, course.spot(key), uci)
        except GameOver:
            continue
        one = Occurrence(course.graph.place[key], cost, uci in course.graph.moves[key])
        if cost.counted and cost.points <= SAFE:
            works.append(one)
        elif cost.counted and cost.points >= COSTS:
            fails.append(one)
    if not works or not fails or not any(one.played for one in (*works, *fails)):
        return None
    pair = min(
        ((good, bad) for good in works for bad in fails if good.played or bad.played),
        key=lambda two: (len(_apart(*two)), not (two[0].played and two[1].played)),
    )
    return Idea(side, move, tuple(works), tuple(fails), _differs(*pair), pair)


def _apart(good: Occurrence, bad: Occurrence) -> set[str]:
    one, other = dict(good.place.board.pieces()), dict(bad.place.board.pieces())
    return {at for at in {*one, *other} if one.get(at) != other.get(at)}


def _differs(good: Occurrence, bad: Occurrence) -> str:
    """What stands otherwise, in one sentence."""
    squares = sorted(_apart(good, bad))
    if len(squares) > APART:
        return ""
    if not squares:
        return "The same pieces stand on the same squares; the right to castle or to take in passing makes the difference."
    told = []
    for occurrence, word in ((good, "Where it works"), (bad, "where it fails")):
        board = occurrence.place.board
        there = [
            _owned(
                board,
                side,
                [at for at in squares if (p := board.piece_at(at)) and side_of(p) == side],
            )
            for side in ("white", "black")
        ]
        said = " and ".join(part for part in there if part)
        told.append(f"{word} there stand {said}" if said else f"{word} these squares are empty")
    return f"{told[0]}, {told[1]}."


def _owned(board: Board, side: str, squares: list[str]) -> str:
    if not squares:
        return ""
    return names(board, squares).replace("the ", f"{side.capitalize()}'s ", 1)
