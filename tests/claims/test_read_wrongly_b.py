"""What was once read of sentences that do not say it, each beside a look-alike that does."""

from __future__ import annotations

import pytest

from tests.claims.conftest import claims_of

GIUOCO = "1. e4 e5 2. Nf3 Nc6 3. Bc4 Bc5 4. c3 Nf6 {%s} 5. d3 *"
SLAV = "1. d4 d5 2. c4 c6 3. Nf3 Nf6 {%s} 4. Nc3 *"
DRAGON = "1. e4 c5 2. Nf3 d6 3. d4 cxd4 4. Nxd4 Nf6 5. Nc3 g6 6. Be3 Bg7 7. f3 {%s} 7... O-O *"
SCHOLAR = "1. e4 e5 2. Bc4 Nc6 3. Qh5 Nf6 4. Qxf7# {%s} *"


def read(text: str, words: str, taught: str = "white") -> set[tuple[str, bool]]:
    return {(c.kind, c.negated) for c in claims_of(text % words, taught)}


@pytest.mark.parametrize(
    "words",
    [
        "We can play d4 here, ah, forget I said that, wrong lesson.",
        "We can play d4 here, please ignore what I just said.",
    ],
)
def test_what_is_to_be_forgotten_is_not_read(words: str) -> None:
    assert read(GIUOCO, words) == set()


def test_what_is_said_instead_of_it_is_read() -> None:
    assert read(GIUOCO, "We can play h4 here, forget I said that, d4 is playable.") == {
        ("playable", False)
    }
    (claim,) = claims_of(GIUOCO % "We can play h4, forget I said that, d4 is playable.")
    assert claim.params["move"] == "d2d4"
    assert ("playable", False) in read(GIUOCO, "Do not forget that we can play d4 here.")


def test_who_has_not_played_a_move_does_not_advise_against_it() -> None:
    assert read(GIUOCO, "I haven't played Ng5 since that evening.") == set()
    assert read(GIUOCO, "I didn't play Ng5 for years.") == set()
    assert read(GIUOCO, "I wouldn't play Ng5.") == {("not-recommended", False)}


def test_what_happens_wherever_a_piece_goes_is_a_condition() -> None:
    assert read(SCHOLAR, "Wherever the king goes, it's mate.") == set()
    assert read(SCHOLAR, "The king has nowhere to go, and it's mate.") >= {("mate", False)}


def test_a_square_where_something_stands_is_no_move() -> None:
    assert read(SLAV, "Don't worry about d4, all is well there.") == set()
    assert read(SLAV, "Don't worry about d5, all is well there.") == set()
    assert ("nothing-to-fear", False) in read(DRAGON, "Don't worry about d5.")


def test_the_bad_one_of_two_bishops_is_no_bad_move() -> None:
    words = "The bishop on g7 looks at e5, so it's the bad one."
    assert "move-mark" not in {kind for kind, _ in read(DRAGON, words, "black")}
    assert ("bad-bishop", False) in read(DRAGON, words, "black")
    assert read(DRAGON, "It was a bad move.", "black") == {("move-mark", False)}


FRENCH = "1. e4 e6 2. d4 d5 3. Nc3 Bb4 4. e5 c5 5. a3 Bxc3+ 6. bxc3 {%s} 6... Ne7 *"
CENTRE = "1. e4 d5 2. exd5 Qxd5 3. Nc3 {%s} 3... Qa5 *"
BLOCKED = "1. e4 e6 2. d4 d5 3. e5 c5 4. c3 Nc6 5. Nf3 Qb6 6. Bd3 {%s} 6... cxd4 *"


def test_what_holds_only_once_something_else_happens_is_not_read() -> None:
    assert read(BLOCKED, "We guard d4 with the queen, once the bishop steps aside.") == set()
    assert read(BLOCKED, "We guard d4 with the knight, and the bishop steps aside.") == {
        ("defends", False)
    }


@pytest.mark.parametrize("to", ["to peck at", "to aim at", "to play against", "to attack"])
def test_pawns_to_aim_at_are_not_ones_own(to: str) -> None:
    assert read(FRENCH, f"For the bishop we have doubled pawns {to}.", "black") == set()


