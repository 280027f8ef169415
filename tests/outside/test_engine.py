"""A real program answers; whatever it does wrong is named in one line, and no process of it is left."""

from __future__ import annotations

import os
import threading
import time
from pathlib import Path

import pytest

from lineproof.engine import Answer, Stop
from lineproof.engine.outside import (
    DiedError,
    GivenUpError,
    HungError,
    NoProgramError,
    NotRunnableError,
    NotUciError,
    OutsideError,
    StartError,
    WrongAnswerError,
)
from lineproof.engine.outside.pool import OutsideEngine, Patience

from .engines import Made, made

pytestmark = pytest.mark.skipif(os.name != "posix", reason="the programs are shell scripts")

START = "rnbqkbnr/pppppppp/8/8/8/8/PPPPPPPP/RNBQKBNR w KQkq - 0 1"
HANGING = "rnb1kbnr/ppp1pppp/8/3q4/8/2N5/PPPP1PPP/R1BQKBNR w KQkq - 0 4"
"""White can take a queen."""
HASTY = Patience(start=5, answer=0.5, slowest=10**9)
NODES = 1_000


def ask(program: Made, fen: str = HANGING, **more: object) -> Answer:
    with OutsideEngine(program.path, processes=1, patience=HASTY) as engine:
        return engine.search(fen, nodes=NODES, **more)  # type: ignore[arg-type]


def test_it_answers_with_its_move_and_our_points(tmp_path: Path) -> None:
    boat = made(tmp_path)
    answer = ask(boat)
    (line,) = answer.lines
    assert (line.moves, line.san, line.centipawns) == (("c3d5",), ("Nxd5",), 900)
    assert (answer.nodes, answer.finished, answer.stopped) == (NODES, "", False)
    assert boat.alive() == []


def test_a_program_without_options_and_without_a_name_answers_too(tmp_path: Path) -> None:
    boat = made(tmp_path, "has no options")
    assert ask(boat).lines[0].san == ("Nxd5",)
    assert not [line for line in boat.told() if line.startswith("setoption")]
    with OutsideEngine(boat.path) as engine:
        assert (engine.program.name, engine.program.options) == ("without a name", {})


def test_options_are_set_as_far_as_the_program_has_them(tmp_path: Path) -> None:
    boat = made(tmp_path)
    with OutsideEngine(boat.path) as engine:
        assert engine.program.options == {"Threads": 1, "Hash": 32}  # it has no more than 32
    assert "setoption name Threads value 1" in boat.told()
    assert "setoption name Hash value 32" in boat.told()


def test_every_question_begins_a_new_game(tmp_path: Path) -> None:
    boat = made(tmp_path)
    with OutsideEngine(boat.path, processes=1) as engine:
        for _ in range(3):
            engine.search(HANGING, nodes=NODES)
    told = [line.split()[0] for line in boat.told()]
    assert told.count("ucinewgame") == told.count("go") == 3
    for number, word in enumerate(told):
        if word == "go":
            before = told[:number][::-1]
            assert before.index("ucinewgame") < [*before, "go"].index("go")
    assert boat.told().count("setoption name Clear Hash") == 3


def test_nodes_moves_and_the_moves_that_count_are_told(tmp_path: Path) -> None:
    boat = made(tmp_path)
    with OutsideEngine(boat.path) as engine:
        line = engine.search(START, ("e2e4",), nodes=777, root_moves=["a7a6", "e7e5"]).lines[0]
    assert line.moves[0] in ("a7a6", "e7e5")
    assert "position startpos moves e2e4" in boat.told()
    assert "go nodes 777 searchmoves a7a6 e7e5" in boat.told()


@pytest.mark.parametrize(
    ("fen", "how"),
    [
        ("7k/5Q2/6K1/8/8/8/8/8 b - - 0 1", "stalemate"),
        ("8/8/4k3/8/8/4K3/8/8 w - - 0 1", "draw by insufficient material"),
    ],
)
def test_whether_the_game_is_over_is_not_asked(tmp_path: Path, fen: str, how: str) -> None:
    boat = made(tmp_path)
    assert (ask(boat, fen).finished, boat.asked()) == (how, 0)


