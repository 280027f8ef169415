"""The conversation itself, as the protocol text of April 2006 describes it (from memory)."""

from __future__ import annotations

import statistics
import struct
import time
from pathlib import Path

import chess
import pytest

from .talk import Talk

MATED = "R5k1/5ppp/8/8/8/8/8/4K3 b - - 0 1"
STALEMATED = "k7/2Q5/8/8/8/8/8/4K3 b - - 0 1"
MATE_IN_TWO = "kbK5/pp6/1P6/8/8/8/8/R7 w - - 0 1"
"""Paul Morphy's problem of 1856; 1. Ra6 (from memory)."""


def info(lines: list[str], word: str) -> list[str]:
    """The values after a word in the lines of information."""
    found = []
    for line in lines:
        words = line.split()
        if words[:1] == ["info"] and words[1:2] != ["string"] and word in words:
            found.append(words[words.index(word) + 1])
    return found


def remarks(lines: list[str]) -> list[str]:
    return [line.removeprefix("info string ") for line in lines if line.startswith("info string ")]


def test_it_says_who_it_is_and_lists_its_options(talk: Talk) -> None:
    talk.tell("uci")
    lines = talk.until("uciok")
    assert lines[0].startswith("id name Lineproof ")
    assert lines[1] == "id author The Lineproof developers"
    options = {line.split(" type ")[0].removeprefix("option name ") for line in lines[2:-1]}
    assert options == {"Hash", "Clear Hash", "Threads", "MultiPV", "Ponder", "Without", "Network"}


def test_is_ready_is_answered_while_searching(talk: Talk) -> None:
    talk.tell("go infinite", "isready")
    assert "bestmove" not in " ".join(talk.until("readyok"))
    talk.tell("stop")
    talk.until("bestmove")


def test_an_infinite_search_answers_only_after_stop(talk: Talk) -> None:
    # It is over at once, a mate in one, but nobody has asked for the move yet.
    talk.tell("position fen 6k1/5ppp/8/8/8/8/8/R3K3 w - - 0 1", "go infinite")
    said = talk.said_within(0.7)
    assert said and not any(line.startswith("bestmove") for line in said)
    assert talk.best("stop") == "a1a8"


def test_stop_is_obeyed_within_20_ms_half_the_time_or_more(talk: Talk) -> None:
    delays = []
    for _ in range(9):
        talk.tell("position startpos", "go infinite")
        time.sleep(0.05)
        sent = talk.tell("stop")
        _, heard = talk.until_timed("bestmove")
        delays.append(heard - sent)
    # The middle one: how long the machine lets either process wait is not the engine's doing.
    assert statistics.median(delays) <= 0.02, delays


def test_a_search_to_a_depth_tells_of_each_iteration(talk: Talk) -> None:
    talk.tell("position startpos moves e2e4", "go depth 6")
    lines = talk.until("bestmove")
    assert info(lines, "depth") == ["1", "2", "3", "4", "5", "6"]
    assert len(info(lines, "pv")) == len(info(lines, "nps")) == len(info(lines, "time")) == 6
    board = chess.Board()
    board.push_uci("e2e4")
    last = [line for line in lines if " pv " in line][-1]
    for move in last.split(" pv ")[1].split():
        board.push_uci(move)  # raises when it is not legal


@pytest.mark.parametrize(("fen", "score"), [(MATED, "mate 0"), (STALEMATED, "cp 0")])
def test_in_a_finished_game_the_move_is_none(talk: Talk, fen: str, score: str) -> None:
    talk.tell(f"position fen {fen}", "go depth 3")
    assert talk.until("bestmove") == [f"info depth 0 score {score}", "bestmove 0000"]


def test_a_wrong_fen_leaves_the_position_as_it_is(talk: Talk) -> None:
    talk.tell(f"position fen {MATE_IN_TWO}", "position fen 8/8/8/8/8/8/8/K7 w - - 0 1", "isready")
    assert remarks(talk.until("readyok")) == [
        "the FEN 8/8/8/8/8/8/8/K7 w - - 0 1: a king is missing; the position is unchanged"
    ]
    assert talk.best("go mate 2") == "a1a6"


def test_an_illegal_move_leaves_the_position_as_it_is(talk: Talk) -> None:
    talk.tell(f"position fen {MATE_IN_TWO}", "position startpos moves e2e4 e7e5 e1e3", "isready")
    said = remarks(talk.until("readyok"))
    assert len(said) == 1 and said[0].startswith("move 3: e1e3 is not legal here")
    assert talk.best("go mate 2") == "a1a6"


