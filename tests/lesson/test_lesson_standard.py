"""The PGN standard's own examples and rules.

Source: Portable Game Notation Specification and Implementation Guide, 1994-03-12; sections are
named beside each test. Section numbers and the game text are from memory; python-chess confirms
the moves.
"""

from __future__ import annotations

import io

import chess
import chess.pgn
import pytest

from lineproof._engine import Board, Pgn, read_san
from lineproof.lesson import Lesson

# 2.3, "Example of a PGN game" (from memory).
SAMPLE = """[Event "F/S Return Match"]
[Site "Belgrade, Serbia JUG"]
[Date "1992.11.04"]
[Round "29"]
[White "Fischer, Robert J."]
[Black "Spassky, Boris V."]
[Result "1/2-1/2"]

1. e4 e5 2. Nf3 Nc6 3. Bb5 a6 4. Ba4 Nf6 5. O-O Be7 6. Re1 b5 7. Bb3 d6 8. c3
O-O 9. h3 Nb8 10. d4 Nbd7 11. c4 c6 12. cxb5 axb5 13. Nc3 Bb7 14. Bg5 b4 15.
Nb1 h6 16. Bh4 c5 17. dxe5 Nxe4 18. Bxe7 Qxe7 19. exd6 Qf6 20. Nbd2 Nxd6 21.
Nc4 Nxc4 22. Bxc4 Nb6 23. Ne5 Rae8 24. Bxf7+ Rxf7 25. Nxf7 Rxe1+ 26. Qxe1 Kxf7
27. Qe3 Qg5 28. Qxg5 hxg5 29. b3 Ke6 30. a3 Kd6 31. axb4 cxb4 32. Ra5 Nd5 33.
f3 Bc8 34. Kf2 Bf5 35. Ra7 g6 36. Ra6+ Kc5 37. Ke1 Nf4 38. g3 Nxh3 39. Kd2 Kb5
40. Rd6 Kc5 41. Ra6 Nf2 42. g4 Bd3 43. Re6 1/2-1/2
"""


def kinds(text: str) -> list[str]:
    pgn = Pgn(text)
    return [k for k, *_ in map(pgn.token, range(pgn.tokens)) if k not in ("space", "newline")]


def test_the_sample_game_is_read_whole() -> None:
    lesson = Lesson.from_text(SAMPLE)
    (game,) = lesson.games
    assert len(lesson.places) == 1 + 85  # 43 moves, the last of them White's only
    assert [name for name, _ in game.tags] == [
        *("Event", "Site", "Date", "Round", "White", "Black", "Result")
    ]
    assert game.tag("White") == "Fischer, Robert J."
    assert game.result == "1/2-1/2"
    assert lesson.places[-1].label == "43. Re6"
    second = chess.pgn.read_game(io.StringIO(SAMPLE))
    assert second is not None
    assert lesson.places[-1].moves() == [move.uci() for move in second.mainline_moves()]
    assert lesson.places[-1].board.fen == second.end().board().fen(en_passant="legal")


def test_export_spelling_is_what_the_sample_has() -> None:
    lesson = Lesson.from_text(SAMPLE)
    assert all(place.written == place.san for place in lesson.places)


def test_an_escaped_line_is_ignored_and_kept() -> None:
    """Section 6: a percent sign in the first column; anywhere else it escapes nothing."""
    text = "1. e4\n%e5 (private\n1... c5 2. Nf3 *"
    lesson = Lesson.from_text(text)
    assert [place.san for place in lesson.places[1:]] == ["e4", "c5", "Nf3"]
    assert lesson.text == text
    assert kinds(" %") == ["mark"]


def test_the_two_sorts_of_comment() -> None:
    """Section 5: to the line's end after a semicolon; in braces, which do not nest."""
    lesson = Lesson.from_text("1. e4 ; king's {pawn\n{ a { b ; c } e5 *")
    assert [(c.place.label, c.text) for c in lesson.comments] == [
        ("1. e4", " king's {pawn"),
        ("1. e4", " a { b ; c "),
    ]
    assert lesson.places[2].san == "e5"


def test_a_semicolon_in_braces_opens_no_comment() -> None:
    """Section 5."""
    assert kinds("{a ; b} e4") == ["comment", "move"]


@pytest.mark.parametrize(
    "text",
    [
        "1.e4 e5 2.Nf3",
        "1e4 e5 2Nf3",
        "e4 e5 Nf3",
        "1. e4 1... e5 2. Nf3",
        "1. e4 1. ... e5 2 . Nf3",
        "1..... e4 e5\n\n2.\n\nNf3",
        "7. e4 3... e5 12. Nf3",
    ],
)
def test_move_numbers_are_optional_and_carry_any_dots(text: str) -> None:
    """Sections 3.1 (import format) and 8.2.2.1: on import, numbers and periods are optional."""
    assert [place.san for place in Lesson.from_text(text).places[1:]] == ["e4", "e5", "Nf3"]


def test_tags_may_share_a_line_and_moves_may_follow_at_once() -> None:
    """Section 8.1: on import, several tag pairs may be on one line, and white space is free."""
    lesson = Lesson.from_text('[Event "a"] [ Site\n"b" ][Round "1"]1. e4 *[Event "c"]\n1. d4 *')
    assert [game.tags for game in lesson.games] == [
        (("Event", "a"), ("Site", "b"), ("Round", "1")),
        (("Event", "c"),),
    ]
    assert [place.san for place in lesson.lines()] == ["e4", "d4"]


