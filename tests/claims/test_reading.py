"""Reading: what a clause says, and what its neighbours take back. Precision before recall."""

from __future__ import annotations

from pathlib import Path

import pytest

from lineproof.claims import Status, read_lesson
from lineproof.lesson import Lesson
from tests.claims.conftest import claims_of, readings

SCHOLAR = "1. e4 e5 2. Qh5 Nc6 3. Bc4 {%s} g6 *"
FRIED = "1. e4 e5 2. Nf3 Nc6 3. Bc4 Nf6 4. Ng5 d5 5. exd5 Nxd5 6. Nxf7 Kxf7 7. Qf3+ Ke6 8. Nc3 Ncb4 {%s} *"


@pytest.mark.parametrize(
    "words",
    [
        "The knight on d5 and the queen on d8 are unprotected.",
        "Both knights are unprotected.",
        "Ncb4 is good for nothing.",
        "This is the only move, apart from Ne7.",
        "Ncb4 is the only move, or else Ne7.",
        "White is clearly better, which is an exaggeration.",
        "The knight on d5 is pinned, but only seemingly.",
        "White is winning, according to the books.",
        "White is winning, or so the books claim.",
        "White is winning, they say.",
        "White is winning, say the beginners.",
        "Black is lost, some think.",
        "White is winning as long as he plays fast.",
        "It is the only move for beginners.",
        "The chances are equal for both sides to go wrong.",
        "White was winning.",
        "White has been winning for a while.",
        "White is winning, no, what am I saying.",
        "If Black errs, White is winning.",
        "Everybody says White is winning.",
        "White is almost winning.",
        "White is usually winning.",
        "You might think White is winning.",
    ],
)
def test_a_sentence_whose_rest_may_change_its_meaning_is_not_read(words: str) -> None:
    assert not claims_of(FRIED % words)


@pytest.mark.parametrize(
    "words",
    [
        "White threatens mate, or so it seems.",
        "There is a threat of mate on f7, but only after the queen moves.",
        "This is mate in one for a careless opponent.",
        "White threatens mate with the bishop.",
        "Black is a pawn up, or will be soon.",
        "White threatens mate on f7?",
        "Why not 4. Nf3?",
    ],
)
def test_neither_is_one_that_asks_or_limits(words: str) -> None:
    assert not claims_of(SCHOLAR % words)


@pytest.mark.parametrize(
    ("words", "kinds"),
    [
        ("Now White threatens mate, and Black cannot castle.", ["mate-threat", "cannot-castle"]),
        ("White threatens mate, so be careful.", ["mate-threat"]),
        (
            "Well, material is level; White's queen is unprotected.",
            ["material-count", "unprotected"],
        ),
        ("After 3... g6 4. Qf3 White threatens mate.", ["mate-threat"]),
        ("I think White is slightly better.", ["verdict"]),
    ],
)
def test_several_claims_in_one_sentence(words: str, kinds: list[str]) -> None:
    assert [c.kind for c in claims_of(SCHOLAR % words)] == kinds


def test_a_clause_without_a_subject_speaks_of_the_one_before() -> None:
    claims = claims_of(FRIED % "White is a pawn down and has a clear advantage.")
    assert [(c.kind, c.side) for c in claims] == [("material-count", "black"), ("verdict", "white")]


def test_moves_in_the_sentence_move_the_place() -> None:
    (claim,) = claims_of(SCHOLAR % "After 3... Nf6 4. Qxf7 it is mate.")
    assert claim.spot.moves[-2:] == ("g8f6", "h5f7")


def test_a_hedge_is_noted() -> None:
    (claim,) = claims_of(SCHOLAR % "I think White is slightly better.")
    assert claim.hedged


def test_we_and_he_need_a_taught_side() -> None:
    (reading,) = readings(SCHOLAR % "We are winning.", taught=None)
    assert reading.status is Status.NOT_UNDERSTOOD
    assert "which side it teaches" in reading.why


@pytest.mark.parametrize(
    "words",
    [
        "We threaten mate.",
        "We see that White threatens mate.",
        "You know, he says nothing, and Black cannot castle.",
    ],
)
def test_without_a_taught_side_nothing_falls_over(words: str) -> None:
    assert len(readings(SCHOLAR % words, taught=None)) == 1


def test_the_demo_is_read_without_a_taught_side() -> None:
    lines = Path(__file__).parent.parent.parent / "examples" / "vienna" / "lines.pgn"
    reading = read_lesson(Lesson.open(lines))
    assert reading.count(Status.READ) > 40


def test_he_is_not_guessed_at_when_the_taught_side_was_just_named() -> None:
    claims = claims_of(SCHOLAR % "White threatens mate, and he is lost.")
    assert [c.kind for c in claims] == ["mate-threat"]


def test_he_who_is_said_to_win_is_the_side_that_does_something() -> None:
    claims = claims_of(SCHOLAR % "White threatens mate, and he is winning.")
    assert [(c.kind, c.side) for c in claims] == [("mate-threat", "white"), ("verdict", "white")]


