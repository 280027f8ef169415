"""Backward pawns: left behind by their neighbours, and stopped."""

from __future__ import annotations

from typing import Any

from lineproof.claims.claim import Ask, Claim, Judgement
from lineproof.claims.here import Here
from lineproof.claims.kind import Kind
from lineproof.claims.owner import SLOTS, owning
from lineproof.claims.pawn_state import check_pawns, read_pawns
from lineproof.claims.structure import backward, backwardness
from lineproof.engine import Board

FRAMES = (
    *owning("backward_pawn [{where}]"),
    "{target} <=> backward",
    "{target} <=> backward_pawn",
    "{target} <be/stay/lag> +behind",
    "{target} <trail>",
    "{target} <trail> {neighbours}",
    "{target} <trail> behind {neighbours}",
    "{target} <=> {backward_one}",
    "[{agent}] <leave/make> {target} backward",
    "<*> backward_pawn [{where}]",
    "<be:leave> {target} +behind",
)


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    return [read_pawns(KIND.id, here, slots, backward)]


def check(claim: Claim, ask: Ask) -> Judgement:  # noqa: ARG001 - a board fact asks no search
    return check_pawns(claim, backward, "backward", _reason)


def _reason(board: Board, side: str, at: str) -> str:
    return backwardness(board, side, at)[1]


KIND = Kind(
    id="backward-pawn",
    title="Backward pawn",
    version=1,
    definition="No own pawn on a neighbouring file is level with the pawn or behind it, one is further on, and it cannot step forward safely: an enemy pawn attacks the next square, an enemy piece stands on it, or more enemy men attack it than own pieces protect it.",
    source='"Backward Pawn", Chess Programming Wiki (from memory); when a step is safe: common practice',
    slots={
        **SLOTS,
    },
    frames=FRAMES,
    tests={
        "neighbours": lambda n: (
            n.head
            if n.head in {"neighbour", "pawn", "colleague", "comrade", "companion"} and n.plural
            else None
        ),
        "backward_one": lambda n: (
            n.head if n.head == "one" and "backward" in n.adjectives else None
        ),
    },
    read=read,
    check=check,
    flips=True,
)
