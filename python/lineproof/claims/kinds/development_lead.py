"""Lead in development, counted."""

from __future__ import annotations

from typing import Any

from lineproof.claims.board import HOME_MINORS, other, pieces, title
from lineproof.claims.castling import castled
from lineproof.claims.claim import Ask, Claim, Judgement, Outcome, Spot
from lineproof.claims.here import Here
from lineproof.claims.kind import Kind
from lineproof.claims.timing import as_it_stands

LEAD = 2
"""Tempi that make a lead (common practice)."""


FRAMES = (
    "{side} <lead> (in|with) development",
    "{side} <trail> (in|with) development [+behind] ; behind=yes",
    "{side} <=> {further}",
    "{side} <have> {more_pieces} +out",
    "{side} <have> {more_pieces} (in|into) (play|game)",
    "{side} <have> {more_pieces} developed",
    "{side} <be> (in|with) development +ahead",
    "{side} <be> (in|with) development +behind ; behind=yes",
    "{side} <be> {n} (in|with) development +ahead",
    "{side} <be> {n} in_front_of development",
    "{side} <have> lead in development",
    "[{agent}] <give> {side} lead in development",
    "<~> lead in development [for {side}]",
    "{side} <trail> (in|with) development ; behind=yes",
    "{side} <be> {n} in development +behind ; behind=yes",
    "development <=> {equal}",
    "{side} <be> {moves} +ahead",
    "{side} <have> {a_lead} in development",
    "{their_development} <=> {better}",
    "<*> lead in development",
    "development <=> {ours}",
    "{whose_development} <=> {anything} [for {target}]",
    "{side} <have> {quicker}",
    "{side} <have> lead of {moves} [in development]",
    "{neither} <lead> in development ; equal=yes safe=yes",
    "{neither} <be> in development +ahead ; equal=yes safe=yes",
    "{neither} <have> lead in development ; equal=yes safe=yes",
    "{side} <be> {n} in development +down ; behind=yes",
    "{side} <be> {n} in development +up",
    "{side} <be> {n} in front [(in|with) development]",
    "{side} <be> in front in development",
    "{side} <be> in front with development",
    "{side} <be> {moves} +behind ; behind=yes",
    "{side} <be> {moves} in front",
    "{side} <lead> by {moves} [in development]",
    "{side} <lead> in development by {moves}",
    "{both} <=> {equal} in development",
    "{side} <trail> by {moves} in development ; behind=yes",
    "{side} <trail/lag> {moves} +behind ; behind=yes",
    "{side} <trail/lag> {moves} in development [+behind] ; behind=yes",
)


_BETTER = frozenset({"better", "quicker", "faster", "superior"})
_WHOSE = {"ours": "our", "his": "his", "theirs": "their", "hers": "his", "yours": "our"}


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    as_it_stands(here, slots)
    if "their_development" in slots:
        return [here.claim(KIND.id, here.side(slots["their_development"]), n=None)]
    if "moves" in slots:
        slots["n"] = slots["moves"]
    for slot in ("ours", "whose_development"):
        if slot in slots:
            return [here.claim(KIND.id, here.side(slots[slot]), n=None)]
    if "equal" in slots:
        verb = slots.get("verb")
        denied = "neither" in slots and verb is not None and verb.negated
        return [here.claim(KIND.id, "white", n=0, negated=denied)]
    side = here.side(slots.get("side", slots.get("whose")))
    if "behind" in slots:
        side = other(side)
    return [here.claim(KIND.id, side, n=int(slots["n"]) if "n" in slots else None)]


