"""Moves that a sentence announces: what leans on a threat or a plan speaks of the position after it.

"White threatens Nxf7, forking queen and rook", "the idea is to push on to h5 and trap the bishop".
"""

from __future__ import annotations

from collections.abc import Iterable

from .claim import Claim, Spot
from .clause import Clause
from .passing import parsed

_ANNOUNCING = frozenset({"threat", "idea"})
_AFTERWARDS = frozenset(
    {"whereupon", "when", "which", "whereby", "after which", "and then", "then"}
)


def leans(clause: Clause) -> bool:
    """Whether a clause speaks of what comes after the clause before it."""
    joint = clause.joint.removeprefix("=")
    if clause.form in {"ing", "part"} and clause.lemma:
        return clause.inherited and joint in {",", "and", ", and"} and not clause.fronted
    if joint == "with" or (not clause.lemma and joint == "," and clause.objects):
        return joint == "with"
    if clause.form == "base" and joint in {"and", ", and"}:
        return clause.subject is None
    words = joint.removeprefix(",").removeprefix(" and").strip()
    of_square = (
        clause.lemma == "be" and clause.subject is not None and clause.subject.type == "square"
    )
    if clause.sub == "which" and of_square:
        return False  # "dreams of c4, which is an outpost"
    if clause.sub in _AFTERWARDS or words in {"and then", "then"}:
        return joint.startswith(",") and not clause.verb.negated
    return clause.verb.modal == "would"


def announced(claims: Iterable[Claim]) -> tuple[Claim, Spot | None] | None:
    """The claim that announces a move, with the position after it; no position where the move is not clear; None where none does."""
    for claim in claims:
        if claim.kind not in _ANNOUNCING or claim.params.get("bare") or claim.negated:
            continue
        side = claim.side or "white"
        free = claim.spot.with_move_for(side)
        if free is None:
            return claim, None
        uci = _move(claim, free)
        return claim, None if uci is None else free.play(uci)
    return None


def _move(claim: Claim, free: Spot) -> str | None:
    params = claim.params
    move = params.get("move") or next(iter(params.get("moves") or ()), None)
    if move is not None:
        return parsed(free, move)
    if params.get("square") and params.get("origins"):
        fits = [
            m
            for m in free.board.legal_moves()
            if m[:2] in params["origins"] and m[2:4] == params["square"]
        ]
        return fits[0] if len(fits) == 1 else None
    targets = params.get("targets") or []
    by = params.get("by")
    fits = [m for m in free.board.legal_moves() if m[2:4] in targets and by in (None, m[:2])]
    return fits[0] if len(fits) == 1 else None


__all__ = ["announced", "leans"]
