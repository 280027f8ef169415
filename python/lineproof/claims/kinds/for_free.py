"""Material for nothing."""

from __future__ import annotations

from typing import Any

from lineproof.claims.amounts import WORTH, Amount, pawns
from lineproof.claims.board import material, other, side_of, title
from lineproof.claims.claim import Ask, Claim, Judgement, Outcome
from lineproof.claims.gain import settled
from lineproof.claims.here import Here, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.played import doer
from lineproof.claims.showing import shortest
from lineproof.claims.slot import SLOTS

BACK = 8
"""Plies that are looked back for what has been won."""
_FREE = "for_free|for_nothing|at_no_cost|free_of_charge|gratis|scot_free|at_no_price|for_absolutely_nothing|for_precisely_nothing|for_nothing_at_all"

FRAMES = (
    f"[{{agent}}] <capture/get/win/have> {{amount}} +{_FREE} [on {{square}}] [with {{move}}]",
    "[{agent}] <capture/win/get/have> {amount} (with|without) (impunity|compensation|risk|payment) [on {square}]",
    "[{agent}] <have/get/win/capture> {free_man}",
    "{pointer} <=> {free_man} [for {side}]",
    f"{{pointer}} <=> {{amount}} +{_FREE}",
    "{amount} <cost> [{side}] {nobody} ; won=yes",
    f"{{amount}} <=> +{_FREE}",
    f"{{amount}} <=> won +{_FREE} ; won=yes",
    "{one_man} <=> {free} if alone",
    f"<=> {{amount}} +{_FREE} if verbless",
    "[{agent}] <pay> {none} for {amount}",
)


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    text = slots.get("amount") or slots.get("one_man") or slots.get("free_man")
    if text is None:
        raise Unread("it is not said what is free")
    amount = Amount.read(text)
    owner = _owner(here, slots.get("amount", slots.get("one_man")), amount)
    if "side" in slots:
        side, spot = here.side(slots["side"]), here.spot
    elif "agent" in slots:
        agent = doer(here, slots["agent"])
        side, spot = agent.side, agent.spot
    elif owner is not None:
        side, spot = other(owner), here.spot
    elif "won" in slots and here.subject is None and material(here.board, "white"):
        side = "white" if material(here.board, "white") > 0 else "black"  # the one that has it
        spot = here.spot
    elif here.subject is not None:
        side, spot = here.implied(), here.spot
    else:
        side, spot = _taker(here, amount), here.spot
    if "move" in slots:
        move = here.named(slots["move"])
        side, spot = move.side, move.after
    if owner is not None and owner == side:
        raise Unread("a side does not take its own piece")
    letters = amount.letters
    return [
        here.claim(KIND.id, side, spot=spot, amount=amount.name, letters=letters, square=amount.square, done="won" in slots)
    ]  # fmt: skip


def _taker(here: Here, amount: Amount) -> str:
    """Who takes it when nobody is named: who has just taken such a piece, or is to move and can.

    :raises Unread: when neither has or can.
    """
    board = here.board
    if here.spot.moves:
        taken = here.spot.earlier(1).board.piece_at(here.spot.moves[-1][2:4])
        if taken is not None and taken.lower() in amount.letters:
            return here.mover
    found = [(board.piece_at(uci[2:4]) or "").lower() for uci in board.legal_moves()]
    if any(letter and letter in amount.letters for letter in found):
        return board.turn
    raise Unread("it is not clear who takes it")


def _owner(here: Here, text: str | None, amount: Amount) -> str | None:
    """Whose the piece is, when it names a square that is not empty."""
    if text is None or amount.square is None:
        return None
    letter = here.board.piece_at(amount.square)
    if letter is None:
        return None
    if letter.lower() not in amount.letters:
        raise Unread(f"there is no such piece on {amount.square}")
    return side_of(letter)


def check(claim: Claim, ask: Ask) -> Judgement:
    side, name, spot = claim.side or "white", claim.params["amount"], claim.spot
    worth = _worth(claim)
    if claim.params.get("done"):
        past = range(min(BACK, len(spot.moves)) + 1)
        before = min(material(spot.earlier(n).board, side) for n in past)
        final = settled(ask, spot, side)
        moves: tuple[str, ...] = final.moves
    elif spot.board.turn == side:
        before = material(spot.board, side)
        takes = _takes(claim)
        if not takes:
            because = f"{title(side)} can take no such piece."
            return Judgement(Outcome.FAILS, because, (), spot, {}, instead=because)
        best = ask.best(spot, without=[m for m in spot.board.legal_moves() if m not in takes])
        if best is None:
            because = f"{title(side)} can take no such piece."
            return Judgement(Outcome.FAILS, because, (), spot, {}, instead=because)
        final = settled(ask, spot.play(best.moves[0]), side)
        moves = (best.moves[0], *final.moves)
    else:
        before = material(spot.earlier(min(1, len(spot.moves))).board, side)
        if spot.moves and side_of(spot.board.piece_at(spot.moves[-1][2:4]) or "K") != side:
            before = material(spot.board, side)
        final = settled(ask, spot, side)
        moves = final.moves
    gain = final.balance - before
    holds = gain >= worth or final.mated == other(side)
    if final.mated == side:
        holds = False
    stays = f"{title(side)} keeps {pawns(gain)}" if gain > 0 else f"{title(side)} keeps nothing"
    because = f"{stays} with best play, of {pawns(worth)} taken."
    if final.mated is not None:
        because = f"The line ends in mate against {title(final.mated)}."
    instead = None if holds else f"The {name} is not for free: {stays} with best play."
    return Judgement(
        Outcome.HOLDS if holds else Outcome.FAILS, because, shortest(spot, moves), spot, {"gain": gain, "worth": worth},
        1.0 if worth - 1 <= gain < worth else 100.0, instead,
    )  # fmt: skip


def _worth(claim: Claim) -> int:
    return WORTH.get(claim.params["amount"], 1)


def _takes(claim: Claim) -> list[str]:
    """The captures of such a piece, on the square if one is named."""
    board, square = claim.spot.board, claim.params["square"]
    found = []
    for uci in board.legal_moves():
        standing = (board.piece_at(uci[2:4]) or "").lower()
        if standing and standing in claim.params["letters"] and square in (None, uci[2:4]):
            found.append(uci)
    return found


KIND = Kind(
    id="for-free",
    title="For free",
    version=2,
    definition=(
        "What is taken (by the best such capture where the taker is to move, else by the move just played) is kept at its whole value (pawn 1, exchange 2, piece 3, rook 5, queen 9) with best play, until no capture gains a pawn. Said of what has been won: against the lowest material of the last eight plies."
    ),
    formula="gain = material(end of best play) - material(before the capture); holds: gain >= value of what is taken",
    slots={
        "free": dict.fromkeys(
            ("free", "gratis", "there for the taking", "free for the taking", "for the taking"),
            True,
        )
    },
    frames=FRAMES,
    tests={
        "free_man": lambda n: (
            f"a {n.head}"
            if "free" in n.adjectives and n.head in {"piece", "queen", "rook", "bishop", "knight"}
            else None
        ),
        "one_man": lambda n: (
            None if n.plural else SLOTS["amount"](n)
        ),  # "the pieces are free": to move
        "none": lambda n: n.text if n.no else None,
        "pointer": lambda n: (
            n.text if n.type == "pronoun" and n.head in {"it", "this", "that"} else None
        ),
    },
    read=read,
    check=check,
    flips=True,
    tactic="for",
)