def tempi(spot: Spot, side: str) -> tuple[int, list[str]]:
    """Developing tempi of a side, and what they are.

    A minor piece off its first square counts one, castling one, a pawn move that frees a bishop one for each
    bishop; an exposed queen counts none. A captured minor piece no longer counts.
    """
    board = spot.board
    found: list[str] = []
    home = HOME_MINORS[side]
    rank, pawns = ("1", "2") if side == "white" else ("8", "7")
    own = {at: (board.piece_at(at) or "").lower() for at in pieces(board, side)}
    for letter, word in (("n", "knight"), ("b", "bishop")):
        for at in pieces(board, side, letter):
            if home.get(at) != letter:
                found.append(f"{word} {at}")
    if castled(spot, side):
        found.append("castling")
    for bishop, freeing in (("c" + rank, "bd"), ("f" + rank, "eg")):
        moved = [f for f in freeing if own.get(f + pawns) != "p"]
        if moved:
            best = "d" if "d" in moved else "e" if "e" in moved else moved[0]
            found.append(f"the {best}-pawn, which frees the bishop of {bishop}")
    return len(found), found


def check(claim: Claim, ask: Ask) -> Judgement:  # noqa: ARG001 - a board fact asks no search
    side, n = claim.side or "white", claim.params["n"]
    own, mine = tempi(claim.spot, side)
    enemy, theirs = tempi(claim.spot, other(side))
    lead = own - enemy
    if n == 0:
        holds = abs(lead) < LEAD
    elif n is None:
        holds = lead >= LEAD
    else:
        holds = lead >= 1 and abs(lead - n) <= 1
    because = f"{title(side)} has {own} developing tempi ({', '.join(mine) or 'none'}), {title(other(side))} {enemy} ({', '.join(theirs) or 'none'})."
    if abs(lead) >= LEAD:
        instead = (
            f"{title(side if lead > 0 else other(side))} leads in development by {abs(lead)} tempi."
        )
    else:
        instead = "Neither side leads in development by two tempi or more."
    return Judgement(
        Outcome.HOLDS if holds else Outcome.FAILS,
        because,
        (),
        claim.spot,
        {"tempi": own, "opponent": enemy, "lead": lead},
        instead=None if holds else instead,
    )


KIND = Kind(
    id="development-lead",
    title="Lead in development",
    version=1,
    definition=(
        "A minor piece off its first square, castling, and a pawn move that frees a bishop count one each (one for each bishop); an exposed queen counts none. "
        "A lead is two or more; 'n tempi' is within one of n and at least one."
    ),
    formula=f"lead = tempi(side) - tempi(other); a lead: lead >= {LEAD}; n tempi: max(1, n - 1) <= lead <= n + 1",
    slots={
        "better": dict.fromkeys(
            (
                "better",
                "superior",
                "quicker",
                "faster",
                "further on",
                "further along",
                "further advanced",
                "more advanced",
                "ahead",
                "well ahead",
            ),
            True,
        ),
        "further": dict.fromkeys(
            ("better developed", "further developed", "more developed", "more fully developed"),
            True,
        ),
        "equal": dict.fromkeys(
            ("level", "equal", "even", "about level", "about equal", "balanced"), True
        ),
    },
    frames=FRAMES,
    tests={
        "more_pieces": lambda n: (
            n.head if n.head == "piece" and "more" in n.adjectives and not n.no else None
        ),
        "neither": lambda n: (
            n.text if n.text in {"neither side", "neither player", "nobody"} else None
        ),
        "both": lambda n: (
            n.text
            if n.text in {"both sides", "both players"} or (n.head == "side" and n.plural)
            else None
        ),
        "a_lead": lambda n: (
            n.head
            if n.head in {"lead", "edge", "advantage", "plus"}
            and n.det in {"a", "an", "the"}
            and not n.no
            else None
        ),
        "their_development": lambda n: n.whose or None if n.head == "development" else None,
        "moves": lambda n: (
            str(n.count or 1) if n.head in {"move", "tempo", "tempi"} and n.type == "noun" else None
        ),
        "ours": lambda n: _WHOSE.get(n.head) if n.type == "pronoun" else None,
        "whose_development": lambda n: (
            n.whose if n.head == "development" and _BETTER & set(n.adjectives) and n.whose else None
        ),
        "quicker": lambda n: (
            n.head if n.head == "development" and _BETTER & set(n.adjectives) else None
        ),
        "n": lambda n: (
            str(n.count)
            if n.count is not None and n.head in {"move", "tempo", "piece", "tempi"}
            else None
        ),
    },
    read=read,
    check=check,
    flips=True,
)
