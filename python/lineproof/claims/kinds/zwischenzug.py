"""In-between moves: something else first, where a recapture or a rescue was due."""

from __future__ import annotations

import re
from typing import Any

from lineproof.claims.board import name, names, other, pieces, title, upper
from lineproof.claims.claim import Ask, Claim, Judgement, Mark, Outcome, Spot
from lineproof.claims.exchange import exchange, losing, worth
from lineproof.claims.here import Here, Named, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.lexicon import NOUNS
from lineproof.claims.patterns import MOVE
from lineproof.claims.pointing import present
from lineproof.engine import Board

_FIRST = "+in_between|instead_of_taking_back|before_taking_back|instead_of_recapturing|before_recapturing|instead_of_retaking|before_retaking|instead_of_taking_back_at_once|instead_of_recapturing_at_once|before_taking_back_at_once"

FRAMES = (
    "[{agent}] <~> zwischenzug",
    "<~> {interm}",
    "{interm} <come/follow/be> [+first]",
    "[{agent}] <play/have/insert/find/choose/start with/begin with/go for/use> zwischenzug [with {object}]",
    "{move} <=> zwischenzug",
    "zwischenzug <=> {move}",
    "{move} <~> as zwischenzug",
    "[{side}] <insert> {move}",
    "[{side}] <insert> check ; checks=yes",
    f"[{{side}}] <play/check/start with/begin with> {{move}} {_FIRST}",
    f"[{{side}}] <play/check/start with/begin with> with {{move}} {_FIRST}",
    "[{side}] <play/insert> {move} as zwischenzug",
    f"<~> {{move}} {_FIRST}",
    f"[{{side}}] <~> check {_FIRST}",
)


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    verb = slots.get("verb")
    present(verb, "will", "can")
    if "interm" in slots:
        slots["move"] = slots["interm"]
    agent = slots.get("agent")
    if agent is not None and "move" not in slots and MOVE.fullmatch(agent):
        slots["move"] = agent
    if "move" in slots:
        move = here.named(slots["move"])
    else:
        move = _unnamed(here, here.side(slots["side"]) if "side" in slots else None, verb)
    if "side" in slots and here.side(slots["side"]) != move.side:
        raise Unread("it is the other side's move")
    if "checks" in slots and not move.after.board.in_check:
        raise Unread("the move is no check")
    return [here.claim(KIND.id, move.side, spot=move.before, move=move.uci)]


_CHECK = re.compile(r"[^.!?;{}]*?[:,] (?:it's |it is )?(?:the|a) check\b")
"""What the rest of the sentence says the move to be: "a fine in-between move: the check comes first"."""


def _unnamed(here: Here, side: str | None, verb: Any) -> Named:
    future = verb is not None and verb.modal in {"will", "can"}
    following = here.shown_next
    if here.spot.moves and side in (None, here.mover) and not future:
        last = here.last()
        named = _CHECK.match(here.lesson.text, here.end) is not None
        if side is None and following is not None and named and not here.board.in_check:
            if not here.board.play(following).in_check:
                raise Unread("the check is not shown")
            return Named(here.spot, following, here.board.turn)
        return last
    if verb is not None and verb.modal == "can":
        raise Unread("it is not clear which move is meant")
    if following is None or side not in (None, here.board.turn):
        raise Unread("the move is not shown")
    return Named(here.spot, following, here.board.turn)


def _due(spot: Spot, uci: str) -> str:
    """What was due before the move and is left undone by it: a recapture, or a piece that falls. Empty when nothing was."""
    board = spot.board
    side = board.turn
    if spot.moves:
        before = spot.earlier(1).board
        taken = spot.moves[-1][2:4]
        captured = len(before.pieces()) > len(board.pieces())
        if captured and uci[2:4] == taken:
            return ""  # the recapture itself
        if captured and any(m[2:4] == taken for m in board.legal_moves()):
            return f"{title(side)} could have taken back on {taken}"
    after = board.play(uci)
    left = [at for at in losing(board, side) if at != uci[:2] and at in losing(after, side)]
    if left:
        stands = "stand" if len(left) > 1 else "stands"
        return f"{names(board, left)} {stands} to be taken"
    return ""


def _forces(board: Board, uci: str) -> str:
    """What the move itself asks of the other side: it is check, it captures, or it threatens something new. Empty when nothing."""
    side = board.turn
    after = board.play(uci)
    if after.in_check:
        return "is check"
    if len(after.pieces()) < len(board.pieces()):
        return f"takes on {uci[2:4]}"
    enemy = other(side)
    new = [
        at
        for at in pieces(after, enemy)
        if worth(after, at) and exchange(after, at, side) >= max(1, exchange(board, at, side) + 1)
    ]
    if new:
        return f"attacks {names(after, new)}"
    free = after.passed()
    if free is not None and any(free.play(m).is_checkmate for m in free.legal_moves()):
        return "threatens mate"
    return ""


def check(claim: Claim, ask: Ask) -> Judgement:  # noqa: ARG001 - a board fact asks no search
    spot, move = claim.spot, claim.params["move"]
    board = spot.board
    san = board.san(move)
    due, forces = _due(spot, move), _forces(board, move)
    holds = bool(due and forces)
    if holds:
        because = f"{upper(due)}; {san} comes first, and it {forces}."
    elif not due:
        because = f"Nothing had to be taken back or saved when {san} was played."
        if spot.moves and move[2:4] == spot.moves[-1][2:4]:
            because = f"{san} itself takes {name(board, move[2:4])}, which had just moved there."
    else:
        because = f"{upper(due)}; {san} neither checks nor takes nor threatens anything new."
    return Judgement(
        Outcome.HOLDS if holds else Outcome.FAILS,
        because,
        (move,),
        spot,
        {},
        instead=None if holds else because,
        marks=(Mark("move", (move[:2], move[2:4]), board.turn),),
    )


KIND = Kind(
    id="zwischenzug",
    title="In-between move",
    version=1,
    definition="A move played where a recapture was possible, or while a piece of the mover stands to be taken with a gain of a pawn or more, that does neither but checks, captures elsewhere, attacks something that it could then win, or threatens mate in one.",
    frames=FRAMES,
    tests={
        "interm": lambda n: n.text if n.type == "move" and set(NOUNS["zwischenzug"]) & set(n.adjectives) else None,
    },
    read=read,
    check=check,
    flips=True,
    tactic="for",
)  # fmt: skip
