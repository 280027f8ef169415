"""Forks: one piece attacks two."""

from __future__ import annotations

import re
from typing import Any

from lineproof.claims.board import (
    NAMES,
    VALUES,
    defenders,
    name,
    names,
    other,
    pieces,
    upper,
)
from lineproof.claims.claim import Ask, Claim, Judgement, Mark, Outcome
from lineproof.claims.here import Agent, Here, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.noun import Noun
from lineproof.claims.patterns import targets
from lineproof.claims.pays import pays
from lineproof.claims.reference import Reference

FRAMES = (
    "[{agent}] <fork> {targets} [with {move}]",
    "[{agent}] <fork> {two} [with {move}]",
    "[{agent}] <fork> {pair} [with {move}]",
    "[{agent}] <attack> {targets} +at_once|at_the_same_time|together|both|simultaneously|in_1_go|in_one_go|at_a_stroke|at_1_stroke|in_1_breath|with_1_blow|besides|to_boot|with_a_single_move|with_1_move|with_a_single_stroke|in_1_move|in_one_move",
    "[{agent}] <attack> {two} [with {move}] [+at_once|at_the_same_time|together|both|simultaneously|in_1_go|in_one_go|at_a_stroke|at_1_stroke] if active",
    "<be:attack> {two} by {by_one}",
    "[{agent}] <attack> {both} [with {move}] [+at_once|at_the_same_time|together|simultaneously] if active",
    "{side} <fork> {whom}",
    "[{agent}] <fork> {two} with {piece}",
    "[{agent}] <attack> {two} with {piece}",
    "{side} <save/hold/protect/rescue> {both} ; lost=yes if modal=can negated",
    "[{side}] <fork> {targets} with {by_one}",
    "{agent} <have> {aims}",
    "{targets} <=> under fire from {by_one}",
    "<~> fork by {agent} [(of|on|against|between) {targets}]",
    "[{agent}] <~> fork [(of|on|against|between) {targets}]",
    "[{agent}] <land/deliver/execute/make/find/play> fork [(of|on|against|between) {targets}]",
)


def _two(noun: Noun) -> bool:
    """Whether it is two things: "two pieces", "both rooks"."""
    both = noun.det.startswith("both") and noun.plural and noun.type == "piece"
    return not noun.parts and (both or (noun.count == 2 and (noun.plural or noun.head == "thing")))


_TWOFOLD = re.compile(r"\bdouble (?:attack|hit) (?:on|against) (?:the )?(?:pawn on )?[a-h][1-8]\b")
"""What may be said of one square that two pieces look at."""


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    if "lost" in slots:
        return [_not_both(here, slots)]
    by = None if "denied" in slots else slots.get("agent", slots.get("by_one", slots.get("piece")))
    move = here.named(slots["move"]) if "move" in slots else None
    agent = Agent(move.side, move.after, move.uci[2:4], move) if move else here.agent(by)
    if agent.square is None:
        raise Unread("it is not clear which piece forks")
    prey = slots.get("targets") or slots.get("both")
    said = targets(prey) if prey else []
    if len(said) < 2 and _TWOFOLD.search(here.said):
        raise Unread("one thing may be attacked twice")
    if "pair" in slots:
        said = [slots["pair"]]  # "forks the knights"
    if "object" in slots:
        said = [slots["object"], slots["second"]]
    if any(here.owner(Reference.read(text)) == agent.side for text in said):
        raise Unread("a side does not fork its own pieces")
    denied = "denied" in slots
    return [
        here.claim(
            KIND.id, agent.side, spot=agent.spot, negated=denied, forker=agent.square, targets=said
        )
    ]


def _not_both(here: Here, slots: dict[str, Any]) -> Claim:
    """ "Black cannot save both the queen and the rook": the piece that has just moved forks them.

    :raises Unread: when it is not the side that must answer.
    """
    victim = here.side(slots["side"])
    if not here.spot.moves or here.mover == victim:
        raise Unread("it is not clear which piece forks")
    said = targets(slots["both"])
    forker = here.spot.moves[-1][2:4]
    return here.claim(KIND.id, here.mover, forker=forker, targets=said)


