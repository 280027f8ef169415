"""Moves that a sentence tells or tries as it goes, what is denied of what others think, and more ways to say verdicts and obligations."""

from __future__ import annotations

import pytest

from tests.claims.conftest import claims_of

FRIED = "1. e4 e5 2. Nf3 Nc6 3. Bc4 Nf6 4. Ng5 d5 5. exd5 Nxd5 6. Nxf7 Kxf7 7. Qf3+ {%s} Ke6 *"
DECLINED = "1. d4 d5 2. c4 e6 3. Nc3 Nf6 4. Bg5 Nbd7 5. cxd5 exd5 {%s} 6. e3 *"
BUDAPEST = "1. d4 Nf6 2. c4 e5 3. dxe5 Ng4 4. Bf4 Nc6 5. Nf3 Bb4+ 6. Nbd2 Qe7 7. a3 Ngxe5 {%s} *"
LONDON = "1. d4 d5 2. Bf4 Nf6 3. e3 c5 4. c3 Nc6 5. Nd2 e6 6. Ngf3 Bd6 7. Bg3 O-O 8. Bd3 Bxg3 9. hxg3 {%s} *"

Read = set[tuple[str, str | None, bool]]


def read(text: str, words: str, taught: str = "black") -> Read:
    return {(c.kind, c.side, c.negated) for c in claims_of(text % words, taught)}


@pytest.mark.parametrize(
    ("words", "found"),
    [
        ("The king has to run.", {("forced", "black", False)}),
        ("His king has to run somewhere.", {("forced", "black", False)}),
        ("The king must go to e6, no other square is safe.", {("forced", "black", False), ("only-move", "black", False)}),
        ("Ke6 is forced, nothing else is legal.", {("forced", "black", False), ("only-move", "black", False)}),
        ("He's basically got one move here, and it's Ke6.", {("only-move", "black", False)}),
        ("There is one square for the king, e6.", {("only-move", "black", False)}),
        ("The king has a choice of only one square, e6.", {("only-move", "black", False)}),
        ("Ke6 is the only move if he wants to keep the knight.", {("only-move", "black", False)}),
        ("The best move he has is king e6.", {("move-mark", "black", False)}),
        ("After the check only one move is any good, Ke6.", {("only-move", "black", False)}),
    ],
)  # fmt: skip
def test_obligations_of_a_piece(words: str, found: Read) -> None:
    assert read(FRIED, words, "white") == found


@pytest.mark.parametrize(
    ("words", "kind", "side", "negated"),
    [
        ("Taking on d5? It loses a piece.", "wins-material", "black", False),
        ("Nxd5? Loses at once.", "losing-move", "white", False),
        ("Nxd5? A howler.", "move-mark", "white", False),
        ("Nxd5? He can't afford that.", "cannot-afford", "white", False),
        ("White thinks the pawn on d5 is free. It isn't.", "for-free", "white", True),
        ("You'd think the pawn on d5 is free, but it isn't.", "for-free", "white", True),
        ("So was the pawn on d5 free? It wasn't.", "for-free", "white", True),
        ("Nothing will convince me that White is winning.", "verdict", "white", True),
        ("You won't persuade me that White is better.", "verdict", "white", True),
        ("Don't tell me that Black is lost.", "verdict", "white", True),
        ("I'd call it a tiny edge for us.", "verdict", "black", False),
        ("It's a complete mess.", "verdict", "white", False),
        ("6. e3 keeps a small advantage.", "verdict", "white", False),
        ("Nxd5 is, I'm afraid, dubious.", "move-mark", "white", False),
        ("Nxd5 is, in my respectful opinion, a mistake.", "move-mark", "white", False),
        ("6. e3 makes a lot of sense.", "move-mark", "white", False),
        ("Nc3 was the mistake.", "move-mark", "white", False),
        ("It's move eight.", "stale", None, False),
        ("On move six Black takes on d5.", "stale", None, False),
    ],
)
def test_said_in_passing(words: str, kind: str, side: str | None, negated: bool) -> None:
    assert (kind, side, negated) in read(DECLINED, words)


@pytest.mark.parametrize(
    "words",
    [
        "It's move five.",
        "On move five Black takes on d5.",
        "Black's fifth move, pawn takes d5, is natural.",
        "White lets the clock run.",
        "The queen to c2 or the bishop to d3, it makes no difference.",
    ],
)
def test_look_alikes_in_passing(words: str) -> None:
    kinds = {kind for kind, _, _ in read(DECLINED, words)}
    assert kinds.isdisjoint({"stale", "sacrifices", "move-mark"})


@pytest.mark.parametrize(
    ("words", "last"),
    [
        ("If White takes the bishop, our knight goes to d3 and it is mate.", "e5d3"),
        ("White takes the bishop, and the knight goes to d3, mate.", "e5d3"),
        ("Taking the bishop walks right into Nd3 mate.", "e5d3"),
    ],
)
def test_a_move_told_is_played(words: str, last: str) -> None:
    (claim,) = (c for c in claims_of(BUDAPEST % words, "black") if c.kind == "mate")
    assert claim.spot.moves[-1] == last


@pytest.mark.parametrize(
    "words",
    ["White lets the bishop go.", "We give the bishop.", "We let him have the bishop.", "We've thrown the bishop in."],
)  # fmt: skip
def test_things_given_up(words: str) -> None:
    assert "sacrifices" in {kind for kind, _, _ in read(BUDAPEST, words)}


@pytest.mark.parametrize("words", ["White gives the bishop a square.", "He must give up a piece."])
def test_things_not_given_up(words: str) -> None:
    assert "sacrifices" not in {kind for kind, _, _ in read(BUDAPEST, words)}


def test_a_pawn_takes_by_its_file() -> None:
    (claim,) = claims_of(LONDON % "h-takes was the best move.", "white")
    assert (claim.kind, claim.params["move"]) == ("move-mark", "h2g3")
    (claim,) = claims_of(LONDON % "The bishops on the dark squares are gone.", "white")
    assert (claim.kind, claim.params["shade"]) == ("exchange", "dark")
