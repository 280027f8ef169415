"""Structure, development, castling and tempi in the words of different teachers: chatty, formal, terse."""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome
from tests.claims.conftest import Judge

HOLDS, FAILS = Outcome.HOLDS, Outcome.FAILS
EXCHANGE = "1. e4 e5 2. Nf3 Nc6 3. Bb5 a6 4. Bxc6 dxc6 {%s} *"
TARRASCH = "1. d4 d5 2. c4 e6 3. Nc3 c5 4. cxd5 exd5 5. Nf3 Nc6 6. g3 Nf6 7. Bg2 Be7 8. O-O O-O 9. dxc5 Bxc5 {%s} *"
ADVANCE = "1. e4 e6 2. d4 d5 3. e5 c5 4. c3 Nc6 5. Nf3 Qb6 {%s} *"
NAJDORF = "1. e4 c5 2. Nf3 d6 3. d4 cxd4 4. Nxd4 Nf6 5. Nc3 a6 6. Be2 e5 7. Nb3 {%s} *"
LIVER = (
    "1. e4 e5 2. Nf3 Nc6 3. Bc4 Nf6 4. Ng5 d5 5. exd5 Nxd5 6. Nxf7 Kxf7 7. Qf3+ Ke6 8. Nc3 {%s} *"
)
QUEEN_OUT = "1. e4 d5 2. exd5 Qxd5 3. Nc3 {%s} *"
DRAGON = "1. e4 c5 2. Nf3 d6 3. d4 cxd4 4. Nxd4 Nf6 5. Nc3 g6 {%s} *"


@pytest.mark.parametrize(
    ("text", "words", "kind", "outcome"),
    [
        (EXCHANGE, "The bishop pair is his.", "bishop-pair", HOLDS),
        (EXCHANGE, "Black is the proud owner of the two bishops.", "bishop-pair", HOLDS),
        (EXCHANGE, "He can console himself with the bishop pair.", "bishop-pair", HOLDS),
        (EXCHANGE, "There's no denying that White has the two bishops.", "bishop-pair", FAILS),
        (EXCHANGE, "His queenside pawns are doubled.", "doubled-pawns", HOLDS),
        (EXCHANGE, "His kingside pawns are doubled.", "doubled-pawns", FAILS),
        (EXCHANGE, "The price is doubled pawns on the c-file.", "doubled-pawns", HOLDS),
        (EXCHANGE, "We've got ourselves a healthy majority on the kingside.", "majority", FAILS),
        (EXCHANGE, "Black's queenside majority is crippled.", "majority", HOLDS),
        (EXCHANGE, "Black has a half-open d-file for his queen.", "half-open-file", HOLDS),
        (EXCHANGE, "White's queen's knight is still on b1.", "undeveloped", HOLDS),
        (EXCHANGE, "White still has to develop the bishop on c1.", "undeveloped", HOLDS),
        (EXCHANGE, "None of White's pieces has moved.", "undeveloped", FAILS),
        (EXCHANGE, "Black lags two tempi behind.", "development-lead", FAILS),
        (EXCHANGE, "Nothing stops White from castling.", "cannot-castle", HOLDS),
        (EXCHANGE, "White can forget about castling.", "cannot-castle", FAILS),
        (TARRASCH, "What Black has is an isolated queen's pawn.", "isolated-pawn", HOLDS),
        (TARRASCH, "That pawn on g7 is an orphan.", "isolated-pawn", FAILS),
        (TARRASCH, "White has yet to bring out the queen's bishop.", "undeveloped", HOLDS),
        (TARRASCH, "The e-file is half open for White.", "half-open-file", FAILS),
        (ADVANCE, "There's more room for White.", "space", HOLDS),
        (ADVANCE, "Black has the greater share of the board.", "space", FAILS),
        (ADVANCE, "That c8 bishop is a dud.", "bad-bishop", HOLDS),
        (ADVANCE, "That f8 bishop is a dud.", "bad-bishop", FAILS),
        (ADVANCE, "White's f1 bishop is the healthy one.", "good-bishop", HOLDS),
        (NAJDORF, "The price of e5 is the hole on d5.", "weak-square", HOLDS),
        (NAJDORF, "Black can no longer cover d5 with a pawn.", "weak-square", HOLDS),
        (NAJDORF, "No pawn can ever defend e6 again.", "weak-square", FAILS),
        (NAJDORF, "We've got ourselves an outpost on d5.", "outpost", HOLDS),
        (NAJDORF, "e6 belongs to White.", "outpost", FAILS),
        (NAJDORF, "The d-pawn has been left behind.", "backward-pawn", HOLDS),
        (LIVER, "The black king has been dragged into the open.", "king-exposed", HOLDS),
        (LIVER, "The king on e6 has nowhere to hide.", "king-exposed", HOLDS),
        (LIVER, "No more castling for Black.", "cannot-castle", HOLDS),
        (LIVER, "No more castling for White.", "cannot-castle", FAILS),
        (QUEEN_OUT, "White's gained a tempo at the expense of the queen.", "gains-tempo", HOLDS),
        (QUEEN_OUT, "This makes the queen run.", "gains-tempo", HOLDS),
        (QUEEN_OUT, "White's gained a tempo at the expense of the king.", "gains-tempo", FAILS),
        (DRAGON, "This is the pawn structure of the Dragon.", "same-structure", HOLDS),
        (DRAGON, "Black has adopted the formation of a French.", "same-structure", FAILS),
    ],
)
def test_the_same_is_said_in_other_words(
    judge: Judge, text: str, words: str, kind: str, outcome: Outcome
) -> None:
    assert judge(text % words, kind=kind).outcome is outcome
