"""Material won in the line shown. Values: common practice."""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome
from tests.claims.conftest import Judge, claims_of

# Petrov blunder, a line of any handbook (from memory): 4. Qe2 wins the queen after 4... Nf6 5. Nc6+
PETROV = "1. e4 e5 2. Nf3 Nf6 3. Nxe5 Nxe4 4. Qe2 Nf6 {%s} 5. Nc6+ Be7 6. Nxd8 Kxd8 *"


@pytest.mark.parametrize(
    "words",
    [
        "White wins the queen.",
        "This loses the queen.",
        "Black loses his queen.",
        "This costs Black the queen.",
        "We win material.",
    ],
)
def test_a_true_gain_holds(judge: Judge, words: str) -> None:
    finding = judge(PETROV % words)
    assert finding.claim.side == "white"
    assert finding.outcome is Outcome.HOLDS


@pytest.mark.parametrize("words", ["Black wins the queen.", "White loses a piece."])
def test_the_wrong_winner_fails(judge: Judge, words: str) -> None:
    assert judge(PETROV % words).outcome is Outcome.FAILS


def test_an_exchange_of_equals_wins_nothing(judge: Judge) -> None:
    finding = judge("1. e4 e5 2. Nf3 Nc6 3. Bb5 a6 4. Bxc6 {White wins a piece.} dxc6 5. Nc3 *")
    assert finding.outcome is Outcome.FAILS
    assert finding.judgement.numbers["gain"] in {-1, 0, 1}


def test_near_miss_a_piece_for_a_pawn_is_a_piece_with_a_note(judge: Judge) -> None:
    # the fork trick played wrongly by nobody: White gives a knight for a pawn
    finding = judge("1. e4 e5 2. Nf3 Nc6 3. Nxe5 {This loses a piece.} Nxe5 4. d4 Ng6 5. Bc4 *")
    assert finding.outcome is Outcome.HOLDS
    assert finding.judgement.numbers["gain"] in {1, 2}


def test_the_subject_of_a_clause_that_is_not_read_is_kept_where_it_is_plain() -> None:
    (claim,) = claims_of(PETROV % "White smiles at c6 and wins the queen.")
    assert claim.side == "white"


def test_whose_gain_it_is_stays_open_after_a_clause_that_is_not_read() -> None:
    assert not claims_of(PETROV % "Everything hangs together, and wins the queen.")


def test_for_free_asks_for_the_whole_value(judge: Judge) -> None:
    assert (
        judge(PETROV % "White wins the queen for free.").outcome is Outcome.FAILS
    )  # a knight is given
    assert judge(PETROV % "White wins the queen.").outcome is Outcome.HOLDS


def test_the_exchange_is_no_more_than_the_exchange(judge: Judge) -> None:
    assert judge(PETROV % "White wins the exchange.").outcome is Outcome.FAILS
    assert judge(PETROV % "White wins a rook.").outcome is Outcome.HOLDS


def test_a_rook_is_three_net(judge: Judge) -> None:
    # rook for a pawn and a knight is one: no rook is won
    setup = "r3k3/8/8/3N4/8/8/8/4K3 w - - 0 1"
    assert judge("1. Nc7+ {White wins a rook.} Kd7 2. Nxa8 *", setup=setup).outcome is Outcome.HOLDS
    assert judge("1. Nf4 {White wins a rook.} *", setup=setup).outcome is Outcome.FAILS


def test_by_force_asks_the_position_and_not_the_line_shown(judge: Judge) -> None:
    setup = "r3k3/8/8/3N4/8/8/8/4K3 w - - 0 1"
    shown = "1. Nf4 {%s} Ra6 2. Nd5 Ra8 3. Nc7+ Kd8 4. Nxa8 *"
    assert judge(shown % "White wins a rook.", setup=setup).outcome is Outcome.HOLDS
    by_force = shown % "White wins a rook by force."
    assert judge(by_force, setup=setup, kind="wins-material").outcome is Outcome.FAILS
    assert judge(by_force, setup=setup, kind="by-force").outcome is Outcome.FAILS


