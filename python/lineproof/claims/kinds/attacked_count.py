"""How often a square or piece is attacked."""

from __future__ import annotations

from typing import Any

from lineproof.claims.board import layers, other
from lineproof.claims.claim import Ask, Claim, Judgement
from lineproof.claims.counting import (
    NUMBERS,
    OFTEN,
    TARGET,
    TIMES,
    among,
    attacking_side,
    judged,
    side_or_count,
    square_meant,
)
from lineproof.claims.here import Here, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.noun import Noun
from lineproof.claims.pointing import alone, present

_HIT = "attack/hit/strike at/aim at/bear down on/bear on/target/train on/press on/look at/eye"
_MEN = "(pieces|attackers|men|units|white pieces|black pieces|of our pieces|of his pieces|of white 's pieces|of black 's pieces)"
_DEFENDED = "(protected|defended|guarded|covered)"

PHRASES = (
    f"{{target}} <be:attack/hit> {{times}} [by {{agent}}] [and [only] {_DEFENDED} {{defends}}|but {_DEFENDED} {{defends}}|but only {_DEFENDED} {{defends}}]",
    "{target} <be:defend/protect/guard/cover> {defends} (and|but) [only] (attacked|hit) {times}",
    "{target} <be:attack/hit> by {n_men} (pieces|attackers|men|units|white pieces|black pieces|of our pieces|of his pieces)",
    "{target} <be:attack/hit> by (both {men}|{men})",
    f"{{target}} <be:attack/hit> {{often}} (it is [{_DEFENDED}]|{_DEFENDED})",
    "[{agent}] <attack/hit/strike at/target> {target} {times}",
    f"{{n_men}} {_MEN} <{_HIT}> {{target}}",
    "{side} <have> {n_men} (attackers|pieces|men) (on|against|aimed at|attacking|hitting|trained on) {target}",
    "{target} <have> {n_men} attackers",
    "there <be> {n_men} (attackers|attacks|pieces|white pieces|black pieces) (on|against|aimed at|attacking) {target}",
    f"both {{men}} <{_HIT}> {{target}}",
    f"{{men}} (both|now both|already both) <{_HIT}> {{target}}",
    "{nothing} (attacks|hits|attacks or threatens) {target}",
    "{target} <be:attack/hit> by {nothing}",
    "[only|just] attacked {times} [by {agent}]",
)


FRAMES = (
    "[{agent}] <attack> {target} {times}",
    "(piece|attacker) <attack> {target} ; counted=yes",
    "{men} <attack> {target}",
    "{target} <=> under fire from {men}",
    "<be:attack> {target} by {men}",
    "<be:attack> {target} {times}",
    "{side} <have> attacker (on|against) {target} ; counted=yes",
    "{men} <make> attacker (on|against|of) {target}",
    "<~> attacker (on|against|of) {target} ; counted=yes",
    "{target} <have> attacker ; counted=yes",
    "{nobody} <attack> {target} ; nothing=yes",
    "piece <attack> {target} ; negated=yes nothing=yes",
    "<be:attack> {target} by (piece|attacker) ; counted=yes",
)


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
    else:
        said = next(
            (
                s
                for s in ("white", "black")
                if f"{s} pieces" in here.said or f"{s}'s pieces" in here.said
            ),
            None,
        )
    there = here.at(spot)
    at, holder = square_meant(there, slots.get("target"), None if said is None else other(said))
    by: list[str] = []
    if "men" in slots:
        enemy = [said] if said else ["white", "black"] if holder is None else [other(holder)]
        hit = {s for side in enemy for layer in layers(spot.board, side, at) for s in layer}
        by = among(there, slots["men"], hit)
    if by and said is None:
        said = "white" if (spot.board.piece_at(by[0]) or "K").isupper() else "black"
    side = attacking_side(holder, said)
    n = 0 if "nothing" in slots else slots.get("times", slots.get("n_men", slots.get("count")))
    if n is None and "often" not in slots and "men" not in slots:
        raise Unread("it is not said how often")
    claims = [here.claim(KIND.id, side, spot=spot, at=at, n=n, by=by, compared=slots.get("often"))]
    if "defends" in slots:
        claims.append(
            here.claim("defended-count", other(side), spot=spot, at=at, n=slots["defends"])
        )
        if slots["verb"].negated:
            raise Unread("it is not clear which of the two counts is denied")
    return claims


def check(claim: Claim, ask: Ask) -> Judgement:  # noqa: ARG001 - a board fact asks no search
    return judged(claim, "attacks", "attacked")


def several(noun: Noun) -> str | None:
    """A list of pieces, or several."""
    return noun.text if noun.type == "piece" and len(noun.parts) > 1 else None


KIND = Kind(
    id="attacked-count",
    title="Attacked n times",
    version=1,
    definition="So many pieces of the side attack the square, counted exactly, pinned ones too, without or with the pieces lined up behind: either may be meant, and the finding says which. 'More often than protected' asks one of these counts against the same count of the other side; pieces named must be among the attackers.",
    phrases=PHRASES,
    slots={
        "times": TIMES,
        "defends": TIMES,
        "n_men": NUMBERS,
        "often": OFTEN,
        "nothing": dict.fromkeys(("nothing", "nobody", "no one", "none of his pieces", "none of our pieces", "no piece", "nothing at all"), True),
    },
    patterns={
        "target": TARGET,
        "men": r"(?:(?: the| his| her| our| your| their| black 's| white 's| a)?(?: (?:queen|rook|bishop|knight|pawn|king))(?: on [a-h][1-8])?)(?: ,)?(?: and)?(?:(?: the| his| her| our| your| their| a)? (?:queen|rook|bishop|knight|pawn|king)(?: on [a-h][1-8])?)",
    },
    vocabulary=frozenset(
        ["attacked", "attacks", "attack", "attacking", "hit", "hits", "attackers", "aim", "aims", "aimed", "bear", "strike", "strikes", "target", "targets", "eye", "look", "press", "trained"]
    ),
    frames=FRAMES,
    tests={"men": several},
    read=read,
    check=check,
    flips=True,
)  # fmt: skip
