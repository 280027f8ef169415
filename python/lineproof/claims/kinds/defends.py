"""Defence: which piece protects what."""

from __future__ import annotations

import re
from typing import Any

from lineproof.claims.board import defenders, name, names, pieces, side_of, title, upper
from lineproof.claims.claim import Ask, Claim, Judgement, Mark, Outcome
from lineproof.claims.here import Agent, Here, Unread, absent
from lineproof.claims.kind import Kind
from lineproof.claims.patterns import targets
from lineproof.claims.reference import Reference
from lineproof.claims.timing import as_it_stands, of_this_move

FRAMES = (
    "[{agent}] <defend> {target} [with {defender}] [(with|by) {move}] if active",
    "{agent} <defend> {target} [(with|by) {move}]",
    "[{agent}] <defend> {guarded} [with {defender}] if active",
    "<be:defend> {target} with {defender}",
    "{keeper} <cling> {target}",  # a side that clings to a pawn does not give it back
    "[{agent}] <give> {target} protection",
    "[{agent}] <give> {target} hand",
    "[{agent}] <lend to give/lend> {target} hand",
    "{agent} <be behind> {square}",
    "{agent} <=> defender of {target}",
    "[{agent}] <come/go/rush/hurry> to (defence|help|protection|rescue) of {target}",
)


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    as_it_stands(here, slots)
    if "keeper" in slots:
        slots["agent"] = slots.pop("keeper")
    if "agent" not in slots:
        of_this_move(here)
    agent, able = _agent(here, slots.get("agent"), _whose(here, slots.get("target")))
    if "move" in slots:
        named = here.named(slots["move"])
        if "agent" in slots and agent.side != named.side:
            raise Unread(f"{slots['move']} is no move of that side")
        agent = here.agent(slots["move"])
    side, at = agent.side, here.at(agent.spot)
    by = able or ([agent.square] if agent.square is not None else None)
    whole = (
        "agent" in slots
        and slots["agent"].split()[0] in _SIDES
        and len(slots["agent"].split()) <= 2
    )
    if whole and "move" not in slots and Reference.read(slots["agent"]).letter is None:
        by = None  # "White defends the pawn": with whatever he likes
    if "defender" in slots:
        by = [o for o in at.find(slots["defender"], side) if o in pieces(at.board, side)]
        if not by:
            raise absent(slots["defender"])
    words = (
        targets(slots["guarded"])
        if "guarded" in slots
        else [slots.get("target") or slots["square"]]
    )
    said = here.said
    alone = " only defender" in said or " sole " in f" {said}"
    if re.search(r"\bthe only (?:one|piece|man|unit)\b", said):
        if by is None or len(by) != 1:
            raise Unread("it is not clear who alone defends it")
        alone = True
    found: list[Claim] = []
    for text in words:
        squares = _squares(at, text, side)
        found.append(
            here.claim(
                KIND.id, side, spot=agent.spot, at=squares, by=by, alone=alone,
                moved=agent.move is not None, named=text,
            )
        )  # fmt: skip
    return found


def _whose(here: Here, text: str | None) -> str | None:
    """The side of the only piece that the words for what is defended can mean."""
    found = here.find(text) if text is not None else []
    return side_of(here.board.piece_at(found[0]) or "K") if len(found) == 1 else None


def _agent(
    here: Here, text: str | None, owner: str | None = None
) -> tuple[Agent, list[str] | None]:
    """The agent, and the squares of the pieces it may be where the words fit several of one side: any of them will do."""
    reference = Reference.read(text) if text is not None else None
    if text is not None and reference is not None and reference.letter is not None:
        found = here.find(text, owner)
        sides = {side_of(here.board.piece_at(at) or "K") for at in found}
        last = here.spot.moves[-1][2:4] if here.spot.moves else None
        if len(found) > 1 and len(sides) == 1 and last not in found:
            if reference.plural:
                raise Unread(f"{text!r} are several")
            return Agent(sides.pop(), here.spot), found
    return here.agent(text), None


