"""Overloaded pieces: two duties, and only one can be done."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from lineproof.claims.board import defenders, name, names, other, pieces, title, upper
from lineproof.claims.claim import Ask, Claim, Judgement, Mark, Outcome, Spot
from lineproof.claims.exchange import exchange, worth
from lineproof.claims.here import Here, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.noun import Noun
from lineproof.claims.patterns import targets
from lineproof.claims.pays import pays
from lineproof.claims.pointing import alone, meant, present
from lineproof.claims.reference import Reference
from lineproof.engine import Board


@dataclass(frozen=True)
class Duty:
    """What would be lost without the piece: the one on `at`, or the game by the mating `move`."""

    at: str
    move: str = ""


def duties(spot: Spot, at: str) -> list[Duty]:
    """What hangs on the piece on `at`: its own side's pieces that the enemy would win if it did not recapture, and mates that it alone prevents."""
    board = spot.board
    side = "white" if (board.piece_at(at) or "K").isupper() else "black"
    found = [
        Duty(other_at)
        for other_at in pieces(board, side)
        if other_at != at
        and worth(board, other_at)
        and exchange(board, other_at, other(side)) < 1
        and exchange(board, other_at, other(side), idle=(at,)) >= 1
    ]
    free = spot.with_move_for(other(side))
    if free is not None:
        for uci in free.board.legal_moves():
            after = free.board.play(uci)
            answers = after.legal_moves() if after.in_check else []
            if answers and all(m[:2] == at for m in answers):
                found.append(Duty(uci[2:4], uci))
    return found


FRAMES = (
    "<be:overload> {target}",
    "<be:overload> {target} thin",
    "{agent} <overload> {target}",
    "{target} <have/juggle> {jobs}",
    "{target} <do/serve> {too_many}",  # "does two jobs" praises it
    "{target} <have> overwork",
    "{target} <do/work> overtime",
    "{target} <do/serve/manage/handle/cope_with> {jobs} if modal=can negated",
    "{target} <=> torn if modal=can negated",
    "{target} <defend> {duties} if modal=must",
    "{target} <defend> {duties} if modal=can negated",
    "{target} <defend> {both}",
    "{target} <defend> {jobs} if modal=must",
    "<be:tie/tie_down/chain/bind/glue> {target} to (defence|protection|guard) of {duties}",
    "{target} <=> overloaded",
    "<*> {worn}",
)
_JOBS = frozenset({"job", "duty", "task", "master", "thing", "piece", "role", "responsibility"})
_MUCH = frozenset({"many", "several", "more", "double", "too many"})


def _jobs(noun: Noun) -> str | None:
    """ "Two jobs", "too many duties"."""
    several = (noun.count or 0) > 1 or bool(_MUCH & {*noun.adjectives, noun.det})
    return (
        noun.head
        if noun.head in _JOBS and noun.type == "noun" and several and not noun.whose
        else None
    )


def _worn(noun: Noun) -> str | None:
    """ "That overworked bishop"."""
    said = {"overworked", "overloaded", "overburdened", "overstretched"} & set(noun.adjectives)
    return noun.text if noun.type == "piece" and said and not noun.parts else None


def _duties(noun: Noun) -> str | None:
    return noun.text if noun.type in {"piece", "square"} else None


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    present(slots.get("verb"))
    alone(here)
    spot = here.spot
    if "agent" in slots:
        agent = here.agent(slots["agent"])
        spot = agent.spot
    at_spot = here.at(spot)
    words = slots.get("target", slots.get("worn"))
    at = meant(at_spot, words, "kqrbn", fits=lambda s: len(duties(spot, s)) >= 2)
    if len(at) > 1:
        raise Unread(f"{words!r} are several")
    side = "white" if (spot.board.piece_at(at[0]) or "K").isupper() else "black"
    if "agent" in slots and agent.side == side:
        raise Unread("a side does not overload its own piece on purpose")
    duty = slots.get("duties") or slots.get("both")
    said = targets(duty) if duty else []
    named: list[str] = []
    for text in said:
        reference = Reference.read(text)
        if reference.letter is None and reference.square is not None:
            named.append(reference.square)
            continue
        named.extend(meant(at_spot, text, "kqrbnp", fits=lambda s: _guards(spot.board, at[0], s)))
    return [here.claim(KIND.id, side, spot=spot, at=at[0], duties=named)]


