"""Castling: who cannot, now or for good."""

from __future__ import annotations

import re
from typing import Any

from lineproof.claims.board import pieces, title
from lineproof.claims.castling import possible
from lineproof.claims.claim import Ask, Claim, Judgement, Outcome
from lineproof.claims.here import Here, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.king import owner
from lineproof.claims.lexicon import NOUNS
from lineproof.claims.noun import Noun
from lineproof.claims.timing import as_it_stands

_WINGS = {
    **dict.fromkeys(
        (
            "kingside",
            "king side",
            "on the kingside",
            "short",
            "to the kingside",
            "on the king 's side",
        ),
        "king",
    ),
    **dict.fromkeys(
        (
            "queenside",
            "queen side",
            "on the queenside",
            "long",
            "to the queenside",
            "on the queen 's side",
            "on that side",
        ),
        "queen",
    ),
}


_LASTING = re.compile(
    r"\b(?:any more|any longer|no longer|never|lost|loses|lose|forfeit\w*|given up|gives? up|spoil\w*|surrendered|right|over|gone|again)\b"
)
"""Words that say it is for good."""
_RIGHT = re.compile(r"\bright to castle\b|\brights?\b(?! (?:now|away|here)\b)")
"""What one has is the right, whether or not it can be used now."""


FRAMES = (
    "{side} <castle> (on|to) {wing} if modal=can|may|could|will negated",
    "{side} <castle> [{wing}] if modal=can|may|could|will negated without=on|to",
    "{king} <castle> (on|to) {wing} if modal=can|may|could|will negated",
    "{king} <castle> [{wing}] if modal=can|may|could|will negated without=on|to",
    "[{agent}] <lose> {castling}",
    "[{agent}] <lose/surrender> {castling} ; kept=yes if negated",
    "[{agent}] <cost> {side} {castling}",
    "[{agent}] <rob> {side} of {castling}",
    "{castling} <=> over|gone|history",
    "{castling} <come off>",
    "{castling} <be> [for {side}] +out",
    "{side} <forget/forget_about> {castling} if modal=can|may",
    "<be:go/finish> {castling}",
    "{castling} <go_for> {side}",
    "[{agent}] <prevent/remove> {castling} ; taken=yes",
    "[{agent}] <=> it for {castling}",
    "<~> {none} [for {side}]",
    "{king} <be> (with|without) {none}",
    "{neither} <castle> [{wing}] [(on|to) {flank}] if modal=can|may|could",
    "{side} <=> {impossible}",
    "castling <=> {impossible} [for {side}]",
    "{side} <castle> [{wing}] ; able=yes if modal=can|may without=on|to",
    "{side} <castle> (on|to) {flank} ; able=yes if modal=can|may",
    "{side} <castle> (on|to) {any_wing} ; able=yes if modal=can|may",
    "{king} <castle> [{wing}] ; able=yes if modal=can|may without=on|to",
    "{side} <castle> (on|to) {flank} if modal=can|may|could|will negated",
    "[{agent}] <surrender> {castling}",
    "[{agent}] <surrender> {castling} (on|to) {flank}",
    "{side} <have> {castling} ; able=yes",
    "{side} <have> {none}",
    "[{agent}] <prevent/stop/keep/hinder to castle> {patient_side} [{wing}] ; taken=yes",
    "[{agent}] <rob> {king} of {castling}",
    "{castling} <be/stay> possible [for {side}] ; able=yes",
    "{side} <lack> {castling}",
    "<~> {castling} [for {side}] +no_more",
    "{castling} <=> over|gone|history [for {side}]",
    "{side} <forget> (about|of) {castling} if modal=can",
    "{side} <forget> {castling} if modal=can",
    "{nobody} <prevent/stop/keep/hinder to castle> {patient_side} [{wing}] ; free=yes",
)


def _is_castling(noun: Noun) -> bool:
    return noun.head in NOUNS["castling"] and set(noun.adjectives) <= {
        "more",
        "castling",
    }


_WINGED = re.compile(
    r"\b(?:castling|castle) (kingside|short|queenside|long)\b|\b(kingside|short|queenside|long) castling\b"
)
"""Castling with its wing."""


def _flank(noun: Noun) -> str | None:
    """The wing of "on the short wing", "on the queenside"."""
    if noun.head in {"kingside", "queenside"}:
        return noun.head.removesuffix("side")
    return {"short": "king", "long": "queen"}.get(noun.adjectives[0]) if noun.adjectives else None