_SIDES = frozenset(["white", "black", "we", "you", "i", "he", "she", "they", "the"])


def _squares(here: Here, text: str, side: str) -> list[str]:
    """What is defended: pieces of the side, or a square with no enemy piece on it.

    :raises Unread: when it is neither, or not clear.
    """
    reference = Reference.read(text)
    if reference.letter is None and reference.square is not None:
        letter = here.board.piece_at(reference.square)
        if letter is not None and side_of(letter) != side:
            raise Unread(f"an enemy piece stands on {reference.square}")
        return [reference.square]
    owner = here.owner(reference)
    if owner is not None and owner != side:
        raise Unread("a side does not defend the other's piece")
    found = [at for at in here.find(text, side) if at in pieces(here.board, side)]
    if not found:
        raise absent(text)
    if reference.plural and len(found) > 1:
        raise Unread(f"{text!r} are several")
    return found


def check(claim: Claim, ask: Ask) -> Judgement:  # noqa: ARG001 - a board fact asks no search
    board, side = claim.spot.board, claim.side or "white"
    squares: list[str] = claim.params["at"]
    by: list[str] | None = claim.params["by"]
    held = [at for at in squares if _defended(claim, at, by)]
    at = held[0] if held else squares[0]
    direct, behind = _both(claim, at)
    what = name(board, at)
    if by is None or len(by) > 1:
        who = names(board, direct) if held and by is None else title(side)
    else:
        who = name(board, by[0])
    if held and claim.params["alone"] and len(direct) > 1:
        because = f"{upper(what)} is protected by {names(board, direct)}."
        return Judgement(
            Outcome.FAILS, because, (), claim.spot, {"defenders": len(direct)}, instead=because
        )
    numbers = {"defenders": len(direct), "behind them": len(behind)}
    if held:
        lined = bool(by) and not set(by or ()) & set(direct) and bool(set(by or ()) & set(behind))
        because = f"{upper(who)} {'protect' if ' and ' in who else 'protects'} {what}."
        if lined:
            because = f"{upper(who)} protects {what} from behind another piece."
        marks = tuple(
            Mark("move", (d, at), side) for d in (by or direct) if d in (*direct, *behind)
        )
        return Judgement(Outcome.HOLDS, because, (), claim.spot, numbers, marks=marks)
    others = f"; it is protected by {names(board, direct)}" if direct else "; nothing does"
    because = f"{upper(who)} does not protect {what}{others}."
    return Judgement(Outcome.FAILS, because, (), claim.spot, numbers, instead=because)


def _both(claim: Claim, at: str) -> tuple[list[str], list[str]]:
    board, side = claim.spot.board, claim.side or "white"
    if board.piece_at(at) is not None:
        return defenders(board, at)
    return [s for s in board.attackers(side, at) if s != at], []


def _defended(claim: Claim, at: str, by: list[str] | None) -> bool:
    """Whether the piece or square is defended by one of `by` (any piece when None), or by a piece that the move has let through."""
    direct, behind = _both(claim, at)
    if by is None:
        return bool(direct)
    if set(by) & {*direct, *behind}:
        return True
    if not claim.params["moved"] or not claim.spot.moves:
        return False
    earlier = claim.spot.earlier(1).board
    new = [d for d in direct if d not in earlier.attackers(claim.side or "white", at)]
    return any(d != by[0] for d in new)


KIND = Kind(
    id="defends",
    title="Defends",
    version=1,
    definition=(
        "The piece named attacks the square of the piece that it defends, directly or lined up behind another piece of its side; pinned pieces count. Of a move: the piece moved does so, or one that it lets through. "
        "Of a side as a whole: any of its pieces does so directly. An empty square counts as guarded when it is attacked."
    ),
    # "guards both ..." may say that it is too much: that is for the kind "overloaded"
    frames=FRAMES,
    gives_way=frozenset({"defended-count", "pin", "prevents"}),
    tests={"keeper": lambda n: n.text if n.type in {"piece", "square", "move"} else None},
    read=read,
    check=check,
    flips=True,
)  # fmt: skip
