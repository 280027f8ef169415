"""Winning material back."""

from __future__ import annotations

import re
from typing import Any

from lineproof.claims.amounts import AMOUNT, LEAST, WORTH, Amount, pawns
from lineproof.claims.board import material, title
from lineproof.claims.claim import Ask, Claim, Judgement, Outcome, Spot
from lineproof.claims.gain import counted, end_of_shown_line, settled
from lineproof.claims.here import Here, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.played import doer

WINDOW = 2
"""Plies that are looked back for the loss that is made good."""
BACK = 8
"""The same, said of what has happened ("has won the pawn back")."""

PHRASES = (
    "[{agent}] <regain/recover/win back/get back/recoup/retrieve/take back/pick up again> {amount} [by force|at once|immediately|easily|with interest|next|sooner or later|in the end|with ease]",
    "[{agent}] <win/get/take/claim/pick> {amount} back [by force|at once|immediately|easily|with interest|sooner or later|in the end]",
    "[{agent}] <have> {amount} back [at once]",
    "[{agent}] <be> sure to (regain|recover|win back|get back) {amount}",
    "(<ing:regain/recover/win back>) {amount}",
    "with {amount} back",
    "(winning|getting|taking) {amount} back",
    "{amount} <be:regain/recover/win back> [by {agent}]",
    "{amount} <come> back",
    "{amount} <be> [soon] (regained|won back|coming back)",
)
_HAS = re.compile(r"\b(?:has|have|['’]s|with)\b(?! to\b).* back\b")
"""Words that say that it has happened: "White has the pawn back"."""


FRAMES = (
    "[{agent}] <regain> {amount}",
    "[{agent}] <win/get/take/have> {amount} +back",
    "{amount} <come> +back",
)


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    amount = Amount.read(slots["amount"])
    if amount.letters != "p" and re.search(r"\b(?:tak|took)", here.said):
        raise Unread("to take a piece back is to recapture")
    agent_text = slots.get("agent")
    side = doer(here, agent_text).side if agent_text or here.subject else _loser(here)
    spot = doer(here, agent_text).spot if agent_text else here.spot
    verb = slots.get("verb")
    done = bool(verb is not None and verb.done) or _HAS.search(here.said) is not None
    return [here.claim(KIND.id, side, spot=spot, amount=amount.name, done=done)]


def _loser(here: Here) -> str:
    """Who regains when no side is named: the one behind in material.

    :raises Unread: when material is level.
    """
    if here.unclear:
        raise Unread("the clause before was not read, so it is not clear who is meant")
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
    line = (*shown.moves[len(claim.spot.moves) :], *final.moves)
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
    phrases=PHRASES,
    patterns={"amount": AMOUNT},
    vocabulary=frozenset(
        [
            "regain",
            "regains",
            "regained",
            "regaining",
            "recover",
            "recovers",
            "recovered",
            "recovering",
            "back",
            "recoup",
            "recoups",
            "retrieve",
            "retrieves",
            "again",
        ]
    ),
    frames=FRAMES,
    read=read,
    check=check,
    flips=True,
)
