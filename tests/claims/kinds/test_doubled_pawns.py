"""Doubled pawns. Definition: "Doubled Pawn", Chess Programming Wiki (from memory)."""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome
from tests.claims.conftest import Judge, claims_of

# Ruy Lopez, Exchange Variation (from memory)
TAKEN = "1. e4 e5 2. Nf3 Nc6 3. Bb5 a6 4. Bxc6 dxc6 {%s} 5. O-O *"
TAKES = "1. e4 e5 2. Nf3 Nc6 3. Bb5 a6 4. Bxc6 {%s} dxc6 5. O-O *"


@pytest.mark.parametrize(
    "words",
    [
        "Black has doubled pawns.",
        "Black now has doubled pawns on the c-file.",
        "Black's c-pawns are doubled.",
        "Black's pawns on the c-file are doubled now.",
        "The c-pawns are doubled.",
        "The pawns on c6 and c7 are doubled.",
        "There are doubled pawns in Black's camp.",
        "He is left with doubled c-pawns.",
    ],
)
def test_two_pawns_on_one_file_are_doubled(judge: Judge, words: str) -> None:
    finding = judge(TAKEN % words)
    assert (finding.claim.kind, finding.claim.side) == ("doubled-pawns", "black")
    assert finding.outcome is Outcome.HOLDS
    assert finding.because == "Black has two pawns on one file: the pawn on c6 and the pawn on c7."


@pytest.mark.parametrize(
    "words",
    [
        "White has doubled pawns.",
        "Black has doubled f-pawns.",
        "Black's f-pawns are doubled.",
        "Black's pawns on the f-file are doubled now.",
        "Black's pawns on the kingside are doubled.",
        "The pawns on b7 and c7 are doubled.",
        "Black has two sets of doubled pawns.",
        "Black has isolated doubled pawns.",  # near miss: b7 stands beside them
        "Black has tripled pawns.",
    ],
)
def test_other_pawns_are_not(judge: Judge, words: str) -> None:
    assert judge(TAKEN % words).outcome is Outcome.FAILS


@pytest.mark.parametrize(
    "words",
    [
        "This doubles Black's pawns.",
        "Bxc6 gives Black doubled pawns.",
        "The exchange leaves him with doubled c-pawns.",
        "Black will have doubled pawns on the c-file.",
        "White takes, doubling Black's pawns.",
    ],
)
def test_what_a_capture_gives_is_seen_after_the_recapture(judge: Judge, words: str) -> None:
    finding = judge(TAKES % words, kind="doubled-pawns")
    assert finding.outcome is Outcome.HOLDS
    assert finding.because.startswith("After dxc6: ")
    assert finding.judgement.line == ("d7c6",)


def test_where_nothing_more_is_shown_any_recapture_will_do(judge: Judge) -> None:
    movetext = "1. e4 e5 2. Nf3 Nc6 3. Bb5 a6 4. Bxc6 {This doubles Black's pawns.} *"
    assert judge(movetext).outcome is Outcome.HOLDS
    harmless = "1. e4 e5 2. Nf3 Nc6 3. Nxe5 {This doubles Black's pawns.} *"
    assert judge(harmless).outcome is Outcome.FAILS


@pytest.mark.parametrize(
    ("words", "outcome"),
    [
        ("White has no doubled pawns.", Outcome.HOLDS),
        ("Black does not have doubled pawns.", Outcome.FAILS),
        ("The c-pawns are not doubled.", Outcome.FAILS),
    ],
)
def test_denials(judge: Judge, words: str, outcome: Outcome) -> None:
    finding = judge(TAKEN % words)
    assert finding.claim.negated
    assert finding.outcome is outcome


@pytest.mark.parametrize(
    "words",
    [
        "White doubles rooks on the e-file.",
        "Black doubles his efforts.",
        "White doubles his pawns.",  # whose?
        "Black had doubled pawns.",
        "If he takes, Black has doubled pawns.",
    ],
)
def test_left_unread(words: str) -> None:
    assert not claims_of(TAKEN % words)
