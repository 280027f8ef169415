"""`lineproof collect`, as it is typed."""

from __future__ import annotations

import gzip
import re
import signal
import subprocess
from pathlib import Path

import pytest

from lineproof._engine import invent_games

from .command import COMMAND, environment, lineproof
from .test_commands import valid

GAMES = """[Event "Harbour Street, Tuesday"]
[Date "2024.03.05"]
[White "Ann Quay"]
[Black "Ben Jetty"]
[Result "1-0"]
[WhiteElo "1450"]
[BlackElo "1390"]

1. e4 e5 2. Nc3 Nf6 3. f4 exf4 4. e5 Ng8 5. Nf3 d6 6. d4 dxe5 7. Qe2 Bb4 8. Qxe5+ Qe7 9. Bxf4 Qxe5+ 10. Bxe5 Nc6 1-0

[Event "Harbour Street, Tuesday"]
[Date "2023.11.14"]
[White "Cas Mole"]
[Black "Dot Pier"]
[Result "0-1"]
[WhiteElo "1510"]
[BlackElo "1620"]

1. e4 e5 2. Nc3 Nf6 3. f4 d5 4. fxe5 Nxe4 0-1

[White "Eve Buoy"]
[Result "1/2-1/2"]

1. Nc3 e5 2. e4 Nf6 3. f4 d5 1/2-1/2

[White "Fay Dock"]

1. e4 e5 2. Ke3 *
"""


@pytest.fixture
def club(home: Path) -> Path:
    (home / "club.pgn").write_text(GAMES, encoding="utf-8")
    assert lineproof(home, "collect", "add", "club.pgn").status == 0
    return home


def test_add_says_what_became_of_each_game(home: Path) -> None:
    (home / "club.pgn").write_text(GAMES, encoding="utf-8")
    ran = lineproof(home, "collect", "add", "club.pgn")
    file = home / "club.pgn"
    assert (ran.status, ran.err) == (0, "")
    assert ran.out == (
        f"{file}: 3 new games.\n"
        "  1 game cannot be read and left out:\n"
        f"    {file}:28:13: Ke3 is not legal here; that piece can play Ke2\n"
        "games now has 3 games.\n"
    )
    again = lineproof(home, "collect", "add", "club.pgn")
    assert again.out.startswith(f"{file}: 0 new games and 3 games that it had already.\n")


def test_add_prints_json(club: Path) -> None:
    (club / "more.pgn.gz").write_bytes(gzip.compress(GAMES.replace("Ann", "Gus").encode()))
    value = valid(
        lineproof(club, "collect", "add", "more.pgn.gz", "--source", "spring", "--json"),
        "collect-add",
    )
    (file,) = value["files"]
    assert (value["games"], file["added"], file["doubles"], file["broken"]) == (4, 1, 2, 1)
    assert file["name"] == "spring"
    assert file["broken_named"][0]["line"] == 28


def test_add_reads_standard_input(home: Path) -> None:
    done = subprocess.run(
        [COMMAND, "collect", "add", "-", "--collection", "piped"],
        cwd=home,
        env=environment(home),
        input=GAMES.encode(),
        capture_output=True,
        check=True,
    )
    assert done.stdout.decode().startswith("standard input: 3 new games.\n")
    assert "piped now has 3 games." in done.stdout.decode()


def test_look_speaks_in_sentences_with_counts_and_intervals(club: Path) -> None:
    ran = lineproof(club, "collect", "look", "1. e4 e5 2. Nc3 Nf6 3. f4")
    assert (ran.status, ran.err) == (0, "")
    assert ran.out.startswith(
        "1. e4 e5 2. Nc3 Nf6 3. f4: Vienna Gambit (C29)\n"
        "3 games of the collection games reach it. White scores 50 of 100 (95 % interval 13 to 87)."
        " The average rating is 1492 (of 4 rated players).\n"
        "\nBlack plays:\n"
        "  3... d5 in 2 of 3 games, 67 of 100 (21 to 94), White scores 25 of 100 (3 to 80)\n"
        "  3... exf4 in 1 of 3 games, 33 of 100 (6 to 79), White scores 100 of 100 (21 to 100)\n"
        "\nThe same drawn from 0 to 100, of 3 games: a dot for the share, a line for its interval:\n"
        "             0        25        50        75        100\n"
        "  3... d5    ·       ───────────────────•─────────── ·\n"
        "  3... exf4  · ───────────•───────────────────       ·\n"
    )
    assert (
        "Move orders that lead here, of all games:\n  1. e4 e5 2. Nc3 Nf6 3. f4: 2 games\n"
        in ran.out
    )
    assert "  1. Nc3 e5 2. e4 Nf6 3. f4: 1 game\n" in ran.out
    assert (
        "Ann Quay and Ben Jetty (1450 and 1390), Harbour Street, Tuesday, 2024: 3... exf4 4. e5 Ng8"
    ) in ran.out


