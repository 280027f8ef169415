"""How often a square or piece is attacked."""

from __future__ import annotations

import re
from typing import Any

from lineproof.claims.board import layers, other
from lineproof.claims.claim import Ask, Claim, Judgement
from lineproof.claims.counting import (
    OFTEN,
    TIMES,
    among,
    attacking_side,
    judged,
    several,
    side_or_count,
    square_meant,
)
from lineproof.claims.here import Here, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.lexicon import NOUNS
from lineproof.claims.noun import Noun
from lineproof.claims.pointing import alone, present

FRAMES = (
    "[{agent}] <attack> {target} {times}",
    "[{agent}] <attack> {target} {often}",
    "<be:attack> {target} {often}",
    "(piece|attacker) <attack> {target} ; counted=yes",
    "{men} <attack> {target}",
    "{nth_man} <join/enter> attack (on|against) {target}",
    "{nth_man} <attack> {target}",
    "{target} <=> under fire from {men}",
    "{target} <=> under fire from (piece|attacker) ; counted=yes",
    "{target} <=> under fire {times}",
    "<be:attack> {target} by {men}",
    "<be:attack> {target} {times}",
    "{side} <have> (attacker|piece) (on|against) {target} ; counted=yes",
    "{men} <make> attacker (on|against|of) {target}",
    "<~> attacker (on|against|of) {target} ; counted=yes",
    "{target} <have> attacker ; counted=yes",
    "[{agent}] <make> attacker (on|against|of) {target} ; counted=yes makes=yes",
    "[{agent}] <add/bring/be> {nth} (to|on|against|of) {target}",
    "[{agent}] <~> {twofold} (on|against) {target}",
    "{nobody} <attack> {target} ; nothing=yes",
    "piece <attack> {target} ; nothing=yes if negated",
    "<be:attack> {target} by (piece|attacker) ; counted=yes",
)


_ORDINALS = {"first": 1, "second": 2, "third": 3, "fourth": 4, "fifth": 5}


def _nth(noun: Noun) -> str | None:
    """The count in "a third attacker", "a second pair of eyes"."""
    if noun.head not in {*NOUNS["attacker"], "pair of eyes"}:
        return None
    return next((a for a in noun.adjectives if a in _ORDINALS), None)


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    present(slots.get("verb"))
    alone(here)
    spot, said = here.spot, None
    if "agent" in slots:
        side_or_count(here, slots["agent"], slots.get("times"))
        agent = here.agent(slots["agent"])
        spot, said = agent.spot, agent.side
    elif "side" in slots:
        said = here.side(slots["side"])
    elif "whose" in slots:
        said = here.side(slots["whose"])
    there = here.at(spot)
    victim = None if said is None else other(said)
    target = slots.get("target")
    if victim is None and target is not None and here.spot.moves and len(here.find(target)) > 1:
        enemy = here.find(target, other(here.mover))
        victim = other(here.mover) if enemy else None  # "three pieces hit the knight": theirs
    at, holder = square_meant(there, target, victim)
    by: list[str] = []
    if "men" in slots:
        enemy = [said] if said else ["white", "black"] if holder is None else [other(holder)]
        hit = {s for side in enemy for layer in layers(spot.board, side, at) for s in layer}
        by = among(there, slots["men"], hit, near=at)
    if by and said is None:
        said = "white" if (spot.board.piece_at(by[0]) or "K").isupper() else "black"
    side = attacking_side(holder, said)
    n = 0 if "nothing" in slots else slots.get("times", slots.get("count"))
    if "nth_man" in slots:
        slots["nth"] = slots["nth_man"]
    if "nth" in slots:
        n = _ORDINALS[slots["nth"]]
    if "twofold" in slots:
        if not re.fullmatch("[a-h][1-8]", target or ""):
            raise Unread("it may be a fork")
        n = 2
    if n is None and "often" not in slots and "men" not in slots:
        raise Unread("it is not said how often")
    return [here.claim(KIND.id, side, spot=spot, at=at, n=n, by=by, compared=slots.get("often"))]


def check(claim: Claim, ask: Ask) -> Judgement:  # noqa: ARG001 - a board fact asks no search
    return judged(claim, "attacks", "attacked")


KIND = Kind(
    id="attacked-count",
    title="Attacked n times",
    version=1,
    definition="So many pieces of the side attack the square, counted exactly, pinned ones too, without or with the pieces lined up behind: either may be meant, and the finding says which. 'More often than protected' asks one of these counts against the same count of the other side; pieces named must be among the attackers.",
    slots={"times": TIMES, "often": OFTEN},
    frames=FRAMES,
    tests={
        "men": several,
        "twofold": lambda n: n.head if n.head in {"double attack", "double hit"} and not n.plural else None,
        "nth": _nth,
        "nth_man": lambda n: next((a for a in n.adjectives if a in _ORDINALS), None) if n.head in NOUNS["piece"] else None,
    },
    read=read,
    check=check,
    flips=True,
)  # fmt: skip
