"""In-between moves: something else first, where a recapture or a rescue was due."""

from __future__ import annotations

from typing import Any

from lineproof.claims.board import name, names, other, pieces, title, upper
from lineproof.claims.claim import Ask, Claim, Judgement, Mark, Outcome, Spot
from lineproof.claims.exchange import exchange, losing, worth
from lineproof.claims.here import Here, Named, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.pointing import present
from lineproof.engine import Board

_NAME = "(in between move|inbetween move|in between check|intermezzo|zwischenzug|zwischenschach|intermediate move|intermediate check|in between capture)"
_BACK = "(recapturing|taking back|retaking|recapturing at once|taking back at once|recapturing first|taking the piece back|moving the queen|saving the queen|moving the piece|saving the piece)"

PHRASES = (
    f"{{move}} <be> [[also|really|only|just] {{the}}|a strong|a nasty|a clever|a useful|a typical] {_NAME}",
    f"(this|that|it|which) <be> [[also|really|just] {{the}}|a strong|a nasty|a clever|a useful|a typical] {_NAME}",
    f"(this|that|it|{{move}}) <be> no {_NAME}",
    f"[{{side}}] <play/insert/throw in/slip in/find/have/put in/start with/begin with/interpose/choose/go for/use> [first] [{{the}}|a strong|a nasty] {_NAME} [,] [{{move}}]",
    f"first [comes] [{{the}}] {_NAME} [,] {{move}}",
    f"(with|by) [{{the}}] {_NAME} [,] [{{move}}]",
    f"{{the}} {_NAME} [,] {{move}}",
    f"{{the}} {_NAME} <be> {{move}}",
    "{side} <insert/interpose/throw in/slip in/put in> {move} [first]",
    f"(instead of|before) {_BACK} [,] {{side}} [first] <play/check/insert/throw in/interpose/go/start with> [first] [with] {{move}} [first]",
    f"{{side}} [first] <play/insert/throw in/interpose/start with> {{move}} [first] (instead of|before) {_BACK}",
    f"{{move}} first [,] (instead of|before) {_BACK}",
)


FRAMES = (
    "[{agent}] <~> zwischenzug",
    "{move} <=> zwischenzug",
    "{move} <~> as zwischenzug",
    "[{agent}] <play/have/insert> zwischenzug [with {object}]",
    "[{side}] <play> {move} +in_between",
    "[{side}] <play> {move} as zwischenzug",
    "<~> {move} +in_between",
    "<~> check +in_between",
)


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    verb = slots.get("verb")
    present(verb, "will", "can")
    if "move" in slots:
        move = here.named(slots["move"])
    else:
        move = _unnamed(here, here.side(slots["side"]) if "side" in slots else None, verb)
    if "side" in slots and here.side(slots["side"]) != move.side:
        raise Unread("it is the other side's move")
    denied = f" no {'in'}" in here.said or " no zwischen" in here.said
    return [here.claim(KIND.id, move.side, spot=move.before, negated=denied, move=move.uci)]


def _unnamed(here: Here, side: str | None, verb: Any) -> Named:
    future = verb is not None and verb.modal in {"will", "can"}
    if here.spot.moves and side in (None, here.mover) and not future:
        return here.last()
    following = here.shown_next
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
    phrases=PHRASES,
    vocabulary=frozenset(
        ["between", "inbetween", "intermezzo", "zwischenzug", "zwischenschach", "intermediate", "recapturing", "taking", "retaking", "moving", "saving", "inserts", "insert", "interposes", "throws", "slips"]
    ),
    frames=FRAMES,
    read=read,
    check=check,
    flips=True,
)  # fmt: skip
