"""The PGN that is published, read back by python-chess."""

from __future__ import annotations

import io
import re
from collections import Counter
from collections.abc import Iterator
from pathlib import Path

import chess
import chess.pgn
import pytest

from lineproof.lesson import Lesson, Place
from lineproof.publish import Choices
from lineproof.publish.products.pgn import make

from .lessons import TRANSPOSING, TRAP, long_lesson, nothing_found, random_lesson

VIENNA = Path(__file__).resolve().parents[2] / "examples" / "vienna"
TEXTS = [TRAP, TRANSPOSING, (VIENNA / "lines.pgn").read_text(encoding="utf-8")]
TEXTS += [random_lesson(seed) for seed in range(12)]


def published(text: str, side: str = "white") -> tuple[Lesson, dict[str, str]]:
    """The lesson, and what was published by the last part of its file's name."""
    assert side in ("white", "black")
    lesson = Lesson.from_text(text, side="black" if side == "black" else "white")
    files = make(lesson, nothing_found(lesson), Choices())
    (whole,) = [name for name in files if f"{name[:-4]}-lines.pgn" in files]
    stem = whole[:-4]
    return lesson, {
        name.removeprefix(stem).removeprefix("-"): data.decode() for name, data in files.items()
    }


def games(text: str) -> list[chess.pgn.Game]:
    """Every game of a text; python-chess must have nothing to complain of."""
    stream = io.StringIO(text)
    found = []
    while (game := chess.pgn.read_game(stream)) is not None:
        assert game.errors == []
        found.append(game)
    return found


def header(game: chess.pgn.Game, name: str) -> str:
    """A tag's value; python-chess leaves its escapes (PGN standard, 1994-03-12, 7, from memory) as they are."""
    return re.sub(r'\\(["\\])', r"\1", game.headers[name])


def nodes(game: chess.pgn.Game) -> Iterator[chess.pgn.GameNode]:
    left: list[chess.pgn.GameNode] = [game]
    while left:
        node = left.pop()
        yield node
        left += node.variations


def road(node: chess.pgn.GameNode) -> str:
    """Where a node is: the start of its game and the moves to it."""
    moves = []
    while node.parent is not None:
        assert node.move is not None
        moves.append(node.move.uci())
        node = node.parent
    return " ".join([node.board().fen(), *reversed(moves)])


def road_of(place: Place) -> str:
    return " ".join([chess.Board(place.root_fen).fen(), *place.moves()])


@pytest.mark.parametrize("text", TEXTS)
def test_the_lines_alone_have_every_position_and_no_word(text: str) -> None:
    lesson, files = published(text)
    read = games(files["lines.pgn"])
    assert Counter(road(n) for game in read for n in nodes(game)) == Counter(
        map(road_of, lesson.places)
    )
    assert not any(node.comment for game in read for node in nodes(game))
    moves = [line for line in files["lines.pgn"].splitlines() if not line.startswith("[")]
    assert max(map(len, moves)) <= 79


@pytest.mark.parametrize("text", TEXTS)
def test_the_lines_alone_keep_headers_order_and_glyphs(text: str) -> None:
    lesson, files = published(text)
    for game, read in zip(lesson.games, games(files["lines.pgn"]), strict=True):
        assert {name: header(read, name) for name, _ in game.tags} == dict(game.tags)
    again = Lesson.from_text(files["lines.pgn"])
    assert [game.tags for game in again.games] == [game.tags for game in lesson.games]
    # python-chess keeps a set of glyphs at each node; ours also count a sign written as text
    numbers = {road_of(place): set(place.glyph_numbers) - {None} for place in lesson.places}
    for read in games(files["lines.pgn"]):
        for node in nodes(read):
            assert node.nags == numbers[road(node)]
    main = [
        " ".join(move.uci() for move in read.mainline_moves()) for read in games(files["lines.pgn"])
    ]
    assert main == [" ".join(_main(game.root)) for game in lesson.games]


def _main(place: Place | None) -> list[str]:
    found = []
    while place is not None:
        found += [place.uci] if place.uci else []
        place = place.next
    return found


@pytest.mark.parametrize("text", TEXTS)
def test_line_by_line_has_a_game_for_each_line(text: str) -> None:
    lesson, files = published(text)
    read = games(files["line-by-line.pgn"])
    assert [road(game.end()) for game in read] == [road_of(end) for end in lesson.lines()]
    assert all(len(node.variations) < 2 for game in read for node in nodes(game))
    for game, end in zip(read, lesson.lines(), strict=True):
        kept = {name for name, _ in end.game.tags} - {"Round", "Result"}
        assert all(header(game, name) == end.game.tag(name) for name in kept)
    rounds = [game.headers["Round"] for game in read]
    assert len(set(rounds)) == len(rounds)


