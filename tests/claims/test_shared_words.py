"""Words that several kinds share: what a thing is called, who stands where, what is left out. Readings: common practice."""

from __future__ import annotations

from typing import Any

import pytest

from lineproof.claims import Outcome
from tests.claims.conftest import Judge, claims_of

KNIGHTS = "1. e4 e5 2. Nf3 Nc6 3. Bc4 Nf6 4. Ng5 {%s} *"
SVESHNIKOV = "1. e4 c5 2. Nf3 d6 3. d4 cxd4 4. Nxd4 Nf6 5. Nc3 e5 6. Ndb5 {%s} *"


def kinds(game: str, words: str, taught: str = "white") -> set[tuple[str, str | None, bool]]:
    return {(c.kind, c.side, c.negated) for c in claims_of(game % words, taught)}


def params(game: str, words: str, kind: str, taught: str = "white") -> dict[str, Any]:
    (claim,) = [c for c in claims_of(game % words, taught) if c.kind == kind]
    return dict(claim.params)


@pytest.mark.parametrize(
    ("words", "kind"),
    [
        ("The knight attacks the backward pawn on d6.", "threat"),
        ("The bishop on f8 guards the backward pawn on d6.", "defends"),
        ("The backward pawn on d6 is attacked twice.", "attacked-count"),
        ("The backward pawn on d6 has two defenders.", "defended-count"),
    ],
)
def test_a_pawn_may_be_called_by_how_it_stands(words: str, kind: str) -> None:
    assert {kind, "backward-pawn"} <= {k for k, _, _ in kinds(SVESHNIKOV, words)}


@pytest.mark.parametrize(
    ("words", "outcome"),
    [
        ("Black's knight c6 guards e5.", Outcome.HOLDS),
        ("Black's king is there to guard f7.", Outcome.HOLDS),
        ("The f7-pawn itself is defended by Black's king.", Outcome.HOLDS),
        ("The pawn on e5 is well supported, by the knight on c6.", Outcome.HOLDS),
        ("The pawn on e5 is well supported, by the knight on f6.", Outcome.FAILS),
    ],
)
def test_who_guards_is_said_in_many_ways(judge: Judge, words: str, outcome: Outcome) -> None:
    assert judge(KNIGHTS % words, kind="defends").outcome is outcome


def test_a_square_and_the_men_that_look_at_it_are_no_list() -> None:
    words = "Two of ours look at f7, the knight and the bishop."
    assert params(KNIGHTS, words, "attacked-count")["at"] == "f7"


def test_the_only_guard_may_be_named_that_is_none(judge: Judge) -> None:
    finding = judge(KNIGHTS % "Black has no defender of f7 apart from the rook.")
    assert finding.claim.kind == "defended-count"
    assert finding.outcome is Outcome.FAILS


@pytest.mark.parametrize(
    ("words", "at", "few"),
    [
        ("Every white minor piece but one is still at home.", ["b1", "c1", "c4", "g5"], 3),
        ("All of White's pieces but two are undeveloped.", ["b1", "c1", "c4", "g5"], 2),
        ("All of White's pieces except the knight on g5 and the bishop on c4 are undeveloped.", ["b1", "c1"], None),
        ("Of Black's two bishops neither is developed.", ["c8", "f8"], None),
        ("Two of Black's four minor pieces are at home.", ["c6", "c8", "f6", "f8"], 2),
    ],
)  # fmt: skip
def test_how_many_are_at_home(words: str, at: list[str], few: int | None) -> None:
    found = params(KNIGHTS, words, "undeveloped")
    assert sorted(found["at"]) == at
    assert found.get("few") == few


@pytest.mark.parametrize(
    ("words", "files"),
    [("The a- and b-files are closed to us, but the c- and d-files are open.", "cd")],
)
def test_several_files_are_each_meant(words: str, files: str) -> None:
    assert params("1. e4 e5 2. Nf3 Nc6 {%s} *", words, "open-file")["files"] == files


