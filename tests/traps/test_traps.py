"""Classical opening traps: each true claim holds, each false twin fails, at normal effort.

Source: Hooper and Whyld, The Oxford Companion to Chess (from memory); see README.md beside this file.
"""

from __future__ import annotations

from io import StringIO

import chess.pgn
import pytest

from lineproof.claims import Outcome
from lineproof.proof import EvidenceStore, Finding
from tests.traps.counts import TRAPS, Case, cases

CASES = list(cases())


@pytest.fixture(scope="module")
def findings() -> dict[str, Finding]:
    """Every finding, of one store: the traps share positions."""
    store = EvidenceStore(None)
    found = {case.name: case.settled(store) for case in CASES}
    store.close()
    return found


@pytest.mark.parametrize("case", CASES, ids=lambda case: case.name)
def test_no_finding_is_wrong(case: Case, findings: dict[str, Finding]) -> None:
    finding = findings[case.name]
    assert finding.outcome in (case.expected, Outcome.UNSETTLED), finding.because


def test_at_most_a_tenth_is_unsettled(findings: dict[str, Finding]) -> None:
    unsettled = [name for name, f in findings.items() if f.outcome is Outcome.UNSETTLED]
    assert len(unsettled) <= len(CASES) / 10, unsettled


@pytest.mark.parametrize("case", CASES, ids=lambda case: case.name)
def test_every_move_is_legal_for_a_second_reader(case: Case) -> None:
    game = chess.pgn.read_game(StringIO(case.claim["pgn"]))
    assert game is not None
    assert game.errors == []


def test_every_trap_is_there_with_several_true_claims_and_their_twins() -> None:
    """The names are those of the list in README.md."""
    assert [trap["name"] for trap in TRAPS] == [
        "Légal's mate",
        "Noah's Ark trap",
        "Elephant trap",
        "Lasker trap in the Albin Counter-Gambit",
        "Kieninger trap in the Budapest Gambit",
        "Fishing Pole trap",
        "Rubinstein trap",
        "Monticelli trap",
        "Cambridge Springs trap",
        "Tarrasch trap in the Open Spanish",
        "Tarrasch trap in the Steinitz Defence",
        "Fried Liver attack",
        "Marshall trap",
        "Scholar's mate",
        "Fool's mate",
    ]
    for trap in TRAPS:
        assert len(trap["pairs"]) >= 3
        assert len({pair["true"]["kind"] for pair in trap["pairs"]}) >= 3
