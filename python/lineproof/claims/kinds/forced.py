"""Forced moves: one legal move, or a recapture without which material is gone."""

from __future__ import annotations

import re
from typing import Any

from lineproof.claims.amounts import pawns
from lineproof.claims.bands import band, edge_of_two, seen_from
from lineproof.claims.board import LETTERS, title
from lineproof.claims.claim import SHOWN, Ask, Claim, Judgement, Mark, Outcome, Spot
from lineproof.claims.gain import settled
from lineproof.claims.here import Here, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.lexicon import NOUNS
from lineproof.claims.played import PLAYED, played
from lineproof.claims.showing import shortest

ONLY = 15
"""Points that every other move costs in an only move: short of forced."""

PHRASES = (
    "{agent} <be> [{very}] [{fully}] forced [here|now] [for {side}]",
    "{agent} <be> [{very}] (compulsory|obligatory|a must|mandatory|unavoidable) [here|now] [for {side}]",
    "{agent} <be> [{very}] a forced (move|recapture|reply|answer)",
    "[{side}] <be:force/oblige/compel> to (play|answer|reply|reply with|answer with|go) {move}",
    "{side} <be:force/oblige/compel> to {recapture}",
    "{side} (must|has to|have to|had to) {recapture}",
    "{side} <have> no choice [here|now] [but to {recapture}|but {move}|but to play {move}|other than {move}]",
    "{side} <have> (no alternative|no option|no real choice) [here|now] [but {move}|to {move}]",
    "[the|{whose}] (recapture|reply|answer) <be> [{very}] [{fully}] (forced|compulsory|obligatory)",
    "{agent} <leave> {side} [with] no choice",
    "(a forced move|forced|a forced reply|a forced recapture)",
)
_TAKE = ("recapture", "take", "take back", "take it", "take it back", "capture", "take the piece", "take the pawn", "take the knight", "take the bishop", "take the rook", "take the queen", "take our knight", "take our bishop", "accept")  # fmt: skip
_WITH = ("", " with the king", " with the queen", " with the rook", " with the bishop", " with the knight", " with the pawn", " with his king", " with his queen")  # fmt: skip
_WHERE = ("", *(f" on {file}{rank}" for file in "abcdefgh" for rank in range(1, 9)))
_RECAPTURES = {f"{take}{how}": f"{take}{how}" for take in _TAKE for how in (*_WITH, *_WHERE)}


FRAMES = (
    "{move} <=> forced|compulsory|obligatory|mandatory",
    "<be:force> {move}",
    "<be:force> {side}",
    "{side} <have> {none}",
    "[{agent}] <give> {side} {none}",
    "{described} <=> forced|compulsory|obligatory|mandatory",
    "<be:force> {described}",
    "{side} <recapture> [on {square}] ; modal=must taken=yes",
    "{side} <take> +back ; modal=must taken=yes",
)


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    if "taken" in slots:
        slots["recapture"] = f"recapture on {slots['square']}" if "square" in slots else "recapture"
    if "recapture" in slots:
        side = here.side(slots.get("side"))
        spot, moves = _recaptures(here, slots["recapture"], side)
    elif slots.get("agent", "").endswith((" recapture", " reply", " answer")):
        side, spot, moves = _coming(here)
    elif "move" in slots or ("agent" in slots and " no choice" not in here.said):
        move = played(here, slots.get("move", slots.get("agent")))
        side, spot, moves = move.side, move.before, (move.uci,)
    elif "side" in slots:
        side = here.side(slots["side"])
        spot, moves = _at_turn(here, side)
    else:
        side, spot, moves = _coming(here)
    if "side" in slots and here.side(slots["side"]) != side:
        raise Unread("the move is not that side's")
    return [here.claim(KIND.id, side, spot=spot, moves=moves)]


def _coming(here: Here) -> tuple[str, Spot, tuple[str, ...]]:
    """What "forced", "the recapture" and "the reply" mean without a move: the one just played, or the one to come.

    :raises Unread: when it is not plain.
    """
    said = here.said
    if "recapture" in said and len(here.spot.moves) > 1 and _took(here.spot):
        last = here.last()
        if _took(last.before) and last.before.moves[-1][2:4] == last.uci[2:4]:
            return last.side, last.before, (last.uci,)
    if "recapture" in said:
        spot, moves = _recaptures(here, "recapture", here.board.turn)
        return here.board.turn, spot, moves
    if "reply" in said or "answer" in said:
        following = here.shown_next
        if following is None:
            raise Unread("it is not said which reply")
        return here.board.turn, here.spot, (following,)
    last = played(here, None)
    return last.side, last.before, (last.uci,)


def _recaptures(here: Here, text: str, side: str) -> tuple[Spot, tuple[str, ...]]:
    """The captures that "recapture", or "take with the king", means: at the side's turn, or just played.

    :raises Unread: when there is none.
    """
    spot = here.spot if here.board.turn == side else here.spot.earlier(1) if here.spot.moves else None  # fmt: skip
    if spot is None or not spot.moves:
        raise Unread(f"{side} has nothing to take back")
    at = re.search(r" on ([a-h][1-8])$", f" {text}")
    square = at[1] if at else spot.moves[-1][2:4]
    letters = LETTERS[text.split()[-1]] if " with " in text else "kqrbnp"
    taken = next((LETTERS[w] for w in text.split(" with ")[0].split() if w in LETTERS), None)
    standing = (spot.board.piece_at(square) or "").lower()
    if not standing or (taken is not None and standing != taken):
        raise Unread("what is to be taken has not just moved there")
    found = tuple(
        m
        for m in spot.board.legal_moves()
        if m[2:4] == square and (spot.board.piece_at(m[:2]) or "").lower() in letters
    )
    if not found or (spot is not here.spot and here.spot.moves[-1] not in found):
        raise Unread(f"nothing is to be taken on {square}")
    return spot, found


