"""Passed pawns: no enemy pawn can stop them or take them on their way."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from lineproof.claims.board import name, other
from lineproof.claims.claim import Ask, Claim, Judgement
from lineproof.claims.here import Here, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.owner import SLOTS, owning
from lineproof.claims.pawn_state import check_pawns, pawn_phrases, read_pawns
from lineproof.claims.structure import beside, passed, pawns, rank
from lineproof.claims.where import WHERE
from lineproof.engine import Board

PHRASES = (
    *pawn_phrases(
        "[{quality}] (passed [{file}] (pawn|pawns)|passer|passers)",
        "(passed|a [{quality}] passed pawn|a passer|passed pawns)",
    ),
    "{side} <have/get> a free [{file}] pawn {where}",
    "there <be> a free [{file}] pawn {where}",
    "{target} <be> [{very}] a free pawn",
    "[{agent}] <make> {target} a passed pawn",
    "[{agent}] <turn> {target} into a passed pawn",
)


FRAMES = (
    *owning("passed_pawn [{where}]"),
    "{target} <=> passed",
    "{target} <=> passed_pawn",
    "<be:pass> {target}",
    "{target} <=> {passed_one}",
    "<*> passed_pawn [{where}]",
)


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    quality = slots.get("quality", "")
    if quality == "connected" and "n" not in slots:
        slots["n"] = "2"
    facts = _FACTS[quality]
    if "both" in here.said.split():
        raise Unread("it is not clear which two pawns")
    return [read_pawns(KIND.id, here, slots, facts, quality=quality)]


def check(claim: Claim, ask: Ask) -> Judgement:  # noqa: ARG001 - a board fact asks no search
    quality = claim.params["quality"]
    adjective = f"{quality} and passed" if quality else "passed"
    return check_pawns(claim, _FACTS[quality], adjective, None if quality else _reason)


def _protected(board: Board, side: str) -> list[str]:
    return [
        at
        for at in passed(board, side)
        if any((board.piece_at(g) or "").lower() == "p" for g in board.attackers(side, at))
    ]


def _connected(board: Board, side: str) -> list[str]:
    found = passed(board, side)
    return [at for at in found if any(p[0] in beside(at[0]) for p in found)]


_FACTS: dict[str, Callable[[Board, str], list[str]]] = {
    "": passed,
    "protected": _protected,
    "connected": _connected,
}


def _reason(board: Board, side: str, at: str) -> str:
    enemy = other(side)
    way = pawns(board, enemy, at[0] + beside(at[0]))
    against = [p for p in way if rank(side, p) > rank(side, at)]
    if against:
        return f"has {name(board, against[0])} on its way or beside it"
    return "has no enemy pawn before it on its own file or a neighbouring one"


KIND = Kind(
    id="passed-pawn",
    title="Passed pawn",
    version=1,
    definition="No enemy pawn is ahead of the pawn on its own file or on a neighbouring one. Protected: an own pawn protects it. Connected: two passed pawns on neighbouring files.",
    source='"Passed Pawn", Chess Programming Wiki (from memory)',
    phrases=PHRASES,
    slots={
        **SLOTS,
        "quality": {
            **dict.fromkeys(("strong", "dangerous", "powerful", "mighty", "nice"), ""),
            **dict.fromkeys(("protected", "supported", "defended"), "protected"),
            **dict.fromkeys(("connected", "united"), "connected"),
        },
    },
    patterns={"where": WHERE},
    vocabulary=frozenset({"passed", "passer", "passers", "free"}),
    frames=FRAMES,
    tests={
        "passed_one": lambda n: n.head if n.head == "one" and "passed" in n.adjectives else None
    },
    read=read,
    check=check,
    flips=True,
)
