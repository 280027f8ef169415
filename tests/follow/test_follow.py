"""Where students' games left a lesson. Players and games are invented."""

from __future__ import annotations

from pathlib import Path

import pytest

import lineproof
from lineproof.follow import FollowError, of_player, played
from lineproof.lesson import LessonError
from lineproof.report.followed import scored

LESSON = "1. e4 e5 2. Nf3 d6 3. Bc4 Bg4 4. Nc3 {Now wait for it.} g6 (4... Nf6 5. h3) 5. Nxe5 Bxd1 6. Bxf7+ Ke7 7. Nd5# *"
"""Légal's mate; Hooper and Whyld, The Oxford Companion to Chess (from memory)."""


def game(
    moves: str,
    white: str = "Ann Quay",
    black: str = "Ben Jetty",
    result: str = "*",
    ratings: tuple[int, int] | None = None,
) -> str:
    elo = f'[WhiteElo "{ratings[0]}"]\n[BlackElo "{ratings[1]}"]\n' if ratings else ""
    return f'[White "{white}"]\n[Black "{black}"]\n[Result "{result}"]\n{elo}\n{moves} {result}\n\n'


GAMES = (
    game("1. e4 e5 2. Nf3 d6 3. Bc4 Bg4 4. Nc3 g6 5. Nxe5 Bxd1 6. Bxf7+ Ke7 7. Nd5#", result="1-0", ratings=(1500, 1400))
    + game("1. Nf3 d6 2. e4 e5 3. Bc4 Bg4 4. Nc3 g6 5. d3 Bg7", result="0-1", ratings=(1400, 1500))
    + game("1. e4 e5 2. Nf3 d6 3. Bc4 Bg4 4. Nc3 Nf6 5. h3 Qc8 6. hxg4", result="1-0")
    + game("1. e4 e5 2. Nf3 d6 3. Bc4 Bg4 4. Nc3 Nd7 5. O-O", white="Cas Mole", result="1/2-1/2")
    + game("1. e4 c5 2. Nf3", result="1-0")
    + game("1. e4 e5 2. Nf3 d6 3. Bc4 Bg4 4. Nc3 g6", white="Ben Jetty", black="Ann Quay")
)  # fmt: skip


@pytest.fixture
def file(tmp_path: Path) -> Path:
    path = tmp_path / "games.pgn"
    path.write_text(GAMES, encoding="utf-8")
    return path


def lesson() -> lineproof.Lesson:
    return lineproof.Lesson.from_text(LESSON, side="white")


def test_each_game_is_followed_to_where_it_left_the_lesson(file: Path) -> None:
    found = lesson().follow(file, player="ann")
    assert (found.elsewhere, found.other_side) == (1, 1)
    whole, own, other = found.departures
    assert whole.uci is None and whole.place.label == "7. Nd5#" and whole.ended
    assert (own.place.label, own.san, own.by_student, own.taught) == (
        "4... g6",
        "d3",
        True,
        ("Nxe5",),
    )
    assert (other.place.label, other.san, other.by_student) == ("5. h3", "Qc8", False)
    assert own.cost is not None and own.cost.better == "Nxe5"


def test_a_lost_piece_is_told_and_whether_it_was_punished(file: Path) -> None:
    other = lesson().follow(file, player="ann").departures[2]
    # 5... Qc8 leaves the bishop to 6. hxg4
    assert other.cost is not None and other.cost.points >= 15
    assert other.bad and other.punished


def test_points_are_those_of_the_students_with_what_their_ratings_let_expect(file: Path) -> None:
    found = lesson().follow(file, player="Ann Quay")
    assert (found.score, found.results) == (2.0, 3)
    # FIDE 8.1.2: 100 points more .64, 100 points less .36
    assert (found.expected, found.rated, found.rated_score) == (pytest.approx(1.0), 2, 1.0)
    assert list(scored(found))[-1] == (
        "The students scored 2 of 3, 67 in 100 (95 %: 21 to 94); in the 2 games with both ratings 1, where 1.0 were to be"
        " expected by the ratings."
    )


def test_without_a_name_whoever_had_the_taught_side_is_the_student(file: Path) -> None:
    found = lesson().follow(file)
    assert len(found.departures) == 5 and found.other_side == 0


def test_the_same_departure_counts_together(tmp_path: Path) -> None:
    path = tmp_path / "games.pgn"
    path.write_text(GAMES + game("1. e4 e5 2. Nf3 d6 3. Bc4 Bg4 4. Nc3 Nd7 5. h3", result="1-0"))
    first, *_ = lesson().follow(path).common
    assert (first.first.san, first.games, first.points, first.results) == ("Nd7", 2, 1.5, 2)
    assert not first.first.by_student


@pytest.mark.parametrize(
    ("name", "says"),
    [
        ("Eve", "nobody in these games is called 'Eve'; there are: Ann Quay, Ben Jetty, Cas Mole"),
        ("e", "'e' may be several players: Ben Jetty, Cas Mole; write the whole name"),
        ("  ", "nobody in these games is called"),
    ],
)
def test_a_name_that_means_nobody_or_several_is_refused(file: Path, name: str, says: str) -> None:
    with pytest.raises(FollowError) as error:
        of_player(played(file), name)
    assert says in str(error.value)


def test_a_whole_name_goes_before_a_part_of_another(tmp_path: Path) -> None:
    path = tmp_path / "games.pgn"
    path.write_text(game("1. e4", white="Ann", black="Anna"))
    assert [side for _, side in of_player(played(path), "ann")] == ["white"]


def test_a_broken_game_is_followed_as_far_as_it_can_be_read(tmp_path: Path) -> None:
    path = tmp_path / "games.pgn"
    path.write_text(game("1. e4 e5 2. Nf3 d6 3. Bc4 Bg4 4. Nc3 Nd7 5. Kf8"))
    (one,) = lesson().follow(path).departures
    assert one.san == "Nd7" and "Kf8" in one.game.broken


def test_a_file_without_games_is_refused(tmp_path: Path) -> None:
    path = tmp_path / "none.pgn"
    path.write_text('[White "A"]\n\n*\n')
    with pytest.raises(FollowError, match="no game with moves"):
        lesson().follow(path)
    with pytest.raises(LessonError):
        lesson().follow(tmp_path / "missing.pgn")


def test_the_taught_side_must_be_known(file: Path) -> None:
    with pytest.raises(FollowError, match="which side is taught"):
        lineproof.Lesson.from_text(LESSON).follow(file)


def test_a_position_is_named_by_the_moves_of_the_game_where_the_lesson_has_them(
    tmp_path: Path,
) -> None:
    file = tmp_path / "games.pgn"
    both = lineproof.Lesson.from_text(
        "1. Nf3 d5 (1... Nf6 2. d4 d5) 2. d4 Nf6 3. c4 *", side="white"
    )
    for moves, label in (("1. Nf3 Nf6 2. d4 d5 3. g3", "2... d5"), ("1. Nf3 d5 2. d4 Nf6 3. g3", "2... Nf6")):  # fmt: skip
        file.write_text(game(moves), encoding="utf-8")
        (one,) = both.follow(file).departures
        assert (one.place.label, one.san) == (label, "g3")
