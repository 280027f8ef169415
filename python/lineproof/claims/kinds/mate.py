"""Checkmate on the board."""

from __future__ import annotations

from typing import Any

from lineproof.claims.board import title
from lineproof.claims.claim import Ask, Claim, Judgement, Outcome, Spot
from lineproof.claims.here import Here, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.patterns import MOVE
from lineproof.claims.played import played, supposed
from lineproof.claims.showing import numbered
from lineproof.claims.slot import SLOTS

FRAMES = (
    "{moves} <=> mate if without=in",
    "{move} <=> mate if without=in",
    "[{agent}] <=> mate if without=in|on|at",
    "[{agent}] <=> mate ; denied=yes if modal=almost without=in|on|at",
    "<=> mate ; denied=yes if verbless modal=almost",
    "<be:mate> {side} if without=in",
    "<be:mate> {king} if without=in",
    "<=> mate (on|at) {place} ; placed=yes if verbless",
    "<=> mate (with|by) {helpers} ; placed=yes if verbless",
    "(game|line|variation) <end/finish/stop> (in|with) mate",
    "{side} <mate> {whom}",
    "mate <=> complete",
    "[{agent}] <mate> ; over=yes if without=in|on|at",
    "{anything} <make> mate {complete}",
    "<~> {mating}",
    "{deed} <fail/allow/permit> {mating}",
    "{piece} <mate> (on|at) {square}",
    "<be:smother> {king}",
)


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    if here.idle is not None and not {"move", "moves"} & slots.keys():
        raise Unread("it is said of what happens after a pass")
    spot = here.named(slots["move"]).after if "move" in slots else here.spot
    bare = slots.get("agent") in {"it", "that", "this"} and "move" not in slots
    if bare and supposed(here) and not spot.board.in_check:
        raise Unread("mate comes after the move that is supposed")
    if MOVE.fullmatch(str(slots.get("agent", ""))):
        spot = here.named(slots["agent"]).after
    verb = slots.get("verb")
    if (
        verb is not None
        and verb.modal in {"will", "must", "shall"}
        and {"side", "king"} & slots.keys()
    ):
        raise Unread("it is said of what will be")
    if "over" in slots and not spot.board.is_checkmate and not _moved(slots):
        raise Unread("it is not said that it is mate already")
    if "deed" in slots:
        here = here.at(played(here, slots["deed"]).after)
    if "mating" in slots:
        spot = here.named(slots["mating"]).after
    if "placed" in slots and not spot.board.is_checkmate:
        raise Unread("it may be a mate that is threatened")
    if "piece" in slots:
        spot = _to(here, slots["piece"], slots["square"])
    if "moves" in slots:
        spot = here.play(slots["moves"])
    return [
        here.claim(
            KIND.id,
            None,
            spot=spot,
            negated="denied" in slots or ("verb" in slots and slots["verb"].negated),
        )
    ]


def _moved(slots: dict[str, Any]) -> bool:
    return MOVE.fullmatch(str(slots.get("agent", ""))) is not None


def _to(here: Here, piece: str, square: str) -> Spot:
    """The position after the one move of a piece to a square, the last one or one that is to come.

    :raises Unread: when there is none, or several.
    """
    if here.spot.moves and here.spot.moves[-1][2:4] == square and square in here.find(piece):
        return here.spot
    found = [
        uci
        for uci in here.board.legal_moves()
        if uci[2:4] == square and uci[:2] in here.find(piece, here.board.turn)
    ]
    if len(found) != 1:
        raise Unread(f"it is not clear which move of {piece!r} is meant")
    return here.spot.play(found[0])


def _last(spot: Spot) -> str:
    """The move that has led there."""
    return numbered(spot.earlier(1), spot.moves[-1:]) if spot.moves else "This"


def check(claim: Claim, ask: Ask) -> Judgement:  # noqa: ARG001 - a board fact asks no search
    board = claim.spot.board
    legal = board.legal_moves()
    spelled = ", ".join(board.san(m) for m in legal[:3])
    if board.is_checkmate:
        because, true = f"{title(board.turn)} is in check and has no legal move.", True
    elif not board.in_check:
        because, true = f"{title(board.turn)} is not even in check.", False
    else:
        because, true = (
            f"{title(board.turn)} is in check, but can answer with {spelled}{' and others' if len(legal) > 3 else ''}.",
            False,
        )
    holds = true != claim.negated
    instead = (
        None
        if holds
        else (
            "This is mate."
            if true
            else f"{_last(claim.spot)} is check, not mate."
            if board.in_check
            else f"{_last(claim.spot)} is not mate."
        )
    )
    return Judgement(
        Outcome.HOLDS if holds else Outcome.FAILS,
        because,
        (),
        claim.spot,
        {"legal moves": len(legal)},
        instead=instead,
    )


KIND = Kind(
    id="mate",
    title="Mate",
    version=1,
    definition="The side to move is in check and has no legal move (FIDE Laws of Chess 1.4.1).",
    source="FIDE Laws of Chess, article 1.4.1",
    frames=FRAMES,
    slots={"complete": {"complete": True}},
    tests={
        "mating": lambda n: n.text if n.type == "move" and n.text.endswith("#") else None,
        "whom": SLOTS["side"],
        "place": lambda n: n.text if n.type == "square" or n.head in {"move", "board"} else None,
        "helpers": lambda n: n.text if n.type == "piece" else None,
        "moves": lambda n: n.text if n.type == "move" and n.plural else None,
    },
    read=read,
    check=check,
    tactic="for",
)
