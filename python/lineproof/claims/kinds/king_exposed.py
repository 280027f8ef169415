"""Exposed kings: few pawns in front, and enough enemy pieces to make use of it."""

from __future__ import annotations

from typing import Any

from lineproof.claims.board import VALUES, names, other, pieces, title
from lineproof.claims.claim import Ask, Claim, Judgement, Mark, Outcome
from lineproof.claims.here import Here
from lineproof.claims.kind import Kind
from lineproof.claims.king import owner
from lineproof.claims.timing import as_it_stands

SHIELD = 2
"""Own pawns in front of the king: fewer leave it exposed, more keep it safe; just so many leave it open."""
ATTACKERS = 9
"""Enemy pieces, in pawns, without which a bare king is in no danger."""

BESIEGERS = 2
"""Enemy pieces attacking squares next to a king from which three pawns do not make it safe."""


FRAMES = (
    "{king} <=> airy",
    "<=> airy (around|round|near) {king}",
    "<be:expose> {king}",
    "{king} <have> shelter ; safe=yes",
    "{king} <lack> shelter",
    "{nobody} <shelter/shield/protect/cover> {king}",
    "<~> {no_pawns} (around|round|near|in_front_of|before|by|beside) {king} if negated",
    "{king} <have> {no_pawns} [(around|round|near|in_front_of|before|by|beside) {anything}] if negated",
    "{king} <=> {prey}",
    "{king} <walk/march/roam/wander/run> without shelter",
    "{side} <have> {king} +in_the_open",
    "{king} <move/be> (in|into) open",
    "<be:drag/chase/drive/pull/lure> {king} (in|into) {in_the_open}",
    "{king} <find> shelter ; safe=yes",
    "{king} <feel> draught",
    "<be:shelter> {king} ; safe=yes",
    "{king} <=> snug ; safe=yes",
    "<~> shelter for {king} ; safe=yes",
    "{king} <=> safe ; safe=yes",
    "{king} <~> without shelter",
    "{side} <have> {bare}",
    "{king} <hide> [behind {anything}] [+behind] if modal=can negated",
    "[{agent}] <leave/make> {king} airy",
    "<be:leave> {king} airy",
    "<be:leave> {king} without shelter",
    "{king} <find> {home} if negated modal=will|can|could|",
    "{king} <have> {home} ; safe=yes",
    "<~> {home} for {king} ; safe=yes",
    "<be:strip> {king} of shelter",
    "{king} <lose> shelter",
    "{both} <=> safe ; safe=yes",
    "{both} <=> snug ; safe=yes",
    "{both} <=> airy",
    "<be:expose> {both}",
    "{side} <=> snug ; safe=yes",
    "[{side}] <bring/put/get/take> {king} (to|into|in) safety ; safe=yes",
)


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    as_it_stands(here, slots)
    if "both" in slots:
        return [here.claim(KIND.id, side, negated="safe" in slots) for side in ("white", "black")]
    if "king" in slots:
        side = owner(here, slots["king"])
    elif "side" in slots or "whose" in slots:
        side = here.side(slots.get("side") or slots.get("whose"))
    else:
        side = here.implied()
    return [here.claim(KIND.id, side, negated="safe" in slots)]


def shield(claim: Claim, side: str) -> tuple[str, list[str], bool]:
    """The king's square, the own pawns among the six squares in front of it, and whether it has left its first two ranks."""
    board = claim.spot.board
    king = pieces(board, side, "k")[0]
    file, rank = ord(king[0]), int(king[1])
    step = 1 if side == "white" else -1
    pawns = [
        at
        for at in pieces(board, side, "p")
        if abs(ord(at[0]) - file) <= 1 and (int(at[1]) - rank) * step in (1, 2)
    ]
    return king, pawns, (rank - 1 if side == "white" else 8 - rank) > 1


