"""Settling one claim: the effort is raised step by step where the answer stands near an edge."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from lineproof.claims import Claim, GameOver, Judgement, Outcome, kind_of
from lineproof.engine import ENGINE_VERSION, Stop
from lineproof.engine.outside import OutsideError

from .asker import Asker
from .effort import NEAR, Effort
from .finding import NO_GAMES, NOT_ANSWERED, TOO_FEW, Finding
from .store import EvidenceStore

if TYPE_CHECKING:
    from lineproof.engine.outside.pool import OutsideEngine

    from .games import Games


def settle(
    claim: Claim,
    effort: Effort,
    store: EvidenceStore,
    stop: Stop | None = None,
    outside: OutsideEngine | None = None,
    games: Games | None = None,
) -> Finding:
    """Checks a claim.

    Away from every edge the first step decides. Near one the effort is raised up to its cap; if the last two
    steps then disagree, the claim is unsettled. So it is, with the reason, when an outside engine does not answer.

    games: answers how often a move is played; without them that is unsettled.
    :raises Interrupted: when `stop` was set.
    :raises lineproof.collection.CollectionError: when a file of the games is damaged.
    """
    kind = kind_of(claim.kind)
    before: Judgement | None = None
    spent = 0
    for step, nodes in enumerate(effort.steps, 1):
        ask = Asker(store, nodes, stop, outside, games)
        try:
            judgement = kind.judge(claim, ask)
        except GameOver as over:
            judgement = Judgement(Outcome.UNSETTLED, f"This cannot be asked: {over}.")
        except OutsideError as error:
            judgement = Judgement(Outcome.UNSETTLED, f"The outside engine gave no answer: {error}.")
            who = ENGINE_VERSION if outside is None else outside.program.identity
            spent += ask.spent
            return Finding(claim, Outcome.UNSETTLED, judgement, spent, step, NOT_ANSWERED, who)
        spent += ask.spent
        last = step == len(effort.steps)
        near = judgement.edge is not None and judgement.edge <= NEAR
        agrees = before is None or before.outcome is judgement.outcome
        if not last and (near or not agrees):
            before = judgement
            continue
        outcome, why = judgement.outcome, ""
        if not agrees and before is not None:
            because = f"{judgement.because} A search of a quarter of the effort says otherwise: {before.because}"
            judgement = replace(
                judgement, because=because, outcome=Outcome.UNSETTLED, one_off=False
            )
            outcome, why = Outcome.UNSETTLED, "the last two steps disagree"
        elif outcome is Outcome.UNSETTLED:
            why = (
                "one off"
                if judgement.one_off
                else TOO_FEW
                if judgement.too_few
                else NO_GAMES
                if ask.uncounted
                else "the effort ran out"
                if spent
                else "it cannot be asked here"
            )
        who = outside.program.identity if outside is not None and spent else ENGINE_VERSION
        counted = games.identity if games is not None and ask.counted else ""
        return Finding(claim, outcome, judgement, spent, step, why, who, counted)
    raise AssertionError("an effort has at least one step")
