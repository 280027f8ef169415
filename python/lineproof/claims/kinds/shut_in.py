"""Shut-in pieces: they can hardly move, though nobody takes them."""

from __future__ import annotations

import re
from typing import Any

from lineproof.claims.board import name, names, other, pieces, side_of, upper
from lineproof.claims.claim import Ask, Claim, Judgement, Mark, Outcome, Spot
from lineproof.claims.exchange import safe_squares
from lineproof.claims.here import Here, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.pointing import alone, meant, present
from lineproof.engine import Board

MOST = 1
"""Squares that a piece which is shut in can go to at most."""

_SHUT = "shut in/lock in/hem in/wall in/box in/block in/fence in/cage in/entomb/imprison/incarcerate/bury/bury alive/bottle up/cage/wall up"
_IN = "shut/lock/hem/wall/box/block/fence/bottle/close"

PHRASES = (
    f"{{target}} <be:{_SHUT}/lock away> [by {{agent}}|behind {{barrier}}|in the corner|on {{square}}]",
    f"[{{agent}}] <{_SHUT}> {{object}} [on {{square}}]",
    f"[{{agent}}] <{_IN}> {{object}} (in|up) [on {{square}}]",
    f"<ing:{_SHUT}> {{object}}",
    f"<ing:{_IN}> {{object}} (in|up)",
    "{target} <be> (hemmed in|penned in|locked up|bottled up|walled up|in prison|in jail|in a cage) [by {agent}|behind {barrier}|in the corner|on {square}]",
    "{target} can not [yet] (get out into the open|get into the game|come out|get out of the corner|come into the game|come into play|get into play)",
    "{target} <be> [a] prisoner [of {barrier}|behind {barrier}|in the corner]",
    "{target} <have> {nothing}",
    "{target} can (hardly|scarcely|barely) move",
)


FRAMES = (
    "<be:shut_in> {target} [by {agent}]",
    "{agent} <shut_in> {target}",
    "[{agent}] <shut_in> {target} ; active=yes",
    "{men} <shut_in> {target} ; several=yes",
    "<be:lock/close/shut/block/box/hem/wall/hide> {target} behind {men} ; several=yes",
)


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    verb = slots.get("verb")
    present(verb)
    alone(here)
    spot, by = here.spot, None
    if re.search(r"\b(?:hamper|restrict|obstruct|stifle)", here.said):
        raise Unread("to be hampered is less than to be shut in")
    if "men" in slots:
        slots.pop("agent", None)  # "by its own knight and pawn": all of them together
    elif "agent" in slots or "object" in slots:
        agent = here.agent(slots.get("agent"))
        spot = agent.spot
        piece = "agent" in slots and bool(here.find(slots["agent"]))
        by = agent.square if agent.move is not None or piece else None
        if by is None and spot.moves and here.mover == agent.side:
            by = spot.moves[-1][2:4]
    at_spot = here.at(spot)
    words = slots.get("target", slots.get("object"))
    found = meant(at_spot, words, fits=lambda at: _shut_by(spot, at, by))
    if "square" in slots and slots["square"] not in found:
        raise Unread(f"that piece does not stand on {slots['square']}")
    return [
        here.claim(KIND.id, side_of(spot.board.piece_at(at) or "K"), spot=spot, at=at, by=by)
        for at in found
    ]


def _shut_by(spot: Spot, at: str, by: str | None) -> bool:
    """Whether the piece is shut in, and `by` has a part in it."""
    return len(safe_squares(spot.board, at, pinned=False)) <= MOST and (
        by is None or _has_part(spot.board, at, by)
    )


def _has_part(board: Board, at: str, by: str) -> bool:
    """Whether the piece on `by` stands in the way of the one on `at`, or takes a square from it."""
    if by == at:
        return False
    if by in board.attacks(at):
        return True
    own = side_of(board.piece_at(at) or "K") == side_of(board.piece_at(by) or "K")
    return not own and bool(set(board.attacks(by)) & set(board.attacks(at)))


def check(claim: Claim, ask: Ask) -> Judgement:  # noqa: ARG001 - a board fact asks no search
    board = claim.spot.board
    at, by = claim.params["at"], claim.params["by"]
    side = claim.side or "white"
    who = upper(name(board, at))
    free = safe_squares(board, at, pinned=False)
    own = [s for s in board.attacks(at) if s in pieces(board, side)]
    numbers = {"squares": len(free)}
    marks = (Mark("square", (at,), other(side)),)
    if len(free) > MOST:
        because = f"{who} can go to {', '.join(free[:-1])} and {free[-1]}."
        return Judgement(
            Outcome.FAILS, because, (), claim.spot, numbers, instead=because, marks=marks
        )
    walls = (
        f"{names(board, own)} {'stand' if len(own) > 1 else 'stands'} in its way"
        if own
        else "every other square costs it material"
    )
    where = f"can go nowhere but to {free[0]}" if free else "can go nowhere"
    because = f"{who} {where}: {walls}."
    if by is not None and not _has_part(board, at, by):
        because = f"{who} is shut in, but {name(board, by)} has no part in it."
        return Judgement(
            Outcome.FAILS, because, (), claim.spot, numbers, instead=because, marks=marks
        )
    return Judgement(Outcome.HOLDS, because, (), claim.spot, numbers, marks=marks)


KIND = Kind(
    id="shut-in",
    title="Shut-in piece",
    version=1,
    definition=(
        f"The piece (no king, no pawn) has at most {MOST} square where it loses less than a pawn in the exchange there, counted as if it were to move and not pinned. "
        "One that is said to be shut in by a piece or move must be in the way of it, or attack a square that it would go to."
    ),
    phrases=PHRASES,
    slots={
        "nothing": dict.fromkeys(("no moves", "no move", "not a single move", "no move at all", "no moves at all", "hardly a move", "no mobility", "no mobility at all"), True),
        "barrier": dict.fromkeys(("its own pawns", "his own pawns", "its own pawn", "our own pawns", "the pawns", "the pawn chain", "its own pawn chain", "his own men", "its own men", "our own men", "his own pieces", "its own pieces", "a wall of pawns", "his own pawn chain", "his pawns", "our pawns", "its pawns", "the d pawn", "the e pawn", "black 's pawns", "white 's pawns", "his own pawn", "our own pawn"), True),
    },
    vocabulary=frozenset(
        ["shut", "shuts", "shutting", "locked", "locks", "locking", "lock", "hemmed", "hems", "walled", "walls", "boxed", "boxes", "blocked", "blocks", "block", "blocking", "fenced", "caged", "entombed", "entombs", "imprisoned", "imprisons", "incarcerated", "buried", "buries", "burying", "bottled", "prison", "prisoner", "jail", "cage", "closes", "closed", "move", "moves", "mobility", "come", "game", "play", "open", "corner"]
    ),
    frames=FRAMES,
    gives_way=frozenset({"trapped", "bad-bishop"}),
    tests={"men": lambda n: n.text if n.type == "piece" and (n.parts or n.plural) else None},
    read=read,
    check=check,
    flips=True,
)  # fmt: skip
