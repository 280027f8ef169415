"""Forced moves: one legal move, or a recapture without which material is gone."""

from __future__ import annotations

import re
from contextlib import suppress
from typing import Any

from lineproof.claims.amounts import pawns
from lineproof.claims.bands import ALONE, edge_of_two, is_only, seen_from
from lineproof.claims.board import LETTERS, other, title
from lineproof.claims.claim import SHOWN, Ask, Claim, Judgement, Mark, Outcome, Spot
from lineproof.claims.deed import deed
from lineproof.claims.gain import settled
from lineproof.claims.here import Here, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.lexicon import JUDGEMENTS, NOUNS, members
from lineproof.claims.noun import Noun
from lineproof.claims.played import around, played
from lineproof.claims.reference import Reference
from lineproof.claims.showing import shortest
from lineproof.claims.slot import SLOTS
from lineproof.claims.worded import NOMINAL, Worded


def reply(noun: Noun) -> str | None:
    """ "The reply", "the recapture": a move that is not named."""
    general = noun.head in {"reply", "answer", "recapture"} and len(noun.text.split()) == 2
    return noun.head if general and noun.det in {"the", "his", "our"} else None


FRAMES = (
    "{act} <=> {compulsory} [for {side}]",
    "{act} <=> {forced_move} [for {side}]",
    "{reply} <=> {compulsory} [for {side}]",
    "<be:oblige> {act}",
    "<be:oblige> {side}",
    "<be:oblige> {reply}",
    "<oblige to play> {act}",
    "<oblige to recapture> [{it}] [on {square}] [with {by_piece}] ; taken=yes",
    "<oblige to capture> {it} [with {by_piece}] ; taken=yes",
    "<oblige to capture/recapture> [with {by_piece}] ; taken=yes if lone",
    "<oblige to interpose> {patient_side} ; covers=yes if lone",
    "{side} <interpose> ; covers=yes if modal=must lone",
    "{side} <have> {none} [but {act}]",
    "{side} <have to recapture/capture> {it} [with {by_piece}] {above} ; taken=yes",
    "{side} <have to recapture/capture> [with {by_piece}] {above} ; taken=yes",
    "{side} <have> {choice} [but {act}] if negated",
    "[{cause}] <give/leave> {side} {none}",
    "[{cause}] <give/leave> {side} (with) {none}",
    "{side} <recapture> [{it}] [on {square}] [with {by_piece}] ; taken=yes if modal=must",
    "{side} <capture> [with {by_piece}] ; taken=yes if modal=must lone",
    "{side} <capture> {it} [with {by_piece}] ; taken=yes if modal=must",
    "{side} <take> +back [with {by_piece}] ; taken=yes if modal=must",
    "{king} <recapture/capture> [{it}] [on {square}] ; takes=yes if modal=must",
    "{king} <move> (to|on) {square} [+back|home|up|down|out] if modal=must",
    "[{cause}] <oblige> {king} (to|onto) {square}",
    "<~> {forced_move} ; plain=yes",
    "{this} <=> {compulsory} ; plain=yes",
    "<~> {none} [but {act}] [(for|to) {side}]",
    "<=> {compulsory} ; plain=yes if verbless lone",
    "{side} <play> {act} ; obliged=yes if modal=must",
    "{man} <move> ; moved=yes if modal=must lone without=with|on|to|into|from|back_to",
    "{king} <move> ; moved=yes if modal=must lone without=with|on|to|into|from|back_to",
    "{man} <capture/recapture> [{it}] [on {square}] ; takes=yes if modal=must",
    "{man} <move> (to|on) {square} [+back|home|again|away|up|down] if modal=must",
    "<be:move> {man} ; moved=yes if modal=must lone",
    "{man} <go/retreat/return> +home|back ; moved=yes if modal=must lone",
    "{man} <have> nowhere but {act}",
)


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    if "obliged" in slots and not _OBLIGED.search(here.said):
        raise Unread("that it must be played may be no more than that it is best")
    if "moved" in slots:
        return [_stirred(here, slots.get("man") or slots["king"])]
    if "plain" in slots and "all" in here.said.replace("at all", "").split():
        raise Unread("it is said of the whole line")
    if "takes" in slots:
        slots["by_piece"] = slots.get("man", slots.get("king", ""))
        return [_takes(here, slots)]
    if "covers" in slots:
        side = here.side(slots["patient_side"] if "patient_side" in slots else slots["side"])
        spot = here.spot
        if side != here.board.turn:
            raise Unread("the move is not that side's")
        moves = tuple(m for m in spot.board.legal_moves() if Worded(covers=True).fits(spot, m))
    elif "taken" in slots:
        side = here.side(slots["side"]) if "side" in slots else here.implied()
        spot, moves = _recaptures(here, side, slots)
    elif "reply" in slots:
        side, spot, moves = _coming(here, slots["reply"])
    elif "act" in slots or "square" in slots:
        move = played(
            here,
            slots["act"]
            if "act" in slots
            else f"{slots.get('king', slots.get('man'))} to {slots['square']}",
        )
        side, spot, moves = move.side, move.before, (move.uci,)
    elif "side" in slots:
        side = here.side(slots["side"])
        spot, moves = _at_turn(here, side)
    else:
        last = played(here, None)
        side, spot, moves = last.side, last.before, (last.uci,)
    if "side" in slots and here.side(slots["side"]) != side:
        raise Unread("the move is not that side's")
    return [here.claim(KIND.id, side, spot=spot, moves=moves)]


