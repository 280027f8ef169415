"""Discovered attacks: a piece moves away, and the one behind it attacks."""

from __future__ import annotations

from typing import Any

from lineproof.claims.board import VALUES, defenders, name, names, other, upper
from lineproof.claims.claim import Ask, Claim, Judgement, Mark, Outcome
from lineproof.claims.discovery import uncovered
from lineproof.claims.here import Here, Named, Unread, absent
from lineproof.claims.kind import Kind
from lineproof.claims.pointing import meant, present
from lineproof.claims.reference import Reference

FRAMES = (
    "{agent} <uncover> attack [(by|of|from) {by_piece}] [(on|against|at) {hit}]",
    "[{agent}] <uncover> {by_piece} [(on|against|at) {hit}] if active",
    "<be:uncover> {by_piece} [(on|against|at) {hit}]",
    "[{agent}] <~> discovered_attack [(on|against|at) {hit}] [(by|from) {by_piece}]",
    "{by_piece} <attack> {hit} ; behind=yes",
    "<be:attack> {hit} by discovered_attack",
    "[{agent}] <expose> {hit} to {by_piece}",
    "[{agent}] <clear/open> (way|file|diagonal|line) (for|of) {by_piece} (to|on|against|at) {hit}",
)


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    verb = slots.get("verb")
    if slots.get("agent") in {"this", "that", "it", "which"}:
        del slots["agent"]  # "that is a discovered attack": the move just played
    present(verb, "will", "can")
    if ("impersonal" in slots or "side" in slots) and "move" not in slots:
        side = here.side(slots["side"]) if "side" in slots else here.board.turn
        spot = here.spot.with_move_for(side)
        if spot is None:
            raise Unread("it is not that side's move, and the other is in check")
        hit = slots.get("hit")
        return [here.claim(KIND.id, side, spot=spot, move=None, by=None, hit=hit)]
    if verb is not None and verb.modal == "can" and "move" not in slots:
        raise Unread("it is not clear which move could open the line")
    if "behind" in slots or ("by_piece" in slots and "agent" not in slots and here.spot.moves):
        return [_laid_open(here, slots)]
    move = _move(here, slots, verb)
    after = here.at(move.after)
    opened = uncovered(move.before.board, move.uci)
    by = None
    if "by_piece" in slots:
        by = meant(after, slots["by_piece"], "brq", fits=lambda at: at in opened, side=move.side)[0]
        if after.board.piece_at(by) != move.before.board.piece_at(by):
            raise Unread("the piece itself has moved")
    if "mover" in slots:
        reference = Reference.read(slots["mover"])
        letter = (move.before.board.piece_at(move.uci[:2]) or "").lower()
        if reference.letter not in (None, letter):
            raise Unread(f"{slots['mover']!r} is not what moves here")
    hit = slots.get("hit")
    if hit is not None and not after.find(hit, other(move.side)):
        raise absent(hit, "to attack")
    return [here.claim(KIND.id, move.side, spot=move.before, move=move.uci, by=by, hit=hit)]


def _laid_open(here: Here, slots: dict[str, Any]) -> Claim:
    """ "The queen now attacks the rook", "is unveiled": of the move just played, by another piece that stood behind it.

    :raises Unread: when the piece stood open before.
    """
    last = here.last()
    opened = uncovered(last.before.board, last.uci)
    by = [at for at in here.find(slots["by_piece"], last.side) if at in opened]
    if len(by) != 1:
        raise Unread("the move just played opens no line for that piece")
    hit = slots.get("hit")
    if hit is not None and not here.find(hit, other(last.side)):
        raise absent(hit, "to attack")
    return here.claim(
        KIND.id, last.side, spot=last.before, negated=False, move=last.uci, by=by[0], hit=hit
    )


def _move(here: Here, slots: dict[str, Any], verb: Any) -> Named:
    if "move" in slots:
        return here.named(slots["move"])
    if "agent" in slots:
        agent = here.agent(slots["agent"])
        if agent.move is not None:
            return agent.move
        side = agent.side
        if here.find(slots["agent"]) and here.last().uci[2:4] != agent.square:
            raise Unread("that piece has not just moved")
    elif "mover" in slots and here.board.turn == here.agent(slots["mover"]).side:
        side = here.board.turn
    else:
        side = here.last().side
    future = verb is not None and verb.modal in {"will", "can"}
    if here.spot.moves and here.mover == side and not future:
        return here.last()
    following = here.shown_next
    if here.board.turn != side or following is None:
        raise Unread("the move that opens the line is not shown")
    return Named(here.spot, following, side)


def _worthy(claim: Claim, uci: str) -> dict[str, list[str]]:
    """What a move uncovers and the claim means: the piece named, or those worth attacking."""
    after = claim.spot.board.play(uci)
    named = claim.params["hit"]
    side = claim.spot.board.turn
    wanted = None if named is None else Reference.read(named).squares(after, other(side))
    found: dict[str, list[str]] = {}
    for at, hit in uncovered(claim.spot.board, uci).items():
        own = VALUES[(after.piece_at(at) or "q").lower()]
        kept = []
        for to in hit:
            letter = (after.piece_at(to) or "p").lower()
            loose = letter != "p" and not any(defenders(after, to))
            if (
                to in wanted
                if wanted is not None
                else letter == "k" or VALUES[letter] > own or loose
            ):
                kept.append(to)
        if kept and claim.params["by"] in (None, at):
            found[at] = kept
    return found


def check(claim: Claim, ask: Ask) -> Judgement:  # noqa: ARG001 - a board fact asks no search
    board, move = claim.spot.board, claim.params["move"]
    side = claim.side or "white"
    moves = board.legal_moves() if move is None else [move]
    for uci in moves:
        found = _worthy(claim, uci)
        if found:
            after = board.play(uci)
            at, hit = next(iter(found.items()))
            because = f"{board.san(uci)} opens the line of {name(after, at)}, which now attacks {names(after, hit)}."
            return Judgement(
                Outcome.HOLDS, because, (uci,), claim.spot, {"attacked": len(hit)},
                marks=tuple(Mark("move", (at, to), side) for to in hit),
            )  # fmt: skip
    what = "" if claim.params["hit"] is None else f" on {claim.params['hit']}"
    if move is None:
        because = f"No move uncovers an attack{what}."
    else:
        opened = uncovered(board, move)
        after = board.play(move)
        because = f"{board.san(move)} opens no line to anything worth attacking."
        if what and not opened:
            because = f"{board.san(move)} opens no line to {claim.params['hit']}."
        elif opened:
            at, hit = next(iter(opened.items()))
            because = f"{board.san(move)} opens the line of {name(after, at)} only to {names(after, hit)}."
    return Judgement(
        Outcome.FAILS, upper(because), (), claim.spot, {"attacked": 0}, instead=upper(because)
    )


KIND = Kind(
    id="discovered-attack",
    title="Discovered attack",
    version=1,
    definition="A move opens the line of a bishop, rook or queen of its side, which did not move itself and now attacks the piece named; where none is named, the king, a piece worth more than it, or an unprotected piece that is no pawn. Said of a possible one, the side has such a move, on its move or after a pass.",
    frames=FRAMES,
    tests={
        "by_piece": lambda n: n.text if n.type == "piece" and n.head in {"queen", "rook", "bishop"} else None,
        "hit": lambda n: n.text if n.type in {"piece", "square"} and not n.parts else None,
    },
    read=read,
    check=check,
    flips=True,
    tactic="for",
)  # fmt: skip