def check(claim: Claim, ask: Ask) -> Judgement:
    board = claim.spot.board
    forker: str = claim.params["forker"]
    side = claim.side or "white"
    enemy = other(side)
    attacked = [at for at in board.attacks(forker) if at in pieces(board, enemy)]
    worthy = _aims(board, forker, attacked)
    marks = (Mark("square", (forker,), side), *(Mark("move", (forker, at), side) for at in worthy))
    numbers = {"attacked": ", ".join(f"{board.piece_at(a)}{a}" for a in worthy)}
    if not claim.params["targets"]:
        holds = len(worthy) >= 2
        because = f"{upper(name(board, forker))} attacks {names(board, worthy)}."
        if not holds:
            return Judgement(
                Outcome.FAILS, because, (), claim.spot, numbers, instead=because, marks=marks
            )
        found = pays(ask, claim.spot, side)
        return Judgement(
            Outcome.HOLDS, because, found.line, claim.spot, numbers, marks=marks, second=found.said(side)
        )  # fmt: skip
    missing: list[str] = []
    weak: list[str] = []
    hits: list[str] = []
    for text in claim.params["targets"]:
        reference = Reference.read(text)
        candidates = reference.squares(board, enemy)
        seen = [at for at in candidates if at in attacked]
        good = [at for at in seen if at in worthy or _named_pawn(board, at)]
        needed = len(candidates) if reference.plural and len(candidates) > 1 else 1
        hits.extend(good)
        if len(seen) < needed:
            missing.append(text if not candidates else name(board, candidates[0]))
        elif len(good) < needed:
            weak.extend(at for at in seen if at not in good)
    aims = list(dict.fromkeys((*worthy, *hits)))
    who = upper(name(board, forker))
    if missing or weak:
        because = f"{who} attacks {names(board, attacked)}"
        because += f", but not {' or '.join(missing)}." if missing else "."
        if weak:
            because += f" {upper(names(board, weak))} {'are' if len(weak) > 1 else 'is'} protected and worth no more than the {NAMES[(board.piece_at(forker) or 'p').lower()]}."
        instead = f"{who} attacks {names(board, aims)}."
        return Judgement(
            Outcome.FAILS, because, (), claim.spot, numbers, instead=instead, marks=marks
        )
    found = pays(ask, claim.spot, side)
    because = f"{who} attacks {names(board, aims)}."
    return Judgement(
        Outcome.HOLDS, because, found.line, claim.spot, numbers, marks=marks, second=found.said(side)
    )  # fmt: skip


def _aims(board: Any, forker: str, attacked: list[str]) -> list[str]:
    """The targets among the pieces attacked; a piece that only a target guards is one too, for that guard is attacked with it."""
    plain = [at for at in attacked if _target(board, forker, at)]
    guards = {at for at in plain if board.piece_at(at).lower() != "k"}
    return [
        at
        for at in attacked
        if at in plain
        or (board.piece_at(at).lower() != "p" and _all_in(guards, defenders(board, at)))
    ]


def _all_in(guards: set[str], found: tuple[list[str], list[str]]) -> bool:
    return all(at in guards for layer in found for at in layer)


def _target(board: Any, forker: str, at: str) -> bool:
    """A target is the king, a piece worth more than the forker, or an unprotected piece; a pawn only if named."""
    letter, own = board.piece_at(at).lower(), board.piece_at(forker).lower()
    if letter == "k":
        return True
    if letter == "p":
        return False
    return VALUES[letter] > VALUES[own] or not any(defenders(board, at))


def _named_pawn(board: Any, at: str) -> bool:
    return board.piece_at(at).lower() == "p" and not any(defenders(board, at))


KIND = Kind(
    id="fork",
    title="Fork",
    version=2,
    definition=(
        "One piece attacks two named targets: the king, a piece worth more than the forker, or an unprotected piece, also one that only another target guards (not the king); a pawn only if named and unprotected. "
        "Whether it pays is a second finding."
    ),
    frames=FRAMES,
    tests={
        "two": lambda n: n.text if _two(n) else None,
        "pair": lambda n: (
            n.text
            if n.type == "piece"
            and n.plural
            and n.count is None
            and not (n.parts or n.no or n.det.startswith("both"))
            else None
        ),
        "both": lambda n: n.text if len(n.parts) == 2 and n.det.startswith("both") else None,
        "aims": lambda n: n.text if n.head == "target" and n.count == 2 else None,
        "by_one": lambda n: n.text if n.type == "piece" and not n.plural else None,
        "whom": lambda n: n.text if n.type == "side" else None,
    },
    read=read,
    check=check,
    flips=True,
    tactic="for",
)