def _guards(board: Board, by: str, at: str) -> bool:
    """Whether the piece on `by` protects the square, directly or from behind."""
    if board.piece_at(at) is not None:
        direct, behind = defenders(board, at)
        return by in {*direct, *behind}
    return at in board.attacks(by)


def _needed(board: Board, by: str, at: str, side: str) -> bool:
    """Whether nothing else of its side does the duty."""
    letter = board.piece_at(at)
    if letter is not None and worth(board, at) and letter.isupper() == (side == "white"):
        only = set(defenders(board, at)[0]) == {by}
        return only or exchange(board, at, other(side), idle=(by,)) >= 1
    return board.attackers(side, at) == [by]


def check(claim: Claim, ask: Ask) -> Judgement:
    board = claim.spot.board
    at: str = claim.params["at"]
    side = claim.side or "white"
    who = upper(name(board, at))
    found = duties(claim.spot, at)
    numbers = {"duties": len(found)}
    said = claim.params["duties"]
    if said:
        for duty in said:
            if not _guards(board, at, duty):
                because = f"{who} does not protect {_thing(board, duty)}."
                return Judgement(Outcome.FAILS, because, (), claim.spot, numbers, instead=because)
            if not _needed(board, at, duty, side) and duty not in [d.at for d in found]:
                helpers = [s for s in board.attackers(side, duty) if s != at]
                because = f"{who} is not alone: {names(board, helpers)} {'protect' if len(helpers) > 1 else 'protects'} {_thing(board, duty)} too."
                return Judgement(Outcome.FAILS, because, (), claim.spot, numbers, instead=because)
        because = f"{who} alone protects {' and '.join(_thing(board, d) for d in said)}."
        marks = tuple(Mark("move", (at, d), side) for d in said)
    elif len(found) < 2:
        held = (
            f"only {_spelled(claim.spot, found[0], side)}"
            if found
            else "nothing that would fall without it"
        )
        because = f"{who} has to look after {held}."
        return Judgement(Outcome.FAILS, because, (), claim.spot, numbers, instead=because)
    else:
        because = f"{who} has to look after {' and '.join(_spelled(claim.spot, d, side) for d in found[:3])}."
        marks = tuple(Mark("move", (at, d.at), side) for d in found[:3] if d.at != at)
    second, line = _used(claim, ask, side)
    return Judgement(Outcome.HOLDS, because, line, claim.spot, numbers, marks=marks, second=second)


def _thing(board: Board, at: str) -> str:
    return name(board, at)


def _spelled(spot: Spot, duty: Duty, side: str) -> str:
    if not duty.move:
        return name(spot.board, duty.at)
    free = spot.with_move_for(other(side)) or spot
    return f"the square of the mating move {free.board.san(duty.move)}"


def _used(claim: Claim, ask: Ask, side: str) -> tuple[str | None, tuple[str, ...]]:
    """Whether the enemy, if it is his move, can use it, and the line that shows it."""
    if claim.spot.board.turn == side:
        return None, ()
    enemy = title(other(side))
    paid = pays(ask, claim.spot, other(side))
    if paid.mates:
        return f"{enemy} can use it: best play mates.", paid.line
    if paid.gain < 1:
        return f"{enemy} cannot use it at once: best play wins no material.", ()
    end = f"; {paid.what}" if paid.what else ""
    won = f"{paid.gain} pawn{'s' if paid.gain != 1 else ''}"
    return f"{enemy} can use it: best play wins {won}{end}.", paid.line


KIND = Kind(
    id="overloaded",
    title="Overloaded piece",
    version=1,
    definition=(
        "The piece has two duties or more. A duty is a piece of its side that the enemy wins in the exchange on its square (a pawn or more) if this piece does not recapture, and does not win if it does; "
        "or a mate in one that only this piece can answer. Duties that are named it must do alone: no other piece protects that piece or square, or not enough of them. Whether the enemy can use it is a second finding."
    ),
    frames=FRAMES,
    tests={
        "jobs": _jobs,
        "too_many": lambda n: _jobs(n) if n.count is None else None,
        "worn": _worn,
        "duties": _duties,
        "both": lambda n: n.text if n.parts and n.det.startswith("both") else None,
    },
    read=read,
    check=check,
    flips=True,
    tactic="against",
)  # fmt: skip
