"""The text alternative says everything that the picture shows, always in the same order."""

from __future__ import annotations

from itertools import permutations

import pytest

from lineproof.diagram import (
    DiagramError,
    JustPlayed,
    Mark,
    MarkedSquare,
    Pin,
    ShownMove,
    alternative,
)

VIENNA_GAMBIT = "rnbqkb1r/pppp1ppp/5n2/4p3/4PP2/2N5/PPPP2PP/R1BQKBNR b KQkq f3 0 3"
PINNED_KNIGHT = "4k3/8/2n5/1B6/8/8/8/4K3 b - - 0 1"


def test_the_vienna_gambit_is_read_out() -> None:
    assert alternative(VIENNA_GAMBIT) == (
        "Black to move. "
        "White: king e1, queen d1, rooks a1 and h1, bishops c1 and f1, knights c3 and g1, "
        "pawns a2, b2, c2, d2, e4, f4, g2 and h2. "
        "Black: king e8, queen d8, rooks a8 and h8, bishops c8 and f8, knights b8 and f6, "
        "pawns a7, b7, c7, d7, e5, f7, g7 and h7."
    )


def test_every_kind_of_mark_is_read_out() -> None:
    marks: list[Mark] = [
        Pin("b5", "e8", "white"),
        ShownMove("e8", "d7", "black"),
        MarkedSquare("c6", "white"),
        MarkedSquare("d4", "black"),
        JustPlayed("f1", "b5"),
    ]
    assert alternative(PINNED_KNIGHT, marks) == (
        "Black to move. White: king e1, bishop b5. Black: king e8, knight c6. "
        "Just played: bishop f1 to b5. "
        "Marked for White: the knight on c6. "
        "Pinned for White: the knight on c6, on the line from the bishop on b5 to the king on e8. "
        "Marked for Black: the empty square d4. "
        "Shown for Black: king e8 to d7."
    )


def test_a_bare_placement_has_no_side_to_move_and_may_lack_an_army() -> None:
    marks: list[Mark] = [ShownMove("a1", "a8", "white"), Pin("a1", "h8", "white")]
    assert alternative("8/8/8/8/8/8/1PP5/8", marks) == (
        "White: pawns b2 and c2. Black: no pieces. "
        "Shown for White: a1 to a8. "
        "Pinned for White: the pawn on b2, on the line from the empty square a1 "
        "to the empty square h8."
    )


def test_a_pin_with_nothing_or_too_much_in_between_names_only_the_line() -> None:
    pin = Pin("a1", "h8", "black")
    line = "Pinned for Black: the line from the empty square a1 to the empty square h8."
    assert alternative("8/8/8/8/8/8/8/8", [pin]).endswith(line)
    assert alternative("8/8/8/8/8/2P5/1P6/8", [pin]).endswith(line)


def test_the_order_of_the_marks_does_not_change_the_words() -> None:
    marks: list[Mark] = [
        MarkedSquare("f7", "white"),
        MarkedSquare("c2", "white"),
        ShownMove("g1", "f3", "white"),
        ShownMove("f6", "e4", "black"),
    ]
    assert len({alternative(VIENNA_GAMBIT, order) for order in permutations(marks)}) == 1


@pytest.mark.parametrize(
    ("fen", "said"),
    [
        ("", "the FEN is empty"),
        ("8/8/8/8/8/8/8", "has 7 ranks, not 8"),
        ("8/8/8/8/8/8/8/8/8", "has 9 ranks, not 8"),
        ("9/8/8/8/8/8/8/8", "rank 8 has '9'"),
        ("8/8/8/8/8/8/8/7", "rank 1 is '7': it has 7 squares, not 8"),
        ("8/ppppppppp/8/8/8/8/8/8", "rank 7 is 'ppppppppp': it has 9 squares, not 8"),
        ("8/8/8/8/4X3/8/8/8", "rank 4 has 'X'"),
        ("8/8/8/8/44/8/8/8", "rank 4 is '44': add up the digits"),
        ("8/8/8/8/8/8/8/8 white", "the side to move is 'white': write w or b"),
        ("8/8/8/8/\u0664\u0664/8/8/8", "rank 4 has"),
    ],
)
def test_a_wrong_fen_is_refused_with_the_place(fen: str, said: str) -> None:
    with pytest.raises(DiagramError) as refused:
        alternative(fen)
    assert said in str(refused.value)
