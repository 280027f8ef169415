"""Matches: what is played, what is counted, what is said of programs that fail."""

from __future__ import annotations

import json
import shlex
import subprocess
import sys
from pathlib import Path
from typing import Any

import chess
import pytest

COMMAND = Path(sys.executable).with_name("lineproof")
FAULTY = Path(__file__).with_name("faulty.py")


def faulty(fault: str, after: int = 0) -> str:
    return shlex.join([sys.executable, str(FAULTY), fault, str(after)])


def run(*arguments: str | Path) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        [COMMAND, "engine", "match", *map(str, arguments)],
        capture_output=True,
        text=True,
        timeout=300,
        check=False,
    )


def played(*arguments: str | Path) -> dict[str, Any]:
    done = run(*arguments, "--json")
    assert done.returncode == 0, done.stderr
    found: dict[str, Any] = json.loads(done.stdout)
    return found


def alike(program: str, *more: str | Path) -> dict[str, Any]:
    return played("--one", program, "--other", program, *more)


def test_two_identical_programs_share_every_pair(engine_program: str) -> None:
    found = alike(engine_program, "--pairs", "5", "--nodes", "1500", "--at-once", "2")
    assert found["pairs"] == [0, 0, 5, 0, 0]
    assert found["games"]["won"] == found["games"]["lost"]
    assert found["elo"] == 0
    assert found["elo_interval"] is None
    assert found["failures"] == {"one": {}, "other": {}}


def test_the_same_seed_gives_the_same_games_however_many_at_once(
    engine_program: str, tmp_path: Path
) -> None:
    def games(name: str, *more: str) -> str:
        file = tmp_path / name
        options = ("--other-option", "Without=null-move", "--other-option", "Hash=4")
        alike(engine_program, *options, "--pairs", "4", "--nodes", "1000", "--games", file, *more)
        return file.read_text(encoding="ascii")

    first = games("a", "--at-once", "1")
    assert games("b", "--at-once", "3") == first
    assert games("c", "--at-once", "1", "--seed", "2") != first


def test_the_file_of_games_can_be_played_over(engine_program: str, tmp_path: Path) -> None:
    file = tmp_path / "games"
    found = alike(engine_program, "--pairs", "3", "--nodes", "800", "--games", file, "--to-the-end")
    lines = file.read_text(encoding="ascii").splitlines()
    assert len(lines) == 6
    results = {"1-0": 0, "0-1": 0, "1/2-1/2": 0}
    openings = []
    for line in lines:
        result, random_plies, *moves = line.split()
        results[result] += 1
        assert 6 <= int(random_plies) <= 8
        board = chess.Board()
        for ply, move in enumerate(moves):
            uci, score = move.split("/")
            assert (score == "?") == (ply < int(random_plies))
            if score != "?":
                assert -30_000 <= int(score) <= 30_000
            board.push_uci(uci)
        openings.append(moves[: int(random_plies)])
        # Played to the end, so the rules tell the result; only the longest games are cut.
        assert board.result(claim_draw=True) == result or board.ply() == 400
    assert openings[::2] == openings[1::2]
    games = found["games"]
    assert results["1/2-1/2"] == games["drawn"]
    assert results["1-0"] + results["0-1"] == games["won"] + games["lost"]


def test_a_weaker_program_is_found_out_and_the_test_stops(engine_program: str) -> None:
    found = played(
        *("--one", engine_program, "--other", faulty("none")),
        *("--pairs", "200", "--nodes", "500", "--sprt", "0,400", "--at-once", "2"),
    )
    assert found["sprt"]["accepted"] == "higher"
    assert found["sprt"]["ratio"] >= found["sprt"]["bounds"][1]
    assert sum(found["pairs"]) < 200


def test_a_test_stops_at_the_same_pair_however_many_games_are_played_at_once(
    engine_program: str, tmp_path: Path
) -> None:
    def stopped(name: str, at_once: str) -> tuple[list[int], str]:
        file = tmp_path / name
        found = played(
            *("--one", engine_program, "--other", faulty("none"), "--games", file),
            *("--pairs", "200", "--nodes", "300", "--sprt", "0,400", "--at-once", at_once),
        )
        return found["pairs"], file.read_text(encoding="ascii")

    assert stopped("a", "1") == stopped("b", "3")


@pytest.mark.parametrize(
    ("fault", "pace", "ending"),
    [
        ("crash", ("--nodes", "100"), "crash"),
        ("illegal", ("--nodes", "100"), "illegal move"),
        ("slow", ("--movetime", "100"), "time forfeit"),
        ("mute", ("--clock", "0.2+0.01"), "time forfeit"),
    ],
)
def test_a_failure_loses_the_game_and_is_reported_apart(
    engine_program: str, fault: str, pace: tuple[str, str], ending: str
) -> None:
    found = played(*("--one", engine_program, "--other", faulty(fault, 2)), *pace, "--pairs", "1")
    assert found["failures"] == {"one": {}, "other": {ending: 2}}
    assert found["games"] == {"won": 2, "drawn": 0, "lost": 0}
    assert found["endings"] == {ending: 2}


