"""What sounds like a claim and makes none or another, beside look-alikes that do make it."""

from __future__ import annotations

import pytest

from tests.claims.conftest import claims_of

GIUOCO = "1. e4 e5 2. Nf3 Nc6 3. Bc4 Bc5 {%s} *"
OVERLOAD = "1. e4 e5 2. d4 exd4 3. c3 dxc3 4. Bc4 cxb2 5. Bxb2 d5 6. Bxd5 Nf6 7. Bxf7+ {%s} 7... Kxf7 8. Qxd8 *"
SWAPPED = "1. e4 e5 2. d4 exd4 3. c3 dxc3 4. Bc4 cxb2 5. Bxb2 d5 6. Bxd5 Nf6 7. Bxf7+ Kxf7 8. Qxd8 {%s} 8... Bb4+ *"
TRAP = "1. e4 c5 2. d4 cxd4 3. c3 dxc3 4. Nxc3 d6 5. Bc4 Nf6 6. e5 dxe5 7. Bxf7+ {%s} *"
GAMBIT = "1. e4 c5 2. d4 cxd4 3. c3 dxc3 4. Nxc3 e6 {%s} *"
KINGS = "1. e4 e5 2. f4 exf4 {%s} *"
KNIGHTS = "1. e4 e5 2. Nf3 Nc6 3. Bc4 Nf6 4. Ng5 d5 5. exd5 Na5 {%s} *"
EVANS = "1. e4 e5 2. Nf3 Nc6 3. Bc4 Bc5 4. b4 Bxb4 5. c3 Ba5 6. Qb3 {%s} *"
FORKED = "1. e4 e5 2. Nf3 Nc6 3. Bc4 Bc5 4. c3 Nf6 5. d4 exd4 6. cxd4 Bb4+ 7. Bd2 Bxd2+ 8. Nbxd2 d5 9. exd5 Nxd5 10. Qb3 {%s} *"


def found(text: str, words: str) -> list[tuple[str, str | None]]:
    return [(c.kind, c.side) for c in claims_of(text % words, "white")]


@pytest.mark.parametrize(
    ("text", "words", "kind"),
    [
        (GIUOCO, "The bishop on c4 does two jobs: it looks at f7, and it guards e2.", "overloaded"),
        (FORKED, "The queen looks at b7 behind everybody's back.", "regains"),
        (FORKED, "The pawn on b7 goes behind his back.", "regains"),
        (KNIGHTS, "Our knight gets kicked around.", "threat"),
        (GIUOCO, "Nf6 is the move, anything else and White is better.", "verdict"),
        (GIUOCO, "Any other move and White is winning.", "verdict"),
        (KNIGHTS, "Take the knight and you're lost.", "verdict"),
        (OVERLOAD, "The king can't take on f7 and guard the queen as well.", "cannot-afford"),
        (OVERLOAD, "The king can't take on f7 and win the pawn too.", "wins-material"),
        (EVANS, "There's a double attack on f7.", "fork"),
        (GAMBIT, "We've got the half-open d-file and the half-open c-file.", "open-file"),
    ],
)  # fmt: skip
def test_not_this(text: str, words: str, kind: str) -> None:
    assert kind not in {k for k, _ in found(text, words)}


@pytest.mark.parametrize(
    ("text", "words", "claim"),
    [
        (OVERLOAD, "The king has two jobs.", ("overloaded", "black")),
        (OVERLOAD, "The king does too many jobs.", ("overloaded", "black")),
        (OVERLOAD, "The king cannot do two jobs.", ("overloaded", "black")),
        (GAMBIT, "White wins the pawn back.", ("regains", "white")),
        (KNIGHTS, "Our knight is attacked.", ("threat", "black")),
        (GIUOCO, "Nf6 is the move, and White is better.", ("verdict", "white")),
        (GIUOCO, "Count the pawns and you're better.", ("verdict", "white")),
        (GIUOCO, "You've seen it all before, and you're better.", ("verdict", "white")),
        (OVERLOAD, "The king cannot take on f7.", ("cannot-afford", "black")),
        (EVANS, "There's a double attack on f7.", ("attacked-count", "white")),
        (FORKED, "There's a double attack on the knight and the pawn.", ("fork", "white")),
        (FORKED, "It's a double attack.", ("fork", "white")),
        (GAMBIT, "We've got the half-open d-file and the half-open c-file.", ("half-open-file", "white")),
        (GAMBIT, "We've got the open d-file and the open c-file.", ("open-file", "white")),
        (KINGS, "Bishop c4 allows a check.", ("check", "black")),
        (KINGS, "Bishop c4 allows the check, which is harmless.", ("check", "black")),
        (GIUOCO, "The idea is c3, then d4.", ("idea", "white")),
        (GIUOCO, "The idea is Nf6, then d6.", ("idea", "black")),
        (SWAPPED, "That's a nice in-between move: the check comes first.", ("zwischenzug", "black")),
        (SWAPPED, "That's a nice in-between move.", ("zwischenzug", "white")),
    ],
)  # fmt: skip
def test_this(text: str, words: str, claim: tuple[str, str]) -> None:
    assert claim in found(text, words)


def test_open_files_of_a_list_are_all_meant() -> None:
    (claim,) = claims_of(GAMBIT % "We have the half-open c-file and the half-open d-file.", "white")
    assert claim.params["files"] == "cd"


def test_she_who_is_looked_after_is_the_queen() -> None:
    words = "The bishop drags the king away from the queen, you see, he was guarding her."
    assert not any(c.params.get("named") == "the bishop" for c in claims_of(TRAP % words, "white"))
    (claim,) = claims_of(GIUOCO % "The queen is safe, the king on e8 defends her.", "white")
    assert (claim.kind, claim.params["at"]) == ("defends", ["d8"])


def test_it_is_still_the_piece_spoken_of_last() -> None:
    claims = claims_of(
        GIUOCO % "The bishop on c4 is fine, for the queen on d1 defends it.", "white"
    )
    assert not any(c.params.get("at") == ["d1"] for c in claims)


@pytest.mark.parametrize(
    "words",
    [
        "The knight on c6 is the only piece that guards e5.",
        "The knight on c6 is the only one guarding the pawn on e5.",
    ],
)
def test_the_only_one_that_guards_it_is_alone(words: str) -> None:
    (claim,) = claims_of(GIUOCO % words, "white")
    assert (claim.kind, claim.params["n"], claim.params["by"]) == ("defended-count", 1, ["c6"])


def test_who_was_the_only_guard_is_not_said_to_guard_now() -> None:
    words = "The bishop drags the king off, and he was the only one guarding the queen."
    assert found(TRAP, words) == []
    assert found(GIUOCO, "The knight on c6 was the only one guarding e5.") == []


def test_a_move_that_alone_guards_it_is_asked_whether_it_does() -> None:
    (claim,) = claims_of("1. e4 e5 2. Nf3 Nc6 {Nc6 is the only one that guards e5.} *", "white")
    assert (claim.kind, claim.params["alone"]) == ("defends", True)
