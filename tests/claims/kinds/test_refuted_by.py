"""Refutations: a move that costs as much as a mistake, and the reply that shows it."""

from __future__ import annotations

from dataclasses import dataclass

import pytest

from lineproof.claims import Claim, Outcome, Spot
from lineproof.claims.kinds.refuted_by import check
from lineproof.engine import Line
from tests.claims.conftest import Judge, Scripted, claims_of

SCHOLAR = "1. e4 e5 2. Qh5 Nc6 3. Bc4 Nf6 {%s} 4. Qxf7# *"


@pytest.mark.parametrize(
    "words",
    [
        "Nf6 fails to Qxf7.",
        "3... Nf6 runs into 4. Qxf7 mate.",
        "Nf6 is refuted by Qxf7.",
        "Qxf7 refutes it.",
        "The refutation is Qxf7.",
        "Nf6 doesn't work because of Qxf7.",
        "Nf6 loses to Qxf7.",
        "Nf6 is a mistake because of Qxf7.",
        "The knight move is punished by Qxf7.",
        "Nf6 is no good on account of Qxf7.",
    ],
)
def test_a_true_refutation_holds(judge: Judge, words: str) -> None:
    finding = judge(SCHOLAR % words, kind="refuted-by")
    assert finding.claim.side == "white"
    assert not finding.claim.negated
    assert finding.outcome is Outcome.HOLDS


def test_a_reply_that_lets_it_off_is_no_refutation(judge: Judge) -> None:
    finding = judge(SCHOLAR % "Nf6 is refuted by d3.")
    assert finding.outcome is Outcome.FAILS
    assert finding.judgement.instead == "Nf6 is refuted by Qxf7#."


def test_a_sound_move_is_not_refuted(judge: Judge) -> None:
    finding = judge("1. e4 e5 2. Nf3 {This is refuted by 2... Nc6.} *")
    assert finding.outcome is Outcome.FAILS
    assert finding.judgement.instead is not None and "Nf3 is sound" in finding.judgement.instead


@dataclass
class _Turns(Scripted):
    """As the script, with White's best and Black's best answers told apart."""

    def best(self, spot: Spot, *, without: tuple[str, ...] = ()) -> Line | None:
        uci = self.best_move if spot.board.turn == "white" else self.rival
        return self._line(uci, self.points[uci])


def _claim() -> Claim:
    (claim,) = claims_of("1. e4 e5 2. Nf3 {This is refuted by 2... Nc6.} *")
    return claim


@pytest.mark.parametrize(
    ("played", "reply", "expected"),
    [
        (48, 48, Outcome.HOLDS),  # costs 12
        (49, 49, Outcome.UNSETTLED),  # near miss: costs 11, an inaccuracy
        (55, 55, Outcome.FAILS),  # costs 5
        (48, 53, Outcome.HOLDS),  # the reply costs 5
        (48, 54, Outcome.FAILS),  # the reply costs 6
    ],
)
def test_both_sides_of_the_edges(played: int, reply: int, expected: Outcome) -> None:
    script = _Turns({"b1c3": 60, "g1f3": played, "g8f6": 48, "b8c6": reply}, "b1c3", "g8f6")
    assert check(_claim(), script).outcome is expected


def test_a_denial_is_turned_round(judge: Judge) -> None:
    finding = judge(SCHOLAR % "Nf6 is not refuted by Qxf7.")
    assert finding.claim.negated
    assert finding.outcome is Outcome.FAILS


@pytest.mark.parametrize(
    "words",
    [
        "Nf6 is met by Qxf7.",  # only a reply, not a refutation
        "Nf6 works because of Qxf7.",
        "Nf6 fails to Qxf2.",  # no such move
        "Nf6 fails to impress.",
    ],
)
def test_what_is_no_refutation_is_not_read(words: str) -> None:
    assert not [c for c in claims_of(SCHOLAR % words) if c.kind == "refuted-by"]
