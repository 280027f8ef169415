"""Mate threats: what happens if the opponent passes."""

from __future__ import annotations

import re
from dataclasses import replace
from typing import Any

from lineproof.claims.bands import seen_from
from lineproof.claims.board import other, title
from lineproof.claims.claim import SHOWN, Ask, Claim, Judgement, Mark, Outcome, Spot
from lineproof.claims.here import Here, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.passing import parsed
from lineproof.claims.timing import as_it_stands, of_this_move

DEPTH = 2
"""Moves within which an unnamed threat of mate must mate."""


FRAMES = (
    "[{agent}] <threaten> mate [(on|at) {square}] [in {n}] [(with|by) {move}]",
    "[{agent}] <threaten> {move} mate",
    "[{agent}] <threaten to mate> [(on|at) {square}] [in {n}]",
    "[{agent}] <~> threat of mate [(on|at) {square}]",
    "[{agent}] <~> mate threat [(on|at) {square}]",
    "threat <=> mate [(on|at) {square}] [in {n}]",
    "threat <=> {move} mate",
    "mate <=> threat {move}",
    "{move} <=> mate threat",
    "mate <be/hang/loom/lurk> in air [(on|at) {square}]",
    "mate <loom/lurk/hang> [(on|at) {square}]",
    "[{agent}] <dream_of/play_for/be_after/hint_at> mate [(on|at) {square}]",
    "[{agent}] <threaten> {mating}",
    "<~> {mating} looming ; looms=yes",
    "[{agent}] <want to mate> [(on|at) {square}]",
    "<~> mate (on|at) {square} ; bare=yes",
    "<~> mate [(on|at) {square}] ; passed=yes",
    "[{side}] <mate> [(on|at) {square}] ; passed=yes",
    "mate <=> threat [(on|at) {square}]",
    "{side} <prevent/avert/meet/stop/parry/see_to/watch_out_for/look_out_for/beware_of/deal_with/guard_against> mate [(on|at) {square}] ; stopped=yes if modal=must|should",
    "{side} <do> {something} about mate [(on|at) {square}] ; stopped=yes if modal=must|should",
    "<watch_out_for/look_out_for/beware_of/mind/see> mate [(on|at) {square}] ; stopped=yes if bidden",
    "{side} <prevent/avert/meet/stop/parry/see_to/watch_out_for/look_out_for/beware_of/deal_with/guard_against> (threat|mate_threat) [of mate] [(on|at) {square}] ; stopped=yes if modal=must|should",
    "mate threat <=> {plain} [(on|at) {square}]",
    "{side} <=> {one_move} away_from mate",
    "<=> for mate [(on|at) {square}] +watch_out|careful|beware ; stopped=yes if verbless",
    "<be:mate> {side} [(on|at) {square}] ; passed=yes",
)


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    if "passed" in slots:
        if here.idle is None:
            raise Unread("nobody has been let pass")
        here = here.at(here.idle)  # "mate if we're asleep"
        return [here.claim(KIND.id, here.mover, move=None, square=slots.get("square"), moves=None)]
    as_it_stands(here, slots)
    if slots.get("count", 1) != 1:
        raise Unread("several mates are spoken of")
    verb = slots.get("verb")
    gone = " no longer " in f" {here.said} "
    if verb is not None and verb.negated and re.search(r"\bnever\b", here.said):
        raise Unread("it is said of every time")
    gone = gone or (verb is not None and verb.negated)
    spot, side = here.spot, None
    if "bare" in slots:
        board = spot.board
        if board.is_checkmate:
            raise Unread("it is mate already")
        now = [m for m in board.legal_moves() if m[2:4] == slots["square"]]
        if any(board.play(m).is_checkmate for m in now):
            raise Unread("the side to move mates there, so nothing is only threatened")
    if "stopped" in slots:
        side = other(here.side(slots["side"])) if "side" in slots else here.mover
    elif "agent" in slots:
        agent = here.agent(slots["agent"])
        spot, side = agent.spot, agent.side
    elif "side" in slots or "whose" in slots:
        side = here.side(slots.get("side") or slots.get("whose"))
    if side is None:
        of_this_move(here)
        side = here.mover if here.subject is None or here.subject == here.mover else here.subject
    if "looms" in slots:
        mating = slots["mating"]
        free = spot.passed()
        for at in (spot, free):
            if at is not None and parsed(at, mating) is not None:
                side = at.board.turn
        return [
            here.claim(
                KIND.id,
                side,
                spot=spot,
                move=None,
                own=spot.board.turn == side,
                square=None,
                moves=None,
            )
        ]
    own = spot.board.turn == side
    if own and slots.get("move") is not None:
        raise Unread("it is that side's own move, so nothing is only threatened")
    params: dict[str, Any] = {
        "own": own,
        "square": slots.get("square"),
        "moves": min(int(slots["n"]), 30) if "n" in slots else None,
    }
    return [here.claim(KIND.id, side, spot=spot, negated=gone, move=slots.get("move"), **params)]


def check(claim: Claim, ask: Ask) -> Judgement:
    found = _threatens(claim, ask)
    if not claim.negated or found.outcome is Outcome.UNSETTLED:
        return found
    turned = Outcome.FAILS if found.outcome is Outcome.HOLDS else Outcome.HOLDS
    instead = found.because if turned is Outcome.FAILS else None
    return replace(found, outcome=turned, instead=instead)


