"""Winning material back."""

from __future__ import annotations

import re
from typing import Any

from lineproof.claims.amounts import LEAST, WORTH, Amount, pawns
from lineproof.claims.board import material, other, title
from lineproof.claims.claim import Ask, Claim, Judgement, Outcome, Spot
from lineproof.claims.gain import counted, end_of_shown_line, settled
from lineproof.claims.here import Here, Unread, but
from lineproof.claims.kind import Kind
from lineproof.claims.played import doer
from lineproof.claims.showing import shortest
from lineproof.claims.slot import SLOTS

WINDOW = 2
"""Plies that are looked back for the loss that is made good."""
BACK = 8
"""The same, said of what has happened ("has won the pawn back")."""

FRAMES = (
    "[{agent}] <regain> {amount} [with {move}]",
    "[{agent}] <take_back> {pawn} [with {move}]",
    "[{agent}] <win/get/claim/pick> {amount} +back|straight_back|right_back [with {move}]",
    "[{agent}] <take> {pawn} +back|straight_back|right_back [with {move}]",
    "[{agent}] <have> {amount} +back|straight_back|right_back ; done=yes",
    "{pawn} <come> +back",
    "{pointer} <=> {amount} +back [on {square}] ; done=yes",
    "{amount} <=> +back",
    "<~> {amount} +back ; done=yes there=yes",
    "{side} <see> {amount} +again|back",
)


_SOMEBODY = re.compile(r"(?:'s|his|her|their|our|your|my) back\b")
"""A back that somebody has, "behind nobody's back"."""


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    if _SOMEBODY.search(here.said):
        raise Unread("it is somebody's back")
    amount = Amount.read(slots.get("amount") or slots["pawn"])
    agent_text = slots.get("agent", slots.get("side"))
    if "there" in slots and "verb" in slots and "impersonal" not in slots:
        raise Unread("it is not said that it is back")
    if "move" in slots:
        move = here.named(slots["move"])
        if agent_text and doer(here, agent_text).side != move.side:
            raise Unread("the move is not that side's")
        here, agent_text = here.at(move.after), None
        here = but(here, subject=move.side)
    side = doer(here, agent_text).side if agent_text or here.subject else _loser(here)
    spot = doer(here, agent_text).spot if agent_text else here.spot
    if agent_text in {"he", "they"} and here.neutral and material(spot.board, side) > 0:
        side = other(side)  # only who is behind wins something back
    verb = slots.get("verb")
    done = "done" in slots or bool(verb is not None and verb.done)
    return [here.claim(KIND.id, side, spot=spot, amount=amount.name, done=done)]


def _loser(here: Here) -> str:
    """Who regains when no side is named: the one behind in material."""
    balance = material(here.board, "white")
    if balance == 0:
        return here.implied()
    return "white" if balance < 0 else "black"


def _lowest(spot: Spot, side: str, name: str, done: bool) -> int:
    """Material balance from which it is regained: now, or, for a side that is not behind now, a moment ago.

    A moment in the middle of a bigger exchange does not count.
    """
    now = material(spot.board, side)
    if now < 0 and not done:
        return now
    window = min(BACK if done else WINDOW, len(spot.moves))
    past = [material(spot.earlier(n).board, side) for n in range(window + 1)]
    return min(
        balance for balance in (now, *past) if -balance <= WORTH.get(name, 9) + 1 or balance == now
    )


def _piece_down(spot: Spot, side: str) -> bool:
    """Whether the side was behind in pieces, pawns apart, lately."""
    window = range(min(BACK, len(spot.moves)) + 1)
    return any(counted(spot.earlier(n), side).pieces < 0 for n in window)


def check(claim: Claim, ask: Ask) -> Judgement:
    side, name, done = claim.side or "white", claim.params["amount"], claim.params["done"]
    now = material(claim.spot.board, side)
    low = _lowest(claim.spot, side, name, done)
    shown = claim.spot if done else end_of_shown_line(claim.place, claim.spot)
    final = settled(ask, shown, side)
    gain = final.balance - low
    least = LEAST[name][1]
    line = shortest(claim.spot, (*shown.moves[len(claim.spot.moves) :], *final.moves))
    numbers = {"behind": -low, "after": final.balance, "regained": gain}
    if low >= 0:
        because = f"{title(side)} was not behind in material, so there is nothing to regain."
        return Judgement(Outcome.FAILS, because, line, claim.spot, numbers, instead=because)
    stands = "level" if final.balance == 0 else f"{pawns(final.balance)} {'ahead' if final.balance > 0 else 'behind'}"  # fmt: skip
    because = f"{title(side)} was {pawns(low)} behind and at the end of this line is {stands}."
    if done and now - low < least <= gain:
        because += f" On the board he is still {pawns(now)} behind."
    holds = gain >= least and (not done or now - low >= least)
    if name not in {"pawn", "two pawns", "three pawns", "material"} and not _piece_down(
        claim.spot, side
    ):
        because += f" No {name} of his was missing."
        holds = False
    if final.mated is not None:
        holds = final.mated != side
        because = f"The line ends in mate against {title(final.mated)}."
    near = 1.0 if least - 1 <= gain < least else 100.0
    instead = None if holds else f"{title(side)} regains {pawns(gain) if gain > 0 else 'nothing'}."
    return Judgement(
        Outcome.HOLDS if holds else Outcome.FAILS, because, line, claim.spot, numbers, near, instead
    )  # fmt: skip


KIND = Kind(
    id="regains",
    title="Regains",
    version=1,
    definition=(
        "The side is behind in material, or, where it is not, was so within two plies (by no more than a pawn above the amount), and at the end of the line shown, continued by best play until no capture gains a pawn, it is better off by the amount: a pawn 1, the exchange 1, a piece 2, "
        "a rook and the queen 3. Said of what has happened: within eight plies, at this position."
    ),
    formula="gain = material(end of the line shown) - material(lowest point before); holds: gain >= the amount",
    frames=FRAMES,
    tests={
        "pointer": lambda n: n.text if n.head in {"that", "this", "it"} else None,
        "pawn": lambda n: SLOTS["amount"](n) if n.head in {"pawn", "extra pawn"} else None,
    },
    read=read,
    check=check,
    flips=True,
)
