"""Castled: who has brought the king away."""

from __future__ import annotations

import re
from typing import Any

from lineproof.claims.board import pieces, title
from lineproof.claims.castling import WINGS, castled, may_have_castled_before
from lineproof.claims.claim import Ask, Claim, Judgement, Outcome
from lineproof.claims.here import Here, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.king import owner
from lineproof.claims.slot import SLOTS

_WINGS: dict[str, Any] = {
    **dict.fromkeys(("kingside", "king side", "on the kingside", "short", "to the kingside", "on the king 's side"), "king"),
    **dict.fromkeys(("queenside", "queen side", "on the queenside", "long", "to the queenside", "on the queen 's side"), "queen"),
    **dict.fromkeys(("on opposite sides", "on opposite wings", "on different sides", "on different wings", "to opposite sides"), "opposite"),
    **dict.fromkeys(("on the same side", "on the same wing"), "same"),
}  # fmt: skip


_FLANKS = ("kingside", "queenside")

FRAMES = (
    "{side} <go> {short}",
    "[{side}] <shelter/put/hide/get/tuck> {king} [+away] on {refuge}",
    "{king} <be> (on|in) {flank}",
    "{side} <be> on {hand}",
    "<~> {kings} on {wing}",
    "<~> {opposite}",
    "{two} <castle> [{wing}]",
    "{two} <castle> (on|to) {wing}",
    "<be:castle> {two} (on|to) {wing}",
    "<be:castle> {two} [{wing}]",
    "[{side}] <bring/put/tuck/take/move/walk> {king} (to|on_to) {flank}",
    "{king} <go/move/run/flee> (to|on_to) {flank}",
    "{side} <castle> (on|to) {wing}",
    "{side} <castle> [{wing}] if without=on|to",
    "<be:castle> {side} (on|to) {wing}",
    "<be:castle> {side} [{wing}] if without=on|to",
    "{king} <castle> (on|to) {wing}",
    "{king} <castle> [{wing}] if without=on|to",
    "<be:castle> {king} (on|to) {wing}",
    "<be:castle> {king} [{wing}] if without=on|to",
    "{both} <castle> (on|to) {wing}",
    "{both} <castle> [{wing}] if without=on|to",
    "<be:castle> {both} (on|to) {wing}",
    "<be:castle> {both} [{wing}] if without=on|to",
    "{neither} <castle> (on|to) {wing}",
    "{neither} <castle> [{wing}] if without=on|to",
    "{side} <=> uncastled ; not=yes",
    "{king} <=> uncastled ; not=yes",
)


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    verb = slots.get("verb")
    if "two" in slots or "kings" in slots or "opposite" in slots:
        slots["both"] = True
    if "opposite" in slots and verb is None:
        raise Unread("it is told of castling by the way")
    if "opposite" in slots:
        slots["wing"] = "opposite"
    if "kings" in slots and slots.get("wing") not in {"opposite", "same"}:
        raise Unread("it is not clear where the kings stand")
    if "hand" in slots and here.taught != "white":
        raise Unread("left and right are the other way round for Black")
    wing = (
        slots.get("refuge")
        or slots.get("hand")
        or slots.get("wing")
        or slots.get("short")
        or slots.get("flank")
    )
    if verb is not None and verb.modal:
        raise Unread("said of castling that may come")
    denied = "not" in slots or re.search(r"\bnot\b|n['’]t\b|\byet to\b", here.said) is not None
    # KIND.flips turns a denial that the verb itself carries
    negated = denied and not (verb is not None and verb.negated)
    if "both" in slots or "neither" in slots:
        wings = dict.fromkeys(("white", "black"), wing if wing in WINGS else None)
        negated = "neither" in slots or negated
        if wing in {"opposite", "same"} and negated:
            raise Unread("it is not clear which part is denied")
        return [
            here.claim(
                KIND.id,
                side,
                negated=negated,
                wing=w,
                mutual=wing if wing in {"opposite", "same"} else None,
            )
            for side, w in wings.items()
        ]
    if wing in {"opposite", "same"}:
        raise Unread("one side alone does not castle on opposite wings")
    if (
        "side" in slots
        and "king" in slots
        and slots["king"].split()[0] not in {"his", "their", "our", "the"}
        and owner(here, slots["king"]) != here.side(slots["side"])
    ):
        raise Unread("a side does not bring the other's king away")
    side = here.side(slots["side"]) if "side" in slots else owner(here, slots["king"])
    went = "short" in slots or "flank" in slots
    if not denied and (
        re.search(r"\b(?:castles|castle|castling)\b", here.said)
        or (went and not (verb is not None and verb.done))
    ):
        _just_castled(here, side)
    return [here.claim(KIND.id, side, negated=negated, wing=wing, mutual=None)]


