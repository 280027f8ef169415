"""How often a square or piece is protected."""

from __future__ import annotations

from typing import Any

from lineproof.claims.board import layers, side_of
from lineproof.claims.claim import Ask, Claim, Judgement
from lineproof.claims.counting import (
    OFTEN,
    TIMES,
    among,
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
    "[{agent}] <defend> {target} {times}",
    "[{agent}] <defend> {target} {often}",
    "<be:defend> {target} {times}",
    "<be:defend> {target} {often}",
    "(piece|defender) <defend> {target} ; counted=yes",
    "<be:defend> {target} by (piece|defender) ; counted=yes",
    "{side} <have> (defender|piece) (on|for|of) {target} ; counted=yes",
    "<~> defender (on|for|of) {target} ; counted=yes",
    "{target} <have> defender ; counted=yes",
    "[{agent}] <make> defender (on|for|of) {target} ; counted=yes makes=yes",
    "{side} <have> defender [at {target}] ; counted=yes",
    "{target} <have> {nth}",
    "{target} <have/rely on/depend on> {sole} ; once=yes",
    "{target} <have/rely on/depend on> {defender} as {sole}",
    "[{agent}] <add/bring/give/be> {nth} (to|on|for|of) {target}",
    "[{agent}] <give> {target} {nth}",
    "{defender} <defend> {target} +only|alone",
    "{men} <defend> {target}",
    "<be:defend> {target} by {men}",
    "{defender} <=> {sole} of {target}",
    "{sole} of {target} <=> {defender}",
    "{target} <have> {defender} as {sole}",
    "{target} <have> {defender} +only|just",
    "[{side}] <have> defender (apart_from|except|but|other_than|besides|aside_from) {defender} [(at|for|of|on) {target}] if negated",
    "{target} <have> defender (apart_from|except|but|other_than|besides|aside_from) {defender} if negated",
    "{nobody} <defend> {target} (apart_from|except|but|other_than|besides|aside_from) {defender}",
)


_ORDINALS = {"first": "1", "second": "2", "third": "3", "fourth": "4", "fifth": "5"}


def _nth(noun: Noun) -> str | None:
    """The count in "a third protector"."""
    if noun.head not in NOUNS["defender"]:
        return None
    return next((_ORDINALS[a] for a in noun.adjectives if a in _ORDINALS), None)


def _sole(noun: Noun) -> str | None:
    """ "Only defender"."""
    lone = {"only", "sole", "lone", "single", "one", "last"} & set(noun.adjectives)
    return noun.head if noun.head in NOUNS["defender"] and (lone or noun.count == 1) else None


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
    if "nth" in slots:
        slots["nth"] = int(slots["nth"])
    there = here.at(spot)
    by: list[str] = []
    if "once" in slots:
        slots["times"] = 1
    n = slots.get("times", slots.get("nth", slots.get("count")))
    if n is None and "often" not in slots and not {"defender", "men"} & slots.keys():
        raise Unread("it is not said how often")
    at, holder = square_meant(there, slots.get("target"), said)
    sides = [holder] if holder else ["white", "black"]
    if "men" in slots:
        held = {s for side in sides for layer in layers(spot.board, side, at) for s in layer}
        by, n = among(there, slots["men"], held, near=at), None
        said = side_of(spot.board.piece_at(by[0]) or "K")
    elif "defender" in slots:
        held = {s for side in sides for layer in layers(spot.board, side, at) for s in layer}
        by, n = among(there, slots["defender"], held, near=at), 1
        if len(by) != 1:
            raise Unread(f"{slots['defender']!r} are several")
        said = side_of(spot.board.piece_at(by[0]) or "K")
    if holder is None and said is None:
        raise Unread("the square is empty, and it is not said who protects it")
    if None not in (holder, said) and holder != said:
        raise Unread("a side does not protect a piece of the other")
    return [
        here.claim(
            KIND.id, holder or said, spot=spot, at=at, n=n, by=by, compared=slots.get("often")
        )
    ]


def check(claim: Claim, ask: Ask) -> Judgement:  # noqa: ARG001 - a board fact asks no search
    return judged(claim, "protects", "protected")


KIND = Kind(
    id="defended-count",
    title="Protected n times",
    version=1,
    definition="So many pieces of the side protect the square or its piece there, counted exactly, pinned ones too, without or with the pieces lined up behind: either may be meant, and the finding says which. 'As often as attacked' asks one of these counts against the same count of the other side; the only protector must be the only one.",
    slots={"times": TIMES, "often": OFTEN},
    frames=FRAMES,
    tests={"men": several, "nth": _nth, "sole": _sole},
    read=read,
    check=check,
    flips=True,
)  # fmt: skip