_OBLIGED = re.compile(r"\b(?:forced|obliged|compelled|no choice)\b")


_CHECKED = re.compile(r"\bcheck\b[^.!?]*$", re.IGNORECASE)
"""A check that the same sentence speaks of."""


def _stirred(here: Here, man: str) -> Claim:
    """ "The knight has to move": any move of it, of the side to move, or the one just played.

    :raises Unread: when it is not clear which piece is meant, or it has no move.
    """
    if man == "it":
        man = here.topic or ""
        if not man:
            raise Unread("it is not clear what must move")
    if not here.board.in_check and man.split()[-1] == "king" and _CHECKED.search(around(here)[0]):
        raise Unread("the king must move after a check that is still to come")
    spot, found = here.spot, here.find(man, here.board.turn)
    if not found and here.spot.moves:
        spot = here.spot.earlier(1)
        found = [
            at
            for at in here.find(man, spot.board.turn, spot.board)
            if at == here.spot.moves[-1][:2]
        ]
    free = spot.passed()
    if len(found) > 1 and free is not None:  # the one that is attacked
        attacked = {m[2:4] for m in free.board.legal_moves()}
        found = [at for at in found if at in attacked]
    moves = tuple(m for m in spot.board.legal_moves() if m[:2] in found)
    if len(found) != 1 or not moves:
        raise Unread(f"it is not clear which piece {man!r} means, or it has no move")
    return here.claim(KIND.id, spot.board.turn, spot=spot, moves=moves)


def _takes(here: Here, slots: dict[str, Any]) -> Claim:
    """ "The king has to take", "our king's had to recapture": of the side to move, else of the one that has just taken.

    :raises Unread: when there is nothing to take.
    """
    owner = here.owner(Reference.read(slots["by_piece"]))
    sides = [s for s in (here.board.turn, other(here.board.turn)) if owner in (None, s)]
    for side in sides[:-1]:
        with suppress(Unread):
            spot, moves = _recaptures(here, side, slots)
            return here.claim(KIND.id, side, spot=spot, moves=moves)
    spot, moves = _recaptures(here, sides[-1], slots)
    return here.claim(KIND.id, sides[-1], spot=spot, moves=moves)


