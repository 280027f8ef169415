"""Pins: a piece that must not leave its line."""

from __future__ import annotations

import re
from typing import Any

from lineproof.claims.bands import seen_from
from lineproof.claims.board import Pinned, name, other, pieces, pins, side_of, title, upper
from lineproof.claims.claim import SHOWN, Ask, Claim, Judgement, Mark, Outcome, Spot
from lineproof.claims.here import Here, Unread, absent
from lineproof.claims.kind import Kind
from lineproof.claims.reference import Reference
from lineproof.claims.showing import comes_to, shortest
from lineproof.claims.timing import as_it_stands, of_this_move
from lineproof.claims.verbs import Verb
from lineproof.engine import Board

FRAMES = (
    "[{agent}] <pin> {target} [(to|against|on_to) {behind}]",
    "[{agent}] <~> pin (on|against|of) {target} [(to|against) {behind}]",
    "{target} <~> (in|under|into) pin [(to|against) {behind}] [by {pinner}]",
    "[{agent}] <put/hold/keep/have/catch> {target} (in|into|under) pin [(to|against) {behind}]",
    "pin <=> {degree}",
    "{target} <=> stuck|caught (in|under) pin",
    "<*> {pinned_piece}",
    "[{agent}] <~> {sort}",
    "{target} <move/budge/go/leave> ; held=yes if modal=can|may negated",
    "{target} <=> stuck|frozen|rooted|paralysed in_front_of {behind} ; held=yes",
    "{target} <be/stand> in_front_of {behind} +stuck ; held=yes",
    "[{agent}] <unpin> {target} ; freed=yes",
    "[{agent}] <break/lift/escape> pin [(on|of|against) {target}] ; freed=yes",
)


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    as_it_stands(here, slots)
    spot, pinner, side = _pinner(here, slots)
    at = here.at(spot)
    if "pinned_piece" in slots:
        slots["target"] = slots.pop("pinned_piece")
    if "sort" in slots:
        if (
            slots.get("agent", "it") not in {"it", "this", "that"}
            or slots.get("verb", Verb()).negated
        ):
            raise Unread("it is not clear which pin is meant")
        slots["degree"] = slots["sort"].split()[0]
    if "degree" in slots:
        return [_last_pin(here, slots["degree"])]
    if "freed" in slots or _FREES.search(here.said):
        return [_freed(at, slots)]
    if slots.get("behind") == slots.get("target"):
        slots.pop("behind", None)  # "it is pinned to it"
    verb = slots.get("verb")
    denied = verb is not None and verb.negated and "broken" not in slots
    target = slots.get("target", here.topic)
    if target is None:
        raise Unread("it is not clear which piece is meant")
    if Reference.read(target).plural:
        raise Unread(f"{target!r} are several")
    candidates = at.find(target, side)
    if not candidates:
        raise absent(target)
    last = at.spot.moves[-1][2:4] if at.spot.moves else None
    if last in candidates and at.spot.moves != tuple(at.place.moves()):
        candidates = [last]  # "upon Be2 the bishop is pinned": the one that has come there
    if "held" in slots:
        bound = {p.piece for s in ("white", "black") for p in pins(at.board, s)}
        candidates = [c for c in candidates if c in bound]
        if not candidates:
            raise Unread("it cannot move for another reason than a pin, or can")
    gone = "freed" in slots or (denied and "no longer" in here.said)
    if gone and len(candidates) > 1:
        candidates = _pinned_before(spot, candidates)
    negated = denied != any(k in slots for k in ("unpinned", "freed", "broken"))
    return [
        here.claim(
            KIND.id,
            other(side) if side else _against(spot, candidates),
            spot=spot, negated=negated, candidates=candidates, named=target,
            pinner=pinner, behind=slots.get("behind"), absolute=slots.get("pinned") == "absolute",
        )
    ]  # fmt: skip