@pytest.mark.parametrize(
    ("words", "kind", "side"),
    [
        ("White is winning, no, what am I saying, he is only better.", "verdict", "white"),
        ("Black has lost his queen, sorry, White has won a queen.", "wins-material", "white"),
        ("White, no wait, Black is a pawn up.", "material-count", "black"),
    ],
)
def test_what_is_said_instead_is_read(words: str, kind: str, side: str) -> None:
    assert [(c.kind, c.side) for c in claims_of(FRIED % words)] == [(kind, side)]


@pytest.mark.parametrize(
    "words",
    [
        "I don't think White is winning.",
        "I would not say that White is winning.",
        "Nobody could claim that White is winning.",
        "You can't say White is winning.",
    ],
)
def test_what_one_does_not_think_is_denied(words: str) -> None:
    assert [(c.kind, c.negated) for c in claims_of(FRIED % words)] == [("verdict", True)]


def test_a_question_and_its_answer_are_a_verdict() -> None:
    said = {
        "Is Black lost? Not at all.": True,
        "Is White better? Yes, clearly.": False,
        "Who stands better? White.": False,
    }
    for words, denied in said.items():
        assert [(c.kind, c.negated) for c in claims_of(FRIED % words)] == [("verdict", denied)]


def test_another_language_is_counted_as_such() -> None:
    (reading,) = readings(SCHOLAR % "Weiß droht Matt und steht besser.")
    assert reading.status is Status.OTHER_LANGUAGE


@pytest.mark.parametrize(
    ("words", "status"),
    [
        ("I once lost like this in the rain.", Status.LEFT_ALONE),
        ("Patience is a virtue.", Status.LEFT_ALONE),
        ("Good evening.", Status.LEFT_ALONE),
        ("The bishop attacks f7 twice.", Status.NOT_UNDERSTOOD),
        ("White gives check in spirit only.", Status.NOT_UNDERSTOOD),
    ],
)
def test_what_claims_nothing_is_told_from_what_is_not_understood(
    words: str, status: Status
) -> None:
    (reading,) = readings(SCHOLAR % words)
    assert reading.status is status


def test_the_words_of_a_claim_are_those_of_the_text() -> None:
    text = SCHOLAR % "Well, now White threatens mate, of course."
    (claim,) = claims_of(text)
    assert text[claim.start : claim.end] == claim.words == "White threatens mate, of course"


def test_all_but_mate_is_no_mate() -> None:
    (said,) = readings("1. e4 e5 2. Qh5 Nc6 3. Bc4 Nf6 4. Qxf7# {The check is all but mate.} *")
    assert [(c.kind, c.negated) for c in said.claims] == [("mate", True)]
    (said,) = readings("1. e4 e5 2. Qh5 Nc6 3. Bc4 Nf6 4. Qxf7# {All but the king are at home.} *")
    assert said.claims == ()


def test_what_follows_a_move_that_is_advised_against_is_left_alone() -> None:
    line = "1. e4 e5 2. Nf3 Nc6 3. Bc4 {%s} *"
    (said,) = readings(line % "Please do not run to g8, since it is check.")
    assert said.claims == ()


def test_what_follows_a_move_that_was_not_read_is_left_alone() -> None:
    line = "1. e4 e5 2. Nf3 Nc6 3. Bc4 {%s} *"
    (said,) = readings(line % "Out of the blue there comes Nd4, and White is winning.")
    assert said.claims == ()
    (other,) = readings(line % "It is a nice day, and White is winning.")
    assert [claim.kind for claim in other.claims] == ["verdict"]


@pytest.mark.parametrize(
    ("movetext", "kind"),
    [
        ("1. e4 e5 2. f3 {With f3 we cover the g4 square once and for all.} Nc6 *", "defended-count"),
        ("1. e4 e5 2. Nf3 Nc6 {Improve your worst piece, it is never the wrong idea.} 3. Bb5 *", "move-mark"),
        ("1. e4 e5 2. Nf3 Nc6 3. Bb5 {Exactly this position is reached from the Bishop's Opening.} a6 *", "open-position"),
        ("1. e4 e5 2. Nf3 Nf6 3. Nxe5 {It is not one check, it is two.} *", "check"),
        ("1. e4 e5 2. Bc4 {The reader might suppose that White, with this bishop, wins a pawn.} Nc6 *", "wins-material"),
        ("1. e4 e5 2. Nf3 Nc6 3. Bb5 {It appears that the knight on c6 is pinned, but this is what we hope Black believes.} d6 *", "pin"),
        ("1. e4 e5 2. h4 {h4 is an inaccuracy, or so I thought, no, I take it back.} Nc6 *", "move-mark"),
        ("1. e4 e5 2. Nf3 Nc6 3. Bb5 Bb4 4. c3 Be7 {We check on b4, then drop back to e7.} *", "check"),
    ],
)  # fmt: skip
def test_words_that_only_look_like_a_claim_make_none(movetext: str, kind: str) -> None:
    assert kind not in {claim.kind for claim in claims_of(movetext)}
