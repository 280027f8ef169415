"""A broken game is named, with file, line, column and reason, and the games around it are read."""

from __future__ import annotations

from pathlib import Path
from random import Random

import pytest

from lineproof.collection import Collection, FileAdded

from .conftest import Make

BEFORE = '[White "Ann"]\n[Result "1-0"]\n\n1. e4 e5 2. Nf3 1-0\n\n'
AFTER = '[White "Ben"]\n[Result "0-1"]\n\n1. d4 d5 2. c4 0-1\n'


@pytest.fixture
def collection(make: Make) -> Collection:
    return make("broken")


def add(collection: Collection, folder: Path, text: str | bytes) -> FileAdded:
    file = folder / "games.pgn"
    file.write_bytes(text if isinstance(text, bytes) else text.encode())
    (report,) = collection.add([file]).files
    return report


def between(collection: Collection, folder: Path, game: str) -> FileAdded:
    """Adds a game between two sound ones, which must be there."""
    report = add(collection, folder, BEFORE + game + "\n" + AFTER)
    assert collection.look("1. e4 e5 2. Nf3").games >= 1
    assert collection.look("1. d4 d5 2. c4").games >= 1
    return report


@pytest.mark.parametrize(
    ("game", "line", "column", "reason"),
    [
        (
            '[White "Cas"]\n\n1. e4 e5 2. Ke3 Nc6 1-0\n',
            8,
            13,
            "Ke3 is not legal here; that piece can play Ke2",
        ),
        (
            '[White "Cas"]\n\n1. d4 d5 2. Nf3 a6 3. Nd2 1-0\n',
            8,
            23,
            "Nd2 can mean Nbd2 or Nfd2; write which",
        ),
        ('[White "Cas"]\n\n1. e4 e5\n2. Nf3 boo 1-0\n', 9, 8, "boo is not a move"),
        ('[White "Cas"]\n\n1. e4 -- 2. d4 1-0\n', 8, 7, "a pass is no move of a game"),
        ('[White "Cas"]\n\n1. e4 {oh 1-0\n', 8, 7, "this comment is never closed"),
        ('[White "Cas"]\n\n1. e4 e5 2. Nf3 [%x 1] Nc6 1-0\n', 8, 17, "[ is not a move"),
        ('[White "Cas"]\n\n1. e4 } e5 1-0\n', 8, 7, "a comment ends here that never began"),
        ('[White "Cas"]\n\n1. e4 (1. d4 e5 1-0\n', 8, 7, "this variation is never closed"),
        ('[White "Cas"]\n\n1. e4 e5) 1-0\n', 8, 9, "a variation ends here that never began"),
        ('[White "Cas\n\n1. e4 e5 1-0\n', 6, 1, "this tag is not closed on its line"),
        (
            '[White "Cas"]\n[FEN "8/8/8/8 w - - 0 1"]\n\n1. e4 e5 1-0\n',
            7,
            1,
            "the FEN is no legal position: ",
        ),
        ('[White "Zoë"]\n\n{ä ö} 1. e4 e6 2. Qa5 1-0\n', 8, 19, "Qa5 is not legal here; "),
    ],
)
def test_a_broken_game_is_named_and_its_neighbours_are_read(
    collection: Collection, tmp_path: Path, game: str, line: int, column: int, reason: str
) -> None:
    # a comment that never ends is known by the tag of the next game
    text = game.replace("oh 1-0\n", 'oh 1-0\n\n[Event "next"]')
    report = between(collection, tmp_path, text)
    assert (report.added, report.broken) == (2, 1)
    (broken,) = report.named
    assert (broken.line, broken.column) == (line, column)
    assert broken.reason.startswith(reason)


def test_a_comment_of_100_megabytes_is_skipped_and_lines_after_it_still_count(
    collection: Collection, tmp_path: Path
) -> None:
    file = tmp_path / "long.pgn"
    with file.open("w") as stream:
        stream.write('[White "Ann"]\n\n1. e4 {')
        for _ in range(1000):
            stream.write("lorem ipsum\n" * 8334)
        stream.write('} e5 2. Nf3 1-0\n\n[White "Ben"]\n\n1. e4 e5 2. Nf6 *\n\n' + AFTER)
    assert file.stat().st_size > 100_000_000
    (report,) = collection.add([file]).files
    assert (report.added, report.broken) == (2, 1)
    assert collection.look("1. e4 e5 2. Nf3").games == 1
    first = 3 + 8_334_000
    assert (report.named[0].line, report.named[0].column) == (first + 4, 13)


