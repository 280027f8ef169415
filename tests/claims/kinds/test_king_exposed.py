"""Exposed kings: pawns on the six squares in front are counted. Definition: common practice."""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome
from tests.claims.conftest import Judge
from tests.claims.kinds.sketching import kinds_of

GAMBIT = "1. e4 e5 2. Nc3 Nf6 3. f4 exf4 4. e5 Qe7 5. Qe2 Ng8 6. g4 {%s} *"
CASTLED = "1. e4 e5 2. Nf3 Nc6 3. Bc4 Bc5 4. O-O {%s} *"


@pytest.mark.parametrize(
    "words",
    [
        "White's king is exposed.",
        "Our king is a little airy.",
        "The king on e1 has no shelter.",
        "White has an exposed king.",
        "White's king looks unsafe.",
        "Our king isn't safe.",
    ],
)
def test_one_pawn_in_front_is_too_few(judge: Judge, words: str) -> None:
    finding = judge(GAMBIT % words)
    assert finding.claim.kind == "king-exposed"
    assert finding.judgement.numbers["pawns in front"] == 1
    assert finding.outcome is Outcome.HOLDS


def test_three_pawns_keep_it_safe(judge: Judge) -> None:
    assert judge(CASTLED % "White's king is exposed.").outcome is Outcome.FAILS
    assert judge(CASTLED % "White's king is perfectly safe.").outcome is Outcome.HOLDS
    assert judge(CASTLED % "White's king is not exposed.").outcome is Outcome.HOLDS
    assert judge(GAMBIT % "White's king is safe.").outcome is Outcome.FAILS


def test_near_miss_two_pawns_leave_it_open(judge: Judge) -> None:
    finding = judge(CASTLED % "Black's king is exposed.")
    assert finding.judgement.numbers["pawns in front"] == 2  # d7 and f7
    assert finding.outcome is Outcome.UNSETTLED


@pytest.mark.parametrize(("black", "expected"), [("q", Outcome.HOLDS), ("r", Outcome.FAILS)])
def test_without_enemy_pieces_a_bare_king_is_in_no_danger(
    judge: Judge, black: str, expected: Outcome
) -> None:
    setup = f"4k2{black}/pppp4/8/8/8/8/8/4K3 w - - 0 1"
    assert judge("1. Kd2 {White's king is exposed.} *", setup=setup).outcome is expected


def test_pawns_alone_do_not_make_it_safe_where_pieces_gather(judge: Judge) -> None:
    setup = "6k1/8/8/8/6n1/3b4/5PPP/6K1 w - - 0 1"
    gathered = setup.replace("3b4", "3bq3")
    assert judge("1. f3 Kh8 {White's king is safe.} *", setup=setup).outcome is Outcome.HOLDS
    text = "1. h3 Kh8 {White's king is safe.} *"
    assert judge(text, setup=gathered).outcome is Outcome.UNSETTLED


@pytest.mark.parametrize(
    "words",
    [
        "The knight is exposed.",
        "The king is in check.",
        "The king is safe.",
        "A king is safe at home.",
    ],
)
def test_other_kings_are_not_read(words: str) -> None:
    assert "king-exposed" not in kinds_of(GAMBIT % words)
