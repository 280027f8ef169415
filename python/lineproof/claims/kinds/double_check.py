"""Double checks: two pieces attack the king at once."""

from __future__ import annotations

from typing import Any

from lineproof.claims.board import names, other, title, upper
from lineproof.claims.claim import Ask, Claim, Judgement, Mark, Outcome, Spot
from lineproof.claims.here import Here, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.patterns import targets
from lineproof.claims.pointing import checked_side, king, moment, present

FRAMES = (
    "[{agent}] <~> double_check [with {move}] [(on|from) {square}]",
    "{move} <=> double_check",
    "{king} <be> in double_check",
    "{side} <be> in double_check",
    "{agent} <move/capture/come/arrive/land> [{object}] [(on|to) {square}] with double_check",
    "{agent} <come_with/arrive_with/land_with> double_check",
    "{two} <check> [{king}]",
    "{two} <give/make> check",
    "{two} <give_check>",
    "{two} <attack> {king}",
    "[{agent}] <=> check (by|from) {two}",
    "[{agent}] <=> check (by|from) {targets}",
    "{targets} <check> [{king}]",
    "{targets} <give/make> check",
    "{targets} <give_check>",
    "<be:give> check by {two}",
    "<be:check> {king} +twice|doubly|2_times",
    "{king} <be> in check from {two}",
    "{king} <be> in check from {targets}",
)


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    verb = slots.get("verb")
    present(verb, "will")
    by: list[str] = []
    if "targets" in slots:
        for words in targets(slots["targets"]):
            found = [at for at in here.find(words) if at in here.board.checkers()] or here.find(
                words
            )
            if len(found) != 1:
                raise Unread(f"it is not clear which piece {words!r} means")
            by.extend(found)
    if "king" in slots:
        side = other(checked_side(here, slots["king"]))
        return [_claim(here, here.spot, side, by)]
    if "side" in slots:
        return [_claim(here, here.spot, other(here.side(slots["side"])), by)]
    if "move" in slots:
        named = here.named(slots["move"])
        return [_claim(here, named.after, named.side, by)]
    if "agent" in slots:
        agent = here.agent(slots["agent"])
        spot = agent.spot if agent.move is not None else moment(here, agent.side, verb)
        return [_claim(here, spot, agent.side, by)]
    if verb is None and not here.board.in_check:
        raise Unread("it is not clear what gives a double check")
    return [_claim(here, here.spot, here.last().side, by)]


def _claim(here: Here, spot: Spot, side: str, by: list[str]) -> Claim:
    return here.claim(KIND.id, side, spot=spot, by=by)


def check(claim: Claim, ask: Ask) -> Judgement:  # noqa: ARG001 - a board fact asks no search
    side = claim.side or "white"
    board = claim.spot.board
    target = king(claim.spot, other(side))
    givers = board.checkers() if board.turn == other(side) else []
    holds = len(givers) == 2 and set(claim.params["by"]) <= set(givers)
    whose = f"{title(other(side))}'s king on {target}"
    match len(givers):
        case 0:
            because = f"Nothing attacks {whose}."
        case 1:
            because = f"Only {names(board, givers)} attacks {whose}."
        case _:
            because = f"{upper(names(board, givers))} both attack {whose}."
    return Judgement(
        Outcome.HOLDS if holds else Outcome.FAILS,
        because,
        (),
        claim.spot,
        {"checks": len(givers)},
        instead=None if holds else because,
        marks=tuple(Mark("move", (at, target), side) for at in givers),
    )


KIND = Kind(
    id="double-check",
    title="Double check",
    version=1,
    definition="Two pieces attack the king of the side to move at the same time.",
    frames=FRAMES,
    tests={
        "two": lambda n: (
            n.text
            if n.head in {"piece", "man", "unit"} and (n.count == 2 or n.det.startswith("both"))
            else None
        )
    },
    read=read,
    check=check,
    flips=True,
    tactic="for",
)