def test_a_mate_is_proved_or_said_not_to_be(talk: Talk) -> None:
    talk.tell(f"position fen {MATE_IN_TWO}", "go mate 2")
    assert info(talk.until("bestmove"), "score") == ["mate"]
    talk.tell("go mate 1")
    lines = talk.until("bestmove")
    assert "no mate in 1: every move was tried" in remarks(lines)
    assert lines[-1].split()[1] != "0000"


def test_only_the_moves_named_are_searched(talk: Talk) -> None:
    found = talk.best("position startpos", "go searchmoves a2a3 h2h3 nodes 5000")
    assert found in {"a2a3", "h2h3"}
    talk.tell("go searchmoves e7e5 depth 2")
    lines = talk.until("bestmove")
    assert remarks(lines)[0].startswith("searchmoves: e7e5 is not legal here")


def test_unknown_words_are_passed_over(talk: Talk) -> None:
    talk.tell("", "joho", "joho isready", "go away depth 1 quickly")
    assert talk.until("readyok")
    assert talk.until("bestmove")


def test_lines_may_end_in_carriage_return(talk: Talk) -> None:
    talk.send(b"position startpos moves e2e4\r\nisready\r\n")
    assert talk.until("readyok") == ["readyok"]


def test_numbers_out_of_bounds_are_clamped_and_said(talk: Talk) -> None:
    talk.tell(
        "setoption name Hash value 0",
        "setoption name MultiPV value 1000000000000000000000000",
        "setoption name Threads value -1",
        "setoption name Hash value many",
        "setoption name Colour value blue",
        "isready",
    )
    said = remarks(talk.until("readyok"))
    assert said[0].startswith("Hash is 1 to ") and said[0].endswith("it is now 1")
    assert said[1:] == [
        "MultiPV is 1 to 256; it is now 256",
        "Threads is 1 to 256; it is now 1",
        "Hash needs a whole number, not 'many'",
        "there is no option Colour",
    ]
    talk.tell("setoption name MultiPV value 1", "go depth -5 nodes 99999999999999999999999")
    assert "depth is taken as 1" in remarks(talk.until("bestmove"))


def test_the_largest_table_is_taken_only_as_it_is_used(talk: Talk) -> None:
    talk.tell("setoption name Hash value 99999999", "go depth 4", "isready")
    talk.until("bestmove")
    talk.tell("ucinewgame", "isready")
    talk.until("readyok")


@pytest.mark.parametrize(
    "limits",
    [
        "wtime -100 btime -100",
        "wtime 0 btime 0",
        "wtime 1 btime 1 winc 0 binc 0 movestogo 0",
        "wtime 50 btime 50 movestogo -3",
        "movetime 0",
        "movetime -10",
        "btime 100",
        "depth 0",
        "nodes 0",
        "wtime 100000000000000000000 btime 10 movetime 20",
    ],
)
def test_odd_limits_still_end_soon(talk: Talk, limits: str) -> None:
    sent = talk.tell("position startpos", f"go {limits}")
    _, heard = talk.until_timed("bestmove")
    assert heard - sent < 2


def test_without_a_limit_it_searches_until_stop(talk: Talk) -> None:
    talk.tell("go")
    said = talk.said_within(0.3)
    assert "no limit: searching until stop" in remarks(said)
    assert not any(line.startswith("bestmove") for line in said)
    talk.best("stop")


def test_a_second_search_waits_for_nothing_and_is_refused(talk: Talk) -> None:
    talk.tell("go infinite", "go depth 1", "isready")
    assert "a search is under way: send stop first" in remarks(talk.until("readyok"))
    talk.best("stop")


def test_stop_without_a_search_is_no_answer(talk: Talk) -> None:
    talk.tell("stop", "ponderhit", "isready")
    assert talk.until("readyok") == ["readyok"]


def test_pondering_waits_for_the_hit_and_then_plays_by_the_clock(talk: Talk) -> None:
    talk.tell("position startpos moves e2e4 e7e5")
    talk.tell("go ponder wtime 2000 btime 2000")
    said = talk.said_within(0.5)
    assert said and not any(line.startswith("bestmove") for line in said)
    hit = talk.tell("ponderhit")
    _, heard = talk.until_timed("bestmove")
    assert heard - hit < 1.1  # at most half of what is left on the clock