def test_castling_is_named_with_its_wing() -> None:
    for words in (
        "Castling kingside is out of the question for Black.",
        "Short castling is impossible for Black.",
    ):
        assert params(KNIGHTS, words, "cannot-castle")["wing"] == "king"
    assert kinds(KNIGHTS, "Nobody has castled.") == {("castled", s, True) for s in ("white", "black")}  # fmt: skip


def test_the_guard_may_be_hit_before_it_is_taken(judge: Judge) -> None:
    siberian = "1. e4 c5 2. d4 cxd4 3. c3 dxc3 4. Nxc3 Nc6 5. Nf3 e6 6. Bc4 Qc7 7. O-O Nf6 8. Qe2 Ng4 9. h3 Nd4 {%s} *"
    right = judge(siberian % "The knight hits the defender of h2.", taught="black")
    assert right.claim.kind == "removal-of-guard"
    assert right.outcome is Outcome.HOLDS
    wrong = judge(siberian % "The knight hits the defender of g2.", taught="black")
    assert wrong.outcome is Outcome.FAILS
    assert not claims_of(siberian % "We are taking the guard of h2.", "black")


@pytest.mark.parametrize(
    ("words", "expected"),
    [
        ("So what if Black has castled?", ("castled", "black", False)),
        ("Why not castle, well, because White has castled.", ("castled", "white", False)),
    ],
)
def test_what_is_granted_and_what_is_answered_is_said(
    words: str, expected: tuple[str, str, bool]
) -> None:
    assert expected in kinds(KNIGHTS, words)
    assert not kinds(KNIGHTS, "What if Black has castled?")


def test_a_move_in_words_that_the_line_shows_is_played() -> None:
    scholar = "1. e4 e5 2. Qh5 Nc6 3. Bc4 {The pawn goes to g6, and it hits the queen.} g6 *"
    (threat,) = [c for c in claims_of(scholar, "black") if c.kind == "threat"]
    assert threat.spot.moves[-1] == "g7g6"
    other = "1. e4 e5 2. Qh5 Nc6 3. Bc4 {The pawn goes to g6, and it hits the queen.} Qe7 *"
    assert not [c for c in claims_of(other, "black") if c.kind == "threat"]


MODERN = "1. d4 Nf6 2. c4 c5 3. d5 e6 4. Nc3 exd5 5. cxd5 d6 {%s} *"


@pytest.mark.parametrize(
    ("words", "numbers"),
    [
        ("Queenside, four of ours against three.", (4, 3)),
        ("On the queenside, four against three.", (4, 3)),
        ("Three white pawns against four on the queenside.", (4, 3)),
        ("A queenside majority for Black.", None),
    ],
)
def test_a_majority_is_counted_from_either_side(
    words: str, numbers: tuple[int, int] | None
) -> None:
    (claim,) = claims_of(MODERN % words, "black")
    assert (claim.kind, claim.side) == ("majority", "black")
    assert (claim.params["wing"], claim.params["numbers"]) == ("queenside", numbers)


def test_one_takes_up_the_majority_before_it() -> None:
    found = kinds(MODERN, "A queenside majority for Black, a central one for White.", "black")
    assert found == {("majority", "black", False), ("majority", "white", False)}


def test_what_would_never_be_seen_is_said_to_be_so() -> None:
    danish = "1. e4 e5 2. d4 exd4 3. c3 dxc3 4. Bc4 cxb2 5. Bxb2 {%s} *"
    for words in (
        "If this isn't an open game I've never seen one.",
        "If this isn't an open position, I don't know what is.",
    ):
        assert kinds(danish, words) == {("open-position", None, False)}
    assert not kinds(danish, "If this isn't an open game we close it.")


@pytest.mark.parametrize(
    ("words", "moves"),
    [
        ("White would like to play d4.", ("d4",)),
        ("White would love to play d3.", ("d3",)),
        ("d6 is his break.", ("d6",)),
    ],
)
def test_a_wish_is_an_idea(words: str, moves: tuple[str, ...]) -> None:
    assert params(KNIGHTS, words, "idea")["moves"] == moves


