"""Ways of saying that the reader puts straight before any kind of claim looks at them."""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome
from tests.claims.conftest import Judge, claims_of

SVESHNIKOV = "1. e4 c5 2. Nf3 Nc6 3. d4 cxd4 4. Nxd4 Nf6 5. Nc3 e5 6. Ndb5 d6 {%s} 7. Bg5 *"
FRENCH = "1. e4 e6 2. d4 d5 3. e5 c5 4. c3 {%s} Nc6 *"
BERLIN = "1. e4 e5 2. Nf3 Nc6 3. Bb5 a6 4. Bxc6 dxc6 {%s} 5. O-O *"


def read(text: str, taught: str = "white") -> list[tuple[str, str | None, bool]]:
    return [(c.kind, c.side, c.negated) for c in claims_of(text, taught)]


@pytest.mark.parametrize(
    "words",
    [
        "Black's rook will use the half-open d-file.",
        "The queen cannot leave the half-open d-file.",
        "His rook has taken up the half-open d-file.",
    ],
)
def test_a_thing_named_as_known_is_said_to_be_there(judge: Judge, words: str) -> None:
    """Whatever the verb says, its denial and its "will" included."""
    assert judge(BERLIN % words, kind="half-open-file").outcome is Outcome.HOLDS
    assert (
        judge(BERLIN % words.replace("d-file", "f-file"), kind="half-open-file").outcome
        is Outcome.FAILS
    )


@pytest.mark.parametrize(
    "words",
    [
        "A half-open f-file would be nice.",
        "White wants the half-open f-file.",
        "If he had the half-open f-file, he would attack.",
        "A rook belongs behind the passed pawn.",
        "The majority of my pupils like this.",
    ],
)
def test_near_miss_a_thing_wished_for_or_spoken_of_in_general_is_not(words: str) -> None:
    assert read(BERLIN % words) == []


def test_the_name_of_a_thing_is_the_span_of_the_claim() -> None:
    (claim,) = claims_of(BERLIN % "Soon a rook will stand on the half-open d-file.")
    assert claim.words == "the half-open d-file"


@pytest.mark.parametrize(
    ("words", "kind"),
    [
        ("Look at d6, a backward pawn.", "backward-pawn"),
        ("He will have to guard d6, which, of course, is backward.", "backward-pawn"),
        ("Look at the hole he's left on d5.", "weak-square"),
        ("What we have before us is a hole on d5.", "weak-square"),
        ("That little fellow on d6 is a backward pawn.", "backward-pawn"),
        ("The d-pawn is backward, isn't it?", "backward-pawn"),
    ],
)
def test_what_is_said_of_a_noun_beside_it_is_read(judge: Judge, words: str, kind: str) -> None:
    assert judge(SVESHNIKOV % words, kind=kind).outcome is Outcome.HOLDS


@pytest.mark.parametrize(
    "words",
    [
        "Isn't the d-pawn backward?",
        "Is the pawn on d6, a backward pawn, weak?",
        "Who has the hole?",
    ],
)
def test_near_miss_a_question_from_the_start_is_not(words: str) -> None:
    assert read(SVESHNIKOV % words) == []


def test_a_verb_may_be_left_out_the_second_time() -> None:
    text = "1. e4 d5 2. exd5 Nf6 3. d4 Nxd5 4. c4 Nb6 5. c5 Nd5 6. b4 e6 {%s} *"
    words = "Black has the half-open d-file and White the half-open e-file."
    assert read(text % words) == [("half-open-file", "black", False), ("half-open-file", "white", False)]  # fmt: skip


@pytest.mark.parametrize(
    ("words", "outcome"),
    [
        ("Once the pawn has recaptured, Black has doubled c-pawns.", Outcome.HOLDS),
        ("Once the pawn has recaptured, Black has doubled f-pawns.", Outcome.FAILS),
    ],
)
def test_a_condition_that_tells_of_the_last_move_is_on_the_board(
    judge: Judge, words: str, outcome: Outcome
) -> None:
    assert judge(BERLIN % words, kind="doubled-pawns").outcome is outcome


