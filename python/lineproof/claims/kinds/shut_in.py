"""Shut-in pieces: they can hardly move, though nobody takes them."""

from __future__ import annotations

from typing import Any

from lineproof.claims.board import name, names, other, pieces, side_of, upper
from lineproof.claims.claim import Ask, Claim, Judgement, Mark, Outcome, Spot
from lineproof.claims.exchange import safe_squares
from lineproof.claims.here import Here, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.lexicon import NOUNS
from lineproof.claims.noun import Noun
from lineproof.claims.patterns import targets
from lineproof.claims.pointing import alone, meant, present
from lineproof.engine import Board

MOST = 1
"""Squares that a piece which is shut in can go to at most."""

FRAMES = (
    "<be:shut_in> {target} [by {agent}] [(in|on) {square}]",
    "{agent} <shut_in> {target} [(in|on) {square}]",
    "[{agent}] <shut_in> {object} if active",
    "{men} <shut_in> {target} ; several=yes",
    "<be:lock/close/shut/block/box/hem/wall/hide> {target} behind {men} ; several=yes",
    "{target} <=> prisoner",
    "{target} <=> jailed",
    "{target} <have> {none}",
    "{target} <have> move if modal=almost",
    "{target} <move/stir/breathe/budge> +hardly|scarcely|barely if modal=can|almost",
    "{target} <move/stir/budge/go> (muscle|square|step) if modal=can negated",
    "{target} <come out/get out> [(into|to|in) (game|play|open|daylight|world)] if modal=can negated",
    "{target} <come/get> (into|to) (game|play|daylight|action) if modal=can negated",
    "<*> {caged}",
)
_CAGED = frozenset({"entombed", "imprisoned", "buried", "incarcerated", "hemmed-in"})


def _caged(noun: Noun) -> str | None:
    """ "That entombed bishop"."""
    said = _CAGED & set(noun.adjectives)
    return noun.text if noun.type == "piece" and said and not noun.parts else None


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    verb = slots.get("verb")
    present(verb)
    alone(here)
    spot, by = here.spot, None
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
    words = slots.get("target") or slots.get("object") or slots["caged"]
    found = [
        at
        for word in targets(words) or [words]
        for at in meant(at_spot, word, fits=lambda at: _shut_by(spot, at, by), in_play=False)
    ]
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
    frames=FRAMES,
    gives_way=frozenset({"trapped", "bad-bishop"}),
    tests={
        "men": lambda n: n.text if n.type == "piece" and (n.parts or n.plural) else None,
        "none": lambda n: n.head if n.no and n.head in {*NOUNS["move"], "mobility"} else None,
        "caged": _caged,
    },
    read=read,
    check=check,
    flips=True,
)  # fmt: skip
