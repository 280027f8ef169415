"""Kings in the centre: not castled, on the d- or e-file."""

from __future__ import annotations

from typing import Any

from lineproof.claims.board import pieces, title
from lineproof.claims.castling import WINGS, castled, possible
from lineproof.claims.claim import Ask, Claim, Judgement, Mark, Outcome
from lineproof.claims.here import Here, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.king import KING, owner
from lineproof.claims.timing import as_it_stands

_CENTRE = "(in the centre|in the center|in the middle|in the middle of the board|on its original square|on its starting square|on its first square|on {square})"

PHRASES = (
    f"{{king}} <be> [{{very}}] {_CENTRE}",
    f"{{king}} <stay/stand/sit/remain/linger/wait> [{{very}}] {_CENTRE}",
    f"{{king}} <be> [{{very}}] {{stuck}} {_CENTRE}",
    f"{{king}} <be:catch/keep/hold/leave/trap/strand/fix> [{{very}}] {_CENTRE}",
    f"{{king}} <get> {{stuck}} {_CENTRE}",
    "{king} (has|have) [still|as yet] not left (the centre|the center|the middle) [yet]",
    f"[{{agent}}] <keep/hold/catch/leave/fix/trap> {{king}} {_CENTRE}",
    f"{{side}} <have> {{whose}} king {_CENTRE}",
    f"{{side}} <have> {{whose}} king {{stuck}} {_CENTRE}",
    "{king} (has|have) [already|now|long] left (the centre|the center|the middle)",
    f"with {{king}} [still] {_CENTRE}",
    f"with {{king}} {{stuck}} {_CENTRE}",
)  # fmt: skip


FRAMES = (
    "{king} <be/stay/stick> in centre",
    "{king} <be/stay/stick> on {square}",
    "{king} <=> stuck|stranded in centre ; stuck=yes",
    "{king} <=> stuck|stranded on {square} ; stuck=yes",
    "<be:stick/catch/trap/strand/maroon/keep/hold> {king} in centre ; stuck=yes",
    "<be:stick/strand/catch> {king} on {square} ; stuck=yes",
    "{king} <stick> on {square} ; stuck=yes",
)


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    as_it_stands(here, slots)
    if "king" in slots:
        side = owner(here, slots["king"])
    else:
        side = here.side(slots["whose"])
        if side != here.side(slots["side"]):
            raise Unread("it is not clear whose king is meant")
    said = here.said
    square = slots.get("square")
    king = pieces(here.board, side, "k")[0]
    if square is not None and square != king:
        raise Unread(f"no such king stands on {square}")
    left = " left the " in said and " not left " not in f" {said} " and "n't left" not in said
    home = any(w in said for w in ("original square", "starting square", "first square"))
    verb = slots.get("verb")
    held = verb is not None and any(
        w in said.split() for w in ("caught", "kept", "held", "trapped", "stranded", "fixed", "catches", "keeps", "holds", "traps", "fixes", "keep", "hold")
    )  # fmt: skip
    if square is not None and square[0] not in "de" and not ("stuck" in slots or held):
        raise Unread("where the king stands is no claim by itself")
    return [here.claim(KIND.id, side, negated=left, home=home, stuck="stuck" in slots or held)]


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
    phrases=PHRASES,
    slots={
        "stuck": {k: k for k in ("stuck", "still stuck", "caught", "trapped", "stranded", "marooned", "held up", "pinned down", "tied", "nailed", "left stranded", "left hanging")},
    },
    patterns={"king": KING},
    vocabulary=frozenset({"king"}),
    frames=FRAMES,
    read=read,
    check=check,
    flips=True,
)  # fmt: skip