def test_no_share_is_said_without_its_count(club: Path) -> None:
    """Each "of 100" stands behind a count of games, on the same line."""
    invent_games(club / "more.pgn", 300, shared=True, plies=30)
    lineproof(club, "collect", "add", "more.pgn")
    lines = [
        line
        for position in ("", "1. c3", "1. e4 e5 2. Nc3 Nf6 3. f4")
        for line in lineproof(club, "collect", "look", position).out.splitlines()
        if "of 100" in line or "%" in line
    ]
    assert len(lines) > 20
    for line in lines:
        assert re.search(r"[\d,]+ games?\b.* of 100 \(", line), line
        assert line.count("of 100") == len(
            re.findall(r" of 100 \((?:95 % interval )?[\d.]+ to [\d.]+\)", line)
        )


def test_look_prints_json(club: Path) -> None:
    value = valid(
        lineproof(club, "collect", "look", "1. e4 e5 2. Nc3 Nf6 3. f4", "--json"), "collect-look"
    )
    assert (value["games"], value["opening"]["name"]) == (3, "Vienna Gambit")
    assert [move["san"] for move in value["moves"]] == ["d5", "exf4"]
    assert value["moves"][0]["share"]["interval"] == {"low": 20.766, "high": 93.851}
    assert sum(order["games"] for order in value["orders"]) == 3


def test_look_at_a_fen_has_the_same_counts_and_name(club: Path) -> None:
    fen = "rnbqkb1r/pppp1ppp/5n2/4p3/4PP2/2N5/PPPP2PP/R1BQKBNR b KQkq - 0 3"
    by_fen = valid(lineproof(club, "collect", "look", fen, "--json"), "collect-look")
    by_moves = valid(
        lineproof(club, "collect", "look", "e4", "e5", "Nc3", "Nf6", "f4", "--json"), "collect-look"
    )
    assert by_fen == by_moves


def test_look_counts_an_audience_alone(club: Path) -> None:
    value = valid(
        lineproof(club, "collect", "look", "--audience", "1400", "--json"), "collect-look"
    )
    assert (value["games"], value["audience"]) == (1, {"low": 1200, "below": 1600})
    ran = lineproof(club, "collect", "look", "--audience", "800")
    assert ran.out == (
        "The initial position\nNo game between players rated 600 to 999 of the collection games reaches it.\n"
    )


def test_look_says_that_later_positions_are_not_kept(club: Path) -> None:
    ran = lineproof(club, "collect", "look", "8/8/4k3/8/8/4K3/4P3/8 w - - 0 60")
    assert "Positions are kept for the first 20 moves of a game" in ran.out


def test_list_names_collections_and_sources(club: Path) -> None:
    value = valid(lineproof(club, "collect", "list", "--json"), "collect-list")
    (collection,) = value["collections"]
    (source,) = collection["sources"]
    assert (collection["name"], collection["games"]) == ("games", 3)
    assert (source["name"], source["read"], source["broken"]) == (str(club / "club.pgn"), 3, 1)
    folder = valid(lineproof(club, "where", "--json"), "where")["folders"]["collections"]
    assert collection["folder"] == f"{folder}/games"
    assert "games: 3 games, " in lineproof(club, "collect", "list").out
    empty = lineproof(club, "collect", "list", LINEPROOF_DATA=str(club / "other"))
    assert empty.out == "There is no collection yet; make one with: lineproof collect add FILE\n"


def test_forget_takes_a_source_out(club: Path) -> None:
    value = valid(lineproof(club, "collect", "forget", "club.pgn", "--json"), "collect-forget")
    assert (value["forgotten"], value["games"]) == (3, 0)
    assert (
        valid(lineproof(club, "collect", "list", "--json"), "collect-list")["collections"][0][
            "sources"
        ]
        == []
    )


def test_reach_says_what_comes_to_each_position(club: Path) -> None:
    arguments = ("collect", "reach", "vienna.pgn", "--side", "white", "--audience", "1500")
    value = valid(lineproof(club, *arguments, "--json"), "collect-reach")
    assert [one["line"] for one in value["positions"]][-1] == ["e4", "e5", "Nc3", "Nf6", "f4", "d5"]
    assert (value["games"], value["positions"][-1]["percent"]) == (2, 50)
    out = lineproof(club, *arguments).out
    assert "1. e4 e5 2. Nc3 Nf6 3. f4 d5: 50.0 (9.5 to 90.5), resting on 2 games or more" in out


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (("add", "nowhere.pgn"), "nowhere.pgn: there is no such file; check the name"),
        (("add", "."), ".: this is a folder; give the files in it"),
        (("add", "club.pgn", "--threads", "0"), "--threads is 0; give 1 to 256"),
        (("add", "club.pgn", "--collection", "a/b"), "'a/b' is no name for a collection"),
        (("look", "1. e5"), "1. e5: e5 is not legal here"),
        (("look", "8/8/8 w - - 0 1"), "correct the FEN, or give moves"),
        (("look", "1. e4 --"), "a pass is no move of a game"),
        (("look", "--collection", "none"), "there is no collection none"),
        (("look", "--audience", "3"), "--audience is 3; give a rating from 400 to 2900"),
        (("look", "--models", "-1"), "--models is -1; give 0 to 100"),
        (("list", "--collection", "none"), "there is no collection none"),
        (("forget", "nowhere.pgn"), "has no games from there"),
        (("forget", "club.pgn", "--collection", "none"), "there is no collection none"),
        (("reach", "nowhere.pgn"), "nowhere.pgn: there is no such file"),
        (("reach", "vienna.pgn"), "say it with --side"),
    ],
)
def test_bad_use_is_refused_in_one_line(club: Path, arguments: tuple[str, ...], said: str) -> None:
    ran = lineproof(club, "collect", *arguments)
    assert (ran.status, ran.out) == (2, "")
    assert said in ran.err
    assert ran.err.count("\n") == 1


