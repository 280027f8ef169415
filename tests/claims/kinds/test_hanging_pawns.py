"""Hanging pawns. Definition: Nimzowitsch, My System (from memory)."""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome
from tests.claims.conftest import Judge, claims_of

DUO = "4k3/pp3ppp/4p3/8/2PP4/8/P4PPP/4K3 w - - 0 1"


@pytest.mark.parametrize(
    "words",
    [
        "White has hanging pawns.",
        "The pawns on c4 and d4 are hanging pawns.",
        "White has hanging pawns on the c- and d-files.",
        "White has the hanging pawns on c4 and d4.",
        "We are left with hanging pawns.",
        "These are the so-called hanging pawns.",
    ],
)
def test_two_abreast_with_nobody_beside_them_hang(judge: Judge, words: str) -> None:
    finding = judge("{%s} 1. Kd2 *" % words, setup=DUO)
    assert (finding.claim.kind, finding.claim.side) == ("hanging-pawns", "white")
    assert finding.outcome is Outcome.HOLDS
    assert finding.judgement.marks[0].squares == ("c4", "d4")


@pytest.mark.parametrize(
    "setup",
    [
        "4k3/pp3ppp/4p3/3P4/2P5/8/P4PPP/4K3 w - - 0 1",  # one has gone on
        "4k3/pp3ppp/4p3/8/2PP4/8/PP3PPP/4K3 w - - 0 1",  # a pawn stands beside them
        "4k3/ppp2ppp/8/8/2PP4/8/P4PPP/4K3 w - - 0 1",  # the c-file is not half-open
        "4k3/pp3ppp/4p3/8/8/2PP4/P4PPP/4K3 w - - 0 1",  # on the third rank
    ],
)
def test_near_misses(judge: Judge, setup: str) -> None:
    assert judge("{White has hanging pawns.} 1. Kd2 *", setup=setup).outcome is Outcome.FAILS


def test_the_other_side_has_none(judge: Judge) -> None:
    assert judge("{Black has hanging pawns.} 1. Kd2 *", setup=DUO).outcome is Outcome.FAILS
    denied = judge("{Black does not have hanging pawns.} 1. Kd2 *", setup=DUO)
    assert denied.claim.negated
    assert denied.outcome is Outcome.HOLDS


@pytest.mark.parametrize(
    "words",
    ["The pawns on c4 and d4 are hanging.", "The pawn on c4 is hanging by a thread."],
)
def test_pawns_that_can_be_taken_are_another_matter(words: str) -> None:
    found = claims_of("{%s} 1. Kd2 *" % words, setup=DUO)
    assert not [c for c in found if c.kind == "hanging-pawns"]