def _pinner(here: Here, slots: dict[str, Any]) -> tuple[Spot, list[str] | None, str | None]:
    """The position spoken of, the pieces that may pin, and whose piece is pinned; None for what is not said."""
    text = slots.get("pinner") or slots.get("agent")
    if text is None:
        if "target" in slots and here.said.split()[0] in {"pinning", "nailing", "with", "to"}:
            of_this_move(here)
        return here.spot, None, None
    reference = Reference.read(text)
    if reference.letter is None and reference.square is None:
        if text in {"this", "that", "it", "which", "who"}:
            return here.spot, None, None
        agent = here.agent(text)
        square = [agent.square] if agent.move is not None and agent.square is not None else None
        return agent.spot, square, other(agent.side)
    spot = here.spot
    owners = (
        {side_of(spot.board.piece_at(at) or "K") for at in here.find(slots.get("target", ""))}
        if slots.get("target")
        else set()
    )
    pinner = here.find(text, other(owners.pop()) if len(owners) == 1 else None)
    last = spot.moves[-1][2:4] if spot.moves else None
    if last in pinner and reference.square is None:
        pinner = [last]
    if not pinner:
        raise absent(text)
    letter = spot.board.piece_at(pinner[0])
    return spot, pinner, other(side_of(letter)) if letter else None


_FREES = re.compile(
    r"\b(?:break|lift|escape|shake|end|remove|resolve|unpin)\w*\b.*\bpin\b|\bunpin"
    r"|\b(?:get|gets|got|getting)\b.*\b(?:out of|rid of)\b.*\bpin\b"
)
"""Words of a move that ends a pin."""


def _freed(here: Here, slots: dict[str, Any]) -> Claim:
    """ "This breaks the pin": the piece of the mover's side that was pinned before the move.

    :raises Unread: when there was none, or more than one may be meant.
    """
    verb = slots.get("verb")
    if verb is not None and verb.negated:
        raise Unread("it is not clear which pin is not broken")
    last = here.last()
    held = {p.piece for p in pins(last.before.board, last.side)}
    if "target" in slots:
        held &= set(here.find(slots["target"], last.side, last.before.board))
    if len(held) != 1:
        raise Unread("it is not clear which pin is meant")
    at = held.pop()
    at = last.uci[2:4] if at == last.uci[:2] else at
    return here.claim(
        KIND.id, other(last.side), negated=True, candidates=[at], named=name(here.board, at), pinner=None, behind=None, absolute=False,
    )  # fmt: skip


def _last_pin(here: Here, degree: str) -> Claim:
    """ "This pin is absolute": the one that the piece just moved makes, or the only one on the board."""
    found = [p for side in ("white", "black") for p in pins(here.board, side)]
    last = here.last().uci[2:4]
    made = [p for p in found if p.pinner == last] or found
    if not made:
        raise Unread("there is no pin on the board to speak of")
    pin = made[0]
    enemy = side_of(here.board.piece_at(pin.pinner) or "K")
    return here.claim(
        KIND.id,
        enemy,
        candidates=[pin.piece],
        named=name(here.board, pin.piece),
        pinner=[pin.pinner],
        behind=None,
        absolute=degree == "absolute",
        relative=degree == "relative",
    )


def _against(spot: Spot, candidates: list[str]) -> str | None:
    """The side that pins, when all the pieces that may be meant are of one side."""
    sides = {side_of(spot.board.piece_at(at) or "K") for at in candidates}
    return other(sides.pop()) if len(sides) == 1 else None


def _pinned_before(spot: Spot, candidates: list[str]) -> list[str]:
    """Of several pieces that "the knight" can mean, those that were pinned a moment ago.

    :raises Unread: when none was.
    """
    for board in spot.boards[-5:-1][::-1]:
        held = {p.piece for side in ("white", "black") for p in pins(board, side)}
        found = [at for at in candidates if at in held]
        if found:
            return found
    raise Unread("it is not clear which piece is meant")


def check(claim: Claim, ask: Ask) -> Judgement:
    board = claim.spot.board
    found: list[Pinned] = []
    for side in ("white", "black"):
        found.extend(p for p in pins(board, side) if p.piece in claim.params["candidates"])
    fitting = [p for p in found if _fits(claim, p)]
    where = (
        name(board, claim.params["candidates"][0])
        if len(claim.params["candidates"]) == 1
        else claim.params["named"]
    )
    if fitting:
        pin = min(fitting, key=lambda p: not p.absolute)
        because = f"{upper(name(board, pin.pinner))} looks through {name(board, pin.piece)} at {name(board, pin.behind)}: {'an absolute' if pin.absolute else 'a relative'} pin."
        marks = (
            Mark("pin", (pin.pinner, pin.behind), side_of(board.piece_at(pin.pinner) or "K")),
            Mark("square", (pin.piece,), side_of(board.piece_at(pin.pinner) or "K")),
        )
        said = Outcome.FAILS if claim.negated else Outcome.HOLDS
        second, line, line_from = _break(claim, pin, ask)
        return Judgement(
            said,
            because,
            line,
            line_from,
            {"pinner": pin.pinner, "behind": pin.behind},
            instead=because if claim.negated else None,
            marks=marks,
            second=second,
        )
    if claim.negated:
        return Judgement(Outcome.HOLDS, f"Nothing pins {where}.", (), claim.spot)
    if found:
        pin = found[0]
        because = f"{upper(name(board, pin.piece))} is pinned to {name(board, pin.behind)} by {name(board, pin.pinner)}, not as the words say."
    else:
        because = _only_at(board, claim.params["candidates"]) or (
            f"No enemy line piece looks through {where} at a king, a bigger or an unprotected piece."
        )
    return Judgement(
        Outcome.FAILS,
        because,
        (),
        claim.spot,
        {},
        instead=because if found else f"{upper(where)} is not pinned.",
    )