def test_a_file_without_a_readable_game_is_bad_input(home: Path) -> None:
    (home / "wide.pgn").write_bytes("1. e4 e5 1-0".encode("utf-16"))
    ran = lineproof(home, "collect", "add", "wide.pgn")
    assert ran.status == 2
    assert "the text is UTF-16; save it as UTF-8" in ran.err


def test_a_file_that_may_not_be_read_is_refused(home: Path) -> None:
    file = home / "closed.pgn"
    file.write_text(GAMES)
    file.chmod(0)
    ran = lineproof(home, "collect", "add", "closed.pgn", as_user=True)
    assert (ran.status, ran.out) == (2, "")
    assert ran.err == "closed.pgn: it cannot be read (permission denied); check who may read it\n"


def test_collections_built_apart_are_joined(club: Path) -> None:
    games = re.split(r"(?<=\n\n)(?=\[)", GAMES)
    (club / "first.pgn").write_text("".join(games[:2]), encoding="utf-8")
    (club / "rest.pgn").write_text("".join(games[1:]), encoding="utf-8")  # one game is in both
    for name in ("first", "rest"):
        lineproof(club, "collect", "add", f"{name}.pgn", "--collection", name)
    other = club / "data" / "collections" / "rest"
    ran = lineproof(club, "collect", "join", other, "--collection", "first")
    assert (ran.status, ran.err) == (0, "")
    assert ran.out.endswith("first now has 3 games.\n")
    looks = [
        valid(
            lineproof(club, "collect", "look", "1. e4", "--collection", name, "--json"),
            "collect-look",
        )
        for name in ("first", "games")
    ]
    for look, files in zip(looks, (("first", "rest"), ("club",)), strict=True):
        assert look.pop("collection") in ("first", "games")
        for game in look["models"]:
            assert Path(game.pop("source")).stem in files
    assert looks[0] == looks[1]
    again = valid(
        lineproof(club, "collect", "join", other, "--collection", "first", "--json"), "collect-add"
    )
    assert (again["games"], again["files"][0]["added"]) == (3, 0)


@pytest.mark.parametrize(
    ("folder", "said"),
    [
        ("none", "none: this is no collection; give a folder that holds collection.json\n"),
        ("data/collections/games", "this is the collection itself; give another one's folder\n"),
    ],
)
def test_what_is_no_other_collection_is_not_joined(club: Path, folder: str, said: str) -> None:
    ran = lineproof(club, "collect", "join", folder)
    assert (ran.status, ran.out) == (2, "")
    assert ran.err.endswith(said)
    assert ran.err.count("\n") == 1


def test_an_import_can_be_stopped(home: Path) -> None:
    process = subprocess.Popen(
        [COMMAND, "collect", "add", "-"],
        cwd=home,
        env=environment(home),
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
    )
    try:
        assert process.stdin is not None
        # more than a pipe holds, so that somebody has begun to read
        process.stdin.write(GAMES.encode() * (1_000_000 // len(GAMES)))
        process.stdin.flush()
        process.send_signal(signal.SIGINT)
        out, err = process.communicate(timeout=20)
    finally:
        process.kill()
    assert (process.returncode, out) == (130, b"")
    assert (
        err.decode().strip()
        == "Stopped. Either all games of these files are in or none; the same command again adds what is missing."
    )


def test_hostile_names_command_no_terminal(home: Path) -> None:
    (home / "bad.pgn").write_text(
        GAMES.replace("Ann Quay", "Ann\x1b[31m\x9b5mQuay"), encoding="utf-8"
    )
    added = lineproof(home, "collect", "add", "bad.pgn", "--source", "a\x1b[2Jb")
    looked = lineproof(home, "collect", "look", "1. e4 e5 2. Nc3 Nf6 3. f4 exf4")
    as_json = lineproof(home, "collect", "look", "1. e4 e5 2. Nc3 Nf6 3. f4 exf4", "--json")
    for ran in (added, looked, as_json, lineproof(home, "collect", "list")):
        assert ran.status == 0
        assert not re.search("[\x00-\x08\x0b-\x1f\x7f-\x9f]", ran.out)
