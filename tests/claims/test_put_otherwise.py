"""What is put otherwise: asides within a sentence, moves in words with their order, what is left, taken along or all that one has, and its look-alikes."""

from __future__ import annotations

import pytest

from tests.claims.conftest import claims_of

PETROFF = "1. e4 e5 2. Nf3 Nf6 3. Nxe5 {%s} d6 4. Nf3 Nxe4 *"
SMOTHERED = "1. d4 d6 2. Qd2 e5 3. a4 e4 4. Qf4 f5 5. h3 Be7 6. Qh2 Be6 7. Ra3 c5 8. Rg3 Qa5+ 9. Nd2 Bh4 10. f3 Bb3 11. d5 e3 {%s} 12. c4 f4 *"
CHECKED = "1. d4 d5 2. c4 e6 3. Nc3 Nf6 4. Bg5 Nbd7 5. cxd5 exd5 6. Nxd5 Nxd5 7. Bxd8 Bb4+ {%s} 8. Qd2 Bxd2+ 9. Kxd2 Kxd8 *"
HUNTED = "1. e4 e5 2. Nf3 d6 3. Bc4 Bg4 4. Nc3 g6 5. Nxe5 Bxd1 6. Bxf7+ {%s} Ke7 7. Nd5# *"
EXCHANGED = "1. d4 d5 2. c4 c6 3. cxd5 cxd5 4. Nc3 Nf6 {%s} 5. Bf4 *"
CENTRE = "1. e4 e5 2. Nf3 d5 3. exd5 Qxd5 4. Nc3 {%s} Qe6 *"
SKEWER = "1. d4 d5 2. c4 e5 3. dxe5 d4 4. e3 Bb4+ 5. Bd2 dxe3 6. Bxb4 exf2+ 7. Ke2 fxg1=N+ 8. Rxg1 Bg4+ 9. Ke1 {%s} Bxd1 *"
DUTCH = "1. d4 f5 2. g3 Nf6 3. Bg2 e6 4. Nf3 d5 5. O-O Bd6 6. c4 c6 7. b3 Qe7 {%s} 8. Bb2 *"

Read = set[tuple[str, str | None, bool]]


def read(text: str, words: str, taught: str = "black") -> Read:
    return {(c.kind, c.side, c.negated) for c in claims_of(text % words, taught)}


@pytest.mark.parametrize(
    "words",
    [
        "First d6 and after that the capture on e4, never the other way about.",
        "First d6 and then the capture on e4, not the other way round.",
        "First d6, and only then the capture on e4.",
        "First d6, and only after that the knight's capture on e4.",
    ],
)
def test_the_order_of_moves_in_words(words: str) -> None:
    (claim,) = claims_of(PETROFF % words, "black")
    assert (claim.kind, claim.params["first"], claim.params["second"]) == ("move-order", "d7d6", "Nxe4")  # fmt: skip


@pytest.mark.parametrize(
    "words",
    ["First d6 and after that the capture on e4.", "First d6 and then the knight goes back.", "Castling first, and only then the capture on e4."],
)  # fmt: skip
def test_two_moves_are_no_order(words: str) -> None:
    assert read(PETROFF, words) == set()


@pytest.mark.parametrize(
    ("words", "found"),
    [
        ("White must avoid c4, for then f4 would leave him stalemated.", {("not-recommended", "white", False), ("stalemate", "white", False)}),
        ("White must avoid c4, for then f4 leaves White stalemated.", {("not-recommended", "white", False), ("stalemate", "white", False)}),
        ("Nothing leaves White stalemated.", set()),
    ],
)  # fmt: skip
def test_who_is_left_without_a_move(words: str, found: Read) -> None:
    assert read(SMOTHERED, words, "white") == found


@pytest.mark.parametrize(
    ("words", "found"),
    [
        ("The bishop forces White to interpose.", {("forced", "white", False)}),
        ("White is obliged to block.", {("forced", "white", False)}),
        ("Black is obliged to block.", set()),
        ("White is forced to interpose a knight.", set()),
        ("Only one move is legal, the interposition of the queen.", {("only-move", "white", False)}),
        ("It is mate, almost.", {("mate", None, True)}),
    ],
)  # fmt: skip
def test_what_a_check_obliges_to(words: str, found: Read) -> None:
    assert read(CHECKED, words) == found


@pytest.mark.parametrize(
    ("words", "found"),
    [
        ("One legal move, that's all he's been left with.", {("only-move", "black", False)}),
        ("A single legal reply is all that Black has.", {("only-move", "black", False)}),
        ("Two legal moves, that's all he has.", set()),
        ("A pawn is all he has.", set()),
    ],
)
def test_all_that_one_has(words: str, found: Read) -> None:
    assert read(HUNTED, words, "white") == found


@pytest.mark.parametrize(
    ("words", "kind", "negated"),
    [
        ("We, playing White, have more space.", "space", False),
        ("White has, hasn't he, more space.", "space", False),
        ("White takes more space with him into the ending.", "space", False),
    ],
)
def test_asides_within_a_sentence(words: str, kind: str, negated: bool) -> None:
    assert (kind, "white", negated) in read(EXCHANGED, words, "white")


def test_a_question_is_not_turned_into_a_statement() -> None:
    assert read(EXCHANGED, "Is it playable, is it, this move to f4?", "white") == set()


@pytest.mark.parametrize(
    ("words", "kind"),
    [
        ("Bishop f4: such is the idea.", "idea"),
        ("Bishop f4: that's the point, is it not.", "idea"),
        ("Bishop f4 - this is the whole idea.", "idea"),
    ],
)
def test_a_move_named_before_its_idea(words: str, kind: str) -> None:
    assert {k for k, _, _ in read(EXCHANGED, words, "white")} == {kind}


def test_what_is_not_the_idea() -> None:
    assert read(EXCHANGED, "Bishop f4: that is not the idea.", "white") == set()


def test_a_tempo_gained_before_the_reply() -> None:
    words = "Far from having gained a tempo, the queen on d5 is about to lose one."
    found = {(c.kind, c.negated, c.spot.moves[-1]) for c in claims_of(CENTRE % words, "white")}
    assert ("gains-tempo", True, "d8d5") in found


@pytest.mark.parametrize("words", ["This pattern is called a skewer.", "The queen is lost; that's a skewer."])  # fmt: skip
def test_a_skewer_named_after_the_king_has_stepped_aside(words: str) -> None:
    (claim,) = (c for c in claims_of(SKEWER % words, "black") if c.kind == "skewer")
    assert (claim.side, claim.params["by"]) == ("black", "g4")


def test_a_move_that_is_prevented_is_not_the_one_judged() -> None:
    words = "Our queen goes to e7 to stop Ba3, and it is the most accurate move."
    assert ("move-mark", "black", False) in read(DUTCH, words)
    other = claims_of(DUTCH % "Bd7 was possible too, and it is the most accurate move.", "black")
    assert not [c for c in other if c.params.get("move") == "d8e7"]


def test_the_latter_is_the_one_named_last() -> None:
    words = "King and queen stand on one diagonal, and the latter is lost."
    (claim,) = (c for c in claims_of(SKEWER % words, "black") if c.kind == "wins-material")
    assert claim.params["amount"] == "queen"
