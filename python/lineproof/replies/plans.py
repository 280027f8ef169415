"""Plans at the end of a line: pawn breaks that can be played, squares for the pieces still at home, exchanges to seek; each only when the search finds it good."""

from __future__ import annotations

from dataclasses import dataclass

from lineproof.claims.board import HOME_MINORS, NAMES, VALUES, side_of
from lineproof.claims.claim import GameOver, Spot
from lineproof.claims.cost import SAFE, Cost, weigh
from lineproof.engine import Board
from lineproof.lesson import Place

from .course import Course


@dataclass(frozen=True)
class Plan:
    """A move that fits the end of a line. sort: "break", "development" or "exchange". what: in words. cost: with the line that shows it, from `spot`."""

    sort: str
    what: str
    spot: Spot
    cost: Cost


@dataclass(frozen=True)
class Plans:
    """For the taught side at the end of a line, the best of each sort first."""

    place: Place
    plans: tuple[Plan, ...]


def plans(course: Course, key: int) -> Plans | None:
    """The plans at the end of a line; None elsewhere, where the taught side has no move, and where nothing is found.

    Where the other side is to move, it is what the taught side would play next if he passed.
    """
    if course.graph.moves[key]:
        return None
    spot = course.spot(key).with_move_for(course.side)
    if spot is None or not spot.board.legal_moves():
        return None
    found: list[Plan] = []
    for uci in spot.board.legal_moves():
        sort, what = _kind(spot.board, uci)
        if not sort:
            continue
        try:
            cost = weigh(course.ask, spot, uci)
        except GameOver:
            continue
        if cost.counted and cost.points <= SAFE:
            found.append(Plan(sort, what, spot, cost))
    best = _best_of_each(found)
    return Plans(course.graph.place[key], tuple(best)) if best else None


def _best_of_each(found: list[Plan]) -> list[Plan]:
    """One development for each piece, all else as it is; the cheapest first within a sort."""
    ranked = sorted(found, key=lambda plan: (plan.sort, plan.cost.points, plan.cost.san))
    kept: list[Plan] = []
    homes: set[str] = set()
    for plan in ranked:
        start = plan.cost.uci[:2]
        if plan.sort == "development":
            if start in homes:
                continue
            homes.add(start)
        kept.append(plan)
    return kept


def _kind(board: Board, uci: str) -> tuple[str, str]:
    """The sort of plan that a move is, and in words; empty where it is none."""
    start, end = uci[:2], uci[2:4]
    letter = (board.piece_at(start) or "p").lower()
    taken = board.piece_at(end)
    if letter == "p" and taken is None and start[0] == end[0]:
        after = board.play(uci)
        hit = [
            at
            for at in after.attacks(end)
            if (p := after.piece_at(at)) and p.lower() == "p" and side_of(p) != board.turn
        ]
        if hit:
            return "break", f"the break {board.san(uci)} against the pawn on {' and '.join(hit)}"
    if HOME_MINORS[board.turn].get(start) == letter and taken is None:
        return "development", f"the {NAMES[letter]} from {start} to {end}"
    if taken is not None and letter not in "pk" and VALUES[taken.lower()] == VALUES[letter]:
        enemy = "black" if board.turn == "white" else "white"
        if board.play(uci).attackers(enemy, end):
            return (
                "exchange",
                f"to exchange the {NAMES[letter]} for the {NAMES[taken.lower()]} on {end}",
            )
    return "", ""
