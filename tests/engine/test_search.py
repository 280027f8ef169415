"""The search as its callers see it: answers, limits, errors, repeatability."""

from __future__ import annotations

import threading
import time
from concurrent.futures import ThreadPoolExecutor

import chess
import pytest

from lineproof.engine import (
    ENGINE_VERSION,
    Answer,
    FenError,
    IllegalMoveError,
    InCheckError,
    LimitError,
    MoveSyntaxError,
    Stop,
    chances,
    points,
    safe_moves,
    search,
    threat,
)
from lineproof.engine.answer import is_safe

START = chess.STARTING_FEN
VIENNA_GAMBIT = "rnbqkb1r/pppp1ppp/5n2/4p3/4PP2/2N5/PPPP2PP/R1BQKBNR b KQkq - 0 3"
BACK_RANK = "6k1/5ppp/8/8/8/8/8/R3K3 w - - 0 1"


def play_out(fen: str, moves: tuple[str, ...]) -> chess.Board:
    board = chess.Board(fen)
    for uci in moves:
        board.push_uci(uci)
    return board


def test_lines_are_legal_and_their_san_is_that_of_python_chess() -> None:
    answer = search(VIENNA_GAMBIT, nodes=60_000, lines=4)
    assert len(answer.lines) == 4
    for line in answer.lines:
        board = chess.Board(VIENNA_GAMBIT)
        for uci, san in zip(line.moves, line.san, strict=True):
            move = chess.Move.from_uci(uci)
            assert move in board.legal_moves
            assert board.san(move) == san
            board.push(move)


def test_lines_begin_with_different_moves_and_come_best_first_for_the_mover() -> None:
    lines = search(VIENNA_GAMBIT, nodes=60_000, lines=5).lines
    assert len({line.moves[0] for line in lines}) == 5
    assert [line.centipawns for line in lines] == sorted(line.centipawns for line in lines)


def test_points_and_centipawns_are_for_white_whoever_moves() -> None:
    black_a_queen_up = "3qk3/pppppppp/8/8/8/8/PPPPPPPP/4K3 {} - - 0 1"
    for turn in "wb":
        line = search(black_a_queen_up.format(turn), nodes=5_000).lines[0]
        assert line.centipawns < -500
        assert line.points == points(line.centipawns) < 5


def test_there_are_no_more_lines_than_moves() -> None:
    assert len(search("7k/8/8/8/8/8/r7/7K w - - 0 1", nodes=2_000, lines=9).lines) == 1


def test_a_mate_is_counted_in_moves_with_the_sign_of_the_side_that_mates() -> None:
    white = search(BACK_RANK, nodes=5_000).lines[0]
    assert (white.san, white.mate, white.points, white.centipawns) == (("Ra8#",), 1, 100, 29_999)
    black = search("4k3/r7/8/8/8/8/5PPP/6K1 b - - 0 1", nodes=5_000).lines[0]
    assert (black.mate, black.points, black.centipawns) == (-1, 0, -29_999)
    mated = search("7k/8/5K2/8/8/8/8/6Q1 b - - 0 1", nodes=5_000).lines[0]
    assert mated.mate == 1 and mated.points == 100


def test_a_mating_line_ends_in_mate() -> None:
    # King and two rooks drive the bare king to the edge.
    fen = "8/8/8/3k4/8/8/R7/1R2K3 w - - 0 1"
    line = search(fen, nodes=200_000).lines[0]
    assert line.mate is not None and line.mate > 0
    assert play_out(fen, line.moves).is_checkmate()
    assert len(line.moves) == 2 * line.mate - 1


@pytest.mark.parametrize(
    ("fen", "moves", "finished"),
    [
        ("7k/5KQ1/8/8/8/8/8/8 b - - 0 1", (), "checkmate"),
        ("7k/5K2/6Q1/8/8/8/8/8 b - - 0 1", (), "stalemate"),
        ("8/8/4k3/8/8/4KB2/8/8 w - - 0 1", (), "draw by insufficient material"),
        (START, ("g1f3", "g8f6", "f3g1", "f6g8") * 4, "draw by fivefold repetition"),
        ("4k3/8/8/8/8/8/8/R3K3 w - - 150 120", (), "draw by the seventy-five-move rule"),
    ],
)
def test_a_finished_game_has_no_lines_and_says_how_it_ended(
    fen: str, moves: tuple[str, ...], finished: str
) -> None:
    assert search(fen, moves, nodes=1_000) == Answer((), 0, 0, False, finished)
    assert safe_moves(fen, moves, nodes=100) == ()