def _only_at(board: Board, candidates: list[str]) -> str:
    """Where an enemy line piece looks through one of some pieces only at one that makes no pin: which; "" where none does."""
    for at in candidates:
        letter = board.piece_at(at)
        if letter is None:
            continue
        side = side_of(letter)
        own = pieces(board, side)
        for by in board.attackers(other(side), at):
            if (board.piece_at(by) or "").lower() not in "brq":
                continue
            for behind in board.attacks(by, [at]):
                if behind in own and behind != at and behind not in board.attacks(by):
                    return f"{upper(name(board, by))} looks through {name(board, at)} only at {name(board, behind)}."
    return ""


def _fits(claim: Claim, pin: Pinned) -> bool:
    board = claim.spot.board
    if claim.params["pinner"] and pin.pinner not in claim.params["pinner"]:
        return False
    if claim.params["absolute"] and not pin.absolute:
        return False
    if claim.params.get("relative") and pin.absolute:
        return False
    behind = claim.params["behind"]
    return behind is None or pin.behind in Reference.read(behind).squares(board, None)


def _break(claim: Claim, pin: Pinned, ask: Ask) -> tuple[str | None, tuple[str, ...], Spot]:
    """The second finding: whether the pinned piece may leave the line, and of a relative pin whether that pays, with the line."""
    board = claim.spot.board
    piece = name(board, pin.piece)
    side = side_of(board.piece_at(pin.piece) or "K")
    if pin.absolute:
        said = f"{upper(piece)} may not leave the line: {title(side)}'s king stands behind it."
        return said, (), claim.spot
    spot = claim.spot.with_move_for(side)  # asked as if the pinned side were to move
    if spot is None:
        return None, (), claim.spot
    line = {pin.pinner, *board.between(pin.pinner, pin.behind)}
    legal = spot.board.legal_moves()
    off = [m for m in legal if m[:2] == pin.piece and m[2:4] not in line]
    best = ask.best(spot)
    breaking = ask.best(spot, without=[m for m in legal if m not in off]) if off else None
    if best is None or breaking is None:
        return f"The pin is relative; {piece} has no move off the line.", (), claim.spot
    cost = max(0, seen_from(side, best.points) - seen_from(side, breaking.points))
    san = spot.board.san(breaking.moves[0])
    shown = shortest(spot, breaking.moves, most=SHOWN)
    if cost <= SAFE:
        said = f"The pin is relative, and it can be broken: {san} costs {title(side)} nothing."
        return said, shown, spot
    what = comes_to(spot, shown, other(side))
    end = f": {what}" if what else ""
    return (
        f"The pin is relative; breaking it costs {title(side)} {cost} points, even with {san}{end}.",
        shown,
        spot,
    )


SAFE = 5
"""Points that breaking a pin may cost at most and still be called free."""

KIND = Kind(
    id="pin",
    title="Pin",
    version=2,
    definition="Exactly one piece stands between an enemy line piece and its king (absolute), or a bigger or an unprotected piece of its side (relative; bigger than the pinned piece and than the pinner, for otherwise nothing is won by taking it). Whether the piece may leave the line, and of a relative pin what that costs, is a second finding.",
    frames=FRAMES,
    tests={
        "pinned_piece": lambda n: (
            n.text
            if n.type == "piece" and "pinned" in n.adjectives and not (n.no or n.plural or n.parts)
            else None
        ),
        "sort": lambda n: (
            n.head if n.head in {"absolute pin", "relative pin"} and not n.no else None
        ),
    },
    slots={
        "degree": {
            "absolute": "absolute",
            "an absolute one": "absolute",
            "relative": "relative",
            "only relative": "relative",
            "a relative one": "relative",
        },
    },
    read=read,
    check=check,
    tactic="for",
)
