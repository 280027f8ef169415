"""Checks: a king that is attacked, or a move that would attack it."""

from __future__ import annotations

import re
from typing import Any

from lineproof.claims.board import name, names, other, title, upper
from lineproof.claims.claim import Ask, Claim, Judgement, Mark, Outcome, Spot
from lineproof.claims.here import Here, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.patterns import MOVE
from lineproof.claims.played import played
from lineproof.claims.pointing import checked_side, king, moment, owner, present
from lineproof.claims.verbs import Verb
from lineproof.claims.worded import Worded

FRAMES = (
    "{move} <=> check if without=in|from",
    "[{agent}] <=> check if without=in|from",
    "[{agent}] <=> another check if without=in|from",
    "{move} <check>",
    "{agent} <check> ; plain=yes",
    "{agent} <check> (on|from) {square}",
    "{agent} <check> {king} [(on|from) {square}]",
    "<be:check> {king} [(on|from) {square}]",
    "check <come/follow> (on|at) {square} ; some=yes",
    "<~> {checking}",
    "<~> {move} with check",
    "{reply} <=> check (on|at) {square} ; some=yes",
    "[{agent}] <come/arrive/land> with check",
    "{agent} <come_with/arrive_with/land_with/come_out_with> check",
    "{side} <be> in check [from {object}]",
    "{king} <be> in check [from {object}]",
    "[{agent}] <give> check [(on|from|at) {square}] [with {object}]",
    "[{agent}] <give> another check [(on|from|at) {square}]",
    "[{agent}] <give> check with {move}",
    "{side} <play/choose> {move} with check",
    "{agent} <capture/go> {target} with check ; along=yes",
    "[{agent}] <move/capture/step_aside/develop/push/castle/block/win> with check ; along=yes",
    "{agent} <take_on/capture> {square} with check ; along=yes",
    "{agent} <move/go> (on|to|into) {square} with check ; along=yes",
    "{agent} <give_check> [(from|on) {square}] [with {object}]",
    "{side} <have> check [(on|at|from) {square}] ; some=yes",
    "{side} <have> check (with|on) {move} ; some=yes",
    "{side} <have> {move} check ; some=yes",
    "{side} <have> {checkmove} ; some=yes",
    "<~> check (on|at|from) {square} ; some=yes",
    "<~> check (on|at|from) {square} [available] [possible] ; some=yes",
    "{side} <play/insert/throw_in/include/start_with/begin_with> check [(on|at|from) {square}] ; inserted=yes",
    "[{agent}] <move/leave> {file} with check ; along=yes",
)


_LATELY = 4
"""Plies within which a check that is only named may have been given."""
_ON = re.compile(r"\bcheck(?:s|ed|ing)? on ([a-h][1-8])\b")


