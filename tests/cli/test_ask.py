"""What `unanswered`, `ask`, `follow` and `weigh` say where something is not known or cannot be: never a guess as if it were counted."""

from __future__ import annotations

from pathlib import Path

import pytest

from .command import lineproof
from .test_commands import valid

LESSON = "1. e4 e5 2. Nf3 d6 3. Bc4 Bg4 {A pin that is none.} 4. Nc3 g6 5. Nxe5 Bxd1 6. Bxf7+ Ke7 7. Nd5# *\n"
"""Légal's mate; Hooper and Whyld, The Oxford Companion to Chess (from memory)."""
ASKED = "1. e4 e5 2. Nf3 d6 3. Bc4 Bg4 4. Nc3 Nf6"
GUESSED = "How likely a reply is comes from a model of natural moves, whose weights are guesses: "


def game(
    moves: str, white: str = "Ann Quay", black: str = "Ben Jetty", rating: int | None = None
) -> str:
    elo = f'[WhiteElo "{rating}"]\n[BlackElo "{rating}"]\n' if rating else ""
    return f'[White "{white}"]\n[Black "{black}"]\n[Result "1-0"]\n{elo}\n{moves} 1-0\n\n'


@pytest.fixture
def lesson(home: Path) -> Path:
    (home / "legal.pgn").write_text(LESSON, encoding="utf-8")
    return home


def test_ask_calls_nobody_the_opponent_where_no_side_is_taught(lesson: Path) -> None:
    ran = lineproof(lesson, "ask", "legal.pgn", ASKED)
    assert (ran.status, ran.err) == (0, "")
    first, second, *_ = ran.out.splitlines()
    assert "It is left after 4. Nc3 (line 1), where Black plays Nf6: about " in first
    assert second == f"{GUESSED}no games were counted. `--collection NAME` counts games."
    found = valid(lineproof(lesson, "ask", "legal.pgn", ASKED, "--json"), "answer")
    assert found["left"]["by_taught_side"] is None
    told = lineproof(lesson, "ask", "legal.pgn", ASKED, "--side", "white")
    assert "where the opponent plays Nf6" in told.out
    told = lineproof(lesson, "ask", "legal.pgn", ASKED, "--side", "black")
    assert "where the taught side plays Nf6" in told.out


@pytest.mark.parametrize("command", [("follow", "legal.pgn", "games.pgn"), ("weigh", "legal.pgn")])
def test_the_other_commands_ask_for_the_side(lesson: Path, command: tuple[str, ...]) -> None:
    (lesson / "games.pgn").write_text(game("1. e4 e5"), encoding="utf-8")
    ran = lineproof(lesson, *command)
    assert (ran.status, ran.out) == (2, "")
    assert (
        ran.err == "legal.pgn: the lesson does not say which side is taught; say it with --side\n"
    )


ENDS = """[SetUp "1"]
[FEN "7k/4Q3/6K1/8/8/8/8/8 w - - 0 1"]

1. Qf7 {Stalemate: a pity.} (1. Qf8#) *
"""


@pytest.mark.parametrize("side", ["white", "black"])
def test_lines_that_end_in_mate_or_stalemate_are_studied(lesson: Path, side: str) -> None:
    (lesson / "ends.pgn").write_text(ENDS, encoding="utf-8")
    found = valid(lineproof(lesson, "unanswered", "ends.pgn", "--side", side, "--json"), "study")
    assert found["early_stops"] == [] and found["plans"] == []
    assert bool(found["open"]) is (side == "black")  # White has other moves at the start
    # of the taught side's moves the stalemate costs the win
    costly = [one["place"]["label"] for one in found["costly"]]
    assert costly == (["1. Qf7"] if side == "white" else [])
    followed = lineproof(lesson, "follow", "ends.pgn", "ends.pgn", "--side", side)
    assert (followed.status, followed.err) == (0, "")
    stale = lineproof(lesson, "ask", "ends.pgn", "7k/5Q2/6K1/8/8/8/8/8 b - - 1 1")
    assert (stale.status, stale.out.splitlines()[-1]) == (0, "It is stalemate: the game is drawn.")
    mated = lineproof(lesson, "ask", "ends.pgn", "5Q1k/8/6K1/8/8/8/8/8 b - - 1 1")
    assert (mated.status, mated.out.splitlines()[-1]) == (0, "It is mate: White has won.")


