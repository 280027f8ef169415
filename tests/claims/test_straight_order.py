"""Sentences whose parts stand apart: the noun before its clause, the answer after its question, the side inside "impossible for"."""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome
from tests.claims.conftest import Judge, claims_of

SVESHNIKOV = "1. e4 c5 2. Nf3 Nc6 3. d4 cxd4 4. Nxd4 Nf6 5. Nc3 e5 6. Ndb5 d6 7. Bg5 a6 8. Na3 b5 9. Bxf6 gxf6 10. Nd5 {%s} Be7 *"
EVANS = "1. e4 e5 2. Nf3 Nc6 3. Bc4 Bc5 4. b4 Bxb4 5. c3 Ba5 6. d4 exd4 7. O-O dxc3 8. Qb3 Qf6 9. e5 Qg6 10. Nxc3 {%s} Nge7 *"
OPEN_SICILIAN = "1. e4 c5 2. d4 cxd4 3. c3 dxc3 4. Nxc3 {%s} Nc6 *"
FRENCH = "1. e4 e6 2. d4 d5 3. e5 {%s} c5 *"


def read(text: str, taught: str = "white") -> list[tuple[str, str | None, bool]]:
    return [(c.kind, c.side, c.negated) for c in claims_of(text, taught)]


@pytest.mark.parametrize(
    ("words", "kind", "outcome"),
    [
        ("The g-file, it's half open.", "half-open-file", Outcome.HOLDS),
        ("Look down the g-file, it's half open.", "half-open-file", Outcome.HOLDS),
        ("The h-file, it's half open.", "half-open-file", Outcome.FAILS),
        ("The pawn on d6, it is backward.", "backward-pawn", Outcome.HOLDS),
        ("The square in front of it, d5, is weak.", "weak-square", Outcome.HOLDS),
        ("The square in front of the g-pawn, g5, is weak.", "weak-square", Outcome.FAILS),
        ("Black's king, it should be noted, is still in the centre.", "king-centre", Outcome.HOLDS),
        ("Black's king, while his rooks sleep, is stuck in the centre.", "king-centre", Outcome.HOLDS),
        ("Black has, on the whole, the two bishops.", "bishop-pair", Outcome.HOLDS),
        ("It is to Black that the bishop pair belongs.", "bishop-pair", Outcome.HOLDS),
        ("It is to White that the bishop pair belongs.", "bishop-pair", Outcome.FAILS),
    ],
)  # fmt: skip
def test_a_noun_may_stand_apart_from_its_clause(
    judge: Judge, words: str, kind: str, outcome: Outcome
) -> None:
    assert judge(SVESHNIKOV % words, kind=kind).outcome is outcome


def test_near_miss_another_story_is_no_file() -> None:
    assert read(SVESHNIKOV % "The d-file, that's another story.") == []


@pytest.mark.parametrize(
    ("words", "side", "outcome"),
    [
        ("Our king has castled, theirs is still in the middle.", "black", Outcome.HOLDS),
        ("White's king has castled, Black's still lingers on e8.", "black", Outcome.HOLDS),
        ("Their king is in the middle, ours lingers on e1.", "white", None),
    ],
)
def test_whose_it_is_may_stand_for_the_piece(
    judge: Judge, words: str, side: str, outcome: Outcome | None
) -> None:
    found = [c for c in claims_of(EVANS % words) if c.kind == "king-centre" and c.side == side]
    assert len(found) == (outcome is not None)  # no king of White stands on e1
    if outcome is not None:
        assert judge(EVANS % words, kind="king-centre").outcome is outcome


def test_near_miss_a_club_of_ours_is_no_piece() -> None:
    assert read(EVANS % "Ours is the better club.") == []


