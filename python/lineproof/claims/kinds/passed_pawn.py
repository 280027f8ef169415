"""Passed pawns: no enemy pawn can stop them or take them on their way."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from lineproof.claims.board import name, other
from lineproof.claims.claim import Ask, Claim, Judgement
from lineproof.claims.here import Here, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.lexicon import NOUNS, members
from lineproof.claims.noun import Noun
from lineproof.claims.owner import SLOTS, owning
from lineproof.claims.pawn_state import STATED, check_pawns, read_pawns
from lineproof.claims.structure import beside, passed, pawns, rank
from lineproof.engine import Board

FRAMES = (
    *owning("passed_pawn [{where}]"),
    "{target} <=> passed",
    "{target} <=> passed_pawn",
    "{target} <have> {no_pawn} (in|on|before|in_front_of|ahead_of) {anything} if negated",
    "{no_pawn} <be> (in|on) way of {target} if negated",
    "<be:pass> {target}",
    "{target} <=> {passed_one}",
    "<*> passed_pawn [{where}]",
    "{side} <have> {special} [{where}]",
    "{side} <have> {free}",
    "<~> {free} [for {side}]",
    "{target} <=> {a_free}",
    "<~> {special} [{where}] [for {side}]",
    "{target} <=> {special}",
    "[{agent}] <make> {target} passed_pawn",
    "[{agent}] <turn> {target} into passed_pawn",
    "[{agent}] <give> {side} {special} [{where}]",
    "{stated} <=> {passed_one}",
    "{stated} <=> passed_pawn",
    "<be:pass> {stated}",
    "{stated} <=> passed",
)


_SPECIAL = {
    **dict.fromkeys(("protected", "supported", "defended"), "protected"),
    **dict.fromkeys(("outside", "distant", "remote", "dangerous", "extra"), ""),
    **dict.fromkeys(("connected", "united", "linked"), "connected"),
}
_PASSED = members("passed pawn", NOUNS)


def _special(noun: Noun) -> str | None:
    """A passed pawn that is called something, and how many: "connected|2", "protected|"."""
    called = [a for a in noun.adjectives if a in _SPECIAL]
    if len(called) != 1 or noun.head not in _PASSED or noun.no:
        return None
    return f"{_SPECIAL[called[0]]}|{noun.count or ''}"


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    if "free" in slots:
        slots["where"] = slots["free"]
    quality, _, count = slots.get("special", "").partition("|")
    if count:
        slots["n"] = count
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
    slots=SLOTS,
    frames=FRAMES,
    tests={
        "stated": lambda n: (
            f"{n.whose or 'the'} {n.head}"
            if n.head in STATED and not n.no and not n.plural
            else None
        ),
        "no_pawn": lambda n: (
            n.head
            if n.no
            and n.head == "pawn"
            and {"enemy", "opposing", "hostile", "black", "white"}
            & {*n.adjectives, *n.whose.split()}
            else None
        ),
        "special": _special,
        "a_free": lambda n: (
            n.head if n.head == "pawn" and "free" in n.adjectives and not n.no else None
        ),
        "free": lambda n: (
            f"on {n.square}"
            if n.head == "pawn" and "free" in n.adjectives and not n.no and n.square
            else None
        ),
        "passed_one": lambda n: n.head if n.head == "one" and "passed" in n.adjectives else None,
    },
    read=read,
    check=check,
    flips=True,
)
