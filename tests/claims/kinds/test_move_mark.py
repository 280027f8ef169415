"""Move marks: what a move costs. The edges stand in test_bands."""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome
from lineproof.claims.kinds.move_mark import check
from tests.claims.conftest import Judge, Scripted, claims_of


@pytest.mark.parametrize(
    ("mark", "played", "expected"),
    [
        ("!", 55, Outcome.HOLDS),
        ("?!", 54, Outcome.HOLDS),
        ("?", 48, Outcome.HOLDS),
        ("??", 30, Outcome.HOLDS),
        ("?", 58, Outcome.FAILS),
    ],
)
def test_a_mark_is_measured_against_the_best_move(
    mark: str, played: int, expected: Outcome
) -> None:
    (claim,) = claims_of(f"1. e4 e5 2. Nf3{mark} *")
    finding = check(claim, Scripted({"b1c3": 60, "g1f3": played}, "b1c3"))
    assert finding.outcome is expected
    assert finding.numbers["cost"] == 60 - played


def test_points_are_those_of_the_mover() -> None:
    (claim,) = claims_of("1. e4 e5? *")
    assert check(claim, Scripted({"c7c5": 40, "e7e5": 60}, "c7c5")).outcome is Outcome.HOLDS


@pytest.mark.parametrize(
    ("words", "move", "mark"),
    [
        ("This is a mistake.", "g1f3", "?"),
        ("Nf3 is a blunder.", "g1f3", "??"),
        ("2. Nf3 is the best move.", "g1f3", "!"),
        ("The best move is 2... Nc6.", "b8c6", "!"),
    ],
)
def test_words_are_marks_too(words: str, move: str, mark: str) -> None:
    (claim,) = claims_of("1. e4 e5 2. Nf3 {%s} *" % words)
    assert (claim.kind, claim.params["move"], claim.params["mark"]) == ("move-mark", move, mark)


def test_a_queen_put_en_prise_is_a_blunder(judge: Judge) -> None:
    assert judge("1. e4 e5 2. Qh5 Nc6 3. Qxf7+?? Kxf7 *").outcome is Outcome.HOLDS


def test_near_miss_a_sound_move_is_no_mistake(judge: Judge) -> None:
    assert judge("1. e4 e5 2. Nf3? *").outcome is Outcome.FAILS


@pytest.mark.parametrize(
    ("words", "played", "expected"),
    [
        ("This is not a mistake.", 49, Outcome.HOLDS),
        ("This is not a mistake.", 48, Outcome.FAILS),
        ("Nf3 isn't the best move.", 54, Outcome.HOLDS),
        ("Nf3 isn't the best move.", 55, Outcome.FAILS),
    ],
)
def test_a_denied_mark_is_the_other_way_round(words: str, played: int, expected: Outcome) -> None:
    (claim,) = claims_of("1. e4 e5 2. Nf3 {%s} *" % words)
    assert check(claim, Scripted({"b1c3": 60, "g1f3": played}, "b1c3")).outcome is expected


@pytest.mark.parametrize(
    ("words", "read"),
    [
        ("Taking the pawn is a mistake.", True),
        ("Taking with the knight is a mistake.", True),
        ("Taking the bishop is a mistake.", False),
        ("Pushing the pawn is a mistake.", False),
        ("Castling is a mistake.", False),
    ],
)
def test_a_described_move_must_be_the_one_just_played(words: str, read: bool) -> None:
    assert bool(claims_of("1. e4 e5 2. Nf3 Nc6 3. Nxe5 {%s} *" % words)) is read


def test_in_a_lost_position_what_a_move_costs_is_not_counted() -> None:
    (claim,) = claims_of("1. e4 e5 2. Nf3?? *")
    assert check(claim, Scripted({"b1c3": 14, "g1f3": 0}, "b1c3")).outcome is Outcome.UNSETTLED
    assert check(claim, Scripted({"b1c3": 15, "g1f3": 0}, "b1c3")).outcome is Outcome.HOLDS


@pytest.mark.parametrize(
    ("words", "move", "mark"),
    [
        ("2. Nf3 was an error.", "g1f3", "?"),
        ("Nf3 looks doubtful.", "g1f3", "?!"),
        ("White blunders with Nf3.", "g1f3", "??"),
        ("White makes a serious mistake with 2. Nf3.", "g1f3", "?"),
        ("The mistake was Nf3.", "g1f3", "?"),
        ("Nothing beats Nf3 here.", "g1f3", "!"),
        ("There is nothing better than Nf3.", "g1f3", "!"),
        ("A strong move, Nf3.", "g1f3", "!"),
        ("A strong knight sortie, Nf3.", "g1f3", "!"),
        ("I recommend Nf3.", "g1f3", "!"),
        ("Nf3 would be a blunder.", "g1f3", "??"),
        ("Nf3 has been a mistake.", "g1f3", "?"),
    ],
)
def test_verbs_and_nouns_are_marks_too(words: str, move: str, mark: str) -> None:
    (claim,) = claims_of("1. e4 e5 2. Nf3 {%s} *" % words)
    assert (claim.kind, claim.params["move"], claim.params["mark"]) == ("move-mark", move, mark)
    assert not claim.negated


def test_no_longer_is_a_denial() -> None:
    (claim,) = claims_of("1. e4 e5 2. Nf3 {Nf3 is no longer a mistake.} *")
    assert claim.negated


@pytest.mark.parametrize(
    "words",
    [
        "Nf3 looks good.",  # what looks good need not be
        "This is good for Black.",  # of a move of White's
        "Black blunders with Nf3.",
        "Nf3 is a good move order.",
        "A strong move, Nxd5.",
    ],
)
def test_what_is_said_of_another_side_or_only_seems_is_no_mark(words: str) -> None:
    assert not [c for c in claims_of("1. e4 e5 2. Nf3 {%s} *" % words) if c.kind == "move-mark"]


def test_a_blunder_shows_what_falls_and_what_is_better(judge: Judge) -> None:
    finding = judge("1. e4 e5 2. Nc3 Nf6 3. f4 exf4 4. e5 Nh5 $4 5. Qxh5 *")
    assert finding.evidence() == "4... Nh5 5. Qxh5"
    assert finding.judgement.second is not None
    assert finding.judgement.second.startswith("The knight on h5 falls. Better is 4... Ng8 ")


def test_a_good_move_shows_nothing_better(judge: Judge) -> None:
    assert judge("1. e4 e5 2. Nf3 $1 *").judgement.second is None
