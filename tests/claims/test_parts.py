"""Parts of a sentence that lean on another: what is left out is taken from there."""

from __future__ import annotations

import pytest

from lineproof.claims import Claim
from tests.claims.conftest import claims_of

KNIGHTS = "1. e4 e5 2. Nf3 Nc6 3. Bc4 Nf6 4. Ng5 {%s} d5 *"
PIN = "1. e4 e5 2. Nf3 Nc6 3. Nc3 Nf6 4. Bb5 Bb4 5. O-O O-O 6. d3 d6 {%s} 7. Bg5 *"
NO_PIN = "1. d4 d5 2. c4 e6 3. Nc3 Nf6 4. Bg5 Be7 {%s} 5. e3 *"
ARK = "1. e4 e5 2. Nf3 Nc6 3. Bb5 a6 4. Ba4 d6 5. d4 b5 6. Bb3 Nxd4 7. Nxd4 exd4 8. Qxd4 c5 9. Qd5 Be6 10. Qc6+ Bd7 11. Qd5 c4 {%s} 12. Bxc4 *"
GUARD = "1. e4 e5 2. Nf3 Nc6 3. Bb5 a6 4. Bxc6 {%s} dxc6 *"
LOOSE = "1. e4 e5 2. Nf3 h6 {%s} 3. Nxe5 *"


def only(kind: str, movetext: str, taught: str = "white") -> Claim:
    (claim,) = [c for c in claims_of(movetext, taught) if c.kind == kind]
    return claim


@pytest.mark.parametrize(
    "words",
    [
        "White threatens Nxf7, forking queen and rook.",
        "White threatens Nxf7 with a fork of queen and rook.",
        "The threat is Nxf7, which would fork queen and rook.",
        "White intends Nxf7, and then queen and rook are forked.",
    ],
)
def test_what_leans_on_an_announced_move_speaks_of_the_position_after_it(words: str) -> None:
    fork = only("fork", KNIGHTS % words)
    assert fork.params["forker"] == "f7"
    assert fork.spot.boards[-2].san(fork.spot.moves[-1]) == "Nxf7"


def test_a_fork_beside_an_announced_move_that_is_not_clear_is_not_read() -> None:
    # both the knight and the bishop can take on f7
    words = "White threatens to take on f7, forking queen and rook."
    assert [c.kind for c in claims_of(KNIGHTS % words)] == ["threat"]


def test_two_counts_speak_of_one_square() -> None:
    words = "Two white pieces hit f7, and only the king defends it."
    assert only("attacked-count", KNIGHTS % words).params["at"] == "f7"
    assert only("defended-count", KNIGHTS % words).params["by"] == ["e8"]


@pytest.mark.parametrize(
    "words", ["Who defends the pawn on e5? Nobody.", "Is the pawn on e5 protected? No, it isn't."]
)
def test_a_question_with_its_answer_is_a_statement(words: str) -> None:
    claim = only("unprotected", LOOSE % words)
    assert (claim.params["at"], claim.negated) == ("e5", False)


def test_a_yes_says_the_opposite_of_a_no() -> None:
    assert only("unprotected", LOOSE % "Is the pawn on e5 protected? Yes.").negated


@pytest.mark.parametrize(
    "words",
    ["Is the pawn on e5 protected? Look again.", "Who defends the pawn on e5? Good question."],
)
def test_a_question_without_an_answer_is_none(words: str) -> None:
    assert "unprotected" not in [c.kind for c in claims_of(LOOSE % words)]


def test_what_is_counted_before_a_capture_that_is_possible_stands_there_now() -> None:
    claim = only("unprotected", LOOSE % "We can take on e5, since it isn't protected.")
    assert claim.spot.board.piece_at("e5") == "p"


@pytest.mark.parametrize(
    "words",
    [
        "It looks like a pin on the knight on f6, but it is none.",
        "What looks like a pin of the knight on f6 is none.",
    ],
)
def test_what_only_looks_like_a_pin_is_denied(words: str) -> None:
    assert only("pin", NO_PIN % words).negated


def test_a_participle_may_stand_first() -> None:
    words = "Pinned by the bishop on b4 is the knight on c3, whereas its counterpart on c6 is not pinned."
    one, two = [c for c in claims_of(PIN % words) if c.kind == "pin"]
    assert (one.params["candidates"], one.negated) == (["c3"], False)
    assert (two.params["candidates"], two.negated) == (["c6"], True)


@pytest.mark.parametrize(
    "words", ["Bishop on b3, nowhere to run.", "Our bishop on b3 has nowhere to hide."]
)
def test_a_piece_without_a_verb_has_what_follows_it(words: str) -> None:
    claim = only("trapped", ARK % words)
    assert (claim.params["at"], claim.params["squares_only"]) == ("b3", True)


@pytest.mark.parametrize(
    "words",
    [
        "The bishop takes the knight, the guard of e5.",
        "The bishop takes the knight, e5's protector.",
        "White eliminates the knight that guards e5.",
    ],
)
def test_what_is_taken_has_the_role_that_is_said_of_it(words: str) -> None:
    assert only("removal-of-guard", GUARD % words).params["guarded"] == "e5"


def test_not_this_but_that_says_two_things() -> None:
    words = "It is not the pawn on e4 but the pawn on e5 that stands unprotected."
    found = [c for c in claims_of(LOOSE % words) if c.kind == "unprotected"]
    assert [(c.params["at"], c.negated) for c in found] == [("e5", False), ("e4", True)]


def test_to_have_a_piece_pinned_is_to_pin_it() -> None:
    assert only("pin", PIN % "Black has the knight on c3 pinned.", "black").side == "black"