def _barred(here: Here) -> str:
    """Of whom "castling is a thing of the past" is said: the only side that has moved its king and never castled.

    :raises Unread: when it is not clear.
    """
    found = []
    for side in ("white", "black"):
        king = pieces(here.board, side, "k")[0]
        if (
            not any(here.board.may_castle(side, wing) for wing in ("king", "queen"))
            and king[0] in "def"
        ):
            found.append(side)
    if len(found) != 1:
        raise Unread("it is not clear who cannot castle")
    return found[0]


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    verb = slots.get("verb")
    if "kept" in slots:
        slots["able"] = True  # "has not forfeited castling"
    as_it_stands(here, slots)
    agent = here.agent(slots["agent"]) if "agent" in slots else None
    spot = here.spot if agent is None else agent.spot
    if (
        verb is not None
        and verb.negated
        and not slots.keys() & {"none", "neither"}
        and not slots.keys() & {"able", "free"}
    ):
        raise Unread("what is denied may be the loss or the right")
    if "able" in slots and re.search(r"\bsoon\b|\bone day\b|\blater\b", here.said):
        raise Unread("said of what may come")
    if "flank" in slots:
        slots["wing"] = slots["flank"]
    if "wing" not in slots and (named := _WINGED.search(here.said)) is not None:
        slots["wing"] = "king" if (named[1] or named[2])[0] in "ks" else "queen"
    if "neither" in slots:
        return [
            here.claim(KIND.id, s, spot=spot, negated=False, wing=slots.get("wing"), lasting=False)
            for s in ("white", "black")
        ]
    lead = slots.get("castling", "").split()[:1]
    if lead and lead[0] in {"his", "our", "their", "white", "black"} and "side" not in slots:
        side = here.side(lead[0])
    elif "patient_side" in slots:
        side = here.side(slots["patient_side"])
    elif "king" in slots:
        side = owner(here, slots["king"])
    elif "side" in slots:
        side = here.side(slots["side"])
    elif "whose" in slots:
        side = here.side(slots["whose"])
        if (
            agent is not None
            and slots["verb"] is not None
            and "taken" not in slots
            and agent.side != side
        ):
            raise Unread("it is not clear who cannot castle")
    elif agent is not None:
        side = agent.side
    elif here.subject is not None:
        side = here.subject
    else:
        side = _barred(here)
    can = "free" in slots or ("able" in slots and not (verb is not None and verb.negated))
    right = can and "castling" in slots and _RIGHT.search(here.said) is not None
    lasting = "kept" in slots or right or (_LASTING.search(here.said) is not None and not can)
    wings = ["king", "queen"] if "any_wing" in slots else [slots.get("wing")]
    return [
        here.claim(KIND.id, side, spot=spot, negated=can, wing=wing, lasting=lasting)
        for wing in wings
    ]


def check(claim: Claim, ask: Ask) -> Judgement:  # noqa: ARG001 - a board fact asks no search
    board, side = claim.spot.board, claim.side or "white"
    wings = [claim.params["wing"]] if claim.params["wing"] else ["king", "queen"]
    rights = [w for w in wings if board.may_castle(side, w)]
    who = title(side)
    where = f" {claim.params['wing']}side" if claim.params["wing"] else ""
    free = possible(claim.spot, side, rights)
    if claim.params["lasting"] and rights and not _king_must_move(claim, side):
        because = f"{who} still has the right to castle{where}."
        numbers: dict[str, int | float | str] = {"rights": " ".join(rights)}
        if claim.negated:
            return Judgement(Outcome.HOLDS, because, (), claim.spot, numbers)
        return Judgement(Outcome.FAILS, because, (), claim.spot, numbers, instead=because)
    if not rights:
        because, cannot = f"{who} has no right to castle{where} any more: for good.", True
    elif _king_must_move(claim, side):
        because, cannot = (
            f"{who} is in check and has only king moves: the right is lost by force.",
            True,
        )
    elif free is None:
        because, cannot = f"{who} is in check and cannot castle now, but keeps the right.", True
    elif not free:
        because, cannot = f"{who} keeps the right to castle{where}, but cannot castle now.", True
    else:
        because, cannot = f"{who} can castle now: {' or '.join(free)}.", False
    holds = cannot != claim.negated
    return Judgement(
        Outcome.HOLDS if holds else Outcome.FAILS,
        because,
        (),
        claim.spot,
        {"rights": " ".join(rights) or "none"},
        instead=None if holds else because,
    )


def _king_must_move(claim: Claim, side: str) -> bool:
    """Whether every legal move of the side is one of its king, so that the right to castle is lost by force."""
    board = claim.spot.board
    legal = board.legal_moves()
    king = "K" if side == "white" else "k"
    steps = [m for m in legal if board.piece_at(m[:2]) == king and not board.san(m).startswith("O")]
    return board.turn == side and bool(legal) and len(steps) == len(legal)


KIND = Kind(
    id="cannot-castle",
    title="Cannot castle",
    version=2,
    definition="The side has no right to castle (on the wing named) any more, or no castling move is legal now: either reading may hold, and the finding says which. Words of loss (lost, no longer, any more, never) ask for the right itself.",
    source="FIDE Laws of Chess, article 3.8.2",
    slots={
        "wing": _WINGS,
        "impossible": {
            k: k
            for k in (
                "impossible",
                "out of the question",
                "no longer possible",
                "not possible",
                "ruled out",
                "over",
                "gone",
                "illegal",
                "history",
                "a thing of the past",
                "off",
            )
        },
    },
    frames=FRAMES,
    tests={
        "any_wing": lambda n: (
            n.text
            if n.text in {"either side", "either wing", "both sides", "both wings", "either flank"}
            else None
        ),
        "patient_side": lambda n: n.text if n.type == "side" else None,
        "castling": lambda n: n.text if _is_castling(n) and not n.no else None,
        "none": lambda n: n.text if _is_castling(n) and n.no else None,
        "neither": lambda n: (
            n.text if n.text in {"neither side", "neither player", "neither"} else None
        ),
        "flank": _flank,
    },
    read=read,
    check=check,
)
