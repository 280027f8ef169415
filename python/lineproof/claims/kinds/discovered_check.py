"""Discovered checks: a piece checks from behind one that has moved away."""

from __future__ import annotations

import re
from typing import Any

from lineproof.claims.board import name, names, other, title, upper
from lineproof.claims.claim import Ask, Claim, Judgement, Mark, Outcome, Spot
from lineproof.claims.discovery import uncovered
from lineproof.claims.here import Here, Named, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.patterns import SIDE
from lineproof.claims.pointing import king, meant, owner, present

_BY = "[(by|from|of) {checker}]"

FRAMES = (
    f"[{{agent}}] <~> discovered_check {_BY} [with {{move}}]",
    f"{{move}} <=> discovered_check {_BY}",
    "{side} <have/threaten> discovered_check [with {move}] ; some=yes",
    f"[{{agent}}] <move/capture/recapture/step_aside/come/arrive/land> [{{object}}] [(on|to) {{square}}] with discovered_check {_BY}",
    f"{{agent}} <come_with/arrive_with/land_with> discovered_check {_BY}",
    "<~> check from {checker}",
    "{checker} <check>",
    "{checker} <check> +from +behind",
    "{checker} <check/give_check> behind {second} +from [with {move}]",
    f"[{{agent}}] <uncover> (discovered_check|check) {_BY}",
    "{checker} <give> (check|discovered_check) [with {move}]",
    "{checker} <give_check> [with {move}]",
    "{king} <be> in check from {checker}",
)


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    verb = slots.get("verb")
    present(verb, "will", "can")
    possible = "some" in slots or "impersonal" in slots
    if verb is not None and verb.modal == "can" and "move" not in slots:
        if "side" in slots or not _is_side(slots.get("agent")):
            raise Unread("it is not clear which move could give it")
        slots = {**slots, "side": slots.pop("agent")}
        possible = True
    if possible and "move" not in slots and "agent" not in slots and "checker" not in slots:
        side = here.side(slots["side"]) if "side" in slots else here.board.turn
        spot = here.spot.with_move_for(side)
        if spot is None:
            raise Unread("it is not that side's move, and the other is in check")
        return [here.claim(KIND.id, side, spot=spot, move=None, by=None)]
    move = _move(here, slots, verb)
    after = here.at(move.after)
    by = None
    if "checker" in slots:
        (by,) = meant(after, slots["checker"], fits=lambda at: at in after.board.checkers())[:1]
        if by == move.uci[2:4]:
            raise Unread("the piece that checks has moved itself, so nothing is discovered")
    return [here.claim(KIND.id, move.side, spot=move.before, move=move.uci, by=by)]


def _is_side(text: str | None) -> bool:
    return text is not None and re.fullmatch(SIDE, f" {text}") is not None


def _move(here: Here, slots: dict[str, Any], verb: Any) -> Named:
    """The move that is said to give the check."""
    if "move" in slots:
        return here.named(slots["move"])
    done = verb is not None and verb.done
    future = verb is not None and verb.modal in {"will", "can"}
    if "agent" in slots:
        agent = here.agent(slots["agent"])
        if agent.move is not None:
            return agent.move
        side = agent.side
    elif "checker" in slots and here.find(slots["checker"]):
        giving = [at for at in here.find(slots["checker"]) if at in here.board.checkers()]
        side = owner(here, giving[0]) if giving else here.agent(slots["checker"], "brq").side
    else:
        if verb is None and not here.board.in_check:
            raise Unread("it is not clear which move gives the check")
        side = here.last().side
    if here.spot.moves and here.mover == side and not future:
        return here.last()
    if done and len(here.spot.moves) >= 2:
        before = here.spot.earlier(2)
        return Named(before, here.spot.moves[-2], side)
    following = here.shown_next
    if here.board.turn != side or following is None:
        raise Unread("the move that gives the check is not shown")
    return Named(here.spot, following, side)


def _givers(spot: Spot, uci: str) -> list[str]:
    """The pieces that check only because another has moved out of their way."""
    target = king(spot, other(spot.board.turn))
    return [at for at, hit in uncovered(spot.board, uci).items() if target in hit]


def check(claim: Claim, ask: Ask) -> Judgement:  # noqa: ARG001 - a board fact asks no search
    spot, move, by = claim.spot, claim.params["move"], claim.params["by"]
    side = claim.side or "white"
    board = spot.board
    if move is None:
        found = [m for m in board.legal_moves() if _givers(spot, m)]
        if found:
            at = _givers(spot, found[0])[0]
            because = f"{board.san(found[0])} opens the line of {name(board, at)} to the king."
        else:
            because = f"No move of {title(side)}'s uncovers a check."
        return Judgement(
            Outcome.HOLDS if found else Outcome.FAILS, because, tuple(found[:1]), spot, {"moves": len(found)},
            instead=None if found else because,
        )  # fmt: skip
    after = spot.play(move)
    givers = _givers(spot, move)
    holds = bool(givers) and (by is None or by in givers)
    san = board.san(move)
    target = king(after, other(side))
    if givers:
        because = f"{san} opens the line of {names(board, givers)} to the king on {target}."
    elif after.board.in_check:
        because = f"{san} is check, but by the piece that moved: {name(after.board, move[2:4])} attacks the king."
    else:
        because = f"{san} gives no check."
    return Judgement(
        Outcome.HOLDS if holds else Outcome.FAILS,
        upper(because),
        (move,),
        spot,
        {"uncovered": len(givers)},
        instead=None if holds else upper(because),
        marks=tuple(Mark("move", (at, target), side) for at in givers),
    )


KIND = Kind(
    id="discovered-check",
    title="Discovered check",
    version=1,
    definition="A move opens the line of a bishop, rook or queen of its side, which did not move itself, to the enemy king; said of a possible one, the side has such a move, on its move or after a pass. A double check of which one is uncovered counts.",
    frames=FRAMES,
    tests={"checker": lambda n: n.text if n.type == "piece" else None},
    read=read,
    check=check,
    flips=True,
    tactic="for",
)  # fmt: skip