_LETS = re.compile(r"\b(?:allow|permit|concede|grant)(?:s|ed|ing)? ")
"""Verbs of what the other side is given."""


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    verb = slots.get("verb")
    if "count" in slots:
        raise Unread("checks are counted")
    present(verb, "will", "can")
    if "agent" in slots and "some" not in slots and _LETS.search(here.said):
        return [_let(here, slots)]
    if "plain" in slots and (slots["agent"] in {"i", "you"} or (verb is not None and verb.done)):
        raise Unread("to have checked may be to have made sure")
    if "checkmove" in slots or "checking" in slots:
        slots["move"] = slots.get("checkmove") or slots["checking"]
    if "some" in slots:
        return [_possible(here, slots)]
    if "inserted" in slots and here.board.in_check:
        loose = slots["side"] in {"he", "they"} and here.neutral
        if loose or here.mover == here.side(slots["side"]):
            return [_given(here, here.spot, here.mover, None)]
    if "inserted" in slots:
        return [_possible(here, slots)]
    where = _ON.search(here.said)
    said = verb is None or not verb.modal
    if where and said and "move" not in slots and here.board.piece_at(where[1]) is None:
        raise Unread(f"nothing stands on {where[1]} to give check")
    open_ = verb is not None and verb.modal == "can" and "move" not in slots
    if "along" in slots and verb is not None and (verb.negated or open_):
        return [_capture(here, slots, verb)]
    if "square" in slots and "side" in slots:
        return [_on_square(here, here.side(slots["side"]), slots["square"], verb)]
    if "king" in slots and "agent" not in slots:
        return [_in_check(here, checked_side(here, slots["king"]), slots)]
    if "side" in slots and "move" not in slots:
        return [_in_check(here, here.side(slots["side"]), slots)]
    if "move" in slots and "agent" not in slots:
        named = here.named(slots["move"])
        if "side" in slots and here.side(slots["side"]) != named.side:
            raise Unread("it is the other side's move")
        return [_given(here, named.after, named.side, None)]
    words = slots.get("agent", slots.get("object"))
    if words is None:  # "Check!", "this is check", "with check": of the move just played
        last = here.last()
        if verb is None and not here.board.in_check:
            raise Unread("it is not clear what gives check")
        return [_given(here, here.spot, last.side, None)]
    if "move" in slots:
        named = here.named(slots["move"])
        return [_given(here, named.after, named.side, None)]
    if (
        (worded := Worded.read(words)) is not None
        and worded.telling
        and not MOVE.fullmatch(words)
        and worded.to
    ):
        named = played(here, words)  # "taking on f7 is check"
        return [_given(here, named.after, named.side, None)]
    agent = here.agent(words)
    if words in {"it", "that"} and not here.board.in_check and _checks_next(here):
        raise Unread("it may be said of the next move")
    if agent.move is not None:
        return [_given(here, agent.spot, agent.side, None)]
    piece = agent.square if here.find(words) else None
    if piece is None and "object" in slots and "agent" in slots:
        (piece,) = _men(here, slots["object"], agent.side)
    if "king" in slots and checked_side(here, slots["king"]) == agent.side:
        raise Unread("a side does not check its own king")
    if "square" in slots:
        return [_on_square(here, agent.side, slots["square"], verb, piece)]
    if verb is not None and verb.modal == "can":
        return [_can(here, agent.side, to=None, piece=piece)]
    if "along" in slots and here.board.turn == agent.side and not (verb and verb.done):
        raise Unread("the move that gives check is not on the board")
    if here.board.turn == agent.side and piece is not None and not (verb and verb.done):
        raise Unread("the move that gives check is not on the board")
    return [_given(here, moment(here, agent.side, verb), agent.side, piece)]


def _let(here: Here, slots: dict[str, Any]) -> Claim:
    """ "Bc4 allows the check": one that the other side has after it."""
    agent = here.agent(slots["agent"])
    if agent.move is None and (not here.spot.moves or here.mover != agent.side):
        raise Unread("it is not clear after which move")
    return _can(here.at(agent.spot), other(agent.side), to=slots.get("square"))


def _checks_next(here: Here) -> bool:
    following = here.shown_next
    return following is not None and here.board.play(following).in_check


def _capture(here: Here, slots: dict[str, Any], verb: Verb) -> Claim:
    """ "The bishop can take the pawn with check": the square must be plain; a denial may deny the capture or the check."""
    if verb.negated or "agent" not in slots:
        raise Unread("it is not clear what is denied, the move or the check")
    agent = here.agent(slots["agent"])
    piece = agent.square if here.find(slots["agent"]) else None
    to = slots.get("square")
    if to is None and "target" in slots:
        found = [at for at in here.find(slots["target"]) if owner(here, at) != agent.side]
        to = found[0] if len(found) == 1 else None
    if to is None:
        raise Unread("it is not clear which move is meant")
    return _can(here, agent.side, to=to, piece=piece)


def _men(here: Here, text: str, side: str) -> list[str]:
    """The one piece of a side that words mean."""
    found = [at for at in here.find(text) if owner(here, at) == side]
    last = here.spot.moves[-1][2:4] if here.spot.moves else None
    if last in found:
        found = [last]
    if len(found) != 1:
        raise Unread(f"it is not clear which piece {text!r} means")
    return found


def _on_square(
    here: Here, side: str, square: str, verb: Verb | None, piece: str | None = None
) -> Claim:
    """A check on a named square: the move just played when it went there, else one that is possible."""
    played = bool(here.spot.moves) and here.mover == side and here.spot.moves[-1][2:4] == square
    coming = verb is not None and verb.modal in {"will", "can"}
    if verb is not None and verb.done and not played:
        raise Unread(f"no check on {square} has been given")
    if played and not coming:
        return _given(here, here.spot, side, piece)
    return _can(here, side, to=square, piece=piece)


def _given(here: Here, spot: Spot, side: str, by: str | None) -> Claim:
    return here.claim(KIND.id, side, spot=spot, by=by, possible=False)


