"""How often a square or piece is protected."""

from __future__ import annotations

from typing import Any

from lineproof.claims.board import layers, other, side_of
from lineproof.claims.claim import Ask, Claim, Judgement
from lineproof.claims.counting import (
    NUMBERS,
    OFTEN,
    TARGET,
    TIMES,
    among,
    judged,
    side_or_count,
    square_meant,
)
from lineproof.claims.here import Here, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.lexicon import NOUNS
from lineproof.claims.noun import Noun
from lineproof.claims.pointing import alone, present

_KEEP = "defend/protect/guard/cover"
_MEN = "(pieces|defenders|protectors|men|units|of our pieces|of his pieces|of white 's pieces|of black 's pieces|white pieces|black pieces)"

PHRASES = (
    f"{{target}} <be:{_KEEP}> {{times}} [by {{side}}]",
    f"{{target}} <be:{_KEEP}> by {{n_men}} {_MEN}",
    f"{{target}} <be:{_KEEP}> {{often}} (it is [attacked|hit]|attacked)",
    f"[{{agent}}] <{_KEEP}> {{target}} {{times}}",
    f"{{n_men}} {_MEN} <{_KEEP}> {{target}}",
    "{target} <have> {n_men} [more] (defenders|protectors|defender|protector)",
    "{side} <have> {n_men} (defenders|protectors|pieces|defender) (for|of|on|defending|protecting|guarding|covering) {target}",
    "there <be> {n_men} (defenders|protectors|defender|protector|pieces) (of|for|defending|protecting|guarding) {target}",
    "{defender} <be> the (only|sole) (defender|protector|guard) of {target}",
    "{target} <have> {defender} as its (only|sole) (defender|protector)",
    f"only {{defender}} <{_KEEP}> {{target}}",
    f"{{target}} <be:{_KEEP}> only by {{defender}}",
    "[only|just|but only] (defended|protected|guarded|covered) {times}",
)


FRAMES = (
    "[{agent}] <defend> {target} {times}",
    "piece <defend> {target} ; counted=yes",
    "{side} <have> defender (on|for|of) {target} ; counted=yes",
    "<~> defender (on|for|of) {target} ; counted=yes",
    "{target} <have> defender ; counted=yes",
    "{side} <have> defender ; counted=yes",
    "{target} <have> {nth}",
    "{defender} <defend> {target} +only|alone",
)


_ORDINALS = {"first": "1", "second": "2", "third": "3", "fourth": "4", "fifth": "5"}


def _nth(noun: Noun) -> str | None:
    """The count in "a third protector"."""
    if noun.head not in NOUNS["defender"]:
        return None
    return next((_ORDINALS[a] for a in noun.adjectives if a in _ORDINALS), None)


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
    elif " our pieces" in here.said:
        said = here.taught
    elif " his pieces" in here.said:
        said = other(here.taught)
    if "nth" in slots:
        slots["nth"] = int(slots["nth"])
    there = here.at(spot)
    by: list[str] = []
    n = slots.get("times", slots.get("n_men", slots.get("nth", slots.get("count"))))
    if n is None and "often" not in slots and "defender" not in slots:
        raise Unread("it is not said how often")
    at, holder = square_meant(there, slots.get("target"), said)
    if "defender" in slots:
        sides = [holder] if holder else ["white", "black"]
        held = {s for side in sides for layer in layers(spot.board, side, at) for s in layer}
        by, n = among(there, slots["defender"], held), 1
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
    phrases=PHRASES,
    slots={"times": TIMES, "n_men": NUMBERS, "often": OFTEN},
    patterns={"target": TARGET},
    vocabulary=frozenset(
        ["defended", "protected", "guarded", "covered", "defend", "protect", "guard", "cover", "defends", "protects", "guards", "covers", "defenders", "protectors", "defender", "protector"]
    ),
    frames=FRAMES,
    tests={"nth": _nth},
    read=read,
    check=check,
    flips=True,
)  # fmt: skip