def _near(claim: Claim, enemy: str, king: str) -> list[str]:
    """Enemy pieces, pawns apart, that attack the king or a square next to it."""
    board = claim.spot.board
    around = {king, *board.attacks(king)}
    return [
        at
        for at in pieces(board, enemy)
        if (board.piece_at(at) or "").lower() not in "pk" and around & set(board.attacks(at))
    ]


def check(claim: Claim, ask: Ask) -> Judgement:  # noqa: ARG001 - a board fact asks no search
    board, side = claim.spot.board, claim.side or "white"
    enemy = other(side)
    king, pawns, walked = shield(claim, side)
    force = sum(
        VALUES[(board.piece_at(at) or "k").lower()]
        for at in pieces(board, enemy)
        if (board.piece_at(at) or "").lower() not in "pk"
    )
    numbers: dict[str, int | float | str] = {
        "pawns in front": len(pawns),
        "enemy pieces": force,
        "king": king,
    }
    marks = (Mark("square", (king,), side), *(Mark("square", (at,), side) for at in pawns))
    count = (
        f"{len(pawns)} of its own pawns"
        if len(pawns) > 1
        else "one of its own pawns"
        if pawns
        else "no pawn of its own"
    )
    because = f"{title(side)}'s king on {king} has {count} on the six squares in front of it"
    if force < ATTACKERS:
        because += f", but {title(enemy)} has too few pieces left to make use of it."
        instead = f"{title(side)}'s king on {king} is safe: {title(enemy)} has too few pieces left."
        return Judgement(
            Outcome.FAILS, because, (), claim.spot, numbers, instead=instead, marks=marks
        )
    if walked:
        because = f"{title(side)}'s king on {king} has left its first two ranks."
        return Judgement(Outcome.HOLDS, because, (), claim.spot, numbers, marks=marks)
    because += "."
    near = _near(claim, enemy, king)
    if len(pawns) > SHIELD and (len(near) >= BESIEGERS or (board.in_check and board.turn == side)):
        because += f" But {names(board, near)} {'attack' if len(near) > 1 else 'attacks'} squares next to it."
        return Judgement(
            Outcome.UNSETTLED, because, (), claim.spot, numbers, one_off=True, marks=marks
        )
    if len(pawns) == SHIELD:
        return Judgement(
            Outcome.UNSETTLED, because, (), claim.spot, numbers, one_off=True, marks=marks
        )
    exposed = len(pawns) < SHIELD
    return Judgement(
        Outcome.HOLDS if exposed else Outcome.FAILS, because, (), claim.spot, numbers,
        instead=None if exposed else because, marks=marks,
    )  # fmt: skip


KIND = Kind(
    id="king-exposed",
    title="Exposed king",
    version=1,
    definition=(
        "Fewer than two of its own pawns stand on the six squares in front of the king (its file and the files beside it, one and two ranks ahead), or it has left its first two ranks, and the enemy has pieces worth 9 pawns or more besides pawns; "
        "with three pawns or more, or fewer enemy pieces, it is safe; with just two, or with two enemy pieces attacking squares next to it or a check, it is unsettled."
    ),
    frames=FRAMES,
    tests={
        "no_pawns": lambda n: n.head if n.no and n.type == "piece" and n.head == "pawn" else None,
        "prey": lambda n: n.head if n.head in {"target", "prey", "duck"} and {"sitting", "easy"} & set(n.adjectives) else None,
        "both": lambda n: n.text if n.text == "both kings" else None,
        
        "in_the_open": lambda n: n.head if n.head in {"open", "daylight", "limelight", "middle", "centre"} else None,
        
        "home": lambda n: (
            n.head
            if n.head in {"home", "haven", "spot", "place", "shelter", "refuge", "hiding place"}
            and ({"safe", "secure", "quiet", "sheltered"} & set(n.adjectives) or n.head in {"haven", "refuge", "hiding place"})
            else None
        ),
        "bare": lambda n: n.text if n.head == "king" and set(n.adjectives) & {"exposed", "airy", "bare", "naked", "open", "unsafe", "draughty"} else None},
    read=read,
    check=check,
    flips=True,
)  # fmt: skip