def collected(home: Path, text: str) -> None:
    (home / "club.pgn").write_text(text, encoding="utf-8")
    assert lineproof(home, "collect", "add", "club.pgn", "--collection", "club").status == 0


@pytest.mark.parametrize(
    ("games", "why"),
    [
        (game(ASKED), "no game of 'club' that comes here (1 do) is between two players rated 1300 to 1699, for they have no ratings. `--audience RATING` counts others."),
        (game(ASKED, rating=2400), "no game of 'club' that comes here (1 do) is between two players rated 1300 to 1699. `--audience RATING` counts others."),
        (game("1. d4 d5", rating=1500), "no game of 'club' comes here."),
    ],
)  # fmt: skip
def test_where_no_game_can_be_counted_the_model_is_said_to_guess(
    lesson: Path, games: str, why: str
) -> None:
    collected(lesson, games)
    with_games = ("--side", "white", "--collection", "club")
    ran = lineproof(lesson, "unanswered", "legal.pgn", *with_games)
    assert ran.status == 0 and f"\n{GUESSED}{why}\n" in ran.out
    assert "counted games of this audience" not in ran.out
    found = valid(lineproof(lesson, "unanswered", "legal.pgn", *with_games, "--json"), "study")
    assert found["games_counted"] is False
    assert f"\n{GUESSED}{why}\n" in lineproof(lesson, "ask", "legal.pgn", ASKED, *with_games).out


def test_weigh_says_so_as_well(lesson: Path) -> None:
    collected(lesson, game("1. f3 e5 2. g4 Qh4#"))
    ran = lineproof(lesson, "weigh", "1. f3 e5 2. g4 Qh4#", "--collection", "club")
    why = "no game of 'club' that comes here (1 do) is between two players rated 1300 to 1699, for they have no ratings."
    assert ran.status == 0 and f"\n{GUESSED}{why}" in ran.out


def test_the_model_is_not_judged_by_games_that_it_has_played(home: Path) -> None:
    moves = "1. e4 e5 " + " ".join(f"{n}. Nf3 Nc6 {n + 1}. Ng1 Nb8" for n in range(2, 12, 2))
    others = "".join(
        game(moves, rating=1500).replace("[Result", f'[Round "{n}"]\n[Result') for n in range(30)
    )
    made = '[Event "Invented game, both players the model of natural moves"]\n[White'
    own = others.replace("[White ", f"{made} ")
    why = "the model of natural moves has played games of these itself; it is neither fitted to them nor judged by them\n"
    (home / "others.pgn").write_text(others, encoding="utf-8")
    assert lineproof(home, "collect", "fit", "--check", "others.pgn").status == 0
    (home / "own.pgn").write_text(others + own[: own.index("[White ", 100)], encoding="utf-8")
    ran = lineproof(home, "collect", "fit", "--check", "own.pgn")
    assert (ran.status, ran.out, ran.err) == (2, "", f"own.pgn: {why}")
    collected(home, own)
    ran = lineproof(home, "collect", "fit", "--collection", "club")
    assert (ran.status, ran.out, ran.err) == (2, "", f"club: {why}")


def test_games_of_the_audience_are_said_to_be_counted(lesson: Path) -> None:
    collected(lesson, game(ASKED, rating=1500))
    with_games = ("--side", "white", "--collection", "club")
    ran = lineproof(lesson, "unanswered", "legal.pgn", *with_games)
    assert ran.status == 0 and "comes from counted games of this audience" in ran.out
    asked = lineproof(lesson, "ask", "legal.pgn", ASKED, *with_games)
    assert "; counted: 1 of 1 games" in asked.out and GUESSED not in asked.out