def test_pondering_ends_by_stop_too(talk: Talk) -> None:
    talk.tell("position startpos moves e2e4 e7e5", "go ponder wtime 20000 btime 20000")
    talk.said_within(0.1)
    assert talk.best("stop") != "0000"


def test_a_finished_ponder_search_still_waits_for_the_hit(talk: Talk) -> None:
    talk.tell("position fen 6k1/5ppp/8/8/8/8/8/R3K3 w - - 0 1", "go ponder depth 2")
    assert not any(line.startswith("bestmove") for line in talk.said_within(0.4))
    assert talk.best("ponderhit") == "a1a8"


def test_the_same_question_in_a_new_game_has_the_same_answer(talk: Talk) -> None:
    def asked() -> list[str]:
        talk.tell("ucinewgame", "position startpos moves e2e4 e7e5 f2f4", "go nodes 20000")
        lines = talk.until("bestmove")
        return info(lines, "score") + info(lines, "nodes") + [lines[-1]]

    first = asked()
    talk.best("position startpos", "go nodes 50000")
    assert asked() == first


def test_techniques_can_be_switched_off(talk: Talk) -> None:
    def nodes() -> list[str]:
        talk.tell("position startpos", "go depth 9")
        return info(talk.until("bestmove"), "nodes")

    with_all = nodes()
    talk.tell("setoption name Without value null-move,killers")
    without = nodes()
    talk.tell("setoption name Without value magic", "isready")
    assert remarks(talk.until("readyok"))[0].startswith("Without: magic is no technique")
    talk.tell("setoption name Without value <empty>")
    assert nodes() == with_all != without


def network_that_knows_nothing() -> bytes:
    """A network whose weights are all zero, after the layout in `crates/engine/src/eval/network/file.rs`."""
    head = b"Lineproof net 1\n" + struct.pack("<6I", 128, 32, 1, 1, 400, 0) + bytes(32 + 33 + 7)
    rest = bytes(8 + 2 * (768 * 32 + 32 + 64) + 4)
    checksum = 0xCBF29CE484222325
    for (word,) in struct.iter_unpack("<Q", head + rest + bytes(4)):
        checksum = (checksum ^ word) * 0x100000001B3 % 2**64
    return head + struct.pack("<Q", checksum) + rest


def test_a_network_can_value_positions_instead(talk: Talk, tmp_path: Path) -> None:
    def scores() -> list[str]:
        talk.tell("position fen 4k3/pppp4/8/8/8/8/PPPP4/3QK3 w - - 0 1", "go depth 1")
        return info(talk.until("bestmove"), "cp")

    by_hand = scores()
    assert int(by_hand[0]) > 400
    file = tmp_path / "network.bin"
    file.write_bytes(network_that_knows_nothing())
    talk.tell(f"setoption name Network value {file}")
    assert scores() == ["0"]
    file.write_bytes(file.read_bytes()[:-1])
    talk.tell(f"setoption name Network value {file}", "isready")
    assert remarks(talk.until("readyok"))[0].endswith("it is unchanged")
    assert scores() == ["0"]
    talk.tell("setoption name Network value <empty>")
    assert scores() == by_hand


def test_quit_in_the_middle_of_a_search_ends_the_process(talk: Talk) -> None:
    talk.tell("go infinite")
    talk.until("info depth 5")
    talk.tell("quit")
    assert talk.end(5) == 0


def test_the_end_of_the_input_ends_the_process(talk: Talk) -> None:
    talk.tell("go infinite")
    talk.until("info depth 5")
    talk.close_input()
    assert talk.end(5) == 0


def test_a_mate_search_without_end_can_be_left(talk: Talk) -> None:
    talk.tell("position startpos", "go mate 30")
    assert talk.said_within(0.3) == []
    sent = talk.tell("stop")
    lines, heard = talk.until_timed("bestmove")
    assert lines[-1].split()[1] != "0000"
    assert heard - sent < 1


def test_a_mate_search_keeps_to_its_time(talk: Talk) -> None:
    sent = talk.tell("position startpos", "go mate 30 movetime 200")
    lines, heard = talk.until_timed("bestmove")
    assert heard - sent < 1.5
    assert lines[-1].split()[1] != "0000"