def _threatens(claim: Claim, ask: Ask) -> Judgement:
    side = claim.side or "white"
    board = claim.spot.board
    own = claim.params.get("own", False)
    passed = board if own else board.passed()
    if board.is_checkmate:
        return Judgement(Outcome.HOLDS, "It is mate already.", (), claim.spot)
    if passed is None:
        return Judgement(
            Outcome.UNSETTLED,
            f"{title(board.turn)} is in check and cannot pass, so a threat cannot be asked for.",
        )
    free = claim.spot if own else Spot(passed.fen, (), passed)
    lead = "It is his move, and" if own else f"If {title(board.turn)} passes,"
    square, limit = claim.params["square"], claim.params["moves"]
    named = claim.params["move"]
    if named is not None:
        try:
            uci = passed.parse_san(named.split(".")[-1])
        except ValueError:
            return Judgement(
                Outcome.FAILS, f"{named} cannot be played if {title(board.turn)} passes.", (), free
            )
        return _after(claim, ask, free, uci, side)
    for uci in passed.legal_moves():
        if passed.play(uci).is_checkmate and (square is None or uci[2:4] == square):
            san = passed.san(uci)
            marks = (Mark("move", (uci[:2], uci[2:4]), side),)
            return Judgement(
                Outcome.HOLDS,
                f"{lead} {san} is mate.",
                (uci,),
                free,
                {"mate in": 1},
                marks=marks,
            )
    depth = limit or DEPTH
    forced, line = ask.mate(free, depth)
    if forced and (square is None or line[-1][2:4] == square):
        return Judgement(
            Outcome.HOLDS,
            f"{lead} {title(side)} mates in {(len(line) + 1) // 2}.",
            line,
            free,
            {"mate in": (len(line) + 1) // 2},
        )
    if forced is None:
        return Judgement(
            Outcome.UNSETTLED,
            f"Not every line could be tried to mate in {depth} after a pass.",
            (),
            free,
            {},
            1.0,
        )
    best = ask.best(free)
    moves = best.moves[:SHOWN] if best is not None else ()
    if limit is None and square is None and best is not None:
        sign = 1 if side == "white" else -1
        if best.mate is not None and best.mate * sign > 0:
            because = f"{lead} {title(side)} mates in {abs(best.mate)}."
            return Judgement(Outcome.HOLDS, because, best.moves, free, {"mate in": abs(best.mate)})
        points = seen_from(side, best.points)
        if points >= 85:
            because = f"{lead} {title(side)} is winning ({points} of 100), but no mate was found."
            return Judgement(Outcome.UNSETTLED, because, moves, free, {"points": points}, 1.0)
    there = f" on {square}" if square else ""
    because = (
        f"{lead} {title(side)} has no mate{there} within {depth} move{'s' if depth > 1 else ''}."
    )
    return Judgement(
        Outcome.FAILS,
        because,
        moves,
        free,
        {"tried": depth},
        None,
        f"{title(side)} does not threaten mate{there}.",
    )


def _after(claim: Claim, ask: Ask, free: Spot, uci: str, side: str) -> Judgement:
    after = free.play(uci)
    san = free.board.san(uci)
    marks = (Mark("move", (uci[:2], uci[2:4]), side),)
    passer = title(
        free.board.turn if side != free.board.turn else ("black" if side == "white" else "white")
    )
    if after.board.is_checkmate:
        return Judgement(
            Outcome.HOLDS,
            f"If {passer} passes, {san} is mate.",
            (uci,),
            free,
            {"mate in": 1},
            marks=marks,
        )
    limit = claim.params["moves"]
    if limit and limit > 1:
        line = ask.move(free, uci)
        if (
            line.mate is not None
            and (line.mate > 0) == (side == "white")
            and abs(line.mate) <= limit
        ):
            return Judgement(
                Outcome.HOLDS,
                f"If {passer} passes, {san} mates in {abs(line.mate)}.",
                line.moves,
                free,
                {"mate in": abs(line.mate)},
                marks=marks,
            )
    return Judgement(
        Outcome.FAILS,
        f"If {passer} passes, {san} is not mate.",
        (uci,),
        free,
        {},
        None,
        f"{san} is no mate threat.",
        marks=marks,
    )


KIND = Kind(
    id="mate-threat",
    title="Mate threat",
    version=3,
    definition=f"If the opponent passes, the side mates: at once with the move or on the square named, otherwise by force: every move is tried to {DEPTH} moves, beyond that a search must find it, and a side that is winning without one leaves it unsettled. Said of the side to move, whether it mates at once or by force. Not asked of a side in check.",
    frames=FRAMES,
    slots={
        "plain": dict.fromkeys(("obvious", "clear", "plain", "real", "serious", "deadly"), True)
    },
    tests={
        "mating": lambda n: n.text if n.type == "move" and n.text.endswith("#") else None,
        "something": lambda n: n.text if n.head == "something" else None,
        "one_move": lambda n: n.text if n.head == "move" and n.count == 1 else None,
    },
    read=read,
    check=check,
    tactic="for",
)
