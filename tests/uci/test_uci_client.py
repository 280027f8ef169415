"""python-chess's engine client plays and analyses with the engine."""

from __future__ import annotations

import asyncio
import time
from collections.abc import Iterator

import chess
import chess.engine
import pytest

OPENINGS = {
    "the start": "",
    "the Vienna Gambit": "e2e4 e7e5 b1c3 g8f6 f2f4",
    "the Budapest Gambit": "d2d4 g8f6 c2c4 e7e5",
}
LIMITS = {
    "nodes": chess.engine.Limit(nodes=2_000),
    "depth": chess.engine.Limit(depth=5),
    "movetime": chess.engine.Limit(time=0.01),
}
LONGEST = 160
"""Plies after which a game is left: enough for an ending."""


@pytest.fixture
def engine(command: list[str]) -> Iterator[chess.engine.SimpleEngine]:
    with chess.engine.SimpleEngine.popen_uci(command) as begun:
        yield begun


def board_of(moves: str) -> chess.Board:
    board = chess.Board()
    for move in moves.split():
        board.push_uci(move)
    return board


@pytest.mark.parametrize("opening", OPENINGS)
@pytest.mark.parametrize("limit", LIMITS)
def test_it_plays_whole_games(engine: chess.engine.SimpleEngine, opening: str, limit: str) -> None:
    board = board_of(OPENINGS[opening])
    game = object()
    while not board.is_game_over(claim_draw=True) and board.ply() < LONGEST:
        played = engine.play(board, LIMITS[limit], game=game)
        assert played.move in board.legal_moves
        board.push(played.move)
    assert board.ply() > 30


def test_it_plays_a_game_by_the_clock_and_never_oversteps(
    engine: chess.engine.SimpleEngine,
) -> None:
    board = board_of(OPENINGS["the Vienna Gambit"])
    left = {chess.WHITE: 1.0, chess.BLACK: 1.0}
    increment = 0.02
    while not board.is_game_over(claim_draw=True) and board.ply() < LONGEST:
        limit = chess.engine.Limit(
            white_clock=left[chess.WHITE],
            black_clock=left[chess.BLACK],
            white_inc=increment,
            black_inc=increment,
        )
        mover = board.turn
        began = time.perf_counter()
        played = engine.play(board, limit, game="clock")
        left[mover] += increment - (time.perf_counter() - began)
        assert left[mover] > increment, f"ply {board.ply()}"
        assert played.move is not None
        board.push(played.move)


def test_it_ponders(engine: chess.engine.SimpleEngine) -> None:
    board = board_of("")
    for _ in range(6):
        played = engine.play(board, chess.engine.Limit(time=0.05), ponder=True)
        assert played.move is not None
        board.push(played.move)
        reply = played.ponder if played.ponder in board.legal_moves else None
        board.push(reply or next(iter(board.legal_moves)))


def test_it_mates_with_a_rook(engine: chess.engine.SimpleEngine) -> None:
    board = chess.Board("8/8/8/4k3/8/8/8/R3K3 w - - 0 1")
    while not board.is_game_over(claim_draw=True):
        played = engine.play(board, chess.engine.Limit(nodes=30_000), game="ending")
        assert played.move is not None
        board.push(played.move)
    assert board.is_checkmate()


def test_a_finished_game_has_no_move(engine: chess.engine.SimpleEngine) -> None:
    played = engine.play(
        chess.Board("R5k1/5ppp/8/8/8/8/8/4K3 b - - 0 1"), chess.engine.Limit(depth=2)
    )
    assert not played.move


def test_several_lines_are_told_in_order(engine: chess.engine.SimpleEngine) -> None:
    board = board_of(OPENINGS["the Vienna Gambit"])
    lines = engine.analyse(board, chess.engine.Limit(depth=7), multipv=4)
    assert [line["multipv"] for line in lines] == [1, 2, 3, 4]
    assert len({line["pv"][0] for line in lines}) == 4
    scores = [line["score"].relative for line in lines]
    assert scores == sorted(scores, reverse=True)
    for line in lines:
        after = board.copy()
        for move in line["pv"]:
            assert move in after.legal_moves
            after.push(move)


def test_more_lines_than_moves_are_as_many_as_there_are(
    engine: chess.engine.SimpleEngine,
) -> None:
    board = chess.Board("7k/8/8/8/8/8/8/K7 w - - 0 1")
    assert len(engine.analyse(board, chess.engine.Limit(depth=3), multipv=50)) == 3


def test_a_score_is_for_the_mover(engine: chess.engine.SimpleEngine) -> None:
    board = chess.Board("4k3/8/8/8/8/8/8/Q3K3 b - - 0 1")
    score = engine.analyse(board, chess.engine.Limit(depth=4))["score"]
    assert score.turn == chess.BLACK
    assert score.white().score(mate_score=100_000) > 300


def test_only_the_moves_named_are_analysed(engine: chess.engine.SimpleEngine) -> None:
    board = chess.Board()
    moves = [chess.Move.from_uci("a2a4"), chess.Move.from_uci("h2h4")]
    lines = engine.analyse(board, chess.engine.Limit(depth=5), multipv=5, root_moves=moves)
    assert {line["pv"][0] for line in lines} == set(moves)


def test_a_mate_is_found_and_counted_in_moves(engine: chess.engine.SimpleEngine) -> None:
    # Paul Morphy's problem of 1856 (from memory).
    board = chess.Board("kbK5/pp6/1P6/8/8/8/8/R7 w - - 0 1")
    found = engine.analyse(board, chess.engine.Limit(mate=2))
    assert found["score"].white() == chess.engine.Mate(2)
    assert found["pv"][0] == chess.Move.from_uci("a1a6")


def test_an_endless_analysis_is_stopped(engine: chess.engine.SimpleEngine) -> None:
    with engine.analysis(chess.Board()) as analysis:
        for told in analysis:
            if told.get("depth", 0) >= 7:
                break
    assert analysis.info["depth"] >= 7
    engine.ping()


def test_options_are_set_between_searches(engine: chess.engine.SimpleEngine) -> None:
    board = chess.Board()
    assert engine.options["Hash"].min == 1
    for settings in ({"Hash": 1}, {"Hash": 256, "Threads": 2}, {"Clear Hash": None, "Hash": 16}):
        engine.configure(settings)
        assert engine.play(board, chess.engine.Limit(nodes=3_000)).move in board.legal_moves


def test_options_are_set_in_the_middle_of_a_search(command: list[str]) -> None:
    async def talk() -> None:
        _, engine = await chess.engine.popen_uci(command)
        analysis = await engine.analysis(chess.Board())
        async for told in analysis:
            if told.get("depth", 0) >= 4:
                break
        engine.send_line("setoption name Hash value 2")
        engine.send_line("setoption name Clear Hash")
        engine.send_line("setoption name MultiPV value 2")
        await asyncio.sleep(0.1)
        analysis.stop()
        assert (await analysis.wait()).move is not None
        board = chess.Board()
        played = await engine.play(board, chess.engine.Limit(depth=4))
        assert played.move in board.legal_moves
        await engine.quit()

    asyncio.run(talk())