def test_what_has_been_won_is_looked_for_further_back(judge: Judge) -> None:
    text = "1. e4 e5 2. Nf3 Nf6 3. Nxe5 Nxe4 4. Qe2 Nf6 5. Nc6+ Be7 6. Nxd8 Kxd8 7. d3 {%s} *"
    assert judge(text % "White has won the queen.").outcome is Outcome.HOLDS
    assert judge(text % "White wins the queen.").outcome is Outcome.FAILS


def test_a_line_that_ends_in_mate_wins_more_than_material(judge: Judge) -> None:
    legal = "1. e4 e5 2. Nf3 d6 3. Bc4 Bg4 4. Nc3 g6 {%s} 5. Nxe5 Bxd1 6. Bxf7+ Ke7 7. Nd5# *"
    assert judge(legal % "White wins a pawn.").outcome is Outcome.HOLDS
    assert judge(legal % "White loses the queen.").outcome is Outcome.FAILS


@pytest.mark.parametrize(
    "words",
    [
        "White is going to win the queen.",
        "White nets the queen.",
        "The knight move drops the queen.",
        "4... Nf6 costs Black the queen.",
        "Black's queen is lost.",
        "White can win the queen.",
        "Black has dropped his queen.",
        "The knight on e5 wins the queen.",
        "White picks up the queen.",
    ],
)
def test_more_ways_to_say_it(judge: Judge, words: str) -> None:
    finding = judge(PETROV % words)
    assert (finding.claim.side, finding.claim.params["amount"]) == ("white", "queen")
    assert finding.outcome is Outcome.HOLDS


@pytest.mark.parametrize(
    ("words", "expected"),
    [
        ("White does not win the queen.", Outcome.FAILS),
        ("Black doesn't lose a piece.", Outcome.FAILS),
        ("Black does not win a pawn.", Outcome.HOLDS),
    ],
)
def test_a_denial_is_turned_round(judge: Judge, words: str, expected: Outcome) -> None:
    finding = judge(PETROV % words)
    assert finding.claim.negated
    assert finding.outcome is expected


@pytest.mark.parametrize(
    "words",
    [
        "White wins time.",
        "White wins the game.",
        "The queen is lost.",  # whose?
        "White would win the queen.",
        "Black loses his way.",
    ],
)
def test_other_gains_are_not_read(words: str) -> None:
    assert not [c for c in claims_of(PETROV % words) if c.kind == "wins-material"]


@pytest.mark.parametrize(
    ("words", "winner"),
    [
        ("White lost a pawn.", "black"),
        ("White has lost a pawn.", "black"),
        ("White won a pawn.", "white"),
        ("The pawn on e5 is lost.", "black"),
        ("The pawn on e5 falls.", "black"),
        ("The pawn falls.", "black"),
    ],
)
def test_who_wins_what_is_lost(words: str, winner: str) -> None:
    # Black has just taken on e4; the pawn on e5 is White's
    (claim,) = claims_of("1. e4 e5 2. Nc3 Nf6 3. f4 d5 4. fxe5 Nxe4 {%s} 5. Nf3 *" % words)
    assert (claim.kind, claim.side) == ("wins-material", winner)


@pytest.mark.parametrize(
    ("setup", "words", "expected", "told"),
    [
        # the queen (9) for a rook (5) and a knight (3), which the pawn forks: less than 3 net
        ("6k1/5ppp/4p3/3q4/2N1N3/8/8/3R2K1 w - - 0 1", "the queen", Outcome.FAILS, "for it: to win the queen is a net gain of 3 pawns or more."),
        # the queen for a knight: 6 net
        ("2r3k1/5ppp/4p3/3q4/8/2N5/3R1PPP/6K1 w - - 0 1", "the queen", Outcome.HOLDS, "It is not for nothing: Black has the worth of 3 pawns for the queen."),
    ],
)  # fmt: skip
def test_what_is_given_for_it_is_said(
    judge: Judge, setup: str, words: str, expected: Outcome, told: str
) -> None:
    taking = "Rxd5" if expected is Outcome.FAILS else "Nxd5"
    finding = judge("{White wins %s.} 1. %s exd5 *" % (words, taking), setup=setup)
    assert finding.outcome is expected
    assert told in finding.judgement.because