@pytest.mark.parametrize(
    "words",
    [
        "Once the knight has recaptured, Black has doubled c-pawns.",
        "Play c5, or you are left with an isolated pawn.",
    ],
)
def test_near_miss_another_condition_is_not(words: str) -> None:
    assert read(BERLIN % words) == []


def test_a_simile_means_no_more_than_its_adjective(judge: Judge) -> None:
    open_ = "1. e4 e5 2. d4 exd4 3. Qxd4 Nc6 4. Qa4 d5 5. exd5 Qxd5 {%s} *"
    words = "The position is as open as a barn."
    assert judge(open_ % words).outcome is Outcome.HOLDS
    assert judge("1. e4 e5 2. d3 d6 {%s} *" % words).outcome is Outcome.FAILS


@pytest.mark.parametrize(
    ("words", "sides"),
    [("He's shut the middle.", [None]), ("It's shut.", [None])],
)
def test_a_contracted_has_keeps_its_object(words: str, sides: list[str | None]) -> None:
    closed = "1. e4 e6 2. d4 d5 3. e5 {%s} c5 *"
    assert [s for k, s, _ in read(closed % words) if k == "closed-position"] == sides


IQP = "1. d4 d5 2. c4 e6 3. Nc3 c5 4. cxd5 exd5 5. Nf3 Nc6 6. g3 Nf6 7. Bg2 Be7 8. O-O O-O 9. dxc5 Bxc5 {%s} 10. Bg5 *"


@pytest.mark.parametrize(
    ("words", "side"),
    [
        ("With an isolated pawn on d5 Black must stay active.", "black"),
        ("The price is an isolated pawn on d5.", "black"),
        ("White saddles his opponent with an isolated pawn.", "black"),
    ],
)
def test_who_has_a_thing_may_be_said_by_the_way(judge: Judge, words: str, side: str) -> None:
    finding = judge(IQP % words, kind="isolated-pawn")
    assert (finding.claim.side, finding.claim.negated) == (side, False)
    assert finding.outcome is Outcome.HOLDS
    assert judge(FRENCH % words, kind="isolated-pawn").outcome is Outcome.FAILS


@pytest.mark.parametrize(
    ("words", "outcome"),
    [
        ("No black pawn can drive a knight from d5.", Outcome.HOLDS),
        ("A knight on d5 cannot be driven away by a pawn.", Outcome.HOLDS),
        ("d5 will serve White as an outpost.", Outcome.HOLDS),
        ("No black pawn can drive a knight from f5.", Outcome.FAILS),
    ],
)
def test_an_outpost_may_be_told_by_what_cannot_happen(
    judge: Judge, words: str, outcome: Outcome
) -> None:
    assert judge(SVESHNIKOV % words, kind="outpost").outcome is outcome


@pytest.mark.parametrize(
    ("words", "outcome"),
    [
        ("No pawn stands on the d-file.", Outcome.FAILS),
        ("No pawn stands on the e-file.", Outcome.FAILS),
    ],
)
def test_no_pawn_on_a_file_means_that_it_is_open(
    judge: Judge, words: str, outcome: Outcome
) -> None:
    assert judge(BERLIN % words, kind="open-file").outcome is outcome
    open_ = "1. e4 e5 2. d4 exd4 3. Qxd4 Nc6 4. Qa4 d5 5. exd5 Qxd5 {%s} *"
    assert judge(open_ % words, kind="open-file").outcome is Outcome.HOLDS


def test_both_sides_may_have_the_same(judge: Judge) -> None:
    text = "1. e4 e5 2. Nf3 Nc6 3. Bb5 a6 4. Bxc6 dxc6 {Both sides have doubled c-pawns.} *"
    assert [c.side for c in claims_of(text)] == ["white", "black"]


def test_what_a_move_some_time_ago_has_done_is_seen_now(judge: Judge) -> None:
    assert judge(IQP % "The exchange has isolated the d-pawn.").outcome is Outcome.HOLDS
    assert judge(SVESHNIKOV % "The exchange has isolated the pawn on e5.").outcome is Outcome.FAILS
