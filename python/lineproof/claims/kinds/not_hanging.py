"""Pieces that hang, and pieces that only seem to."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from lineproof.claims.board import attackers, material, name, names, other, side_of, title, upper
from lineproof.claims.claim import Ask, Claim, Judgement, Mark, Outcome
from lineproof.claims.exchange import exchange
from lineproof.claims.gain import settled
from lineproof.claims.here import Here, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.noun import Noun
from lineproof.claims.pointing import alone, meant, present
from lineproof.claims.reference import Reference
from lineproof.claims.showing import shortest

FRAMES = (
    "{target} <=> hanging [to {by}]",
    "{nothing} <=> hanging (on|at) {square} ; safe=yes if negated",
    "{nothing} <hang> (on|at) {square} ; safe=yes if negated",
    "{target} <hang> [to {by}]",
    "{target} <leave> hanging",
    "<be:capture> {target} ; safe=yes if modal=can|may negated",
    "<be:capture> {target} +for_free|for_nothing|at_no_cost if modal=can|may",
    "{target} <=> safe ; safe=yes",
    "[{agent}] <give> {target} hanging",
    "<be:give> {target} hanging",
    "<*> {loose}",
)


def _loose(noun: Noun) -> str | None:
    """ "The hanging bishop"; hanging pawns are another thing."""
    if noun.type != "piece" or noun.parts or noun.plural or noun.head == "pawn":
        return None
    return noun.text if "hanging" in noun.adjectives else None


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    verb = slots.get("verb")
    present(verb)
    alone(here)
    spot = here.spot
    if "agent" in slots:
        spot = here.agent(slots["agent"]).spot
    there = here.at(spot)
    found = meant(
        there, slots.get("target", slots.get("loose")), "qrbnp", fits=lambda at: _hangs(there, at)
    )
    if "square" in slots and slots["square"] not in found:
        raise Unread(f"that piece does not stand on {slots['square']}")
    if (
        "target" in slots
        and Reference.read(slots["target"]).plural
        and verb is not None
        and verb.negated
    ):
        raise Unread("it is not clear whether all or some are meant")
    denied = verb is not None and verb.negated
    hanging = "safe" not in slots
    return [
        here.claim(
            KIND.id, side_of(spot.board.piece_at(at) or "K"), spot=spot, negated=hanging != denied, at=at
        )
        for at in found
    ]  # fmt: skip


def _hangs(here: Here, at: str) -> bool:
    side = side_of(here.board.piece_at(at) or "K")
    return exchange(here.board, at, other(side)) >= 1


def check(claim: Claim, ask: Ask) -> Judgement:
    """The claim is that the piece does not hang; negated, that it does."""
    spot, at = claim.spot, claim.params["at"]
    board = spot.board
    side = claim.side or "white"
    enemy = other(side)
    gain = exchange(board, at, enemy)
    near, _ = attackers(board, at)
    who = upper(name(board, at))
    numbers: dict[str, int | float | str] = {"attackers": len(near), "gain": gain}
    marks = tuple(Mark("move", (s, at), enemy) for s in near)
    if gain < 1:
        hit = (
            f"is attacked by {names(board, near)}, but protected well enough"
            if near
            else "is not attacked"
        )
        because = f"{who} {hit}."
        return _answer(
            claim, holds=not claim.negated, because=because, numbers=numbers, marks=marks
        )
    because = f"{upper(names(board, near))} can take {name(board, at)}, and what is exchanged there comes to {gain} pawn{'s' if gain != 1 else ''}."
    free = spot.with_move_for(enemy)
    takes = [m for m in free.board.legal_moves() if m[2:4] == at] if free is not None else []
    if free is None or not takes:
        held = f"{title(enemy)} has no move that takes {name(board, at)}."
        if free is None:
            return _answer(
                claim, holds=claim.negated, because=because, numbers=numbers, marks=marks
            )
        return _answer(claim, holds=not claim.negated, because=held, numbers=numbers, marks=marks)
    best = ask.best(free, without=[m for m in free.board.legal_moves() if m not in takes])
    if best is None:
        return _answer(claim, holds=claim.negated, because=because, numbers=numbers, marks=marks)
    after = free.play(best.moves[0])
    count = settled(ask, after, enemy)
    net = count.balance - material(board, enemy)
    san = free.board.san(best.moves[0])
    punished = count.mated == enemy or (count.mated is None and net < 1)
    line = shortest(free, (best.moves[0], *count.moves))
    if not punished:
        found = _answer(claim, holds=claim.negated, because=because, numbers=numbers, marks=marks)
        return replace(found, line=line, line_from=free)
    why = "is mated" if count.mated == enemy else "gains nothing by it in best play"
    # it can be taken, but not with profit: both ways of speaking hold
    because = f"{because[:-1]}, but after {san} {title(enemy)} {why}."
    return Judgement(
        Outcome.HOLDS, because, line, free, numbers, 1.0 if abs(net) <= 1 else None, marks=marks
    )


def _answer(
    claim: Claim,
    *,
    holds: bool,
    because: str,
    numbers: dict[str, int | float | str],
    marks: tuple[Mark, ...],
) -> Judgement:
    return Judgement(
        Outcome.HOLDS if holds else Outcome.FAILS,
        because,
        (),
        claim.spot,
        numbers,
        instead=None if holds else because,
        marks=marks,
    )


KIND = Kind(
    id="not-hanging",
    title="Not hanging",
    version=1,
    definition="The enemy cannot take the piece with profit: the exchange on its square gains him less than a pawn, or best play after the capture does. Said to hang, it can be taken with a gain of a pawn or more in the exchange; where only best play saves it, both ways of speaking hold, and the finding says why.",
    formula="holds: exchange(square) < 1, or material(end of best play after the capture) - material(here) < 1",
    frames=FRAMES,
    tests={"loose": _loose, "nothing": lambda n: n.text if n.no and n.head in {"nothing", "piece"} else None, "by": lambda n: n.text if n.type in {"piece", "side"} else None},
    gives_way=frozenset({"for-free"}),
    read=read,
    check=check,
)  # fmt: skip
