"""Giving material back."""

from __future__ import annotations

from typing import Any

from lineproof.claims.amounts import LEAST, WORTH, Amount, pawns
from lineproof.claims.board import material, title
from lineproof.claims.claim import Ask, Claim, Judgement, Outcome
from lineproof.claims.gain import end_of_shown_line, settled
from lineproof.claims.here import Agent, Here, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.played import doer
from lineproof.claims.showing import shortest

FRAMES = (
    "[{agent}] <give_back> {amount} [with {move}]",
    "[{agent}] <give/hand/pay/toss/throw> {amount} +back|straight_back|right_back [with {move}]",
    "[{agent}] <give> {amount} +up +again [with {move}]",
    "{amount} <go> +back|straight_back|right_back",
    "[{agent}] <give_back> {one} [with {move}] ; amount=pawn",
)


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    if "move" in slots:
        move = here.named(slots["move"])
        agent = Agent(move.side, move.after, None, move)
        if "agent" in slots and doer(here, slots["agent"]).side != move.side:
            raise Unread("the move is not that side's")
    else:
        agent = doer(here, slots.get("agent"))
    if slots.get("verb") is not None and slots["verb"].modal == "must":
        raise Unread("it is not said that it is given back")
    amount = Amount.read(slots["amount"])
    plies = 1 if agent.spot.moves and agent.spot.board.turn != agent.side else 0
    verb = slots.get("verb")
    if verb is not None and verb.done:
        plies = min(3, len(agent.spot.moves))
    return [here.claim(KIND.id, agent.side, spot=agent.spot, amount=amount.name, plies=plies)]


def check(claim: Claim, ask: Ask) -> Judgement:
    side, name = claim.side or "white", claim.params["amount"]
    past = [material(claim.spot.earlier(n).board, side) for n in range(claim.params["plies"] + 1)]
    # a moment in the middle of a bigger exchange does not count
    before = max(
        balance for balance in past if balance <= WORTH.get(name, 9) + 1 or balance == past[-1]
    )
    shown = end_of_shown_line(claim.place, claim.spot)
    final = settled(ask, shown, side)
    given = before - final.balance
    least = LEAST[name][0]
    line = shortest(claim.spot, (*shown.moves[len(claim.spot.moves) :], *final.moves))
    numbers = {"before": before, "after": final.balance, "given": given}
    if before < 1:
        because = f"{title(side)} was not ahead in material, so there is nothing to give back."
        return Judgement(Outcome.FAILS, because, line, claim.spot, numbers, instead=because)
    because = (
        f"{title(side)} was {pawns(before)} ahead and at the end of this line is "
        f"{'level' if final.balance == 0 else pawns(final.balance) + (' ahead' if final.balance > 0 else ' behind')}."
    )
    holds = given >= least and final.mated is None
    if holds:
        return Judgement(Outcome.HOLDS, because, line, claim.spot, numbers, 100.0)
    return Judgement(
        Outcome.FAILS, because, line, claim.spot, numbers, 1.0 if least - 1 <= given < least else 100.0,
        f"{title(side)} gives nothing back." if given < 1 else f"{title(side)} gives back {pawns(given)}.",
    )  # fmt: skip


KIND = Kind(
    id="gives-back",
    title="Gives back",
    version=1,
    definition=(
        "The giver was ahead in material before the move (said of what has happened: within three plies), and at the end of the line shown, continued by best play until no capture gains a pawn, "
        "is so much less ahead: a pawn 1 or more, the exchange 1, a piece 1, a rook and the queen 3."
    ),
    formula="given = material(before) - material(end of the line shown); holds: material(before) >= 1 and given >= the amount",
    frames=FRAMES,
    tests={"one": lambda n: n.text if n.head == "one" and not n.adjectives else None},
    read=read,
    check=check,
    flips=True,
)
