"""What looks like a claim and is another or none, and of which position a reason speaks."""

from __future__ import annotations

import pytest

from lineproof.claims import Reading, read_lesson
from lineproof.lesson import Lesson
from tests.claims.conftest import claims_of

GIUOCO = "1. e4 e5 2. Nf3 Nc6 3. Bc4 Bc5 4. O-O Nf6 {%s} *"
DECLINED = "1. d4 d5 2. c4 e6 3. Nc3 Nf6 4. Bg5 Nbd7 5. cxd5 exd5 {%s} *"
ADVANCE = (
    "1. e4 e6 2. d4 d5 3. e5 c5 4. c3 Nc6 5. Nf3 Qb6 6. Bd3 cxd4 7. cxd4 Nxd4 8. Nxd4 Qxd4 {%s} *"
)


def reading(text: str, words: str) -> Reading:
    (found,) = read_lesson(Lesson.from_text(text % words, side="black")).sentences
    return found


@pytest.mark.parametrize(
    "words",
    [
        "Black's pieces are free.",
        "Our pieces are nice and free.",
        "It's nice.",
        "It is lovely to have the centre.",
        "On the kingside it's two against four.",
        "It's two against four over there.",
        "We don't mind losing the queen.",
        "Black doesn't mind losing a pawn here.",
        "That's the good one.",
        "Sacrifices are best made early.",
        "I have a nephew who plays this, and he is winning.",
        "Black hasn't made luft.",  # he has not castled
    ],
)
def test_look_alikes_are_not_read(words: str) -> None:
    assert claims_of(GIUOCO % words, "white") == ()


def test_a_whole_knight_that_was_given_is_not_stale() -> None:
    (claim,) = claims_of(GIUOCO % "We gave a whole knight on f7.", "white")
    assert claim.kind == "sacrifices"


def test_who_is_granted_something_is_he() -> None:
    (claim,) = claims_of(GIUOCO % "I grant White his centre, and he stands better.", "white")
    assert (claim.kind, claim.side) == ("verdict", "white")


def test_a_pawn_just_taken_where_it_stood_is_not_stale() -> None:
    claims = claims_of(ADVANCE % "The pawn on d4 is poisoned.", "white")
    assert "stale" not in {c.kind for c in claims}
    assert "stale" in {c.kind for c in claims_of(ADVANCE % "The knight on h4 is strong.", "white")}


@pytest.mark.parametrize(
    ("words", "last"),
    [
        ("6. Nxd5 Nxd5 7. Bxd8 Bb4+ is good for us, because we pick up the queen.", "f8b4"),
        ("The pawn on d5 is poisoned because we pick up the queen.", "c3d5"),
        ("He cannot take the pawn because we win a piece.", "c3d5"),
        ("6. Nxd5 Nxd5 7. Bxd8 loses a piece.", "g5d8"),
        ("We pick up the queen.", "e6d5"),
    ],
)
def test_a_reason_speaks_of_the_line_said(words: str, last: str) -> None:
    (claim,) = (c for c in claims_of(DECLINED % words, "black") if c.kind == "wins-material")
    assert claim.spot.moves[-1] == last


def test_a_reason_for_what_no_one_move_is_ruled_out_by_is_not_read() -> None:
    claims = claims_of(DECLINED % "White can't take on d5, because we pick up a piece.", "black")
    assert "wins-material" not in {c.kind for c in claims}


@pytest.mark.parametrize(
    ("words", "marks"),
    [
        ("6. Nxd5?? Nxd5! and we are a piece up.", [("c3d5", "??"), ("f6d5", "!")]),
        ("6. Nxd5? loses a piece.", [("c3d5", "?")]),
        ("After 6. e3 c6!? Black is fine.", [("c7c6", "!?")]),
        ("What about 6. Nxd5?", []),  # it asks
        ("Never forget Nf3!", []),  # it exclaims
        ("6. Rd4?? is nonsense.", []),  # it cannot be played
    ],
)
def test_marks_written_behind_moves(words: str, marks: list[tuple[str, str]]) -> None:
    found = [c for c in claims_of(DECLINED % words, "black") if c.kind == "move-mark"]
    assert [(c.params["move"], c.params["mark"]) for c in found] == marks


def test_a_clause_that_is_not_read_beside_one_that_is_is_told() -> None:
    found = reading(DECLINED, "The knight on f6 is pinned, and the bishop on f8 longs for b4.")
    assert {c.kind for c in found.claims} == {"pin"}
    assert found.why == "not read: the bishop on f8 longs for b4"
    assert reading(DECLINED, "The knight on f6 is pinned.").why == ""


def test_a_pointing_word_that_points_nowhere_is_said_to() -> None:
    assert "there is no it" not in reading(GIUOCO, "It is pinned to the king.").why