def test_a_million_empty_games_are_counted_and_not_kept(
    collection: Collection, tmp_path: Path
) -> None:
    report = add(collection, tmp_path, '[Event "?"]\n[Result "*"]\n\n*\n\n' * 1_000_000 + AFTER)
    assert (report.empty, report.added, report.broken) == (1_000_000, 1, 0)


def test_blank_lines_inside_moves_do_not_end_a_game(collection: Collection, tmp_path: Path) -> None:
    report = between(
        collection,
        tmp_path,
        '[White "Cas"]\n\n1. e4 e5\n\n2. f4 {a\n\nb}\n\n\nexf4\n3. Nf3 g5 1-0\n',
    )
    assert (report.added, report.broken) == (3, 0)
    assert collection.look("1. e4 e5 2. f4 exf4 3. Nf3 g5").games == 1


@pytest.mark.parametrize("end", ["\n", "\r\n", "\r"])
def test_every_line_end_is_one(collection: Collection, tmp_path: Path, end: str) -> None:
    text = BEFORE + '[White "Cas"]\n\n1. e4 e5 2. Ke3 1-0\n\n' + AFTER
    report = add(collection, tmp_path, text.replace("\n", end))
    assert (report.added, report.broken) == (2, 1)
    assert (report.named[0].line, report.named[0].column) == (8, 13)


@pytest.mark.parametrize(
    "text",
    [
        "1. e4 e5 2. Nf3 1-0\n\n1. d4 d5 2. c4 0-1\n",
        "1. e4 e5 2. Nf3 1-0\n1. d4 d5 2. c4 0-1",
        "1. e4 e5 2. Nf3 1-0 1. d4 d5 2. c4 0-1",
        "{words} 1.e4 e5 2.Nf3 {more} 1-0\n; and\n% hidden 1. h3\n1.d4 d5 2.c4 0-1 {end}",
        "\ufeff" + BEFORE + AFTER,
        BEFORE.strip() + " " + "\n" + AFTER,
        '[White "Ann"][Black "Ben"] 1. e4 e5 2. Nf3 *\n[White "Cas"]\n1. d4 d5 2. c4 *',
        "1. e4 $1 $999 e5! 2. Nf3 +- N (2. Bc4 (2. d4 {)} exd4) 2... h6) 1/2-1/2\n\n1. P-d4 d7d5 2. c2-c4 *",
    ],
)
def test_games_are_told_apart_without_tags_and_on_any_lines(
    collection: Collection, tmp_path: Path, text: str
) -> None:
    report = add(collection, tmp_path, text)
    assert (report.added, report.broken, report.empty) == (2, 0, 0)
    assert collection.look("1. e4 e5 2. Nf3").games == 1
    assert collection.look("1. d4 d5 2. c4").games == 1


def test_names_are_utf_8_or_latin_1_by_the_game(collection: Collection, tmp_path: Path) -> None:
    moves = "\n\n1. e4 e5 2. Nf3 Nc6 3. Bb5 a6 4. Ba4 Nf6 5. O-O Be7 6. Re1 b5 7. Bb3 d6 8. c3 O-O 9. h3 Na5 10. Bc2 c5 1-0\n\n"
    text = (
        b'[White "Z\xc3\xb6e"]' + moves.encode() + b'[White "Z\xf6e"]\n[Black "x"]' + moves.encode()
    )
    assert add(collection, tmp_path, text).added == 2
    assert {game.white for game in collection.model_games("")} == {"Zöe"}


def test_utf_16_is_refused_and_says_what_to_do(collection: Collection, tmp_path: Path) -> None:
    report = add(collection, tmp_path, BEFORE.encode("utf-16"))
    assert report.failure == "the text is UTF-16; save it as UTF-8"
    assert report.added == 0


@pytest.mark.parametrize(
    "elo", ["", "?", "-", "0", "99", "4000", "123456789012345678901", "15OO", "-1500"]
)
def test_a_rating_that_is_none_is_not_known(
    collection: Collection, tmp_path: Path, elo: str
) -> None:
    add(collection, tmp_path, f'[WhiteElo "{elo}"]\n[BlackElo "1500"]\n\n1. e4 e5 1-0\n')
    figures = collection.look("")
    assert (figures.games, figures.tally.rated, figures.tally.rating) == (1, 1, 1500)
    assert figures.by_rating == ()
    assert collection.look("", audience=1500).games == 0


