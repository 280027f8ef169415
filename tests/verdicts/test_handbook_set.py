"""The set of handbook verdicts is well formed: legal, varied, quiet, and marked with its sources.

They look at the set alone; how well verdicts agree with it is measured elsewhere. The sources
stand beside each position (from memory); see README.md beside this file.
"""

from __future__ import annotations

import json
import re
from collections import Counter
from pathlib import Path
from typing import Any

import chess
import pytest

HERE = Path(__file__).parent
TABIYAS: list[dict[str, Any]] = json.loads((HERE / "handbook.json").read_text(encoding="utf-8"))
README = (HERE / "README.md").read_text(encoding="utf-8")

KINDS = ("open", "semi-open", "closed", "Indian", "flank", "gambit")
SIDELESS = {"level", "unclear"}
COMPENSATION = {"some compensation", "enough compensation"}
BETTER = {"slight", "clear", "winning"}
# common practice; a king can be taken with by the last capturer only
VALUES = {
    chess.PAWN: 1,
    chess.KNIGHT: 3,
    chess.BISHOP: 3,
    chess.ROOK: 5,
    chess.QUEEN: 9,
    chess.KING: 100,
}

each_tabiya = pytest.mark.parametrize("tabiya", TABIYAS, ids=lambda t: t["name"])


def board_of(tabiya: dict[str, Any]) -> chess.Board:
    """The position after the moves. An illegal move raises."""
    board = chess.Board()
    for word in tabiya["moves"].split():
        if not word.endswith("."):
            board.push_san(word)
    return board


def gain(board: chess.Board, move: chess.Move) -> int:
    """Points a capture wins when both sides go on taking on its square while that pays."""
    taken = chess.PAWN if board.is_en_passant(move) else board.piece_type_at(move.to_square)
    if taken is None:
        return 0
    after = board.copy(stack=False)
    after.push(move)
    replies = [m for m in after.legal_moves if m.to_square == move.to_square]
    if not replies:
        return VALUES[taken]
    cheapest = min(replies, key=lambda m: VALUES[after.piece_type_at(m.from_square) or chess.KING])
    return VALUES[taken] - max(0, gain(after, cheapest))


def points(board: chess.Board, side: chess.Color) -> int:
    return sum(
        VALUES[piece] * len(board.pieces(piece, side)) for piece in VALUES if piece != chess.KING
    )


def verdicts_of(tabiya: dict[str, Any]) -> list[tuple[str, str | None]]:
    return [(v["verdict"], v["side"]) for v in (tabiya, tabiya.get("also")) if v is not None]


@each_tabiya
def test_every_move_is_legal_and_written_as_the_standard_has_it(tabiya: dict[str, Any]) -> None:
    moves = board_of(tabiya).move_stack
    assert len(moves) >= 5
    assert tabiya["moves"] == chess.Board().variation_san(moves)


def test_no_position_and_no_name_stands_twice() -> None:
    assert [p for p, n in Counter(board_of(t).epd() for t in TABIYAS).items() if n > 1] == []
    assert [name for name, n in Counter(t["name"] for t in TABIYAS).items() if n > 1] == []


@each_tabiya
def test_every_verdict_is_a_known_word_with_a_side_where_it_needs_one(
    tabiya: dict[str, Any],
) -> None:
    for word, side in verdicts_of(tabiya):
        assert word in SIDELESS | COMPENSATION | BETTER
        assert side in ((None,) if word in SIDELESS else ("white", "black"))


@each_tabiya
def test_a_second_verdict_differs_and_says_why(tabiya: dict[str, Any]) -> None:
    assert len(set(verdicts_of(tabiya))) == len(verdicts_of(tabiya))
    assert "also" not in tabiya or tabiya["also"]["reason"].endswith(".")


@each_tabiya
def test_every_verdict_has_its_source_and_the_opinion_recalled(tabiya: dict[str, Any]) -> None:
    assert set(tabiya) - {"also"} == {
        "name",
        "kind",
        "moves",
        "verdict",
        "side",
        "source",
        "opinion",
    }
    source = r"Encyclopaedia of Chess Openings, [A-E]\d\d; from memory"
    assert re.fullmatch(source, tabiya["source"])
    assert tabiya["opinion"].endswith(".")


@each_tabiya
def test_the_side_to_move_is_not_in_check_and_no_capture_gains_a_pawn(
    tabiya: dict[str, Any],
) -> None:
    board = board_of(tabiya)
    assert not board.is_check()
    hanging = {
        board.san(m) for m in board.legal_moves if board.is_capture(m) and gain(board, m) > 0
    }
    assert hanging == set()


@each_tabiya
def test_the_side_with_compensation_is_at_least_a_pawn_behind(tabiya: dict[str, Any]) -> None:
    board = board_of(tabiya)
    for word, side in verdicts_of(tabiya):
        if word in COMPENSATION:
            behind = side == "white"
            assert points(board, not behind) - points(board, behind) >= 1


def table(heading: str) -> dict[str, int]:
    """The counts in the table of README.md whose first column has this heading."""
    _, _, rows = README.partition(f"| {heading} | positions |\n|---|---|\n")
    counts = re.findall(r"^\| ([\w -]+) \| (\d+) \|$", rows.partition("\n\n")[0], re.MULTILINE)
    return {word: int(count) for word, count in counts}


def test_the_counts_by_kind_are_as_claimed() -> None:
    counts = Counter(t["kind"] for t in TABIYAS)
    assert table("kind") == counts
    assert set(counts) == set(KINDS)
    assert counts["gambit"] >= 20
    assert 60 <= len(TABIYAS) <= 80


def test_the_counts_by_verdict_are_as_claimed() -> None:
    counts = Counter(t["verdict"] for t in TABIYAS)
    assert table("verdict") == counts
    assert counts["clear"] + counts["winning"] >= 10
    seconds = sum("also" in t for t in TABIYAS)
    assert f"\n{seconds} entries accept a second verdict." in README


@pytest.mark.parametrize(
    ("fen", "move", "points_won"),
    [
        ("4k3/8/8/3p4/4P3/8/8/4K3 w - - 0 1", "e4d5", 1),
        ("4k3/8/4p3/3p4/4P3/8/8/4K3 w - - 0 1", "e4d5", 0),
        ("4k3/8/4p3/3p4/8/4N3/8/4K3 w - - 0 1", "e3d5", -2),
        ("3rk3/8/8/3p4/8/8/3R4/3RK3 w - - 0 1", "d2d5", 1),
    ],
    ids=["unprotected", "pawn for pawn", "knight for pawn", "rook behind rook"],
)
def test_captures_on_one_square_are_counted_rightly(fen: str, move: str, points_won: int) -> None:
    assert gain(chess.Board(fen), chess.Move.from_uci(move)) == points_won