@pytest.mark.parametrize(
    ("behaviour", "kind", "said"),
    [
        ("dies", DiedError, "the process ended (exit status 3, “out of paper”)"),
        ("dies before it is ready", OutsideError, "it ends at its start (exit status 4)"),
        ("hangs", HungError, "no answer came within 1 s"),
        ("babbles", WrongAnswerError, "its move, paper, is not legal"),
        ("floods", WrongAnswerError, "it writes without end"),
        ("gives an illegal move", WrongAnswerError, "its move, a1a1, is not legal"),
        ("gives an illegal line", WrongAnswerError, "move 2 of its line, c3d5, is not legal"),
        ("gives no score", WrongAnswerError, "no score"),
        ("gives no move", WrongAnswerError, "it gave no move"),
        ("tells another move", WrongAnswerError, "it plays c3d5, but gave no score"),
    ],
)
def test_a_failure_is_one_line_with_the_question_and_the_way_out(
    tmp_path: Path,
    behaviour: str,
    kind: type[OutsideError],
    said: str,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setattr("lineproof.engine.outside.process.MOST_BYTES", 2**20)
    boat = made(tmp_path, behaviour)
    patience = Patience(start=5, answer=1, slowest=10**9)
    with (
        OutsideEngine(boat.path, processes=1, patience=patience) as engine,
        pytest.raises(kind) as caught,
    ):
        engine.search(HANGING, nodes=NODES)
    text = str(caught.value)
    assert said in text
    assert text.startswith(f"Paper Boat 2 was asked twice for the best move in {HANGING}")
    assert text.endswith("prove again to ask it anew, or use another engine")
    assert "\n" not in text
    assert len(boat.processes()) == 2 or behaviour == "dies before it is ready"
    assert boat.alive() == []


def test_an_answer_about_another_move_is_none(tmp_path: Path) -> None:
    boat = made(tmp_path, "forgets the question")
    with pytest.raises(WrongAnswerError, match=r"asked twice for the move a3 .*about other moves"):
        ask(boat, root_moves=["a2a3"])


@pytest.mark.parametrize("behaviour", ["dies once", "hangs once"])
def test_one_failure_is_made_good_by_a_new_process(tmp_path: Path, behaviour: str) -> None:
    boat = made(tmp_path, behaviour)
    assert ask(boat).lines[0].san == ("Nxd5",)
    assert (boat.asked(), len(boat.processes())) == (2, 2)
    assert boat.alive() == []


def test_what_was_not_answered_is_not_asked_again_in_the_same_run(tmp_path: Path) -> None:
    boat = made(tmp_path, "dies")
    with OutsideEngine(boat.path, processes=1) as engine:
        for _ in range(3):
            with pytest.raises(DiedError):
                engine.search(HANGING, nodes=NODES)
    assert boat.asked() == 2


def test_after_three_failures_in_a_row_it_is_asked_no_more(tmp_path: Path) -> None:
    boat = made(tmp_path, "dies")
    with OutsideEngine(boat.path, processes=1) as engine:
        for nodes in (1, 2, 3):
            with pytest.raises(DiedError):
                engine.search(HANGING, nodes=nodes)
        with pytest.raises(GivenUpError, match="3 questions in a row"):
            engine.search(HANGING, nodes=4)
    assert boat.asked() == 6


def test_a_false_mate_is_not_believed(tmp_path: Path) -> None:
    line = ask(made(tmp_path, "announces a mate")).lines[0]
    assert (line.mate, line.points) == (None, 100)


def test_a_stop_ends_a_hanging_search_at_once(tmp_path: Path) -> None:
    boat = made(tmp_path, "hangs")
    stop = Stop()
    with OutsideEngine(boat.path, processes=1) as engine:
        threading.Timer(0.3, stop.set).start()
        began = time.monotonic()
        assert engine.search(HANGING, nodes=NODES, stop=stop).stopped
        assert time.monotonic() - began < 10
    assert boat.alive() == []


def test_threads_share_no_more_processes_than_allowed(tmp_path: Path) -> None:
    boat = made(tmp_path, "plays slowly")
    answers: list[Answer] = []
    with OutsideEngine(boat.path, processes=2) as engine:
        threads = [
            threading.Thread(
                target=lambda n=nodes: answers.append(engine.search(HANGING, nodes=n))  # type: ignore[misc]
            )
            for nodes in range(1, 7)
        ]
        for thread in threads:
            thread.start()
        for thread in threads:
            thread.join()
    assert sorted(answer.nodes for answer in answers) == [1, 2, 3, 4, 5, 6]
    assert len(boat.processes()) == 2
    assert boat.alive() == []


def test_what_cannot_be_started_is_said_at_once(tmp_path: Path) -> None:
    file = tmp_path / "notes.txt"
    file.write_text("no program")
    with pytest.raises(NoProgramError, match="nowhere: there is no such program; check the path"):
        OutsideEngine(tmp_path / "nowhere")
    with pytest.raises(NotRunnableError, match="this is a folder"):
        OutsideEngine(tmp_path)
    with pytest.raises(NotRunnableError, match=r"may not be run; allow it \(chmod \+x\)"):
        OutsideEngine(file)
    file.write_bytes(b"\x00\x01\x02")
    file.chmod(0o755)
    with pytest.raises(NotRunnableError, match=r"the system does not run it \(exec format error\)"):
        OutsideEngine(file)


@pytest.mark.parametrize(
    ("behaviour", "said"),
    [
        ("is no engine", "does not answer as a UCI engine within 1 s"),
        ("ends at its start", "it ends at its start (exit status 1, “no sea to sail on”)"),
    ],
)
def test_what_is_no_uci_engine_is_said_and_ended(tmp_path: Path, behaviour: str, said: str) -> None:
    boat = made(tmp_path, behaviour)
    with pytest.raises(NotUciError) as caught:
        OutsideEngine(boat.path, patience=Patience(start=1))
    assert said in str(caught.value)
    assert isinstance(caught.value, StartError)
    assert boat.alive() == []


def test_what_a_script_has_started_ends_with_it(tmp_path: Path) -> None:
    boat = made(tmp_path, "hangs")
    script = tmp_path / "script"
    script.write_text(f"#!/bin/sh\n{boat.path}\nexit 0\n")
    script.chmod(0o755)
    with OutsideEngine(script, processes=1, patience=HASTY) as engine, pytest.raises(HungError):
        engine.search(HANGING, nodes=NODES)
    assert boat.processes() and boat.alive() == []


def test_a_program_that_is_replaced_while_in_use_is_not_taken_for_the_old_one(
    tmp_path: Path,
) -> None:
    boat = made(tmp_path, "dies once")
    with OutsideEngine(boat.path, processes=1) as engine:
        boat.path.write_text(boat.path.read_text() + "# newer\n")
        with pytest.raises(WrongAnswerError, match="replaced while it was in use"):
            engine.search(HANGING, nodes=NODES)


def test_the_identity_holds_name_bytes_and_options(tmp_path: Path) -> None:
    def identity(program: Made) -> str:
        with OutsideEngine(program.path) as engine:
            return engine.program.identity

    boat, twin = made(tmp_path, name="one"), made(tmp_path, name="two")
    assert identity(boat) == identity(boat)
    assert identity(boat) != identity(twin)  # the scripts differ in a folder's name
    assert identity(boat) != identity(made(tmp_path, "has no options", "three"))


def test_nothing_is_left_when_nobody_closes_it(tmp_path: Path) -> None:
    import subprocess
    import sys

    boat = made(tmp_path, "hangs")
    code = (
        "from lineproof.engine.outside.pool import OutsideEngine\n"
        f"kept = OutsideEngine({str(boat.path)!r})\nraise SystemExit(7)\n"
    )
    assert subprocess.run([sys.executable, "-c", code], timeout=20).returncode == 7
    assert boat.processes() and boat.alive() == []
