"""Skewers: the bigger piece stands in front, and what is behind it falls when it moves."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Any

from lineproof.claims.board import VALUES, name, other, pieces, title, upper
from lineproof.claims.claim import Ask, Claim, Judgement, Mark, Outcome
from lineproof.claims.here import Agent, Here, Named, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.patterns import targets
from lineproof.claims.pays import pays
from lineproof.claims.pointing import alone, meant, moment, present
from lineproof.engine import Board


@dataclass(frozen=True)
class Skewer:
    """`by` attacks `front`, and on the same line behind it stands `behind`."""

    by: str
    front: str
    behind: str


def skewers(board: Board, side: str) -> list[Skewer]:
    """The skewers of a side. The piece in front is the king, worth more than the attacker, or unprotected, and worth no less than what is behind."""
    enemies = {at: (board.piece_at(at) or "p").lower() for at in pieces(board, other(side))}
    found: list[Skewer] = []
    for by in pieces(board, side):
        own = (board.piece_at(by) or "k").lower()
        if own not in "brq":
            continue
        seen = board.attacks(by)
        for front in seen:
            letter = enemies.get(front)
            if letter is None or letter == "p":
                continue
            loose = not board.attackers(other(side), front)
            if letter != "k" and VALUES[letter] <= VALUES[own] and not loose:
                continue
            for behind in board.attacks(by, [front]):
                if behind in seen or behind not in enemies or enemies[behind] == "k":
                    continue
                if letter == "k" or VALUES[letter] >= VALUES[enemies[behind]]:
                    found.append(Skewer(by, front, behind))
    return found


FRAMES = (
    "[{agent}] <skewer> {targets} [with {move}]",
    "[{agent}] <skewer> {object} (to|against|on_to) {second}",
    "[{agent}] <skewer> {object} behind {second}",
    "<be:skewer> {whom}",
    "{agent} <look/see/stare/attack/aim/shine> through {big} (at|to|on|onto) {second}",
    "{agent} <go/cut/run> through {big} (to|at|on|onto) {second}",
    "[{agent}] <~> skewer [(of|on|against) {targets}]",
)


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    verb = slots.get("verb")
    present(verb, "will")
    alone(here)
    if "big" in slots:
        slots["object"] = slots.pop("big")
    said = targets(slots["targets"]) if "targets" in slots else []
    said += [slots[key] for key in ("object", "second") if key in slots]
    if len(said) > 2:
        raise Unread("more than two pieces are named")
    if "move" in slots:
        named = here.named(slots["move"])
        side, spot = named.side, named.after
        by: str | None = named.uci[2:4]
    else:
        if slots.get("agent") in {"this", "that"}:
            here = replace(here, topic=None)  # "this is a skewer" points to the move
        agent = _skewerer(here.agent(slots.get("agent"), "brq"))
        if "whom" in slots and here.side(slots["whom"]) == agent.side:
            raise Unread("a side does not skewer its own pieces")
        side = agent.side
        spot = agent.spot if agent.move is not None else moment(here, side, verb)
        piece = "agent" in slots and bool(here.find(slots["agent"]))
        by = agent.square if agent.move is not None or piece else None
        if by is not None and spot is not here.spot and agent.move is None:
            by = spot.moves[-1][2:4] if spot.moves[-1][:2] == by else by
    at = here.at(spot)
    aims = {s for k in skewers(spot.board, side) for s in (k.front, k.behind)}
    hit = [meant(at, words, "kqrbnp", lambda s: s in aims, other(side))[0] for words in said]
    return [here.claim(KIND.id, side, spot=spot, by=by, hit=hit)]


def _skewerer(agent: Agent) -> Agent:
    """Whose skewer "this" is, where the last move was of a piece that cannot skewer and steps aside: that of the move before."""
    spot, move = agent.spot, agent.move
    if move is None or len(spot.moves) < 2 or move.uci != spot.moves[-1]:
        return agent
    before = spot.earlier(1)
    at = before.moves[-1][2:4]
    if (before.board.piece_at(move.uci[:2]) or "").lower() in "brq":
        return agent
    if (before.board.piece_at(at) or "").lower() not in "brq":
        return agent
    made = Named(before.earlier(1), before.moves[-1], other(agent.side))
    return Agent(made.side, before, at, made)


def check(claim: Claim, ask: Ask) -> Judgement:
    board = claim.spot.board
    side = claim.side or "white"
    by, hit = claim.params["by"], set(claim.params["hit"])
    every = [k for k in skewers(board, side) if by in (None, k.by)]
    fitting = [
        k
        for k in every
        if hit <= {k.front, k.behind}
        and (board.piece_at(k.behind) not in ("p", "P") or k.behind in hit)
    ]
    if not fitting:
        fitting_not = every[0] if every and not hit else None
        because = f"No line piece of {title(side)}'s attacks a bigger or an unprotected piece with another behind it."
        if hit:
            who = name(board, by) if by else f"a line piece of {title(side)}'s"
            because = f"{upper(who)} does not skewer {' and '.join(name(board, s) for s in claim.params['hit'])}."
        elif fitting_not is not None:
            because = f"Behind {name(board, fitting_not.front)} there is only a pawn."
        return Judgement(Outcome.FAILS, because, (), claim.spot, {}, instead=because)
    found = fitting[0]
    because = f"{upper(name(board, found.by))} attacks {name(board, found.front)}, and behind it on the same line stands {name(board, found.behind)}."
    paid = pays(ask, claim.spot, side)
    return Judgement(
        Outcome.HOLDS,
        because,
        paid.line,
        claim.spot,
        {"by": found.by, "front": found.front, "behind": found.behind},
        marks=(
            Mark("move", (found.by, found.front), side),
            Mark("square", (found.behind,), side),
        ),
        second=paid.said(side),
    )


KIND = Kind(
    id="skewer",
    title="Skewer",
    version=1,
    definition=(
        "A bishop, rook or queen attacks a piece that is the king, worth more than the attacker, or unprotected, and with nothing between stands on the same line behind it "
        "a piece worth no more than the one in front; a pawn behind only if named. Whether it pays is a second finding."
    ),
    source='Chess Programming Wiki, "Skewer" (from memory); what may stand in front: common practice',
    frames=FRAMES,
    tests={
        "whom": lambda n: n.text if n.type == "side" else None,
        "big": lambda n: (
            n.text
            if n.type == "piece" and n.head in {"king", "queen", "rook"} and not n.parts
            else None
        ),
    },
    read=read,
    check=check,
    flips=True,
    tactic="for",
)