def test_more_is_forgiven_where_that_is_asked_for(engine_program: str) -> None:
    slow = (
        "--one",
        engine_program,
        "--other",
        faulty("slow", 14),
        "--movetime",
        "20",
        "--pairs",
        "1",
    )
    # it thinks for half a second; legal moves are played to the end
    assert played(*slow, "--grace", "5000")["failures"] == {"one": {}, "other": {}}


@pytest.mark.skipif(not Path("/proc").is_dir(), reason="processes are found in /proc")
def test_no_program_outlives_the_match(engine_program: str, tmp_path: Path) -> None:
    # A copy, so that no other test's process is counted.
    program = tmp_path / "engine-of-this-test"
    program.write_bytes(Path(engine_program).read_bytes())
    program.chmod(0o755)
    alike(str(program), "--pairs", "2", "--nodes", "200", "--at-once", "2")
    assert _running(program) == 0
    # The way of looking sees a program that does run.
    with subprocess.Popen([program], stdin=subprocess.PIPE, stdout=subprocess.PIPE) as seen:
        assert seen.stdin is not None and seen.stdout is not None
        seen.stdin.write(b"isready\n")
        seen.stdin.flush()
        assert seen.stdout.readline() == b"readyok\n"
        assert _running(program) == 1
        seen.communicate(b"quit\n")


def _running(program: Path) -> int:
    return sum(
        str(program).encode() in _bytes(entry) for entry in Path("/proc").glob("[0-9]*/cmdline")
    )


def _bytes(path: Path) -> bytes:
    try:
        return path.read_bytes()
    except OSError:  # the process has ended meanwhile
        return b""


def test_the_result_is_said_in_words(engine_program: str) -> None:
    done = run(
        *("--one", engine_program, "--other", engine_program),
        *("--pairs", "2", "--nodes", "300", "--sprt", "0,10"),
    )
    lines = done.stdout.splitlines()
    assert lines[0].startswith("games: 4, in ")
    assert lines[2] == "pairs by points of one: 0: 0, 1/2: 0, 1: 2, 3/2: 0, 2: 0"
    assert lines[3].startswith("Elo +0.0 [all pairs alike: no interval]")
    assert lines[4].endswith("bounds -2.94 and 2.94: undecided")


def test_what_a_program_says_of_its_options_is_passed_on(engine_program: str) -> None:
    done = run(
        *("--one", faulty("none"), "--other", engine_program, "--one-option", "Colour=blue"),
        *("--other-option", "Without=magic", "--pairs", "1", "--nodes", "100"),
    )
    assert "one: set blue" in done.stderr
    assert "other: Without: magic is no technique" in done.stderr


@pytest.mark.parametrize(
    ("arguments", "message"),
    [
        (("--nodes", "0"), "--nodes must be greater than 0"),
        (("--nodes", "1", "--sprt", "5,0"), "the first Elo must be less than the second"),
        (("--nodes", "1", "--one-option", "Speed=9"), "one: the program has no option Speed"),
        (("--nodes", "1", "--games", "/no/such/folder/games"), "cannot be written"),
        (("--clock", "5"), "--clock is written BASE+INC"),
        (("--nodes", "1", "--clock", "1+1"), "not allowed with argument"),
        ((), "one of the arguments"),
    ],
)
def test_bad_use_is_said_in_one_line(
    engine_program: str, arguments: tuple[str, ...], message: str
) -> None:
    done = run("--one", engine_program, "--other", engine_program, "--pairs", "1", *arguments)
    assert done.returncode == 2
    assert message in done.stderr and done.stderr.count("\n") == 1


def test_a_program_that_is_none_is_said_to_be(engine_program: str) -> None:
    for command, message in (
        ("/no/such/program", "cannot be started"),
        ("true", "the program ended before it was set up"),
    ):
        done = run("--one", engine_program, "--other", command, "--pairs", "1", "--nodes", "1")
        assert done.returncode == 2
        assert f"other: {'' if command == 'true' else repr(command)}" in done.stderr
        assert message in done.stderr


def test_the_engines_own_program_plays_the_same_match(engine_program: str) -> None:
    words = ["--one", engine_program, "--other", engine_program, "--pairs", "2", "--nodes", "500"]
    own = subprocess.run(
        [engine_program, "match", *words], capture_output=True, text=True, check=True
    )
    # All but the first line, which tells the time taken.
    assert own.stdout.splitlines()[1:] == run(*words).stdout.splitlines()[1:]


def test_on_short_clocks_nobody_loses_on_time(engine_program: str) -> None:
    found = alike(engine_program, "--pairs", "3", "--clock", "0.1+0.01", "--at-once", "1")
    assert found["failures"] == {"one": {}, "other": {}}