def _just_castled(here: Here, side: str) -> None:
    """ "White castles" tells the move just played; without it, it speaks of what comes.

    :raises Unread: when it was not castling.
    """
    last = here.last()
    if last.side != side or not last.before.board.san(last.uci).startswith("O-O"):
        raise Unread("the move just played is not castling")


def check(claim: Claim, ask: Ask) -> Judgement:  # noqa: ARG001 - a board fact asks no search
    spot, side = claim.spot, claim.side or "white"
    wing, mutual = claim.params["wing"], claim.params["mutual"]
    who = title(side)
    done = castled(spot, side)
    king = pieces(spot.board, side, "k")[0]
    if done is None and may_have_castled_before(spot, side):
        because = f"{who} may have castled before the first move that is known; the king stands on {king}."
        return Judgement(Outcome.UNSETTLED, because, (), spot)
    if done is None:
        because, holds = f"{who} has not castled; the king stands on {king}.", False
    else:
        because = f"{who} has castled on the {done}side."
        holds = wing in (None, done)
        other = castled(spot, "black" if side == "white" else "white")
        if mutual is not None:
            holds = other is not None and (other == done) == (mutual == "same")
    return Judgement(
        Outcome.HOLDS if holds else Outcome.FAILS, because, (), spot, {"king": king},
        instead=None if holds else because,
    )  # fmt: skip


KIND = Kind(
    id="castled",
    title="Castled",
    version=1,
    definition="The side has castled in the moves that led here, on the wing named; where they do not begin with a right to castle, it cannot be known.",
    source="FIDE Laws of Chess, article 3.8.2",
    slots={
        "wing": _WINGS,
        "short": {"short": "king", "long": "queen"},
        
        "both": dict.fromkeys(("both sides", "both players", "both kings", "both", "we both", "white and black", "they both"), True),
        "neither": dict.fromkeys(("neither side", "neither player", "neither king", "nobody", "neither of them"), True),
    },
    frames=FRAMES,
    tests={
        "hand": lambda n: {"left": "queen", "right": "king"}.get(n.head) if n.det == "the" and not n.adjectives else None,
        "refuge": lambda n: {"g": "king", "h": "king", "b": "queen", "c": "queen"}.get(n.square[0]) if n.type == "square" and n.square[1:] in {"1", "8"} else None,
        "kings": lambda n: n.head if n.head == "king" and n.plural and not n.square else None,
        "opposite": lambda n: n.head if n.head == "castling" and "opposite" in n.adjectives and not n.no else None,
        "two": lambda n: n.text if n.plural and ((n.head in {"side", "player"} and n.count == 2) or n.head == "king") and not n.parts else None,
        "flank": lambda n: n.head.removesuffix("side") if n.head in _FLANKS else None, "both": lambda n: n.text if n.text in {"each side", "each player", "everybody", "everyone", "both sides", "both players", "both kings"} else None, "neither": lambda n: n.text if n.text in {"neither side", "neither player", "nobody", "no one", "neither king"} else None, "side": lambda n: SLOTS["side"](n) if "both" not in n.text and "neither" not in n.text else None},
    read=read,
    check=check,
    flips=True,
)  # fmt: skip