@pytest.mark.parametrize("rating", ["399", "2901"])
@pytest.mark.parametrize(
    "command",
    [
        ("unanswered", "legal.pgn", "--side", "white"),
        ("follow", "legal.pgn", "games.pgn", "--side", "white"),
        ("weigh", "1. e4"),
    ],
)
def test_a_rating_that_no_audience_has_is_refused(
    lesson: Path, command: tuple[str, ...], rating: str
) -> None:
    ran = lineproof(lesson, *command, "--audience", rating)
    assert (ran.status, ran.out) == (2, "")
    assert ran.err == f"--audience is {rating}; give a rating from 400 to 2900\n"


@pytest.mark.parametrize("rating", [399, 2901])
def test_nor_is_it_taken_from_a_lessons_settings(lesson: Path, rating: int) -> None:
    folder = lesson / "legal"
    folder.mkdir()
    (folder / "lines.pgn").write_text(LESSON, encoding="utf-8")
    (folder / "lesson.toml").write_text(
        f'format = 1\ntitle = "Légal"\nside = "white"\naudience = {rating}\n', encoding="utf-8"
    )
    ran = lineproof(lesson, "unanswered", "legal")
    assert (ran.status, ran.out) == (2, "")
    assert f"audience is {rating}" in ran.err and "from 400 to 2900" in ran.err


@pytest.mark.parametrize("rating", ["400", "2900"])
def test_the_lowest_and_the_highest_rating_are_taken(lesson: Path, rating: str) -> None:
    ran = lineproof(lesson, "ask", "legal.pgn", ASKED, "--audience", rating)
    assert (ran.status, ran.err) == (0, "")


@pytest.mark.parametrize(
    ("name", "says"),
    [
        ("Zoe", "nobody in these games is called 'Zoe'; there are: Ann Quay, Ann Wharf, Ben Jetty\n"),
        ("ann", "'ann' may be several players: Ann Quay, Ann Wharf; write the whole name\n"),
        (" ", "nobody in these games is called ' '; there are: Ann Quay, Ann Wharf, Ben Jetty\n"),
    ],
)  # fmt: skip
def test_a_player_who_is_nobody_or_several_is_refused(lesson: Path, name: str, says: str) -> None:
    games = game("1. e4 e5 2. Nf3") + game("1. e4 e5 2. Nf3", white="Ann Wharf")
    (lesson / "games.pgn").write_text(games, encoding="utf-8")
    ran = lineproof(lesson, "follow", "legal.pgn", "games.pgn", "--side", "white", "--player", name)
    assert (ran.status, ran.out, ran.err) == (2, "", says)


def test_games_without_names_have_no_player(lesson: Path) -> None:
    (lesson / "games.pgn").write_text("1. e4 e5 2. Nf3 *\n", encoding="utf-8")
    ran = lineproof(
        lesson, "follow", "legal.pgn", "games.pgn", "--side", "white", "--player", "Ann"
    )
    assert (ran.status, ran.out) == (2, "")
    assert ran.err == "nobody in these games is called 'Ann'; there are: no names at all\n"


@pytest.mark.parametrize("moves", ["4... Nf6", "4. Nc3", "... e5"])
def test_moves_that_begin_in_the_middle_are_refused_for_that(lesson: Path, moves: str) -> None:
    ran = lineproof(lesson, "ask", "legal.pgn", moves, "--side", "white")
    assert (ran.status, ran.out) == (2, "")
    assert "must begin with the first move of the game" in ran.err


def test_weigh_takes_the_audience_and_the_title_of_a_lesson(lesson: Path) -> None:
    command = ("new", "trap", "--from", "legal.pgn", "--side", "white", "--audience", "1100")
    assert lineproof(lesson, *command).status == 0
    ran = lineproof(lesson, "weigh", "trap")
    assert (ran.status, ran.err) == (0, "")
    assert "about 1100" in ran.out and "lines.pgn" not in ran.out
    told = lineproof(lesson, "weigh", "trap", "--audience", "1700")
    assert "about 1700" in told.out