@pytest.mark.parametrize(
    ("date", "year"),
    [
        ("2019.05.04", 2019),
        ("2019.??.??", 2019),
        ("????.??.??", None),
        ("0001.01.01", None),
        ("9999.1.1", None),
        ("20190504", None),
        ("", None),
    ],
)
def test_a_year_is_known_or_not(
    collection: Collection, tmp_path: Path, date: str, year: int | None
) -> None:
    add(collection, tmp_path, f'[Date "{date}"]\n\n1. e4 e5 1-0\n')
    assert [found for found, _ in collection.look("").by_year] == ([] if year is None else [year])


def test_a_game_without_a_known_result_counts_and_scores_nothing(
    collection: Collection, tmp_path: Path
) -> None:
    add(collection, tmp_path, '1. e4 e5 *\n\n1. e4 c5 1-0\n\n[Result "nonsense"]\n\n1. e4 e6\n')
    figures = collection.look("1. e4")
    assert figures.games == 3
    assert figures.score is not None
    assert (figures.score.games, figures.score.white) == (1, 1)


def test_the_result_tag_goes_before_the_end_of_the_moves(
    collection: Collection, tmp_path: Path
) -> None:
    """As python-chess reads it."""
    add(collection, tmp_path, '[Result "0-1"]\n\n1. e4 e5 1-0\n')
    score = collection.look("").score
    assert score is not None
    assert (score.white, score.black) == (0, 1)


def test_set_up_positions_and_other_rules_are_told_apart(
    collection: Collection, tmp_path: Path
) -> None:
    report = between(
        collection,
        tmp_path,
        '[SetUp "1"]\n[FEN "4k3/8/8/8/8/8/4P3/4K3 w - - 0 1"]\n\n1. e4 Kd7 1-0\n\n'
        '[Variant "Antichess"]\n\n1. e3 b5 2. Bxb5 0-1\n\n'
        '[Variant "From Position"]\n[FEN "rnbqkbnr/pppppppp/8/8/8/8/PPPPPPPP/RNBQKBNR w KQkq - 0 1"]\n\n1. e4 c5 1-0\n',
    )
    assert (report.added, report.set_up, report.variants, report.broken) == (3, 1, 1, 0)
    assert collection.look("1. e4 c5").games == 1
    assert collection.look("4k3/8/8/8/8/8/4P3/4K3 w - - 0 1").games == 0


def test_a_position_that_comes_again_counts_once_a_game(
    collection: Collection, tmp_path: Path
) -> None:
    add(collection, tmp_path, "1. Nf3 Nf6 2. Ng1 Ng8 3. Nf3 Nf6 4. Ng1 Ng8 5. e4 e5 1-0\n")
    figures = collection.look("")
    assert figures.games == 1
    assert [move.san for move in figures.moves] == ["Nf3"]
    assert collection.look("1. e4").games == 1
    assert collection.orders("1. e4")[0].san[-1] == "e4"


def test_more_broken_games_than_can_be_named_are_counted(
    collection: Collection, tmp_path: Path
) -> None:
    report = add(collection, tmp_path, '[White "x"]\n\n1. e5 *\n\n' * 1_500 + AFTER)
    assert (report.broken, len(report.named), report.added) == (1_500, 1_000, 1)
    assert report.named[999].line == 999 * 4 + 3


def test_what_is_longer_than_any_game_is_none(collection: Collection, tmp_path: Path) -> None:
    report = between(
        collection, tmp_path, '[White "Cas"]\n\n1. e4 e5 ' + "Nf3 Nc6 Ng1 Nb8 " * 700_000
    )
    assert (report.added, report.broken) == (2, 1)
    assert report.named[0].reason == "this is longer than any game"
    assert (report.named[0].line, report.named[0].column) == (6, 1)


def test_random_damage_ends_in_an_answer(
    make: Make, invented: dict[str, Path], tmp_path: Path
) -> None:
    """Nothing crashes or runs on, and what is read is as many games as are counted."""
    whole = invented["clocks"].read_bytes()[:60_000]
    for seed in range(60):
        random = Random(seed)
        data = bytearray(whole)
        for _ in range(random.randrange(1, 40)):
            at = random.randrange(len(data))
            match random.randrange(4):
                case 0:
                    data[at] = random.randrange(256)
                case 1:
                    del data[at : at + random.randrange(200)]
                case 2:
                    data[at:at] = bytes(random.choices(b'{}()[]"\n;%1 *\x00', k=3))
                case _:
                    data[at:at] = data[: random.randrange(300)]
        collection = make(f"damaged {seed}")
        report = add(collection, tmp_path, bytes(data))
        if collection.exists:
            assert collection.games == report.added == collection.look("").games