def test_the_threefold_repetition_is_worth_a_draw() -> None:
    # Black is a queen up; the king goes to and fro, and the position arises for the third time.
    fen = "7k/8/8/8/8/8/1q6/7K w - - 0 1"
    shuffle = ("h1g1", "h8g8", "g1h1", "g8h8")
    fresh = search(fen, nodes=5_000).lines[0]
    third = search(fen, (*shuffle, *shuffle[:3]), nodes=5_000, root_moves=["g8h8"]).lines[0]
    assert fresh.points < 10
    assert third.points == 50


def test_the_fifty_move_rule_is_worth_a_draw() -> None:
    up_a_rook = "4k3/8/8/8/8/8/8/R3K3 w - - {} 80"
    assert search(up_a_rook.format(0), nodes=5_000).lines[0].points > 90
    assert search(up_a_rook.format(99), nodes=5_000).lines[0].points == 50


def test_only_the_root_moves_asked_for_are_considered() -> None:
    answer = search(BACK_RANK, nodes=5_000, root_moves=["e1d1", "e1e2"], lines=3)
    assert {line.moves[0] for line in answer.lines} == {"e1d1", "e1e2"}


def test_a_depth_limit_is_reached_and_not_passed() -> None:
    assert search(START, depth=6).depth == 6


def test_a_node_limit_is_kept() -> None:
    assert search(START, nodes=30_000).nodes == 30_000


def test_a_time_limit_is_kept() -> None:
    begun = time.perf_counter()
    answer = search(START, seconds=0.2)
    assert answer.stopped
    assert time.perf_counter() - begun < 2


@pytest.mark.parametrize("lines", [1, 3])
def test_the_same_nodes_give_the_same_answer(lines: int) -> None:
    first = search(VIENNA_GAMBIT, nodes=50_000, lines=lines)
    assert all(search(VIENNA_GAMBIT, nodes=50_000, lines=lines) == first for _ in range(2))


def test_several_threads_find_the_mate_and_keep_the_node_limit() -> None:
    fen = "8/8/8/3k4/8/8/R7/1R2K3 w - - 0 1"
    answer = search(fen, nodes=400_000, threads=3)
    assert answer.lines[0].mate is not None and answer.lines[0].mate > 0
    assert play_out(fen, answer.lines[0].moves).is_checkmate()
    # The threads count in portions, so a limit for all of them is kept but for a few of these.
    assert search(START, nodes=200_000, threads=3).nodes < 210_000


def test_chances_are_a_hundred_together_and_agree_with_the_points() -> None:
    for centipawns in range(-1500, 1501, 10):
        win, draw, loss = chances(centipawns)
        assert win + draw + loss == 100
        assert (loss, draw, win) == chances(-centipawns)
        assert abs(win + draw / 2 - points(centipawns)) <= 1


def test_searches_side_by_side_do_not_touch_each_other() -> None:
    fens = [VIENNA_GAMBIT, START, BACK_RANK, VIENNA_GAMBIT, START]
    alone = [search(fen, nodes=50_000) for fen in fens]
    with ThreadPoolExecutor(2) as pool:
        together = list(pool.map(lambda fen: search(fen, nodes=50_000), fens))
    assert together == alone


def test_a_stop_from_another_thread_ends_the_search_within_a_second() -> None:
    stop = Stop()
    with ThreadPoolExecutor(1) as pool:
        running = pool.submit(search, START, stop=stop)
        time.sleep(0.3)
        assert not running.done()
        begun = time.perf_counter()
        stop.set()
        answer = running.result(timeout=5)
    assert time.perf_counter() - begun < 1
    assert answer.stopped and answer.lines and stop.is_set()


def test_the_interpreter_is_free_while_a_search_runs() -> None:
    counted = 0
    stop = Stop()
    thread = threading.Thread(target=search, args=(START,), kwargs={"stop": stop})
    thread.start()
    until = time.perf_counter() + 0.2
    while time.perf_counter() < until:
        counted += 1
    stop.set()
    thread.join()
    assert counted > 1_000


