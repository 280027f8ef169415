"""Other words for the same: how different teachers say what the kinds of tactics and structure claim, and what only sounds like it."""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome
from tests.claims.conftest import Judge, claims_of

LIVER = (
    "1. e4 e5 2. Nf3 Nc6 3. Bc4 Nf6 4. Ng5 d5 5. exd5 Nxd5 6. Nxf7 Kxf7 7. Qf3+ Ke6 8. Nc3 {%s} *"
)
BUDAPEST = "1. d4 Nf6 2. c4 e5 3. dxe5 Ng4 4. Bf4 Nc6 5. Nf3 Bb4+ 6. Nc3 Bxc3+ 7. bxc3 Qe7 {%s} *"
NAJDORF = "1. e4 c5 2. Nf3 d6 3. d4 cxd4 4. Nxd4 Nf6 5. Nc3 a6 6. Bg5 e6 {%s} *"
EXCHANGE = "1. e4 e5 2. Nf3 Nc6 3. Bb5 a6 4. Bxc6 dxc6 5. d4 exd4 6. Qxd4 Qxd4 7. Nxd4 {%s} *"
FORK = "1. e4 e5 2. Nf3 Nc6 3. Bc4 Nf6 4. Ng5 h6 5. Nxf7 {%s} *"
ARK = "1. e4 e5 2. Nf3 Nc6 3. Bb5 a6 4. Ba4 d6 5. d4 b5 6. Bb3 Nxd4 7. Nxd4 exd4 8. Qxd4 c5 9. Qd5 Be6 10. Qc6+ Bd7 11. Qd5 c4 {%s} *"
SPANISH = "1. e4 e5 2. Nf3 Nc6 3. Bb5 d6 {%s} *"
KNIGHTS = "1. e4 e5 2. Nf3 Nc6 3. Bc4 Nf6 4. Ng5 {%s} *"
SLAV = "1. d4 d5 2. c4 c6 3. Nf3 Nf6 4. Nc3 dxc4 5. a4 Bf5 {%s} *"
NIMZO = "1. d4 Nf6 2. c4 e6 3. Nc3 Bb4 4. e3 {%s} *"
INDIAN = "1. d4 Nf6 2. c4 g6 3. Nc3 Bg7 4. e4 d6 5. Nf3 O-O 6. Be2 e5 7. O-O Nc6 8. d5 Ne7 {%s} *"
DRAGON = "1. e4 c5 2. Nf3 d6 3. d4 cxd4 4. Nxd4 Nf6 5. Nc3 g6 6. Be3 Bg7 7. f3 O-O 8. Qd2 Nc6 9. Bc4 Bd7 10. O-O-O {%s} *"
SCANDINAVIAN = "1. e4 d5 2. exd5 Qxd5 3. Nc3 {%s} *"
SVESHNIKOV = "1. e4 c5 2. Nf3 Nc6 3. d4 cxd4 4. Nxd4 Nf6 5. Nc3 e5 6. Ndb5 d6 7. Bg5 a6 8. Na3 b5 9. Bxf6 gxf6 {%s} *"
BENKO = "1. d4 Nf6 2. c4 c5 3. d5 b5 4. cxb5 a6 5. bxa6 Bxa6 {%s} *"