def _in_check(here: Here, side: str, slots: dict[str, Any]) -> Claim:
    """ "The king is in check": of the side to move; the other's king cannot be."""
    verb = slots.get("verb")
    if verb is not None and (verb.done or verb.modal):
        raise Unread("said of what has been or is to come")
    by = None
    if "object" in slots:
        (by,) = _men(here, slots["object"], other(side))
    return _given(here, here.spot, other(side), by)


def _possible(here: Here, slots: dict[str, Any]) -> Claim:
    if "move" in slots:
        named = here.named(slots["move"])
        if "side" in slots and named.side != here.side(slots["side"]):
            raise Unread("it is the other side's move")
        return _given(here, named.after, named.side, None)
    to = slots.get("square")
    if "side" in slots:
        return _can(here, here.side(slots["side"]), to=to)
    for back in range(min(_LATELY, len(here.spot.moves))):
        spot = here.spot.earlier(back)
        if to is not None and spot.moves[-1][2:4] == to and spot.board.in_check:
            return _given(here, spot, other(spot.board.turn), None)  # it has been given
    claims = [_can(here, here.board.turn, to=to)]
    if not here.board.in_check:
        claims.append(_can(here, here.mover, to=to))
    # nobody is named: whoever has the check is meant
    return next((c for c in claims if _checking_moves(c)), claims[0])


def _can(here: Here, side: str, *, to: str | None, piece: str | None = None) -> Claim:
    spot = here.spot.with_move_for(side)
    if spot is None:
        raise Unread("it is not that side's move, and the other is in check")
    return here.claim(KIND.id, side, spot=spot, by=piece, to=to, possible=True)


def _checking_moves(claim: Claim) -> list[str]:
    """The legal moves that give the check the claim speaks of."""
    board, to, by = claim.spot.board, claim.params["to"], claim.params["by"]
    return [
        uci
        for uci in board.legal_moves()
        if to in (None, uci[2:4]) and by in (None, uci[:2]) and board.play(uci).in_check
    ]


def check(claim: Claim, ask: Ask) -> Judgement:  # noqa: ARG001 - a board fact asks no search
    side = claim.side or "white"
    if claim.params["possible"]:
        return _has_check(claim, side)
    board = claim.spot.board
    target = king(claim.spot, other(side))
    givers = board.checkers() if board.turn == other(side) else []
    by = claim.params["by"]
    whose = f"{title(other(side))}'s king on {target}"
    if givers:
        because = (
            f"{upper(names(board, givers))} {'attack' if len(givers) > 1 else 'attacks'} {whose}."
        )
    else:
        because = f"Nothing attacks {whose}."
    holds = bool(givers) and (by is None or by in givers)
    if givers and not holds:
        because = f"{because[:-1]}, {name(board, by)} does not."
    return Judgement(
        Outcome.HOLDS if holds else Outcome.FAILS,
        because,
        (),
        claim.spot,
        {"checks": len(givers)},
        instead=None if holds else because,
        marks=tuple(Mark("move", (at, target), side) for at in givers),
    )


def _has_check(claim: Claim, side: str) -> Judgement:
    board = claim.spot.board
    to, by = claim.params["to"], claim.params["by"]
    found = _checking_moves(claim)
    there = f" on {to}" if to else ""
    what = f" with {name(board, by)}" if by else ""
    if found:
        because = f"{title(side)} can check with {' or '.join(board.san_line([m])[0] for m in found[:3])}."
    else:
        because = f"{title(side)} has no check{there}{what}."
    return Judgement(
        Outcome.HOLDS if found else Outcome.FAILS,
        because,
        tuple(found[:1]),
        claim.spot,
        {"checking moves": len(found)},
        instead=None if found else because,
        marks=tuple(Mark("move", (m[:2], m[2:4]), side) for m in found[:3]),
    )


KIND = Kind(
    id="check",
    title="Check",
    version=1,
    definition="The king of the side to move is attacked (FIDE Laws of Chess 3.9); said of a possible check, the side has, on its move or after a pass, a legal move, to the square named if any, after which the other king is attacked.",
    source="FIDE Laws of Chess, article 3.9",
    frames=FRAMES,
    tests={
        "reply": lambda n: n.text if n.head in {"reply", "answer", "response"} else None,
        "checkmove": lambda n: n.text if n.type == "move" and "check" in n.adjectives else None,
        "checking": lambda n: n.text if n.type == "move" and n.text.endswith("+") else None,
    },
    read=read,
    check=check,
    gives_way=frozenset({"double-check"}),
    flips=True,
)  # fmt: skip
