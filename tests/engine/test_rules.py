"""Rules: python-chess is the second reader of every position, move and count."""

from __future__ import annotations

import random

import chess
import chess.polyglot
import pytest

from lineproof.engine import Board, FenError, perft

# "Perft Results", Chess Programming Wiki, and computer chess forum threads: (FEN, counts).
PUBLISHED = [
    (chess.STARTING_FEN, (20, 400, 8902, 197281)),
    ("r3k2r/p1ppqpb1/bn2pnp1/3PN3/1p2P3/2N2Q1p/PPPBBPPP/R3K2R w KQkq - 0 1", (48, 2039, 97862)),
    ("8/2p5/3p4/KP5r/1R3p1k/8/4P1P1/8 w - - 0 1", (14, 191, 2812, 43238)),
    ("r2q1rk1/pP1p2pp/Q4n2/bbp1p3/Np6/1B3NBn/pPPP1PPP/R3K2R b KQ - 0 1", (6, 264, 9467)),
    ("rnbq1k1r/pp1Pbppp/2p5/8/2B5/8/PPP1NnPP/RNBQK2R w KQ - 0 1", (44, 1486, 62379)),
    (
        "r4rk1/1pp1qppp/p1np1n2/2b1p1B1/2B1P1b1/P1NP1N2/1PP1QPPP/R4RK1 w - - 0 1",
        (46, 2079, 89890),
    ),
    ("8/8/8/5k2/3p4/8/4P3/4K3 w - - 0 1", (6, 54, 343, 2810)),
    ("2b5/kpPp4/1p1P4/1P6/6p1/4p1P1/4PpPK/5B2 w - - 0 1", (1, 1)),
    ("8/8/8/B2p3Q/2qPp1P1/b7/2P2PkP/4K2R b K - 0 1", (26, 611, 14583)),
    ("R6R/3Q4/1Q4Q1/4Q3/2Q4Q/Q4Q2/pp1Q4/kBNN1KB1 w - - 0 1", (218, 99, 19073)),
]

# From the same lists, but no position of a game of chess: (FEN, what the refusal says).
REFUSED = [
    ("r1k1r2q/p1ppp1pp/8/8/8/8/P1PPP1PP/R1K1R2Q w KQkq - 0 1", "castling rights"),
    ("8/8/8/1k6/3Pp3/8/8/4KQ2 b - d3 0 1", "such a check"),
    ("3R4/8/q4k2/2B5/1NK5/3b4/8/8 w - - 0 1", "such a check"),
]


def count(board: chess.Board, depth: int) -> int:
    if depth == 1:
        return board.legal_moves.count()
    total = 0
    for move in board.legal_moves:
        board.push(move)
        total += count(board, depth - 1)
        board.pop()
    return total


@pytest.mark.parametrize(("fen", "counts"), PUBLISHED)
def test_perft_counts_are_the_published_ones(fen: str, counts: tuple[int, ...]) -> None:
    assert tuple(perft(fen, depth) for depth in range(1, len(counts) + 1)) == counts


@pytest.mark.parametrize("fen", [fen for fen, _ in PUBLISHED])
def test_perft_counts_are_those_of_python_chess(fen: str) -> None:
    for depth in (1, 2, 3):
        if perft(fen, depth) > 20_000:  # python-chess takes seconds beyond
            break
        assert perft(fen, depth) == count(chess.Board(fen), depth)


@pytest.mark.parametrize(("fen", "reason"), REFUSED)
def test_what_is_no_position_of_a_game_is_refused_with_the_reason(fen: str, reason: str) -> None:
    with pytest.raises(FenError, match=reason):
        perft(fen, 1)


@pytest.mark.parametrize("seed", range(200))
def test_a_random_game_reads_the_same_in_python_chess(seed: int) -> None:
    rng = random.Random(seed)
    theirs = chess.Board()
    ours = Board()
    for _ in range(rng.randint(40, 160)):
        legal = sorted(move.uci() for move in theirs.legal_moves)
        assert ours.legal_moves() == legal
        assert ours.in_check == theirs.is_check()
        if not legal:
            break
        for uci in legal:
            move = chess.Move.from_uci(uci)
            san = theirs.san(move)
            assert ours.san(uci) == san
            assert ours.parse_san(san) == uci
        # python-chess hashes en passant where a pawn stands beside, legal or not: ours only legal.
        if theirs.ep_square is None or theirs.has_legal_en_passant():
            assert ours.key == chess.polyglot.zobrist_hash(theirs)
        assert ours.fen == theirs.fen(en_passant="legal")
        played = rng.choice(legal)
        theirs.push_uci(played)
        ours = ours.play(played)
    assert ours.is_checkmate == theirs.is_checkmate()
    assert ours.is_stalemate == theirs.is_stalemate()