def _coming(here: Here, said: str) -> tuple[str, Spot, tuple[str, ...]]:
    """What "the recapture" and "the reply" mean: the one just played, or the one to come.

    :raises Unread: when it is not plain.
    """
    if "recapture" in said and len(here.spot.moves) > 1 and _took(here.spot):
        last = here.last()
        if _took(last.before) and last.before.moves[-1][2:4] == last.uci[2:4]:
            return last.side, last.before, (last.uci,)
    if "recapture" in said:
        spot, moves = _recaptures(here, here.board.turn, {})
        return here.board.turn, spot, moves
    following = here.shown_next
    if following is None:
        raise Unread("it is not said which reply")
    return here.board.turn, here.spot, (following,)


def _recaptures(here: Here, side: str, slots: dict[str, Any]) -> tuple[Spot, tuple[str, ...]]:
    """The captures that "recapture", or "take with the king", means: at the side's turn, or just played.

    :raises Unread: when there is none.
    """
    spot = here.spot if here.board.turn == side else here.spot.earlier(1) if here.spot.moves else None  # fmt: skip
    if spot is None or not spot.moves:
        raise Unread(f"{side} has nothing to take back")
    it = slots.get("it", "")
    squares = [
        w for w in (slots.get("square", ""), *it.split()) if w[:1] in "abcdefgh" and w[1:].isdigit()
    ]
    square = squares[0] if squares else spot.moves[-1][2:4]
    by = slots.get("by_piece", slots.get("king", ""))
    letters = next((LETTERS[w] for w in by.split() if w in LETTERS), "kqrbnp")
    taken = next((LETTERS[w] for w in it.split() if w in LETTERS), None)
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
    only = is_only(kept, left)
    near = edge_of_two(kept, left, is_only)
    if only:
        because = f"{named} is an only move: {other} costs {kept - left} points. It is not forced: {title(side)} has {len(legal)} legal moves."
        return Judgement(Outcome.UNSETTLED, because, shortest(spot, rival.moves, most=SHOWN), spot, numbers, near, one_off=True, marks=marks)  # fmt: skip
    because = f"{title(side)} may also play {other}: it costs {max(kept - left, 0)} points."
    return Judgement(
        Outcome.FAILS, because, shortest(spot, rival.moves, most=SHOWN), spot, numbers, near, f"{named} is not forced: {other} can be played too.", marks=marks,
    )  # fmt: skip


def _points(ask: Ask, spot: Spot, move: str, side: str) -> int:
    return seen_from(side, ask.move(spot, move).points)


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
    formula=f"legal moves = 1; or, of a recapture, material(with it) - material(best other move) >= 1; cost of the best other >= {ALONE} and another band: one off",
    slots={"compulsory": dict.fromkeys(members("compulsory", JUDGEMENTS), True)},
    frames=FRAMES,
    tests={
        "none": lambda n: n.head if n.no and n.head in NOUNS["choice"] else None,
        "choice": lambda n: n.head if n.head in NOUNS["choice"] else None,
        "above": lambda n: n.head if n.head in NOUNS["choice"] else None,
        "act": lambda n: None if reply(n) or (n.type == "pronoun" and n.head == "it") else deed(n),
        "this": lambda n: (
            n.text if n.type == "pronoun" and n.head in {"it", "this", "that"} else None
        ),
        "reply": reply,
        "patient_side": SLOTS["side"],
        "forced_move": lambda n: (
            n.text
            if n.head in NOMINAL
            and not {"forced", "compulsory", "obligatory"}.isdisjoint(n.adjectives)
            else None
        ),
        "it": lambda n: n.text if n.type in {"piece", "square", "pronoun"} else None,
        "by_piece": lambda n: n.text if n.type == "piece" else None,
        "cause": lambda n: n.text,
        "man": lambda n: (
            n.text
            if (n.type == "piece" and not (n.plural or n.no or n.parts) and n.head != "king")
            or n.head == "it"
            else None
        ),
    },
    read=read,
    check=check,
    flips=True,
)
