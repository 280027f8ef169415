"""Kings in the centre: not castled, on the d- or e-file."""

from __future__ import annotations

from typing import Any

from lineproof.claims.board import pieces, title
from lineproof.claims.castling import WINGS, castled, possible
from lineproof.claims.claim import Ask, Claim, Judgement, Mark, Outcome
from lineproof.claims.here import Here, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.king import owner
from lineproof.claims.timing import as_it_stands

FRAMES = (
    "{king} <be/stay/stick> in centre",
    "{king} <be/stay/stick> on {square}",
    "{king} <=> stuck|stranded in centre ; stuck=yes",
    "{king} <=> stuck|stranded on {square} ; stuck=yes",
    "<be:stick/catch/trap/strand/maroon/keep/hold> {king} in centre ; stuck=yes",
    "<be:stick/strand/catch> {king} on {square} ; stuck=yes",
    "{king} <stick> on {square} ; stuck=yes",
    "{king} <leave> centre ; left=yes",
    "{king} <=> {home}",
    "{king} <leave> {home_square} ; left=yes",
    "{king} <be/stay> +home ; home=yes",
    "{side} <have> {king} in centre",
    "{side} <have> {king} on {square}",
    "[{agent}] <keep/catch/hold/leave/trap> {king} in centre ; stuck=yes",
    "{king} <=> {stuck} (in|on) centre",
    "<~> {king} in centre",
    "{king} <remain/stay> on {square} if modal=will",
    "{king} <remain/stay> in centre if modal=will",
    "{both} <be/stay/stick> in centre",
    "{both} <=> stuck|stranded in centre ; stuck=yes",
    "<be:stick/catch/trap/strand/maroon/keep/hold> {both} in centre ; stuck=yes",
)


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    as_it_stands(here, slots)
    if "both" in slots:
        return [
            here.claim(KIND.id, side, home=False, stuck="stuck" in slots)
            for side in ("white", "black")
        ]
    if "king" in slots:
        side = owner(here, slots["king"])
    else:
        side = here.side(slots["whose"])
        if side != here.side(slots["side"]):
            raise Unread("it is not clear whose king is meant")
    square = slots.get("square")
    king = pieces(here.board, side, "k")[0]
    if square is not None and square != king:
        raise Unread(f"no such king stands on {square}")
    stuck = "stuck" in slots
    if square is not None and square[0] not in "de" and not stuck:
        raise Unread("where the king stands is no claim by itself")
    return [here.claim(KIND.id, side, negated="left" in slots, home="home" in slots, stuck=stuck)]


def check(claim: Claim, ask: Ask) -> Judgement:  # noqa: ARG001 - a board fact asks no search
    spot, side = claim.spot, claim.side or "white"
    board, who = spot.board, title(side)
    king = pieces(board, side, "k")[0]
    marks = (Mark("square", (king,), side),)
    wing = castled(spot, side)

    def answer(said: Outcome, because: str) -> Judgement:
        instead = because if said is Outcome.FAILS else None
        return Judgement(said, because, (), spot, {"king": king}, instead=instead, marks=marks)

    if claim.params["home"] and king != ("e1" if side == "white" else "e8"):
        return answer(Outcome.FAILS, f"{who}'s king stands on {king}, not on its first square.")
    if king[0] not in "de":
        if wing is not None:
            because = f"{who} has castled; the king stands on {king}."
            return answer(Outcome.FAILS, because)
        if king[0] in "cf":
            because = f"{who} has not castled, but the king has stepped aside to {king}."
            return answer(Outcome.UNSETTLED, because)
        return answer(Outcome.FAILS, f"{who}'s king stands on {king}.")
    because = f"{who}'s king stands on {king}{' after castling' if wing else ', uncastled'}."
    if not claim.params["stuck"]:
        return answer(Outcome.HOLDS, because)
    rights = [w for w in WINGS if board.may_castle(side, w)]
    free = possible(spot, side, rights)
    if free:
        return answer(Outcome.FAILS, f"{who} can castle now: {' or '.join(free)}.")
    if not rights:
        return answer(Outcome.HOLDS, f"{because[:-1]}, and has lost the right to castle.")
    return answer(Outcome.HOLDS, f"{because[:-1]}, and cannot castle now.")


KIND = Kind(
    id="king-centre",
    title="King in the centre",
    version=1,
    definition=(
        "The king stands on the d- or e-file; on the c- or f-file without having castled it is unsettled, elsewhere it fails. 'Stuck' or 'caught' asks in addition that its side cannot castle now or for good; "
        "'on its first square' asks e1 or e8."
    ),
    slots={
        "home": dict.fromkeys(("at home", "on its original square", "on its first square", "on its starting square", "on his original square"), True),
        "stuck": {k: k for k in ("stuck", "still stuck", "caught", "trapped", "stranded", "marooned", "held up", "pinned down", "tied", "nailed", "left stranded", "left hanging")},
    },
    frames=FRAMES,
    tests={
        "both": lambda n: n.text if n.text == "both kings" else None,
        
        "home_square": lambda n: (
            n.head
            if n.head in {"square", "place"}
            and {"original", "first", "starting", "initial", "home"} & set(n.adjectives)
            else None
        ),
    },
    read=read,
    check=check,
    flips=True,
)  # fmt: skip
