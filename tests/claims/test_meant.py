"""Which piece the words mean: of a wing, of a colour, one in play, one that made a move some moves ago, and what light verbs say of it."""

from __future__ import annotations

import pytest

from lineproof.claims import Claim
from tests.claims.conftest import claims_of

FRENCH = "1. e4 e6 2. d4 d5 3. e5 c5 4. c3 Nc6 5. Nf3 Qb6 6. Bd3 cxd4 7. cxd4 Bd7 {%s} *"
NIMZO = "1. d4 Nf6 2. c4 e6 3. Nc3 Bb4 4. e3 {%s} *"
SLAV = "1. d4 d5 2. c4 c6 3. Nf3 Nf6 4. Nc3 dxc4 5. a4 Bf5 {%s} *"
FORK = "1. e4 e5 2. Nf3 Nc6 3. Bc4 Nf6 4. Ng5 h6 5. Nxf7 {%s} *"
SPANISH = "1. e4 e5 2. Nf3 Nc6 3. Bb5 d6 {%s} *"


def only(kind: str, movetext: str, taught: str = "white") -> Claim:
    (claim,) = [c for c in claims_of(movetext, taught) if c.kind == kind]
    return claim


@pytest.mark.parametrize(
    ("words", "kind", "at"),
    [
        ("Black's king's bishop is locked in behind its pawns.", "shut-in", "f8"),
        ("Black's queen's bishop has already been developed.", "undeveloped", ["d7"]),
        ("White's queen's knight has not moved.", "undeveloped", ["b1"]),
        ("White's king's knight is developed.", "undeveloped", ["f3"]),
    ],
)
def test_a_piece_of_a_wing_is_the_one_that_began_there(words: str, kind: str, at: object) -> None:
    assert only(kind, FRENCH % words).params["at"] == at


def test_of_several_the_one_in_play_is_meant() -> None:
    assert only("prevents", NIMZO % "Our bishop prevents e4.", "black").params["by"] == "b4"


def test_where_two_are_in_play_it_is_not_clear() -> None:
    words = "Black's knight hits the pawn."
    both = "1. e4 e5 2. Nf3 Nc6 3. Nc3 Nf6 4. d4 {%s} *"
    assert not claims_of(both % words)


@pytest.mark.parametrize(
    "words", ["a4 prevents b5.", "a4 stops Black from playing b5.", "The pawn on a4 rules out b5."]
)
def test_a_move_made_some_moves_ago_means_the_piece_that_stands_there(words: str) -> None:
    claim = only("prevents", SLAV % words)
    assert (claim.side, claim.params["by"]) == ("white", "a4")


def test_a_move_whose_piece_has_left_means_nothing() -> None:
    assert not claims_of("1. e4 e5 2. f4 Nc6 3. fxe5 Nxe5 {f4 prevents Ng6.} *")


@pytest.mark.parametrize(
    "words",
    [
        "The knight has both the queen and the rook in its sights.",
        "Our knight has his queen and his rook under fire at once.",
        "We've got his queen and his rook forked.",
        "Black can't save both the queen and the rook.",
    ],
)
def test_a_fork_said_with_a_light_verb(words: str) -> None:
    assert only("fork", FORK % words).params["forker"] == "f7"


def test_the_side_that_is_to_move_next_does_not_save_both_of_the_others() -> None:
    assert not [c for c in claims_of(FORK % "White can't save both knight and bishop.") if c.kind == "fork"]  # fmt: skip


@pytest.mark.parametrize(
    ("words", "side"),
    [
        ("The knight on c6 isn't going anywhere, the king is behind it.", "white"),
        ("The knight on c6 is going nowhere.", "white"),
    ],
)
def test_a_pinned_piece_goes_nowhere(words: str, side: str) -> None:
    assert only("pin", SPANISH % words).side == side


def test_a_piece_that_is_not_pinned_and_goes_nowhere_is_no_pin() -> None:
    assert not [
        c for c in claims_of(SPANISH % "The knight on f3 is going nowhere.") if c.kind == "pin"
    ]


@pytest.mark.parametrize(
    "words",
    [
        "Bxc6 deprives e5 of its protector.",
        "With Bxc6+ White eliminates the only defender of e5.",
        "Bishop takes c6 gets rid of the piece that protects e5.",
        "Taking on c6 removes the guard of e5.",
    ],
)
def test_the_guard_that_a_move_to_come_removes(words: str) -> None:
    claim = only("removal-of-guard", SPANISH % words)
    assert (claim.side, claim.params["guarded"]) == ("white", "e5")
