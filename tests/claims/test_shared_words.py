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
