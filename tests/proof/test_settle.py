"""Effort: raised near an edge, up to its cap; the last two steps must agree."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from lineproof.claims import Ask, Claim, Judgement, Kind, Outcome
from lineproof.proof import Effort, EvidenceStore, settle
from tests.claims.conftest import claims_of

H, F, U = Outcome.HOLDS, Outcome.FAILS, Outcome.UNSETTLED


def scripted(
    monkeypatch: pytest.MonkeyPatch, answers: list[tuple[Outcome, float | None]]
) -> tuple[Claim, list[int]]:
    """A claim whose check answers (outcome, distance to the edge) step by step; and the nodes it was given."""
    (claim,) = claims_of("1. e4 e5 {White is slightly better.} *")
    given: list[int] = []

    def check(_: Claim, ask: Ask) -> Judgement:
        given.append(ask.nodes)
        outcome, edge = answers[len(given) - 1]
        return Judgement(outcome, "So it was counted.", edge=edge, one_off=outcome is U)

    kind = Kind("verdict", "Verdict", 1, "scripted", check)
    find: Callable[[str], Kind] = lambda _: kind  # noqa: E731
    monkeypatch.setattr("lineproof.proof.settling.kind_of", find)
    return claim, given


@pytest.mark.parametrize(
    ("answers", "outcome", "nodes", "why"),
    [
        ([(H, 3.1)], H, [400_000], ""),
        ([(H, 3.0), (H, 3.1)], H, [400_000, 1_600_000], ""),
        ([(H, None)], H, [400_000], ""),
        ([(H, 1.0), (F, 5.0), (F, 5.0)], F, [400_000, 1_600_000, 6_400_000], ""),
        ([(H, 1.0), (H, 1.0), (H, 1.0)], H, [400_000, 1_600_000, 6_400_000], ""),
        (
            [(H, 1.0), (H, 1.0), (F, 9.0)],
            U,
            [400_000, 1_600_000, 6_400_000],
            "the last two steps disagree",
        ),
        ([(U, 9.0)], U, [400_000], "one off"),
    ],
)
def test_near_an_edge_the_effort_is_raised(
    monkeypatch: pytest.MonkeyPatch,
    answers: list[tuple[Outcome, float | None]],
    outcome: Outcome,
    nodes: list[int],
    why: str,
) -> None:
    claim, given = scripted(monkeypatch, answers)
    finding = settle(claim, Effort.NORMAL, EvidenceStore(None))
    assert (finding.outcome, given, finding.why_unsettled) == (outcome, nodes, why)


def test_the_steps_of_each_effort() -> None:
    assert Effort.SKETCH.steps == (40_000,)
    assert Effort.NORMAL.steps == (400_000, 1_600_000, 6_400_000)
    assert Effort.THOROUGH.steps == (4_000_000, 16_000_000, 64_000_000)