@pytest.mark.parametrize(
    ("game", "words", "kind", "side"),
    [
        (FORK, "With a single move we've attacked the queen and the rook.", "fork", "white"),
        (NAJDORF, "That knight on f6 isn't going anywhere.", "pin", "white"),
        (LIVER, "Queen, bishop and knight are all trained on d5.", "attacked-count", "white"),
        (LIVER, "Now a third piece joins the attack on d5.", "attacked-count", "white"),
        (LIVER, "The only thing holding d5 is the king.", "defended-count", "black"),
        (LIVER, "Two black men look after d5.", "defended-count", "black"),
        (EXCHANGE, "e4 is without a guardian.", "unprotected", None),
        (ARK, "And the bishop's caught in the net.", "trapped", "white"),
        (ARK, "White's bishop has run out of squares.", "trapped", "white"),
        (KNIGHTS, "We're about to take on f7.", "threat", "white"),
        (KNIGHTS, "Black has to reckon with Nxf7.", "threat", "white"),
        (KNIGHTS, "What are we threatening? Knight takes f7.", "threat", "white"),
        (KNIGHTS, "And the threat? Nxf7.", "threat", "white"),
        (SLAV, "The pawn on a4 makes b5 impossible.", "prevents", "white"),
        (SLAV, "The point of a4 is to stop b5.", "prevents", "white"),
        (SLAV, "Black can't play b5 because of the pawn on a4.", "prevents", "white"),
        (NIMZO, "e3 makes way for the bishop on f1.", "idea", "white"),
        (INDIAN, "The knight goes to e7 so that we can push f5.", "idea", "white"),
        (SPANISH, "Black backs up e5 with the d-pawn.", "defends", "black"),
        (SCANDINAVIAN, "That's a free tempo for us.", "gains-tempo", "white"),
        (SCANDINAVIAN, "None of Black's minor pieces is developed.", "undeveloped", "black"),
        (SCANDINAVIAN, "Black lags behind with his development.", "development-lead", "white"),
        (LIVER, "Castling is out for Black.", "cannot-castle", "black"),
        (DRAGON, "White tucked his king away on c1.", "castled", "white"),
        (LIVER, "The king on e6 is a sitting target.", "king-exposed", "black"),
        (EXCHANGE, "On the kingside we outnumber him four to three.", "majority", "white"),
        (EXCHANGE, "Black has kept both his bishops.", "bishop-pair", "black"),
        (BUDAPEST, "We let him have the two bishops.", "bishop-pair", "white"),
        (SVESHNIKOV, "d5 makes a perfect home for a knight.", "outpost", "white"),
        (SVESHNIKOV, "Black's weak point is d5.", "weak-square", "black"),
        (SVESHNIKOV, "In return Black gets the g-file.", "half-open-file", "black"),
        (SVESHNIKOV, "Black has to put up with doubled f-pawns.", "doubled-pawns", "black"),
        (SVESHNIKOV, "Black got himself a backward d-pawn.", "backward-pawn", "black"),
        (BUDAPEST, "White's a-pawn is isolated.", "isolated-pawn", "white"),
        (BENKO, "White owns an outside passed pawn.", "passed-pawn", "white"),
        (BENKO, "White's a-pawn has no enemy pawn in its way.", "passed-pawn", "white"),
    ],
)
def test_it_is_read_and_whose_it_is(game: str, words: str, kind: str, side: str | None) -> None:
    taught = "black" if game in {BUDAPEST, NIMZO} else "white"
    found = [c for c in claims_of(game % words, taught) if c.kind == kind]
    assert [c.side for c in found] == [side]
    assert not found[0].negated


@pytest.mark.parametrize(
    ("game", "words"),
    [
        (FORK, "A fork would be nice, but there is none."),
        (NAJDORF, "Most beginners think the knight on f6 is pinned."),
        (NAJDORF, "White thinks he is winning because our knight is pinned."),
        (NAJDORF, "Let me pin down what I mean."),
        (LIVER, "Try to attack d5 three times."),
        (ARK, "You could say the bishop almost got trapped."),
        (KNIGHTS, "White would be threatening Nxf7 if the bishop stood on b3."),
        (KNIGHTS, "Black need not fear anything."),
        (SCANDINAVIAN, "Don't lose time with your queen."),
        (EXCHANGE, "There are hanging pawns in plenty of games."),
        (EXCHANGE, "Some people love the bishop pair more than their children."),
        (ARK, "The poor bishop!"),
        (NIMZO, "The pin stops White from playing e4."),
        (SVESHNIKOV, "No pawn can ever drive it away."),
        (EXCHANGE, "It's a skewer with the king in front, queen behind."),
    ],
)
def test_what_only_sounds_like_it_is_not_read(game: str, words: str) -> None:
    assert [(c.kind, c.words) for c in claims_of(game % words)] == []


def test_what_a_piece_is_denied_is_not_protection() -> None:
    words = "White's a-pawn has no enemy pawn in its way."
    assert "unprotected" not in {c.kind for c in claims_of(BENKO % words)}


@pytest.mark.parametrize(
    ("game", "words", "kind", "outcome"),
    [
        (FORK, "Black can't save both the queen and the rook.", "fork", Outcome.HOLDS),
        (FORK, "Black can't save both the queen and the bishop.", "fork", Outcome.FAILS),
        (SVESHNIKOV, "Black gets the g-file.", "half-open-file", Outcome.HOLDS),
        (SVESHNIKOV, "White gets the g-file.", "half-open-file", Outcome.FAILS),
        (DRAGON, "White castled queenside, Black kingside.", "castled", Outcome.HOLDS),
        (SLAV, "The pawn on a4 prevents b5.", "prevents", Outcome.HOLDS),
    ],
)
def test_it_is_judged(judge: Judge, game: str, words: str, kind: str, outcome: Outcome) -> None:
    claims = [c for c in claims_of(game % words) if c.kind == kind]
    assert claims
    if len(claims) == 1:
        assert judge(game % words, kind=kind).outcome is outcome