def test_strings_hold_escaped_quotes_and_backslashes() -> None:
    """Section 7."""
    lesson = Lesson.from_text(r'[Event "the \"open\" \\ group"] *')
    assert lesson.games[0].tag("Event") == r'the "open" \ group'


def test_a_fen_tag_sets_the_start() -> None:
    """Section 9.7."""
    fen = "4k3/8/8/8/8/8/4p3/4K3 b - - 0 60"
    lesson = Lesson.from_text(f'[SetUp "1"]\n[FEN "{fen}"]\n\n60... Kd7 61. Kxe2 *')
    assert lesson.places[1].root_fen == fen
    assert [place.label for place in lesson.places] == ["start", "60... Kd7", "61. Kxe2"]


@pytest.mark.parametrize(
    ("fen", "san", "uci"),
    [
        # 8.2.3.4: the file first, then the rank, then both.
        ("k7/8/8/8/8/2N5/8/K5N1 w - - 0 1", "Nge2", "g1e2"),
        ("7k/8/8/R7/8/8/8/R3K3 w - - 0 1", "R1a3", "a1a3"),
        ("1k6/8/8/8/4Q2Q/8/8/K6Q w - - 0 1", "Qh4e1", "h4e1"),
        # 8.2.3.4, last paragraph: a pinned piece makes nothing ambiguous.
        ("4k3/8/8/8/1b6/2N5/8/4K1N1 w - - 0 1", "Ne2", "g1e2"),
        # 8.2.3.3: castling with letters; 8.2.3.5: check and mate signs are optional.
        ("4k3/8/8/8/8/8/8/R3K2R w KQ - 0 1", "O-O-O", "e1c1"),
        ("4k3/8/8/8/8/8/8/R3K2R w KQ - 0 1", "Rh8", "h1h8"),
        # 8.2.3.3: promotion with an equals sign; pawn captures with their file.
        ("3n3k/4P3/8/8/8/8/8/4K3 w - - 0 1", "exd8=Q+", "e7d8q"),
        ("4k3/8/8/3pP3/8/8/8/4K3 w - d6 0 1", "exd6", "e5d6"),
    ],
)
def test_san_names_one_move(fen: str, san: str, uci: str) -> None:
    """Section 8.2.3; python-chess as second reader."""
    assert read_san(Board(fen), san)[0] == uci
    assert chess.Board(fen).parse_san(san).uci() == uci


def test_glyphs_of_the_standard_table() -> None:
    """Section 10: $1 to $6 are the six traditional marks; section 8.2.4: $0 to $255."""
    marks = ["!", "?", "!!", "??", "!?", "?!"]
    moves = ["e4", "e5", "Nf3", "Nc6", "Bb5", "a6"]
    text = " ".join(move + mark for move, mark in zip(moves, marks, strict=True))
    assert [place.nags for place in Lesson.from_text(text).places[1:]] == [
        (1,),
        (2,),
        (3,),
        (4,),
        (5,),
        (6,),
    ]
    assert Lesson.from_text("e4 $0 $139 $255").places[1].nags == (0, 139, 255)


def test_glyphs_above_the_standard_range_are_kept() -> None:
    assert Lesson.from_text("e4 $256 $999").places[1].nags == (256, 999)


def test_verdicts_written_as_text_are_marks_and_no_glyphs() -> None:
    """Real files have them (common practice); the standard does not."""
    lesson = Lesson.from_text("1. e4 = e5+= 2. Nf3 +/- Nc6 ∞ 3. Bb5 ± N a6-+ *")
    assert [place.marks for place in lesson.places[1:]] == [
        ("=",),
        ("+=",),
        ("+/-",),
        ("∞",),
        ("±", "N"),
        ("-+",),
    ]
    assert not any(place.nags for place in lesson.places)


@pytest.mark.parametrize("result", ["1-0", "0-1", "1/2-1/2", "*"])
def test_the_four_results(result: str) -> None:
    """Section 8.2.6."""
    lesson = Lesson.from_text(f"1. e4 {result}")
    assert lesson.games[0].result == result


def test_variations_nest_and_replace_the_move_before() -> None:
    """Section 8.2.5."""
    lesson = Lesson.from_text("1. e4 (1. d4 d5 (1... Nf6 2. c4)) 1... e5 *")
    assert [(p.label, p.parent.label if p.parent else None) for p in lesson.places] == [
        ("start", None),
        ("1. e4", "start"),
        ("1. d4", "start"),
        ("1... d5", "1. d4"),
        ("1... Nf6", "1. d4"),
        ("2. c4", "1... Nf6"),
        ("1... e5", "1. e4"),
    ]


def test_null_moves_are_kept() -> None:
    """Not in the standard; common practice."""
    lesson = Lesson.from_text("1. e4 -- 2. d4 Z0 3. Nf3 *")
    assert [place.uci for place in lesson.places[1:]] == ["e2e4", "0000", "d2d4", "0000", "g1f3"]
    assert lesson.places[2].board.turn == "white"
    assert lesson.places[5].label == "3. Nf3"