def _at_turn(here: Here, side: str) -> tuple[Spot, tuple[str, ...]]:
    """The move that a side without a choice plays: shown next, or just played; none when it is not shown."""
    if here.board.turn == side:
        following = here.shown_next
        return here.spot, (following,) if following else ()
    last = here.last()
    return last.before, (last.uci,)


def check(claim: Claim, ask: Ask) -> Judgement:
    spot, side = claim.spot, claim.side or "white"
    legal = spot.board.legal_moves()
    moves: tuple[str, ...] = claim.params["moves"]
    named = " or ".join(spot.board.san(m) for m in moves)
    marks = tuple(Mark("move", (m[:2], m[2:4]), side) for m in moves)
    others = [m for m in legal if m not in moves]
    if len(legal) == 1 and (not moves or moves == tuple(legal)):
        because = f"{spot.board.san(legal[0])} is the only legal move."
        return Judgement(Outcome.HOLDS, because, (legal[0],), spot, {"legal": 1}, marks=marks)
    if not others:
        because = f"Only {named} can be played."
        return Judgement(Outcome.HOLDS, because, (), spot, {"legal": len(legal)}, marks=marks)
    if not moves:
        because = f"{title(side)} has {len(legal)} legal moves."
        return Judgement(Outcome.FAILS, because, (), spot, {"legal": len(legal)}, instead=because)
    rival = ask.best(spot, without=moves)
    own = ask.best(spot, without=tuple(others))
    if rival is None or own is None:
        because = f"{title(side)} has {len(legal)} legal moves."
        return Judgement(Outcome.FAILS, because, (), spot, {"legal": len(legal)}, instead=because)
    kept, left = _points(ask, spot, own.moves[0], side), _points(ask, spot, rival.moves[0], side)
    other = spot.board.san(rival.moves[0])
    numbers: dict[str, int | float | str] = {"legal": len(legal), "points": kept, "next best": other, "its points": left}  # fmt: skip
    takes_back = bool(spot.moves) and all(m[2:4] == spot.moves[-1][2:4] for m in moves)
    if takes_back and _took(spot):
        with_it = settled(ask, spot.play(own.moves[0]), side)
        without = settled(ask, spot.play(rival.moves[0]), side)
        lost = with_it.balance - without.balance
        numbers["lost"] = lost
        if (lost >= 1 or without.mated == side) and with_it.mated != side and left <= kept:
            gone = "mate follows" if without.mated == side else f"{pawns(lost)} {'is' if lost == 1 else 'are'} gone"  # fmt: skip
            because = f"Without {named} {gone}: after {other}, the best other move."
            return Judgement(Outcome.HOLDS, because, shortest(spot, (rival.moves[0], *without.moves)), spot, numbers, marks=marks)  # fmt: skip
    only = _only(kept, left)
    near = edge_of_two(kept, left, _only)
    if only:
        because = f"{named} is an only move: {other} costs {kept - left} points. It is not forced: {title(side)} has {len(legal)} legal moves."
        return Judgement(Outcome.UNSETTLED, because, shortest(spot, rival.moves, most=SHOWN), spot, numbers, near, one_off=True, marks=marks)  # fmt: skip
    because = f"{title(side)} may also play {other}: it costs {max(kept - left, 0)} points."
    return Judgement(
        Outcome.FAILS, because, shortest(spot, rival.moves, most=SHOWN), spot, numbers, near, f"{named} is not forced: {other} can be played too.", marks=marks,
    )  # fmt: skip


def _points(ask: Ask, spot: Spot, move: str, side: str) -> int:
    return seen_from(side, ask.move(spot, move).points)


def _only(kept: int, left: int) -> bool:
    """Whether the next best move costs 15 points and the verdict's band with it."""
    return kept - left >= ONLY and band(kept) != band(left)


def _took(spot: Spot) -> bool:
    """Whether the last move was a capture."""
    if not spot.moves:
        return False
    before = spot.earlier(1)
    return "x" in before.board.san(spot.moves[-1])


KIND = Kind(
    id="forced",
    title="Forced",
    version=1,
    definition=(
        "One legal move; or a recapture on the square where the opponent has just taken, without which (the best other move, continued until no capture gains a pawn) a pawn or more, or the game by mate, is lost. "
        "An only move (every other costs 15 points and the verdict's band) that is neither is one off."
    ),
    formula=f"legal moves = 1; or, of a recapture, material(with it) - material(best other move) >= 1; cost of the best other >= {ONLY} and another band: one off",
    phrases=PHRASES,
    patterns={"agent": PLAYED},
    slots={
        "recapture": _RECAPTURES,
        "fully": {
            k: k for k in ("absolutely", "practically", "completely", "entirely", "virtually")
        },
    },
    vocabulary=frozenset(
        [
            "forced",
            "force",
            "forces",
            "compulsory",
            "obligatory",
            "must",
            "mandatory",
            "unavoidable",
            "obliged",
            "compelled",
            "choice",
            "alternative",
            "option",
            "has",
            "have",
            "had",
            "legal",
            "nothing",
        ]
    ),
    frames=FRAMES,
    tests={"none": lambda n: n.head if n.no and n.head in NOUNS["choice"] else None},
    read=read,
    check=check,
    flips=True,
)
