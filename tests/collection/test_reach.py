"""The share of the audience's games that comes to each position of a lesson, on games whose counts are known."""

from __future__ import annotations

from pathlib import Path

import pytest

from lineproof.collection import Collection, CollectionError, Reached, wilson
from lineproof.collection.reach import reached
from lineproof.lesson import Lesson

from .conftest import Make

LINES = {
    "1. e4 e5 2. Nc3 Nf6 3. f4 d5": 60,
    "1. e4 e5 2. Nc3 Nc6 3. f4 exf4": 15,
    "1. e4 Nf6 2. Nc3 e5 3. f4 d5": 4,
    "1. e4 Nf6 2. Nc3 d5": 1,
    "1. e4 c5": 20,
    "1. d4 d5": 10,
}


@pytest.fixture
def collection(make: Make, tmp_path: Path) -> Collection:
    """110 games between players rated 1500, and 500 between players rated 2400, who play otherwise."""
    games = []
    for line, count in LINES.items():
        games += [
            f'[Round "{number}"]\n[WhiteElo "1500"]\n[BlackElo "1500"]\n\n{line} 1-0\n\n'
            for number in range(count)
        ]
    games += [
        f'[Round "{number}"]\n[WhiteElo "2400"]\n[BlackElo "2400"]\n\n1. e4 c6 0-1\n\n'
        for number in range(500)
    ]
    file = tmp_path / "known.pgn"
    file.write_text("".join(games))
    collection = make("known")
    collection.add([file])
    return collection


def lesson(text: str, side: str | None = "white") -> Lesson:
    return Lesson.from_text(text, side=side, audience=1500)  # type: ignore[arg-type]


def by_line(positions: tuple[Reached, ...]) -> dict[str, Reached]:
    return {" ".join(one.line): one for one in positions}


def test_shares_multiply_along_a_line_over_the_opponents_moves(collection: Collection) -> None:
    reach = collection.reach(
        lesson("1. e4 e5 (1... c5 2. Nc3) 2. Nc3 Nf6 (2... Nc6 3. f4 exf4) 3. f4 d5 *")
    )
    assert (reach.side, reach.games, reach.audience.low, reach.audience.high) == (
        "white",
        110,
        1300,
        1700,
    )
    found = by_line(reach.positions)
    assert [one.share for one in (found[""], found["e4"])] == [100, 100]
    for line, share in {
        "e4 e5": 75,
        "e4 e5 Nc3": 75,
        "e4 e5 Nc3 Nf6": 60,
        "e4 e5 Nc3 Nf6 f4": 60,
        "e4 e5 Nc3 Nf6 f4 d5": 60,
        "e4 e5 Nc3 Nc6": 15,
        "e4 e5 Nc3 Nc6 f4": 15,
        "e4 e5 Nc3 Nc6 f4 exf4": 15,
        "e4 c5": 20,
        "e4 c5 Nc3": 20,
    }.items():
        assert found[line].share == pytest.approx(share), line
    assert found["e4 e5"].fewest == 100
    assert found["e4 e5 Nc3 Nf6 f4 d5"].fewest == 64
    # 64 games at the position: four of them came by another order
    assert found["e4 e5 Nc3 Nf6"].games == 64
    assert found["e4 c5 Nc3"].games == 0


def test_the_interval_after_one_move_is_that_of_its_count(collection: Collection) -> None:
    found = by_line(collection.reach(lesson("1. e4 e5 *")).positions)
    assert found["e4 e5"].interval == wilson(75, 100)
    assert (found["e4"].interval.low, found["e4"].interval.high) == (100, 100)


def test_two_uncertain_moves_make_a_wider_interval(collection: Collection) -> None:
    found = by_line(collection.reach(lesson("1. e4 e5 2. Nc3 Nf6 *")).positions)
    both = found["e4 e5 Nc3 Nf6"].interval
    # as if all uncertainty were that of 100, and of fewer than 100 games
    alone = wilson(60, 100)
    assert both.low <= alone.low + 1 and both.high >= alone.high - 1
    assert both.low < 60 < both.high


def test_where_the_opponents_moves_transpose_shares_add_up(collection: Collection) -> None:
    text = "1. e4 e5 (1... Nf6 2. Nc3 e5 3. f4) 2. Nc3 Nf6 3. f4 d5 *"
    reach = collection.reach(lesson(text))
    (one,) = (
        one
        for one in reach.positions
        if one.fen.split()[0].endswith("4P3/2N5/PPPP1PPP/R1BQKBNR") and "5n2/4p3" in one.fen
    )
    # 75 of 100, then 60 of 75; and 5 of 100, then 4 of 5
    assert one.share == pytest.approx(64)
    assert (one.games, one.fewest) == (64, 5)


def test_each_move_of_the_taught_side_is_taken_as_played(collection: Collection) -> None:
    found = by_line(collection.reach(lesson("1. e4 (1. d4 d5) e5 2. Nc3 (2. d4) *")).positions)
    assert found["e4"].share == found["d4"].share == 100
    assert found["d4 d5"].share == 100
    assert found["e4 e5 Nc3"].share == found["e4 e5 d4"].share == pytest.approx(75)


def test_the_other_side_can_be_taught(collection: Collection) -> None:
    found = by_line(collection.reach(lesson("1. e4 (1. d4 d5) c5 2. Nc3 *", "black")).positions)
    assert found["e4"].share == pytest.approx(1000 / 11)
    assert found["e4 c5"].share == pytest.approx(1000 / 11)
    assert found["d4 d5"].share == pytest.approx(100 / 11)
    # nobody has played on after 1... c5
    assert (found["e4 c5 Nc3"].share, found["e4 c5 Nc3"].fewest) == (0, 0)
    assert (found["e4 c5 Nc3"].interval.low, found["e4 c5 Nc3"].interval.high) == (0, 100)


def test_a_lesson_that_repeats_a_position_ends(collection: Collection) -> None:
    found = by_line(
        collection.reach(lesson("1. Nf3 Nf6 2. Ng1 Ng8 3. e4 e5 4. Nc3 Nf6 *")).positions
    )
    assert len(found) == 8  # the initial position comes twice
    assert found["Nf3 Nf6 Ng1 Ng8 e4 e5"].share == pytest.approx(75)


def test_a_pass_in_a_lesson_is_reached_by_no_game(collection: Collection) -> None:
    reach = collection.reach(lesson("1. e4 e5 (1... -- 2. d4) 2. Nc3 *"))
    assert len(reach.positions) == 4


def test_a_lesson_without_a_side_says_what_to_do(collection: Collection) -> None:
    with pytest.raises(CollectionError, match="say it with --side"):
        collection.reach(lesson("1. e4 *", None))


def test_of_one_place_it_is_the_same(collection: Collection) -> None:
    one = lesson("1. e4 e5 (1... c5 2. Nc3) 2. Nc3 Nf6 3. f4 (3. -- d5) d5 *")
    every = by_line(collection.reach(one).positions)
    for place in one.places:
        found = reached(collection, place)
        behind = "--" in [each.san for each in place.path()]
        assert found == (None if behind else every[" ".join(found.line if found else ())])
        assert behind or found is not None
    assert reached(collection, lesson("1. e4 *", side=None).places[1]) is None