def test_pawns_that_one_has_to_guard_are_ones_own() -> None:
    words = "We have doubled pawns to look after."
    assert ("doubled-pawns", False) in read(FRENCH, words, "white")
    (claim,) = claims_of(FRENCH % "We have doubled pawns.", "white")
    assert (claim.kind, claim.side) == ("doubled-pawns", "white")


def test_the_one_move_to_avoid_is_advised_against() -> None:
    (claim,) = claims_of(CENTRE % "Qe6 is the one move to avoid.", "black")
    assert (claim.kind, claim.params["move"]) == ("not-recommended", "d5e6")
    assert read(CENTRE, "Qe6 is the only square we should avoid.", "black") == set()
    assert ("only-move", False) in read(CENTRE, "Qe6 is the only move to save the queen.", "black")
    assert read(CENTRE, "Qa5 is there to avoid the attack.", "black") == set()


TAKEN = "1. e4 e6 2. d4 d5 3. e5 c5 4. c3 Nc6 5. Nf3 Qb6 6. Bd3 cxd4 7. cxd4 {%s} 7... Nxd4 *"
SHORT = "1. e4 e5 2. Nf3 Nc6 3. Bc4 Bc5 4. c3 Nf6 5. d3 d6 {%s} 6. Nbd2 *"


def test_what_is_taken_now_is_still_to_be_taken() -> None:
    (claim,) = claims_of(TAKEN % "Capturing on d4 now is a mistake.", "white")
    assert (claim.side, claim.params["move"]) == ("black", "c6d4")
    for words in ("Capturing on d4 was a mistake.", "This capture on d4 is a mistake now."):
        (claim,) = claims_of(TAKEN % words, "white")
        assert (claim.side, claim.params["move"]) == ("white", "c3d4")


def test_it_is_the_move_that_the_clause_before_judges() -> None:
    words = "Short castling is playable, although I don't recommend it to novices."
    found = {c.kind: c.params["move"] for c in claims_of(SHORT % words)}
    assert found == {"playable": "e1g1", "not-recommended": "e1g1"}
    (claim,) = claims_of(SHORT % "I don't recommend it to novices.")
    assert claim.params["move"] == "d7d6"
    (claim,) = claims_of(SHORT % "If you don't fancy the sharp stuff, castling is playable.")
    assert (claim.kind, claim.params["move"]) == ("playable", "e1g1")
    assert read(SHORT, "If his bishop is on g4, castling is playable.") == set()


DISCOVERED = "1. e4 c6 2. d4 d5 3. Nc3 dxe4 4. Nxe4 Nf6 5. Qd3 e5 6. dxe5 Qa5+ 7. Bd2 Qxe5 8. O-O-O Nxe4 9. Qd8+ Kxd8 %s *"


def test_a_king_that_must_move_does_so_out_of_a_check() -> None:
    coming = DISCOVERED % "{%s} 10. Bg5+"
    assert read(coming, "A double check follows, and the king must move.", "black") == set()
    given = DISCOVERED % "10. Bg5+ {%s}"
    words = "A double check, so the king must move."
    assert ("forced", False) in read(given, words, "black")


@pytest.mark.parametrize("what", ["mate", "losing the queen", "being mated"])
def test_the_one_move_to_avoid_something_else_is_an_only_move(what: str) -> None:
    words = f"Qa5 is the only move to avoid {what}."
    assert read(CENTRE, words, "black") == {("only-move", False)}


def test_the_bishops_to_attack_with_are_ones_own() -> None:
    words = "We have the bishop pair to attack with."
    assert read(FRENCH, words) == {("bishop-pair", False)}


SCOTCH = "1. e4 e5 2. Nf3 Nc6 3. d4 exd4 4. Bc4 Nf6 5. e5 {%s} *"


@pytest.mark.parametrize(
    "words",
    [
        "Black must move the knight or lose a piece.",
        "Move the knight, or lose it.",
        "He has to do something or drop a pawn.",
    ],
)
def test_what_befalls_a_side_that_does_not_obey_is_a_condition(words: str) -> None:
    assert "wins-material" not in {kind for kind, _ in read(SCOTCH, words)}
    assert ("wins-material", False) in read(SCOTCH, "Black loses a piece.")
