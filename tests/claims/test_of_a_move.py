"""What a move costs, leaves, or is refuted by, told of a move in words; what is left to be taken, and whose move it is."""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome
from lineproof.proof import Effort, EvidenceStore, settle
from tests.claims.conftest import claims_of

QGD = "1. d4 d5 2. c4 e6 3. Nc3 Nf6 4. Bg5 Be7 5. e3 O-O 6. Nf3 h6 7. Bh4 b6 8. cxd5 Nxd5 9. Bxe7 Qxe7 10. Nxd5 exd5 11. Rc1 Be6 12. Qa4 c5 13. Qa3 {%s} Rc8 *"
LASKER = "1. d4 d5 2. c4 e5 3. dxe5 d4 4. e3 Bb4+ 5. Bd2 dxe3 {%s} 6. Bxb4 *"
LEGAL = "1. e4 e5 2. Nf3 d6 3. Bc4 Bg4 4. Nc3 g6 5. Nxe5 {%s} Bxd1 *"
WINAWER = "1. e4 e6 2. d4 d5 3. Nc3 Bb4 4. e5 c5 5. a3 Bxc3+ 6. bxc3 Ne7 7. Qg4 Qc7 8. Qxg7 Rg8 9. Qxh7 cxd4 10. Ne2 {%s} Nbc6 *"
DRAGON = "1. e4 c5 2. Nf3 d6 3. d4 cxd4 4. Nxd4 Nf6 5. Nc3 g6 6. Be3 Bg7 7. f3 O-O 8. Qd2 Nc6 9. Bc4 Bd7 10. O-O-O Rc8 11. Bb3 Ne5 12. h4 {%s} *"
COLLE = "1. d4 d5 2. Nf3 Nf6 3. e3 e6 4. Bd3 c5 5. c3 Nc6 6. Nbd2 Bd6 7. O-O O-O 8. dxc5 {%s} Bxc5 9. e4 *"
STEAL = "1. d4 d5 2. c4 dxc4 3. e3 b5 4. a4 c6 5. axb5 cxb5 6. Qf3 Nc6 7. Qxc6+ Bd7 8. Qf3 {%s} *"
ALBIN = (
    "1. d4 d5 2. c4 e5 3. dxe5 d4 4. e3 Bb4+ 5. Bd2 dxe3 6. Bxb4 exf2+ 7. Ke2 fxg1=N+ {%s} 8. Ke1 *"
)
TRAXLER = "1. e4 e5 2. Nf3 Nc6 3. Bc4 Nf6 4. Ng5 Bc5 5. Nxf7 Bxf2+ 6. Kxf2 Nxe4+ 7. Kg1 Qh4 8. g3 Nxg3 9. hxg3 Qxg3+ 10. Kf1 {%s} *"
FRENCH = (
    "1. e4 e6 2. d4 d5 3. exd5 exd5 4. Nf3 Nf6 5. Bd3 Bd6 6. O-O O-O 7. Bg5 Bg4 8. Nbd2 Nbd7 {%s} *"
)
HUNT = (
    "1. e4 e5 2. Nf3 d6 3. Bc4 Be7 4. d4 exd4 5. Nxd4 Nd7 6. Bxf7+ Kxf7 7. Ne6 Kxe6 {%s} 8. Qd5+ *"
)
LONDON = "1. d4 d5 2. Bf4 Nf6 3. e3 c5 4. c3 Nc6 5. Nd2 e6 6. Ngf3 Bd6 7. Bg3 O-O 8. Bd3 Bxg3 9. hxg3 {%s} *"


@pytest.mark.parametrize(
    ("line", "words", "kind", "side"),
    [
        (QGD, "A capture on d4 would cost Black his queen.", "wins-material", "white"),
        (QGD, "13... cxd4 would cost a queen.", "wins-material", "white"),
        (LASKER, "Taking on b4? Refuted by pawn takes f2.", "refuted-by", "black"),
        (LASKER, "Bxb4? Refuted: exf2+.", "refuted-by", "black"),
        (LEGAL, "White has left the queen to be captured on d1.", "sacrifices", "white"),
        (LEGAL, "We've left our queen to be taken.", "sacrifices", "white"),
        (WINAWER, "Defending the c-pawn is the most common choice.", "frequency", "white"),
        (WINAWER, "Protecting c3 is by far the most popular move.", "frequency", "white"),
        (DRAGON, "A sacrifice of the exchange on c3 is in the offing.", "sacrifices", "black"),
        (DRAGON, "An exchange sacrifice on c3 is looming.", "sacrifices", "black"),
        (HUNT, "It is White to move with a mate in two.", "mate-in", "white"),
        (LONDON, "Our rook has a half-open file.", "half-open-file", "white"),
        (COLLE, "Take on c5 first, only then e4.", "move-order", "white"),
        (COLLE, "Take on c5 first, then e4, never the other way round.", "move-order", "white"),
        (STEAL, "He can push it to a5 as much as he likes.", "nothing-to-fear", "white"),
        (STEAL, "He can play a5 all he likes.", "nothing-to-fear", "white"),
        (ALBIN, "Ke1 beats grabbing on g1 hands down.", "better-is", "white"),
        (TRAXLER, "Black has a perpetual with queen f4 and queen g3.", "perpetual", "black"),
        (HUNT, "Kxe6 was a mistake, because taking back with the knight?", "move-mark", "black"),
    ],
)  # fmt: skip
def test_is_read(line: str, words: str, kind: str, side: str) -> None:
    assert [(c.kind, c.side, c.negated) for c in claims_of(line % words, "white")] == [
        (kind, side, False)
    ]


@pytest.mark.parametrize(
    ("line", "words"),
    [
        (QGD, "A capture on d4 would cost White his queen."),
        (QGD, "This capture costs White his queen."),
        (QGD, "A capture on d4 would cost Black dearly."),
        (LASKER, "Taking on b4? Refuted."),
        (LASKER, "Refuted, pawn takes f2."),
        (WINAWER, "Defending the d-pawn is the most common choice."),
        (WINAWER, "Defending a3 is the most common choice."),
        (DRAGON, "The sacrifice of a piece is hanging in the air."),
        (COLLE, "Take on c5 first, then e4."),
        (COLLE, "Take on c5, then e4, never the other way round."),
        (STEAL, "We can push it to a5 as much as we like."),
        (ALBIN, "Ke1 beats grabbing on g2."),
        (HUNT, "It isn't White to move with a mate in two."),
        (HUNT, "It is White to move."),
    ],
)
def test_is_left_alone(line: str, words: str) -> None:
    assert not claims_of(line % words, "white")


def test_the_cost_is_counted_behind_the_move() -> None:
    (claim,) = claims_of(QGD % "A capture on d4 would cost Black his queen.", "white")
    assert settle(claim, Effort.NORMAL, EvidenceStore(None)).outcome is Outcome.HOLDS


def test_of_two_moves_advised_against_the_first_is_meant() -> None:
    (claim,) = claims_of(FRENCH % "I'd steer well clear of h6 and g5.", "black")
    assert (claim.kind, claim.params["move"]) == ("not-recommended", "h7h6")