@pytest.mark.parametrize(
    ("words", "expected"),
    [
        ("What have we got for the pawn? The half-open c-file.", [("half-open-file", "white", False)]),
        ("What has Black got for it? A half-open c-file.", [("half-open-file", "black", False)]),
        ("What do you get for a pawn? A sandwich.", []),
        ("Does White have the half-open c-file?", []),
    ],
)  # fmt: skip
def test_an_answer_takes_from_its_question_who_has_it(
    words: str, expected: list[tuple[str, str | None, bool]]
) -> None:
    assert read(OPEN_SICILIAN % words) == expected


@pytest.mark.parametrize(
    ("words", "outcome"),
    [
        ("Who has more space? White does.", Outcome.HOLDS),
        ("Who has more space? Black has.", Outcome.FAILS),
    ],
)
def test_an_answer_may_be_a_side_alone(judge: Judge, words: str, outcome: Outcome) -> None:
    assert judge(FRENCH % words, kind="space").outcome is outcome


@pytest.mark.parametrize(
    ("words", "outcome"),
    [
        ("It is too early for White to castle.", Outcome.HOLDS),
        ("There is no way for White to castle yet.", Outcome.HOLDS),
        ("White is unable to castle.", Outcome.HOLDS),
        ("It is possible for White to castle.", Outcome.FAILS),
        ("White has the right to castle.", Outcome.HOLDS),
        ("White has no right to castle.", Outcome.FAILS),
    ],
)
def test_what_cannot_be_done_is_said_in_a_noun_or_an_adjective(
    judge: Judge, words: str, outcome: Outcome
) -> None:
    text = "1. d4 d5 2. Nf3 Nf6 3. c4 {%s} e6 *"
    assert judge(text % words, kind="cannot-castle").outcome is outcome


@pytest.mark.parametrize(
    "words",
    [
        "White has the right to complain.",
        "White has the right idea.",
        "It is too early for White to be happy.",
        "White may soon castle.",
    ],
)
def test_near_miss_other_rights_are_not_read(words: str) -> None:
    assert "cannot-castle" not in [k for k, _, _ in read(FRENCH % words)]


def test_what_seems_so_is_said_softly() -> None:
    (claim,) = claims_of(FRENCH % "White seems to have more space.")
    assert claim.kind == "space"
    assert claim.hedged


@pytest.mark.parametrize(
    ("words", "outcome"),
    [
        ("White has left his king exposed.", Outcome.FAILS),
        ("The white king has nowhere to hide.", Outcome.FAILS),
        ("There is nothing left for the white king to hide behind.", Outcome.FAILS),
        ("Both kings are exposed.", None),
    ],
)
def test_a_king_without_shelter_is_said_in_many_ways(
    judge: Judge, words: str, outcome: Outcome | None
) -> None:
    if outcome is None:
        assert [s for k, s, _ in read(EVANS % words) if k == "king-exposed"] == ["white", "black"]
    else:
        assert judge(EVANS % words, kind="king-exposed").outcome is outcome


@pytest.mark.parametrize(
    "words",
    [
        "White dreams of an outpost on d5.",
        "The majority on the committee is ours.",
        "If Black could play d5, the hole would be gone.",
        "What does White want? The bishop pair.",
        "His kingside pawns were doubled in another game.",
    ],
)
def test_near_miss_wishes_and_other_worlds_are_not_read(words: str) -> None:
    kinds = {k for k, _, _ in read(SVESHNIKOV % words, "black")}
    assert not kinds & {"outpost", "majority", "weak-square", "bishop-pair", "doubled-pawns"}


@pytest.mark.parametrize(
    ("words", "expected"),
    [
        ("White has castled and Black has not.", [("white", False), ("black", True)]),
        ("We've castled, he hasn't.", [("white", False), ("black", True)]),
        ("If White has castled and Black has not, attack.", []),
        ("White has castled and Black has a plan.", [("white", False)]),
    ],
)
def test_a_side_may_leave_out_the_verb_of_the_other(
    words: str, expected: list[tuple[str, bool]]
) -> None:
    assert [(s, n) for k, s, n in read(EVANS % words) if k == "castled"] == expected