def test_a_round_that_the_author_gave_is_kept_and_only_the_main_line_has_the_result() -> None:
    _, files = published('[Round "7"]\n[Result "1-0"]\n\n1. e4 e5 (1... c5) 2. Nf3 1-0\n')
    read = games(files["line-by-line.pgn"])
    assert [(g.headers["Round"], g.headers["Result"]) for g in read] == [("7", "*"), ("7", "1-0")]


@pytest.mark.parametrize("side", ["white", "black"])
@pytest.mark.parametrize("text", TEXTS)
def test_the_repertoire_has_one_move_of_the_taught_side_and_all_replies(
    text: str, side: str
) -> None:
    lesson, files = published(text, side)
    taught = side == "white"
    lessons: dict[str, set[str]] = {}
    for place in lesson.places:
        if "0000" in place.moves():
            continue
        moves = lessons.setdefault(chess.Board(place.board.fen).epd(), set())
        moves |= {child.uci for child in place.children if child.uci not in (None, "0000")}
    played: dict[str, set[str]] = {}
    for game in games(files.get("repertoire.pgn", "")):
        for node in nodes(game):
            board = node.board()
            moves = {child.uci() for child in (v.move for v in node.variations)}
            played.setdefault(board.epd(), set()).update(moves)
    assert played or not any(lessons.values())
    for position, moves in played.items():
        if chess.Board(f"{position} 0 1").turn == taught:
            assert len(moves) <= 1 and moves <= lessons[position]
        else:
            assert moves == lessons[position]


def test_the_repertoire_plays_what_is_shown_first_and_not_what_the_author_calls_bad() -> None:
    _, files = published(TRANSPOSING)
    first, second = games(files["repertoire.pgn"])
    # 2. Nc3 has a question mark after 1... c5, so 2. c3 is played, the next one shown
    assert [str(v.move) for v in first.variations[0].variations] == ["e7e5", "c7c5"]
    sicilian = first.variations[0].variations[1]
    assert [str(v.move) for v in sicilian.variations] == ["c2c3"]
    # 2. Nf3 is the second choice after 1... e5
    assert [str(v.move) for v in first.variations[0].variations[0].variations] == ["b1c3"]
    # nothing behind a pass
    assert [str(v.move) for v in second.variations] == ["e8d7", "e8e7"]
    assert not any(node.move == chess.Move.null() for node in nodes(second))


def test_a_repertoire_without_a_move_that_the_author_stands_by_ends_there() -> None:
    _, files = published("1. e4 e5 2. Qh5 $6 *")
    (game,) = games(files["repertoire.pgn"])
    assert [str(move) for move in game.mainline_moves()] == ["e2e4", "e7e5"]


def test_two_roads_to_a_position_are_gone_on_from_once() -> None:
    _, files = published("1. e4 e5 (1... Nf6 2. Nc3 e5 3. f4) 2. Nc3 Nf6 3. f4 d5 *")
    (game,) = games(files["repertoire.pgn"])
    ends = Counter(node.board().epd() for node in nodes(game) if node.variations)
    assert set(ends.values()) == {1}
    assert len(list(game.mainline_moves())) == 6


@pytest.mark.parametrize(
    "data",
    [
        b'\xef\xbb\xbf[Event "BOM"]\r\n\r\n1. e4 {x}\r\n* ',
        '[Event "Caf\xe9"]\n\n1. e4 {Z\xfcge} *\n% kept\n'.encode("latin-1"),
        "1. e4 {[%cal Gd2d4] ; x} e5 ; to the end\n*".encode("utf-16"),
    ],
)
def test_the_whole_lesson_is_the_authors_file_byte_for_byte(tmp_path: Path, data: bytes) -> None:
    file = tmp_path / "mine.pgn"
    file.write_bytes(data)
    lesson = Lesson.open(file, side="white")
    files = make(lesson, nothing_found(lesson), Choices())
    assert data in files.values()
    assert all(b"\xef\xbb\xbf" not in other for other in files.values() if other != data)


def test_a_very_long_line_and_deep_variations_are_published() -> None:
    text = long_lesson(3000)
    _, files = published(text)
    (game,) = games(files["lines.pgn"])
    assert len(list(game.mainline_moves())) == 3000
    deep = (
        "1. e4 "
        + "".join("(1. %s " % ("d4" if n % 2 else "c4") for n in range(300))
        + ")" * 300
        + " *"
    )
    deep_lesson = Lesson.from_text(deep, side="white")
    files_of_deep = make(deep_lesson, nothing_found(deep_lesson), Choices())
    again = Lesson.from_text(
        next(d for n, d in files_of_deep.items() if n.endswith("-lines.pgn")).decode()
    )
    assert [p.uci for p in again.places] == [p.uci for p in deep_lesson.places]


def test_the_same_lesson_gives_the_same_bytes() -> None:
    assert published(TRAP)[1] == published(TRAP)[1]
