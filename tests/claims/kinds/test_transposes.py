"""Transpositions. Source: FIDE Laws of Chess, article 9.2.3."""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome
from tests.claims.conftest import Judge, claims_of

TWO_ROADS = "1. e4 e5 2. Nc3 Nf6 (2... Nc6 3. f4 Nf6 {%s}) 3. f4 Nc6 4. Nf3 *"


@pytest.mark.parametrize(
    "words",
    [
        "This transposes to the main line.",
        "This transposes to 1. e4 e5 2. Nc3 Nf6 3. f4 Nc6.",
        "We have transposed to the line with 3... Nc6.",
        "This is the same position as after 3... Nc6.",
        "And we are back in the main line.",
    ],
)
def test_the_same_position_by_another_road_holds(judge: Judge, words: str) -> None:
    assert judge(TWO_ROADS % words).outcome is Outcome.HOLDS


@pytest.mark.parametrize(
    "words",
    [
        "This transposes to 1. e4 e5 2. Nc3 Nf6 3. f4 d5.",
        "This transposes to the line with 4... d5.",
    ],
)
def test_another_position_fails(judge: Judge, words: str) -> None:
    assert judge(TWO_ROADS % words, kind="transposes").outcome is Outcome.FAILS


def test_near_miss_castling_rights_tell_positions_apart(judge: Judge) -> None:
    text = "1. Nf3 Nf6 2. Ng1 Ng8 (2... Rg8 3. Nf3 Rh8 4. Ng1 Ng8 {This transposes to the main line.}) 3. Nf3 Nf6 4. Ng1 Ng8 *"
    assert judge(text).outcome is Outcome.FAILS


def test_a_legal_en_passant_capture_tells_positions_apart(judge: Judge) -> None:
    # after 3... d5 the pawn on e5 may take in passing; after 3... d6 4. Ng1 d5 it stands there likewise, but one move later
    text = "1. e4 Nc6 2. e5 a6 3. Nf3 d5 (3... d6 4. Ng1 d5 5. Nf3 Nb8 6. Ng1 Nc6 7. Nf3 {This is the same position as in the main line.} Nb8) 4. Ng1 *"
    finding = judge(text, kind="transposes")
    assert finding.outcome is Outcome.FAILS


def test_an_en_passant_square_without_a_capture_does_not(judge: Judge) -> None:
    moves = "1. e4 e5 2. Nf3 Nc6 (2... d6 3. d4 Nc6 {This transposes to the main line.}) 3. d4 d6 *"
    assert judge(moves).outcome is Outcome.HOLDS


def test_the_same_position_is_the_same_now_not_later(judge: Judge) -> None:
    text = "1. e4 e5 2. Nc3 Nf6 (2... Nc6 {%s} 3. f4 Nf6) 3. f4 Nc6 *"
    assert judge(text % "This is the same position as in the main line.").outcome is Outcome.FAILS
    assert judge(text % "This transposes to the main line.").outcome is Outcome.HOLDS


def test_moves_from_the_branch_name_a_position_too(judge: Judge) -> None:
    text = "1. e4 e5 2. Nf3 Nc6 3. Bc4 Bc5 4. c3 Nf6 5. d3 d6 {This is the same position as after %s.} *"
    assert judge(text % "3... Nf6 4. d3 Bc5 5. c3 d6").outcome is Outcome.HOLDS
    assert judge(text % "3... Nf6 4. d3 Bc5 5. c3 O-O").outcome is Outcome.FAILS


SCOTCH = "1. e4 Nc6 2. d4 e5 3. Nf3 {%s} exd4 *"


@pytest.mark.parametrize(
    ("words", "outcome"),
    [
        ("By another road this transposes to the Scotch.", Outcome.HOLDS),
        ("We have landed, move for move, in a Scotch Game.", Outcome.HOLDS),
        ("It is a Scotch Game by transposition.", Outcome.HOLDS),
        ("We have gone over into the Italian.", Outcome.FAILS),
        ("We have transposed to the Ruy Lopez.", Outcome.FAILS),
        ("It does not transpose to the Scotch Game.", Outcome.FAILS),
        ("It does not transpose to the Four Knights.", Outcome.HOLDS),
    ],
)
def test_an_opening_is_reached_when_all_its_moves_have_been_made(
    judge: Judge, words: str, outcome: Outcome
) -> None:
    finding = judge(SCOTCH % words)
    assert finding.claim.kind == "transposes"
    assert finding.outcome is outcome


def test_near_miss_one_move_of_an_opening_is_missing(judge: Judge) -> None:
    assert (
        judge("1. e4 Nc6 2. d4 e5 {We have transposed to the Scotch.} 3. d5 *").outcome
        is Outcome.FAILS
    )


def test_a_transposition_may_be_completed_by_the_next_moves_shown(judge: Judge) -> None:
    text = "1. e4 Nc6 2. d4 e5 {This transposes to the Scotch.} 3. Nf3 *"
    assert judge(text).outcome is Outcome.HOLDS


def test_a_move_named_first_is_played(judge: Judge) -> None:
    text = "1. d4 d5 2. Nf3 Nf6 {With c4 White would transpose into a Queen's Gambit.} 3. c4 *"
    assert judge(text).outcome is Outcome.HOLDS


def test_pieces_are_no_openings() -> None:
    claims = claims_of("1. e4 e5 2. Nf3 Nc6 {This leads to the two knights.} *")
    assert [c for c in claims if c.kind == "transposes"] == []


def test_an_opening_stands_on_the_board_though_other_moves_led_there(judge: Judge) -> None:
    text = "1. e4 e5 2. Nf3 Nf6 3. Nxe5 d6 4. Nf3 Nxe4 5. d3 Nf6 6. d4 d5 {It has gone over into the %s.} 7. Bd3 *"
    assert judge(text % "Exchange French").outcome is Outcome.HOLDS
    assert judge(text % "Advance French").outcome is Outcome.FAILS