@pytest.mark.parametrize(
    "limits",
    [
        {},
        {"nodes": 0},
        {"nodes": -5},
        {"depth": 0},
        {"seconds": 0.0},
        {"seconds": -1.0},
        {"seconds": float("nan")},
        {"nodes": 100, "lines": 0},
        {"nodes": 100, "threads": 0},
        {"nodes": 100, "threads": 100_000},
        {"nodes": 100, "hash_mb": 0},
        {"nodes": 100, "root_moves": []},
        {"nodes": 100, "root_moves": ["e2e5"]},
        {"nodes": 100, "root_moves": ["nonsense"]},
    ],
)
def test_missing_or_contradictory_limits_are_refused(limits: dict[str, object]) -> None:
    with pytest.raises(LimitError):
        search(START, **limits)  # type: ignore[arg-type]


def test_a_bad_position_or_move_is_refused() -> None:
    with pytest.raises(FenError):
        search("8/8/8/8/8/8/8/K7 w - - 0 1", nodes=100)
    with pytest.raises(IllegalMoveError):
        search(START, ["e2e5"], nodes=100)
    with pytest.raises(MoveSyntaxError):
        search(START, ["e2-e4!"], nodes=100)


def test_the_threat_is_what_the_opponent_plays_after_a_pass() -> None:
    # Scholar's mate (common practice): White threatens to take on f7.
    fen = "r1bqkbnr/pppp1ppp/2n5/4p2Q/2B1P3/8/PPPP1PPP/RNB1K1NR b KQkq - 3 3"
    line = threat(fen, nodes=10_000).lines[0]
    assert (line.san, line.mate) == (("Qxf7#",), 1)


def test_a_side_in_check_cannot_pass() -> None:
    with pytest.raises(InCheckError):
        threat("4k3/8/8/8/8/8/4r3/4K3 w - - 0 1", nodes=1_000)


def test_every_legal_move_has_a_cost_and_the_best_costs_nothing() -> None:
    fen = "4k3/8/8/3q4/8/4N3/8/4K3 w - - 0 1"
    costs = safe_moves(fen, nodes=2_000)
    assert {cost.uci for cost in costs} == {m.uci() for m in chess.Board(fen).legal_moves}
    assert (costs[0].san, costs[0].cost) == ("Nxd5", 0)
    assert all(cost.cost >= 0 and cost.line.moves[0] == cost.uci for cost in costs)
    assert [cost.cost for cost in costs] == sorted(cost.cost for cost in costs)
    assert all(cost.cost >= 30 for cost in costs[1:])


def test_costs_are_for_black_too() -> None:
    costs = safe_moves("4k3/8/4n3/8/3Q4/8/8/4K3 b - - 0 1", nodes=2_000)
    assert (costs[0].san, costs[0].cost) == ("Nxd4", 0)
    assert all(cost.cost >= 30 for cost in costs[1:])


def test_the_engine_has_a_version() -> None:
    assert ENGINE_VERSION


@pytest.mark.parametrize(
    ("best", "points", "safe"),
    [
        (60, 55, True),
        (60, 54, False),
        (91, 85, True),
        (91, 84, False),
        (90, 85, True),
        (90, 84, False),
        (100, 85, True),
        (100, 84, False),
        (3, 0, True),
    ],
)
def test_a_move_is_safe_that_costs_little_or_leaves_a_won_game(
    best: int, points: int, safe: bool
) -> None:
    assert is_safe(best, points) is safe


def test_safety_is_told_in_the_points_of_the_mover() -> None:
    # White may take the queen or lose a rook to it; the same with colours changed.
    for fen, best, worst in (
        ("3qk3/8/8/8/8/8/8/3RK3 w - - 0 1", "d1d8", "d1d7"),
        ("3rk3/8/8/8/8/8/8/3QK3 b - - 0 1", "d8d1", "d8d2"),
    ):
        costs = {each.uci: each for each in safe_moves(fen, nodes=2_000)}
        assert costs[best].safe
        assert not costs[worst].safe


def test_all_legal_moves_are_told_the_unsafe_ones_too() -> None:
    costs = safe_moves("3qk3/8/8/8/8/8/8/3RK3 w - - 0 1", nodes=2_000)
    board = chess.Board("3qk3/8/8/8/8/8/8/3RK3 w - - 0 1")
    assert {each.uci for each in costs} == {move.uci() for move in board.legal_moves}
    assert {each.safe for each in costs} == {True, False}
