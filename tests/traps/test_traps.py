"""Ten classical opening traps: each true claim holds, each false twin fails, at normal effort.

Source: Hooper and Whyld, The Oxford Companion to Chess (from memory); see README.md beside this file.
"""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest

from lineproof.claims import Outcome
from lineproof.lesson import Lesson
from lineproof.proof import EvidenceStore, prove

TRAPS: list[dict[str, Any]] = json.loads(
    Path(__file__).with_name("traps.json").read_text(encoding="utf-8")
)


@pytest.mark.parametrize("trap", TRAPS, ids=lambda t: t["name"])
@pytest.mark.parametrize(("twin", "expected"), [("true", Outcome.HOLDS), ("false", Outcome.FAILS)])
def test_the_true_claim_holds_and_its_false_twin_fails(
    trap: dict[str, Any], twin: str, expected: Outcome
) -> None:
    lesson = Lesson.from_text(trap[twin]["pgn"], side=trap["taught"])
    proof = prove(lesson, store=EvidenceStore(None))
    (finding,) = proof.findings
    assert trap[twin]["words"].startswith(finding.claim.words)
    assert finding.claim.kind == trap[twin]["kind"].replace("loses-", "wins-")
    assert finding.outcome is expected, finding.because


def test_all_ten_are_there() -> None:
    assert len(TRAPS) == 10