def test_a_condition_names_what_is_there() -> None:
    words = "If his backward pawn goes, we are better."
    assert ("backward-pawn", "black", False) in kinds(SVESHNIKOV, words)
    assert not kinds(SVESHNIKOV, "If Black gets a backward pawn, we are happy.")


def test_a_tempo_may_have_been_won_some_moves_ago(judge: Judge) -> None:
    scandinavian = "1. e4 d5 2. exd5 Qxd5 3. Nc3 Qa5 {%s} 4. d4 *"
    finding = judge(scandinavian % "With Nc3 White won a tempo.", kind="gains-tempo")
    assert finding.claim.spot.moves[-1] == "b1c3"
    assert finding.outcome is Outcome.HOLDS


def test_the_last_of_several_moves_does_it() -> None:
    spanish = "1. e4 e5 2. Nf3 Nc6 3. Bb5 a6 {%s} 4. Ba4 *"
    found = [c for c in claims_of(spanish % "4. Bxc6 dxc6 5. Nxe5 Qd4 forks knight and pawn.") if c.kind == "fork"]  # fmt: skip
    assert [c.spot.moves[-1] for c in found] == ["d8d4"]


CHELYABINSK = (
    "1. e4 c5 2. Nf3 Nc6 3. d4 cxd4 4. Nxd4 Nf6 5. Nc3 e5 6. Ndb5 d6 7. Bg5 a6 8. Na3 b5 {%s} *"
)


def test_a_pawn_s_step_is_a_threat_and_what_it_would_do_is_read_after_it(judge: Judge) -> None:
    for words in ("The threat is b4.", "Black threatens to play b4."):
        assert params(CHELYABINSK, words, "threat")["move"] == "b4"
    fork = judge(CHELYABINSK % "The threat is b4, forking the knights.", kind="fork")
    assert fork.claim.params["forker"] == "b4"
    assert fork.outcome is Outcome.HOLDS
    assert not claims_of(CHELYABINSK % "b4 would fork our knights.")


def test_a_piece_is_put_on_its_square() -> None:
    found = params(CHELYABINSK, "White plans to put a knight on d5.", "idea")
    assert (found["origins"], found["square"]) == (["a3", "c3"], "d5")


def test_either_side_is_both_wings() -> None:
    found = [c for c in claims_of(CHELYABINSK % "White can still castle on either side.") if c.kind == "cannot-castle"]  # fmt: skip
    assert [(c.negated, c.params["wing"]) for c in found] == [(True, "king"), (True, "queen")]


def test_an_attack_on_two_squares_is_two() -> None:
    found = claims_of(KNIGHTS % "The knight attacks f7 and h7.")
    assert [c.params["targets"] for c in found if c.kind == "threat"] == [["f7"], ["h7"]]


@pytest.mark.parametrize(
    ("words", "side", "negated", "any_of"),
    [
        ("All of White's pieces are developed.", "white", True, False),
        ("White has developed all his pieces.", "white", True, False),
        ("Not all of Black's pieces are developed.", "black", False, True),
        ("Black hasn't developed all of his pieces yet.", "black", False, True),
        ("Black hasn't developed his pieces.", "black", False, False),
    ],
)
def test_all_of_them_or_not_all(words: str, side: str, negated: bool, any_of: bool) -> None:
    (claim,) = claims_of(KNIGHTS % words)
    assert (claim.kind, claim.side, claim.negated) == ("undeveloped", side, negated)
    assert claim.params["any_of"] is any_of


def test_an_attack_by_several_is_counted_and_a_pawn_that_is_not_there_bares_no_king() -> None:
    gambit = "1. e4 e5 2. f4 exf4 3. Nf3 g5 4. Bc4 g4 5. O-O gxf3 6. Qxf3 {%s} *"
    found = kinds(gambit, "The f4-pawn is attacked by queen, rook and bishop.")
    assert found == {("attacked-count", "white", False)}
    words = "Look at that knight on g5, there's not one pawn that can kick it out."
    assert not {k for k, _, _ in kinds(KNIGHTS, words)} & {"king-exposed"}
